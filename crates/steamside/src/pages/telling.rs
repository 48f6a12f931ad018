//! Facts in plain words: one line each, for the log and for the bar that says what was just done.

mod counter;
mod loading;
mod practice;
mod screens;
mod spores;
mod upkeep;

pub use upkeep::how_often;

pub use counter::{units_key, why_key};

use super::{reads, say, visits, when};
use crate::web::Ctx;
use crate::words::Arg;
use load::ShelfCode;
use logbook::book::BookError;
use logbook::fact::{AirRemoval, Body, Day, Fact, LiftReason, Reads, ThingKind, Upkeep};
use logbook::view::View;
use measure::{MachineId, PersonId, PouchId, RunId, ServiceId, ThingId};
use std::collections::{BTreeMap, BTreeSet};

/// How many codes a line names before it only counts.
const CODES: usize = 4;

/// What the ids in some facts are called by people.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Names {
    /// Signs.
    pub signs: BTreeMap<PersonId, String>,
    /// Numbers of machines.
    pub machines: BTreeMap<MachineId, u32>,
    /// Machine number and number of a run.
    pub runs: BTreeMap<RunId, (u32, u32)>,
    /// Codes of pouches.
    pub codes: BTreeMap<PouchId, ShelfCode>,
    /// Words of services, also of those that ended.
    pub services: BTreeMap<ServiceId, String>,
    /// Kind and number of jars, foot basins and baths, also of those that are gone.
    pub things: BTreeMap<ThingId, (ThingKind, u32)>,
}

impl Names {
    /// The names for these facts.
    pub fn of(view: &View<'_>, facts: &[Fact]) -> Result<Self, BookError> {
        let mut names = Self::default();
        // Those who no longer work here signed as well.
        let people: BTreeSet<PersonId> = facts.iter().flat_map(people_of).collect();
        for id in people {
            if let Some(sign) = view.person(id)?.and_then(|person| person.sign) {
                names.signs.insert(id, sign);
            }
        }
        for machine in view.machines()? {
            names.machines.insert(machine.machine, machine.number);
        }
        let runs: BTreeSet<RunId> = facts.iter().filter_map(|fact| run_of(&fact.body)).collect();
        for id in runs {
            if let Some(run) = view.run(id)? {
                names.runs.insert(id, (run.machine_number, run.number));
            }
        }
        let pouches: BTreeSet<PouchId> =
            facts.iter().flat_map(|fact| named_pouches(&fact.body)).collect();
        for id in pouches {
            if let Some(pouch) = view.pouch(id)? {
                names.codes.insert(id, pouch.code);
            }
        }
        if facts.iter().any(|fact| matches!(fact.body, Body::Upkeep(_))) {
            let things = view.things_ever()?.into_iter();
            names.things = things.map(|row| (row.thing, (row.what, row.number))).collect();
        }
        if facts.iter().any(|fact| matches!(fact.body, Body::Day(_))) {
            let services = view.services_ever()?.into_iter();
            names.services = services.map(|row| (row.service, row.word.to_string())).collect();
        }
        Ok(names)
    }

    pub(super) fn run(&self, ctx: &Ctx, run: RunId) -> String {
        self.runs.get(&run).map_or_else(
            || ctx.words().say("run-unnamed"),
            |(machine, number)| run_name(ctx, *machine, *number),
        )
    }

    fn machine(&self, ctx: &Ctx, machine: MachineId) -> String {
        let number = self.machines.get(&machine).map_or_else(|| "?".to_owned(), u32::to_string);
        ctx.words().tell("machine-name", &[("machine", number.into())])
    }

    fn thing(&self, ctx: &Ctx, thing: ThingId) -> String {
        match self.things.get(&thing) {
            Some((what, number)) => {
                ctx.words().tell(say::thing_key(*what), &[("number", number.to_string().into())])
            }
            None => ctx.words().say("thing-gone"),
        }
    }

    pub(super) fn pouches(&self, ctx: &Ctx, pouches: &[PouchId]) -> String {
        let codes: Vec<_> = pouches
            .iter()
            .filter_map(|pouch| self.codes.get(pouch))
            .map(ToString::to_string)
            .collect();
        if codes.len() == pouches.len() && !codes.is_empty() && codes.len() <= CODES {
            codes.join(", ")
        } else {
            ctx.words().tell("pouch-count", &[("count", pouches.len().into())])
        }
    }
}

/// Machine 1, run 3.
pub fn run_name(ctx: &Ctx, machine: u32, number: u32) -> String {
    let args = [("machine", machine.to_string().into()), ("run", number.to_string().into())];
    ctx.words().tell("run-name", &args)
}

fn people_of(fact: &Fact) -> Vec<PersonId> {
    let named = match &fact.body {
        Body::PersonJoined { person, .. }
        | Body::PersonLeft { person }
        | Body::Day(Day::ShiftSet { person, .. }) => Some(*person),
        Body::Counter(said) => counter::person_of(said),
        _ => None,
    };
    let of_practice = practice::people(&fact.body);
    fact.stamp.sign.into_iter().chain(named).chain(of_practice).collect()
}

fn run_of(body: &Body) -> Option<RunId> {
    match body {
        Body::RunStarted { run, .. }
        | Body::RunUnloaded { run }
        | Body::RecordClaimed { run, .. }
        | Body::Looked { run, .. }
        | Body::Released { run, .. } => Some(*run),
        Body::SetAside { run, .. } => *run,
        Body::Judged(judged) => judged.run,
        Body::Counter(said) => counter::run_of(said),
        Body::Upkeep(said) => match **said {
            Upkeep::SporePlaced { run, .. } => run,
            _ => None,
        },
        _ => None,
    }
}

fn named_pouches(body: &Body) -> Vec<PouchId> {
    let few = |pouches: &Vec<PouchId>| {
        if pouches.len() <= CODES { pouches.clone() } else { Vec::new() }
    };
    match body {
        Body::SetAside { pouches, .. }
        | Body::StopLifted { pouches, .. }
        | Body::TakenApart { pouches } => few(pouches),
        Body::Opened { pouch, .. } => vec![*pouch],
        Body::Upkeep(said) => match &**said {
            Upkeep::Unfrozen { pouches, .. } => few(pouches),
            _ => Vec::new(),
        },
        Body::Looked { marks_not_turned, wet, torn, dropped, .. } => {
            [marks_not_turned, wet, torn, dropped].into_iter().flat_map(few).collect()
        }
        Body::Counter(said) => counter::pouches_of(said).into_iter().flat_map(few).collect(),
        _ => Vec::new(),
    }
}

/// The facts of one act in a few words; a correction says what it corrects to.
pub fn entry(ctx: &Ctx, names: &Names, facts: &[Fact]) -> String {
    let is_undone = |fact: &&Fact| matches!(fact.body, Body::Undone { .. });
    let corrects = facts.len() > 1 && facts.iter().any(|fact| is_undone(&fact));
    let told = facts.iter().filter(|fact| !(corrects && is_undone(fact)));
    let told: Vec<String> = told.map(|fact| line(ctx, names, fact)).collect();
    let told = told.join(" ");
    if corrects { ctx.words().tell("line-correction", &[("what", told.into())]) } else { told }
}

/// One fact as one line.
pub fn line(ctx: &Ctx, names: &Names, fact: &Fact) -> String {
    let words = ctx.words();
    let count = |count: usize| ("count", Arg::from(count));
    match &fact.body {
        Body::Washed { kind, count } => words.tell(
            "line-washed",
            &[("count", (*count).into()), ("kind", say::kind(ctx, kind).into())],
        ),
        Body::Packed { pouches } => {
            let kind = pouches.first().map(|pouch| say::kind(ctx, &pouch.kind)).unwrap_or_default();
            words.tell("line-packed", &[count(pouches.len()), ("kind", kind.into())])
        }
        Body::RunStarted { run, pouches, .. } => words
            .tell("line-started", &[("run", names.run(ctx, *run).into()), count(pouches.len())]),
        Body::RunUnloaded { run } => {
            words.tell("line-unloaded", &[("run", names.run(ctx, *run).into())])
        }
        Body::RecordTaken { cycles, .. } => {
            words.tell("line-taken", &[("count", (*cycles).into())])
        }
        Body::RecordClaimed { run, .. } => {
            words.tell("line-claimed", &[("run", names.run(ctx, *run).into())])
        }
        Body::Judged(judged) => words.tell(
            "line-judged",
            &[
                (
                    "run",
                    judged
                        .run
                        .map_or_else(|| words.say("run-unclaimed"), |run| names.run(ctx, run))
                        .into(),
                ),
                ("outcome", words.say(say::outcome_key(Some(judged.outcome))).into()),
                ("known", words.say(say::known_key(say::basis_known(&judged.basis))).into()),
            ],
        ),
        Body::Looked { .. } => looked(ctx, names, &fact.body),
        Body::Released { run, pouches, .. } => words
            .tell("line-released", &[("run", names.run(ctx, *run).into()), count(pouches.len())]),
        Body::SetAside { pouches, why, .. } => words.tell(
            "line-set-aside",
            &[
                ("what", names.pouches(ctx, pouches).into()),
                ("why", words.say(say::stop_key(*why)).into()),
            ],
        ),
        other => shelf_line(ctx, names, other),
    }
}

/// What happens to pouches after their run was decided on.
fn shelf_line(ctx: &Ctx, names: &Names, body: &Body) -> String {
    let words = ctx.words();
    match body {
        Body::StopLifted { pouches, why } => words.tell(
            match why {
                LiftReason::Mistake => "line-lifted-mistake",
                LiftReason::Paperwork => "line-lifted-paperwork",
            },
            &[("what", names.pouches(ctx, pouches).into())],
        ),
        Body::Opened { pouch, chair, .. } => opened(ctx, names, *pouch, *chair),
        Body::TakenApart { pouches } => {
            words.tell("line-apart", &[("what", names.pouches(ctx, pouches).into())])
        }
        Body::Undone { .. } => words.say("line-undone"),
        Body::Day(day) => visits::line(ctx, names, day),
        Body::Loading(said) => loading::line(ctx, names, said),
        Body::Upkeep(said) => {
            spores::line(ctx, names, said).unwrap_or_else(|| upkeep::line(ctx, names, said))
        }
        Body::Counter(said) => {
            practice::line(ctx, names, said).unwrap_or_else(|| counter::line(ctx, names, said))
        }
        other => setup_line(ctx, names, other),
    }
}

fn looked(ctx: &Ctx, names: &Names, body: &Body) -> String {
    let words = ctx.words();
    let Body::Looked { run, inner_mark, marks_not_turned, wet, torn, dropped, .. } = body else {
        return String::new();
    };
    let run = names.run(ctx, *run);
    let mut parts = vec![words.tell("line-looked", &[("run", run.into())])];
    if *inner_mark == Some(false) {
        parts.push(words.say("line-looked-inner"));
    }
    for (key, pouches) in [
        ("line-looked-marks", marks_not_turned),
        ("line-looked-wet", wet),
        ("line-looked-torn", torn),
        ("line-looked-dropped", dropped),
    ] {
        if !pouches.is_empty() {
            parts.push(words.tell(key, &[("what", names.pouches(ctx, pouches).into())]));
        }
    }
    parts.join(" ")
}

fn opened(ctx: &Ctx, names: &Names, pouch: PouchId, chair: Option<u32>) -> String {
    let what = ("what", names.pouches(ctx, &[pouch]).into());
    match chair {
        Some(chair) => {
            ctx.words().tell("line-opened-chair", &[what, ("chair", chair.to_string().into())])
        }
        None => ctx.words().tell("line-opened", &[what]),
    }
}

fn setup_line(ctx: &Ctx, names: &Names, body: &Body) -> String {
    let words = ctx.words();
    let sign = |person: &PersonId| {
        Arg::from(names.signs.get(person).cloned().unwrap_or_else(|| words.say("sign-gone")))
    };
    match body {
        Body::SalonOpened { zone, .. } => {
            words.tell("line-opened-book", &[("zone", zone.as_str().into())])
        }
        Body::ZoneSet { zone } => words.tell("line-zone", &[("zone", zone.as_str().into())]),
        Body::PersonJoined { person, .. } => words.tell("line-joined", &[("sign", sign(person))]),
        Body::PersonLeft { person } => words.tell("line-left", &[("sign", sign(person))]),
        Body::SetsOwned { kind, count } => words.tell(
            "line-owned",
            &[("kind", say::kind(ctx, kind).into()), ("count", (*count).into())],
        ),
        Body::Counted { kind, used, washed } => words.tell(
            "line-counted",
            &[
                ("kind", say::kind(ctx, kind).into()),
                ("used", (*used).to_string().into()),
                ("washed", (*washed).to_string().into()),
            ],
        ),
        other => machine_line(ctx, names, other),
    }
}

fn machine_line(ctx: &Ctx, names: &Names, body: &Body) -> String {
    let words = ctx.words();
    let named = |machine: &MachineId| ("machine", Arg::from(names.machine(ctx, *machine)));
    match body {
        Body::MachineAdded { machine, air_removal, .. } => words.tell(
            "line-machine",
            &[named(machine), ("air", words.say(air_key(*air_removal)).into())],
        ),
        Body::MachineClockSet { machine, ahead_ms } => {
            words.tell("line-clock", &[named(machine), ("ahead", when::length(*ahead_ms).into())])
        }
        Body::MachineReads {
            machine,
            altitude_m,
            temperature_unit,
            pressure_unit,
            pressure_reference,
            day_first,
        } => {
            let reads = Reads {
                altitude_m: *altitude_m,
                temperature_unit: *temperature_unit,
                pressure_unit: *pressure_unit,
                pressure_reference: *pressure_reference,
                day_first: *day_first,
            };
            words.tell("line-reads", &[named(machine), ("what", reads::told(ctx, &reads).into())])
        }
        Body::MachineOut { machine } => words.tell("line-out", &[named(machine)]),
        Body::MachineBack { machine } => words.tell("line-back", &[named(machine)]),
        // These have their lines above. All are named, so that a new kind of fact does not
        // compile until it has a line.
        Body::Washed { .. }
        | Body::Packed { .. }
        | Body::RunStarted { .. }
        | Body::RunUnloaded { .. }
        | Body::RecordTaken { .. }
        | Body::RecordClaimed { .. }
        | Body::Judged(_)
        | Body::Looked { .. }
        | Body::Released { .. }
        | Body::SetAside { .. }
        | Body::StopLifted { .. }
        | Body::Opened { .. }
        | Body::TakenApart { .. }
        | Body::Undone { .. }
        | Body::SalonOpened { .. }
        | Body::ZoneSet { .. }
        | Body::PersonJoined { .. }
        | Body::PersonLeft { .. }
        | Body::SetsOwned { .. }
        | Body::Counted { .. }
        | Body::Day(_)
        | Body::Loading(_)
        | Body::Upkeep(_)
        | Body::Counter(_) => String::new(),
    }
}

/// Key of how a machine gets the air out.
pub const fn air_key(air: AirRemoval) -> &'static str {
    match air {
        AirRemoval::Vacuum => "air-vacuum",
        AirRemoval::Gravity => "air-gravity",
        AirRemoval::NotKnown => "air-not-known",
    }
}
