//! Start: the door is shut, the machine runs.

use super::Refusal;
use crate::chance;
use crate::loading::kinds::Kinds;
use crate::loading::load::Load;
use crate::loading::propose;
use crate::loading::trays::Item;
use cycle::choose::No;
use load::{Contents, SetState};
use logbook::book::Draft;
use logbook::fact::Body;
use logbook::view::{Machine, Pouch, View};
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
    /// First moment of the salon's day, for the run's number.
    pub day_start: Instant,
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
    if start.pouches.is_empty() {
        return Err(Refusal::rule("refused-nothing-inside"));
    }
    let mut inside = Vec::new();
    for pouch in &start.pouches {
        let pouch = view.pouch(*pouch)?.ok_or_else(|| Refusal::rule("refused-no-such-pouch"))?;
        if pouch.state != SetState::Bagged {
            return Err(Refusal::rule_with("refused-not-bagged", "code", pouch.code));
        }
        inside.push(pouch);
    }
    if !start.over {
        if let Some(most) = machine.most_pouches.filter(|most| inside.len() > *most as usize) {
            return Err(Refusal::rule_with("refused-over-tested", "most", most));
        }
        fits(view, &machine, start.programme.as_deref(), &inside)?;
    }
    draft.fact(Body::RunStarted {
        run: chance::id()?,
        machine: start.machine,
        number: view.next_run_number(start.machine, start.day_start)?,
        programme: start.programme,
        contents: contents_of(&inside),
        pouches: start.pouches,
    });
    Ok(())
}

/// Is the programme one for this load? Asked before the door is shut; who has started the machine
/// already says so, and the log keeps it.
fn fits(
    view: &View<'_>,
    machine: &Machine,
    programme: Option<&str>,
    inside: &[Pouch],
) -> Result<(), Refusal> {
    let items: Vec<Item> = inside.iter().map(Item::of).collect();
    let words: Vec<load::SetKind> = items.iter().map(|item| item.kind.clone()).collect();
    let kinds = Kinds::read(view, &words)?;
    let load = Load::of(&items, inside.iter().any(|pouch| pouch.hollow), &kinds);
    let room = view.inside(machine.machine)?.value;
    let proposal = propose::propose(view, machine, &room, &load)?;
    let named = |at: &usize| {
        let known = proposal.programmes.get(*at);
        known.is_some_and(|known| Some(known.cycle.programme.word()) == programme)
    };
    let Some(refused) = proposal.choice.refused.iter().find(|refused| named(&refused.offer)) else {
        return Ok(());
    };
    let against = |no: No| refused.reasons.contains(&no);
    if against(No::NoDryingForPouches) {
        return Err(Refusal::rule("refused-no-drying"));
    }
    if against(No::GravityHollow) || against(No::NotForHollow) {
        return Err(Refusal::rule("refused-gravity-hollow"));
    }
    // What only the looks say is shown with the proposal; the maker's word is a limit.
    let maker_g = proposal.programmes.get(refused.offer).and_then(|known| known.maker_g);
    if let Some(most) = maker_g.filter(|_| against(No::TooHeavyForMaker)) {
        return Err(Refusal::rule_with("refused-too-heavy", "most", most));
    }
    Ok(())
}

/// The most demanding thing among the pouches.
pub fn contents_of(pouches: &[Pouch]) -> Contents {
    if pouches.iter().any(|pouch| pouch.hollow) {
        Contents::Hollow
    } else if pouches.iter().any(|pouch| pouch.pouched) {
        Contents::Pouched
    } else if pouches.is_empty() {
        Contents::Unknown
    } else {
        Contents::Unwrapped
    }
}
