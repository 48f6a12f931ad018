//! Recurrence rules (3.3.10), followed on a wall clock.

use super::values::{Stamp, stamp};
use jiff::civil::DateTime;
use jiff::tz::{Offset, TimeZone};
use rrule::RRuleSet;

/// Most times that one rule may give before the end of the span. A visit every day for a century
/// stays below; a rule that gives more is none for appointments.
const MOST: u16 = 50_000;

/// A rule that cannot be followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NoRule;

/// The times that a rule gives, up to and including `last`. `until` turns the rule's own end into
/// the same wall clock.
///
/// # Errors
/// A rule that is malformed, or that gives too many times.
pub fn times(
    start: DateTime,
    rule: &str,
    last: DateTime,
    until: impl Fn(Stamp) -> Option<DateTime>,
) -> Result<Vec<DateTime>, NoRule> {
    let mut parts = Vec::new();
    let (mut end, mut counted) = (last, false);
    for part in rule.split(';').map(str::trim).filter(|part| !part.is_empty()) {
        let (name, value) = part.split_once('=').ok_or(NoRule)?;
        if name.eq_ignore_ascii_case("UNTIL") {
            end = end.min(until(stamp(value).ok_or(NoRule)?).ok_or(NoRule)?);
        } else {
            counted |= name.eq_ignore_ascii_case("COUNT");
            parts.push(part.to_owned());
        }
    }
    if end < start {
        return Ok(Vec::new());
    }
    if !counted {
        parts.push(format!("UNTIL={}Z", written(end)));
    }
    // UTC stands for the wall clock here: it has no hour that is missing or comes twice.
    let text = format!("DTSTART:{}Z\nRRULE:{}", written(start), parts.join(";"));
    let found = text.parse::<RRuleSet>().map_err(|_| NoRule)?.all(MOST);
    if found.limited {
        return Err(NoRule);
    }
    let civil = |seconds: i64| {
        let at = jiff::Timestamp::from_second(seconds).ok()?;
        Some(TimeZone::fixed(Offset::UTC).to_datetime(at))
    };
    let times = found.dates.iter().filter_map(|date| civil(date.timestamp()));
    Ok(times.filter(|time| *time <= end).collect())
}

fn written(at: DateTime) -> String {
    format!(
        "{:04}{:02}{:02}T{:02}{:02}{:02}",
        at.year(),
        at.month(),
        at.day(),
        at.hour(),
        at.minute(),
        at.second()
    )
}
