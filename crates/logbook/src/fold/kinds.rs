//! How many sets of a kind lie used or washed: counted by subtraction, put right by counting.

use super::Fold;
use crate::error::BookError;
use crate::store::Value;
use load::SetKind;

/// What is known about a kind.
struct Count {
    used: i64,
    washed: i64,
    owned: Option<i64>,
    owned_seq: Option<i64>,
    counted_seq: Option<i64>,
}

/// Does the opposite of a fact fit what stands now?
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fit {
    Yes,
    No,
}

impl Fold<'_> {
    /// The salon owns so many.
    pub(super) fn sets_owned(&self, kind: &SetKind, count: u32) -> Result<(), BookError> {
        let before = self.kind(kind.word())?;
        self.note_move(kind.word(), (0, 0), &before)?;
        self.sql
            .run(
                "UPDATE kind SET owned = $1, owned_seq = $2 WHERE kind = $3",
                &[Value::Int(count.into()), self.here(), Value::Text(kind.word())],
            )
            .map(drop)
    }

    /// Somebody counted: that is how many there are, whatever subtraction said.
    pub(super) fn counted(&self, kind: &SetKind, used: u32, washed: u32) -> Result<(), BookError> {
        let before = self.kind(kind.word())?;
        let (used, washed) = (i64::from(used), i64::from(washed));
        let moved = (used - before.used, washed - before.washed);
        self.note_move(kind.word(), moved, &before)?;
        self.sql
            .run(
                "UPDATE kind SET used = $1, washed = $2, counted_seq = $3 WHERE kind = $4",
                &[Value::Int(used), Value::Int(washed), self.here(), Value::Text(kind.word())],
            )
            .map(drop)
    }

    /// From used to washed.
    pub(super) fn washed(&self, kind: &SetKind, count: u32) -> Result<(), BookError> {
        self.shift(kind.word(), -i64::from(count), i64::from(count))
    }

    /// Moves counts, never below zero, and notes what was really moved.
    pub(super) fn shift(&self, kind: &str, used: i64, washed: i64) -> Result<(), BookError> {
        let before = self.kind(kind)?;
        let after =
            (before.used.saturating_add(used).max(0), before.washed.saturating_add(washed).max(0));
        let moved = (after.0 - before.used, after.1 - before.washed);
        self.note_move(kind, moved, &before)?;
        self.set_counts(kind, after)
    }

    fn set_counts(&self, kind: &str, (used, washed): (i64, i64)) -> Result<(), BookError> {
        self.sql
            .run(
                "UPDATE kind SET used = $1, washed = $2 WHERE kind = $3",
                &[Value::Int(used), Value::Int(washed), Value::Text(kind)],
            )
            .map(drop)
    }

    fn kind(&self, kind: &str) -> Result<Count, BookError> {
        self.sql.run(
            "INSERT INTO kind (kind, used, washed) VALUES ($1, 0, 0) \
             ON CONFLICT (kind) DO NOTHING",
            &[Value::Text(kind)],
        )?;
        self.sql
            .first(
                "SELECT used, washed, owned, owned_seq, counted_seq FROM kind WHERE kind = $1",
                &[Value::Text(kind)],
                |row| {
                    Ok(Count {
                        used: row.int(0)?,
                        washed: row.int(1)?,
                        owned: row.maybe_int(2)?,
                        owned_seq: row.maybe_int(3)?,
                        counted_seq: row.maybe_int(4)?,
                    })
                },
            )?
            .ok_or_else(|| crate::store::unreadable(format!("absence of the kind {kind:?}")))
    }

    fn note_move(
        &self,
        kind: &str,
        (used, washed): (i64, i64),
        before: &Count,
    ) -> Result<(), BookError> {
        self.sql
            .run(
                "INSERT INTO kind_move \
                 (seq, kind, used, washed, owned_was, owned_seq_was, counted_seq_was) \
                 VALUES ($1, $2, $3, $4, $5, $6, $7) ON CONFLICT (seq, kind) DO UPDATE SET \
                 used = kind_move.used + excluded.used, \
                 washed = kind_move.washed + excluded.washed",
                &[
                    self.here(),
                    Value::Text(kind),
                    Value::Int(used),
                    Value::Int(washed),
                    Value::maybe(before.owned),
                    Value::maybe(before.owned_seq),
                    Value::maybe(before.counted_seq),
                ],
            )
            .map(drop)
    }

    /// Takes back what the fact at `seq` moved. `strict`: only where nothing falls below zero and
    /// nobody has counted since; otherwise as far as it goes.
    pub(super) fn unshift(&self, seq: u64, strict: bool) -> Result<Fit, BookError> {
        let moves = self.sql.all(
            "SELECT kind, used, washed FROM kind_move WHERE seq = $1 ORDER BY kind",
            &[Value::seq(seq)],
            |row| Ok((row.text(0)?, row.int(1)?, row.int(2)?)),
        )?;
        let mut after = Vec::new();
        for (kind, used, washed) in moves {
            let now = self.kind(&kind)?;
            if now.counted_seq.is_some_and(|counted| later(counted, seq)) {
                // The count since then says what there is.
                if strict {
                    return Ok(Fit::No);
                }
                continue;
            }
            let counts = (now.used - used, now.washed - washed);
            if strict && (counts.0 < 0 || counts.1 < 0) {
                return Ok(Fit::No);
            }
            after.push((kind, (counts.0.max(0), counts.1.max(0))));
        }
        for (kind, counts) in after {
            self.set_counts(&kind, counts)?;
        }
        Ok(Fit::Yes)
    }

    /// Takes back a count: the one before it holds again, with all that moved since.
    pub(super) fn uncount(&self, seq: u64, kind: &SetKind) -> Result<Fit, BookError> {
        if !is_at(self.kind(kind.word())?.counted_seq, seq) || self.unshift(seq, true)? == Fit::No {
            return Ok(Fit::No);
        }
        self.sql.run(
            "UPDATE kind SET counted_seq = \
             (SELECT counted_seq_was FROM kind_move WHERE seq = $1 AND kind = $2) \
             WHERE kind = $2",
            &[Value::seq(seq), Value::Text(kind.word())],
        )?;
        Ok(Fit::Yes)
    }

    /// Takes back how many are owned.
    pub(super) fn unown(&self, seq: u64, kind: &SetKind) -> Result<Fit, BookError> {
        if !is_at(self.kind(kind.word())?.owned_seq, seq) {
            return Ok(Fit::No);
        }
        self.sql.run(
            "UPDATE kind SET \
             owned = (SELECT owned_was FROM kind_move WHERE seq = $1 AND kind = $2), \
             owned_seq = (SELECT owned_seq_was FROM kind_move WHERE seq = $1 AND kind = $2) \
             WHERE kind = $2",
            &[Value::seq(seq), Value::Text(kind.word())],
        )?;
        Ok(Fit::Yes)
    }
}

fn is_at(place: Option<i64>, seq: u64) -> bool {
    place.and_then(|place| u64::try_from(place).ok()) == Some(seq)
}

fn later(place: i64, seq: u64) -> bool {
    u64::try_from(place).is_ok_and(|place| place > seq)
}
