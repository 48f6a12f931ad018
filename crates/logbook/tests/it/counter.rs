//! Runs put right, what a failed spore test froze, and settings that are taken back.

use crate::common::{id, kind, new_book, stamp};
use load::SetState;
use logbook::fact::{
    AirRemoval, Body, Counter, Known, PackedPouch, Stamp, StationKind, StopReason, Units, Upkeep,
};
use logbook::{Book, BookError};
use measure::{PouchId, RunId};
use release::spores::Says;

fn says(book: &Book, act: u32, bodies: Vec<Body>) {
    let stamp = Stamp { known: Known::Tapped, ..stamp(act, i64::from(act)) };
    book.act(stamp, |_, draft| -> Result<(), BookError> {
        bodies.into_iter().for_each(|body| draft.fact(body));
        Ok(())
    })
    .unwrap();
}

fn counter(said: Counter) -> Vec<Body> {
    vec![Body::Counter(Box::new(said))]
}

fn upkeep(said: Upkeep) -> Vec<Body> {
    vec![Body::Upkeep(Box::new(said))]
}

fn packed(pouch: u32, code: &str) -> PackedPouch {
    PackedPouch {
        pouch: id(pouch),
        code: code.parse().unwrap(),
        kind: kind("manicure"),
        pouched: true,
        hollow: false,
    }
}

/// Three pouches packed, two of them in a run that is unloaded.
fn book() -> (tempfile::TempDir, Book) {
    let (folder, book) = new_book();
    let machine = Body::MachineAdded {
        machine: id(1),
        number: 1,
        air_removal: AirRemoval::Vacuum,
        writes_files: true,
        most_pouches: None,
    };
    says(&book, 1, vec![machine]);
    let pouches = vec![packed(1, "2A3A"), packed(2, "2A3C"), packed(3, "2A3D")];
    says(&book, 2, vec![Body::Packed { pouches }]);
    let started = Body::RunStarted {
        run: id(1),
        machine: id(1),
        number: 1,
        programme: None,
        contents: load::Contents::Pouched,
        pouches: vec![id(1), id(2)],
    };
    says(&book, 3, vec![started]);
    says(&book, 4, vec![Body::RunUnloaded { run: id(1) }]);
    (folder, book)
}

fn state(book: &Book, pouch: u32) -> (SetState, Option<RunId>) {
    let pouch: PouchId = id(pouch);
    let found = book.read(|view| view.pouch(pouch)).unwrap().unwrap();
    (found.state, found.run)
}

#[test]
fn a_run_is_put_right_and_what_was_released_stays_in_it() {
    let (_folder, book) = book();
    let put_right = |out: &[u32], put: &[u32]| {
        let ids = |list: &[u32]| list.iter().map(|number| id(*number)).collect();
        counter(Counter::RunCorrected { run: id(1), out: ids(out), put: ids(put) })
    };
    says(&book, 5, put_right(&[2], &[3]));
    assert_eq!(state(&book, 1), (SetState::ToCheck, Some(id(1))));
    assert_eq!(state(&book, 2), (SetState::Bagged, None));
    assert_eq!(state(&book, 3), (SetState::ToCheck, Some(id(1))));
    assert_eq!(book.read(|view| view.run(id(1))).unwrap().unwrap().pouches, 2);

    says(&book, 6, vec![Body::Released { run: id(1), pouches: vec![id(1)], use_until: None }]);
    says(&book, 7, put_right(&[1], &[]));
    assert_eq!(state(&book, 1), (SetState::Ready, Some(id(1))), "a recall still reaches it");
    let last = book.read(|view| view.log(None, 1)).unwrap();
    assert!(last[0].contradicted);
}

#[test]
fn what_a_test_froze_goes_back_and_nothing_else_does() {
    let (_folder, book) = book();
    says(
        &book,
        5,
        vec![Body::Released { run: id(1), pouches: vec![id(1), id(2)], use_until: None }],
    );
    let stop = |pouches: &[u32], why| {
        let pouches = pouches.iter().map(|number| id(*number)).collect();
        vec![Body::SetAside { pouches, run: None, why }]
    };
    says(&book, 6, stop(&[1, 2], StopReason::Recall));
    says(&book, 7, stop(&[2], StopReason::Torn));
    let unfrozen = Upkeep::Unfrozen { test: id(1), pouches: vec![id(1), id(2)] };
    says(&book, 8, upkeep(unfrozen));
    assert_eq!(state(&book, 1).0, SetState::Ready);
    assert_eq!(state(&book, 2).0, SetState::SetAside, "torn stays torn");
}

/// One reading in which spores grew stands; a test whose control is missing says nothing.
#[test]
fn the_safer_reading_of_a_spore_test_stands() {
    let (_folder, book) = book();
    let placed = |test, control| Upkeep::SporePlaced {
        test: id(test),
        machine: id(1),
        run: Some(id(1)),
        control,
        lot: None,
    };
    let read = |test, grew, control_grew| Upkeep::SporeRead { test: id(test), grew, control_grew };
    let mut act = 10;
    let mut check = |test, steps: Vec<Upkeep>, expected| {
        act += 1;
        says(&book, act, upkeep(placed(test, true)));
        for step in steps {
            act += 1;
            says(&book, act, upkeep(step));
        }
        let tests = book.read(|view| view.spore_tests(20)).unwrap();
        let found = tests.iter().find(|found| found.test == id(test)).unwrap();
        assert_eq!(found.says(), expected, "{found:?}");
    };
    check(1, vec![], Says::Waiting);
    check(2, vec![read(2, false, Some(true))], Says::Good);
    check(3, vec![read(3, false, None)], Says::Nothing);
    check(4, vec![read(4, false, Some(false))], Says::Nothing);
    check(5, vec![read(5, true, None), read(5, false, Some(true))], Says::Grew);
    check(6, vec![Upkeep::SporeLost { test: id(6) }], Says::Nothing);
    let of_machine = book.read(|view| view.spore_tests_of(id(1))).unwrap();
    assert_eq!(of_machine.len(), 6);
    assert_eq!(of_machine[0].test, id(1));
}

#[test]
fn of_a_setting_the_newest_holds_and_taking_it_back_gives_the_one_before() {
    let (_folder, book) = book();
    let speaks =
        |language: &str| Counter::PersonSpeaks { person: id(1), language: language.to_owned() };
    says(&book, 5, counter(speaks("vi")));
    says(&book, 6, counter(speaks("es")));
    let said = || book.read(|view| view.speaks(id(1))).unwrap();
    assert_eq!(said().as_deref(), Some("es"));
    says(&book, 7, vec![Body::Undone { act: id(6) }]);
    assert_eq!(said().as_deref(), Some("vi"));
    says(&book, 8, counter(Counter::RecordShows { language: "en".to_owned(), units: Units::Us }));
    assert_eq!(book.read(|view| view.record_shows()).unwrap(), Some(("en".to_owned(), Units::Us)));
    book.rebuild().unwrap();
    assert_eq!(said().as_deref(), Some("vi"));
}

#[test]
fn a_screen_is_let_in_let_go_and_let_in_again() {
    let (_folder, book) = book();
    let paired = |key| Counter::StationPaired {
        station: id(8),
        what: StationKind::Phone,
        key_hash: [key; 32],
        name: None,
    };
    let stations = || book.read(|view| view.stations()).unwrap();
    says(&book, 5, counter(paired(1)));
    assert_eq!(stations()[0].parted, None);
    says(&book, 6, counter(Counter::StationParted { station: id(8) }));
    assert!(stations()[0].parted.is_some());
    says(&book, 7, counter(paired(2)));
    let found = stations();
    assert_eq!((found.len(), found[0].key_hash, found[0].parted), (1, [2; 32], None));
}

/// What stands on the disk is read by every later program: written by hand from the description in
/// decision 0023.
#[test]
fn upkeep_has_the_fourth_form_and_the_counter_the_fifth() {
    let (folder, book) = book();
    let rule = logbook::fact::ChoreRule {
        chore: "door seal".parse().unwrap(),
        about: logbook::fact::About::Machine(id(1)),
        part: logbook::fact::DayPart::Opening,
        days: Some(1),
        runs: None,
        minutes: 2,
        stops_work: false,
        manual_page: Some(12),
    };
    says(&book, 5, upkeep(Upkeep::ChoreSet(rule)));
    let done = Upkeep::ChoreDone {
        chore: "foil test".parse().unwrap(),
        about: logbook::fact::About::Salon,
        found: logbook::fact::Found::NotFine,
        note: None,
    };
    says(&book, 6, upkeep(done));
    let paired = Counter::StationPaired {
        station: id(8),
        what: StationKind::Wall,
        key_hash: [7; 32],
        name: None,
    };
    says(&book, 7, counter(paired));
    drop(book);
    let conn = rusqlite::Connection::open(folder.path().join(logbook::book::FILE)).unwrap();
    let mut rows = conn
        .prepare("SELECT kind, version, body FROM facts WHERE version >= 4 ORDER BY seq")
        .unwrap();
    let rows: Vec<(String, i64, String)> = rows
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))
        .unwrap()
        .collect::<Result<_, _>>()
        .unwrap();
    let one = "00000000000000000000000000000001";
    let eight = "00000000000000000000000000000008";
    let key = "07".repeat(32);
    assert_eq!(
        rows,
        [
            (
                "chore_set".to_owned(),
                4,
                format!(
                    r#"{{"about":{{"machine":"{one}"}},"chore":"door seal","days":1,"manual_page":12,"minutes":2,"part":"opening","runs":null,"stops_work":false}}"#
                )
            ),
            (
                "chore_done".to_owned(),
                4,
                r#"{"about":"salon","chore":"foil test","found":"not fine","note":null}"#
                    .to_owned()
            ),
            (
                "station_paired".to_owned(),
                5,
                format!(r#"{{"key_hash":"{key}","name":null,"station":"{eight}","what":"wall"}}"#)
            ),
        ]
    );
}
