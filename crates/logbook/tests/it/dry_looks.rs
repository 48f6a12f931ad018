//! Which loads came out dry, as people saw it.

use crate::common::{at, id, kind, new_book, packed, stamp, write};
use load::Contents;
use logbook::fact::{AirRemoval, Basis, Body, Judged, KeyFigures};
use logbook::view::{DryLook, View};
use logbook::{Book, BookError};
use measure::RunId;
use release::verdict::Outcome;

fn read<T>(book: &Book, ask: impl FnOnce(&View<'_>) -> Result<T, BookError>) -> T {
    book.read(ask).unwrap()
}

fn looked(run: u32, dry_looked: bool, wet: &[u32]) -> Body {
    Body::Looked {
        run: id(run),
        marks_looked: true,
        inner_mark: None,
        dry_looked,
        marks_not_turned: vec![],
        wet: wet.iter().map(|pouch| id(*pouch)).collect(),
        torn: vec![],
        dropped: vec![],
    }
}

fn started(run: u32, machine: u32, pouches: &[u32]) -> Body {
    Body::RunStarted {
        run: id(run),
        machine: id(machine),
        number: run,
        programme: Some("long".to_owned()),
        contents: Contents::Pouched,
        pouches: pouches.iter().map(|pouch| id(*pouch)).collect(),
    }
}

fn dried(run: u32, drying_ms: i64) -> Body {
    let verdict =
        crate::story::verdict(Some(id(run)), logbook::drawer::record_hash(&[1]), Outcome::Lethal);
    let figures = KeyFigures {
        drying_ms: Some(drying_ms),
        dry_vacuum_pa: Some(7_900),
        ..KeyFigures::default()
    };
    let basis = Basis::Reading { lowest_mc: 134_500, held_s: 245, press_pa: None };
    Body::Judged(Box::new(Judged { figures, basis, ..verdict }))
}

/// After these facts, each an act of its own from number 21 on: which runs of machine 200 were
/// looked at, and wet?
fn check_looks(facts: Vec<Body>, expected: &[(u32, bool)]) {
    let (_folder, book) = two_runs();
    let told = format!("{facts:?}");
    for (act, body) in (21..).zip(facts) {
        write(&book, stamp(act, act.into()), vec![body]).unwrap();
    }
    let found: Vec<(RunId, bool)> = read(&book, |view| view.dry_looks(id(200)))
        .iter()
        .map(|look| (look.run, look.wet))
        .collect();
    let expected: Vec<_> = expected.iter().map(|(run, wet)| (id(*run), *wet)).collect();
    assert_eq!(found, expected, "{told}");
}

/// Run 1 with pouches 1 to 4, then run 2, both in machine 200; run 3 in machine 201.
fn two_runs() -> (tempfile::TempDir, Book) {
    let (folder, book) = new_book();
    let machine = |machine, number| Body::MachineAdded {
        machine: id(machine),
        number,
        air_removal: AirRemoval::Vacuum,
        writes_files: true,
        most_pouches: None,
    };
    let mut pouches: Vec<_> = (1..7).map(packed).collect();
    pouches[2].kind = kind("pedicure");
    pouches[3].pouched = false;
    write(&book, stamp(10, 0), vec![machine(200, 1), machine(201, 2), Body::Packed { pouches }])
        .unwrap();
    let runs = [started(1, 200, &[1, 2, 3, 4]), started(2, 200, &[5]), started(3, 201, &[6])];
    for (act, run) in (11..).zip(runs) {
        write(&book, stamp(act, act.into()), vec![run]).unwrap();
    }
    for (act, run) in [(14, 1), (15, 2), (16, 3)] {
        write(&book, stamp(act, act.into()), vec![Body::RunUnloaded { run: id(run) }]).unwrap();
    }
    (folder, book)
}

#[test]
fn a_pouch_that_was_wet_once_was_wet() {
    let undone = |act| Body::Undone { act: id(act) };
    check_looks(vec![], &[]);
    check_looks(vec![looked(1, true, &[])], &[(1, false)]);
    // Only the marks were looked at: that says nothing about wet or dry.
    check_looks(vec![looked(1, false, &[])], &[]);
    check_looks(vec![looked(1, false, &[2])], &[(1, true)]);
    // The first answer stands; the newest run comes first; another machine's run does not count.
    let three = vec![looked(1, true, &[2]), looked(1, true, &[]), looked(3, true, &[6])];
    check_looks(three, &[(1, true)]);
    check_looks(vec![looked(1, true, &[]), looked(2, true, &[5])], &[(2, true), (1, false)]);
    check_looks(vec![looked(1, true, &[]), looked(1, false, &[2])], &[(1, true)]);
    // Taken back, a look does not count, and the other one does.
    check_looks(vec![looked(1, true, &[2]), undone(21)], &[]);
    check_looks(vec![looked(1, true, &[2]), looked(1, true, &[]), undone(21)], &[(1, false)]);
    // Nor does a run that never began.
    check_looks(vec![looked(2, true, &[5]), undone(15), undone(12)], &[]);
}

#[test]
fn a_look_comes_with_what_was_in_the_run_and_how_it_dried() {
    let (_folder, book) = two_runs();
    let facts = vec![dried(1, 900_000), dried(1, 1_200_000), looked(1, true, &[2])];
    write(&book, stamp(21, 21), facts).unwrap();
    let expected = DryLook {
        run: id(1),
        started: at(11),
        programme: Some("long".to_owned()),
        contents: vec![
            (kind("manicure"), 1, false),
            (kind("manicure"), 2, true),
            (kind("pedicure"), 1, true),
        ],
        wet: true,
        // By the verdict that counts, which is the last one.
        drying_ms: Some(1_200_000),
        dry_vacuum_pa: Some(7_900),
    };
    assert_eq!(read(&book, |view| view.dry_looks(id(200))), [expected]);
}
