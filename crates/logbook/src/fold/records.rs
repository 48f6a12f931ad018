//! Records taken in, claimed by runs, and verdicts.

use super::Fold;
use super::kinds::Fit;
use crate::error::BookError;
use crate::fact::{Basis, Body, Judged};
use crate::store::Value;
use crate::wire::words::Word;
use measure::{RecordHash, RunId};

impl Fold<'_> {
    /// A record came in. One that is known already is not taken twice.
    pub(super) fn record_taken(&self, body: &Body) -> Result<(), BookError> {
        let Body::RecordTaken { record, kept, bytes, way, continues, cycles } = body else {
            return Ok(());
        };
        let touched = self.sql.run(
            "INSERT INTO record (record, kept_entry, kept_commitment, bytes, way, taken_ms, \
             taken_seq, cycles, continues) VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9) \
             ON CONFLICT (record) DO NOTHING",
            &[
                Value::Bytes(record.bytes()),
                Value::id(&kept.entry),
                Value::Bytes(&kept.commitment),
                Value::Int(i64::try_from(*bytes).unwrap_or(i64::MAX)),
                Value::Text(way.word()),
                self.at(),
                self.here(),
                Value::Int((*cycles).into()),
                continues.as_ref().map_or(Value::Null, |shorter| Value::Bytes(shorter.bytes())),
            ],
        )?;
        if touched == 0 {
            return self.contradict();
        }
        for cycle in 0..*cycles {
            self.sql.run(
                "INSERT INTO record_cycle (record, cycle) VALUES ($1, $2)",
                &[Value::Bytes(record.bytes()), Value::Int(cycle.into())],
            )?;
        }
        match continues {
            Some(shorter) => self.replace(*shorter, *record),
            None => Ok(()),
        }
    }

    fn replace(&self, shorter: RecordHash, longer: RecordHash) -> Result<(), BookError> {
        let touched = self.sql.run(
            "UPDATE record SET replaced_by = $1 WHERE record = $2 AND replaced_by IS NULL",
            &[Value::Bytes(longer.bytes()), Value::Bytes(shorter.bytes())],
        )?;
        self.expect_one(touched)
    }

    /// A cycle belongs to a run. A run that has a record keeps it, unless that was replaced by a
    /// longer one; a cycle that has a run keeps it.
    pub(super) fn record_claimed(
        &self,
        record: RecordHash,
        cycle: u32,
        run: RunId,
    ) -> Result<(), BookError> {
        let free_cycle = self.sql.first(
            "SELECT run FROM record_cycle WHERE record = $1 AND cycle = $2",
            &[Value::Bytes(record.bytes()), Value::Int(cycle.into())],
            |row| Ok(row.maybe_bytes(0)?.is_none()),
        )?;
        let free_run = self.sql.first(
            "SELECT 1 FROM run WHERE run = $1 AND (record IS NULL OR EXISTS \
             (SELECT 1 FROM record WHERE record.record = run.record \
             AND record.replaced_by IS NOT NULL))",
            &[Value::id(&run)],
            |_| Ok(()),
        )?;
        if free_cycle != Some(true) || free_run.is_none() {
            return self.contradict();
        }
        self.sql.run(
            "UPDATE record_cycle SET run = $1 WHERE record = $2 AND cycle = $3",
            &[Value::id(&run), Value::Bytes(record.bytes()), Value::Int(cycle.into())],
        )?;
        self.set_record(run, Some((record, cycle)))
    }

    fn set_record(&self, run: RunId, cycle: Option<(RecordHash, u32)>) -> Result<(), BookError> {
        let (record, cycle) = match &cycle {
            Some((record, cycle)) => (Value::Bytes(record.bytes()), Value::Int((*cycle).into())),
            None => (Value::Null, Value::Null),
        };
        self.sql
            .run(
                "UPDATE run SET record = $1, record_cycle = $2 WHERE run = $3",
                &[record, cycle, Value::id(&run)],
            )
            .map(drop)
    }

    /// Takes a claim back. A verdict that rests on that cycle no longer counts for the run.
    pub(super) fn unclaim(
        &self,
        record: RecordHash,
        cycle: u32,
        run: RunId,
    ) -> Result<Fit, BookError> {
        let place = [Value::id(&run), Value::Bytes(record.bytes()), Value::Int(cycle.into())];
        let touched = self.sql.run(
            "UPDATE record_cycle SET run = NULL WHERE run = $1 AND record = $2 AND cycle = $3",
            &place,
        )?;
        if touched == 0 {
            return Ok(Fit::No);
        }
        let current = self.sql.first(
            "SELECT 1 FROM run WHERE run = $1 AND record = $2 AND record_cycle = $3",
            &place,
            |_| Ok(()),
        )?;
        if current.is_some() {
            let earlier = self.claimed_before(run)?;
            self.set_record(run, earlier)?;
        }
        self.sql.run(
            "UPDATE run SET judged_seq = NULL, outcome = NULL WHERE run = $1 AND judged_seq IN \
             (SELECT seq FROM verdict WHERE record = $2 AND cycle = $3)",
            &place,
        )?;
        Ok(Fit::Yes)
    }

    /// The shorter record that a longer one had taken over from.
    fn claimed_before(&self, run: RunId) -> Result<Option<(RecordHash, u32)>, BookError> {
        self.sql.first(
            "SELECT record_cycle.record, record_cycle.cycle FROM record_cycle \
             JOIN record ON record.record = record_cycle.record WHERE record_cycle.run = $1 \
             ORDER BY record.taken_seq DESC, record_cycle.cycle LIMIT 1",
            &[Value::id(&run)],
            |row| Ok((RecordHash::from_bytes(row.fixed(0)?), row.count(1)?)),
        )
    }

    /// A verdict. It counts from now on for its cycle and for its run; what was released before
    /// and is worse now, the act sets aside.
    pub(super) fn judged(&self, judged: &Judged) -> Result<(), BookError> {
        let (record, cycle) = match &judged.basis {
            Basis::Record { record, cycle } => {
                (Value::Bytes(record.bytes()), Value::Int((*cycle).into()))
            }
            Basis::Reading { .. } => (Value::Null, Value::Null),
        };
        let outcome = Value::Text(judged.outcome.word());
        self.sql.run(
            "INSERT INTO verdict (seq, run, record, cycle) VALUES ($1, $2, $3, $4)",
            &[self.here(), Value::maybe_id(&judged.run), record, cycle],
        )?;
        if let Basis::Record { .. } = judged.basis {
            let touched = self.sql.run(
                "UPDATE record_cycle SET judged_seq = $1, outcome = $2, start_clock = $3 \
                 WHERE record = $4 AND cycle = $5",
                &[
                    self.here(),
                    outcome,
                    Value::maybe_text(judged.start_clock.as_deref()),
                    record,
                    cycle,
                ],
            )?;
            self.expect_one(touched)?;
        }
        let Some(run) = judged.run else {
            return Ok(());
        };
        let touched = self.sql.run(
            "UPDATE run SET judged_seq = $1, outcome = $2 WHERE run = $3",
            &[self.here(), outcome, Value::id(&run)],
        )?;
        self.expect_one(touched)
    }
}
