//! Upkeep: chores by day, week and count, foot basins, jars, what to buy. One card is one chore and
//! one tap on a sign under it; late ones float up, quiet ones are folded.

mod basins;
mod chores;
mod jars;
pub mod set;
mod soon;
mod stock;

pub use basins::after_key;
pub use chores::{choices, counted_line, how_it_stands, stop_card};
pub use soon::{Soon, WallSign, soon_cards, soon_of, wall_sign};

use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Ground};
use super::shapes::Shape;
use super::{say, when};
use crate::upkeep::{self, Days, Kept, Upkeep, is_soon};
use crate::web::Ctx;
use day::chores::Due;
use load::ChoreWord;
use logbook::book::BookError;
use logbook::fact::{About, Found};
use logbook::typical::chores::SPORE_TEST;
use logbook::view::{Person, View};
use maud::{Markup, html};
use measure::{Instant, MachineId, PersonId};
use release::spores::Says;
use std::collections::BTreeMap;

/// Read again every minute: wet times run out.
const AGAIN_S: u32 = 60;
/// Among so many of the newest spore tests the last good one of a machine is looked for.
const TESTS: u32 = 40;

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// All that is looked after.
    pub upkeep: Upkeep,
    /// Who may sign.
    pub people: Vec<Person>,
    /// Signs, also of those who left.
    pub signs: BTreeMap<PersonId, String>,
    /// When the last good spore test of a machine was placed.
    pub good_tests: BTreeMap<MachineId, Instant>,
    /// Labels of the jars, in the order of the jars.
    pub labels: Vec<Option<String>>,
}

/// The page; of one chore only, where one was asked for.
pub fn page(
    view: &View<'_>,
    ctx: &Ctx,
    one: Option<(ChoreWord, About)>,
) -> Result<Markup, BookError> {
    let seen = see(view, ctx)?;
    let kept = one.and_then(|(chore, about)| {
        let is = |kept: &&Kept| kept.chore.rule.chore == chore && kept.chore.rule.about == about;
        seen.upkeep.chores.iter().find(is)
    });
    let frame = Frame {
        title: ctx.words().say("upkeep-title"),
        place: Place::Upkeep,
        desk: false,
        again_s: Some(AGAIN_S),
        did: frame::did(view, ctx)?,
    };
    let body = match kept {
        Some(kept) => draw_one(ctx, &seen, kept),
        None => draw(ctx, &seen),
    };
    Ok(frame::page(ctx, &frame, &body))
}

fn see(view: &View<'_>, ctx: &Ctx) -> Result<Seen, BookError> {
    let days = Days::read(view, ctx.now, &ctx.zone)?;
    let upkeep = upkeep::see(view, &days)?;
    let mut good_tests = BTreeMap::new();
    for test in view.spore_tests(TESTS)? {
        if test.says() == Says::Good {
            good_tests.entry(test.machine).or_insert(test.placed.happened);
        }
    }
    let labels = labels(view, &upkeep)?;
    let mut signs = BTreeMap::new();
    for kept in &upkeep.chores {
        let sign = kept.chore.last.and_then(|done| done.stamp.sign);
        if let Some(id) = sign.filter(|id| !signs.contains_key(id))
            && let Some(text) = view.person(id)?.and_then(|person| person.sign)
        {
            signs.insert(id, text);
        }
    }
    Ok(Seen { people: view.people()?, upkeep, signs, good_tests, labels })
}

/// What is on the labels of the jars, in their order; `None`: nobody wrote it down.
fn labels(view: &View<'_>, upkeep: &Upkeep) -> Result<Vec<Option<String>>, BookError> {
    let mut labels = Vec::new();
    for jar in &upkeep.jars {
        let kept = jar.jar.label.and_then(|label| label.label);
        let kept = kept.map(|label| view.kept(&label)).transpose()?.flatten();
        labels.push(kept.map(|bytes| String::from_utf8_lossy(&bytes).into_owned()));
    }
    Ok(labels)
}

/// One chore, on a page of its own: done before it is due.
pub fn draw_one(ctx: &Ctx, seen: &Seen, kept: &Kept) -> Markup {
    html! {
        div class="cards" { (chores::card(ctx, seen, kept)) }
        p { a class="key" href="/upkeep" { (ctx.words().say("upkeep-all")) } }
    }
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let all = &seen.upkeep.chores;
    let now = all.iter().filter(|kept| is_soon(kept.due, ctx.now));
    let rest = |wanted: fn(&Due) -> bool| -> Vec<&Kept> {
        let rest = all.iter().filter(|kept| !is_soon(kept.due, ctx.now));
        rest.filter(|kept| wanted(&kept.due)).collect()
    };
    html! {
        @for kept in all.iter().filter(|kept| kept.stops) {
            (stop_card(ctx, &about(ctx, &seen.upkeep, kept.chore.rule.about), kept, false))
        }
        (parts::cautions(ctx, &[Caution::Gloves, Caution::Liquids, Caution::Manual]))
        @if !seen.upkeep.basins.is_empty() { (basins::draw(ctx, seen)) }
        @if !seen.upkeep.jars.is_empty() { (jars::draw(ctx, seen)) }
        h2 { (Shape::Brush.draw()) span { (words.say("chores-now")) } }
        div class="cards" {
            @for kept in now.clone() { (chores::card(ctx, seen, kept)) }
            @if now.clone().next().is_none() { p class="fact quiet" { (words.say("chores-none")) } }
        }
        (watch(ctx, seen))
        (chores::list(ctx, seen, "chores-later", &rest(|due| matches!(due, Due::Later(_)))))
        (counted(ctx, seen))
        (stock::draw(ctx, seen))
        (tests(ctx, seen))
        details {
            summary { (words.say("chores-quiet")) }
            (chores::list(ctx, seen, "chores-today", &rest(|due| matches!(due, Due::Done | Due::Left))))
            (chores::list(ctx, seen, "chores-next", &rest(|due| matches!(due, Due::Next(Some(_))))))
        }
        p class="ways" { (parts::way("/upkeep/set", Shape::Tape, &words.say("upkeep-set-title"))) }
    }
}

/// What was found not fine and has not been found fine since.
fn watch(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let bad = |kept: &&Kept| kept.chore.last.is_some_and(|done| done.found == Found::NotFine);
    let bad: Vec<&Kept> = seen.upkeep.chores.iter().filter(bad).collect();
    if bad.is_empty() {
        return html! {};
    }
    parts::card(
        Ground::Turn,
        Shape::Hourglass,
        &words.say("chores-watch"),
        &html! {
            ul class="chores" { @for kept in bad { li { (chores::link(ctx, seen, kept)) } } }
        },
    )
}

/// Chores that go by runs, and those of which nobody knows how often.
fn counted(ctx: &Ctx, seen: &Seen) -> Markup {
    let by_count = |kept: &&Kept| {
        !is_soon(kept.due, ctx.now) && (kept.chore.rule.runs.is_some() || kept.due == Due::NotKnown)
    };
    let counted: Vec<&Kept> = seen.upkeep.chores.iter().filter(by_count).collect();
    chores::list(ctx, seen, "chores-counted", &counted)
}

/// Spore tests: the last good one and the next, by the salon's rule.
fn tests(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let tests = seen.upkeep.chores.iter().filter_map(|kept| match kept.chore.rule.about {
        About::Machine(machine) if kept.chore.rule.chore.word() == SPORE_TEST => {
            Some((machine, kept))
        }
        _ => None,
    });
    let good = |machine: &MachineId| {
        let good = seen.good_tests.get(machine);
        good.map_or_else(|| words.say("spore-never"), |at| when::day_of(ctx, *at))
    };
    let mut lines = Vec::new();
    for (machine, kept) in tests {
        let args = [
            ("about", about(ctx, &seen.upkeep, kept.chore.rule.about).into()),
            ("good", good(&machine).into()),
            ("due", how_it_stands(ctx, &seen.signs, kept).into()),
        ];
        lines.push(words.tell("spore-line", &args));
    }
    if lines.is_empty() {
        return html! {};
    }
    parts::card(
        Ground::Fine,
        Shape::Plateau,
        &words.say("spore-title"),
        &html! {
            ul { @for line in &lines { li { (line) } } }
            p { a class="key" href="/spores" { (words.say("spore-go")) } }
        },
    )
}

/// What a chore is about, as people call it.
fn about(ctx: &Ctx, upkeep: &Upkeep, about: About) -> String {
    let words = ctx.words();
    let named = |key: &str, name: &'static str, number: Option<u32>| {
        let number = number.map_or_else(|| "?".to_owned(), |number| number.to_string());
        words.tell(key, &[(name, number.into())])
    };
    match about {
        About::Salon => words.say("about-salon"),
        About::Machine(machine) => {
            named("machine-name", "machine", upkeep.machines.get(&machine).copied())
        }
        About::Thing(id) => {
            let thing = upkeep.things.iter().find(|thing| thing.thing == id);
            thing.map_or_else(
                || words.say("thing-gone"),
                |thing| named(say::thing_key(thing.what), "number", Some(thing.number)),
            )
        }
    }
}

/// What a chore is about, as a form says it.
fn about_value(about: About) -> String {
    match about {
        About::Salon => "salon".to_owned(),
        About::Machine(machine) => format!("machine.{machine}"),
        About::Thing(thing) => format!("thing.{thing}"),
    }
}

/// `14:32, HL fish`, or the time alone.
fn at_and_who(
    ctx: &Ctx,
    signs: &BTreeMap<PersonId, String>,
    at: Instant,
    who: Option<PersonId>,
) -> String {
    let at = when::moment(ctx, at);
    match who.and_then(|id| signs.get(&id)) {
        Some(sign) => format!("{at}, {sign}"),
        None => at,
    }
}
