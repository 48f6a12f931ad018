//! A book in a file: one connection that writes, a few that read.

use super::{Row, Sql, Value};
use crate::error::BookError;
use rusqlite::types::{FromSql, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, OpenFlags, Transaction, TransactionBehavior};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Duration;

/// How long to wait for another program that writes.
const WAIT: Duration = Duration::from_secs(10);
/// Readers that are kept open; more are opened when needed and closed again.
const KEPT_READERS: usize = 4;
/// Statements that a connection keeps prepared; above the number of different ones in this room.
const KEPT_STATEMENTS: usize = 240;
/// Pages that the writer keeps in memory, as SQLite counts a size: -32,000 is 32 MB. Ids are random,
/// so each fact touches pages all over the indices of a long book.
const CACHE: i64 = -32_000;
/// The names of parameters, by their number.
const NAMES: [&str; 24] = [
    "$1", "$2", "$3", "$4", "$5", "$6", "$7", "$8", "$9", "$10", "$11", "$12", "$13", "$14", "$15",
    "$16", "$17", "$18", "$19", "$20", "$21", "$22", "$23", "$24",
];

/// The connections to one file.
pub(crate) struct Sqlite {
    path: PathBuf,
    // Closed before the writer: only a connection that may write, and is the last, folds the
    // write-ahead log back into the file.
    readers: Mutex<Vec<Connection>>,
    writer: Mutex<Connection>,
}

impl Sqlite {
    /// Opens a file that exists, in WAL mode.
    pub(crate) fn open(path: &Path) -> Result<Self, BookError> {
        let writer = connect(path, OpenFlags::SQLITE_OPEN_READ_WRITE)?;
        let doing = "opening the book";
        // FULL: a commit returns only when the log is on the disk, not in a buffer.
        // secure_delete: what is forgotten is overwritten, not only struck from an index.
        writer
            .pragma_update(None, "journal_mode", "WAL")
            .and_then(|()| writer.pragma_update(None, "synchronous", "FULL"))
            .and_then(|()| writer.pragma_update(None, "secure_delete", "ON"))
            .and_then(|()| writer.pragma_update(None, "cache_size", CACHE))
            .map_err(|error| BookError::sqlite(doing, error))?;
        Ok(Self {
            path: path.to_owned(),
            writer: Mutex::new(writer),
            readers: Mutex::new(Vec::new()),
        })
    }

    /// One write transaction: commits if `work` says so, otherwise nothing has happened.
    pub(crate) fn write<T, E: From<BookError>>(
        &self,
        work: impl FnOnce(Sql<'_>) -> Result<Commit<T>, E>,
    ) -> Result<T, E> {
        let writer = lock(&self.writer);
        write_on(&writer, work)
    }

    /// Folds the write-ahead log into the file and empties it, so that nothing forgotten is left in
    /// it; while another program reads, that waits for the next time.
    pub(crate) fn sweep(&self) -> Result<(), BookError> {
        lock(&self.writer)
            .query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()))
            .map_err(|error| BookError::sqlite("emptying the write-ahead log", error))
    }

    /// One consistent snapshot.
    pub(crate) fn read<T, E: From<BookError>>(
        &self,
        work: impl FnOnce(Sql<'_>) -> Result<T, E>,
    ) -> Result<T, E> {
        let kept = lock(&self.readers).pop();
        let reader = match kept {
            Some(reader) => reader,
            None => connect(&self.path, OpenFlags::SQLITE_OPEN_READ_ONLY)?,
        };
        let result = read_on(&reader, work);
        let mut readers = lock(&self.readers);
        if readers.len() < KEPT_READERS {
            readers.push(reader);
        }
        result
    }
}

/// What a write transaction ends with.
pub(crate) enum Commit<T> {
    /// Keep what was written.
    Keep(T),
    /// Nothing was to be written.
    Drop(T),
}

/// One write transaction on this connection.
pub(crate) fn write_on<T, E: From<BookError>>(
    conn: &Connection,
    work: impl FnOnce(Sql<'_>) -> Result<Commit<T>, E>,
) -> Result<T, E> {
    // IMMEDIATE: a read that turns into a write later would fail at once, without waiting.
    let transaction = Transaction::new_unchecked(conn, TransactionBehavior::Immediate)
        .map_err(|error| BookError::sqlite("waiting to write", error))?;
    // Dropping the transaction on any way out of here takes it back.
    match work(Sql::Sqlite(conn))? {
        Commit::Keep(value) => {
            transaction
                .commit()
                .map_err(|error| BookError::sqlite("writing to the disk", error))?;
            Ok(value)
        }
        Commit::Drop(value) => Ok(value),
    }
}

/// One snapshot on this connection.
pub(crate) fn read_on<T, E: From<BookError>>(
    conn: &Connection,
    work: impl FnOnce(Sql<'_>) -> Result<T, E>,
) -> Result<T, E> {
    let snapshot = Transaction::new_unchecked(conn, TransactionBehavior::Deferred)
        .map_err(|error| BookError::sqlite("starting to read", error))?;
    let result = work(Sql::Sqlite(conn));
    drop(snapshot);
    result
}

/// A panic while the lock was held left nothing half written: the transaction was dropped.
fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Opens one connection. The time to wait is set before anything that could find the file busy.
pub(crate) fn connect(path: &Path, mode: OpenFlags) -> Result<Connection, BookError> {
    let doing = "opening the book";
    let flags = mode | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let conn = Connection::open_with_flags(path, flags)
        .map_err(|error| BookError::sqlite(doing, error))?;
    conn.busy_timeout(WAIT)
        .and_then(|()| conn.pragma_update(None, "trusted_schema", "OFF"))
        .map_err(|error| BookError::sqlite(doing, error))?;
    conn.set_prepared_statement_cache_capacity(KEPT_STATEMENTS);
    Ok(conn)
}

/// Opens a file only to look at it, also where nothing can be written beside it (a stick with its
/// switch set, a disc). SQLite wants to put its shared index there, unless it is told that nobody
/// writes; that is so where no write-ahead log lies beside the file.
pub(crate) fn connect_to_look(path: &Path) -> Result<Connection, BookError> {
    let conn = connect(path, OpenFlags::SQLITE_OPEN_READ_ONLY)?;
    let looked = conn.query_row("SELECT COUNT(*) FROM sqlite_master", [], |_| Ok(()));
    let refused = matches!(
        looked.as_ref().map_err(rusqlite::Error::sqlite_error_code),
        Err(Some(rusqlite::ErrorCode::CannotOpen | rusqlite::ErrorCode::ReadOnly))
    );
    let mut log = path.as_os_str().to_owned();
    log.push("-wal");
    if !refused || Path::new(&log).exists() {
        return Ok(conn);
    }
    let Some(name) = path.to_str() else {
        return Ok(conn);
    };
    let name = name.replace('%', "%25").replace('?', "%3f").replace('#', "%23");
    let address = format!("file:{name}?immutable=1");
    let mode = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_URI;
    connect(Path::new(&address), mode)
}

impl ToSql for Value<'_> {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::Borrowed(match *self {
            Self::Null => ValueRef::Null,
            Self::Int(number) => ValueRef::Integer(number),
            Self::Text(text) => ValueRef::Text(text.as_bytes()),
            Self::Bytes(bytes) => ValueRef::Blob(bytes),
        }))
    }
}

/// Binds by number: SQLite would count `$2` as the first where it comes first in the text.
fn bind(statement: &mut rusqlite::Statement<'_>, values: &[Value<'_>]) -> rusqlite::Result<()> {
    for (name, value) in NAMES.iter().zip(values) {
        let Some(index) = statement.parameter_index(name)? else {
            return Err(rusqlite::Error::InvalidParameterName((*name).to_owned()));
        };
        statement.raw_bind_parameter(index, value)?;
    }
    if statement.parameter_count() == values.len() {
        Ok(())
    } else {
        Err(rusqlite::Error::InvalidParameterCount(statement.parameter_count(), values.len()))
    }
}

pub(crate) fn run(conn: &Connection, sql: &str, values: &[Value<'_>]) -> Result<usize, BookError> {
    let ran = (|| {
        let mut statement = conn.prepare_cached(sql)?;
        bind(&mut statement, values)?;
        statement.raw_execute()
    })();
    ran.map_err(|error| BookError::sqlite("writing the book", error))
}

/// Hands rows over until `take` says that it has enough.
pub(crate) fn each(
    conn: &Connection,
    sql: &str,
    values: &[Value<'_>],
    take: &mut dyn FnMut(&Row<'_, '_>) -> Result<bool, BookError>,
) -> Result<(), BookError> {
    let failed = |error| BookError::sqlite("reading the book", error);
    let mut statement = conn.prepare_cached(sql).map_err(failed)?;
    bind(&mut statement, values).map_err(failed)?;
    let mut rows = statement.raw_query();
    while let Some(row) = rows.next().map_err(failed)? {
        if !take(&Row::Sqlite(row))? {
            break;
        }
    }
    Ok(())
}

pub(crate) fn get<T: FromSql>(row: &rusqlite::Row<'_>, at: usize) -> Result<T, BookError> {
    row.get(at).map_err(|error| BookError::sqlite("reading the book", error))
}
