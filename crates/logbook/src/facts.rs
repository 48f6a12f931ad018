//! Reading and writing the table of facts.
//!
//! The same checks stand before writing and after reading: the body comes back from its stored
//! form as it was, its text is the one defined form, and the line follows the one before it.

use crate::chain::{Hash, Line, START};
use crate::error::BookError;
use crate::fact::{Body, Fact, Known, Stamp};
use crate::store::{Row, Sql, Value};
use crate::wire::words::Word;
use crate::wire::{self, Stored, tree};
use measure::{ActId, Instant, SalonId};

/// Where the chain ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Head {
    pub(crate) seq: u64,
    pub(crate) hash: Hash,
}

impl Head {
    /// Of a book without a line.
    pub(crate) const EMPTY: Self = Self { seq: 0, hash: START };
}

/// The columns that [`line`] reads, in its order.
const COLUMNS: &str = "seq, salon, act, part, kind, version, happened_ms, written_ms, station, \
                       sign, known, body, prev, hash";

/// A line with what the table says about its place.
pub(crate) struct Kept {
    pub(crate) line: Line,
    pub(crate) prev: Hash,
    pub(crate) hash: Hash,
}

/// Where the chain ends now.
pub(crate) fn head(sql: Sql<'_>) -> Result<Head, BookError> {
    let last = sql.first("SELECT seq, hash FROM facts ORDER BY seq DESC LIMIT 1", &[], |row| {
        Ok(Head { seq: row.count(0)?, hash: row.fixed(1)? })
    })?;
    Ok(last.unwrap_or(Head::EMPTY))
}

/// Appends one fact after `head`; the fact with its place, and the new head.
pub(crate) fn append(
    sql: Sql<'_>,
    salon: SalonId,
    head: Head,
    part: u32,
    (stamp, body): (&Stamp, Body),
) -> Result<(Fact, Head), BookError> {
    let unfit = BookError::Unfit;
    crate::check::body(&body).map_err(unfit)?;
    let stored = wire::store(&body).map_err(unfit)?;
    let text = tree::text(&stored.tree).map_err(unfit)?;
    let line = Line {
        salon,
        seq: head.seq + 1,
        act: stamp.act,
        part,
        kind: stored.kind,
        version: stored.version,
        happened_ms: stamp.happened.millis(),
        written_ms: stamp.written.millis(),
        station: stamp.station,
        sign: stamp.sign,
        known: stamp.known.word().to_owned(),
        tree: stored.tree,
    };
    let hash = line.hash(&head.hash).map_err(unfit)?;
    insert(sql, &line, &text, &head.hash, &hash)?;
    let fact = fact(line).map_err(|why| unfit(format!("BUG: it does not come back: {why}")))?;
    if fact.body != body {
        return Err(unfit("BUG: it comes back as another fact".to_owned()));
    }
    let head = Head { seq: fact.seq, hash };
    Ok((fact, head))
}

fn insert(
    sql: Sql<'_>,
    line: &Line,
    text: &str,
    prev: &Hash,
    hash: &Hash,
) -> Result<(), BookError> {
    sql.run(
        "INSERT INTO facts (seq, salon, act, part, kind, version, happened_ms, written_ms, \
         station, sign, known, body, prev, hash) \
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14)",
        &[
            Value::seq(line.seq),
            Value::id(&line.salon),
            Value::id(&line.act),
            Value::Int(line.part.into()),
            Value::Text(&line.kind),
            Value::Int(line.version),
            Value::Int(line.happened_ms),
            Value::Int(line.written_ms),
            Value::id(&line.station),
            Value::maybe_id(&line.sign),
            Value::Text(&line.known),
            Value::Text(text),
            Value::Bytes(prev),
            Value::Bytes(hash),
        ],
    )
    .map(drop)
}

/// A line from a row of [`COLUMNS`]. What a row cannot say makes the line a damaged one.
pub(crate) fn line(row: &Row<'_, '_>) -> Result<Kept, BookError> {
    let number = row.int(0)?;
    let seq = u64::try_from(number)
        .map_err(|_| BookError::damaged(0, format!("a line has the number {number}")))?;
    let read = || -> Result<(Kept, String), BookError> {
        let text = row.text(11)?;
        let tree = serde_json::from_str(&text)
            .map_err(|_| BookError::damaged(seq, "its body is not in the form that is written"))?;
        let line = Line {
            salon: row.id(1)?,
            seq,
            act: row.id(2)?,
            part: row.count(3)?,
            kind: row.text(4)?,
            version: row.int(5)?,
            happened_ms: row.int(6)?,
            written_ms: row.int(7)?,
            station: row.id(8)?,
            sign: row.maybe_id(9)?,
            known: row.text(10)?,
            tree,
        };
        let kept = Kept { line, prev: row.fixed(12)?, hash: row.fixed(13)? };
        Ok((kept, text))
    };
    let (kept, text) = read().map_err(|error| match error {
        BookError::Storage { source, .. } => BookError::damaged(seq, source.to_string()),
        other => other,
    })?;
    match tree::text(&kept.line.tree) {
        Ok(defined) if defined == text => Ok(kept),
        _ => Err(BookError::damaged(seq, "its body is not in the form that is written")),
    }
}

/// The fact that a line holds; an error is a sentence.
pub(crate) fn fact(line: Line) -> Result<Fact, String> {
    let known = Known::from_word(&line.known)?;
    let body = wire::load(Stored { kind: line.kind, version: line.version, tree: line.tree })?;
    crate::check::body(&body)?;
    Ok(Fact {
        seq: line.seq,
        stamp: Stamp {
            act: line.act,
            happened: Instant::from_millis(line.happened_ms),
            written: Instant::from_millis(line.written_ms),
            station: line.station,
            sign: line.sign,
            known,
        },
        body,
    })
}

fn read(row: &Row<'_, '_>) -> Result<Fact, BookError> {
    let kept = line(row)?;
    let seq = kept.line.seq;
    fact(kept.line).map_err(|why| BookError::damaged(seq, why))
}

/// Hands over every line from the first on.
pub(crate) fn each_line(
    sql: Sql<'_>,
    take: impl FnMut(&Row<'_, '_>) -> Result<(), BookError>,
) -> Result<(), BookError> {
    sql.each(&format!("SELECT {COLUMNS} FROM facts ORDER BY seq"), &[], take)
}

/// Up to `limit` facts after `seq`, in order.
pub(crate) fn after(sql: Sql<'_>, seq: u64, limit: u32) -> Result<Vec<Fact>, BookError> {
    sql.all(
        &format!("SELECT {COLUMNS} FROM facts WHERE seq > $1 ORDER BY seq LIMIT $2"),
        &[Value::seq(seq), Value::Int(limit.into())],
        read,
    )
}

/// Up to `limit` facts before `seq`, the newest first.
pub(crate) fn before(sql: Sql<'_>, seq: u64, limit: u32) -> Result<Vec<Fact>, BookError> {
    sql.all(
        &format!("SELECT {COLUMNS} FROM facts WHERE seq < $1 ORDER BY seq DESC LIMIT $2"),
        &[Value::seq(seq), Value::Int(limit.into())],
        read,
    )
}

/// The fact at this place.
pub(crate) fn at(sql: Sql<'_>, seq: u64) -> Result<Option<Fact>, BookError> {
    sql.first(&format!("SELECT {COLUMNS} FROM facts WHERE seq = $1"), &[Value::seq(seq)], read)
}

/// The facts whose places a question answers, in the order in which they were written.
pub(crate) fn chosen(
    sql: Sql<'_>,
    places: &str,
    values: &[Value<'_>],
) -> Result<Vec<Fact>, BookError> {
    let question = format!("SELECT {COLUMNS} FROM facts WHERE seq IN ({places}) ORDER BY seq");
    sql.all(&question, values, read)
}

/// The facts of one act, in order.
pub(crate) fn of_act(sql: Sql<'_>, salon: SalonId, act: ActId) -> Result<Vec<Fact>, BookError> {
    sql.all(
        &format!("SELECT {COLUMNS} FROM facts WHERE salon = $1 AND act = $2 ORDER BY part"),
        &[Value::id(&salon), Value::id(&act)],
        read,
    )
}

/// First and last place of an act that is written already.
pub(crate) fn span_of_act(
    sql: Sql<'_>,
    salon: SalonId,
    act: ActId,
) -> Result<Option<(u64, u64)>, BookError> {
    let span = sql.first(
        "SELECT MIN(seq), MAX(seq) FROM facts WHERE salon = $1 AND act = $2",
        &[Value::id(&salon), Value::id(&act)],
        |row| Ok((row.maybe_count(0)?, row.maybe_count(1)?)),
    )?;
    Ok(match span {
        Some((Some(first), Some(last))) => Some((first, last)),
        _ => None,
    })
}
