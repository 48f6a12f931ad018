//! Figures of one cycle: measured from the record, not yet judged.
//!
//! [`examine`] is the way in. Everything that it goes by is in [`Ask`] and [`Rules`], as data;
//! whether the figures suffice for what was inside is for the room `release` to say.

mod ask;
mod drying;
mod heat;
mod hold;
mod leak;
mod notes;
mod phases;
mod sensors;
mod set_point;
mod vacuum;
mod view;

pub use ask::{Ask, Rules, Usual};

use crate::extent::extent;
use crate::finding::Finding;
use crate::lethality;
use crate::record::{CycleRecord, Source};
use view::View;

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

/// A mean over a hold moves by so much, K, with where its first and last samples happen to fall:
/// about a fortieth of 4 K at the coarsest sampling of the made-up records (worked out, not
/// measured). So near to its limit, the deviation from saturation is reported as a border.
pub const NEAR_SATURATION_K: f64 = 0.15;

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

/// How air was driven out before the hold, as far as the record shows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AirRemoval {
    /// Vacuum pulses.
    Vacuum,
    /// Pulses of steam above the air pressure, without a vacuum.
    Pressure,
    /// None: steam flows in and air sinks out.
    Gravity,
    /// The record cannot show it: no pressure, or no hold.
    NotSeen,
}

/// Where a record stops that does not go on to the end of its cycle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EndsEarly {
    /// Before the hold that was needed is complete.
    BeforeHold,
    /// After that, but with the chamber still at heat: how it went on is not known.
    AtHeat,
    /// After it; exhaust, drying or air inlet are cut.
    AfterHold,
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
    /// Depth of each pulse before the hold as far as more than a single reading shows it, kPa: what
    /// a verdict goes by.
    pub vacuum_sure_kpa: Vec<f64>,
    /// Leak seen while the first vacuum was held, kPa/min, less what rounding can feign; `None`
    /// without a vacuum or where samples lie too far apart.
    pub vacuum_leak_kpa_per_min: Option<f64>,
    /// No vacuum before the hold got as deep as one should, and in one at least the pump levelled
    /// off.
    pub vacuum_stalled: bool,
    /// Leak test figures.
    pub leak: Option<Leak>,
    /// The drying part.
    pub drying: Drying,
    /// Phases, in order.
    pub phases: Vec<Phase>,
    /// How air was driven out.
    pub air_removal: AirRemoval,
    /// Where the record stops, if before the cycle's end.
    pub ends_early: Option<EndsEarly>,
    /// The longest interval without samples in which the hold may have gone on or begun, from and
    /// to, seconds; `None` where no such interval is too long.
    pub gap_at_heat_s: Option<(f64, f64)>,
    /// The same before the hold, once the pressure has left that of the air: what it hides of the
    /// air removal is not known.
    pub gap_before_hold_s: Option<(f64, f64)>,
    /// Samples of the hold, and the longest interval between two of them, seconds.
    pub hold_samples: (usize, f64),
    /// The record begins with steam, or a vacuum, already in the chamber.
    pub begins_late: bool,
    /// Lowest and highest temperature of the whole record, °C; `None` without samples.
    pub range_c: Option<(f64, f64)>,
    /// Every number of the record is a number and times ascend; where not, nothing may be
    /// concluded.
    pub sound: bool,
    /// Usual step between two samples, seconds.
    pub step_s: f64,
    /// Seconds from first to last sample.
    pub total_s: f64,
    /// What was noticed: dips, over-temperature, frozen or derived sensors, aborted, weak heater...
    pub findings: Vec<Finding>,
}

/// Measures one cycle.
///
/// Nothing is judged here. A record whose numbers are not all numbers gives figures that are not
/// [`Figures::sound`] and on which nothing may rest.
#[must_use]
pub fn examine(record: &CycleRecord, ask: &Ask) -> Figures {
    let Some(view) = View::new(record, ask).filter(|view| view.len() > 1) else {
        return nothing(record);
    };
    let range = extent(view.temp);
    if leak::looks_like_test(&view, range) {
        return leak_test(&view, ask, range);
    }
    run(&view, ask, range)
}

/// Figures of a record from which nothing can be measured.
fn nothing(record: &CycleRecord) -> Figures {
    Figures {
        kind: Kind::Unknown,
        set_c: None,
        needed_hold_s: None,
        hold_s: 0.0,
        hold_by_pressure_s: None,
        hold_in_band_s: 0.0,
        f0_min: 0.0,
        f0_low_min: 0.0,
        plateau: None,
        steady: None,
        vacuum_depths_kpa: Vec::new(),
        vacuum_sure_kpa: Vec::new(),
        vacuum_leak_kpa_per_min: None,
        vacuum_stalled: false,
        leak: None,
        drying: Drying { phase_s: None, vacuum: None, min_kpa: None, ran: DryingRan::CannotTell },
        phases: Vec::new(),
        air_removal: AirRemoval::NotSeen,
        ends_early: record.integrity.truncated.then_some(EndsEarly::BeforeHold),
        gap_at_heat_s: None,
        gap_before_hold_s: None,
        hold_samples: (0, 0.0),
        begins_late: false,
        range_c: None,
        sound: false,
        step_s: 0.0,
        total_s: 0.0,
        findings: record.findings.clone(),
    }
}

/// What every sound record has, whatever it is of.
fn common(view: &View, ask: &Ask, range: (f64, f64)) -> Figures {
    let rules = &ask.rules;
    let f0 = lethality::sums(view.t, view.temp, view.longest, (rules.f0_reference_c, rules.f0_z_k));
    Figures {
        f0_min: f0.trapezoid_min,
        f0_low_min: f0.low_min,
        range_c: Some(range),
        // Reference and z are somebody's settings: a senseless pair gives senseless sums.
        sound: f0.trapezoid_min.is_finite() && f0.low_min.is_finite(),
        step_s: view.step,
        total_s: view.t[view.len() - 1] - view.t[0],
        ..nothing(view.record)
    }
}

fn leak_test(view: &View, ask: &Ask, range: (f64, f64)) -> Figures {
    let test = leak::marks(view);
    let aired = test.as_ref().is_some_and(|test| test.aired.is_some());
    Figures {
        kind: Kind::LeakTest,
        leak: test.as_ref().and_then(|test| leak::figures(view, test)),
        phases: test.as_ref().map_or_else(Vec::new, |test| leak::phases(view, test)),
        ends_early: (!aired).then_some(EndsEarly::AfterHold),
        ..common(view, ask, range)
    }
}

fn run(view: &View, ask: &Ask, range: (f64, f64)) -> Figures {
    let set = set_point::find(view, ask);
    let set_c = set.known.map(|(set_c, _)| set_c);
    let floor_s = set_c.and_then(|set_c| view.rules.floor_s(set_c));
    let needed_s = floor_s.map(|floor_s| floor_s.max(ask.hold_s.unwrap_or(0.0)));
    let hold = set.hold;
    let steady = hold.and_then(|hold| hold::steady(view, hold));
    let plateau = hold.map(|hold| hold::plateau(view, hold));
    let mut figures = Figures {
        // A record that states a set temperature is of a run, even of one that never began.
        kind: if notes::anything_happened(view) || view.record.stated.set_c.is_some() {
            Kind::Run
        } else {
            Kind::Unknown
        },
        set_c: set.known,
        needed_hold_s: needed_s,
        hold_s: hold.map_or(0.0, |hold| view.seconds(hold)),
        hold_by_pressure_s: set_c.and_then(|set_c| hold::by_pressure_s(view, set_c)),
        hold_in_band_s: hold.zip(set_c).map_or(0.0, |hold| hold::in_band_s(view, hold, range.1)),
        plateau,
        steady: steady.map(|steady| hold::plateau(view, steady)),
        gap_at_heat_s: set_c
            .or(view.rules.floors.last().map(|floor| floor.0))
            .and_then(|set_c| hold::gap_at_heat(view, set_c, needed_s.unwrap_or(0.0))),
        hold_samples: hold.map_or((0, 0.0), |hold| hold::samples(view, hold)),
        begins_late: notes::begins_late(view),
        gap_before_hold_s: hold.and_then(|hold| hold::gap_before(view, hold)),
        ..common(view, ask, range)
    };
    let shape = Shape::of(view, hold.zip(figures.plateau), set_c);
    shape.fill(view, ask, &mut figures);
    if let (Some(hold), Some(set_c), true) = (hold, set_c, view.has_pressure()) {
        let sure = vacuum::before_hold(view, hold, set_c);
        figures.vacuum_sure_kpa = sure.depths_kpa;
        figures.vacuum_leak_kpa_per_min = sure.leak_kpa_per_min;
        figures.vacuum_stalled = sure.stalled;
    }
    figures.ends_early = notes::ends_early(view, hold, needed_s.unwrap_or(0.0), shape.after);
    figures.findings.extend(set.unclear);
    figures.findings.extend(sensors::frozen(view, hold));
    figures.findings.extend(sensors::derived(view));
    if let (Some(hold), Some(set_c), Some(plateau)) = (hold, set_c, &figures.plateau) {
        let notes = [
            sensors::saturation(view, hold, plateau),
            notes::dip(view, set_c, hold),
            notes::over_band(view, set_c, (hold, plateau)),
        ];
        figures.findings.extend(notes.into_iter().flatten());
    }
    let complete = figures.ends_early.is_none();
    figures.findings.extend(notes::aborted(view, hold, complete));
    figures
}

/// What the pressure curve shows of a run.
struct Shape {
    hold: Option<view::Stretch>,
    marks: Option<heat::Marks>,
    after: Option<drying::After>,
}

impl Shape {
    fn of(view: &View, held: Option<(view::Stretch, Plateau)>, set_c: Option<f64>) -> Self {
        let marks = view.has_pressure().then(|| heat::marks(view, held, set_c));
        let hold = held.map(|(hold, _)| hold);
        let emptied = marks.as_ref().and_then(|marks| marks.emptied);
        let after = emptied.map(|emptied| drying::after(view, emptied));
        Self { hold, marks, after }
    }

    fn fill(&self, view: &View, ask: &Ask, figures: &mut Figures) {
        let Some(marks) = &self.marks else {
            figures.phases = phases::by_temperature(view, self.hold);
            return;
        };
        let depths = marks.pulses.iter().filter_map(|pulse| pulse.vacuum());
        figures.vacuum_depths_kpa = depths.map(|(_, depth)| depth).collect();
        figures.air_removal = if !figures.vacuum_depths_kpa.is_empty() {
            AirRemoval::Vacuum
        } else if marks.pulses.iter().any(|pulse| matches!(pulse, heat::Pulse::Release(_))) {
            AirRemoval::Pressure
        } else {
            AirRemoval::Gravity
        };
        figures.phases = phases::of_run(view, marks, self.after, self.hold.is_some());
        let asked_s = ask.drying_s.or(view.record.stated.drying_s);
        figures.drying = drying::figures(view, self.after, asked_s);
        // A machine that draws a vacuum before the hold can dry after it; from one that does not,
        // a cycle without drying is what its programme is.
        let emptied = marks.emptied.filter(|_| figures.air_removal == AirRemoval::Vacuum);
        figures.findings.extend(drying::note(view, &figures.drying, emptied, asked_s));
        if self.hold.is_some() {
            let parts = (figures.air_removal, self.after);
            figures.findings.extend(notes::slow_parts(view, ask, marks, parts));
        }
    }
}
