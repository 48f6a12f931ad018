//! Facts about the counter in plain words.

use super::Names;
use crate::pages::when;
use crate::web::{Ctx, REASONS};
use crate::words::{Arg, Language};
use logbook::fact::{Counter, GapWhy, Units};
use measure::{PersonId, PouchId, RunId};

/// The person that a fact speaks of.
pub fn person_of(said: &Counter) -> Option<PersonId> {
    match said {
        Counter::PersonSpeaks { person, .. } | Counter::PersonIs { person, .. } => Some(*person),
        Counter::HandedOver { to, .. } => *to,
        _ => None,
    }
}

/// The run that a fact speaks of.
pub fn run_of(said: &Counter) -> Option<RunId> {
    match said {
        Counter::RunCorrected { run, .. } | Counter::CountedBack { run, .. } => Some(*run),
        _ => None,
    }
}

/// The pouches that a fact names.
pub fn pouches_of(said: &Counter) -> Vec<&Vec<PouchId>> {
    match said {
        Counter::RunCorrected { out, put, .. } => vec![out, put],
        _ => Vec::new(),
    }
}

/// One fact as one line.
pub fn line(ctx: &Ctx, names: &Names, said: &Counter) -> String {
    let words = ctx.words();
    let span = |from, to| {
        [("from", Arg::from(when::moment(ctx, from))), ("to", Arg::from(when::moment(ctx, to)))]
    };
    match said {
        Counter::HandedOver { to, drying, .. } => {
            let to = to.map_or_else(|| words.say("hand-over-whoever"), |to| sign(ctx, names, to));
            words.tell("line-handed-over", &[("sign", to.into()), ("count", (*drying).into())])
        }
        Counter::TakenOver { .. } => words.say("line-taken-over"),
        Counter::RunCorrected { run, out, put } => corrected(ctx, names, *run, (out, put)),
        Counter::CountedBack { run, count } => words.tell(
            "line-counted-back",
            &[("run", names.run(ctx, *run).into()), ("count", (*count).into())],
        ),
        Counter::OpenedNoCode { kind, chair, .. } => {
            let kind = ("kind", Arg::from(super::say::kind(ctx, kind)));
            match chair {
                Some(chair) => {
                    words.tell("line-no-code-chair", &[kind, ("chair", chair.to_string().into())])
                }
                None => words.tell("line-no-code", &[kind]),
            }
        }
        Counter::ExposureNoted { chair, .. } => match chair {
            Some(chair) => {
                words.tell("line-exposure-chair", &[("chair", chair.to_string().into())])
            }
            None => words.say("line-exposure"),
        },
        Counter::GapExplained { from, to, why } => {
            let [from, to] = span(*from, *to);
            words.tell("line-gap", &[from, to, ("why", words.say(why_key(*why)).into())])
        }
        Counter::BoxWasOff { from, to } => words.tell("line-box-off", &span(*from, *to)),
        other => people(ctx, names, other),
    }
}

/// What people are and read, and how the record is written.
fn people(ctx: &Ctx, names: &Names, said: &Counter) -> String {
    let words = ctx.words();
    match said {
        Counter::PersonSpeaks { person, language } => words.tell(
            "line-speaks",
            &[
                ("sign", sign(ctx, names, *person).into()),
                ("language", language_name(language).into()),
            ],
        ),
        Counter::PersonIs { person, learns, in_charge, teaches } => {
            let roles =
                [(learns, "role-learns"), (in_charge, "role-charge"), (teaches, "role-teaches")];
            let is = roles.iter().filter(|(is, _)| **is).map(|(_, key)| words.say(key));
            let is: Vec<String> = is.collect();
            let is = if is.is_empty() { words.say("role-none") } else { is.join(", ") };
            words.tell(
                "line-person-is",
                &[("sign", sign(ctx, names, *person).into()), ("what", is.into())],
            )
        }
        Counter::RecordShows { language, units } => words.tell(
            "line-record-shows",
            &[
                ("language", language_name(language).into()),
                ("units", words.say(units_key(*units)).into()),
            ],
        ),
        // Told elsewhere, or not yet.
        _ => words.say("line-counter"),
    }
}

/// What was not in a run, and what was in it too.
fn corrected(ctx: &Ctx, names: &Names, run: RunId, (out, put): (&[PouchId], &[PouchId])) -> String {
    let words = ctx.words();
    let mut told = vec![words.tell("line-run-corrected", &[("run", names.run(ctx, run).into())])];
    for (key, pouches) in [("line-run-out", out), ("line-run-put", put)] {
        if !pouches.is_empty() {
            told.push(words.tell(key, &[("what", names.pouches(ctx, pouches).into())]));
        }
    }
    told.join(" ")
}

fn sign(ctx: &Ctx, names: &Names, who: PersonId) -> String {
    names.signs.get(&who).cloned().unwrap_or_else(|| ctx.words().say("sign-gone"))
}

fn language_name(code: &str) -> String {
    Language::from_code(code).map_or_else(|| code.to_owned(), |language| language.name().to_owned())
}

/// Key of the reason of a gap.
pub fn why_key(why: GapWhy) -> &'static str {
    let found = REASONS.iter().find(|(known, ..)| *known == why);
    found.map_or("gap-forgotten", |(_, _, key)| key)
}

/// Key of units.
pub const fn units_key(units: Units) -> &'static str {
    match units {
        Units::Metric => "units-metric",
        Units::Us => "units-us",
    }
}
