//! Claim: a person says that a cycle of a record belongs to a run. It is judged again for what was
//! inside that run; a turn to the worse side sets aside what was released on the better one.

use super::Refusal;
use crate::intake::{judge, known};
use load::SetState;
use logbook::book::Draft;
use logbook::fact::{Body, Judged, StopReason};
use logbook::view::View;
use measure::{RecordHash, RunId};
use release::verdict::Outcome;

/// Which cycle belongs to which run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Claim {
    /// The file.
    pub record: RecordHash,
    /// The cycle in it.
    pub cycle: u32,
    /// The run.
    pub run: RunId,
}

/// Gives a cycle to a run that has none yet.
pub fn claim(view: &View<'_>, draft: &mut Draft, claim: Claim) -> Result<(), Refusal> {
    let run = view.run(claim.run)?.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
    if run.undone {
        return Err(Refusal::rule("refused-no-such-run"));
    }
    if run.record.is_some() {
        return Err(Refusal::rule("refused-run-has-record"));
    }
    let taken = view
        .taken(claim.record)?
        .into_iter()
        .find(|taken| taken.cycle == claim.cycle)
        .ok_or_else(|| Refusal::rule("refused-no-such-record"))?;
    if taken.run.is_some() {
        return Err(Refusal::rule("refused-record-claimed"));
    }
    let bytes =
        view.drawer(taken.kept.entry)?.ok_or_else(|| Refusal::rule("refused-record-deleted"))?;
    let known = known::of_machine(&view.machines()?, Some(run.machine));
    let judged = judge::cycle_for_run(&bytes, claim, &run, &known)
        .ok_or_else(|| Refusal::rule("refused-record-unreadable"))?;
    draft.fact(Body::RecordClaimed { record: claim.record, cycle: claim.cycle, run: claim.run });
    write_verdict(view, draft, judged)
}

/// Writes a verdict, and sets aside what an earlier, better one had let through.
pub fn write_verdict(view: &View<'_>, draft: &mut Draft, judged: Judged) -> Result<(), Refusal> {
    let worse = judged.outcome != Outcome::Lethal;
    let run = judged.run;
    draft.fact(Body::Judged(Box::new(judged)));
    let Some(run) = run.filter(|_| worse) else {
        return Ok(());
    };
    let pouches: Vec<_> = view
        .pouches_of_run(run)?
        .iter()
        .filter(|pouch| {
            matches!(pouch.state, SetState::Ready | SetState::UseNow | SetState::Opened)
        })
        .map(|pouch| pouch.pouch)
        .collect();
    if !pouches.is_empty() {
        draft.fact(Body::SetAside { pouches, run: Some(run), why: StopReason::JudgedWorse });
    }
    Ok(())
}
