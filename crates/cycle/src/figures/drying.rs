//! What came after the exhaust: drying, air inlet, the open chamber.

use super::heat::knee;
use super::view::{Stretch, View};
use super::{Drying, DryingRan};
use crate::extent::extent;
use crate::finding::{Code, Finding};

/// Shorter than this at air pressure is the end of a cycle, not drying, seconds.
const LEAST_S: f64 = 60.0;

/// The parts after the exhaust, as positions among the samples.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct After {
    /// Drying, from and to.
    pub drying: Option<(usize, usize)>,
    /// Under vacuum?
    pub vacuum: bool,
    /// Deepest pressure, kPa.
    pub min_kpa: f64,
    /// Air is let in, from and to.
    pub air_in: Option<(usize, usize)>,
    /// Does the record show how it ended?
    pub complete: bool,
}

/// `emptied` is the end of the exhaust.
pub(super) fn after(view: &View, emptied: usize) -> After {
    let last = view.len() - 1;
    let (min_kpa, _) = extent(&view.press[emptied..]);
    let deepest = view.press[emptied..].iter().position(|&kpa| kpa == min_kpa);
    let deepest = deepest.map_or(last, |at| emptied + at);
    if min_kpa >= view.rules.vacuum_share * view.air {
        return without_vacuum(view, emptied, min_kpa);
    }
    let nearly_air = view.air - (1.5 * view.record.press_resolution_kpa).max(2.0);
    let below = view.press[emptied..].iter().rposition(|&kpa| kpa < nearly_air);
    let aired = below.map_or(last, |at| emptied + at + 1);
    if aired > last {
        let drying = Some((emptied, last));
        return After { drying, vacuum: true, min_kpa, air_in: None, complete: false };
    }
    let inlet = air_inlet(view, deepest, aired);
    After {
        drying: (inlet > emptied).then_some((emptied, inlet)),
        vacuum: true,
        min_kpa,
        air_in: Some((inlet, aired)),
        complete: true,
    }
}

/// The last sample before air comes in. Rounded steps of a slow rise may bend the curve earlier;
/// the true inlet is where it leaves them behind.
pub(super) fn air_inlet(view: &View, deepest: usize, aired: usize) -> usize {
    let bend = knee(view.t, view.press, (deepest, aired));
    let step = (1.1 * view.record.press_resolution_kpa).max(1.0);
    let still = |at: &usize| view.press[*at] <= view.press[bend] + step;
    (bend..=aired).take_while(still).last().unwrap_or(bend)
}

/// Drying by heat alone lies at air pressure; only the probe shows when fresh air comes in.
fn without_vacuum(view: &View, emptied: usize, min_kpa: f64) -> After {
    let last = view.len() - 1;
    let rest = After { min_kpa, complete: true, ..After::default() };
    if view.t[last] - view.t[emptied] < LEAST_S {
        return rest;
    }
    let tail = (emptied..=last).find(|&at| view.t[last] - view.t[at] <= 1.5 * LEAST_S);
    let tail = tail.unwrap_or(emptied);
    let warmest = view.temp[tail..=last].iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let cools = (tail..=last).rev().find(|&at| view.temp[at] >= warmest - 0.5);
    let end = match cools {
        Some(at) if view.temp[last] < warmest - 2.0 => at,
        _ => last,
    };
    After { drying: Some((emptied, end)), ..rest }
}

/// The figures; `asked_s` is the drying time that was set, where it is known.
pub(super) fn figures(view: &View, after: Option<After>, asked_s: Option<f64>) -> Drying {
    let unknown = Drying { phase_s: None, vacuum: None, min_kpa: None, ran: DryingRan::CannotTell };
    let Some(after) = after else { return unknown };
    let seen = after.drying.map(|(from, to)| view.t[to] - view.t[from]);
    let min_kpa = after.drying.map(|_| after.min_kpa);
    if !after.complete {
        return Drying { vacuum: Some(after.vacuum), min_kpa, ..unknown };
    }
    let phase_s = seen.unwrap_or(0.0);
    // Two samples of doubt at either end, and a twentieth for clocks that count in their own way.
    let enough = |asked_s: f64| phase_s + 2.0 * view.step >= 0.95 * asked_s;
    let ran = match asked_s {
        Some(asked_s) if enough(asked_s) => DryingRan::AsSet,
        _ if after.drying.is_none() => DryingRan::None,
        Some(_) => DryingRan::Short,
        None => DryingRan::CannotTell,
    };
    Drying { phase_s: Some(phase_s), vacuum: Some(after.vacuum), min_kpa, ran }
}

/// A word on drying that ran short or not at all; `emptied` is the end of the exhaust.
pub(super) fn note(
    view: &View,
    drying: &Drying,
    emptied: Option<usize>,
    asked_s: Option<f64>,
) -> Option<Finding> {
    let stretch = Stretch { first: emptied?, last: view.len() - 1 };
    let seen_s = drying.phase_s?;
    let (code, text) = match (drying.ran, asked_s) {
        (DryingRan::None, _) => (Code::DryingNone, "no drying after the exhaust".to_owned()),
        (DryingRan::Short, Some(asked_s)) => {
            (Code::DryingShort, format!("drying ran {seen_s:.0} s of {asked_s:.0} s"))
        }
        _ => return None,
    };
    Some(view.finding(code, text, stretch))
}
