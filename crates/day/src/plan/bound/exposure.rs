//! What each arrival adds to the exposure, level 6.
//!
//! Were all sets dried and everybody served, the sets missing at a need slot `t` if everything came
//! `d` later are the arrivals that are due by `t` and ready after `t - d`. So exposure is a sum over
//! arrivals: number `i`, ready at `r`, adds a slot for each need slot `t` not before its due and
//! each of the six delays with `t - d < r`.
//!
//! A set used at once is counted as an arrival too, and then both it and its use are missing from
//! the rule's sum. That sum is smaller by no more than a slot for each `t` and `d` with
//! `r <= t` and `t - d < r`, which is taken off again, since it is opened at `r` or later.
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
}

#[derive(Debug)]
struct OfKind {
    arrivals: usize,
    late: Vec<i64>,
    /// What a set used at once, ready at `r`, adds beside that; may be below 0.
    at_once: Vec<i64>,
}

impl Exposure {
    pub fn new(ground: &Ground) -> Self {
        Self { kinds: (0..ground.table.kinds).map(|k| of_kind(ground, k)).collect() }
    }

    /// What `n` arrivals of kind `k` from number `first` on add when they are ready at `ready`.
    pub fn late(&self, k: usize, ready: usize, first: usize, n: usize) -> i64 {
        let of = &self.kinds[k];
        let row = ready * (of.arrivals + 1);
        of.late[row + first + n] - of.late[row + first]
    }

    /// What is added for each set used at once.
    pub fn at_once(&self, k: usize, ready: usize) -> i64 {
        self.kinds[k].at_once[ready]
    }

    /// The least that is added for each set used at once, whenever.
    pub fn least_at_once(&self, k: usize) -> i64 {
        self.kinds[k].at_once.iter().copied().min().unwrap_or(0)
    }
}

fn of_kind(ground: &Ground, k: usize) -> OfKind {
    let Ground { table, due, .. } = ground;
    let due = &due[k];
    let rows = table.slots + 1;
    let mut late = vec![0; rows * (due.len() + 1)];
    let mut at_once = vec![AT_ONCE_EXPOSURE as i64; rows];
    let on_its_own = (0..rows).any(|t| table.ready_at[t * table.kinds + k] > 0);
    for r in (0..rows).filter(|_| !on_its_own) {
        at_once[r] -= slots_late(table, k, r, r);
        let row = r * (due.len() + 1);
        for (i, &due) in due.iter().enumerate() {
            late[row + i + 1] = late[row + i] + slots_late(table, k, r, usize::from(due));
        }
    }
    OfKind { arrivals: due.len(), late, at_once }
}

/// Minutes over the need slots from `due` on and the delays that reach from there to before `r`.
fn slots_late(table: &Table, k: usize, r: usize, due: usize) -> i64 {
    let slots = table.need_slots[k].iter().map(|&t| usize::from(t));
    let delays: usize =
        slots.filter(|&t| t >= due.max(r)).map(|t| (DELAYS + r).saturating_sub(t)).sum();
    delays as i64 * table.slot_min as i64
}
