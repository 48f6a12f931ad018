//! Part 4: the spore tests of the time shown, failed ones with the whole path taken.

use super::table::{by, sign, table, time};
use super::today::run_of;
use super::{Kept, TestShown, full};
use crate::pages::shapes::Shape;
use crate::pages::{spores, telling};
use crate::web::Ctx;
use logbook::fact::Fact;
use maud::{Markup, html};
use release::spores::Says;

const HEADS: [&str; 5] =
    ["folder-col-day", "folder-col-in", "folder-col-lot", "folder-col-result", "folder-col-done"];

/// One row for each test.
pub fn draw(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let rows = html! { @for shown in &kept.tests { (row(ctx, kept, shown)) } };
    html! {
        @if kept.tests.is_empty() {
            p { (words.say("folder-none-span")) }
        } @else {
            (table(ctx, &words.say("folder-part-4"), &HEADS, &rows))
        }
    }
}

fn row(ctx: &Ctx, kept: &Kept, shown: &TestShown) -> Markup {
    let words = ctx.words();
    let test = &shown.test;
    let says = test.says();
    let machine = kept.machines.iter().find(|row| row.machine.machine == test.machine);
    let number = machine.map_or_else(|| "?".to_owned(), |row| row.machine.number.to_string());
    html! {
        tr class=[(says == Says::Grew).then_some("loud")] {
            td { (time(ctx, test.placed.happened)) br; (by(ctx, kept, &test.placed)) }
            td { @match test.run {
                Some(run) => (run_of(ctx, kept, run)),
                None => (words.tell("machine-name", &[("machine", number.into())])),
            } }
            td { @match test.lot.and_then(|lot| kept.labels.get(&lot.entry)) {
                Some(lot) => (lot),
                None => (words.say("folder-lot-none")),
            } }
            td {
                @if says == Says::Grew { (Shape::Palm.draw()) " " strong { (words.say(spores::says_key(says))) } }
                @else { (words.say(spores::says_key(says))) }
            }
            td {
                @if let Some(by) = test.answer_by {
                    p { (words.tell("spores-by", &[("day", super::day(ctx, by).into())])) }
                }
                @for fact in &shown.path { p { (step(ctx, kept, fact)) } }
            }
        }
    }
}

fn step(ctx: &Ctx, kept: &Kept, fact: &Fact) -> String {
    let line = telling::line(ctx, &kept.names, fact);
    format!("{}, {}: {line}", full(ctx, fact.stamp.happened), sign(ctx, kept, fact.stamp.sign))
}
