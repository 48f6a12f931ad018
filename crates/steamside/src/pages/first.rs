//! The first minute: from an empty book to a running clock, without a form. Everything else is added
//! when it first matters.

use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Form, Ground};
use super::shapes::Shape;
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::view::View;
use maud::{Markup, html};
use measure::PersonId;
use sha2::{Digest, Sha256};

/// Most machines that the first minute asks about; the rest of a salon is set up at leisure.
const MOST: u32 = 3;

/// How many machines: one tap.
pub fn machines(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    html! {
        (parts::card(Ground::Turn, Shape::Drum, &words.say("first-machine"), &html! {
            p class="ways first" {
                @for count in 1..=MOST {
                    a class="key main-key" href=(format!("/first?machines={count}")) {
                        @for _ in 0..count { (Shape::Drum.draw()) }
                        span { (words.tell("first-machines", &[("count", count.into())])) }
                    }
                }
            }
        }))
        p { a href="/setup" { (words.say("first-all")) } }
    }
}

/// The page on which a sign is chosen: tapping it starts the clock. `None`: the book is not empty,
/// or that many machines are not asked about here.
pub fn page(view: &View<'_>, ctx: &Ctx, count: u32) -> Result<Option<Markup>, BookError> {
    let empty = view.machines()?.is_empty() && view.people()?.is_empty();
    if !empty || !(1..=MOST).contains(&count) {
        return Ok(None);
    }
    let frame = Frame {
        title: ctx.words().say("first-title"),
        place: Place::Now,
        desk: false,
        again_s: None,
        did: None,
    };
    Ok(Some(frame::page(ctx, &frame, &draw(ctx, count))))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, count: u32) -> Markup {
    let words = ctx.words();
    html! {
        (parts::card(Ground::Turn, Shape::Hourglass, &words.say("first-running"), &html! {
            p { (words.say("first-sign")) }
            (signs(ctx, count, true))
        }))
        details {
            summary { (words.say("first-not-running")) }
            (signs(ctx, count, false))
        }
        (parts::cautions(ctx, &[Caution::Hot, Caution::Manual]))
    }
}

/// Ready-made signs, each with the mark that it will keep. One's own initials can be set later.
fn signs(ctx: &Ctx, count: u32, running: bool) -> Markup {
    let words = ctx.words();
    let asks = words.say(if running { "first-asks" } else { "first-asks-sign" });
    let on = if running { "running" } else { "not running" };
    let all = words.say("first-signs");
    html! {
        div class="sign-line" {
            p class="asks" { (asks) }
            div class="signs" {
                @for word in all.split(',').map(str::trim) {
                    (Form { then: Some("/"), ..Form::new("first-run", on) }.draw(ctx, &html! {
                        (parts::hidden("machines", count))
                        (parts::hidden("sign-text", word))
                        @if running { (parts::hidden("running", "yes")) }
                        @let person = person(ctx, word);
                        button class="sign" name="person" value=(person) {
                            (parts::mark(person))
                            span class="unseen" { (asks) " " }
                            span class="sign-text" { (word) }
                        }
                    }))
                }
            }
        }
    }
}

/// The id that this sign will have: its mark is drawn from it.
fn person(ctx: &Ctx, word: &str) -> PersonId {
    let mut digest = Sha256::new();
    digest.update(ctx.station.bytes());
    digest.update(ctx.now.millis().to_be_bytes());
    digest.update(word);
    let mut id = [0; 16];
    id.copy_from_slice(&digest.finalize()[..16]);
    PersonId::from_bytes(id)
}
