//! What lies below the last digit or between two samples decides nothing unsaid.

use crate::chambers::Chamber;
use crate::records::{cases, judged};
use cycle::finding::Code;
use cycle::record::CycleRecord;
use release::verdict::{Outcome, Verdict};

/// What the record would have shown with noise of half a digit: one reading in four moves by one
/// last digit up or down, other ones for every seed.
fn unrest(record: &CycleRecord, seed: u32) -> CycleRecord {
    let mut state = seed;
    // A plain congruential sequence (constants from memory of Numerical Recipes), so that a
    // failure comes again.
    let mut digit = || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        [-1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0][(state >> 29) as usize]
    };
    let mut moved = record.clone();
    moved.samples.temp_c.iter_mut().for_each(|t| *t += record.temp_resolution_k * digit());
    moved.samples.press_kpa.iter_mut().for_each(|p| *p += record.press_resolution_kpa * digit());
    moved
}

/// The verdict says itself that it stands on a border.
fn on_border(verdict: &Verdict) -> bool {
    // The leak is seen in the last seconds of one vacuum, so with few digits it has a wide border.
    let border =
        |code| matches!(code, Code::HoldBorder | Code::SetUnclear | Code::Dip | Code::GasketLeak);
    verdict.reasons.iter().any(|reason| border(reason.code))
}

#[test]
fn noise_below_the_last_digit_flips_nothing_but_at_a_border() {
    let mut firm = 0;
    for case in cases() {
        let (_, before) = judged(&case.record);
        // There the want of any noise is itself what was found.
        if before.reasons[0].code == Code::SensorFrozen {
            continue;
        }
        for seed in 1..=8 {
            let (_, after) = judged(&unrest(&case.record, seed));
            if before.outcome == after.outcome {
                firm += 1;
                continue;
            }
            let said = format!("{}: {:?} {:?}", case.name, before.reasons, after.reasons);
            assert!(on_border(&before) || on_border(&after), "{said}");
            assert!([before.outcome, after.outcome].contains(&Outcome::CannotTell), "{said}");
        }
    }
    assert!(firm > 250, "{firm}");
}

/// Every so many samples only.
fn thinned(record: &CycleRecord, each: usize) -> CycleRecord {
    let mut fewer = record.clone();
    let samples = &mut fewer.samples;
    for column in [&mut samples.t_s, &mut samples.temp_c, &mut samples.press_kpa] {
        *column = column.iter().copied().step_by(each).collect();
    }
    samples.line = samples.line.iter().copied().step_by(each).collect();
    fewer
}

/// The longest time between two samples at the set temperature that stand around colder ones.
fn longest_dip_s(record: &CycleRecord, from: f64, to: f64, set_c: f64) -> f64 {
    let samples = &record.samples;
    let hot: Vec<f64> = (0..samples.t_s.len())
        .filter(|&at| {
            samples.t_s[at] >= from && samples.t_s[at] <= to && samples.temp_c[at] >= set_c
        })
        .map(|at| samples.t_s[at])
        .collect();
    hot.windows(2).map(|pair| pair[1] - pair[0]).fold(0.0, f64::max)
}

/// A hold of 240 s at one sample a second, with a dip in its middle.
fn dipped(seconds: usize) -> CycleRecord {
    let mut record = Chamber::default().record();
    let plateau = judged(&record).0.plateau.unwrap();
    let middle = (0.5 * (plateau.start_s + plateau.end_s)) as usize;
    record.samples.temp_c[middle..middle + seconds].fill(133.5);
    record
}

/// Thinning may hide what is shorter than the step, nothing else, and the step is said.
#[test]
fn thinning_hides_no_more_than_the_step_that_is_reported() {
    let mut records: Vec<CycleRecord> = cases().into_iter().map(|case| case.record).collect();
    records.extend([1, 3, 7, 12, 29, 60].map(dipped));
    let mut hidden = 0;
    for (n, record) in records.iter().enumerate() {
        let (figures, before) = judged(record);
        for each in [2, 3, 5, 8, 13, 30] {
            let fewer = thinned(record, each);
            if fewer.samples.t_s.len() < 3 {
                continue;
            }
            let (thin, after) = judged(&fewer);
            let step = figures.step_s * each as f64;
            assert!((thin.step_s - step).abs() <= 0.2 * step, "{n} {each}: {}", thin.step_s);
            if after.outcome != Outcome::Lethal || before.outcome == Outcome::Lethal {
                continue;
            }
            hidden += 1;
            let (set_c, _) = thin.set_c.unwrap();
            let plateau = thin.plateau.unwrap();
            let dip = longest_dip_s(record, plateau.start_s, plateau.end_s, set_c);
            // From the last sample before the dip to the first behind it.
            assert!(dip <= thin.step_s + figures.step_s, "{n} {each}: {dip} s hidden");
        }
    }
    assert!(hidden > 0);
}
