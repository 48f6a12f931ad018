//! What goes in, in the book: its stored form, the salon's own beats the typical, weighed trays.

use crate::common::{at, id, kind, new_book, stamp, write};
use load::catalogue;
use load::chamber::{Chamber, Face, Inside, Pattern, Rack, Tray};
use load::implement::{Form, Implement, Material, Stands};
use load::pouch::PouchSize;
use logbook::fact::{Body, Day, Drying, Loading, ProgrammeFigures};
use logbook::view::View;
use logbook::{Book, BookError, typical};
use measure::MachineId;
use std::fmt::Debug;

fn read<T>(book: &Book, ask: impl FnOnce(&View<'_>) -> Result<T, BookError>) -> T {
    book.read(ask).unwrap()
}

fn said(loading: Loading) -> Body {
    Body::Loading(Box::new(loading))
}

/// Says it in an act of its own; the place of its fact.
fn say(book: &Book, act: u32, loading: Loading) -> u64 {
    write(book, stamp(act, act.into()), vec![said(loading)]).unwrap().first_seq
}

fn nipper(word: &str) -> Implement {
    Implement {
        word: word.parse().unwrap(),
        form: Form::Nippers,
        length_mm: 118,
        width_mm: 62,
        thick_mm: 11,
        mass_dg: 634,
        material: Material::Steel420,
        hinged: true,
        hollow: false,
        single_use: false,
        steam: Stands::Yes,
        ultrasonic: Stands::AskMaker,
        most_c: 200,
    }
}

fn bag(word: &str) -> PouchSize {
    let word = word.parse().unwrap();
    PouchSize { word, width_mm: 90, length_mm: 230, seam_mm: 8, fold_mm: 20, mass_dg: 52 }
}

fn room() -> Inside {
    Inside {
        chamber: Chamber::Round { diameter_mm: 240, depth_mm: 400 },
        trays: vec![Tray { width_mm: 180, depth_mm: 280, height_mm: 30, mass_g: 410 }],
        rack: Some(Rack { places: 6, pitch_mm: 25, height_mm: 90, depth_mm: 250, mass_g: 300 }),
        pattern: Pattern::OnEdge,
        face: Face::Film,
        wall_mm: 10,
        between_mm: 5,
        manual_page: Some(17),
    }
}

fn manual(programme: &str) -> ProgrammeFigures {
    ProgrammeFigures {
        machine: id(200),
        programme: programme.parse().unwrap(),
        set_c: 121,
        hold_s: 1_200,
        pulses: 4,
        drying_min: 15,
        drying_pa: Some(9_000),
        for_pouches: true,
        for_hollow: true,
        most_pouched_g: Some(1_500),
        most_unwrapped_g: None,
        manual_page: Some(23),
    }
}

fn tray(grams: u32) -> Loading {
    let sets = vec![(kind("manicure"), 6)];
    Loading::TrayWeighed { grams, empty_g: Some(410), sets, pouched: true }
}

fn each() -> Vec<(Loading, &'static str, &'static str)> {
    let word = || "kềm".parse().unwrap();
    vec![
        (
            Loading::ImplementSet(nipper("kềm")),
            "implement_set",
            r#"{"form":"nippers","hinged":true,"hollow":false,"length_mm":118,"mass_dg":634,"material":"stainless 420","most_c":200,"single_use":false,"steam":"yes","thick_mm":11,"ultrasonic":"ask the maker","width_mm":62,"word":"kềm"}"#,
        ),
        (Loading::ImplementEnded { word: word() }, "implement_ended", r#"{"word":"kềm"}"#),
        (
            Loading::SetOf {
                kind: kind("manicure"),
                pieces: vec![(word(), 1), ("pusher".parse().unwrap(), 2)],
            },
            "set_of",
            r#"{"kind":"manicure","pieces":[["kềm",1],["pusher",2]]}"#,
        ),
        (
            Loading::PouchSet(bag("middle")),
            "pouch_set",
            r#"{"fold_mm":20,"length_mm":230,"mass_dg":52,"seam_mm":8,"width_mm":90,"word":"middle"}"#,
        ),
        (
            Loading::PouchEnded { word: "middle".parse().unwrap() },
            "pouch_ended",
            r#"{"word":"middle"}"#,
        ),
        (
            Loading::InsideSet { machine: id(200), inside: room() },
            "inside_set",
            r#"{"inside":{"between_mm":5,"chamber":{"round":{"depth_mm":400,"diameter_mm":240}},"face":"film","manual_page":17,"pattern":"on edge","rack":{"depth_mm":250,"height_mm":90,"mass_g":300,"pitch_mm":25,"places":6},"trays":[{"depth_mm":280,"height_mm":30,"mass_g":410,"width_mm":180}],"wall_mm":10},"machine":"000000000000000000000000000000c8"}"#,
        ),
        (
            tray(1_240),
            "tray_weighed",
            r#"{"empty_g":410,"grams":1240,"pouched":true,"sets":[["manicure",6]]}"#,
        ),
        (
            Loading::ProgrammeSet(manual("long")),
            "programme_set",
            r#"{"drying_min":15,"drying_pa":9000,"for_hollow":true,"for_pouches":true,"hold_s":1200,"machine":"000000000000000000000000000000c8","manual_page":23,"most_pouched_g":1500,"most_unwrapped_g":null,"programme":"long","pulses":4,"set_c":121}"#,
        ),
    ]
}

/// The stored texts, written out by hand after 0003 and 0015: form 3, frozen.
#[test]
fn what_goes_in_has_the_third_form() {
    let (folder, book) = new_book();
    let bodies = each().into_iter().map(|(loading, _, _)| said(loading)).collect();
    write(&book, stamp(11, 0), bodies).unwrap();
    let conn = rusqlite::Connection::open(folder.path().join(logbook::book::FILE)).unwrap();
    for (seq, (loading, kind, text)) in (2_i64..).zip(each()) {
        let ask = "SELECT kind, version, body FROM facts WHERE seq = ?";
        let line: (String, i64, String) =
            conn.query_row(ask, [seq], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).unwrap();
        assert_eq!(line, (kind.to_owned(), 3, text.to_owned()));
        let fact = read(&book, |view| view.fact(seq.unsigned_abs())).unwrap();
        assert_eq!(fact.body, said(loading));
    }
    assert!(logbook::verify(folder.path()).unwrap().ok);
}

/// The words of closed lists that stand in stored facts: one that changes makes old books
/// unreadable.
#[test]
fn the_words_of_closed_lists_stay() {
    fn check<T: Copy + Debug>(all: &[T], word: impl Fn(T) -> &'static str, expected: &str) {
        let words: Vec<_> = all.iter().map(|one| word(*one)).collect();
        assert_eq!(words.join(", "), expected, "{all:?}");
    }
    check(
        &Form::ALL,
        Form::word,
        "nippers, scissors, clippers, tweezers, stick, bit, block, file, holder",
    );
    check(
        &Material::ALL,
        Material::word,
        "stainless 420, stainless 304, plated steel, carbon steel, aluminium, carbide, diamond, \
         ceramic, glass, silicone, polypropylene, fibre",
    );
    check(&Stands::ALL, Stands::word, "yes, ask the maker, never");
    check(&Pattern::ALL, Pattern::word, "flat, on edge, overlapped");
    check(&Face::ALL, Face::word, "paper, film");
}

#[test]
fn what_cannot_be_is_refused() {
    let refused = |loading: Loading| {
        let (_folder, book) = new_book();
        let told = format!("{loading:?}");
        let found = write(&book, stamp(11, 0), vec![said(loading)]);
        assert!(matches!(found, Err(BookError::Unfit(_))), "{told}");
    };
    let pieces = |counts: &[u32]| {
        let pieces = counts.iter().map(|count| ("pusher".parse().unwrap(), *count)).collect();
        Loading::SetOf { kind: kind("manicure"), pieces }
    };
    for counts in [&[][..], &[0], &[1_001], &[1, 1]] {
        refused(pieces(counts));
    }
    refused(tray(0));
    refused(tray(410));
    refused(tray(100_001));
    let sets = vec![(kind("bits"), 1), (kind("bits"), 2)];
    refused(Loading::TrayWeighed { grams: 9, empty_g: None, sets, pouched: false });
    refused(Loading::ImplementSet(Implement { length_mm: 0, ..nipper("kềm") }));
    refused(Loading::PouchSet(PouchSize { seam_mm: 45, ..bag("small") }));
    refused(Loading::PouchSet(PouchSize { fold_mm: 222, ..bag("small") }));
    refused(Loading::PouchSet(PouchSize { mass_dg: 100_001, ..bag("small") }));
    let inside = |inside| Loading::InsideSet { machine: id(200), inside };
    refused(inside(Inside { rack: None, ..room() }));
    refused(inside(Inside { manual_page: Some(0), ..room() }));
    for odd in [
        ProgrammeFigures { set_c: 99, ..manual("long") },
        ProgrammeFigures { set_c: 151, ..manual("long") },
        ProgrammeFigures { hold_s: 0, ..manual("long") },
        ProgrammeFigures { pulses: 21, ..manual("long") },
        ProgrammeFigures { drying_min: 1_441, ..manual("long") },
        ProgrammeFigures { drying_pa: Some(110_001), ..manual("long") },
        ProgrammeFigures { most_pouched_g: Some(0), ..manual("long") },
        ProgrammeFigures { most_unwrapped_g: Some(100_001), ..manual("long") },
    ] {
        refused(Loading::ProgrammeSet(odd));
    }
}

#[test]
fn the_salons_own_beats_the_typical() {
    let (_folder, book) = new_book();
    let words = |book: &Book| -> Vec<(String, Option<u64>)> {
        let all = read(book, |view| view.implements());
        all.into_iter().map(|one| (one.value.word.to_string(), one.said)).collect()
    };
    let typical = catalogue::implements();
    let first = typical[0].word.clone();
    let before = words(&book);
    assert_eq!(before.len(), typical.len());
    assert!(before.iter().all(|(_, said)| said.is_none()));
    // One described anew stays in its place; one of its own comes last.
    let anew = say(&book, 11, Loading::ImplementSet(nipper(first.word())));
    let own = say(&book, 12, Loading::ImplementSet(nipper("kềm nhỏ")));
    let now = words(&book);
    assert_eq!(now[0], (first.to_string(), Some(anew)));
    assert_eq!(now[1..typical.len()], before[1..]);
    assert_eq!(now[typical.len()..], [("kềm nhỏ".to_owned(), Some(own))]);
    let asked = |word: &str| {
        let word = word.parse().unwrap();
        read(&book, |view| view.implement(&word)).map(|one| (one.value, one.said))
    };
    assert_eq!(asked(first.word()), Some((nipper(first.word()), Some(anew))));
    assert_eq!(asked(typical[1].word.word()), Some((typical[1].clone(), None)));
    assert_eq!(asked("nothing of the kind"), None);
    // Ended is gone, also a typical one; described anew, it is there again.
    say(&book, 13, Loading::ImplementEnded { word: first.clone() });
    say(&book, 14, Loading::ImplementEnded { word: typical[1].word.clone() });
    assert_eq!((asked(first.word()), asked(typical[1].word.word())), (None, None));
    assert_eq!(words(&book).len(), typical.len() - 1);
    let again = say(&book, 15, Loading::ImplementSet(nipper(first.word())));
    assert_eq!(asked(first.word()), Some((nipper(first.word()), Some(again))));
}

#[test]
fn sets_pouches_and_rooms_are_said_one_by_one() {
    let (_folder, book) = new_book();
    let manicure = kind("manicure");
    let set = read(&book, |view| view.set_of(&manicure));
    assert_eq!((set.value, set.said), (catalogue::set_of(&manicure), None));
    let pieces = vec![("pusher".parse().unwrap(), 2)];
    let own = Loading::SetOf { kind: manicure.clone(), pieces: pieces.clone() };
    let seq = say(&book, 11, own);
    let set = read(&book, |view| view.set_of(&manicure));
    assert_eq!((set.value, set.said), (pieces, Some(seq)));
    assert_eq!(read(&book, |view| view.set_of(&kind("pedicure"))).said, None);

    let typical = catalogue::pouch_sizes();
    let sizes = || read(&book, |view| view.pouch_sizes());
    say(&book, 12, Loading::PouchSet(bag("very long")));
    say(&book, 13, Loading::PouchEnded { word: typical[0].word.clone() });
    let left: Vec<_> = sizes().into_iter().map(|size| size.value).collect();
    let expected: Vec<_> = typical[1..].iter().cloned().chain([bag("very long")]).collect();
    assert_eq!(left, expected);
    // Two rooms in two machines.
    let inside = |machine: MachineId| read(&book, |view| view.inside(machine));
    let seq = say(&book, 14, Loading::InsideSet { machine: id(200), inside: room() });
    assert_eq!((inside(id(200)).value, inside(id(200)).said), (room(), Some(seq)));
    assert_eq!((inside(id(201)).value, inside(id(201)).said), (catalogue::inside(), None));
}

/// Typical figures as they were asked for: assumption, all of them.
#[test]
fn a_programme_is_as_its_manual_says_or_typical() {
    let (_folder, book) = new_book();
    let seq = say(&book, 11, Loading::ProgrammeSet(manual("middle")));
    let mut figures = typical::machine(id(200));
    // A programme without drying is not for pouches, whatever else was said of it.
    figures.cycles[0].wrapped = true;
    write(&book, stamp(12, 1), vec![Body::Day(Day::MachineFigures(figures.clone()))]).unwrap();
    let found = read(&book, |view| view.programme_figures(id(200)));
    let drying: Vec<_> = figures.cycles.iter().map(|cycle| cycle.drying).collect();
    assert_eq!(drying, [Drying::None, Drying::Short, Drying::Full]);
    assert_eq!((&found[1].value, found[1].said), (&manual("middle"), Some(seq)));
    let brief = |at: usize| {
        let one = &found[at].value;
        assert_eq!(
            (found[at].said, one.set_c, one.pulses, one.most_pouched_g),
            (None, 134, 3, None)
        );
        (one.programme.to_string(), one.hold_s, one.drying_min, one.drying_pa, one.for_pouches)
    };
    assert_eq!(brief(0), ("fast".to_owned(), 210, 0, None, false));
    assert_eq!(brief(2), ("long".to_owned(), 240, 20, Some(8_000), true));
    // What the manual of one machine says, it says of no other.
    let other = read(&book, |view| view.programme_figures(id(201)));
    assert!(other.iter().all(|one| one.said.is_none()));
    let short = &other[1].value;
    assert_eq!((short.hold_s, short.drying_min, short.drying_pa), (240, 6, Some(10_000)));
}

#[test]
fn the_newest_weighings_come_first_and_one_can_be_taken_back() {
    let (_folder, book) = new_book();
    for act in 11..33 {
        say(&book, act, tray(1_000 + act));
    }
    let grams = |book: &Book| -> Vec<u32> {
        read(book, |view| view.trays_weighed()).iter().map(|one| one.grams).collect()
    };
    let expected: Vec<u32> = (1_013..=1_032).rev().collect();
    assert_eq!(grams(&book), expected);
    let newest = &read(&book, |view| view.trays_weighed())[0];
    assert_eq!((newest.at, newest.empty_g, newest.pouched), (at(32), Some(410), true));
    assert_eq!(newest.sets, [(kind("manicure"), 6)]);
    write(&book, stamp(40, 40), vec![Body::Undone { act: id(32) }]).unwrap();
    assert_eq!(grams(&book)[0], 1_031);
    // A setting is said anew, not taken back: what was said stays, and the undoing is marked.
    say(&book, 41, Loading::InsideSet { machine: id(200), inside: room() });
    write(&book, stamp(42, 42), vec![Body::Undone { act: id(41) }]).unwrap();
    assert_eq!(read(&book, |view| view.inside(id(200))).value, room());
    assert!(read(&book, |view| view.log(None, 1))[0].contradicted);
}

/// A book as the program before this one left it: the same tables, folded by its rules.
#[test]
fn a_book_of_the_second_form_is_folded_again_and_stays_as_it_was() {
    let (folder, book) = new_book();
    crate::story::story(&book);
    let bits = Day::KindFigures(typical::kind(&kind("bits")));
    write(&book, stamp(900, 900), vec![Body::Day(bits.clone())]).unwrap();
    let facts = read(&book, |view| view.last_seq());
    let pouches = read(&book, |view| view.pouches_in(&load::SetState::ALL));
    drop(book);
    let conn = rusqlite::Connection::open(folder.path().join(logbook::book::FILE)).unwrap();
    conn.execute_batch("UPDATE fold_state SET fold_version = 2;").unwrap();
    drop(conn);
    let again = Book::open(folder.path()).unwrap();
    assert_eq!(again.folded_again(), Some(facts));
    assert_eq!(read(&again, |view| view.pouches_in(&load::SetState::ALL)), pouches);
    assert_eq!(read(&again, |view| view.fact(facts)).unwrap().body, Body::Day(bits));
    assert!(!read(&again, |view| view.implements()).is_empty());
    assert!(logbook::verify(folder.path()).unwrap().ok);
}
