//! Which moment a wall clock means: the calendar's own zones (3.6.5), zones of the common table,
//! the salon's zone for times without one (3.3.5, form 1). No name is guessed at.

use super::values::{Stamp, offset, stamp};
use super::{Asked, Why, properties, property, recur};
use icalendar::parser::Component;
use jiff::civil::DateTime;
use jiff::tz::{Offset, TimeZone};
use measure::Instant;
use std::collections::BTreeMap;
use std::rc::Rc;

/// A zone.
#[derive(Debug, Clone)]
pub enum Zone {
    /// Of the common table.
    Known(TimeZone),
    /// Described in the calendar.
    Own(Rc<Own>),
}

/// A zone as a calendar describes it: from each moment (ms) on, an offset (ms).
#[derive(Debug, PartialEq, Eq)]
pub struct Own {
    before: i64,
    changes: Vec<(i64, i64)>,
}

impl Zone {
    /// UTC.
    pub fn utc() -> Self {
        Self::Known(TimeZone::UTC)
    }

    /// The moment of a wall clock: of two the first; where the clock jumped over it, by the offset
    /// before the jump (3.3.5).
    pub fn moment(&self, at: DateTime) -> Option<Instant> {
        match self {
            Self::Known(zone) => {
                let at = zone.to_ambiguous_timestamp(at).compatible().ok()?;
                Some(Instant::from_millis(at.as_millisecond()))
            }
            Self::Own(own) => own.moment(millis(at)?).map(Instant::from_millis),
        }
    }

    /// What the wall clock shows at a moment.
    pub fn wall(&self, at: Instant) -> Option<DateTime> {
        match self {
            Self::Known(zone) => {
                jiff::Timestamp::from_millisecond(at.millis()).ok().map(|at| zone.to_datetime(at))
            }
            Self::Own(own) => civil(at.millis().checked_add(own.offset_at(at.millis()))?),
        }
    }
}

impl Own {
    fn offset_at(&self, moment: i64) -> i64 {
        let after = self.changes.partition_point(|(from, _)| *from <= moment);
        after.checked_sub(1).and_then(|at| self.changes.get(at)).map_or(self.before, |(_, o)| *o)
    }

    fn moment(&self, wall: i64) -> Option<i64> {
        let mut offsets: Vec<i64> = self.changes.iter().map(|(_, offset)| *offset).collect();
        offsets.push(self.before);
        offsets.sort_unstable();
        offsets.dedup();
        let moments = offsets.iter().map(|offset| wall - offset);
        let fits = moments.filter(|moment| moment + self.offset_at(*moment) == wall).min();
        fits.or_else(|| {
            // Jumped over: the offset that held before the jump.
            let jump = self.changes.iter().enumerate().find(|(at, (from, offset))| {
                let before = at.checked_sub(1).map_or(self.before, |at| self.changes[at].1);
                wall >= from + before && wall < from + offset
            })?;
            let before = jump.0.checked_sub(1).map_or(self.before, |at| self.changes[at].1);
            Some(wall - before)
        })
    }
}

/// Milliseconds of a wall clock, as if it were UTC.
fn millis(at: DateTime) -> Option<i64> {
    Offset::UTC.to_timestamp(at).ok().map(|at| at.as_millisecond())
}

fn civil(millis: i64) -> Option<DateTime> {
    let at = jiff::Timestamp::from_millisecond(millis).ok()?;
    Some(TimeZone::UTC.to_datetime(at))
}

/// The zones of one calendar.
pub struct Zones {
    own: BTreeMap<String, Option<Rc<Own>>>,
    salon: TimeZone,
}

impl Zones {
    /// Those that a calendar describes, beside the common ones.
    pub fn of(calendar: &Component<'_>, asked: &Asked) -> Self {
        let mut own = BTreeMap::new();
        for part in calendar.components.iter().filter(|part| part.name.as_str() == "VTIMEZONE") {
            if let Some(name) = property(part, "TZID") {
                let zone = described(part, asked.to).map(Rc::new);
                own.insert(name.val.as_str().to_owned(), zone);
            }
        }
        Self { own, salon: asked.zone.clone() }
    }

    /// The zone of a time with this `TZID`. What the calendar itself describes goes before the
    /// common table, as 3.2.19 says.
    pub fn zone(&self, name: Option<&str>) -> Result<Zone, Why> {
        let Some(name) = name else {
            return Ok(Zone::Known(self.salon.clone()));
        };
        match self.own.get(name) {
            Some(Some(own)) => Ok(Zone::Own(Rc::clone(own))),
            Some(None) => Err(Why::Zone(name.to_owned())),
            None => TimeZone::get(name)
                .map(Zone::Known)
                .map_err(|_| Why::Zone(name.chars().take(60).collect())),
        }
    }
}

/// A zone from its description; none where a part of it cannot be read.
fn described(part: &Component<'_>, to: Instant) -> Option<Own> {
    let mut changes = Vec::new();
    let mut first: Option<(i64, i64)> = None;
    for observance in &part.components {
        if !matches!(observance.name.as_str(), "STANDARD" | "DAYLIGHT") {
            continue;
        }
        let seconds = |name| offset(property(observance, name)?.val.as_str()).map(i64::from);
        let (from, onto) = (seconds("TZOFFSETFROM")? * 1_000, seconds("TZOFFSETTO")? * 1_000);
        for onset in onsets(observance, from, to)? {
            let at = millis(onset)?.checked_sub(from)?;
            changes.push((at, onto));
            if first.is_none_or(|(earliest, _)| at < earliest) {
                first = Some((at, from));
            }
        }
    }
    changes.sort_unstable();
    Some(Own { before: first?.1, changes })
}

/// The wall clocks, before each change, at which an observance begins.
fn onsets(observance: &Component<'_>, from: i64, to: Instant) -> Option<Vec<DateTime>> {
    let Stamp::Wall(start) = stamp(property(observance, "DTSTART")?.val.as_str())? else {
        return None;
    };
    let mut onsets = vec![start];
    let last = civil(to.millis())?;
    for rule in properties(observance, "RRULE") {
        // The end of such a rule is always in UTC (3.3.10); the clock before the change counts.
        let until = |end| match end {
            Stamp::Utc(end) => civil(millis(end)? + from),
            Stamp::Wall(end) => Some(end),
            Stamp::Day(day) => Some(day.at(23, 59, 59, 0)),
        };
        onsets.extend(recur::times(start, rule.val.as_str(), last, until).ok()?);
    }
    for dates in properties(observance, "RDATE") {
        for text in dates.val.as_str().split(',') {
            match stamp(text)? {
                Stamp::Wall(at) => onsets.push(at),
                Stamp::Day(day) => onsets.push(day.at(0, 0, 0, 0)),
                Stamp::Utc(at) => onsets.push(civil(millis(at)? + from)?),
            }
        }
    }
    onsets.sort_unstable();
    onsets.dedup();
    Some(onsets)
}
