//! The lines of a file, made into one cycle after the other.

use super::cells::Cells;
use super::decide::Units;
use super::halves::{Half, Halves, Made};
use super::names::{Channel, Name};
use super::notes::Asked;
use super::number::Number;
use super::parting::{FEW_ROWS, MOST_ROWS, Raw};
use super::plan::{Plan, Reading, Row, TimeForm};
use super::quick::Quick;
use super::roles;
use super::settle::{Around, settle};
use super::sniff::{Lines, Table};
use super::source::{Source, text};
use super::stamp::Order;
use super::{CycleRecord, Known, Unreadable};
use std::collections::VecDeque;
use std::io::Read;

/// Bytes in which the table must begin.
const WINDOW: usize = 256 * 1024;

/// Lines of words kept between two rows.
const MOST_NOTES: usize = 300;

/// Characters kept of one such line.
const LONGEST_NOTE: usize = 200;

/// The cycles of a file, one at a time. Made by [`super::cycles`].
#[derive(Debug)]
pub struct Cycles<'k, R> {
    source: Source<R>,
    known: &'k Known,
    cells: Cells,
    plan: Option<Plan>,
    quick: Option<Quick>,
    raw: Raw,
    /// Readings on their way to become samples, in records with one row a reading.
    halves: Halves,
    between: Between,
    /// Time of the next row in a table without times, microseconds.
    counted: i64,
    /// Rows since the last blank line: some write one after every row.
    since_blank: usize,
    asked: Asked,
    units: Option<Units>,
    ready: VecDeque<CycleRecord>,
    index: usize,
    ended: bool,
}

/// Lines since the last row.
#[derive(Debug, Default, PartialEq)]
struct Between {
    notes: Vec<String>,
    /// Notes in front of the first blank line, and in front of the last heading.
    before_blank: Option<usize>,
    before_heading: Option<usize>,
}

impl<R: Read> Iterator for Cycles<'_, R> {
    type Item = Result<CycleRecord, Unreadable>;

    fn next(&mut self) -> Option<Self::Item> {
        while self.ready.is_empty() && !self.ended {
            if let Err(error) = self.step() {
                self.ended = true;
                return Some(Err(error));
            }
        }
        self.ready.pop_front().map(Ok)
    }
}

impl<'k, R: Read> Cycles<'k, R> {
    pub(super) fn new(bytes: R, known: &'k Known, buffer: Vec<u8>) -> Result<Self, Unreadable> {
        Ok(Self {
            source: Source::open(bytes, buffer)?,
            known,
            cells: Cells::default(),
            plan: None,
            quick: None,
            raw: Raw::default(),
            halves: Halves::default(),
            between: Between::default(),
            counted: 0,
            since_blank: 0,
            asked: Asked::default(),
            units: None,
            ready: VecDeque::new(),
            index: 0,
            ended: false,
        })
    }

    /// The buffer, for reading the next file with [`super::cycles_through`].
    #[must_use]
    pub fn into_buffer(self) -> Vec<u8> {
        self.source.into_buffer()
    }

    /// Takes one line, or decides how to read what comes.
    fn step(&mut self) -> Result<(), Unreadable> {
        self.take_plain_rows();
        if !self.ready.is_empty() {
            return Ok(());
        }
        let Some(plan) = &self.plan else {
            return self.find_table();
        };
        let Some(line) = self.source.next_line()? else {
            return self.finish_file();
        };
        let (no, closed) = (line.no, line.closed);
        let mut row = plan.row(&mut self.cells, line.bytes);
        if let (TimeForm::Counted(step), true) = (plan.time.form, row.is_of_table()) {
            row = row.in_place(self.counted);
            self.counted = self.counted.saturating_add(step);
        }
        if !closed && is_cut(plan, &mut self.cells, line.bytes, &row, &self.raw) {
            self.raw.cut = true;
            return Ok(());
        }
        match row {
            Row::Sample(reading) => {
                let set = plan.set_point(&self.cells, line.bytes);
                let phase = plan.phase(&self.cells, line.bytes).map(|cell| text(cell).into_owned());
                self.take(reading, no)?;
                if let Some(set) = set {
                    self.raw.note_set(set);
                }
                if let Some(phase) = phase {
                    self.note_phase(phase);
                }
                Ok(())
            }
            Row::Part(at, true, temperature) if !plan.has_pressure() => {
                self.take(Reading { at, temperature, pressure: None }, no)
            }
            Row::Part(at, is_temperature, number) => {
                self.halves.take(Half { at, is_temperature, number, line: no });
                self.take_made()
            }
            Row::Missing => {
                self.raw.miss(no);
                Ok(())
            }
            Row::Other => Ok(()),
            Row::Words => {
                let words = text(line.bytes).into_owned();
                let repeated = plan.heading.iter().any(|h| h == line.bytes);
                self.take_words(&words, repeated)
            }
        }
    }

    /// Takes rows the short way, from the second one of a cycle until one is out of the ordinary.
    fn take_plain_rows(&mut self) {
        let (Some(plan), Some(quick)) = (&self.plan, &mut self.quick) else {
            return;
        };
        if self.raw.len() == 0 || self.between != Between::default() {
            return;
        }
        let (rest, line) = self.source.rest();
        let taken = quick.rows(plan, rest, line, &mut self.raw);
        self.source.skip(taken.bytes, taken.rows);
        self.since_blank += taken.rows as usize;
        if let Some(earlier) = taken.earlier {
            self.settle(earlier);
        }
    }

    /// Looks at the coming lines and plans how to read them.
    fn find_table(&mut self) -> Result<(), Unreadable> {
        let first = self.source.coming_line();
        let line_end = self.source.line_end();
        let (window, complete) = self.source.window(WINDOW)?;
        let lines = Lines { window, line_end, complete };
        let table = Table::find(lines).ok_or_else(|| {
            Unreadable::new(
                Some(first),
                "no table of times and temperatures was found",
                "export the record as a table with time, temperature and pressure, one row a reading",
            )
        });
        let plan = table.and_then(|table| roles::plan(&table, self.known));
        match plan {
            Ok(plan) => {
                self.quick = if self.source.is_reshaped() { None } else { Quick::of(&plan) };
                self.plan = Some(plan);
                Ok(())
            }
            // Words behind the last cycle are not a table, and need not be one.
            Err(_) if self.index > 0 => {
                self.ended = true;
                Ok(())
            }
            Err(error) => Err(error),
        }
    }

    /// A row with all its readings.
    fn take(&mut self, reading: Reading, line: u32) -> Result<(), Unreadable> {
        let heading = self.between.before_heading.is_some();
        let blank = self.between.before_blank.is_some();
        if self.raw.len() > 0
            && (heading || blank && self.since_blank >= FEW_ROWS)
            && self.raw.parts_before(&reading, heading || blank && self.is_counted())
        {
            self.finish_cycle();
        }
        self.since_blank = if blank { 1 } else { self.since_blank + 1 };
        self.place_notes();
        if self.raw.len() >= MOST_ROWS {
            return Err(Unreadable::new(
                Some(line),
                format!("more than {MOST_ROWS} rows without the end of a cycle"),
                "split the file where one cycle ends and the next begins",
            ));
        }
        if let Some(earlier) = self.raw.push(reading, line) {
            self.settle(earlier);
        }
        Ok(())
    }

    /// Without times only an empty line in front of the open chamber can part two cycles.
    fn is_counted(&self) -> bool {
        self.plan.as_ref().is_some_and(|plan| matches!(plan.time.form, TimeForm::Counted(_)))
    }

    /// Takes what was made of rows with one reading each.
    fn take_made(&mut self) -> Result<(), Unreadable> {
        while let Some(made) = self.halves.next() {
            match made {
                Made::Sample(reading, line) => self.take(reading, line)?,
                Made::Alone(line) => self.raw.miss(line),
            }
        }
        Ok(())
    }

    fn note_phase(&mut self, phase: String) {
        let row = self.raw.len().saturating_sub(1);
        let same = self.raw.words.last().is_some_and(|(_, word)| *word == phase);
        if !phase.is_empty() && !same && self.raw.words.len() < MOST_NOTES {
            self.raw.words.push((row, phase));
        }
    }

    /// A line that is no row.
    fn take_words(&mut self, words: &str, repeated_heading: bool) -> Result<(), Unreadable> {
        let between = &mut self.between;
        let notes = between.notes.len();
        if words.trim().is_empty() {
            between.before_blank.get_or_insert(notes);
        } else if repeated_heading {
            between.before_heading = Some(notes);
        } else if self.raw.len() > 0 && is_heading(words) {
            // A table of another kind follows.
            self.halves.finish();
            self.take_made()?;
            self.finish_cycle();
            self.plan = None;
            self.quick = None;
            self.units = None;
            self.source.back();
        } else if notes < MOST_NOTES {
            between.notes.push(words.chars().take(LONGEST_NOTE).collect());
        }
        Ok(())
    }

    /// The notes before a row: the preamble of a new cycle, or words of what happens in it.
    fn place_notes(&mut self) {
        if self.between.notes.is_empty() {
            self.between = Between::default();
            return;
        }
        let between = std::mem::take(&mut self.between);
        let mut notes = between.notes;
        let happening = if self.raw.len() == 0 {
            let order = self.note_order();
            let altitude_m = self.asked.altitude_m;
            self.asked = Asked::read(notes.iter().map(String::as_str), order);
            self.asked.altitude_m = self.asked.altitude_m.or(altitude_m);
            let happening = notes.split_off(between.before_heading.unwrap_or(notes.len()));
            // Of lines between two cycles those before a blank one belong to the earlier.
            let own = if self.index == 0 { 0 } else { between.before_blank.unwrap_or(notes.len()) };
            self.raw.before = notes.split_off(own.min(notes.len()));
            happening
        } else {
            notes
        };
        let row = self.raw.len();
        for line in happening {
            let word = line.trim_matches(|c: char| !c.is_alphanumeric()).to_owned();
            if word.chars().any(char::is_alphabetic) && self.raw.words.len() < MOST_NOTES {
                self.raw.words.push((row, word));
            }
        }
    }

    /// Order of day and month in the notes: that of the rows, else of the place.
    fn note_order(&self) -> Order {
        let american = self.plan.as_ref().is_some_and(|plan| plan.american);
        match (self.plan.as_ref().map(|plan| plan.time.form), self.known.day_first) {
            (Some(TimeForm::Dated(order @ (Order::Dmy | Order::Mdy))), _) => order,
            (_, Some(false)) => Order::Mdy,
            (_, Some(true)) => Order::Dmy,
            (_, None) if american => Order::Mdy,
            _ => Order::Dmy,
        }
    }

    fn finish_cycle(&mut self) {
        let notes = &self.between.notes;
        let own = self.between.before_blank.filter(|at| *at > 0).unwrap_or(notes.len());
        self.raw.behind = notes[..own.min(notes.len())].to_vec();
        let raw = std::mem::take(&mut self.raw);
        self.settle(raw);
    }

    fn settle(&mut self, raw: Raw) {
        let Some(plan) = &self.plan else {
            return;
        };
        if raw.len() == 0 {
            return;
        }
        let around = Around {
            plan,
            known: self.known,
            asked: &self.asked,
            encoding: self.source.encoding(),
            index: self.index,
            earlier: self.units.as_ref(),
        };
        let (record, units) = settle(raw, &around);
        self.index += 1;
        self.units = Some(units);
        self.ready.push_back(record);
    }

    fn finish_file(&mut self) -> Result<(), Unreadable> {
        self.ended = true;
        self.halves.finish();
        self.take_made()?;
        self.raw.behind = std::mem::take(&mut self.between.notes);
        let raw = std::mem::take(&mut self.raw);
        self.settle(raw);
        if self.index == 0 {
            return Err(Unreadable::new(
                None,
                "no row has both a time and a temperature",
                "export the record as a table with time, temperature and pressure",
            ));
        }
        Ok(())
    }
}

/// A line of words that names columns of at least two kinds. Numbers stand in no heading.
fn is_heading(words: &str) -> bool {
    let mut found = Vec::new();
    let cells: Vec<&str> = if words.contains(['\t', ';', ',', '|']) {
        words.split(['\t', ';', ',', '|']).collect()
    } else {
        words.split("  ").collect()
    };
    for cell in cells {
        let name = Name::read(cell);
        let number = |word: &String| word.bytes().all(|b| b.is_ascii_digit());
        let known =
            matches!(name.channel, Channel::Time | Channel::Temperature | Channel::Pressure)
                && !name.words.iter().any(number);
        if known && !found.contains(&name.channel) && name.words.len() <= 5 {
            found.push(name.channel);
        }
    }
    found.len() >= 2
}

/// Was the last line, which no line end closes, cut short?
fn is_cut(plan: &Plan, cells: &mut Cells, line: &[u8], row: &Row, raw: &Raw) -> bool {
    let begins_like_a_row =
        line.trim_ascii_start().first().is_some_and(|b| b.is_ascii_digit() || *b == b'{');
    match row {
        Row::Words | Row::Missing => begins_like_a_row,
        Row::Other | Row::Part(..) => false,
        Row::Sample(reading) => {
            cells.cut(&plan.split, line, usize::MAX);
            let short = |number: Number, decimals: u8, before: Option<&f64>| {
                number.decimals < decimals
                    || decimals == 0
                        && before
                            .is_some_and(|b| b.abs() >= 10.0 && number.value.abs() * 5.0 < b.abs())
            };
            cells.len() < plan.width
                || short(reading.temperature, raw.decimals.0, raw.temperature.last())
                || reading.pressure.is_some_and(|p| short(p, raw.decimals.1, raw.pressure.last()))
        }
    }
}
