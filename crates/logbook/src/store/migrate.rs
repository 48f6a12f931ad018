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
pub(crate) const SQLITE: &[Step] = &[
    Step { number: 1, name: "book", sql: include_str!("../../migrations/sqlite/0001_book.sql") },
    Step { number: 2, name: "day", sql: include_str!("../../migrations/sqlite/0002_day.sql") },
    Step {
        number: 3,
        name: "counter",
        sql: include_str!("../../migrations/sqlite/0003_counter.sql"),
    },
];

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
            conn.execute_batch(step.sql).map_err(|error| BookError::sqlite(doing, error))?;
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
    let done = sql.all("SELECT number, checksum FROM migration ORDER BY number", &[], |row| {
        Ok((row.int(0)?, row.bytes(1)?))
    })?;
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

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once
    use super::*;
    use crate::store::sqlite::{connect, read_on};
    use rusqlite::OpenFlags;
    use std::path::Path;
    use std::process::{Command, Stdio};

    const GOOD: Step = Step {
        number: 2,
        name: "more",
        sql: "CREATE TABLE more (x INTEGER) STRICT; INSERT INTO more VALUES (1);",
    };
    /// Begins well and then fails.
    const BROKEN: Step = Step {
        number: 2,
        name: "more",
        sql: "CREATE TABLE more (x INTEGER) STRICT; INSERT INTO nowhere VALUES (1);",
    };
    /// Writes until it is stopped.
    const ENDLESS: Step = Step {
        number: 2,
        name: "more",
        sql: "CREATE TABLE more (x INTEGER) STRICT; WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL \
              SELECT i + 1 FROM n) INSERT INTO more SELECT i FROM n;",
    };
    const FOLDER: &str = "LOGBOOK_TEST_MIGRATE_IN";

    fn file(folder: &Path) -> Connection {
        let mode = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE;
        connect(&folder.join("book.sqlite"), mode).unwrap()
    }

    fn first() -> Step {
        Step { ..SQLITE[0] }
    }

    fn rows_of_more(conn: &Connection) -> Option<i64> {
        conn.query_row("SELECT COUNT(*) FROM more", [], |row| row.get(0)).ok()
    }

    #[test]
    fn a_step_that_fails_leaves_nothing_behind() {
        let folder = tempfile::tempdir().unwrap();
        let conn = file(folder.path());
        assert!(migrate(&conn, &[first(), BROKEN]).is_err());
        assert_eq!(rows_of_more(&conn), None);
        migrate(&conn, &[first(), GOOD]).unwrap();
        migrate(&conn, &[first(), GOOD]).unwrap();
        assert_eq!(rows_of_more(&conn), Some(1), "done once");
    }

    #[test]
    fn a_step_cut_by_a_kill_leaves_nothing_behind() {
        let folder = tempfile::tempdir().unwrap();
        let journal = folder.path().join("book.sqlite-journal");
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["--ignored", "--exact", "store::migrate::tests::endless_step"])
            .env(FOLDER, folder.path())
            .stdout(Stdio::null())
            .spawn()
            .unwrap();
        // The journal is there as soon as the endless step has begun to reach the disk.
        while !std::fs::metadata(&journal).is_ok_and(|there| there.len() > 0) {
            assert!(child.try_wait().unwrap().is_none(), "it ended by itself");
            std::thread::yield_now();
        }
        child.kill().unwrap();
        child.wait().unwrap();
        let conn = file(folder.path());
        assert_eq!(rows_of_more(&conn), None);
        migrate(&conn, &[first(), GOOD]).unwrap();
        assert_eq!(rows_of_more(&conn), Some(1));
    }

    #[test]
    #[ignore = "the process that the test above kills"]
    fn endless_step() {
        let folder = std::env::var_os(FOLDER).expect("started by the test above");
        migrate(&file(Path::new(&folder)), &[first(), ENDLESS]).unwrap();
    }

    #[test]
    fn a_changed_step_and_a_newer_book_are_refused() {
        let folder = tempfile::tempdir().unwrap();
        let conn = file(folder.path());
        migrate(&conn, &[first(), GOOD]).unwrap();
        let newer = migrate(&conn, &[first()]);
        assert!(matches!(newer, Err(BookError::Newer(2))), "{newer:?}");
        let changed = migrate(&conn, &[first(), BROKEN]);
        assert!(matches!(changed, Err(BookError::ForeignTables(2))), "{changed:?}");
        let fits: Result<bool, BookError> = read_on(&conn, |sql| up_to_date(sql, &[first(), GOOD]));
        assert!(fits.unwrap());
    }
}
