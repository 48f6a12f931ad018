//! What somebody from outside is shown: late and copied entries with both times, and what was lifted
//! later as well.

use crate::common::{at, id, kind, new_book, stamp};
use logbook::fact::{
    AirRemoval, Body, Counter, GapWhy, Known, LiftReason, PackedPouch, Stamp, StopReason, Upkeep,
};
use logbook::{Book, BookError};

fn says(book: &Book, stamp: Stamp, bodies: Vec<Body>) {
    book.act(stamp, |_, draft| -> Result<(), BookError> {
        bodies.into_iter().for_each(|body| draft.fact(body));
        Ok(())
    })
    .unwrap();
}

fn started(run: u32, pouches: Vec<measure::PouchId>) -> Body {
    Body::RunStarted {
        run: id(run),
        machine: id(1),
        number: run,
        programme: None,
        contents: load::Contents::Pouched,
        pouches,
    }
}

fn looked(run: u32) -> Body {
    Body::Looked {
        run: id(run),
        marks_looked: true,
        inner_mark: None,
        dry_looked: true,
        marks_not_turned: Vec::new(),
        wet: Vec::new(),
        torn: Vec::new(),
        dropped: Vec::new(),
    }
}

/// Two runs: one at the moment, one copied from paper an hour later.
fn book() -> (tempfile::TempDir, Book) {
    let (folder, book) = new_book();
    let machine = Body::MachineAdded {
        machine: id(1),
        number: 1,
        air_removal: AirRemoval::Vacuum,
        writes_files: false,
        most_pouches: None,
    };
    let pouch = |pouch: u32, code: &str| PackedPouch {
        pouch: id(pouch),
        code: code.parse().unwrap(),
        kind: kind("manicure"),
        pouched: true,
        hollow: false,
    };
    says(&book, stamp(1, 0), vec![machine]);
    let pouches = vec![pouch(1, "2A3A"), pouch(2, "2A3C")];
    says(&book, stamp(2, 0), vec![Body::Packed { pouches }]);
    says(&book, stamp(3, 10), vec![started(1, vec![id(1), id(2)])]);
    says(&book, stamp(4, 60), vec![Body::RunUnloaded { run: id(1) }, looked(1)]);
    let copied = Stamp { happened: at(20), known: Known::FromPaper, ..stamp(5, 80) };
    says(&book, copied, vec![started(2, Vec::new())]);
    (folder, book)
}

#[test]
fn a_copied_run_keeps_both_times_and_each_run_its_own_looks() {
    let (_folder, book) = book();
    let shown = book.read(|view| view.shown_runs(at(0), at(100))).unwrap();
    let told: Vec<_> = shown
        .iter()
        .map(|shown| (shown.run.number, shown.written, shown.known, shown.looks.len()))
        .collect();
    let first = (1, Some(at(10)), Some(Known::Tapped), 1);
    assert_eq!(told, [first, (2, Some(at(80)), Some(Known::FromPaper), 0)]);
    let none = book.read(|view| view.shown_runs(at(21), at(100))).unwrap();
    assert!(none.is_empty(), "from the first moment on and before the last");
}

#[test]
fn a_stop_that_was_lifted_still_stands_in_the_record() {
    let (_folder, book) = book();
    let pouches = || vec![id(1)];
    let aside = Body::SetAside { pouches: pouches(), run: None, why: StopReason::NotSure };
    says(&book, stamp(6, 90), vec![aside]);
    let lifted = Body::StopLifted { pouches: pouches(), why: LiftReason::Mistake };
    says(&book, stamp(7, 91), vec![lifted]);
    let stops = book.read(|view| view.shown_stops(at(0), at(100))).unwrap();
    let kinds: Vec<bool> =
        stops.iter().map(|fact| matches!(fact.body, Body::SetAside { .. })).collect();
    assert_eq!(kinds, [true, false]);
    let said = Counter::RunCorrected { run: id(1), out: vec![id(2)], put: Vec::new() };
    says(&book, stamp(8, 92), vec![Body::Counter(Box::new(said))]);
    let shown = book.read(|view| view.shown_runs(at(0), at(100))).unwrap();
    assert_eq!(shown.iter().map(|run| run.corrected).collect::<Vec<_>>(), [true, false]);
}

#[test]
fn a_gap_is_shown_where_it_reaches_into_the_time() {
    let (_folder, book) = book();
    let gap = |from, to| {
        let said = Counter::GapExplained { from: at(from), to: at(to), why: GapWhy::Power };
        Body::Counter(Box::new(said))
    };
    says(&book, stamp(9, 95), vec![gap(0, 10), gap(30, 50), gap(60, 70)]);
    let jar = |said| Body::Upkeep(Box::new(said));
    let steps = vec![jar(Upkeep::JarMixed { jar: id(1) }), jar(Upkeep::JarIn { jar: id(1) })];
    says(&book, stamp(10, 40), steps);
    let shown = book.read(|view| view.shown_upkeep(at(40), at(60))).unwrap();
    assert_eq!(shown.gaps.len(), 1, "{:?}", shown.gaps);
    assert_eq!(shown.jars.len(), 1, "mixing counts for the record, putting in does not");
    let last = book.read(|view| view.last_done()).unwrap();
    assert_eq!((last.started, last.looked, last.mixed), (Some(at(20)), Some(at(60)), Some(at(40))));
}
