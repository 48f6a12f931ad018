//! Claim: a person says that a cycle of a record belongs to a run. It is judged again for what was
//! inside that run; a turn to the worse side sets aside what was released on the better one.

use super::Refusal;
use crate::intake::take::candidates;
use crate::intake::{judge, known};
use cycle::finding::Code;
use load::SetState;
use logbook::book::Draft;
use logbook::fact::{Body, Judged, StopReason};
use logbook::view::{Run, View};
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
    may_claim(view, &run, &judged)?;
    draft.fact(Body::RecordClaimed { record: claim.record, cycle: claim.cycle, run: claim.run });
    write_verdict(view, draft, judged)
}

/// Does this cycle speak of this run at all, and does nobody talk a failure round with it?
fn may_claim(view: &View<'_>, run: &Run, judged: &Judged) -> Result<(), Refusal> {
    if judged.reasons.iter().any(|reason| reason.code == Code::Unreadable) {
        return Err(Refusal::rule("refused-record-unreadable"));
    }
    if matches!(judged.outcome, Outcome::LeakPass | Outcome::LeakFail) {
        return Err(Refusal::rule("refused-not-a-run"));
    }
    if run.outcome == Some(Outcome::NotLethal) && judged.outcome == Outcome::Lethal {
        return Err(Refusal::rule("refused-no-talking-back"));
    }
    let start = judged.start_clock.as_ref().and_then(|text| text.parse().ok());
    let Some(start) = start else {
        return Ok(()); // Without date and clock only the person knows.
    };
    let near = candidates(view, start, Some(run.machine))?;
    if near.iter().any(|fit| fit.run == run.run) {
        Ok(())
    } else {
        Err(Refusal::rule_with("refused-clock-far", "clock", start))
    }
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
            // What was stopped for a lesser reason is stopped for this one as well.
            let stopped = pouch.state == SetState::SetAside;
            stopped || pouch.state == SetState::Opened || pouch.state.usable()
        })
        .map(|pouch| pouch.pouch)
        .collect();
    if !pouches.is_empty() {
        draft.fact(Body::SetAside { pouches, run: Some(run), why: StopReason::JudgedWorse });
    }
    Ok(())
}
