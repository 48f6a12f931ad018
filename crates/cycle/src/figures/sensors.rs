//! Can the readings be believed?

use super::Plateau;
use super::view::{Stretch, View};
use crate::finding::{Code, Finding};

/// A reading that repeats itself for at least this long is looked at, seconds.
const STILL_S: f64 = 20.0;

/// Readings that stand still while something else says that they should not, from heat-up to the
/// end of the exhaust.
pub(super) fn frozen(view: &View) -> Vec<Finding> {
    let hot = |at: usize| view.temp[at] >= 100.0;
    let mut findings = Vec::new();
    for still in still_stretches(view, view.temp) {
        if hot(still.first) && temperature_stuck(view, still) {
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

/// Stretches of one value, at least 5 samples and [`STILL_S`] long.
fn still_stretches(view: &View, values: &[f64]) -> Vec<Stretch> {
    let mut found = Vec::new();
    let mut first = 0;
    for at in 1..=values.len() {
        if at < values.len() && values[at] == values[first] {
            continue;
        }
        let stretch = Stretch {
            first,
            last: at - 1,
        };
        if at - first >= 5 && view.seconds(stretch) >= STILL_S {
            found.push(stretch);
        }
        first = at;
    }
    found
}

/// Noise and control move a live probe by its last digit within seconds; a coarse column may stand
/// still for long, so there only the pressure can give it away.
fn temperature_stuck(view: &View, still: Stretch) -> bool {
    let count = still.last - still.first + 1;
    let fine = view.record.temp_resolution_k <= 0.11;
    let long = count >= 20 || count >= 8 && view.seconds(still) >= 60.0;
    if fine && long {
        return true;
    }
    let steam_moved = if view.has_pressure() {
        range(&view.sat[still.first..=still.last])
    } else {
        0.0
    };
    steam_moved > (3.0 * view.record.temp_resolution_k).max(1.5)
}

fn range(values: &[f64]) -> f64 {
    let least = values.iter().copied().fold(f64::INFINITY, f64::min);
    let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    (most - least).max(0.0)
}

/// Temperature that lies on the saturation temperature of the pressure to within rounding, through
/// heat-up and exhaust too: one sensor, worked out twice. Then nothing speaks against air.
pub(super) fn derived(view: &View) -> Option<Finding> {
    let hot: Vec<usize> = (0..view.sat.len())
        .filter(|&at| view.sat[at] >= 100.0)
        .collect();
    let (&first, &last) = (hot.first()?, hot.last()?);
    // 1 kPa is less than 0.28 K from 100 °C on, 0.11 K at 134 °C.
    let rounding = |at: usize| {
        let kelvin_per_kpa = if view.sat[at] < 120.0 { 0.28 } else { 0.16 };
        0.5 * view.record.temp_resolution_k
            + 0.5 * view.record.press_resolution_kpa * kelvin_per_kpa
            + 0.02
    };
    let coarse = view.record.temp_resolution_k > 0.11 || view.record.press_resolution_kpa > 1.01;
    let off = hot
        .iter()
        .filter(|&&at| (view.temp[at] - view.sat[at]).abs() > rounding(at))
        .count();
    if coarse || hot.len() < 30 || off > 0 {
        return None;
    }
    let text = format!(
        "temperature lies on the saturation temperature of the pressure to within rounding in all {} readings above 100 °C: one was worked out from the other",
        hot.len()
    );
    Some(view.finding(Code::SensorDerived, text, Stretch { first, last }))
}

/// Measured temperature against the saturation temperature of the pressure, over the hold.
pub(super) fn saturation(view: &View, run: Stretch, plateau: &Plateau) -> Option<Finding> {
    let mean = plateau.satdev_mean_k?;
    let text = |what: &str| {
        let side = if mean < 0.0 { "colder" } else { "hotter" };
        format!(
            "over the hold the chamber is {:.1} K {side} than saturated steam of its pressure: {what}",
            mean.abs()
        )
    };
    let (code, what) = if mean < -view.rules.saturation_k {
        (Code::AirLeft, "air was left in, or a sensor is wrong")
    } else if mean > view.rules.saturation_k {
        (
            Code::Superheat,
            "the steam was superheated, or a sensor is wrong",
        )
    } else if mean < -view.rules.suspect_k {
        (Code::AirLeft, "some air, or a sensor that is off")
    } else if mean > view.rules.suspect_k {
        (Code::SensorOffset, "a sensor is off")
    } else {
        return None;
    };
    Some(view.finding(code, text(what), run))
}
