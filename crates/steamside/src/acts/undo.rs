//! Undo: a new fact that takes an act back. Going to the safer side is not undone by a tap, and
//! undoing a release is setting aside.

use super::Refusal;
use crate::pace::Pace;
use load::SetState;
use logbook::book::Draft;
use logbook::fact::{Body, Counter, Day, Loading, StopReason, Upkeep};
use logbook::view::View;
use measure::{ActId, Instant, PouchId, Span};

/// For how long a tap can be taken back; afterwards the log is corrected by a new fact.
pub const UNDO_FOR: Span = Span::from_seconds(35);

/// What is to be taken back, and when.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Undo {
    /// The act.
    pub act: ActId,
    /// The moment of the wish.
    pub now: Instant,
    /// How the clock runs that shows it: a hand has as long in a practice book.
    pub pace: Pace,
}

/// Takes an act back where it can be.
pub fn undo(view: &View<'_>, draft: &mut Draft, undo: Undo) -> Result<(), Refusal> {
    let Undo { act, now, pace } = undo;
    if view.act_undone(act)?.is_some() {
        return Err(Refusal::rule("refused-undone-already"));
    }
    let facts = view.facts_of_act(act)?;
    if facts.is_empty() {
        return Err(Refusal::rule("refused-nothing-to-undo"));
    }
    let late =
        facts.first().is_some_and(|first| pace.true_between(first.stamp.written, now) > UNDO_FOR);
    let released: Vec<_> = facts
        .iter()
        .filter_map(|fact| match &fact.body {
            Body::Released { pouches, .. } => Some(pouches.clone()),
            _ => None,
        })
        .flatten()
        .collect();
    if !released.is_empty() {
        draft.fact(Body::SetAside { pouches: released, run: None, why: StopReason::ReleaseUndone });
        return Ok(());
    }
    if !facts.iter().all(|fact| can_be_undone(&fact.body)) {
        return Err(Refusal::rule("refused-no-undo"));
    }
    if late {
        return Err(Refusal::rule("refused-undo-late"));
    }
    for fact in &facts {
        if !still_fits(view, &fact.body)? {
            return Err(Refusal::rule("refused-undo-moved-on"));
        }
    }
    draft.fact(Body::Undone { act });
    Ok(())
}

/// Is it one of the facts that a tap may take back?
pub fn can_be_undone(body: &Body) -> bool {
    if let Body::Loading(said) = body {
        return matches!(**said, Loading::TrayWeighed { .. });
    }
    if let Body::Counter(said) = body {
        return matches!(
            **said,
            Counter::HandedOver { .. }
                | Counter::TakenOver { .. }
                | Counter::GapExplained { .. }
                | Counter::PersonSpeaks { .. }
                | Counter::PersonIs { .. }
                | Counter::RecordShows { .. }
        );
    }
    if let Body::Upkeep(said) = body {
        return is_of_the_day(said);
    }
    matches!(
        body,
        Body::Washed { .. }
            | Body::Packed { .. }
            | Body::RunStarted { .. }
            | Body::RunUnloaded { .. }
            | Body::Opened { .. }
            | Body::TakenApart { .. }
            | Body::Counted { .. }
            | Body::SetsOwned { .. }
            | Body::Day(
                Day::VisitBooked { origin: None, .. }
                    | Day::VisitLate { .. }
                    | Day::VisitMissed { .. }
                    | Day::VisitCancelled { .. }
                    | Day::VisitIs { .. }
            )
    )
}

/// Chores, jars, basins and stock are what they were before; a machine's service and a spore test
/// are put right by a new fact.
fn is_of_the_day(said: &Upkeep) -> bool {
    !matches!(
        said,
        Upkeep::MachineServiced { .. }
            | Upkeep::SporePlaced { .. }
            | Upkeep::SporePosted { .. }
            | Upkeep::SporeRead { .. }
            | Upkeep::SporeLost { .. }
            | Upkeep::Unfrozen { .. }
    )
}

/// Is everything still as the fact left it, so that taking it back undoes it and nothing else?
fn still_fits(view: &View<'_>, body: &Body) -> Result<bool, Refusal> {
    let all_in = |pouches: &[PouchId], state: SetState| -> Result<bool, Refusal> {
        for pouch in pouches {
            if view.pouch(*pouch)?.is_none_or(|row| row.state != state) {
                return Ok(false);
            }
        }
        Ok(true)
    };
    match body {
        Body::Packed { pouches } => {
            let pouches: Vec<_> = pouches.iter().map(|packed| packed.pouch).collect();
            all_in(&pouches, SetState::Bagged)
        }
        Body::RunStarted { pouches, .. } => all_in(pouches, SetState::InMachine),
        Body::RunUnloaded { run } => {
            let row = view.run(*run)?.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
            let machine = view.machine(row.machine)?;
            let empty = machine.is_some_and(|machine| machine.running.is_none());
            let pouches: Vec<_> =
                view.pouches_of_run(*run)?.iter().map(|pouch| pouch.pouch).collect();
            Ok(empty && all_in(&pouches, SetState::ToCheck)?)
        }
        Body::Opened { pouch, .. } => all_in(&[*pouch], SetState::Opened),
        Body::Day(day) => super::visits::as_said(view, day),
        _ => Ok(true),
    }
}
