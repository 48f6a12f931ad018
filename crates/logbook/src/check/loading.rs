//! What every fact about what goes in keeps to.

use super::{page, within, within_if};
use crate::fact::{Loading, ProgrammeFigures};
use load::chamber::Inside;
use std::collections::BTreeSet;

/// Most different implements in a set, or kinds of sets on a tray.
const MOST_KINDS: usize = 60;
/// Most of one implement in a set, or sets of one kind on a tray.
const MOST_OF_ONE: u32 = 1_000;
/// Heaviest of anything, grams: far above what a small machine takes.
const MOST_G: u32 = 100_000;
/// Set temperatures of steam with room to spare, °C (common practice, no source).
const SET_C: std::ops::RangeInclusive<u32> = 100..=150;
/// Longest time at temperature, seconds.
const MOST_HOLD_S: u32 = 4 * 60 * 60;
/// Most pulses of vacuum.
const MOST_PULSES: u32 = 20;
/// Longest drying, minutes: a day.
const MOST_DRYING_MIN: u32 = 24 * 60;
/// Highest pressure to dry at, Pa absolute: the air outside.
const MOST_DRYING_PA: u32 = 110_000;

/// Does it keep to the limits? An error is a sentence.
pub(super) fn loading(loading: &Loading) -> Result<(), String> {
    match loading {
        Loading::ImplementSet(implement) => implement.check().map_err(|error| error.to_string()),
        Loading::SetOf { pieces, .. } => counts("implements", pieces),
        Loading::PouchSet(size) => size.check().map_err(|error| error.to_string()),
        Loading::InsideSet { inside, .. } => room(inside),
        Loading::TrayWeighed { grams, empty_g, sets, .. } => {
            within("grams on the scale", *grams, 1..=MOST_G)?;
            if empty_g.is_some_and(|empty| empty >= *grams) {
                return Err("an empty tray that weighs as much as the full one".to_owned());
            }
            counts("kinds of sets", sets)
        }
        Loading::ProgrammeSet(figures) => programme(figures),
        Loading::ImplementEnded { .. } | Loading::PouchEnded { .. } => Ok(()),
    }
}

fn room(inside: &Inside) -> Result<(), String> {
    inside.check().map_err(|error| error.to_string())?;
    page(inside.manual_page)?;
    let trays = inside.trays.iter().map(|tray| tray.mass_g);
    let rack = inside.rack.iter().map(|rack| rack.mass_g);
    trays.chain(rack).try_for_each(|grams| within("grams of an empty tray", grams, 0..=MOST_G))
}

fn programme(figures: &ProgrammeFigures) -> Result<(), String> {
    within("°C set", figures.set_c, SET_C)?;
    within("seconds at temperature", figures.hold_s, 1..=MOST_HOLD_S)?;
    within("pulses", figures.pulses, 0..=MOST_PULSES)?;
    within("minutes of drying", figures.drying_min, 0..=MOST_DRYING_MIN)?;
    within_if("pascal of drying", figures.drying_pa, 0..=MOST_DRYING_PA)?;
    within_if("grams in pouches", figures.most_pouched_g, 1..=MOST_G)?;
    within_if("grams without pouches", figures.most_unwrapped_g, 1..=MOST_G)?;
    page(figures.manual_page)
}

fn counts<W: Ord>(what: &str, list: &[(W, u32)]) -> Result<(), String> {
    if list.is_empty() || list.len() > MOST_KINDS {
        return Err(format!("{} {what}; 1 to {MOST_KINDS} are taken", list.len()));
    }
    let words: BTreeSet<_> = list.iter().map(|(word, _)| word).collect();
    if words.len() < list.len() {
        return Err(format!("{what} of which one is named twice"));
    }
    list.iter().try_for_each(|(_, count)| within("of one", *count, 1..=MOST_OF_ONE))
}
