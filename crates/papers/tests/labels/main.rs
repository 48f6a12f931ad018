//! The sheets as a printer and a camera meet them: the pages are drawn to dots, a label is turned
//! and blurred, and the decoder of another project has to find the pouch in it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

mod camera;

use camera::draw;
use load::ShelfCode;
use measure::PouchId;
use papers::{DotsPerInch, Label, Run, Sheet, Unprintable, Words, label_sheets, read_payload};

const WORDS: Words<'_> = Words {
    printed: "Printed 28 NOV 2026, 14:02",
    page: &|page, of| format!("page {page} of {of}"),
    scale: "50 mm. If it is not, print again at 100 %.",
    stock: "Office labels are not made for steam: try three of them first.",
    machine: "Machine",
    run: "Run",
    machine_short: "M",
    run_short: "R",
};

fn label(number: u32) -> Label {
    let mut bytes = [0xA5; 16];
    bytes[..4].copy_from_slice(&number.wrapping_mul(2_654_435_761).to_be_bytes());
    Label {
        pouch: PouchId::from_bytes(bytes),
        code: ShelfCode::from_number(number),
        kind: "manicure".to_owned(),
        sentence: "Packed 28 NOV. Look: dry? whole?".to_owned(),
        run: Run::ToWriteIn,
    }
}

fn labels(count: u32) -> Vec<Label> {
    (0..count).map(|number| label(number * 97)).collect()
}

/// The sheets, with the upper left corner of 25 mm of the first label that hold its code.
const SHEETS: [(Sheet, (f32, f32)); 3] =
    [(Sheet::ROLL_25, (0.0, 0.0)), (Sheet::A4_21, (46.5, 21.7)), (Sheet::LETTER_30, (47.0, 12.9))];

/// The first label of a page, drawn at 300 dpi, turned and out of focus, then read.
///
/// The project asks for 300 dpi, 0 to 45 degrees and 8 % blur. Eight per cent of what is not said;
/// here it is the diameter of the disc that a point becomes, over a finder mark's seven modules:
/// 0.56 of a module. Tried once beyond it, single angles were lost from 0.75 of a module on.
/// The letters are not drawn; that they keep out of the code's place is a test in `label`.
fn seen(sheet: &Sheet, corner: (f32, f32), label: &Label, (degrees, blur): (f32, f32)) -> String {
    let dpi = 300.0;
    let pages = label_sheets(std::slice::from_ref(label), sheet, &WORDS, 1).unwrap();
    let finder = 7.0 * sheet.module() as f32 / 25.4 * dpi;
    draw(&pages[0], corner, dpi).turned(degrees).blurred(blur * finder).read().unwrap_or_default()
}

#[test]
fn a_turned_and_blurred_label_is_read() {
    for (sheet, corner) in SHEETS {
        for degrees in [0.0, 8.0, 15.0, 22.5, 30.0, 38.0, 45.0] {
            let text = seen(&sheet, corner, &label(4711), (degrees, 0.08));
            assert_eq!(read_payload(&text), Ok(label(4711).pouch), "{sheet:?} at {degrees}");
        }
    }
}

/// The camera of these tests is no friend: with a point as wide as two modules it reads nothing.
#[test]
fn a_camera_far_out_of_focus_reads_nothing() {
    for (sheet, corner) in SHEETS {
        let text = seen(&sheet, corner, &label(4711), (0.0, 2.0 / 7.0));
        assert!(read_payload(&text).is_err(), "{sheet:?}: {text}");
    }
}

/// Why [`Sheet::for_printer`] is there. Tried once with 150 random pouches and angles at each of
/// four blurs: with modules of whole dots all 1,800 pictures were read; with 0.40 mm at 300 dpi,
/// which is 4.7 dots, 23 of 600 were not.
#[test]
fn other_pouches_in_whole_dots_are_read_at_other_angles() {
    for dpi in [203, 300, 600] {
        let dots = DotsPerInch::new(dpi).unwrap();
        for (sheet, corner) in SHEETS {
            for number in 0..4_u16 {
                let one = label(u32::from(number) * 7919 + 12);
                let degrees = 3.0 + 11.7 * f32::from(number);
                let text = seen(&sheet.for_printer(dots), corner, &one, (degrees, 0.08));
                assert_eq!(read_payload(&text), Ok(one.pouch), "{dpi} {sheet:?}");
            }
        }
    }
}

/// How many labels lie on each page: the crisp shapes without the one of the scale bar.
fn counts(pages: &[String]) -> Vec<usize> {
    let crisp = |page: &String| page.matches("crispEdges").count();
    let bars = |page: &String| page.matches(">50 mm.").count();
    pages.iter().map(|page| crisp(page) - bars(page)).collect()
}

#[test]
fn a_sheet_that_was_begun_is_not_wasted() {
    let check = |sheet: &Sheet, count, start_at, expected: &[usize]| {
        let pages = label_sheets(&labels(count), sheet, &WORDS, start_at).unwrap();
        assert_eq!(counts(&pages), expected, "{count} from {start_at}");
    };
    check(&Sheet::A4_21, 1, 1, &[1]);
    check(&Sheet::A4_21, 21, 1, &[21]);
    check(&Sheet::A4_21, 22, 1, &[21, 1]);
    check(&Sheet::A4_21, 9, 20, &[2, 7]);
    check(&Sheet::LETTER_30, 62, 30, &[1, 30, 30, 1]);
    check(&Sheet::ROLL_25, 3, 1, &[1, 1, 1]);
}

#[test]
fn every_label_is_printed_once_and_in_order() {
    let labels = labels(50);
    let printed = label_sheets(&labels, &Sheet::A4_21, &WORDS, 4).unwrap().concat();
    let mut from = 0;
    for label in &labels {
        let text = format!(">{}<", label.code);
        assert_eq!(printed.matches(&text).count(), 1, "{text}");
        let at = printed.find(&text).unwrap();
        assert!(at > from, "{text}");
        from = at;
    }
}

#[test]
fn each_sheet_says_when_which_page_and_how_long_fifty_millimetres_are() {
    let pages = label_sheets(&labels(25), &Sheet::LETTER_30, &WORDS, 10).unwrap();
    assert_eq!(pages.len(), 2);
    for (number, page) in pages.iter().enumerate() {
        assert!(page.contains(&format!(">page {} of 2<", number + 1)));
        assert!(page.contains(">Printed 28 NOV 2026, 14:02<"));
        assert!(page.contains("h50\""), "the bar");
        assert!(page.contains("width=\"215.9mm\""));
    }
}

#[test]
fn room_to_write_is_left_only_where_the_run_is_not_known() {
    let known = Label {
        sentence: "In machine 1, run 3, 28 NOV. Look: dry? whole?".to_owned(),
        run: Run::InTheSentence,
        ..label(1)
    };
    for (sheet, word) in [(Sheet::A4_21, ">Machine<"), (Sheet::ROLL_25, ">M<")] {
        let page = |one: &Label| label_sheets(std::slice::from_ref(one), &sheet, &WORDS, 1);
        assert!(page(&label(1)).unwrap()[0].contains(word));
        assert!(!page(&known).unwrap()[0].contains(word));
    }
}

/// The longest sentences that the three languages of the pages may hand in, on every sheet and
/// for the usual printers (drafts; a native speaker has to read them).
#[test]
fn the_longest_sentences_fit() {
    let texts = [
        ("pedicure with bits", "Packed 28 NOV. Look: dry? whole?", ("Machine", "Run")),
        ("juego de manicura", "Embolsado 28\u{a0}NOV. Mire: ¿seca? ¿entera?", ("Máquina", "Ciclo")),
        ("bộ đồ làm móng tay", "Vô túi 28\u{a0}tháng\u{a0}11. Coi: khô? nguyên?", ("Máy", "Mẻ số")),
    ];
    for (kind, sentence, (machine, run)) in texts {
        let one = Label {
            kind: kind.to_owned(),
            sentence: sentence.to_owned(),
            code: "9W9W".parse().unwrap(),
            ..label(1)
        };
        let words = Words { machine, run, ..WORDS };
        for dpi in [300, 600] {
            for (sheet, _) in SHEETS {
                let sheet = sheet.for_printer(DotsPerInch::new(dpi).unwrap());
                let pages = label_sheets(std::slice::from_ref(&one), &sheet, &words, 1);
                assert!(pages.is_ok(), "{sentence} {sheet:?}: {pages:?}");
            }
        }
    }
}

#[test]
fn what_cannot_be_right_is_not_printed() {
    let check = |change: fn(&mut Label), start_at, expected: fn(&Unprintable) -> bool| {
        let mut all = labels(3);
        change(&mut all[2]);
        let refused = label_sheets(&all, &Sheet::A4_21, &WORDS, start_at).unwrap_err();
        assert!(expected(&refused), "{refused:?}");
        assert!(refused.to_string().starts_with("Nothing was printed: "));
    };
    use Unprintable as U;
    check(|_| (), 0, |why| matches!(why, U::Start { asked: 0, labels: 21 }));
    check(|_| (), 22, |why| matches!(why, U::Start { asked: 22, .. }));
    check(|l| l.kind = "set ".repeat(80), 1, |why| matches!(why, U::TooLong { .. }));
    check(|l| l.sentence = "x".repeat(90), 1, |why| matches!(why, U::TooLong { .. }));
    check(|l| l.kind = "a\nb".to_owned(), 1, |why| matches!(why, U::NotPlain { .. }));
    check(
        |l| l.sentence = concat!("Ster", "ile!").to_owned(),
        1,
        |why| matches!(why, U::Claim { .. }),
    );
    let none = label_sheets(&[], &Sheet::A4_21, &WORDS, 1);
    assert_eq!(none, Err(U::Nothing));
}

#[test]
fn a_text_cannot_break_out_of_the_page() {
    let one = Label { kind: "</text><script>\"&".to_owned(), ..label(1) };
    let page = &label_sheets(&[one], &Sheet::A4_21, &WORDS, 1).unwrap()[0];
    assert!(!page.contains("<script"));
    assert!(page.contains("&lt;/text&gt;&lt;script&gt;&quot;&amp;"));
}

/// The square that a new phone scans, as a screen shows it and a camera sees it.
#[test]
fn an_address_is_read_from_its_square() {
    for text in
        ["https://192.168.178.255:65535/pair?code=3K7P9W", "http://[fd00::2]:7420/pair?code=9Y9Y9Y"]
    {
        let svg = papers::square(text, "Address").unwrap();
        let alone = svg.replacen("<svg ", "<svg xmlns=\"http://www.w3.org/2000/svg\" ", 1);
        for degrees in [0.0, 20.0, 45.0] {
            let seen = draw(&alone, (0.0, 0.0), 300.0).turned(degrees);
            assert_eq!(seen.read().as_deref(), Some(text), "{degrees}");
        }
    }
}
