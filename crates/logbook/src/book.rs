//! Opening, reading and writing a book.

use crate::fact::{Body, BookKind, Day, DrawerRef, Stamp};
use crate::facts::{self, Head};
use crate::fold;
use crate::store::migrate::{SQLITE, migrate};
use crate::store::sqlite::{Commit, connect, write_on};
use crate::store::{Sql, Sqlite, Store};
use crate::view::View;
use measure::{DrawerId, SalonId};
use rusqlite::OpenFlags;
use std::path::{Path, PathBuf};

use crate::drawer::{self, Entry};
pub use crate::drawer::{BookKey, DrawerKind};
pub use crate::error::BookError;

/// The name of the file in the book's folder.
pub const FILE: &str = "book.sqlite";

/// How a book begins.
#[derive(Debug, Clone)]
pub struct Opening {
    /// The salon.
    pub salon: SalonId,
    /// IANA name of its time zone.
    pub zone: String,
    /// Whose book it is.
    pub book: BookKind,
    /// Who opened it, when, where.
    pub stamp: Stamp,
}

/// A book. May be shared between threads; several programs may have it open at once, so nothing
/// is remembered here that is not read again.
///
/// Every call blocks until the disk has answered.
pub struct Book {
    store: Store,
    salon: SalonId,
    folded_again: Option<u64>,
}

/// What an act has written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Written {
    /// Place of its first fact.
    pub first_seq: u64,
    /// Place of its last fact; below `first_seq` where the act drafted none.
    pub last_seq: u64,
    /// The act was in the book before; nothing was written now.
    pub already: bool,
}

/// The facts that an act is about to write.
#[derive(Default)]
pub struct Draft {
    bodies: Vec<Body>,
    entries: Vec<Entry>,
}

impl Draft {
    /// One more fact, after the ones before.
    pub fn fact(&mut self, body: Body) {
        self.bodies.push(body);
    }

    /// Puts something in the drawer, in the same transaction as the facts; the reference goes into
    /// a fact.
    ///
    /// # Errors
    /// Content above [`crate::drawer::MOST_BYTES`]; a system without random bytes.
    pub fn put(&mut self, what: DrawerKind, content: &[u8]) -> Result<DrawerRef, BookError> {
        let (entry, reference) = Entry::new(what, content)?;
        self.entries.push(entry);
        Ok(reference)
    }

    /// Makes a new key for what comes from calendars, puts it in the drawer and says so in a fact.
    ///
    /// # Errors
    /// A system without random bytes.
    pub fn new_key(&mut self) -> Result<BookKey, BookError> {
        let made = BookKey::new()?;
        let key = self.put(DrawerKind::Key, made.bytes())?;
        self.fact(Body::Day(Day::KeyMade { key }));
        Ok(made)
    }
}

impl Book {
    /// Begins a book in a folder, which is made if it is not there.
    ///
    /// The file appears whole, with its first fact, or not at all.
    ///
    /// # Errors
    /// A book that is already there; trouble with the disk.
    pub fn create(folder: &Path, opening: Opening) -> Result<Self, BookError> {
        let file = folder.join(FILE);
        let disk = |source| BookError::Disk { path: folder.to_owned(), source };
        std::fs::create_dir_all(folder).map_err(disk)?;
        if file.exists() {
            return Err(BookError::Exists(folder.to_owned()));
        }
        let mut chance = [0; 8];
        getrandom::fill(&mut chance).map_err(BookError::NoChance)?;
        let part = folder.join(format!("{FILE}.{:016x}.part", u64::from_be_bytes(chance)));
        let made = begin(&part, opening).and_then(|()| place(&part, &file, folder));
        made?;
        if part.exists() {
            std::fs::remove_file(&part).map_err(disk)?;
        }
        Self::open(folder)
    }

    /// Opens a book that is there. Takes the same short time for a long book as for a young one:
    /// the facts are folded again only where the cached tables do not belong to them, which
    /// [`Book::folded_again`] then says.
    ///
    /// # Errors
    /// No book; a book of a newer program; lines that are missing or changed at its end; trouble
    /// with the disk.
    pub fn open(folder: &Path) -> Result<Self, BookError> {
        let file = folder.join(FILE);
        if !file.is_file() {
            return Err(BookError::Missing(folder.to_owned()));
        }
        migrate(&connect(&file, OpenFlags::SQLITE_OPEN_READ_WRITE)?, SQLITE)?;
        let store = Store::Sqlite(Sqlite::open(&file)?);
        let mut book = Self { salon: store.read(salon_of)?, store, folded_again: None };
        if !book.store.read(fold::fits)? {
            book.folded_again = Some(book.rebuild()?);
        }
        Ok(book)
    }

    /// Is there a book in this folder?
    #[must_use]
    pub fn exists(folder: &Path) -> bool {
        folder.join(FILE).is_file()
    }

    /// How many facts were folded again when the book was opened; `None` where the cached tables
    /// fitted, as they do on every ordinary day.
    #[must_use]
    pub fn folded_again(&self) -> Option<u64> {
        self.folded_again
    }

    /// Reads one consistent state: what others write meanwhile is not seen.
    ///
    /// # Errors
    /// What `f` answers; trouble with the storage.
    pub fn read<T, E: From<BookError>>(
        &self,
        f: impl FnOnce(&View<'_>) -> Result<T, E>,
    ) -> Result<T, E> {
        self.store.read(|sql| {
            fold::same_version(sql)?;
            f(&View::new(sql, self.salon))
        })
    }

    /// Writes one act: `decide` looks at the book and drafts facts, and nobody else writes in
    /// between. Returns when the facts are on the disk.
    ///
    /// An act that is in the book already is not written again, and `decide` is not asked. An
    /// error of `decide`, or a draft without a fact, writes nothing at all.
    ///
    /// # Errors
    /// What `decide` answers; a fact that must not be written; trouble with the storage.
    pub fn act<E: From<BookError>>(
        &self,
        stamp: Stamp,
        decide: impl FnOnce(&View<'_>, &mut Draft) -> Result<(), E>,
    ) -> Result<Written, E> {
        self.store.write(|sql| {
            if let Some((first_seq, last_seq)) = facts::span_of_act(sql, self.salon, stamp.act)? {
                return Ok(Commit::Drop(Written { first_seq, last_seq, already: true }));
            }
            let head = fold::head_to_write_after(sql)?;
            let mut draft = Draft::default();
            decide(&View::new(sql, self.salon), &mut draft)?;
            let last = write(sql, self.salon, head, (&stamp, draft))?;
            let written = Written { first_seq: head.seq + 1, last_seq: last.seq, already: false };
            Ok(if last == head { Commit::Drop(written) } else { Commit::Keep(written) })
        })
    }

    /// Drops every cached table and folds all facts again; how many there were.
    ///
    /// # Errors
    /// A line that is not as it was written; trouble with the storage.
    pub fn rebuild(&self) -> Result<u64, BookError> {
        self.store.write(|sql| fold::again(sql, self.salon).map(Commit::Keep))
    }

    /// Deletes a drawer entry together with its key, and overwrites their bytes; `false` where it
    /// was gone before. The chain stays whole. Copies of the file that were made before are not
    /// reached.
    ///
    /// # Errors
    /// Trouble with the storage.
    pub fn forget(&self, entry: DrawerId) -> Result<bool, BookError> {
        let gone: Result<bool, BookError> =
            self.store.write(|sql| drawer::forget(sql, entry).map(Commit::Keep));
        let gone = gone?;
        match &self.store {
            Store::Sqlite(sqlite) => sqlite.sweep()?,
        }
        Ok(gone)
    }
}

impl Store {
    fn read<T, E: From<BookError>>(
        &self,
        work: impl FnOnce(Sql<'_>) -> Result<T, E>,
    ) -> Result<T, E> {
        match self {
            Self::Sqlite(sqlite) => sqlite.read(work),
        }
    }

    fn write<T, E: From<BookError>>(
        &self,
        work: impl FnOnce(Sql<'_>) -> Result<Commit<T>, E>,
    ) -> Result<T, E> {
        match self {
            Self::Sqlite(sqlite) => sqlite.write(work),
        }
    }
}

/// Chains and folds what was drafted; the new end of the chain.
fn write(
    sql: Sql<'_>,
    salon: SalonId,
    mut head: Head,
    (stamp, draft): (&Stamp, Draft),
) -> Result<Head, BookError> {
    for entry in &draft.entries {
        entry.keep(sql)?;
    }
    for (part, body) in (0..).zip(draft.bodies) {
        if let Body::RecordTaken { record, kept, bytes, .. } = &body
            && !(draft.entries.iter()).all(|entry| entry.agrees(kept.entry, *record, *bytes))
        {
            let why = "BUG: the record's hash or length is not that of its bytes";
            return Err(BookError::Unfit(why.to_owned()));
        }
        let (fact, next) = facts::append(sql, salon, head, part, (stamp, body))?;
        fold::apply(sql, salon, &fact)?;
        head = next;
    }
    fold::note_head(sql, salon, head)?;
    Ok(head)
}

/// Makes a whole book, with its first fact, in a file of its own.
fn begin(part: &Path, opening: Opening) -> Result<(), BookError> {
    let conn = connect(part, OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE)?;
    migrate(&conn, SQLITE)?;
    let mut draft = Draft::default();
    draft.fact(Body::SalonOpened { salon: opening.salon, zone: opening.zone, book: opening.book });
    write_on(&conn, |sql| {
        write(sql, opening.salon, Head::EMPTY, (&opening.stamp, draft)).map(Commit::Keep)
    })?;
    conn.close().map_err(|(_, error)| BookError::sqlite("closing the new book", error))
}

/// Gives the finished file its name, unless a book has that name by now.
fn place(part: &Path, file: &Path, folder: &Path) -> Result<(), BookError> {
    let disk = |source| BookError::Disk { path: file.to_owned(), source };
    match std::fs::hard_link(part, file) {
        Ok(()) => {}
        Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => {
            return Err(BookError::Exists(folder.to_owned()));
        }
        // Some file systems (USB sticks) have no links. A rename is as whole as a link, only that
        // it would not notice a book begun there within the last moment.
        Err(_) => std::fs::rename(part, file).map_err(disk)?,
    }
    sync(file).and_then(|()| sync_folder(folder)).map_err(disk)
}

fn sync(path: &Path) -> std::io::Result<()> {
    std::fs::File::open(path)?.sync_all()
}

/// The name of a new file is on the disk only once its folder is.
#[cfg(unix)]
fn sync_folder(folder: &Path) -> std::io::Result<()> {
    sync(folder)
}

#[cfg(not(unix))]
fn sync_folder(_: &Path) -> std::io::Result<()> {
    Ok(())
}

fn salon_of(sql: Sql<'_>) -> Result<SalonId, BookError> {
    sql.first("SELECT salon FROM facts WHERE seq = 1", &[], |row| row.id(0))?
        .ok_or(BookError::LinesMissing { known: 1, found: 0 })
}

/// The file of a book that is named by its folder or by the file itself.
pub(crate) fn file_of(path: &Path) -> PathBuf {
    if path.is_dir() { path.join(FILE) } else { path.to_owned() }
}
