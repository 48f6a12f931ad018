//! Visits: booked, moved, late, called off, missed. Each change keeps what was before it, so that
//! it can be taken back while nothing else has happened to the visit.

use super::Fold;
use super::kinds::Fit;
use crate::error::BookError;
use crate::fact::{Day, Origin};
use crate::store::{Row, Value};
use crate::view::VisitState;
use crate::wire::words::Word;
use measure::{ServiceId, VisitId};

/// The latest that a visit may begin after the time it was booked for: a day.
const LATEST_MIN: i64 = 24 * 60;

/// What changes about a visit.
struct Changing {
    start_ms: i64,
    end_ms: i64,
    late_min: i64,
    chair: Option<i64>,
    service: Option<ServiceId>,
    state: VisitState,
    sequence: i64,
}

const CHANGING: &str = "start_ms, end_ms, late_min, chair, service, state, sequence";

fn row(row: &Row<'_, '_>) -> Result<Changing, BookError> {
    Ok(Changing {
        start_ms: row.int(0)?,
        end_ms: row.int(1)?,
        late_min: row.int(2)?,
        chair: row.maybe_int(3)?,
        service: row.maybe_id(4)?,
        state: super::known_word(&row.text(5)?)?,
        sequence: row.int(6)?,
    })
}

impl Fold<'_> {
    /// Folds a fact about a visit.
    pub(super) fn visit(&self, day: &Day) -> Result<(), BookError> {
        match day {
            Day::VisitBooked { .. } => self.visit_booked(day),
            Day::VisitMoved { visit, start, end, chair, sequence } => {
                self.visit_changes(*visit, |before| {
                    Some(Changing {
                        start_ms: start.millis(),
                        end_ms: end.millis(),
                        late_min: 0,
                        chair: chair.map(i64::from),
                        state: VisitState::Booked,
                        sequence: i64::from(*sequence),
                        ..before
                    })
                })
            }
            Day::VisitIs { visit, service } => {
                self.visit_changes(*visit, |before| Some(Changing { service: *service, ..before }))
            }
            Day::VisitLate { visit, minutes } => self.visit_changes(*visit, |before| {
                let late_min = before.late_min + i64::from(*minutes);
                let fits = before.state == VisitState::Booked && late_min <= LATEST_MIN;
                fits.then_some(Changing { late_min, ..before })
            }),
            Day::VisitCancelled { visit } => self.visit_changes(*visit, |before| {
                let fits = before.state != VisitState::Cancelled;
                fits.then_some(Changing { state: VisitState::Cancelled, ..before })
            }),
            Day::VisitMissed { visit } => self.visit_changes(*visit, |before| {
                let fits = before.state == VisitState::Booked;
                fits.then_some(Changing { state: VisitState::Missed, ..before })
            }),
            _ => Ok(()),
        }
    }

    /// A visit is booked once. A second one for the same entry of a calendar is kept and marked:
    /// one set too many is safer than one too few.
    fn visit_booked(&self, day: &Day) -> Result<(), BookError> {
        let Day::VisitBooked { visit, start, end, chair, service, origin } = day else {
            return Ok(());
        };
        if self.visit_row(*visit)?.is_some() {
            return self.contradict();
        }
        if let Some(Origin { entry, .. }) = origin {
            let twice = self.sql.first(
                "SELECT 1 FROM visit WHERE entry = $1",
                &[Value::Bytes(entry.bytes())],
                |_| Ok(()),
            )?;
            if twice.is_some() {
                self.contradict()?;
            }
        }
        let digest = |part: fn(&Origin) -> &[u8; 32]| {
            origin.as_ref().map_or(Value::Null, |origin| Value::Bytes(part(origin)))
        };
        self.sql
            .run(
                "INSERT INTO visit (visit, start_ms, end_ms, late_min, chair, service, state, \
                 sequence, source, entry, series, calendar, booked_seq) \
                 VALUES ($1, $2, $3, 0, $4, $5, $6, $7, $8, $9, $10, $11, $12)",
                &[
                    Value::id(visit),
                    Value::Int(start.millis()),
                    Value::Int(end.millis()),
                    Value::maybe(*chair),
                    Value::maybe_id(service),
                    Value::Text(VisitState::Booked.word()),
                    Value::Int(origin.map_or(0, |origin| origin.sequence.into())),
                    Value::maybe_text(origin.map(|origin| origin.source.word())),
                    digest(|origin| origin.entry.bytes()),
                    digest(|origin| origin.series.bytes()),
                    digest(|origin| origin.calendar.bytes()),
                    self.here(),
                ],
            )
            .map(drop)
    }

    fn visit_row(&self, visit: VisitId) -> Result<Option<Changing>, BookError> {
        self.sql.first(
            &format!("SELECT {CHANGING} FROM visit WHERE visit = $1"),
            &[Value::id(&visit)],
            row,
        )
    }

    /// Changes a visit where it fits, and keeps what was before.
    fn visit_changes(
        &self,
        visit: VisitId,
        change: impl FnOnce(Changing) -> Option<Changing>,
    ) -> Result<(), BookError> {
        let Some(before) = self.visit_row(visit)? else {
            return self.contradict();
        };
        let Some(after) = change(before) else {
            return self.contradict();
        };
        self.sql.run(
            &format!(
                "INSERT INTO visit_step (visit, seq, {CHANGING}) \
                 SELECT visit, $2, {CHANGING} FROM visit WHERE visit = $1"
            ),
            &[Value::id(&visit), self.here()],
        )?;
        self.put_visit(visit, &after)
    }

    fn put_visit(&self, visit: VisitId, row: &Changing) -> Result<(), BookError> {
        self.sql
            .run(
                "UPDATE visit SET start_ms = $1, end_ms = $2, late_min = $3, chair = $4, \
                 service = $5, state = $6, sequence = $7 WHERE visit = $8",
                &[
                    Value::Int(row.start_ms),
                    Value::Int(row.end_ms),
                    Value::Int(row.late_min),
                    Value::maybe(row.chair),
                    Value::maybe_id(&row.service),
                    Value::Text(row.state.word()),
                    Value::Int(row.sequence),
                    Value::id(&visit),
                ],
            )
            .map(drop)
    }

    /// Takes back what the fact at `seq` said of a visit, if it was the last thing said.
    pub(super) fn visit_back(&self, seq: u64, day: &Day) -> Result<Fit, BookError> {
        let visit = match day {
            Day::VisitBooked { visit, .. }
            | Day::VisitMoved { visit, .. }
            | Day::VisitIs { visit, .. }
            | Day::VisitLate { visit, .. }
            | Day::VisitCancelled { visit }
            | Day::VisitMissed { visit } => *visit,
            // A setting is said anew, not taken back.
            _ => return Ok(Fit::No),
        };
        let last = self.sql.first(
            "SELECT COALESCE((SELECT MAX(seq) FROM visit_step WHERE visit = $1), booked_seq) \
             FROM visit WHERE visit = $1",
            &[Value::id(&visit)],
            |row| row.count::<u64>(0),
        )?;
        if last != Some(seq) {
            return Ok(Fit::No);
        }
        let here = [Value::id(&visit), Value::seq(seq)];
        let before = self.sql.first(
            &format!("SELECT {CHANGING} FROM visit_step WHERE visit = $1 AND seq = $2"),
            &here,
            row,
        )?;
        match before {
            Some(before) => {
                self.put_visit(visit, &before)?;
                self.sql.run("DELETE FROM visit_step WHERE visit = $1 AND seq = $2", &here)?;
            }
            None => {
                self.sql.run("DELETE FROM visit WHERE visit = $1", &here[..1])?;
            }
        }
        Ok(Fit::Yes)
    }
}
