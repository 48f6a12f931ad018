//! What holds for any record: less evidence never proves more.

use crate::chambers::Chamber;
use crate::records::{cases, judged};
use cycle::record::CycleRecord;
use proptest::prelude::*;
use release::verdict::Outcome;

/// The samples at these places.
pub fn at_places(record: &CycleRecord, places: &[usize]) -> CycleRecord {
    let samples = &record.samples;
    let pick = |column: &[f64]| {
        if column.is_empty() { Vec::new() } else { places.iter().map(|&at| column[at]).collect() }
    };
    let mut fewer = record.clone();
    fewer.samples.t_s = pick(&samples.t_s);
    fewer.samples.temp_c = pick(&samples.temp_c);
    fewer.samples.press_kpa = pick(&samples.press_kpa);
    fewer.samples.line = places.iter().map(|&at| samples.line[at]).collect();
    fewer
}

fn lethal(record: &CycleRecord) -> bool {
    judged(record).1.outcome == Outcome::Lethal
}

/// Cut short anywhere, a record that did not prove it does not begin to.
#[test]
fn cutting_short_never_turns_a_verdict_to_lethal() {
    for case in cases() {
        if lethal(&case.record) {
            continue;
        }
        let rows = case.record.samples.t_s.len();
        for end in (2..rows).step_by(rows / 30 + 1) {
            let places: Vec<usize> = (0..end).collect();
            assert!(!lethal(&at_places(&case.record, &places)), "{} cut to {end} rows", case.name);
        }
    }
}

/// A gap of any length anywhere proves nothing that was not proven.
#[test]
fn a_gap_never_turns_a_verdict_to_lethal() {
    for case in cases() {
        if lethal(&case.record) {
            continue;
        }
        let rows = case.record.samples.t_s.len();
        for from in (1..rows).step_by(rows / 15 + 1) {
            for length in [3, 70, 200, 900] {
                let until = from + length;
                let places: Vec<usize> = (0..rows).filter(|&at| at < from || at >= until).collect();
                let fewer = at_places(&case.record, &places);
                assert!(!lethal(&fewer), "{} without rows {from} to {until}", case.name);
            }
        }
    }
}

/// Rows put in between, on the straight line, prove nothing that was not proven.
#[test]
fn rows_in_between_never_turn_a_verdict_to_lethal() {
    for case in cases() {
        if lethal(&case.record) {
            continue;
        }
        assert!(!lethal(&denser(&case.record)), "{}", case.name);
    }
}

fn denser(record: &CycleRecord) -> CycleRecord {
    let doubled = |column: &[f64]| {
        let mut out = Vec::with_capacity(column.len() * 2);
        for pair in column.windows(2) {
            out.extend([pair[0], 0.5 * (pair[0] + pair[1])]);
        }
        out.extend(column.last());
        out
    };
    let mut denser = record.clone();
    let samples = &record.samples;
    denser.samples.t_s = doubled(&samples.t_s);
    denser.samples.temp_c = doubled(&samples.temp_c);
    denser.samples.press_kpa = doubled(&samples.press_kpa);
    denser.samples.line = (1..=denser.samples.t_s.len() as u32).collect();
    denser
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// More hold never lowers F0, and never takes a proof away.
    #[test]
    fn more_hold_never_hurts(hold in 150.0..400.0_f64, more in 1.0..200.0_f64, step in 1.0..6.0_f64) {
        let chamber = |hold_s| Chamber { hold_s, step_s: step, ..Chamber::default() };
        let (short, first) = judged(&chamber(hold).record());
        let (long, second) = judged(&chamber(hold + more).record());
        prop_assert!(long.f0_min >= short.f0_min - 1e-9);
        prop_assert!(long.f0_low_min >= short.f0_low_min - 1e-9);
        prop_assert!(first.outcome != Outcome::Lethal || second.outcome == Outcome::Lethal);
    }

    /// Whatever is lethal held its published floor, saturated, with numbers only.
    #[test]
    fn lethal_means_held_and_saturated(
        hold_s in 20.0..400.0_f64,
        above_k in -1.0..4.0_f64,
        off_k in -4.0..4.0_f64,
        stated in any::<bool>(),
        step_s in 0.5..12.0_f64,
    ) {
        let chamber = Chamber { hold_s, above_k, off_k, stated, step_s, ..Chamber::default() };
        let (figures, verdict) = judged(&chamber.record());
        if verdict.outcome == Outcome::Lethal {
            // 134 °C 3 min, 132 °C 4 min, 121 °C 15 min: Central Sterilising Club 2025, Table 10.2.
            let set_c = figures.set_c.unwrap().0;
            let floor = if set_c >= 134.0 { 180.0 } else if set_c >= 132.0 { 240.0 } else { 900.0 };
            prop_assert!(figures.hold_s >= floor);
            prop_assert!(figures.plateau.unwrap().satdev_mean_k.unwrap().abs() <= 2.0);
            prop_assert!(figures.f0_low_min > 0.0 && figures.f0_low_min <= figures.f0_min);
        }
    }

    /// Nothing that can stand in a record stops the judge.
    #[test]
    fn any_numbers_get_an_answer(
        t in proptest::collection::vec(prop_oneof![Just(f64::NAN), -10.0..5000.0_f64], 0..40),
        temp in proptest::collection::vec(prop_oneof![Just(f64::INFINITY), -300.0..500.0_f64], 0..40),
        press in proptest::collection::vec(-50.0..2000.0_f64, 0..40),
        sorted in any::<bool>(),
    ) {
        let mut record = Chamber::default().record();
        let rows = t.len().min(temp.len());
        let mut t = t[..rows].to_vec();
        if sorted {
            t.retain(|t| t.is_finite());
            t.sort_by(f64::total_cmp);
            t.dedup();
        }
        let rows = if sorted { t.len() } else { rows };
        record.samples.t_s = t;
        record.samples.temp_c = temp[..rows].to_vec();
        record.samples.press_kpa = if press.len() >= rows { press[..rows].to_vec() } else { Vec::new() };
        record.samples.line = (1..=rows as u32).collect();
        let (figures, verdict) = judged(&record);
        prop_assert!(!verdict.reasons.is_empty());
        prop_assert!(figures.phases.iter().all(|phase| phase.end_s >= phase.start_s));
    }
}
