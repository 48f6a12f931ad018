//! What somebody from outside is shown of a span of time: runs, stops and what was done beside the
//! sets, each list by one question to the storage, however long the span.

use super::{Run, View};
use crate::error::BookError;
use crate::fact::{Body, Counter, Fact, Judged, Known, Upkeep};
use crate::facts;
use crate::fold::events::topic;
use crate::store::Value;
use measure::{Instant, PersonId, RunId};
use std::collections::{HashMap, HashSet};

/// A run with what is said beside it in the record.
#[derive(Debug, Clone, PartialEq)]
pub struct ShownRun {
    /// The run.
    pub run: Run,
    /// When its start was written; `None`: by no fact of this book.
    pub written: Option<Instant>,
    /// How its start is known.
    pub known: Option<Known>,
    /// The verdict that counts; `None`: there is none.
    pub verdict: Option<Judged>,
    /// The looks at it, the first one first.
    pub looks: Vec<Fact>,
    /// Who released from it.
    pub released_by: Vec<PersonId>,
    /// What was in it was put right.
    pub corrected: bool,
    /// Two entries about its pouches did not agree.
    pub contradicted: bool,
}

/// What happened beside the sets, each list by the moment of its happening.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ShownUpkeep {
    /// Jars, foot basins and baths that were ever here, and those that are here no longer.
    pub things: Vec<Fact>,
    /// What the labels of the jars ask, whenever it was said.
    pub jar_labels: Vec<Fact>,
    /// Mixed and emptied.
    pub jars: Vec<Fact>,
    /// Foot basins, wet and drained, and days on which something was not used.
    pub basins: Vec<Fact>,
    /// Chores, done or left out.
    pub chores: Vec<Fact>,
    /// Each chore as it was done last, whenever it was.
    pub chores_last: Vec<Fact>,
    /// When chores fall due, whenever it was said.
    pub rules: Vec<Fact>,
    /// Machines serviced, whenever it was.
    pub serviced: Vec<Fact>,
    /// Contact with blood.
    pub exposures: Vec<Fact>,
    /// Gaps that somebody explained and times at which the box was off, where they reach into the span.
    pub gaps: Vec<Fact>,
}

/// When something was done last, whoever did it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct LastDone {
    /// Put in a pouch.
    pub packed: Option<Instant>,
    /// A run started.
    pub started: Option<Instant>,
    /// A run looked at.
    pub looked: Option<Instant>,
    /// Opened at a chair.
    pub opened: Option<Instant>,
    /// Disinfectant mixed.
    pub mixed: Option<Instant>,
    /// A foot basin cleaned.
    pub basin: Option<Instant>,
}

const IN_SPAN: &str = "run.started_ms >= $1 AND run.started_ms < $2";

fn span(from: Instant, to: Instant) -> [Value<'static>; 2] {
    [Value::Int(from.millis()), Value::Int(to.millis())]
}

impl View<'_> {
    /// The runs that started from `from` on and before `to`, the first one first; also those whose
    /// start was taken back.
    pub fn shown_runs(&self, from: Instant, to: Instant) -> Result<Vec<ShownRun>, BookError> {
        let runs = self.runs_between(None, from, to)?;
        let places: HashMap<RunId, usize> =
            runs.iter().enumerate().map(|(at, run)| (run.run, at)).collect();
        let mut shown: Vec<ShownRun> = runs.into_iter().map(bare).collect();
        self.starts(&mut shown, &places, (from, to))?;
        self.verdicts(&mut shown, (from, to))?;
        let looked =
            format!("SELECT look.seq FROM run JOIN look ON look.run = run.run WHERE {IN_SPAN}");
        for fact in facts::chosen(self.sql, &looked, &span(from, to))? {
            let Body::Looked { run, .. } = fact.body else { continue };
            if let Some(shown) = at(&mut shown, &places, run) {
                shown.looks.push(fact);
            }
        }
        self.sql.each(
            &format!(
                "SELECT DISTINCT run.run, pouch.released_by FROM run \
                 JOIN run_pouch ON run_pouch.run = run.run \
                 JOIN pouch ON pouch.pouch = run_pouch.pouch AND pouch.run = run.run \
                 WHERE {IN_SPAN} AND pouch.released_by IS NOT NULL"
            ),
            &span(from, to),
            |row| {
                if let Some(shown) = at(&mut shown, &places, row.id(0)?) {
                    shown.released_by.push(row.id(1)?);
                }
                Ok(())
            },
        )?;
        self.marks(&mut shown, &places)?;
        Ok(shown)
    }

    /// When each start was written and how it is known.
    fn starts(
        &self,
        shown: &mut [ShownRun],
        places: &HashMap<RunId, usize>,
        (from, to): (Instant, Instant),
    ) -> Result<(), BookError> {
        self.sql.each(
            &format!(
                "SELECT run.run, facts.written_ms, facts.known FROM run \
                 JOIN facts ON facts.seq = run.started_seq WHERE {IN_SPAN}"
            ),
            &span(from, to),
            |row| {
                let Some(shown) = at(shown, places, row.id(0)?) else { return Ok(()) };
                shown.written = row.maybe_int(1)?.map(Instant::from_millis);
                shown.known = match row.maybe_text(2)? {
                    Some(word) => Some(crate::fold::known_word(&word)?),
                    None => None,
                };
                Ok(())
            },
        )
    }

    /// The verdict that counts, by its place: a record may have been judged before a run claimed it.
    fn verdicts(
        &self,
        shown: &mut [ShownRun],
        (from, to): (Instant, Instant),
    ) -> Result<(), BookError> {
        let places: HashMap<u64, usize> = shown
            .iter()
            .enumerate()
            .filter_map(|(at, shown)| Some((shown.run.judged?, at)))
            .collect();
        let judged =
            format!("SELECT judged_seq FROM run WHERE {IN_SPAN} AND judged_seq IS NOT NULL");
        for fact in facts::chosen(self.sql, &judged, &span(from, to))? {
            let found = places.get(&fact.seq).and_then(|at| shown.get_mut(*at));
            if let (Some(shown), Body::Judged(judged)) = (found, fact.body) {
                shown.verdict = Some(*judged);
            }
        }
        Ok(())
    }

    /// Which runs were put right, and of which two entries did not agree.
    fn marks(
        &self,
        shown: &mut [ShownRun],
        places: &HashMap<RunId, usize>,
    ) -> Result<(), BookError> {
        let corrected: HashSet<String> = self
            .sql
            .all(
                "SELECT DISTINCT name FROM event WHERE topic = $1",
                &[Value::Text(topic::RUN_CORRECTED)],
                |row| row.text(0),
            )?
            .into_iter()
            .collect();
        for run in shown.iter_mut() {
            run.corrected = corrected.contains(&run.run.run.to_string());
        }
        self.sql.each(
            "SELECT DISTINCT run FROM pouch WHERE contradicted <> 0 AND run IS NOT NULL",
            &[],
            |row| {
                if let Some(shown) = at(shown, places, row.id(0)?) {
                    shown.contradicted = true;
                }
                Ok(())
            },
        )
    }

    /// What was set aside, lifted and taken apart from `from` on and before `to`, and machines that
    /// went out of use or came back, by their moment. Read from the facts themselves: what was lifted
    /// later still stands here.
    pub fn shown_stops(&self, from: Instant, to: Instant) -> Result<Vec<Fact>, BookError> {
        let mut stops = facts::chosen(
            self.sql,
            "SELECT seq FROM facts WHERE kind IN ('set_aside', 'stop_lifted', 'taken_apart', \
             'machine_out', 'machine_back') AND happened_ms >= $1 AND happened_ms < $2",
            &span(from, to),
        )?;
        stops.sort_by_key(|fact| (fact.stamp.happened, fact.seq));
        Ok(stops)
    }

    /// What happened beside the sets from `from` on and before `to`.
    pub fn shown_upkeep(&self, from: Instant, to: Instant) -> Result<ShownUpkeep, BookError> {
        let within = |topics: &[&str]| self.of_topics(topics, Some((from, to)));
        let ever = |topics: &[&str]| self.of_topics(topics, None);
        let mut gaps = ever(&[topic::GAP, topic::BOX_OFF])?;
        gaps.retain(|fact| gap(fact).is_some_and(|(begins, ends)| begins < to && ends > from));
        gaps.sort_by_key(gap);
        let mut jars = within(&[topic::JAR_STEP])?;
        // That something went in counts for the minutes of contact, not for the record.
        jars.retain(|fact| !matches!(super::events::upkeep(fact), Some(Upkeep::JarIn { .. })));
        Ok(ShownUpkeep {
            things: ever(&[topic::THING, topic::THING_ENDED])?,
            jar_labels: ever(&[topic::JAR])?,
            jars,
            basins: within(&[topic::BASIN_STEP, topic::NOT_USED])?,
            chores: within(&[topic::CHORE_DONE])?,
            chores_last: self.newest_of_each(topic::CHORE_DONE)?,
            rules: ever(&[topic::CHORE])?,
            serviced: ever(&[topic::SERVICED])?,
            exposures: within(&[topic::EXPOSURE])?,
            gaps,
        })
    }

    fn of_topics(
        &self,
        topics: &[&str],
        within: Option<(Instant, Instant)>,
    ) -> Result<Vec<Fact>, BookError> {
        let mut found = Vec::new();
        for topic in topics {
            let (from, to) =
                within.unwrap_or((Instant::from_millis(i64::MIN), Instant::from_millis(i64::MAX)));
            let [from, to] = span(from, to);
            found.extend(facts::chosen(
                self.sql,
                "SELECT seq FROM event WHERE topic = $1 AND at_ms >= $2 AND at_ms < $3",
                &[Value::Text(topic), from, to],
            )?);
        }
        found.sort_by_key(|fact| (fact.stamp.happened, fact.seq));
        Ok(found)
    }

    /// When each step that anybody can be asked to show was done last.
    pub fn last_done(&self) -> Result<LastDone, BookError> {
        let of = |question: &str| -> Result<Option<Instant>, BookError> {
            let last = self.sql.first(question, &[], |row| row.maybe_int(0))?;
            Ok(last.flatten().map(Instant::from_millis))
        };
        let event = |topic: &str| -> Result<Option<Instant>, BookError> {
            let question = "SELECT MAX(at_ms) FROM event WHERE topic = $1";
            let last = self.sql.first(question, &[Value::Text(topic)], |row| row.maybe_int(0))?;
            Ok(last.flatten().map(Instant::from_millis))
        };
        Ok(LastDone {
            packed: of("SELECT MAX(packed_ms) FROM pouch")?,
            started: of("SELECT MAX(started_ms) FROM run WHERE undone = 0")?,
            looked: of("SELECT MAX(looked_ms) FROM run WHERE undone = 0")?,
            opened: of("SELECT MAX(opened_ms) FROM opening")?,
            mixed: event(topic::JAR_STEP)?,
            basin: event(topic::BASIN_STEP)?,
        })
    }
}

/// From when to when the book has nothing, as a fact says.
fn gap(fact: &Fact) -> Option<(Instant, Instant)> {
    match super::events::counter(fact) {
        Some(Counter::GapExplained { from, to, .. } | Counter::BoxWasOff { from, to }) => {
            Some((*from, *to))
        }
        _ => None,
    }
}

fn bare(run: Run) -> ShownRun {
    ShownRun {
        run,
        written: None,
        known: None,
        verdict: None,
        looks: Vec::new(),
        released_by: Vec::new(),
        corrected: false,
        contradicted: false,
    }
}

fn at<'s>(
    shown: &'s mut [ShownRun],
    places: &HashMap<RunId, usize>,
    run: RunId,
) -> Option<&'s mut ShownRun> {
    places.get(&run).and_then(|place| shown.get_mut(*place))
}
