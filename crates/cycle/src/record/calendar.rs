//! Days of the proleptic Gregorian calendar, and points in time as text.

use super::stamp::{DAY, SECOND};

/// Days since 1970-01-01; nothing for a day that the calendar does not have.
///
/// Counts in years that begin in March, so that the leap day is the last of its year.
pub(super) fn days_from_civil(year: u32, month: u32, day: u32) -> Option<i64> {
    const DAYS: [u32; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let last = *DAYS.get(month.checked_sub(1)? as usize)? + u32::from(leap && month == 2);
    if day == 0 || day > last || !(1_900..10_000).contains(&year) {
        return None;
    }
    let year = i64::from(year) - i64::from(month <= 2);
    let month_from_march = i64::from((month + 9) % 12);
    let day_of_year = (153 * month_from_march + 2) / 5 + i64::from(day) - 1;
    let leap_days = year / 4 - year / 100 + year / 400;
    Some(year * 365 + leap_days + day_of_year - 719_468)
}

/// `YYYY-MM-DDThh:mm:ss` of civil microseconds since 1970.
pub(super) fn civil_text(micros: i64) -> Option<String> {
    let seconds = micros.div_euclid(SECOND);
    let stamp = jiff::Timestamp::from_second(seconds).ok()?;
    let civil = jiff::tz::TimeZone::UTC.to_datetime(stamp);
    Some(civil.strftime("%Y-%m-%dT%H:%M:%S").to_string())
}

/// `hh:mm:ss` of microseconds since midnight.
pub(super) fn clock_text(micros: i64) -> String {
    let seconds = micros.rem_euclid(DAY) / SECOND;
    format!("{:02}:{:02}:{:02}", seconds / 3_600, seconds / 60 % 60, seconds % 60)
}
