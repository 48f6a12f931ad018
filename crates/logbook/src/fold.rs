//! The fold: what the facts add up to, kept in tables beside them.
//!
//! Each fact is folded in the transaction that writes it, by one function for its kind. The fold
//! reads nothing but the fact, earlier facts and its own tables, so that folding all again gives
//! the same tables. Where a fact does not fit what stands, both are kept, the fact is marked, and
//! the safer state holds ([`load::SetState::safety`]).

pub(crate) mod day;
pub(crate) mod events;
pub(crate) mod hands;
mod kinds;
pub(crate) mod loading;
mod machines;
mod pouches;
mod records;
mod runs;
mod sets;
mod undo;
mod visits;

use crate::error::BookError;
use crate::fact::{Body, Fact, Stamp};
use crate::facts::{self, Head};
use crate::store::{Sql, Value};
use crate::wire::words::Word;
use measure::SalonId;

/// Raised whenever the tables or the rules of the fold change; an older fold is made again.
pub(crate) const VERSION: i64 = 4;

/// Every cached table, for dropping and for comparing.
pub(crate) const TABLES: [&str; 27] = [
    "salon",
    "person",
    "machine",
    "kind",
    "kind_move",
    "pouch",
    "pouch_step",
    "stop",
    "run_pouch",
    "opening",
    "run",
    "look",
    "record",
    "record_cycle",
    "verdict",
    "act_undone",
    "setting",
    "phrase",
    "visit",
    "visit_step",
    "shift",
    "closed",
    "tap",
    "hand_time",
    "event",
    "contradiction",
    "fold_state",
];

/// How many facts are read at a time when all are folded again.
const BATCH: u32 = 1_000;

/// One fact being folded.
pub(crate) struct Fold<'a> {
    sql: Sql<'a>,
    salon: SalonId,
    seq: u64,
    stamp: &'a Stamp,
}

/// Folds one fact.
pub(crate) fn apply(sql: Sql<'_>, salon: SalonId, fact: &Fact) -> Result<(), BookError> {
    let fold = Fold { sql, salon, seq: fact.seq, stamp: &fact.stamp };
    fold.hands(&fact.body)?;
    match &fact.body {
        Body::SalonOpened { salon, zone, book } => fold.salon_opened(*salon, zone, *book),
        Body::ZoneSet { zone } => fold.zone_set(zone),
        Body::PersonJoined { person, sign } => fold.person_joined(*person, sign),
        Body::PersonLeft { person } => fold.person_left(*person),
        Body::MachineAdded { .. }
        | Body::MachineClockSet { .. }
        | Body::MachineReads { .. }
        | Body::MachineOut { .. }
        | Body::MachineBack { .. } => fold.machine(&fact.body),
        Body::SetsOwned { kind, count } => fold.sets_owned(kind, *count),
        Body::Counted { kind, used, washed } => fold.counted(kind, *used, *washed),
        Body::Washed { kind, count } => fold.washed(kind, *count),
        Body::Packed { pouches } => fold.packed(pouches),
        Body::RunStarted { .. } => fold.run_started(&fact.body),
        Body::RunUnloaded { run } => fold.run_unloaded(*run),
        Body::RecordTaken { .. } => fold.record_taken(&fact.body),
        Body::RecordClaimed { record, cycle, run } => fold.record_claimed(*record, *cycle, *run),
        Body::Judged(judged) => fold.judged(judged),
        Body::Looked { run, .. } => fold.looked(*run),
        Body::Released { run, pouches, use_until } => fold.released(*run, pouches, *use_until),
        Body::SetAside { pouches, run, why } => fold.set_aside(pouches, *run, *why),
        Body::StopLifted { pouches, .. } => fold.stop_lifted(pouches),
        Body::Opened { pouch, visit, chair } => fold.opened(*pouch, *visit, *chair),
        Body::TakenApart { pouches } => fold.taken_apart(pouches),
        Body::Undone { act } => fold.undone(*act),
        Body::Day(day) => fold.day(day),
        Body::Loading(loading) => fold.loading(loading),
        Body::Upkeep(upkeep) => fold.upkeep(upkeep),
        Body::Counter(counter) => fold.counter(counter),
    }
}

impl Fold<'_> {
    /// Marks the fact: it did not fit what stood before it.
    fn contradict(&self) -> Result<(), BookError> {
        self.sql
            .run(
                "INSERT INTO contradiction (seq) VALUES ($1) ON CONFLICT (seq) DO NOTHING",
                &[Value::seq(self.seq)],
            )
            .map(drop)
    }

    /// When it happened.
    fn at(&self) -> Value<'static> {
        Value::Int(self.stamp.happened.millis())
    }

    /// Its place.
    fn here(&self) -> Value<'static> {
        Value::seq(self.seq)
    }
}

/// What the tables say about themselves.
struct State {
    head: Head,
    version: i64,
}

fn state(sql: Sql<'_>) -> Result<Option<State>, BookError> {
    sql.first("SELECT head_seq, head_hash, fold_version FROM fold_state", &[], |row| {
        Ok(State { head: Head { seq: row.count(0)?, hash: row.fixed(1)? }, version: row.int(2)? })
    })
}

/// Do the tables belong to the facts that are there?
///
/// # Errors
/// Lines that the tables know of and that are missing or changed: folding again would hide it.
pub(crate) fn fits(sql: Sql<'_>) -> Result<bool, BookError> {
    let Some(state) = state(sql)? else {
        return Ok(false);
    };
    let head = facts::head(sql)?;
    no_line_missing(sql, &state, head)?;
    Ok(state.version == VERSION && state.head == head)
}

/// The end of the chain that the tables have noted must still be there, as it was.
fn no_line_missing(sql: Sql<'_>, state: &State, head: Head) -> Result<(), BookError> {
    if head.seq < state.head.seq {
        return Err(BookError::LinesMissing { known: state.head.seq, found: head.seq });
    }
    let noted =
        sql.first("SELECT hash FROM facts WHERE seq = $1", &[Value::seq(state.head.seq)], |row| {
            row.fixed(0)
        })?;
    if noted == Some(state.head.hash) {
        Ok(())
    } else {
        Err(BookError::damaged(state.head.seq, "its hash is not the one that the book noted"))
    }
}

/// The end of the chain, for an act that is about to be written.
pub(crate) fn head_to_write_after(sql: Sql<'_>) -> Result<Head, BookError> {
    let head = facts::head(sql)?;
    let state = state(sql)?.ok_or(BookError::OtherFold)?;
    no_line_missing(sql, &state, head)?;
    if state.version == VERSION && state.head == head {
        Ok(head)
    } else {
        Err(BookError::OtherFold)
    }
}

/// Are the tables of this version of the fold? Another program may have folded them meanwhile.
pub(crate) fn same_version(sql: Sql<'_>) -> Result<(), BookError> {
    match state(sql)? {
        Some(state) if state.version == VERSION => Ok(()),
        _ => Err(BookError::OtherFold),
    }
}

/// Notes up to where the tables go.
pub(crate) fn note_head(sql: Sql<'_>, salon: SalonId, head: Head) -> Result<(), BookError> {
    sql.run(
        "INSERT INTO fold_state (salon, head_seq, head_hash, fold_version) \
         VALUES ($1, $2, $3, $4) ON CONFLICT (salon) DO UPDATE SET \
         head_seq = excluded.head_seq, head_hash = excluded.head_hash, \
         fold_version = excluded.fold_version",
        &[Value::id(&salon), Value::seq(head.seq), Value::Bytes(&head.hash), Value::Int(VERSION)],
    )
    .map(drop)
}

/// Drops the tables and folds every fact again; how many there were.
pub(crate) fn again(sql: Sql<'_>, salon: SalonId) -> Result<u64, BookError> {
    if let Some(state) = state(sql)? {
        no_line_missing(sql, &state, facts::head(sql)?)?;
    }
    for table in TABLES {
        sql.run(&format!("DELETE FROM {table}"), &[])?;
    }
    let mut last = 0;
    loop {
        let batch = facts::after(sql, last, BATCH)?;
        let Some(newest) = batch.last() else { break };
        last = newest.seq;
        for fact in &batch {
            apply(sql, salon, fact)?;
        }
    }
    note_head(sql, salon, facts::head(sql)?)?;
    Ok(last)
}

/// A word out of a table that only we write.
pub(crate) fn known_word<W: Word>(word: &str) -> Result<W, BookError> {
    W::from_word(word).map_err(crate::store::unreadable)
}
