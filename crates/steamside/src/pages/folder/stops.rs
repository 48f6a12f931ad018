//! Part 5: what was set aside and what became of it, and recalls. What was lifted later still stands.

use super::Kept;
use super::gather::stopped;
use super::table::{by, table, time};
use super::today::run_of;
use crate::pages::shapes::Shape;
use crate::pages::{say, telling};
use crate::web::Ctx;
use load::SetState;
use logbook::fact::{Body, Fact, StopReason};
use logbook::view::Pouch;
use maud::{Markup, html};
use measure::RunId;
use std::collections::BTreeSet;

const HEADS: [&str; 4] =
    ["folder-col-day", "folder-col-what", "folder-col-became", "folder-col-by"];
/// So many codes stand in the line of the log itself.
const IN_LINE: usize = 4;
/// How many codes are named before they are only counted.
const CODES: usize = 24;

/// One row for each act.
pub fn draw(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let rows = html! { @for fact in &kept.stops { (row(ctx, kept, fact)) } };
    html! {
        @if kept.stops.is_empty() {
            p { (words.say("folder-none-span")) }
        } @else {
            (table(ctx, &words.say("folder-part-5"), &HEADS, &rows))
        }
    }
}

fn row(ctx: &Ctx, kept: &Kept, fact: &Fact) -> Markup {
    let undone = kept.undone.contains(&fact.stamp.act);
    html! {
        tr class=[undone.then_some("struck")] {
            td { (time(ctx, fact.stamp.happened)) }
            td { (what(ctx, kept, fact)) }
            td { @if matches!(fact.body, Body::SetAside { .. }) { (became(ctx, kept, fact)) } }
            td { (by(ctx, kept, &fact.stamp)) }
        }
    }
}

fn what(ctx: &Ctx, kept: &Kept, fact: &Fact) -> Markup {
    let pouches = pouches(kept, fact);
    let runs: BTreeSet<RunId> = pouches.iter().filter_map(|pouch| pouch.run).collect();
    let recall = matches!(fact.body, Body::SetAside { why: StopReason::Recall, .. });
    html! {
        @if matches!(fact.body, Body::SetAside { .. } | Body::MachineOut { .. }) { (Shape::Palm.draw()) " " }
        @if recall { strong { (ctx.words().say(say::stop_key(StopReason::Recall))) } " " }
        (telling::line(ctx, &kept.names, fact))
        @if !runs.is_empty() {
            " (" (runs.iter().map(|run| run_of(ctx, kept, *run)).collect::<Vec<_>>().join("; ")) ")"
        }
        @if pouches.len() > IN_LINE && pouches.len() <= CODES {
            ": " @for pouch in pouches { span class="code" { (pouch.code) } " " }
        }
    }
}

fn pouches<'k>(kept: &'k Kept, fact: &Fact) -> Vec<&'k Pouch> {
    stopped(&fact.body).iter().filter_map(|id| kept.pouches.get(id)).collect()
}

/// What the pouches of a stop are now. One that had been opened before counts as that.
fn became(ctx: &Ctx, kept: &Kept, fact: &Fact) -> String {
    let at = fact.stamp.happened;
    let [mut still, mut apart, mut back, mut opened] = [0_usize; 4];
    for pouch in pouches(kept, fact) {
        if pouch.opened.is_some_and(|(when, ..)| when <= at) {
            opened += 1;
        } else if pouch.ended.is_some() {
            apart += 1;
        } else if pouch.state == SetState::SetAside {
            still += 1;
        } else {
            back += 1;
        }
    }
    let said = [
        ("folder-became-still", still),
        ("folder-became-apart", apart),
        ("folder-became-back", back),
        ("folder-became-opened", opened),
    ];
    let told = said.into_iter().filter(|(_, count)| *count > 0);
    let told = told.map(|(key, count)| ctx.words().tell(key, &[("count", count.into())]));
    told.collect::<Vec<_>>().join("; ")
}
