//! The looks: numbers, marks, dry and whole. What becomes of each pouch follows from all answers
//! ever given for the run; the first answer to "dry?" stands.

use super::Refusal;
use load::{Contents, SetState};
use logbook::book::Draft;
use logbook::fact::{Basis, Body, Judged, StopReason};
use logbook::view::{JudgedFact, Run, View};
use measure::{Instant, PouchId, RunId, Span};
use release::looks::{Answers, DryWhole, Looked, Marks, Why, decide};

/// How long an unpouched set may be used after its release, where the salon set nothing else.
/// (Common practice, no source: for use at once, in a covered tray.)
const USE_NOW: Span = Span::from_minutes(60);

/// What a person saw.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Look {
    /// The run.
    pub run: RunId,
    /// Marks that did not turn; `None` where nobody looked at the marks.
    pub marks_not_turned: Option<Vec<PouchId>>,
    /// Did the indicator inside the load reach its end point? `None` where nobody looked.
    pub inner_mark: Option<bool>,
    /// Wet, torn, dropped; `None` where nobody looked.
    pub dry_whole: Option<[Vec<PouchId>; 3]>,
    /// When.
    pub now: Instant,
}

/// Writes what was seen, and releases or sets aside what follows from it.
pub fn look(view: &View<'_>, draft: &mut Draft, look: Look) -> Result<(), Refusal> {
    let run = view.run(look.run)?.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
    if run.undone {
        return Err(Refusal::rule("refused-no-such-run"));
    }
    if run.unloaded.is_none() {
        return Err(Refusal::rule("refused-not-unloaded"));
    }
    let judged = view.judged_of_run(look.run)?;
    let verdict = judged.first().ok_or_else(|| Refusal::rule("refused-no-numbers"))?;
    let inside = looked_at(view, &run, verdict)?;
    if inside.pouches.is_empty() {
        return Err(Refusal::rule("refused-nothing-to-check"));
    }
    let answers = answers(view, &look)?;
    let decision =
        decide(&inside, &answers).map_err(|_| Refusal::rule("refused-not-in-this-run"))?;
    draft.fact(looked_fact(&look));
    // What is set aside already stays so without being said again.
    let waiting: Vec<PouchId> = view
        .pouches_of_run(look.run)?
        .iter()
        .filter(|pouch| pouch.state == SetState::ToCheck)
        .map(|pouch| pouch.pouch)
        .collect();
    for why in Why::ALL {
        let pouches: Vec<_> = decision
            .set_aside
            .iter()
            .filter(|(pouch, reason)| *reason == why && waiting.contains(pouch))
            .map(|(pouch, _)| *pouch)
            .collect();
        if !pouches.is_empty() {
            let whole = pouches.len() == inside.pouches.len();
            let run = whole.then_some(look.run);
            draft.fact(Body::SetAside { pouches, run, why: stop_reason(why) });
        }
    }
    if !decision.release.is_empty() {
        draft.fact(Body::Released {
            run: look.run,
            pouches: decision.release,
            use_until: (inside.contents == Contents::Unwrapped).then(|| look.now + USE_NOW),
        });
    }
    Ok(())
}

/// The pouches of the run that still wait for a look, with the verdict that counts.
fn looked_at(view: &View<'_>, run: &Run, verdict: &JudgedFact) -> Result<Looked, Refusal> {
    let pouches = view
        .pouches_of_run(run.run)?
        .into_iter()
        .filter(|pouch| matches!(pouch.state, SetState::ToCheck | SetState::SetAside))
        .map(|pouch| pouch.pouch)
        .collect();
    Ok(Looked {
        outcome: verdict.judged.outcome,
        proven_for: verdict.judged.proven_for.clone(),
        contents: run.contents,
        pouches,
        needs_inner_mark: rests_on_reading(&verdict.judged),
    })
}

/// A verdict on numbers that a person read wants an inner mark in each load (the trade's rule for
/// machines without a record; common practice, no source).
pub fn rests_on_reading(judged: &Judged) -> bool {
    matches!(judged.basis, Basis::Reading { .. })
}

/// Every answer given for the run so far, this one last.
fn answers(view: &View<'_>, look: &Look) -> Result<Answers, Refusal> {
    let mut answers = Answers::default();
    for fact in view.looks_of_run(look.run)?.iter().chain([&looked_fact(look)]) {
        if let Body::Looked {
            marks_looked,
            inner_mark,
            dry_looked,
            marks_not_turned,
            wet,
            torn,
            dropped,
            ..
        } = fact
        {
            answers.inner_mark.extend(*inner_mark);
            if *marks_looked {
                answers.marks.push(match marks_not_turned.as_slice() {
                    [] => Marks::AllTurned,
                    these => Marks::NotTurned(these.to_vec()),
                });
            }
            if *dry_looked {
                let torn = torn.iter().chain(dropped).copied().collect();
                answers.dry.push(DryWhole { wet: wet.clone(), torn });
            }
        }
    }
    Ok(answers)
}

fn looked_fact(look: &Look) -> Body {
    let [wet, torn, dropped] = look.dry_whole.clone().unwrap_or_default();
    Body::Looked {
        run: look.run,
        marks_looked: look.marks_not_turned.is_some(),
        inner_mark: look.inner_mark,
        dry_looked: look.dry_whole.is_some(),
        marks_not_turned: look.marks_not_turned.clone().unwrap_or_default(),
        wet,
        torn,
        dropped,
    }
}

fn stop_reason(why: Why) -> StopReason {
    match why {
        Why::Numbers => StopReason::Numbers,
        Why::CannotTell | Why::NotCovered => StopReason::CannotTell,
        Why::Mark => StopReason::Mark,
        Why::Wet | Why::WetRun => StopReason::Wet,
        Why::Torn => StopReason::Torn,
        Why::SporeTest => StopReason::Recall,
        Why::Mistake | Why::Paperwork => StopReason::NotSure,
    }
}
