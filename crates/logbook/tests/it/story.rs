//! The whole loop once, as one story: written against the book's face only, so that every kind of
//! storage can be walked through it.

use crate::common::{at, id, kind, new_book, packed, stamp, write};
use load::{Contents, SetState};
use logbook::fact::{
    AirRemoval, Basis, Body, DryingRan, Judged, KeyFigures, LiftReason, Reason, StopReason, Way,
};
use logbook::{Book, BookError, DrawerKind};
use measure::{PouchId, RecordHash, RunId};
use release::verdict::Outcome;

const RUN: u32 = 300;
const MACHINE: u32 = 200;

#[test]
fn the_whole_loop_in_a_file() {
    let (folder, book) = new_book();
    story(&book);
    let verified = logbook::verify(folder.path()).unwrap();
    assert_eq!(verified.first_bad, None);
    let again = Book::open(folder.path()).unwrap();
    assert_eq!(again.folded_again(), None, "nothing to fold again");
    assert_eq!(
        book.read::<_, BookError>(|view| view.pouches_in(&SetState::ALL)).unwrap(),
        again.read::<_, BookError>(|view| view.pouches_in(&SetState::ALL)).unwrap(),
    );
}

/// A day: set up, wash, pack, run, record, verdict, look, release, open, stop, lift, undo.
pub fn story(book: &Book) {
    set_up(book);
    wash_and_pack(book);
    run(book);
    record_and_verdict(book);
    release_all_but_one(book);
    open_and_recall(book);
    take_back(book);
}

fn set_up(book: &Book) {
    book.act::<BookError>(stamp(1, 0), |_, draft| {
        let sign = draft.put(DrawerKind::Sign, "Mỹ".as_bytes())?;
        draft.fact(Body::PersonJoined { person: id(1), sign });
        draft.fact(Body::MachineAdded {
            machine: id(MACHINE),
            number: 1,
            air_removal: AirRemoval::Vacuum,
            writes_files: true,
            most_pouches: Some(6),
        });
        draft.fact(Body::SetsOwned { kind: kind("manicure"), count: 9 });
        draft.fact(Body::Counted { kind: kind("manicure"), used: 5, washed: 0 });
        Ok(())
    })
    .unwrap();
    book.read::<_, BookError>(|view| {
        let people = view.people()?;
        assert_eq!(people.len(), 1);
        assert_eq!(people[0].sign.as_deref(), Some("Mỹ"));
        assert_eq!(view.salon()?.zone, "America/Chicago");
        assert_eq!(view.machine(id(MACHINE))?.unwrap().running, None);
        Ok(())
    })
    .unwrap();
}

fn counts(book: &Book) -> (Option<u32>, u32, u32) {
    let kinds = book.read::<_, BookError>(|view| view.kinds()).unwrap();
    let count = kinds.iter().find(|count| count.kind == kind("manicure"));
    count.map(|count| (count.owned, count.used, count.washed)).unwrap()
}

fn state(book: &Book, pouch: u32) -> SetState {
    book.read::<_, BookError>(|view| view.pouch(id(pouch))).unwrap().unwrap().state
}

fn wash_and_pack(book: &Book) {
    let washed = Body::Washed { kind: kind("manicure"), count: 4 };
    write(book, stamp(2, 10), vec![washed]).unwrap();
    assert_eq!(counts(book), (Some(9), 1, 4));
    let codes = book.read::<_, BookError>(|view| view.free_codes(3)).unwrap();
    let pouches = (100..103)
        .zip(&codes)
        .map(|(number, code)| {
            let mut pouch = packed(number);
            pouch.code = *code;
            pouch
        })
        .collect();
    write(book, stamp(3, 20), vec![Body::Packed { pouches }]).unwrap();
    assert_eq!(counts(book), (Some(9), 1, 1));
    book.read::<_, BookError>(|view| {
        let shelf = view.pouches_in(&[SetState::Bagged])?;
        assert_eq!(shelf.len(), 3);
        assert_eq!(view.pouch_by_code(codes[1])?.unwrap().pouch, id(101));
        let next = view.free_codes(3)?;
        assert!(next.iter().all(|code| !codes.contains(code)));
        Ok(())
    })
    .unwrap();
}

fn run(book: &Book) {
    let number = book
        .read::<_, BookError>(|view| view.next_run_number(id(MACHINE), (at(-60), at(86_400))))
        .unwrap();
    assert_eq!(number, 1);
    let started = Body::RunStarted {
        run: id(RUN),
        machine: id(MACHINE),
        number,
        programme: Some("134 pouched".to_owned()),
        contents: Contents::Pouched,
        pouches: vec![id(100), id(101), id(102)],
    };
    write(book, stamp(4, 30), vec![started]).unwrap();
    book.read::<_, BookError>(|view| {
        assert_eq!(view.machine(id(MACHINE))?.unwrap().running, Some(id(RUN)));
        assert_eq!(view.runs_open()?.len(), 1);
        assert_eq!(view.pouches_of_run(id(RUN))?.len(), 3);
        Ok(())
    })
    .unwrap();
    assert_eq!(state(book, 100), SetState::InMachine);
    write(book, stamp(5, 70), vec![Body::RunUnloaded { run: id(RUN) }]).unwrap();
    assert_eq!(state(book, 100), SetState::ToCheck);
    book.read::<_, BookError>(|view| {
        assert_eq!(view.machine(id(MACHINE))?.unwrap().running, None);
        assert_eq!(view.runs_open()?.len(), 1, "it stays to check");
        assert_eq!(view.next_run_number(id(MACHINE), (at(-60), at(86_400)))?, 2);
        Ok(())
    })
    .unwrap();
}

/// A verdict on cycle 0 of the record.
pub fn verdict(run: Option<RunId>, record: RecordHash, outcome: Outcome) -> Judged {
    Judged {
        run,
        basis: Basis::Record { record, cycle: 0 },
        judge: "1".to_owned(),
        limits: vec![("band_k".to_owned(), 3_000)],
        contents: Contents::Pouched,
        outcome,
        proven_for: vec![Contents::Unwrapped, Contents::Pouched],
        conforming: Some(true),
        drying: DryingRan::AsSet,
        reasons: vec![Reason {
            code: cycle::finding::Code::HoldMet,
            at_ms: Some((373_000, 637_000)),
            lines: Some((210, 342)),
        }],
        figures: KeyFigures {
            set_mc: Some(134_000),
            held_ms: Some(264_000),
            ..KeyFigures::default()
        },
        start_clock: Some("2025-06-02T08:31:12".to_owned()),
    }
}

fn record_and_verdict(book: &Book) {
    let bytes = b"abc";
    // The digest of these three letters stands in FIPS 180-2, B.1.
    let hash: RecordHash =
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad".parse().unwrap();
    book.act::<BookError>(stamp(6, 71), |_, draft| {
        let kept = draft.put(DrawerKind::Record, bytes)?;
        draft.fact(Body::RecordTaken {
            record: hash,
            kept,
            bytes: bytes.len() as u64,
            way: Way::Page,
            continues: None,
            cycles: 1,
        });
        Ok(())
    })
    .unwrap();
    book.read::<_, BookError>(|view| {
        let waiting = view.taken_unclaimed()?;
        assert_eq!(waiting.len(), 1);
        assert_eq!(view.drawer(waiting[0].kept.entry)?.as_deref(), Some(&bytes[..]));
        assert!(view.record_by_hash(hash)?.is_some());
        assert_eq!(view.records_shorter_than(1_000)?.len(), 1);
        assert_eq!(view.records_shorter_than(bytes.len() as u64)?.len(), 0);
        Ok(())
    })
    .unwrap();
    let claimed = vec![
        Body::RecordClaimed { record: hash, cycle: 0, run: id(RUN) },
        Body::Judged(Box::new(verdict(Some(id(RUN)), hash, Outcome::Lethal))),
    ];
    write(book, stamp(7, 72), claimed).unwrap();
    book.read::<_, BookError>(|view| {
        let run = view.run(id(RUN))?.unwrap();
        assert_eq!(run.record, Some((hash, 0)));
        assert_eq!(run.outcome, Some(Outcome::Lethal));
        let judged = view.judged(run.judged.unwrap())?.unwrap();
        assert_eq!(judged.judged, verdict(Some(id(RUN)), hash, Outcome::Lethal));
        assert_eq!(view.judged_of_run(id(RUN))?, vec![judged]);
        assert_eq!(view.taken_of_run(id(RUN))?[0].run, Some(id(RUN)));
        assert_eq!(view.taken_unclaimed()?.len(), 0);
        Ok(())
    })
    .unwrap();
}

fn release_all_but_one(book: &Book) {
    let looked = Body::Looked {
        run: id(RUN),
        marks_looked: true,
        inner_mark: None,
        dry_looked: true,
        marks_not_turned: vec![],
        wet: vec![],
        torn: vec![id(102)],
        dropped: vec![],
    };
    let facts = vec![
        looked.clone(),
        Body::SetAside { pouches: vec![id(102)], run: None, why: StopReason::Torn },
        Body::Released { run: id(RUN), pouches: vec![id(100), id(101)], use_until: None },
    ];
    write(book, stamp(8, 75), facts).unwrap();
    assert_eq!(state(book, 100), SetState::Ready);
    assert_eq!(state(book, 102), SetState::SetAside);
    book.read::<_, BookError>(|view| {
        assert_eq!(view.looks_of_run(id(RUN))?, vec![looked.clone()]);
        assert_eq!(view.runs_open()?.len(), 0);
        assert_eq!(view.last_runs(id(MACHINE), Some("134 pouched"), 5)?.len(), 1);
        assert_eq!(view.last_runs(id(MACHINE), Some("121"), 5)?.len(), 0);
        assert_eq!(view.last_runs(id(MACHINE), None, 5)?.len(), 1);
        Ok(())
    })
    .unwrap();
    // A torn pouch has no way back; lifting it is kept, marked, and without effect.
    let lifted = Body::StopLifted { pouches: vec![id(102)], why: LiftReason::Mistake };
    write(book, stamp(9, 76), vec![lifted]).unwrap();
    assert_eq!(state(book, 102), SetState::SetAside);
    let apart = Body::TakenApart { pouches: vec![id(102)] };
    write(book, stamp(10, 77), vec![apart]).unwrap();
    assert_eq!(state(book, 102), SetState::Retired);
    assert_eq!(counts(book), (Some(9), 2, 1));
}

fn open_and_recall(book: &Book) {
    let opened = Body::Opened { pouch: id(100), visit: id(500), chair: Some(3) };
    write(book, stamp(11, 90), vec![opened]).unwrap();
    assert_eq!(state(book, 100), SetState::Opened);
    assert_eq!(counts(book), (Some(9), 3, 1));
    let stop = Body::SetAside {
        pouches: vec![id(100), id(101)],
        run: Some(id(RUN)),
        why: StopReason::Recall,
    };
    write(book, stamp(12, 95), vec![stop]).unwrap();
    book.read::<_, BookError>(|view| {
        let reached = view.recall_input(id(MACHINE), at(0), at(100))?;
        assert_eq!(reached.len(), 1);
        assert_eq!(reached[0].pouches.len(), 3);
        assert_eq!(reached[0].visits.len(), 1);
        assert_eq!(reached[0].visits[0].visit, id(500));
        assert!(reached[0].run.stopped.is_some());
        assert_eq!(view.visits_of(&[id(101), id(100)])?.len(), 1);
        assert_eq!(view.stops_of(id(101))?, vec![StopReason::Recall]);
        Ok(())
    })
    .unwrap();
    assert_eq!(state(book, 100), SetState::SetAside, "stopped, the visit kept");
    let lifted = Body::StopLifted { pouches: vec![id(100), id(101)], why: LiftReason::Mistake };
    write(book, stamp(13, 96), vec![lifted]).unwrap();
    assert_eq!(state(book, 100), SetState::Opened);
    assert_eq!(state(book, 101), SetState::Ready);
    let run = book.read::<_, BookError>(|view| view.run(id(RUN))).unwrap();
    assert_eq!(run.unwrap().stopped, None);
}

fn take_back(book: &Book) {
    let opened = Body::Opened { pouch: id(101), visit: id(501), chair: None };
    write(book, stamp(14, 100), vec![opened]).unwrap();
    let last = book.read::<_, BookError>(|view| view.last_act_facts(id(77))).unwrap();
    assert_eq!(last[0].stamp.act, id(14));
    write(book, stamp(15, 101), vec![Body::Undone { act: id(14) }]).unwrap();
    assert_eq!(state(book, 101), SetState::Ready);
    assert_eq!(counts(book), (Some(9), 3, 1));
    book.read::<_, BookError>(|view| {
        assert_eq!(view.act_undone(id(14))?, Some(id(15)));
        let lines = view.log(None, 2)?;
        assert_eq!(lines[0].undone_by, None);
        assert_eq!(lines[1].undone_by, Some(id(15)));
        let pouch: PouchId = id(101);
        assert_eq!(view.visits_of(&[pouch])?, vec![]);
        Ok(())
    })
    .unwrap();
}
