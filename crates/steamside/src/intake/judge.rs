//! From the bytes of a record, or three numbers from a display, to a verdict that the book keeps.

use crate::acts::{Claim, ReadOff, Refusal};
use cycle::figures::{Ask, DryingRan, Figures, Kind, examine};
use cycle::finding::{Code, Finding};
use cycle::record::{CycleRecord, Known, read};
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

/// Reads and measures every cycle of a file; never an empty list.
pub fn examine_file(bytes: &[u8]) -> Vec<Examined> {
    let cycles = read(bytes, &Known::default()).unwrap_or_default();
    if cycles.is_empty() {
        return vec![Examined::Unreadable];
    }
    let ask = Ask { rules: Limits::default().rules(), ..Ask::default() };
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

/// The verdict on one cycle of a kept record, for the run that claims it. `None` where the bytes
/// no longer give that cycle.
pub fn cycle_for_run(bytes: &[u8], claim: Claim, run: &Run) -> Option<Judged> {
    let examined = examine_file(bytes);
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
    let figures = KeyFigures {
        held_ms: milli(read.held_s),
        lowest_mc: milli(read.lowest.get()),
        ..KeyFigures::default()
    };
    Judged { figures, ..kept(verdict, basis, Some(run.run), run.contents, &limits) }
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
    }
}

/// Thousandths, rounded; a number that is none, or beyond all sense, is not written.
fn milli(value: f64) -> Option<i64> {
    let thousandths = (value * 1_000.0).round();
    (thousandths.abs() < 1e15).then_some(thousandths as i64)
}

/// A pressure as a person reads it, made absolute. A gauge is taken to hang at sea level's air
/// pressure, 101.325 kPa (standard atmosphere), until the salon says its altitude.
pub fn absolute(value: f64, unit: &str) -> Result<Kilopascal, Refusal> {
    const AIR_KPA: f64 = 101.325;
    const PSI_KPA: f64 = 6.894_757;
    let kpa = match unit {
        "kPa-abs" => value,
        "kPa-gauge" => value + AIR_KPA,
        "bar-abs" => value * 100.0,
        "bar-gauge" => value * 100.0 + AIR_KPA,
        "psi-gauge" => value * PSI_KPA + AIR_KPA,
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
        for (value, unit, kpa) in
            [(304.2, "kPa-abs", 304.2), (2.03, "bar-gauge", 304.325), (29.4, "psi-gauge", 304.031)]
        {
            let made = absolute(value, unit).map(Kilopascal::get);
            assert!(made.is_ok_and(|made| (made - kpa).abs() < 0.01), "{value} {unit}");
        }
        assert!(absolute(-200.0, "kPa-gauge").is_err());
        assert!(absolute(1.0, "ells").is_err());
    }

    #[test]
    fn what_is_no_number_is_not_written() {
        assert_eq!(milli(1.2345), Some(1235));
        assert_eq!(milli(f64::NAN), None);
        assert_eq!(milli(f64::INFINITY), None);
    }
}
