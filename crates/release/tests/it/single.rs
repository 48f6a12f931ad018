//! One reading proves nothing, and neither do too few.

use crate::chambers::Chamber;
use crate::properties::at_places;
use crate::records::{cases, judged, judged_for, record};
use cycle::finding::Code;
use cycle::record::CycleRecord;
use load::Contents;
use release::verdict::Outcome::{self, CannotTell, Lethal};
use release::verdict::Verdict;

/// The record with these samples at another pressure.
fn with_kpa(record: &CycleRecord, places: &[usize], kpa: f64) -> CycleRecord {
    let mut other = record.clone();
    places.iter().for_each(|&at| other.samples.press_kpa[at] = kpa);
    other
}

fn proves_more(before: &Verdict, after: &Verdict) -> bool {
    after.proven_for.iter().any(|contents| !before.proven_for.contains(contents))
}

fn check(record: &CycleRecord, outcome: Outcome, code: Code) {
    let (_, verdict) = judged(record);
    assert_eq!((verdict.outcome, verdict.reasons[0].code), (outcome, code), "{verdict:?}");
}

/// Another pressure of one single sample, whatever it is, proves nothing more.
#[test]
fn one_pressure_never_proves_more() {
    for case in cases().iter().filter(|case| !case.record.samples.press_kpa.is_empty()) {
        let (_, before) = judged(&case.record);
        let rows = case.record.samples.t_s.len();
        for at in (0..rows).step_by(rows / 25 + 1) {
            for kpa in [5.0, 18.0, 150.0, 320.0] {
                let (_, after) = judged(&with_kpa(&case.record, &[at], kpa));
                assert!(!proves_more(&before, &after), "{} sample {at} at {kpa} kPa", case.name);
            }
        }
    }
}

/// A pump that stalls at 40 kPa, with one reading of 5 kPa or three; a cycle without a pump, with
/// three readings of 10 kPa.
#[test]
fn a_spike_is_no_vacuum() {
    let stalled = record("p21.csv");
    for places in [[20, 20, 20], [40, 40, 40], [49, 49, 49], [20, 40, 49]] {
        check(&with_kpa(&stalled, &places, 5.0), CannotTell, Code::GasketLeak);
    }
    let spiked = with_kpa(&record("p02.csv"), &[100, 140, 180], 10.0);
    let (figures, verdict) = judged_for(&spiked, Contents::Pouched);
    assert!(figures.vacuum_sure_kpa.is_empty(), "{:?}", figures.vacuum_sure_kpa);
    assert_eq!(
        (verdict.outcome, verdict.reasons[0].code),
        (CannotTell, Code::LoadNotCovered),
        "{verdict:?}"
    );
}

/// What the curve shows with two readings or more counts: every pulse of the known records does.
#[test]
fn true_pulses_count() {
    for case in cases() {
        let (figures, _) = judged(&case.record);
        if figures.plateau.is_some() {
            assert_eq!(figures.vacuum_sure_kpa, figures.vacuum_depths_kpa, "{}", case.name);
        }
    }
}

/// A spike does not show that the chamber cooled, nor that two sensors are two.
#[test]
fn a_spike_clears_up_nothing() {
    let plain = Chamber { hold_s: 400.0, ..Chamber::default() }.record();
    let start = judged(&plain).0.plateau.unwrap().start_s as usize;
    let until: Vec<usize> = (0..start + 300).collect();
    let cut = at_places(&plain, &until);
    check(&cut, CannotTell, Code::Truncated);
    check(&with_kpa(&cut, &[start + 250], 5.0), CannotTell, Code::Truncated);
    let mut derived = plain;
    let samples = &mut derived.samples;
    for (temp, &kpa) in samples.temp_c.iter_mut().zip(&samples.press_kpa) {
        *temp = (cycle::steam::tsat(kpa) * 100.0).round() / 100.0;
    }
    check(&derived, CannotTell, Code::SensorDerived);
    check(&with_kpa(&derived, &[start + 20], 330.0), CannotTell, Code::SensorDerived);
}

/// A record that begins somewhere in the cycle does not prove more than the whole.
#[test]
fn beginning_late_proves_nothing_more() {
    for case in cases() {
        let (_, before) = judged(&case.record);
        let rows = case.record.samples.t_s.len();
        for from in (1..rows - 2).step_by(rows / 80 + 1) {
            let places: Vec<usize> = (from..rows).collect();
            let (_, after) = judged(&at_places(&case.record, &places));
            assert!(!proves_more(&before, &after), "{} from sample {from}", case.name);
        }
    }
    let plain = Chamber::default().record();
    let start = judged(&plain).0.plateau.unwrap().start_s as usize;
    let places: Vec<usize> = (start - 10..plain.samples.t_s.len()).collect();
    check(&at_places(&plain, &places), CannotTell, Code::Truncated);
}

/// Two cold rows, then nothing until the chamber is hot: what was done about the air is not in it.
#[test]
fn rows_missing_before_the_hold_prove_nothing_more() {
    let stalled = record("p21.csv");
    let rows = stalled.samples.t_s.len();
    let held = judged(&stalled).0.plateau.unwrap().start_s as usize;
    for until in (70..rows).step_by(rows / 60).chain([536, 537, 743, held - 5]) {
        let places: Vec<usize> = (0..2).chain(until..rows).collect();
        let (_, verdict) = judged(&at_places(&stalled, &places));
        assert_ne!(verdict.outcome, Lethal, "until {until}");
    }
}

/// Few readings show where the chamber was, not where it stayed.
#[test]
fn few_samples_are_no_hold() {
    let thinned = |hold_s: f64, step: usize| {
        let record = Chamber { hold_s, ..Chamber::default() }.record();
        let start = judged(&record).0.plateau.unwrap().start_s as usize;
        let places: Vec<usize> = (start % step..record.samples.t_s.len()).step_by(step).collect();
        at_places(&record, &places)
    };
    check(&thinned(185.0, 60), Lethal, Code::HoldMet);
    check(&thinned(185.0, 90), CannotTell, Code::GapInHold);
    check(&thinned(185.0, 180), CannotTell, Code::GapInHold);
    // Four, but with longer between them than half the least hold.
    check(&thinned(305.0, 100), CannotTell, Code::GapInHold);
}

/// Slow parts are named where the samples can show it.
#[test]
fn thinned_records_name_no_slow_parts() {
    for case in cases() {
        let rows = case.record.samples.t_s.len();
        let step = judged(&case.record).0.step_s;
        if step == 0.0 {
            continue;
        }
        let places: Vec<usize> = (0..rows).step_by((60.0 / step) as usize).collect();
        let slow = |verdict: &Verdict, code| verdict.reasons.iter().any(|r| r.code == code);
        let (_, whole) = judged(&case.record);
        let (_, thinned) = judged(&at_places(&case.record, &places));
        for code in [Code::WeakHeater, Code::CloggedFilter] {
            assert!(slow(&whole, code) || !slow(&thinned, code), "{}: {code:?}", case.name);
        }
    }
}
