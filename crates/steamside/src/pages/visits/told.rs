//! Facts of the day in plain words, for the log.

use crate::pages::telling::Names;
use crate::pages::{say, when};
use crate::web::Ctx;
use logbook::fact::Day;
use measure::{MachineId, PersonId, ServiceId};

fn service(ctx: &Ctx, names: &Names, service: Option<ServiceId>) -> String {
    let known = service.and_then(|service| names.services.get(&service));
    known.cloned().unwrap_or_else(|| ctx.words().say("visits-unknown"))
}

/// One fact of the day as one line.
pub fn line(ctx: &Ctx, names: &Names, day: &Day) -> String {
    let words = ctx.words();
    match day {
        Day::VisitBooked { start, service: which, .. } => words.tell(
            "line-visit-booked",
            &[
                ("at", when::moment(ctx, *start).into()),
                ("service", service(ctx, names, *which).into()),
            ],
        ),
        Day::VisitMoved { start, .. } => {
            words.tell("line-visit-moved", &[("at", when::moment(ctx, *start).into())])
        }
        Day::VisitIs { service: which, .. } => {
            words.tell("line-visit-is", &[("service", service(ctx, names, *which).into())])
        }
        Day::VisitLate { minutes, .. } => {
            words.tell("line-visit-late", &[("count", (*minutes).into())])
        }
        Day::VisitCancelled { .. } => words.say("line-visit-off"),
        Day::VisitMissed { .. } => words.say("line-visit-missed"),
        Day::ShiftSet { person, from, to, .. } => words.tell(
            "line-shift",
            &[
                ("sign", sign(ctx, names, *person).into()),
                ("from", when::moment(ctx, *from).into()),
                ("to", when::clock_of(ctx, *to).into()),
            ],
        ),
        Day::ShiftEnded { .. } => words.say("line-shift-ended"),
        Day::ClosedSet { from, closed, .. } => {
            let key = if *closed { "line-closed" } else { "line-open-again" };
            words.tell(key, &[("day", when::day_of(ctx, *from).into())])
        }
        other => setting_line(ctx, names, other),
    }
}

fn sign(ctx: &Ctx, names: &Names, person: PersonId) -> String {
    names.signs.get(&person).cloned().unwrap_or_else(|| ctx.words().say("sign-gone"))
}

fn machine(ctx: &Ctx, names: &Names, machine: MachineId) -> String {
    let number = names.machines.get(&machine).map_or_else(|| "?".to_owned(), u32::to_string);
    ctx.words().tell("machine-name", &[("machine", number.into())])
}

fn setting_line(ctx: &Ctx, names: &Names, day: &Day) -> String {
    let words = ctx.words();
    match day {
        Day::KeyMade { .. } => words.say("line-key"),
        Day::ServiceSet(set) => words.tell(
            "line-service",
            &[
                ("service", set.word.word().into()),
                ("count", set.minutes.into()),
                ("needs", needs(set).into()),
            ],
        ),
        Day::ServiceEnded { service: which } => words
            .tell("line-service-ended", &[("service", service(ctx, names, Some(*which)).into())]),
        Day::PhraseLearnt { service: Some(which), .. } => {
            words.tell("line-learnt", &[("service", service(ctx, names, Some(*which)).into())])
        }
        Day::PhraseLearnt { service: None, .. } => words.say("line-learnt-no-visit"),
        Day::KindFigures(figures) => {
            words.tell("line-kind-figures", &[("kind", say::kind(ctx, &figures.kind).into())])
        }
        Day::MachineFigures(figures) => words.tell(
            "line-machine-figures",
            &[("machine", machine(ctx, names, figures.machine).into())],
        ),
        Day::Rules(_) => words.say("line-day-rules"),
        Day::PlanAccepted { runs, .. } => words.tell("line-plan", &[("count", runs.len().into())]),
        // These have their lines above. All are named, so that a new kind of fact does not compile
        // until it has a line.
        Day::VisitBooked { .. }
        | Day::VisitMoved { .. }
        | Day::VisitIs { .. }
        | Day::VisitLate { .. }
        | Day::VisitCancelled { .. }
        | Day::VisitMissed { .. }
        | Day::ShiftSet { .. }
        | Day::ShiftEnded { .. }
        | Day::ClosedSet { .. } => String::new(),
    }
}

/// `1 manicure, 2 bits`.
fn needs(service: &logbook::fact::Service) -> String {
    let each = service.needs.iter().map(|(kind, count)| format!("{count} {kind}"));
    each.collect::<Vec<_>>().join(", ")
}
