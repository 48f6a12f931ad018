//! Whether the policy tells the truth: the same days, planned.
//!
//! What the policy did on a day on which nobody waited is audited as a plan; it keeps the rules of the
//! day plan, so such a plan exists. The other days are planned anew, by a planner who knows the whole
//! day before it begins. No run fails and no load is wet in these days, since no plan can say that.

use super::life::Life;
use super::random::{Coming, Day};
use super::tally::{Days, check};
use super::template::{Template, begins};
use super::trace::Trace;
use crate::plan::{Criterion, Options, Problem, Service, Unusable, audit, solve};

/// How the policy and the planner did on the same days.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Confirmed {
    /// How many days were looked at.
    pub days: u32,
    /// Days on which nobody waits under the policy.
    pub policy: u32,
    /// Days on which the planner finds a plan by which nobody waits.
    pub planner: u32,
}

/// How far a plan is looked for.
const ROUNDS: u32 = 1;

/// Plans the first `days.days` days of the seed, without failed and wet loads.
///
/// # Errors
/// A day that cannot be planned, or rates that are none.
pub fn confirm(problem: &Problem, days: &Days<'_>) -> Result<Confirmed, Unusable> {
    let assumptions = days.assumptions.every_run_good();
    check(problem, &assumptions)?;
    let template = Template::new(problem);
    let begins = begins(problem);
    let mut day = Day::new(&template);
    let mut life = Life::new(&template, &assumptions);
    let mut confirmed = Confirmed { days: days.days, policy: 0, planner: 0 };
    for number in 0..days.days {
        day.draw(&template, &assumptions, days.seed, number);
        life.trace = Some(Trace::default());
        let nobody_waits = life.live(&day, &begins) == 0;
        let real = as_problem(problem, &day);
        confirmed.policy += u32::from(nobody_waits);
        let proven =
            nobody_waits && life.trace.take().is_some_and(|trace| is_a_plan(&trace, &real));
        confirmed.planner += u32::from(proven || can_be_planned(&real, days.threads)?);
    }
    Ok(confirmed)
}

/// Whether what was done is a plan by which nobody waits. A plan cannot say that a set for use at
/// once was not opened; such days are planned anew.
fn is_a_plan(trace: &Trace, real: &Problem) -> bool {
    trace.spoilt == 0
        && audit(real, &trace.plan(real.kinds.len())).is_ok_and(|objective| objective[0] == 0)
}

fn can_be_planned(problem: &Problem, threads: usize) -> Result<bool, Unusable> {
    let options = Options { order: &[Criterion::Unmet], threads, rounds: ROUNDS };
    let answer = solve(problem, &options, &|| false)?;
    Ok(answer.plan.unmet.is_empty())
}

/// The day as if everything had been booked the way it came.
pub(super) fn as_problem(problem: &Problem, day: &Day) -> Problem {
    let mut real = problem.clone();
    real.hands = day.hands.iter().map(|minutes| minutes.unsigned_abs()).collect();
    real.services.clear();
    for visitor in &day.visitors {
        let booked = &problem.services[usize::from(visitor.of)];
        let (start, end) = (usize::from(visitor.start), usize::from(visitor.end));
        let needs = match visitor.coming {
            Coming::Away => Vec::new(),
            Coming::Booked | Coming::WalkIn => booked.needs.clone(),
        };
        // Kept even where nobody comes, so that visitors and services have the same numbers.
        let end = if visitor.coming == Coming::Away { start } else { end };
        real.services.push(Service {
            id: booked.id.clone(),
            start,
            end,
            weight: booked.weight,
            needs,
        });
    }
    real
}
