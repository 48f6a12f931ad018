//! Taking an act back: the opposite of each of its facts, the last one first.
//!
//! A stop, a release, a verdict or a record taken has no opposite here; the act that takes a
//! release back writes a stop. Where the state has moved on since, the opposite would be a guess:
//! the fact stays in force and the undoing is marked.

use super::Fold;
use super::kinds::Fit;
use crate::error::BookError;
use crate::fact::{Body, Fact};
use crate::facts;
use crate::store::Value;
use measure::{ActId, PouchId, RunId};

impl Fold<'_> {
    /// Takes an act back. Taking it back twice changes nothing.
    pub(super) fn undone(&self, act: ActId) -> Result<(), BookError> {
        let undone = facts::of_act(self.sql, self.salon, act)?;
        let earlier: Vec<Fact> = undone.into_iter().filter(|fact| fact.seq < self.seq).collect();
        if earlier.is_empty() {
            return self.contradict();
        }
        let first_time = self.sql.run(
            "INSERT INTO act_undone (act, undone_by, seq) VALUES ($1, $2, $3) \
             ON CONFLICT (act) DO NOTHING",
            &[Value::id(&act), Value::id(&self.stamp.act), self.here()],
        )?;
        if first_time == 0 {
            return self.contradict();
        }
        self.no_hands(act)?;
        for fact in earlier.iter().rev() {
            // A correction that is corrected again: what it took back stays taken back.
            if earlier.len() > 1 && matches!(fact.body, Body::Undone { .. }) {
                continue;
            }
            if self.opposite(fact)? == Fit::No {
                self.contradict()?;
            }
        }
        Ok(())
    }

    fn opposite(&self, fact: &Fact) -> Result<Fit, BookError> {
        let seq = fact.seq;
        match &fact.body {
            Body::Washed { .. } => self.unshift(seq, true),
            Body::Counted { kind, .. } => self.uncount(seq, kind),
            Body::SetsOwned { kind, .. } => self.unown(seq, kind),
            Body::Packed { pouches } => {
                let pouches: Vec<PouchId> = pouches.iter().map(|pouch| pouch.pouch).collect();
                self.unpack(seq, &pouches)
            }
            Body::RunStarted { run, .. } => self.unstart(seq, *run),
            Body::RunUnloaded { run } => self.unload_back(seq, *run),
            Body::RecordClaimed { record, cycle, run } => self.unclaim(*record, *cycle, *run),
            Body::Opened { pouch, .. } => self.close_again(seq, *pouch),
            Body::TakenApart { pouches } => self.put_together(seq, pouches),
            Body::Day(day) => self.visit_back(seq, day),
            Body::Loading(loading) => self.loading_back(seq, loading),
            Body::Upkeep(upkeep) => self.upkeep_back(seq, upkeep),
            Body::Counter(counter) => self.counter_back(seq, counter),
            // Doing it again is a new act, not an undoing of the undoing.
            Body::Undone { .. } => Ok(Fit::No),
            _ => Ok(Fit::Yes),
        }
    }

    /// Marks every pouch of a fact that stays in force.
    fn stays(&self, pouches: &[PouchId]) -> Result<Fit, BookError> {
        for pouch in pouches {
            self.contradict_pouch(*pouch)?;
        }
        Ok(Fit::No)
    }

    /// Did nothing happen to these pouches since the fact at `seq` moved them?
    fn untouched_since(&self, seq: u64, pouches: &[PouchId]) -> Result<bool, BookError> {
        for pouch in pouches {
            if !self.last_step_is(*pouch, seq)? {
                return Ok(false);
            }
        }
        Ok(true)
    }

    /// Pouches that were never packed: taken out of the round, their sets washed again.
    fn unpack(&self, seq: u64, pouches: &[PouchId]) -> Result<Fit, BookError> {
        let packed = self.sql.all(
            "SELECT pouch FROM pouch WHERE packed_seq = $1 ORDER BY packed_part",
            &[Value::seq(seq)],
            |row| row.id(0),
        )?;
        for pouch in &packed {
            let Some(held) = self.held(*pouch)? else {
                return self.stays(pouches);
            };
            if held.state != load::SetState::Bagged {
                return self.stays(pouches);
            }
        }
        for pouch in &packed {
            if let Some(held) = self.held(*pouch)? {
                self.step(&held, load::SetState::Retired)?;
                self.sql.run(
                    "UPDATE pouch SET in_bin = 1, ended_ms = $1 WHERE pouch = $2",
                    &[self.at(), Value::id(pouch)],
                )?;
            }
        }
        self.unshift(seq, false)
    }

    /// A run that never began.
    fn unstart(&self, seq: u64, run: RunId) -> Result<Fit, BookError> {
        let started_here = self.sql.first(
            "SELECT 1 FROM run WHERE run = $1 AND started_seq = $2",
            &[Value::id(&run), Value::seq(seq)],
            |_| Ok(()),
        )?;
        let (Some(going), Some(())) = (self.going(run)?, started_here) else {
            return Ok(Fit::No);
        };
        let pouches = self.pouches_of(run)?;
        let fresh = !going.unloaded && !going.has_record && going.judged.is_none();
        if !fresh || !self.untouched_since(seq, &pouches)? {
            return self.stays(&pouches);
        }
        for pouch in &pouches {
            self.step_back(*pouch, seq)?;
            self.sql.run(
                "UPDATE pouch SET run = NULL WHERE pouch = $1 AND run = $2",
                &[Value::id(pouch), Value::id(&run)],
            )?;
        }
        self.sql.run("DELETE FROM run_pouch WHERE run = $1", &[Value::id(&run)])?;
        self.sql.run("UPDATE run SET undone = 1 WHERE run = $1", &[Value::id(&run)])?;
        self.leave(going.machine, run)?;
        Ok(Fit::Yes)
    }

    /// The load is in the machine still.
    fn unload_back(&self, seq: u64, run: RunId) -> Result<Fit, BookError> {
        let Some(going) = self.going(run)? else {
            return Ok(Fit::No);
        };
        let moved = self.sql.all(
            "SELECT run_pouch.pouch FROM run_pouch \
             JOIN pouch_step ON pouch_step.pouch = run_pouch.pouch AND pouch_step.seq = $1 \
             WHERE run_pouch.run = $2 ORDER BY run_pouch.part",
            &[Value::seq(seq), Value::id(&run)],
            |row| row.id(0),
        )?;
        let free = self.sql.first(
            "SELECT 1 FROM machine WHERE machine = $1 AND running IS NULL",
            &[Value::id(&going.machine)],
            |_| Ok(()),
        )?;
        if !going.unloaded || free.is_none() || !self.untouched_since(seq, &moved)? {
            return self.stays(&moved);
        }
        for pouch in &moved {
            self.step_back(*pouch, seq)?;
        }
        self.sql.run("UPDATE run SET unloaded_ms = NULL WHERE run = $1", &[Value::id(&run)])?;
        self.set_running(going.machine, Some(run))?;
        Ok(Fit::Yes)
    }

    /// A pouch that was not opened. Where anything was said about it since, the visit stays, so
    /// that a recall still reaches it.
    fn close_again(&self, seq: u64, pouch: PouchId) -> Result<Fit, BookError> {
        if !self.last_step_is(pouch, seq)? {
            return self.stays(&[pouch]);
        }
        let others = self.sql.first(
            "SELECT 1 FROM opening WHERE pouch = $1 AND seq <> $2",
            &[Value::id(&pouch), Value::seq(seq)],
            |_| Ok(()),
        )?;
        if others.is_some() {
            return self.stays(&[pouch]);
        }
        self.step_back(pouch, seq)?;
        self.sql.run("DELETE FROM opening WHERE seq = $1", &[Value::seq(seq)])?;
        self.sql.run(
            "UPDATE pouch SET opened_ms = NULL, visit = NULL, chair = NULL, in_bin = 0 \
             WHERE pouch = $1",
            &[Value::id(&pouch)],
        )?;
        self.unshift(seq, false)
    }

    /// Pouches that were not taken apart.
    fn put_together(&self, seq: u64, pouches: &[PouchId]) -> Result<Fit, BookError> {
        if !self.untouched_since(seq, pouches)? {
            return self.stays(pouches);
        }
        for pouch in pouches {
            self.step_back(*pouch, seq)?;
            // One that was opened before went into the bin then.
            self.sql.run(
                "UPDATE pouch SET ended_ms = NULL, \
                 in_bin = CASE WHEN visit IS NULL THEN 0 ELSE 1 END WHERE pouch = $1",
                &[Value::id(pouch)],
            )?;
        }
        self.unshift(seq, false)
    }
}
