//! Letting screens in, trusting the box, what is kept while cut off, and two at once.

use super::made_up::*;
use crate::door::{Code, No, Public, Reach};
use crate::pages::{kept, meanwhile, pair, stations, trust};
use crate::web::Ctx;
use load::SetState;
use logbook::fact::StationKind;
use logbook::view::Station;
use maud::Markup;

fn reach(secure: bool) -> Reach {
    let public = Public { certificate: vec![1, 2, 3], fingerprint: ["A7"; 32].join(":") };
    Reach {
        plain: "10.0.0.7:7420".parse().ok(),
        secure: "10.0.0.7:7443".parse().ok().filter(|_| secure).map(|at| (at, public)),
    }
}

fn station(number: u8, what: StationKind) -> Station {
    let key_hash = [number; 32];
    Station { station: id(number), what, key_hash, name: None, paired: ago(90), parted: None }
}

/// Screens in the salon's frame; `true`: for reading at a desk.
pub fn door_screens(ctx: &Ctx) -> Vec<(&'static str, Markup, bool)> {
    let (safe, plain) = (reach(true), reach(false));
    let known = vec![
        (station(3, StationKind::Phone), Some("chair 4".to_owned())),
        (station(4, StationKind::Wall), None),
    ];
    let seen = stations::Seen {
        stations: known,
        heard: [(id(3), ago(1))].into(),
        code: Some((Code::of(*b"3K7P9W"), ago(-9))),
        reach: Some(&safe),
        may: true,
    };
    let first = stations::Seen { reach: Some(&plain), may: true, ..Default::default() };
    let mut pouches = pouches(6, SetState::Ready);
    pouches.push(pouch(7, SetState::SetAside));
    let told = meanwhile::Told {
        seq: 77,
        title: ctx.words().say("meanwhile-opened-title"),
        lines: vec![ctx.words().say("meanwhile-opened-do")],
    };
    vec![
        ("stations", stations::draw(ctx, &seen), true),
        ("stations-first", stations::draw(ctx, &first), true),
        ("stations-not-here", stations::draw(ctx, &stations::Seen::default()), true),
        ("kept", kept::draw(ctx, &kept::Seen { pouches, people: people() }), false),
        ("meanwhile-cards", meanwhile::cards(ctx, &[told], &people()), false),
    ]
}

/// Screens without it.
pub fn alone(ctx: &Ctx) -> Vec<(&'static str, String)> {
    let (safe, plain) = (reach(true), reach(false));
    let asked = pair::Asked { code: "3K7P9W", no: None, reach: &safe, secure: true };
    let refused = pair::Asked { code: "", no: Some(No::Void), reach: &plain, secure: false };
    let unsafe_way = pair::Asked { secure: false, ..asked };
    let told = meanwhile::Told {
        seq: 77,
        title: ctx.words().say("meanwhile-released-title"),
        lines: vec![ctx.words().say("meanwhile-released-do")],
    };
    vec![
        ("pair", pair::page(ctx.language, asked).into_string()),
        ("pair-void", pair::page(ctx.language, refused).into_string()),
        ("pair-go-safe", pair::page(ctx.language, unsafe_way).into_string()),
        ("trust", trust::page(ctx.language, &safe, "/trust").into_string()),
        ("trust-none", trust::page(ctx.language, &plain, "/trust").into_string()),
        ("meanwhile", meanwhile::page(ctx, &told, None).into_string()),
    ]
}

/// Strangers see how to be let in, and nothing of the salon.
#[test]
fn a_stranger_learns_nothing_of_the_salon() {
    let ctx = ctx(crate::words::Language::En);
    for (name, page) in alone(&ctx).into_iter().filter(|(name, _)| *name != "meanwhile") {
        for of_the_salon in ["data-head", "href=\"/run", "class=\"places\"", "name=\"sign\""] {
            assert!(!page.contains(of_the_salon), "{name}: {of_the_salon}");
        }
    }
    // What somebody put into an address comes back only if it can be a code.
    let safe = reach(true);
    let asked = pair::Asked { code: "<b>abc", no: None, reach: &safe, secure: true };
    assert!(!pair::page(ctx.language, asked).into_string().contains("abc"));
}
