//! Set aside: one step, open to everyone, at any time, without a reason in words.

use super::Refusal;
use load::SetState;
use logbook::book::Draft;
use logbook::fact::{Body, StopReason};
use logbook::view::{Pouch, View};
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
    for pouch in pouches.clone() {
        let row = view.pouch(pouch)?.ok_or_else(|| Refusal::rule("refused-no-such-pouch"))?;
        pouches.extend(reached(view, &row, &pouches, stop.why)?);
    }
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

/// How far a look that failed after the release reaches: a mark, all of its run; a second wet pouch,
/// all of its run (the trade's rule; common practice, no source).
fn reached(
    view: &View<'_>,
    pouch: &Pouch,
    these: &[PouchId],
    why: StopReason,
) -> Result<Vec<PouchId>, Refusal> {
    let Some(run) = pouch.run else {
        return Ok(Vec::new());
    };
    let all = view.pouches_of_run(run)?;
    let mut wet = 0;
    for other in &all {
        let was = view.stops_of(other.pouch)?.contains(&StopReason::Wet);
        wet += usize::from(was || these.contains(&other.pouch));
    }
    let whole = why == StopReason::Mark || (why == StopReason::Wet && wet > 1);
    let about = all.into_iter().filter(|other| whole && other.state != SetState::Retired);
    Ok(about.map(|other| other.pouch).collect())
}
