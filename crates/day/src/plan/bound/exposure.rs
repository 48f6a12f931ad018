//! What each arrival adds to the exposure, level 6.
//!
//! Were all sets dried and everybody served, the sets missing at a need slot `t` if everything came
//! `d` later are the arrivals that are due by `t` and ready after `t - d`. So exposure is a sum over
//! arrivals: number `i`, ready at `r`, adds a slot for each need slot `t` not before its due and
//! each of the six delays with `t - d < r`.
//!
//! A set used at once is counted as an arrival too, and then both it and its use are missing from
//! the rule's sum: at `t` and `d` it takes off one of the arrivals that are counted there, if it is
//! opened by `t`, so after it is ready, and ready after `t - d`. So `n` of them take off no more
//! than `n`, and no more than are counted there. Where whatever came before them was ready by
//! `t - d`, that is their own.
//!
//! Where a kind becomes ready on its own during the day ([`Table::ready_at`]), sets that nobody is
//! due can lower the exposure; there only the 30 minutes of the sets used at once count.

use super::super::decode::{AT_ONCE_EXPOSURE, DELAYS};
use super::super::table::Table;
use super::ground::Ground;

#[derive(Debug)]
pub(super) struct Exposure {
    /// `kinds[k].late[r * (n + 1) + i]`: what arrivals `0..i` add when they are ready at `r`.
    kinds: Vec<OfKind>,
    slot_min: i64,
}

#[derive(Debug)]
struct OfKind {
    due: Vec<u16>,
    late: Vec<i64>,
    /// Whether somebody asks in a slot and what comes late counts.
    asked: Vec<bool>,
    /// The least that each set used at once adds beside that.
    least_at_once: i64,
}

/// Sets used at once.
#[derive(Debug, Clone, Copy)]
pub(super) struct AtOnce {
    pub kind: usize,
    pub ready: usize,
    /// Their number among the arrivals of their kind, and how many they are.
    pub first: usize,
    pub n: usize,
    /// By when all arrivals before them were ready.
    pub before: i64,
}

impl Exposure {
    pub fn new(ground: &Ground) -> Self {
        let slot_min = ground.table.slot_min as i64;
        Self { kinds: (0..ground.table.kinds).map(|k| of_kind(ground, k)).collect(), slot_min }
    }

    /// What `n` arrivals of kind `k` from number `first` on add when they are ready at `ready`.
    pub fn late(&self, k: usize, ready: usize, first: usize, n: usize) -> i64 {
        let of = &self.kinds[k];
        let row = ready * (of.due.len() + 1);
        of.late[row + first + n] - of.late[row + first]
    }

    /// What sets used at once add beside that; may be below 0.
    pub fn at_once(&self, sets: &AtOnce) -> i64 {
        let of = &self.kinds[sets.kind];
        let own = &of.due[sets.first..sets.first + sets.n];
        let mut off = 0;
        for t in (sets.ready..sets.ready + DELAYS).filter(|&t| of.asked.get(t) == Some(&true)) {
            let due = own.partition_point(|&due| usize::from(due) <= t) as i64;
            let delays = (DELAYS + sets.ready - t) as i64;
            // Delays that reach to the slots before the others were there.
            let far = (sets.before - (t as i64 - DELAYS as i64)).clamp(0, delays);
            off += far * sets.n as i64 + (delays - far) * due;
        }
        AT_ONCE_EXPOSURE as i64 * sets.n as i64 - off * self.slot_min
    }

    /// The least that is added for each set used at once, whenever.
    pub fn least_at_once(&self, k: usize) -> i64 {
        self.kinds[k].least_at_once
    }
}

fn of_kind(ground: &Ground, k: usize) -> OfKind {
    let Ground { table, due, .. } = ground;
    let due = due[k].clone();
    let rows = table.slots + 1;
    let mut late = vec![0; rows * (due.len() + 1)];
    let mut asked = vec![false; rows];
    let mut most_off = 0;
    let on_its_own = (0..rows).any(|t| table.ready_at[t * table.kinds + k] > 0);
    for r in (0..rows).filter(|_| !on_its_own) {
        most_off = most_off.max(slots_late(table, k, r, r));
        let row = r * (due.len() + 1);
        for (i, &due) in due.iter().enumerate() {
            late[row + i + 1] = late[row + i] + slots_late(table, k, r, usize::from(due));
        }
    }
    if !on_its_own {
        table.need_slots[k].iter().for_each(|&t| asked[usize::from(t)] = true);
    }
    OfKind { due, late, asked, least_at_once: AT_ONCE_EXPOSURE as i64 - most_off }
}

/// Minutes over the need slots from `due` on and the delays that reach from there to before `r`.
fn slots_late(table: &Table, k: usize, r: usize, due: usize) -> i64 {
    let slots = table.need_slots[k].iter().map(|&t| usize::from(t));
    let delays: usize =
        slots.filter(|&t| t >= due.max(r)).map(|t| (DELAYS + r).saturating_sub(t)).sum();
    delays as i64 * table.slot_min as i64
}
