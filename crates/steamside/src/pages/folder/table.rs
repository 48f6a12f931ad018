//! The tables of the record, and signs and marks in them.

use super::{Kept, full};
use crate::pages::when;
use crate::web::Ctx;
use logbook::fact::{Known, Stamp};
use maud::{Markup, html};
use measure::{Instant, PersonId, Span};

/// Written later than this after it happened: said to be so, as in the log. (Common practice, no
/// source: nine in ten entries made at the place come within five minutes.)
const LATER: Span = Span::from_minutes(5);

/// A table under its headings; it scrolls by itself on a narrow screen.
pub fn table(ctx: &Ctx, name: &str, heads: &[&str], rows: &Markup) -> Markup {
    let words = ctx.words();
    html! {
        div class="scroll" tabindex="0" role="group" aria-label=(name) {
            table {
                thead { tr { @for key in heads { th scope="col" { (words.say(key)) } } } }
                tbody { (rows) }
            }
        }
    }
}

/// Whose sign.
pub fn sign(ctx: &Ctx, kept: &Kept, who: Option<PersonId>) -> String {
    match who {
        Some(who) => {
            kept.names.signs.get(&who).cloned().unwrap_or_else(|| ctx.words().say("sign-gone"))
        }
        None => ctx.words().say("folder-no-sign"),
    }
}

/// Was it written so much later that it has to be said?
pub fn is_late(happened: Instant, written: Instant) -> bool {
    written - happened > LATER
}

/// Marks of one entry: written later, from paper, taken back.
pub fn marks(ctx: &Ctx, kept: &Kept, stamp: &Stamp) -> Vec<String> {
    let words = ctx.words();
    let mut marks = Vec::new();
    if is_late(stamp.happened, stamp.written) {
        marks.push(words.tell("log-later", &[("at", full(ctx, stamp.written).into())]));
    }
    if stamp.known == Known::FromPaper {
        marks.push(words.say("known-from-paper"));
    }
    if kept.undone.contains(&stamp.act) {
        marks.push(words.say("log-undone"));
    }
    marks
}

/// Who and what is marked, as the last cell of a row.
pub fn by(ctx: &Ctx, kept: &Kept, stamp: &Stamp) -> Markup {
    html! {
        (sign(ctx, kept, stamp.sign))
        @for mark in marks(ctx, kept, stamp) { " " em { (mark) } }
    }
}

/// A moment, for people and for programs.
pub fn time(ctx: &Ctx, at: Instant) -> Markup {
    html! { time datetime=(when::machine_value(ctx, at)) { (full(ctx, at)) } }
}
