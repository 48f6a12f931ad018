//! Undo: a new fact that takes an act back. Going to the safer side is not undone by a tap, and
//! undoing a release is setting aside.

use super::Refusal;
use logbook::book::Draft;
use logbook::fact::{Body, StopReason};
use logbook::view::View;
use measure::ActId;

/// Takes an act back where it can be.
pub fn undo(view: &View<'_>, draft: &mut Draft, act: ActId) -> Result<(), Refusal> {
    if view.act_undone(act)?.is_some() {
        return Err(Refusal::rule("refused-undone-already"));
    }
    let facts = view.facts_of_act(act)?;
    if facts.is_empty() {
        return Err(Refusal::rule("refused-nothing-to-undo"));
    }
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
    draft.fact(Body::Undone { act });
    Ok(())
}

/// Is it one of the facts that a tap may take back?
pub fn can_be_undone(body: &Body) -> bool {
    matches!(
        body,
        Body::Washed { .. }
            | Body::Packed { .. }
            | Body::RunStarted { .. }
            | Body::RunUnloaded { .. }
            | Body::Opened { .. }
            | Body::TakenApart { .. }
            | Body::RecordClaimed { .. }
            | Body::Counted { .. }
            | Body::SetsOwned { .. }
    )
}
