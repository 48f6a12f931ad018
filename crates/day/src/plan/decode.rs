//! From wishes to a day that can be lived: one pass over the slots.
//!
//! The search does not move sets about. It asks for runs (which machine, which cycle, not before
//! when), and this pass gives each run the sets that are needed soonest and are washed by then,
//! lets whoever is free wash what is needed soonest, and unloads when somebody can. What comes out
//! keeps every rule of the day, so that no wish is ever infeasible, only poor.

mod tell;
mod weigh;

pub(super) use weigh::{AT_ONCE_EXPOSURE, DELAYS, penalty};

use super::answer::Run;
use super::hands::Washing;
use super::order::{Criteria, Criterion};
use super::problem::{Drying, MOST_KINDS};
use super::table::{CycleTable, NEVER, Table, refused};

/// A run that the search asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) struct Wish {
    /// Not before this slot.
    pub start: u16,
    pub machine: u8,
    pub cycle: u8,
    /// At most so many sets of each kind.
    pub most: [u8; MOST_KINDS],
}

/// What the search changes.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Genome {
    /// By start, then by machine.
    pub wishes: Vec<Wish>,
    /// Needs (index into [`Table::needs`]) of which one set is left unmet on purpose; sorted.
    pub refused: Vec<u16>,
}

/// A run as it came out.
#[derive(Debug, Clone, Copy)]
pub(super) struct Made {
    pub wish: u16,
    pub machine: u8,
    pub cycle: u8,
    pub warm: bool,
    pub start: u16,
    pub end: u16,
    pub unload: u16,
    pub ready: u16,
    pub load: [u16; MOST_KINDS],
}

#[derive(Debug, Clone, Copy, Default)]
struct MachineState {
    free: usize,
    /// Last unloading, plus the slots for which it keeps warm.
    warm_until: i64,
    /// Next wish of this machine, index into `queue`.
    next: usize,
    last: usize,
}

/// Per kind, where its sets are.
#[derive(Debug, Clone, Copy, Default)]
struct Sets {
    stock: u32,
    /// Loadable from before.
    carried: u32,
    loaded: u32,
    /// Of the loaded ones, those that were washed today.
    washed: u32,
    /// Needs that found nothing.
    lost: u32,
}

/// The pass and its scratch space.
#[derive(Debug)]
pub(super) struct Decoder<'t> {
    pub table: &'t Table,
    /// Runs of the last pass, by start.
    pub made: Vec<Made>,
    /// Needs of the last pass that went without, and by how many sets.
    pub unmet: Vec<(usize, u32)>,
    /// `required[t * kinds + k]`: sets that must have arrived by slot `t`.
    required: Vec<u32>,
    /// `due[k][j]`: slot by which the arrival number `j` must be there.
    due: Vec<Vec<u16>>,
    refused: Vec<u16>,
    refusals_known: bool,
    /// Sets that each need is to get, and flat over slots how many that makes.
    wanted: Vec<u16>,
    wanted_at: Vec<u16>,
    sets: [Sets; MOST_KINDS],
    machines: Vec<MachineState>,
    queue: Vec<u16>,
    returns: Vec<u16>,
    arrivals: Vec<u16>,
    /// Slots in which used sets came back, each kind.
    back: Vec<Vec<u16>>,
    washing: Washing,
    at_once: Vec<u16>,
    /// Sets taken from the stock in a slot.
    taken: Vec<u16>,
    /// What had arrived of one kind by each slot.
    there: Vec<u32>,
    dealt: Option<Vec<(usize, usize, u32)>>,
    /// What an earlier plan had: start, machine, cycle.
    planned: Vec<(u16, u8, u8)>,
}

impl<'t> Decoder<'t> {
    pub fn new(table: &'t Table) -> Self {
        let cells = (table.slots + 1) * table.kinds;
        Self {
            table,
            made: Vec::new(),
            unmet: Vec::new(),
            required: vec![0; cells],
            due: vec![Vec::new(); table.kinds],
            refused: Vec::new(),
            refusals_known: false,
            wanted: Vec::new(),
            wanted_at: vec![0; cells],
            there: vec![0; table.slots + 1],
            sets: [Sets::default(); MOST_KINDS],
            machines: vec![MachineState::default(); table.machines.len()],
            queue: Vec::new(),
            returns: vec![0; cells],
            arrivals: vec![0; cells],
            back: vec![Vec::new(); table.kinds],
            washing: Washing::default(),
            at_once: vec![0; cells],
            taken: vec![0; cells],
            dealt: None,
            planned: Vec::new(),
        }
    }

    /// From now on changes against these runs are counted.
    pub fn planned(&mut self, runs: &[Run]) {
        self.planned =
            runs.iter().map(|r| (r.start as u16, r.machine as u8, r.cycle as u8)).collect();
    }

    /// Lives the day through; what it comes to.
    pub fn decode(&mut self, genome: &Genome, order: &[Criterion]) -> Criteria {
        self.reset(genome);
        for t in 0..self.table.slots {
            self.begin_slot(t);
            self.start_runs(t, genome);
        }
        self.arrive(self.table.slots);
        self.weigh(order)
    }

    fn reset(&mut self, genome: &Genome) {
        let table = self.table;
        if !self.refusals_known || self.refused != genome.refused {
            self.refused.clone_from(&genome.refused);
            self.refusals_known = true;
            (self.due, self.required) = table.due(&self.refused);
            self.wanted.clear();
            self.wanted_at.fill(0);
            for (i, need) in table.needs.iter().enumerate() {
                let wanted = (need.n - refused(&self.refused, i)) as u16;
                self.wanted.push(wanted);
                self.wanted_at[need.start * table.kinds + need.kind] += wanted;
            }
        }
        for k in 0..table.kinds {
            self.sets[k] =
                Sets { stock: table.ready[k], carried: table.loadable[k], ..Sets::default() };
            self.back[k].clear();
            self.back[k].resize(table.dirty[k] as usize, 0);
        }
        self.made.clear();
        self.unmet.clear();
        self.washing.begin(&table.hands);
        self.returns.copy_from_slice(&table.dirty_at);
        self.arrivals.copy_from_slice(&table.ready_at);
        self.at_once.fill(0);
        self.taken.fill(0);
        self.queue.clear();
        for (m, machine) in table.machines.iter().enumerate() {
            let next = self.queue.len();
            let wishes =
                genome.wishes.iter().enumerate().filter(|(_, w)| usize::from(w.machine) == m);
            self.queue.extend(wishes.map(|(i, _)| i as u16));
            self.machines[m] = MachineState {
                free: machine.free_from,
                warm_until: machine.warm_until,
                next,
                last: self.queue.len(),
            };
        }
    }

    fn arrive(&mut self, t: usize) {
        let row = t * self.table.kinds;
        let arrivals = &self.arrivals[row..row + self.table.kinds];
        for (sets, &arrived) in self.sets.iter_mut().zip(arrivals) {
            sets.stock += u32::from(arrived);
        }
    }

    /// What becomes ready arrives, clients begin, used sets come back.
    fn begin_slot(&mut self, t: usize) {
        let table = self.table;
        let row = t * table.kinds;
        self.arrive(t);
        for i in table.first_need[t]..table.first_need[t + 1] {
            let need = table.needs[i];
            let wanted = u32::from(self.wanted[i]);
            let at_once = wanted.min(u32::from(self.at_once[row + need.kind]));
            let sets = &mut self.sets[need.kind];
            let from_stock = (wanted - at_once).min(sets.stock);
            let lost = wanted - at_once - from_stock;
            sets.stock -= from_stock;
            sets.lost += lost;
            self.at_once[row + need.kind] -= at_once as u16;
            self.taken[row + need.kind] += from_stock as u16;
            let unmet = lost + need.n - wanted;
            if unmet > 0 {
                self.unmet.push((i, unmet));
            }
            if let Some(dealt) = self.dealt.as_mut().filter(|_| at_once > 0) {
                dealt.push((t, i, at_once));
            }
            if need.end <= table.slots {
                self.returns[need.end * table.kinds + need.kind] += (at_once + from_stock) as u16;
            }
        }
        let returns = &self.returns[row..row + table.kinds];
        for (back, &returned) in self.back.iter_mut().zip(returns) {
            if returned > 0 {
                back.resize(back.len() + usize::from(returned), t as u16);
            }
        }
        if table.more_loadable {
            for (sets, &more) in
                self.sets.iter_mut().zip(&table.loadable_at[row..row + table.kinds])
            {
                sets.carried += u32::from(more);
            }
        }
    }

    fn start_runs(&mut self, t: usize, genome: &Genome) {
        for m in 0..self.machines.len() {
            while self.machines[m].free <= t && self.machines[m].next < self.machines[m].last {
                let index = self.queue[self.machines[m].next];
                let wish = &genome.wishes[usize::from(index)];
                if usize::from(wish.start) > t || !self.start(t, index, wish) {
                    break;
                }
                self.machines[m].next += 1;
            }
        }
    }

    /// Starts a run if hands are there; `false` says to ask again in the next slot.
    fn start(&mut self, t: usize, index: u16, wish: &Wish) -> bool {
        let table = self.table;
        let machine = &table.machines[usize::from(wish.machine)];
        let cycle = &machine.cycles[usize::from(wish.cycle)];
        let state = self.machines[usize::from(wish.machine)];
        if self.washing.left(t) < cycle.load_min {
            return false;
        }
        self.washing.take(t, cycle.load_min);
        // A warm machine may be planned as a cold one: longer and dearer, but unloaded later.
        let warm = t as i64 <= state.warm_until;
        let found =
            [true, false].iter().filter(|&&as_warm| warm || !as_warm).find_map(|&as_warm| {
                let end = t + cycle.long[usize::from(as_warm)];
                self.unloading(cycle, end).map(|unload| (as_warm, end, unload))
            });
        let Some((warm, end, unload)) = found else {
            self.washing.take(t, -cycle.load_min);
            return t + cycle.long[0].min(cycle.long[1]) + cycle.after > table.slots;
        };
        let load = self.fill(t, cycle, &wish.most, (end, unload + cycle.after));
        if load.iter().all(|&n| n == 0) {
            self.washing.take(t, -cycle.load_min);
            return true;
        }
        self.washing.take(unload, cycle.unload_min);
        let state = &mut self.machines[usize::from(wish.machine)];
        state.free = unload;
        state.warm_until = state.warm_until.max((unload + machine.warm_window) as i64);
        self.made.push(Made {
            wish: index,
            machine: wish.machine,
            cycle: wish.cycle,
            warm,
            start: t as u16,
            end: end as u16,
            unload: unload as u16,
            ready: (unload + cycle.after) as u16,
            load,
        });
        true
    }

    /// When a run that is over at `end` is unloaded: by whoever is free first, and without drying
    /// at once. `None` where those hands are taken, or it would be ready after the day.
    fn unloading(&self, cycle: &CycleTable, end: usize) -> Option<usize> {
        let hands = self.table.hands.get(end..)?;
        let unload = match cycle.drying {
            Drying::None => end,
            _ => end + hands.iter().position(|&h| h >= cycle.unload_min)?,
        };
        let there = self.washing.left(unload) >= cycle.unload_min;
        (unload < self.table.slots && there && unload + cycle.after <= self.table.slots)
            .then_some(unload)
    }

    /// The sets that are needed soonest, washed by slot `t`, until the load is full.
    fn fill(
        &mut self,
        t: usize,
        cycle: &CycleTable,
        most: &[u8; MOST_KINDS],
        (end, ready): (usize, usize),
    ) -> [u16; MOST_KINDS] {
        let table = self.table;
        let mut load = [0_u16; MOST_KINDS];
        let mut left = [0_u32; MOST_KINDS];
        let mut next = [0_usize; MOST_KINDS];
        let mut due = [NEVER; MOST_KINDS];
        let last = (end + table.window).min(table.slots - 1);
        for k in 0..table.kinds {
            let sets = &self.sets[k];
            let waiting = sets.carried + self.back[k].len() as u32 - sets.loaded;
            left[k] = waiting.min(u32::from(most[k]));
            if cycle.drying == Drying::None && left[k] > 0 {
                left[k] = left[k].min(self.room_at_once(k, ready, last));
            }
            let late = self.required[(ready - 1) * table.kinds + k];
            next[k] = (sets.loaded + sets.lost).max(late) as usize;
            due[k] = self.due[k].get(next[k]).copied().unwrap_or(NEVER);
        }
        let (mut mass, mut area) = (cycle.max_mass, cycle.max_area);
        loop {
            let mut soonest = (NEVER, 0);
            for k in 0..table.kinds {
                let fits = table.mass[k] <= mass && (!cycle.wrapped || table.area[k] <= area);
                if left[k] > 0 && fits && due[k] < soonest.0 {
                    soonest = (due[k], k);
                }
            }
            let (soonest, k) = soonest;
            if soonest == NEVER {
                break;
            }
            if !self.wash(k, t) {
                left[k] = 0;
                continue;
            }
            load[k] += 1;
            left[k] -= 1;
            next[k] += 1;
            due[k] = self.due[k].get(next[k]).copied().unwrap_or(NEVER);
            mass -= table.mass[k];
            area -= if cycle.wrapped { table.area[k] } else { 0 };
        }
        for (k, &n) in load.iter().enumerate().take(table.kinds) {
            if cycle.drying == Drying::None {
                self.promise_at_once(k, ready, last, u32::from(n));
            } else {
                self.arrivals[ready * table.kinds + k] += n;
            }
        }
        load
    }

    /// Needs of slot `s` that no run without drying has been promised yet.
    fn free_needs(&self, k: usize, s: usize) -> u32 {
        let cell = s * self.table.kinds + k;
        u32::from(self.wanted_at[cell] - self.at_once[cell])
    }

    fn room_at_once(&self, k: usize, ready: usize, last: usize) -> u32 {
        (ready..=last).map(|s| self.free_needs(k, s)).sum()
    }

    fn promise_at_once(&mut self, k: usize, ready: usize, last: usize, mut n: u32) {
        for s in ready..=last {
            let here = n.min(self.free_needs(k, s));
            self.at_once[s * self.table.kinds + k] += here as u16;
            n -= here;
        }
    }

    /// Takes one more set of kind `k` for a run that starts at `t`, if it can be washed by then.
    fn wash(&mut self, k: usize, t: usize) -> bool {
        let table = self.table;
        let sets = &mut self.sets[k];
        if sets.loaded - sets.washed < sets.carried {
            sets.loaded += 1;
            return true;
        }
        let Some(until) = t.checked_sub(table.passive) else {
            return false;
        };
        let back = usize::from(self.back[k][sets.washed as usize]);
        let begun = if sets.washed == 0 { table.worked[k] } else { 0 };
        if !self.washing.promise(k, back, until, table.hand_min[k] - begun) {
            return false;
        }
        sets.loaded += 1;
        sets.washed += 1;
        true
    }
}
