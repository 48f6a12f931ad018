//! A throw-away book, and ids with a number.

use load::SetKind;
use logbook::fact::{Body, BookKind, Known, PackedPouch, Stamp};
use logbook::{Book, BookError, Opening, Written};
use measure::{Id, Instant};
use std::path::Path;
use std::sync::LazyLock;
use tempfile::TempDir;

/// Monday, 2 June 2025, 08:00 UTC.
pub const MORNING: i64 = 1_748_851_200_000;

/// The id with this number.
pub fn id<T>(number: u32) -> Id<T> {
    let mut bytes = [0; 16];
    bytes[12..].copy_from_slice(&number.to_be_bytes());
    Id::from_bytes(bytes)
}

/// A stamp `minute` minutes after the morning, for the act with this number.
pub fn stamp(act: u32, minute: i64) -> Stamp {
    Stamp {
        act: id(act),
        happened: at(minute),
        written: at(minute),
        station: id(77),
        sign: Some(id(1)),
        known: Known::Tapped,
    }
}

pub fn at(minute: i64) -> Instant {
    Instant::from_millis(MORNING + minute * 60_000)
}

pub fn opening() -> Opening {
    Opening {
        salon: id(9),
        zone: "America/Chicago".to_owned(),
        book: BookKind::Practice,
        stamp: stamp(1_000_000, -1),
    }
}

pub fn begin(folder: &Path) -> Book {
    Book::create(folder, opening()).unwrap()
}

/// A folder that goes away; in memory where the system has such a place. Every act waits for the
/// disk, and a property test begins hundreds of books; the tests that are about the disk itself
/// take a folder on it.
pub fn scratch() -> TempDir {
    tempfile::tempdir_in("/dev/shm").unwrap_or_else(|_| tempfile::tempdir().unwrap())
}

/// A folder that goes away, with a new book in it. Made once and copied: the property tests begin
/// hundreds of books.
pub fn new_book() -> (TempDir, Book) {
    static NEW: LazyLock<Vec<u8>> = LazyLock::new(|| {
        let folder = tempfile::tempdir().unwrap();
        drop(begin(folder.path()));
        std::fs::read(folder.path().join(logbook::book::FILE)).unwrap()
    });
    let folder = scratch();
    std::fs::write(folder.path().join(logbook::book::FILE), &*NEW).unwrap();
    let book = Book::open(folder.path()).unwrap();
    (folder, book)
}

/// Writes one act with these facts.
pub fn write(book: &Book, stamp: Stamp, bodies: Vec<Body>) -> Result<Written, BookError> {
    book.act(stamp, |_, draft| {
        for body in bodies {
            draft.fact(body);
        }
        Ok(())
    })
}

pub fn kind(word: &str) -> SetKind {
    word.parse().unwrap()
}

/// A pouch with a manicure set; its code has the same number.
pub fn packed(number: u32) -> PackedPouch {
    PackedPouch {
        pouch: id(number),
        code: load::ShelfCode::from_number(number),
        kind: kind("manicure"),
        pouched: true,
        hollow: false,
    }
}
