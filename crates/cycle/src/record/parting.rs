//! Rows gathered into cycles: where one ends and the next begins.

use super::plan::{Reading, seconds};

/// A cycle with more rows than this is no cycle.
pub(super) const MOST_ROWS: usize = 500_000;

/// Rows for which there is room from the start: an hour at a row a second.
const USUAL_ROWS: usize = 3_600;

/// Below this many rows a blank line parts nothing: some write one after every row.
pub(super) const FEW_ROWS: usize = 10;

/// A gap that may part two cycles.
const PARTING_GAP: i64 = seconds(600);

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
#[derive(Debug, Clone, Copy, Default)]
struct Swing {
    rows: usize,
    pressure_start: f64,
    pressure_far: f64,
    hottest: f64,
    coldest: f64,
}

impl Swing {
    fn take(&mut self, reading: &Reading) {
        let t = reading.temperature.value;
        let p = reading.pressure.map_or(0.0, |p| p.value);
        if self.rows == 0 {
            (self.pressure_start, self.hottest, self.coldest) = (p, t, t);
        }
        self.rows += 1;
        // No reading is not-a-number, so plain comparing will do.
        let far = (p - self.pressure_start).abs();
        if far > self.pressure_far {
            self.pressure_far = far;
        }
        if t > self.hottest {
            self.hottest = t;
        } else if t < self.coldest {
            self.coldest = t;
        }
    }

    /// Has the chamber been under steam or vacuum? Without pressure: has it been hot?
    fn has_swung(&self, has_pressure: bool) -> bool {
        if has_pressure {
            let start = self.pressure_start.abs();
            self.pressure_far > 0.3 * start && self.pressure_far > 0.15
        } else {
            self.hottest - self.coldest > 30.0
        }
    }

    /// Is it back where it was?
    fn is_back(&self, reading: &Reading) -> bool {
        match reading.pressure {
            Some(p) => (p.value - self.pressure_start).abs() <= 0.1 * self.pressure_far,
            None => reading.temperature.value < self.hottest - 15.0,
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

    /// Counts a row that cannot be used.
    pub fn miss(&mut self, line: u32) {
        self.missing += 1;
        let first = self.missing_lines.map_or(line, |(first, _)| first);
        self.missing_lines = Some((first, line));
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
