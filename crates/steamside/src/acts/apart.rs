//! Taken apart: a pouch that was not opened for a client is opened, its set is used again. A pouch
//! is never used twice.

use super::Refusal;
use load::SetState;
use logbook::book::Draft;
use logbook::fact::Body;
use logbook::view::View;
use measure::PouchId;

/// Sends the sets of these pouches back to the beginning of the round.
pub fn apart(view: &View<'_>, draft: &mut Draft, pouches: Vec<PouchId>) -> Result<(), Refusal> {
    if pouches.is_empty() {
        return Err(Refusal::rule("refused-nothing-chosen"));
    }
    for pouch in &pouches {
        let row = view.pouch(*pouch)?.ok_or_else(|| Refusal::rule("refused-no-such-pouch"))?;
        if matches!(row.state, SetState::InMachine | SetState::Opened | SetState::Retired) {
            return Err(Refusal::rule_with("refused-not-to-hand", "code", row.code));
        }
    }
    draft.fact(Body::TakenApart { pouches });
    Ok(())
}
