//! Acts: written once, whole, in order, and on the disk when they are said to be.

use crate::common::{at, begin, id, kind, new_book, opening, packed, stamp, write};
use load::SetState;
use logbook::fact::Body;
use logbook::{Book, BookError, DrawerKind, verify};
use measure::ActId;
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};

fn washed(count: u32) -> Body {
    Body::Washed { kind: kind("manicure"), count }
}

fn last_seq(book: &Book) -> u64 {
    book.read::<_, BookError>(|view| view.last_seq()).unwrap()
}

#[test]
fn a_folder_takes_one_book() {
    let folder = tempfile::tempdir().unwrap();
    let inside = folder.path().join("salon").join("book");
    assert!(!Book::exists(&inside));
    assert!(matches!(Book::open(&inside), Err(BookError::Missing(_))));
    drop(begin(&inside));
    assert!(Book::exists(&inside));
    let before = std::fs::read(inside.join(logbook::book::FILE)).unwrap();
    let second = Book::create(&inside, opening());
    assert!(matches!(second, Err(BookError::Exists(_))));
    let after = std::fs::read(inside.join(logbook::book::FILE)).unwrap();
    assert!(before == after, "left as it was");
    let half_made = std::fs::read_dir(&inside)
        .unwrap()
        .map(|file| file.unwrap().file_name().into_string().unwrap())
        .filter(|name| name.ends_with(".part"))
        .count();
    assert_eq!(half_made, 0);
}

#[test]
fn an_act_that_comes_twice_is_written_once() {
    let (_folder, book) = new_book();
    let first = write(&book, stamp(1, 0), vec![washed(1), washed(2)]).unwrap();
    assert_eq!((first.first_seq, first.last_seq, first.already), (2, 3, false));
    // From another station clock, with other facts: the id alone says that it is the same.
    let again = book.act::<BookError>(stamp(1, 5), |_, _| panic!("not asked again")).unwrap();
    assert_eq!((again.first_seq, again.last_seq, again.already), (2, 3, true));
    assert_eq!(last_seq(&book), 3);
}

#[test]
fn an_act_that_is_refused_writes_nothing() {
    let (folder, book) = new_book();
    let refused = book.act::<BookError>(stamp(1, 0), |view, draft| {
        draft.put(DrawerKind::Note, b"a note")?;
        draft.fact(washed(1));
        assert_eq!(view.last_seq()?, 1);
        Err(BookError::Unfit("no".to_owned()))
    });
    assert!(matches!(refused, Err(BookError::Unfit(_))));
    let empty = book
        .act::<BookError>(stamp(2, 0), |_, draft| draft.put(DrawerKind::Note, b"x").map(drop))
        .unwrap();
    assert_eq!((empty.first_seq, empty.last_seq, empty.already), (2, 1, false));
    assert_eq!(last_seq(&book), 1);
    drop(book);
    let conn = rusqlite::Connection::open(folder.path().join(logbook::book::FILE)).unwrap();
    let entries: i64 = conn.query_row("SELECT COUNT(*) FROM drawer", [], |row| row.get(0)).unwrap();
    assert_eq!(entries, 0);
}

#[test]
fn what_does_not_fit_into_a_fact_is_refused() {
    let (_folder, book) = new_book();
    let zone = |zone: &str| Body::ZoneSet { zone: zone.to_owned() };
    for bad in [zone(""), zone(&"x".repeat(81)), zone("a\nb")] {
        let refused = write(&book, stamp(1, 0), vec![washed(1), bad]);
        assert!(matches!(refused, Err(BookError::Unfit(_))));
    }
    let wrong_hash = book.act::<BookError>(stamp(2, 0), |_, draft| {
        let kept = draft.put(DrawerKind::Record, b"abc")?;
        draft.fact(Body::RecordTaken {
            record: logbook::drawer::record_hash(b"abd"),
            kept,
            bytes: 3,
            way: logbook::fact::Way::Page,
            continues: None,
            cycles: 1,
        });
        Ok(())
    });
    assert!(wrong_hash.unwrap_err().to_string().contains("BUG:"));
    assert_eq!(last_seq(&book), 1);
}

#[test]
fn a_reader_sees_one_moment() {
    let (folder, book) = new_book();
    let other = Book::open(folder.path()).unwrap();
    book.read::<_, BookError>(|view| {
        assert_eq!(view.last_seq()?, 1);
        write(&other, stamp(1, 0), vec![washed(1)])?;
        assert_eq!(view.last_seq()?, 1, "what others write meanwhile is not seen");
        assert_eq!(view.kinds()?, vec![]);
        Ok(())
    })
    .unwrap();
    assert_eq!(last_seq(&book), 2);
}

#[test]
fn an_act_sees_what_was_written_before_it() {
    let (folder, book) = new_book();
    let other = Book::open(folder.path()).unwrap();
    write(&other, stamp(1, 0), vec![Body::Packed { pouches: vec![packed(1)] }]).unwrap();
    book.act::<BookError>(stamp(2, 1), |view, draft| {
        let bagged = view.pouches_in(&[SetState::Bagged])?;
        assert_eq!(bagged.len(), 1);
        draft.fact(Body::TakenApart { pouches: vec![bagged[0].pouch] });
        Ok(())
    })
    .unwrap();
    let other_sees = other.read::<_, BookError>(|view| view.pouch(id(1))).unwrap();
    assert_eq!(other_sees.unwrap().ended, Some(at(1)));
}

#[test]
fn codes_go_round_without_naming_two_pouches() {
    let (_folder, book) = new_book();
    let mut seen = std::collections::HashSet::new();
    for act in 0..40 {
        book.act::<BookError>(stamp(act, 0), |view, draft| {
            let codes = view.free_codes(3)?;
            assert_eq!(codes, view.free_codes(3)?, "the same book, the same codes");
            let pouches = (0..3).zip(codes).map(|(at, code)| {
                assert!(seen.insert(code), "{code} twice");
                let mut pouch = packed(act * 3 + at);
                pouch.code = code;
                pouch
            });
            draft.fact(Body::Packed { pouches: pouches.collect() });
            Ok(())
        })
        .unwrap();
    }
    let all = book.read::<_, BookError>(|view| view.free_codes(40_000)).unwrap();
    assert_eq!(all.len(), 36_864 - 120, "every code that is not about");
    assert!(all.iter().all(|code| seen.insert(*code)));
}

const FOLDER: &str = "LOGBOOK_TEST_WRITE_IN";
const FROM: &str = "LOGBOOK_TEST_FIRST_ACT";
const MANY: &str = "LOGBOOK_TEST_ACTS";
/// Facts in each act of the other process.
const PARTS: usize = 3;

/// Starts another process that writes `many` acts, from number `from` on.
fn writer(folder: &Path, from: u32, many: u32) -> (Child, BufReader<ChildStdout>) {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--ignored", "--exact", "acts::the_other_process"])
        .env(FOLDER, folder)
        .env(FROM, from.to_string())
        .env(MANY, many.to_string())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let said = BufReader::new(child.stdout.take().unwrap());
    (child, said)
}

/// The number of the act that a line acknowledges; a line cut by the kill acknowledges nothing.
fn acknowledged(line: &str) -> Option<u32> {
    line.strip_prefix("written ")?.strip_suffix('\n')?.parse().ok()
}

#[test]
#[ignore = "the process that the tests below start and kill"]
fn the_other_process() {
    let number = |name| std::env::var(name).unwrap().parse::<u32>().unwrap();
    let folder = PathBuf::from(std::env::var_os(FOLDER).expect("started by the tests below"));
    let book = Book::open(&folder).unwrap();
    for act in number(FROM)..number(FROM) + number(MANY) {
        book.act::<BookError>(stamp(act, 0), |_, draft| {
            let sign = draft.put(DrawerKind::Sign, &[65; 500])?;
            draft.fact(Body::PersonJoined { person: id(act), sign });
            draft.fact(Body::Packed { pouches: vec![packed(act)] });
            draft.fact(washed(1));
            Ok(())
        })
        .unwrap();
        let mut out = std::io::stdout().lock();
        writeln!(out, "written {act}").unwrap();
        out.flush().unwrap();
    }
}

/// Killed at any moment: what was acknowledged is there, nothing is there by half.
#[test]
fn nothing_acknowledged_is_lost_to_a_kill() {
    let folder = tempfile::tempdir().unwrap();
    let book = begin(folder.path());
    drop(book);
    let mut lasting: Vec<u32> = Vec::new();
    for (round, wait_for) in [1, 2, 3, 5, 8, 13, 21, 34].into_iter().enumerate() {
        let from = 10_000 * (round as u32 + 1);
        let (mut child, mut said) = writer(folder.path(), from, 9_999);
        let mut acts = Vec::new();
        let mut line = String::new();
        while acts.len() < wait_for && said.read_line(&mut line).unwrap() > 0 {
            acts.extend(acknowledged(&line));
            line.clear();
        }
        // The child is somewhere in an act now, and not where it was in another round.
        child.kill().unwrap();
        while said.read_line(&mut line).unwrap() > 0 {
            acts.extend(acknowledged(&line));
            line.clear();
        }
        child.wait().unwrap();
        assert!(acts.len() >= wait_for, "it ended by itself");
        lasting.extend(acts);
        let book = Book::open(folder.path()).unwrap();
        assert_eq!(book.folded_again(), None, "facts and tables are one");
        let verified = verify(folder.path()).unwrap();
        assert_eq!(verified.first_bad, None);
        for act in &lasting {
            assert_eq!(facts_of(&book, id(*act)), PARTS, "act {act}");
        }
        let begun = (verified.facts - 1) as usize;
        assert_eq!(begun % PARTS, 0, "no act by half");
        // One act a round at most was written and not acknowledged.
        assert!(begun / PARTS <= lasting.len() + round + 1, "{begun} facts");
    }
}

fn facts_of(book: &Book, act: ActId) -> usize {
    book.read::<_, BookError>(|view| view.facts_of_act(act)).unwrap().len()
}

#[test]
fn two_programs_write_without_a_gap() {
    let folder = tempfile::tempdir().unwrap();
    let book = begin(folder.path());
    let many = 40;
    let plenty = Body::Counted { kind: kind("manicure"), used: 1_000, washed: 1_000 };
    write(&book, stamp(90_000, 0), vec![plenty]).unwrap();
    let (mut child, _said) = writer(folder.path(), 50_000, many);
    std::thread::scope(|scope| {
        for thread in 0..2_u32 {
            let (book, folder) = (&book, folder.path());
            scope.spawn(move || {
                // One thread shares the book, the other has opened it again.
                let own = (thread == 1).then(|| Book::open(folder).unwrap());
                for act in 0..many {
                    let stamp = stamp(thread * 1_000 + act, 0);
                    write(own.as_ref().unwrap_or(book), stamp, vec![washed(1)]).unwrap();
                }
            });
        }
    });
    assert!(child.wait().unwrap().success());
    let verified = verify(folder.path()).unwrap();
    assert_eq!(verified.first_bad, None);
    assert_eq!(verified.facts, u64::from(many) * (2 + PARTS as u64) + 2);
    let kinds = book.read::<_, BookError>(|view| view.kinds()).unwrap();
    // Each washing adds one, each packing takes one.
    assert_eq!((kinds[0].used, kinds[0].washed), (1_000 - many * 3, 1_000 + many * 2));
}

/// A book folded by another version is folded again when it is opened, and says so.
#[test]
fn an_older_fold_is_made_again() {
    let (folder, book) = new_book();
    write(&book, stamp(1, 0), vec![washed(3)]).unwrap();
    let conn = rusqlite::Connection::open(folder.path().join(logbook::book::FILE)).unwrap();
    conn.execute_batch("UPDATE fold_state SET fold_version = 0; UPDATE kind SET washed = 9;")
        .unwrap();
    // A program that has it open neither reads nor writes over another version's tables.
    let stale = book.read::<_, BookError>(|view| view.kinds());
    assert!(matches!(stale, Err(BookError::OtherFold)));
    let stale = write(&book, stamp(2, 0), vec![washed(1)]);
    assert!(matches!(stale, Err(BookError::OtherFold)));
    let again = Book::open(folder.path()).unwrap();
    assert_eq!(again.folded_again(), Some(2));
    let kinds = again.read::<_, BookError>(|view| view.kinds()).unwrap();
    assert_eq!(kinds[0].washed, 3);
    assert_eq!(Book::open(folder.path()).unwrap().folded_again(), None);
}
