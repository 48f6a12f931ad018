//! One machine and what it can hold, for the bounds that look at a single one.

use super::super::table::{CycleTable, MachineTable, NEVER};
use super::ground::{Counts, Ground, Load};
use std::cell::Cell;

/// The machine of a day that has only one.
#[derive(Debug)]
pub(super) struct Lone<'t> {
    pub table: &'t MachineTable,
    /// What each cycle can hold.
    pub loads: Vec<Vec<Load>>,
    /// Shortest way from one unloading to the next run's being ready.
    lag: usize,
    washed: Vec<Cell<u16>>,
    /// How many runs the sets to a place take at least; nothing where that was too much work.
    runs: Vec<u8>,
}

/// "Not worked out yet".
const UNKNOWN: u16 = NEVER - 1;
/// Steps up to which the runs that sets take are counted.
const MOST_STEPS: usize = 1 << 24;

impl<'t> Lone<'t> {
    /// `None` for a day with more machines, or with a cycle that can hold more than so many loads.
    pub fn new(ground: &Ground<'t>, most: usize) -> Option<Self> {
        let [table] = ground.table.machines.as_slice() else {
            return None;
        };
        let loads: Vec<Vec<Load>> =
            table.cycles.iter().map(|cycle| ground.loads(cycle, most)).collect::<Option<_>>()?;
        let shortest = table.cycles.iter().map(|c| c.long[0].min(c.long[1])).min().unwrap_or(0);
        let soonest = table.cycles.iter().map(|c| c.after).min().unwrap_or(0);
        let steps = loads.iter().map(Vec::len).sum::<usize>().saturating_mul(ground.size);
        let runs = if steps <= MOST_STEPS { runs(ground, &loads) } else { Vec::new() };
        let washed = vec![Cell::new(UNKNOWN); ground.size];
        Some(Self { table, loads, lag: shortest + soonest, washed, runs })
    }

    /// From unloading to ready, as the bounds count it: never so long that a later run could be
    /// ready sooner. Sooner than it truly is only helps a plan.
    pub fn after(&self, cycle: &CycleTable) -> usize {
        cycle.after.min(self.lag)
    }

    /// [`Ground::washed_by`], worked out once for each place.
    pub fn washed_by(&self, ground: &Ground, loaded: &Counts, place: usize) -> Option<usize> {
        let known = &self.washed[place];
        if known.get() == UNKNOWN {
            known.set(ground.washed_by(loaded).map_or(NEVER, |slot| slot as u16));
        }
        Some(usize::from(known.get())).filter(|&slot| slot != usize::from(NEVER))
    }

    /// How many runs at least it takes to hold all that is not done.
    pub fn runs_for(&self, ground: &Ground, done: &Counts) -> u64 {
        let mut rest = ground.all();
        rest.iter_mut().zip(done).for_each(|(rest, done)| *rest -= done);
        self.runs.get(ground.place(&rest)).map_or(0, |&runs| u64::from(runs))
    }
}

/// How many runs the sets to each place take, if time did not count; 255 for never.
fn runs(ground: &Ground, loads: &[Vec<Load>]) -> Vec<u8> {
    let mut runs = vec![u8::MAX; ground.size];
    runs[0] = 0;
    ground.each(|place, counts| {
        let fits =
            |load: &&Load| load.sets > 0 && load.counts.iter().zip(counts).all(|(n, all)| n <= all);
        let before = loads.iter().flatten().filter(fits).map(|load| runs[place - load.place]).min();
        if let Some(before) = before {
            runs[place] = before.saturating_add(1);
        }
    });
    runs
}
