//! One sentence a run: what to start, when, with what, and what would be missing without it.

use crate::words::{Arg, Words};
use day::plan::{Plan, Problem, Run, Unmet, Way, WayOut, When, Why};

/// How a day's slots and kinds are called.
pub struct Telling<'a> {
    /// The day.
    pub problem: &'a Problem,
    /// The reader's words.
    pub words: &'a Words,
    /// What the clock shows at the start of a slot.
    pub clock: &'a dyn Fn(usize) -> String,
}

impl Telling<'_> {
    /// Why a run is in the plan.
    pub fn run(&self, plan: &Plan, why: &Why) -> String {
        let run = &plan.runs[why.run];
        let (key, when) = match why.when {
            Some(When::Slot(slot)) => ("plan-run-needed", (self.clock)(slot)),
            Some(When::Tomorrow) => ("plan-run-tomorrow", String::new()),
            None => ("plan-run-reserve", String::new()),
        };
        self.words.tell(
            key,
            &[
                ("cycle", self.cycle(run).into()),
                ("machine", self.problem.machines[run.machine].id.clone().into()),
                ("time", (self.clock)(run.start).into()),
                ("sets", self.sets(&loaded(run)).into()),
                ("missing", self.sets(&why.missing).into()),
                ("when", when.into()),
            ],
        )
    }

    /// What goes missing where.
    pub fn unmet(&self, unmet: &Unmet) -> String {
        let service = &self.problem.services[unmet.service];
        self.words.tell(
            "plan-unmet",
            &[
                ("time", (self.clock)(service.start).into()),
                ("sets", self.sets(&[(unmet.kind, unmet.n)]).into()),
            ],
        )
    }

    /// A way out, and what is left to wait for with it.
    pub fn way(&self, out: &WayOut) -> String {
        let time = |service: usize| (self.clock)(self.problem.services[service].start);
        let mut args: Vec<(&str, Arg)> = Vec::new();
        let key = match out.way {
            Way::SingleUse { service, kind, n } => {
                args.push(("time", time(service).into()));
                args.push(("sets", self.sets(&[(kind, n)]).into()));
                "plan-way-single-use"
            }
            Way::Move { service, by } => {
                let to = self.problem.services[service].start.saturating_add_signed(by as isize);
                args.push(("time", time(service).into()));
                args.push(("to", (self.clock)(to).into()));
                "plan-way-move"
            }
            Way::Earlier { by } => {
                let minutes = by as u64 * u64::from(self.problem.slot_min);
                args.push(("minutes", minutes.into()));
                "plan-way-earlier"
            }
            Way::OtherMachine { like } => {
                args.push(("machine", self.problem.machines[like].id.clone().into()));
                "plan-way-machine"
            }
            Way::OneMorePerson => "plan-way-person",
        };
        let rest = if out.unmet == 0 { "plan-way-all" } else { "plan-way-part" };
        format!("{} {}", self.words.tell(key, &args), self.words.say(rest))
    }

    /// `4 manicure sets and 2 pedicure sets`.
    pub fn sets(&self, sets: &[(usize, u32)]) -> String {
        let mut told = sets.iter().map(|&(kind, n)| {
            let kind = kind_word(self.words, &self.problem.kinds[kind].id);
            self.words.tell("plan-sets", &[("count", n.into()), ("kind", kind.into())])
        });
        let first = told.next().unwrap_or_default();
        told.fold(first, |so_far, next| {
            self.words.tell("plan-and", &[("one", so_far.into()), ("other", next.into())])
        })
    }

    /// What a run's cycle is called.
    pub fn cycle(&self, run: &Run) -> String {
        let id = &self.problem.machines[run.machine].cycles[run.cycle].id;
        let key = format!("cycle-{id}");
        if self.words.has(&key) { self.words.say(&key) } else { id.clone() }
    }
}

/// A kind of set in the reader's language, where the salon uses one of the trade's plain words.
pub fn kind_word(words: &Words, kind: &str) -> String {
    let key = format!("kind-{}", kind.replace(['_', ' '], "-"));
    if words.has(&key) { words.say(&key) } else { kind.replace('_', " ") }
}

/// Kinds and numbers of a load.
pub fn loaded(run: &Run) -> Vec<(usize, u32)> {
    run.load.iter().copied().enumerate().filter(|&(_, n)| n > 0).collect()
}
