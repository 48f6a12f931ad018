//! The short way through ordinary rows.
//!
//! A long record repeats itself: the same columns, plain numbers, and a time of which only the
//! seconds move. Such rows are read straight from the buffer, without being cut into cells first.
//! Whatever is not that plain is left to [`Plan::row`]; a property test holds the two equal.

use super::cells::Split;
use super::number::{Number, plain};
use super::parting::{MOST_ROWS, PARTING_GAP, Raw, Rows};
use super::plan::{Body, Plan, Reading};
use super::source::position;
use super::stamp::{SECOND, Stamp};
use super::stencil::{Drawing, LOOKED_AT, Stencil};

/// The longest row that is read the short way, and less than the longest line that is kept whole.
const LONGEST_ROW: usize = 4_096;

/// Times in a row that could not be remembered, after which no more is tried.
const PATIENCE: u8 = 8;

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

/// Written times, of which mostly only the seconds move.
#[derive(Debug)]
struct Clock {
    separator: u8,
    stem: Stem,
    /// The time of the stem at second 0.
    minute: Stamp,
    /// Times since the last one that could be remembered.
    failed: u8,
}

/// The last time read the long way, without the two digits of its seconds.
#[derive(Debug, Default)]
struct Stem {
    length: usize,
    /// Its bytes, and which of them count, in words.
    words: [u64; STEM_WORDS],
    mask: [u64; STEM_WORDS],
}

/// Words of the longest stem: a day and a clock with hours and minutes.
const STEM_WORDS: usize = 3;

impl Stem {
    /// Nothing where it is too long, or empty.
    fn of(bytes: &[u8]) -> Option<Self> {
        let (mut text, mut mask) = ([0; STEM_WORDS * 8], [0; STEM_WORDS * 8]);
        text.get_mut(..bytes.len())?.copy_from_slice(bytes);
        mask[..bytes.len()].fill(0xFF);
        let words = |bytes: [u8; STEM_WORDS * 8]| {
            let mut words = [0; STEM_WORDS];
            for (word, eight) in words.iter_mut().zip(bytes.as_chunks().0) {
                *word = u64::from_le_bytes(*eight);
            }
            words
        };
        let stem = Self { length: bytes.len(), words: words(text), mask: words(mask) };
        (!bytes.is_empty()).then_some(stem)
    }

    /// Does it stand at the front of `cell`? Near the end of what was read in: perhaps, and no.
    #[inline]
    fn begins(&self, cell: &[u8]) -> bool {
        let Some(front) = cell.first_chunk::<{ STEM_WORDS * 8 }>() else {
            return false;
        };
        let (words, _) = front.as_chunks::<8>();
        let mut other = 0;
        for (word, bytes) in words.iter().enumerate() {
            other |= (u64::from_le_bytes(*bytes) ^ self.words[word]) & self.mask[word];
        }
        other == 0 && self.length > 0
    }
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
            clock: Clock {
                separator,
                stem: Stem::default(),
                minute: Stamp { micros: 0, zone: 0 },
                failed: 0,
            },
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
                    drawing.minute(self.clock.stem.length)?;
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

impl Clock {
    /// The time at the front of `cell`, and its length.
    #[inline(always)]
    fn time(&mut self, plan: &Plan, cell: &[u8]) -> Option<(Stamp, usize)> {
        if !self.stem.begins(cell) {
            self.remember(plan, cell)?;
        }
        let length = self.stem.length;
        let [ten, one, ..] = *cell.get(length..)? else {
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
    #[cold]
    fn remember(&mut self, plan: &Plan, cell: &[u8]) -> Option<()> {
        if self.failed >= PATIENCE {
            return None;
        }
        self.failed += 1;
        self.stem = Stem::default();
        let length = cell_length(cell, self.separator)?.checked_sub(2)?;
        let stem = Stem::of(&cell[..length])?;
        let mut time = [0; STEM_WORDS * 8 + 2];
        let time = &mut time[..length + 2];
        time[..length].copy_from_slice(&cell[..length]);
        let mut at = |second: &[u8; 2]| {
            time[length..].copy_from_slice(second);
            plan.time.read_alone(plan.mark, time)
        };
        let (first, last) = (at(b"00")?, at(b"59")?);
        if last.micros - first.micros != 59 * SECOND || last.zone != first.zone {
            return None;
        }
        self.stem = stem;
        self.minute = first;
        self.failed = 0;
        Some(())
    }
}

/// Does a parting gap lie between the two times?
fn is_far(before: i64, now: i64) -> bool {
    (now - before).abs() >= PARTING_GAP
}

/// Bytes up to the next separator or line end; nothing where there is a quote.
fn cell_length(cell: &[u8], separator: u8) -> Option<usize> {
    let ends = |b: &u8| *b == separator || matches!(*b, b'\r' | b'\n' | b'"');
    let length = cell.iter().take(LONGEST_ROW).position(ends)?;
    (cell[length] != b'"').then_some(length)
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

    /// Takes all lines as a file is read: the short way as far as it goes, then one the long way.
    /// Gives how many went the short one.
    fn as_a_file(form: TimeForm, lines: &[String]) -> usize {
        let plan = plan(form);
        let mut quick = Quick::of(&plan).unwrap();
        let text: String = lines.iter().map(|line| format!("{line}\n")).collect();
        let (mut raw, mut wanted) = (Raw::default(), Raw::default());
        let (mut bytes, mut next, mut short) = (0, 0, 0);
        let mut cells = Cells::default();
        let (mut cycles, mut wanted_cycles) = (Vec::new(), Vec::new());
        while next < lines.len() {
            if raw.len() > 0 {
                let taken = quick.rows(&plan, &text.as_bytes()[bytes..], next as u32, &mut raw);
                cycles.extend(taken.earlier);
                for line in &lines[next..next + taken.rows as usize] {
                    let line = line.strip_suffix('\r').unwrap_or(line);
                    let Row::Sample(reading) = plan.row(&mut cells, line.as_bytes()) else {
                        panic!("{line}");
                    };
                    next += 1;
                    wanted_cycles.extend(wanted.push(reading, next as u32));
                }
                bytes += taken.bytes;
                short += taken.rows as usize;
            }
            if let Some(line) = lines.get(next) {
                bytes += line.len() + 1;
                next += 1;
                let line = line.strip_suffix('\r').unwrap_or(line);
                if let Row::Sample(reading) = plan.row(&mut cells, line.as_bytes()) {
                    cycles.extend(raw.push(reading, next as u32));
                    wanted_cycles.extend(wanted.push(reading, next as u32));
                }
            }
        }
        cycles.push(raw);
        wanted_cycles.push(wanted);
        let all = |cycles: &[Raw]| -> Vec<_> {
            let columns = |raw: &Raw| {
                let numbers = (raw.temperature.clone(), raw.pressure.clone(), raw.decimals);
                (raw.at.clone(), raw.line.clone(), numbers, raw.zone, raw.ends_under_way())
            };
            cycles.iter().map(columns).collect()
        };
        assert_eq!(all(&cycles), all(&wanted_cycles), "{text}");
        short
    }

    #[test]
    fn rows_are_taken_in_blocks() {
        let lines: Vec<String> = (0..400)
            .map(|s| {
                let (minute, second) = (s / 60, s % 60);
                let pressure = 90 + s % 30;
                format!("2025-03-04 23:{minute:02}:{second:02};{pressure}.5;7;{}.25", 7 + s / 9)
            })
            .collect();
        assert_eq!(as_a_file(TimeForm::Dated(Order::Ymd), &lines), 399);
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
            as_a_file(form, &lines);
        }

        /// Rows much alike, some of them spoilt, so that stencils fit and do not.
        #[test]
        fn alike_and_not(
            rows in proptest::collection::vec(
                ("10:(0[01]|59):[0-6][0-9]", "(9|10)[0-9]\\.[05]|[0-9]", "[0-9]{1,2}\\.[0-9]", "[-x,;\r]?"),
                1..60,
            ),
        ) {
            let lines: Vec<String> =
                rows.iter().map(|(time, p, t, end)| format!("{time};{p};;{t}{end}")).collect();
            as_a_file(TimeForm::Clock, &lines);
        }
    }
}
