//! A day lived by a fixed policy: what a sensible technician does who knows the book, but neither
//! who stays away, comes late or walks in, nor which run fails.
//!
//! Who is free unloads, loads, and washes what the book asks for soonest. Everything keeps the rules
//! of the day plan, so that a day on which nobody waits here is one on which nobody has to wait.

use super::assume::{Assumptions, Event};
use super::choose::Choice;
use super::random::{Coming, Day, Visitor};
use super::template::{Begins, NEVER, Template};
use super::trace::Trace;
use crate::plan::MOST_KINDS;

/// Where the sets of a kind are.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Sets {
    pub stock: u32,
    pub dirty: u32,
    /// Minutes spent on the first of the dirty ones.
    pub worked: i32,
    pub loadable: u32,
    pub soaking: u32,
    /// Ready, about to be ready, or in a run.
    pub secured: u32,
    /// Booked sets whose client came or is not awaited any more.
    pub seen: u32,
}

/// What a machine is doing.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Running {
    /// From when it can be loaded again.
    pub free: usize,
    pub warm_until: i64,
    /// Runs of the day so far.
    pub count: usize,
    /// The run in it.
    pub run: Option<Choice>,
}

/// Sets out of a run without drying, to be opened soon.
#[derive(Debug, Clone, Copy)]
struct AtOnce {
    run: usize,
    kind: usize,
    n: u32,
    ready: usize,
    last: usize,
}

/// The policy and its scratch space.
#[derive(Debug)]
pub(super) struct Life<'t> {
    pub template: &'t Template,
    assumptions: &'t Assumptions,
    pub sets: [Sets; MOST_KINDS],
    pub machines: Vec<Running>,
    /// Minutes left in each slot.
    pub left: Vec<i32>,
    pub returns: Vec<u16>,
    pub arrivals: Vec<u16>,
    loadable_at: Vec<u16>,
    at_once: Vec<AtOnce>,
    /// What was done, where that is asked for.
    pub trace: Option<Trace>,
}

impl<'t> Life<'t> {
    pub fn new(template: &'t Template, assumptions: &'t Assumptions) -> Self {
        Self {
            template,
            assumptions,
            sets: [Sets::default(); MOST_KINDS],
            machines: vec![Running::default(); template.machines.len()],
            left: Vec::with_capacity(template.slots),
            returns: Vec::with_capacity(template.dirty_at.len()),
            arrivals: Vec::with_capacity(template.ready_at.len()),
            loadable_at: Vec::with_capacity(template.loadable_at.len()),
            at_once: Vec::with_capacity(4 * MOST_KINDS),
            trace: None,
        }
    }

    /// Lives the day through; how many clients waited.
    pub fn live(&mut self, day: &Day, begins: &Begins) -> u32 {
        self.begin(day, begins);
        let mut waiting = 0;
        for t in 0..self.template.slots {
            self.unload(t, day);
            self.arrive(t);
            let mut next = day.first_of(t);
            while next != NEVER {
                waiting += u32::from(self.visit(t, next, day.visitors[usize::from(next)]));
                next = day.next_of(next);
            }
            self.come_back(t);
            for m in 0..self.machines.len() {
                if self.machines[m].free <= t {
                    self.consider(t, m, day);
                }
            }
            self.wash(t);
        }
        waiting
    }

    fn begin(&mut self, day: &Day, begins: &Begins) {
        let template = self.template;
        for (sets, begin) in self.sets.iter_mut().zip(begins) {
            *sets = Sets {
                stock: begin.ready,
                dirty: begin.dirty,
                worked: begin.worked,
                loadable: begin.loadable,
                soaking: begin.soaking,
                secured: begin.ready + begin.coming,
                seen: 0,
            };
        }
        for (running, machine) in self.machines.iter_mut().zip(&template.machines) {
            *running = Running {
                free: machine.free_from,
                warm_until: machine.warm_until,
                ..Running::default()
            };
        }
        self.left.clone_from(&day.hands);
        self.returns.clone_from(&template.dirty_at);
        self.arrivals.clone_from(&template.ready_at);
        self.loadable_at.clone_from(&template.loadable_at);
        self.at_once.clear();
    }

    /// Runs that are unloaded in slot `t`: most are ready some slots later, a few begin anew.
    fn unload(&mut self, t: usize, day: &Day) {
        let template = self.template;
        for (m, machine) in template.machines.iter().enumerate() {
            let Some(run) = self.machines[m].run.take_if(|run| run.unload == t) else { continue };
            let cycle = &machine.cycles[run.cycle];
            let index = (m << 16) | self.machines[m].count;
            self.machines[m].count += 1;
            let falls = |event| day.draws.falls(event, index, self.assumptions);
            if falls(Event::Failed) || (cycle.dries && falls(Event::Wet)) {
                for k in 0..template.kinds {
                    let n = u32::from(run.load[k]);
                    self.sets[k].dirty += n;
                    self.sets[k].secured -= n;
                }
                continue;
            }
            for k in (0..template.kinds).filter(|&k| run.load[k] > 0) {
                if cycle.dries {
                    self.arrivals[run.ready * template.kinds + k] += run.load[k];
                } else {
                    self.at_once.push(AtOnce {
                        run: run.number,
                        kind: k,
                        n: u32::from(run.load[k]),
                        ready: run.ready,
                        last: run.end + template.window,
                    });
                }
            }
        }
    }

    fn arrive(&mut self, t: usize) {
        let row = t * self.template.kinds;
        let arrivals = &self.arrivals[row..row + self.template.kinds];
        for (sets, &arrived) in self.sets.iter_mut().zip(arrivals) {
            sets.stock += u32::from(arrived);
        }
    }

    /// Opens what a visitor needs; whether there was too little.
    fn visit(&mut self, t: usize, number: u16, visitor: Visitor) -> bool {
        let template = self.template;
        let visit = template.visits[usize::from(visitor.of)];
        let mut waits = false;
        for &(k, n) in &template.needs[visit.first..visit.last] {
            let n = u32::from(n);
            if visitor.coming != Coming::WalkIn {
                self.sets[k].seen += n;
            }
            if visitor.coming == Coming::Away {
                continue;
            }
            let at_once =
                if self.at_once.is_empty() { 0 } else { self.open_at_once(t, number, k, n) };
            let sets = &mut self.sets[k];
            let from_stock = (n - at_once).min(sets.stock);
            sets.stock -= from_stock;
            sets.secured -= from_stock;
            let unmet = n - at_once - from_stock;
            waits |= unmet > 0;
            let end = usize::from(visitor.end);
            if end < template.slots {
                self.returns[end * template.kinds + k] += (at_once + from_stock) as u16;
            }
            if let Some(trace) = self.trace.as_mut().filter(|_| unmet > 0) {
                trace.unmet.push((number, k, unmet));
            }
        }
        waits
    }

    /// Opens sets out of runs without drying, those first whose time runs out first.
    fn open_at_once(&mut self, t: usize, number: u16, kind: usize, n: u32) -> u32 {
        let mut missing = n;
        while missing > 0 {
            let there =
                self.at_once.iter_mut().filter(|a| a.kind == kind && a.n > 0 && a.ready <= t);
            let Some(soonest) = there.min_by_key(|a| a.last) else { break };
            let here = missing.min(soonest.n);
            soonest.n -= here;
            missing -= here;
            if let Some(trace) = &mut self.trace {
                trace.at_once.push((soonest.run, number, kind, here));
            }
        }
        self.at_once.retain(|a| a.n > 0);
        self.sets[kind].secured -= n - missing;
        n - missing
    }

    /// Sets of kind `k` that wait to be opened at once.
    pub fn at_once_of(&self, k: usize) -> u32 {
        self.at_once.iter().filter(|a| a.kind == k).map(|a| a.n).sum()
    }

    /// Used sets come back, soaked ones can be loaded, and what was to be opened at once and was
    /// not begins anew.
    fn come_back(&mut self, t: usize) {
        let row = t * self.template.kinds;
        for k in 0..self.template.kinds {
            let sets = &mut self.sets[k];
            sets.dirty += u32::from(self.returns[row + k]);
            let loadable = u32::from(self.loadable_at[row + k]);
            sets.loadable += loadable;
            sets.soaking -= loadable;
        }
        if self.at_once.iter().any(|a| a.last <= t) {
            for a in self.at_once.iter().filter(|a| a.last <= t) {
                self.sets[a.kind].dirty += a.n;
                self.sets[a.kind].secured -= a.n;
                if let Some(trace) = &mut self.trace {
                    trace.spoilt += a.n;
                }
            }
            self.at_once.retain(|a| a.last > t);
        }
    }

    fn consider(&mut self, t: usize, m: usize, day: &Day) {
        if self.sets[..self.template.kinds].iter().all(|sets| sets.loadable == 0) {
            return;
        }
        let Some(mut run) = self.choose(t, m, day) else { return };
        let machine = &self.template.machines[m];
        let cycle = &machine.cycles[run.cycle];
        self.left[t] -= cycle.load_min;
        self.left[run.unload] -= cycle.unload_min;
        for k in 0..self.template.kinds {
            let n = u32::from(run.load[k]);
            self.sets[k].loadable -= n;
            self.sets[k].secured += n;
        }
        if let Some(trace) = &mut self.trace {
            run.number = trace.runs.len();
            trace.runs.push((m, t, run));
        }
        let running = &mut self.machines[m];
        running.free = run.unload;
        running.warm_until = running.warm_until.max((run.unload + machine.warm_window) as i64);
        running.run = Some(run);
    }

    /// The hands that are left wash what the book asks for soonest.
    fn wash(&mut self, t: usize) {
        let template = self.template;
        let mut minutes = self.left[t];
        while minutes > 0 {
            let dirty = (0..template.kinds).filter(|&k| self.sets[k].dirty > 0);
            let Some(k) = dirty.min_by_key(|&k| self.due_after(k)) else { return };
            let sets = &mut self.sets[k];
            let here = minutes.min(template.hand_min[k] - sets.worked);
            minutes -= here;
            sets.worked += here;
            if let Some(trace) = &mut self.trace {
                trace.work.push((k, t, here));
            }
            if sets.worked == template.hand_min[k] {
                sets.worked = 0;
                sets.dirty -= 1;
                sets.soaking += 1;
                if let Some(cell) =
                    self.loadable_at.get_mut((t + 1 + template.passive) * template.kinds + k)
                {
                    *cell += 1;
                }
            }
        }
    }

    /// When the book asks for the next set of kind `k` after those washed so far.
    fn due_after(&self, k: usize) -> u16 {
        let sets = &self.sets[k];
        let washed = sets.seen + sets.secured + sets.loadable + sets.soaking;
        self.template.booked[k].get(washed as usize).copied().unwrap_or(NEVER)
    }
}
