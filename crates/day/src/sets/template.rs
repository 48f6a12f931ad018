//! The booked day as the simulation reads it: everything that no chance changes, worked out once.

use crate::plan::{Carry, Drying, MOST_KINDS, MOST_SLOTS, Problem};

/// "Never": later than every slot.
pub(super) const NEVER: u16 = u16::MAX;

/// How early a technician wants sets to be ready, minutes (ours: in trials on invented salons a
/// quarter of an hour gave one day in sixty more with somebody waiting; above two hours little more
/// was gained for many more runs).
const AHEAD_MIN: u32 = 120;

/// One cycle of one machine, lengths in slots.
#[derive(Debug, Clone)]
pub(super) struct Cycle {
    /// Cold and warm, from loading to the end.
    pub long: [usize; 2],
    pub max_mass: u32,
    pub max_area: u32,
    pub dries: bool,
    pub wrapped: bool,
    pub load_min: i32,
    pub unload_min: i32,
    /// From unloading to ready.
    pub after: usize,
}

#[derive(Debug, Clone)]
pub(super) struct Machine {
    pub warm_window: usize,
    pub free_from: usize,
    /// Warm up to and including this slot; -1 for never.
    pub warm_until: i64,
    pub cycles: Vec<Cycle>,
}

/// One appointment; its needs are `needs[first..last]`.
#[derive(Debug, Clone, Copy)]
pub(super) struct Visit {
    pub start: usize,
    pub end: usize,
    pub first: usize,
    pub last: usize,
}

/// The booked day. Tables over slots are flat: `[slot * kinds + kind]`.
#[derive(Debug, Clone)]
pub(super) struct Template {
    pub slots: usize,
    pub kinds: usize,
    /// Minutes that one person has in a slot.
    pub slot_min: i32,
    pub passive: usize,
    pub window: usize,
    /// A run is started so many slots ahead of what the book asks for.
    pub ahead: usize,
    pub hands: Vec<i32>,
    pub visits: Vec<Visit>,
    /// Kind and number.
    pub needs: Vec<(usize, u16)>,
    /// Each kind's booked slots, one entry a set, in order.
    pub booked: Vec<Vec<u16>>,
    /// Slots of the first and the last appointment.
    pub opening: (usize, usize),
    pub machines: Vec<Machine>,
    pub hand_min: Vec<i32>,
    pub mass: Vec<u32>,
    pub area: Vec<u32>,
    pub lightest: u32,
    pub ready_at: Vec<u16>,
    pub loadable_at: Vec<u16>,
    pub dirty_at: Vec<u16>,
}

/// Where the sets of one kind are when the day begins.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Begin {
    pub ready: u32,
    pub dirty: u32,
    pub loadable: u32,
    pub worked: i32,
    /// Ready and loadable later today.
    pub coming: u32,
    pub soaking: u32,
}

pub(super) type Begins = [Begin; MOST_KINDS];

/// Where the sets of `problem` are when its day begins.
pub(super) fn begins(problem: &Problem) -> Begins {
    let mut begins = Begins::default();
    let sum = |list: &[(usize, u32)]| list.iter().map(|&(_, n)| n).sum();
    for ((begin, kind), carry) in begins.iter_mut().zip(&problem.kinds).zip(&problem.carry) {
        *begin = Begin {
            ready: kind.ready,
            dirty: carry.dirty,
            loadable: carry.loadable,
            worked: whole(carry.worked),
            coming: sum(&carry.ready_at),
            soaking: sum(&carry.loadable_at),
        };
    }
    begins
}

impl Template {
    /// `problem` is one that [`Problem::check`] takes.
    pub fn new(problem: &Problem) -> Self {
        let kinds = problem.kinds.len();
        let mut needs = Vec::new();
        let mut booked = vec![Vec::new(); kinds];
        let mut visits = Vec::with_capacity(problem.services.len());
        for service in &problem.services {
            let first = needs.len();
            for &(kind, n) in service.needs.iter().filter(|&&(_, n)| n > 0) {
                needs.push((kind, n as u16));
                booked[kind].extend((0..n).map(|_| service.start as u16));
            }
            // What ends after the day ends after it in any case.
            let end = service.end.min(2 * MOST_SLOTS);
            visits.push(Visit { start: service.start, end, first, last: needs.len() });
        }
        booked.iter_mut().for_each(|slots| slots.sort_unstable());
        let starts = || visits.iter().map(|visit| visit.start);
        let spread = |list: fn(&Carry) -> &[(usize, u32)]| {
            let mut flat = vec![0_u16; (problem.slots + 1) * kinds];
            for (kind, carry) in problem.carry.iter().enumerate() {
                for &(slot, n) in list(carry) {
                    flat[slot * kinds + kind] += n as u16;
                }
            }
            flat
        };
        Self {
            slots: problem.slots,
            kinds,
            slot_min: whole(problem.slot_min),
            passive: problem.slots_up(problem.passive_min),
            window: problem.slots_down(problem.immediate_window_min),
            ahead: problem.slots_down(AHEAD_MIN),
            hands: problem.hands.iter().map(|&h| whole(h)).collect(),
            opening: (starts().min().unwrap_or(0), starts().max().unwrap_or(0)),
            visits,
            needs,
            booked,
            machines: problem.machines.iter().map(|m| machine(problem, m)).collect(),
            hand_min: problem.kinds.iter().map(|k| whole(k.hand_min)).collect(),
            mass: problem.kinds.iter().map(|k| k.mass_g).collect(),
            area: problem.kinds.iter().map(|k| k.area).collect(),
            lightest: problem.kinds.iter().map(|k| k.mass_g).min().unwrap_or(0),
            ready_at: spread(|c| &c.ready_at),
            loadable_at: spread(|c| &c.loadable_at),
            dirty_at: spread(|c| &c.dirty_at),
        }
    }
}

/// Minutes that were checked to be small.
fn whole(minutes: u32) -> i32 {
    i32::try_from(minutes).unwrap_or(i32::MAX)
}

fn machine(problem: &Problem, m: &crate::plan::Machine) -> Machine {
    let cycle = |c: &crate::plan::Cycle| Cycle {
        long: [c.dur_cold_min, c.dur_warm_min].map(|d| problem.slots_up(c.load_min + d)),
        max_mass: c.max_mass_g,
        max_area: if c.wrapped { c.max_area } else { u32::MAX },
        dries: c.drying != Drying::None,
        wrapped: c.wrapped,
        load_min: whole(c.load_min),
        unload_min: whole(c.unload_min),
        after: problem.slots_up(c.unload_min + c.cool_min),
    };
    Machine {
        warm_window: problem.slots_down(m.warm_window_min),
        free_from: m.free_from,
        warm_until: m.warm_until.map_or(-1, |t| i64::try_from(t).unwrap_or(i64::MAX)),
        cycles: m.cycles.iter().map(cycle).collect(),
    }
}
