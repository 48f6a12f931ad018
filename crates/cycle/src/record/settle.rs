//! From the rows of a cycle to a record in known units.

use super::air;
use super::notes::Asked;
use super::parting::Raw;
use super::physics::{CLEAR, Digest, Guess, clear, temperature_alone};
use super::plan::{Plan, TimeForm};
use super::repair::Repaired;
use super::stamp::{DAY, SECOND, civil_text, clock_text};
use super::units::{PressureUnit, Reference, TemperatureUnit};
use super::words::{degree, pressure_words, says_failed};
use super::{CycleRecord, Integrity, Known, KnownFrom, Layout, Samples, Source, Stated};
use crate::finding::{Code, Finding};
use crate::steam;
use measure::bounds;

/// An absolute pressure may read this far below nothing by an offset of the sensor, kPa.
const OFFSET_KPA: f64 = 3.0;

/// Units of a cycle, and how each was known.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Units {
    temperature: (TemperatureUnit, Option<Source>),
    pressure: Option<((PressureUnit, Source), (Reference, Source))>,
    findings: Vec<Finding>,
}

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
pub(super) fn settle(raw: Raw, around: &Around<'_>) -> (CycleRecord, Units) {
    let units = decide(&raw, around);
    let mut findings = units.findings.clone();
    let converted = convert(&raw, &units);
    let repaired = Repaired::of(&converted.at);
    let mut samples = arrange(&converted, &repaired);
    let gauge = matches!(units.pressure, Some((_, (Reference::Gauge, _))));
    let altitude = around.known.altitude_m.or(around.asked.altitude_m);
    let ambient = if gauge {
        let (air, doubt) = air_for_gauge(&samples, altitude);
        samples.press_kpa.iter_mut().for_each(|p| *p += air);
        findings.extend(doubt.map(|text| whole(&samples, Code::UnitUnclear, text)));
        Some(air)
    } else {
        let (air, doubt) = air_of_open_chamber(&samples, altitude);
        findings.extend(doubt.map(|text| whole(&samples, Code::UnitUnclear, text)));
        air
    };
    let truncated = raw.cut || raw.ends_under_way();
    findings.extend(repairs(&raw, &converted, &repaired, truncated));
    let integrity = integrity(&samples, &repaired, truncated);
    let record = CycleRecord {
        index: around.index,
        layout: layout(around, &units),
        known_from: KnownFrom {
            temperature_unit: units.temperature.1,
            pressure_unit: units.pressure.map(|(unit, _)| unit.1),
            pressure_reference: units.pressure.map(|(_, reference)| reference.1),
        },
        stated: stated(&raw, around, &units, (&converted, &repaired)),
        start_clock: start_clock(&converted, &repaired, around),
        ambient_kpa: ambient,
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
        lines: samples
            .line
            .first()
            .copied()
            .zip(samples.line.iter().max().copied()),
    }
}

fn unclear(text: String) -> Finding {
    Finding {
        code: Code::UnitUnclear,
        text,
        at_s: None,
        lines: None,
    }
}

/// Settles the units: a setting before the heading before physics, and physics may object.
fn decide(raw: &Raw, around: &Around<'_>) -> Units {
    let known = around.known;
    let said_t = source_of(
        known.temperature_unit,
        around.plan.temperature_said.temperature,
    );
    let said_p = source_of(known.pressure_unit, around.plan.pressure_said.pressure);
    let said_r = source_of(
        known.pressure_reference,
        around.plan.pressure_said.reference,
    );
    let digest = Digest::of(&raw.temperature, &raw.pressure);
    let (true, Some(digest)) = (around.plan.has_pressure(), digest) else {
        return without_pressure(raw, said_t);
    };
    let mut tried = PressureUnit::COMMON.to_vec();
    if let Some((unit, _)) = said_p
        && !tried.contains(&unit)
    {
        tried.push(unit);
    }
    let free = digest.guesses(&tried);
    let agrees = |g: &Guess| {
        said_t.is_none_or(|(unit, _)| unit == g.temperature)
            && said_p.is_none_or(|(unit, _)| unit == g.pressure)
            && said_r.is_none_or(|(reference, _)| reference == g.reference)
    };
    let fitting: Vec<Guess> = free.iter().copied().filter(agrees).collect();
    let objection = match (free.first(), fitting.first()) {
        (Some(best), Some(said)) => best.cost + CLEAR < said.cost,
        (Some(_), None) => true,
        (None, _) => false,
    };
    if objection {
        // Of what fits, that is taken which contradicts least: the reference alone, if it can be.
        let same_units = |g: &&Guess| {
            said_t.is_none_or(|(unit, _)| unit == g.temperature)
                && said_p.is_none_or(|(unit, _)| unit == g.pressure)
        };
        let near: Vec<Guess> = free.iter().filter(same_units).copied().collect();
        let enough = near.first().is_some_and(|g| g.cost < free[0].cost + CLEAR);
        let fits = if enough { &near } else { &free };
        return against_the_heading(fits, (said_t, said_p, said_r));
    }
    let temperature = said_t.or_else(|| clear(&fitting, |g| g.temperature).map(by_physics));
    let pressure = said_p.or_else(|| clear(&fitting, |g| g.pressure).map(by_physics));
    let reference = said_r.or_else(|| clear(&fitting, |g| g.reference).map(by_physics));
    settled(temperature, pressure, reference, around)
}

type SaidOf<T> = Option<(T, Source)>;

const fn by_physics<T: Copy>(value: T) -> (T, Source) {
    (value, Source::Physics)
}

fn source_of<T>(setting: Option<T>, heading: Option<T>) -> SaidOf<T> {
    match (setting, heading) {
        (Some(value), _) => Some((value, Source::Setting)),
        (None, Some(value)) => Some((value, Source::Header)),
        (None, None) => None,
    }
}

fn settled(
    temperature: SaidOf<TemperatureUnit>,
    pressure: SaidOf<PressureUnit>,
    reference: SaidOf<Reference>,
    around: &Around<'_>,
) -> Units {
    let mut findings = Vec::new();
    let earlier = around.earlier.filter(|units| units.findings.is_empty());
    let temperature = temperature.or_else(|| {
        let (unit, source) = earlier?.temperature;
        source.map(|source| (unit, source))
    });
    let pressure = match (pressure, reference) {
        (Some(unit), Some(reference)) => Some((unit, reference)),
        _ => earlier.and_then(|units| units.pressure),
    };
    if temperature.is_none() {
        findings.push(unclear(
            "neither the heading nor the numbers tell whether the temperatures are in °C, °F or K; they are shown as °C".to_owned(),
        ));
    }
    if pressure.is_none() {
        findings.push(unclear(
            "neither the heading nor the numbers tell in what unit the pressures are and what they are counted from; they are left out".to_owned(),
        ));
    }
    Units {
        temperature: temperature.map_or((TemperatureUnit::Celsius, None), |(unit, source)| {
            (unit, Some(source))
        }),
        pressure,
        findings,
    }
}

fn without_pressure(raw: &Raw, said: SaidOf<TemperatureUnit>) -> Units {
    let seen = temperature_alone(&raw.temperature);
    let mut findings = Vec::new();
    let temperature = match (said, seen) {
        (Some((unit, _)), Some(seen)) if unit != seen => {
            findings.push(unclear(format!(
                "the temperatures are said to be in {} and look like {}",
                degree(unit),
                degree(seen)
            )));
            (seen, Some(Source::Physics))
        }
        (Some((unit, source)), _) => (unit, Some(source)),
        (None, Some(seen)) => (seen, Some(Source::Physics)),
        (None, None) => {
            findings.push(unclear(
                "neither the heading nor the numbers tell whether the temperatures are in °C, °F or K; they are shown as °C".to_owned(),
            ));
            (TemperatureUnit::Celsius, None)
        }
    };
    Units {
        temperature,
        pressure: None,
        findings,
    }
}

/// What is said cannot be so. What fits is shown, and the contradiction with it.
fn against_the_heading(
    free: &[Guess],
    said: (
        SaidOf<TemperatureUnit>,
        SaidOf<PressureUnit>,
        SaidOf<Reference>,
    ),
) -> Units {
    let best = free[0];
    let same_units = said.0.is_none_or(|(unit, _)| unit == best.temperature)
        && said.1.is_none_or(|(unit, _)| unit == best.pressure);
    let gauge_as_absolute = same_units
        && best.reference == Reference::Gauge
        && said
            .2
            .is_some_and(|(reference, _)| reference == Reference::Absolute);
    let finding = if gauge_as_absolute {
        Finding {
            code: Code::GaugeAsAbsolute,
            text: "the pressures are said to be absolute, but the open chamber stands at zero: they are counted from the air".to_owned(),
            at_s: None,
            lines: None,
        }
    } else {
        unclear(format!(
            "what is said about the units does not fit the numbers, which look like {} and {}",
            degree(best.temperature),
            pressure_words(best.pressure, best.reference)
        ))
    };
    let agreed = clear(free, |g| (g.temperature, g.pressure, g.reference)).is_some();
    let keep = |source: Option<Source>, same: bool| match source {
        Some(source) if same => source,
        _ => Source::Physics,
    };
    let pressure = (
        best.pressure,
        keep(
            said.1.map(|s| s.1),
            said.1.is_some_and(|s| s.0 == best.pressure),
        ),
    );
    let reference = (
        best.reference,
        keep(
            said.2.map(|s| s.1),
            said.2.is_some_and(|s| s.0 == best.reference),
        ),
    );
    let temperature = keep(
        said.0.map(|s| s.1),
        said.0.is_some_and(|s| s.0 == best.temperature),
    );
    Units {
        temperature: (best.temperature, Some(temperature)),
        pressure: agreed.then_some((pressure, reference)),
        findings: vec![finding],
    }
}

/// Rows in °C and kPa, those that cannot be left out. Gauge pressures stay counted from the air.
struct Converted {
    at: Vec<i64>,
    celsius: Vec<f64>,
    kpa: Vec<f64>,
    line: Vec<u32>,
    zone: i64,
    /// Positions that the rows had before some were left out, if any were.
    from: Option<Vec<usize>>,
    impossible: Vec<u32>,
}

fn convert(raw: &Raw, units: &Units) -> Converted {
    let lowest = match units.pressure {
        Some((_, (Reference::Gauge, _))) => -bounds::PRESSURE.most,
        _ => bounds::PRESSURE.least - OFFSET_KPA,
    };
    let pressures = units.pressure.filter(|_| raw.pressure.len() == raw.len());
    let factor = pressures.map(|((unit, _), _)| unit.kpa());
    let celsius: Vec<f64> = match units.temperature.0 {
        TemperatureUnit::Celsius => raw.temperature.clone(),
        unit => raw
            .temperature
            .iter()
            .map(|t| unit.to_celsius(*t))
            .collect(),
    };
    let kpa: Vec<f64> = match factor {
        Some(1.0) => raw.pressure.clone(),
        Some(factor) => raw.pressure.iter().map(|p| p * factor).collect(),
        None => Vec::new(),
    };
    let fits = |i: usize| {
        bounds::TEMPERATURE.check(celsius[i]).is_ok()
            && kpa
                .get(i)
                .is_none_or(|p| *p >= lowest && *p <= bounds::PRESSURE.most)
    };
    let kept: Vec<usize> = (0..raw.len()).filter(|i| fits(*i)).collect();
    if kept.len() == raw.len() {
        return Converted {
            at: raw.at.clone(),
            celsius,
            kpa,
            line: raw.line.clone(),
            zone: raw.zone,
            from: None,
            impossible: Vec::new(),
        };
    }
    let impossible = (0..raw.len())
        .filter(|i| !fits(*i))
        .map(|i| raw.line[i])
        .collect();
    Converted {
        at: kept.iter().map(|i| raw.at[*i]).collect(),
        celsius: kept.iter().map(|i| celsius[*i]).collect(),
        kpa: if kpa.is_empty() {
            kpa
        } else {
            kept.iter().map(|i| kpa[*i]).collect()
        },
        line: kept.iter().map(|i| raw.line[*i]).collect(),
        zone: raw.zone,
        from: Some(kept),
        impossible,
    }
}

fn arrange(rows: &Converted, repaired: &Repaired) -> Samples {
    let seconds = |micros: i64| micros as f64 / SECOND as f64;
    let Some(order) = &repaired.order else {
        return Samples {
            t_s: repaired.since_start.iter().map(|t| seconds(*t)).collect(),
            temp_c: rows.celsius.clone(),
            press_kpa: rows.kpa.clone(),
            line: rows.line.clone(),
        };
    };
    let positions = || order.iter().map(|i| *i as usize);
    let pressures = if rows.kpa.is_empty() {
        Vec::new()
    } else {
        positions().map(|i| rows.kpa[i]).collect()
    };
    Samples {
        t_s: positions()
            .map(|i| seconds(repaired.since_start[i]))
            .collect(),
        temp_c: positions().map(|i| rows.celsius[i]).collect(),
        press_kpa: pressures,
        line: positions().map(|i| rows.line[i]).collect(),
    }
}

fn air_for_gauge(samples: &Samples, altitude: Option<f64>) -> (f64, Option<String>) {
    let Some(metres) = altitude else {
        let air = air::of_place(&samples.temp_c, &samples.press_kpa);
        return (air.kpa, air.doubt);
    };
    let air = steam::air_pressure(metres);
    let deepest = samples.press_kpa.iter().copied().fold(0.0, f64::min);
    let doubt = (air + deepest < -OFFSET_KPA).then(|| {
        format!(
            "the vacuum of {deepest:.1} kPa is deeper than the air pressure of {air:.1} kPa at {metres:.0} m allows: check the altitude"
        )
    });
    (air, doubt)
}

/// Weather moves the air pressure by 3 kPa; a sensor by as much again.
const WEATHER_AND_SENSOR_KPA: f64 = 8.0;

fn air_of_open_chamber(samples: &Samples, altitude: Option<f64>) -> (Option<f64>, Option<String>) {
    let by_altitude = altitude.map(steam::air_pressure);
    // The first row alone: the pump may start at once.
    let first = samples.press_kpa.first().copied();
    let Some(open) = first.filter(|kpa| (50.0..=110.0).contains(kpa)) else {
        return (by_altitude, None);
    };
    let doubt = by_altitude
        .filter(|air| (air - open).abs() > WEATHER_AND_SENSOR_KPA)
        .map(|air| {
            format!(
                "the open chamber shows {open:.1} kPa where the altitude promises {air:.1} kPa: check the altitude, or whether the pressures are absolute"
            )
        });
    (Some(open), doubt)
}

fn layout(around: &Around<'_>, units: &Units) -> Layout {
    Layout {
        time: around.plan.time.word().to_owned(),
        temperature_unit: units.temperature.0.as_str().to_owned(),
        pressure_unit: units
            .pressure
            .map(|((unit, _), _)| unit.as_str().to_owned()),
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

/// One finding for each kind of defect, from the first to the last place of it.
fn repairs(raw: &Raw, rows: &Converted, repaired: &Repaired, truncated: bool) -> Vec<Finding> {
    let seconds = |i: usize| repaired.since_start[i] as f64 / SECOND as f64;
    let spot = |code: Code, text: String, places: Vec<usize>| -> Option<Finding> {
        let (first, last) = (*places.iter().min()?, *places.iter().max()?);
        Some(Finding {
            code,
            text,
            at_s: Some((seconds(first), seconds(last))),
            lines: Some((rows.line[first], rows.line[last])),
        })
    };
    let mut found = Vec::new();
    let jumps = repaired.jumps.iter().map(|jump| jump.0).collect();
    let by: Vec<String> = repaired
        .jumps
        .iter()
        .take(5)
        .map(|(_, by)| format!("{:+} s", by / SECOND))
        .collect();
    found.extend(spot(
        Code::ClockJump,
        format!(
            "the clock jumps ({}); each jump counts as one usual step",
            by.join(", ")
        ),
        jumps,
    ));
    let gaps = repaired.gaps.iter().flat_map(|(a, b)| [*a, *b]).collect();
    found.extend(spot(
        Code::RowsMissing,
        format!("about {} rows are missing", repaired.dropped),
        gaps,
    ));
    if let (Some(lines), true) = (raw.missing_lines, raw.missing > 0) {
        found.push(Finding {
            code: Code::RowsMissing,
            text: format!(
                "{} rows have no usable time or reading and are left out",
                raw.missing
            ),
            at_s: None,
            lines: Some(lines),
        });
    }
    if let (Some(first), Some(last)) = (rows.impossible.first(), rows.impossible.last()) {
        found.push(Finding {
            code: Code::RowsMissing,
            text: format!(
                "{} rows show what no sterilizer can and are left out",
                rows.impossible.len()
            ),
            at_s: None,
            lines: Some((*first, *last)),
        });
    }
    found.extend(spot(
        Code::RowsDoubled,
        format!(
            "{} rows repeat an earlier time and are left out",
            repaired.doubled.len()
        ),
        repaired.doubled.clone(),
    ));
    found.extend(spot(
        Code::RowsSwapped,
        format!(
            "{} rows stand behind a later one and are put right",
            repaired.swapped.len()
        ),
        repaired.swapped.clone(),
    ));
    if truncated {
        let last = rows.line.len().checked_sub(1);
        found.push(Finding {
            code: Code::Truncated,
            text: "the record ends before the cycle does".to_owned(),
            at_s: last.map(|i| (seconds(i), seconds(i))),
            lines: last.map(|i| (rows.line[i], rows.line[i])),
        });
    }
    found
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
        TimeForm::Elapsed | TimeForm::Number(_) => civil_text(asked.day? + asked.clock?),
    }
}
