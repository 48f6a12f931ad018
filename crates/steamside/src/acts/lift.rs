//! Lift: a named person lifts a stop made by mistake or for missing paperwork. A failed number,
//! mark or look has no way back but a new run.

use super::Refusal;
use load::SetState;
use logbook::book::Draft;
use logbook::fact::{Body, LiftReason};
use logbook::view::View;
use measure::PouchId;
use release::verdict::Outcome;

/// Which stop, and why it may be lifted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lift {
    /// The pouches.
    pub pouches: Vec<PouchId>,
    /// Why.
    pub why: LiftReason,
}

/// Lifts a stop where every reason that ever stopped the pouch was a slip.
pub fn lift(view: &View<'_>, draft: &mut Draft, lift: Lift) -> Result<(), Refusal> {
    if lift.pouches.is_empty() {
        return Err(Refusal::rule("refused-nothing-chosen"));
    }
    for pouch in &lift.pouches {
        let row = view.pouch(*pouch)?.ok_or_else(|| Refusal::rule("refused-no-such-pouch"))?;
        if row.state != SetState::SetAside {
            return Err(Refusal::rule_with("refused-not-stopped", "code", row.code));
        }
        if view.stops_of(*pouch)?.into_iter().any(|why| !why.may_be_a_slip()) {
            return Err(Refusal::rule_with("refused-no-way-back", "code", row.code));
        }
        // Whatever the stop was for: on a verdict that is no longer good nothing goes back.
        let run = row.run.map(|run| view.run(run)).transpose()?.flatten();
        if run.is_some_and(|run| run.outcome.is_some_and(|outcome| outcome != Outcome::Lethal)) {
            return Err(Refusal::rule_with("refused-no-way-back", "code", row.code));
        }
    }
    draft.fact(Body::StopLifted { pouches: lift.pouches, why: lift.why });
    Ok(())
}
