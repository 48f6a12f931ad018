//! How good any plan could be: proven lower bounds of the levels of `dayplan-1`.
//!
//! Each bound is the best of a day that is easier in every respect than the real one: whatever a
//! real plan does is allowed there and comes to no more. So no plan can be better, however long one
//! looks. What is left out is said where it is left out.

mod fast;
mod ground;
mod machine;
mod one;

use super::answer::{LEVELS, Objective};
use super::decode::Genome;
use super::table::Table;

/// What has been proven about a day, and how much work went into it.
#[derive(Debug)]
pub(super) struct Prover<'t> {
    table: &'t Table,
    /// Bounds of unmet, short and runs.
    least: Option<[u64; 3]>,
    /// What the next attempt may take; more each time.
    budget: usize,
    spent: usize,
}

/// What the first attempt may take, in loads tried.
const FIRST_BUDGET: usize = 1 << 15;

/// How many loads may be tried for each day that the search tries: about a quarter of its time.
const WORK_A_DAY: usize = 20;

impl<'t> Prover<'t> {
    pub fn new(table: &'t Table) -> Self {
        Self { table, least: None, budget: FIRST_BUDGET, spent: 0 }
    }

    /// Tries once more if the number of days `tried` so far allows. `known` is the best plan so far,
    /// found by an order that begins with so many `levels` of `dayplan-1`. Comes back with a path that is better, where every real plan is a path
    /// but not every path a plan.
    pub fn attempt(
        &mut self,
        known: &Objective,
        levels: usize,
        tried: u64,
        stop: &dyn Fn() -> bool,
    ) -> Option<Genome> {
        let allowance = usize::try_from(tried).unwrap_or(usize::MAX).saturating_mul(WORK_A_DAY);
        if levels == 0 || self.least.is_some() || self.spent + self.budget > allowance {
            return None;
        }
        self.spent += self.budget;
        let proof = one::prove(self.table, [known[0], known[1], known[2]], self.budget, stop);
        self.budget *= 2;
        let proof = proof?;
        self.least = Some(proof.least);
        proof.path
    }

    /// The bound of each level for a plan that comes to `objective`: given the best values of the
    /// levels above, and nothing after the first level that is not proven.
    pub fn bound(&self, objective: &Objective, levels: usize) -> [Option<u64>; LEVELS] {
        let mut bound = [None; LEVELS];
        for level in 0..levels.min(LEVELS) {
            let proven = self.least.and_then(|least| least.get(level).copied());
            // Nothing is less than nothing.
            bound[level] = proven.or_else(|| (objective[level] == 0).then_some(0));
            if bound[level] != Some(objective[level]) {
                break;
            }
        }
        bound
    }
}
