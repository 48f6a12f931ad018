//! What can go wrong with a book: what happened, what is safe, what to do.
//!
//! Storage errors become a [`BookError`] here and nowhere else. A message that begins with `BUG:`
//! is our own mistake; everything else is trouble of the world (a full disk, a changed file).

use std::path::PathBuf;

/// Why the book could not be read or written.
#[derive(Debug, thiserror::Error)]
pub enum BookError {
    /// A book is already there.
    #[error("{0} already holds a book. It was left as it is. Choose another folder.")]
    Exists(PathBuf),
    /// No book is there.
    #[error(
        "there is no book at {0}. Nothing was changed. Name the folder that holds book.sqlite."
    )]
    Missing(PathBuf),
    /// The file system refused.
    #[error("{path}: {source}. Nothing was written. Check the disk and the rights of the folder.")]
    Disk {
        /// Where.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// Another program held the book for longer than the time to wait.
    #[error("another program holds the book. Nothing was written. Try again in a moment.")]
    Busy,
    /// No room left.
    #[error("the disk is full. Nothing was written. Make room, then do it again.")]
    Full,
    /// Any other trouble of the storage.
    #[error("the storage failed while {doing}: {source}. Nothing was written.")]
    Storage {
        /// What was being done.
        doing: &'static str,
        /// What the storage said.
        source: Box<dyn std::error::Error + Send + Sync>,
    },
    /// A newer program made this book.
    #[error(
        "this book was made by a newer version of the program (step {0}). Nothing was changed. \
         Use that version."
    )]
    Newer(i64),
    /// The tables of the book are not those that this program makes.
    #[error(
        "step {0} of the book's tables is not the one that this program knows. Nothing was \
         changed. Restore the book from a backup, or use the version that made it."
    )]
    ForeignTables(i64),
    /// The cached tables were folded by another version of the program.
    #[error(
        "another version of the program has this book open. Nothing was written. Restart this \
         program."
    )]
    OtherFold,
    /// The book ends before the place that it has itself noted.
    #[error(
        "the book ends at line {found}, but it knew of {known}: lines are missing. Nothing was \
         changed. Restore it from a backup; `verify` says what is left."
    )]
    LinesMissing {
        /// Last line that the book knew of.
        known: u64,
        /// Last line that is there.
        found: u64,
    },
    /// A line of the book is not as it was written.
    #[error(
        "line {seq} of the book is not as it was written: {why}. Nothing was changed. Restore it \
         from a backup; `verify` says how far it is whole."
    )]
    Damaged {
        /// The line.
        seq: u64,
        /// What does not fit.
        why: String,
    },
    /// A drawer entry is not what was put there.
    #[error("what lies in drawer entry {0} is not what was put there. Do not rely on it.")]
    DrawerChanged(measure::DrawerId),
    /// A fact that must not be written.
    #[error("this cannot be written into the book: {0}. Nothing was written.")]
    Unfit(String),
    /// The system gave no random bytes.
    #[error("the system gave no random bytes ({0}). Nothing was written. Try again.")]
    NoChance(getrandom::Error),
}

impl BookError {
    /// Translates an error of SQLite.
    pub(crate) fn sqlite(doing: &'static str, error: rusqlite::Error) -> Self {
        match error.sqlite_error_code() {
            Some(rusqlite::ErrorCode::DatabaseBusy | rusqlite::ErrorCode::DatabaseLocked) => {
                Self::Busy
            }
            Some(rusqlite::ErrorCode::DiskFull) => Self::Full,
            _ => Self::Storage { doing, source: Box::new(error) },
        }
    }

    /// A line that does not fit.
    pub(crate) fn damaged(seq: u64, why: impl Into<String>) -> Self {
        Self::Damaged { seq, why: why.into() }
    }
}
