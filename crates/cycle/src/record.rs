//! A cycle record of any layout, read into repaired samples in known units.
//!
//! ```
//! use cycle::record::{Known, read};
//! let file = "time;temp °C;bar abs\n0;20,0;1,00\n10;60,5;1,00\n20;99,1;1,00\n";
//! let cycles = read(file.as_bytes(), &Known::default())?;
//! assert_eq!(cycles[0].samples.press_kpa, [100.0, 100.0, 100.0]);
//! assert_eq!(cycles[0].samples.temp_c[1], 60.5);
//! # Ok::<(), cycle::record::Unreadable>(())
//! ```
//!
//! The way of a file: `source` gives lines, which `reshape` makes of JSON that has none; `sniff`
//! finds the table in the first of them and `heading` its names; `timing` and `roles` say which
//! column is what; `plan` reads row by row, `quick` with `clock` and `stencil` the many rows that
//! are alike, and `halves` makes samples of rows with one reading each; `parting` gathers rows into
//! cycles; then, for each cycle, `decide` settles the units with the help of `physics`, `repair`
//! puts the rows in order, `air` finds the air pressure of the place, and `settle` makes the record.
//! Nothing is filled in and nothing is guessed silently: what could be read in two ways becomes a
//! finding on which no verdict rests.

mod air;
mod calendar;
mod cells;
mod clock;
mod columns;
mod convert;
mod cycles;
mod decide;
mod defects;
mod failed;
mod halves;
mod heading;
mod interval;
mod names;
mod notes;
mod number;
mod parting;
mod physics;
mod pieces;
mod plan;
mod quick;
mod repair;
mod repeats;
mod reshape;
mod roles;
mod settle;
mod sniff;
mod source;
mod stamp;
mod stems;
mod stencil;
mod timing;
mod units;
mod words;

pub use cycles::Cycles;
pub use units::{PressureUnit, Reference, TemperatureUnit};

use crate::finding::Finding;
use std::fmt;
use std::io::Read;

/// What a person has set for the machine that wrote the file. A setting goes before what the file
/// says; where the numbers contradict either, that is a finding.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Known {
    /// Altitude of the place in metres, -430 to 5500.
    pub altitude_m: Option<f64>,
    /// Unit of the temperature column.
    pub temperature_unit: Option<TemperatureUnit>,
    /// Unit of the pressure column.
    pub pressure_unit: Option<PressureUnit>,
    /// What pressures are counted from.
    pub pressure_reference: Option<Reference>,
    /// `03/04` is the third of April, not the fourth of March.
    pub day_first: Option<bool>,
    /// Seconds between two rows of a record without times, within [`INTERVAL_S`]; others are not taken.
    pub interval_s: Option<f64>,
}

/// Intervals in seconds that rows without times may have (common practice, no source).
pub const INTERVAL_S: std::ops::RangeInclusive<f64> = 0.01..=120.0;

/// Why a file could not be used, in one plain sentence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unreadable {
    /// Physical line, from 1, where it belongs to one.
    pub line: Option<u32>,
    /// What is wrong.
    pub what: String,
    /// What to do.
    pub way_out: &'static str,
}

impl Unreadable {
    fn new(line: Option<u32>, what: impl Into<String>, way_out: &'static str) -> Self {
        Self { line, what: what.into(), way_out }
    }
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(line) = self.line {
            write!(f, "line {line}: ")?;
        }
        write!(f, "{}: {}", self.what, self.way_out)
    }
}

impl std::error::Error for Unreadable {}

/// Rows that [`read`] holds at most; a larger file is read cycle by cycle with [`cycles`].
const MOST_ROWS_AT_ONCE: usize = 4_000_000;

/// Reads every cycle of a file.
///
/// # Errors
///
/// [`Unreadable`] when the file has no table of times and temperatures, when a single cycle goes on
/// for more than 500 000 rows, or when all of them together are more than 4 000 000.
pub fn read(bytes: impl Read, known: &Known) -> Result<Vec<CycleRecord>, Unreadable> {
    let mut all = Vec::new();
    let mut rows = 0;
    for cycle in cycles(bytes, known)? {
        let cycle = cycle?;
        rows += cycle.samples.t_s.len();
        if rows > MOST_ROWS_AT_ONCE {
            return Err(Unreadable::new(
                cycle.samples.line.first().copied(),
                "the file is too long to be held at once",
                "split it into files of a few hundred cycles",
            ));
        }
        all.push(cycle);
    }
    Ok(all)
}

/// Reads a file cycle by cycle, holding no more than one of them.
///
/// # Errors
///
/// [`Unreadable`] when the file cannot be read, is empty, or is not text. Later trouble comes as an
/// item, after which nothing follows.
pub fn cycles<R: Read>(bytes: R, known: &Known) -> Result<Cycles<'_, R>, Unreadable> {
    Cycles::new(bytes, known, Vec::new())
}

/// The same with a buffer that may have been used before, as [`Cycles::into_buffer`] gives it back:
/// for many files one after the other.
///
/// # Errors
///
/// As [`cycles`].
pub fn cycles_through<R: Read>(
    bytes: R,
    known: &Known,
    buffer: Vec<u8>,
) -> Result<Cycles<'_, R>, Unreadable> {
    Cycles::new(bytes, known, buffer)
}

/// Repaired samples of one cycle, in time order, no two at the same time.
///
/// The vectors have one entry a sample each. Within a cycle a reading that was missing or not a
/// number is left out with its sample, and counted; it is never filled in.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Samples {
    /// Seconds since the first sample.
    pub t_s: Vec<f64>,
    /// Chamber temperature in °C.
    pub temp_c: Vec<f64>,
    /// Absolute chamber pressure in kPa; empty where the record has none or its reference is unclear.
    pub press_kpa: Vec<f64>,
    /// Physical line in the file, from 1.
    pub line: Vec<u32>,
}

/// How the file is written, in the words of the contract.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// `iso`, `clock`, `elapsed`, `epoch`, `serial`, `counted` (no times but an interval), ...
    pub time: String,
    /// `C`, `F` or `K`.
    pub temperature_unit: String,
    /// `kPa`, `bar`, `mbar`, `Pa`, `psi`, `MPa`; `None` without a pressure column.
    pub pressure_unit: Option<String>,
    /// `absolute`, `gauge` or `none`.
    pub pressure_reference: String,
    /// `.` or `,`.
    pub decimal: char,
    /// Name of the character encoding, in lower case.
    pub encoding: String,
}

/// How a thing about the file was known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// The file says it.
    Header,
    /// Worked out: the open chamber at the start gives the air pressure, steam lies on its
    /// saturation line.
    Physics,
    /// Somebody set it for this machine.
    Setting,
    /// The plateau itself (for the set point).
    Plateau,
}

/// How each thing was known; `None` where it is not known at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct KnownFrom {
    /// Of the temperature unit.
    pub temperature_unit: Option<Source>,
    /// Of the pressure unit.
    pub pressure_unit: Option<Source>,
    /// Of gauge or absolute.
    pub pressure_reference: Option<Source>,
    /// The times could be read in two ways, or stand nowhere: no length of time can be relied on.
    pub times_unclear: bool,
}

/// What the record says was asked for.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stated {
    /// Set temperature in °C.
    pub set_c: Option<f64>,
    /// The programme's own hold in seconds. It never lowers the published floor.
    pub hold_s: Option<f64>,
    /// The programme's own drying in seconds.
    pub drying_s: Option<f64>,
    /// Name of the programme.
    pub programme: Option<String>,
    /// Altitude of the place in metres.
    pub altitude_m: Option<f64>,
    /// Phase words between the lines, each with the seconds since the first sample from which it
    /// holds.
    pub phase_words: Vec<(f64, String)>,
    /// The record itself says that the cycle was stopped or failed, in these words.
    pub says_aborted: Option<String>,
}

/// What became of the rows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Integrity {
    /// Samples kept after repair.
    pub rows: usize,
    /// Samples that should be there by the usual step and are not; an estimate.
    pub dropped: usize,
    /// Rows that repeated an earlier time, left out.
    pub duplicated: usize,
    /// Rows that stood in the wrong place, put right.
    pub out_of_order: usize,
    /// Each clock jump: seconds since the first sample after repair, and the jump in seconds.
    pub clock_jumps: Vec<(f64, f64)>,
    /// Longest step between two kept samples, in seconds.
    pub largest_gap_s: f64,
    /// Usual step, in seconds: the median.
    pub median_step_s: f64,
    /// The file ends in the middle of a line or of the cycle.
    pub truncated: bool,
}

/// One cycle of a file, in known units.
#[derive(Debug, Clone, PartialEq)]
pub struct CycleRecord {
    /// Position in the file, from 0.
    pub index: usize,
    /// The samples.
    pub samples: Samples,
    /// How the file is written.
    pub layout: Layout,
    /// How that was known.
    pub known_from: KnownFrom,
    /// What was asked for.
    pub stated: Stated,
    /// Wall-clock text of the first sample, `YYYY-MM-DDThh:mm:ss` without a zone, or only
    /// `hh:mm:ss` where no date is known; `None` where the record has no clock.
    pub start_clock: Option<String>,
    /// Air pressure of the place in kPa, from the open chamber at the start.
    pub ambient_kpa: Option<f64>,
    /// Smallest step that the temperature column can show, in K.
    pub temp_resolution_k: f64,
    /// Smallest step that the pressure column can show, in kPa.
    pub press_resolution_kpa: f64,
    /// What became of the rows.
    pub integrity: Integrity,
    /// What the reader noticed: repairs, unclear units, gauge passed off as absolute.
    pub findings: Vec<Finding>,
}
