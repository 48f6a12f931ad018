//! The cycles of the machines for the bound of several: as late as they can be, and how long each
//! keeps its machine busy.

use super::super::problem::{Drying, MOST_KINDS};
use super::super::table::{CycleTable, NEVER, Table};
use super::ground::Counts;

/// A cycle of some machine, as late as it can be.
#[derive(Debug)]
pub(super) struct Latest<'t> {
    pub machine: usize,
    pub cycle: &'t CycleTable,
    /// Soonest unloading if it starts in a slot or later.
    pub unload: Vec<u16>,
    /// Last start from which it is ready by a slot; `None` before the first.
    pub start: Vec<Option<u16>>,
    /// What it can hold at most of each kind, ready by a slot: what is used at once must be asked
    /// for in time.
    pub room: Vec<Counts>,
    /// The most weight that it can hold.
    pub weight: u64,
}

/// Machines of which is known how busy they are.
pub(super) const TRACKED: usize = 4;

/// Machines just like one before them; the others may not be exchanged.
pub(super) fn twins(table: &Table) -> [Option<usize>; TRACKED] {
    let alike = |a: &CycleTable, b: &CycleTable| {
        let of = |c: &CycleTable| {
            (c.long, c.max_mass, c.max_area, c.drying, c.wrapped, c.load_min, c.unload_min, c.after)
        };
        of(a) == of(b)
    };
    let mut twins = [None; TRACKED];
    for (m, machine) in table.machines.iter().enumerate().take(TRACKED) {
        twins[m] = table.machines[..m].iter().rposition(|other| {
            let pairs = other.cycles.iter().zip(&machine.cycles);
            other.cycles.len() == machine.cycles.len()
                && other.free_from == machine.free_from
                && pairs.into_iter().all(|(a, b)| alike(a, b))
        });
    }
    twins
}

/// Of machines that are alike the first is the one that is free first.
pub(super) fn sort_twins(busy: &mut [u16; TRACKED], twins: &[Option<usize>; TRACKED]) {
    for _ in 1..TRACKED {
        for m in 1..TRACKED {
            if let Some(twin) = twins[m].filter(|&twin| busy[twin] > busy[m]) {
                busy.swap(twin, m);
            }
        }
    }
}

/// The cycles of a machine: last starts and room, by the slot in which a run must be ready.
pub(super) fn latest<'t>(table: &'t Table, m: usize, weights: &[u64]) -> Vec<Latest<'t>> {
    let machine = &table.machines[m];
    let shortest = machine.cycles.iter().map(|c| c.long[0].min(c.long[1])).min().unwrap_or(0);
    let soonest = machine.cycles.iter().map(|c| c.after).min().unwrap_or(0);
    // Where a load cools for so long that the next one is ready before it, runs do not come in the
    // order in which the machine takes them: then nothing is said about how busy it is.
    let in_order = machine.cycles.iter().all(|c| c.after <= shortest + soonest);
    let of_cycle = |cycle| latest_of(table, machine.free_from, cycle);
    let times = machine.cycles.iter().map(|cycle| (cycle, of_cycle(cycle)));
    times
        .map(|(cycle, (start, room, unload))| Latest {
            machine: if in_order { m } else { TRACKED },
            cycle,
            unload,
            start,
            room,
            weight: fullest(table, cycle, weights),
        })
        .collect()
}

type Times = (Vec<Option<u16>>, Vec<Counts>, Vec<u16>);

fn latest_of(table: &Table, free_from: usize, cycle: &CycleTable) -> Times {
    let mut start = vec![None; table.slots + 1];
    let mut room = vec![Counts::default(); table.slots + 1];
    let mut unload = vec![NEVER; table.slots + 1];
    for s in (free_from..table.slots).filter(|&s| table.hands[s] >= cycle.load_min) {
        for long in cycle.long {
            let Some((ready, asked)) = ready(table, cycle, s + long) else {
                continue;
            };
            unload[s] = unload[s].min((ready - cycle.after) as u16);
            start[ready] = start[ready].max(Some(s as u16));
            room[ready].iter_mut().zip(&asked).for_each(|(room, n)| *room = (*room).max(*n));
        }
    }
    for ready in 1..=table.slots {
        start[ready] = start[ready].max(start[ready - 1]);
        let before = room[ready - 1];
        room[ready].iter_mut().zip(&before).for_each(|(room, n)| *room = (*room).max(*n));
    }
    for s in (0..table.slots).rev() {
        unload[s] = unload[s].min(unload[s + 1]);
    }
    (start, room, unload)
}

/// The most weight that a cycle can hold, were sets divisible.
fn fullest(table: &Table, cycle: &CycleTable, weights: &[u64]) -> u64 {
    let limited = |most: u32, sizes: &[u32]| {
        let of = |(&w, &size): (&u64, &u32)| {
            if w == 0 {
                0
            } else {
                (w * u64::from(most)).checked_div(u64::from(size)).unwrap_or(u64::MAX / 4)
            }
        };
        weights.iter().zip(sizes).map(of).max().unwrap_or(0)
    };
    let area = if cycle.wrapped { limited(cycle.max_area, &table.area) } else { u64::MAX / 4 };
    limited(cycle.max_mass, &table.mass).min(area)
}

/// When a run that is over at `end` is ready, and what it can hold of each kind.
fn ready(table: &Table, cycle: &CycleTable, end: usize) -> Option<(usize, Counts)> {
    let wait = table.hands.get(end..)?.iter().position(|&h| h >= cycle.unload_min)?;
    let ready = end + wait + cycle.after;
    if ready > table.slots {
        return None;
    }
    if cycle.drying != Drying::None {
        return Some((ready, [u8::MAX; MOST_KINDS]));
    }
    let mut asked = [0_u32; MOST_KINDS];
    for need in (ready..=(end + table.window).min(table.slots - 1)).flat_map(|t| table.needs_at(t))
    {
        asked[need.kind] += need.n;
    }
    (wait == 0).then(|| (ready, asked.map(|n| u8::try_from(n).unwrap_or(u8::MAX))))
}
