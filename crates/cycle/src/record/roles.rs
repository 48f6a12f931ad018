//! Which column is what: by its name where the heading tells, else by physics.

use super::names::{Channel, Name, Place};
use super::number::parse;
use super::physics::{Digest, clear};
use super::plan::{Body, Plan, TimeForm};
use super::sniff::{Kind, Table};
use super::source::text;
use super::timing::{counted_plan, time_plan};
use super::units::{PressureUnit, Said, TemperatureUnit};
use super::{Known, Unreadable};

/// Rows that physics looks at to find the columns.
const SAMPLE_ROWS: usize = 1_500;

/// Makes the plan for reading a table.
pub(super) fn plan(table: &Table<'_>, known: &Known) -> Result<Plan, Unreadable> {
    if table.glued {
        return Err(Unreadable::new(
            None,
            "commas part the columns and mark the decimals at once, so that the numbers cannot be told apart",
            "export the record with semicolons or tabs between the columns",
        ));
    }
    let mark = table.decimal_mark();
    let american = is_american(table);
    let timed = time_plan(table, mark, known, american);
    let has_times = timed.is_some();
    let mut time = timed.unwrap_or_else(|| counted_plan(table, known));
    let counted = matches!(time.form, TimeForm::Counted(_));
    let used = [Some(time.column).filter(|_| !counted), time.clock, time.half_day];
    let numbers: Vec<usize> = (0..table.width)
        .filter(|c| table.kinds[*c] == Kind::Number && !used.contains(&Some(*c)))
        .filter(|c| table.names[*c].channel != Channel::Index)
        .collect();
    let found = match long_body(table, &numbers) {
        Some(found) => found,
        None => wide_body(table, mark, &numbers)?,
    };
    let (body, temperature_said, pressure_said) = found;
    if !has_times && !is_record(table, &body, time.doubt.is_none()) {
        return Err(Unreadable::new(
            None,
            "no column of times was found",
            "export the record as a table with time, temperature and pressure",
        ));
    }
    if let (true, Body::Wide { temperature, .. }) = (counted, &body) {
        time.column = *temperature;
    }
    let last = |columns: &[Option<usize>]| columns.iter().flatten().max().map_or(0, |c| c + 1);
    let needed = match &body {
        Body::Wide { temperature, pressure, .. } => {
            last(&used).max(last(&[Some(*temperature), *pressure]))
        }
        Body::InTurn { temperature, pressure } => {
            last(&used).max(last(&[Some(*temperature), Some(*pressure)]))
        }
        Body::Long { channel, value, .. } => last(&used).max(last(&[Some(*channel), Some(*value)])),
    };
    Ok(Plan {
        split: table.split.clone(),
        needed,
        width: table.width,
        time,
        mark,
        body,
        temperature_said,
        pressure_said,
        heading: table.heading.iter().map(|line| line.to_vec()).collect(),
        american,
    })
}

/// Without times a table is taken for a record only where its temperature is named, or an interval
/// is. Of rows with one reading each it is not clear which ones an interval parts.
fn is_record(table: &Table<'_>, body: &Body, has_interval: bool) -> bool {
    match body {
        Body::Wide { temperature, pressure, .. } => {
            pressure.is_some() && has_interval
                || table.names[*temperature].channel == Channel::Temperature
        }
        Body::InTurn { .. } | Body::Long { .. } => false,
    }
}

/// Fahrenheit, psi or half days: the places that write the month first.
fn is_american(table: &Table<'_>) -> bool {
    let half_days = table.rows.iter().take(3).any(|row| {
        let row = text(row).to_lowercase();
        row.contains(" am") || row.contains(" pm") || row.contains("\tam") || row.contains("\tpm")
    });
    half_days
        || table.names.iter().any(|name| {
            name.said.temperature == Some(TemperatureUnit::Fahrenheit)
                || name.said.pressure == Some(PressureUnit::Psi)
        })
}

type Found = (Body, Said, Said);

/// One row a reading: a column of channel names beside one of values.
fn long_body(table: &Table<'_>, numbers: &[usize]) -> Option<Found> {
    let named =
        |c: &usize| matches!(table.names[*c].channel, Channel::Temperature | Channel::Pressure);
    if numbers.iter().any(named) {
        return None;
    }
    let value = *numbers.last()?;
    for channel in (0..table.width).filter(|c| table.kinds[*c] == Kind::Text) {
        let texts = table.texts(channel);
        let mut distinct = texts.clone();
        distinct.sort();
        distinct.dedup();
        if distinct.len() > 30 || distinct.len() * 3 > texts.len() {
            continue;
        }
        let units = (0..table.width).find(|c| *c != channel && table.kinds[*c] == Kind::Text);
        let unit_texts = units.map(|column| table.texts(column));
        let names: Vec<Name> = distinct
            .iter()
            .map(|name| {
                let at = texts.iter().position(|text| text == name);
                let unit = at.and_then(|at| unit_texts.as_ref()?.get(at));
                Name::read(&format!("{} {}", text(name), text(unit.map_or(&b""[..], |u| u))))
            })
            .collect();
        let all: Vec<usize> = (0..distinct.len()).collect();
        let temperature = ranked(&names, &all, Channel::Temperature).first().copied();
        if let Some(temperature) = temperature {
            let pressure = ranked(&names, &all, Channel::Pressure).first().copied();
            return Some((
                Body::Long {
                    channel,
                    value,
                    temperature: distinct[temperature].clone(),
                    pressure: pressure.map(|p| distinct[p].clone()),
                },
                names[temperature].said,
                pressure.map_or(Said::default(), |p| names[p].said),
            ));
        }
    }
    None
}

/// Columns of this channel in the chamber, the likeliest first; those elsewhere are left out.
fn ranked(names: &[Name], columns: &[usize], channel: Channel) -> Vec<usize> {
    let mut found: Vec<usize> = columns
        .iter()
        .copied()
        .filter(|c| names[*c].channel == channel && names[*c].place < Place::Load)
        .collect();
    found.sort_by_key(|c| (names[*c].place, names[*c].rank, *c));
    found
}

fn wide_body(table: &Table<'_>, mark: u8, numbers: &[usize]) -> Result<Found, Unreadable> {
    let names = &table.names;
    let set = numbers
        .iter()
        .copied()
        .find(|c| names[*c].channel == Channel::SetPoint && names[*c].said.pressure.is_none());
    let phase = (0..table.width)
        .find(|c| table.kinds[*c] == Kind::Text && names[*c].channel == Channel::Phase);
    let temperatures = ranked(names, numbers, Channel::Temperature);
    let pressures = ranked(names, numbers, Channel::Pressure);
    let unnamed: Vec<usize> = numbers
        .iter()
        .copied()
        .filter(|c| names[*c].channel == Channel::Unknown && names[*c].place < Place::Load)
        .collect();
    let open = |found: &[usize]| {
        if found.is_empty() { unnamed.clone() } else { found.to_vec() }
    };
    let (candidates_t, candidates_p) = (open(&temperatures), open(&pressures));
    let sure = settled(names, &temperatures) && (settled(names, &pressures) || unnamed.is_empty());
    let (temperature, pressure) = if sure {
        (temperatures.first().copied(), pressures.first().copied())
    } else {
        by_physics(table, mark, &candidates_t, &candidates_p).map_or_else(
            || (temperatures.first().copied(), pressures.first().copied()),
            |(t, p)| (Some(t), Some(p)),
        )
    };
    // A lone column of numbers beside a time is the temperature.
    let alone = || (numbers.len() == 1).then(|| unnamed.first().copied()).flatten();
    let Some(temperature) = temperature.or_else(alone) else {
        return Err(Unreadable::new(
            None,
            "no column with the chamber's temperature was found",
            "name the columns in the first line, or export time, chamber temperature and pressure",
        ));
    };
    let set = set.or_else(|| constant_set_point(table, mark, &unnamed, temperature));
    let body = match pressure.filter(|pressure| in_turn(table, mark, (temperature, *pressure))) {
        Some(pressure) => Body::InTurn { temperature, pressure },
        None => Body::Wide { temperature, pressure, phase, set },
    };
    let said_of = |c: Option<usize>| c.map_or(Said::default(), |c| names[c].said);
    Ok((body, said_of(Some(temperature)), said_of(pressure)))
}

/// Do most rows have one of the two, and both their share of them?
fn in_turn(table: &Table<'_>, mark: u8, (temperature, pressure): (usize, usize)) -> bool {
    let has = |column: usize| -> Vec<bool> {
        table.first_texts(column).iter().map(|cell| parse(cell, mark).is_some()).collect()
    };
    let (mut lone, mut rows) = ([0, 0], 0);
    for row in has(temperature).into_iter().zip(has(pressure)) {
        rows += 1;
        lone[0] += usize::from(row == (true, false));
        lone[1] += usize::from(row == (false, true));
    }
    (lone[0] + lone[1]) * 10 >= rows * 8 && lone.iter().all(|count| count * 10 >= rows)
}

/// Does the heading alone tell which of these is meant?
fn settled(names: &[Name], ranked: &[usize]) -> bool {
    match ranked {
        [] => false,
        [_] => true,
        [first, second, ..] => {
            let key = |c: usize| (names[c].place, names[c].rank);
            key(*first) != key(*second)
        }
    }
}

/// The pair of columns that lies on the saturation line while the pressure is high. Of pairs
/// that do so equally well the leftmost is taken: a chamber stands before what was added to it.
fn by_physics(
    table: &Table<'_>,
    mark: u8,
    temperatures: &[usize],
    pressures: &[usize],
) -> Option<(usize, usize)> {
    let numbers = |column: &usize| -> (usize, Vec<f64>) {
        let values = table.numbers(*column, mark);
        let every = values.len().div_ceil(SAMPLE_ROWS).max(1);
        (*column, values.into_iter().step_by(every).collect())
    };
    let varies = |values: &[f64]| values.iter().any(|v| *v != values[0]);
    let of = |columns: &[usize]| -> Vec<(usize, Vec<f64>)> {
        columns.iter().map(numbers).filter(|(_, values)| varies(values)).collect()
    };
    let (temperatures, pressures) = (of(temperatures), of(pressures));
    let mut best: Option<(f64, usize, usize)> = None;
    for (t, readings) in &temperatures {
        for (p, pressure) in pressures.iter().filter(|(p, _)| p != t) {
            let Some(digest) = Digest::of(readings, pressure) else {
                continue;
            };
            let said = table.names[*p].said.pressure;
            let units: Vec<PressureUnit> = said.map_or(PressureUnit::COMMON.to_vec(), |u| vec![u]);
            let guesses = digest.guesses(&units);
            if clear(&guesses, |g| (g.pressure, g.reference)).is_none() {
                continue;
            }
            let cost = guesses[0].cost;
            if best.is_none_or(|(least, _, _)| cost + 0.3 < least) {
                best = Some((cost, *t, *p));
            }
        }
    }
    best.map(|(_, t, p)| (t, p))
}

/// A column that stands at one of the usual set temperatures throughout.
fn constant_set_point(
    table: &Table<'_>,
    mark: u8,
    unnamed: &[usize],
    temperature: usize,
) -> Option<usize> {
    const USUAL: &[f64] = &[121.0, 132.0, 134.0, 135.0, 250.0, 270.0, 273.0, 273.2, 249.8, 269.6];
    unnamed.iter().copied().find(|column| {
        let values = table.numbers(*column, mark);
        *column != temperature
            && values.iter().all(|v| *v == values[0])
            && USUAL.iter().any(|usual| (values[0] - usual).abs() <= 1.0)
    })
}
