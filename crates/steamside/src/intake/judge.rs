//! From the bytes of a record, or three numbers from a display, to a verdict that the book keeps.

use crate::acts::{Claim, ReadOff, Refusal};
use cycle::figures::{Ask, DryingRan, Figures, Kind, Phase, examine};
use cycle::finding::{Code, Finding};
use cycle::record::{CycleRecord, Known, PressureUnit, read};
use cycle::steam::air_pressure;
use cycle::steam::tsat;
use jiff::civil::DateTime;
use load::Contents;
use logbook::fact::{AirRemoval, Basis, Judged, KeyFigures, Reason};
use logbook::view::{Machine, Run};
use measure::Kilopascal;
use release::limits::{Limits, Name};
use release::verdict::{Asked, JUDGE, Outcome, Reading, Verdict, judge, judge_reading};

/// One cycle of a record, or the news that the file could not be read.
pub enum Examined {
    /// A cycle in known units, with its figures.
    Cycle(Box<(CycleRecord, Figures)>),
    /// Nothing to judge. The file is kept all the same.
    Unreadable,
}

impl Examined {
    /// Could it belong to a run? A leak test has none.
    pub fn is_run(&self) -> bool {
        match self {
            Self::Cycle(cycle) => cycle.1.kind != Kind::LeakTest,
            Self::Unreadable => false,
        }
    }

    /// Civil time of the first sample, where the record has date and clock.
    pub fn start_clock(&self) -> Option<DateTime> {
        match self {
            Self::Cycle(cycle) => cycle.0.start_clock.as_ref()?.parse().ok(),
            Self::Unreadable => None,
        }
    }
}

/// Reads and measures every cycle of a file, with what is known of the machine that wrote it;
/// never an empty list.
pub fn examine_file(bytes: &[u8], known: &Known) -> Vec<Examined> {
    let cycles = read(bytes, known).unwrap_or_default();
    if cycles.is_empty() {
        return vec![Examined::Unreadable];
    }
    let rules = Limits::default().rules();
    let ask = Ask { altitude_m: known.altitude_m, rules, ..Ask::default() };
    cycles
        .into_iter()
        .map(|record| {
            let figures = examine(&record, &ask);
            Examined::Cycle(Box::new((record, figures)))
        })
        .collect()
}

/// The verdict on a cycle, for what was inside the run that it belongs to.
pub fn judged(examined: &Examined, basis: Basis, run: Option<&Run>) -> Judged {
    let contents = run.map_or(Contents::Unknown, |run| run.contents);
    let limits = Limits::default();
    let run = run.map(|run| run.run);
    match examined {
        Examined::Cycle(cycle) => {
            let (record, figures) = &**cycle;
            let verdict = judge(record, figures, &Asked::new(contents, &limits));
            Judged {
                figures: key_figures(figures),
                drying: figures.drying.ran,
                start_clock: record.start_clock.clone(),
                ..kept(verdict, basis, run, contents, &limits)
            }
        }
        Examined::Unreadable => {
            let why =
                Finding { code: Code::Unreadable, text: String::new(), at_s: None, lines: None };
            let verdict = Verdict {
                outcome: Outcome::CannotTell,
                proven_for: Vec::new(),
                conforming: None,
                reasons: vec![why],
            };
            kept(verdict, basis, run, contents, &limits)
        }
    }
}

/// The verdict on one cycle of a kept record, for the run that claims it, with what is known of
/// the run's machine. `None` where the bytes no longer give that cycle.
pub fn cycle_for_run(bytes: &[u8], claim: Claim, run: &Run, known: &Known) -> Option<Judged> {
    let examined = examine_file(bytes, known);
    let cycle = examined.get(claim.cycle as usize)?;
    let basis = Basis::Record { record: claim.record, cycle: claim.cycle };
    Some(judged(cycle, basis, Some(run)))
}

/// The verdict on three numbers that a person read off the display. That a machine draws a vacuum
/// is known only as its setting, which is why each such load wants an inner mark as well.
pub fn reading(run: &Run, machine: &Machine, read: ReadOff) -> Judged {
    let limits = Limits::default();
    let by_setting = (limits.get(Name::DeepPulse), limits.get(Name::DeepPulses) as u32);
    let verdict = judge_reading(
        &Reading {
            lowest_c: read.lowest.get(),
            held_s: read.held_s,
            pressure_kpa: read.pressure.map(Kilopascal::get),
            set_c: None,
            deep_pulses: (machine.air_removal == AirRemoval::Vacuum).then_some(by_setting),
        },
        &Asked::new(run.contents, &limits),
    );
    let basis = Basis::Reading {
        lowest_mc: milli(read.lowest.get()).unwrap_or_default(),
        held_s: read.held_s as i64,
        press_pa: read.pressure.and_then(|pressure| milli(pressure.get())),
    };
    let figures = read_figures(&limits, read);
    Judged { figures, ..kept(verdict, basis, Some(run.run), run.contents, &limits) }
}

/// What a reading says, beside what was asked of it.
fn read_figures(limits: &Limits, read: ReadOff) -> KeyFigures {
    let lowest_c = read.lowest.get();
    let rules = limits.rules();
    let set = rules.floors.iter().find(|floor| floor.2 && floor.0 <= lowest_c);
    let off = read.pressure.map(|pressure| lowest_c - tsat(pressure.get()));
    KeyFigures {
        set_mc: set.and_then(|floor| milli(floor.0)),
        needed_ms: set.and_then(|floor| milli(floor.1)),
        held_ms: milli(read.held_s),
        lowest_mc: milli(lowest_c),
        deviation_mk: off.and_then(milli),
        ..KeyFigures::default()
    }
}

fn kept(
    verdict: Verdict,
    basis: Basis,
    run: Option<measure::RunId>,
    contents: Contents,
    limits: &Limits,
) -> Judged {
    Judged {
        run,
        basis,
        judge: JUDGE.to_owned(),
        limits: limits
            .in_force()
            .filter_map(|(limit, value)| Some((limit.key.to_owned(), milli(value)?)))
            .collect(),
        contents,
        outcome: verdict.outcome,
        proven_for: verdict.proven_for,
        conforming: verdict.conforming,
        drying: DryingRan::CannotTell,
        reasons: verdict.reasons.iter().map(kept_reason).collect(),
        figures: KeyFigures::default(),
        start_clock: None,
    }
}

fn kept_reason(finding: &Finding) -> Reason {
    Reason {
        code: finding.code,
        at_ms: finding.at_s.and_then(|(from, to)| milli(from).zip(milli(to))),
        lines: finding.lines,
    }
}

fn key_figures(figures: &Figures) -> KeyFigures {
    let plateau = figures.plateau.as_ref();
    KeyFigures {
        set_mc: figures.set_c.and_then(|(set, _)| milli(set)),
        needed_ms: figures.needed_hold_s.and_then(milli),
        held_ms: milli(figures.hold_s),
        lowest_mc: plateau.and_then(|plateau| milli(plateau.min_c)),
        highest_mc: plateau.and_then(|plateau| milli(plateau.max_c)),
        deviation_mk: plateau.and_then(|plateau| plateau.satdev_mean_k).and_then(milli),
        f0_low_mmin: milli(figures.f0_low_min),
        drying_ms: figures.drying.phase_s.and_then(milli),
        total_ms: milli(figures.total_s),
        ..watched(figures)
    }
}

/// What is compared from run to run. Only a run that reached its set temperature has a heat-up.
fn watched(figures: &Figures) -> KeyFigures {
    let phase = |name: &str| figures.phases.iter().find(|phase| phase.name == name);
    let lasts = |phase: &Phase| milli(phase.end_s - phase.start_s);
    let first_vacuum = phase("vacuum 1");
    let depths = &figures.vacuum_depths_kpa;
    KeyFigures {
        preheat_ms: first_vacuum
            .map(|vacuum| vacuum.start_s)
            .or_else(|| phase("preheat").map(|preheat| preheat.end_s))
            .and_then(milli),
        heat_up_ms: figures.plateau.and_then(|_| phase("heat-up")).and_then(lasts),
        first_pulse_ms: first_vacuum.and_then(lasts),
        pulse_depth_pa: depths.get(2).or(depths.last()).copied().and_then(milli),
        exhaust_ms: phase("exhaust").and_then(lasts),
        dry_vacuum_pa: figures.drying.min_kpa.and_then(milli),
        air_in_ms: phase("air-in").and_then(lasts),
        ..KeyFigures::default()
    }
}

/// Thousandths, rounded; a number that is none, or beyond all sense, is not written.
fn milli(value: f64) -> Option<i64> {
    let thousandths = (value * 1_000.0).round();
    (thousandths.abs() < 1e15).then_some(thousandths as i64)
}

/// A pressure as a person reads it, made absolute. A gauge counts from the air at the altitude of
/// the place; where that is not known nothing is assumed, because 1000 m are 11 kPa, more than a
/// kelvin of saturation.
pub fn absolute(value: f64, unit: &str, altitude_m: Option<f64>) -> Result<Kilopascal, Refusal> {
    let no_altitude = || Refusal::rule("refused-no-altitude");
    let air_kpa = || altitude_m.map(air_pressure).ok_or_else(no_altitude);
    let kpa = match unit {
        "kPa-abs" => value,
        "kPa-gauge" => value + air_kpa()?,
        "bar-abs" => value * PressureUnit::Bar.kpa(),
        "bar-gauge" => value * PressureUnit::Bar.kpa() + air_kpa()?,
        "psi-gauge" => value * PressureUnit::Psi.kpa() + air_kpa()?,
        _ => return Err(Refusal::rule_with("refused-field-misread", "field", "unit")),
    };
    Kilopascal::new(kpa)
        .map_err(|_| Refusal::rule_with("refused-field-misread", "field", "pressure"))
}
#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_gauge_is_made_absolute() {
        // 1 bar = 100 kPa and 1 psi = 6.894757 kPa by definition of the units.
        // 1000 m: 89.875 kPa in the table of ISO 2533 (from memory).
        for (value, unit, altitude_m, kpa) in [
            (304.2, "kPa-abs", Some(1_000.0), 304.2),
            (2.03, "bar-gauge", Some(0.0), 304.325),
            (29.4, "psi-gauge", Some(0.0), 304.031),
            (2.03, "bar-gauge", Some(1_000.0), 292.875),
        ] {
            let made = absolute(value, unit, altitude_m).map(Kilopascal::get);
            assert!(made.is_ok_and(|made| (made - kpa).abs() < 0.01), "{value} {unit}");
        }
        assert!(absolute(-200.0, "kPa-gauge", Some(0.0)).is_err());
        assert!(absolute(1.0, "ells", None).is_err());
        assert!(absolute(203.0, "kPa-gauge", None).is_err(), "no altitude is assumed");
    }

    /// The truth file of p01 gives the phases exactly and the depths from the model; the record
    /// has a step of 1 s, rounds to 1 kPa and has noise of as much. Borders may lie 10 s off, as
    /// the contract says.
    #[test]
    fn the_watched_figures_are_those_of_the_truth_file() {
        let bytes = include_bytes!("../../../cycle/tests/records/p01.csv");
        let Some(Examined::Cycle(cycle)) =
            examine_file(bytes, &Known::default()).into_iter().next()
        else {
            unreachable!("p01 is a record");
        };
        let figures = key_figures(&cycle.1);
        let near = |figure: Option<i64>, truth: i64, off: i64| {
            assert!(figure.is_some_and(|f| (f - truth).abs() <= off), "{figure:?}, not {truth}");
        };
        near(figures.preheat_ms, 4_000, 10_000);
        near(figures.first_pulse_ms, 77_000, 10_000);
        near(figures.pulse_depth_pa, 13_970, 1_000);
        near(figures.heat_up_ms, 104_400, 20_000);
        near(figures.exhaust_ms, 37_400, 10_000);
        near(figures.dry_vacuum_pa, 3_660, 1_000);
        near(figures.air_in_ms, 35_000, 10_000);
    }

    #[test]
    fn what_is_no_number_is_not_written() {
        assert_eq!(milli(1.2345), Some(1235));
        assert_eq!(milli(f64::NAN), None);
        assert_eq!(milli(f64::INFINITY), None);
    }
}
