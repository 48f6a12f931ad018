//! What can be proven about a tray without laying anything: conservative scales (Fekete and
//! Schepers 2004, "A general framework for bounds for higher-dimensional orthogonal packing
//! problems").
//!
//! A scale gives every side length another length, such that whatever fits side by side still
//! fits. Here any weights are a scale: its room is the most that fits side by side, worked out by
//! a knapsack over whole millimetres. With one scale across and one in depth, the scaled areas of
//! all that lies on a tray are never more than the scaled tray. A pouch lies one way or the other,
//! so the ways are counted apart.

use super::kinds::{Kind, MOST_KINDS};
use super::work::Work;

/// A rule that every full tray keeps: the needs of what lies on it are never more than its room.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rule {
    /// Room of the tray.
    pub room: i64,
    /// Need of each kind: as it is, turned.
    pub need: [[i64; 2]; MOST_KINDS],
}

/// A scale along one axis: the values of the sides, and the most that fits side by side.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Scale {
    values: Vec<i64>,
    room: i64,
}

/// The rules of a tray of this size, the strongest of all pairs of scales; of fewer pairs where that
/// would take too long.
pub fn rules(kinds: &[Kind], (across, depth): (i32, i32), work: &mut Work) -> Vec<Rule> {
    let mut sides: Vec<i32> = kinds.iter().flat_map(|kind| [kind.short, kind.long]).collect();
    sides.sort_unstable();
    sides.dedup();
    let mut first = work.share(3, |work| scales(&sides, across, work));
    let mut second = work.share(2, |work| scales(&sides, depth, work));
    // All pairs are compared with all pairs.
    while COMPARED * (first.len() * second.len()).pow(2) as u64 > work.left() {
        let longer = if first.len() > second.len() { &mut first } else { &mut second };
        longer.pop();
    }
    work.spend(COMPARED as usize * (first.len() * second.len()).pow(2));
    let mut rules: Vec<Rule> = Vec::new();
    for a in &first {
        for b in &second {
            let need = |(x, y): (i32, i32)| value(&sides, a, x) * value(&sides, b, y);
            let mut rule = Rule { room: a.room * b.room, need: [[0; 2]; MOST_KINDS] };
            for (own, kind) in rule.need.iter_mut().zip(kinds) {
                *own = [need(kind.sides(false)), need(kind.sides(true))];
            }
            rules.push(rule);
        }
    }
    strongest(rules, |rule| (rule.room, rule.need.as_flattened().to_vec()))
}

fn value(sides: &[i32], scale: &Scale, side: i32) -> i64 {
    sides.binary_search(&side).ok().and_then(|at| scale.values.get(at)).copied().unwrap_or(0)
}

/// Keeps what no other one says already.
fn strongest<T: Clone>(all: Vec<T>, parts: impl Fn(&T) -> (i64, Vec<i64>)) -> Vec<T> {
    let split: Vec<(i64, Vec<i64>)> = all.iter().map(parts).collect();
    let over = |(room, needs): &(i64, Vec<i64>), (other_room, others): &(i64, Vec<i64>)| {
        needs.iter().zip(others).all(|(a, b)| {
            i128::from(*a) * i128::from(*other_room) >= i128::from(*b) * i128::from(*room)
        })
    };
    let kept = |at: &usize| {
        let own = &split[*at];
        own.0 > 0
            && !split.iter().enumerate().any(|(i, other)| {
                i != *at && other.0 > 0 && over(other, own) && (i < *at || !over(own, other))
            })
    };
    (0..all.len()).filter(kept).map(|at| all[at].clone()).collect()
}

/// What comparing two rules costs, and making one.
const COMPARED: u64 = 8;

fn scales(sides: &[i32], room: i32, work: &mut Work) -> Vec<Scale> {
    let usable: Vec<i32> = sides.iter().copied().filter(|&side| side <= room).collect();
    let mut found: Vec<Scale> = Vec::new();
    let once = usable.len() * usize::try_from(room).unwrap_or(0);
    for start in starts(&usable, room) {
        // The first, the lengths themselves, is always there: the rule of area.
        if !found.is_empty() && !work.spend(once + COMPARED as usize * 6 * found.len()) {
            break;
        }
        let most = best(&usable, &start, room, None);
        let whole = most.last().copied().unwrap_or(0);
        found.push(Scale { values: start.clone(), room: whole });
        for small_first in [true, false] {
            if !work.spend(usable.len() * once) {
                break;
            }
            found.push(lifted(
                &usable,
                Scale { values: start.clone(), room: whole },
                room,
                small_first,
            ));
        }
    }
    strongest(found, |scale| (scale.room, scale.values.clone()))
}

/// Weights to begin with: the length itself, rounded multiples, only what is long, counts.
fn starts(sides: &[i32], room: i32) -> Vec<Vec<i64>> {
    let wide: Vec<i64> = sides.iter().map(|&side| i64::from(side)).collect();
    let full = best(sides, &wide, room, None).last().copied().unwrap_or(0).max(1);
    let mut found = vec![wide.clone()];
    for k in 1..=7_i64 {
        let rounded = |&side: &i64| {
            let times = (k + 1) * side;
            if times % full == 0 { side * k } else { times / full * full }
        };
        found.push(wide.iter().map(rounded).collect());
    }
    // 2520 can be divided by all of 1 to 10.
    found.push(wide.iter().map(|&side| 2520 / (i64::from(room) / side).max(1)).collect());
    for &least in &wide {
        found.push(wide.iter().map(|&side| 12 * i64::from(side >= least)).collect());
        let halves = |&side: &i64| if 2 * side > full { 12 } else { 6 * i64::from(side >= least) };
        found.push(wide.iter().map(halves).collect());
        if 2 * least <= full {
            let long = |&side: &i64| match side {
                _ if side < least => 0,
                _ if side > full - least => full,
                _ => side,
            };
            found.push(wide.iter().map(long).collect());
        }
    }
    found
}

/// For every length up to the room: the most value that fits side by side, without one of the sides.
fn best(sides: &[i32], values: &[i64], room: i32, without: Option<usize>) -> Vec<i64> {
    let mut most = vec![0_i64; usize::try_from(room).unwrap_or(0) + 1];
    for (at, (&side, &value)) in sides.iter().zip(values).enumerate() {
        let side = usize::try_from(side).unwrap_or(0).max(1);
        if Some(at) == without || value == 0 {
            continue;
        }
        for end in side..most.len() {
            most[end] = most[end].max(most[end - side] + value);
        }
    }
    most
}

/// Raises the values one after the other as far as the room of the scale stays what it is.
fn lifted(sides: &[i32], mut scale: Scale, room: i32, small_first: bool) -> Scale {
    let mut order: Vec<usize> = (0..sides.len()).collect();
    if !small_first {
        order.reverse();
    }
    for at in order {
        let others = best(sides, &scale.values, room, Some(at));
        let side = sides[at].max(1);
        let allowed = (1..=room / side).filter_map(|times| {
            let rest = usize::try_from(room - times * side).ok()?;
            Some((scale.room - others.get(rest)?) / i64::from(times))
        });
        scale.values[at] = allowed.min().unwrap_or(0);
    }
    scale
}
