//! Start: the door is shut, the machine runs.

use super::Refusal;
use crate::chance;
use crate::intake::take::salon_zone;
use crate::loading::kinds::Kinds;
use crate::loading::load::Load;
use crate::loading::propose::{self, Proposal};
use crate::loading::trays::{Item, lay};
use crate::upkeep::{Days, stops_of};
use cycle::choose::{No, Refused};
use load::SetState;
use logbook::book::Draft;
use logbook::fact::Body;
use logbook::view::View;
use measure::{Instant, MachineId, PouchId};

/// What was started.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Start {
    /// Where.
    pub machine: MachineId,
    /// The machine's programme, as the salon calls it.
    pub programme: Option<String>,
    /// What is inside.
    pub pouches: Vec<PouchId>,
    /// More than the tested most was seen and said yes to.
    pub over: bool,
    /// First moment of the salon's day and of the next one, for the run's number.
    pub day: (Instant, Instant),
    /// When it begins.
    pub at: Instant,
    /// It has run already and is copied from paper: nothing stops it any more.
    pub copied: bool,
}

/// Starts a run with bagged pouches in a machine that is in use and empty.
pub fn start(view: &View<'_>, draft: &mut Draft, mut start: Start) -> Result<(), Refusal> {
    start.pouches.sort();
    start.pouches.dedup();
    let machine =
        view.machine(start.machine)?.ok_or_else(|| Refusal::rule("refused-no-such-machine"))?;
    if machine.out_since.is_some() {
        return Err(Refusal::rule_with("refused-machine-out", "machine", machine.number));
    }
    if machine.running.is_some() {
        return Err(Refusal::rule_with("refused-machine-full", "machine", machine.number));
    }
    if !start.copied {
        // No tick goes past this: work waits until it is done.
        let days = Days::read(view, start.at, &salon_zone(view)?)?;
        if let Some(stop) = stops_of(view, machine.machine, &days)?.into_iter().next() {
            return Err(Refusal::rule_with("refused-chore-due", "chore", stop.chore.rule.chore));
        }
    }
    if start.pouches.is_empty() {
        return Err(Refusal::rule("refused-nothing-inside"));
    }
    let mut inside = Vec::new();
    for pouch in &start.pouches {
        let pouch = view.pouch(*pouch)?.ok_or_else(|| Refusal::rule("refused-no-such-pouch"))?;
        if pouch.state != SetState::Bagged {
            return Err(Refusal::rule_with("refused-not-bagged", "code", pouch.code));
        }
        // It was not there yet: no steam of that run has reached it.
        if pouch.packed > start.at {
            return Err(Refusal::rule_with("refused-packed-later", "code", pouch.code));
        }
        inside.push(pouch);
    }
    let items: Vec<Item> = inside.iter().map(Item::of).collect();
    let words: Vec<load::SetKind> = items.iter().map(|item| item.kind.clone()).collect();
    let kinds = Kinds::read(view, &words)?;
    let load = Load::of(&items, inside.iter().any(|pouch| pouch.hollow), &kinds);
    if !start.over {
        if let Some(most) = machine.most_pouches.filter(|most| inside.len() > *most as usize) {
            return Err(Refusal::rule_with("refused-over-tested", "most", most));
        }
        let room = view.inside(machine.machine)?;
        // A typical room is nobody's: only one that was measured refuses.
        if room.said.is_some() && !lay(&items, &kinds, &room.value, None).packing.left.is_empty() {
            return Err(Refusal::rule("refused-no-room"));
        }
        let proposal = propose::propose(view, &machine, &room.value, &load)?;
        fits(&proposal, start.programme.as_deref())?;
    }
    draft.fact(Body::RunStarted {
        run: chance::id()?,
        machine: start.machine,
        number: view.next_run_number(start.machine, start.day)?,
        programme: start.programme,
        contents: load.contents,
        pouches: start.pouches,
    });
    Ok(())
}

/// Is the programme one for this load? Asked before the door is shut; who has started the machine
/// already says so, and the log keeps it. A programme that nobody named, or nobody knows, is taken
/// where some programme of the machine would do.
fn fits(proposal: &Proposal, programme: Option<&str>) -> Result<(), Refusal> {
    if let Some((word, _)) = proposal.load.refused.first() {
        return Err(Refusal::rule_with("refused-piece-inside", "word", word));
    }
    let choice = &proposal.choice;
    let named = |at: usize| {
        let known = proposal.programmes.get(at);
        known.is_some_and(|known| Some(known.cycle.programme.word()) == programme)
    };
    if choice.ranked.iter().any(|proposed| named(proposed.offer)) {
        return Ok(());
    }
    // What nobody looked up is typical, and a typical figure alone refuses nothing; that the
    // programme does not dry, nobody has to look up.
    let certain = |refused: &Refused| -> Option<(No, usize)> {
        let said = proposal.programmes.get(refused.offer)?.figures.said.is_some();
        let dry = |no: &No| matches!(no, No::NoDryingForPouches | No::NoDryingForShelf);
        let no = refused.reasons.iter().find(|no| said || dry(no))?;
        Some((*no, refused.offer))
    };
    let refused = match choice.refused.iter().find(|refused| named(refused.offer)) {
        Some(refused) => certain(refused),
        // Some programme of the machine would do, or nobody knows that it would not.
        None if !choice.ranked.is_empty() => None,
        None if choice.refused.iter().any(|refused| certain(refused).is_none()) => None,
        None => choice.refused.first().and_then(certain),
    };
    let Some((no, offer)) = refused else { return Ok(()) };
    let Some(known) = proposal.programmes.get(offer) else { return Ok(()) };
    let maker_g = known.maker_g(proposal.load.contents).unwrap_or(0);
    Err(match no {
        No::NoDryingForPouches | No::NoDryingForShelf => Refusal::rule("refused-no-drying"),
        No::GravityHollow | No::NotForHollow => Refusal::rule("refused-gravity-hollow"),
        No::TooHeavyForMaker => Refusal::rule_with("refused-too-heavy", "most", maker_g),
        // What only the looks say is told with the proposal; the first dry look may be wrong.
        No::TooHeavyToDry | No::NotReadyInTime => return Ok(()),
        No::TooHot => Refusal::rule("refused-too-hot"),
        No::BelowPublishedTimes => Refusal::rule("refused-below-times"),
        No::NotForPouches | No::GravityPouchTimesNotMet => Refusal::rule("refused-not-for-pouches"),
    })
}
