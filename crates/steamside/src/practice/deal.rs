//! Dealing a card, ending it, and everything that a sheet says of it.

use super::cards::Card;
use super::checks::{self, Step, Table};
use super::stage::{self, Stage};
use crate::acts::{self, Refusal};
use crate::app::{App, Who};
use load::ShelfCode;
use logbook::book::BookError;
use logbook::fact::Fact;
use logbook::view::{Card as Dealt, View};
use measure::{ActId, PersonId, PouchId};

/// A card that was dealt, with what was done and what of it was right.
#[derive(Debug, Clone)]
pub struct Played {
    /// The card; `None`: one of a newer program.
    pub card: Option<Card>,
    /// What the book says of it.
    pub dealt: Dealt,
    /// The learner's own acts since, in order.
    pub facts: Vec<Fact>,
    /// The pouches that it speaks of.
    pub odd: Vec<(PouchId, ShelfCode)>,
    /// Number of the machine that it speaks of.
    pub machine: Option<u32>,
    /// The steps.
    pub steps: Vec<Step>,
}

/// Deals a card: puts up what it needs and notes it. Sent twice it is dealt once.
pub fn deal(app: &App, who: Who, card: Card, learner: Option<PersonId>) -> Result<(), Refusal> {
    if !app.practice {
        return Err(Refusal::rule("refused-not-practice"));
    }
    if !app.read(|view| view.facts_of_act(who.act))?.is_empty() {
        return Ok(());
    }
    let people = app.read(|view| view.people())?;
    if learner.is_some_and(|learner| people.iter().all(|person| person.person != learner)) {
        return Err(Refusal::rule("refused-no-such-person"));
    }
    let other = people.iter().map(|person| person.person).find(|person| Some(*person) != learner);
    Stage::new(app, who.act, who.station, other).put_up(card)?;
    app.act(who, |view, draft| acts::deal_card(view, draft, card.word(), learner)).map(drop)
}

/// Everything about one dealt card.
pub fn played(view: &View<'_>, dealt: Dealt) -> Result<Played, BookError> {
    let card: Option<Card> = dealt.card.parse().ok();
    let staged = stage::facts(view, dealt.dealt)?;
    let machines = view.machines()?;
    let most = machines.iter().filter_map(|row| Some((row.machine, row.most_pouches?))).collect();
    let basin = view.first_basin()?.and_then(|(thing, minutes)| Some((thing, minutes?)));
    let table = Table::of(&staged, most, basin);
    // What a sign stands under is the learner's; the safer side is open to everyone, without one.
    let by_learner = |fact: &Fact| {
        dealt.learner.is_none() || fact.stamp.sign.is_none() || fact.stamp.sign == dealt.learner
    };
    let mut facts = view.facts_of_card(&dealt)?;
    facts.retain(|fact| by_learner(fact) && is_done(fact));
    let machine = machines.iter().find(|row| Some(row.machine) == table.machine);
    Ok(Played {
        steps: card.map(|card| checks::check(card, &table, &facts)).unwrap_or_default(),
        odd: card.map(|card| table.odd(card)).unwrap_or_default(),
        machine: machine.map(|row| row.number),
        card,
        dealt,
        facts,
    })
}

/// The card that an act dealt.
pub fn find(view: &View<'_>, dealt: ActId) -> Result<Option<Played>, BookError> {
    let card = view.cards()?.into_iter().find(|card| card.dealt == dealt);
    card.map(|card| played(view, card)).transpose()
}

/// Something that was done with hands, not the clock, a card or the machine's own record.
fn is_done(fact: &Fact) -> bool {
    use logbook::fact::{Body, Counter, Known};
    let about_cards = matches!(&fact.body, Body::Counter(said) if matches!(
        **said,
        Counter::PracticeClock { .. } | Counter::CardDealt { .. } | Counter::CardEnded { .. }
    ));
    !about_cards && !matches!(fact.stamp.known, Known::Measured | Known::ByClock | Known::WorkedOut)
}
