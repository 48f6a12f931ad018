//! One plan, as good as the time allows, and how good any plan could be.

use super::answer::{LEVELS, Objective, Plan};
use super::audit::audit;
use super::bound::Prover;
use super::decode::{Decoder, Genome};
use super::order::{CRITERIA, Criteria, Criterion, DAYPLAN};
use super::problem::{Problem, Unusable};
use super::search::{Chain, Found, Manner};
use super::table::Table;

/// How to look for a plan.
#[derive(Debug, Clone, Copy)]
pub struct Options {
    /// What counts first: [`DAYPLAN`] or [`super::SALON`].
    pub order: &'static [Criterion],
    /// How many threads work on it, 1 or more. The steps are the same for any number.
    pub threads: usize,
    /// Give up after so many rounds even if nothing says stop; rounds grow. For callers without a
    /// clock.
    pub rounds: u32,
}

impl Default for Options {
    fn default() -> Self {
        Self { order: DAYPLAN, threads: 1, rounds: u32::MAX }
    }
}

/// A plan and what is known about it.
#[derive(Debug, Clone)]
pub struct Answer {
    /// The plan.
    pub plan: Plan,
    /// All that it comes to.
    pub criteria: Criteria,
    /// The six levels of `dayplan-1`, whatever the order.
    pub objective: Objective,
    /// Proven lower bound of each level given the best values of the levels above; `None` where
    /// nothing is proven. Only for the order of `dayplan-1`; otherwise the levels that both orders
    /// begin with.
    pub bound: [Option<u64>; LEVELS],
    /// Days that were tried.
    pub tried: u64,
}

/// Plans the day. `stop` is asked between steps and ends the search; what was found until then is
/// the answer, so that more time is never worse.
///
/// # Errors
/// A day that [`Problem::check`] does not take, or a fault of this program (`BUG:`).
pub fn solve(
    problem: &Problem,
    options: &Options,
    stop: &(dyn Fn() -> bool + Sync),
) -> Result<Answer, Unusable> {
    problem.check()?;
    let table = Table::new(problem);
    let mut search = Search::new(&table, options);
    search.run(stop);
    search.answer(problem)
}

struct Search<'t> {
    table: &'t Table,
    options: Options,
    best: Found,
    path: Option<Genome>,
    prover: Prover<'t>,
    tried: u64,
}

impl<'t> Search<'t> {
    fn new(table: &'t Table, options: &Options) -> Self {
        let genome = Genome::default();
        let sum = Decoder::new(table).decode(&genome, options.order);
        let best = Found { values: sum.in_order(options.order), genome };
        Self { table, options: *options, best, path: None, prover: Prover::new(table), tried: 0 }
    }

    fn run(&mut self, stop: &(dyn Fn() -> bool + Sync)) {
        for round in 0..self.options.rounds {
            if stop() || self.nothing_better() {
                return;
            }
            self.round(round, stop);
            if round > 0 {
                self.prove(stop);
            }
        }
    }

    fn round(&mut self, round: u32, stop: &(dyn Fn() -> bool + Sync)) {
        let steps = (1_200.0 * measure::maths::pow(1.35, f64::from(round.min(16)))) as u32;
        let manners = Manner::of_round(round);
        let starts: Vec<(u64, &Manner, Genome)> = manners
            .iter()
            .enumerate()
            .map(|(i, manner)| {
                let from = match (manner.fresh, &self.path) {
                    (true, Some(path)) if i % 2 == 1 => path.clone(),
                    (true, _) => Genome::default(),
                    (false, _) => self.best.genome.clone(),
                };
                (u64::from(round) * 64 + i as u64, manner, from)
            })
            .collect();
        let anneal = |(seed, manner, from): &(u64, &Manner, Genome)| {
            let mut chain =
                Chain::new(self.table, self.options.order, **manner, *seed, from.clone());
            chain.anneal(steps, stop);
            (chain.best, chain.count)
        };
        let found = in_parallel(&starts, self.options.threads, anneal);
        for (best, count) in found {
            self.tried += count;
            if best.values < self.best.values {
                self.best = best;
            }
        }
    }

    /// How good a plan could be, as far as the order begins like that of `dayplan-1`.
    fn prove(&mut self, stop: &(dyn Fn() -> bool + Sync)) {
        if self.levels_alike() < 2 {
            return;
        }
        let found = self.prover.attempt(&self.known(), self.levels_alike(), self.tried, stop);
        if found.is_some() {
            self.path = found;
        }
    }

    /// With how many levels of `dayplan-1` the order begins.
    fn levels_alike(&self) -> usize {
        self.options.order.iter().zip(DAYPLAN).take_while(|(a, b)| a == b).count()
    }

    /// What the best plan comes to in `dayplan-1`.
    fn known(&self) -> Objective {
        let order = self.options.order;
        DAYPLAN_LEVELS
            .map(|which| order.iter().position(|&o| o == which).map_or(0, |i| self.best.values[i]))
    }

    fn nothing_better(&self) -> bool {
        let known = self.known();
        let proven = || self.prover.bound(&known, self.levels_alike()) == known.map(Some);
        self.best.values == [0; CRITERIA] || (self.options.order == DAYPLAN && proven())
    }

    /// The best plan, looked at once more by the auditor: a plan that does not keep the rules is a
    /// fault of this program, and nobody is handed it.
    fn answer(&self, problem: &Problem) -> Result<Answer, Unusable> {
        let mut decoder = Decoder::new(self.table);
        let (plan, criteria) = decoder.plan(&self.best.genome, self.options.order);
        let audited = audit(problem, &plan);
        let objective: Objective = DAYPLAN_LEVELS.map(|which| criteria[which]);
        if audited != Ok(objective) {
            let why = audited.err().unwrap_or_else(|| "its sums differ".to_owned());
            return Err(Unusable(format!("BUG: the plan that was found is none ({why})")));
        }
        let bound = self.prover.bound(&objective, self.levels_alike());
        Ok(Answer { plan, criteria, objective, bound, tried: self.tried })
    }
}

const DAYPLAN_LEVELS: [Criterion; LEVELS] = [
    Criterion::Unmet,
    Criterion::Short,
    Criterion::Runs,
    Criterion::Cost,
    Criterion::Drying,
    Criterion::Exposure,
];

/// `work` on each item, in order, on so many threads; the answers in the order of the items.
fn in_parallel<T: Sync, R: Send>(
    items: &[T],
    threads: usize,
    work: impl Fn(&T) -> R + Sync,
) -> Vec<R> {
    if threads <= 1 {
        return items.iter().map(work).collect();
    }
    let next = std::sync::atomic::AtomicUsize::new(0);
    let take = || {
        let mut done = Vec::new();
        loop {
            let i = next.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
            let Some(item) = items.get(i) else { return done };
            done.push((i, work(item)));
        }
    };
    let mut done: Vec<(usize, R)> = std::thread::scope(|scope| {
        let hands: Vec<_> = (0..threads.min(items.len())).map(|_| scope.spawn(take)).collect();
        hands
            .into_iter()
            .flat_map(|hand| hand.join().unwrap_or_else(|e| std::panic::resume_unwind(e)))
            .collect()
    });
    done.sort_by_key(|&(i, _)| i);
    done.into_iter().map(|(_, r)| r).collect()
}
