//! The stretch at temperature: how long, how hot, how near to saturation.

use super::Plateau;
use super::view::{HEAT_SLACK_K, Stretch, View, reach};
use crate::extent::{extent, greater, steps};

/// Figures of a stretch; the deviation only where there is pressure.
pub(super) fn plateau(view: &View, stretch: Stretch) -> Plateau {
    let inside = stretch.first..=stretch.last;
    let (min_c, max_c) = extent(&view.temp[inside.clone()]);
    let count = (stretch.last - stretch.first + 1) as f64;
    let (mut sum, mut most) = (0.0, 0.0_f64);
    if view.has_pressure() {
        for (temp, sat) in view.temp[inside.clone()].iter().zip(&view.sat[inside]) {
            let deviation = temp - sat;
            sum += deviation;
            most = greater(most, deviation.abs());
        }
    }
    let lines = &view.record.samples.line;
    let (from, to) = (lines[stretch.first], lines[stretch.last]);
    Plateau {
        start_s: view.t[stretch.first],
        end_s: view.t[stretch.last],
        min_c,
        max_c,
        satdev_mean_k: view.has_pressure().then_some(sum / count),
        satdev_maxabs_k: view.has_pressure().then_some(most),
        lines: (from.min(to), from.max(to)),
    }
}

/// The stretch without its first seconds; `None` where nothing is left.
pub(super) fn steady(view: &View, stretch: Stretch) -> Option<Stretch> {
    let from = view.t[stretch.first] + view.rules.settle_s;
    let first = (stretch.first..=stretch.last).find(|&at| view.t[at] >= from)?;
    Some(Stretch { first, ..stretch })
}

/// Samples of a stretch, and the longest interval between two of them, seconds.
pub(super) fn samples(view: &View, stretch: Stretch) -> (usize, f64) {
    let t = &view.t[stretch.first..=stretch.last];
    (t.len(), steps(t).1.max(0.0))
}

/// Longest hold within the band above the set temperature, seconds; given the longest of all and the
/// hottest reading of the record.
pub(super) fn in_band_s(view: &View, (hold, set_c): (Stretch, f64), hottest: f64) -> f64 {
    let gate = view.gate(set_c);
    let top = set_c + view.rules.band_k + 1e-6;
    if hottest <= top {
        return view.seconds(hold);
    }
    let in_band = |at| view.at_heat(at, set_c, gate) && view.temp[at] <= top;
    reach(view.temp, set_c - HEAT_SLACK_K)
        .and_then(|within| view.longest_stretch(within, in_band))
        .map_or(0.0, |stretch| view.seconds(stretch))
}

/// Longest hold by the saturation temperature of the pressure, seconds.
pub(super) fn by_pressure_s(view: &View, set_c: f64) -> Option<f64> {
    view.has_pressure().then(|| {
        let least = set_c - view.rules.pressure_slack_k;
        reach(&view.sat, least)
            .and_then(|within| view.longest_stretch(within, |at| view.sat[at] >= least))
            .map_or(0.0, |stretch| view.seconds(stretch))
    })
}

/// The longest interval without samples at which the chamber may have been at the set temperature.
///
/// Either end within 15 K of it is enough; so is an interval at least as long as the hold, before
/// the set temperature was ever seen, with a warm chamber after it.
pub(super) fn gap_at_heat(view: &View, set_c: f64, needed_s: f64) -> Option<(f64, f64)> {
    if view.unbroken {
        return None;
    }
    let first_at_set = view.temp.iter().position(|&temp| temp >= set_c - 1e-6);
    let mut longest: Option<(f64, f64)> = None;
    for at in (1..view.len()).filter(|&at| view.may_hide(at)) {
        let (from, to) = (view.t[at - 1], view.t[at]);
        let near = view.temp[at - 1].max(view.temp[at]) >= set_c - 15.0;
        let hides_all = first_at_set.is_none_or(|first| first >= at)
            && to - from >= needed_s
            && view.temp[at] >= 60.0;
        if (near || hides_all) && longest.is_none_or(|(a, b)| b - a < to - from) {
            longest = Some((from, to));
        }
    }
    longest
}

/// An open chamber is no hotter than this, °C.
const OPEN_C: f64 = 90.0;

/// A chamber that only waits changes no more than this between two samples, K (common practice, no
/// source): pulses of steam leave it warmer.
const WAITS_K: f64 = 5.0;

/// The longest interval without samples before the hold of which one end at least lies a tenth off
/// the air pressure, or over which the chamber got warmer or colder.
pub(super) fn gap_before(view: &View, hold: Stretch) -> Option<(f64, f64)> {
    if !view.has_pressure() || view.unbroken {
        return None;
    }
    // On the way from a vacuum to steam the pressure passes that of the air; the chamber is hot then.
    let off =
        |at: usize| (view.press[at] - view.air).abs() > 0.1 * view.air || view.temp[at] > OPEN_C;
    let warmed = |at: usize| (view.temp[at] - view.temp[at - 1]).abs() > WAITS_K;
    let gaps =
        (1..=hold.first).filter(|&at| view.may_hide(at) && (off(at - 1) || off(at) || warmed(at)));
    gaps.map(|at| (view.t[at - 1], view.t[at]))
        .reduce(|a, b| if b.1 - b.0 > a.1 - a.0 { b } else { a })
}
