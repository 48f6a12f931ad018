//! How one table is read: decided once from its first lines, then used row by row.

use super::cells::{Cells, Split};
use super::number;
use super::sniff::{Kind, kind};
use super::stamp::{DAY, Order, SECOND, Scan, Stamp, iso};
use super::units::Said;

/// How the time column is written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum TimeForm {
    /// Day and clock.
    Dated(Order),
    /// Clock alone.
    Clock,
    /// Counted from the start, with colons.
    Elapsed,
    /// A number of these many microseconds.
    Number(f64),
    /// A number of these many microseconds since 1970.
    Epoch(f64),
    /// A spreadsheet's day number.
    Serial,
    /// Not written at all: rows so many microseconds apart.
    Counted(i64),
}

/// Where and how the time stands.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct TimePlan {
    pub form: TimeForm,
    /// Why no verdict may rest on the times.
    pub doubt: Option<&'static str>,
    /// Column of the time, or of the day where the clock stands apart.
    pub column: usize,
    /// Column of the clock.
    pub clock: Option<usize>,
    /// Column of AM and PM.
    pub half_day: Option<usize>,
}

/// Where the readings stand.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Body {
    /// One row a point in time.
    Wide { temperature: usize, pressure: Option<usize>, phase: Option<usize>, set: Option<usize> },
    /// As wide, and each row has the one or the other.
    InTurn { temperature: usize, pressure: usize },
    /// One row a reading.
    Long { channel: usize, value: usize, temperature: Vec<u8>, pressure: Option<Vec<u8>> },
}

/// A table, understood.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Plan {
    pub split: Split,
    /// Cells that a row must have.
    pub needed: usize,
    /// Cells that a row usually has.
    pub width: usize,
    pub time: TimePlan,
    /// Decimal mark.
    pub mark: u8,
    pub body: Body,
    pub temperature_said: Said,
    pub pressure_said: Said,
    /// The heading's lines as they stand in the file; empty where there is none.
    pub heading: Vec<Vec<u8>>,
    /// Units or half days hint at a place where the month is written first.
    pub american: bool,
}

/// What a line of the table holds.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Row {
    /// A reading of everything. Pressure is not-a-number in a record without pressure.
    Sample(Reading),
    /// One reading of several at this time: of the temperature, else of the pressure.
    Part(Stamp, bool, number::Number),
    /// A row whose time or readings cannot be used.
    Missing,
    /// A row of a channel that nobody asked for.
    Other,
    /// No row of the table.
    Words,
}

/// Readings at one time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Reading {
    pub at: Stamp,
    pub temperature: number::Number,
    pub pressure: Option<number::Number>,
}

impl TimePlan {
    /// The time that a row shows.
    pub fn read(
        &self,
        mark: u8,
        cell: impl Fn(usize) -> Option<Vec<u8>>,
        cells: &Cells,
        line: &[u8],
    ) -> Option<Stamp> {
        if let TimeForm::Counted(_) = self.form {
            // Whoever counts the rows puts the time in.
            return Some(Stamp { micros: 0, zone: 0 });
        }
        let raw = cells.get(line, self.column)?;
        match (self.form, self.clock) {
            (TimeForm::Dated(order), Some(clock)) => {
                let day = Scan::read(raw)?.day(order)?;
                let half = self.half_day.and_then(&cell);
                let time = clock_cell(cells.get(line, clock)?, half)?;
                Some(Stamp { micros: day + time.micros, zone: time.zone })
            }
            (TimeForm::Clock, _) => clock_cell(raw, self.half_day.and_then(&cell)),
            _ => self.read_alone(mark, raw),
        }
    }

    /// The time in a cell that needs no other.
    pub fn read_alone(&self, mark: u8, cell: &[u8]) -> Option<Stamp> {
        match self.form {
            TimeForm::Dated(order) => match iso(cell) {
                Some(stamp) if order == Order::Ymd => Some(stamp),
                _ => Scan::read(cell)?.dated(order),
            },
            TimeForm::Clock => clock_cell(cell, None),
            TimeForm::Elapsed => {
                Scan::read(cell)?.elapsed().map(|micros| Stamp { micros, zone: 0 })
            }
            TimeForm::Counted(_) => None,
            TimeForm::Number(_) | TimeForm::Epoch(_) | TimeForm::Serial => {
                self.of_number(number::parse(cell, mark)?.value)
            }
        }
    }

    /// The time that a number stands for; nothing where times are not written as numbers.
    pub fn of_number(&self, value: f64) -> Option<Stamp> {
        let micros = match self.form {
            TimeForm::Number(unit) | TimeForm::Epoch(unit) => value * unit,
            TimeForm::Serial => {
                // Day 0 of the spreadsheets is 1899-12-30, 25 569 days before 1970.
                let day = value - 25_569.0;
                // Ten decimals of a day are 9 µs: the nearest millisecond is what was meant.
                (day * DAY as f64 / 1_000.0).round() * 1_000.0
            }
            TimeForm::Dated(_) | TimeForm::Clock | TimeForm::Elapsed | TimeForm::Counted(_) => {
                return None;
            }
        };
        whole_micros(micros).map(|micros| Stamp { micros, zone: 0 })
    }

    /// The word of the contract.
    pub fn word(&self) -> &'static str {
        match self.form {
            TimeForm::Dated(Order::Ymd) => "iso",
            TimeForm::Dated(Order::Dmy) => "dmy",
            TimeForm::Dated(Order::Mdy) => "mdy",
            TimeForm::Clock => "clock",
            TimeForm::Elapsed | TimeForm::Number(_) => "elapsed",
            TimeForm::Epoch(_) => "epoch",
            TimeForm::Serial => "serial",
            TimeForm::Counted(_) => "counted",
        }
    }
}

/// A clock with AM or PM in the cell or in the next one.
fn clock_cell(cell: &[u8], half_day: Option<Vec<u8>>) -> Option<Stamp> {
    let scan = match half_day {
        Some(half) if !half.is_empty() => Scan::read(&[cell, b" ", &half[..]].concat())?,
        _ => Scan::read(cell)?,
    };
    let zone = scan.zone();
    Some(Stamp { micros: scan.clock()? - zone, zone })
}

/// Whole microseconds, unless the number is beyond any clock.
fn whole_micros(value: f64) -> Option<i64> {
    (value.abs() < 1e16).then(|| value.round() as i64)
}

/// A cell that says something: neither a number, garbled or not, nor a mark for a missing one.
fn is_word(cell: Option<&[u8]>) -> bool {
    let cell = cell.unwrap_or_default();
    kind(cell) == Kind::Text && !cell.iter().any(u8::is_ascii_digit)
}

impl Plan {
    /// Reads one line.
    pub fn row(&self, cells: &mut Cells, line: &[u8]) -> Row {
        cells.cut(&self.split, line, self.needed);
        if cells.len() < self.needed {
            return Row::Words;
        }
        let cells = &*cells;
        let owned = |i: usize| cells.get(line, i).map(<[u8]>::to_vec);
        let Some(at) = self.time.read(self.mark, owned, cells, line) else {
            return self.without_time(cells, line);
        };
        let value = |i: usize| cells.get(line, i).and_then(|cell| number::parse(cell, self.mark));
        match &self.body {
            Body::Wide { temperature, pressure, .. } => {
                let pressure_value = pressure.and_then(value);
                match (value(*temperature), pressure_value, pressure) {
                    (Some(temperature), found, None) | (Some(temperature), found @ Some(_), _) => {
                        Row::Sample(Reading { at, temperature, pressure: found })
                    }
                    _ if is_word(cells.get(line, *temperature))
                        || pressure.is_some_and(|p| is_word(cells.get(line, p))) =>
                    {
                        Row::Words
                    }
                    _ => Row::Missing,
                }
            }
            &Body::InTurn { temperature, pressure } => {
                match (value(temperature), value(pressure)) {
                    (Some(temperature), found @ Some(_)) => {
                        Row::Sample(Reading { at, temperature, pressure: found })
                    }
                    (Some(temperature), None) => Row::Part(at, true, temperature),
                    (None, Some(pressure)) => Row::Part(at, false, pressure),
                    (None, None)
                        if [temperature, pressure].iter().any(|i| is_word(cells.get(line, *i))) =>
                    {
                        Row::Words
                    }
                    (None, None) => Row::Missing,
                }
            }
            Body::Long { channel, value: column, temperature, pressure } => {
                let name = cells.get(line, *channel).unwrap_or_default();
                let is_temperature = name == temperature;
                if !is_temperature && Some(name) != pressure.as_deref() {
                    return Row::Other;
                }
                value(*column).map_or(Row::Missing, |v| Row::Part(at, is_temperature, v))
            }
        }
    }

    /// A row of numbers with a broken time is a row all the same; words are not.
    fn without_time(&self, cells: &Cells, line: &[u8]) -> Row {
        let Body::Wide { temperature, pressure: Some(pressure), .. } = self.body else {
            return Row::Words;
        };
        let number = |i: usize| {
            cells.get(line, i).is_some_and(|cell| number::parse(cell, self.mark).is_some())
        };
        if number(temperature) && number(pressure) { Row::Missing } else { Row::Words }
    }

    /// The cell with the phase's name.
    pub fn phase<'a>(&self, cells: &'a Cells, line: &'a [u8]) -> Option<&'a [u8]> {
        match self.body {
            Body::Wide { phase: Some(column), .. } => {
                cells.get(line, column).map(<[u8]>::trim_ascii)
            }
            _ => None,
        }
    }

    /// The set point in the row, in the temperature's unit.
    pub fn set_point(&self, cells: &Cells, line: &[u8]) -> Option<f64> {
        match self.body {
            Body::Wide { set: Some(column), .. } => {
                number::parse(cells.get(line, column)?, self.mark).map(|n| n.value)
            }
            _ => None,
        }
    }

    /// Does the table have pressures?
    pub fn has_pressure(&self) -> bool {
        match &self.body {
            Body::Wide { pressure, .. } => pressure.is_some(),
            Body::InTurn { .. } => true,
            Body::Long { pressure, .. } => pressure.is_some(),
        }
    }
}

impl Row {
    /// A row of a table without times, in its place.
    pub fn in_place(self, micros: i64) -> Self {
        match self {
            Self::Sample(reading) => {
                Self::Sample(Reading { at: Stamp { micros, zone: 0 }, ..reading })
            }
            other => other,
        }
    }

    /// Is it a row of the table, used or not?
    pub const fn is_of_table(&self) -> bool {
        !matches!(self, Self::Words)
    }
}

/// A step of this many seconds, in microseconds.
pub(super) const fn seconds(count: i64) -> i64 {
    count * SECOND
}
