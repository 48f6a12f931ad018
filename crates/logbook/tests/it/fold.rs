//! The fold: folding all again gives the same tables, and the safer side wins.

use crate::bodies::{body, day};
use crate::common::{id, kind, new_book, packed, stamp, write};
use load::{Contents, SetState};
use logbook::fact::{AirRemoval, Body, LiftReason, Reads, Reference, StopReason, TemperatureUnit};
use logbook::{Book, BookError, View};
use measure::PouchId;
use proptest::prelude::*;
use rusqlite::Connection;
use rusqlite::types::Value;
use std::path::Path;

/// Every row of every cached table, in a fixed order.
fn tables(folder: &Path) -> Vec<(String, Vec<Vec<Value>>)> {
    let conn = Connection::open(folder.join("book.sqlite")).unwrap();
    let mut names = conn
        .prepare(
            "SELECT name FROM sqlite_master WHERE type = 'table' \
             AND name NOT IN ('facts', 'drawer', 'migration') ORDER BY name",
        )
        .unwrap();
    let names: Vec<String> =
        names.query_map([], |row| row.get(0)).unwrap().collect::<Result<_, _>>().unwrap();
    assert_eq!(names.len(), 27, "{names:?}");
    names
        .into_iter()
        .map(|name| {
            let mut select = conn.prepare(&format!("SELECT * FROM {name}")).unwrap();
            let width = select.column_count();
            let mut rows: Vec<Vec<Value>> = select
                .query_map([], |row| (0..width).map(|at| row.get(at)).collect())
                .unwrap()
                .collect::<Result<_, _>>()
                .unwrap();
            rows.sort_by_key(|row| format!("{row:?}"));
            (name, rows)
        })
        .collect()
}

fn write_all(book: &Book, acts: Vec<Vec<Body>>) {
    for (number, bodies) in (0..).zip(acts) {
        write(book, stamp(number, number.into()), bodies).unwrap();
    }
}

fn read<T>(book: &Book, ask: impl FnOnce(&View<'_>) -> Result<T, BookError>) -> T {
    book.read(ask).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn folding_again_gives_the_same_tables(acts in day()) {
        let (folder, book) = new_book();
        write_all(&book, acts);
        let kept = tables(folder.path());
        book.rebuild().unwrap();
        prop_assert_eq!(tables(folder.path()), kept);
    }

    /// Whatever is said, in whatever order: nothing is usable that was not released or that a
    /// stop stands against, and no visit of an opened pouch is lost to a recall.
    #[test]
    fn the_safer_side_wins(acts in day()) {
        let (_folder, book) = new_book();
        write_all(&book, acts);
        let log = read(&book, |view| view.log(None, 1_000));
        for number in 0..6 {
            let pouch: PouchId = id(number);
            let Some(row) = read(&book, |view| view.pouch(pouch)) else { continue };
            let stops = read(&book, |view| view.stops_of(pouch));
            prop_assert_eq!(row.stopped.is_some(), !stops.is_empty());
            if row.state.usable() {
                prop_assert!(row.released.is_some(), "{row:?}");
                prop_assert!(stops.is_empty(), "{row:?} {stops:?}");
                prop_assert!(row.opened.is_none() && row.ended.is_none(), "{row:?}");
            }
            if stops.iter().any(|why| why.is_final()) {
                prop_assert!(row.state.safety() >= SetState::SetAside.safety(), "{row:?}");
            }
            let visits = read(&book, |view| view.visits_of(&[pouch]));
            for line in &log {
                if let Body::Opened { pouch: opened, visit, .. } = &line.fact.body
                    && *opened == pouch && line.undone_by.is_none()
                {
                    prop_assert!(visits.iter().any(|kept| kept.visit == *visit));
                }
            }
        }
    }

    /// Each fact comes back as it was written.
    #[test]
    fn a_fact_comes_back_as_it_was(bodies in prop::collection::vec(body(9), 1..5)) {
        let (_folder, book) = new_book();
        let stamp = stamp(1, 0);
        let written = write(&book, stamp, bodies.clone()).unwrap();
        let facts = read(&book, |view| view.facts_of_act(stamp.act));
        prop_assert_eq!(written.last_seq - written.first_seq + 1, bodies.len() as u64);
        for (fact, body) in facts.iter().zip(&bodies) {
            prop_assert_eq!(&fact.body, body);
            prop_assert_eq!(fact.stamp, stamp);
        }
        prop_assert_eq!(facts.len(), bodies.len());
    }
}

/// A book with machine 1, pouches 1 to 3 in run 1, up to `steps` of: packed, started, unloaded,
/// released.
fn up_to(steps: usize) -> (tempfile::TempDir, Book) {
    let (folder, book) = new_book();
    let pouches: Vec<PouchId> = (1..4).map(id).collect();
    let machine = Body::MachineAdded {
        machine: id(1),
        number: 1,
        air_removal: AirRemoval::Gravity,
        writes_files: false,
        most_pouches: None,
    };
    let counted = Body::Counted { kind: kind("manicure"), used: 2, washed: 4 };
    write(&book, stamp(100, 0), vec![machine, counted]).unwrap();
    let acts = [
        Body::Packed { pouches: (1..4).map(packed).collect() },
        Body::RunStarted {
            run: id(1),
            machine: id(1),
            number: 1,
            programme: None,
            contents: Contents::Pouched,
            pouches: pouches.clone(),
        },
        Body::RunUnloaded { run: id(1) },
        Body::Released { run: id(1), pouches, use_until: None },
    ];
    for (number, body) in (1..).zip(acts).take(steps) {
        write(&book, stamp(number, number.into()), vec![body]).unwrap();
    }
    (folder, book)
}

fn set_aside(why: StopReason) -> Body {
    Body::SetAside { pouches: vec![id(1)], run: None, why }
}

fn lifted() -> Body {
    Body::StopLifted { pouches: vec![id(1)], why: LiftReason::Mistake }
}

fn released() -> Body {
    Body::Released { run: id(1), pouches: vec![id(1)], use_until: None }
}

fn opened(visit: u32) -> Body {
    Body::Opened { pouch: id(1), visit: id(visit), chair: None }
}

fn undone(act: u32) -> Body {
    Body::Undone { act: id(act) }
}

/// After `steps` of the round, these facts, each an act of its own from number 11 on: what
/// becomes of pouch 1, and is it marked?
fn check(steps: usize, facts: &[Body], state: SetState, contradicted: bool) {
    let (_folder, book) = up_to(steps);
    for (number, body) in (11..).zip(facts) {
        write(&book, stamp(number, number.into()), vec![body.clone()]).unwrap();
    }
    let pouch = read(&book, |view| view.pouch(id(1))).unwrap();
    assert_eq!((pouch.state, pouch.contradicted), (state, contradicted), "{facts:?}");
}

#[test]
fn two_people_at_once() {
    use SetState::{Bagged, InMachine, Opened, Ready, Retired, SetAside, ToCheck};
    use StopReason::{Mark, NotSure, Recall, ReleaseUndone};
    let apart = || Body::TakenApart { pouches: vec![id(1)] };
    // Released after it was set aside: stays aside; lifting needs a new release.
    check(3, &[set_aside(NotSure), released()], SetAside, true);
    check(3, &[set_aside(NotSure), released(), lifted()], ToCheck, true);
    check(3, &[set_aside(NotSure), lifted(), released()], Ready, false);
    // Lifting returns to where it was.
    check(1, &[set_aside(NotSure), lifted()], Bagged, false);
    check(2, &[set_aside(NotSure), lifted()], InMachine, false);
    check(4, &[set_aside(Recall), lifted()], Ready, false);
    check(4, &[set_aside(ReleaseUndone), lifted()], ToCheck, false);
    check(4, &[opened(5), set_aside(Recall), lifted()], Opened, false);
    // What failed is never lifted, even if another stop was there first.
    check(3, &[set_aside(Mark), lifted()], SetAside, true);
    check(3, &[set_aside(NotSure), set_aside(Mark), lifted()], SetAside, true);
    check(3, &[set_aside(Mark), set_aside(NotSure), lifted()], SetAside, true);
    // Set aside in the machine, then unloaded: stays aside.
    check(2, &[set_aside(NotSure), Body::RunUnloaded { run: id(1) }], SetAside, false);
    // Opened although it was set aside, or never released.
    check(4, &[set_aside(Recall), opened(5)], SetAside, true);
    check(3, &[opened(5)], Opened, true);
    check(4, &[opened(5), opened(6)], Opened, true);
    // Out of the round for good.
    check(4, &[apart(), opened(5)], Retired, true);
    check(4, &[apart(), set_aside(Recall)], Retired, false);
    check(3, &[apart(), released()], Retired, true);
}

#[test]
fn taken_back() {
    use SetState::{Bagged, InMachine, Opened, Ready, Retired, SetAside, ToCheck};
    let apart = || Body::TakenApart { pouches: vec![id(1)] };
    check(1, &[undone(1)], Retired, false);
    check(2, &[undone(2)], Bagged, false);
    check(3, &[undone(3)], InMachine, false);
    check(3, &[undone(3), undone(2)], Bagged, false);
    check(4, &[opened(5), undone(11)], Ready, false);
    check(3, &[apart(), undone(11)], ToCheck, false);
    // Twice, or the undoing itself: nothing more happens.
    check(4, &[opened(5), undone(11), undone(11)], Ready, false);
    check(4, &[opened(5), undone(11), undone(12)], Ready, false);
    // A release, a stop and a lifting are not taken back by an undoing alone.
    check(4, &[undone(4)], Ready, false);
    check(3, &[set_aside(StopReason::NotSure), undone(11)], SetAside, false);
    // The state has moved on: it stays, and is marked.
    check(2, &[undone(1)], InMachine, true);
    check(3, &[undone(2)], ToCheck, true);
    check(4, &[undone(3)], Ready, true);
    check(4, &[opened(5), set_aside(StopReason::Recall), undone(11)], SetAside, true);
    check(4, &[apart(), set_aside(StopReason::Recall), undone(11)], Retired, true);
    check(4, &[opened(5), opened(6), undone(11)], Opened, true);
}

#[test]
fn counts_go_round() {
    let washed = |count| Body::Washed { kind: kind("manicure"), count };
    let counted = |used, washed| Body::Counted { kind: kind("manicure"), used, washed };
    let check = |steps, facts: &[Body], used, washed| {
        let (_folder, book) = up_to(steps);
        for (number, body) in (11..).zip(facts) {
            write(&book, stamp(number, number.into()), vec![body.clone()]).unwrap();
        }
        let kinds = read(&book, |view| view.kinds());
        assert_eq!((kinds[0].used, kinds[0].washed), (used, washed), "{facts:?}");
    };
    check(0, &[], 2, 4);
    check(1, &[], 2, 1);
    check(1, &[undone(1)], 2, 4);
    check(0, &[washed(2)], 0, 6);
    // More were washed than the book thought were used: taken back exactly all the same.
    check(0, &[washed(5)], 0, 9);
    check(0, &[washed(5), undone(11)], 2, 4);
    // A count since then says what there is.
    check(0, &[washed(2), counted(1, 1), undone(11)], 1, 1);
    check(0, &[counted(1, 1), washed(1), undone(11)], 1, 5);
    check(4, &[opened(5)], 3, 1);
    check(4, &[opened(5), undone(11)], 2, 1);
    // Opened and later taken apart: one set, in the bin once.
    let apart = Body::TakenApart { pouches: vec![id(1)] };
    check(4, &[opened(5), apart.clone()], 3, 1);
    check(4, &[apart, opened(5)], 3, 1);
    // Packed more than the book thought were washed.
    let six = Body::Packed { pouches: (11..17).map(packed).collect() };
    check(0, std::slice::from_ref(&six), 2, 0);
    check(0, &[six, undone(11)], 2, 4);
}

#[test]
fn a_pouch_said_to_be_in_two_runs_is_reached_by_both() {
    let (_folder, book) = up_to(4);
    let second = Body::RunStarted {
        run: id(2),
        machine: id(1),
        number: 2,
        programme: None,
        contents: Contents::Pouched,
        pouches: vec![id(1)],
    };
    write(&book, stamp(11, 11), vec![second, opened(5)]).unwrap();
    let reached =
        read(&book, |view| view.recall_input(id(1), crate::common::at(0), crate::common::at(60)));
    let visits: Vec<usize> = reached.iter().map(|run| run.visits.len()).collect();
    assert_eq!(visits, [1, 1]);
    let pouch = read(&book, |view| view.pouch(id(1))).unwrap();
    assert!(pouch.contradicted);
    assert_eq!(pouch.run, Some(id(1)));
}

#[test]
fn what_was_said_last_of_a_machines_records_holds_whole() {
    let (_folder, book) = new_book();
    let said = |altitude_m, temperature_unit| Body::MachineReads {
        machine: id(1),
        altitude_m,
        temperature_unit,
        pressure_unit: None,
        pressure_reference: Some(Reference::Gauge),
        day_first: Some(false),
    };
    let added = Body::MachineAdded {
        machine: id(1),
        number: 1,
        air_removal: AirRemoval::Vacuum,
        writes_files: true,
        most_pouches: None,
    };
    write(&book, stamp(1, 1), vec![added]).unwrap();
    let first = write(&book, stamp(2, 2), vec![said(None, Some(TemperatureUnit::Kelvin))]).unwrap();
    write(&book, stamp(3, 3), vec![said(Some(-12), None)]).unwrap();
    let row = read(&book, |view| view.machine(id(1))).unwrap();
    let reads = Reads {
        altitude_m: Some(-12),
        pressure_reference: Some(Reference::Gauge),
        day_first: Some(false),
        ..Reads::default()
    };
    assert_eq!((row.reads, row.reads_since), (reads, Some(first.first_seq)));
    // No town lies so high (the bounds are those of `measure::bounds::ALTITUDE`).
    let high = write(&book, stamp(4, 4), vec![said(Some(5_501), None)]);
    assert!(matches!(high, Err(BookError::Unfit(_))), "{high:?}");
}

#[test]
fn a_start_that_was_undone_warmed_nothing_up() {
    let (_folder, book) = new_book();
    let numbers = [1, 2, 1, 2, 3];
    for (run, number) in (0..).zip(numbers) {
        let started = Body::RunStarted {
            run: id(run),
            machine: id(1),
            number,
            programme: None,
            contents: Contents::Pouched,
            pouches: vec![],
        };
        let taken = book.act::<BookError>(stamp(10 + run, 10 + i64::from(run)), |_, draft| {
            draft.fact(started);
            let kept = draft.put(logbook::DrawerKind::Record, &[run as u8])?;
            let record = logbook::drawer::record_hash(&[run as u8]);
            let (way, cycles) = (logbook::fact::Way::Page, 1);
            draft.fact(Body::RecordTaken { record, kept, bytes: 1, way, continues: None, cycles });
            draft.fact(Body::RecordClaimed { record, cycle: 0, run: id(run) });
            let outcome = release::verdict::Outcome::Lethal;
            let verdict = crate::story::verdict(Some(id(run)), record, outcome);
            draft.fact(Body::Judged(Box::new(verdict)));
            Ok(())
        });
        taken.unwrap();
    }
    write(&book, stamp(20, 20), vec![Body::Undone { act: id(12) }]).unwrap();
    let runs = read(&book, |view| view.judged_runs(id(1), 600));
    let seen: Vec<_> = runs.iter().map(|run| (run.number, run.first_of_day)).collect();
    assert_eq!(seen, [(1, true), (2, false), (2, true), (3, false)]);
}
