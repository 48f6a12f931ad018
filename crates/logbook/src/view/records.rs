//! Records, and the verdicts on them.

use super::{JudgedFact, TakenCycle, View};
use crate::error::BookError;
use crate::fact::{Body, DrawerRef, Fact, Way};
use crate::facts;
use crate::fold::known_word;
use crate::store::{Row, Value};
use measure::{Instant, MachineId, RecordHash, RunId};

/// How many records are offered at most where one may continue another.
const MOST_SHORTER: i64 = 200;

/// A record, whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TakenRecord {
    /// What it is recognised by.
    pub record: RecordHash,
    /// Where its bytes lie.
    pub kept: DrawerRef,
    /// How many bytes.
    pub bytes: u64,
    /// How it came.
    pub way: Way,
    /// When it came in.
    pub taken: Instant,
    /// How many cycles are in it.
    pub cycles: u32,
    /// The shorter record that it begins with and replaces.
    pub continues: Option<RecordHash>,
    /// The longer record that has replaced it.
    pub replaced_by: Option<RecordHash>,
}

const CYCLE: &str = "SELECT record.record, record_cycle.cycle, record.taken_ms, record.way, \
    record.kept_entry, record.kept_commitment, record_cycle.start_clock, record_cycle.run, \
    record_cycle.judged_seq, record_cycle.outcome, record.replaced_by \
    FROM record_cycle JOIN record ON record.record = record_cycle.record";
const RECORD: &str = "SELECT record, kept_entry, kept_commitment, bytes, way, taken_ms, cycles, \
    continues, replaced_by FROM record";

impl View<'_> {
    /// Cycles that no run has claimed, of records that no longer one has replaced.
    pub fn taken_unclaimed(&self) -> Result<Vec<TakenCycle>, BookError> {
        self.sql.all(
            &format!(
                "{CYCLE} WHERE record_cycle.run IS NULL AND record.replaced_by IS NULL \
                 ORDER BY record.taken_seq, record_cycle.cycle"
            ),
            &[],
            cycle_row,
        )
    }

    /// The cycles of one record.
    pub fn taken(&self, record: RecordHash) -> Result<Vec<TakenCycle>, BookError> {
        self.sql.all(
            &format!("{CYCLE} WHERE record_cycle.record = $1 ORDER BY record_cycle.cycle"),
            &[Value::Bytes(record.bytes())],
            cycle_row,
        )
    }

    /// The cycles that a run has claimed, the one that counts first: a longer record that
    /// replaced a shorter one stands before it.
    pub fn taken_of_run(&self, run: RunId) -> Result<Vec<TakenCycle>, BookError> {
        self.sql.all(
            &format!(
                "{CYCLE} WHERE record_cycle.run = $1 \
                 ORDER BY record.taken_seq DESC, record_cycle.cycle"
            ),
            &[Value::id(&run)],
            cycle_row,
        )
    }

    /// The cycles that runs of this machine have claimed, of records that no longer one has
    /// replaced; without runs whose start was undone.
    pub fn taken_of_machine(&self, machine: MachineId) -> Result<Vec<TakenCycle>, BookError> {
        self.sql.all(
            &format!(
                "{CYCLE} JOIN run ON run.run = record_cycle.run WHERE run.machine = $1 \
                 AND run.undone = 0 AND record.replaced_by IS NULL \
                 ORDER BY record.taken_seq, record_cycle.cycle"
            ),
            &[Value::id(&machine)],
            cycle_row,
        )
    }

    /// Has this very file come in before?
    pub fn record_by_hash(&self, hash: RecordHash) -> Result<Option<TakenRecord>, BookError> {
        self.sql.first(
            &format!("{RECORD} WHERE record = $1"),
            &[Value::Bytes(hash.bytes())],
            record_row,
        )
    }

    /// Records below this many bytes that none has replaced, the newest first, at most 200: a
    /// longer file may be one of them, carried on.
    pub fn records_shorter_than(&self, bytes: u64) -> Result<Vec<TakenRecord>, BookError> {
        self.sql.all(
            &format!(
                "{RECORD} WHERE bytes < $1 AND replaced_by IS NULL \
                 ORDER BY taken_seq DESC LIMIT $2"
            ),
            &[Value::Int(i64::try_from(bytes).unwrap_or(i64::MAX)), Value::Int(MOST_SHORTER)],
            record_row,
        )
    }

    /// The verdict at this place; `None` where another fact stands there.
    pub fn judged(&self, seq: u64) -> Result<Option<JudgedFact>, BookError> {
        Ok(facts::at(self.sql, seq)?.and_then(judged_fact))
    }

    /// Every verdict on a run, the newest first.
    pub fn judged_of_run(&self, run: RunId) -> Result<Vec<JudgedFact>, BookError> {
        let places = self.sql.all(
            "SELECT seq FROM verdict WHERE run = $1 ORDER BY seq DESC",
            &[Value::id(&run)],
            |row| row.count::<u64>(0),
        )?;
        let mut verdicts = Vec::with_capacity(places.len());
        for seq in places {
            verdicts.extend(self.judged(seq)?);
        }
        Ok(verdicts)
    }
}

fn judged_fact(fact: Fact) -> Option<JudgedFact> {
    match fact.body {
        Body::Judged(judged) => {
            Some(JudgedFact { seq: fact.seq, written: fact.stamp.written, judged: *judged })
        }
        _ => None,
    }
}

fn maybe_record(row: &Row<'_, '_>, at: usize) -> Result<Option<RecordHash>, BookError> {
    match row.maybe_bytes(at)? {
        Some(_) => Ok(Some(RecordHash::from_bytes(row.fixed(at)?))),
        None => Ok(None),
    }
}

fn cycle_row(row: &Row<'_, '_>) -> Result<TakenCycle, BookError> {
    Ok(TakenCycle {
        record: RecordHash::from_bytes(row.fixed(0)?),
        cycle: row.count(1)?,
        taken: Instant::from_millis(row.int(2)?),
        way: known_word(&row.text(3)?)?,
        kept: DrawerRef { entry: row.id(4)?, commitment: row.fixed(5)? },
        start_clock: row.maybe_text(6)?,
        run: row.maybe_id(7)?,
        judged: row.maybe_count(8)?,
        outcome: row.maybe_text(9)?.map(|word| known_word(&word)).transpose()?,
        replaced_by: maybe_record(row, 10)?,
    })
}

fn record_row(row: &Row<'_, '_>) -> Result<TakenRecord, BookError> {
    Ok(TakenRecord {
        record: RecordHash::from_bytes(row.fixed(0)?),
        kept: DrawerRef { entry: row.id(1)?, commitment: row.fixed(2)? },
        bytes: row.count(3)?,
        way: known_word(&row.text(4)?)?,
        taken: Instant::from_millis(row.int(5)?),
        cycles: row.count(6)?,
        continues: maybe_record(row, 7)?,
        replaced_by: maybe_record(row, 8)?,
    })
}
