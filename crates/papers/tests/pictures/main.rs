//! Pictures as a black-and-white printer and a parser of another project meet them. No letters are
//! drawn here; where they lie is tested beside the code.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

use load::geometry::{Outline, Point, Rect};
use load::picture::{Distance, Part, Picture, Role};
use papers::{
    Caption, DrawingNames, PictureWords, TrayOfSheet, TrayWords, Unprintable, drawing, tray_sheet,
};
use proptest::prelude::*;
use resvg::{tiny_skia, usvg};

const WORDS: PictureWords<'_> = PictureWords {
    paper: "paper up",
    film: "film up",
    over: "lies over by 2.5 cm",
    fold: "kept free for the fold",
    near: Some("door"),
    caption: &|_, _| None,
    distance: &|tenths| format!("{} mm", tenths / 10),
};

const NAMES: DrawingNames<'_> =
    DrawingNames { id: "d1", title: "Tray 1", desc: "Two pouches.", words: WORDS };

fn part(role: Role, (x, y): (i32, i32), (width, height): (i32, i32)) -> Part {
    let outline = Outline::rectangle(width, height).unwrap().moved(x, y);
    Part { role, outline, names: Some(0) }
}

/// Four squares of 70 mm in the corners of one of 180 mm.
fn four() -> Picture {
    let at = [(100, 100), (1_000, 100), (100, 1_000), (1_000, 1_000)];
    let roles = [Role::Paper, Role::Film, Role::Over, Role::Fold];
    let squares = at.into_iter().zip(roles).map(|(at, role)| part(role, at, (700, 700)));
    let tray = part(Role::Tray, (0, 0), (1_800, 1_800));
    let parts = std::iter::once(tray).chain(squares).collect();
    let frame = Rect { x: 0, y: 0, width: 1_800, height: 1_800 };
    Picture { frame, parts, distances: Vec::new() }
}

fn tree(svg: &str) -> usvg::Tree {
    usvg::Tree::from_str(svg, &usvg::Options::default()).expect("our drawing is SVG")
}

/// Grey of each dot of a part of the drawing, 0 is black; four dots to a millimetre.
fn dots(svg: &str, (x, y, side): (f32, f32, u32)) -> Vec<f32> {
    const PER_MM: f32 = 4.0;
    let tree = tree(svg);
    let whole: Vec<f32> = viewbox(svg).iter().map(|length| *length as f32).collect();
    let scale = PER_MM * whole[0] / tree.size().width();
    let mut dots = tiny_skia::Pixmap::new(side * 4, side * 4).unwrap();
    dots.fill(tiny_skia::Color::WHITE);
    let place = tiny_skia::Transform::from_row(scale, 0.0, 0.0, scale, -x * PER_MM, -y * PER_MM);
    resvg::render(&tree, place, &mut dots.as_mut());
    let grey = |dot: &tiny_skia::PremultipliedColorU8| {
        (f32::from(dot.red()) + f32::from(dot.green()) + f32::from(dot.blue())) / 765.0
    };
    dots.pixels().iter().map(grey).collect()
}

/// Width and height that the drawing reckons in.
fn viewbox(svg: &str) -> [f64; 2] {
    let text = svg.split("viewBox=\"0 0 ").nth(1).unwrap().split('"').next().unwrap();
    let (width, height) = text.split_once(' ').unwrap();
    [width.parse().unwrap(), height.parse().unwrap()]
}

/// Share of the ink in a square of 25 mm, beside the words, and that there is ground as well.
fn ink(svg: &str, corner: (f32, f32)) -> f32 {
    let dots = dots(svg, (corner.0, corner.1, 25));
    let dark = dots.iter().filter(|grey| **grey < 0.5).count();
    let light = dots.iter().filter(|grey| **grey > 0.95).count();
    assert!(dark > 50 && light > dots.len() / 4, "hatched, not plain or full: {dark}, {light}");
    1.0 - dots.iter().sum::<f32>() / dots.len() as f32
}

/// What keeps them apart without any colour. The door is below, so y runs from the other side.
#[test]
fn paper_film_and_overlap_differ_in_ink_alone() {
    let svg = drawing(&four(), &NAMES).unwrap();
    let (paper, film) = (ink(&svg, (15.0, 145.0)), ink(&svg, (105.0, 145.0)));
    let (over, fold) = (ink(&svg, (15.0, 55.0)), ink(&svg, (105.0, 55.0)));
    assert!(film < 0.05 && paper > 3.0 * film && over > 1.5 * paper, "{film} {paper} {over}");
    // The stripes run upright, all other hatches aslant: a column of dots is all ink or all ground.
    let dots = dots(&svg, (105.0, 55.0, 20));
    let column = |at: usize| dots[at..].iter().step_by(80).sum::<f32>() / 80.0;
    assert!((0..80).all(|at| (column(at) - dots[at]).abs() < 0.1), "{fold}");
}

/// By hand: a tray of 40 × 10 mm has a unit of √400 / 100 = 0.2 mm, which is also its margin, and
/// the far side is above.
#[test]
fn a_drawing_is_true_to_scale() {
    let frame = Rect { x: 0, y: 0, width: 400, height: 100 };
    let parts = vec![part(Role::Tray, (0, 0), (400, 100)), part(Role::Place, (0, 0), (100, 20))];
    let names = DrawingNames { words: PictureWords { near: None, ..WORDS }, ..NAMES };
    let svg = drawing(&Picture { frame, parts, distances: Vec::new() }, &names).unwrap();
    assert!(svg.contains("d=\"M0.2 10.2L40.2 10.2L40.2 0.2L0.2 0.2z\""), "{svg}");
    assert!(svg.contains("d=\"M0.2 10.2L10.2 10.2L10.2 8.2L0.2 8.2z\""), "{svg}");
    assert_eq!(viewbox(&svg)[0], 40.4);
    // On A5 the same tray is 1 : 1 from the left margin on.
    let tray = part(Role::Tray, (0, 0), (400, 100));
    let picture = Picture { frame, parts: vec![tray], distances: Vec::new() };
    let page = sheet(&picture).unwrap().remove(0);
    assert!(page.contains("d=\"M8 35L48 35L48 25L8 25z\""), "{page}");
}

fn sheet(picture: &Picture) -> Result<Vec<String>, Unprintable> {
    let words = TrayWords {
        id: "tray",
        title: "What goes into machine 1",
        printed: "Printed 28 NOV 2026, 14:02",
        page: &|page, of| format!("page {page} of {of}"),
        scale: &|tenths| format!("scale 1 : {}", f64::from(tenths) / 10.0),
        bar: "50 mm. If it is not, print again at 100 %.",
        picture: WORDS,
        total: "All together 2.31 kg",
        limit: "Limit of this machine: 3.0 kg",
        programme: "Proposed: wrapped, 134 °C, dry 20 min",
        cautions: &["Hot: use tongs or heat gloves."],
    };
    let (heading, mass) = ("Tray 1 from the top", "1.24 kg");
    tray_sheet(&[TrayOfSheet { picture, heading, mass, clearance: None }; 2], &words)
}

/// Ink and ground only, so that a dark room and a printer make of it what they need.
#[test]
fn nothing_is_coloured_or_loaded_and_no_two_names_are_equal() {
    let other = DrawingNames { id: "d2", ..NAMES };
    let pages = sheet(&four()).unwrap();
    let all =
        [drawing(&four(), &NAMES).unwrap(), drawing(&four(), &other).unwrap(), pages.concat()];
    let all = all.concat();
    for colour in all.split("=\"#").skip(1).map(|rest| rest.split('"').next().unwrap()) {
        assert!(["fff", "16242b", "000"].contains(&colour), "{colour}");
    }
    for loaded in ["<script", "href", "style", "@", "http://www.w3.org/1999"] {
        assert!(!all.contains(loaded), "{loaded}");
    }
    let mut ids: Vec<&str> =
        all.split(" id=\"").skip(1).map(|id| id.split('"').next().unwrap()).collect();
    let count = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!((ids.len(), count), (2 * 6 + pages.len() * 4, count), "{ids:?}");
    assert_eq!(ids.len(), count);
    for called in all.split("url(#").skip(1).map(|id| id.split(')').next().unwrap()) {
        assert!(ids.contains(&called), "{called}");
    }
}

#[test]
fn what_cannot_be_drawn_is_refused() {
    let check =
        |names: &DrawingNames<'_>, refused| assert_eq!(drawing(&four(), names), Err(refused));
    let with = |words| DrawingNames { words, ..NAMES };
    check(&DrawingNames { id: "1", ..NAMES }, Unprintable::Name { name: "1".to_owned() });
    check(&DrawingNames { desc: "", ..NAMES }, Unprintable::Blank { what: "the description" });
    check(&with(PictureWords { film: "", ..WORDS }), Unprintable::Blank { what: "the film side" });
    check(&with(PictureWords { over: "", ..WORDS }), Unprintable::Blank { what: "what lies over" });
    let claim = concat!("vô ", "trùng");
    check(&with(PictureWords { paper: claim, ..WORDS }), Unprintable::Claim { word: claim });
    let long = "a".repeat(90);
    let caption = |_, _| Some(Caption { main: long.clone(), more: String::new() });
    check(
        &with(PictureWords { caption: &caption, ..WORDS }),
        Unprintable::TooLong { text: long.clone() },
    );
    let mut outside = four();
    outside.parts.push(part(Role::Piece, (1_700, 0), (200, 50)));
    assert_eq!(drawing(&outside, &NAMES), Err(Unprintable::Frame));
    let shrunk = Picture { frame: Rect { x: 0, y: 0, width: 0, height: 5 }, ..four() };
    assert_eq!(drawing(&shrunk, &NAMES), Err(Unprintable::Frame));
}

/// Words with characters that mean something in XML.
#[test]
fn words_are_text_and_never_markup() {
    let caption = |_, _| Some(Caption { main: "<&\"'>".to_owned(), more: "a]]>".to_owned() });
    let words = PictureWords { caption: &caption, ..WORDS };
    let names = DrawingNames { title: "</title><script>", words, ..NAMES };
    let svg = drawing(&four(), &names).unwrap();
    tree(&svg);
    assert!(!svg.contains("<script") && svg.contains("&lt;&amp;&quot;"), "{svg}");
}

/// Is the outermost half centimetre of a page of A5 white, where printers reach badly?
fn white_edge(page: &str) -> bool {
    let (width, height) = (148 * 2, 210 * 2);
    let mut dots = tiny_skia::Pixmap::new(width, height).unwrap();
    dots.fill(tiny_skia::Color::WHITE);
    let tree = tree(page);
    let scale = width as f32 / tree.size().width();
    resvg::render(&tree, tiny_skia::Transform::from_scale(scale, scale), &mut dots.as_mut());
    let edge = 10;
    let outside = |x, y| x < edge || y < edge || x >= width - edge || y >= height - edge;
    let all = (0..height).flat_map(|y| (0..width).map(move |x| (x, y)));
    all.filter(|(x, y)| outside(*x, *y))
        .all(|(x, y)| dots.pixel(x, y).is_some_and(|dot| dot.green() == 255))
}

fn pictures() -> impl Strategy<Value = Picture> {
    let roles = [
        Role::Paper,
        Role::Film,
        Role::Over,
        Role::Face,
        Role::Fold,
        Role::Piece,
        Role::Place,
        Role::Free,
    ];
    let role = prop::sample::select(roles.to_vec());
    let one = (role, 0..2_400_i32, 0..2_400_i32, 1..600_i32, 1..600_i32, any::<bool>());
    let end = || (0..3_000_i32, 0..3_000_i32).prop_map(|(x, y)| Point { x, y });
    let distance = (end(), end()).prop_map(|(from, to)| Distance { from, to });
    let distances = prop::collection::vec(distance, 0..4);
    (prop::collection::vec(one, 0..60), distances).prop_map(|(parts, distances)| {
        let parts = parts.into_iter().map(|(role, x, y, width, height, named)| {
            let mut part = part(role, (x, y), (width, height));
            part.names = named.then_some(3);
            part
        });
        let frame = Rect { x: 0, y: 0, width: 3_000, height: 3_000 };
        Picture { frame, parts: parts.collect(), distances }
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Captions are short here; a pouch that is smaller than its name is refused and nothing else.
    #[test]
    fn any_picture_is_drawn_inside_its_page_or_refused(picture in pictures(), named in any::<bool>()) {
        let caption = move |_, _| named.then(|| Caption { main: "3K7P".into(), more: "bits".into() });
        let words = PictureWords { caption: &caption, ..WORDS };
        match drawing(&picture, &DrawingNames { words, ..NAMES }) {
            Ok(svg) => {
                let tree = tree(&svg);
                let box_of = tree.root().abs_stroke_bounding_box();
                let size = tree.size();
                prop_assert!(box_of.left() >= 0.0 && box_of.top() >= 0.0);
                prop_assert!(box_of.right() <= size.width() && box_of.bottom() <= size.height());
                prop_assert!(svg.len() < 6_000 + 1_500 * (picture.parts.len() + picture.distances.len()));
            }
            Err(refused) => prop_assert!(matches!(refused, Unprintable::TooLong { .. }), "{refused}"),
        }
        for page in sheet(&picture).unwrap_or_default() {
            prop_assert!(white_edge(&page), "{page}");
        }
    }
}
