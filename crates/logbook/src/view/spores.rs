//! Spore tests, from their placing to their answer.

use super::View;
use super::events::upkeep;
use crate::error::BookError;
use crate::fact::{DrawerRef, Fact, Stamp, Upkeep};
use crate::fold::events::topic;
use measure::{Instant, MachineId, RunId, TestId};
use release::spores::{Reading, Says, says};

/// A spore test with everything that was said about it.
#[derive(Debug, Clone, PartialEq)]
pub struct SporeTest {
    /// The test.
    pub test: TestId,
    /// The machine.
    pub machine: MachineId,
    /// The run that it went through, where that was said.
    pub run: Option<RunId>,
    /// A control of the same lot is kept beside it.
    pub control: bool,
    /// Lot and use-by date.
    pub lot: Option<DrawerRef>,
    /// Who placed it, when.
    pub placed: Stamp,
    /// Posted: an answer is expected by then.
    pub answer_by: Option<Instant>,
    /// Its answers, in the order in which they were written; a failed one stands beside a good one.
    pub answers: Vec<SporeAnswer>,
    /// Lost, broken or mixed up.
    pub lost: bool,
    /// Since when what it had frozen may be used again.
    pub unfrozen: Option<Instant>,
}

/// One reading of a spore test.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SporeAnswer {
    /// The place of its fact.
    pub seq: u64,
    /// Who read it, when.
    pub stamp: Stamp,
    /// Spores grew.
    pub grew: bool,
    /// The control grew; `None`: there was none, or nobody looked.
    pub control_grew: Option<bool>,
}

impl SporeTest {
    /// What it says, the safer side first.
    #[must_use]
    pub fn says(&self) -> Says {
        let readings: Vec<Reading> = (self.answers.iter())
            .map(|answer| Reading { grew: answer.grew, control_grew: answer.control_grew })
            .collect();
        says(&readings, self.lost)
    }
}

impl View<'_> {
    /// The spore tests that were placed last, the newest first.
    pub fn spore_tests(&self, limit: u32) -> Result<Vec<SporeTest>, BookError> {
        let placed = self.last_events(topic::SPORE, limit)?;
        placed.iter().filter_map(|fact| self.spore_test_of(fact).transpose()).collect()
    }

    /// The spore tests that were placed from `from` on and before `to`, by their moment.
    pub fn spore_tests_between(
        &self,
        from: Instant,
        to: Instant,
    ) -> Result<Vec<SporeTest>, BookError> {
        let placed = self.events_between(topic::SPORE, from, to)?;
        placed.iter().filter_map(|fact| self.spore_test_of(fact).transpose()).collect()
    }

    /// All spore tests of a machine, the first placed first.
    pub fn spore_tests_of(&self, machine: MachineId) -> Result<Vec<SporeTest>, BookError> {
        let placed = self.events(topic::SPORE, &machine.to_string())?;
        placed.iter().filter_map(|fact| self.spore_test_of(fact).transpose()).collect()
    }

    /// A spore test.
    pub fn spore_test(&self, test: TestId) -> Result<Option<SporeTest>, BookError> {
        let is_it = |fact: &Fact| matches!(upkeep(fact), Some(Upkeep::SporePlaced { test: it, .. }) if *it == test);
        match self.last_events(topic::SPORE, u32::MAX)?.iter().find(|fact| is_it(fact)) {
            Some(placed) => self.spore_test_of(placed),
            None => Ok(None),
        }
    }

    fn spore_test_of(&self, placed: &Fact) -> Result<Option<SporeTest>, BookError> {
        let Some(Upkeep::SporePlaced { test, machine, run, control, lot }) = upkeep(placed) else {
            return Ok(None);
        };
        let mut found = SporeTest {
            test: *test,
            machine: *machine,
            run: *run,
            control: *control,
            lot: *lot,
            placed: placed.stamp,
            answer_by: None,
            answers: Vec::new(),
            lost: false,
            unfrozen: None,
        };
        for step in self.events(topic::SPORE_STEP, &test.to_string())? {
            match upkeep(&step) {
                Some(Upkeep::SporePosted { answer_by, .. }) => found.answer_by = Some(*answer_by),
                Some(Upkeep::SporeRead { grew, control_grew, .. }) => {
                    found.answers.push(SporeAnswer {
                        seq: step.seq,
                        stamp: step.stamp,
                        grew: *grew,
                        control_grew: *control_grew,
                    });
                }
                Some(Upkeep::SporeLost { .. }) => found.lost = true,
                Some(Upkeep::Unfrozen { .. }) => found.unfrozen = Some(step.stamp.happened),
                _ => {}
            }
        }
        Ok(Some(found))
    }
}
