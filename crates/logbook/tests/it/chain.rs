//! Nobody changes the book unseen.

use crate::common::{id, kind, new_book, packed, scratch, stamp, write};
use crate::story::story;
use logbook::fact::Body;
use logbook::verify::{FirstBad, Verified, verify};
use logbook::{Book, BookError, DrawerKind};
use proptest::prelude::*;
use rusqlite::Connection;
use rusqlite::types::Value;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;
use tempfile::TempDir;

/// The story's book as one file, whole and closed.
static STORY: LazyLock<Vec<u8>> = LazyLock::new(|| {
    let (folder, book) = new_book();
    story(&book);
    drop(book);
    assert!(verify(folder.path()).unwrap().ok);
    std::fs::read(file(folder.path())).unwrap()
});

fn file(folder: &Path) -> PathBuf {
    folder.join(logbook::book::FILE)
}

/// The story's book, opened past the triggers and checks, as somebody with the file could.
fn opened_by_force() -> (TempDir, Connection) {
    let folder = scratch();
    std::fs::write(file(folder.path()), &*STORY).unwrap();
    let conn = Connection::open(file(folder.path())).unwrap();
    conn.execute_batch(
        "DROP TRIGGER facts_no_update; DROP TRIGGER facts_no_delete; \
         DROP TRIGGER facts_no_replace; DROP TRIGGER facts_no_gap; \
         DROP TRIGGER drawer_no_update; PRAGMA ignore_check_constraints = ON; \
         PRAGMA synchronous = OFF;",
    )
    .unwrap();
    (folder, conn)
}

fn found(folder: &TempDir, conn: Connection) -> Verified {
    conn.close().unwrap();
    verify(folder.path()).unwrap()
}

fn first_bad(folder: &TempDir, conn: Connection) -> Option<u64> {
    let verified = found(folder, conn);
    assert_eq!(verified.ok, verified.first_bad.is_none());
    verified.first_bad.map(|bad| bad.seq)
}

fn lines() -> i64 {
    static LINES: LazyLock<i64> = LazyLock::new(|| {
        let (_folder, conn) = opened_by_force();
        conn.query_row("SELECT MAX(seq) FROM facts", [], |row| row.get(0)).unwrap()
    });
    *LINES
}

const COLUMNS: [&str; 14] = [
    "seq",
    "salon",
    "act",
    "part",
    "kind",
    "version",
    "happened_ms",
    "written_ms",
    "station",
    "sign",
    "known",
    "body",
    "prev",
    "hash",
];

/// Turns bits of one byte, wherever it lies in the value. A missing value gets one.
fn tampered(value: Value, place: usize, bits: u8) -> Value {
    let turn = |bytes: &mut [u8]| {
        let at = place % bytes.len();
        bytes[at] ^= bits;
    };
    match value {
        Value::Null => Value::Blob(vec![bits; 16]),
        Value::Integer(number) => {
            let mut bytes = number.to_be_bytes();
            turn(&mut bytes);
            Value::Integer(i64::from_be_bytes(bytes))
        }
        Value::Text(text) => {
            // A text of the storage need not be what Rust takes for one.
            let mut bytes = text.into_bytes();
            turn(&mut bytes);
            Value::Blob(bytes)
        }
        Value::Blob(mut bytes) => {
            turn(&mut bytes);
            Value::Blob(bytes)
        }
        Value::Real(_) => panic!("no fraction is kept"),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn any_byte_of_any_line(
        line in 1..=lines(),
        column in 0..COLUMNS.len(),
        place in any::<usize>(),
        bits in 1_u8..,
    ) {
        let (folder, conn) = opened_by_force();
        let name = COLUMNS[column];
        let value: Value = conn
            .query_row(&format!("SELECT {name} FROM facts WHERE seq = ?1"), [line], |row| row.get(0))
            .unwrap();
        let new = tampered(value.clone(), place, bits);
        // Invalid UTF-8 gets in as a text by a cast, as it would by editing the file.
        let put = match value {
            Value::Text(_) => format!("UPDATE facts SET {name} = CAST(?1 AS TEXT) WHERE seq = ?2"),
            _ => format!("UPDATE facts SET {name} = ?1 WHERE seq = ?2"),
        };
        // A number that another line has cannot be given twice.
        prop_assume!(conn.execute(&put, (&new, line)).is_ok());
        let expected = match (name, &new) {
            // Moved away: its old place is empty, or it stands before the lines that it jumped.
            ("seq", Value::Integer(seq)) => line.min((*seq).max(1)),
            _ => line,
        };
        prop_assert_eq!(first_bad(&folder, conn), u64::try_from(expected).ok(), "{}", name);
    }

    #[test]
    fn any_byte_in_the_drawer(entry in 0..2_usize, column in 0..3_usize, place in any::<usize>(), bits in 1_u8..) {
        let (folder, conn) = opened_by_force();
        let (kind, line) = [("sign", 2), ("record", 10)][entry];
        let name = ["kind", "key", "content"][column];
        let value: Value = conn
            .query_row(&format!("SELECT {name} FROM drawer WHERE kind = ?1"), [kind], |row| row.get(0))
            .unwrap();
        let cast = if name == "kind" { "TEXT" } else { "BLOB" };
        let new = tampered(value, place, bits);
        conn.execute(&format!("UPDATE drawer SET {name} = CAST(?1 AS {cast}) WHERE kind = ?2"), (new, kind)).unwrap();
        let fact: String = conn.query_row("SELECT kind FROM facts WHERE seq = ?1", [line], |row| row.get(0)).unwrap();
        prop_assert!(["person_joined", "record_taken"].contains(&fact.as_str()), "{}", fact);
        prop_assert_eq!(first_bad(&folder, conn), u64::try_from(line).ok());
    }
}

/// Does it to the story's book; where is the first line that does not fit?
fn after(statements: &str) -> Option<u64> {
    let (folder, conn) = opened_by_force();
    conn.execute_batch(statements).unwrap();
    first_bad(&folder, conn)
}

#[test]
fn any_line_deleted() {
    for line in 1..=lines() {
        let bad = after(&format!("DELETE FROM facts WHERE seq = {line}"));
        assert_eq!(bad, u64::try_from(line).ok());
    }
}

#[test]
fn any_two_lines_exchanged() {
    for (one, other) in (1..lines()).flat_map(|one| (one + 1..=lines()).map(move |to| (one, to))) {
        let bad = after(&format!(
            "UPDATE facts SET seq = 0 WHERE seq = {one}; \
             UPDATE facts SET seq = {one} WHERE seq = {other}; \
             UPDATE facts SET seq = {other} WHERE seq = 0;"
        ));
        assert_eq!(bad, u64::try_from(one).ok(), "{one} and {other}");
    }
}

/// A copy of the line before takes the place of a line, and all from there on move up by one.
#[test]
fn any_line_put_in_between() {
    for line in 2..=lines() {
        let bad = after(&format!(
            "UPDATE facts SET seq = -seq WHERE seq >= {line}; \
             UPDATE facts SET seq = 1 - seq WHERE seq < 0; \
             INSERT INTO facts SELECT {line}, salon, act, part + 1000, kind, version, \
             happened_ms, written_ms, station, sign, known, body, hash, hash FROM facts \
             WHERE seq = {line} - 1;"
        ));
        assert_eq!(bad, u64::try_from(line).ok());
    }
}

#[test]
fn a_whole_book_says_so() {
    let (folder, conn) = opened_by_force();
    let hash: Vec<u8> = conn
        .query_row("SELECT hash FROM facts ORDER BY seq DESC LIMIT 1", [], |row| row.get(0))
        .unwrap();
    let verified = found(&folder, conn);
    assert!(verified.ok);
    assert_eq!(verified.facts, u64::try_from(lines()).unwrap());
    assert_eq!(verified.first_at, Some(crate::common::at(-1)));
    assert_eq!(verified.last_at, Some(crate::common::at(101)));
    let head: String = hash.iter().map(|byte| format!("{byte:02x}")).collect();
    assert_eq!(verified.head, Some(head));
    assert_eq!(verify(&file(folder.path())).unwrap().facts, verified.facts, "by its file");
}

/// An inspector gets the book on a stick that cannot be written. (Somebody who may write
/// everywhere, as in many test machines, walks through the same door in the ordinary way.)
#[cfg(unix)]
#[test]
fn a_book_that_cannot_be_written_is_verified() {
    use std::os::unix::fs::PermissionsExt;
    let outer = scratch();
    let folder = outer.path().join("50% of #1?");
    std::fs::create_dir(&folder).unwrap();
    std::fs::write(file(&folder), &*STORY).unwrap();
    std::fs::set_permissions(file(&folder), PermissionsExt::from_mode(0o444)).unwrap();
    std::fs::set_permissions(&folder, PermissionsExt::from_mode(0o555)).unwrap();
    let verified = verify(&folder);
    std::fs::set_permissions(&folder, PermissionsExt::from_mode(0o755)).unwrap();
    assert!(verified.unwrap().ok);
}

#[test]
fn a_line_that_nobody_folded_is_found() {
    let (folder, conn) = opened_by_force();
    conn.execute(
        "UPDATE fold_state SET head_seq = 3, head_hash = (SELECT hash FROM facts WHERE seq = 3)",
        [],
    )
    .unwrap();
    assert_eq!(first_bad(&folder, conn), Some(4));
}

#[test]
fn what_is_no_book_is_an_error() {
    let folder = tempfile::tempdir().unwrap();
    assert!(matches!(verify(folder.path()), Err(BookError::Missing(_))));
    std::fs::write(file(folder.path()), b"not a book at all, but a text of some length").unwrap();
    assert!(verify(folder.path()).is_err());
    std::fs::write(file(folder.path()), b"").unwrap();
    assert!(verify(folder.path()).is_err());
    assert!(Book::open(folder.path()).is_err());
}

#[test]
fn lines_cut_off_keep_the_book_closed() {
    let (folder, conn) = opened_by_force();
    conn.execute("DELETE FROM facts WHERE seq = (SELECT MAX(seq) FROM facts)", []).unwrap();
    conn.close().unwrap();
    let known = u64::try_from(lines()).unwrap();
    match Book::open(folder.path()) {
        Err(BookError::LinesMissing { known: noted, found }) => {
            assert_eq!((noted, found), (known, known - 1));
        }
        other => panic!("{:?}", other.err()),
    }
}

/// Statements that would change or remove a fact or a drawer entry, through the triggers.
#[test]
fn the_tables_refuse_to_be_changed() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(file(folder.path()), &*STORY).unwrap();
    let conn = Connection::open(file(folder.path())).unwrap();
    let copy = "salon, act, part, kind, version, happened_ms, written_ms, station, sign, known, body, prev, hash";
    for (statement, why) in [
        ("UPDATE facts SET known = 'read' WHERE seq = 3".to_owned(), "never changed"),
        ("UPDATE OR REPLACE facts SET seq = 4 WHERE seq = 3".to_owned(), "never changed"),
        ("DELETE FROM facts WHERE seq = 3".to_owned(), "never deleted"),
        ("DELETE FROM facts".to_owned(), "never deleted"),
        (
            format!(
                "INSERT OR REPLACE INTO facts (seq, {copy}) SELECT seq, {copy} FROM facts WHERE seq = 3"
            ),
            "a fact ",
        ),
        (
            format!(
                "REPLACE INTO facts (seq, {copy}) SELECT {}, {copy} FROM facts WHERE seq = 3",
                lines() + 1
            ),
            "never replaced",
        ),
        (
            format!(
                "INSERT INTO facts (seq, {copy}) SELECT {}, salon, zeroblob(16), {} FROM facts WHERE seq = 3",
                lines() + 2,
                &copy[12..]
            ),
            "follows the one before",
        ),
        ("UPDATE drawer SET content = x'00'".to_owned(), "never changed"),
        (
            "REPLACE INTO drawer SELECT entry, kind, key, x'00' FROM drawer".to_owned(),
            "never replaced",
        ),
    ] {
        let refused = conn.execute(&statement, []).unwrap_err().to_string();
        assert!(refused.contains(why), "{statement}: {refused}");
    }
    conn.close().unwrap();
    assert!(verify(folder.path()).unwrap().ok);
}

/// Names can be forgotten: entry and key go, the chain stays whole.
#[test]
fn a_drawer_entry_is_forgotten() {
    let (folder, book) = new_book();
    book.act::<BookError>(stamp(1, 1), |_, draft| {
        let sign = draft.put(DrawerKind::Sign, b"Ana Quispe")?;
        draft.fact(Body::PersonJoined { person: id(1), sign });
        Ok(())
    })
    .unwrap();
    let sign = |book: &Book| {
        let people = book.read::<_, BookError>(|view| view.people()).unwrap();
        people[0].sign.clone()
    };
    let in_files = || {
        std::fs::read_dir(folder.path()).unwrap().any(|file| {
            let bytes = std::fs::read(file.unwrap().path()).unwrap();
            bytes.windows(10).any(|part| part == b"Ana Quispe")
        })
    };
    assert_eq!(sign(&book).as_deref(), Some("Ana Quispe"));
    assert!(in_files());
    let fact = book.read::<_, BookError>(|view| view.fact(2)).unwrap().unwrap();
    let Body::PersonJoined { sign: kept, .. } = fact.body else {
        panic!("{fact:?}");
    };
    assert!(book.forget(kept.entry).unwrap());
    assert!(!in_files(), "overwritten, in the write-ahead log too");
    assert!(!book.forget(kept.entry).unwrap(), "gone before");
    assert_eq!(sign(&book), None);
    assert_eq!(verify(folder.path()).unwrap().first_bad, None);
    book.rebuild().unwrap();
    assert_eq!(sign(&book), None, "the drawer is not rebuilt");
}

/// What lies in the drawer is checked when it is read, too.
#[test]
fn a_changed_drawer_entry_is_not_shown() {
    let (folder, conn) = opened_by_force();
    conn.execute("UPDATE drawer SET content = x'41' WHERE kind = 'sign'", []).unwrap();
    conn.close().unwrap();
    let book = Book::open(folder.path()).unwrap();
    let people = book.read::<_, BookError>(|view| view.people());
    assert!(matches!(people, Err(BookError::DrawerChanged(_))));
}

/// Folding never goes over a line that was changed.
#[test]
fn a_changed_line_is_not_folded_again() {
    let (folder, conn) = opened_by_force();
    conn.execute("UPDATE facts SET body = replace(body, ':', ': ') WHERE seq = 5", []).unwrap();
    let bad = FirstBad { seq: 5, why: "its body is not in the form that is written".to_owned() };
    assert_eq!(found(&folder, conn).first_bad, Some(bad));
    let book = Book::open(folder.path()).unwrap();
    assert!(matches!(book.rebuild(), Err(BookError::Damaged { seq: 5, .. })));
    let washed = Body::Washed { kind: kind("manicure"), count: 1 };
    write(&book, stamp(50, 200), vec![washed, Body::Packed { pouches: vec![packed(60)] }]).unwrap();
}
