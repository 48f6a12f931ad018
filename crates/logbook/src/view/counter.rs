//! What the counter holds beside the sets: hand-overs, corrections, times without an entry, and
//! times without power.

use super::View;
use super::events::{counter, upkeep};
use crate::error::BookError;
use crate::fact::{About, Counter, DrawerRef, Found, GapWhy, Stamp, Upkeep};
use crate::fold::events::topic;
use crate::store::Value;
use load::ChoreWord;
use measure::{ActId, Instant, PersonId, PouchId, RunId};

/// The work, offered to whoever comes next.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HandOver {
    /// The act.
    pub act: ActId,
    /// When it was offered, and by whom.
    pub given: (Instant, Option<PersonId>),
    /// To whom; `None`: to whoever takes it.
    pub to: Option<PersonId>,
    /// Sets that dry on the rack.
    pub drying: u32,
    /// What to watch.
    pub note: Option<DrawerRef>,
    /// When it was taken, and by whom.
    pub taken: Option<(Instant, Option<PersonId>)>,
}

/// What was in a run, said anew.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Corrected {
    /// Who and when.
    pub stamp: Stamp,
    /// These were not in it.
    pub out: Vec<PouchId>,
    /// These were in it too.
    pub put: Vec<PouchId>,
}

/// A time without an entry, and the reason that somebody gave.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Explained {
    /// Who and when.
    pub stamp: Stamp,
    /// From and to.
    pub span: (Instant, Instant),
    /// Why.
    pub why: GapWhy,
}

/// A time in which the salon's box was off, and the act that says so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BoxOff {
    /// The act; the runs that it set aside are facts of it.
    pub act: ActId,
    /// Last heard, and back again.
    pub span: (Instant, Instant),
}

impl View<'_> {
    /// The hand-over that was offered last and is not taken back.
    pub fn last_hand_over(&self) -> Result<Option<HandOver>, BookError> {
        let mut taken = None;
        for fact in self.events(topic::HAND_OVER, "")?.iter().rev() {
            match counter(fact) {
                Some(Counter::TakenOver { given }) => {
                    // Two took it: the first one has it.
                    taken = Some((*given, fact.stamp.happened, fact.stamp.sign));
                }
                Some(Counter::HandedOver { to, drying, note }) => {
                    let act = fact.stamp.act;
                    let taken = taken.filter(|(given, ..)| *given == act);
                    return Ok(Some(HandOver {
                        act,
                        given: (fact.stamp.happened, fact.stamp.sign),
                        to: *to,
                        drying: *drying,
                        note: *note,
                        taken: taken.map(|(_, at, who)| (at, who)),
                    }));
                }
                _ => {}
            }
        }
        Ok(None)
    }

    /// What was corrected in a run, the first correction first.
    pub fn corrections_of_run(&self, run: RunId) -> Result<Vec<Corrected>, BookError> {
        let facts = self.events(topic::RUN_CORRECTED, &run.to_string())?;
        let read = |fact: &crate::fact::Fact| match counter(fact) {
            Some(Counter::RunCorrected { out, put, .. }) => {
                Some(Corrected { stamp: fact.stamp, out: out.clone(), put: put.clone() })
            }
            _ => None,
        };
        Ok(facts.iter().filter_map(read).collect())
    }

    /// The times that were explained, by their beginning, that lie wholly or partly between `from`
    /// and `to`.
    pub fn gaps_explained(&self, from: Instant, to: Instant) -> Result<Vec<Explained>, BookError> {
        let mut explained = Vec::new();
        for fact in self.events(topic::GAP, "")? {
            if let Some(Counter::GapExplained { from: begin, to: end, why }) = counter(&fact)
                && *begin < to
                && *end > from
            {
                explained.push(Explained { stamp: fact.stamp, span: (*begin, *end), why: *why });
            }
        }
        explained.sort_by_key(|gap| gap.span);
        Ok(explained)
    }

    /// The newest times in which the box was off, the last one first.
    pub fn box_off(&self, limit: u32) -> Result<Vec<BoxOff>, BookError> {
        let facts = self.last_events(topic::BOX_OFF, limit)?;
        let read = |fact: &crate::fact::Fact| match counter(fact) {
            Some(Counter::BoxWasOff { from, to }) => {
                Some(BoxOff { act: fact.stamp.act, span: (*from, *to) })
            }
            _ => None,
        };
        Ok(facts.iter().filter_map(read).collect())
    }

    /// The moments from `from` on and before `to` of which the book has something, each once, in
    /// their order; only entries from the place `seq` on are looked at. That somebody explained a
    /// silence, or that the box was off, breaks no silence.
    pub fn moments(
        &self,
        seq: u64,
        (from, to): (Instant, Instant),
    ) -> Result<Vec<Instant>, BookError> {
        self.sql.all(
            "SELECT DISTINCT happened_ms FROM facts WHERE seq >= $1 AND happened_ms >= $2 \
             AND happened_ms < $3 AND kind NOT IN ('gap_explained', 'box_was_off') \
             ORDER BY happened_ms",
            &[Value::seq(seq), Value::Int(from.millis()), Value::Int(to.millis())],
            |row| Ok(Instant::from_millis(row.int(0)?)),
        )
    }

    /// Would taking back the fact at this place, which moved or counted loose sets, take it back
    /// exactly? Not where the sets were counted since, or went on into pouches.
    pub fn counts_untouched(&self, seq: u64) -> Result<bool, BookError> {
        let moved_on = self.sql.first(
            "SELECT 1 FROM kind_move JOIN kind ON kind.kind = kind_move.kind \
             WHERE kind_move.seq = $1 AND (kind.counted_seq > $1 \
             OR kind.used < kind_move.used OR kind.washed < kind_move.washed)",
            &[Value::seq(seq)],
            |_| Ok(()),
        )?;
        Ok(moved_on.is_none())
    }

    /// Is the fact at this place still the one that says how many sets of its kind the salon owns?
    pub fn still_owned(&self, seq: u64) -> Result<bool, BookError> {
        let found = self.sql.first(
            "SELECT 1 FROM kind WHERE owned_seq = $1",
            &[Value::seq(seq)],
            |_| Ok(()),
        )?;
        Ok(found.is_some())
    }

    /// Was nothing said about the pouch since the fact at this place, in which it was opened?
    pub fn opening_untouched(&self, seq: u64, pouch: PouchId) -> Result<bool, BookError> {
        let since = self.sql.first(
            "SELECT 1 WHERE EXISTS (SELECT 1 FROM pouch_step WHERE pouch = $2 AND seq > $1) \
             OR EXISTS (SELECT 1 FROM stop WHERE pouch = $2 AND seq > $1) \
             OR EXISTS (SELECT 1 FROM opening WHERE pouch = $2 AND seq <> $1) \
             OR NOT EXISTS (SELECT 1 FROM pouch_step WHERE pouch = $2 AND seq = $1)",
            &[Value::seq(seq), Value::id(&pouch)],
            |_| Ok(()),
        )?;
        Ok(since.is_none())
    }

    /// The chores that were found not to be fine when they were last done, since `from`; the newest
    /// first.
    pub fn chores_not_fine(&self, from: Instant) -> Result<Vec<(ChoreWord, About)>, BookError> {
        /// So many are looked through: a week of a large salon.
        const NEWEST: u32 = 200;
        let mut seen: Vec<(ChoreWord, About)> = Vec::new();
        let mut not_fine = Vec::new();
        for fact in self.last_events(topic::CHORE_DONE, NEWEST)? {
            let Some(Upkeep::ChoreDone { chore, about, found, .. }) = upkeep(&fact) else {
                continue;
            };
            let key = (chore.clone(), *about);
            if fact.stamp.happened < from || seen.contains(&key) {
                continue;
            }
            if *found == Found::NotFine {
                not_fine.push(key.clone());
            }
            seen.push(key);
        }
        Ok(not_fine)
    }
}
