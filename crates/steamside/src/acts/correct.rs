//! Correct: an entry that was wrong is taken back and said anew, in one act that happened when the
//! old one did. Both stay in the log. What went on since is never undone behind anybody's back:
//! then the act is refused with what to do instead.

use super::{Count, Refusal, WeighTray, count, wash, weigh_tray};
use crate::loading::kinds::Kinds;
use crate::loading::load::Load;
use crate::loading::trays::Item;
use load::{Contents, SetKind, SetState};
use logbook::book::Draft;
use logbook::fact::{Body, Counter, Fact, Loading};
use logbook::view::{Pouch, Run, View};
use measure::{ActId, PouchId, RunId, VisitId};
use release::verdict::Outcome;

/// An entry that can be corrected, as it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Correctable {
    /// How many sets of each kind were washed.
    Washed(Vec<(SetKind, u32)>),
    /// Sets of a kind that were counted: owned; in the bin and washed.
    Counted(Count),
    /// At which chair a pouch was opened, for which visit.
    Opened(PouchId, VisitId, Option<u32>),
    /// What was in a run.
    Started(RunId),
    /// A tray on the scale.
    Weighed(WeighTray),
}

/// What was so in truth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum InTruth {
    /// So many sets of each kind were washed.
    Washed(Vec<(SetKind, u32)>),
    /// So many were counted.
    Counted(Count),
    /// It was opened at this chair.
    Chair(Option<u32>),
    /// These were not in the run, and these were in it too.
    Inside(Vec<PouchId>, Vec<PouchId>),
    /// The tray weighed so much.
    Weighed(WeighTray),
}

/// What these facts of one act say, where it can be corrected. A correction can be corrected too.
pub fn correctable(facts: &[Fact]) -> Option<Correctable> {
    let said: Vec<&Body> = facts
        .iter()
        .map(|fact| &fact.body)
        .filter(|body| !matches!(body, Body::Undone { .. }))
        .collect();
    match said.as_slice() {
        [Body::Opened { pouch, visit, chair }] => Some(Correctable::Opened(*pouch, *visit, *chair)),
        [Body::RunStarted { run, .. }] => Some(Correctable::Started(*run)),
        [Body::Loading(said)] => match &**said {
            Loading::TrayWeighed { grams, empty_g: Some(empty_g), sets, pouched } => {
                let (empty_g, sets) = (*empty_g, sets.clone());
                let (grams, pouched) = (*grams, *pouched);
                Some(Correctable::Weighed(WeighTray { grams, empty_g, sets, pouched }))
            }
            _ => None,
        },
        [Body::Washed { .. }, ..] => {
            let washed = said.iter().map(|body| match body {
                Body::Washed { kind, count } => Some((kind.clone(), *count)),
                _ => None,
            });
            washed.collect::<Option<Vec<_>>>().map(Correctable::Washed)
        }
        said => counted(said).map(Correctable::Counted),
    }
}

fn counted(said: &[&Body]) -> Option<Count> {
    let mut counted: Option<Count> = None;
    for body in said {
        let (kind, owned, loose) = match body {
            Body::SetsOwned { kind, count } => (kind, Some(*count), None),
            Body::Counted { kind, used, washed } => (kind, None, Some((*used, *washed))),
            _ => return None,
        };
        let so_far =
            counted.get_or_insert_with(|| Count { kind: kind.clone(), owned: None, loose: None });
        if so_far.kind != *kind {
            return None;
        }
        so_far.owned = so_far.owned.or(owned);
        so_far.loose = so_far.loose.or(loose);
    }
    counted
}

/// Writes the correction, or says why it no longer can be made and what to do instead.
pub fn correct(
    view: &View<'_>,
    draft: &mut Draft,
    old: ActId,
    truth: InTruth,
) -> Result<(), Refusal> {
    if view.act_undone(old)?.is_some() {
        return Err(Refusal::rule("refused-undone-already"));
    }
    let facts = view.facts_of_act(old)?;
    let was = correctable(&facts).ok_or_else(|| Refusal::rule("refused-not-correctable"))?;
    if let (Correctable::Started(run), InTruth::Inside(out, put)) = (&was, &truth) {
        return inside(view, draft, *run, (out, put));
    }
    for fact in &facts {
        still_so(view, fact)?;
    }
    draft.fact(Body::Undone { act: old });
    match (was, truth) {
        (Correctable::Washed(before), InTruth::Washed(now)) => {
            changed(
                before
                    .iter()
                    .filter(|(_, count)| *count > 0)
                    .ne(now.iter().filter(|(_, count)| *count > 0)),
            )?;
            // None after all: then it is only taken back.
            if now.iter().all(|(_, count)| *count == 0) { Ok(()) } else { wash(view, draft, now) }
        }
        (Correctable::Counted(before), InTruth::Counted(now)) => {
            changed(before != now)?;
            if before.kind != now.kind {
                return Err(Refusal::rule("refused-not-correctable"));
            }
            count(view, draft, now)
        }
        (Correctable::Opened(pouch, visit, before), InTruth::Chair(chair)) => {
            changed(before != chair)?;
            draft.fact(Body::Opened { pouch, visit, chair });
            Ok(())
        }
        (Correctable::Weighed(before), InTruth::Weighed(now)) => {
            changed(before != now)?;
            weigh_tray(view, draft, now)
        }
        _ => Err(Refusal::rule("refused-not-correctable")),
    }
}

fn changed(changed: bool) -> Result<(), Refusal> {
    if changed { Ok(()) } else { Err(Refusal::rule("refused-nothing-corrected")) }
}

/// Can the fact still be taken back without taking anything else back?
fn still_so(view: &View<'_>, fact: &Fact) -> Result<(), Refusal> {
    let fits = match &fact.body {
        Body::Washed { .. } | Body::Counted { .. } => view.counts_untouched(fact.seq)?,
        Body::SetsOwned { .. } => view.still_owned(fact.seq)?,
        Body::Opened { pouch, .. } => {
            if !view.opening_untouched(fact.seq, *pouch)? {
                return Err(Refusal::rule("refused-correct-opened"));
            }
            true
        }
        _ => true,
    };
    if fits { Ok(()) } else { Err(Refusal::rule("refused-correct-counts")) }
}

/// What was in a run, said anew. It never brings a pouch nearer to a client: what is taken out goes
/// back to the pouches that wait for a run, what is put in waits for the looks.
fn inside(
    view: &View<'_>,
    draft: &mut Draft,
    run: RunId,
    (out, put): (&[PouchId], &[PouchId]),
) -> Result<(), Refusal> {
    let row = view.run(run)?.filter(|row| !row.undone);
    let row = row.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
    changed(!out.is_empty() || !put.is_empty())?;
    let in_it = view.pouches_of_run(run)?;
    if in_it.len() + put.len() <= out.len() {
        return Err(Refusal::rule("refused-nothing-inside"));
    }
    for pouch in out {
        let held = in_it.iter().find(|held| held.pouch == *pouch);
        may_leave(&row, held.ok_or_else(|| Refusal::rule("refused-not-in-this-run"))?)?;
    }
    let mut more = Vec::new();
    for pouch in put {
        let held = view.pouch(*pouch)?.ok_or_else(|| Refusal::rule("refused-no-such-pouch"))?;
        if held.state != SetState::Bagged {
            return Err(Refusal::rule_with("refused-not-bagged", "code", held.code));
        }
        if held.packed > row.started.0 {
            return Err(Refusal::rule_with("refused-packed-later", "code", held.code));
        }
        more.push(held);
    }
    carried(view, &row, &more)?;
    let said = Counter::RunCorrected { run, out: out.to_vec(), put: put.to_vec() };
    draft.fact(Body::Counter(Box::new(said)));
    Ok(())
}

/// A pouch that was released or opened stays reachable by a recall of its run; one whose run missed
/// its numbers is not talked out of it.
fn may_leave(run: &Run, pouch: &Pouch) -> Result<(), Refusal> {
    let in_hand = matches!(pouch.state, SetState::InMachine | SetState::ToCheck);
    if !in_hand || pouch.released.is_some() {
        return Err(Refusal::rule_with("refused-correct-gone", "code", pouch.code));
    }
    // Whatever was seen or read of it was seen of all that was in it.
    let told = run.looked.is_some() || run.stopped.is_some();
    if told || run.outcome.is_some_and(|outcome| outcome != Outcome::Lethal) {
        return Err(Refusal::rule_with("refused-correct-failed", "code", pouch.code));
    }
    Ok(())
}

/// The verdict was made for what was said to be inside; nothing harder is put in afterwards.
fn carried(view: &View<'_>, run: &Run, more: &[Pouch]) -> Result<(), Refusal> {
    const fn hard(contents: Contents) -> u8 {
        match contents {
            Contents::Unwrapped => 0,
            Contents::Pouched => 1,
            Contents::Hollow => 2,
            Contents::Unknown => 3,
        }
    }
    let items: Vec<Item> = more.iter().map(Item::of).collect();
    if items.is_empty() {
        return Ok(());
    }
    let words: Vec<SetKind> = items.iter().map(|item| item.kind.clone()).collect();
    let kinds = Kinds::read(view, &words)?;
    let load = Load::of(&items, more.iter().any(|pouch| pouch.hollow), &kinds);
    if hard(load.contents) > hard(run.contents) {
        return Err(Refusal::rule("refused-correct-harder"));
    }
    Ok(())
}
