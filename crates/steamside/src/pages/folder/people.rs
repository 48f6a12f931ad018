//! Parts 1, 10, 11 and 13: people by their signs, gaps with their reasons, how to read the page, and
//! six steps that anybody here can show.

use super::table::{sign, table, time};
use super::{Kept, full};
use crate::web::Ctx;
use logbook::fact::{Body, Counter, Fact, GapWhy};
use logbook::view::Roles;
use maud::{Markup, html};
use measure::Instant;

/// Part 1: signs only.
pub fn who(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let rows = html! {
        @for (person, roles) in &kept.people {
            tr {
                th scope="row" { (person.sign.clone().unwrap_or_else(|| words.say("sign-gone"))) }
                td { (said_of(ctx, *roles)) }
            }
        }
    };
    html! {
        p { (words.say("folder-who")) }
        @if kept.people.is_empty() { p { (words.say("folder-none")) } }
        @else { (table(ctx, &words.say("folder-part-1"), &["folder-sign", "folder-is"], &rows)) }
        @if !kept.people.iter().any(|(_, roles)| roles.in_charge) { p { (words.say("folder-who-runs")) } }
    }
}

fn said_of(ctx: &Ctx, roles: Roles) -> String {
    let words = ctx.words();
    let all = [
        (roles.in_charge, "folder-in-charge"),
        (roles.learns, "folder-learns"),
        (roles.teaches, "folder-teaches"),
    ];
    let said: Vec<String> =
        all.into_iter().filter(|(is, _)| *is).map(|(_, key)| words.say(key)).collect();
    if said.is_empty() { words.say("folder-no-role") } else { said.join("; ") }
}

/// Part 10: what is not kept, and how often contact with blood was noted.
pub fn safety(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let exposures = &kept.upkeep.exposures;
    html! {
        p { (words.say("folder-training")) }
        p { (words.tell("folder-exposures", &[("count", exposures.len().into())])) }
        @if !exposures.is_empty() {
            ul { @for fact in exposures { li { (time(ctx, fact.stamp.happened)) } } }
            p { (words.say("folder-exposure")) }
        }
    }
}

/// Part 11: times without an entry, and why.
pub fn gaps(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let rows = html! { @for fact in &kept.upkeep.gaps { (gap(ctx, kept, fact)) } };
    let heads = ["folder-from", "folder-to", "folder-col-why", "folder-col-by"];
    html! {
        @if kept.upkeep.gaps.is_empty() {
            p { (words.say("folder-gap-none")) }
        } @else {
            (table(ctx, &words.say("folder-part-11"), &heads, &rows))
        }
    }
}

fn gap(ctx: &Ctx, kept: &Kept, fact: &Fact) -> Markup {
    let Body::Counter(said) = &fact.body else { return html! {} };
    let words = ctx.words();
    let (from, to, key, by) = match **said {
        Counter::GapExplained { from, to, why } => {
            (from, to, gap_key(why), sign(ctx, kept, fact.stamp.sign))
        }
        Counter::BoxWasOff { from, to } => (from, to, "folder-gap-box", words.say("log-program")),
        _ => return html! {},
    };
    html! {
        tr { td { (time(ctx, from)) } td { (time(ctx, to)) } td { (words.say(key)) } td { (by) } }
    }
}

const fn gap_key(why: GapWhy) -> &'static str {
    match why {
        GapWhy::Closed => "folder-gap-closed",
        GapWhy::Holiday => "folder-gap-holiday",
        GapWhy::Power => "folder-gap-power",
        GapWhy::NothingToDo => "folder-gap-nothing",
        GapWhy::OnPaper => "folder-gap-paper",
        GapWhy::Forgotten => "folder-gap-forgotten",
    }
}

/// Part 13: where the numbers come from and what nobody can know.
pub fn reading(ctx: &Ctx) -> Markup {
    let keys = [
        "folder-read-measured",
        "folder-read-read",
        "folder-read-clock",
        "folder-read-paper",
        "folder-read-later",
        "folder-read-corrected",
        "folder-read-steam",
        "spores-prove",
        "folder-read-chain",
    ];
    html! { ul { @for key in keys { li { (ctx.words().say(key)) } } } }
}

/// The last page: six steps that anybody here can show, and when each was last done.
pub fn ask_us(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let last = &kept.last;
    let steps: [(&str, Option<Instant>); 6] = [
        ("folder-show-1", last.packed),
        ("folder-show-2", last.started),
        ("folder-show-3", last.looked),
        ("folder-show-4", last.opened),
        ("folder-show-5", last.mixed),
        ("folder-show-6", last.basin),
    ];
    let rows = html! {
        @for (key, at) in steps {
            tr {
                th scope="row" { (words.say(key)) }
                td { @match at {
                    Some(at) => (full(ctx, at)),
                    None => (words.say("folder-show-never")),
                } }
            }
        }
    };
    let title = words.say("folder-show-title");
    html! {
        section class="part" {
            h2 { span { (title) } }
            p { (words.say("folder-show-how")) }
            (table(ctx, &title, &["folder-col-what", "folder-col-last"], &rows))
        }
    }
}
