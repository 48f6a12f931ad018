//! Runs: started, unloaded, looked at, released, stopped.

use super::{Fold, known_word};
use crate::error::BookError;
use crate::fact::{Body, StopReason};
use crate::store::Value;
use crate::wire::words::Word;
use load::SetState;
use measure::{Instant, MachineId, PouchId, RunId};

/// What the fold needs to know about a run.
pub(super) struct Going {
    pub(super) machine: MachineId,
    pub(super) unloaded: bool,
    pub(super) has_record: bool,
    pub(super) judged: Option<u64>,
    pub(super) undone: bool,
}

impl Fold<'_> {
    /// The run, if the book knows it.
    pub(super) fn going(&self, run: RunId) -> Result<Option<Going>, BookError> {
        self.sql.first(
            "SELECT machine, unloaded_ms, record, judged_seq, undone FROM run WHERE run = $1",
            &[Value::id(&run)],
            |row| {
                Ok(Going {
                    machine: row.id(0)?,
                    unloaded: row.maybe_int(1)?.is_some(),
                    has_record: row.maybe_bytes(2)?.is_some(),
                    judged: row.maybe_count(3)?,
                    undone: row.flag(4)?,
                })
            },
        )
    }

    /// Is the load of this run out of the machine?
    pub(super) fn unloaded(&self, run: RunId) -> Result<bool, BookError> {
        Ok(self.going(run)?.is_some_and(|going| going.unloaded))
    }

    /// A run begins.
    pub(super) fn run_started(&self, body: &Body) -> Result<(), BookError> {
        let Body::RunStarted { run, machine, number, programme, contents, pouches } = body else {
            return Ok(());
        };
        if self.going(*run)?.is_some() {
            return self.contradict();
        }
        self.sql.run(
            "INSERT INTO run (run, machine, number, programme, contents, started_ms, \
             started_by, started_seq, pouches, undone) \
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, 0)",
            &[
                Value::id(run),
                Value::id(machine),
                Value::Int((*number).into()),
                Value::maybe_text(programme.as_deref()),
                Value::Text(contents.word()),
                self.at(),
                Value::maybe_id(&self.stamp.sign),
                self.here(),
                Value::Int(i64::try_from(pouches.len()).unwrap_or(i64::MAX)),
            ],
        )?;
        self.occupy(*machine, *run)?;
        for (part, pouch) in (0_i64..).zip(pouches) {
            self.load(*run, part, *pouch)?;
        }
        Ok(())
    }

    /// The newest run is the one that is in the machine, even if nobody said that the last is out.
    fn occupy(&self, machine: MachineId, run: RunId) -> Result<(), BookError> {
        let before = self.sql.first(
            "SELECT running FROM machine WHERE machine = $1",
            &[Value::id(&machine)],
            |row| row.maybe_id(0).map(|running: Option<RunId>| running),
        )?;
        if before != Some(None) {
            self.contradict()?;
        }
        self.set_running(machine, Some(run)).map(drop)
    }

    /// A pouch goes into a run. One that was said to be elsewhere keeps its first run, and both
    /// runs reach it.
    pub(super) fn load(&self, run: RunId, part: i64, pouch: PouchId) -> Result<(), BookError> {
        self.sql.run(
            "INSERT INTO run_pouch (run, part, pouch) VALUES ($1, $2, $3)",
            &[Value::id(&run), Value::Int(part), Value::id(&pouch)],
        )?;
        let Some(held) = self.held(pouch)? else {
            return self.contradict();
        };
        self.advance(&held, &[SetState::Bagged], SetState::InMachine)?;
        self.sql
            .run(
                "UPDATE pouch SET run = COALESCE(run, $1) WHERE pouch = $2",
                &[Value::id(&run), Value::id(&pouch)],
            )
            .map(drop)
    }

    /// The load is out; it stays to check. A pouch that was stopped meanwhile stays stopped.
    pub(super) fn run_unloaded(&self, run: RunId) -> Result<(), BookError> {
        let Some(going) = self.going(run)? else {
            return self.contradict();
        };
        if going.unloaded || going.undone {
            return self.contradict();
        }
        self.sql
            .run("UPDATE run SET unloaded_ms = $1 WHERE run = $2", &[self.at(), Value::id(&run)])?;
        self.leave(going.machine, run)?;
        for pouch in self.pouches_of(run)? {
            if let Some(held) = self.held(pouch)?
                && held.state == SetState::InMachine
                && held.run == Some(run)
            {
                self.step(&held, SetState::ToCheck)?;
            }
        }
        Ok(())
    }

    /// The machine is free, if this run was the one in it.
    pub(super) fn leave(&self, machine: MachineId, run: RunId) -> Result<usize, BookError> {
        self.sql.run(
            "UPDATE machine SET running = NULL WHERE machine = $1 AND running = $2",
            &[Value::id(&machine), Value::id(&run)],
        )
    }

    /// Every pouch that was said to be in the run.
    pub(super) fn pouches_of(&self, run: RunId) -> Result<Vec<PouchId>, BookError> {
        self.sql.all(
            "SELECT pouch FROM run_pouch WHERE run = $1 ORDER BY part",
            &[Value::id(&run)],
            |row| row.id(0),
        )
    }

    /// Somebody looked.
    pub(super) fn looked(&self, run: RunId) -> Result<(), BookError> {
        self.sql
            .run("INSERT INTO look (seq, run) VALUES ($1, $2)", &[self.here(), Value::id(&run)])?;
        let touched = self.sql.run(
            "UPDATE run SET looked_ms = COALESCE(looked_ms, $1) WHERE run = $2",
            &[self.at(), Value::id(&run)],
        )?;
        self.expect_one(touched)
    }

    /// These may be used, if nothing safer was said about them.
    pub(super) fn released(
        &self,
        run: RunId,
        pouches: &[PouchId],
        use_until: Option<Instant>,
    ) -> Result<(), BookError> {
        let touched = self.sql.run(
            "UPDATE run SET released_ms = COALESCE(released_ms, $1) WHERE run = $2",
            &[self.at(), Value::id(&run)],
        )?;
        self.expect_one(touched)?;
        let to = match use_until {
            Some(_) => SetState::UseNow,
            None => SetState::Ready,
        };
        for pouch in pouches {
            let Some(held) = self.held(*pouch)? else {
                self.contradict()?;
                continue;
            };
            if held.run != Some(run) {
                self.contradict_pouch(*pouch)?;
            } else if self.advance(&held, &[SetState::ToCheck], to)? {
                self.sql.run(
                    "UPDATE pouch SET released_ms = $1, released_by = $2, use_until_ms = $3 \
                     WHERE pouch = $4",
                    &[
                        self.at(),
                        Value::maybe_id(&self.stamp.sign),
                        Value::maybe(use_until.map(Instant::millis)),
                        Value::id(pouch),
                    ],
                )?;
            }
        }
        Ok(())
    }

    /// A stop on the whole run. The first reason stands, unless a later one can never be lifted.
    pub(super) fn stop_run(&self, run: RunId, why: StopReason) -> Result<(), BookError> {
        match self.run_stop(run)? {
            None => self.contradict(),
            Some(Some(first)) if first.is_final() || !why.is_final() => Ok(()),
            Some(_) => self
                .sql
                .run(
                    "UPDATE run SET stopped_ms = COALESCE(stopped_ms, $1), stopped_why = $2 \
                     WHERE run = $3",
                    &[self.at(), Value::Text(why.word()), Value::id(&run)],
                )
                .map(drop),
        }
    }

    /// Why the run is stopped, if it is; `None` where the book does not know the run.
    fn run_stop(&self, run: RunId) -> Result<Option<Option<StopReason>>, BookError> {
        self.sql.first("SELECT stopped_why FROM run WHERE run = $1", &[Value::id(&run)], |row| {
            row.maybe_text(0)?.map(|word| known_word(&word)).transpose()
        })
    }

    /// The stop on a run goes when none of its pouches lies set aside any more, unless it can
    /// never be lifted.
    pub(super) fn lift_run(&self, run: RunId) -> Result<(), BookError> {
        if self.run_stop(run)?.flatten().is_some_and(StopReason::is_final) {
            return Ok(());
        }
        self.sql
            .run(
                "UPDATE run SET stopped_ms = NULL, stopped_why = NULL WHERE run = $1 \
                 AND NOT EXISTS (SELECT 1 FROM run_pouch \
                 JOIN pouch ON pouch.pouch = run_pouch.pouch \
                 WHERE run_pouch.run = $1 AND pouch.state = $2)",
                &[Value::id(&run), Value::Text(SetState::SetAside.word())],
            )
            .map(drop)
    }
}
