//! A chore as a card with its sign line, as a line that leads to it, and as a stop.

use super::{Seen, about, about_value, at_and_who};
use crate::pages::parts::{self, Form, Ground};
use crate::pages::shapes::Shape;
use crate::pages::{say, stop, when};
use crate::upkeep::{Days, Kept, Upkeep, is_soon, see};
use crate::web::Ctx;
use day::chores::{Due, Late};
use logbook::book::BookError;
use logbook::fact::{About, Found};
use logbook::typical::chores::{ChoreSource, SPORE_TEST};
use logbook::view::View;
use maud::{Markup, html};
use measure::PersonId;
use std::collections::BTreeMap;

/// What to look at, for chores where it is not plain: word, line.
const HOW: [(&str, &str); 9] = [
    ("water level", "how-water"),
    ("door seal", "how-seal"),
    ("chamber", "how-chamber"),
    ("tank", "how-tank"),
    ("used bin", "how-bin"),
    ("last load", "how-last-load"),
    ("bath fresh", "how-bath"),
    ("foil test", "how-foil"),
    ("stock count", "how-stock"),
];

/// Every chore that is signed for, with the value of its choice in a form and its name. A spore test
/// is placed instead.
pub fn choices(view: &View<'_>, ctx: &Ctx) -> Result<Vec<(String, String)>, BookError> {
    let upkeep = see(view, &Days::read(view, ctx.now, &ctx.zone)?)?;
    let signed = upkeep.chores.iter().filter(|kept| kept.chore.rule.chore.word() != SPORE_TEST);
    Ok(signed
        .map(|kept| {
            let rule = &kept.chore.rule;
            (format!("{} {}", about_value(rule.about), rule.chore), name(ctx, &upkeep, kept))
        })
        .collect())
}

/// The name of a chore with what it is about.
pub(super) fn name(ctx: &Ctx, upkeep: &Upkeep, kept: &Kept) -> String {
    let rule = &kept.chore.rule;
    let chore = say::chore(ctx, &rule.chore);
    match rule.about {
        About::Salon => chore,
        of => ctx
            .words()
            .tell("chore-of", &[("about", about(ctx, upkeep, of).into()), ("chore", chore.into())]),
    }
}

/// How a chore stands, in one short line.
pub fn how_it_stands(ctx: &Ctx, signs: &BTreeMap<PersonId, String>, kept: &Kept) -> String {
    let words = ctx.words();
    let day = |day: i64| when::day_by_number(ctx, day).into();
    let done = |key: &str| {
        let done = kept.chore.last;
        let done = done.map(|done| at_and_who(ctx, signs, done.stamp.happened, done.stamp.sign));
        words.tell(key, &[("done", done.unwrap_or_else(|| words.say("not-known")).into())])
    };
    match kept.due {
        Due::NotKnown => words.say("due-not-known"),
        Due::Overdue(Late::Since(since)) => words.tell("due-late", &[("day", day(since))]),
        Due::Overdue(Late::Runs(over)) => words.tell("due-runs-over", &[("count", over.into())]),
        Due::Now => words.say("due-now"),
        Due::Later(at) => words.tell("due-later", &[("time", when::clock_of(ctx, at).into())]),
        Due::Done => done("due-done"),
        Due::Left => words.say("due-left"),
        Due::Next(Some(next)) => words.tell("due-next", &[("day", day(next))]),
        Due::Next(None) => runs(ctx, kept).unwrap_or_default(),
    }
}

/// `34 of 100 runs`, where it goes by runs.
pub(super) fn runs(ctx: &Ctx, kept: &Kept) -> Option<String> {
    let most = kept.chore.rule.runs?;
    let args = [("runs", kept.chore.runs.to_string().into()), ("most", most.into())];
    Some(ctx.words().tell("due-runs", &args))
}

/// A chore that goes by runs, for the page of its machine.
pub fn counted_line(ctx: &Ctx, kept: &Kept) -> Option<String> {
    let runs = runs(ctx, kept)?;
    let args = [("about", say::chore(ctx, &kept.chore.rule.chore).into()), ("chore", runs.into())];
    Some(ctx.words().tell("chore-of", &args))
}

/// A key of the form that nothing else on the page has.
fn on(kept: &Kept) -> String {
    format!("{} {}", about_value(kept.chore.rule.about), kept.chore.rule.chore)
}

/// The card: what, since when, how, and the sign line.
pub(super) fn card(ctx: &Ctx, seen: &Seen, kept: &Kept) -> Markup {
    let words = ctx.words();
    let rule = &kept.chore.rule;
    let ground = if is_soon(kept.due, ctx.now) { Ground::Turn } else { Ground::Fine };
    let how = HOW.iter().find(|(word, _)| *word == rule.chore.word());
    parts::card(
        ground,
        Shape::Brush,
        &name(ctx, &seen.upkeep, kept),
        &html! {
            p class="fact" { (how_it_stands(ctx, &seen.signs, kept)) }
            @if !matches!(kept.due, Due::Next(None)) { @if let Some(runs) = runs(ctx, kept) { p { (runs) } } }
            @if let Some((_, key)) = how { p { (words.say(key)) } }
            (found(ctx, seen, kept))
            p class="known" { (source(ctx, kept)) }
            @if rule.chore.word() == SPORE_TEST && matches!(rule.about, About::Machine(_)) {
                p { a class="key main-key" href="/spores" { (words.say("spore-go")) } }
            } @else {
                (done_form(ctx, seen, kept))
                @if !rule.stops_work { (left_form(ctx, seen, kept)) }
            }
        },
    )
}

/// What was found not fine the last time.
fn found(ctx: &Ctx, seen: &Seen, kept: &Kept) -> Markup {
    let last = kept.chore.last.filter(|done| done.found == Found::NotFine);
    html! {
        @if let Some(done) = last {
            @let when = at_and_who(ctx, &seen.signs, done.stamp.happened, done.stamp.sign);
            p { strong { (ctx.words().tell("chore-found", &[("done", when.into())])) } }
        }
    }
}

fn done_form(ctx: &Ctx, seen: &Seen, kept: &Kept) -> Markup {
    let words = ctx.words();
    let on = on(kept);
    let name = name(ctx, &seen.upkeep, kept);
    Form { then: Some("/upkeep"), ..Form::new("chore-done", &on) }.draw(
        ctx,
        &html! {
            (which(kept))
            p class="choices" {
                label { input type="checkbox" name="not-fine" value="yes"; span { (words.say("chore-not-fine")) span class="unseen" { " " (name) } } }
            }
            (parts::sign_line_for(ctx, &seen.people, &name, &words.say("chore-asks")))
        },
    )
}

fn left_form(ctx: &Ctx, seen: &Seen, kept: &Kept) -> Markup {
    let (why, key) = match kept.chore.rule.about {
        About::Salon => ("closed", "chore-closed"),
        _ => ("not-used", "chore-not-used"),
    };
    Form { then: Some("/upkeep"), ..Form::new("chore-left", &on(kept)) }.draw(
        ctx,
        &html! {
            (which(kept))
            (parts::hidden("why", why))
            p { (parts::key_for(&ctx.words().say(key), &name(ctx, &seen.upkeep, kept))) }
        },
    )
}

fn which(kept: &Kept) -> Markup {
    html! {
        (parts::hidden("chore", &kept.chore.rule.chore))
        (parts::hidden("about", about_value(kept.chore.rule.about)))
    }
}

/// Where the rhythm is from.
pub(super) fn source(ctx: &Ctx, kept: &Kept) -> String {
    let words = ctx.words();
    if let Some(page) = kept.chore.rule.manual_page {
        return words.tell("source-page", &[("page", page.to_string().into())]);
    }
    words.say(match kept.chore.source {
        None => "source-own",
        Some(ChoreSource::CommonPractice) => "source-common",
        Some(ChoreSource::DentalGuideline) => "source-dental",
        Some(ChoreSource::FoilTest) => "source-foil",
        Some(ChoreSource::NewSouthWales) => "source-nsw",
        Some(ChoreSource::Manual) => "source-manual",
    })
}

/// A line that leads to the chore's own card.
pub(super) fn link(ctx: &Ctx, seen: &Seen, kept: &Kept) -> Markup {
    let rule = &kept.chore.rule;
    let href =
        format!("/upkeep?about={}&chore={}", about_value(rule.about), spelt(rule.chore.word()));
    html! {
        a href=(href) { (name(ctx, &seen.upkeep, kept)) }
        span { (how_it_stands(ctx, &seen.signs, kept)) }
        @if !matches!(kept.due, Due::Next(None)) { @if let Some(runs) = runs(ctx, kept) { span { (runs) } } }
    }
}

/// A word as an address holds it.
fn spelt(word: &str) -> String {
    let mut spelt = String::new();
    for byte in word.bytes() {
        if byte.is_ascii_alphanumeric() {
            spelt.push(char::from(byte));
        } else {
            spelt += &format!("%{byte:02X}");
        }
    }
    spelt
}

/// Lines under a heading; nothing where there are none.
pub(super) fn list(ctx: &Ctx, seen: &Seen, heading: &str, chores: &[&Kept]) -> Markup {
    html! {
        @if !chores.is_empty() {
            h2 { (ctx.words().say(heading)) }
            ul class="chores" { @for kept in chores { li { (link(ctx, seen, kept)) } } }
        }
    }
}

/// Work stops: the machine is not started until it is done and found fine.
pub fn stop_card(ctx: &Ctx, name: &str, kept: &Kept, way: bool) -> Markup {
    let words = ctx.words();
    let stands = match (kept.due, runs(ctx, kept)) {
        (Due::Now | Due::Next(_), Some(runs)) => runs,
        _ => how_it_stands(ctx, &BTreeMap::new(), kept),
    };
    stop::card(
        ctx,
        name,
        &html! {
            p class="fact" { (say::chore(ctx, &kept.chore.rule.chore)) ": " (stands) }
            p { (words.say("chore-stops")) }
            @if way { p { a class="key main-key" href="/upkeep" { (words.say("place-upkeep")) } } }
        },
    )
}
