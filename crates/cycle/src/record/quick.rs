//! The short way through ordinary rows.
//!
//! A long record repeats itself: the same columns, plain numbers, and a time of which only the
//! seconds move. Such rows are read straight from the buffer, without being cut into cells first.
//! Whatever is not that plain is left to [`Plan::row`]; a property test holds the two equal.

use super::cells::Split;
use super::number::{Number, plain};
use super::parting::{MOST_ROWS, Raw};
use super::plan::{Body, Plan, Reading};
use super::source::position;
use super::stamp::{SECOND, Stamp};

/// The longest row that is read the short way, and less than the longest line that is kept whole.
const LONGEST_ROW: usize = 4_096;

/// Times in a row that could not be remembered, after which no more is tried.
const PATIENCE: u8 = 8;

/// What a cell is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Role {
    /// A number that counts time.
    Count,
    /// A written time.
    Clock,
    Temperature,
    Pressure,
    Other,
}

/// What was taken the short way.
pub(super) struct Taken {
    pub bytes: usize,
    pub rows: u32,
    /// The cycle before the last row, where that began a new one.
    pub earlier: Option<Raw>,
}

/// How the plain rows of one table are read.
#[derive(Debug)]
pub(super) struct Quick {
    separator: u8,
    mark: u8,
    /// One for each cell that a row must have; the last is never [`Role::Other`].
    roles: Vec<Role>,
    /// The last time read the long way, without the two digits of its seconds.
    stem: Vec<u8>,
    /// The time of the stem at second 0.
    minute: Stamp,
    /// Times since the last one that could be remembered.
    failed: u8,
}

impl Quick {
    /// Nothing for a table that has anything out of the ordinary.
    pub fn of(plan: &Plan) -> Option<Self> {
        let Split::At(separator) = plan.split else {
            return None;
        };
        let Body::Wide { temperature, pressure, phase: None, set: None } = plan.body else {
            return None;
        };
        let apart = plan.time.clock.is_some() || plan.time.half_day.is_some();
        if apart || separator == plan.mark {
            return None;
        }
        let mut roles = vec![Role::Other; plan.needed];
        *roles.get_mut(temperature)? = Role::Temperature;
        if let Some(pressure) = pressure {
            *roles.get_mut(pressure)? = Role::Pressure;
        }
        let counts = plan.time.of_number(0.0).is_some();
        *roles.get_mut(plan.time.column)? = if counts { Role::Count } else { Role::Clock };
        let used = roles.iter().filter(|role| **role != Role::Other).count();
        (used == 2 + usize::from(pressure.is_some())).then(|| Self {
            separator,
            mark: plan.mark,
            roles,
            stem: Vec::new(),
            minute: Stamp { micros: 0, zone: 0 },
            failed: 0,
        })
    }

    /// Takes rows from the front of `rest` until one is not plain, or begins a new cycle. `line` is
    /// the number of the line before them.
    pub fn rows(&mut self, plan: &Plan, rest: &[u8], line: u32, raw: &mut Raw) -> Taken {
        let mut taken = Taken { bytes: 0, rows: 0, earlier: None };
        while raw.len() < MOST_ROWS
            && let Some((reading, length)) = self.row(plan, &rest[taken.bytes..])
        {
            taken.bytes += length;
            taken.rows += 1;
            if let Some(from) = raw.add(&reading, line.saturating_add(taken.rows)) {
                taken.earlier = Some(raw.split(from));
                break;
            }
        }
        taken
    }

    /// The row at the front of `rest`, and its length with the line end. Nothing where it is not
    /// plain, or not closed by a line feed within `rest`.
    #[inline]
    fn row(&mut self, plan: &Plan, rest: &[u8]) -> Option<(Reading, usize)> {
        // Each of them has its column.
        let mut reading = Reading {
            at: Stamp { micros: 0, zone: 0 },
            temperature: Number { value: 0.0, decimals: 0 },
            pressure: None,
        };
        let mut left = rest;
        for column in 0..self.roles.len() {
            if column > 0 {
                left = left.split_first().filter(|(b, _)| **b == self.separator)?.1;
            }
            let role = self.roles[column];
            let length = match role {
                Role::Clock => {
                    let (time, length) = self.time(plan, left)?;
                    reading.at = time;
                    length
                }
                Role::Other => self.cell_length(left)?,
                Role::Count | Role::Temperature | Role::Pressure => {
                    let (number, length) = plain(left, self.mark)?;
                    match role {
                        Role::Count => reading.at = plan.time.of_number(number.value)?,
                        Role::Temperature => reading.temperature = number,
                        _ => reading.pressure = Some(number),
                    }
                    length
                }
            };
            left = &left[length..];
        }
        let length = rest.len() - left.len() + self.to_line_end(left)?;
        (length <= LONGEST_ROW).then_some((reading, length))
    }

    /// The time at the front of `cell`, and its length.
    #[inline]
    fn time(&mut self, plan: &Plan, cell: &[u8]) -> Option<(Stamp, usize)> {
        if self.stem.is_empty() || !cell.starts_with(&self.stem) {
            self.remember(plan, cell)?;
        }
        let length = self.stem.len();
        let [ten, one, ..] = cell[length..] else {
            return None;
        };
        let (ten, one) = (ten.wrapping_sub(b'0'), one.wrapping_sub(b'0'));
        if ten > 5 || one > 9 {
            return None;
        }
        let micros = self.minute.micros + i64::from(ten * 10 + one) * SECOND;
        Some((Stamp { micros, ..self.minute }, length + 2))
    }

    /// Remembers all but the last two digits of a time, where these are its seconds: the long way
    /// must read second 0 and second 59 that far apart.
    fn remember(&mut self, plan: &Plan, cell: &[u8]) -> Option<()> {
        if self.failed >= PATIENCE {
            return None;
        }
        self.failed += 1;
        self.stem.clear();
        let length = self.cell_length(cell)?.checked_sub(2)?;
        let stem = &cell[..length];
        let at = |second: &[u8; 2]| plan.time.read_alone(plan.mark, &[stem, second].concat());
        let (first, last) = (at(b"00")?, at(b"59")?);
        if last.micros - first.micros != 59 * SECOND || last.zone != first.zone {
            return None;
        }
        self.stem.extend_from_slice(stem);
        self.minute = first;
        self.failed = 0;
        Some(())
    }

    /// Bytes up to the next separator or line end; nothing where there is a quote.
    fn cell_length(&self, cell: &[u8]) -> Option<usize> {
        let ends = |b: &u8| *b == self.separator || matches!(*b, b'\r' | b'\n' | b'"');
        let length = cell.iter().take(LONGEST_ROW).position(ends)?;
        (cell[length] != b'"').then_some(length)
    }

    /// Bytes to the next row, over cells that nobody needs.
    #[inline]
    fn to_line_end(&self, rest: &[u8]) -> Option<usize> {
        match rest {
            [b'\n', ..] => Some(1),
            [b'\r', b'\n', ..] => Some(2),
            [b, ..] if *b == self.separator => {
                let rest = &rest[..rest.len().min(LONGEST_ROW)];
                let end = position(rest, b'\n')?;
                (!rest[..end].contains(&b'"')).then_some(end + 1)
            }
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::super::cells::Cells;
    use super::super::plan::{Row, TimeForm, TimePlan};
    use super::super::stamp::Order;
    use super::*;
    use proptest::prelude::*;

    fn plan(form: TimeForm) -> Plan {
        let time = TimePlan { form, doubt: None, column: 0, clock: None, half_day: None };
        Plan {
            split: Split::At(b';'),
            needed: 4,
            width: 4,
            time,
            mark: b'.',
            body: Body::Wide { temperature: 3, pressure: Some(1), phase: None, set: None },
            temperature_said: Default::default(),
            pressure_said: Default::default(),
            heading: Vec::new(),
            american: false,
        }
    }

    /// Reads each line both ways; gives how many went the short one.
    fn both_ways(form: TimeForm, lines: &[String]) -> usize {
        let plan = plan(form);
        let mut quick = Quick::of(&plan).unwrap();
        let mut taken = 0;
        for line in lines {
            let whole = format!("{line}\n");
            if let Some((reading, length)) = quick.row(&plan, whole.as_bytes()) {
                let line = line.strip_suffix('\r').unwrap_or(line);
                assert_eq!(length, whole.len(), "{line}");
                let long = plan.row(&mut Cells::default(), line.as_bytes());
                assert_eq!(long, Row::Sample(reading), "{line}");
                taken += 1;
            }
        }
        taken
    }

    #[test]
    fn ordinary_rows_go_the_short_way() {
        let lines: Vec<String> = (0..180)
            .map(|s| format!("2025-03-04 23:{:02}:{:02};{}.5;x;-{s}", 57 + s / 60, s % 60, 100 + s))
            .collect();
        assert_eq!(both_ways(TimeForm::Dated(Order::Ymd), &lines), 180);
        let lines: Vec<String> = (0..90).map(|s| format!("{s};1;;2.25;more\r")).collect();
        assert_eq!(both_ways(TimeForm::Number(1e6), &lines), 90);
    }

    #[test]
    fn what_is_out_of_the_ordinary_goes_the_long_way() {
        for line in ["10:20:30;1;x", "10:20:30;1;\"x\";2", "10:20:30;1 ;;2", "10:20:30;;;2", ""] {
            assert_eq!(both_ways(TimeForm::Clock, &[line.to_owned()]), 0, "{line}");
        }
        // Minutes stand last: two digits of them are no seconds.
        assert_eq!(both_ways(TimeForm::Clock, &["10:20;1;;2".to_owned()]), 0);
    }

    fn a_time() -> impl Strategy<Value = String> {
        prop_oneof![
            "2025-0[1-3]-0[1-9]T0[0-1]:0[0-1]:[0-6][0-9]Z?",
            "0?[1-3]\\.02\\.25 2[34]:0[01]:[0-6][0-9]",
            "2[3-5]:0[01]:[0-6][0-9]( pm|\\.5)?",
            "[0-9]{1,3}:[0-6][0-9]",
            "[0-9.]{0,6}",
        ]
    }

    proptest! {
        #[test]
        fn both_ways_are_one(
            rows in proptest::collection::vec(
                (a_time(), "[+-]?[0-9]{0,3}[.,]?[0-9]{0,17}", "[a \"]?", "[-+ ]?[0-9]{1,3}\\.?[0-9 e]?(;\"?)?\r?"),
                1..30,
            ),
            form in prop_oneof![
                Just(TimeForm::Dated(Order::Ymd)), Just(TimeForm::Dated(Order::Dmy)),
                Just(TimeForm::Clock), Just(TimeForm::Elapsed), Just(TimeForm::Number(6e7)),
                Just(TimeForm::Serial), Just(TimeForm::Epoch(1e3)),
            ],
        ) {
            let lines: Vec<String> =
                rows.iter().map(|(time, p, x, t)| format!("{time};{p};{x};{t}")).collect();
            both_ways(form, &lines);
        }
    }
}
