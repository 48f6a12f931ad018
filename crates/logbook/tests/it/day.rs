//! The day in the book: visits and what becomes of them, services, working times, hands.

use crate::common::{at, id, kind, new_book, packed, stamp, write};
use logbook::fact::{Body, Day, Keyed, KindFigures, Origin, PlannedRun, Service, Source};
use logbook::view::{Spread, View, VisitState};
use logbook::{Book, BookError};
use measure::Instant;

fn read<T>(book: &Book, ask: impl FnOnce(&View<'_>) -> Result<T, BookError>) -> T {
    book.read(ask).unwrap()
}

fn day(book: &Book, act: u32, minute: i64, days: Vec<Day>) {
    write(book, stamp(act, minute), days.into_iter().map(Body::Day).collect()).unwrap();
}

fn gel() -> Service {
    Service {
        service: id(70),
        word: "gel manicure".parse().unwrap(),
        minutes: 60,
        weight: 3,
        basin_min: 0,
        needs: vec![(kind("manicure"), 1), (kind("bits"), 2)],
    }
}

fn booked(visit: u32, minute: i64) -> Day {
    Day::VisitBooked {
        visit: id(visit),
        start: at(minute),
        end: at(minute + 60),
        chair: Some(2),
        service: Some(id(70)),
        origin: None,
    }
}

/// After these facts, each an act of its own from number 11 on: when does visit 1 begin, and what
/// has become of it?
fn check(facts: &[Body], expected: Option<(i64, VisitState)>, contradictions: usize) {
    let (_folder, book) = new_book();
    let mut contradicted = 0;
    for (number, body) in (11..).zip(facts) {
        write(&book, stamp(number, number.into()), vec![body.clone()]).unwrap();
    }
    for line in read(&book, |view| view.log(None, 100)) {
        contradicted += usize::from(line.contradicted);
    }
    let visit = read(&book, |view| view.visit(id(1)));
    let found = visit.map(|visit| ((visit.start() - at(0)).millis() / 60_000, visit.state));
    assert_eq!((found, contradicted), (expected, contradictions), "{facts:?}");
}

#[test]
fn what_becomes_of_a_visit() {
    use VisitState::{Booked, Cancelled, Missed};
    let visit = id(1);
    let book = || Body::Day(booked(1, 100));
    let late = |minutes| Body::Day(Day::VisitLate { visit, minutes });
    let missed = || Body::Day(Day::VisitMissed { visit });
    let off = || Body::Day(Day::VisitCancelled { visit });
    let (start, end) = (at(200), at(230));
    let moved = || Body::Day(Day::VisitMoved { visit, start, end, chair: None, sequence: 1 });
    let undone = |act| Body::Undone { act: id(act) };
    check(&[book()], Some((100, Booked)), 0);
    check(&[book(), late(15), late(15)], Some((130, Booked)), 0);
    check(&[book(), missed()], Some((100, Missed)), 0);
    check(&[book(), off()], Some((100, Cancelled)), 0);
    check(&[book(), late(15), moved()], Some((200, Booked)), 0);
    check(&[book(), off(), moved()], Some((200, Booked)), 0);
    // What does not fit is kept, marked, and changes nothing.
    check(&[late(15)], None, 1);
    check(&[book(), book()], Some((100, Booked)), 1);
    check(&[book(), missed(), late(15)], Some((100, Missed)), 1);
    check(&[book(), off(), missed()], Some((100, Cancelled)), 1);
    check(&[book(), late(1_440), late(1)], Some((100 + 1_440, Booked)), 1);
    // Taken back, the last thing said first.
    check(&[book(), undone(11)], None, 0);
    check(&[book(), late(15), undone(12)], Some((100, Booked)), 0);
    check(&[book(), moved(), late(15), undone(13), undone(12)], Some((100, Booked)), 0);
    check(&[book(), late(15), undone(11)], Some((115, Booked)), 1);
    check(&[book(), late(15), moved(), undone(12)], Some((200, Booked)), 1);
    check(&[book(), undone(11), late(15)], None, 1);
}

#[test]
fn an_appointment_says_what_it_needs() {
    let (_folder, book) = new_book();
    let unknown = Day::VisitBooked {
        visit: id(3),
        start: at(150),
        end: at(180),
        chair: None,
        service: None,
        origin: None,
    };
    day(&book, 11, 0, vec![Day::ServiceSet(gel()), booked(1, 100), booked(2, 120), unknown]);
    day(&book, 12, 1, vec![Day::VisitMissed { visit: id(2) }]);
    day(&book, 13, 2, vec![Day::VisitLate { visit: id(1), minutes: 15 }]);
    let found = read(&book, |view| view.appointments(at(0), at(600)));
    let shown: Vec<_> = found.iter().map(|a| (a.visit, a.start, a.needs.clone())).collect();
    let needs = vec![(kind("manicure"), 1), (kind("bits"), 2)];
    assert_eq!(shown, [(id(1), at(115), needs.clone()), (id(3), at(150), vec![])]);
    assert_eq!((found[0].weight, found[0].chair, found[1].weight), (3, Some(2), 1));
    // A visit that lies partly inside counts; one that only touches does not.
    let inside = |from, to| read(&book, |view| view.appointments(at(from), at(to))).len();
    assert_eq!([inside(174, 180), inside(175, 180), inside(0, 115), inside(0, 116)], [2, 1, 0, 1]);
    // A service that is no longer offered still says what its visits need.
    day(&book, 14, 3, vec![Day::ServiceEnded { service: id(70) }]);
    assert_eq!(read(&book, |view| view.services()), []);
    assert_eq!(read(&book, |view| view.appointments(at(0), at(120)))[0].needs, needs);
}

#[test]
fn an_entry_of_a_calendar_is_found_again() {
    let (_folder, book) = new_book();
    let key = |byte| Keyed::from_bytes([byte; 32]);
    let from = |visit: u32, entry, minute| Day::VisitBooked {
        visit: id(visit),
        start: at(minute),
        end: at(minute + 30),
        chair: None,
        service: None,
        origin: Some(Origin {
            source: Source::Calendar,
            entry: key(entry),
            series: key(9),
            calendar: key(8),
            sequence: 2,
        }),
    };
    day(&book, 11, 0, vec![from(1, 1, 100), from(2, 2, 200), booked(3, 100)]);
    let found = read(&book, |view| view.visit_by_entry(&key(2))).unwrap();
    assert_eq!((found.visit, found.sequence, found.source), (id(2), 2, Some(Source::Calendar)));
    assert_eq!(read(&book, |view| view.visit_by_entry(&key(3))), None);
    let entries = |found: Vec<(Keyed, _)>| found.into_iter().map(|(e, _)| e).collect::<Vec<_>>();
    assert_eq!(entries(read(&book, |view| view.visits_of_series(&key(9), at(101)))), [key(2)]);
    let calendar = read(&book, |view| view.visits_of_calendar(&key(8), at(100), at(200)));
    assert_eq!(entries(calendar), [key(1)]);
}

#[test]
fn what_was_said_last_of_the_day_holds() {
    let (_folder, book) = new_book();
    let typical = read(&book, |view| view.kind_figures(&kind("manicure")));
    assert_eq!(typical.said, None);
    let own = KindFigures { hand_min: 7, ..typical.value.clone() };
    day(&book, 11, 0, vec![Day::KindFigures(typical.value), Day::KindFigures(own.clone())]);
    let now = read(&book, |view| view.kind_figures(&kind("manicure")));
    assert_eq!((now.value, now.said), (own, Some(3)));
    let run = |minute| PlannedRun {
        machine: id(5),
        programme: "long".parse().unwrap(),
        start: at(minute),
        warm: true,
        load: vec![(kind("manicure"), 4)],
    };
    assert_eq!(read(&book, |view| view.accepted_plan()), None);
    for minute in [10, 20] {
        let plan = Day::PlanAccepted { from: at(0), to: at(600), runs: vec![run(minute)] };
        day(&book, 12 + minute as u32, minute, vec![plan]);
    }
    let plan = read(&book, |view| view.accepted_plan()).unwrap();
    assert_eq!((plan.runs, plan.at, plan.by), (vec![run(20)], at(20), Some(id(1))));
    // The typical machine has its programmes, each with a length.
    let machine = read(&book, |view| view.machine_figures(id(5)));
    let words: Vec<_> = machine.value.cycles.iter().map(|c| c.programme.to_string()).collect();
    assert_eq!(words, ["fast", "middle", "long"]);
}

#[test]
fn working_times_and_closed_days() {
    let (_folder, book) = new_book();
    let shift = |number, from, to, lunch| Day::ShiftSet {
        shift: id(number),
        person: id(1),
        from: at(from),
        to: at(to),
        lunch,
    };
    let lunch = Some((at(240), at(270)));
    day(&book, 11, 0, vec![shift(1, 0, 480, lunch), shift(2, 100, 200, None)]);
    day(&book, 12, 1, vec![shift(2, 300, 400, None)]);
    let found = read(&book, |view| view.shifts(at(100), at(200)));
    assert_eq!(found.len(), 1);
    assert_eq!((found[0].from, found[0].lunch), (at(0), lunch));
    day(&book, 13, 2, vec![Day::ShiftEnded { shift: id(1) }]);
    assert_eq!(read(&book, |view| view.shifts(at(0), at(600))).len(), 1);
    let closed = |closed| Day::ClosedSet { from: at(0), to: at(600), closed };
    day(&book, 14, 3, vec![closed(true)]);
    assert_eq!(read(&book, |view| view.closed(at(599), at(700))), [(at(0), at(600))]);
    day(&book, 15, 4, vec![closed(false)]);
    assert_eq!(read(&book, |view| view.closed(at(0), at(700))), []);
    // A lunch outside its shift is a slip of the finger.
    let odd = Body::Day(shift(3, 0, 60, Some((at(50), at(70)))));
    assert!(matches!(write(&book, stamp(16, 5), vec![odd]), Err(BookError::Unfit(_))));
}

#[test]
fn hands_are_learnt_from_the_taps() {
    let (_folder, book) = new_book();
    let washed = |word: &str, count| Body::Washed { kind: kind(word), count };
    let times = |book: &Book| read(book, |view| view.hand_times());
    write(&book, stamp(10, 0), vec![Body::MachineOut { machine: id(1) }]).unwrap();
    // Twelve minutes for six sets of two kinds, in one tap.
    write(&book, stamp(11, 12), vec![washed("manicure", 4), washed("pedicure", 2)]).unwrap();
    // Two minutes for two pouches, then an hour's break: that is no packing.
    let two = |first| Body::Packed { pouches: vec![packed(first), packed(first + 1)] };
    write(&book, stamp(12, 14), vec![two(1)]).unwrap();
    write(&book, stamp(13, 74), vec![two(3)]).unwrap();
    let one =
        |seconds| Some(Spread { count: 1, lower_s: seconds, median_s: seconds, upper_s: seconds });
    assert_eq!((times(&book).wash, times(&book).pack), (one(120), one(60)));
    // Written an hour later, a time is remembered, not measured; taken back, it was no work.
    let mut late = stamp(14, 80);
    late.written = Instant::from_millis(late.happened.millis() + 3_600_000);
    write(&book, late, vec![washed("manicure", 1)]).unwrap();
    assert_eq!(times(&book).wash, one(120));
    write(&book, stamp(15, 90), vec![Body::Undone { act: id(11) }]).unwrap();
    assert_eq!(times(&book).wash, None);
}

#[test]
fn the_key_lies_in_the_drawer_and_can_be_forgotten() {
    let (folder, book) = new_book();
    assert!(read(&book, |view| view.book_key()).is_none());
    let mut made = None;
    book.act::<BookError>(stamp(11, 0), |_, draft| {
        made = Some(draft.new_key()?.digest("phrase", &["gel"]));
        Ok(())
    })
    .unwrap();
    let key = read(&book, |view| view.book_key()).unwrap();
    assert_eq!(Some(key.digest("phrase", &["gel"])), made);
    assert_ne!(key.digest("phrase", &["ge", "l"]), key.digest("phrase", &["g", "el"]));
    assert_ne!(key.digest("entry", &["gel"]), key.digest("phrase", &["gel"]));
    let Some(Body::Day(Day::KeyMade { key })) =
        read(&book, |view| view.fact(2)).map(|fact| fact.body)
    else {
        panic!("no key was made");
    };
    assert!(book.forget(key.entry).unwrap());
    assert!(read(&book, |view| view.book_key()).is_none());
    assert!(logbook::verify(folder.path()).unwrap().ok);
}

/// The stored text is what 0012 and 0003 describe: kinds of the loop stay in the first form.
#[test]
fn the_day_has_the_second_form_and_the_loop_the_first() {
    let (folder, book) = new_book();
    let washed = Body::Washed { kind: kind("manicure"), count: 4 };
    let late = Body::Day(Day::VisitLate { visit: id(1), minutes: 15 });
    write(&book, stamp(11, 0), vec![washed, late]).unwrap();
    let conn = rusqlite::Connection::open(folder.path().join(logbook::book::FILE)).unwrap();
    let line = |seq: i64| -> (String, i64, String) {
        let ask = "SELECT kind, version, body FROM facts WHERE seq = ?";
        conn.query_row(ask, [seq], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).unwrap()
    };
    let first = r#"{"count":4,"kind":"manicure"}"#;
    let second = r#"{"minutes":15,"visit":"00000000000000000000000000000001"}"#;
    assert_eq!(line(2), ("washed".to_owned(), 1, first.to_owned()));
    assert_eq!(line(3), ("visit_late".to_owned(), 2, second.to_owned()));
}

/// A book as the program before this one left it: without the tables of the second step.
#[test]
fn a_book_of_the_first_step_is_brought_on_and_folded_again() {
    let (folder, book) = new_book();
    crate::story::story(&book);
    let facts = read(&book, |view| view.last_seq());
    let pouches = read(&book, |view| view.pouches_in(&load::SetState::ALL));
    drop(book);
    let conn = rusqlite::Connection::open(folder.path().join(logbook::book::FILE)).unwrap();
    conn.execute_batch(
        "DROP TABLE setting; DROP TABLE phrase; DROP TABLE visit; DROP TABLE visit_step; \
         DROP TABLE shift; DROP TABLE closed; DROP TABLE tap; DROP TABLE hand_time; \
         DROP TABLE event; DELETE FROM migration WHERE number >= 2; UPDATE fold_state SET fold_version = 1;",
    )
    .unwrap();
    drop(conn);
    let again = Book::open(folder.path()).unwrap();
    assert_eq!(again.folded_again(), Some(facts));
    assert_eq!(read(&again, |view| view.pouches_in(&load::SetState::ALL)), pouches);
    assert!(logbook::verify(folder.path()).unwrap().ok);
}
