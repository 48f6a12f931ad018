//! The storage, as a closed choice: one arm for each database.
//!
//! Everything outside this folder speaks to [`Sql`], in SQL that both databases take: parameters
//! are `$1`, `$2`, ..., bound by their number; values are whole numbers, texts and bytes.

pub(crate) mod migrate;
pub(crate) mod sqlite;

use crate::error::BookError;
use measure::Id;
pub(crate) use sqlite::Sqlite;

/// Where a book lives.
pub(crate) enum Store {
    /// A file.
    Sqlite(Sqlite),
}

/// A connection in the middle of a transaction.
#[derive(Clone, Copy)]
pub(crate) enum Sql<'a> {
    /// To a file.
    Sqlite(&'a rusqlite::Connection),
}

/// A value on its way into the database.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Value<'a> {
    Null,
    Int(i64),
    Text(&'a str),
    Bytes(&'a [u8]),
}

/// A row on its way out.
pub(crate) enum Row<'a, 'r> {
    /// Of a file.
    Sqlite(&'a rusqlite::Row<'r>),
}

impl Sql<'_> {
    /// Runs one statement; says how many rows it touched.
    pub(crate) fn run(self, sql: &str, values: &[Value<'_>]) -> Result<usize, BookError> {
        match self {
            Self::Sqlite(conn) => sqlite::run(conn, sql, values),
        }
    }

    /// Hands over every row, in order.
    pub(crate) fn each(
        self,
        sql: &str,
        values: &[Value<'_>],
        mut take: impl FnMut(&Row<'_, '_>) -> Result<(), BookError>,
    ) -> Result<(), BookError> {
        match self {
            Self::Sqlite(conn) => {
                sqlite::each(conn, sql, values, &mut |row| take(row).map(|()| true))
            }
        }
    }

    /// Every row, read by `read`.
    pub(crate) fn all<T>(
        self,
        sql: &str,
        values: &[Value<'_>],
        mut read: impl FnMut(&Row<'_, '_>) -> Result<T, BookError>,
    ) -> Result<Vec<T>, BookError> {
        let mut rows = Vec::new();
        self.each(sql, values, |row| {
            rows.push(read(row)?);
            Ok(())
        })?;
        Ok(rows)
    }

    /// The first row, if there is one.
    pub(crate) fn first<T>(
        self,
        sql: &str,
        values: &[Value<'_>],
        mut read: impl FnMut(&Row<'_, '_>) -> Result<T, BookError>,
    ) -> Result<Option<T>, BookError> {
        let mut found = None;
        match self {
            Self::Sqlite(conn) => sqlite::each(conn, sql, values, &mut |row| {
                found = Some(read(row)?);
                Ok(false)
            })?,
        }
        Ok(found)
    }
}

impl Row<'_, '_> {
    pub(crate) fn int(&self, at: usize) -> Result<i64, BookError> {
        match self {
            Self::Sqlite(row) => sqlite::get(row, at),
        }
    }

    pub(crate) fn maybe_int(&self, at: usize) -> Result<Option<i64>, BookError> {
        match self {
            Self::Sqlite(row) => sqlite::get(row, at),
        }
    }

    /// A whole number that is never negative.
    pub(crate) fn count<N: TryFrom<i64>>(&self, at: usize) -> Result<N, BookError> {
        let number = self.int(at)?;
        N::try_from(number).map_err(|_| unreadable(format!("{number} in column {at}")))
    }

    pub(crate) fn maybe_count<N: TryFrom<i64>>(&self, at: usize) -> Result<Option<N>, BookError> {
        self.maybe_int(at)?
            .map(|number| {
                N::try_from(number).map_err(|_| unreadable(format!("{number} in column {at}")))
            })
            .transpose()
    }

    pub(crate) fn flag(&self, at: usize) -> Result<bool, BookError> {
        Ok(self.int(at)? != 0)
    }

    pub(crate) fn text(&self, at: usize) -> Result<String, BookError> {
        match self {
            Self::Sqlite(row) => sqlite::get(row, at),
        }
    }

    pub(crate) fn maybe_text(&self, at: usize) -> Result<Option<String>, BookError> {
        match self {
            Self::Sqlite(row) => sqlite::get(row, at),
        }
    }

    pub(crate) fn bytes(&self, at: usize) -> Result<Vec<u8>, BookError> {
        match self {
            Self::Sqlite(row) => sqlite::get(row, at),
        }
    }

    pub(crate) fn maybe_bytes(&self, at: usize) -> Result<Option<Vec<u8>>, BookError> {
        match self {
            Self::Sqlite(row) => sqlite::get(row, at),
        }
    }

    /// Bytes of a fixed length.
    pub(crate) fn fixed<const N: usize>(&self, at: usize) -> Result<[u8; N], BookError> {
        exact(at, self.bytes(at)?)
    }

    pub(crate) fn id<T>(&self, at: usize) -> Result<Id<T>, BookError> {
        Ok(Id::from_bytes(self.fixed(at)?))
    }

    pub(crate) fn maybe_id<T>(&self, at: usize) -> Result<Option<Id<T>>, BookError> {
        self.maybe_bytes(at)?.map(|bytes| exact(at, bytes).map(Id::from_bytes)).transpose()
    }
}

fn exact<const N: usize>(at: usize, bytes: Vec<u8>) -> Result<[u8; N], BookError> {
    let length = bytes.len();
    <[u8; N]>::try_from(bytes).map_err(|_| unreadable(format!("{length} bytes in column {at}")))
}

/// A value in a table that this program does not write.
pub(crate) fn unreadable(what: String) -> BookError {
    BookError::Storage {
        doing: "reading the tables of the book",
        source: format!("unexpected {what}").into(),
    }
}

impl<'a> Value<'a> {
    /// An id.
    pub(crate) fn id<T>(id: &'a Id<T>) -> Self {
        Self::Bytes(id.bytes())
    }

    /// An id, or nothing.
    pub(crate) fn maybe_id<T>(id: &'a Option<Id<T>>) -> Self {
        id.as_ref().map_or(Self::Null, Self::id)
    }

    /// A whole number, or nothing.
    pub(crate) fn maybe<N: Into<i64>>(number: Option<N>) -> Self {
        number.map_or(Self::Null, |number| Self::Int(number.into()))
    }

    /// A text, or nothing.
    pub(crate) fn maybe_text(text: Option<&'a str>) -> Self {
        text.map_or(Self::Null, Self::Text)
    }

    /// A place in the chain. It is below 2^63: the storage counts in signed numbers.
    pub(crate) fn seq(seq: u64) -> Self {
        Self::Int(i64::try_from(seq).unwrap_or(i64::MAX))
    }

    /// Yes or no.
    pub(crate) fn flag(flag: bool) -> Self {
        Self::Int(i64::from(flag))
    }
}
