//! What every fact of the day keeps to.

use super::{MOMENTS, items};
use crate::fact::{Day, DayCycle, KindFigures};
use load::SetKind;
use measure::{Instant, Span};
use std::collections::BTreeSet;

/// Longest visit, shift or time of being closed; a year.
const LONGEST: Span = Span::from_minutes(366 * 24 * 60);
/// Longest length of time in minutes: a day.
const MOST_MIN: u32 = 24 * 60;
/// More of anything than a salon has: sets, grams, cm², cents.
const MOST: u32 = 100_000;
/// Does it keep to the limits? An error is a sentence.
pub(super) fn day(day: &Day) -> Result<(), String> {
    match day {
        Day::ServiceSet(service) => {
            minutes(&[service.minutes, service.basin_min])?;
            amounts(&[service.weight])?;
            if service.minutes == 0 || service.weight == 0 {
                return Err("a service that takes no time or counts nothing".to_owned());
            }
            sets(&service.needs)
        }
        Day::VisitBooked { start, end, .. }
        | Day::VisitMoved { start, end, .. }
        | Day::ClosedSet { from: start, to: end, .. } => span(*start, *end),
        Day::VisitLate { minutes: late, .. } => minutes(&[*late]),
        Day::ShiftSet { from, to, lunch, .. } => {
            span(*from, *to)?;
            match lunch {
                Some((begin, end)) if begin < from || end > to || end < begin => {
                    Err("a lunch that lies outside its shift".to_owned())
                }
                _ => Ok(()),
            }
        }
        Day::KindFigures(figures) => kind(figures),
        Day::MachineFigures(figures) => {
            minutes(&[figures.warm_window_min])?;
            items("programmes", figures.cycles.len())?;
            let words: BTreeSet<_> = figures.cycles.iter().map(|cycle| &cycle.programme).collect();
            if words.len() < figures.cycles.len() {
                return Err("a programme that is named twice".to_owned());
            }
            figures.cycles.iter().try_for_each(cycle)
        }
        Day::Rules(rules) => minutes(&[rules.passive_min, rules.immediate_min]),
        Day::PlanAccepted { from, to, runs } => {
            span(*from, *to)?;
            items("runs", runs.len())?;
            runs.iter().try_for_each(|run| {
                span(run.start, run.start)?;
                sets(&run.load)
            })
        }
        Day::KeyMade { .. }
        | Day::ServiceEnded { .. }
        | Day::PhraseLearnt { .. }
        | Day::VisitIs { .. }
        | Day::VisitCancelled { .. }
        | Day::VisitMissed { .. }
        | Day::ShiftEnded { .. } => Ok(()),
    }
}

fn kind(figures: &KindFigures) -> Result<(), String> {
    minutes(&[figures.hand_min])?;
    amounts(&[
        figures.mass_g,
        figures.area_cm2,
        figures.pouch_cents,
        figures.target_ready,
        figures.spares,
    ])
}

fn cycle(cycle: &DayCycle) -> Result<(), String> {
    let lengths =
        [cycle.cold_min, cycle.warm_min, cycle.load_min, cycle.unload_min, cycle.cool_min];
    minutes(&lengths)?;
    amounts(&[cycle.max_mass_g, cycle.max_area_cm2, cycle.cold_cents, cycle.warm_cents])?;
    if cycle.cold_min == 0 || cycle.warm_min == 0 {
        return Err(format!("a programme {} that takes no time", cycle.programme));
    }
    Ok(())
}

fn sets(list: &[(SetKind, u32)]) -> Result<(), String> {
    items("kinds of sets", list.len())?;
    let kinds: BTreeSet<_> = list.iter().map(|(kind, _)| kind).collect();
    if kinds.len() < list.len() {
        return Err("a kind of set that is named twice".to_owned());
    }
    list.iter().try_for_each(|(_, count)| amounts(&[*count]))
}

fn span(from: Instant, to: Instant) -> Result<(), String> {
    if !MOMENTS.contains(&from.millis()) || !MOMENTS.contains(&to.millis()) {
        return Err("a moment before 1900 or after 2200".to_owned());
    }
    if to < from || to - from > LONGEST {
        return Err("a time that ends before it begins, or lasts over a year".to_owned());
    }
    Ok(())
}

fn minutes(all: &[u32]) -> Result<(), String> {
    match all.iter().find(|value| **value > MOST_MIN) {
        Some(value) => Err(format!("{value} minutes; at most {MOST_MIN} are taken")),
        None => Ok(()),
    }
}

fn amounts(all: &[u32]) -> Result<(), String> {
    match all.iter().find(|value| **value > MOST) {
        Some(value) => Err(format!("an amount of {value}; at most {MOST} is taken")),
        None => Ok(()),
    }
}
