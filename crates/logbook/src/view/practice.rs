//! The practice book: how its clock runs, which cards were dealt, and what was done since.

use super::View;
use super::events::{counter, upkeep};
use crate::error::BookError;
use crate::fact::{Counter, Fact, Stamp, ThingKind, Upkeep};
use crate::facts;
use crate::fold::events::topic;
use measure::{ActId, Instant, PersonId, ThingId};

/// Most facts that are read of one card: a lesson is shorter.
const MOST: u32 = 5_000;

/// A scenario card that was dealt.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Card {
    /// The act that dealt it.
    pub dealt: ActId,
    /// Its word.
    pub card: String,
    /// Who learns by it.
    pub learner: Option<PersonId>,
    /// The place of its fact.
    pub seq: u64,
    /// Who dealt it, when.
    pub stamp: Stamp,
    /// How it ended.
    pub ended: Option<CardEnd>,
}

/// How a card ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CardEnd {
    /// The place of its fact.
    pub seq: u64,
    /// Who ended it, when.
    pub stamp: Stamp,
    /// Steps that were right.
    pub right: u32,
    /// Steps that were asked.
    pub asked: u32,
}

impl View<'_> {
    /// How the practice clock was set last: the true moment, what the clock showed then, and how
    /// many times as fast it runs since. `None`: nobody has set it.
    pub fn practice_clock(&self) -> Result<Option<(Instant, Instant, u32)>, BookError> {
        let said = self.newest(topic::PRACTICE_CLOCK, "")?;
        Ok(said.and_then(|fact| match counter(&fact) {
            Some(Counter::PracticeClock { real, shown, times }) => Some((*real, *shown, *times)),
            _ => None,
        }))
    }

    /// The foot basin that was added first, and for how many minutes it stays wet, where that was
    /// said.
    pub fn first_basin(&self) -> Result<Option<(ThingId, Option<u32>)>, BookError> {
        for fact in self.newest_of_each(topic::THING)? {
            let Some(Upkeep::ThingAdded { thing, what: ThingKind::FootBasin, .. }) = upkeep(&fact)
            else {
                continue;
            };
            let set = self.newest(topic::BASIN, &thing.to_string())?;
            let minutes = set.and_then(|fact| match upkeep(&fact) {
                Some(Upkeep::BasinSet { wet_min, .. }) => Some(*wet_min),
                _ => None,
            });
            return Ok(Some((*thing, minutes)));
        }
        Ok(None)
    }

    /// The cards that were dealt, in order.
    pub fn cards(&self) -> Result<Vec<Card>, BookError> {
        let mut cards: Vec<Card> = Vec::new();
        for fact in self.events(topic::CARD, "")? {
            match counter(&fact) {
                Some(Counter::CardDealt { card, learner }) => cards.push(Card {
                    dealt: fact.stamp.act,
                    card: card.clone(),
                    learner: *learner,
                    seq: fact.seq,
                    stamp: fact.stamp,
                    ended: None,
                }),
                Some(Counter::CardEnded { dealt, right, asked }) => {
                    let open = cards.iter_mut().find(|card| card.dealt == *dealt);
                    if let Some(card) = open.filter(|card| card.ended.is_none()) {
                        card.ended = Some(CardEnd {
                            seq: fact.seq,
                            stamp: fact.stamp,
                            right: *right,
                            asked: *asked,
                        });
                    }
                }
                _ => {}
            }
        }
        Ok(cards)
    }

    /// The facts since a card was dealt and until it ended, without what was taken back; at most
    /// the first 5 000.
    pub fn facts_of_card(&self, card: &Card) -> Result<Vec<Fact>, BookError> {
        let end = card.ended.map_or(u64::MAX, |end| end.seq);
        let mut kept = Vec::new();
        for fact in facts::after(self.sql, card.seq, MOST)? {
            if fact.seq >= end {
                break;
            }
            if self.act_undone(fact.stamp.act)?.is_none() {
                kept.push(fact);
            }
        }
        Ok(kept)
    }
}
