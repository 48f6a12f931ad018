//! The log itself: the facts, in order.

use super::{LogLine, View};
use crate::error::BookError;
use crate::fact::{Body, Fact};
use crate::facts;
use crate::fold::events::topic;
use crate::store::Value;
use measure::{ActId, PouchId, StationId};

/// How far back an act is looked for that can be taken back from where it was done.
const LOOK_BACK: u32 = 200;

impl View<'_> {
    /// Up to `limit` lines before `before_seq`, or from the end of the book; the newest first.
    pub fn log(&self, before_seq: Option<u64>, limit: u32) -> Result<Vec<LogLine>, BookError> {
        // The storage counts in signed numbers; no line has a greater one.
        let before = before_seq.unwrap_or(i64::MAX as u64);
        facts::before(self.sql, before, limit)?
            .into_iter()
            .map(|fact| self.log_line(fact))
            .collect()
    }

    fn log_line(&self, fact: Fact) -> Result<LogLine, BookError> {
        Ok(LogLine {
            undone_by: self.act_undone(fact.stamp.act)?,
            contradicted: self.contradicted(fact.seq)?,
            fact,
        })
    }

    /// The fact at this place.
    pub fn fact(&self, seq: u64) -> Result<Option<Fact>, BookError> {
        facts::at(self.sql, seq)
    }

    /// The openings and releases that did not fit what stood before them and that nobody has signed
    /// as seen; up to `limit`, the newest first.
    pub fn unseen(&self, limit: u32) -> Result<Vec<Fact>, BookError> {
        let places = self.sql.all(
            "SELECT contradiction.seq FROM contradiction \
             JOIN facts ON facts.seq = contradiction.seq \
             WHERE facts.kind IN ('opened', 'released') AND NOT EXISTS \
             (SELECT 1 FROM event WHERE event.topic = $1 \
             AND event.name = CAST(contradiction.seq AS TEXT)) \
             ORDER BY contradiction.seq DESC LIMIT $2",
            &[Value::Text(topic::SEEN), Value::Int(limit.into())],
            |row| row.count::<u64>(0),
        )?;
        let facts = places.iter().map(|seq| facts::at(self.sql, *seq));
        Ok(facts.collect::<Result<Vec<_>, _>>()?.into_iter().flatten().collect())
    }

    /// Did this fact not fit what stood before it?
    pub fn contradicted(&self, seq: u64) -> Result<bool, BookError> {
        let found = self.sql.first(
            "SELECT 1 FROM contradiction WHERE seq = $1",
            &[Value::seq(seq)],
            |_| Ok(()),
        )?;
        Ok(found.is_some())
    }

    /// The fact that put the newest stop on a pouch; `None` where none stands.
    pub fn stop_of(&self, pouch: PouchId) -> Result<Option<Fact>, BookError> {
        let seq = self.sql.first(
            "SELECT seq FROM stop WHERE pouch = $1 ORDER BY seq DESC LIMIT 1",
            &[Value::id(&pouch)],
            |row| row.count::<u64>(0),
        )?;
        seq.map_or(Ok(None), |seq| facts::at(self.sql, seq))
    }

    /// The facts that opened a pouch, in the order in which they were written.
    pub fn openings_of(&self, pouch: PouchId) -> Result<Vec<Fact>, BookError> {
        let places = self.sql.all(
            "SELECT seq FROM opening WHERE pouch = $1 ORDER BY seq",
            &[Value::id(&pouch)],
            |row| row.count::<u64>(0),
        )?;
        let facts = places.iter().map(|seq| facts::at(self.sql, *seq));
        Ok(facts.collect::<Result<Vec<_>, _>>()?.into_iter().flatten().collect())
    }

    /// The place of the last fact.
    pub fn last_seq(&self) -> Result<u64, BookError> {
        Ok(facts::head(self.sql)?.seq)
    }

    /// The facts of one act, in order; none where it is not in the book.
    pub fn facts_of_act(&self, act: ActId) -> Result<Vec<Fact>, BookError> {
        facts::of_act(self.sql, self.salon, act)
    }

    /// The act that took this act back.
    pub fn act_undone(&self, act: ActId) -> Result<Option<ActId>, BookError> {
        self.sql.first(
            "SELECT undone_by FROM act_undone WHERE act = $1",
            &[Value::id(&act)],
            |row| row.id(0),
        )
    }

    /// The facts of the newest act that was done at a station and is neither taken back nor
    /// itself a taking back; none where the last 200 facts hold no such act.
    pub fn last_act_facts(&self, station: StationId) -> Result<Vec<Fact>, BookError> {
        let newest = facts::before(self.sql, i64::MAX as u64, LOOK_BACK)?;
        for fact in newest {
            if fact.stamp.station != station || matches!(fact.body, Body::Undone { .. }) {
                continue;
            }
            let facts = self.facts_of_act(fact.stamp.act)?;
            let takes_back = facts.iter().any(|fact| matches!(fact.body, Body::Undone { .. }));
            if !takes_back && self.act_undone(fact.stamp.act)?.is_none() {
                return Ok(facts);
            }
        }
        Ok(Vec::new())
    }
}
