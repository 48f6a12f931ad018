//! Ready: the shelf as it stands, oldest in front, one board a kind; and what is at the chairs.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::{say, when};
use crate::web::Ctx;
use load::{SetKind, SetState};
use logbook::book::BookError;
use logbook::view::{Pouch, View};
use maud::{Markup, html};
use std::collections::BTreeMap;

/// Read again every minute.
const AGAIN_S: u32 = 60;
/// Pouches drawn on a board before the rest is only counted.
const DRAWN: usize = 24;

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// On the shelf, and for use now.
    pub usable: Vec<Pouch>,
    /// Opened today.
    pub at_chairs: Vec<Pouch>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let today =
        |pouch: &Pouch| pouch.opened.is_some_and(|(at, _, _)| when::same_day(ctx, at, ctx.now));
    let seen = Seen {
        usable: view.pouches_in(&[SetState::Ready, SetState::UseNow])?,
        at_chairs: view.pouches_in(&[SetState::Opened])?.into_iter().filter(today).collect(),
    };
    let frame = Frame {
        title: ctx.words().say("ready-title"),
        place: Place::Ready,
        desk: false,
        again_s: Some(AGAIN_S),
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let use_now: Vec<&Pouch> = seen
        .usable
        .iter()
        .filter(|pouch| {
            pouch.state == SetState::UseNow && pouch.use_until.is_some_and(|until| ctx.now <= until)
        })
        .collect();
    let mut boards: BTreeMap<&SetKind, Vec<&Pouch>> = BTreeMap::new();
    for pouch in seen.usable.iter().filter(|pouch| pouch.state == SetState::Ready) {
        boards.entry(&pouch.kind).or_default().push(pouch);
    }
    html! {
        p class="ways" { (parts::way("/chair", Shape::Chair, &words.say("go-chair"))) }
        @for pouch in use_now { (use_now_card(ctx, pouch)) }
        @if boards.is_empty() {
            (parts::card(Ground::Fine, Shape::House, &words.say("ready-none"), &html! {
                p { (words.say("ready-none-do")) }
            }))
        }
        @for (kind, mut pouches) in boards {
            @let () = pouches.sort_by_key(|pouch| (pouch.released.map(|(at, _)| at), pouch.code));
            (board(ctx, kind, &pouches))
        }
        (not_sure(ctx, &seen.usable))
        (at_chairs(ctx, &seen.at_chairs))
    }
}

fn use_now_card(ctx: &Ctx, pouch: &Pouch) -> Markup {
    let words = ctx.words();
    let until = pouch.use_until.map(|until| when::moment(ctx, until)).unwrap_or_default();
    let heading = words.tell("use-now-until", &[("at", until.into())]);
    parts::card(
        Ground::Turn,
        Shape::Tray,
        &heading,
        &html! {
            p class="fact" { span class="code" { (pouch.code) } " " (say::kind(ctx, &pouch.kind)) }
            p { (words.say("use-now-how")) }
        },
    )
}

/// One board of the shelf. The left end is the front.
fn board(ctx: &Ctx, kind: &SetKind, pouches: &[&Pouch]) -> Markup {
    let words = ctx.words();
    let heading = words.tell(
        "shelf-kind",
        &[("kind", say::kind(ctx, kind).into()), ("count", pouches.len().into())],
    );
    html! {
        section class="shelf" {
            h2 { (Shape::House.draw()) span { (heading) } }
            p class="front" { (words.say("shelf-front")) }
            ol class="board" {
                @for pouch in pouches.iter().take(DRAWN) {
                    li class="on-shelf" {
                        span class="code" { (pouch.code) }
                        @if let Some((at, _)) = pouch.released { span class="date" { (when::day_of(ctx, at)) } }
                    }
                }
                @if pouches.len() > DRAWN {
                    li class="more" { (words.tell("shelf-more", &[("count", (pouches.len() - DRAWN).into())])) }
                }
            }
        }
    }
}

/// One tap, by anybody, at any time: the safer side is free. The codes stand apart from the shelf, so
/// that no hand that takes a pouch sets one aside.
fn not_sure(ctx: &Ctx, usable: &[Pouch]) -> Markup {
    let words = ctx.words();
    html! {
        @if !usable.is_empty() {
            (parts::card(Ground::Fine, Shape::Palm, &words.say("shelf-not-sure"), &html! {
                (Form::new("set-aside", "shelf").draw(ctx, &html! {
                    (parts::hidden("why", "not-sure"))
                    div class="gap-keys" {
                        @for pouch in usable {
                            @let aside = [("code", pouch.code.to_string().into())];
                            button class="key code" name="pouch" value=(pouch.pouch)
                                aria-label=(words.tell("shelf-aside", &aside)) { (pouch.code) }
                        }
                    }
                }))
            }))
        }
    }
}

fn at_chairs(ctx: &Ctx, pouches: &[Pouch]) -> Markup {
    let words = ctx.words();
    html! {
        section class="card fine" {
            h2 {
                (Shape::OpenEnvelope.draw())
                span { (words.tell("chairs-today", &[("count", pouches.len().into())])) }
            }
            ul class="pouch-list" {
                @for pouch in pouches {
                    li {
                        span class="code" { (pouch.code) }
                        span { (say::kind(ctx, &pouch.kind)) }
                        @if let Some((at, _, chair)) = pouch.opened {
                            span { (parts::time(ctx, at)) }
                            @if let Some(chair) = chair {
                                span { (words.tell("chair-name", &[("chair", chair.to_string().into())])) }
                            }
                        }
                    }
                }
            }
        }
    }
}
