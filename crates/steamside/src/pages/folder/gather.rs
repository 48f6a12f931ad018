//! Reads what the record shows from one state of the book. Notes, contacts and visits are not read at
//! all: what is not here cannot be shown.

use super::Period;
use crate::pages::telling::Names;
use crate::web::Ctx;
use load::{ChoreWord, SetState};
use logbook::book::BookError;
use logbook::fact::{About, Body, ChoreRule, DrawerRef, Fact, Upkeep};
use logbook::typical::chores::SPORE_TEST;
use logbook::view::{
    LastDone, Machine, Person, Pouch, Roles, ShownRun, ShownUpkeep, SporeTest, View,
};
use measure::{ActId, DrawerId, Instant, PersonId, PouchId, RunId};
use release::spores::Says;
use std::collections::{BTreeMap, BTreeSet};

/// What the book holds for the time shown.
#[derive(Debug, Clone, Default)]
pub struct Kept {
    /// The salon's zone.
    pub zone: String,
    /// The machines.
    pub machines: Vec<MachineShown>,
    /// Who works here.
    pub people: Vec<(Person, Roles)>,
    /// What must not be used now.
    pub aside: Vec<Pouch>,
    /// The runs of the time shown.
    pub runs: Vec<ShownRun>,
    /// The spore tests that were placed in it.
    pub tests: Vec<TestShown>,
    /// Set aside, lifted, taken apart, machines out and back.
    pub stops: Vec<Fact>,
    /// Acts that were taken back.
    pub undone: BTreeSet<ActId>,
    /// The pouches of the stops, as they are now.
    pub pouches: BTreeMap<PouchId, Pouch>,
    /// What was done beside the sets.
    pub upkeep: ShownUpkeep,
    /// When each step was done last.
    pub last: LastDone,
    /// Signs, numbers and codes.
    pub names: Names,
    /// When a run began.
    pub begun: BTreeMap<RunId, Instant>,
    /// What stands on boxes of spore tests and jars of disinfectant.
    pub labels: BTreeMap<DrawerId, String>,
    /// How often chores are due, as was said last.
    pub rules: Vec<ChoreRule>,
}

/// A machine.
#[derive(Debug, Clone, PartialEq)]
pub struct MachineShown {
    /// The machine.
    pub machine: Machine,
    /// When its last good spore test was placed.
    pub good: Option<Instant>,
    /// Chores by count: after how many runs at the latest, and how many since it was done; `None`:
    /// never yet.
    pub counted: Vec<(ChoreWord, u32, Option<usize>)>,
}

/// A spore test with what was done after it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct TestShown {
    /// The test.
    pub test: SporeTest,
    /// The facts of its reading and of what followed, in order.
    pub path: Vec<Fact>,
}

/// Reads it all.
pub fn gather(view: &View<'_>, ctx: &Ctx, period: &Period) -> Result<Kept, BookError> {
    let (from, to) = (period.from, period.to);
    let upkeep = view.shown_upkeep(from, to)?;
    let rules = rules(&upkeep.rules);
    let mut kept = Kept {
        zone: view.salon()?.zone,
        aside: view.pouches_in(&[SetState::SetAside])?,
        runs: view.shown_runs(from, to)?,
        stops: view.shown_stops(from, to)?,
        last: view.last_done()?,
        upkeep,
        rules,
        ..Kept::default()
    };
    for person in view.people()? {
        let roles = view.roles(person.person)?;
        kept.people.push((person, roles));
    }
    for machine in view.machines()? {
        let shown = machine_shown(view, ctx, &kept, machine)?;
        kept.machines.push(shown);
    }
    for test in view.spore_tests_between(from, to)? {
        let path = path(view, ctx, &test)?;
        kept.tests.push(TestShown { test, path });
    }
    for act in kept.stops.iter().map(|fact| fact.stamp.act).collect::<BTreeSet<_>>() {
        if view.act_undone(act)?.is_some() {
            kept.undone.insert(act);
        }
    }
    for pouch in kept.stops.iter().flat_map(|fact| stopped(&fact.body)) {
        if let Some(row) = view.pouch(*pouch)? {
            kept.pouches.insert(*pouch, row);
        }
    }
    names(view, &mut kept)?;
    labels(view, &mut kept)?;
    Ok(kept)
}

fn machine_shown(
    view: &View<'_>,
    ctx: &Ctx,
    kept: &Kept,
    machine: Machine,
) -> Result<MachineShown, BookError> {
    let tests = view.spore_tests_of(machine.machine)?;
    let good = tests
        .iter()
        .filter(|test| test.says() == Says::Good)
        .map(|test| test.placed.happened)
        .max();
    let about = About::Machine(machine.machine);
    let mut counted = Vec::new();
    for rule in kept.rules.iter().filter(|rule| rule.about == about) {
        let Some(runs) = rule.runs else { continue };
        let done = kept.upkeep.chores_last.iter().find_map(|fact| match upkeep(fact) {
            Some(Upkeep::ChoreDone { chore, about: it, .. })
                if *chore == rule.chore && *it == about =>
            {
                Some(fact.stamp.happened)
            }
            _ => None,
        });
        let since = match done {
            Some(done) => {
                let since = view.runs_between(Some(machine.machine), done, ctx.now)?;
                Some(since.iter().filter(|run| !run.undone).count())
            }
            None => None,
        };
        counted.push((rule.chore.clone(), runs, since));
    }
    Ok(MachineShown { machine, good, counted })
}

/// Of each chore what was said last; one that is not done here any more is left out.
fn rules(said: &[Fact]) -> Vec<ChoreRule> {
    let mut rules: Vec<ChoreRule> = Vec::new();
    for fact in said {
        let (word, place, rule) = match upkeep(fact) {
            Some(Upkeep::ChoreSet(rule)) => (&rule.chore, rule.about, Some(rule)),
            Some(Upkeep::ChoreEnded { chore, about }) => (chore, *about, None),
            _ => continue,
        };
        rules.retain(|known| known.chore != *word || known.about != place);
        rules.extend(rule.cloned());
    }
    rules
}

/// What was done from the first reading with growth on: everything in the acts of its readings, and
/// in the act that gave the machine back.
fn path(view: &View<'_>, ctx: &Ctx, test: &SporeTest) -> Result<Vec<Fact>, BookError> {
    let mut acts: Vec<ActId> = test.answers.iter().map(|answer| answer.stamp.act).collect();
    let grew = test.answers.iter().find(|answer| answer.grew);
    if let Some(grew) = grew.filter(|_| test.says() == Says::Grew) {
        let since = view.shown_stops(grew.stamp.happened, ctx.now)?;
        let back = since.iter().find(
            |fact| matches!(fact.body, Body::MachineBack { machine } if machine == test.machine),
        );
        acts.extend(back.map(|fact| fact.stamp.act));
    }
    acts.dedup();
    let mut path = Vec::new();
    for act in acts {
        path.extend(view.facts_of_act(act)?);
    }
    Ok(path)
}

/// The pouches that a stop is about.
pub fn stopped(body: &Body) -> &[PouchId] {
    match body {
        Body::SetAside { pouches, .. }
        | Body::StopLifted { pouches, .. }
        | Body::TakenApart { pouches } => pouches,
        _ => &[],
    }
}

fn names(view: &View<'_>, kept: &mut Kept) -> Result<(), BookError> {
    let paths = kept.tests.iter().flat_map(|shown| shown.path.iter().cloned());
    let mut said: Vec<Fact> = kept.stops.iter().cloned().chain(paths).collect();
    let lists = [&kept.upkeep.jars, &kept.upkeep.basins, &kept.upkeep.chores];
    said.extend(lists.into_iter().flatten().cloned());
    said.extend(kept.upkeep.serviced.iter().chain(&kept.upkeep.gaps).cloned());
    kept.names = Names::of(view, &said)?;
    let mut people: BTreeSet<PersonId> = BTreeSet::new();
    for shown in &kept.runs {
        let run = &shown.run;
        kept.names.runs.insert(run.run, (run.machine_number, run.number));
        people.extend(run.started.1);
        people.extend(shown.looks.iter().filter_map(|fact| fact.stamp.sign));
        people.extend(&shown.released_by);
    }
    people.extend(kept.tests.iter().filter_map(|shown| shown.test.placed.sign));
    for who in people {
        if kept.names.signs.contains_key(&who) {
            continue;
        }
        if let Some(sign) = view.person(who)?.and_then(|person| person.sign) {
            kept.names.signs.insert(who, sign);
        }
    }
    let of_pouches = kept.aside.iter().chain(kept.pouches.values()).filter_map(|pouch| pouch.run);
    let of_tests = kept.tests.iter().filter_map(|shown| shown.test.run);
    for run in of_pouches.chain(of_tests).collect::<BTreeSet<RunId>>() {
        if let Some(row) = view.run(run)? {
            kept.names.runs.insert(run, (row.machine_number, row.number));
            kept.begun.insert(run, row.started.0);
        }
    }
    Ok(())
}

/// Lots of spore tests and labels of jars: what stands on the box, and nothing else from the drawer.
fn labels(view: &View<'_>, kept: &mut Kept) -> Result<(), BookError> {
    let lots = kept.tests.iter().filter_map(|shown| shown.test.lot);
    let jars = kept.upkeep.jar_labels.iter().filter_map(|fact| match upkeep(fact) {
        Some(Upkeep::JarSet { label, .. }) => *label,
        _ => None,
    });
    for at in lots.chain(jars).collect::<Vec<DrawerRef>>() {
        if let Some(bytes) = view.kept(&at)? {
            // Put in as text; other bytes would be shown as what they are.
            kept.labels.insert(at.entry, String::from_utf8_lossy(&bytes).into_owned());
        }
    }
    Ok(())
}

/// What a fact says about upkeep, if it does.
pub fn upkeep(fact: &Fact) -> Option<&Upkeep> {
    match &fact.body {
        Body::Upkeep(said) => Some(said),
        _ => None,
    }
}

impl Kept {
    /// How many days may lie between two spore tests of this machine, where somebody said so.
    pub fn spore_days(&self, machine: &Machine) -> Option<u32> {
        let about = About::Machine(machine.machine);
        let rule =
            self.rules.iter().find(|rule| rule.about == about && rule.chore.word() == SPORE_TEST);
        rule.and_then(|rule| rule.days)
    }
}
