//! What every fact keeps to, checked before it is written and again after it was read.

mod counter;
mod day;
mod loading;

use crate::fact::{Body, Judged};
use measure::bounds::ALTITUDE;
use std::ops::RangeInclusive;

/// Most pouches, reasons or limits in one fact. A tray holds a dozen pouches; a recall of a year
/// that sets everything aside in one act stays below this.
const MOST_ITEMS: usize = 20_000;
/// Most cycles in one record: a file of many years.
const MOST_CYCLES: u32 = 10_000;
/// Longest text in a fact, in characters: zone names, programmes and clock texts are far shorter,
/// and a free text belongs in the drawer.
const LONGEST_TEXT: usize = 80;
/// Thickest manual, pages.
const MOST_PAGES: u32 = 10_000;
/// The moments that a fact may name: from 1900 to 2200.
const MOMENTS: RangeInclusive<i64> = -2_208_988_800_000..=7_258_118_400_000;

/// Does the body keep to the limits? An error is a sentence.
pub(crate) fn body(body: &Body) -> Result<(), String> {
    match body {
        Body::SalonOpened { zone, .. } | Body::ZoneSet { zone } => text("time zone", zone),
        Body::RunStarted { programme, pouches, .. } => {
            text_if("programme", programme.as_deref())?;
            items("pouches", pouches.len())
        }
        Body::Packed { pouches } => items("pouches", pouches.len()),
        Body::RecordTaken { cycles, .. } if *cycles > MOST_CYCLES => {
            Err(format!("a record with {cycles} cycles; at most {MOST_CYCLES} are taken"))
        }
        Body::MachineReads { altitude_m: Some(metres), .. } => {
            ALTITUDE.check(*metres as f64).map(drop).map_err(|error| error.to_string())
        }
        Body::Judged(verdict) => judged(verdict),
        Body::Day(day) => day::day(day),
        Body::Loading(loading) => loading::loading(loading),
        Body::Upkeep(upkeep) => counter::upkeep(upkeep),
        Body::Counter(counter) => counter::counter(counter),
        Body::Looked { marks_not_turned, wet, torn, dropped, .. } => {
            [marks_not_turned, wet, torn, dropped]
                .into_iter()
                .try_for_each(|list| items("pouches", list.len()))
        }
        Body::Released { pouches, .. }
        | Body::SetAside { pouches, .. }
        | Body::StopLifted { pouches, .. }
        | Body::TakenApart { pouches } => items("pouches", pouches.len()),
        _ => Ok(()),
    }
}

fn judged(verdict: &Judged) -> Result<(), String> {
    text("judge", &verdict.judge)?;
    text_if("clock text", verdict.start_clock.as_deref())?;
    verdict.limits.iter().try_for_each(|(name, _)| text("limit", name))?;
    items("limits", verdict.limits.len())?;
    items("reasons", verdict.reasons.len())
}

fn items(what: &str, count: usize) -> Result<(), String> {
    if count <= MOST_ITEMS {
        Ok(())
    } else {
        Err(format!("{count} {what}; at most {MOST_ITEMS} fit in one fact"))
    }
}

fn text_if(what: &str, words: Option<&str>) -> Result<(), String> {
    words.map_or(Ok(()), |words| text(what, words))
}

fn text(what: &str, words: &str) -> Result<(), String> {
    let length = words.chars().count();
    if length == 0 || length > LONGEST_TEXT {
        return Err(format!("a {what} of {length} characters; it takes 1 to {LONGEST_TEXT}"));
    }
    if words.chars().any(char::is_control) {
        return Err(format!("a {what} with a control character"));
    }
    Ok(())
}

fn page(page: Option<u32>) -> Result<(), String> {
    within_if("as a page of a manual", page, 1..=MOST_PAGES)
}

fn within(what: &str, value: u32, range: RangeInclusive<u32>) -> Result<(), String> {
    if range.contains(&value) {
        Ok(())
    } else {
        Err(format!("{value} {what}; {} to {} are taken", range.start(), range.end()))
    }
}

fn within_if(what: &str, value: Option<u32>, range: RangeInclusive<u32>) -> Result<(), String> {
    value.map_or(Ok(()), |value| within(what, value, range))
}
