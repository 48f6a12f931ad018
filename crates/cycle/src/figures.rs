//! Figures of one cycle: measured from the record, not yet judged.

use crate::finding::Finding;
use crate::record::Source;

/// What a cycle turned out to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A sterilising cycle, or an attempt at one.
    Run,
    /// An air-leak test of the cold, empty chamber.
    LeakTest,
    /// Neither.
    Unknown,
}

/// A stretch at temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plateau {
    /// First sample, seconds since the cycle's first.
    pub start_s: f64,
    /// Last sample.
    pub end_s: f64,
    /// Lowest temperature in it, °C.
    pub min_c: f64,
    /// Highest.
    pub max_c: f64,
    /// Mean of recorded temperature less saturation temperature of the recorded pressure, K;
    /// `None` without pressure. Negative: colder than its pressure promises (air).
    pub satdev_mean_k: Option<f64>,
    /// Largest magnitude of the same.
    pub satdev_maxabs_k: Option<f64>,
    /// First and last physical line.
    pub lines: (u32, u32),
}

/// A phase with its borders.
#[derive(Debug, Clone, PartialEq)]
pub struct Phase {
    /// Name, in the words of the contract (`preheat`, `vacuum 1`, `heat-up`, `plateau`, ...).
    pub name: String,
    /// From, seconds since the cycle's first sample.
    pub start_s: f64,
    /// To.
    pub end_s: f64,
}

/// Did the drying part run? What the pouches look like no record shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DryingRan {
    /// As long as set.
    AsSet,
    /// Shorter than set.
    Short,
    /// Not at all.
    None,
    /// The record does not say what was set, or ends before.
    CannotTell,
}

/// The drying part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drying {
    /// Seconds from the end of exhaust to the inlet of air.
    pub phase_s: Option<f64>,
    /// Under vacuum?
    pub vacuum: Option<bool>,
    /// Deepest absolute pressure in it, kPa.
    pub min_kpa: Option<f64>,
    /// Did it run as set?
    pub ran: DryingRan,
}

/// Air-leak test of an empty chamber.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leak {
    /// Rise in kPa per minute over the measuring time, corrected for temperature.
    pub kpa_per_min: f64,
    /// From and to of the measuring time, seconds since the first sample.
    pub at_s: (f64, f64),
    /// The rise levels off like water evaporating, not like air coming in.
    pub moisture: bool,
}

/// Everything measured in one cycle.
#[derive(Debug, Clone, PartialEq)]
pub struct Figures {
    /// What the cycle is.
    pub kind: Kind,
    /// Set temperature, °C, and how it was known.
    pub set_c: Option<(f64, Source)>,
    /// Least hold that the set temperature asks of unwrapped solid goods, seconds.
    pub needed_hold_s: Option<f64>,
    /// Longest run of samples at or above the set temperature with steam in the chamber, first to
    /// last sample, seconds; 0 when there is none.
    pub hold_s: f64,
    /// The same, judged by the saturation temperature of the pressure.
    pub hold_by_pressure_s: Option<f64>,
    /// The same as `hold_s`, within the band above the set temperature.
    pub hold_in_band_s: f64,
    /// F0 by the trapezoid, minutes: for comparing with published series.
    pub f0_min: f64,
    /// F0 by the lesser end of each interval, minutes: the only one that a verdict may use.
    pub f0_low_min: f64,
    /// The hold run itself.
    pub plateau: Option<Plateau>,
    /// The hold run without its first 15 s.
    pub steady: Option<Plateau>,
    /// Deepest absolute pressure of each air-removal pulse, kPa, in order.
    pub vacuum_depths_kpa: Vec<f64>,
    /// Fastest leak seen while a vacuum was held, kPa/min.
    pub vacuum_leak_kpa_per_min: Option<f64>,
    /// Leak test figures.
    pub leak: Option<Leak>,
    /// The drying part.
    pub drying: Drying,
    /// Phases, in order.
    pub phases: Vec<Phase>,
    /// Seconds from first to last sample.
    pub total_s: f64,
    /// What was noticed: dips, over-temperature, frozen or derived sensors, aborted, weak heater...
    pub findings: Vec<Finding>,
}
