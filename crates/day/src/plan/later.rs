//! The rest of a day, seen from the middle of it.

use super::answer::{Plan, Run, Unmet};
use super::problem::{Carry, Cycle, Drying, Problem, Service};

/// Something that did not go as planned, known at the slot from which the rest is planned again.
/// Slots, services and runs are those of the day and plan that it changes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// A client comes so many slots late; one who is there already stays so much longer.
    Late {
        /// Which service.
        service: usize,
        /// By how many slots.
        by: usize,
    },
    /// A client does not come.
    Gone {
        /// Which service.
        service: usize,
    },
    /// Somebody comes unasked.
    WalkIn(Service),
    /// The sets of a run came out wet, or its record did not pass: what is left of them is used
    /// again, washed and packed once more.
    Lost {
        /// Which run.
        run: usize,
    },
    /// A machine stands still until a slot; a run in it is lost.
    Out {
        /// Which machine.
        machine: usize,
        /// First slot in which it may start again; the end of the day or later for "not today".
        until: usize,
    },
}

/// The rest of a day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rest {
    /// The day from `now` on; its slot 0 is slot `now` of the whole day.
    pub problem: Problem,
    /// Which service of the whole day each of its services is; `None` for a walk-in.
    pub services: Vec<Option<usize>>,
    /// What the plan had still to run, in the slots of the rest.
    pub planned: Vec<Run>,
    /// Who was to go without, in the services of the rest.
    pub unmet: Vec<Unmet>,
}

/// What is true at the start of slot `now`, had the day gone as `plan` says until then, and what
/// is known to change.
///
/// What was done is frozen: sets in use, in the wash, soaking, in a machine or cooling appear as
/// what is carried over, the hands that unload a running machine are taken, and a set that is to
/// go from a running machine straight to a chair still does, if its client comes in time.
#[must_use]
pub fn rest(problem: &Problem, plan: &Plan, now: usize, changes: &[Change]) -> Rest {
    let now = now.min(problem.slots.saturating_sub(1));
    let mut changed = problem.clone();
    let mut gone = vec![false; changed.services.len()];
    for change in changes {
        match change {
            // Who is gone is not late.
            Change::Late { service, by } if changed.services[*service].end > now => {
                let s = &mut changed.services[*service];
                s.start += if s.start >= now { *by } else { 0 };
                s.end += by;
            }
            Change::Gone { service } => gone[*service] |= changed.services[*service].start >= now,
            _ => {}
        }
    }
    let lost: Vec<bool> =
        (0..plan.runs.len()).map(|run| is_lost(plan, now, run, changes)).collect();
    let view = View { problem: &changed, plan, now, lost: &lost, gone: &gone };
    let (mut services, mut ids) = view.services();
    for change in changes {
        if let Change::WalkIn(service) = change {
            let (start, end) = (service.start.max(now) - now, service.end.max(now) - now);
            services.push(Service { start, end, ..service.clone() });
            ids.push(None);
        }
    }
    let mut hands = problem.hands[now..].to_vec();
    for run in plan.runs.iter().filter(|run| run.start < now && run.unload >= now) {
        let left = &mut hands[run.unload - now];
        *left = left.saturating_sub(view.cycle(run).unload_min);
    }
    let rest = Problem {
        slots: problem.slots - now,
        machines: view.machines(changes),
        kinds: (0..problem.kinds.len()).map(|k| view.kind(k)).collect(),
        carry: (0..problem.kinds.len()).map(|k| view.carry(k)).collect(),
        services,
        hands,
        ..problem.clone()
    };
    let unmet = plan.unmet.iter().filter_map(|u| {
        let service = ids.iter().position(|id| *id == Some(u.service))?;
        Some(Unmet { service, ..*u })
    });
    Rest { unmet: unmet.collect(), problem: rest, services: ids, planned: view.planned() }
}

/// Whether nothing of a run can be used any more.
fn is_lost(plan: &Plan, now: usize, run: usize, changes: &[Change]) -> bool {
    changes.iter().any(|change| match change {
        Change::Lost { run: lost } => *lost == run && plan.runs[run].start < now,
        Change::Out { machine, .. } => {
            let r = &plan.runs[run];
            r.machine == *machine && r.start < now && r.unload >= now
        }
        _ => false,
    })
}

struct View<'a> {
    problem: &'a Problem,
    plan: &'a Plan,
    now: usize,
    lost: &'a [bool],
    gone: &'a [bool],
}

impl View<'_> {
    fn cycle(&self, run: &Run) -> &Cycle {
        &self.problem.machines[run.machine].cycles[run.cycle]
    }

    /// Services to come. A set that is on its way from a machine to a chair is no need any more.
    fn services(&self) -> (Vec<Service>, Vec<Option<usize>>) {
        let mut services = Vec::new();
        let mut ids = Vec::new();
        for (i, s) in self.problem.services.iter().enumerate() {
            if s.start < self.now || s.start >= self.problem.slots || self.gone[i] {
                continue;
            }
            let needs = s.needs.iter().map(|&(k, n)| (k, n - self.on_its_way(i, k)));
            services.push(Service {
                start: s.start - self.now,
                end: s.end - self.now,
                needs: needs.filter(|need| need.1 > 0).collect(),
                ..s.clone()
            });
            ids.push(Some(i));
        }
        (services, ids)
    }

    /// Sets that a started run without drying brings to a service in time.
    fn on_its_way(&self, service: usize, kind: usize) -> u32 {
        let s = &self.problem.services[service];
        let window = self.problem.slots_down(self.problem.immediate_window_min);
        let of_service =
            self.plan.immediate.iter().filter(|i| (i.service, i.kind) == (service, kind));
        let in_time = of_service.filter(|i| {
            let run = &self.plan.runs[i.run];
            run.start < self.now
                && !self.lost[i.run]
                && !self.gone[service]
                && (run.ready..=run.end + window).contains(&s.start)
        });
        in_time.map(|i| i.n).sum()
    }

    /// Sets served to services that began before now, or on their way.
    fn served(&self, service: usize, kind: usize) -> u32 {
        let s = &self.problem.services[service];
        if s.start >= self.now {
            return self.on_its_way(service, kind);
        }
        let asked: u32 = s.needs.iter().filter(|n| n.0 == kind).map(|n| n.1).sum();
        let unmet = self.plan.unmet.iter().filter(|u| (u.service, u.kind) == (service, kind));
        asked - unmet.map(|u| u.n).sum::<u32>().min(asked)
    }

    fn machines(&self, changes: &[Change]) -> Vec<super::problem::Machine> {
        let mut machines = self.problem.machines.clone();
        for (m, machine) in machines.iter_mut().enumerate() {
            let started =
                self.plan.runs.iter().filter(|run| run.machine == m && run.start < self.now);
            let window = self.problem.slots_down(machine.warm_window_min);
            if let Some(last) = started.max_by_key(|run| run.start) {
                machine.free_from = machine.free_from.max(last.unload);
                machine.warm_until = machine.warm_until.max(Some(last.unload + window));
            }
            for change in changes {
                if let Change::Out { machine: out, until } = change
                    && *out == m
                {
                    machine.free_from = (*until).max(self.now);
                    machine.warm_until = None;
                }
            }
            machine.free_from = machine.free_from.saturating_sub(self.now);
            machine.warm_until = machine.warm_until.and_then(|t| t.checked_sub(self.now));
        }
        machines
    }

    /// What is ready now.
    fn kind(&self, k: usize) -> super::problem::Kind {
        let kind = &self.problem.kinds[k];
        let carried = self.problem.carry[k]
            .ready_at
            .iter()
            .filter(|r| r.0 <= self.now)
            .map(|r| r.1)
            .sum::<u32>();
        let arrived: u32 =
            self.dried().filter(|(_, run)| run.ready <= self.now).map(|(_, run)| run.load[k]).sum();
        let began = |s: &&Service| s.start < self.now;
        let taken: u32 = (self.problem.services.iter().enumerate())
            .filter(|(_, s)| began(s))
            .map(|(i, _)| self.served(i, k) - self.straight(i, k))
            .sum();
        let lost: u32 = self.lost_ready(k);
        let ready = (kind.ready + carried + arrived).saturating_sub(taken + lost);
        super::problem::Kind { ready, ..kind.clone() }
    }

    /// Started runs with drying.
    fn dried(&self) -> impl Iterator<Item = (usize, &Run)> {
        let runs = self.plan.runs.iter().enumerate();
        runs.filter(|(_, run)| run.start < self.now && self.cycle(run).drying != Drying::None)
    }

    /// Sets that went straight from a machine to a service that began.
    fn straight(&self, service: usize, kind: usize) -> u32 {
        let i = self.plan.immediate.iter().filter(|i| (i.service, i.kind) == (service, kind));
        i.map(|i| i.n).sum()
    }

    /// Of the sets of lost runs that were ready, those that are still on the shelf: what came last
    /// goes last.
    fn lost_ready(&self, k: usize) -> u32 {
        let arrived = |run: &Run| run.ready <= self.now;
        let lost: u32 = self
            .dried()
            .filter(|&(i, run)| self.lost[i] && arrived(run))
            .map(|(_, r)| r.load[k])
            .sum();
        let all: u32 = self.dried().filter(|(_, run)| arrived(run)).map(|(_, r)| r.load[k]).sum();
        let carried: u32 =
            self.problem.carry[k].ready_at.iter().filter(|r| r.0 <= self.now).map(|r| r.1).sum();
        let taken: u32 = (0..self.problem.services.len())
            .filter(|&i| self.problem.services[i].start < self.now)
            .map(|i| self.served(i, k) - self.straight(i, k))
            .sum();
        lost.min((self.problem.kinds[k].ready + carried + all).saturating_sub(taken))
    }

    fn carry(&self, k: usize) -> Carry {
        let (now, before) = (self.now, &self.problem.carry[k]);
        let later = |list: &[(usize, u32)]| -> Vec<(usize, u32)> {
            list.iter().filter(|l| l.0 > now).map(|&(t, n)| (t - now, n)).collect()
        };
        let mut carry = Carry {
            ready_at: later(&before.ready_at),
            dirty_at: later(&before.dirty_at),
            ..Carry::default()
        };
        for (i, run) in
            self.plan.runs.iter().enumerate().filter(|(_, run)| run.start < now && run.load[k] > 0)
        {
            let dries = self.cycle(run).drying != Drying::None;
            let out = run.unload.max(now) - now;
            if !dries {
                carry.dirty_at.push((out, self.missed_its_client(i, k)));
            } else if run.ready > now && self.lost[i] {
                carry.dirty_at.push((out, run.load[k]));
            } else if run.ready > now {
                carry.ready_at.push((run.ready - now, run.load[k]));
            }
        }
        carry.dirty += self.lost_ready(k);
        let (back, later_back) = self.back(k);
        carry.dirty_at.extend(later_back);
        carry.dirty_at.retain(|&(_, n)| n > 0);
        self.washed(k, before, back, &mut carry);
        carry
    }

    /// Sets of a started run without drying whose client does not come in time.
    fn missed_its_client(&self, run: usize, kind: usize) -> u32 {
        let of_run = self.plan.immediate.iter().filter(|i| (i.run, i.kind) == (run, kind));
        let to_come = of_run
            .filter(|i| self.problem.services[i.service].start >= self.now || self.gone[i.service]);
        to_come.map(|i| i.n - i.n.min(self.on_its_way(i.service, kind))).sum()
    }

    /// Sets of the day that are back used by now, and those that come back later.
    fn back(&self, k: usize) -> (u32, Vec<(usize, u32)>) {
        let carried = &self.problem.carry[k];
        let mut back = carried.dirty
            + carried.dirty_at.iter().filter(|d| d.0 <= self.now).map(|d| d.1).sum::<u32>();
        let mut later = Vec::new();
        for (i, s) in self.problem.services.iter().enumerate() {
            let n = self.served(i, k);
            if n > 0 && s.end <= self.now {
                back += n;
            } else if n > 0 && s.end <= self.problem.slots {
                later.push((s.end - self.now, n));
            }
        }
        (back, later)
    }

    /// What of the sets that are back is washed, and when it can be loaded.
    fn washed(&self, k: usize, before: &Carry, back: u32, carry: &mut Carry) {
        let (now, passive) = (self.now, self.problem.slots_up(self.problem.passive_min));
        let hand_min = self.problem.kinds[k].hand_min.max(1);
        let loaded: u32 = self.plan.runs.iter().filter(|r| r.start < now).map(|r| r.load[k]).sum();
        let mut loadable = before.loadable;
        for &(t, n) in &before.loadable_at {
            if t <= now {
                loadable += n;
            } else {
                carry.loadable_at.push((t - now, n));
            }
        }
        let mut minutes = before.worked;
        let mut washed = 0;
        for slot in 0..now {
            let of_slot = self.plan.hand_work.iter().filter(|w| (w.kind, w.slot) == (k, slot));
            minutes += of_slot.map(|w| w.minutes).sum::<u32>();
            let by_now = (minutes / hand_min).min(back);
            let fresh = by_now.saturating_sub(washed);
            washed += fresh;
            match (slot + 1 + passive).checked_sub(now) {
                Some(wait) if wait > 0 && fresh > 0 => carry.loadable_at.push((wait, fresh)),
                _ => loadable += fresh,
            }
        }
        carry.worked = if washed < back { minutes - (washed * hand_min).min(minutes) } else { 0 };
        carry.worked = carry.worked.min(hand_min - 1);
        carry.dirty += back - washed;
        carry.loadable = loadable.saturating_sub(loaded);
    }

    /// What the plan had still to run.
    fn planned(&self) -> Vec<Run> {
        let to_come = self.plan.runs.iter().filter(|run| run.start >= self.now);
        let now = self.now;
        to_come
            .map(|run| Run {
                start: run.start - now,
                end: run.end - now,
                unload: run.unload - now,
                ready: run.ready - now,
                ..run.clone()
            })
            .collect()
    }
}
