//! What every fact about upkeep and about the counter keeps to.

use super::{MOMENTS, items, page, text, within, within_if};
use crate::fact::{ChoreRule, Counter, Upkeep};
use measure::Instant;

/// Longest time between two of a chore: ten years, days.
const MOST_DAYS: u32 = 3_660;
/// Most runs between two of a chore.
const MOST_RUNS: u32 = 100_000;
/// Longest length of time in minutes: a day.
const MOST_MIN: u32 = 24 * 60;
/// Longest that a mix lasts, hours: two months.
const MOST_H: u32 = 24 * 62;
/// More of anything than a salon keeps.
const MOST: u32 = 1_000_000;
/// The practice clock runs at most so many times as fast.
const MOST_TIMES: u32 = 30;
/// Does it keep to the limits? An error is a sentence.
pub(super) fn upkeep(upkeep: &Upkeep) -> Result<(), String> {
    match upkeep {
        Upkeep::ThingAdded { number, .. } => within("as the number of a thing", *number, 1..=999),
        Upkeep::JarSet { contact_min, lasts_h, .. } => {
            within("minutes of contact", *contact_min, 1..=MOST_MIN)?;
            within_if("hours that a mix lasts", *lasts_h, 1..=MOST_H)
        }
        Upkeep::BasinSet { wet_min, .. } => {
            within("minutes of staying wet", *wet_min, 1..=MOST_MIN)
        }
        Upkeep::ChoreSet(rule) => chore(rule),
        Upkeep::SporePosted { answer_by, .. } => moment(*answer_by),
        Upkeep::Unfrozen { pouches, .. } => items("pouches", pouches.len()),
        Upkeep::StockSet { least, .. } => within("as the least of a stock", *least, 0..=MOST),
        Upkeep::StockCounted { count, .. } | Upkeep::StockBought { count, .. } => {
            within("of one stock", *count, 0..=MOST)
        }
        _ => Ok(()),
    }
}

fn chore(rule: &ChoreRule) -> Result<(), String> {
    within_if("days between two of a chore", rule.days, 1..=MOST_DAYS)?;
    within_if("runs between two of a chore", rule.runs, 1..=MOST_RUNS)?;
    within("minutes of a chore", rule.minutes, 0..=MOST_MIN)?;
    page(rule.manual_page)
}

/// Does it keep to the limits? An error is a sentence.
pub(super) fn counter(counter: &Counter) -> Result<(), String> {
    match counter {
        Counter::HandedOver { drying, .. } => within("sets that dry", *drying, 0..=MOST),
        Counter::RunCorrected { out, put, .. } => {
            items("pouches", out.len() + put.len())?;
            if out.iter().any(|pouch| put.contains(pouch)) {
                return Err("a pouch that was in a run and was not".to_owned());
            }
            Ok(())
        }
        Counter::CountedBack { count, .. } => within("pouches counted", *count, 0..=MOST),
        Counter::GapExplained { from, to, .. } | Counter::BoxWasOff { from, to } => {
            moment(*from)?;
            moment(*to)?;
            if to < from {
                return Err("a time that ends before it begins".to_owned());
            }
            Ok(())
        }
        Counter::PersonSpeaks { language, .. } | Counter::RecordShows { language, .. } => {
            text("language", language)
        }
        Counter::PracticeClock { real, shown, times } => {
            moment(*real)?;
            moment(*shown)?;
            within("times as fast", *times, 1..=MOST_TIMES)
        }
        Counter::CardDealt { card, .. } => text("card", card),
        Counter::CardEnded { right, asked, .. } if right > asked => {
            Err("more steps right than were asked".to_owned())
        }
        Counter::CardEnded { asked, .. } => within("steps of a card", *asked, 0..=MOST),
        _ => Ok(()),
    }
}

fn moment(at: Instant) -> Result<(), String> {
    if MOMENTS.contains(&at.millis()) {
        Ok(())
    } else {
        Err("a moment before 1900 or after 2200".to_owned())
    }
}
