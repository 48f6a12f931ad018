//! Why the book has nothing for a time; and that the salon's own box was off.

use super::Refusal;
use load::SetState;
use logbook::book::Draft;
use logbook::fact::{Body, Counter, GapWhy, StopReason};
use logbook::view::View;
use measure::Instant;

/// Writes why the book has nothing. The time stays visible in the log, with its reason.
pub fn explain(
    draft: &mut Draft,
    (from, to): (Instant, Instant),
    why: GapWhy,
    now: Instant,
) -> Result<(), Refusal> {
    if to > now {
        return Err(Refusal::rule("refused-future"));
    }
    if from >= to {
        return Err(Refusal::rule("refused-end-before-start"));
    }
    draft.fact(Body::Counter(Box::new(Counter::GapExplained { from, to, why })));
    Ok(())
}

/// The box was off while a run was in a machine: nobody can tell what the machine did meanwhile, so
/// each such run is set aside. A named person may lift that; the looks still want its numbers. With
/// no run in a machine nothing is written.
pub fn box_was_off(
    view: &View<'_>,
    draft: &mut Draft,
    (from, to): (Instant, Instant),
) -> Result<(), Refusal> {
    let running: Vec<_> =
        view.machines()?.into_iter().filter_map(|machine| machine.running).collect();
    if running.is_empty() {
        return Ok(());
    }
    draft.fact(Body::Counter(Box::new(Counter::BoxWasOff { from, to })));
    for run in running {
        let inside = view.pouches_of_run(run)?.into_iter();
        let pouches = inside
            .filter(|pouch| pouch.state == SetState::InMachine)
            .map(|pouch| pouch.pouch)
            .collect();
        draft.fact(Body::SetAside { pouches, run: Some(run), why: StopReason::NotSure });
    }
    Ok(())
}
