//! Parts 6 to 9: disinfectant, the ultrasonic bath, the file of the machines, foot basins.

use super::gather::upkeep;
use super::table::{by, table, time};
use super::{Kept, MachineShown, day, full};
use crate::pages::{say, telling, when};
use crate::web::Ctx;
use load::ChoreWord;
use logbook::fact::{About, BasinAfter, Fact, Found, LeftOut, ThingKind, Upkeep};
use maud::{Markup, html};
use measure::ThingId;

/// A jar, a basin or a bath that was ever here.
struct Thing {
    id: ThingId,
    name: String,
}

/// Those of one kind, also those that are here no longer: what was done with them stays.
fn things(ctx: &Ctx, kept: &Kept, kind: ThingKind) -> Vec<Thing> {
    let key = say::thing_key(kind);
    let named = |fact: &Fact| match upkeep(fact) {
        Some(Upkeep::ThingAdded { thing, what, number }) if *what == kind => Some(Thing {
            id: *thing,
            name: ctx.words().tell(key, &[("number", number.to_string().into())]),
        }),
        _ => None,
    };
    kept.upkeep.things.iter().filter_map(named).collect()
}

fn name_of(things: &[Thing], id: ThingId) -> Option<&str> {
    things.iter().find(|thing| thing.id == id).map(|thing| thing.name.as_str())
}

fn none(ctx: &Ctx, ever: bool) -> Markup {
    html! { p { (ctx.words().say(if ever { "folder-none-span" } else { "folder-none" })) } }
}

/// Part 6: what the labels ask, and each mixing.
pub fn jars(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let jars = things(ctx, kept, ThingKind::Jar);
    let step = |fact: &Fact| match upkeep(fact) {
        Some(Upkeep::JarMixed { jar }) => Some((*jar, "folder-mixed")),
        Some(Upkeep::JarEmptied { jar }) => Some((*jar, "folder-emptied")),
        _ => None,
    };
    let rows = html! {
        @for fact in &kept.upkeep.jars {
            @if let Some((jar, key)) = step(fact) {
                tr {
                    td { (time(ctx, fact.stamp.happened)) }
                    th scope="row" { (name_of(&jars, jar).unwrap_or("?")) }
                    td { (words.say(key)) }
                    td { (by(ctx, kept, &fact.stamp)) }
                }
            }
        }
    };
    let heads = ["folder-col-day", "folder-col-what", "folder-col-done", "folder-col-by"];
    html! {
        ul { @for jar in &jars { li { strong { (jar.name) } ". " (label(ctx, kept, jar.id)) } } }
        @if kept.upkeep.jars.is_empty() { (none(ctx, !jars.is_empty())) }
        @else { (table(ctx, &words.say("folder-part-6"), &heads, &rows)) }
    }
}

/// What the label in the jar asks, as was said last.
fn label(ctx: &Ctx, kept: &Kept, jar: ThingId) -> String {
    let words = ctx.words();
    let said = kept.upkeep.jar_labels.iter().rev().find_map(|fact| match upkeep(fact) {
        Some(Upkeep::JarSet { jar: it, contact_min, lasts_h, label }) if *it == jar => {
            Some((*contact_min, *lasts_h, *label))
        }
        _ => None,
    });
    let Some((contact, lasts, label)) = said else {
        return words.say("folder-jar-unset");
    };
    let label = label.and_then(|label| kept.labels.get(&label.entry).cloned());
    let label = label.unwrap_or_else(|| words.say("folder-jar-no-label"));
    let asks = [("label", label.into()), ("minutes", contact.to_string().into())];
    let lasts = match lasts {
        Some(hours) => words.tell("folder-jar-hours", &[("hours", hours.to_string().into())]),
        None => words.say("folder-jar-day"),
    };
    format!("{} {lasts}", words.tell("folder-jar-contact", &asks))
}

/// Part 7: everything that was done for a bath, the foil test among it.
pub fn baths(ctx: &Ctx, kept: &Kept) -> Markup {
    let baths = things(ctx, kept, ThingKind::Ultrasonic);
    let of = |about: About| match about {
        About::Thing(thing) => name_of(&baths, thing).map(str::to_owned),
        _ => None,
    };
    let foil = kept.upkeep.chores_last.iter().any(|fact| {
        matches!(upkeep(fact), Some(Upkeep::ChoreDone { chore, .. }) if chore.word() == "foil test")
    });
    html! {
        (chores(ctx, kept, "folder-part-7", &of))
        @if !foil { p { (ctx.words().say("chore-word-foil-test")) ": " (ctx.words().say("folder-none")) } }
    }
}

/// The chores in the time shown about whatever `of` names.
fn chores(ctx: &Ctx, kept: &Kept, name: &str, of: &dyn Fn(About) -> Option<String>) -> Markup {
    let words = ctx.words();
    let done = kept.upkeep.chores.iter().filter_map(|fact| {
        let (chore, about, key) = match upkeep(fact)? {
            Upkeep::ChoreDone { chore, about, found, .. } => (chore, *about, found_key(*found)),
            Upkeep::ChoreLeft { chore, about, why } => (chore, *about, left_key(*why)),
            _ => return None,
        };
        Some((fact, chore, of(about)?, key))
    });
    let done: Vec<(&Fact, &ChoreWord, String, &str)> = done.collect();
    let rows = html! {
        @for (fact, chore, about, key) in &done {
            tr {
                td { (time(ctx, fact.stamp.happened)) }
                th scope="row" { (about) ", " (say::chore(ctx, chore)) }
                td { @if *key == "folder-not-fine" { strong { (words.say(key)) } } @else { (words.say(key)) } }
                td { (by(ctx, kept, &fact.stamp)) }
            }
        }
    };
    let heads = ["folder-col-day", "folder-col-chore", "folder-col-found", "folder-col-by"];
    html! {
        @if done.is_empty() { (none(ctx, true)) }
        @else { (table(ctx, &words.say(name), &heads, &rows)) }
    }
}

const fn found_key(found: Found) -> &'static str {
    match found {
        Found::Fine => "folder-fine",
        Found::NotFine => "folder-not-fine",
    }
}

const fn left_key(why: LeftOut) -> &'static str {
    match why {
        LeftOut::Closed => "folder-left-closed",
        LeftOut::NotUsed => "folder-left-unused",
    }
}

/// Part 8: the file of each machine, and what was done for it.
pub fn machines(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let of = |about: About| match about {
        About::Machine(id) => {
            let shown = kept.machines.iter().find(|shown| shown.machine.machine == id)?;
            Some(machine_name(ctx, shown))
        }
        _ => None,
    };
    html! {
        p { (words.say("folder-machine-paper")) }
        @for shown in &kept.machines { (machine(ctx, kept, shown)) }
        (chores(ctx, kept, "folder-part-8", &of))
    }
}

fn machine_name(ctx: &Ctx, shown: &MachineShown) -> String {
    ctx.words().tell("machine-name", &[("machine", shown.machine.number.to_string().into())])
}

fn machine(ctx: &Ctx, kept: &Kept, shown: &MachineShown) -> Markup {
    let words = ctx.words();
    let machine = &shown.machine;
    let serviced: Vec<&Fact> = kept
        .upkeep
        .serviced
        .iter()
        .filter(|fact| {
            matches!(upkeep(fact), Some(Upkeep::MachineServiced { machine: it, .. }) if *it == machine.machine)
        })
        .collect();
    let most = match machine.most_pouches {
        Some(most) => words.tell("machine-most", &[("most", most.to_string().into())]),
        None => words.say("machine-most-not-known"),
    };
    let files = if machine.writes_files { "machine-files" } else { "machine-no-files" };
    let sentence = |line: String| html! { li { (line) } };
    html! {
        h3 { (machine_name(ctx, shown)) }
        ul {
            li { (words.say(telling::air_key(machine.air_removal))) ", " (words.say(files)) ", " (most) }
            @for (chore, runs, since) in &shown.counted {
                (sentence(words.tell("folder-due-runs", &[
                    ("chore", say::chore(ctx, chore).into()),
                    ("runs", runs.to_string().into()),
                    ("since", since.map_or_else(|| words.say("not-known"), |since| since.to_string()).into()),
                ])))
            }
            @if serviced.is_empty() { (sentence(words.say("folder-services-none"))) }
            @for fact in serviced {
                li { (time(ctx, fact.stamp.happened)) ": " (telling::line(ctx, &kept.names, fact)) " " (by(ctx, kept, &fact.stamp)) }
            }
        }
    }
}

/// Part 9: each cleaning of a foot basin, with the time at which it was drained.
pub fn basins(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let basins = things(ctx, kept, ThingKind::FootBasin);
    let rows = html! {
        @for (at, fact) in kept.upkeep.basins.iter().enumerate() {
            @match upkeep(fact) {
                Some(Upkeep::BasinWet { basin, after }) => tr {
                    td { (time(ctx, fact.stamp.happened)) }
                    th scope="row" { (name_of(&basins, *basin).unwrap_or("?")) }
                    td { (words.say(after_key(*after))) }
                    td { (drained(ctx, &kept.upkeep.basins[at..], *basin)) }
                    td { (by(ctx, kept, &fact.stamp)) }
                },
                Some(Upkeep::NotUsed { thing }) => {
                    @if let Some(name) = name_of(&basins, *thing) {
                        tr {
                            td { (day(ctx, fact.stamp.happened)) }
                            th scope="row" { (name) }
                            td colspan="2" { (words.say("folder-not-used")) }
                            td { (by(ctx, kept, &fact.stamp)) }
                        }
                    }
                }
                _ => {}
            }
        }
    };
    let heads = [
        "folder-col-day",
        "folder-col-what",
        "folder-col-after",
        "folder-col-drained",
        "folder-col-by",
    ];
    html! {
        @if kept.upkeep.basins.is_empty() { (none(ctx, !basins.is_empty())) }
        @else { (table(ctx, &words.say("folder-part-9"), &heads, &rows)) }
    }
}

/// When the cleaning that these lines begin with was over: the first draining before the next one.
fn drained(ctx: &Ctx, from: &[Fact], basin: ThingId) -> String {
    let next = from.iter().skip(1).find_map(|fact| match upkeep(fact) {
        Some(Upkeep::BasinWet { basin: it, .. }) if *it == basin => Some(None),
        Some(Upkeep::BasinDrained { basin: it }) if *it == basin => Some(Some(fact.stamp.happened)),
        _ => None,
    });
    match next.flatten() {
        Some(at) if when::same_day(ctx, at, from[0].stamp.happened) => when::clock_of(ctx, at),
        Some(at) => full(ctx, at),
        None => ctx.words().say("folder-not-drained"),
    }
}

const fn after_key(after: BasinAfter) -> &'static str {
    match after {
        BasinAfter::Client => "folder-after-client",
        BasinAfter::DayEnd => "folder-after-day",
        BasinAfter::Week => "folder-after-week",
    }
}
