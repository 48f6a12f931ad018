//! Runs.

use super::{Run, View};
use crate::error::BookError;
use crate::fact::Body;
use crate::facts;
use crate::fold::known_word;
use crate::store::{Row, Value};
use load::SetState;
use measure::{Instant, MachineId, RecordHash, RunId};

pub(super) const SELECT: &str = "SELECT run.run, run.machine, machine.number, run.number, \
    run.programme, run.contents, run.started_ms, run.started_by, run.unloaded_ms, run.pouches, \
    run.record, run.record_cycle, run.judged_seq, run.outcome, run.looked_ms, run.released_ms, \
    run.stopped_ms, run.stopped_why, run.undone \
    FROM run LEFT JOIN machine ON machine.machine = run.machine";

impl View<'_> {
    /// How many runs its machine had started when this one had, itself included; those that were
    /// taken back do not count.
    pub fn place_of_run(&self, run: &Run) -> Result<u64, BookError> {
        let count = self.sql.first(
            "SELECT COUNT(*) FROM run WHERE machine = $1 AND undone = 0 AND started_seq <= \
             (SELECT started_seq FROM run WHERE run = $2)",
            &[Value::id(&run.machine), Value::id(&run.run)],
            |row| row.count(0),
        )?;
        Ok(count.unwrap_or(0))
    }

    /// A run, also one whose start was undone.
    pub fn run(&self, id: RunId) -> Result<Option<Run>, BookError> {
        self.sql.first(&format!("{SELECT} WHERE run.run = $1"), &[Value::id(&id)], run_row)
    }

    /// Runs that still ask for something: in the machine, or with a pouch to check. A run goes
    /// from this list when its load is out and every pouch is released, set aside or taken apart.
    pub fn runs_open(&self) -> Result<Vec<Run>, BookError> {
        self.sql.all(
            &format!(
                "{SELECT} WHERE run.undone = 0 AND (run.unloaded_ms IS NULL OR run.run IN \
                 (SELECT run_pouch.run FROM pouch \
                 JOIN run_pouch ON run_pouch.pouch = pouch.pouch AND run_pouch.run = pouch.run \
                 WHERE pouch.state IN ($1, $2))) ORDER BY run.started_ms, run.started_seq"
            ),
            &[Value::Text(SetState::InMachine.word()), Value::Text(SetState::ToCheck.word())],
            run_row,
        )
    }

    /// The runs of a machine, or of all, that started at or after `from` and before `to`; also
    /// those whose start was undone.
    pub fn runs_between(
        &self,
        machine: Option<MachineId>,
        from: Instant,
        to: Instant,
    ) -> Result<Vec<Run>, BookError> {
        let span = [Value::Int(from.millis()), Value::Int(to.millis())];
        match machine {
            Some(machine) => self.sql.all(
                &format!(
                    "{SELECT} WHERE run.machine = $3 AND run.started_ms >= $1 \
                     AND run.started_ms < $2 ORDER BY run.started_ms, run.started_seq"
                ),
                &[span[0], span[1], Value::id(&machine)],
                run_row,
            ),
            None => self.sql.all(
                &format!(
                    "{SELECT} WHERE run.started_ms >= $1 AND run.started_ms < $2 \
                     ORDER BY run.started_ms, run.started_seq"
                ),
                &span,
                run_row,
            ),
        }
    }

    /// The last `n` runs of a machine that are over, the newest first; of one programme, or of
    /// any.
    pub fn last_runs(
        &self,
        machine: MachineId,
        programme: Option<&str>,
        n: u32,
    ) -> Result<Vec<Run>, BookError> {
        self.sql.all(
            &format!(
                "{SELECT} WHERE run.machine = $1 AND run.undone = 0 \
                 AND run.unloaded_ms IS NOT NULL AND ($2 IS NULL OR run.programme = $2) \
                 ORDER BY run.started_ms DESC, run.started_seq DESC LIMIT $3"
            ),
            &[Value::id(&machine), Value::maybe_text(programme), Value::Int(n.into())],
            run_row,
        )
    }

    /// Every look at a run (each a [`Body::Looked`]), the first one first.
    pub fn looks_of_run(&self, run: RunId) -> Result<Vec<Body>, BookError> {
        let places = self.sql.all(
            "SELECT seq FROM look WHERE run = $1 ORDER BY seq",
            &[Value::id(&run)],
            |row| row.count::<u64>(0),
        )?;
        let mut looks = Vec::with_capacity(places.len());
        for seq in places {
            looks.extend(facts::at(self.sql, seq)?.map(|fact| fact.body));
        }
        Ok(looks)
    }

    /// The number of the next run at this machine on the day from the first moment up to the second.
    /// A number that was given stays given, even if that start was undone: it may be on a label.
    pub fn next_run_number(
        &self,
        machine: MachineId,
        (from, to): (Instant, Instant),
    ) -> Result<u32, BookError> {
        let last = self.sql.first(
            "SELECT MAX(number) FROM run WHERE machine = $1 AND started_ms >= $2 AND started_ms < $3",
            &[Value::id(&machine), Value::Int(from.millis()), Value::Int(to.millis())],
            |row| row.maybe_count::<u32>(0),
        )?;
        Ok(last.flatten().unwrap_or(0).saturating_add(1))
    }
}

/// Reads a row of [`SELECT`].
pub(super) fn run_row(row: &Row<'_, '_>) -> Result<Run, BookError> {
    let moment = |at| Ok::<_, BookError>(row.maybe_int(at)?.map(Instant::from_millis));
    let record = match (row.maybe_bytes(10)?, row.maybe_count(11)?) {
        (Some(_), Some(cycle)) => Some((RecordHash::from_bytes(row.fixed(10)?), cycle)),
        _ => None,
    };
    let stopped = match (moment(16)?, row.maybe_text(17)?) {
        (Some(at), Some(why)) => Some((at, known_word(&why)?)),
        _ => None,
    };
    Ok(Run {
        run: row.id(0)?,
        machine: row.id(1)?,
        // A run may name a machine that nobody has added: 0 stands on no door.
        machine_number: row.maybe_count(2)?.unwrap_or(0),
        number: row.count(3)?,
        programme: row.maybe_text(4)?,
        contents: known_word(&row.text(5)?)?,
        started: (Instant::from_millis(row.int(6)?), row.maybe_id(7)?),
        unloaded: moment(8)?,
        pouches: row.count(9)?,
        record,
        judged: row.maybe_count(12)?,
        outcome: row.maybe_text(13)?.map(|word| known_word(&word)).transpose()?,
        looked: moment(14)?,
        released: moment(15)?,
        stopped,
        undone: row.flag(18)?,
    })
}
