//! A cycle record of any layout, read into repaired samples in known units.

use crate::finding::Finding;

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
    /// `iso`, `clock`, `elapsed`, `epoch`, `serial`, ...
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
