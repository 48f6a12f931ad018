//! Ways out of a day on which somebody would wait, each one planned and not guessed. Another run,
//! a faster cycle or another machine of the salon's own are no ways out: the plan has them already.

use super::answer::{Plan, Unmet};
use super::order::{Criterion, SALON};
use super::problem::{Problem, Service, Unusable};
use super::solve::{Options, solve};

/// Something that could be done about a set that is missing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Way {
    /// A kit for single use, for one appointment: it takes so many sets of a kind off the day.
    SingleUse {
        /// Which service.
        service: usize,
        /// Which kind.
        kind: usize,
        /// How many kits.
        n: u32,
    },
    /// One appointment so many slots later (below zero: earlier).
    Move {
        /// Which service.
        service: usize,
        /// By how many slots.
        by: i64,
    },
    /// Somebody begins so many slots before the day: an earlier run becomes possible.
    Earlier {
        /// How many slots.
        by: usize,
    },
    /// One more machine like this one.
    OtherMachine {
        /// Which machine.
        like: usize,
    },
    /// One more person for the washing, all day.
    OneMorePerson,
}

/// A way out and what the day comes to with it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WayOut {
    /// What to do.
    pub way: Way,
    /// Weighted sets that still go missing.
    pub unmet: u64,
    /// Sets that are short tomorrow.
    pub short: u64,
}

/// Rounds of search for one way: enough for a salon's day, and the same every time.
const ROUNDS: u32 = 5;

/// Ways that make a plan better in its first two levels, `now`, the best first. Each is planned anew
/// in a fixed number of steps; what is not listed was not enough, or was not found in them.
///
/// # Errors
/// A day that [`Problem::check`] does not take.
pub fn ways_out(
    problem: &Problem,
    plan: &Plan,
    now: [u64; 2],
    stop: &(dyn Fn() -> bool + Sync),
) -> Result<Vec<WayOut>, Unusable> {
    let mut ways = Vec::new();
    problem.check()?;
    if now == [0, 0] {
        return Ok(ways);
    }
    for way in candidates(problem, plan) {
        if stop() {
            break;
        }
        let options = Options { order: SALON, threads: 1, rounds: ROUNDS };
        // One machine or person more may be more than any salon has: then it is no way out.
        let Ok(then) = solve(&changed(problem, &way), &options, stop) else { continue };
        let then = then.criteria;
        let then = [then[Criterion::Unmet], then[Criterion::Short]];
        if then < now {
            ways.push(WayOut { way, unmet: then[0], short: then[1] });
        }
    }
    ways.sort_by_key(|w| (w.unmet, w.short));
    Ok(ways)
}

fn candidates(problem: &Problem, plan: &Plan) -> Vec<Way> {
    let mut ways = Vec::new();
    let hour = problem.slots_up(60);
    for &Unmet { service, kind, n } in &plan.unmet {
        ways.push(Way::SingleUse { service, kind, n });
        for by in [hour as i64 / 2, hour as i64, 2 * hour as i64, -(hour as i64) / 2] {
            let start = problem.services[service].start as i64 + by;
            if start >= 0 && (start as usize) < problem.slots {
                ways.push(Way::Move { service, by });
            }
        }
    }
    ways.push(Way::Earlier { by: hour / 2 });
    ways.push(Way::OneMorePerson);
    ways.extend((0..problem.machines.len()).map(|like| Way::OtherMachine { like }));
    ways
}

/// The day with a way taken.
fn changed(problem: &Problem, way: &Way) -> Problem {
    let mut day = problem.clone();
    match *way {
        Way::SingleUse { service, kind, n } => {
            let needs = &mut day.services[service].needs;
            needs.iter_mut().filter(|need| need.0 == kind).for_each(|need| need.1 -= n.min(need.1));
        }
        Way::Move { service, by } => {
            let Service { start, end, .. } = &mut day.services[service];
            *start = start.saturating_add_signed(by as isize);
            *end = end.saturating_add_signed(by as isize);
        }
        Way::Earlier { by } => earlier(&mut day, by),
        Way::OtherMachine { like } => day.machines.push(day.machines[like].clone()),
        Way::OneMorePerson => day.hands.iter_mut().for_each(|h| *h += problem.slot_min),
    }
    day
}

/// The same day with one pair of hands for so many slots before it.
fn earlier(day: &mut Problem, by: usize) {
    day.slots += by;
    day.hands.splice(0..0, std::iter::repeat_n(day.slot_min, by));
    day.services.iter_mut().for_each(|s| {
        s.start += by;
        s.end += by;
    });
    for machine in &mut day.machines {
        machine.free_from += if machine.free_from > 0 { by } else { 0 };
        machine.warm_until = machine.warm_until.map(|t| t + by);
    }
    for carry in &mut day.carry {
        for list in [&mut carry.dirty_at, &mut carry.loadable_at, &mut carry.ready_at] {
            list.iter_mut().for_each(|l| l.0 += by);
        }
    }
}
