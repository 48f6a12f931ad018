//! The plan that stands: the accepted one as far as it still holds, mended where it does not, or a
//! new one where nobody accepted any.

use super::room;
use super::today::{SLOT_MIN, Today};
use day::plan::{DAYPLAN, Mended, Options, Plan, Rest, Run, SALON, Unusable, mend, solve};
use logbook::book::BookError;
use logbook::fact::{PlanOrder, PlannedRun};
use logbook::view::{AcceptedPlan, View};
use measure::{Instant, Span};
use std::time::Duration;

/// A plan and how it stands to what was agreed.
#[derive(Debug, Clone)]
pub struct Standing {
    /// The plan.
    pub plan: Plan,
    /// Weighted sets that go missing, and sets short tomorrow.
    pub unmet_short: [u64; 2],
    /// How many levels of [`day::plan::LEVEL_NAMES`] no plan can do better in; 0: nothing is
    /// proven.
    pub proven: usize,
    /// Somebody would wait with the spares kept back, so they are given out.
    pub spares_out: bool,
    /// Somebody agreed to a plan for this day.
    pub agreed: bool,
    /// Runs that were not agreed, and agreed runs that are gone, in slots.
    pub new: Vec<usize>,
    /// See `new`.
    pub dropped: Vec<Run>,
}

/// How long a page waits for its plan.
const WAIT: Duration = Duration::from_millis(400);
/// An agreed run that should have begun no longer ago than this is only late, not forgotten.
const LATE: Span = Span::from_minutes(60);

/// How often a plan is made again because a mix of it does not go on the trays (ours).
const TIGHTER: usize = 3;

/// The plan that stands now, and the day that it is for. Spares stay on the shelf as long as nobody
/// waits for it; given out, they are among the ready sets of that day. Every load of it goes on the
/// trays, as far as three tries reach.
///
/// # Errors
/// A day that cannot be planned: the book holds figures that no salon has.
pub fn standing(
    view: &View<'_>,
    mut today: Today,
    accepted: Option<&AcceptedPlan>,
) -> Result<(Today, Standing), Fault> {
    for _ in 0..TIGHTER {
        let (mut planned, standing) = planned_once(view, today.clone(), accepted)?;
        if !room::tighten(&mut planned, &standing.plan) {
            return Ok((planned, standing));
        }
        for (machine, tighter) in today.problem.machines.iter_mut().zip(planned.problem.machines) {
            machine.cycles = tighter.cycles;
        }
    }
    planned_once(view, today, accepted)
}

fn planned_once(
    view: &View<'_>,
    today: Today,
    accepted: Option<&AcceptedPlan>,
) -> Result<(Today, Standing), Fault> {
    let mut accepted = accepted.cloned();
    if let Some(accepted) = &mut accepted {
        strike_started(view, accepted, today.origin)?;
    }
    let accepted = accepted.as_ref();
    let kept = with(&today, accepted)?;
    if kept.unmet_short[0] == 0 || today.spares.iter().all(|&n| n == 0) {
        return Ok((today, kept));
    }
    let mut out = today.clone();
    out.problem.kinds.iter_mut().zip(&today.spares).for_each(|(kind, spares)| kind.ready += spares);
    let given = with(&out, accepted)?;
    let better = given.unmet_short[0] < kept.unmet_short[0];
    Ok(if better { (out, Standing { spares_out: true, ..given }) } else { (today, kept) })
}

fn with(today: &Today, accepted: Option<&AcceptedPlan>) -> Result<Standing, Unusable> {
    let begun = std::time::Instant::now();
    let over = || begun.elapsed() > WAIT;
    let order = match today.order {
        PlanOrder::Salon => SALON,
        PlanOrder::Comparing => DAYPLAN,
    };
    let agreed = accepted
        .filter(|a| a.span.1 > today.origin && a.span.0 <= today.moment(today.problem.slots));
    let Some(accepted) = agreed else {
        let threads = std::thread::available_parallelism().map_or(1, usize::from);
        let options = Options { order, threads, ..Options::default() };
        let answer = solve(&today.problem, &options, &over)?;
        let levels = answer.bound.iter().zip(&answer.objective);
        return Ok(Standing {
            unmet_short: [answer.objective[0], answer.objective[1]],
            proven: levels.take_while(|(bound, value)| **bound == Some(**value)).count(),
            plan: answer.plan,
            spares_out: false,
            agreed: false,
            new: Vec::new(),
            dropped: Vec::new(),
        });
    };
    let rest = Rest {
        problem: today.problem.clone(),
        services: (0..today.problem.services.len()).map(Some).collect(),
        planned: planned(today, accepted),
        unmet: Vec::new(),
    };
    let Mended { plan, criteria, new, dropped, .. } = mend(&rest, &over)?;
    let unmet_short =
        [criteria[day::plan::Criterion::Unmet], criteria[day::plan::Criterion::Short]];
    let proven = unmet_short.iter().take_while(|n| **n == 0).count();
    Ok(Standing { plan, unmet_short, proven, spares_out: false, agreed: true, new, dropped })
}

/// Why there is no plan.
#[derive(Debug, thiserror::Error)]
pub enum Fault {
    /// The book could not be read.
    #[error(transparent)]
    Book(#[from] BookError),
    /// The book holds a day that cannot be planned.
    #[error(transparent)]
    Day(#[from] Unusable),
}

/// Takes out of an agreed plan what was started since: for each run of the book the first agreed one
/// of its machine and programme, early or late.
fn strike_started(
    view: &View<'_>,
    accepted: &mut AcceptedPlan,
    now: Instant,
) -> Result<(), BookError> {
    let until = now + Span::from_minutes(60);
    for run in view.runs_between(None, accepted.at, until)?.iter().filter(|run| !run.undone) {
        let same = |planned: &PlannedRun| {
            planned.machine == run.machine
                && Some(planned.programme.word()) == run.programme.as_deref()
        };
        if let Some(at) = accepted.runs.iter().position(same) {
            accepted.runs.remove(at);
        }
    }
    Ok(())
}

/// The agreed runs that are still to be started. A run is started in the book, not in the plan: one
/// whose time is past and whose machine was not started is late, and due now.
fn planned(today: &Today, accepted: &AcceptedPlan) -> Vec<Run> {
    let problem = &today.problem;
    let due = |start: Instant| start >= today.origin || start + LATE > today.origin;
    let runs = accepted.runs.iter().filter(|run| due(run.start)).filter_map(|run| {
        let machine = today.machines.iter().position(|m| m.0 == run.machine)?;
        let cycle =
            problem.machines[machine].cycles.iter().position(|c| c.id == run.programme.word())?;
        let minutes = (run.start - today.origin).minutes();
        let start = usize::try_from(minutes / i64::from(SLOT_MIN)).unwrap_or(0);
        let load = problem
            .kinds
            .iter()
            .map(|kind| run.load.iter().filter(|l| l.0.word() == kind.id).map(|l| l.1).sum());
        (start < problem.slots).then(|| Run {
            machine,
            cycle,
            warm: run.warm,
            start,
            end: start,
            unload: start,
            ready: start,
            load: load.collect(),
        })
    });
    runs.collect()
}
