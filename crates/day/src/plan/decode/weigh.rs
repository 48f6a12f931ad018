//! What a day came to.

use super::super::order::{Criteria, Criterion};
use super::super::problem::Drying;
use super::{Decoder, Made};

impl Decoder<'_> {
    /// What the day came to.
    pub(super) fn weigh(&mut self, order: &[Criterion]) -> Criteria {
        let table = self.table;
        let mut sum = Criteria::default();
        for &(i, n) in &self.unmet {
            sum[Criterion::Unmet] += u64::from(table.needs[i].weight) * u64::from(n);
        }
        for k in 0..table.kinds {
            sum[Criterion::Short] += u64::from(table.target[k].saturating_sub(self.sets[k].stock));
        }
        let mut at_once = 0;
        for made in &self.made {
            let cycle = &table.machines[usize::from(made.machine)].cycles[usize::from(made.cycle)];
            let sets: u64 = made.load.iter().map(|&n| u64::from(n)).sum();
            sum[Criterion::Runs] += 1;
            sum[Criterion::Cost] += cycle.cost[usize::from(made.warm)];
            if cycle.wrapped {
                let pouches = made.load.iter().zip(&table.pouch_cost);
                sum[Criterion::Cost] +=
                    pouches.map(|(&n, price)| u64::from(n) * price).sum::<u64>();
            }
            sum[Criterion::Drying] += sets * penalty(cycle.drying);
            if cycle.drying == Drying::None {
                at_once += sets;
            }
            sum[Criterion::Wait] += u64::from(made.unload - made.end) * table.slot_min;
            let near = [made.start, made.unload].map(|t| table.from_break[usize::from(t)]);
            sum[Criterion::Break] += u64::from(near[0].min(near[1])) * table.slot_min;
        }
        if order.contains(&Criterion::Changed) {
            let kept =
                self.made.iter().filter(|m| self.planned.contains(&(m.start, m.machine, m.cycle)));
            sum[Criterion::Changed] =
                (self.planned.len() + self.made.len() - 2 * kept.count()) as u64;
        }
        sum[Criterion::Immediate] = at_once;
        sum[Criterion::Exposure] = AT_ONCE_EXPOSURE * at_once + self.exposure();
        if order.contains(&Criterion::Overnight) {
            sum[Criterion::Overnight] = self.overnight();
        }
        sum
    }

    /// Set-minutes that would be missing if every load came later (problem.md, level 6).
    fn exposure(&mut self) -> u64 {
        let table = self.table;
        let mut missing = 0;
        for k in 0..table.kinds {
            let ready = table.ready[k];
            let mut sum = ready;
            for (there, cells) in self.there.iter_mut().zip(self.arrivals.chunks_exact(table.kinds))
            {
                sum += u32::from(cells[k]);
                *there = sum;
            }
            let mut taken = 0;
            for &t in &table.need_slots[k] {
                let t = usize::from(t);
                taken += u32::from(self.taken[t * table.kinds + k]);
                for delay in 1..=DELAYS {
                    let before = t.checked_sub(delay).map_or(ready, |b| self.there[b]);
                    missing += taken.saturating_sub(before);
                }
            }
        }
        u64::from(missing) * table.slot_min
    }

    /// Drying missed by the sets that lie overnight: of each kind the last to become ready.
    fn overnight(&self) -> u64 {
        let table = self.table;
        let mut by_ready: Vec<&Made> = self.made.iter().collect();
        by_ready.sort_by_key(|made| std::cmp::Reverse(made.ready));
        let mut missed = 0;
        for k in 0..table.kinds {
            let mut left = self.sets[k].stock;
            for made in &by_ready {
                let cycle =
                    &table.machines[usize::from(made.machine)].cycles[usize::from(made.cycle)];
                if cycle.drying != Drying::None {
                    let here = left.min(u32::from(made.load[k]));
                    left -= here;
                    missed += u64::from(here) * penalty(cycle.drying);
                }
            }
        }
        missed
    }
}

/// Delays of level 6, in slots: 1 to this.
pub(in super::super) const DELAYS: usize = 6;
/// What a set used at once counts in level 6, minutes.
pub(in super::super) const AT_ONCE_EXPOSURE: u64 = 30;

/// What a set counts that was not dried in full.
pub(in super::super) fn penalty(drying: Drying) -> u64 {
    match drying {
        Drying::None => 2,
        Drying::Short => 1,
        Drying::Full => 0,
    }
}
