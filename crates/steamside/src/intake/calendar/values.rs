//! Dates, times, durations and offsets as RFC 5545 writes them (3.3.4 to 3.3.6, 3.3.14).

use jiff::civil::{Date, DateTime};

/// A date or a time, before anybody knows its zone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stamp {
    /// A whole day.
    Day(Date),
    /// A time on some wall clock.
    Wall(DateTime),
    /// A time in UTC.
    Utc(DateTime),
}

/// `19970714`, `19970714T133000`, `19970714T173000Z`.
pub fn stamp(text: &str) -> Option<Stamp> {
    let text = text.trim();
    match text.split_once(['T', 't']) {
        None => date(text).map(Stamp::Day),
        Some((day, time)) => {
            let utc = time.strip_suffix(['Z', 'z']);
            let at = wall(date(day)?, utc.unwrap_or(time))?;
            Some(if utc.is_some() { Stamp::Utc(at) } else { Stamp::Wall(at) })
        }
    }
}

fn digits(text: &str, length: usize) -> bool {
    text.len() == length && text.bytes().all(|byte| byte.is_ascii_digit())
}

fn date(text: &str) -> Option<Date> {
    if !digits(text, 8) {
        return None;
    }
    Date::new(text[..4].parse().ok()?, text[4..6].parse().ok()?, text[6..].parse().ok()?).ok()
}

fn wall(day: Date, time: &str) -> Option<DateTime> {
    if !digits(time, 6) {
        return None;
    }
    // A leap second is read as the second before it (3.3.12).
    let second: i8 = time[4..].parse().ok()?;
    let time = jiff::civil::Time::new(
        time[..2].parse().ok()?,
        time[2..4].parse().ok()?,
        second.min(59),
        0,
    );
    Some(day.to_datetime(time.ok()?))
}

/// `-0500`, `+013000`; in seconds.
pub fn offset(text: &str) -> Option<i32> {
    let text = text.trim();
    let sign = match text.as_bytes().first()? {
        b'+' => 1,
        b'-' => -1,
        _ => return None,
    };
    let rest = text.get(1..)?;
    if !digits(rest, 4) && !digits(rest, 6) {
        return None;
    }
    let part = |from: usize| rest.get(from..from + 2).map_or(Some(0), |two| two.parse().ok());
    let (hours, minutes, seconds): (i32, i32, i32) = (part(0)?, part(2)?, part(4)?);
    Some(sign * (hours * 3_600 + minutes * 60 + seconds))
}

/// `PT1H30M`, `P2W`, in milliseconds; a day is 24 hours. None where it is negative or unreadable.
pub fn duration_ms(text: &str) -> Option<i64> {
    let span: jiff::Span = text.trim().parse().ok()?;
    let length = span.to_duration(jiff::SpanRelativeTo::days_are_24_hours()).ok()?;
    i64::try_from(length.as_millis()).ok().filter(|ms| *ms >= 0)
}
#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date as day;

    /// The examples of 3.3.4, 3.3.5, 3.3.6 and 3.3.14, from memory.
    #[test]
    fn examples_of_the_standard() {
        assert_eq!(stamp("19970714"), Some(Stamp::Day(day(1997, 7, 14))));
        let wall = day(1998, 1, 18).at(23, 0, 0, 0);
        assert_eq!(stamp("19980118T230000"), Some(Stamp::Wall(wall)));
        let utc = day(1998, 1, 19).at(7, 0, 0, 0);
        assert_eq!(stamp("19980119T070000Z"), Some(Stamp::Utc(utc)));
        // 3.3.6: fifteen days, five hours and twenty seconds; seven weeks.
        assert_eq!(duration_ms("P15DT5H0M20S"), Some(((15 * 24 + 5) * 3_600 + 20) * 1_000));
        assert_eq!(duration_ms("P7W"), Some(7 * 7 * 86_400_000));
        assert_eq!(offset("-0500"), Some(-5 * 3_600));
        assert_eq!(offset("+0100"), Some(3_600));
    }

    #[test]
    fn what_is_no_time_is_none() {
        // The first is the standard's own example of what must not be written (3.3.5).
        for bad in ["19980119T230000-0800", "", "T", "1998011", "19981301", "19980119T25", "ệT"] {
            assert_eq!(stamp(bad), None, "{bad:?}");
        }
        for bad in ["", "0500", "+5", "-05000", "+aa00"] {
            assert_eq!(offset(bad), None, "{bad:?}");
        }
        for bad in ["", "1H", "-PT15M", "P1M"] {
            assert_eq!(duration_ms(bad), None, "{bad:?}");
        }
    }
}
