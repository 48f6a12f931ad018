//! Lines about what happened beside the sets, under a topic and a name.

use super::View;
use crate::error::BookError;
use crate::fact::{Counter, Fact, Upkeep};
use crate::facts;
use crate::store::Value;
use measure::Instant;

impl View<'_> {
    /// The fact that was written last under a topic and a name.
    pub(super) fn newest(&self, topic: &str, name: &str) -> Result<Option<Fact>, BookError> {
        let seq = self.sql.first(
            "SELECT seq FROM event WHERE topic = $1 AND name = $2 ORDER BY seq DESC LIMIT 1",
            &[Value::Text(topic), Value::Text(name)],
            |row| row.count::<u64>(0),
        )?;
        self.fact_if(seq)
    }

    /// The fact under a topic and a name that happened last, whenever it was written.
    pub(super) fn latest(&self, topic: &str, name: &str) -> Result<Option<Fact>, BookError> {
        let seq = self.sql.first(
            "SELECT seq FROM event WHERE topic = $1 AND name = $2 \
             ORDER BY at_ms DESC, seq DESC LIMIT 1",
            &[Value::Text(topic), Value::Text(name)],
            |row| row.count::<u64>(0),
        )?;
        self.fact_if(seq)
    }

    fn fact_if(&self, seq: Option<u64>) -> Result<Option<Fact>, BookError> {
        match seq {
            Some(seq) => facts::at(self.sql, seq),
            None => Ok(None),
        }
    }

    /// For each name of a topic the fact that was written last, in the order of the first ones.
    pub(super) fn newest_of_each(&self, topic: &str) -> Result<Vec<Fact>, BookError> {
        let places = self.sql.all(
            "SELECT MAX(seq) FROM event WHERE topic = $1 GROUP BY name ORDER BY MIN(seq)",
            &[Value::Text(topic)],
            |row| row.count::<u64>(0),
        )?;
        self.facts_at(&places)
    }

    /// The facts of a topic and a name, in the order in which they were written.
    pub(super) fn events(&self, topic: &str, name: &str) -> Result<Vec<Fact>, BookError> {
        let places = self.sql.all(
            "SELECT seq FROM event WHERE topic = $1 AND name = $2 ORDER BY seq",
            &[Value::Text(topic), Value::Text(name)],
            |row| row.count::<u64>(0),
        )?;
        self.facts_at(&places)
    }

    /// All facts of a topic, in the order in which they were written. For settings, of which there
    /// are few.
    pub(super) fn all_events(&self, topic: &str) -> Result<Vec<Fact>, BookError> {
        let places = self.sql.all(
            "SELECT seq FROM event WHERE topic = $1 ORDER BY seq",
            &[Value::Text(topic)],
            |row| row.count::<u64>(0),
        )?;
        self.facts_at(&places)
    }

    /// The places of the newest lines under a topic and a name, the one that happened last first.
    /// The facts are read one by one by whoever knows when to stop.
    pub(super) fn newest_places(
        &self,
        topic: &str,
        name: &str,
        limit: u32,
    ) -> Result<Vec<u64>, BookError> {
        let mut places = self.sql.all(
            "SELECT at_ms, seq FROM event WHERE topic = $1 AND name = $2 ORDER BY seq DESC LIMIT $3",
            &[Value::Text(topic), Value::Text(name), Value::Int(limit.into())],
            |row| Ok((row.int(0)?, row.count::<u64>(1)?)),
        )?;
        places.sort_unstable_by(|one, other| other.cmp(one));
        Ok(places.into_iter().map(|(_, seq)| seq).collect())
    }

    /// The facts of a topic that happened from `from` on and before `to`, by their moment.
    pub(super) fn events_between(
        &self,
        topic: &str,
        from: Instant,
        to: Instant,
    ) -> Result<Vec<Fact>, BookError> {
        let places = self.sql.all(
            "SELECT seq FROM event WHERE topic = $1 AND at_ms >= $2 AND at_ms < $3 \
             ORDER BY at_ms, seq",
            &[Value::Text(topic), Value::Int(from.millis()), Value::Int(to.millis())],
            |row| row.count::<u64>(0),
        )?;
        self.facts_at(&places)
    }

    /// The newest facts of a topic, the one that happened last first.
    pub(super) fn last_events(&self, topic: &str, limit: u32) -> Result<Vec<Fact>, BookError> {
        let places = self.sql.all(
            "SELECT seq FROM event WHERE topic = $1 ORDER BY at_ms DESC, seq DESC LIMIT $2",
            &[Value::Text(topic), Value::Int(limit.into())],
            |row| row.count::<u64>(0),
        )?;
        self.facts_at(&places)
    }

    fn facts_at(&self, places: &[u64]) -> Result<Vec<Fact>, BookError> {
        let facts = places.iter().map(|seq| facts::at(self.sql, *seq));
        Ok(facts.collect::<Result<Vec<_>, _>>()?.into_iter().flatten().collect())
    }
}

/// What a fact says about upkeep, if it does.
pub(super) fn upkeep(fact: &Fact) -> Option<&Upkeep> {
    match &fact.body {
        crate::fact::Body::Upkeep(upkeep) => Some(upkeep),
        _ => None,
    }
}

/// What a fact says about the counter, if it does.
pub(super) fn counter(fact: &Fact) -> Option<&Counter> {
    match &fact.body {
        crate::fact::Body::Counter(counter) => Some(counter),
        _ => None,
    }
}
