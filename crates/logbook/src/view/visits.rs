//! Visits and working times.

use super::View;
use crate::error::BookError;
use crate::fact::{Keyed, Source};
use crate::fold::known_word;
use crate::store::{Row, Value};
use crate::wire::words::Word;
use load::SetKind;
use measure::{Instant, PersonId, ServiceId, ShiftId, Span, VisitId};
use std::collections::BTreeMap;

/// Longest visit that the planner's questions look back for.
const LONGEST: Span = Span::from_minutes(2 * 24 * 60);

/// What became of a visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum VisitState {
    /// It will be, or it was.
    Booked,
    /// It was called off.
    Cancelled,
    /// The client did not come.
    Missed,
}

impl Word for VisitState {
    const WORDS: &'static [(Self, &'static str)] =
        &[(Self::Booked, "booked"), (Self::Cancelled, "cancelled"), (Self::Missed, "missed")];

    fn word(self) -> &'static str {
        match self {
            Self::Booked => "booked",
            Self::Cancelled => "cancelled",
            Self::Missed => "missed",
        }
    }
}

/// A visit. Who comes is not in the book.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Visit {
    /// The visit.
    pub visit: VisitId,
    /// When it was booked to begin.
    pub booked_start: Instant,
    /// When it was booked to end.
    pub booked_end: Instant,
    /// By how many minutes it begins later than booked, as somebody said.
    pub late_min: u32,
    /// The chair, where it is known.
    pub chair: Option<u32>,
    /// The service; `None` until somebody says.
    pub service: Option<ServiceId>,
    /// What became of it.
    pub state: VisitState,
    /// Revision of the calendar's entry.
    pub sequence: u32,
    /// What it was taken from; `None`: by hand.
    pub source: Option<Source>,
}

impl Visit {
    /// When it begins, as far as is known.
    #[must_use]
    pub fn start(&self) -> Instant {
        self.booked_start + Span::from_minutes(i64::from(self.late_min))
    }

    /// When it ends, as far as is known.
    #[must_use]
    pub fn end(&self) -> Instant {
        self.booked_end + Span::from_minutes(i64::from(self.late_min))
    }
}

/// What a planner needs to know about a visit that will be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Appointment {
    /// The visit.
    pub visit: VisitId,
    /// When it begins, lateness included.
    pub start: Instant,
    /// When it ends.
    pub end: Instant,
    /// The chair, where it is known.
    pub chair: Option<u32>,
    /// The service; `None`: nobody said yet, so what it needs is not known.
    pub service: Option<ServiceId>,
    /// How many sets of which kind it needs.
    pub needs: Vec<(SetKind, u32)>,
    /// What one missing set counts; 1 where the service is not known.
    pub weight: u32,
    /// Cleaning a foot basin afterwards, minutes of hands.
    pub basin_min: u32,
}

/// A person's working time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shift {
    /// The shift.
    pub shift: ShiftId,
    /// Who.
    pub person: PersonId,
    /// From.
    pub from: Instant,
    /// To.
    pub to: Instant,
    /// Lunch, from and to.
    pub lunch: Option<(Instant, Instant)>,
}

const VISIT: &str = "SELECT visit, start_ms, end_ms, late_min, chair, service, state, sequence, \
                     source FROM visit";

impl View<'_> {
    /// Every visit that begins at or after `from` and before `to` (lateness included), whatever
    /// became of it.
    pub fn visits(&self, from: Instant, to: Instant) -> Result<Vec<Visit>, BookError> {
        let mut visits = self.visits_near(from, to)?;
        visits.retain(|visit| visit.start() >= from && visit.start() < to);
        visits.sort_by_key(Visit::start);
        Ok(visits)
    }

    /// What is booked and lies wholly or partly between `from` and `to`: neither called off nor
    /// missed.
    pub fn appointments(&self, from: Instant, to: Instant) -> Result<Vec<Appointment>, BookError> {
        let services: BTreeMap<ServiceId, _> =
            self.services_ever()?.into_iter().map(|service| (service.service, service)).collect();
        let mut appointments = Vec::new();
        for visit in self.visits_near(from, to)? {
            let inside = visit.start() < to && visit.end() > from;
            if !inside || visit.state != VisitState::Booked {
                continue;
            }
            let service = visit.service.and_then(|id| services.get(&id));
            appointments.push(Appointment {
                visit: visit.visit,
                start: visit.start(),
                end: visit.end(),
                chair: visit.chair,
                service: visit.service,
                needs: service.map(|service| service.needs.clone()).unwrap_or_default(),
                weight: service.map_or(1, |service| service.weight),
                basin_min: service.map_or(0, |service| service.basin_min),
            });
        }
        appointments.sort_by_key(|appointment| (appointment.start, appointment.visit));
        Ok(appointments)
    }

    /// Visits that may lie in a span; lateness and length are looked at by the caller.
    fn visits_near(&self, from: Instant, to: Instant) -> Result<Vec<Visit>, BookError> {
        self.sql.all(
            &format!(
                "{VISIT} WHERE start_ms >= $1 AND start_ms < $2 ORDER BY start_ms, booked_seq"
            ),
            &[Value::Int((from - LONGEST).millis()), Value::Int(to.millis())],
            visit_row,
        )
    }

    /// A visit.
    pub fn visit(&self, id: VisitId) -> Result<Option<Visit>, BookError> {
        self.sql.first(&format!("{VISIT} WHERE visit = $1"), &[Value::id(&id)], visit_row)
    }

    /// The visit that was taken from this entry of a calendar; the first one where two were.
    pub fn visit_by_entry(&self, entry: &Keyed) -> Result<Option<Visit>, BookError> {
        self.sql.first(
            &format!("{VISIT} WHERE entry = $1 ORDER BY booked_seq LIMIT 1"),
            &[Value::Bytes(entry.bytes())],
            visit_row,
        )
    }

    /// Visits of one series that were booked to begin at or after `from`, each with its entry.
    pub fn visits_of_series(
        &self,
        series: &Keyed,
        from: Instant,
    ) -> Result<Vec<(Keyed, Visit)>, BookError> {
        self.with_entries("series = $1", series, (from, Instant::from_millis(i64::MAX)))
    }

    /// Visits of one calendar that were booked to begin at or after `from` and before `to`, each
    /// with its entry.
    pub fn visits_of_calendar(
        &self,
        calendar: &Keyed,
        from: Instant,
        to: Instant,
    ) -> Result<Vec<(Keyed, Visit)>, BookError> {
        self.with_entries("calendar = $1", calendar, (from, to))
    }

    fn with_entries(
        &self,
        which: &str,
        digest: &Keyed,
        (from, to): (Instant, Instant),
    ) -> Result<Vec<(Keyed, Visit)>, BookError> {
        self.sql.all(
            &format!(
                "SELECT visit, start_ms, end_ms, late_min, chair, service, state, sequence, \
                 source, entry FROM visit WHERE {which} AND entry IS NOT NULL \
                 AND start_ms >= $2 AND start_ms < $3 ORDER BY start_ms, booked_seq"
            ),
            &[Value::Bytes(digest.bytes()), Value::Int(from.millis()), Value::Int(to.millis())],
            |row| Ok((Keyed::from_bytes(row.fixed(9)?), visit_row(row)?)),
        )
    }

    /// Working times that lie wholly or partly between `from` and `to`, by their beginning.
    pub fn shifts(&self, from: Instant, to: Instant) -> Result<Vec<Shift>, BookError> {
        self.sql.all(
            "SELECT shift, person, from_ms, to_ms, lunch_from_ms, lunch_to_ms FROM shift \
             WHERE ended = 0 AND from_ms < $1 AND to_ms > $2 ORDER BY from_ms, shift",
            &[Value::Int(to.millis()), Value::Int(from.millis())],
            |row| {
                let moment = |at| Ok::<_, BookError>(row.maybe_int(at)?.map(Instant::from_millis));
                Ok(Shift {
                    shift: row.id(0)?,
                    person: row.id(1)?,
                    from: Instant::from_millis(row.int(2)?),
                    to: Instant::from_millis(row.int(3)?),
                    lunch: moment(4)?.zip(moment(5)?),
                })
            },
        )
    }

    /// Times between `from` and `to` in which the salon is closed.
    pub fn closed(&self, from: Instant, to: Instant) -> Result<Vec<(Instant, Instant)>, BookError> {
        self.sql.all(
            "SELECT from_ms, to_ms FROM closed WHERE from_ms < $1 AND to_ms > $2 ORDER BY from_ms",
            &[Value::Int(to.millis()), Value::Int(from.millis())],
            |row| Ok((Instant::from_millis(row.int(0)?), Instant::from_millis(row.int(1)?))),
        )
    }
}

fn visit_row(row: &Row<'_, '_>) -> Result<Visit, BookError> {
    Ok(Visit {
        visit: row.id(0)?,
        booked_start: Instant::from_millis(row.int(1)?),
        booked_end: Instant::from_millis(row.int(2)?),
        late_min: row.count(3)?,
        chair: row.maybe_count(4)?,
        service: row.maybe_id(5)?,
        state: known_word(&row.text(6)?)?,
        sequence: row.count(7)?,
        source: row.maybe_text(8)?.map(|word| known_word(&word)).transpose()?,
    })
}
