//! Accept: the team agrees to a plan. From then on it is mended, not made anew.

use super::Refusal;
use logbook::book::Draft;
use logbook::fact::{Body, Day, PlannedRun};
use logbook::view::View;
use measure::{Instant, Span};

/// A plan as it stood on the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Accept {
    /// From when it plans.
    pub from: Instant,
    /// Until when.
    pub to: Instant,
    /// Its runs, by their start.
    pub runs: Vec<PlannedRun>,
}

/// Most runs that a day's plan can have: one every five minutes of a day.
const MOST_RUNS: usize = 288;

/// A plan is for the rest of one day; the longest has 25 hours.
const LONGEST: Span = Span::from_minutes(25 * 60);

/// Writes the plan down. Its machines must be there; what it is worth is for the page to say.
pub fn accept(view: &View<'_>, draft: &mut Draft, plan: Accept) -> Result<(), Refusal> {
    let machines = view.machines()?;
    let known = |run: &PlannedRun| {
        machines.iter().any(|m| m.machine == run.machine && m.out_since.is_none())
    };
    let inside = |run: &PlannedRun| plan.from <= run.start && run.start < plan.to;
    let a_day = plan.from < plan.to && plan.to <= plan.from + LONGEST;
    if !a_day
        || plan.runs.len() > MOST_RUNS
        || !plan.runs.iter().all(|run| known(run) && inside(run))
    {
        return Err(Refusal::rule("refused-plan-is-old"));
    }
    draft.fact(Body::Day(Day::PlanAccepted { from: plan.from, to: plan.to, runs: plan.runs }));
    Ok(())
}
