//! Which pouch for a kind of set, and how its pieces lie in it: hinges open, nothing touching.

use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Ground};
use super::shapes::Shape;
use super::{say, units};
use crate::loading::kinds::{Kind, Kinds};
use crate::planning::explain::kind_word;
use crate::web::Ctx;
use load::picture::{Role, of_pouch};
use load::pouch::{Filled, PouchSize, Refused, Split};
use load::{ImplementWord, SetKind};
use logbook::book::BookError;
use logbook::view::View;
use maud::{Markup, PreEscaped, html};
use papers::{Caption, DrawingNames, PictureWords, Unprintable, drawing};

/// Where the pouch of a kind is shown.
pub fn address(kind: &SetKind) -> String {
    format!("/bag?{}", asks("kind", kind.word()))
}

/// A name and a word of the salon's own as an address carries them.
pub fn asks(name: &str, word: &str) -> String {
    let mut address = format!("{name}=");
    for byte in word.bytes() {
        if byte.is_ascii_alphanumeric() {
            address.push(char::from(byte));
        } else {
            address.push_str(&format!("%{byte:02X}"));
        }
    }
    address
}

/// The page; `None` where no such kind is in the book.
pub fn page(view: &View<'_>, ctx: &Ctx, kind: &SetKind) -> Result<Option<Markup>, BookError> {
    let kinds = Kinds::read(view, &[])?;
    let Some(found) = kinds.get(kind) else {
        return Ok(None);
    };
    let frame = Frame {
        title: ctx
            .words()
            .tell("bag-title", &[("kind", kind_word(ctx.words(), kind.word()).into())]),
        place: Place::Now,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(Some(frame::page(ctx, &frame, &draw(ctx, found, &kinds.sizes))))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, kind: &Kind, sizes: &[PouchSize]) -> Markup {
    let words = ctx.words();
    html! {
        @if kind.pieces.is_empty() {
            p class="fact" { (words.say("goes-in-nobody-said")) }
        } @else if kind.said.is_none() {
            p { em { (words.say("goes-in-pieces-typical")) } }
        }
        @for split in &kind.bagging.split {
            p class="fact" {
                @match split {
                    Split::Metals(metals) => (words.tell("bag-split-metals", &[("metals", metals.iter().map(|metal| words.say(&format!("metal-{}", metal.word()))).collect::<Vec<_>>().join(", ").into())])),
                    Split::TooFull => (words.say("bag-split-full")),
                }
            }
        }
        @for (piece, why) in &kind.bagging.refused {
            p class="fact" {
                (say::implement(ctx, &kind.pieces[*piece].word)) ": "
                (words.say(refused_key(*why)))
            }
        }
        @for piece in &kind.bagging.ask_maker {
            p { (say::implement(ctx, &kind.pieces[*piece].word)) ": " (words.say("bag-ask-maker")) }
        }
        @for (at, filled) in kind.bagging.pouches.iter().enumerate() {
            @if let Some(size) = sizes.get(filled.size) { (pouch(ctx, kind, size, (at, filled))) }
        }
        p class="ways" {
            (parts::way("/wash", Shape::Waves, &words.say("wash-title")))
            (parts::way("/in", Shape::Bowl, &words.say("goes-in-title")))
        }
        (parts::cautions(ctx, &[Caution::Sharp, Caution::Manual]))
    }
}

/// Why a piece goes into no pouch.
pub const fn refused_key(why: Refused) -> &'static str {
    match why {
        Refused::SingleUse => "bag-refused-single",
        Refused::NeverSteam => "bag-refused-steam",
        Refused::TooLarge => "bag-refused-large",
        Refused::NoMeasure => "bag-refused-measure",
    }
}

fn pouch(ctx: &Ctx, kind: &Kind, size: &PouchSize, (at, filled): (usize, &Filled)) -> Markup {
    let words = ctx.words();
    let (width, length) = units::width_and_length(ctx, size.width_mm, size.length_mm);
    let heading = words.tell(
        "bag-size",
        &[
            ("size", say::pouch_size(ctx, &size.word).into()),
            ("width", width.into()),
            ("length", length.into()),
        ],
    );
    parts::card(
        Ground::Fine,
        Shape::Envelope,
        &heading,
        &html! {
            p { (words.tell("bag-full", &[("full", filled.full.into())])) }
            div class="pouch-picture" {
                @match picture(ctx, kind, size, (at, filled)) {
                    Ok(svg) => (PreEscaped(svg)),
                    Err(why) => p lang="en" { (why) },
                }
            }
            ol class="pieces" {
                @for laid in &filled.pieces { li { (say::implement(ctx, &kind.pieces[laid.piece].word)) } }
            }
            @if !filled.held.is_empty() {
                @let held = held(ctx, kind, filled);
                p { (words.tell("bag-held", &[("what", held.join(", ").into())])) }
            }
            ul class="reasons" {
                li { (words.say("bag-open")) }
                li { (words.say("bag-dry")) }
                li { (words.say("bag-mark")) }
            }
        },
    )
}

/// What stands in the holder, each implement once with its number.
fn held(ctx: &Ctx, kind: &Kind, filled: &Filled) -> Vec<String> {
    let mut counted: Vec<(&ImplementWord, usize)> = Vec::new();
    for piece in filled.held.iter().filter_map(|(piece, _)| kind.pieces.get(*piece)) {
        match counted.iter_mut().find(|(word, _)| **word == piece.word) {
            Some((_, count)) => *count += 1,
            None => counted.push((&piece.word, 1)),
        }
    }
    counted.iter().map(|(word, count)| format!("{} × {count}", say::implement(ctx, word))).collect()
}

fn picture(
    ctx: &Ctx,
    kind: &Kind,
    size: &PouchSize,
    (at, filled): (usize, &Filled),
) -> Result<String, Unprintable> {
    let words = ctx.words();
    let picture = of_pouch(size, filled);
    let title = words.say("bag-picture");
    let names: Vec<String> = filled
        .pieces
        .iter()
        .map(|laid| say::implement(ctx, &kind.pieces[laid.piece].word))
        .collect();
    let desc = words.tell("tray-desc", &[("what", names.join(", ").into())]);
    let (paper, film) = (words.say("paper-up"), words.say("film-up"));
    let (over, fold) = (words.say("lies-over"), words.say("fold-free"));
    let caption = |role: Role, piece: usize| {
        let place = filled.pieces.iter().position(|laid| laid.piece == piece)?;
        (role == Role::Piece)
            .then(|| Caption { main: (place + 1).to_string(), more: String::new() })
    };
    let distance = |tenths: i32| format!("{} mm", (tenths + 5) / 10);
    let words = PictureWords {
        paper: &paper,
        film: &film,
        over: &over,
        fold: &fold,
        near: None,
        caption: &caption,
        distance: &distance,
    };
    let id = format!("pouch-{at}");
    drawing(&picture, &DrawingNames { id: &id, title: &title, desc: &desc, words })
}
