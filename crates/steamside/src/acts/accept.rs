//! Accept: the team agrees to a plan. From then on it is mended, not made anew.

use super::Refusal;
use logbook::book::Draft;
use logbook::fact::{Body, Day, PlannedRun};
use logbook::view::View;
use measure::Instant;

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

/// Writes the plan down. Its machines must be there; what it is worth is for the page to say.
pub fn accept(view: &View<'_>, draft: &mut Draft, plan: Accept) -> Result<(), Refusal> {
    let machines = view.machines()?;
    let known = |run: &PlannedRun| {
        machines.iter().any(|m| m.machine == run.machine && m.out_since.is_none())
    };
    if plan.from >= plan.to || plan.runs.len() > MOST_RUNS || !plan.runs.iter().all(known) {
        return Err(Refusal::rule("refused-plan-is-old"));
    }
    draft.fact(Body::Day(Day::PlanAccepted { from: plan.from, to: plan.to, runs: plan.runs }));
    Ok(())
}
