#![allow(clippy::unwrap_used)] // tests may stop at once

use super::*;
use load::geometry::{Outline, Point, Rect};
use load::picture::Part;
use proptest::prelude::*;

const WORDS: PictureWords<'_> = PictureWords {
    paper: "paper up",
    film: "film up",
    over: "lies over",
    fold: "for the fold",
    near: None,
    caption: &|_, name| Some(Caption { main: format!("3K{name}"), more: "manicure".to_owned() }),
    distance: &|tenths| format!("{} mm", tenths / 10),
};

const FRAME: Rect = Rect { x: 0, y: 0, width: 1_800, height: 2_850 };

fn painter() -> Painter<'static> {
    Painter { id: "t", at: (0.0, 0.0), scale: 1.0, unit: 2.0, frame: FRAME, around: (0.0, 0.0) }
}

fn part(role: Role, rect: Rect) -> Part {
    let outline = Outline::rectangle(rect.width, rect.height).unwrap().moved(rect.x, rect.y);
    Part { role, outline, names: Some(7) }
}

fn rect(x: i32, y: i32, width: i32, height: i32) -> Rect {
    Rect { x, y, width, height }
}

fn places() -> impl Strategy<Value = Vec<(Role, Rect)>> {
    let role = prop_oneof![Just(Role::Paper), Just(Role::Film), Just(Role::Piece)];
    let one = (role, 0..1_300_i32, 0..2_300_i32, 40..500_i32, 40..550_i32)
        .prop_map(|(role, x, y, width, height)| (role, rect(x, y, width, height)));
    prop::collection::vec(one, 1..9)
}

proptest! {
    #[test]
    fn no_text_lies_on_another_or_leaves_the_frame(places in places(), ends in (0..1_800, 0..2_850)) {
        let parts: Vec<Part> = places.iter().map(|(role, rect)| part(*role, *rect)).collect();
        let to = Point { x: ends.0, y: ends.1 };
        let distances = vec![Distance { from: Point { x: 0, y: ends.1 }, to }];
        let picture = Picture { frame: FRAME, parts, distances };
        let frame = painter().place(FRAME);
        if let Ok(written) = letters(&picture, &painter(), &WORDS) {
            for (number, text) in written.iter().enumerate() {
                prop_assert!(frame.holds(&text.place));
                for other in &written[number + 1..] {
                    prop_assert!(!text.place.meets(&other.place), "{text:?} on {other:?}");
                }
            }
        }
    }
}

fn of_one_pouch(width: i32, height: i32) -> Result<Vec<Written>, Unprintable> {
    let parts = vec![part(Role::Paper, rect(100, 100, width, height))];
    letters(&Picture { frame: FRAME, parts, distances: Vec::new() }, &painter(), &WORDS)
}

#[test]
fn a_text_is_upright_where_it_can_be_and_turned_on_edge() {
    let check = |(width, height), turned, lines: usize| {
        let written = of_one_pouch(width, height).unwrap();
        assert_eq!(
            (written[0].turned, written[0].lines.len()),
            (turned, lines),
            "{width}×{height}"
        );
    };
    check((900, 1_300), false, 3);
    check((1_300, 900), false, 3);
    // A place of a rack: one line along it; lying across, one line upright.
    check((130, 2_000), true, 1);
    check((1_600, 130), false, 1);
    // Too short for the kind, still long enough for the name.
    check((250, 80), false, 1);
}

#[test]
fn a_pouch_too_small_for_its_name_is_refused() {
    let refused = of_one_pouch(60, 60);
    assert_eq!(refused, Err(Unprintable::TooLong { text: "3K7".to_owned() }));
}

#[test]
fn a_name_keeps_to_the_part_that_is_seen() {
    let parts = vec![
        part(Role::Paper, rect(0, 0, 900, 1_200)),
        part(Role::Film, rect(600, 0, 900, 1_200)),
        part(Role::Over, rect(600, 0, 300, 1_200)),
    ];
    let picture = Picture { frame: FRAME, parts, distances: Vec::new() };
    let written = letters(&picture, &painter(), &WORDS).unwrap();
    let middle = |text: &Written| text.place.x + text.place.width / 2.0;
    // By hand: 0 to 60 mm of the lower one is seen, 90 to 150 mm of the upper one is not crossed.
    assert!((middle(&written[0]) - 30.0).abs() < 1e-9, "{written:?}");
    assert!((middle(&written[1]) - 120.0).abs() < 1e-9, "{written:?}");
}

/// The width and the length of the whole picture are told beside it, where there is room for them.
#[test]
fn a_distance_along_an_edge_is_written_outside() {
    let near_left = Point { x: 0, y: 0 };
    let ends = [Point { x: 1_800, y: 0 }, Point { x: 0, y: 2_850 }];
    let distances = ends.map(|to| Distance { from: near_left, to }).to_vec();
    let picture = Picture { frame: FRAME, parts: Vec::new(), distances };
    let frame = painter().place(FRAME);
    let roomy = Painter { around: (10.0, 10.0), ..painter() };
    let written = letters(&picture, &roomy, &WORDS).unwrap();
    assert!(!written[0].place.meets(&frame) && !written[0].turned, "{written:?}");
    assert!(!written[1].place.meets(&frame) && written[1].turned, "{written:?}");
    let inside = letters(&picture, &painter(), &WORDS).unwrap();
    assert!(inside.iter().all(|text| frame.holds(&text.place) && !text.turned), "{inside:?}");
}
