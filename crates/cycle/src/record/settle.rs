//! From the rows of a cycle to a record in known units.

use super::air;
use super::calendar::{civil_text, clock_text};
use super::convert::{Converted, arrange, convert};
use super::decide::{Units, decide};
use super::defects::defects;
use super::failed::says_failed;
use super::notes::Asked;
use super::parting::Raw;
use super::plan::{Plan, TimeForm};
use super::repair::Repaired;
use super::repeats::Rows;
use super::stamp::{DAY, SECOND};
use super::units::Reference;
use super::{CycleRecord, Integrity, Known, KnownFrom, Layout, Samples, Stated};
use crate::finding::{Code, Finding};

/// What the reader knows beside the rows.
pub(super) struct Around<'a> {
    pub plan: &'a Plan,
    pub known: &'a Known,
    pub asked: &'a Asked,
    pub encoding: &'static str,
    pub index: usize,
    /// Units that physics found in an earlier cycle of the same table.
    pub earlier: Option<&'a Units>,
}

/// Makes the record. The units are given as well, for later cycles of the same table.
pub(super) fn settle(mut raw: Raw, around: &Around<'_>) -> (CycleRecord, Units) {
    let units = decide(&raw, around);
    let mut findings = units.findings.clone();
    raw.shrink();
    // Before the rows are taken out of it.
    let truncated = raw.cut || raw.ends_under_way();
    let mut converted = convert(&mut raw, &units);
    let repaired =
        Repaired::of(Rows { at: &converted.at, celsius: &converted.celsius, kpa: &converted.kpa });
    let mut samples = arrange(&mut converted, &repaired);
    let altitude = around.known.altitude_m.or(around.asked.altitude_m);
    let air = match units.pressure {
        Some((_, (Reference::Gauge, _))) => air::around_gauge(&samples, altitude),
        _ => air::of_open_chamber(&samples, altitude),
    };
    if let (Some(kpa), Some((_, (Reference::Gauge, _)))) = (air.kpa, units.pressure) {
        samples.press_kpa.iter_mut().for_each(|p| *p += kpa);
    }
    let doubts = [around.plan.time.doubt.map(str::to_owned), air.doubt];
    let unclear = |text| whole(&samples, Code::UnitUnclear, text);
    findings.extend(doubts.into_iter().flatten().map(unclear));
    findings.extend(defects(&raw, &converted, &repaired, truncated));
    let integrity = integrity(&samples, &repaired, truncated);
    let record = CycleRecord {
        index: around.index,
        layout: layout(around, &units),
        known_from: KnownFrom {
            temperature_unit: units.temperature.1,
            pressure_unit: units.pressure.map(|(unit, _)| unit.1),
            pressure_reference: units.pressure.map(|(_, reference)| reference.1),
            times_unclear: around.plan.time.doubt.is_some(),
        },
        stated: stated(&raw, around, &units, (&converted, &repaired)),
        start_clock: start_clock(&converted, &repaired, around),
        ambient_kpa: air.kpa,
        temp_resolution_k: step(raw.decimals.0) * units.temperature.0.kelvin_per_degree(),
        press_resolution_kpa: units
            .pressure
            .map_or(0.0, |((unit, _), _)| step(raw.decimals.1) * unit.kpa()),
        integrity,
        findings,
        samples,
    };
    (record, units)
}

/// The smallest step of a number with so many decimals.
fn step(decimals: u8) -> f64 {
    (0..decimals).fold(1.0, |step, _| step / 10.0)
}

fn whole(samples: &Samples, code: Code, text: String) -> Finding {
    let end = samples.t_s.last().copied();
    Finding {
        code,
        text,
        at_s: end.map(|end| (0.0, end)),
        lines: samples.line.first().copied().zip(samples.line.iter().max().copied()),
    }
}

fn layout(around: &Around<'_>, units: &Units) -> Layout {
    Layout {
        time: around.plan.time.word().to_owned(),
        temperature_unit: units.temperature.0.as_str().to_owned(),
        pressure_unit: units.pressure.map(|((unit, _), _)| unit.as_str().to_owned()),
        pressure_reference: units
            .pressure
            .map_or("none", |(_, (reference, _))| reference.as_str())
            .to_owned(),
        decimal: char::from(around.plan.mark),
        encoding: around.encoding.to_owned(),
    }
}

fn integrity(samples: &Samples, repaired: &Repaired, truncated: bool) -> Integrity {
    let seconds = |micros: i64| micros as f64 / SECOND as f64;
    Integrity {
        rows: samples.t_s.len(),
        dropped: repaired.dropped,
        duplicated: repaired.doubled.len(),
        out_of_order: repaired.swapped.len(),
        clock_jumps: repaired
            .jumps
            .iter()
            .map(|(i, jump)| (seconds(repaired.since_start[*i]), seconds(*jump)))
            .collect(),
        largest_gap_s: seconds(repaired.longest),
        median_step_s: seconds(repaired.usual),
        truncated,
    }
}

fn stated(raw: &Raw, around: &Around<'_>, units: &Units, rows: (&Converted, &Repaired)) -> Stated {
    let celsius = |reading: f64| units.temperature.0.to_celsius(reading);
    let believable = |c: &f64| (105.0..=140.0).contains(c);
    // A set point that changes during the cycle asked for the highest.
    let column = raw.set.map(|(_, high)| celsius(high)).filter(believable);
    let time_of = |row: usize| -> Option<f64> {
        let row = match &rows.0.from {
            Some(kept) => kept.partition_point(|position| *position < row),
            None => row,
        };
        let micros = rows.1.since_start.get(row)?;
        Some((*micros as f64 / SECOND as f64).max(0.0))
    };
    let asked = around.asked;
    let lines = || raw.behind.iter().chain(&raw.before);
    let words = raw.words.iter().map(|(_, word)| word);
    Stated {
        set_c: asked.set_c.or(column),
        hold_s: asked.hold_s,
        drying_s: asked.drying_s,
        programme: asked.programme.clone(),
        altitude_m: asked.altitude_m,
        phase_words: raw
            .words
            .iter()
            .filter_map(|(row, word)| Some((time_of(*row)?, word.clone())))
            .collect(),
        says_aborted: words.chain(lines()).find_map(|line| says_failed(line)),
    }
}

fn start_clock(rows: &Converted, repaired: &Repaired, around: &Around<'_>) -> Option<String> {
    let first = match &repaired.order {
        Some(order) => *order.first()? as usize,
        None => 0,
    };
    let civil = rows.at.get(first)? + rows.zone;
    let asked = around.asked;
    match around.plan.time.form {
        TimeForm::Dated(_) | TimeForm::Epoch(_) | TimeForm::Serial => civil_text(civil),
        TimeForm::Clock => match asked.day {
            Some(day) => civil_text(day + civil.rem_euclid(DAY)),
            None => Some(clock_text(civil)),
        },
        TimeForm::Elapsed | TimeForm::Number(_) | TimeForm::Counted(_) => {
            civil_text(asked.day? + asked.clock?)
        }
    }
}
