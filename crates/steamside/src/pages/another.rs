//! Need another, at a chair: where this set goes, the nearest spare of its kind, and what to do
//! when blood came. Nothing is written here: an opened set counts as used already.

use super::frame::{self, Frame, Place};
use super::parts::{self, Ground};
use super::shapes::Shape;
use super::{chair, say, when};
use crate::web::Ctx;
use load::{SetKind, SetState};
use logbook::book::BookError;
use logbook::view::{Pouch, View};
use maud::{Markup, html};
use measure::PouchId;
use std::collections::BTreeMap;

/// What was asked for.
#[derive(Debug, Clone, Copy, Default)]
pub struct Asked {
    /// The pouch whose set another is needed for.
    pub pouch: Option<PouchId>,
    /// The chair.
    pub chair: Option<u32>,
}

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// The chair.
    pub chair: Option<u32>,
    /// The sets that another is needed for.
    pub these: Vec<Pouch>,
    /// The oldest ready pouch of each kind that is asked for, and how many of it are ready.
    pub spares: BTreeMap<SetKind, Option<(Pouch, usize)>>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, asked: Asked) -> Result<Markup, BookError> {
    let seen = seen(view, ctx, asked)?;
    let frame = Frame {
        title: ctx.words().say("another-title"),
        place: Place::Ready,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

fn seen(view: &View<'_>, ctx: &Ctx, asked: Asked) -> Result<Seen, BookError> {
    let these: Vec<Pouch> = match asked.pouch {
        Some(pouch) => view.pouch(pouch)?.into_iter().collect(),
        None => {
            let here = |pouch: &Pouch| {
                pouch.opened.is_some_and(|(at, _, chair)| {
                    when::same_day(ctx, at, ctx.now) && chair.is_some() && chair == asked.chair
                })
            };
            let opened = view.pouches_in(&[SetState::Opened])?;
            // The one that was opened last; those before it are done with.
            let last = opened.into_iter().filter(here);
            last.max_by_key(|pouch| pouch.opened.map(|(at, ..)| at)).into_iter().collect()
        }
    };
    let mut ready: BTreeMap<SetKind, Vec<Pouch>> = BTreeMap::new();
    for pouch in view.pouches_in(&[SetState::Ready])? {
        ready.entry(pouch.kind.clone()).or_default().push(pouch);
    }
    // Without a set to go by, every kind on the shelf is offered.
    let kinds: Vec<SetKind> = if these.is_empty() {
        ready.keys().cloned().collect()
    } else {
        these.iter().map(|pouch| pouch.kind.clone()).collect()
    };
    let spare = |kind: &SetKind| {
        let pouches = ready.get(kind)?;
        let oldest =
            pouches.iter().min_by_key(|pouch| (pouch.released.map(|(at, _)| at), pouch.code));
        oldest.map(|oldest| (oldest.clone(), pouches.len()))
    };
    let spares = kinds.into_iter().map(|kind| (kind.clone(), spare(&kind))).collect();
    Ok(Seen { chair: asked.chair, these, spares })
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        @for pouch in &seen.these {
            p class="fact" {
                span class="code" { (pouch.code) } " " (say::kind(ctx, &pouch.kind))
                @if pouch.state == SetState::Opened { ". " (words.say("another-used")) }
            }
        }
        @if seen.spares.is_empty() { (none(ctx, &words.say("ready-none"))) }
        @for (kind, spare) in &seen.spares {
            @match spare {
                Some((pouch, count)) => (nearest(ctx, seen.chair, pouch, *count)),
                None => (none(ctx, &words.tell("another-none", &[("kind", say::kind(ctx, kind).into())]))),
            }
        }
        (blood(ctx))
        p { a class="key" href=(chair::back(seen.chair)) { (words.say("code-other")) } }
        (chair::scanner(&chair::back(seen.chair)))
    }
}

fn nearest(ctx: &Ctx, chair: Option<u32>, pouch: &Pouch, count: usize) -> Markup {
    let words = ctx.words();
    let base = chair::back(chair);
    let joint = if base.contains('?') { '&' } else { '?' };
    let inside = html! {
        p class="code" { (pouch.code) }
        @if let Some((at, _)) = pouch.released { p { (words.say("pouch-released")) " " (parts::time(ctx, at)) } }
        p { (words.say("shelf-front")) }
        p { a class="key main-key" href=(format!("{base}{joint}pouch={}", pouch.pouch)) {
            (words.tell("another-take", &[("code", pouch.code.to_string().into())]))
        } }
    };
    let heading = words.tell(
        "shelf-kind",
        &[("kind", say::kind(ctx, &pouch.kind).into()), ("count", count.into())],
    );
    parts::card(Ground::Fine, Shape::House, &heading, &inside)
}

fn none(ctx: &Ctx, heading: &str) -> Markup {
    parts::card(
        Ground::Turn,
        Shape::Hourglass,
        heading,
        &html! { p { (ctx.words().say("another-none-do")) } },
    )
}

/// What to do when blood came. The order is common practice, no source; local rules come first.
fn blood(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    let inside = html! {
        ol class="blood" {
            @for key in ["blood-1", "blood-2", "blood-3", "blood-4", "blood-5", "blood-6", "blood-7"] {
                li { (words.say(key)) }
            }
        }
        p { strong { (words.say("blood-exposed")) } }
        p { (words.say("blood-rules")) }
    };
    parts::card(Ground::Turn, Shape::Gloves, &words.say("blood-title"), &inside)
}
