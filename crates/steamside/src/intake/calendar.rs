//! Calendars as RFC 5545 writes them: which appointments lie in a span, where each comes from, and
//! what cannot be told. The grammar is read by `icalendar`, recurrence rules by `rrule`; what an
//! entry means in time is decided here.
//!
//! Rules are followed on the wall clock of the entry's own zone, and only then turned into
//! moments, as 3.3.10 and 3.3.5 say; so a visit at nine stays at nine when the clocks change.

mod events;
mod recur;
mod values;
mod zones;

use events::Event;
pub use events::chair_in;
use icalendar::parser::{Component, Property, read_components, unfold};
use jiff::civil;
use jiff::tz::TimeZone;
use measure::Instant;
use std::collections::BTreeMap;
pub use values::duration_ms;
use zones::Zones;

/// Largest calendar that is read: years of a busy salon are a few megabytes.
pub const LARGEST: usize = 16 * 1024 * 1024;
/// Parts lie in a calendar, entries in it, alarms in them. Anything deeper is not a calendar.
const DEEPEST: usize = 8;

/// What is asked of a calendar.
#[derive(Debug, Clone)]
pub struct Asked {
    /// First moment that counts.
    pub from: Instant,
    /// First moment that no longer counts.
    pub to: Instant,
    /// The salon's zone, for times without one.
    pub zone: TimeZone,
}

/// One appointment.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// The entry's `UID`.
    pub uid: String,
    /// In a series: the moment that this one was first meant for.
    pub recurrence: Option<Instant>,
    /// Revision of the entry.
    pub sequence: u32,
    /// When it begins.
    pub start: Instant,
    /// When it ends, where the entry says so.
    pub end: Option<Instant>,
    /// Its title: never kept.
    pub title: String,
    /// Number of the chair, where the place names one.
    pub chair: Option<u32>,
}

/// An entry of whole days: no appointment.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WholeDays {
    /// First day.
    pub from: civil::Date,
    /// First day after it.
    pub to: civil::Date,
    /// Its title: never kept.
    pub title: String,
}

/// Why an entry could not be taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Why {
    /// No zone of this name is in the calendar or known.
    Zone(String),
    /// The rule by which it recurs cannot be followed.
    Rule,
    /// Its time, or its `UID`, is missing or cannot be read.
    Time,
}

/// An entry that could not be taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Odd {
    /// Why.
    pub why: Why,
    /// Its title: never kept.
    pub title: String,
}

/// An entry that was called off: its `UID`, and in a series the moment that it was meant for.
pub type CalledOff = (String, Option<Instant>);

/// What a calendar or a table says.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Said {
    /// What the calendar calls itself.
    pub name: Option<String>,
    /// It is a list of what there is, not a message about one change.
    pub list: bool,
    /// The appointments of the span.
    pub items: Vec<Item>,
    /// What was called off.
    pub called_off: Vec<CalledOff>,
    /// Series that are here as a whole: what is not among the items is no longer in them.
    pub series: Vec<String>,
    /// Entries of whole days.
    pub whole_days: Vec<WholeDays>,
    /// What could not be taken.
    pub odd: Vec<Odd>,
}

/// Why a file is no calendar that can be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NoCalendar;

/// Does it say that it is a calendar?
pub fn is_calendar(bytes: &[u8]) -> bool {
    let start = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes).trim_ascii_start();
    start.get(..15).is_some_and(|start| start.eq_ignore_ascii_case(b"BEGIN:VCALENDAR"))
}

/// Reads a calendar.
///
/// # Errors
/// A text that does not keep to the grammar. What the reader says about it may quote titles, so
/// it goes no further.
pub fn read(text: &str, asked: &Asked) -> Result<Said, NoCalendar> {
    // The reader looks for the end of a line as \r\n first; one kind of line end keeps that quick.
    let lines = unfold(&text.trim_start_matches('\u{feff}').replace("\r\n", "\n"));
    if lines.len() > LARGEST || deeper(&lines, DEEPEST) {
        return Err(NoCalendar);
    }
    let text = lines.replace('\n', "\r\n");
    let calendars = read_components(&text).map_err(|_| NoCalendar)?;
    let mut said = Said { list: true, ..Said::default() };
    let mut any = false;
    for calendar in calendars.iter().filter(|part| part.name.as_str() == "VCALENDAR") {
        any = true;
        one(calendar, asked, &mut said);
    }
    if any { Ok(said) } else { Err(NoCalendar) }
}

/// The reader goes down once for each part that lies in another.
fn deeper(lines: &str, most: usize) -> bool {
    let starts = |line: &str, word: &str| {
        line.get(..word.len()).is_some_and(|start| start.eq_ignore_ascii_case(word))
    };
    let mut depth = 0_usize;
    lines.lines().map(str::trim_start).any(|line| {
        if starts(line, "BEGIN:") {
            depth += 1;
        } else if starts(line, "END:") {
            depth = depth.saturating_sub(1);
        }
        depth > most
    })
}

fn one(calendar: &Component<'_>, asked: &Asked, said: &mut Said) {
    let text = |name| property(calendar, name).map(|found| found.val.as_str().trim().to_owned());
    let method = text("METHOD").unwrap_or_default().to_ascii_uppercase();
    said.list &= method.is_empty() || method == "PUBLISH";
    let name = text("X-WR-CALNAME").or_else(|| text("NAME")).filter(|name| !name.is_empty());
    said.name = said.name.take().or(name);
    let zones = Zones::of(calendar, asked);
    let mut by_uid: BTreeMap<String, Vec<Event>> = BTreeMap::new();
    for part in calendar.components.iter().filter(|part| part.name.as_str() == "VEVENT") {
        match Event::read(part, &zones, method == "CANCEL") {
            Ok(event) => by_uid.entry(event.uid.clone()).or_default().push(event),
            Err(why) => said.odd.push(Odd { why, title: events::title_of(part) }),
        }
    }
    for (uid, events) in by_uid {
        events::entries_of(&uid, events, asked, said);
    }
}

/// The first property of this name, however it is written.
fn property<'a>(part: &'a Component<'_>, name: &str) -> Option<&'a Property<'a>> {
    part.properties.iter().find(|property| property.name.as_str().eq_ignore_ascii_case(name))
}

/// Every property of this name.
fn properties<'a>(part: &'a Component<'_>, name: &str) -> impl Iterator<Item = &'a Property<'a>> {
    let name = name.to_owned();
    part.properties
        .iter()
        .filter(move |property| property.name.as_str().eq_ignore_ascii_case(&name))
}

/// A parameter of a property, without the quotes around it.
fn parameter<'a>(property: &'a Property<'_>, name: &str) -> Option<&'a str> {
    let found = property.params.iter().find(|one| one.key.as_str().eq_ignore_ascii_case(name))?;
    found.val.as_ref().map(|value| value.as_str().trim_matches('"'))
}

#[cfg(test)]
mod tests;
