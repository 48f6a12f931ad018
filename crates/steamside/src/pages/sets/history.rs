//! How days differ from what was booked, as far as the salon's own book says.

use day::sets::{Assumptions, Basis, Event, Rate};
use logbook::book::BookError;
use logbook::fact::StopReason;
use logbook::view::{View, VisitState};
use measure::{Instant, Span};

/// How far back visits are counted, days: a season.
const BACK: i64 = 90;
/// How many runs of each machine are counted.
const RUNS: u32 = 200;
/// With fewer visits or runs an assumption is better (ours).
const FEWEST: usize = 50;

/// The assumptions, with what was counted here in place of what is assumed.
pub fn counted(view: &View<'_>, now: Instant) -> Result<Assumptions, BookError> {
    let mut assumptions = Assumptions::default();
    let from = now - Span::from_minutes(BACK * 24 * 60);
    let mut visits = view.visits(from, now)?;
    visits.retain(|visit| visit.state != VisitState::Cancelled);
    let missed = visits.iter().filter(|visit| visit.state == VisitState::Missed).count();
    let late = visits.iter().filter(|visit| visit.late_min > 0).count();
    count(&mut assumptions, Event::NoShow, missed, visits.len());
    count(&mut assumptions, Event::Late, late, visits.len());
    let (mut runs, mut failed, mut wet) = (0, 0, 0);
    for machine in view.machines()? {
        for run in view.last_runs(machine.machine, None, RUNS)? {
            runs += usize::from(run.looked.is_some() || run.stopped.is_some());
            failed += usize::from(run.stopped.is_some_and(|(_, why)| of_the_run(why)));
            wet += usize::from(run.stopped.is_some_and(|(_, why)| why == StopReason::Wet));
        }
    }
    count(&mut assumptions, Event::Failed, failed, runs);
    count(&mut assumptions, Event::Wet, wet, runs);
    Ok(assumptions)
}

/// Whether the whole load begins anew because the run did not do what was asked.
const fn of_the_run(why: StopReason) -> bool {
    matches!(
        why,
        StopReason::Numbers
            | StopReason::CannotTell
            | StopReason::Mark
            | StopReason::Interrupted
            | StopReason::JudgedWorse
    )
}

/// What nobody ever wrote down was perhaps not looked for: none at all stays an assumption.
fn count(assumptions: &mut Assumptions, event: Event, found: usize, of: usize) {
    if of >= FEWEST && found > 0 {
        let share = found as f64 / of as f64;
        assumptions[event] = Rate { share, basis: Basis::Counted(of as u32) };
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn few_visits_and_none_noted_stay_assumptions() {
        let check = |found, of, expected: Option<f64>| {
            let mut assumptions = Assumptions::default();
            count(&mut assumptions, Event::NoShow, found, of);
            let usual = Assumptions::default()[Event::NoShow];
            let rate = assumptions[Event::NoShow];
            assert_eq!(rate.share, expected.unwrap_or(usual.share), "{found} of {of}");
            let basis = expected.map_or(Basis::Assumed, |_| Basis::Counted(of as u32));
            assert_eq!(rate.basis, basis, "{found} of {of}");
        };
        check(4, 49, None);
        check(0, 500, None);
        check(5, 50, Some(0.1));
    }
}
