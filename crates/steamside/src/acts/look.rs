//! The looks: numbers, marks, dry and whole. What becomes of each pouch follows from all answers
//! ever given for the run; the first answer to "dry?" stands.

use super::Refusal;
use load::SetState;
use logbook::book::Draft;
use logbook::fact::{Basis, Body, Counter, Judged, StopReason};
use logbook::view::{JudgedFact, Pouch, Run, View};
use measure::{Instant, PersonId, PouchId, RunId, Span};
use release::looks::{Answers, Decision, DryWhole, Looked, Marks, Why, decide};

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
    /// Place of the newest fact that the page showed on which this was tapped.
    pub seen_to: Option<u64>,
    /// It was tapped while the station was cut off.
    pub kept: bool,
    /// How many pouches were counted, where a count was asked for.
    pub count: Option<u32>,
    /// Who looked.
    pub by: Option<PersonId>,
    /// When.
    pub now: Instant,
}

/// Every so many runs of a machine, all good is said with a count (ours: often enough that it is
/// expected, seldom enough that it is done).
const COUNT_EVERY: u64 = 10;

/// Is a count of the pouches asked for before all is said to be good? It cannot be answered from a
/// desk. Always where the one who looks still learns.
pub fn asks_count(
    view: &View<'_>,
    run: &Run,
    by: Option<PersonId>,
) -> Result<bool, logbook::book::BookError> {
    let learns = match by {
        Some(by) => view.roles(by)?.learns,
        None => false,
    };
    Ok(learns || view.place_of_run(run)?.is_multiple_of(COUNT_EVERY))
}

/// The count, where one is asked for and fits. A wrong one only says "count again".
fn count_back(
    view: &View<'_>,
    draft: &mut Draft,
    look: &Look,
    (run, pouches): (&Run, usize),
) -> Result<(), Refusal> {
    let all_good = look.marks_not_turned.as_ref().is_some_and(Vec::is_empty)
        && look.dry_whole.as_ref().is_some_and(|lists| lists.iter().all(Vec::is_empty));
    if all_good && look.count.is_none() && asks_count(view, run, look.by)? {
        return Err(Refusal::rule("refused-count-first"));
    }
    let Some(count) = look.count else { return Ok(()) };
    if usize::try_from(count) != Ok(pouches) {
        return Err(Refusal::rule("refused-count-again"));
    }
    let said = Counter::CountedBack { run: look.run, count };
    draft.fact(Body::Counter(Box::new(said)));
    Ok(())
}

/// Writes what was seen, and releases or sets aside what follows from it.
pub fn look(view: &View<'_>, draft: &mut Draft, look: Look) -> Result<(), Refusal> {
    let run = view.run(look.run)?.filter(|run| !run.undone);
    let run = run.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
    if run.unloaded.is_none() {
        return Err(Refusal::rule("refused-not-unloaded"));
    }
    if run.unloaded.is_some_and(|out| look.now < out) {
        return Err(Refusal::rule("refused-look-before-out"));
    }
    if look.marks_not_turned.is_none() && look.inner_mark.is_none() && look.dry_whole.is_none() {
        return Err(Refusal::rule("refused-no-answer"));
    }
    let counting = run.judged.map(|seq| view.judged(seq)).transpose()?.flatten();
    let verdict = counting.ok_or_else(|| Refusal::rule("refused-no-numbers"))?;
    let pouches = view.pouches_of_run(look.run)?;
    let answers = answers(view, &look)?;
    let inside = looked_at(&run, &verdict, &pouches);
    let decision =
        decide(&inside, &answers).map_err(|_| Refusal::rule("refused-not-in-this-run"))?;
    let meanwhile = set_aside_since(view, &pouches, look.seen_to)?;
    // What somebody else set aside meanwhile is released here as well: both are kept, the fact is
    // marked, and the safer one holds.
    let waiting =
        |pouch: &&Pouch| pouch.state == SetState::ToCheck || meanwhile.contains(&pouch.pouch);
    let released: Vec<&Pouch> = pouches
        .iter()
        .filter(waiting)
        .filter(|pouch| decision.release.contains(&pouch.pouch))
        .collect();
    // A look at what another has looked at changes nothing; one that was kept is written all the same.
    if !pouches.iter().any(|pouch| waiting(&pouch)) && decision.set_aside.is_empty() && !look.kept {
        return Err(Refusal::rule("refused-nothing-to-check"));
    }
    let lie_here = pouches.iter().filter(waiting).count();
    // Nothing is left to be counted where another was quicker.
    if lie_here > 0 || !look.kept {
        count_back(view, draft, &look, (&run, lie_here))?;
    }
    draft.fact(looked_fact(&look));
    set_aside(draft, &pouches, &decision, look.run);
    // What lies open is for use at once, whatever else was in the chamber.
    for (pouched, use_until) in [(true, None), (false, Some(look.now + USE_NOW))] {
        let these: Vec<PouchId> = released
            .iter()
            .filter(|pouch| pouch.pouched == pouched)
            .map(|pouch| pouch.pouch)
            .collect();
        if !these.is_empty() {
            draft.fact(Body::Released { run: look.run, pouches: these, use_until });
        }
    }
    Ok(())
}

/// The pouches that were set aside after what the page showed: who tapped on it could not know.
fn set_aside_since(
    view: &View<'_>,
    pouches: &[Pouch],
    seen_to: Option<u64>,
) -> Result<Vec<PouchId>, Refusal> {
    let Some(seen_to) = seen_to else { return Ok(Vec::new()) };
    let mut since = Vec::new();
    for pouch in pouches.iter().filter(|pouch| pouch.state == SetState::SetAside) {
        if view.stop_of(pouch.pouch)?.is_some_and(|stop| stop.seq > seen_to) {
            since.push(pouch.pouch);
        }
    }
    Ok(since)
}

/// What must not be used follows also for pouches that were released or opened before: a mark that
/// did not turn reaches all of its run. What is set aside already is not said again.
fn set_aside(draft: &mut Draft, pouches: &[Pouch], decision: &Decision, run: RunId) {
    let about: Vec<PouchId> = pouches
        .iter()
        .filter(|pouch| {
            pouch.state == SetState::ToCheck
                || pouch.state == SetState::Opened
                || pouch.state.usable()
        })
        .map(|pouch| pouch.pouch)
        .collect();
    for why in Why::ALL {
        let these: Vec<_> = decision
            .set_aside
            .iter()
            .filter(|(pouch, reason)| *reason == why && about.contains(pouch))
            .map(|(pouch, _)| *pouch)
            .collect();
        if !these.is_empty() {
            let whole = these.len() == pouches.len();
            let run = whole.then_some(run);
            draft.fact(Body::SetAside { pouches: these, run, why: stop_reason(why) });
        }
    }
}

/// The run with the verdict that counts.
fn looked_at(run: &Run, verdict: &JudgedFact, pouches: &[Pouch]) -> Looked {
    Looked {
        outcome: verdict.judged.outcome,
        proven_for: verdict.judged.proven_for.clone(),
        contents: run.contents,
        pouches: pouches.iter().map(|pouch| pouch.pouch).collect(),
        needs_inner_mark: rests_on_reading(&verdict.judged),
    }
}

/// A verdict on numbers that a person read wants an inner mark in each load (the trade's rule for
/// machines without a record; common practice, no source).
pub fn rests_on_reading(judged: &Judged) -> bool {
    matches!(judged.basis, Basis::Reading { .. })
}

/// The answers that count: every failure that was ever seen in this run, and of the good answers
/// only those given now. What was good once may have been stopped, lifted and moved since.
fn answers(view: &View<'_>, look: &Look) -> Result<Answers, Refusal> {
    let mut answers = Answers::default();
    let before = view.looks_of_run(look.run)?;
    let now = looked_fact(look);
    for (fact, is_now) in before.iter().map(|fact| (fact, false)).chain([(&now, true)]) {
        let Body::Looked {
            marks_looked,
            inner_mark,
            dry_looked,
            marks_not_turned,
            wet,
            torn,
            dropped,
            ..
        } = fact
        else {
            continue;
        };
        answers.inner_mark.extend(inner_mark.filter(|good| is_now || !good));
        if !marks_not_turned.is_empty() {
            answers.marks.push(Marks::NotTurned(marks_not_turned.clone()));
        } else if *marks_looked && is_now {
            answers.marks.push(Marks::AllTurned);
        }
        let torn: Vec<_> = torn.iter().chain(dropped).copied().collect();
        let failed = !wet.is_empty() || !torn.is_empty();
        if *dry_looked && (is_now || failed) {
            answers.dry.push(DryWhole { wet: wet.clone(), torn });
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
    }
}
