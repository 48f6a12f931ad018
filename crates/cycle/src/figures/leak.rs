//! How fast air comes into a chamber that should be tight.

use super::view::{Stretch, View, slope};
use super::{Leak, Phase};
use crate::extent::extent;
use crate::figures::drying;

/// Marks of a leak test, as positions among the samples.
pub(super) struct Test {
    /// The pump stops.
    pub shut: usize,
    /// The measuring time begins.
    pub measure: usize,
    /// Air is let in.
    pub inlet: usize,
    /// Air pressure is reached; `None` where the record ends before.
    pub aired: Option<usize>,
}

/// Cold, drawn to a deep vacuum, no steam.
pub(super) fn looks_like_test(view: &View, coldest_hottest: (f64, f64)) -> bool {
    if coldest_hottest.1 >= 80.0 {
        return false;
    }
    let (least, most) = extent(view.press);
    let tight = || {
        let test = marks(view);
        test.is_some_and(|test| view.t[test.inlet] - view.t[test.shut] >= 120.0)
    };
    view.has_pressure() && most <= view.air + 10.0 && least < 0.4 * view.air && tight()
}

/// The last two thirds of the closed time, at most ten minutes: five minutes to settle and ten to
/// measure is the usual method (practice summaries of EN 285, seen).
pub(super) fn marks(view: &View) -> Option<Test> {
    let last = view.len().checked_sub(1)?;
    let deepest = (0..=last).min_by(|&a, &b| view.press[a].total_cmp(&view.press[b]))?;
    let aired =
        (deepest..=last).find(|&at| view.press[at] >= view.air - 2.0_f64.max(view.rise() / 2.0));
    let inlet = aired.map_or(last, |aired| drying::air_inlet(view, deepest, aired));
    let nearly = view.press[deepest] + 0.5 * view.record.press_resolution_kpa + 0.2;
    let shut = (0..=deepest).find(|&at| view.press[at] <= nearly)?;
    let measured_s = ((view.t[inlet] - view.t[shut]) * 2.0 / 3.0).min(600.0);
    let measure = (shut..=inlet).find(|&at| view.t[at] >= view.t[inlet] - measured_s)?;
    Some(Test { shut, measure, inlet, aired })
}

/// Rise per minute over the measuring time, each pressure brought to the temperature at its
/// beginning: a closed gas follows its absolute temperature.
pub(super) fn figures(view: &View, test: &Test) -> Option<Leak> {
    let inside = test.measure..test.inlet + 1;
    let t = &view.t[inside.clone()];
    let kelvin = |at: usize| view.temp[at] + crate::steam::KELVIN;
    let start = kelvin(test.measure);
    let press: Vec<f64> = inside.map(|at| view.press[at] * start / kelvin(at)).collect();
    let kpa_per_min = slope(t, &press)? * 60.0;
    let half = t.len() / 2;
    let early = slope(&t[..half], &press[..half]);
    let late = slope(&t[half..], &press[half..]);
    let moisture = match (early, late) {
        // Air comes in evenly; water boils off and levels off.
        (Some(early), Some(late)) => early * 60.0 > 0.05 && late < 0.5 * early,
        _ => false,
    };
    Some(Leak { kpa_per_min, at_s: (view.t[test.measure], view.t[test.inlet]), moisture })
}

/// Phases of a leak test.
pub(super) fn phases(view: &View, test: &Test) -> Vec<Phase> {
    let last = view.len() - 1;
    let borders = [
        ("evacuate", 0, test.shut),
        ("settle", test.shut, test.measure),
        ("measure", test.measure, test.inlet),
        ("air-in", test.inlet, test.aired.unwrap_or(test.inlet)),
        ("ambient", test.aired.unwrap_or(last), last),
    ];
    borders
        .into_iter()
        .filter(|&(_, from, to)| to > from)
        .map(|(name, from, to)| Phase {
            name: name.to_owned(),
            start_s: view.t[from],
            end_s: view.t[to],
        })
        .collect()
}

/// Seconds before the end of a vacuum in which the pump is taken to be shut.
const SHUT_S: f64 = 7.0;

/// Rise while a vacuum was held, kPa/min, made less by what rounding and noise can feign; `None`
/// where the samples lie too far apart. One reading may be wrong: the worst counts that is seen
/// without one of them.
pub(super) fn in_vacuum(view: &View, vacuum: Stretch) -> Option<f64> {
    // The last sample may already have steam in it.
    let until = view.t[vacuum.last] - 0.5 * view.step;
    let inside: Vec<usize> = (vacuum.first..=vacuum.last)
        .filter(|&at| view.t[at] < until && view.t[at] >= until - SHUT_S)
        .collect();
    let (&first, &last) = (inside.first()?, inside.last()?);
    if inside.len() < 4 {
        return None;
    }
    let noise = (view.record.press_resolution_kpa / 3.0).max(0.3);
    let rise = |without: Option<usize>| {
        let kept = || (first..=last).filter(move |&at| Some(at) != without);
        let t: Vec<f64> = kept().map(|at| view.t[at]).collect();
        let press: Vec<f64> = kept().map(|at| view.press[at]).collect();
        let mean = t.iter().sum::<f64>() / t.len() as f64;
        let spread: f64 = t.iter().map(|t| (t - mean) * (t - mean)).sum();
        let rate = slope(&t, &press)?;
        Some(rate - 1.5 * noise / spread.sqrt())
    };
    let worst = std::iter::once(None).chain(inside.iter().copied().map(Some)).filter_map(rise);
    worst.reduce(f64::max).map(|rate| rate.max(0.0) * 60.0)
}

/// Did the pump level off at its depth, and stay there for more than half a minute?
pub(super) fn stalled(view: &View, vacuum: Stretch, depth_kpa: f64) -> bool {
    let nearly = depth_kpa + view.rise();
    (vacuum.first..=vacuum.last)
        .find(|&at| view.press[at] <= nearly)
        .is_some_and(|reached| view.t[vacuum.last] - view.t[reached] >= 40.0)
}
