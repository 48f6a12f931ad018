//! The door to the practice book, and the pages that only it has.

use super::made_up::*;
use crate::pace::Pace;
use crate::pages::{cards, chair, frame, labels, practice, stop, trouble};
use crate::practice::cards::Card;
use crate::practice::checks::Step;
use crate::practice::deal::Played;
use crate::web::Ctx;
use crate::words::Language;
use load::SetState;
use logbook::fact::{Body, BookKind};
use logbook::view;

/// Where the made-up practice book is open.
pub const OPEN_AT: &str = "http://localhost:7421/";

/// The door, with somebody who teaches, or without.
pub fn practice_door(open: bool) -> practice::Seen {
    practice::Seen {
        teachers: if open { people()[..1].to_vec() } else { Vec::new() },
        open: open.then(|| OPEN_AT.to_owned()),
    }
}

/// The same reader in a practice book that runs ten times as fast.
fn in_practice(ctx: &Ctx) -> Ctx {
    Ctx { book: BookKind::Practice, pace: Pace::new(ctx.now, ctx.now, 10), ..ctx.clone() }
}

fn played(ended: bool) -> Played {
    let stamp = facts()[0].stamp;
    let end = view::CardEnd { seq: 9, stamp, right: 2, asked: 3 };
    let odd = pouch(5, SetState::ToCheck);
    Played {
        card: Some(Card::Wet),
        dealt: view::Card {
            dealt: id(77),
            card: Card::Wet.word().to_owned(),
            learner: Some(people()[1].person),
            seq: 3,
            stamp,
            ended: ended.then_some(end),
        },
        facts: facts(),
        odd: vec![(odd.pouch, odd.code)],
        machine: Some(1),
        steps: vec![
            Step { key: "step-wet-said", right: true },
            Step { key: "step-others-again", right: false },
            Step { key: "step-apart", right: true },
        ],
    }
}

/// Pages of a practice book; every one of them says so.
pub fn practice_screens(ctx: &Ctx) -> Vec<(&'static str, String)> {
    let ctx = &in_practice(ctx);
    let desk = |body: &maud::Markup| {
        let title = ctx.words().say("cards-title");
        let place = frame::Place::Log;
        let frame = frame::Frame { title, place, desk: true, again_s: None, did: None };
        frame::page(ctx, &frame, body).into_string()
    };
    let seen = cards::Seen {
        people: people(),
        open: vec![played(false)],
        ended: vec![played(true).dealt],
    };
    let sheet = |ended| cards::draw_sheet(ctx, &people(), &[(played(ended), names())]);
    let aside = pouch(2, SetState::SetAside);
    let code = aside.code.to_string();
    let stopped = stop::Stop { pouch: Some(&aside), code: &code, run: Some((1, 3)), chair: None };
    vec![
        ("cards", desk(&cards::draw(ctx, &seen))),
        ("cards-none", desk(&cards::draw(ctx, &cards::Seen::default()))),
        ("sheet", desk(&sheet(true))),
        ("sheet-open", desk(&sheet(false))),
        ("practice-chair", desk(&chair::keypad(ctx, None, None))),
        ("practice-stop", stop::page(ctx, &stopped).into_string()),
        ("practice-trouble", trouble::page(ctx.language, true, "the disk is full").into_string()),
    ]
}

/// The word stands in the title and on the page, and on the labels.
#[test]
fn every_page_and_label_of_a_practice_book_says_so() {
    for language in Language::ALL {
        let ctx = in_practice(&ctx(language));
        let word = ctx.words().say("book-practice");
        for (name, html) in practice_screens(&ctx) {
            assert!(html.contains(&format!("<title>{word}: ")), "{name}");
            assert!(html.matches(&word).count() >= 2, "{name}");
            assert!(html.contains("practice.svg") && html.contains("class=\"practice\""), "{name}");
        }
        let packing = [fact(1, 3, 0, Body::Packed { pouches: packed() })];
        for sheet in [None, Some("a4"), Some("roll")] {
            let asked = labels::Asked { act: id(5), sheet, start: None };
            let seen = labels::seen(&ctx, asked, &packing, ctx.now);
            let sheets =
                seen.sheets.unwrap_or_else(|why| panic!("{} {sheet:?}: {why}", language.code()));
            // Once for every label.
            let word = word.split(' ').next().unwrap_or_default();
            let many: usize = sheets.iter().map(|svg| svg.matches(word).count()).sum();
            assert!(many >= seen.pouches.len(), "{} {sheet:?}: {many}", language.code());
        }
    }
}
