//! Can the readings be believed?

use super::Plateau;
use super::view::{Stretch, View, reach};
use crate::extent::extent;
use crate::finding::{Code, Finding};
use measure::maths;

/// A reading that repeats itself for at least this long is looked at, seconds.
const STILL_S: f64 = 20.0;

/// Readings that stand still while something else says that they should not, from heat-up to the
/// end of the exhaust. `run` is the hold.
pub(super) fn frozen(view: &View, run: Option<Stretch>) -> Vec<Finding> {
    let hot = |at: usize| view.temp[at] >= 100.0;
    let mut findings = Vec::new();
    for still in still_stretches(view, view.temp) {
        if hot(still.first) && temperature_stuck(view, still, run) {
            let text = format!(
                "temperature stands at {:.1} °C to the last digit for {:.0} s ({} readings)",
                view.temp[still.first],
                view.seconds(still),
                still.last - still.first + 1
            );
            findings.push(view.finding(Code::SensorFrozen, text, still));
        }
    }
    for still in still_stretches(view, view.press) {
        let moved = range(&view.temp[still.first..=still.last]);
        if view.press[still.first] > view.air + 50.0 && moved > 3.0 {
            let text = format!(
                "pressure stands at {:.1} kPa to the last digit for {:.0} s while temperature moves by {moved:.1} K",
                view.press[still.first],
                view.seconds(still)
            );
            findings.push(view.finding(Code::SensorFrozen, text, still));
        }
    }
    findings
}

/// Samples that make a still stretch at least.
const STILL_SAMPLES: usize = 5;

/// Stretches of one value, at least [`STILL_SAMPLES`] and [`STILL_S`] long.
fn still_stretches(view: &View, values: &[f64]) -> Vec<Stretch> {
    let mut found = Vec::new();
    let mut first = 0;
    // Fewer samples are not that long even if all intervals are as long as the longest. A hair is
    // taken off for rounding.
    let least = STILL_S / view.longest_step * (1.0 - 1e-9);
    let least = (least as usize + 1).max(STILL_SAMPLES);
    while let Some(next) = values.get(first..first + least) {
        // No stretch that is long enough begins before the last change among the next few.
        if let Some(change) = (1..least).rev().find(|&k| next[k] != next[k - 1]) {
            first += change;
            continue;
        }
        let same = values[first..].iter().take_while(|value| **value == next[0]).count();
        let stretch = Stretch { first, last: first + same - 1 };
        if view.seconds(stretch) >= STILL_S {
            found.push(stretch);
        }
        first += same;
    }
    found
}

/// Would chance alone let a stretch of this length stand still once in five hundred holds?
///
/// Noise and control move a live probe by its last digit now and then; how often shows in the rest
/// of the hold. A coarse column stands still most of the time, and is not suspected for it. Apart
/// from that, steam that moves by more than 1.5 K over eight readings moves a live probe.
fn temperature_stuck(view: &View, still: Stretch, run: Option<Stretch>) -> bool {
    let steam_moved =
        if view.has_pressure() { range(&view.sat[still.first..=still.last]) } else { 0.0 };
    let several = still.last - still.first >= 7;
    if several && steam_moved > (3.0 * view.record.temp_resolution_k).max(1.5) {
        return true;
    }
    let Some(run) = run.filter(|run| still.first <= run.last && still.last >= run.first) else {
        return false;
    };
    let outside = |at: &usize| *at < still.first || *at >= still.last;
    let pairs: Vec<usize> = (run.first..run.last).filter(outside).collect();
    let equal = pairs.iter().filter(|&&at| view.temp[at] == view.temp[at + 1]).count();
    // Too few pairs are left to learn from: seven in ten equal is as still as live probes get.
    let share =
        if pairs.len() < 10 { 0.7 } else { (equal as f64 + 1.0) / (pairs.len() as f64 + 2.0) };
    // Between two swings of the control a live probe is stiller than on average, the more so the
    // closer the samples lie.
    let share = share.max(if view.step <= 5.0 { 0.5 } else { 0.35 });
    let samples = (run.last - run.first + 1) as f64;
    let by_chance = samples * maths::pow(share, (still.last - still.first) as f64);
    by_chance < 0.002
}

fn range(values: &[f64]) -> f64 {
    let (least, most) = extent(values);
    (most - least).max(0.0)
}

/// Temperature that lies on the saturation temperature of the pressure to within rounding, through
/// heat-up and exhaust too: one sensor, worked out twice. Then nothing speaks against air.
pub(super) fn derived(view: &View) -> Option<Finding> {
    let coarse = view.record.temp_resolution_k > 0.11 || view.record.press_resolution_kpa > 1.01;
    let hot = view.sat.iter().filter(|&&sat| sat >= 100.0).count();
    if coarse || hot < 30 {
        return None;
    }
    // 1 kPa is less than 0.28 K from 100 °C on, 0.11 K at 134 °C.
    let rounding = |kelvin_per_kpa: f64| {
        0.5 * view.record.temp_resolution_k
            + 0.5 * view.record.press_resolution_kpa * kelvin_per_kpa
            + 0.02
    };
    let (below_120, above) = (rounding(0.28), rounding(0.16));
    let is_off = |&(&temp, &sat): &(&f64, &f64)| {
        sat >= 100.0 && (temp - sat).abs() > if sat < 120.0 { below_120 } else { above }
    };
    let off = view.temp.iter().zip(&view.sat).filter(is_off).count();
    // A reading now and then may have been disturbed on its way.
    if off * 50 > hot {
        return None;
    }
    let inside = reach(&view.sat, 100.0)?;
    let text = format!(
        "temperature lies on the saturation temperature of the pressure to within rounding in {} of {} readings above 100 °C: one was worked out from the other",
        hot - off,
        hot
    );
    Some(view.finding(Code::SensorDerived, text, inside))
}

/// Measured temperature against the saturation temperature of the pressure, over the hold.
pub(super) fn saturation(view: &View, run: Stretch, plateau: &Plateau) -> Option<Finding> {
    let mean = plateau.satdev_mean_k?;
    let near = (mean.abs() - view.rules.saturation_k).abs() <= super::NEAR_SATURATION_K;
    let border = if near { ", at the border of what is let pass" } else { "" };
    let text = |what: &str| {
        let side = if mean < 0.0 { "colder" } else { "hotter" };
        format!(
            "over the hold the chamber is {:.1} K {side} than saturated steam of its pressure{border}: {what}",
            mean.abs()
        )
    };
    let (code, what) = if mean < -view.rules.saturation_k {
        (Code::AirLeft, "air was left in, or a sensor is wrong")
    } else if mean > view.rules.saturation_k {
        (Code::Superheat, "the steam was superheated, or a sensor is wrong")
    } else if mean < -view.rules.suspect_k {
        (Code::AirLeft, "some air, or a sensor that is off")
    } else if mean > view.rules.suspect_k {
        (Code::SensorOffset, "a sensor is off")
    } else {
        return None;
    };
    Some(view.finding(code, text(what), run))
}
