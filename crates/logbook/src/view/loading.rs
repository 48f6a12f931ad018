//! What goes in: implements, sets, pouches, rooms, programmes, weighed trays, and which loads came
//! out dry.

use super::salon::set_kind;
use super::{Setting, View};
use crate::error::BookError;
use crate::fact::{Body, KeyFigures, Loading, ProgrammeFigures};
use crate::facts;
use crate::fold::loading::{programme_name, topic};
use crate::store::Value;
use crate::typical;
use load::chamber::Inside;
use load::implement::Implement;
use load::pouch::PouchSize;
use load::{ImplementWord, SetKind, catalogue};
use measure::{Instant, MachineId, RunId};
use std::collections::BTreeSet;

/// Most weighed trays that an answer holds.
const TRAYS: i64 = 20;
/// Most runs that an answer holds of those that were looked at for being dry.
const DRY_LOOKS: usize = 400;
/// Among how many of the newest runs they are looked for: years of them are not read.
const AMONG: i64 = 1_000;

/// One full tray that was put on a scale.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Weighed {
    /// The place of its fact.
    pub seq: u64,
    /// When it was weighed.
    pub at: Instant,
    /// Tray, sets and pouches together, grams.
    pub grams: u32,
    /// The tray alone, grams, where it was weighed too.
    pub empty_g: Option<u32>,
    /// How many sets of which kind lay on it.
    pub sets: Vec<(SetKind, u32)>,
    /// They lay in pouches.
    pub pouched: bool,
}

/// A run that was looked at for being dry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DryLook {
    /// The run.
    pub run: RunId,
    /// When it was started.
    pub started: Instant,
    /// The machine's programme, as the salon calls it.
    pub programme: Option<String>,
    /// What was in it: how many sets of which kind, in pouches or not; by kind.
    pub contents: Vec<(SetKind, u32, bool)>,
    /// A pouch was said to be wet, in any look: a later look does not dry it.
    pub wet: bool,
    /// Length of the drying part, ms, by the verdict that counts.
    pub drying_ms: Option<i64>,
    /// Deepest pressure while drying, Pa absolute, by the verdict that counts.
    pub dry_vacuum_pa: Option<i64>,
}

/// A run of which it is asked whether it came out dry.
struct Candidate {
    run: RunId,
    started: Instant,
    programme: Option<String>,
    judged: Option<u64>,
}

impl View<'_> {
    fn loading_at(&self, seq: u64) -> Result<Option<Loading>, BookError> {
        Ok(match facts::at(self.sql, seq)?.map(|fact| fact.body) {
            Some(Body::Loading(loading)) => Some(*loading),
            _ => None,
        })
    }

    /// The implements that are used here: the typical ones, each as the salon describes it where
    /// it does, then the salon's own in the order in which they were last described.
    pub fn implements(&self) -> Result<Vec<Setting<Implement>>, BookError> {
        let mut own = Vec::new();
        for (_, seq) in self.said(topic::IMPLEMENT)? {
            if let Some(Loading::ImplementSet(value)) = self.loading_at(seq)? {
                own.push(Setting { value, said: Some(seq) });
            }
        }
        let ended = self.names(topic::IMPLEMENT_ENDED)?;
        let mut all = overlaid(catalogue::implements(), own, |one| one.word.word());
        all.retain(|one| !ended.contains(one.value.word.word()));
        Ok(all)
    }

    /// An implement that is used here, by its word: the salon's own, or the typical one; `None`
    /// where there is none, or the salon does not use it.
    pub fn implement(&self, word: &ImplementWord) -> Result<Option<Setting<Implement>>, BookError> {
        if self.said_of(topic::IMPLEMENT_ENDED, word.word())?.is_some() {
            return Ok(None);
        }
        if let Some(seq) = self.said_of(topic::IMPLEMENT, word.word())?
            && let Some(Loading::ImplementSet(value)) = self.loading_at(seq)?
        {
            return Ok(Some(Setting { value, said: Some(seq) }));
        }
        let typical = catalogue::implements().into_iter().find(|one| one.word == *word);
        Ok(typical.map(|value| Setting { value, said: None }))
    }

    /// What a set of this kind is made of. A word may be one that is not used here any more.
    pub fn set_of(&self, kind: &SetKind) -> Result<Setting<Vec<(ImplementWord, u32)>>, BookError> {
        if let Some(seq) = self.said_of(topic::SET, kind.word())?
            && let Some(Loading::SetOf { pieces: value, .. }) = self.loading_at(seq)?
        {
            return Ok(Setting { value, said: Some(seq) });
        }
        Ok(Setting { value: catalogue::set_of(kind), said: None })
    }

    /// The sizes of pouch that are kept here: the typical ones, each as the salon describes it
    /// where it does, then the salon's own in the order in which they were last described.
    pub fn pouch_sizes(&self) -> Result<Vec<Setting<PouchSize>>, BookError> {
        let mut own = Vec::new();
        for (_, seq) in self.said(topic::POUCH)? {
            if let Some(Loading::PouchSet(value)) = self.loading_at(seq)? {
                own.push(Setting { value, said: Some(seq) });
            }
        }
        let ended = self.names(topic::POUCH_ENDED)?;
        let mut all = overlaid(catalogue::pouch_sizes(), own, |one| one.word.word());
        all.retain(|one| !ended.contains(one.value.word.word()));
        Ok(all)
    }

    fn names(&self, topic: &str) -> Result<BTreeSet<String>, BookError> {
        Ok(self.said(topic)?.into_iter().map(|(name, _)| name).collect())
    }

    /// The room inside a machine: as the salon measured it, or a typical one.
    pub fn inside(&self, machine: MachineId) -> Result<Setting<Inside>, BookError> {
        if let Some(seq) = self.said_of(topic::INSIDE, &machine.to_string())?
            && let Some(Loading::InsideSet { inside: value, .. }) = self.loading_at(seq)?
        {
            return Ok(Setting { value, said: Some(seq) });
        }
        Ok(Setting { value: catalogue::inside(), said: None })
    }

    /// What is known of each programme of a machine, in the order of
    /// [`machine_figures`](View::machine_figures): what its manual says, or typical figures by how
    /// far the programme dries.
    pub fn programme_figures(
        &self,
        machine: MachineId,
    ) -> Result<Vec<Setting<ProgrammeFigures>>, BookError> {
        let cycles = self.machine_figures(machine)?.value.cycles;
        let mut all = Vec::with_capacity(cycles.len());
        for cycle in cycles {
            let name = programme_name(machine, &cycle.programme);
            let said = match self.said_of(topic::PROGRAMME, &name)? {
                Some(seq) => self.loading_at(seq)?.map(|loading| (seq, loading)),
                None => None,
            };
            all.push(match said {
                Some((seq, Loading::ProgrammeSet(value))) => Setting { value, said: Some(seq) },
                _ => Setting { value: typical::programme(machine, &cycle), said: None },
            });
        }
        Ok(all)
    }

    /// The trays that were weighed, the newest first; at most 20.
    pub fn trays_weighed(&self) -> Result<Vec<Weighed>, BookError> {
        let places = self.sql.all(
            "SELECT seq FROM setting WHERE topic = $1 ORDER BY seq DESC LIMIT $2",
            &[Value::Text(topic::TRAY), Value::Int(TRAYS)],
            |row| row.count::<u64>(0),
        )?;
        let mut trays = Vec::with_capacity(places.len());
        for seq in places {
            let Some(fact) = facts::at(self.sql, seq)? else { continue };
            let Body::Loading(loading) = fact.body else { continue };
            if let Loading::TrayWeighed { grams, empty_g, sets, pouched } = *loading {
                trays.push(Weighed { seq, at: fact.stamp.happened, grams, empty_g, sets, pouched });
            }
        }
        Ok(trays)
    }

    /// The runs of a machine that were looked at for being dry, the newest first; at most 400
    /// among its last 1000. Runs and looks that were taken back do not count.
    pub fn dry_looks(&self, machine: MachineId) -> Result<Vec<DryLook>, BookError> {
        let mut found = Vec::new();
        for run in self.looked_at(machine)? {
            if found.len() == DRY_LOOKS {
                break;
            }
            let Some(wet) = self.was_wet(run.run)? else { continue };
            let figures = match run.judged {
                Some(seq) => self.judged(seq)?.map(|fact| fact.judged.figures),
                None => None,
            };
            let KeyFigures { drying_ms, dry_vacuum_pa, .. } = figures.unwrap_or_default();
            found.push(DryLook {
                run: run.run,
                started: run.started,
                programme: run.programme,
                contents: self.sets_in(run.run)?,
                wet,
                drying_ms,
                dry_vacuum_pa,
            });
        }
        Ok(found)
    }

    fn looked_at(&self, machine: MachineId) -> Result<Vec<Candidate>, BookError> {
        self.sql.all(
            "SELECT run, started_ms, programme, judged_seq FROM run WHERE machine = $1 \
             AND undone = 0 AND looked_ms IS NOT NULL ORDER BY started_ms DESC, started_seq DESC LIMIT $2",
            &[Value::id(&machine), Value::Int(AMONG)],
            |row| {
                Ok(Candidate {
                    run: row.id(0)?,
                    started: Instant::from_millis(row.int(1)?),
                    programme: row.maybe_text(2)?,
                    judged: row.maybe_count(3)?,
                })
            },
        )
    }

    /// Was a pouch of this run said to be wet? `None`: nobody looked whether they were dry.
    fn was_wet(&self, run: RunId) -> Result<Option<bool>, BookError> {
        let places = self.sql.all(
            "SELECT seq FROM look WHERE run = $1 ORDER BY seq",
            &[Value::id(&run)],
            |row| row.count::<u64>(0),
        )?;
        let mut found = None;
        for seq in places {
            let Some(fact) = facts::at(self.sql, seq)? else { continue };
            let Body::Looked { dry_looked, wet, .. } = fact.body else { continue };
            let answered = dry_looked || !wet.is_empty();
            if answered && self.act_undone(fact.stamp.act)?.is_none() {
                found = Some(found == Some(true) || !wet.is_empty());
            }
        }
        Ok(found)
    }

    fn sets_in(&self, run: RunId) -> Result<Vec<(SetKind, u32, bool)>, BookError> {
        self.sql.all(
            "SELECT pouch.kind, COUNT(*), pouch.pouched FROM run_pouch \
             JOIN pouch ON pouch.pouch = run_pouch.pouch WHERE run_pouch.run = $1 \
             GROUP BY pouch.kind, pouch.pouched ORDER BY pouch.kind, pouch.pouched",
            &[Value::id(&run)],
            |row| Ok((set_kind(&row.text(0)?)?, row.count(1)?, row.flag(2)?)),
        )
    }
}

/// Typical things, each replaced by the salon's own of the same word, then the others of its own.
fn overlaid<T>(
    typical: Vec<T>,
    mut own: Vec<Setting<T>>,
    word: impl Fn(&T) -> &str,
) -> Vec<Setting<T>> {
    let mut all = Vec::with_capacity(typical.len() + own.len());
    for value in typical {
        let said = own.iter().position(|one| word(&one.value) == word(&value));
        all.push(match said {
            Some(at) => own.remove(at),
            None => Setting { value, said: None },
        });
    }
    all.append(&mut own);
    all
}
