//! How good any plan could be: proven lower bounds of the levels of `dayplan-1`.
//!
//! Each bound is the best of a day that is easier in every respect than the real one: whatever a
//! real plan does is allowed there and comes to no more. So no plan can be better, however long one
//! looks. What is left out is said where it is left out.

#[cfg(test)]
mod by_hand;
mod exposure;
mod filling;
mod given_up;
mod ground;
mod latest;
mod machine;
mod many;
mod one;
mod price;
mod refusals;
#[cfg(test)]
mod tests;
mod worth;

use super::answer::{LEVELS, Objective};
use super::decode::Genome;
use super::table::Table;
use price::Asked;
use worth::Price;

/// What has been proven about a day, and how much work went into it.
#[derive(Debug)]
pub(super) struct Prover<'t> {
    table: &'t Table,
    /// Bounds of unmet, short and runs.
    least: Option<[u64; 3]>,
    /// Whether they are as good as they will get.
    first_done: bool,
    /// How many states are kept where many machines ask for joining them.
    width: usize,
    /// Bounds of cost, drying and exposure.
    price: Option<Price>,
    /// The ways of leaving sets unmet that have not been looked through.
    ways: Option<Vec<Vec<u16>>>,
    /// The least price in the others, or of a known plan.
    below: Price,
    /// A path that is better than the plans known when it was found.
    path: Option<Genome>,
    /// What the next attempt may take; more each time.
    budget: usize,
    spent: usize,
    too_large: bool,
}

/// Why nothing was proven.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stopped {
    /// More work would help.
    Budget,
    /// The day is too large for this.
    TooLarge,
}

/// What the first attempt may take, in loads tried.
const FIRST_BUDGET: usize = 1 << 15;
/// How many states are kept at first where something may be given up: were all joined into one,
/// there would be too many ways of giving up.
const FEWEST_STATES: usize = 4;
/// How many loads may be tried for each day that the search tries: about a quarter of its time.
const WORK_A_DAY: usize = 20;

impl<'t> Prover<'t> {
    pub fn new(table: &'t Table) -> Self {
        Self {
            table,
            least: None,
            first_done: false,
            width: 1,
            price: None,
            ways: None,
            below: worth::NEVER,
            path: None,
            budget: FIRST_BUDGET,
            spent: 0,
            // Who weighs nothing may be left out unseen; nothing below reckons with that.
            too_large: table.needs.iter().any(|need| need.weight == 0),
        }
    }

    /// Tries again, harder each time, as long as the number of days `tried` so far allows. `known`
    /// is the best plan so far, found by an order that begins with so many `levels` of `dayplan-1`.
    /// Comes back with a path that is better than it; every plan is a path, but not every path a
    /// plan.
    pub fn attempt(
        &mut self,
        known: &Objective,
        levels: usize,
        tried: u64,
        stop: &dyn Fn() -> bool,
    ) -> Option<Genome> {
        let allowance = usize::try_from(tried).unwrap_or(usize::MAX).saturating_mul(WORK_A_DAY);
        let first = [known[0], known[1], known[2]];
        while !self.too_large && self.spent.saturating_add(self.budget) <= allowance && !stop() {
            let mut left = self.budget;
            let done = match self.least {
                _ if levels > 0 && !self.first_done => self.prove_first(first, &mut left, stop),
                Some(least) if self.price.is_none() && least == first && levels == LEVELS => {
                    self.prove_price(known, &mut left, stop)
                }
                _ => break,
            };
            self.spent += self.budget - left;
            match done {
                Ok(()) => self.budget = FIRST_BUDGET,
                Err(Stopped::Budget) => self.budget = self.budget.saturating_mul(2),
                Err(Stopped::TooLarge) => self.too_large = true,
            }
        }
        self.path.take()
    }

    fn prove_first(
        &mut self,
        known: [u64; 3],
        left: &mut usize,
        stop: &dyn Fn() -> bool,
    ) -> Result<(), Stopped> {
        if self.table.machines.len() == 1 {
            let proof = one::prove(self.table, &[], known, left, stop)?;
            self.least = Some(proof.least);
            self.path = proof.path;
            self.first_done = true;
            return Ok(());
        }
        if known[..2] != [0, 0] {
            self.width = self.width.max(FEWEST_STATES);
        }
        let (least, worth_more) = many::prove(self.table, known, self.width, left, stop)?;
        self.least = self.least.max(Some(least));
        self.width *= 4;
        self.first_done = !worth_more || self.least >= Some(known);
        Ok(())
    }

    /// The levels from the cost on, in each way of leaving just what must be left unmet.
    fn prove_price(
        &mut self,
        known: &Objective,
        left: &mut usize,
        stop: &dyn Fn() -> bool,
    ) -> Result<(), Stopped> {
        let [unmet, short, runs, cost, drying, exposure] = *known;
        self.below = self.below.min(Price {
            cost,
            drying,
            exposure: i64::try_from(exposure).unwrap_or(i64::MAX),
        });
        if self.ways.is_none() {
            self.ways = Some(refusals::all(self.table, unmet).ok_or(Stopped::TooLarge)?);
        }
        let ways = self.ways.get_or_insert_default();
        while let Some(refused) = ways.last() {
            // Most ways of leaving so much unmet do not lead to so few runs at all.
            let at_most = [0, short, runs + 1];
            if refused.is_empty()
                || one::prove(self.table, refused, at_most, left, stop)?.path.is_some()
            {
                let asked = Asked { refused, short, runs, below: self.below };
                if let Some((price, path)) = price::prove(self.table, &asked, left, stop)? {
                    self.below = price;
                    self.path = Some(path);
                }
            }
            ways.pop();
        }
        self.price = Some(self.below);
        Ok(())
    }

    /// The bound of each level for a plan that comes to `objective`: given the best values of the
    /// levels above, and nothing after the first level that is not proven.
    pub fn bound(&self, objective: &Objective, levels: usize) -> [Option<u64>; LEVELS] {
        let first = self.least.map(|least| least.map(Some)).unwrap_or_default();
        let price = |p: Price| [p.cost, p.drying, u64::try_from(p.exposure).unwrap_or(0)].map(Some);
        let last = self.price.map(price).unwrap_or_default();
        let mut bound = [None; LEVELS];
        for (level, proven) in first.into_iter().chain(last).take(levels).enumerate() {
            // Nothing is less than nothing.
            bound[level] = proven.or_else(|| (objective[level] == 0).then_some(0));
            if bound[level] != Some(objective[level]) {
                break;
            }
        }
        bound
    }
}
