//! Where the sets of each kind are: on the shelf, in the bin, in a machine, at a chair.

use super::today::{Grid, SHELF, VISIT_MIN};
use day::plan::Carry;
use load::{SetKind, SetState};
use logbook::book::BookError;
use logbook::fact;
use logbook::view::{self, Appointment, Pouch, View};
use measure::{Instant, RunId, Span};
use release::verdict::Outcome;
use std::collections::{BTreeMap, BTreeSet};

/// Sets may be opened so long before the booked time (ours).
const EARLY_MIN: i64 = 15;

/// Where the sets of each kind are.
#[derive(Debug, Default)]
pub struct Stock {
    /// By kind.
    pub kinds: BTreeMap<SetKind, OfKind>,
}

/// Sets of one kind.
#[derive(Debug, Default)]
pub struct OfKind {
    /// How many there are.
    pub owned: u32,
    /// On the shelf.
    pub ready: u32,
    /// On their way.
    pub carry: Carry,
}

impl Stock {
    /// Reads them, and takes off what visits need what was opened for them.
    pub fn read(
        view: &View<'_>,
        grid: &Grid,
        appointments: &mut [Appointment],
    ) -> Result<Self, BookError> {
        let mut stock = Self::default();
        for count in view.kinds()? {
            let of_kind = stock.kinds.entry(count.kind).or_default();
            of_kind.owned = count.owned.unwrap_or(0);
            of_kind.carry.dirty += count.used;
            of_kind.carry.loadable += count.washed;
        }
        for need in appointments.iter().flat_map(|a| &a.needs) {
            stock.kinds.entry(need.0.clone()).or_default();
        }
        for pouch in view.pouches_in(&SHELF)? {
            stock.kinds.entry(pouch.kind).or_default().ready += 1;
        }
        // What lies open on a tag is for use at once and in no plan for the shelf.
        let pouched = |pouch: &Pouch| pouch.pouched;
        for pouch in view.pouches_in(&[SetState::Bagged])?.into_iter().filter(pouched) {
            stock.kinds.entry(pouch.kind).or_default().carry.loadable += 1;
        }
        // Out of the machine, and somebody still has to look: ready in a slot, if all is well. What a
        // record spoke against, or leaves open, is counted on by nobody.
        let doubtful: BTreeSet<RunId> = (view.runs_open()?.iter())
            .filter(|run| run.outcome.is_some_and(|outcome| outcome != Outcome::Lethal))
            .map(|run| run.run)
            .collect();
        let sound =
            |pouch: &Pouch| pouch.pouched && pouch.run.is_none_or(|run| !doubtful.contains(&run));
        for pouch in view.pouches_in(&[SetState::ToCheck])?.into_iter().filter(sound) {
            stock.kinds.entry(pouch.kind).or_default().carry.ready_at.push((1.min(grid.slots), 1));
        }
        stock.in_machines(view, grid)?;
        stock.in_use(view, grid, appointments)?;
        for of_kind in stock.kinds.values_mut() {
            let carry = &of_kind.carry;
            let later: u32 = carry.ready_at.iter().chain(&carry.dirty_at).map(|l| l.1).sum();
            let seen = of_kind.ready + carry.dirty + carry.loadable + later;
            of_kind.owned = of_kind.owned.max(seen);
        }
        Ok(stock)
    }

    fn in_machines(&mut self, view: &View<'_>, grid: &Grid) -> Result<(), BookError> {
        let machines = view.machines()?;
        let out = |run: &&view::Run| {
            machines.iter().any(|m| m.machine == run.machine && m.out_since.is_some())
        };
        for run in view.runs_open()?.iter().filter(|run| run.unloaded.is_none() && !out(run)) {
            let cycles = view.machine_figures(run.machine)?.value.cycles;
            let (end, after) = expected(run, &cycles);
            let ready = grid.slot_after(end.max(grid.now) + Span::from_minutes(after)).max(1);
            if ready > grid.slots {
                continue;
            }
            for pouch in view.pouches_of_run(run.run)?.into_iter().filter(|pouch| pouch.pouched) {
                self.kinds.entry(pouch.kind).or_default().carry.ready_at.push((ready, 1));
            }
        }
        Ok(())
    }

    /// A set that was opened for a visit is no need of it any more, and is not in the bin before the
    /// visit ends, although the book counts it there from the moment at which it was opened.
    fn in_use(
        &mut self,
        view: &View<'_>,
        grid: &Grid,
        appointments: &mut [Appointment],
    ) -> Result<(), BookError> {
        let since = grid.now - Span::from_minutes(12 * 60);
        for pouch in view.pouches_in(&[SetState::Opened])? {
            let Some((at, _, chair)) = pouch.opened.filter(|opened| opened.0 >= since) else {
                continue;
            };
            let end = served(appointments, &pouch.kind, at, chair)
                .unwrap_or(at + Span::from_minutes(VISIT_MIN));
            if end <= grid.now {
                continue;
            }
            let of_kind = self.kinds.entry(pouch.kind).or_default();
            let slot = grid.slot_after(end);
            if of_kind.carry.dirty > 0 && slot <= grid.slots {
                of_kind.carry.dirty -= 1;
                of_kind.carry.dirty_at.push((slot, 1));
            }
        }
        Ok(())
    }
}

/// Takes an opened set off what its visit needs: the visit at that chair, or else the first one that
/// was due then and still needs such a set. When that visit ends.
fn served(
    appointments: &mut [Appointment],
    kind: &SetKind,
    at: Instant,
    chair: Option<u32>,
) -> Option<Instant> {
    let early = Span::from_minutes(EARLY_MIN);
    let needs = |a: &Appointment| a.needs.iter().any(|need| need.0 == *kind && need.1 > 0);
    let due = |a: &Appointment| a.start - early <= at && at < a.end && needs(a);
    let here = appointments.iter().position(|a| due(a) && chair.is_some() && a.chair == chair);
    let found = here.or_else(|| appointments.iter().position(due))?;
    let visit = &mut appointments[found];
    visit
        .needs
        .iter_mut()
        .filter(|need| need.0 == *kind)
        .for_each(|need| need.1 = need.1.saturating_sub(1));
    Some(visit.end)
}

/// When a run in a machine is likely to be over, and how long until its load is ready after that.
pub fn expected(run: &view::Run, cycles: &[fact::DayCycle]) -> (Instant, i64) {
    let named = |c: &&fact::DayCycle| Some(c.programme.word()) == run.programme.as_deref();
    let longest = || cycles.iter().max_by_key(|c| c.cold_min);
    let Some(cycle) = cycles.iter().find(named).or_else(longest) else {
        return (run.started.0 + Span::from_minutes(VISIT_MIN), 0);
    };
    let end = run.started.0 + Span::from_minutes(i64::from(cycle.cold_min));
    (end, i64::from(cycle.unload_min + cycle.cool_min))
}
