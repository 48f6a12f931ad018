//! Drift: what changes from run to run on one machine, and which part that points to.
//!
//! [`Watcher`] takes one run at a time, in order, and answers with an [`Alarm`] where a change is
//! proven at the stated rate of false alarms; [`watch`] does the same for a whole list. Both read
//! forward only: an alarm at a run depends on nothing later.
//!
//! How it goes:
//!
//! 1. The machine's own first runs (40, see [`Settings`]) teach what is usual: robust means
//!    and spreads, cold first runs of the day set apart, and what a heavier load does to several
//!    figures at once.
//! 2. Each later run leaves, for every figure, a rest that load and cold do not explain. Windows
//!    of every length that end at this run are tested for a mean shift beyond a tolerance (mains,
//!    season), with the uncertainty of what was learned counted in.
//! 3. A figure alarms only if it moved by itself too, not only against its companions. The part
//!    is named from the figure, and from its companions where two parts touch the same figure;
//!    while pump and seal cannot be told apart the alarm waits, for fifteen runs at most.
//! 4. A part that has alarmed stays quiet, together with every figure it can touch, until its
//!    figure is back at the old level (part replaced) or has stood level for a hundred runs.
//!
//! The reasons for each choice, and the measured rates, stand in the decision on drift.
//!
//! ```
//! use cycle::drift::{Part, RunFeatures, Settings, watch};
//!
//! // Eighty quiet runs, then an air inlet that takes half as long again.
//! let runs: Vec<RunFeatures> = (1..=120_u64)
//!     .map(|cycle| RunFeatures {
//!         cycle,
//!         air_in_s: Some(if cycle <= 80 { 24.0 } else { 36.0 } + (cycle * 7 % 3) as f64),
//!         ..RunFeatures::default()
//!     })
//!     .collect();
//! let alarms = watch(&runs, &Settings::default());
//! assert_eq!(alarms.len(), 1);
//! assert_eq!(alarms[0].part, Part::Filter);
//! assert_eq!(alarms[0].since_cycle, 81);
//! ```

mod evidence;
mod figure;
mod lane;
mod model;
mod part;
mod solve;
mod state;

pub use figure::Figure;
pub use part::Part;

use lane::Lane;

/// What is known of one run, in the order of the runs. What was not measured is `None`; a value
/// outside its physical range (see [`Figure::plausible`]) is treated the same.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RunFeatures {
    /// The number by which people call this run.
    pub cycle: u64,
    /// Is this the first, cold run of a day? Unknown counts as warm.
    pub first_of_day: Option<bool>,
    /// Time from start to the first vacuum, s. Not watched: it follows the pause before the run.
    pub preheat_s: Option<f64>,
    /// Time from the last pulse to the set point, s.
    pub heat_up_s: Option<f64>,
    /// Time at temperature, s.
    pub plateau_s: Option<f64>,
    /// Lowest chamber temperature of the plateau, °C.
    pub plateau_t_min_c: Option<f64>,
    /// Highest chamber temperature of the plateau, °C.
    pub plateau_t_max_c: Option<f64>,
    /// Mean of temperature minus saturation temperature of the pressure over the plateau, K.
    pub satdev_mean_k: Option<f64>,
    /// Depth of the third vacuum pulse, kPa absolute.
    pub vac3_kpa: Option<f64>,
    /// Length of the first vacuum pulse, s.
    pub vac1_s: Option<f64>,
    /// Lowest pressure while drying, kPa absolute.
    pub dry_vac_kpa: Option<f64>,
    /// Time of letting in filtered air at the end, s.
    pub air_in_s: Option<f64>,
    /// Length of the exhaust, s.
    pub exhaust_s: Option<f64>,
    /// Pressure rise of a vacuum hold, kPa per minute.
    pub leak_kpa_per_min: Option<f64>,
    /// Length of the whole run, s.
    pub total_s: Option<f64>,
}

/// How the judge is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Settings {
    /// Alarms per 1000 runs that a machine with nothing wrong may raise, over all figures
    /// together; above 0, at most 100. The default is 0.5: one in about two thousand runs.
    pub false_alarms_per_1000_runs: f64,
    /// Runs that teach what is usual before anything is judged, at least 20.
    pub learn_runs: usize,
}

impl Default for Settings {
    fn default() -> Self {
        Self { false_alarms_per_1000_runs: 0.5, learn_runs: 40 }
    }
}

impl Settings {
    /// The settings with this rate.
    ///
    /// # Errors
    /// [`RateError`] where the rate is not a number above 0 and at most 100.
    pub fn with_rate(rate: f64) -> Result<Self, RateError> {
        if rate.is_finite() && rate > 0.0 && rate <= 100.0 {
            Ok(Self { false_alarms_per_1000_runs: rate, ..Self::default() })
        } else {
            Err(RateError)
        }
    }
}

/// A rate of false alarms that means nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RateError;

impl std::fmt::Display for RateError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("the rate of false alarms per 1000 runs is a number above 0 and at most 100")
    }
}

impl std::error::Error for RateError {}

/// A change that is proven at the stated rate of false alarms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Alarm {
    /// The figure that proves it.
    pub figure: Figure,
    /// The part that such a change points to.
    pub part: Part,
    /// The run at which it was proven.
    pub alarm_at_cycle: u64,
    /// The run since when, by the likeliest of all steps and slopes; for a slow slope some tens
    /// of runs of doubt are usual.
    pub since_cycle: u64,
    /// How far the figure now lies from its usual level, in its own unit.
    pub shift: f64,
    /// Its usual level.
    pub level: f64,
    /// How sure the change is: the natural logarithm of how much likelier these runs are with a
    /// change than without one.
    pub evidence: f64,
    /// The evidence that an alarm needed at the stated rate.
    pub needed: f64,
    /// How sure the part is, 0 to 1, among the parts that could do this.
    pub part_share: f64,
    /// The stated rate.
    pub false_alarms_per_1000_runs: f64,
}

impl Alarm {
    /// The change in words: per cent of the usual level for times and pressures, kelvin for
    /// temperatures, kPa/min for a leak.
    #[must_use]
    pub fn change(&self) -> String {
        match self.figure.absolute_unit() {
            Some(unit) => format!("{:+.1} {unit}", self.shift),
            None => format!("{:+.0} %", 100.0 * self.shift / self.level),
        }
    }
}

/// Watches the runs of one machine, one at a time and in order.
///
/// Runs of different programmes (another plateau length, or 121 °C instead of 132 to 134 °C) are
/// judged against their own kind; a part that has alarmed in one is not called again in another.
#[derive(Debug, Clone)]
pub struct Watcher {
    settings: Settings,
    lanes: Vec<Lane>,
}

impl Watcher {
    /// Nothing seen yet.
    #[must_use]
    pub fn new(settings: Settings) -> Self {
        Self { settings, lanes: Vec::new() }
    }

    /// Takes the next run.
    pub fn take(&mut self, run: &RunFeatures) -> Option<Alarm> {
        let at = self.lanes.iter().position(|lane| lane.fits(run));
        let at = at.unwrap_or_else(|| {
            self.lanes.push(Lane::new(run, self.settings));
            self.lanes.len() - 1
        });
        let alarm = self.lanes.get_mut(at)?.take(run)?;
        let known = |(other, lane): (usize, &Lane)| other != at && lane.is_changed(alarm.part);
        let told_before = self.lanes.iter().enumerate().any(known);
        (!told_before).then_some(alarm)
    }
}

/// All alarms over `runs`, in order; the runs are those of one machine, oldest first.
#[must_use]
pub fn watch(runs: &[RunFeatures], settings: &Settings) -> Vec<Alarm> {
    let mut watcher = Watcher::new(*settings);
    runs.iter().filter_map(|run| watcher.take(run)).collect()
}
