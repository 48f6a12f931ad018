//! Packing, opening, taking apart, stopping and lifting.

use super::Fold;
use super::pouches::Held;
use crate::error::BookError;
use crate::fact::{PackedPouch, StopReason};
use crate::store::Value;
use crate::wire::words::Word;
use load::SetState;
use measure::{PouchId, RunId, VisitId};

impl Fold<'_> {
    /// Sets go into pouches. A pouch that is known already is never packed again.
    pub(super) fn packed(&self, pouches: &[PackedPouch]) -> Result<(), BookError> {
        for (part, pouch) in (0_i64..).zip(pouches) {
            if self.held(pouch.pouch)?.is_some() {
                self.contradict_pouch(pouch.pouch)?;
                continue;
            }
            self.sql.run(
                "INSERT INTO pouch (pouch, code, kind, pouched, hollow, state, packed_ms, \
                 packed_seq, packed_part, in_bin, contradicted) \
                 VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, 0, 0)",
                &[
                    Value::id(&pouch.pouch),
                    Value::Int(pouch.code.number().into()),
                    Value::Text(pouch.kind.word()),
                    Value::flag(pouch.pouched),
                    Value::flag(pouch.hollow),
                    Value::Text(SetState::Bagged.word()),
                    self.at(),
                    self.here(),
                    Value::Int(part),
                ],
            )?;
            self.shift(pouch.kind.word(), 0, -1)?;
        }
        Ok(())
    }

    /// Opened at a chair. Every visit is kept, so that a recall reaches it, whatever else is true.
    pub(super) fn opened(
        &self,
        pouch: PouchId,
        visit: VisitId,
        chair: Option<u32>,
    ) -> Result<(), BookError> {
        self.sql.run(
            "INSERT INTO opening (seq, pouch, visit, chair, opened_ms) \
             VALUES ($1, $2, $3, $4, $5)",
            &[self.here(), Value::id(&pouch), Value::id(&visit), Value::maybe(chair), self.at()],
        )?;
        let Some(held) = self.held(pouch)? else {
            return self.contradict();
        };
        self.advance(&held, &[SetState::Ready, SetState::UseNow], SetState::Opened)?;
        if !held.opened {
            self.sql.run(
                "UPDATE pouch SET opened_ms = $1, visit = $2, chair = $3 WHERE pouch = $4",
                &[self.at(), Value::id(&visit), Value::maybe(chair), Value::id(&pouch)],
            )?;
        }
        self.bin(&held)
    }

    /// Taken apart: the sets are used again, the pouches never.
    pub(super) fn taken_apart(&self, pouches: &[PouchId]) -> Result<(), BookError> {
        for pouch in pouches {
            let Some(held) = self.held(*pouch)? else {
                self.contradict()?;
                continue;
            };
            let fits = self.advance(
                &held,
                &[
                    SetState::Bagged,
                    SetState::ToCheck,
                    SetState::Ready,
                    SetState::UseNow,
                    SetState::Opened,
                    SetState::SetAside,
                ],
                SetState::Retired,
            )?;
            if fits || held.state == SetState::InMachine {
                self.sql.run(
                    "UPDATE pouch SET ended_ms = $1 WHERE pouch = $2",
                    &[self.at(), Value::id(pouch)],
                )?;
            }
            self.bin(&held)?;
        }
        Ok(())
    }

    /// Not to be used. Always possible, whatever the state: an opened pouch keeps its visit.
    pub(super) fn set_aside(
        &self,
        pouches: &[PouchId],
        run: Option<RunId>,
        why: StopReason,
    ) -> Result<(), BookError> {
        for pouch in pouches {
            let Some(held) = self.held(*pouch)? else {
                self.contradict()?;
                continue;
            };
            self.note_stop(&held, why)?;
            if SetState::SetAside.safety() > held.state.safety() {
                self.step(&held, SetState::SetAside)?;
            }
        }
        match run {
            Some(run) => self.stop_run(run, why),
            None => Ok(()),
        }
    }

    /// The first reason stands, unless a later one can never be lifted and the first can.
    fn note_stop(&self, held: &Held, why: StopReason) -> Result<(), BookError> {
        let stands = held.stopped.is_some_and(|first| first.is_final() || !why.is_final());
        self.sql.run(
            "INSERT INTO stop (pouch, seq, why) VALUES ($1, $2, $3) \
             ON CONFLICT (pouch, seq) DO NOTHING",
            &[Value::id(&held.pouch), self.here(), Value::Text(why.word())],
        )?;
        let undone = why == StopReason::ReleaseUndone;
        let why = if stands { held.stopped } else { Some(why) };
        self.sql.run(
            "UPDATE pouch SET stopped = $1 WHERE pouch = $2",
            &[Value::maybe_text(why.map(Word::word)), Value::id(&held.pouch)],
        )?;
        if undone {
            self.forget_release(held.pouch)?;
        }
        Ok(())
    }

    /// Lifted: back to where the pouch would be without the stop. What can never be lifted stays.
    pub(super) fn stop_lifted(&self, pouches: &[PouchId]) -> Result<(), BookError> {
        for pouch in pouches {
            let Some(held) = self.held(*pouch)? else {
                self.contradict()?;
                continue;
            };
            let lifted =
                held.state == SetState::SetAside && held.stopped.is_some_and(|why| !why.is_final());
            if !lifted {
                self.contradict_pouch(*pouch)?;
                continue;
            }
            let to = self.without_stop(&held)?;
            self.step(&held, to)?;
            self.sql
                .run("UPDATE pouch SET stopped = NULL WHERE pouch = $1", &[Value::id(pouch)])?;
            self.sql.run("DELETE FROM stop WHERE pouch = $1", &[Value::id(pouch)])?;
            if let Some(run) = held.run {
                self.lift_run(run)?;
            }
        }
        Ok(())
    }

    /// Where a stopped pouch would be without its stop.
    fn without_stop(&self, held: &Held) -> Result<SetState, BookError> {
        if held.opened {
            return Ok(SetState::Opened);
        }
        if held.released {
            return Ok(if held.use_until { SetState::UseNow } else { SetState::Ready });
        }
        match held.run {
            None => Ok(SetState::Bagged),
            Some(run) if self.unloaded(run)? => Ok(SetState::ToCheck),
            Some(_) => Ok(SetState::InMachine),
        }
    }

    /// A release that was taken back does not come back with the lifting of a stop.
    fn forget_release(&self, pouch: PouchId) -> Result<(), BookError> {
        self.sql
            .run(
                "UPDATE pouch SET released_ms = NULL, released_by = NULL, use_until_ms = NULL \
                 WHERE pouch = $1",
                &[Value::id(&pouch)],
            )
            .map(drop)
    }
}
