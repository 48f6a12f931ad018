//! Made-up photos of our own label: drawn, laid on a table, turned, tilted, out of focus, in uneven
//! light, with the grain of a small sensor, as JPEG and PNG. No photo of a real phone is among them.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

use super::*;
use jpeg_encoder::{ColorType, Encoder, SamplingFactor};
use load::ShelfCode;
use papers::{Label, Run, Sheet, label_sheets};
use proptest::prelude::*;
use resvg::{tiny_skia, usvg};
use std::sync::LazyLock;

const WORDS: papers::Words<'_> = papers::Words {
    printed: "",
    page: &|_, _| String::new(),
    scale: "",
    stock: "",
    machine: "Machine",
    run: "Run",
    machine_short: "M",
    run_short: "R",
};
/// Side of the label of the small roll.
const LABEL_MM: f32 = 25.0;
/// Dots a millimetre in which the label is drawn.
const DRAWN: f32 = 24.0;

fn pouch(number: u8) -> PouchId {
    PouchId::from_bytes([
        number.wrapping_mul(37),
        number,
        0xA5,
        3,
        4,
        5,
        6,
        7,
        8,
        9,
        10,
        11,
        12,
        13,
        14,
        number,
    ])
}

/// A label as grey dots.
fn label(number: u8) -> Grey {
    let label = Label {
        pouch: pouch(number),
        code: ShelfCode::from_number(u32::from(number) * 997),
        kind: "manicure".to_owned(),
        sentence: "Packed 28 NOV. Look: dry? whole?".to_owned(),
        run: Run::ToWriteIn,
    };
    let pages = label_sheets(&[label], &Sheet::ROLL_25, &WORDS, 1).unwrap();
    let tree = usvg::Tree::from_str(&pages[0], &usvg::Options::default()).unwrap();
    let side = (LABEL_MM * DRAWN) as u32;
    let mut dots = tiny_skia::Pixmap::new(side, side).unwrap();
    dots.fill(tiny_skia::Color::WHITE);
    let scale = DRAWN * 25.4 / 96.0;
    resvg::render(&tree, tiny_skia::Transform::from_scale(scale, scale), &mut dots.as_mut());
    let grey = dots.pixels().iter().map(|dot| dot.red()).collect();
    Grey::new(side as usize, side as usize, grey).unwrap()
}

static LABEL: LazyLock<Grey> = LazyLock::new(|| label(1));

/// How the photo was taken.
#[derive(Debug, Clone, Copy)]
struct Shot {
    /// Width of the picture; the height is three quarters of it.
    width: usize,
    /// Part of the width that the label takes.
    part: f32,
    /// Turned by these degrees.
    turned: f32,
    /// How much nearer one side of the label is than the other, as a share.
    tilt: f32,
    /// A point becomes a square of this many dots.
    blur: usize,
    /// Brightness at the dark edge, as a share of the bright edge.
    dim: f32,
    /// Grain: the most that a dot is off.
    grain: f32,
    /// A round reflection over a corner of the label, as a share of its side.
    glare: f32,
}

const PLAIN: Shot = Shot {
    width: 900,
    part: 0.4,
    turned: 0.0,
    tilt: 0.0,
    blur: 1,
    dim: 1.0,
    grain: 0.0,
    glare: 0.0,
};

/// The picture. White pouch, grey table.
fn taken(label: &Grey, shot: Shot) -> Grey {
    let (width, height) = (shot.width, shot.width * 3 / 4);
    let (sin, cos) = shot.turned.to_radians().sin_cos();
    let side = shot.part * width as f32;
    let mut chance = 0x2545_F491_u32;
    let mut grain = move || {
        chance = chance.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (chance >> 8) as f32 / (1_u32 << 23) as f32 - 1.0
    };
    let mut dots = Vec::with_capacity(width * height);
    for y in 0..height {
        for x in 0..width {
            let (dx, dy) = (x as f32 - width as f32 / 2.0, y as f32 - height as f32 / 2.0);
            // Shares of the label's side, 0 in its middle; the tilt makes one side nearer.
            let (u, v) = ((cos * dx + sin * dy) / side, (cos * dy - sin * dx) / side);
            let near = 1.0 + shot.tilt * u;
            let (u, v) = (u / near, v / near);
            let paper = surface(label, u, v);
            let light = shot.dim + (1.0 - shot.dim) * x as f32 / width as f32;
            let glare = if (u + 0.5).hypot(v - 0.5) < shot.glare { 200.0 } else { 0.0 };
            dots.push((paper * light + glare + grain() * shot.grain).clamp(0.0, 255.0) as u8);
        }
    }
    blurred(&Grey::new(width, height, dots).unwrap(), shot.blur)
}

/// The label, the film of the pouch around it, the table.
fn surface(label: &Grey, u: f32, v: f32) -> f32 {
    let far = u.abs().max(v.abs());
    if far < 0.5 {
        let at = |share: f32| ((share + 0.5) * label.width() as f32) as usize;
        f32::from(label.at(at(u), at(v))) * 0.9
    } else if far < 0.9 {
        215.0
    } else {
        110.0
    }
}

fn blurred(picture: &Grey, square: usize) -> Grey {
    let (width, height) = (picture.width(), picture.height());
    let mean = |x: usize, y: usize| {
        let near = (0..square * square).map(|at| {
            let (x, y) = (x + at % square, y + at / square);
            u32::from(picture.at(x.min(width - 1), y.min(height - 1)))
        });
        (near.sum::<u32>() / (square * square) as u32) as u8
    };
    let dots = (0..height).flat_map(|y| (0..width).map(move |x| (x, y)));
    Grey::new(width, height, dots.map(|(x, y)| mean(x, y)).collect()).unwrap()
}

fn as_jpeg(picture: &Grey, progressive: bool) -> Vec<u8> {
    let mut file = Vec::new();
    let mut encoder = Encoder::new(&mut file, 80);
    encoder.set_sampling_factor(SamplingFactor::R_4_2_0);
    encoder.set_progressive(progressive);
    // Colour as a camera writes it.
    let colour: Vec<u8> =
        picture.dots().iter().flat_map(|&grey| [grey, grey, grey / 2 + 100]).collect();
    let (width, height) = (picture.width() as u16, picture.height() as u16);
    encoder.encode(&colour, width, height, ColorType::Rgb).unwrap();
    file
}

fn as_png(picture: &Grey) -> Vec<u8> {
    png_of((picture.width() as u32, picture.height() as u32), picture.dots())
}

fn png_of((width, height): (u32, u32), dots: &[u8]) -> Vec<u8> {
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, width, height);
    encoder.set_color(png::ColorType::Grayscale);
    encoder.set_depth(png::BitDepth::Eight);
    encoder.write_header().unwrap().write_image_data(dots).unwrap();
    file
}

/// How many of the shots, each turned by five angles of 0 to 45 degrees, are read.
fn read(shot: Shot) -> usize {
    let turned = [0.0, 9.0, 20.0, 33.0, 45.0].into_iter();
    let files = turned.map(|turned| as_jpeg(&taken(&LABEL, Shot { turned, ..shot }), false));
    files.filter(|file| pouch_in(file) == Ok(pouch(1))).count()
}

/// The rows of the table in `docs/decisions/0021-codes-at-the-chair.md`: what was found when this
/// was written is the least that must be found ever after.
#[test]
fn turned_tilted_blurred_and_badly_lit_photos_are_read() {
    let rows = [
        ("plain", PLAIN, 5),
        ("a module of 2.9 dots", Shot { part: 0.2, ..PLAIN }, 5),
        ("a module of 10 dots", Shot { part: 0.7, ..PLAIN }, 5),
        ("tilted by a third", Shot { tilt: 0.33, ..PLAIN }, 5),
        ("out of focus by 5 dots", Shot { blur: 5, ..PLAIN }, 4),
        ("light falls off to a quarter", Shot { dim: 0.25, ..PLAIN }, 5),
        ("strong grain", Shot { grain: 60.0, ..PLAIN }, 5),
        ("glare on a corner of the label", Shot { glare: 0.35, ..PLAIN }, 5),
        ("all of it, mildly", Shot { tilt: 0.2, blur: 3, dim: 0.5, grain: 25.0, ..PLAIN }, 5),
    ];
    let found: Vec<(&str, usize)> =
        rows.iter().map(|(name, shot, _)| (*name, read(*shot))).collect();
    println!("{found:#?}");
    for ((name, found), (_, _, least)) in found.into_iter().zip(rows) {
        assert!(found >= least, "{name}: {found} of 5");
    }
}

/// The camera of these tests is no friend.
#[test]
fn a_photo_far_out_of_focus_names_no_pouch() {
    let far = Shot { part: 0.2, blur: 13, ..PLAIN };
    assert_eq!(pouch_in(&as_jpeg(&taken(&LABEL, far), false)), Err(NotRead::NoCode));
}

#[test]
fn both_formats_are_read_and_two_pouches_are_never_guessed_between() {
    let one = taken(&LABEL, Shot { width: 800, ..PLAIN });
    assert_eq!(pouch_in(&as_png(&one)), Ok(pouch(1)));
    assert_eq!(pouch_in(&as_jpeg(&one, true)), Ok(pouch(1)));
    let other = taken(&label(2), Shot { width: 800, ..PLAIN });
    let both: Vec<u8> = one.dots().iter().chain(other.dots()).copied().collect();
    let both = Grey::new(800, 1_200, both).unwrap();
    assert_eq!(pouch_in(&as_png(&both)), Err(NotRead::Several));
}

#[test]
fn a_small_file_that_claims_a_huge_picture_is_refused_unread() {
    // 20,000 million clear dots behind a few bytes: the header alone must be enough to say no.
    let mut bomb = png_of((8, 8), &[255; 64]);
    bomb[16..20].copy_from_slice(&11_000_u32.to_be_bytes());
    bomb[20..24].copy_from_slice(&11_000_u32.to_be_bytes());
    let sum = crc(&bomb[12..29]);
    bomb[29..33].copy_from_slice(&sum.to_be_bytes());
    assert_eq!(pouch_in(&bomb), Err(NotRead::TooLarge));
    let mut jpeg = as_jpeg(&Grey::new(16, 16, vec![9; 256]).unwrap(), false);
    let frame = jpeg.windows(2).position(|two| two == [0xFF, 0xC0]).unwrap();
    jpeg[frame + 5..frame + 9].copy_from_slice(&[0xFF; 4]);
    assert_eq!(pouch_in(&jpeg), Err(NotRead::TooLarge));
    assert_eq!(pouch_in(&vec![0xFF; LARGEST + 1]), Err(NotRead::TooLarge));
}

/// The check value of a PNG chunk, bit by bit as the format's appendix has it.
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(!0_u32, |mut sum, byte| {
        sum ^= u32::from(*byte);
        for _ in 0..8 {
            sum = if sum & 1 == 1 { (sum >> 1) ^ 0xEDB8_8320 } else { sum >> 1 };
        }
        sum
    })
}

#[test]
fn rubbish_gets_an_answer() {
    for rubbish in
        [&b""[..], b"GIF89a", b"\x89PNG\r\n\x1a\n", &[0xFF, 0xD8, 0xFF], b"time,temp\n1,2\n"]
    {
        assert_eq!(pouch_in(rubbish), Err(NotRead::NoPicture), "{rubbish:?}");
    }
    let noise =
        taken(&Grey::new(1, 1, vec![255]).unwrap(), Shot { grain: 255.0, part: 3.0, ..PLAIN });
    assert_eq!(pouch_in(&as_png(&noise)), Err(NotRead::NoCode));
}

#[test]
fn every_reason_has_a_word_that_finds_it_again() {
    for (reason, word) in NotRead::WORDS {
        assert_eq!((reason.word(), NotRead::from_word(word)), (word, Some(reason)));
    }
}

static FILES: LazyLock<[Vec<u8>; 3]> = LazyLock::new(|| {
    let small = taken(&LABEL, Shot { width: 200, part: 0.6, ..PLAIN });
    [as_jpeg(&small, false), as_jpeg(&small, true), as_png(&small)]
});

/// Whether another pouch was found than the one in the picture. The decoders are called without
/// the net under them as well, so that a panic of theirs fails the test.
fn names_another(bytes: &[u8]) -> bool {
    drop(grey::unpack(bytes, MOST_DOTS));
    pouch_in(bytes).is_ok_and(|found| found != pouch(1))
}

proptest! {
    #[test]
    fn any_bytes_behind_a_picture_s_first_ones_get_an_answer(
        png: bool, rest in proptest::collection::vec(any::<u8>(), 0..600),
    ) {
        let first: &[u8] = if png { b"\x89PNG\r\n\x1a\n" } else { &[0xFF, 0xD8, 0xFF] };
        prop_assert!(!names_another(&[first, &rest].concat()));
    }

    #[test]
    fn a_cut_or_spoilt_picture_names_no_wrong_pouch(
        which in 0_usize..3, cut in 0.0..1.0_f64, spoilt in proptest::collection::vec((0.0..1.0_f64, any::<u8>()), 0..6),
    ) {
        let mut file = FILES[which].clone();
        file.truncate((file.len() as f64 * (0.3 + cut)) as usize);
        for (place, byte) in spoilt {
            let at = (file.len() as f64 * place) as usize;
            file[at] = byte;
        }
        prop_assert!(!names_another(&file));
    }
}
