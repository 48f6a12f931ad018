//! Part 2: the rule that is followed, the salon's settings, and the limits with their sources.

use super::Kept;
use super::table::table;
use crate::web::Ctx;
use maud::{Markup, html};
use release::limits::{Known, Limit, Limits};

/// The rule, the settings, the limits.
pub fn draw(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let limits = Limits::default();
    let rows = html! {
        @for (limit, value) in limits.in_force() {
            tr {
                td lang="en" { (limit.what) }
                td class="number" { (value) " " (limit.unit) }
                td lang="en" { (limit.source) }
                td { (words.say(known_key(limit))) }
            }
        }
    };
    let heads = ["folder-col-what", "folder-col-value", "folder-col-source", "folder-col-how"];
    html! {
        p { (words.say("folder-rule")) }
        p { (words.tell("setup-zone", &[("zone", kept.zone.as_str().into())])) }
        p { (words.say("folder-retention")) }
        (intervals(ctx, kept))
        h3 { (words.say("folder-limits")) }
        p { (words.say("folder-limits-own")) }
        (table(ctx, &words.say("folder-limits"), &heads, &rows))
    }
}

fn intervals(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let said = kept.machines.iter().filter_map(|shown| {
        let days = kept.spore_days(&shown.machine)?;
        let machine =
            words.tell("machine-name", &[("machine", shown.machine.number.to_string().into())]);
        Some(words.tell(
            "folder-interval-days",
            &[("machine", machine.into()), ("days", days.to_string().into())],
        ))
    });
    let said: Vec<String> = said.collect();
    html! {
        @if said.is_empty() { p { (words.say("folder-interval")) } }
        @for line in said { p { (line) } }
    }
}

const fn known_key(limit: &Limit) -> &'static str {
    match limit.known {
        Known::Seen => "folder-limit-seen",
        Known::FromMemory => "folder-limit-memory",
        Known::Ours => "folder-limit-ours",
    }
}
