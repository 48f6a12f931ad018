//! An act that was not done: what happened, what is safe, what to do, in that order.

use super::frame::{self, Frame, Place};
use super::parts::{self, Ground};
use super::say;
use super::shapes::Shape;
use crate::web::Ctx;
use crate::words::Arg;
use maud::{Markup, html};

/// Why nothing was written, as a line of the word files with its values.
#[derive(Debug, Clone, Copy)]
pub struct Said<'a> {
    /// Key of the line.
    pub key: &'a str,
    /// Values in it.
    pub args: &'a [(&'static str, String)],
    /// The page to go back to.
    pub back: &'a str,
}

/// A chore in the reader's language; everything else as it is.
fn shown(ctx: &Ctx, name: &str, value: &str) -> String {
    match (name, value.parse()) {
        ("chore", Ok(word)) => say::chore(ctx, &word),
        _ => value.to_owned(),
    }
}

/// The page. Where a line says nothing of its own about what is safe, the common sentence holds:
/// nothing was written, everything is as it was.
pub fn page(ctx: &Ctx, said: &Said<'_>) -> Markup {
    let words = ctx.words();
    let args: Vec<(&str, Arg)> =
        said.args.iter().map(|(name, value)| (*name, shown(ctx, name, value).into())).collect();
    let part = |part: &str, common: &str| {
        let key = format!("{}.{part}", said.key);
        // The part may be in English only; the common sentence is for lines that never had one.
        let known = crate::words::Words::of(crate::words::Language::En).has(&key);
        if known { words.tell(&key, &args) } else { words.say(common) }
    };
    let frame = Frame {
        title: words.say("refused-title"),
        place: Place::Now,
        desk: false,
        again_s: None,
        did: None,
    };
    let inside = html! {
        p class="fact" { (words.tell(said.key, &args)) }
        p { (part("safe", "refused-safe")) }
        p { (part("do", "refused-do")) }
        p { a class="key main-key" href=(said.back) { (words.say("back")) } }
    };
    let body = html! {
        div role="alert" {
            (parts::card(Ground::Turn, Shape::Hourglass, &words.say("refused-heading"), &inside))
        }
    };
    frame::page(ctx, &frame, &body)
}
