//! Points in time as machines write them, in whole microseconds.
//!
//! Every written form is read by one scan that collects the whole numbers and what parts them;
//! the form of the column, decided once, then says what the numbers mean. The calendar is the
//! proleptic Gregorian one. A time is civil (what the machine's clock showed) unless a zone
//! stands behind it, which is taken off.

use super::calendar::days_from_civil;

/// A second in microseconds.
pub(super) const SECOND: i64 = 1_000_000;

/// A day in microseconds.
pub(super) const DAY: i64 = 86_400 * SECOND;

/// Order of day, month and year.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Order {
    Ymd,
    Dmy,
    Mdy,
}

/// What is written in a cell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Shape {
    /// Day and clock.
    Dated,
    /// A day.
    Day,
    /// Two numbers parted by a colon, or three.
    Clock(u8),
}

/// The numbers of one written time.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Scan {
    numbers: [u32; 7],
    count: usize,
    /// How many of them are in front of the clock: three for a date, else none.
    dated: usize,
    month_by_name: bool,
    micros: i64,
    afternoon: Option<bool>,
    zone_s: Option<i32>,
}

/// A point in time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Stamp {
    /// Microseconds since 1970-01-01 (or midnight, or the start), with the zone taken off.
    pub micros: i64,
    /// What a zone took off, in microseconds.
    pub zone: i64,
}

const MONTHS: &[&[&str]] = &[
    &["jan", "ene", "gen", "sty"],
    &["feb", "fev", "lut"],
    &["mar", "mrz", "maer", "mär"],
    &["apr", "abr", "avr", "kwi"],
    &["may", "mai", "mag", "maj"],
    &["jun", "giu", "juin", "cze"],
    &["jul", "lug", "juil", "lip"],
    &["aug", "ago", "aou", "aoû", "sie"],
    &["sep", "set", "wrz"],
    &["oct", "okt", "out", "ott", "paz"],
    &["nov", "lis"],
    &["dec", "dez", "dic", "déc", "gru"],
];

impl Scan {
    /// Reads a cell; nothing when it is no time.
    pub fn read(cell: &[u8]) -> Option<Self> {
        let cell = cell.trim_ascii();
        if cell.len() > 40 || cell.len() < 3 {
            return None;
        }
        let mut scan = Self::default();
        let mut rest = cell;
        let mut colons = 0;
        while let Some(&b) = rest.first() {
            match b {
                b'0'..=b'9' => rest = scan.number(rest)?,
                b'.' | b',' if colons > 0 && rest.get(1).is_some_and(u8::is_ascii_digit) => {
                    rest = scan.fraction(&rest[1..])?;
                }
                b':' | b'h' | b'H' if scan.count > 0 => {
                    if colons == 0 {
                        scan.dated = scan.count - 1;
                    }
                    colons += 1;
                    rest = &rest[1..];
                }
                b'+' | b'-' if colons > 0 => {
                    scan.zone_s = Some(zone(rest)?);
                    rest = &[];
                }
                b'-' | b'/' | b'.' | b' ' | b',' | b'_' if scan.count > 0 => rest = &rest[1..],
                b'T' if scan.count == 3 && colons == 0 => rest = &rest[1..],
                _ => rest = scan.letters(rest, colons)?,
            }
        }
        scan.dated = if colons == 0 { scan.count } else { scan.dated };
        let clock = scan.count - scan.dated;
        let whole = matches!(scan.dated, 0 | 3) && clock <= 3 && (clock != 1);
        (scan.count > 0 && whole).then_some(scan)
    }

    fn push(&mut self, number: u32) -> Option<()> {
        *self.numbers.get_mut(self.count)? = number;
        self.count += 1;
        Some(())
    }

    /// Digits; eight of them in one go are a day.
    fn number<'a>(&mut self, rest: &'a [u8]) -> Option<&'a [u8]> {
        let mut value = 0_u64;
        let mut length = 0;
        while let Some(digit) = rest.get(length).filter(|b| b.is_ascii_digit()) {
            value = value * 10 + u64::from(digit - b'0');
            length += 1;
            if length > 8 {
                return None;
            }
        }
        let part = |by: u64, modulo: u64| u32::try_from(value / by % modulo).ok();
        match length {
            8 if self.count == 0 => {
                for (by, modulo) in [(10_000, 10_000), (100, 100), (1, 100)] {
                    self.push(part(by, modulo)?)?;
                }
            }
            _ if length > 7 => return None,
            _ => self.push(u32::try_from(value).ok()?)?,
        }
        Some(&rest[length..])
    }

    fn fraction<'a>(&mut self, rest: &'a [u8]) -> Option<&'a [u8]> {
        let mut scale = SECOND;
        let mut length = 0;
        while let Some(digit) = rest.get(length).filter(|b| b.is_ascii_digit()) {
            scale /= 10;
            self.micros += i64::from(digit - b'0') * scale;
            length += 1;
        }
        (self.micros < SECOND).then_some(&rest[length..])
    }

    /// AM and PM, names of months, `Z`.
    fn letters<'a>(&mut self, rest: &'a [u8], colons: usize) -> Option<&'a [u8]> {
        let length = rest.iter().take_while(|b| b.is_ascii_alphabetic() || **b >= 128).count();
        let word = std::str::from_utf8(&rest[..length]).ok()?.to_lowercase();
        let after = &rest[length..];
        match word.as_str() {
            "a" | "p" | "am" | "pm" if colons > 0 => {
                self.afternoon = Some(word.starts_with('p'));
                let end = after.iter().take_while(|b| b"mM. ".contains(b)).count();
                return Some(&after[end..]);
            }
            "z" | "utc" | "gmt" if colons > 0 => self.zone_s = Some(0),
            "t" if self.count == 3 && colons == 0 => {}
            _ if colons == 0 && self.count <= 2 && length >= 3 => {
                let month = MONTHS
                    .iter()
                    .position(|names| names.iter().any(|name| word.starts_with(name)))?;
                self.push(u32::try_from(month).ok()? + 1)?;
                self.month_by_name = true;
            }
            _ => return None,
        }
        Some(after)
    }

    /// What was written.
    pub fn shape(&self) -> Option<Shape> {
        match (self.dated, self.count - self.dated) {
            (3, 0) => Some(Shape::Day),
            (3, 2 | 3) => Some(Shape::Dated),
            (0, parts @ (2 | 3)) => Some(Shape::Clock(parts as u8)),
            _ => None,
        }
    }

    /// AM or PM stands in it.
    pub fn has_half_day(&self) -> bool {
        self.afternoon.is_some()
    }

    /// The three numbers of the day; the middle one is the month where it stood as a name.
    pub fn day_numbers(&self) -> Option<([u32; 3], bool)> {
        (self.dated == 3).then(|| {
            let [a, b, c, ..] = self.numbers;
            ([a, b, c], self.month_by_name)
        })
    }

    /// Microseconds of the day alone.
    pub fn day(&self, order: Order) -> Option<i64> {
        let ([a, b, c], by_name) = self.day_numbers()?;
        let (year, month, day) = match order {
            Order::Ymd => (a, b, c),
            Order::Dmy => (c, b, a),
            Order::Mdy if by_name && b <= 12 && self.numbers[0] > 12 => (c, b, a),
            Order::Mdy => (c, a, b),
        };
        let year = if year < 100 { year + 2_000 } else { year };
        days_from_civil(year, month, day).map(|days| days * DAY)
    }

    /// Microseconds of the clock alone, as hours, minutes and seconds.
    pub fn clock(&self) -> Option<i64> {
        let parts = &self.numbers[self.dated..self.count];
        let (hour, minute, second) = match *parts {
            [] => return Some(0),
            [hour, minute] => (hour, minute, 0),
            [hour, minute, second] => (hour, minute, second),
            _ => return None,
        };
        let hour = match self.afternoon {
            Some(_) if hour > 12 || hour == 0 => return None,
            Some(afternoon) => hour % 12 + if afternoon { 12 } else { 0 },
            None => hour,
        };
        let fits =
            minute < 60 && second < 61 && (hour < 24 || (hour, minute, second) == (24, 0, 0));
        let seconds = i64::from(hour * 3_600 + minute * 60 + second);
        fits.then_some(seconds * SECOND + self.micros)
    }

    /// Microseconds since the start, where two numbers are minutes and seconds.
    pub fn elapsed(&self) -> Option<i64> {
        let seconds = match self.numbers[..self.count] {
            [minute, second] if self.dated == 0 => i64::from(minute) * 60 + below_sixty(second)?,
            [hour, minute, second] if self.dated == 0 => {
                i64::from(hour) * 3_600 + below_sixty(minute)? * 60 + below_sixty(second)?
            }
            _ => return None,
        };
        Some(seconds * SECOND + self.micros)
    }

    /// Zone east of Greenwich in microseconds, where one is written.
    pub fn zone(&self) -> i64 {
        i64::from(self.zone_s.unwrap_or(0)) * SECOND
    }

    /// Day and clock together.
    pub fn dated(&self, order: Order) -> Option<Stamp> {
        if self.count == self.dated {
            return None;
        }
        let zone = self.zone();
        let micros = self.day(order)? + self.clock()? - zone;
        Some(Stamp { micros, zone })
    }
}

/// The commonest form, `YYYY-MM-DDThh:mm:ss` or with a blank, by the places of its digits;
/// everything else is left to [`Scan`].
pub(super) fn iso(cell: &[u8]) -> Option<Stamp> {
    let &[
        y1,
        y2,
        y3,
        y4,
        b'-',
        m1,
        m2,
        b'-',
        d1,
        d2,
        b'T' | b' ',
        h1,
        h2,
        b':',
        n1,
        n2,
        b':',
        s1,
        s2,
    ] = cell
    else {
        return None;
    };
    let digit = |b: u8| Some(u32::from(b.wrapping_sub(b'0'))).filter(|d| *d < 10);
    let two = |a: u8, b: u8| Some(digit(a)? * 10 + digit(b)?);
    let days = days_from_civil(two(y1, y2)? * 100 + two(y3, y4)?, two(m1, m2)?, two(d1, d2)?)?;
    let (hour, minute, second) = (two(h1, h2)?, two(n1, n2)?, two(s1, s2)?);
    if hour > 23 || minute > 59 || second > 60 {
        return None;
    }
    let seconds = i64::from(hour * 3_600 + minute * 60 + second);
    Some(Stamp { micros: days * DAY + seconds * SECOND, zone: 0 })
}

fn below_sixty(number: u32) -> Option<i64> {
    (number < 60).then(|| i64::from(number))
}

/// `+02:00`, `-0330`, `+2`: seconds east of Greenwich.
fn zone(rest: &[u8]) -> Option<i32> {
    let (sign, digits) = rest.split_first()?;
    let mut values = [0_i32; 4];
    let mut count = 0;
    for b in digits {
        match b {
            b'0'..=b'9' => {
                *values.get_mut(count)? = i32::from(b - b'0');
                count += 1;
            }
            b':' => {}
            _ => return None,
        }
    }
    let (hours, minutes) = match count {
        1 => (values[0], 0),
        2 => (values[0] * 10 + values[1], 0),
        4 => (values[0] * 10 + values[1], values[2] * 10 + values[3]),
        _ => return None,
    };
    let seconds = hours * 3_600 + minutes * 60;
    (hours <= 14 && minutes < 60).then_some(if *sign == b'-' { -seconds } else { seconds })
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::super::calendar::civil_text;
    use super::*;
    use proptest::prelude::*;

    #[track_caller]
    fn check(cell: &str, order: Order, expected: Option<&str>) {
        let got = Scan::read(cell.as_bytes())
            .and_then(|scan| scan.dated(order))
            .and_then(|stamp| civil_text(stamp.micros + stamp.zone));
        assert_eq!(got.as_deref(), expected, "{cell}");
    }

    #[test]
    fn days_and_clocks_in_every_order() {
        let noon = Some("2025-10-26T12:41:17");
        for cell in [
            "2025-10-26T12:41:17",
            "2025-10-26 12:41:17",
            "2025/10/26 12:41:17.5",
            "2025-10-26T12:41:17Z",
            "2025-10-26T12:41:17.250+02:00",
            "2025-10-26 12:41:17-0330",
            "20251026T12:41:17",
            "2025-10-26 12:41:17 PM",
        ] {
            check(cell, Order::Ymd, noon);
        }
        for cell in [
            "26.10.2025 12:41:17",
            "26/10/2025 12:41:17",
            "26.10.25 12:41:17",
            "26-Oct-2025 12:41:17",
            "26. Okt 2025 12:41:17",
            "26.10.2025, 12:41:17",
        ] {
            check(cell, Order::Dmy, noon);
        }
        check("10/26/2025 12:41:17 PM", Order::Mdy, noon);
        check("10/26/2025 1:02:03 a.m.", Order::Mdy, Some("2025-10-26T01:02:03"));
        for cell in [
            "29.02.2025 12:00:00",
            "31.04.2025 12:00:00",
            "26.10.2025 25:00:00",
            "26.10.2025 12:60:00",
            "1.2.3",
            "x",
            "",
        ] {
            check(cell, Order::Dmy, None);
        }
    }

    #[test]
    fn a_zone_is_taken_off() {
        let at =
            |cell: &str| Scan::read(cell.as_bytes()).unwrap().dated(Order::Ymd).unwrap().micros;
        assert_eq!(
            at("2025-10-26T02:30:00+02:00") + 3_600 * SECOND,
            at("2025-10-26T02:30:00+01:00")
        );
    }

    #[test]
    fn elapsed_minutes_go_past_59() {
        let at = |cell: &str| Scan::read(cell.as_bytes()).and_then(|scan| scan.elapsed());
        assert_eq!(at("00:02"), Some(2 * SECOND));
        assert_eq!(at("75:30"), Some(4_530 * SECOND));
        assert_eq!(at("1:15:30.5"), Some(4_530 * SECOND + SECOND / 2));
        assert_eq!(at("1:75"), None);
        assert_eq!(at("1.5"), None);
    }

    proptest! {
        /// The calendar of the library is the yardstick.
        #[test]
        fn the_calendar_is_that_of_the_library(days in -20_000_i32..200_000, second in 0_i64..86_400) {
            let micros = i64::from(days) * DAY + second * SECOND;
            let text = civil_text(micros).unwrap();
            let scan = Scan::read(text.as_bytes()).unwrap();
            prop_assert_eq!(scan.dated(Order::Ymd).unwrap().micros, micros);
            let theirs: jiff::civil::DateTime = text.parse().unwrap();
            prop_assert_eq!(jiff::tz::TimeZone::UTC.to_timestamp(theirs).unwrap().as_microsecond(), micros);
        }

        /// The fast way gives what the thorough one gives, or leaves it to it.
        #[test]
        fn the_fast_way_is_the_same(cell in "[0-2][0-9]{3}-[0-9]{2}-[0-9]{2}[T ][0-9]{2}:[0-9]{2}:[0-9]{2}[Z.]?") {
            if let Some(fast) = iso(cell.as_bytes()) {
                let scan = Scan::read(cell.as_bytes()).unwrap();
                prop_assert_eq!(Some(fast), scan.dated(Order::Ymd));
            }
        }

        #[test]
        fn the_fast_way_is_taken(day in 1_u32..29, month in 1_u32..13, second in 0_u32..60) {
            let cell = format!("2025-{month:02}-{day:02} 10:20:{second:02}");
            prop_assert!(iso(cell.as_bytes()).is_some());
        }

        #[test]
        fn never_panics(cell in proptest::collection::vec(any::<u8>(), 0..45)) {
            if let Some(scan) = Scan::read(&cell) {
                let _ = (scan.shape(), scan.clock(), scan.elapsed(), scan.dated(Order::Dmy));
            }
        }
    }
}
