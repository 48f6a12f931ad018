//! What is looked after, as it stands at a moment: chores by `day`'s rules, jars and foot basins by
//! the minutes and hours on their labels.

use crate::clock;
use day::chores::{DayNumber, Due, Late, Part, Past, Rule, Today, due, stops};
use jiff::tz::TimeZone;
use logbook::book::BookError;
use logbook::fact::{About, BasinAfter, DayPart, ThingKind};
use logbook::typical::chores::BASIN_WET_MIN;
use logbook::view::{Basin, Chore, Jar, Stock, Thing, View};
use measure::{Instant, MachineId, Span};
use std::collections::BTreeMap;

/// Closed days so long ago no longer matter to any chore.
const CLOSED_BEFORE: Span = Span::from_minutes(400 * 24 * 60);
/// A chore that is due on a closed day moves at most so far ahead.
const CLOSED_AFTER: Span = Span::from_minutes(120 * 24 * 60);
/// Where nobody gave working times and nothing is booked: closing is so long after midnight.
/// (Assumption.)
const CLOSES_AT: Span = Span::from_minutes(18 * 60);
/// Closing takes so long, and is done on its own day. (Assumption.)
const CLOSING_TAKES: Span = Span::from_minutes(60);
/// What is due within this counts as due soon.
const SOON: Span = Span::from_minutes(60);

/// A chore and how it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// The chore.
    pub chore: Chore,
    /// How it stands.
    pub due: Due,
    /// Its machine must not be started.
    pub stops: bool,
}

/// What is in a jar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mix {
    /// Nothing.
    Empty,
    /// A mix whose label nobody has read: how long it lasts is not known.
    NotKnown,
    /// Good until then.
    Good(Instant),
    /// Past its time since then.
    Past(Instant),
}

/// A jar and how it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct JarSeen {
    /// The jar.
    pub jar: Jar,
    /// What is in it.
    pub mix: Mix,
    /// Until when what went in last stays under.
    pub under: Option<Instant>,
}

/// Where a foot basin stands in its cleaning.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BasinStep {
    /// No cleaning is under way.
    Dry,
    /// Wet until then.
    Wet(Instant),
    /// It has been wet long enough since then: drain.
    Drain(Instant),
}

/// A foot basin and how it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BasinSeen {
    /// The basin.
    pub basin: Basin,
    /// Where it stands.
    pub step: BasinStep,
    /// Minutes wet: by the label, or typical.
    pub wet_min: u32,
    /// The cleaning at the day's end.
    pub day_end: Due,
    /// The weekly cleaning.
    pub week: Due,
}

/// All of it.
#[derive(Debug, Clone, Default)]
pub struct Upkeep {
    /// The chores, the most urgent first.
    pub chores: Vec<Kept>,
    /// The jars.
    pub jars: Vec<JarSeen>,
    /// The foot basins.
    pub basins: Vec<BasinSeen>,
    /// Foot baths that are over today and after which no cleaning has begun.
    pub uncleaned: u32,
    /// What is kept of things that are used up.
    pub stock: Vec<Stock>,
    /// Every thing that is here.
    pub things: Vec<Thing>,
    /// Number of each machine.
    pub machines: BTreeMap<MachineId, u32>,
}

/// The calendar of a salon around a moment.
pub struct Days {
    now: Instant,
    dawn: Instant,
    night: Instant,
    closes: Instant,
    closed: Vec<(DayNumber, DayNumber)>,
    zone: TimeZone,
}

impl Days {
    /// The calendar around `now`.
    pub fn read(view: &View<'_>, now: Instant, zone: &TimeZone) -> Result<Self, BookError> {
        let dawn = clock::day_start(now, zone);
        let night = clock::day_start(dawn + Span::from_minutes(26 * 60), zone);
        let shifts = view.shifts(dawn, night)?;
        let mut last = shifts.iter().map(|shift| shift.to).max();
        if last.is_none() {
            last = view.appointments(dawn, night)?.iter().map(|visit| visit.end).max();
        }
        let closes = last.unwrap_or(dawn + CLOSES_AT).min(night - CLOSING_TAKES);
        let closed = view.closed(dawn - CLOSED_BEFORE, dawn + CLOSED_AFTER)?;
        let day = |at| clock::day_number(at, zone);
        let closed = closed.into_iter().map(|(from, to)| (day(from), day(to))).collect();
        Ok(Self { now, dawn, night, closes, closed, zone: zone.clone() })
    }

    fn today(&self) -> Today<'_> {
        let day = clock::day_number(self.now, &self.zone);
        Today { day, now: self.now, closes: self.closes, closed: &self.closed }
    }

    /// A chore as it stands.
    pub fn kept(&self, chore: Chore) -> Kept {
        let left: Vec<DayNumber> = chore.left.iter().map(|(at, _)| self.number(*at)).collect();
        let rule = Rule {
            days: chore.rule.days,
            runs: chore.rule.runs,
            part: match chore.rule.part {
                DayPart::Opening => Part::Opening,
                DayPart::Closing => Part::Closing,
                DayPart::AnyTime => Part::AnyTime,
            },
            stops_work: chore.rule.stops_work,
        };
        let past = Past {
            since: self.number(chore.since),
            done: chore.counts.map(|at| self.number(at)),
            left: &left,
            runs: chore.runs,
        };
        let today = self.today();
        Kept { due: due(&rule, &past, &today), stops: stops(&rule, &past, &today), chore }
    }

    fn number(&self, at: Instant) -> DayNumber {
        clock::day_number(at, &self.zone)
    }

    /// A jar as it stands.
    pub fn jar(&self, jar: Jar) -> JarSeen {
        let mix = match (jar.mixed, jar.label) {
            (None, _) => Mix::Empty,
            (Some(_), None) => Mix::NotKnown,
            (Some(mixed), Some(label)) => {
                let mixed = mixed.happened;
                let until = match label.lasts_h {
                    Some(hours) => mixed + Span::from_minutes(i64::from(hours) * 60),
                    None => {
                        let dawn = clock::day_start(mixed, &self.zone);
                        clock::day_start(dawn + Span::from_minutes(26 * 60), &self.zone)
                    }
                };
                if until > self.now { Mix::Good(until) } else { Mix::Past(until) }
            }
        };
        let under = jar
            .last_in
            .zip(jar.label)
            .map(|(put, label)| put.happened + Span::from_minutes(i64::from(label.contact_min)));
        JarSeen { jar, mix, under }
    }

    /// A foot basin as it stands.
    pub fn basin(&self, basin: Basin) -> BasinSeen {
        let wet_min = basin.wet_min.unwrap_or(BASIN_WET_MIN);
        let step = match (basin.wet, basin.drained) {
            (Some((wet, _)), None) => {
                let until = wet.happened + Span::from_minutes(i64::from(wet_min));
                if until > self.now { BasinStep::Wet(until) } else { BasinStep::Drain(until) }
            }
            _ => BasinStep::Dry,
        };
        let left: Vec<DayNumber> = basin.not_used.iter().map(|at| self.number(*at)).collect();
        let rule = |days, part| Rule { days: Some(days), runs: None, part, stops_work: false };
        let stands = |rule: Rule, done: Option<logbook::fact::Stamp>| {
            let done = done.map(|stamp| self.number(stamp.happened));
            let since = self.number(basin.thing.since);
            due(&rule, &Past { since, done, left: &left, runs: 0 }, &self.today())
        };
        let day_end = stands(rule(1, Part::Closing), basin.day_end);
        let week = stands(rule(7, Part::AnyTime), basin.week);
        BasinSeen { step, wet_min, day_end, week, basin }
    }

    /// Foot baths that are over today, less the cleanings that began today.
    fn uncleaned(&self, view: &View<'_>) -> Result<u32, BookError> {
        let visits = view.appointments(self.dawn, self.now)?;
        let over = visits.iter().filter(|visit| visit.basin_min > 0 && visit.end <= self.now);
        let cleaned = view.basins_cleaned(self.dawn, self.night)?;
        Ok(u32::try_from(over.count()).unwrap_or(u32::MAX).saturating_sub(cleaned))
    }
}

/// Everything that is looked after, as it stands now.
pub fn see(view: &View<'_>, days: &Days) -> Result<Upkeep, BookError> {
    let things = view.things()?;
    let of_kind = |kind| things.iter().copied().filter(move |thing| thing.what == kind);
    let mut jars = Vec::new();
    for thing in of_kind(ThingKind::Jar) {
        jars.push(days.jar(view.jar(thing)?));
    }
    let mut basins = Vec::new();
    for thing in of_kind(ThingKind::FootBasin) {
        basins.push(days.basin(view.basin(thing)?));
    }
    let uncleaned = if basins.is_empty() { 0 } else { days.uncleaned(view)? };
    let mut chores: Vec<Kept> = view.chores()?.into_iter().map(|chore| days.kept(chore)).collect();
    chores.sort_by_key(|kept| (!kept.stops, rank(kept.due)));
    let machines = view.machines()?.iter().map(|row| (row.machine, row.number)).collect();
    let stock = view.stock()?;
    Ok(Upkeep { chores, jars, basins, uncleaned, stock, things, machines })
}

/// The chores of the machines, as they stand now.
pub fn of_machines(view: &View<'_>, days: &Days) -> Result<Vec<Kept>, BookError> {
    let about = |chore: &Chore| matches!(chore.rule.about, About::Machine(_));
    Ok(view.chores()?.into_iter().filter(about).map(|chore| days.kept(chore)).collect())
}

/// Chores that keep a machine from being started.
pub fn stops_of(view: &View<'_>, machine: MachineId, days: &Days) -> Result<Vec<Kept>, BookError> {
    let chores = view.chores_that_stop(machine)?;
    Ok(chores.into_iter().map(|chore| days.kept(chore)).filter(|kept| kept.stops).collect())
}

/// The order on a page: late ones float up, the later first.
const fn rank(due: Due) -> (u8, i64) {
    match due {
        Due::Overdue(Late::Runs(_)) => (0, 0),
        Due::Overdue(Late::Since(day)) => (1, day),
        Due::Now => (2, 0),
        Due::Later(at) => (3, at.millis()),
        Due::NotKnown => (4, 0),
        Due::Next(None) => (5, 0),
        Due::Next(Some(day)) => (6, day),
        Due::Left => (7, 0),
        Due::Done => (8, 0),
    }
}

impl Upkeep {
    /// Chores that are due now or within the hour.
    pub fn soon(&self, now: Instant) -> impl Iterator<Item = &Kept> {
        self.chores.iter().filter(move |kept| is_soon(kept.due, now))
    }

    /// Foot basins that somebody has to do something about, now or within the hour.
    pub fn basins_waiting(&self, now: Instant) -> impl Iterator<Item = &BasinSeen> {
        self.basins.iter().filter(move |seen| {
            seen.step != BasinStep::Dry || is_soon(seen.day_end, now) || is_soon(seen.week, now)
        })
    }
}

/// Due now or within the hour.
pub fn is_soon(due: Due, now: Instant) -> bool {
    match due {
        Due::Overdue(_) | Due::Now => true,
        Due::Later(at) => at <= now + SOON,
        _ => false,
    }
}

/// After what a basin is most likely cleaned now: a client, until the salon has closed.
pub const fn likely(seen: &BasinSeen) -> BasinAfter {
    match seen.day_end {
        Due::Now | Due::Overdue(_) => BasinAfter::DayEnd,
        _ => BasinAfter::Client,
    }
}
