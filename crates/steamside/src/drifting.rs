//! The watch over drift in the log: what the runs of a machine say to the same judge as
//! `steamside drift`, and which of its alarms still hold.

use cycle::drift::{Alarm, Figure, RunFeatures, Settings, watch};
use logbook::book::BookError;
use logbook::view::{JudgedRun, View};
use measure::MachineId;

/// Most runs that are looked at: half a year at four a day, and a page still opens at once.
const MOST: usize = 600;
/// So many of the last runs say whether a change still holds: a single odd one does not.
const LAST: usize = 5;

/// How sure a change is, by how far its evidence lies beyond what was needed (common practice, no
/// source).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Certainty {
    /// Far beyond.
    Very,
    /// Beyond.
    Sure,
    /// Just past the mark.
    JustPast,
}

impl Certainty {
    /// Of an alarm.
    pub fn of(alarm: &Alarm) -> Self {
        match alarm.evidence - alarm.needed {
            ahead if ahead > 5.0 => Self::Very,
            ahead if ahead > 1.5 => Self::Sure,
            _ => Self::JustPast,
        }
    }
}

/// A change that still holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Change {
    /// The alarm.
    pub alarm: Alarm,
    /// The run since when.
    pub since: JudgedRun,
    /// The run at which it was proven.
    pub proven: JudgedRun,
}

/// What has changed on a machine and is not back at its old level.
pub fn changes(view: &View<'_>, machine: MachineId) -> Result<Vec<Change>, BookError> {
    Ok(told(&view.judged_runs(machine, MOST)?))
}

fn told(runs: &[JudgedRun]) -> Vec<Change> {
    let features: Vec<RunFeatures> = (0..).zip(runs).map(|(at, run)| features(at, run)).collect();
    let run = |cycle: u64| runs.get(usize::try_from(cycle).ok()?).copied();
    watch(&features, &Settings::default())
        .into_iter()
        .filter(|alarm| still_holds(alarm, &features))
        .filter_map(|alarm| {
            let (since, proven) = (run(alarm.since_cycle)?, run(alarm.alarm_at_cycle)?);
            Some(Change { alarm, since, proven })
        })
        .collect()
}

/// A run as the judge of drift takes it, named by its place in the list.
fn features(at: u64, run: &JudgedRun) -> RunFeatures {
    let thousandths = |value: Option<i64>| value.map(|value| value as f64 / 1_000.0);
    let of = &run.figures;
    RunFeatures {
        cycle: at,
        first_of_day: Some(run.first_of_day),
        preheat_s: thousandths(of.preheat_ms),
        heat_up_s: thousandths(of.heat_up_ms),
        plateau_s: thousandths(of.held_ms.filter(|held| *held > 0)),
        plateau_t_min_c: thousandths(of.lowest_mc),
        plateau_t_max_c: thousandths(of.highest_mc),
        satdev_mean_k: thousandths(of.deviation_mk),
        vac3_kpa: thousandths(of.pulse_depth_pa),
        vac1_s: thousandths(of.first_pulse_ms),
        dry_vac_kpa: thousandths(of.dry_vacuum_pa),
        air_in_s: thousandths(of.air_in_ms),
        exhaust_s: thousandths(of.exhaust_ms),
        leak_kpa_per_min: None,
        total_s: thousandths(of.total_ms),
    }
}

/// Do the last runs lie nearer to the changed level than to the old one? A change that was put
/// right is no news. What cannot be compared is taken to hold.
fn still_holds(alarm: &Alarm, runs: &[RunFeatures]) -> bool {
    let values = runs.iter().rev().filter_map(|run| value(alarm.figure, run));
    let mut last: Vec<f64> = values.take(LAST).collect();
    if last.len() < LAST {
        return true;
    }
    last.sort_by(f64::total_cmp);
    let off = last[LAST / 2] - alarm.level;
    off * alarm.shift.signum() >= alarm.shift.abs() / 2.0
}

/// The figure in a run, as far as it is a figure of its own.
fn value(figure: Figure, run: &RunFeatures) -> Option<f64> {
    match figure {
        Figure::HeatUp => run.heat_up_s,
        Figure::AirIn => run.air_in_s,
        Figure::FirstPulse => run.vac1_s,
        Figure::PulseDepth => run.vac3_kpa,
        Figure::DryDepth => run.dry_vac_kpa,
        Figure::Leak => run.leak_kpa_per_min,
        Figure::Exhaust => run.exhaust_s,
        Figure::PlateauLow => run.plateau_t_min_c,
        Figure::PlateauHigh => run.plateau_t_max_c,
        Figure::PlateauLength => run.plateau_s,
        Figure::Saturation => run.satdev_mean_k,
        // What is left of it beyond its known parts depends on which parts are known.
        Figure::Total => None,
    }
}
