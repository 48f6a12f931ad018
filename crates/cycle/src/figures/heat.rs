//! The marks of a cycle on its pressure curve: pulses, climb, hold, exhaust, drying, air.

use super::Plateau;
use super::view::{Stretch, View, reach};
use crate::extent::extent;

/// One pulse before the climb.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Pulse {
    /// Down to a vacuum: the stretch, and its deepest pressure.
    Vacuum(Stretch, f64),
    /// Up.
    Steam(Stretch),
    /// Down, but not below the air pressure.
    Release(Stretch),
}

impl Pulse {
    /// Of a vacuum the stretch and the deepest pressure.
    pub fn vacuum(self) -> Option<(Stretch, f64)> {
        match self {
            Self::Vacuum(stretch, depth) => Some((stretch, depth)),
            Self::Steam(_) | Self::Release(_) => None,
        }
    }
}

/// Where things happened, as positions among the samples.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Marks {
    /// Pulses in order.
    pub pulses: Vec<Pulse>,
    /// Steam flows through the open chamber from here to the climb, where it does.
    pub purge: Option<usize>,
    /// The last climb begins.
    pub climb: usize,
    /// It ends: the set temperature is reached, or as far as it got.
    pub top: usize,
    /// The last sample before pressure falls for good.
    pub exhaust: Option<usize>,
    /// The first sample near air pressure after that.
    pub emptied: Option<usize>,
}

/// Pressure swings smaller than this are none, kPa.
const SWING_KPA: f64 = 12.0;
/// A pulse of steam rises at least this far above the air pressure, kPa; steam that only flows
/// through an open chamber stays below.
const PULSE_KPA: f64 = 28.0;
/// A release ends no higher than this above the air pressure, kPa.
const RELEASED_KPA: f64 = 10.0;
/// Pressure held this far above the air pressure is a hold, even where the probe did not follow, kPa.
const CLIMB_KPA: f64 = 50.0;
/// Above the air pressure by no more than this, the exhaust is over, kPa.
const EMPTIED_KPA: f64 = 7.0;
/// A hot load may give off steam faster than it leaves; then this is as near as it comes, kPa.
pub(super) const STEAMING_KPA: f64 = 15.0;

/// `held` is the hold, `set_c` the set temperature where it is known.
pub(super) fn marks(view: &View, held: Option<(Stretch, Plateau)>, set_c: Option<f64>) -> Marks {
    let level = held.map(|(run, _)| median(&view.press[run.first..=run.last]));
    let (turns, top, given_up_in_vacuum) = match held.zip(level) {
        Some((held, level)) => {
            let top = top_of_climb(view, held, level, set_c);
            (turns(view.press, top), top, false)
        }
        None => {
            let turns = turns(view.press, usize::MAX);
            let (top, high) = as_far_as(view, &turns);
            (turns, top, !high)
        }
    };
    let before = turns.iter().filter(|&&(at, _)| at < top || given_up_in_vacuum && at == top);
    let (mut pulses, purge, climb) = before_climb(view, before, top);
    // A single low hump is steam flowing through, not a pulse.
    if !pulses.iter().any(|pulse| matches!(pulse, Pulse::Vacuum(..) | Pulse::Release(_))) {
        pulses.clear();
    }
    let level = level.unwrap_or(view.press[top]);
    let held_to = held.map_or(top, |(run, _)| run.last);
    let emptied = emptied(view, held_to);
    let end = emptied.unwrap_or(view.len().saturating_sub(1));
    let exhaust = (top..=end).rev().find(|&at| view.press[at] >= 0.96 * level);
    Marks { pulses, purge, climb, top, exhaust, emptied }
}

/// The vacuums of the curve before a sample, with the deepest pressure of each.
pub(super) fn vacuums(view: &View, top: usize) -> Vec<(Stretch, f64)> {
    let turns = turns(view.press, top);
    let before = turns.iter().filter(|turn| turn.0 < top);
    before_climb(view, before, top).0.into_iter().filter_map(Pulse::vacuum).collect()
}

/// Without a hold: the last turn, a climb given up or a vacuum; or the pressure that was held for
/// a minute, where the probe never followed.
fn as_far_as(view: &View, turns: &[(usize, bool)]) -> (usize, bool) {
    let (_, most) = extent(view.press);
    let held = reach(view.press, 0.9 * most)
        .and_then(|within| view.longest_stretch(within, |at| view.press[at] >= 0.9 * most));
    match held {
        Some(held) if most > view.air + CLIMB_KPA && view.seconds(held) >= 60.0 => {
            (held.first, true)
        }
        _ => turns.last().copied().unwrap_or((0, true)),
    }
}

/// Where the exhaust is over: near the air pressure, or as near as it comes before the hot load
/// gives off steam again.
fn emptied(view: &View, held_to: usize) -> Option<usize> {
    let down_to = |kpa: f64| {
        view.press[held_to..].iter().position(|&press| press <= kpa).map(|at| held_to + at)
    };
    let mut least = f64::INFINITY;
    for &kpa in &view.press[down_to(view.air + STEAMING_KPA)?..] {
        least = least.min(kpa);
        if kpa > least + view.rise() {
            break;
        }
    }
    // A rounded reading may stand for half a digit more.
    let over = view.air + EMPTIED_KPA - 0.5 * view.record.press_resolution_kpa;
    down_to(over.max(least))
}

/// The set temperature is reached when the probe reads it. Where a machine goes by pressure, and
/// air keeps the probe low or dry steam warms it late, pressure has levelled off before: then it
/// is reached there.
fn top_of_climb(
    view: &View,
    (run, plateau): (Stretch, Plateau),
    level_kpa: f64,
    set_c: Option<f64>,
) -> usize {
    let Some(set_c) = set_c else { return run.first };
    let first = view.first_at_heat(run.first, set_c).unwrap_or(run.first);
    let by_pressure = view.sat[..=first].iter().position(|&sat| sat >= set_c).unwrap_or(first);
    let levelled = view.press[by_pressure] >= 0.93 * level_kpa;
    let long_before = view.t[first] - view.t[by_pressure] > 30.0;
    let superheated = plateau.satdev_mean_k.is_some_and(|mean| mean > view.rules.saturation_k);
    if levelled && (long_before || superheated) { by_pressure } else { first }
}

pub(super) fn median(values: &[f64]) -> f64 {
    let mut values = values.to_vec();
    if values.is_empty() {
        return f64::NAN;
    }
    let middle = values.len() / 2;
    *values.select_nth_unstable_by(middle, f64::total_cmp).1
}

/// Turning points of the curve, alternating low and high, each followed by a swing the other way; all
/// of those that lie before `until`.
fn turns(press: &[f64], until: usize) -> Vec<(usize, bool)> {
    let mut turns: Vec<(usize, bool)> = Vec::new();
    let Some(&start) = press.first() else {
        return turns;
    };
    let (mut low, mut high) = ((0, start), (0, start));
    // Unknown until the first swing; then: is a high being looked for?
    let mut rising: Option<bool> = None;
    for (at, &kpa) in press.iter().enumerate() {
        if kpa < low.1 {
            low = (at, kpa);
        }
        if kpa > high.1 {
            high = (at, kpa);
        }
        if rising != Some(false) && high.1 - kpa >= SWING_KPA {
            turns.push((high.0, true));
            (rising, low) = (Some(false), (at, kpa));
        } else if rising != Some(true) && kpa - low.1 >= SWING_KPA {
            turns.push((low.0, false));
            (rising, high) = (Some(true), (at, kpa));
        }
        // The next turn lies here at the earliest, and the others behind it.
        let next = if rising == Some(true) { high.0 } else { low.0 };
        if rising.is_some() && next >= until {
            break;
        }
    }
    turns
}

/// The sample that lies farthest below the straight line from `from` to `to`: where a flat part
/// ends and a rise begins.
pub(super) fn knee(t: &[f64], values: &[f64], (from, to): (usize, usize)) -> usize {
    let span = t[to] - t[from];
    let mut best = (from, 0.0);
    for at in from..=to {
        let along = if span > 0.0 { (t[at] - t[from]) / span } else { 0.0 };
        let line = values[from] + along * (values[to] - values[from]);
        let away = line - values[at];
        if away > best.1 {
            best = (at, away);
        }
    }
    best.0
}

/// Pressure of the open chamber at the beginning.
fn open_kpa(view: &View) -> f64 {
    let first = view.press[0];
    if (first - view.air).abs() <= 3.0 { view.air } else { first }
}

/// The last sample at the pressure of the open chamber before a fall.
fn before_fall(view: &View, low: usize) -> usize {
    let least = open_kpa(view) - view.record.press_resolution_kpa.max(1.0);
    (0..=low).rev().find(|&at| view.press[at] >= least).unwrap_or(0)
}

/// The last sample before pressure rises above that of the open chamber, and stays there for most
/// of eight samples, or clearly for most of four: one alone may be noise, and steam that finds its
/// way out lets pressure fall back later.
fn before_steam(view: &View, until: usize) -> usize {
    let open = open_kpa(view);
    let little = open + (0.6 * view.record.press_resolution_kpa).max(0.5);
    let most_of = |at: usize, next: usize, kpa: f64| {
        let next = &view.press[at..(at + next).min(view.len())];
        view.press[at] > kpa
            && next.iter().filter(|&&press| press > kpa).count() * 8 > next.len() * 6
    };
    (0..=until)
        .find(|&at| most_of(at, 8, little) || most_of(at, 4, open + 4.0))
        .map_or(until, |at| at.saturating_sub(1))
}

/// The turns that are pulses. A low well above the air pressure is a swing of the climb, or steam
/// flowing through an open chamber, and so is the high before it.
fn pulse_turns<'t>(
    view: &View,
    turns: impl Iterator<Item = &'t (usize, bool)>,
) -> Vec<(usize, bool)> {
    let vacuum_below = view.rules.vacuum_share * view.air;
    let mut kept: Vec<(usize, bool)> = Vec::new();
    for &(at, high) in turns {
        let after_vacuum =
            kept.last().is_some_and(|last| !last.1 && view.press[last.0] < vacuum_below);
        if high && view.press[at] < view.air + PULSE_KPA && !after_vacuum {
            continue;
        }
        if !high && view.press[at] > view.air + RELEASED_KPA {
            kept.pop_if(|last| last.1);
        } else if kept.last().is_none_or(|last| last.1 != high) {
            kept.push((at, high));
        } else if high && kept.last().is_some_and(|last| view.press[last.0] < view.press[at]) {
            kept.pop();
            kept.push((at, high));
        }
    }
    // The climb itself is no pulse.
    kept.pop_if(|last| last.1);
    kept
}

/// Where a low ends and the rise to `next` begins. The curve may bend again later: a bend above
/// the vacuum is another matter, and then only the first quarter of the rise is looked at.
fn foot(view: &View, low: usize, next: usize) -> usize {
    let vacuum_below = view.rules.vacuum_share * view.air;
    let bend = knee(view.t, view.press, (low, next));
    if view.press[low] >= vacuum_below || view.press[bend] < vacuum_below {
        return bend;
    }
    let quarter = view.press[low] + 0.25 * (view.press[next] - view.press[low]);
    let risen = (low..=next).find(|&at| view.press[at] > quarter).unwrap_or(next);
    knee(view.t, view.press, (low, risen))
}

/// Pulses from the start to the last climb.
fn before_climb<'t>(
    view: &View,
    turns: impl Iterator<Item = &'t (usize, bool)>,
    top: usize,
) -> (Vec<Pulse>, Option<usize>, usize) {
    let vacuum_below = view.rules.vacuum_share * view.air;
    let turns = pulse_turns(view, turns);
    let mut pulses = Vec::new();
    let mut from = 0;
    let mut begun = false;
    for (place, &(at, high)) in turns.iter().enumerate() {
        if high {
            if at > from {
                let start = foot(view, from, at);
                pulses.push(Pulse::Steam(Stretch { first: start, last: at }));
                begun = true;
            }
            from = at;
            continue;
        }
        let deep = view.press[at] < vacuum_below;
        let fell = deep || begun && turns.get(place.wrapping_sub(1)).is_some_and(|turn| turn.1);
        if !fell {
            continue;
        }
        let start = if begun { from } else { before_fall(view, at) };
        let next = turns.get(place + 1).map_or(top, |&(next, _)| next);
        let end = foot(view, at, next);
        let stretch = Stretch { first: start, last: end };
        pulses.push(if deep {
            Pulse::Vacuum(stretch, view.press[at])
        } else {
            Pulse::Release(stretch)
        });
        begun = true;
        from = at;
    }
    let climb = foot(view, from, top);
    let purged_to = pulses.first().map_or(climb, |pulse| match *pulse {
        Pulse::Vacuum(stretch, _) | Pulse::Steam(stretch) | Pulse::Release(stretch) => {
            stretch.first
        }
    });
    let open = before_steam(view, purged_to);
    let flows = view.press[purged_to] - view.press[open] > view.rise() && purged_to > open + 1;
    (pulses, flows.then_some(open), climb)
}
