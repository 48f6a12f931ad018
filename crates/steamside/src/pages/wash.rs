//! Wash and pack: how many came out of the bin clean and dry, and how many went into pouches.

use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Counter, Form, Ground};
use super::shapes::Shape;
use super::{bag, say};
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::view::{KindCount, Person, View};
use maud::{Markup, html};

/// The most that a counter takes: more is a slip of the finger.
const MOST: u32 = 200;
/// The most pouches in one go.
const MOST_POUCHES: u32 = 60;

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let (kinds, people) = (view.kinds()?, view.people()?);
    let frame = Frame {
        title: ctx.words().say("wash-title"),
        place: Place::Now,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &kinds, &people)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, kinds: &[KindCount], people: &[Person]) -> Markup {
    let words = ctx.words();
    let washed: Vec<_> = kinds.iter().filter(|kind| kind.washed > 0).collect();
    let bin_waits = kinds.iter().any(|kind| kind.used > 0);
    html! {
        @if kinds.is_empty() {
            (parts::card(Ground::Turn, Shape::Bowl, &words.say("kinds-none"), &html! {
                p { (words.say("kinds-none-do")) }
                p { a class="key main-key" href="/setup" { (words.say("setup-title")) } }
            }))
        } @else {
            // What waits for hands stands first: with an empty bin, that is the packing.
            @if bin_waits || washed.is_empty() { (wash_card(ctx, kinds, people)) }
            @for (index, kind) in washed.iter().enumerate() { (pack_card(ctx, kind, index, people)) }
            @if !bin_waits && !washed.is_empty() { (wash_card(ctx, kinds, people)) }
            @if washed.is_empty() {
                (parts::card(Ground::Fine, Shape::Waves, &words.say("pack-none"), &html! {
                    p { (words.say("pack-none-do")) }
                }))
            }
        }
        p class="ways" { (parts::way("/start", Shape::Drum, &words.say("go-start"))) }
        (parts::cautions(ctx, &[Caution::Gloves, Caution::Sharp, Caution::Manual]))
    }
}

/// Washed: the counts are filled in from the bin, a sign does it.
pub fn wash_card(ctx: &Ctx, kinds: &[KindCount], people: &[Person]) -> Markup {
    let words = ctx.words();
    let used: u32 = kinds.iter().map(|kind| kind.used).sum();
    let fields = html! {
        div class="counters" {
            @for (index, kind) in kinds.iter().enumerate() {
                (Counter {
                    name: &format!("count.{}", kind.kind),
                    id: &format!("washed-{index}"),
                    label: &say::kind(ctx, &kind.kind),
                    value: kind.used.min(MOST),
                    most: MOST,
                }.draw(ctx))
            }
        }
        (parts::sign_line(ctx, people, &words.say("wash-asks")))
    };
    let ground = if used > 0 { Ground::Turn } else { Ground::Fine };
    let heading = words.tell("bin-about", &[("count", used.into())]);
    parts::card(
        ground,
        Shape::Bowl,
        &heading,
        &html! {
            p { (words.say("wash-look")) }
            (Form::new("wash", "bin").draw(ctx, &fields))
        },
    )
}

/// Packed: one card a kind, because a pouch holds one set of one kind.
fn pack_card(ctx: &Ctx, kind: &KindCount, index: usize, people: &[Person]) -> Markup {
    let words = ctx.words();
    let form = Form::new("pack", kind.kind.word());
    // The new codes are shown large at once, to be printed or written by hand.
    let then = format!("/labels?act={}", form.id(ctx));
    let fields = html! {
        (parts::hidden("kind", &kind.kind))
        (Counter {
            name: "count",
            id: &format!("packed-{index}"),
            label: &words.say("pack-how-many"),
            value: kind.washed.min(MOST_POUCHES),
            most: MOST_POUCHES,
        }.draw(ctx))
        fieldset class="choices" {
            legend { (words.say("pack-into")) }
            label { input type="radio" name="wrap" value="pouched" checked; span { (words.say("pack-pouched")) } }
            label { input type="radio" name="wrap" value="open"; span { (words.say("pack-open")) } }
        }
        p class="choices" {
            label { input type="checkbox" name="hollow" value="yes"; span { (words.say("pack-hollow")) } }
        }
        (parts::sign_line(ctx, people, &words.say("pack-asks")))
    };
    let heading = words.tell(
        "pack-kind",
        &[("count", kind.washed.into()), ("kind", say::kind(ctx, &kind.kind).into())],
    );
    parts::card(
        Ground::Turn,
        Shape::Waves,
        &heading,
        &html! {
            p { (words.say("pack-cautions")) }
            p { (parts::way(&bag::address(&kind.kind), Shape::Envelope, &words.say("bag-show"))) }
            (Form { then: Some(&then), ..form }.draw(ctx, &fields))
        },
    )
}
