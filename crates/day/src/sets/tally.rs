//! Many days, counted.

use super::assume::Assumptions;
use super::life::Life;
use super::random::Day;
use super::share::{Gain, Share, paired, wilson};
use super::template::{Begins, Template, begins};
use crate::plan::{MOST_SETS, Problem, Unusable};
use std::ops::RangeInclusive;

/// Which days, and how they are lived.
#[derive(Debug, Clone, Copy)]
pub struct Days<'a> {
    /// How they differ from the booked one.
    pub assumptions: &'a Assumptions,
    /// How many, 1 or more.
    pub days: u32,
    /// The same seed gives the same days, on every machine.
    pub seed: u64,
    /// On how many threads, 1 or more; the answer is the same for any number.
    pub threads: usize,
}

/// What became of the days.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tally {
    /// How many days there were.
    pub days: u32,
    /// Clients who waited, over all days.
    pub waiting: u64,
    /// A bit a day: whether nobody waited.
    good: Vec<u64>,
}

impl Tally {
    /// The share of days on which nobody waits.
    #[must_use]
    pub fn share(&self) -> Share {
        let good = self.good.iter().map(|word| u64::from(word.count_ones())).sum();
        wilson(good, u64::from(self.days))
    }

    /// Clients who wait, on the mean day.
    #[must_use]
    pub fn waiting_a_day(&self) -> f64 {
        self.waiting as f64 / f64::from(self.days.max(1))
    }

    /// Whether nobody waited on day `day`; a day that was not lived is not good.
    #[must_use]
    pub fn is_good(&self, day: u32) -> bool {
        self.good
            .get(day as usize / BITS)
            .is_some_and(|word| word >> (day as usize % BITS) & 1 == 1)
    }

    /// What is gained over `before`, which lived the same days another way.
    #[must_use]
    pub fn gain_over(&self, before: &Self) -> Gain {
        let count = |only: fn(u64, u64) -> u64| -> u64 {
            self.good
                .iter()
                .zip(&before.good)
                .map(|(&a, &b)| u64::from(only(a, b).count_ones()))
                .sum()
        };
        paired(count(|a, b| a & !b), count(|a, b| b & !a), u64::from(self.days.min(before.days)))
    }
}

/// Days in a word.
const BITS: usize = u64::BITS as usize;

/// One owned count.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Point {
    /// Sets of the kind owned.
    pub owned: u32,
    /// What became of the days.
    pub tally: Tally,
}

/// `problem` with another number of sets of `kind`. Sets more begin the day ready; sets fewer are
/// taken from the ready ones first, then from the packed ones, then from the used ones.
#[must_use]
pub fn owning(problem: &Problem, kind: usize, owned: u32) -> Problem {
    let mut changed = problem.clone();
    let (Some(k), Some(carry)) = (changed.kinds.get_mut(kind), changed.carry.get_mut(kind)) else {
        return changed;
    };
    k.ready += owned.saturating_sub(k.owned);
    let mut fewer = k.owned.saturating_sub(owned);
    k.owned = owned;
    for place in [&mut k.ready, &mut carry.loadable, &mut carry.dirty] {
        let here = fewer.min(*place);
        *place -= here;
        fewer -= here;
    }
    if carry.dirty == 0 {
        carry.worked = 0;
    }
    changed
}

/// The days for each count of sets of `kind`: the same days for all of them.
///
/// # Errors
/// A day that cannot be planned, rates that are none, a count above [`MOST_SETS`].
pub fn curve(
    problem: &Problem,
    kind: usize,
    counts: RangeInclusive<u32>,
    days: &Days<'_>,
) -> Result<Vec<Point>, Unusable> {
    if kind >= problem.kinds.len() || counts.is_empty() || *counts.end() > MOST_SETS {
        return Err(Unusable(format!(
            "counts must go upwards, to at most {MOST_SETS}, of a kind that is there"
        )));
    }
    let owned: Vec<u32> = counts.collect();
    let ways: Vec<Begins> = owned.iter().map(|&n| begins(&owning(problem, kind, n))).collect();
    let tallies = live_all(problem, &ways, days)?;
    Ok(owned.into_iter().zip(tallies).map(|(owned, tally)| Point { owned, tally }).collect())
}

/// The days of `problem` as it is.
///
/// # Errors
/// As [`curve`].
pub fn tally(problem: &Problem, days: &Days<'_>) -> Result<Tally, Unusable> {
    let mut tallies = live_all(problem, &[begins(problem)], days)?;
    tallies.pop().ok_or_else(|| Unusable("no days were lived".to_owned()))
}

/// Most appointments of a day, so that numbers of visitors stay short.
const MOST_VISITS: usize = 10_000;

pub(super) fn check(problem: &Problem, assumptions: &Assumptions) -> Result<(), Unusable> {
    problem.check()?;
    assumptions.check()?;
    if problem.services.len() > MOST_VISITS {
        return Err(Unusable(format!("more than {MOST_VISITS} appointments on a day")));
    }
    Ok(())
}

fn live_all(problem: &Problem, ways: &[Begins], days: &Days<'_>) -> Result<Vec<Tally>, Unusable> {
    check(problem, days.assumptions)?;
    let template = Template::new(problem);
    let words = (days.days as usize).div_ceil(BITS);
    // Each thread takes neighbouring words, so that no two write into the same one.
    let part = words.div_ceil(days.threads.max(1)).max(1);
    let parts = words.div_ceil(part);
    let live = |i: usize| {
        let from = i * part * BITS;
        let to = ((i + 1) * part * BITS).min(days.days as usize);
        live_some(&template, ways, days, from as u32..to as u32)
    };
    let done: Vec<Vec<Tally>> = match parts {
        0 | 1 => (0..parts).map(live).collect(),
        _ => std::thread::scope(|scope| {
            let hands: Vec<_> = (0..parts).map(|i| scope.spawn(move || live(i))).collect();
            let join = |hand: std::thread::ScopedJoinHandle<'_, _>| {
                hand.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
            };
            hands.into_iter().map(join).collect()
        }),
    };
    let mut sums = vec![Tally { days: 0, waiting: 0, good: Vec::with_capacity(words) }; ways.len()];
    for some in done {
        for (sum, tally) in sums.iter_mut().zip(some) {
            sum.days += tally.days;
            sum.waiting += tally.waiting;
            sum.good.extend(tally.good);
        }
    }
    Ok(sums)
}

fn live_some(
    template: &Template,
    ways: &[Begins],
    days: &Days<'_>,
    range: std::ops::Range<u32>,
) -> Vec<Tally> {
    let mut day = Day::new(template);
    let mut life = Life::new(template, days.assumptions);
    let words = range.len().div_ceil(BITS);
    let mut tallies =
        vec![Tally { days: range.len() as u32, waiting: 0, good: vec![0; words] }; ways.len()];
    for (i, number) in range.enumerate() {
        day.draw(template, days.assumptions, days.seed, number);
        for (tally, begins) in tallies.iter_mut().zip(ways) {
            let waiting = life.live(&day, begins);
            tally.waiting += u64::from(waiting);
            tally.good[i / BITS] |= u64::from(waiting == 0) << (i % BITS);
        }
    }
    tallies
}
