//! The same few calls on each library.

use crate::Answer;
use futures_util::TryStreamExt;
use sqlx::sqlite::{SqliteConnectOptions, SqliteJournalMode, SqliteSynchronous};
use sqlx::{ConnectOptions, Connection, Row};
use std::path::Path;

/// A value, in or out.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    Null,
    Int(i64),
    Text(String),
    Bytes(Vec<u8>),
}

/// What the work asks of a library. Asynchronous, so that the one that is so at heart is not made
/// to wait on a runtime for each statement; the other one answers at once.
pub trait Driver {
    /// Runs a statement.
    async fn run(&mut self, sql: &'static str, values: &[Value]) -> Answer<()>;
    /// Rows of `width` columns, as they come.
    async fn each(
        &mut self,
        sql: &'static str,
        values: &[Value],
        width: usize,
        take: &mut dyn FnMut(Vec<Value>) -> Answer<()>,
    ) -> Answer<()>;
}

/// rusqlite: a call is a call.
pub struct Rusqlite(rusqlite::Connection);

impl Rusqlite {
    pub fn open(path: &Path) -> Answer<Self> {
        let conn = rusqlite::Connection::open(path)?;
        conn.pragma_update(None, "journal_mode", "WAL")?;
        conn.pragma_update(None, "synchronous", "FULL")?;
        conn.set_prepared_statement_cache_capacity(160);
        Ok(Self(conn))
    }

    /// Several statements at once, without values.
    pub fn batch(&self, sql: &str) -> Answer<()> {
        Ok(self.0.execute_batch(sql)?)
    }
}

impl rusqlite::ToSql for Value {
    fn to_sql(&self) -> rusqlite::Result<rusqlite::types::ToSqlOutput<'_>> {
        use rusqlite::types::{ToSqlOutput, ValueRef};
        Ok(ToSqlOutput::Borrowed(match self {
            Self::Null => ValueRef::Null,
            Self::Int(number) => ValueRef::Integer(*number),
            Self::Text(text) => ValueRef::Text(text.as_bytes()),
            Self::Bytes(bytes) => ValueRef::Blob(bytes),
        }))
    }
}

impl Driver for Rusqlite {
    async fn run(&mut self, sql: &'static str, values: &[Value]) -> Answer<()> {
        let mut statement = self.0.prepare_cached(sql)?;
        for (at, value) in values.iter().enumerate() {
            statement.raw_bind_parameter(at + 1, value)?;
        }
        statement.raw_execute()?;
        Ok(())
    }

    async fn each(
        &mut self,
        sql: &'static str,
        values: &[Value],
        width: usize,
        take: &mut dyn FnMut(Vec<Value>) -> Answer<()>,
    ) -> Answer<()> {
        use rusqlite::types::ValueRef;
        let mut statement = self.0.prepare_cached(sql)?;
        for (at, value) in values.iter().enumerate() {
            statement.raw_bind_parameter(at + 1, value)?;
        }
        let mut rows = statement.raw_query();
        while let Some(row) = rows.next()? {
            let mut out = Vec::with_capacity(width);
            for at in 0..width {
                out.push(match row.get_ref(at)? {
                    ValueRef::Null => Value::Null,
                    ValueRef::Integer(number) => Value::Int(number),
                    ValueRef::Real(_) => return Err("a fraction".into()),
                    ValueRef::Text(text) => Value::Text(std::str::from_utf8(text)?.to_owned()),
                    ValueRef::Blob(bytes) => Value::Bytes(bytes.to_vec()),
                });
            }
            take(out)?;
        }
        Ok(())
    }
}

/// sqlx: a call is a message to a thread that owns the connection.
pub struct Sqlx(sqlx::SqliteConnection);

impl Sqlx {
    pub async fn open(path: &Path) -> Answer<Self> {
        let options = SqliteConnectOptions::new()
            .filename(path)
            .journal_mode(SqliteJournalMode::Wal)
            .synchronous(SqliteSynchronous::Full)
            .statement_cache_capacity(160)
            .disable_statement_logging();
        Ok(Self(sqlx::SqliteConnection::connect_with(&options).await?))
    }
}

type Query<'q> = sqlx::query::Query<'q, sqlx::Sqlite, sqlx::sqlite::SqliteArguments>;

fn query(sql: &'static str, values: &[Value]) -> Query<'static> {
    values
        .iter()
        .fold(sqlx::query(sql), |query, value| match value {
            Value::Null => query.bind(None::<i64>),
            Value::Int(number) => query.bind(*number),
            Value::Text(text) => query.bind(text.clone()),
            Value::Bytes(bytes) => query.bind(bytes.clone()),
        })
}

fn value(row: &sqlx::sqlite::SqliteRow, at: usize) -> Answer<Value> {
    use sqlx::{TypeInfo, ValueRef};
    let raw = row.try_get_raw(at)?;
    if raw.is_null() {
        return Ok(Value::Null);
    }
    let kind = raw.type_info();
    Ok(match kind.name() {
        "INTEGER" => Value::Int(row.try_get(at)?),
        "TEXT" => Value::Text(row.try_get(at)?),
        "BLOB" => Value::Bytes(row.try_get(at)?),
        other => return Err(format!("a column of type {other}").into()),
    })
}

impl Driver for Sqlx {
    async fn run(&mut self, sql: &'static str, values: &[Value]) -> Answer<()> {
        query(sql, values).execute(&mut self.0).await?;
        Ok(())
    }

    async fn each(
        &mut self,
        sql: &'static str,
        values: &[Value],
        width: usize,
        take: &mut dyn FnMut(Vec<Value>) -> Answer<()>,
    ) -> Answer<()> {
        let mut rows = query(sql, values).fetch(&mut self.0);
        while let Some(row) = rows.try_next().await? {
            take(
                (0..width)
                    .map(|at| value(&row, at))
                    .collect::<Answer<Vec<_>>>()?,
            )?;
        }
        Ok(())
    }
}
