//! Services, phrases, working times, figures and the accepted plan: what was said last holds.

use super::Fold;
use crate::error::BookError;
use crate::fact::Day;
use crate::store::Value;

/// What a setting is about.
pub(crate) mod topic {
    /// The key for calendars; one for the book.
    pub(crate) const KEY: &str = "key";
    /// A service, by its id.
    pub(crate) const SERVICE: &str = "service";
    /// The end of a service, by its id.
    pub(crate) const SERVICE_ENDED: &str = "service ended";
    /// A kind's figures, by its word.
    pub(crate) const KIND: &str = "kind figures";
    /// A machine's figures, by its id.
    pub(crate) const MACHINE: &str = "machine figures";
    /// What holds for every plan.
    pub(crate) const RULES: &str = "rules";
    /// The plan accepted last.
    pub(crate) const PLAN: &str = "plan";
}

impl Fold<'_> {
    /// Folds a fact of the day.
    pub(super) fn day(&self, day: &Day) -> Result<(), BookError> {
        match day {
            Day::KeyMade { .. } => self.setting(topic::KEY, ""),
            Day::ServiceSet(service) => {
                let name = service.service.to_string();
                // Described anew, it is offered again.
                self.unset(topic::SERVICE_ENDED, &name)?;
                self.setting(topic::SERVICE, &name)
            }
            Day::ServiceEnded { service } => {
                self.setting(topic::SERVICE_ENDED, &service.to_string())
            }
            Day::PhraseLearnt { phrase, service } => self
                .sql
                .run(
                    "INSERT INTO phrase (phrase, service) VALUES ($1, $2) \
                     ON CONFLICT (phrase) DO UPDATE SET service = excluded.service",
                    &[Value::Bytes(phrase.bytes()), Value::maybe_id(service)],
                )
                .map(drop),
            Day::VisitBooked { .. }
            | Day::VisitMoved { .. }
            | Day::VisitIs { .. }
            | Day::VisitLate { .. }
            | Day::VisitCancelled { .. }
            | Day::VisitMissed { .. } => self.visit(day),
            Day::ShiftSet { .. } => self.shift_set(day),
            Day::ShiftEnded { shift } => {
                let touched = self.sql.run(
                    "UPDATE shift SET ended = 1 WHERE shift = $1 AND ended = 0",
                    &[Value::id(shift)],
                )?;
                self.expect_one(touched)
            }
            Day::ClosedSet { from, to, closed } => {
                self.closed_set(from.millis(), to.millis(), *closed)
            }
            Day::KindFigures(figures) => self.setting(topic::KIND, figures.kind.word()),
            Day::MachineFigures(figures) => {
                self.setting(topic::MACHINE, &figures.machine.to_string())
            }
            Day::Rules(_) => self.setting(topic::RULES, ""),
            Day::PlanAccepted { .. } => self.setting(topic::PLAN, ""),
        }
    }

    /// Notes that this fact says what holds of `name` from now on.
    pub(super) fn setting(&self, topic: &str, name: &str) -> Result<(), BookError> {
        self.sql
            .run(
                "INSERT INTO setting (topic, name, seq) VALUES ($1, $2, $3) \
                 ON CONFLICT (topic, name) DO UPDATE SET seq = excluded.seq",
                &[Value::Text(topic), Value::Text(name), self.here()],
            )
            .map(drop)
    }

    /// Nothing is said of `name` any more; how many lines went.
    pub(super) fn unset(&self, topic: &str, name: &str) -> Result<usize, BookError> {
        self.sql.run(
            "DELETE FROM setting WHERE topic = $1 AND name = $2",
            &[Value::Text(topic), Value::Text(name)],
        )
    }

    fn shift_set(&self, day: &Day) -> Result<(), BookError> {
        let Day::ShiftSet { shift, person, from, to, lunch } = day else {
            return Ok(());
        };
        let (lunch_from, lunch_to) = lunch.unzip();
        self.sql
            .run(
                "INSERT INTO shift (shift, person, from_ms, to_ms, lunch_from_ms, lunch_to_ms, \
                 ended) VALUES ($1, $2, $3, $4, $5, $6, 0) ON CONFLICT (shift) DO UPDATE SET \
                 person = excluded.person, from_ms = excluded.from_ms, to_ms = excluded.to_ms, \
                 lunch_from_ms = excluded.lunch_from_ms, lunch_to_ms = excluded.lunch_to_ms, \
                 ended = 0",
                &[
                    Value::id(shift),
                    Value::id(person),
                    Value::Int(from.millis()),
                    Value::Int(to.millis()),
                    Value::maybe(lunch_from.map(measure::Instant::millis)),
                    Value::maybe(lunch_to.map(measure::Instant::millis)),
                ],
            )
            .map(drop)
    }

    fn closed_set(&self, from: i64, to: i64, closed: bool) -> Result<(), BookError> {
        let span = [Value::Int(from), Value::Int(to)];
        if closed {
            self.sql
                .run(
                    "INSERT INTO closed (from_ms, to_ms) VALUES ($1, $2) \
                     ON CONFLICT (from_ms, to_ms) DO NOTHING",
                    &span,
                )
                .map(drop)
        } else {
            let touched =
                self.sql.run("DELETE FROM closed WHERE from_ms = $1 AND to_ms = $2", &span)?;
            self.expect_one(touched)
        }
    }
}
