//! What is looked after: jars, foot basins, baths, chores, stock.

use super::View;
use super::events::upkeep;
use crate::error::BookError;
use crate::fact::{
    About, BasinAfter, ChoreRule, DrawerRef, Fact, Found, LeftOut, Stamp, ThingKind, Upkeep, UsedBy,
};
use crate::facts;
use crate::fold::events::{chore_name, topic};
use crate::store::Value;
use crate::typical::chores::{self as typical, ChoreSource, TypicalChore};
use load::StockWord;
use measure::{Instant, MachineId, ThingId};
use std::collections::BTreeMap;

/// How many of the newest lines of one name are looked through: weeks of a busy day.
const LINES: u32 = 240;
/// How many of the last days on which a basin was not used are named: a season.
const DAYS_OFF: usize = 90;

/// A jar, a foot basin or an ultrasonic bath that is here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Thing {
    /// The thing.
    pub thing: ThingId,
    /// Its kind.
    pub what: ThingKind,
    /// Its number among those of its kind.
    pub number: u32,
    /// Since when.
    pub since: Instant,
}

/// What the label in a jar asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct JarLabel {
    /// Minutes fully under.
    pub contact_min: u32,
    /// How long a mix lasts, hours; `None`: to the end of the day.
    pub lasts_h: Option<u32>,
    /// Name, number and strength.
    pub label: Option<DrawerRef>,
}

/// A jar as it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Jar {
    /// The jar.
    pub thing: Thing,
    /// What its label asks; `None`: nobody has read it yet.
    pub label: Option<JarLabel>,
    /// The mix that is in it; `None`: it is empty.
    pub mixed: Option<Stamp>,
    /// When something last went into this mix.
    pub last_in: Option<Stamp>,
}

/// A foot basin as it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Basin {
    /// The basin.
    pub thing: Thing,
    /// Minutes wet, by the label; `None`: nobody has read it yet.
    pub wet_min: Option<u32>,
    /// The cleaning that began last, and after what.
    pub wet: Option<(Stamp, BasinAfter)>,
    /// When that cleaning ended; `None`: it is wet, or none has begun.
    pub drained: Option<Stamp>,
    /// The last day's end that was cleaned; the weekly cleaning counts as well.
    pub day_end: Option<Stamp>,
    /// The last weekly cleaning.
    pub week: Option<Stamp>,
    /// Not used on these days, the last one first.
    pub not_used: Vec<Instant>,
}

/// A chore that was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ChoreDone {
    /// By whom, when.
    pub stamp: Stamp,
    /// What was found.
    pub found: Found,
}

/// A chore with its rule and what became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chore {
    /// The rule that holds.
    pub rule: ChoreRule,
    /// The salon said so; `None`: typical.
    pub said: Option<u64>,
    /// Where the rhythm is from, where it is a typical one.
    pub source: Option<ChoreSource>,
    /// Since when it is looked after here.
    pub since: Instant,
    /// When it was last done.
    pub last: Option<ChoreDone>,
    /// The last time that counts: of a chore that stops work, the last that was found fine.
    pub counts: Option<Instant>,
    /// When it was left out since then.
    pub left: Vec<(Instant, LeftOut)>,
    /// Runs of its machine since then; 0 where it does not go by runs.
    pub runs: u32,
}

/// Something that is used up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stock {
    /// What.
    pub item: StockWord,
    /// What uses it up.
    pub used_by: UsedBy,
    /// Buy when there are fewer.
    pub least: u32,
    /// How many were counted last, and when; `None`: nobody has counted yet.
    pub counted: Option<(Instant, u32)>,
    /// How many came since.
    pub bought: u32,
    /// How many were used since, by the book.
    pub used: u32,
}

impl Stock {
    /// About how many are left; `None`: nobody has counted yet.
    #[must_use]
    pub fn left(&self) -> Option<u32> {
        let (_, counted) = self.counted?;
        Some(counted.saturating_add(self.bought).saturating_sub(self.used))
    }

    /// Fewer are left than the salon wants.
    #[must_use]
    pub fn is_low(&self) -> bool {
        self.left().is_some_and(|left| left < self.least)
    }
}

impl View<'_> {
    /// The things that are here, in the order in which they came.
    pub fn things(&self) -> Result<Vec<Thing>, BookError> {
        let mut things = self.things_ever()?;
        for ended in self.newest_of_each(topic::THING_ENDED)? {
            if let Some(Upkeep::ThingEnded { thing }) = upkeep(&ended) {
                things.retain(|known| known.thing != *thing);
            }
        }
        Ok(things)
    }

    /// Every thing that ever was here.
    pub fn things_ever(&self) -> Result<Vec<Thing>, BookError> {
        let added = self.newest_of_each(topic::THING)?;
        Ok(added
            .iter()
            .filter_map(|fact| match upkeep(fact) {
                Some(Upkeep::ThingAdded { thing, what, number }) => Some(Thing {
                    thing: *thing,
                    what: *what,
                    number: *number,
                    since: fact.stamp.happened,
                }),
                _ => None,
            })
            .collect())
    }

    /// Goes through the newest lines of a name, the one that happened last first, until told to stop.
    fn back_through(
        &self,
        topic: &str,
        name: &str,
        mut each: impl FnMut(&Fact, &Upkeep) -> bool,
    ) -> Result<(), BookError> {
        for seq in self.newest_places(topic, name, LINES)? {
            if let Some(fact) = facts::at(self.sql, seq)?
                && let Some(said) = upkeep(&fact)
                && each(&fact, said)
            {
                break;
            }
        }
        Ok(())
    }

    /// A jar as it stands.
    pub fn jar(&self, thing: Thing) -> Result<Jar, BookError> {
        let name = thing.thing.to_string();
        let label = self.newest(topic::JAR, &name)?.and_then(|fact| match upkeep(&fact) {
            Some(Upkeep::JarSet { contact_min, lasts_h, label, .. }) => {
                Some(JarLabel { contact_min: *contact_min, lasts_h: *lasts_h, label: *label })
            }
            _ => None,
        });
        let mut jar = Jar { thing, label, mixed: None, last_in: None };
        self.back_through(topic::JAR_STEP, &name, |fact, said| match said {
            Upkeep::JarIn { .. } => {
                jar.last_in = jar.last_in.or(Some(fact.stamp));
                false
            }
            Upkeep::JarMixed { .. } => {
                jar.mixed = Some(fact.stamp);
                true
            }
            _ => true,
        })?;
        if jar.mixed.is_none() {
            jar.last_in = None;
        }
        Ok(jar)
    }

    /// A foot basin as it stands.
    pub fn basin(&self, thing: Thing) -> Result<Basin, BookError> {
        let name = thing.thing.to_string();
        let wet_min = self.newest(topic::BASIN, &name)?.and_then(|fact| match upkeep(&fact) {
            Some(Upkeep::BasinSet { wet_min, .. }) => Some(*wet_min),
            _ => None,
        });
        let mut not_used = Vec::new();
        self.back_through(topic::NOT_USED, &name, |fact, _| {
            not_used.push(fact.stamp.happened);
            not_used.len() >= DAYS_OFF
        })?;
        let (wet, drained, day_end, week) = (None, None, None, None);
        let mut basin = Basin { thing, wet_min, wet, drained, day_end, week, not_used };
        self.back_through(topic::BASIN_STEP, &name, |fact, said| {
            let stamp = fact.stamp;
            match said {
                Upkeep::BasinDrained { .. } if basin.wet.is_none() => {
                    basin.drained = basin.drained.or(Some(stamp));
                }
                Upkeep::BasinWet { after, .. } => {
                    basin.wet = basin.wet.or(Some((stamp, *after)));
                    if matches!(after, BasinAfter::DayEnd | BasinAfter::Week) {
                        basin.day_end = basin.day_end.or(Some(stamp));
                    }
                    if *after == BasinAfter::Week {
                        basin.week = basin.week.or(Some(stamp));
                    }
                }
                _ => {}
            }
            basin.week.is_some()
        })?;
        Ok(basin)
    }

    /// How many cleanings of foot basins began between `from` and `to`.
    pub fn basins_cleaned(&self, from: Instant, to: Instant) -> Result<u32, BookError> {
        let steps = self.events_between(topic::BASIN_STEP, from, to)?;
        let begun =
            steps.iter().filter(|fact| matches!(upkeep(fact), Some(Upkeep::BasinWet { .. })));
        Ok(u32::try_from(begun.count()).unwrap_or(u32::MAX))
    }

    /// How many runs of a machine were started after a moment; one whose start was undone is none.
    pub fn runs_since(&self, machine: MachineId, after: Instant) -> Result<u32, BookError> {
        let count = self.sql.first(
            "SELECT COUNT(*) FROM run WHERE machine = $1 AND started_ms > $2 AND undone = 0",
            &[Value::id(&machine), Value::Int(after.millis())],
            |row| row.count(0),
        )?;
        Ok(count.unwrap_or(0))
    }

    /// Every chore: the salon's own rules over the typical ones, of what is here and in use.
    pub fn chores(&self) -> Result<Vec<Chore>, BookError> {
        self.chores_where(|_| true)
    }

    /// The chores of a machine that stop work where they are overdue.
    pub fn chores_that_stop(&self, machine: MachineId) -> Result<Vec<Chore>, BookError> {
        self.chores_where(|rule| rule.stops_work && rule.about == About::Machine(machine))
    }

    fn chores_where(&self, wanted: impl Fn(&ChoreRule) -> bool) -> Result<Vec<Chore>, BookError> {
        let rules = self.rules()?;
        let rules = rules.into_iter().filter(|(typical, ..)| wanted(&typical.rule));
        rules.map(|(rule, said, since)| self.chore(rule, said, since)).collect()
    }

    /// The rules that hold, with the place of the fact and since when they count.
    fn rules(&self) -> Result<Vec<(TypicalChore, Option<u64>, Instant)>, BookError> {
        let opened = self.salon()?.opened;
        let things = self.things()?;
        let machines = self.machines()?;
        let mut rules = Vec::new();
        let at = |since| move |typical| (typical, None, since);
        for machine in &machines {
            rules.extend(typical::of_machine(machine.machine).into_iter().map(at(opened)));
        }
        for bath in things.iter().filter(|thing| thing.what == ThingKind::Ultrasonic) {
            rules.extend(typical::of_bath(bath.thing).into_iter().map(at(bath.since)));
        }
        rules.extend(typical::of_salon().into_iter().map(at(opened)));
        // By name: what was said last, and since when it was said without an end.
        let mut said: BTreeMap<String, (Option<ChoreRule>, u64, Instant)> = BTreeMap::new();
        for fact in self.all_events(topic::CHORE)? {
            let (name, rule) = match upkeep(&fact) {
                Some(Upkeep::ChoreSet(rule)) => {
                    (chore_name(&rule.chore, rule.about), Some(rule.clone()))
                }
                Some(Upkeep::ChoreEnded { chore, about }) => (chore_name(chore, *about), None),
                _ => continue,
            };
            let before = said.remove(&name).filter(|(rule, ..)| rule.is_some());
            let since = before.map_or(fact.stamp.happened, |(_, _, since)| since);
            said.insert(name, (rule, fact.seq, since));
        }
        rules.retain_mut(|(typical, place, since)| {
            match said.remove(&chore_name(&typical.rule.chore, typical.rule.about)) {
                None => true,
                Some((None, ..)) => false,
                Some((Some(rule), seq, from)) => {
                    typical.rule = rule;
                    (*place, *since) = (Some(seq), from);
                    true
                }
            }
        });
        let here = |about: About| match about {
            About::Salon => true,
            About::Machine(id) => machines.iter().any(|machine| machine.machine == id),
            About::Thing(id) => things.iter().any(|thing| thing.thing == id),
        };
        let mut own: Vec<_> =
            said.into_values().filter_map(|(rule, s, t)| Some((rule?, s, t))).collect();
        own.sort_by_key(|(_, seq, _)| *seq);
        rules.extend(own.into_iter().filter(|(rule, ..)| here(rule.about)).map(
            |(rule, seq, since)| {
                (TypicalChore { rule, source: ChoreSource::CommonPractice }, Some(seq), since)
            },
        ));
        Ok(rules)
    }

    fn chore(
        &self,
        typical: TypicalChore,
        said: Option<u64>,
        since: Instant,
    ) -> Result<Chore, BookError> {
        let TypicalChore { rule, source } = typical;
        let source = said.is_none().then_some(source);
        let (last, counts, left, runs) = (None, None, Vec::new(), 0);
        let mut chore = Chore { rule, said, source, since, last, counts, left, runs };
        match chore.rule.about {
            // A spore test is placed, not signed for.
            About::Machine(machine) if chore.rule.chore.word() == typical::SPORE_TEST => {
                let placed = self.latest(topic::SPORE, &machine.to_string())?;
                chore.last = placed.map(|fact| ChoreDone { stamp: fact.stamp, found: Found::Fine });
                chore.counts = chore.last.map(|done| done.stamp.happened);
            }
            about => self.chore_steps(&mut chore, about)?,
        }
        if let (About::Machine(machine), Some(_)) = (chore.rule.about, chore.rule.runs) {
            chore.runs = self.runs_since(machine, chore.counts.unwrap_or(since))?;
        }
        Ok(chore)
    }

    fn chore_steps(&self, chore: &mut Chore, about: About) -> Result<(), BookError> {
        let name = chore_name(&chore.rule.chore, about);
        let fine_only = chore.rule.stops_work;
        let (mut last, mut counts, mut left) = (None, None, Vec::new());
        self.back_through(topic::CHORE_DONE, &name, |fact, said| {
            match said {
                Upkeep::ChoreLeft { why, .. } => left.push((fact.stamp.happened, *why)),
                Upkeep::ChoreDone { found, .. } => {
                    last = last.or(Some(ChoreDone { stamp: fact.stamp, found: *found }));
                    if *found == Found::Fine || !fine_only {
                        counts = Some(fact.stamp.happened);
                    }
                }
                _ => {}
            }
            counts.is_some()
        })?;
        (chore.last, chore.counts, chore.left) = (last, counts, left);
        Ok(())
    }

    /// What is kept of things that are used up, in the order in which it was said.
    pub fn stock(&self) -> Result<Vec<Stock>, BookError> {
        let mut all = Vec::new();
        for fact in self.newest_of_each(topic::STOCK)? {
            let Some(Upkeep::StockSet { item, used_by, least }) = upkeep(&fact) else { continue };
            let mut stock = Stock {
                item: item.clone(),
                used_by: *used_by,
                least: *least,
                counted: None,
                bought: 0,
                used: 0,
            };
            let mut place = 0;
            self.back_through(topic::STOCK_STEP, item.word(), |fact, said| match said {
                Upkeep::StockBought { count, .. } => {
                    stock.bought = stock.bought.saturating_add(*count);
                    false
                }
                Upkeep::StockCounted { count, .. } => {
                    stock.counted = Some((fact.stamp.happened, *count));
                    place = fact.seq;
                    true
                }
                _ => false,
            })?;
            if let Some((at, _)) = stock.counted {
                stock.used = self.used_since(stock.used_by, at, place)?;
            }
            all.push(stock);
        }
        Ok(all)
    }

    /// How many were used up since a count, by what the book holds.
    fn used_since(&self, by: UsedBy, at: Instant, place: u64) -> Result<u32, BookError> {
        let after = Value::Int(at.millis());
        let (sql, value) = match by {
            UsedBy::Counting => return Ok(0),
            UsedBy::Pouch => (
                "SELECT COUNT(*) FROM pouch WHERE packed_seq > $1 AND pouched = 1",
                Value::seq(place),
            ),
            UsedBy::Run => ("SELECT COUNT(*) FROM run WHERE started_ms > $1 AND undone = 0", after),
            UsedBy::Test => {
                ("SELECT COUNT(*) FROM event WHERE topic = 'spore' AND at_ms > $1", after)
            }
        };
        Ok(self.sql.first(sql, &[value], |row| row.count(0))?.unwrap_or(0))
    }
}
