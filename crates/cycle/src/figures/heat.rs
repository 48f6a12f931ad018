//! The marks of a cycle on its pressure curve: pulses, climb, hold, exhaust, drying, air.

use super::hold;
use super::view::{Stretch, View};

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
const PULSE_KPA: f64 = 30.0;
/// Above the air pressure by no more than this, the exhaust is over, kPa.
const EMPTIED_KPA: f64 = 7.0;

/// `run` is the hold, `set_c` the set temperature where it is known.
pub(super) fn marks(view: &View, run: Option<Stretch>, set_c: Option<f64>) -> Marks {
    let peak = || {
        (0..view.len())
            .max_by(|&a, &b| view.press[a].total_cmp(&view.press[b]))
            .unwrap_or(0)
    };
    let top = run.map_or_else(peak, |run| top_of_climb(view, run, set_c));
    let turns = turns(&view.press[..=top]);
    let (mut pulses, purge, climb) = before_climb(view, &turns, top);
    // A single low hump is steam flowing through, not a pulse.
    if !pulses
        .iter()
        .any(|pulse| matches!(pulse, Pulse::Vacuum(..) | Pulse::Release(_)))
    {
        pulses.clear();
    }
    let level = run.map_or(view.press[top], |run| {
        median(&view.press[run.first..=run.last])
    });
    let held_to = run.map_or(top, |run| run.last);
    let emptied = (held_to..view.len()).find(|&at| view.press[at] <= view.air + EMPTIED_KPA);
    let end = emptied.unwrap_or(view.len().saturating_sub(1));
    let exhaust = (top..=end).rev().find(|&at| view.press[at] >= 0.96 * level);
    Marks {
        pulses,
        purge,
        climb,
        top,
        exhaust,
        emptied,
    }
}

/// The set temperature is reached when the probe reads it. Where a machine goes by pressure, and
/// air keeps the probe low or dry steam warms it late, pressure has levelled off before: then it
/// is reached there.
fn top_of_climb(view: &View, run: Stretch, set_c: Option<f64>) -> usize {
    let Some(set_c) = set_c else { return run.first };
    let gate = view.gate(set_c);
    let first = (0..=run.first)
        .find(|&at| view.at_heat(at, set_c, gate))
        .unwrap_or(run.first);
    let by_pressure = (0..=first)
        .find(|&at| view.sat[at] >= set_c)
        .unwrap_or(first);
    let levelled = view.press[by_pressure] >= 0.93 * median(&view.press[run.first..=run.last]);
    let long_before = view.t[first] - view.t[by_pressure] > 30.0;
    let superheated = hold::plateau(view, run)
        .satdev_mean_k
        .is_some_and(|mean| mean > view.rules.saturation_k);
    if levelled && (long_before || superheated) {
        by_pressure
    } else {
        first
    }
}

pub(super) fn median(values: &[f64]) -> f64 {
    let mut values = values.to_vec();
    if values.is_empty() {
        return f64::NAN;
    }
    let middle = values.len() / 2;
    *values.select_nth_unstable_by(middle, f64::total_cmp).1
}

/// Turning points of the curve, alternating low and high, each followed by a swing the other way.
fn turns(press: &[f64]) -> Vec<(usize, bool)> {
    let mut turns: Vec<(usize, bool)> = Vec::new();
    let (mut low, mut high) = (0, 0);
    // Unknown until the first swing; then: is a high being looked for?
    let mut rising: Option<bool> = None;
    for at in 0..press.len() {
        if press[at] < press[low] {
            low = at;
        }
        if press[at] > press[high] {
            high = at;
        }
        if rising != Some(false) && press[high] - press[at] >= SWING_KPA {
            turns.push((high, true));
            (rising, low) = (Some(false), at);
        } else if rising != Some(true) && press[at] - press[low] >= SWING_KPA {
            turns.push((low, false));
            (rising, high) = (Some(true), at);
        }
    }
    turns
}

/// The sample that lies farthest below (`side` -1) or above (`side` 1) the straight line from
/// `from` to `to`: where a flat part ends and a slope begins.
pub(super) fn knee(t: &[f64], values: &[f64], (from, to): (usize, usize), side: f64) -> usize {
    let span = t[to] - t[from];
    let mut best = (from, 0.0);
    for at in from..=to {
        let along = if span > 0.0 {
            (t[at] - t[from]) / span
        } else {
            0.0
        };
        let line = values[from] + along * (values[to] - values[from]);
        let away = side * (values[at] - line);
        if away > best.1 {
            best = (at, away);
        }
    }
    best.0
}

/// The last sample before pressure leaves that of the open chamber, for three samples of four: one
/// alone may be noise, and steam that finds its way out lets pressure fall back later.
fn still_open(view: &View, until: usize) -> usize {
    let first = view.press[0];
    let begin = if (first - view.air).abs() <= 3.0 {
        view.air
    } else {
        first
    };
    let most = begin + (0.6 * view.record.press_resolution_kpa).max(0.5);
    let left = |at: &usize| {
        let next = &view.press[*at..(*at + 4).min(view.len())];
        view.press[*at] > most && next.iter().filter(|&&kpa| kpa > most).count() >= 3
    };
    (0..=until)
        .find(left)
        .map_or(until, |at| at.saturating_sub(1))
}

/// Pulses from the start to the last climb.
fn before_climb(
    view: &View,
    turns: &[(usize, bool)],
    top: usize,
) -> (Vec<Pulse>, Option<usize>, usize) {
    let vacuum_below = view.rules.vacuum_share * view.air;
    let counts = |&&(at, high): &&(usize, bool)| {
        // Humps of steam flowing through an open chamber are no pulses.
        !high || view.press[at] >= view.air + PULSE_KPA || at == 0
    };
    let turns: Vec<(usize, bool)> = turns.iter().filter(counts).copied().collect();
    let mut pulses = Vec::new();
    let mut from = 0;
    let mut begun = false;
    for (place, &(at, high)) in turns.iter().enumerate() {
        if high {
            if at > from {
                let start = knee(view.t, view.press, (from, at), -1.0);
                pulses.push(Pulse::Steam(Stretch {
                    first: start,
                    last: at,
                }));
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
        let start = if begun {
            from
        } else {
            knee(view.t, view.press, (from, at), 1.0)
        };
        let next = turns.get(place + 1).map_or(top, |&(next, _)| next);
        let end = knee(view.t, view.press, (at, next), -1.0);
        let stretch = Stretch {
            first: start,
            last: end,
        };
        pulses.push(if deep {
            Pulse::Vacuum(stretch, view.press[at])
        } else {
            Pulse::Release(stretch)
        });
        begun = true;
        from = at;
    }
    let climb = knee(view.t, view.press, (from, top), -1.0);
    let purged_to = pulses.first().map_or(climb, |pulse| match *pulse {
        Pulse::Vacuum(stretch, _) | Pulse::Steam(stretch) | Pulse::Release(stretch) => {
            stretch.first
        }
    });
    let open = still_open(view, purged_to);
    let flows = view.press[purged_to] - view.press[open] > view.rise() && purged_to > open + 1;
    (pulses, flows.then_some(open), climb)
}
