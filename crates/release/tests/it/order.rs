//! The order of the questions, one at a time. The rules are those of the made-up records: this
//! project's own, no standard's wording.

use crate::chambers::Chamber;
use crate::records::{judged, record};
use cycle::finding::{Code, Finding};
use cycle::record::CycleRecord;
use measure::maths::pow;
use release::verdict::Outcome::{self, CannotTell, Lethal, NotLethal};

fn check(record: &CycleRecord, outcome: Outcome, code: Code) {
    let (_, verdict) = judged(record);
    let first = &verdict.reasons[0];
    assert_eq!((verdict.outcome, first.code), (outcome, code), "{:?}", verdict.reasons);
}

fn plain() -> CycleRecord {
    Chamber::default().record()
}

/// Keeps the samples whose time and temperature satisfy this.
fn keep(mut record: CycleRecord, keeps: impl Fn(f64, f64) -> bool) -> CycleRecord {
    let samples = &mut record.samples;
    let keep: Vec<bool> =
        samples.t_s.iter().zip(&samples.temp_c).map(|(&t, &temp)| keeps(t, temp)).collect();
    let mut at = keep.iter();
    samples.t_s.retain(|_| *at.next().unwrap());
    let mut at = keep.iter();
    samples.temp_c.retain(|_| *at.next().unwrap());
    let mut at = keep.iter();
    samples.press_kpa.retain(|_| *at.next().unwrap());
    let mut at = keep.iter();
    samples.line.retain(|_| *at.next().unwrap());
    record
}

fn hold_of(record: &CycleRecord) -> (f64, f64) {
    let plateau = judged(record).0.plateau.unwrap();
    (plateau.start_s, plateau.end_s)
}

#[test]
fn a_plain_cycle_is_proven() {
    check(&plain(), Lethal, Code::HoldMet);
    for (set_c, hold_s) in [(134.0, 185.0), (132.0, 245.0), (121.0, 905.0)] {
        for stated in [true, false] {
            let chamber = Chamber { set_c, hold_s, stated, ..Chamber::default() };
            let (figures, verdict) = judged(&chamber.record());
            assert_eq!(verdict.outcome, Lethal, "{chamber:?} {:?}", verdict.reasons);
            assert_eq!(figures.set_c.map(|set| set.0), Some(set_c));
            assert_eq!(verdict.conforming, stated.then_some(true), "{chamber:?}");
        }
    }
}

#[test]
fn too_short_is_failed_and_nearly_long_enough_is_open() {
    for (hold_s, outcome, code) in [
        (120.0, NotLethal, Code::HoldShort),
        (176.0, NotLethal, Code::HoldShort),
        (178.0, CannotTell, Code::HoldBorder),
        (180.0, Lethal, Code::HoldMet),
    ] {
        let record = Chamber { hold_s, ..Chamber::default() }.record();
        let (from, to) = hold_of(&record);
        assert_eq!(to - from, hold_s, "the chamber holds what it was asked to");
        check(&record, outcome, code);
    }
}

/// However long or short the hold looks, nothing is known of it.
#[test]
fn times_that_nobody_knows_leave_everything_open() {
    for hold_s in [20.0, 180.0, 3_600.0] {
        let mut record = Chamber { hold_s, ..Chamber::default() }.record();
        record.known_from.times_unclear = true;
        check(&record, CannotTell, Code::UnitUnclear);
    }
}

#[test]
fn a_record_that_stops_early_is_open() {
    let record = plain();
    let (from, to) = hold_of(&record);
    check(&keep(record.clone(), |t, _| t <= from + 100.0), CannotTell, Code::Truncated);
    check(&keep(record.clone(), |t, _| t < from - 20.0), CannotTell, Code::Truncated);
    // Complete, but how the hold went on is not known.
    check(&keep(record.clone(), |t, _| t <= from + 200.0), CannotTell, Code::Truncated);
    // After the exhaust the hold is a matter of the past.
    check(&keep(record, |t, _| t <= to + 60.0), Lethal, Code::HoldMet);
}

#[test]
fn a_gap_in_the_hold_is_open() {
    let record = plain();
    let (from, _) = hold_of(&record);
    let gap = |seconds: f64| {
        keep(record.clone(), move |t, _| t <= from + 100.0 || t >= from + 100.0 + seconds)
    };
    check(&gap(65.0), CannotTell, Code::GapInHold);
    check(&gap(55.0), Lethal, Code::HoldMet);
    let hides_all = keep(record, |t, temp| temp < 110.0 || t < 100.0);
    check(&hides_all, CannotTell, Code::GapInHold);
}

#[test]
fn without_usable_pressure_it_is_open() {
    let mut without = plain();
    without.samples.press_kpa.clear();
    check(&without, CannotTell, Code::NoPressure);
    let noticed = |code| {
        let mut record = plain();
        let text = "noticed by the reader".to_owned();
        record.findings.push(Finding { code, text, at_s: None, lines: None });
        record
    };
    check(&noticed(Code::GaugeAsAbsolute), CannotTell, Code::GaugeAsAbsolute);
    check(&noticed(Code::UnitUnclear), CannotTell, Code::UnitUnclear);
    let mut unit = plain();
    unit.known_from.temperature_unit = None;
    check(&unit, CannotTell, Code::UnitUnclear);
}

#[test]
fn steam_has_to_be_saturated() {
    for (off_k, above_k, outcome, code) in [
        (-2.3, 1.0, NotLethal, Code::AirLeft),
        (2.3, 3.0, NotLethal, Code::Superheat),
        (1.4, 1.0, CannotTell, Code::SensorOffset),
        (0.5, 1.0, Lethal, Code::HoldMet),
        (1.4, 2.0, Lethal, Code::HoldMet),
        (-1.4, 1.0, Lethal, Code::HoldMet),
    ] {
        let chamber = Chamber { off_k, above_k, ..Chamber::default() };
        check(&chamber.record(), outcome, code);
    }
}

#[test]
fn what_was_asked_for_has_to_be_clear() {
    // 133.9 °C: a cycle of 132 °C, or one of 134 °C that was missed.
    let between =
        Chamber { set_c: 132.0, above_k: 1.85, hold_s: 300.0, stated: false, ..Chamber::default() };
    check(&between.record(), CannotTell, Code::SetUnclear);
    let by_pressure = Chamber { off_k: 1.5, above_k: 0.5, stated: false, ..Chamber::default() };
    check(&by_pressure.record(), CannotTell, Code::SetUnclear);
    let unknown_set = Chamber { set_c: 115.0, hold_s: 1900.0, ..Chamber::default() };
    check(&unknown_set.record(), CannotTell, Code::SetUnclear);
    let cool = Chamber { set_c: 115.0, hold_s: 1900.0, stated: false, ..Chamber::default() };
    check(&cool.record(), NotLethal, Code::HoldShort);
}

#[test]
fn a_probe_that_cannot_be_believed_is_open() {
    let mut frozen = plain();
    let (from, _) = hold_of(&frozen);
    for (t, temp) in frozen.samples.t_s.iter().zip(&mut frozen.samples.temp_c) {
        if *t > from + 20.0 && *t < from + 150.0 {
            *temp = 135.01;
        }
    }
    check(&frozen, CannotTell, Code::SensorFrozen);
    let mut derived = plain();
    let samples = &mut derived.samples;
    for (temp, &kpa) in samples.temp_c.iter_mut().zip(&samples.press_kpa) {
        *temp = (cycle::steam::tsat(kpa) * 100.0).round() / 100.0;
    }
    check(&derived, CannotTell, Code::SensorDerived);
}

#[test]
fn a_leaking_vacuum_shows_no_air_removal() {
    let mut leaking = plain();
    let samples = &mut leaking.samples;
    // The first vacuum is held from 80 to 100 s.
    for (t, kpa) in samples.t_s.iter().zip(&mut samples.press_kpa) {
        if (80.0..=100.0).contains(t) {
            *kpa += (t - 80.0) * 0.5;
        }
    }
    check(&leaking, CannotTell, Code::GasketLeak);
}

#[test]
fn numbers_that_are_none_are_open() {
    for spoil in 0..4 {
        let mut record = plain();
        let samples = &mut record.samples;
        match spoil {
            0 => samples.temp_c[300] = f64::NAN,
            1 => samples.press_kpa[300] = f64::INFINITY,
            2 => samples.t_s[300] = f64::NAN,
            _ => samples.t_s.swap(300, 301),
        }
        check(&record, CannotTell, Code::Unreadable);
    }
    let empty = keep(plain(), |_, _| false);
    check(&empty, CannotTell, Code::Unreadable);
    let cold = keep(plain(), |t, _| t < 15.0);
    assert_eq!(judged(&cold).1.outcome, CannotTell);
}

#[test]
fn too_hot_is_proven_but_not_as_asked() {
    let (_, verdict) = judged(&Chamber { above_k: 4.5, ..Chamber::default() }.record());
    assert_eq!((verdict.outcome, verdict.conforming), (Lethal, Some(false)));
    assert!(verdict.reasons.iter().any(|reason| reason.code == Code::OverBand));
}

/// Leak tests: 1.3 mbar a minute (HTM 2010 / EN 285, as quoted at pharmapathway.com). A rise that
/// levels off is moisture, and a chamber that was hardly watched shows too little.
#[test]
fn leak_tests() {
    let test = record("p29.csv");
    let with = |rise: fn(f64) -> f64| {
        let mut test = test.clone();
        let samples = &mut test.samples;
        for (t, kpa) in samples.t_s.iter().zip(&mut samples.press_kpa) {
            if *t > 100.0 && *t < 998.0 {
                *kpa = 7.0 + rise(t - 100.0);
            }
        }
        judged(&test).1.outcome
    };
    assert_eq!(with(|t| 0.12 / 60.0 * t), Outcome::LeakPass);
    assert_eq!(with(|t| 0.14 / 60.0 * t), Outcome::LeakFail);
    assert_eq!(with(|t| 20.0 * (1.0 - pow(2.0, -t / 180.0))), CannotTell);
    check(&keep(test.clone(), |t, _| t < 300.0), CannotTell, Code::LeakRate);
}

/// Two pieces of a hold on both sides of a clock jump are one only where the jump itself leaves
/// nothing open: an hour back, a midnight without a date. Rows left out look like a jump ahead.
#[test]
fn a_clock_jump_in_the_hold_may_hide_a_gap() {
    let (from, to) = hold_of(&plain());
    for (jump, outcome, code) in [
        (-3_599.0, Lethal, Code::HoldMet),
        (-86_399.0, Lethal, Code::HoldMet),
        (3_601.0, CannotTell, Code::GapInHold),
        (2_400.0, CannotTell, Code::GapInHold),
        (-1_800.0, CannotTell, Code::GapInHold),
        (-126_230_380.0, CannotTell, Code::GapInHold),
    ] {
        let mut record = plain();
        record.integrity.clock_jumps = vec![(0.5 * (from + to), jump)];
        check(&record, outcome, code);
        // Behind the hold it does no harm.
        record.integrity.clock_jumps = vec![(to + 200.0, jump)];
        check(&record, Lethal, Code::HoldMet);
    }
}

/// A leak shows in the vacuums before the hold; rows left out there must not hide it.
#[test]
fn a_gap_in_the_air_removal_is_open() {
    let gap = |from: f64, until: f64| keep(plain(), move |t, _| t < from || t > until);
    check(&gap(40.0, 101.0), CannotTell, Code::RowsMissing);
    check(&gap(10.0, 300.0), CannotTell, Code::RowsMissing);
    check(&gap(40.0, 95.0), Lethal, Code::HoldMet);
    let mut jump = plain();
    jump.integrity.clock_jumps = vec![(60.0, 3_601.0)];
    check(&jump, CannotTell, Code::RowsMissing);
}
