//! The day as the search reads it: everything that does not depend on the runs, worked out once.

use super::problem::{Drying, Problem};

/// "Never": later than every slot.
pub(super) const NEVER: u16 = u16::MAX;

/// One cycle of one machine, lengths in slots.
#[derive(Debug, Clone)]
pub(super) struct CycleTable {
    pub long: [usize; 2],
    pub cost: [u64; 2],
    pub max_mass: u32,
    pub max_area: u32,
    pub drying: Drying,
    pub wrapped: bool,
    pub load_min: i32,
    pub unload_min: i32,
    /// From unloading to ready.
    pub after: usize,
}

#[derive(Debug, Clone)]
pub(super) struct MachineTable {
    pub warm_window: usize,
    pub free_from: usize,
    /// Warm up to and including this slot; -1 for never.
    pub warm_until: i64,
    pub cycles: Vec<CycleTable>,
}

/// One need of one service.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Need {
    pub service: usize,
    pub kind: usize,
    pub n: u32,
    pub weight: u32,
    pub start: usize,
    pub end: usize,
}

/// The day as the search reads it. Tables over slots are flat: `[slot * kinds + kind]`.
#[derive(Debug, Clone)]
pub(super) struct Table {
    pub slots: usize,
    pub kinds: usize,
    pub slot_min: u64,
    /// Slots that washed sets soak before they can be loaded.
    pub passive: usize,
    /// Slots after a cycle's end within which a set without drying is opened.
    pub window: usize,
    pub hands: Vec<i32>,
    pub machines: Vec<MachineTable>,
    pub mass: Vec<u32>,
    pub area: Vec<u32>,
    pub hand_min: Vec<u32>,
    pub pouch_cost: Vec<u64>,
    pub ready: Vec<u32>,
    pub target: Vec<u32>,
    /// The needs by slot, in a slot the weightiest first.
    pub needs: Vec<Need>,
    /// `needs[first_need[t]..first_need[t + 1]]` start in slot `t`.
    pub first_need: Vec<usize>,
    /// Slots in which a kind is asked for.
    pub need_slots: Vec<Vec<u16>>,
    pub ready_at: Vec<u16>,
    pub dirty_at: Vec<u16>,
    pub loadable_at: Vec<u16>,
    /// Whether sets become loadable later at all.
    pub more_loadable: bool,
    pub dirty: Vec<u32>,
    pub worked: Vec<u32>,
    pub loadable: Vec<u32>,
    /// Slots from a break: how far the start of slot `t` lies from the nearest edge of one.
    pub from_break: Vec<u16>,
}

impl Table {
    pub fn new(problem: &Problem) -> Self {
        let kinds = problem.kinds.len();
        let each =
            |f: fn(&super::problem::Kind) -> u32| problem.kinds.iter().map(f).collect::<Vec<_>>();
        let mut needs: Vec<Need> = Vec::new();
        for (service, s) in problem.services.iter().enumerate() {
            needs.extend(s.needs.iter().filter(|&&(_, n)| n > 0).map(|&(kind, n)| Need {
                service,
                kind,
                n,
                weight: s.weight,
                start: s.start,
                end: s.end,
            }));
        }
        needs.sort_by_key(|n| (n.start, std::cmp::Reverse(n.weight), n.service, n.kind));
        let first_need = (0..=problem.slots)
            .map(|t| needs.partition_point(|n| n.start < t))
            .chain([needs.len()])
            .collect();
        let need_slots = (0..kinds)
            .map(|k| {
                let mut slots: Vec<u16> =
                    needs.iter().filter(|n| n.kind == k).map(|n| n.start as u16).collect();
                slots.dedup();
                slots
            })
            .collect();
        let spread = |list: fn(&super::problem::Carry) -> &[(usize, u32)]| {
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
            slot_min: u64::from(problem.slot_min),
            passive: problem.slots_up(problem.passive_min),
            window: problem.slots_down(problem.immediate_window_min),
            hands: problem.hands.iter().map(|&h| small(h)).collect(),
            machines: problem.machines.iter().map(|m| machine(problem, m)).collect(),
            mass: each(|k| k.mass_g),
            area: each(|k| k.area),
            hand_min: each(|k| k.hand_min),
            pouch_cost: problem.kinds.iter().map(|k| u64::from(k.pouch_cost)).collect(),
            ready: each(|k| k.ready),
            target: each(|k| k.target_ready),
            needs,
            first_need,
            need_slots,
            ready_at: spread(|c| &c.ready_at),
            dirty_at: spread(|c| &c.dirty_at),
            loadable_at: spread(|c| &c.loadable_at),
            more_loadable: problem.carry.iter().any(|c| !c.loadable_at.is_empty()),
            dirty: problem.carry.iter().map(|c| c.dirty).collect(),
            worked: problem.carry.iter().map(|c| c.worked).collect(),
            loadable: problem.carry.iter().map(|c| c.loadable).collect(),
            from_break: from_break(problem),
        }
    }

    /// When each arrival must be there at the latest, were nothing lost but the refused needs: per
    /// kind the slot of arrival `j`, and flat over the slots how many must be there by then.
    pub fn due(&self, refusals: &[u16]) -> (Vec<Vec<u16>>, Vec<u32>) {
        let mut asked = vec![0_u32; self.kinds];
        let mut there = self.ready.clone();
        let mut due: Vec<Vec<u16>> = vec![Vec::new(); self.kinds];
        let mut required = vec![0; (self.slots + 1) * self.kinds];
        for t in 0..=self.slots {
            if t < self.slots {
                for (i, need) in self.needs_at(t).iter().enumerate() {
                    asked[need.kind] += need.n - refused(refusals, self.first_need[t] + i);
                }
            } else {
                asked.iter_mut().zip(&self.target).for_each(|(a, target)| *a += target);
            }
            for k in 0..self.kinds {
                there[k] += u32::from(self.ready_at[t * self.kinds + k]);
                let by_now = asked[k].saturating_sub(there[k]).max(due[k].len() as u32);
                due[k].resize(by_now as usize, t as u16);
                required[t * self.kinds + k] = by_now;
            }
        }
        (due, required)
    }

    /// The needs that start in slot `t`.
    pub fn needs_at(&self, t: usize) -> &[Need] {
        &self.needs[self.first_need[t]..self.first_need[t + 1]]
    }
}

/// How many sets of need `i` are refused.
pub(super) fn refused(refused: &[u16], i: usize) -> u32 {
    refused.iter().filter(|&&r| usize::from(r) == i).count() as u32
}

/// Minutes that were checked to be small.
fn small(minutes: u32) -> i32 {
    i32::try_from(minutes).unwrap_or(i32::MAX)
}

fn machine(problem: &Problem, m: &super::problem::Machine) -> MachineTable {
    let cycle = |c: &super::problem::Cycle| CycleTable {
        long: [c.dur_cold_min, c.dur_warm_min].map(|d| problem.slots_up(c.load_min + d)),
        cost: [c.cost_cold, c.cost_warm].map(u64::from),
        max_mass: c.max_mass_g,
        max_area: if c.wrapped { c.max_area } else { u32::MAX },
        drying: c.drying,
        wrapped: c.wrapped,
        load_min: small(c.load_min),
        unload_min: small(c.unload_min),
        after: problem.slots_up(c.unload_min + c.cool_min),
    };
    MachineTable {
        warm_window: problem.slots_down(m.warm_window_min),
        free_from: m.free_from,
        warm_until: m.warm_until.map_or(-1, |t| i64::try_from(t).unwrap_or(i64::MAX)),
        cycles: m.cycles.iter().map(cycle).collect(),
    }
}

/// A break is half an hour or more, between the first and the last appointment, in which none is
/// under way (ours: the plan has no other word for lunch).
const BREAK_MIN: u32 = 30;

fn from_break(problem: &Problem) -> Vec<u16> {
    let mut busy = vec![false; problem.slots];
    for service in &problem.services {
        let end = service.end.min(problem.slots);
        busy[service.start..end].iter_mut().for_each(|b| *b = true);
    }
    let first = busy.iter().position(|&b| b).unwrap_or(0);
    let last = busy.iter().rposition(|&b| b).unwrap_or(0);
    let mut edges = Vec::new();
    let mut t = first;
    while t < last {
        let length = busy[t..last].iter().take_while(|&&b| !b).count();
        if length >= problem.slots_up(BREAK_MIN) {
            edges.extend([t, t + length]);
        }
        t += length.max(1);
    }
    let away = |t: usize| edges.iter().map(|&e| e.abs_diff(t)).min().unwrap_or(0);
    (0..=problem.slots).map(|t| u16::try_from(away(t)).unwrap_or(u16::MAX)).collect()
}
