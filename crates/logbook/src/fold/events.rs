//! What happened beside the sets: each fact is one line, under a topic and a name.

use super::Fold;
use super::kinds::Fit;
use crate::error::BookError;
use crate::fact::{About, Counter, StopReason, Upkeep};
use crate::store::Value;
use load::{ChoreWord, SetState};
use measure::{PouchId, RunId};

/// What a line is about.
pub(crate) mod topic {
    /// A thing is here; by its id.
    pub(crate) const THING: &str = "thing";
    /// A thing is here no longer; by its id.
    pub(crate) const THING_ENDED: &str = "thing ended";
    /// What the label of a jar asks; by the jar.
    pub(crate) const JAR: &str = "jar";
    /// Mixed, something in, emptied; by the jar.
    pub(crate) const JAR_STEP: &str = "jar step";
    /// How long a basin stays wet; by the basin.
    pub(crate) const BASIN: &str = "basin";
    /// Wet, drained; by the basin.
    pub(crate) const BASIN_STEP: &str = "basin step";
    /// Not used that day; by the thing.
    pub(crate) const NOT_USED: &str = "not used";
    /// When a chore falls due, or that it is not done here; by chore and what it is about.
    pub(crate) const CHORE: &str = "chore";
    /// Done or left out; by chore and what it is about.
    pub(crate) const CHORE_DONE: &str = "chore done";
    /// Serviced; by the machine.
    pub(crate) const SERVICED: &str = "serviced";
    /// A spore test was placed; by the machine.
    pub(crate) const SPORE: &str = "spore";
    /// Posted, read, lost, unfrozen; by the test.
    pub(crate) const SPORE_STEP: &str = "spore step";
    /// What is kept in stock, or is no longer; by its word.
    pub(crate) const STOCK: &str = "stock";
    /// Counted, bought; by its word.
    pub(crate) const STOCK_STEP: &str = "stock step";
    /// A screen was let in or go; by its id.
    pub(crate) const STATION: &str = "station";
    /// An entry was seen; by its place.
    pub(crate) const SEEN: &str = "seen";
    /// Offered and taken over.
    pub(crate) const HAND_OVER: &str = "hand over";
    /// What was in a run was said wrongly; by the run.
    pub(crate) const RUN_CORRECTED: &str = "run corrected";
    /// Counted; by the run.
    pub(crate) const COUNTED_BACK: &str = "counted back";
    /// A pouch without a code.
    pub(crate) const NO_CODE: &str = "no code";
    /// Contact with blood.
    pub(crate) const EXPOSURE: &str = "exposure";
    /// A gap and its reason.
    pub(crate) const GAP: &str = "gap";
    /// The box was off.
    pub(crate) const BOX_OFF: &str = "box off";
    /// The language of a person; by the person.
    pub(crate) const SPEAKS: &str = "speaks";
    /// What a person is here; by the person.
    pub(crate) const PERSON_IS: &str = "person is";
    /// How the record is written.
    pub(crate) const RECORD_SHOWS: &str = "record shows";
    /// The clock of a practice book.
    pub(crate) const PRACTICE_CLOCK: &str = "practice clock";
    /// Cards dealt and ended.
    pub(crate) const CARD: &str = "card";
}

/// The name under which a chore is kept.
pub(crate) fn chore_name(chore: &ChoreWord, about: About) -> String {
    match about {
        About::Salon => format!("salon {chore}"),
        About::Machine(machine) => format!("{machine} {chore}"),
        About::Thing(thing) => format!("{thing} {chore}"),
    }
}

fn of_upkeep(upkeep: &Upkeep) -> (&'static str, String) {
    match upkeep {
        Upkeep::ThingAdded { thing, .. } => (topic::THING, thing.to_string()),
        Upkeep::ThingEnded { thing } => (topic::THING_ENDED, thing.to_string()),
        Upkeep::JarSet { jar, .. } => (topic::JAR, jar.to_string()),
        Upkeep::JarMixed { jar } | Upkeep::JarIn { jar } | Upkeep::JarEmptied { jar } => {
            (topic::JAR_STEP, jar.to_string())
        }
        Upkeep::BasinSet { basin, .. } => (topic::BASIN, basin.to_string()),
        Upkeep::BasinWet { basin, .. } | Upkeep::BasinDrained { basin } => {
            (topic::BASIN_STEP, basin.to_string())
        }
        Upkeep::NotUsed { thing } => (topic::NOT_USED, thing.to_string()),
        Upkeep::ChoreSet(rule) => (topic::CHORE, chore_name(&rule.chore, rule.about)),
        Upkeep::ChoreEnded { chore, about } => (topic::CHORE, chore_name(chore, *about)),
        Upkeep::ChoreDone { chore, about, .. } | Upkeep::ChoreLeft { chore, about, .. } => {
            (topic::CHORE_DONE, chore_name(chore, *about))
        }
        Upkeep::MachineServiced { machine, .. } => (topic::SERVICED, machine.to_string()),
        Upkeep::SporePlaced { machine, .. } => (topic::SPORE, machine.to_string()),
        Upkeep::SporePosted { test, .. }
        | Upkeep::SporeRead { test, .. }
        | Upkeep::SporeLost { test }
        | Upkeep::Unfrozen { test, .. } => (topic::SPORE_STEP, test.to_string()),
        Upkeep::StockSet { item, .. } | Upkeep::StockEnded { item } => {
            (topic::STOCK, item.to_string())
        }
        Upkeep::StockCounted { item, .. } | Upkeep::StockBought { item, .. } => {
            (topic::STOCK_STEP, item.to_string())
        }
    }
}

fn of_counter(counter: &Counter) -> (&'static str, String) {
    match counter {
        Counter::StationPaired { station, .. } | Counter::StationParted { station } => {
            (topic::STATION, station.to_string())
        }
        Counter::Seen { seq } => (topic::SEEN, seq.to_string()),
        Counter::HandedOver { .. } | Counter::TakenOver { .. } => (topic::HAND_OVER, String::new()),
        Counter::RunCorrected { run, .. } => (topic::RUN_CORRECTED, run.to_string()),
        Counter::CountedBack { run, .. } => (topic::COUNTED_BACK, run.to_string()),
        Counter::OpenedNoCode { .. } => (topic::NO_CODE, String::new()),
        Counter::ExposureNoted { .. } => (topic::EXPOSURE, String::new()),
        Counter::GapExplained { .. } => (topic::GAP, String::new()),
        Counter::BoxWasOff { .. } => (topic::BOX_OFF, String::new()),
        Counter::PersonSpeaks { person, .. } => (topic::SPEAKS, person.to_string()),
        Counter::PersonIs { person, .. } => (topic::PERSON_IS, person.to_string()),
        Counter::RecordShows { .. } => (topic::RECORD_SHOWS, String::new()),
        Counter::PracticeClock { .. } => (topic::PRACTICE_CLOCK, String::new()),
        Counter::CardDealt { .. } | Counter::CardEnded { .. } => (topic::CARD, String::new()),
    }
}

impl Fold<'_> {
    /// Folds a fact about upkeep.
    pub(super) fn upkeep(&self, upkeep: &Upkeep) -> Result<(), BookError> {
        let (topic, name) = of_upkeep(upkeep);
        self.event(topic, &name)?;
        match upkeep {
            Upkeep::Unfrozen { pouches, .. } => self.unfrozen(pouches),
            _ => Ok(()),
        }
    }

    /// Folds a fact about the counter.
    pub(super) fn counter(&self, counter: &Counter) -> Result<(), BookError> {
        let (topic, name) = of_counter(counter);
        self.event(topic, &name)?;
        match counter {
            Counter::RunCorrected { run, out, put } => self.run_corrected(*run, out, put),
            Counter::OpenedNoCode { kind, .. } => self.shift(kind.word(), 1, 0),
            _ => Ok(()),
        }
    }

    /// Takes a fact about upkeep back: what was said before holds again.
    pub(super) fn upkeep_back(&self, seq: u64, upkeep: &Upkeep) -> Result<Fit, BookError> {
        match upkeep {
            // What was frozen may be in use by now.
            Upkeep::Unfrozen { .. } => Ok(Fit::No),
            _ => self.no_event(seq),
        }
    }

    /// Takes a fact about the counter back.
    pub(super) fn counter_back(&self, seq: u64, counter: &Counter) -> Result<Fit, BookError> {
        match counter {
            // Put right by another correction.
            Counter::RunCorrected { .. } => Ok(Fit::No),
            Counter::OpenedNoCode { .. } => {
                self.no_event(seq)?;
                self.unshift(seq, false)
            }
            _ => self.no_event(seq),
        }
    }

    fn event(&self, topic: &str, name: &str) -> Result<(), BookError> {
        self.sql
            .run(
                "INSERT INTO event (seq, topic, name, at_ms) VALUES ($1, $2, $3, $4)",
                &[self.here(), Value::Text(topic), Value::Text(name), self.at()],
            )
            .map(drop)
    }

    fn no_event(&self, seq: u64) -> Result<Fit, BookError> {
        let gone = self.sql.run("DELETE FROM event WHERE seq = $1", &[Value::seq(seq)])?;
        Ok(if gone == 1 { Fit::Yes } else { Fit::No })
    }

    /// The repeat was good: what only the freeze had stopped is where it was.
    fn unfrozen(&self, pouches: &[PouchId]) -> Result<(), BookError> {
        for pouch in pouches {
            match self.held(*pouch)? {
                Some(held) if held.stopped == Some(StopReason::Recall) => {
                    self.stop_lifted(&[*pouch])?;
                }
                Some(_) => self.contradict_pouch(*pouch)?,
                None => self.contradict()?,
            }
        }
        Ok(())
    }

    /// What was in a run was said wrongly. A pouch that was released or opened since stays in the
    /// run, so that a recall still reaches it, and is marked.
    fn run_corrected(&self, run: RunId, out: &[PouchId], put: &[PouchId]) -> Result<(), BookError> {
        let Some(going) = self.going(run)? else {
            return self.contradict();
        };
        for pouch in out {
            let held = self.held(*pouch)?.filter(|held| held.run == Some(run));
            let Some(held) = held else {
                self.contradict()?;
                continue;
            };
            if !matches!(held.state, SetState::InMachine | SetState::ToCheck | SetState::SetAside)
                || held.released
            {
                self.contradict_pouch(*pouch)?;
                continue;
            }
            self.sql.run(
                "DELETE FROM run_pouch WHERE run = $1 AND pouch = $2",
                &[Value::id(&run), Value::id(pouch)],
            )?;
            self.sql.run("UPDATE pouch SET run = NULL WHERE pouch = $1", &[Value::id(pouch)])?;
            if held.state != SetState::SetAside {
                self.step(&held, SetState::Bagged)?;
            }
        }
        let next = self.sql.first(
            "SELECT COALESCE(MAX(part) + 1, 0) FROM run_pouch WHERE run = $1",
            &[Value::id(&run)],
            |row| row.int(0),
        )?;
        for (part, pouch) in (next.unwrap_or(0)..).zip(put) {
            self.load(run, part, *pouch)?;
            if going.unloaded
                && let Some(held) = self.held(*pouch)?
                && held.state == SetState::InMachine
                && held.run == Some(run)
            {
                self.step(&held, SetState::ToCheck)?;
            }
        }
        self.sql
            .run(
                "UPDATE run SET pouches = (SELECT COUNT(*) FROM run_pouch WHERE run = $1) \
                 WHERE run = $1",
                &[Value::id(&run)],
            )
            .map(drop)
    }
}
