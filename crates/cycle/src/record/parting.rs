//! Rows gathered into cycles: where one ends and the next begins.

use super::plan::{Reading, seconds};
use crate::extent::extent;

/// A cycle with more rows than this is no cycle.
pub(super) const MOST_ROWS: usize = 500_000;

/// Rows for which there is room from the start: an hour at a row a second.
const USUAL_ROWS: usize = 3_600;

/// Below this many rows a blank line parts nothing: some write one after every row.
pub(super) const FEW_ROWS: usize = 10;

/// A gap that may part two cycles.
pub(super) const PARTING_GAP: i64 = seconds(600);

/// Rows that follow each other line by line.
pub(super) struct Rows<'a> {
    /// Microseconds.
    pub at: &'a [i64],
    pub temperature: &'a [f64],
    /// As long as the others, or empty in a record without pressure.
    pub pressure: &'a [f64],
    /// Most digits behind the decimal mark.
    pub decimals: (u8, u8),
}

/// Rows of one cycle in file order, in the file's own units.
#[derive(Debug, Clone, Default)]
pub(super) struct Raw {
    /// Microseconds.
    pub at: Vec<i64>,
    pub temperature: Vec<f64>,
    /// As long as the others, or empty in a record without pressure.
    pub pressure: Vec<f64>,
    pub line: Vec<u32>,
    /// Zone of the first row, microseconds.
    pub zone: i64,
    /// Most digits behind the decimal mark.
    pub decimals: (u8, u8),
    /// Rows whose time or readings could not be used, and the first and last line of them.
    pub missing: usize,
    pub missing_lines: Option<(u32, u32)>,
    /// Words between the rows, each with the position of the row that follows.
    pub words: Vec<(usize, String)>,
    /// Set points of a column of their own: lowest and highest.
    pub set: Option<(f64, f64)>,
    /// Lines before the rows.
    pub before: Vec<String>,
    /// Lines behind them.
    pub behind: Vec<String>,
    /// The file ends inside a line.
    pub cut: bool,
    swing: Swing,
    later_swing: Option<(usize, Swing)>,
}

/// How far the chamber has been from where it stood at the start.
#[derive(Debug, Clone, Copy)]
struct Swing {
    pressure_start: f64,
    /// Least and most so far.
    pressure: (f64, f64),
    temperature: (f64, f64),
}

impl Default for Swing {
    fn default() -> Self {
        let nothing = (f64::INFINITY, f64::NEG_INFINITY);
        Self { pressure_start: f64::NAN, pressure: nothing, temperature: nothing }
    }
}

impl Swing {
    fn take(&mut self, reading: &Reading) {
        let pressure = reading.pressure.map_or(0.0, |p| p.value);
        self.take_all(&[reading.temperature.value], &[pressure]);
    }

    /// Rows at once; of a record without pressure the second column is empty.
    fn take_all(&mut self, temperature: &[f64], pressure: &[f64]) {
        if self.pressure_start.is_nan() {
            self.pressure_start = pressure.first().copied().unwrap_or(0.0);
        }
        let wider =
            |known: (f64, f64), (least, most): (f64, f64)| (known.0.min(least), known.1.max(most));
        self.temperature = wider(self.temperature, extent(temperature));
        self.pressure = wider(self.pressure, extent(pressure));
    }

    /// The farthest that the pressure was from where it began.
    fn pressure_far(&self) -> f64 {
        let (least, most) = self.pressure;
        (most - self.pressure_start).max(self.pressure_start - least).max(0.0)
    }

    /// Has the chamber been under steam or vacuum? Without pressure: has it been hot?
    fn has_swung(&self, has_pressure: bool) -> bool {
        if has_pressure {
            let start = self.pressure_start.abs();
            let far = self.pressure_far();
            far > 0.3 * start && far > 0.15
        } else {
            self.temperature.1 - self.temperature.0 > 30.0
        }
    }

    /// Is it back where it was?
    fn is_back(&self, reading: &Reading) -> bool {
        match reading.pressure {
            Some(p) => (p.value - self.pressure_start).abs() <= 0.1 * self.pressure_far(),
            None => reading.temperature.value < self.temperature.1 - 15.0,
        }
    }
}

impl Raw {
    /// Rows gathered.
    pub fn len(&self) -> usize {
        self.at.len()
    }

    fn last(&self) -> Option<Reading> {
        let i = self.at.len().checked_sub(1)?;
        let number = |value| super::number::Number { value, decimals: 0 };
        Some(Reading {
            at: super::stamp::Stamp { micros: self.at[i], zone: self.zone },
            temperature: number(self.temperature[i]),
            pressure: self.pressure.get(i).copied().map(number),
        })
    }

    /// Does a blank line, or a repeated heading, before this row begin a new cycle? Not where the
    /// time runs on by the usual step: that is a new page. A heading is let begin a cycle even so
    /// where the chamber stands open.
    pub fn parts_before(&self, reading: &Reading, heading: bool) -> bool {
        let Some(last) = self.last() else {
            return false;
        };
        let step = reading.at.micros - last.at.micros;
        let usual = match self.at.len() {
            0 | 1 => seconds(10),
            n => (self.at[n - 1] - self.at[n - 2]).max(1),
        };
        let runs_on = step > 0 && 2 * step <= 3 * usual;
        let busy = self.swing.has_swung(reading.pressure.is_some())
            && !(self.swing.is_back(reading) && self.swing.is_back(&last));
        !runs_on || (heading && !busy)
    }

    /// Takes a row. Gives the cycle before it once a gap turns out to have parted two.
    pub fn push(&mut self, reading: Reading, line: u32) -> Option<Self> {
        self.add(&reading, line).map(|from| self.split(from))
    }

    /// Takes a row. Gives the place of the first row of a new cycle, at which to split.
    #[inline]
    pub fn add(&mut self, reading: &Reading, line: u32) -> Option<usize> {
        match self.at.last() {
            Some(before) if (reading.at.micros - before).abs() >= PARTING_GAP => {
                self.look_at_gap(reading);
            }
            Some(_) => {}
            None => {
                self.zone = reading.at.zone;
                self.reserve(reading.pressure.is_some());
            }
        }
        self.at.push(reading.at.micros);
        self.temperature.push(reading.temperature.value);
        self.line.push(line);
        self.decimals.0 = self.decimals.0.max(reading.temperature.decimals);
        if let Some(pressure) = reading.pressure {
            self.pressure.push(pressure.value);
            self.decimals.1 = self.decimals.1.max(pressure.decimals);
        }
        self.swing.take(reading);
        let (from, later) = self.later_swing.as_mut()?;
        later.take(reading);
        // Only a second cycle makes the gap one between cycles; else it lies in the cooling.
        later.has_swung(reading.pressure.is_some()).then_some(*from)
    }

    /// The time of the last row, where the next ones may be taken in one go: not while it is open
    /// whether a gap parted two cycles.
    pub fn goes_on_from(&self) -> Option<i64> {
        self.at.last().copied().filter(|_| self.later_swing.is_none())
    }

    /// Takes rows none of which lies a parting gap behind the one before; `line` is the first one's.
    pub fn add_all(&mut self, rows: &Rows<'_>, line: u32) {
        self.at.extend_from_slice(rows.at);
        self.temperature.extend_from_slice(rows.temperature);
        self.pressure.extend_from_slice(rows.pressure);
        self.line.extend((line..).take(rows.at.len()));
        self.decimals.0 = self.decimals.0.max(rows.decimals.0);
        self.decimals.1 = self.decimals.1.max(rows.decimals.1);
        self.swing.take_all(rows.temperature, rows.pressure);
    }

    /// Makes room for the rows of an ordinary cycle at once.
    fn reserve(&mut self, has_pressure: bool) {
        self.at.reserve(USUAL_ROWS);
        self.temperature.reserve(USUAL_ROWS);
        self.line.reserve(USUAL_ROWS);
        if has_pressure {
            self.pressure.reserve(USUAL_ROWS);
        }
    }

    /// Gives the room back that the rows did not need.
    pub fn shrink(&mut self) {
        self.at.shrink_to_fit();
        self.temperature.shrink_to_fit();
        self.line.shrink_to_fit();
        self.pressure.shrink_to_fit();
    }

    /// Does the long step to this row part two cycles, both ends of it in the open chamber?
    #[cold]
    fn look_at_gap(&mut self, reading: &Reading) {
        let whole = self.swing.has_swung(reading.pressure.is_some());
        let back = |row: &Reading| self.swing.is_back(row);
        if whole && self.last().is_some_and(|last| back(&last)) && back(reading) {
            self.later_swing = Some((self.len(), Swing::default()));
        }
    }

    /// Gives the rows before `from` and keeps the others.
    pub fn split(&mut self, from: usize) -> Self {
        let swing = self.later_swing.take().map_or(self.swing, |(_, swing)| swing);
        let later_words = self
            .words
            .extract_if(.., |(row, _)| *row >= from)
            .map(|(row, word)| (row - from, word))
            .collect();
        let pressure_from = from.min(self.pressure.len());
        let later = Self {
            at: self.at.split_off(from),
            temperature: self.temperature.split_off(from),
            pressure: self.pressure.split_off(pressure_from),
            line: self.line.split_off(from),
            decimals: self.decimals,
            zone: self.zone,
            set: self.set,
            words: later_words,
            swing,
            ..Self::default()
        };
        std::mem::replace(self, later)
    }

    /// Counts a row that cannot be used. One that waited for its partner comes late.
    pub fn miss(&mut self, line: u32) {
        self.missing += 1;
        let (first, last) = self.missing_lines.unwrap_or((line, line));
        self.missing_lines = Some((first.min(line), last.max(line)));
    }

    /// Notes the set point of a row.
    pub fn note_set(&mut self, value: f64) {
        let (low, high) = self.set.unwrap_or((value, value));
        self.set = Some((low.min(value), high.max(value)));
    }

    /// Has the chamber been away from where it stood, and not come back?
    pub fn ends_under_way(&self) -> bool {
        self.last().is_some_and(|last| {
            self.swing.has_swung(last.pressure.is_some()) && !self.swing.is_back(&last)
        })
    }
}
