//! One pouch: its state, its steps, and which of two contradicting states holds.

use super::{Fold, known_word};
use crate::error::BookError;
use crate::fact::StopReason;
use crate::store::Value;
use load::SetState;
use measure::{PouchId, RunId};

/// What the fold needs to know about a pouch.
pub(super) struct Held {
    pub(super) pouch: PouchId,
    pub(super) kind: String,
    pub(super) state: SetState,
    pub(super) run: Option<RunId>,
    pub(super) released: bool,
    pub(super) use_until: bool,
    pub(super) opened: bool,
    pub(super) stopped: Option<StopReason>,
    pub(super) in_bin: bool,
}

impl Fold<'_> {
    /// The pouch, if the book knows it.
    pub(super) fn held(&self, pouch: PouchId) -> Result<Option<Held>, BookError> {
        self.sql.first(
            "SELECT kind, state, run, released_ms, use_until_ms, visit, stopped, in_bin \
             FROM pouch WHERE pouch = $1",
            &[Value::id(&pouch)],
            |row| {
                Ok(Held {
                    pouch,
                    kind: row.text(0)?,
                    state: known_word(&row.text(1)?)?,
                    run: row.maybe_id(2)?,
                    released: row.maybe_int(3)?.is_some(),
                    use_until: row.maybe_int(4)?.is_some(),
                    opened: row.maybe_bytes(5)?.is_some(),
                    stopped: row.maybe_text(6)?.map(|word| known_word(&word)).transpose()?,
                    in_bin: row.flag(7)?,
                })
            },
        )
    }

    /// Moves a pouch on, if it is where the fact expects it; says whether it was. Otherwise the
    /// fact and the pouch are marked, and the safer of the two states holds.
    pub(super) fn advance(
        &self,
        held: &Held,
        from: &[SetState],
        to: SetState,
    ) -> Result<bool, BookError> {
        let fits = from.contains(&held.state);
        if !fits {
            self.contradict_pouch(held.pouch)?;
        }
        if fits || to.safety() > held.state.safety() {
            self.step(held, to)?;
        }
        Ok(fits)
    }

    /// Moves a pouch and keeps the state before.
    pub(super) fn step(&self, held: &Held, to: SetState) -> Result<(), BookError> {
        if held.state == to {
            return Ok(());
        }
        self.set_state(held.pouch, to)?;
        self.sql
            .run(
                "INSERT INTO pouch_step (pouch, seq, was) VALUES ($1, $2, $3) \
                 ON CONFLICT (pouch, seq) DO NOTHING",
                &[Value::id(&held.pouch), self.here(), Value::Text(held.state.word())],
            )
            .map(drop)
    }

    fn set_state(&self, pouch: PouchId, to: SetState) -> Result<(), BookError> {
        self.sql
            .run(
                "UPDATE pouch SET state = $1 WHERE pouch = $2",
                &[Value::Text(to.word()), Value::id(&pouch)],
            )
            .map(drop)
    }

    /// Marks the pouch and the fact.
    pub(super) fn contradict_pouch(&self, pouch: PouchId) -> Result<(), BookError> {
        self.contradict()?;
        self.sql
            .run("UPDATE pouch SET contradicted = 1 WHERE pouch = $1", &[Value::id(&pouch)])
            .map(drop)
    }

    /// Was nothing said about the pouch since the fact at `seq` moved it? A stop counts even where
    /// it moved nothing.
    pub(super) fn last_step_is(&self, pouch: PouchId, seq: u64) -> Result<bool, BookError> {
        let last = self.sql.first(
            "SELECT seq FROM pouch_step WHERE pouch = $1 ORDER BY seq DESC LIMIT 1",
            &[Value::id(&pouch)],
            |row| row.count::<u64>(0),
        )?;
        let stopped = self.sql.first(
            "SELECT 1 FROM stop WHERE pouch = $1 AND seq > $2",
            &[Value::id(&pouch), Value::seq(seq)],
            |_| Ok(()),
        )?;
        Ok(last == Some(seq) && stopped.is_none())
    }

    /// Takes the newest step back.
    pub(super) fn step_back(&self, pouch: PouchId, seq: u64) -> Result<(), BookError> {
        let was = self.sql.first(
            "SELECT was FROM pouch_step WHERE pouch = $1 AND seq = $2",
            &[Value::id(&pouch), Value::seq(seq)],
            |row| known_word::<SetState>(&row.text(0)?),
        )?;
        if let Some(was) = was {
            self.set_state(pouch, was)?;
            self.sql.run(
                "DELETE FROM pouch_step WHERE pouch = $1 AND seq = $2",
                &[Value::id(&pouch), Value::seq(seq)],
            )?;
        }
        Ok(())
    }

    /// The set goes into the used bin, once for each pouch.
    pub(super) fn bin(&self, held: &Held) -> Result<(), BookError> {
        if held.in_bin {
            return Ok(());
        }
        self.sql.run("UPDATE pouch SET in_bin = 1 WHERE pouch = $1", &[Value::id(&held.pouch)])?;
        self.shift(&held.kind, 1, 0)
    }
}
