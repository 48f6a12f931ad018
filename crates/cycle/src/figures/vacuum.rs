//! What the vacuums before the hold prove.
//!
//! One reading of the pressure may be a disturbance, or one that somebody typed. So pulses are
//! looked for here on a curve from which single readings are taken out, and a depth counts where
//! the reading next to it goes most of the way.

use super::view::{Stretch, View};
use super::{heat, leak};
use crate::extent::{greater, lesser};

/// A depth counts where the reading before or behind it is no further away than this, kPa: at 10 s
/// a sample a pump goes no faster near its end (common practice, no source).
const NEXT_KPA: f64 = 15.0;

/// What is sure of the vacuums.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Vacuums {
    /// Depth of each, kPa.
    pub depths_kpa: Vec<f64>,
    /// Leak while the first was held, kPa/min.
    pub leak_kpa_per_min: Option<f64>,
    /// None got as deep as one should, and in one at least the pump levelled off.
    pub stalled: bool,
}

/// The vacuums before the set temperature is first reached.
pub(super) fn before_hold(view: &View, hold: Stretch, set_c: f64) -> Vacuums {
    let calm = calmed(view);
    let calm = view.with_pressure(&calm);
    let top = view.first_at_heat(hold.first, set_c).unwrap_or(hold.first);
    let vacuums = heat::vacuums(&calm, top);
    let depths_kpa: Vec<f64> =
        vacuums.iter().map(|&(vacuum, calm_kpa)| depth(view, vacuum).unwrap_or(calm_kpa)).collect();
    // Only the first: in later ones water boils off the load, which looks the same.
    let leak_kpa_per_min = vacuums.first().and_then(|&(first, _)| leak::in_vacuum(view, first));
    // A gap may hide one of them; a single deep one shows that the pump can.
    let stalled = depths_kpa.iter().all(|&kpa| kpa > view.rules.stalled_kpa)
        && vacuums.iter().any(|&(vacuum, kpa)| leak::stalled(&calm, vacuum, kpa));
    Vacuums { depths_kpa, leak_kpa_per_min, stalled }
}

/// Readings before and behind, where no gap lies between.
fn beside(view: &View, at: usize) -> (Option<f64>, Option<f64>) {
    let near = |a: usize, b: usize| view.t[b] - view.t[a] <= view.longest;
    let before = at.checked_sub(1).filter(|&before| near(before, at));
    let behind = Some(at + 1).filter(|&behind| behind < view.len() && near(at, behind));
    (before.map(|at| view.press[at]), behind.map(|at| view.press[at]))
}

/// The pressure without what only one reading shows: the middle one of three; at an end, of two the
/// one nearer to the air pressure.
fn calmed(view: &View) -> Vec<f64> {
    let middle = |at: usize| {
        let here = view.press[at];
        match beside(view, at) {
            (Some(a), Some(b)) => a.min(b).max(here.min(a.max(b))),
            (Some(next), None) | (None, Some(next)) => {
                if (next - view.air).abs() < (here - view.air).abs() { next } else { here }
            }
            (None, None) => view.air,
        }
    };
    if !view.unbroken || view.len() < 2 {
        return (0..view.len()).map(middle).collect();
    }
    let last = view.len() - 1;
    let mut calm = Vec::with_capacity(view.len());
    calm.push(middle(0));
    // Within the record every reading has both neighbours.
    calm.extend(
        view.press
            .array_windows()
            .map(|&[a, here, b]| greater(lesser(a, b), lesser(here, greater(a, b)))),
    );
    calm.push(middle(last));
    calm
}

/// The deepest reading that another one bears out.
fn depth(view: &View, vacuum: Stretch) -> Option<f64> {
    let borne_out = |at: &usize| {
        let (before, behind) = beside(view, *at);
        let near = |kpa: f64| (kpa - view.press[*at]).abs() <= NEXT_KPA;
        before.is_some_and(near) || behind.is_some_and(near)
    };
    (vacuum.first..=vacuum.last).filter(borne_out).map(|at| view.press[at]).reduce(f64::min)
}
