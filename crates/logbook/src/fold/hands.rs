//! How long the work of hands takes here: from a person's tap before to the tap that says that
//! sets are washed, or packed. What lies between is an upper bound: nobody taps when they begin.

use super::Fold;
use crate::error::BookError;
use crate::fact::{Body, Known};
use crate::store::Value;
use measure::{ActId, Span};

/// Washed, dried, looked at, oiled.
pub(crate) const WASH: &str = "wash";
/// Put in pouches.
pub(crate) const PACK: &str = "pack";
const OTHER: &str = "other";

/// Written later than this after it happened, a time is remembered and not measured.
const AT_ONCE: Span = Span::from_minutes(5);

impl Fold<'_> {
    /// Notes a tap, and how long the work took that it ended.
    pub(super) fn hands(&self, body: &Body) -> Result<(), BookError> {
        let Some(sign) = self.stamp.sign else {
            return Ok(());
        };
        let tapped = matches!(self.stamp.known, Known::Tapped | Known::Scanned);
        if !tapped || self.stamp.written - self.stamp.happened > AT_ONCE {
            return Ok(());
        }
        let (what, sets) = match body {
            Body::Washed { count, .. } => (WASH, i64::from(*count)),
            Body::Packed { pouches } => (PACK, i64::try_from(pouches.len()).unwrap_or(i64::MAX)),
            _ => (OTHER, 0),
        };
        let last = self.sql.first(
            "SELECT act, what, at_ms FROM tap WHERE sign = $1",
            &[Value::id(&sign)],
            |row| Ok((row.id(0)?, row.text(1)?, row.int(2)?)),
        )?;
        match last {
            // Several kinds in one tap were done in one stretch of work.
            Some((act, _, _)) if act == self.stamp.act => self.more_sets(act, what, sets)?,
            Some((_, before, at)) => {
                let took = self.stamp.happened.millis().saturating_sub(at);
                let follows = what == WASH || (what == PACK && (before == WASH || before == PACK));
                if follows && sets > 0 && took > 0 {
                    self.took(what, sets, took)?;
                }
            }
            None => {}
        }
        self.sql
            .run(
                "INSERT INTO tap (sign, act, what, at_ms) VALUES ($1, $2, $3, $4) \
                 ON CONFLICT (sign) DO UPDATE SET act = excluded.act, what = excluded.what, \
                 at_ms = excluded.at_ms",
                &[Value::id(&sign), Value::id(&self.stamp.act), Value::Text(what), self.at()],
            )
            .map(drop)
    }

    fn more_sets(&self, act: ActId, what: &str, sets: i64) -> Result<(), BookError> {
        self.sql
            .run(
                "UPDATE hand_time SET sets = sets + $1 WHERE act = $2 AND what = $3",
                &[Value::Int(sets), Value::id(&act), Value::Text(what)],
            )
            .map(drop)
    }

    fn took(&self, what: &str, sets: i64, took: i64) -> Result<(), BookError> {
        self.sql
            .run(
                "INSERT INTO hand_time (act, seq, what, sets, took_ms) \
                 VALUES ($1, $2, $3, $4, $5) ON CONFLICT (act) DO NOTHING",
                &[
                    Value::id(&self.stamp.act),
                    self.here(),
                    Value::Text(what),
                    Value::Int(sets),
                    Value::Int(took),
                ],
            )
            .map(drop)
    }

    /// What was taken back was no work.
    pub(super) fn no_hands(&self, act: ActId) -> Result<usize, BookError> {
        self.sql.run("DELETE FROM hand_time WHERE act = $1", &[Value::id(&act)])
    }
}
