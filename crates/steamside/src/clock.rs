//! The one clock, and civil time in the salon's zone.

use jiff::civil;
use jiff::tz::TimeZone;
use measure::{Instant, Span};

/// The moment now.
pub fn now() -> Instant {
    Instant::from_millis(jiff::Timestamp::now().as_millisecond())
}

/// A moment as civil time in a zone. A moment that no calendar reaches is shown as its start.
pub fn civil(at: Instant, zone: &TimeZone) -> civil::DateTime {
    jiff::Timestamp::from_millisecond(at.millis())
        .map_or(civil::DateTime::constant(1970, 1, 1, 0, 0, 0, 0), |at| zone.to_datetime(at))
}

/// The first moment of the civil day that `at` lies in.
pub fn day_start(at: Instant, zone: &TimeZone) -> Instant {
    civil(at, zone)
        .date()
        .to_zoned_datetime(zone.clone())
        .map_or(at, |start| Instant::from_millis(start.timestamp().as_millisecond()))
}

/// The civil day that `at` lies in: its first moment and that of the next one.
pub fn day(at: Instant, zone: &TimeZone) -> (Instant, Instant) {
    let start = day_start(at, zone);
    // No day is longer than 25 hours, and none shorter than 23.
    (start, day_start(start + Span::from_minutes(30 * 60), zone))
}

/// All moments that a civil time can mean in a zone: one, two in the hour that autumn repeats,
/// or, in the hour that spring leaves out, the moments before and after the leap.
pub fn moments_of(time: civil::DateTime, zone: &TimeZone) -> Vec<Instant> {
    let stamp = |offset: jiff::tz::Offset| {
        offset.to_timestamp(time).ok().map(|at| Instant::from_millis(at.as_millisecond()))
    };
    use jiff::tz::AmbiguousOffset;
    let offsets = match zone.to_ambiguous_timestamp(time).offset() {
        AmbiguousOffset::Unambiguous { offset } => vec![offset],
        AmbiguousOffset::Gap { before, after } | AmbiguousOffset::Fold { before, after } => {
            vec![before, after]
        }
    };
    offsets.into_iter().filter_map(stamp).collect()
}

/// The number of the civil day that `at` lies in, counted from 1 January 1970.
pub fn day_number(at: Instant, zone: &TimeZone) -> i64 {
    let days = civil(at, zone).date() - civil::Date::constant(1970, 1, 1);
    days.get_days().into()
}

/// The first moment of the day with a number; `None`: no calendar reaches it.
pub fn start_of_day(number: i64, zone: &TimeZone) -> Option<Instant> {
    let days = jiff::Span::new().try_days(number).ok()?;
    let date = civil::Date::constant(1970, 1, 1).checked_add(days).ok()?;
    let start = date.to_zoned_datetime(zone.clone()).ok()?;
    Some(Instant::from_millis(start.timestamp().as_millisecond()))
}

/// The zone with this IANA name.
pub fn zone(name: &str) -> Result<TimeZone, UnknownZone> {
    TimeZone::get(name).map_err(|_| UnknownZone(name.chars().take(60).collect()))
}

/// Name of the computer's own zone, UTC where it has none.
pub fn system_zone() -> String {
    TimeZone::system().iana_name().unwrap_or("UTC").to_owned()
}

/// A name of no time zone.
#[derive(Debug, thiserror::Error)]
#[error("{0:?} is not the name of a time zone, such as America/Chicago")]
pub struct UnknownZone(String);

/// How long ago something was; never negative.
pub fn since(then: Instant, now: Instant) -> Span {
    if now > then { now - then } else { Span::default() }
}
#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;

    #[test]
    fn the_repeated_hour_has_two_moments() {
        let zone = zone("Europe/Berlin").unwrap();
        let twice = moments_of(civil::date(2025, 10, 26).at(2, 30, 0, 0), &zone);
        assert_eq!(twice.len(), 2);
        assert_eq!(twice[1] - twice[0], Span::from_minutes(60));
        assert_eq!(moments_of(civil::date(2025, 10, 25).at(2, 30, 0, 0), &zone).len(), 1);
    }

    /// 1 January 2025 is day 20 089: 55 years of 365 days and 14 leap days after 1970.
    #[test]
    fn a_day_has_one_number_from_its_first_moment_on() {
        let zone = zone("America/Chicago").unwrap();
        let start = start_of_day(20_089, &zone).unwrap();
        assert_eq!(civil(start, &zone), civil::date(2025, 1, 1).at(0, 0, 0, 0));
        assert_eq!(day_number(start, &zone), 20_089);
        assert_eq!(day_number(start - Span::from_minutes(1), &zone), 20_088);
        assert_eq!(start_of_day(i64::MAX, &zone), None);
    }

    #[test]
    fn the_day_starts_at_midnight_there() {
        let zone = zone("America/Chicago").unwrap();
        let noon = moments_of(civil::date(2026, 11, 25).at(12, 0, 0, 0), &zone)[0];
        assert_eq!(noon - day_start(noon, &zone), Span::from_minutes(720));
    }
}
