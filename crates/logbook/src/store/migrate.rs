//! The steps that make the tables, each done once, in order, whole or not at all.
//!
//! A step is a file that is never edited after it was shipped: its checksum stands in the book.

use super::sqlite::{Commit, write_on};
use super::{Sql, Value};
use crate::error::BookError;
use rusqlite::Connection;
use sha2::{Digest, Sha256};

/// One step.
pub(crate) struct Step {
    pub(crate) number: i64,
    pub(crate) name: &'static str,
    pub(crate) sql: &'static str,
}

/// The steps for SQLite.
pub(crate) const SQLITE: &[Step] = &[Step {
    number: 1,
    name: "book",
    sql: include_str!("../../migrations/sqlite/0001_book.sql"),
}];

const LIST: &str = "CREATE TABLE IF NOT EXISTS migration (
    number INTEGER PRIMARY KEY, name TEXT NOT NULL, checksum BLOB NOT NULL) STRICT";

/// Does the steps that are still missing; each in one transaction with its own line in the list.
///
/// # Errors
/// A step in the book that this program does not know, or knows differently.
pub(crate) fn migrate(conn: &Connection, steps: &[Step]) -> Result<(), BookError> {
    loop {
        let done: Result<bool, BookError> = write_on(conn, |sql| {
            let Some(step) = next(sql, steps)? else {
                return Ok(Commit::Drop(true));
            };
            let doing = "making the tables of the book";
            conn.execute_batch(step.sql)
                .map_err(|error| BookError::sqlite(doing, error))?;
            sql.run(
                "INSERT INTO migration (number, name, checksum) VALUES ($1, $2, $3)",
                &[
                    Value::Int(step.number),
                    Value::Text(step.name),
                    Value::Bytes(&Sha256::digest(step.sql)),
                ],
            )?;
            Ok(Commit::Keep(false))
        });
        if done? {
            return Ok(());
        }
    }
}

/// Is nothing left to do? Read without the right to write.
pub(crate) fn up_to_date(sql: Sql<'_>, steps: &[Step]) -> Result<bool, BookError> {
    Ok(listed(sql)? && check(sql, steps)? == steps.len())
}

fn listed(sql: Sql<'_>) -> Result<bool, BookError> {
    sql.first(
        "SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'migration'",
        &[],
        |_| Ok(()),
    )
    .map(|found| found.is_some())
}

fn next<'a>(sql: Sql<'_>, steps: &'a [Step]) -> Result<Option<&'a Step>, BookError> {
    sql.run(LIST, &[])?;
    Ok(steps.get(check(sql, steps)?))
}

/// How many steps are done; they must be the first ones, each with its checksum.
fn check(sql: Sql<'_>, steps: &[Step]) -> Result<usize, BookError> {
    let done = sql.all(
        "SELECT number, checksum FROM migration ORDER BY number",
        &[],
        |row| Ok((row.int(0)?, row.bytes(1)?)),
    )?;
    for (at, (number, checksum)) in done.iter().enumerate() {
        let Some(step) = steps.get(at) else {
            return Err(BookError::Newer(*number));
        };
        if step.number != *number || Sha256::digest(step.sql).as_slice() != checksum.as_slice() {
            return Err(BookError::ForeignTables(*number));
        }
    }
    Ok(done.len())
}
