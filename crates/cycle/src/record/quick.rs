//! The short way through ordinary rows.
//!
//! A long record repeats itself: the same columns, plain numbers, and a time of which only the
//! seconds move. Such rows are read straight from the buffer, without being cut into cells first.
//! Whatever is not that plain is left to [`Plan::row`]; a property test holds the two equal.

use super::cells::Split;
use super::clock::{Clock, cell_length};
use super::number::{Number, plain};
use super::parting::{MOST_ROWS, PARTING_GAP, Raw, Rows};
use super::plan::{Body, Plan, Reading};
use super::source::position;
use super::stamp::{SECOND, Stamp};
use super::stencil::{Drawing, LOOKED_AT, Stencil};

/// The longest row that is read the short way, and less than the longest line that is kept whole.
pub(super) const LONGEST_ROW: usize = 4_096;

/// Rows that are handed over together.
const BLOCK: usize = 128;

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
    has_pressure: bool,
    clock: Clock,
    /// The shape of the last row, where it had a written time and was short; and its minute.
    stencil: Option<(Stencil, Stamp)>,
    block: Block,
}

/// Rows on their way, column by column.
#[derive(Debug)]
struct Block {
    at: [i64; BLOCK],
    temperature: [f64; BLOCK],
    pressure: [f64; BLOCK],
    /// Most digits behind the decimal mark of any row.
    decimals: (u8, u8),
    /// Zone of the last row that had a written time.
    zone: i64,
}

impl Block {
    fn rows(&self, rows: usize, has_pressure: bool) -> Rows<'_> {
        Rows {
            at: &self.at[..rows],
            temperature: &self.temperature[..rows],
            pressure: if has_pressure { &self.pressure[..rows] } else { &[] },
            decimals: self.decimals,
        }
    }
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
            has_pressure: pressure.is_some(),
            clock: Clock::new(separator),
            stencil: None,
            block: Block {
                at: [0; BLOCK],
                temperature: [0.0; BLOCK],
                pressure: [0.0; BLOCK],
                decimals: (0, 0),
                zone: 0,
            },
        })
    }

    /// Takes rows from the front of `rest` until one is not plain, or begins a new cycle. `line` is
    /// the number of the line before them.
    pub fn rows(&mut self, plan: &Plan, rest: &[u8], line: u32, raw: &mut Raw) -> Taken {
        let mut taken = Taken { bytes: 0, rows: 0, earlier: None };
        while raw.len() < MOST_ROWS {
            if let Some(before) = raw.goes_on_from() {
                let room = BLOCK.min(MOST_ROWS - raw.len());
                let (bytes, rows) = self.fill(plan, &rest[taken.bytes..], (before, room));
                let next = line.saturating_add(taken.rows + 1);
                raw.add_all(&self.block.rows(rows, self.has_pressure), next);
                taken.bytes += bytes;
                taken.rows += rows as u32;
                if rows == room {
                    continue;
                }
            }
            let Some((reading, length)) = self.row(plan, &rest[taken.bytes..]) else {
                break;
            };
            taken.bytes += length;
            taken.rows += 1;
            if let Some(from) = raw.add(&reading, line.saturating_add(taken.rows)) {
                taken.earlier = Some(raw.split(from));
                break;
            }
        }
        taken
    }

    /// Fills the block with at most `room` rows, until one is not plain or lies a parting gap behind
    /// the one before. Gives bytes and rows.
    fn fill(
        &mut self,
        plan: &Plan,
        rest: &[u8],
        (mut before, room): (i64, usize),
    ) -> (usize, usize) {
        let (mut bytes, mut place) = (0, 0);
        self.block.decimals = (0, 0);
        while place < room {
            let alike = self.fill_alike(&rest[bytes..], (place, room));
            if let Some(last) = alike.0.checked_sub(1) {
                // Rows of one minute: only the first of them may lie far behind the one before.
                if is_far(before, self.block.at[place]) {
                    return (bytes, place);
                }
                before = self.block.at[place + last];
                place += alike.0;
                bytes += alike.1;
                continue;
            }
            let decimals = self.block.decimals;
            let length = self.row_into(plan, &rest[bytes..], place);
            let now = self.block.at[place];
            let Some(length) = length.filter(|_| !is_far(before, now)) else {
                self.block.decimals = decimals;
                return (bytes, place);
            };
            self.renew_stencil(&rest[bytes..], length);
            before = now;
            place += 1;
            bytes += length;
        }
        (bytes, room)
    }

    /// Fills the block with the rows that have the shape of the last one and are of its minute. Gives
    /// how many, and their bytes.
    fn fill_alike(&mut self, rest: &[u8], (from, room): (usize, usize)) -> (usize, usize) {
        let Some((stencil, minute)) = &self.stencil else {
            return (0, 0);
        };
        let block = &mut self.block;
        let columns = block.at[from..room].iter_mut().zip(&mut block.temperature[from..room]);
        let columns = columns.zip(&mut block.pressure[from..room]);
        let (mut left, mut rows) = (rest, 0);
        for ((at, temperature), pressure) in columns {
            let Some(row) = left.first_chunk::<LOOKED_AT>().filter(|row| stencil.fits(row)) else {
                break;
            };
            *at = minute.micros + stencil.second(row) * SECOND;
            *temperature = stencil.temperature.of(row);
            *pressure = stencil.pressure.of(row);
            left = &left[stencil.length.min(LOOKED_AT)..];
            rows += 1;
        }
        if rows > 0 {
            let decimals = &mut block.decimals;
            decimals.0 = decimals.0.max(stencil.temperature.decimals);
            decimals.1 = decimals.1.max(stencil.pressure.decimals);
            block.zone = minute.zone;
        }
        (rows, rest.len() - left.len())
    }

    /// Makes the stencil fit a row that was read just now: mostly only its minute is another.
    fn renew_stencil(&mut self, rest: &[u8], length: usize) {
        if let (Some((stencil, minute)), Some(row)) = (&mut self.stencil, rest.first_chunk()) {
            stencil.set_minute(row);
            if stencil.fits(row) && stencil.length == length {
                *minute = self.clock.minute;
                return;
            }
        }
        let stencil = self.draw(&rest[..length]);
        self.stencil = stencil.map(|stencil| (stencil, self.clock.minute));
    }

    /// The stencil of a row that was read just now.
    fn draw(&self, row: &[u8]) -> Option<Stencil> {
        let mut drawing = Drawing::of(row)?;
        for (column, role) in self.roles.iter().enumerate() {
            drawing.same(usize::from(column > 0))?;
            match role {
                Role::Clock => {
                    drawing.minute(self.clock.length())?;
                    drawing.seconds()?;
                }
                Role::Temperature => drawing.temperature(self.mark)?,
                Role::Pressure => drawing.pressure(self.mark)?,
                Role::Count | Role::Other => return None,
            }
        }
        drawing.same(if row.ends_with(b"\r\n") { 2 } else { 1 })?;
        drawing.done()
    }

    /// The row at the front of `rest`, and its length with the line end.
    fn row(&mut self, plan: &Plan, rest: &[u8]) -> Option<(Reading, usize)> {
        self.block.decimals = (0, 0);
        let length = self.row_into(plan, rest, 0)?;
        let block = &self.block;
        let number = |value, decimals| Number { value, decimals };
        let reading = Reading {
            at: Stamp { micros: block.at[0], zone: block.zone },
            temperature: number(block.temperature[0], block.decimals.0),
            pressure: self.has_pressure.then(|| number(block.pressure[0], block.decimals.1)),
        };
        Some((reading, length))
    }

    /// Puts the row at the front of `rest` into the block, and gives its length with the line end.
    /// Nothing where it is not plain, or not closed by a line feed within `rest`.
    #[inline(always)]
    fn row_into(&mut self, plan: &Plan, rest: &[u8], place: usize) -> Option<usize> {
        // The remainder tells the compiler that it lies in the block.
        let place = place % BLOCK;
        let (separator, block) = (self.separator, &mut self.block);
        let mut left = rest;
        for (column, role) in self.roles.iter().enumerate() {
            if column > 0 {
                left = left.split_first().filter(|(b, _)| **b == separator)?.1;
            }
            let length = match role {
                Role::Clock => {
                    let (time, length) = self.clock.time(plan, left)?;
                    (block.at[place], block.zone) = (time.micros, time.zone);
                    length
                }
                Role::Other => cell_length(left, separator)?,
                Role::Count | Role::Temperature | Role::Pressure => {
                    let (number, length) = plain(left, self.mark)?;
                    let decimals = &mut block.decimals;
                    match role {
                        Role::Count => {
                            let time = plan.time.of_number(number.value)?;
                            (block.at[place], block.zone) = (time.micros, time.zone);
                        }
                        Role::Temperature => {
                            block.temperature[place] = number.value;
                            decimals.0 = decimals.0.max(number.decimals);
                        }
                        _ => {
                            block.pressure[place] = number.value;
                            decimals.1 = decimals.1.max(number.decimals);
                        }
                    }
                    length
                }
            };
            left = left.get(length..)?;
        }
        let length = rest.len() - left.len() + to_line_end(left, separator)?;
        (length <= LONGEST_ROW).then_some(length)
    }
}

/// Does a parting gap lie between the two times?
fn is_far(before: i64, now: i64) -> bool {
    (now - before).abs() >= PARTING_GAP
}

/// Bytes to the next row, over cells that nobody needs.
#[inline]
fn to_line_end(rest: &[u8], separator: u8) -> Option<usize> {
    match rest {
        [b'\n', ..] => Some(1),
        [b'\r', b'\n', ..] => Some(2),
        [b, ..] if *b == separator => {
            let rest = &rest[..rest.len().min(LONGEST_ROW)];
            let end = position(rest, b'\n')?;
            (!rest[..end].contains(&b'"')).then_some(end + 1)
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests;
