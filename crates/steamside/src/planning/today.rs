//! From what the book says now to a day that can be planned.

use super::room::{Room, Takes};
use super::stock::{OfKind, Stock, expected};
use crate::clock;
use day::plan::{Carry, Cycle, Drying, Kind, Machine, Problem, Service};
use jiff::tz::TimeZone;
use load::{SetKind, SetState};
use logbook::book::BookError;
use logbook::fact::{self, DayRules, KindFigures, PlanOrder};
use logbook::view::{self, Appointment, HandTimes, View};
use measure::{Instant, MachineId, Span};
use std::collections::BTreeMap;

/// Length of a slot, minutes.
pub const SLOT_MIN: u32 = 5;
/// Hands and machine after the last appointment, minutes (ours: long enough for a long cycle).
const TAIL_MIN: i64 = 90;
/// Where nobody gave working times: somebody is there so long before the first appointment.
const BEFORE_MIN: i64 = 30;
/// What must be ready when the next day begins: enough for its first two hours (ours).
const MORNING_MIN: i64 = 120;
/// A set that was opened is in use so long where its visit is not in the book (ours).
pub const VISIT_MIN: i64 = 60;
/// From so many times on the book's own minutes count (ours).
const ENOUGH: u32 = 8;
/// An undried set that is released unpouched is for use at once and in no plan.
pub const SHELF: [SetState; 1] = [SetState::Ready];

/// A day as it can be planned from now on.
#[derive(Debug, Clone)]
pub struct Today {
    /// From now to the end of the day.
    pub problem: Problem,
    /// The moment at which slot 0 begins.
    pub origin: Instant,
    /// The machines of the problem: id and number on the door.
    pub machines: Vec<(MachineId, u32)>,
    /// Every appointment of the day from now on, those under way among them.
    pub appointments: Vec<Appointment>,
    /// Spares of each kind that are on the shelf and promised to nobody: not among the ready sets
    /// of the problem.
    pub spares: Vec<u32>,
    /// What counts first.
    pub order: PlanOrder,
    /// Working times are in the book; otherwise they are assumed from the appointments.
    pub rota: bool,
    /// Appointments of which nobody said what they need.
    pub unknown: usize,
    /// How long washing and packing take here, by the book's own times.
    pub hand_times: HandTimes,
    /// What goes on the trays of each machine.
    pub room: Room,
}

impl Today {
    /// The moment at which a slot begins.
    pub fn moment(&self, slot: usize) -> Instant {
        self.origin + Span::from_minutes(slot as i64 * i64::from(SLOT_MIN))
    }
}

/// The day from `now` on. `None` where nothing is left of it: no appointment and no working time.
pub fn today(view: &View<'_>, now: Instant, zone: &TimeZone) -> Result<Option<Today>, BookError> {
    let dawn = clock::day_start(now, zone);
    // Of a civil day no more than 25 hours; the next day's start follows from any moment in it.
    let night = clock::day_start(dawn + Span::from_minutes(26 * 60), zone);
    let mut appointments: Vec<Appointment> = view.appointments(now, night)?;
    // A shift that is over still says that somebody gave working times.
    let shifts = view.shifts(dawn, night)?;
    let last = appointments.iter().map(|a| a.end + Span::from_minutes(TAIL_MIN));
    let Some(end) = last.chain(shifts.iter().map(|shift| shift.to)).max().filter(|end| *end > now)
    else {
        return Ok(None);
    };
    let slot = i64::from(SLOT_MIN) * 60_000;
    let origin = Instant::from_millis(now.millis().div_euclid(slot) * slot);
    let grid = Grid { now, origin, slots: slots_between(origin, end.min(night)).clamp(1, 288) };
    let rules = view.day_rules()?.value;
    let stock = Stock::read(view, &grid, &mut appointments)?;
    let mut machines = Vec::new();
    let mut hands = hands(view, &grid, &shifts, &appointments)?;
    let mut planned = Vec::new();
    let words: Vec<SetKind> = stock.kinds.keys().cloned().collect();
    let mut in_use = view.machines()?;
    in_use.retain(|machine| machine.out_since.is_none());
    let room = Room::read(view, &words, &in_use)?;
    for (at, machine) in in_use.iter().enumerate() {
        let limits = Limits { area: room.most_area(at), takes: room.takes(view, machine)? };
        planned.push(plan_machine(view, &grid, (machine, &limits), &mut hands)?);
        machines.push((machine.machine, machine.number));
    }
    let tomorrow = view.appointments(night, night + Span::from_minutes(24 * 60))?;
    let Kinds { kinds, carry, spares } = plan_kinds(view, &stock, &room, &tomorrow)?;
    let index: BTreeMap<&SetKind, usize> =
        stock.kinds.keys().enumerate().map(|(i, k)| (k, i)).collect();
    // Who is here and has no set yet needs one now.
    let waits = |a: &&Appointment| a.start >= origin || a.needs.iter().any(|need| need.1 > 0);
    let to_come: Vec<&Appointment> = appointments.iter().filter(waits).collect();
    let services = to_come.iter().map(|a| plan_service(&grid, a, &index)).collect();
    let problem = Problem {
        name: String::new(),
        slot_min: SLOT_MIN,
        slots: grid.slots,
        passive_min: rules.passive_min,
        immediate_window_min: immediate(&rules),
        kinds,
        machines: planned,
        services,
        hands,
        carry,
    };
    Ok(Some(Today {
        problem,
        origin,
        machines,
        unknown: appointments.iter().filter(|a| a.service.is_none()).count(),
        appointments,
        spares,
        order: rules.order,
        rota: !shifts.is_empty(),
        hand_times: view.hand_times()?,
        room,
    }))
}

/// What goes into a machine at most.
struct Limits {
    /// Room on the trays, in the unit of [`Room`].
    area: u32,
    /// What each programme takes.
    takes: Vec<Takes>,
}

/// No set waits longer for its client than the book's rules let it.
fn immediate(rules: &DayRules) -> u32 {
    rules.immediate_min.min(60)
}

/// The slots of the rest of the day.
pub struct Grid {
    /// The moment from which the day is planned.
    pub now: Instant,
    /// Where slot 0 begins.
    pub origin: Instant,
    /// How many slots there are.
    pub slots: usize,
}

impl Grid {
    /// The slot that a moment lies in; 0 for what is past.
    fn slot(&self, at: Instant) -> usize {
        usize::try_from((at - self.origin).minutes().div_euclid(i64::from(SLOT_MIN))).unwrap_or(0)
    }

    /// The first slot that begins at a moment or after it.
    pub fn slot_after(&self, at: Instant) -> usize {
        slots_between(self.origin, at)
    }
}

fn slots_between(from: Instant, to: Instant) -> usize {
    let slot = i64::from(SLOT_MIN) * 60_000;
    usize::try_from(((to - from).millis() + slot - 1).div_euclid(slot)).unwrap_or(0)
}

/// Minutes of hands in each slot: whoever is there, is not at lunch and serves nobody, less the
/// basins that are cleaned after a visit.
fn hands(
    view: &View<'_>,
    grid: &Grid,
    shifts: &[view::Shift],
    appointments: &[Appointment],
) -> Result<Vec<u32>, BookError> {
    let mut people = vec![0_u32; grid.slots];
    let mut add = |from: Instant, to: Instant| {
        let end = grid.slot(to).min(grid.slots);
        people[grid.slot_after(from).min(end)..end].iter_mut().for_each(|p| *p += 1);
    };
    for shift in shifts {
        match shift.lunch {
            Some((from, to)) => {
                add(shift.from, from);
                add(to, shift.to);
            }
            None => add(shift.from, shift.to),
        }
    }
    if shifts.is_empty() {
        let team = view.people()?.iter().filter(|person| person.left.is_none()).count().max(1);
        let from = appointments.iter().map(|a| a.start).min().unwrap_or(grid.origin);
        let to = appointments.iter().map(|a| a.end).max().unwrap_or(grid.origin);
        for _ in 0..team {
            add(from - Span::from_minutes(BEFORE_MIN), to + Span::from_minutes(TAIL_MIN));
        }
    }
    let mut minutes: Vec<u32> = people.iter().map(|p| p * SLOT_MIN).collect();
    for appointment in appointments {
        let end = grid.slot_after(appointment.end).min(grid.slots);
        let busy = grid.slot(appointment.start).min(end)..end;
        minutes[busy].iter_mut().for_each(|m| *m = m.saturating_sub(SLOT_MIN));
        let mut basin = appointment.basin_min;
        for left in &mut minutes[end..] {
            let here = basin.min(*left);
            *left -= here;
            basin -= here;
        }
    }
    Ok(minutes)
}

fn plan_machine(
    view: &View<'_>,
    grid: &Grid,
    (machine, limits): (&view::Machine, &Limits),
    hands: &mut [u32],
) -> Result<Machine, BookError> {
    let figures = view.machine_figures(machine.machine)?.value;
    let window = Span::from_minutes(i64::from(figures.warm_window_min));
    let last = view.last_runs(machine.machine, None, 1)?.first().and_then(|run| run.unloaded);
    let mut warm = last.map(|at| at + window).filter(|until| *until >= grid.origin);
    let mut free_from = 0;
    for run in
        view.runs_open()?.iter().filter(|r| r.machine == machine.machine && r.unloaded.is_none())
    {
        let (end, _) = expected(run, &figures.cycles);
        free_from = grid.slot_after(end.max(grid.now));
        warm = Some(end.max(grid.now) + window);
        if let Some(hands) = hands.get_mut(free_from) {
            *hands = hands.saturating_sub(UNLOAD_MIN);
        }
    }
    Ok(Machine {
        id: machine.number.to_string(),
        warm_window_min: figures.warm_window_min,
        free_from,
        warm_until: warm.map(|until| grid.slot(until)),
        // A programme for pouches that cannot have them has no place in a plan.
        cycles: (figures.cycles.iter().zip(&limits.takes))
            .filter(|(cycle, takes)| !cycle.wrapped || takes.pouches)
            .map(|(cycle, takes)| plan_cycle(cycle, limits.area, takes.most_g))
            .collect(),
    })
}

/// Taking out the load that is in a machine now, minutes of hands (ours).
const UNLOAD_MIN: u32 = 2;

/// The lesser of what the programme takes and what comes out of it dry.
fn plan_cycle(cycle: &fact::DayCycle, max_area: u32, most_g: Option<u32>) -> Cycle {
    Cycle {
        id: cycle.programme.word().to_owned(),
        dur_cold_min: cycle.cold_min,
        dur_warm_min: cycle.warm_min,
        max_mass_g: most_g.unwrap_or(cycle.max_mass_g),
        max_area,
        drying: match cycle.drying {
            fact::Drying::None => Drying::None,
            fact::Drying::Short => Drying::Short,
            fact::Drying::Full => Drying::Full,
        },
        wrapped: cycle.wrapped,
        load_min: cycle.load_min,
        unload_min: cycle.unload_min,
        cool_min: cycle.cool_min,
        cost_cold: cycle.cold_cents,
        cost_warm: cycle.warm_cents,
    }
}

/// The kinds of a problem, where their sets are, and the spares that are kept back.
struct Kinds {
    kinds: Vec<Kind>,
    carry: Vec<Carry>,
    spares: Vec<u32>,
}

fn plan_kinds(
    view: &View<'_>,
    stock: &Stock,
    room: &Room,
    tomorrow: &[Appointment],
) -> Result<Kinds, BookError> {
    let times = view.hand_times()?;
    let mut all = Kinds { kinds: Vec::new(), carry: Vec::new(), spares: Vec::new() };
    for (at, (kind, of_kind)) in stock.kinds.iter().enumerate() {
        let mut figures = view.kind_figures(kind)?.value;
        figures.mass_g = room.mass_g(at).unwrap_or(figures.mass_g);
        figures.area_cm2 = room.area(at);
        all.kinds.push(plan_kind(&figures, of_kind, &times, morning(tomorrow, kind)));
        all.carry.push(of_kind.carry.clone());
        all.spares.push(figures.spares.min(of_kind.ready));
    }
    Ok(all)
}

/// Spares stay on the shelf: they are promised to nobody.
fn plan_kind(figures: &KindFigures, stock: &OfKind, times: &HandTimes, morning: u32) -> Kind {
    let enough = |both: &(view::Spread, view::Spread)| both.0.count.min(both.1.count) >= ENOUGH;
    let learnt = times
        .wash
        .zip(times.pack)
        .filter(enough)
        .map(|(wash, pack)| (wash.median_s + pack.median_s).div_ceil(60));
    Kind {
        id: figures.kind.word().to_owned(),
        owned: stock.owned,
        ready: stock.ready.saturating_sub(figures.spares),
        mass_g: figures.mass_g,
        area: figures.area_cm2,
        hand_min: learnt.unwrap_or(figures.hand_min).max(1),
        target_ready: figures
            .target_ready
            .max(morning)
            .min(stock.owned.saturating_sub(figures.spares)),
        pouch_cost: figures.pouch_cents,
    }
}

/// What the first hours of the next day need.
fn morning(tomorrow: &[Appointment], kind: &SetKind) -> u32 {
    let Some(first) = tomorrow.iter().map(|a| a.start).min() else { return 0 };
    let early = tomorrow.iter().filter(|a| a.start < first + Span::from_minutes(MORNING_MIN));
    early.flat_map(|a| &a.needs).filter(|need| need.0 == *kind).map(|need| need.1).sum()
}

fn plan_service(grid: &Grid, a: &Appointment, index: &BTreeMap<&SetKind, usize>) -> Service {
    let mut needs: Vec<(usize, u32)> = a
        .needs
        .iter()
        .filter(|need| need.1 > 0)
        .filter_map(|(kind, n)| Some((*index.get(kind)?, *n)))
        .collect();
    needs.sort_unstable();
    let start = grid.slot(a.start).min(grid.slots - 1);
    Service {
        id: a.visit.to_string(),
        start,
        end: grid.slot_after(a.end).max(start),
        weight: a.weight.max(1),
        needs,
    }
}
