//! What goes in: what each kind of set is made of and the pouch that it lies in; implements, sizes
//! of pouches; the room inside each machine and what its programmes can do; a tray on the scale.
//! What nobody has said is typical, and says so.

mod implements;
mod machines;

use super::bag;
use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Counter, Form, Ground};
use super::shapes::Shape;
use super::{say, units};
use crate::loading::kinds::{Kinds, MassFrom};
use crate::planning::explain::kind_word;
use crate::web::Ctx;
use load::ImplementWord;
use load::implement::Implement;
use load::pouch::PouchSize;
use logbook::book::BookError;
use logbook::fact::ProgrammeFigures;
use logbook::view::{Machine, Setting, View};
use maud::{Markup, html};

/// The most pieces of one implement that a counter takes.
const MOST_PIECES: u32 = 30;
/// The most sets on a tray that a counter takes.
const MOST_SETS: u32 = 40;

/// What the page shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// Every kind of set.
    pub kinds: Kinds,
    /// Every implement.
    pub implements: Vec<Setting<Implement>>,
    /// Every size of pouch.
    pub sizes: Vec<Setting<PouchSize>>,
    /// Every machine: its room, and its programmes.
    pub machines: Vec<Room>,
    /// The implement that is being described anew.
    pub asked: Option<ImplementWord>,
}

/// A machine, its room and its programmes.
#[derive(Debug, Clone)]
pub struct Room {
    /// The machine.
    pub machine: Machine,
    /// Chamber, trays, pattern.
    pub inside: Setting<load::chamber::Inside>,
    /// What its manual says of its programmes.
    pub programmes: Vec<Setting<ProgrammeFigures>>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, asked: Option<ImplementWord>) -> Result<Markup, BookError> {
    let mut machines = Vec::new();
    for machine in view.machines()? {
        let inside = view.inside(machine.machine)?;
        let programmes = view.programme_figures(machine.machine)?;
        machines.push(Room { machine, inside, programmes });
    }
    let seen = Seen {
        kinds: Kinds::read(view, &[])?,
        implements: view.implements()?,
        sizes: view.pouch_sizes()?,
        machines,
        asked,
    };
    let frame = Frame {
        title: ctx.words().say("goes-in-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    html! {
        (sets(ctx, seen))
        (scale(ctx, seen))
        (machines::cards(ctx, &seen.machines))
        (implements::cards(ctx, seen))
        (parts::cautions(ctx, &[Caution::Sharp, Caution::Gloves, Caution::Manual]))
    }
}

/// Where a figure is nobody's own, the page says so.
fn typical<T>(ctx: &Ctx, setting: &Setting<T>) -> Markup {
    html! {
        @if setting.said.is_none() { " · " em { (ctx.words().say("figures-typical")) } }
    }
}

/// A whole number with its label.
fn number(ctx: &Ctx, id: &str, (name, key): (&str, &str), value: u32) -> Markup {
    html! {
        p class="field" {
            label for=(id) { (ctx.words().say(key)) }
            input type="number" inputmode="numeric" id=(id) name=(name) value=(value) min="0" required;
        }
    }
}

/// A number that may be not known.
fn maybe(ctx: &Ctx, id: &str, (name, key): (&str, &str), value: Option<String>) -> Markup {
    html! {
        p class="field" {
            label for=(id) { (ctx.words().say(key)) }
            input type="text" inputmode="decimal" id=(id) name=(name) value=[value] maxlength="8"
                placeholder=(ctx.words().say("not-known")) autocomplete="off";
        }
    }
}

/// A choice from a closed list.
fn choice(
    ctx: &Ctx,
    id: &str,
    (name, key): (&str, &str),
    options: &[(&str, String, bool)],
) -> Markup {
    html! {
        p class="field" {
            label for=(id) { (ctx.words().say(key)) }
            select id=(id) name=(name) {
                @for (word, said, selected) in options {
                    option value=(word) selected[*selected] { (said) }
                }
            }
        }
    }
}

fn ticked(ctx: &Ctx, (name, key): (&str, &str), on: bool) -> Markup {
    html! {
        label {
            input type="checkbox" name=(name) value="yes" checked[on];
            span { (ctx.words().say(key)) }
        }
    }
}

/// Each kind: what it is made of, its pouch, its mass.
fn sets(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    parts::card(
        Ground::Fine,
        Shape::Envelope,
        &words.say("goes-in-sets"),
        &html! {
            p { (words.say("goes-in-sets-how")) }
            @for (at, kind) in seen.kinds.kinds.iter().enumerate() {
                @let name = kind_word(words, kind.kind.word());
                @let grams = words.tell("grams", &[("grams", units::mass(ctx, f64::from(kind.set_g)).into())]);
                details {
                    summary {
                        span {
                            (name) " · " (grams)
                            @if kind.pieces.is_empty() { " · " em { (words.say("goes-in-nobody-said")) } }
                            @else if kind.from == MassFrom::Typical { " · " em { (words.say("figures-typical")) } }
                            @else if kind.said.is_none() { " · " em { (words.say("goes-in-pieces-typical")) } }
                        }
                    }
                    p { (parts::way(&bag::address(&kind.kind), Shape::Envelope, &words.say("bag-show"))) }
                    (Form::new("set-of", kind.kind.word()).draw(ctx, &html! {
                        (parts::hidden("kind", &kind.kind))
                        div class="counters" {
                            @for (number, implement) in seen.implements.iter().enumerate() {
                                @let word = &implement.value.word;
                                @let count = kind.pieces.iter().filter(|p| p.word == *word).count();
                                @if !implement.value.single_use {
                                    (Counter {
                                        name: &format!("piece.{word}"),
                                        id: &format!("piece-{at}-{number}"),
                                        label: &say::implement(ctx, word),
                                        value: u32::try_from(count).unwrap_or(MOST_PIECES),
                                        most: MOST_PIECES,
                                    }.draw(ctx))
                                }
                            }
                        }
                        button class="key main-key" { (words.say("figures-keep")) }
                    }))
                }
            }
        },
    )
}

/// One full tray on a kitchen scale: nobody weighs pieces.
fn scale(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    parts::card(
        Ground::Fine,
        Shape::Bowl,
        &words.say("scale-title"),
        &html! {
            p { (words.say("scale-how")) }
            (Form::new("tray-weighed", "tray").draw(ctx, &html! {
                div class="counters" {
                    @for (at, kind) in seen.kinds.kinds.iter().enumerate() {
                        (Counter {
                            name: &format!("count.{}", kind.kind),
                            id: &format!("weighed-{at}"),
                            label: &kind_word(words, kind.kind.word()),
                            value: 0,
                            most: MOST_SETS,
                        }.draw(ctx))
                    }
                }
                (number(ctx, "scale-grams", ("grams", "scale-grams"), 0))
                (number(ctx, "scale-empty", ("empty", "scale-empty"), 0))
                fieldset class="choices" {
                    legend { (words.say("pack-into")) }
                    label { input type="radio" name="wrap" value="pouched" checked; span { (words.say("pack-pouched")) } }
                    label { input type="radio" name="wrap" value="open"; span { (words.say("scale-open")) } }
                }
                button class="key main-key" { (words.say("figures-keep")) }
            }))
            (parts::cautions(ctx, &[Caution::Hot]))
        },
    )
}
