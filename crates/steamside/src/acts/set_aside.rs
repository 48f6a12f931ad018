//! Set aside: one step, open to everyone, at any time, without a reason in words.

use super::Refusal;
use load::SetState;
use logbook::book::Draft;
use logbook::fact::{Body, StopReason};
use logbook::view::View;
use measure::{PouchId, RunId};

/// What must not be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetAside {
    /// A whole run.
    pub run: Option<RunId>,
    /// Or these pouches.
    pub pouches: Vec<PouchId>,
    /// Why.
    pub why: StopReason,
}

/// Sets a run or single pouches aside. Pouches that were opened already are named too, so that
/// the visits are found.
pub fn set_aside(view: &View<'_>, draft: &mut Draft, stop: SetAside) -> Result<(), Refusal> {
    let mut pouches = stop.pouches;
    if let Some(run) = stop.run {
        if view.run(run)?.is_none() {
            return Err(Refusal::rule("refused-no-such-run"));
        }
        pouches.extend(
            view.pouches_of_run(run)?
                .iter()
                .filter(|pouch| pouch.state != SetState::Retired)
                .map(|pouch| pouch.pouch),
        );
    }
    if pouches.is_empty() && stop.run.is_none() {
        return Err(Refusal::rule("refused-nothing-chosen"));
    }
    pouches.sort();
    pouches.dedup();
    draft.fact(Body::SetAside { pouches, run: stop.run, why: stop.why });
    Ok(())
}
