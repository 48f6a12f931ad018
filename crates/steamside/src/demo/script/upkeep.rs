//! What the demo's people look after: a week of chores, two jars, two foot basins, an ultrasonic
//! bath, what is left of pouches and water. Invented.

use super::{Script, Step};
use crate::acts::{self, Refusal, SetJar};
use load::{ChoreWord, StockWord};
use logbook::fact::{About, BasinAfter, ChoreRule, DayPart, Found, Known, ThingKind, UsedBy};
use measure::{Instant, MachineId, Span, ThingId};

/// What a chore of the demo is about.
#[derive(Clone, Copy)]
pub(super) enum Of {
    Salon,
    Machine(u32),
    Bath,
}

/// Something that somebody looked after.
#[derive(Clone, Copy)]
pub(super) enum Tend {
    Chore(&'static str, Of),
    Mixed(u32),
    In(u32),
    Wet(u32, BasinAfter),
    Drained(u32),
}

/// Word, what uses it up, buy below, counted a week ago.
const STOCK: [(&str, UsedBy, u32, u32); 4] = [
    ("pouches", UsedBy::Pouch, 100, 220),
    ("marks", UsedBy::Pouch, 100, 420),
    ("spore tests", UsedBy::Test, 4, 6),
    ("distilled water", UsedBy::Counting, 2, 5),
];

/// Each day before the first client.
const OPENING: [(&str, Of); 4] = [
    ("water level", Of::Machine(1)),
    ("door seal", Of::Machine(1)),
    ("water level", Of::Machine(2)),
    ("bath fresh", Of::Bath),
];

/// Each day after the last one.
const CLOSING: [(&str, Of); 3] =
    [("used bin", Of::Salon), ("last load", Of::Salon), ("bath drained", Of::Bath)];

/// Once in the week: day before today.
const WEEKLY: [(i64, &str, Of); 4] = [
    (3, "chamber", Of::Machine(1)),
    (3, "tank", Of::Machine(1)),
    (2, "tank", Of::Machine(2)),
    (7, "chamber", Of::Machine(2)),
];

fn misread<E>(_: E) -> Refusal {
    Refusal::rule_with("refused-field-misread", "field", "chore")
}

impl Script<'_> {
    /// Jars, basins, the bath, one filter with its count, what is kept in stock.
    pub(super) fn set_up_upkeep(&mut self, at: Instant) -> Result<(), Refusal> {
        use ThingKind::{FootBasin, Jar, Ultrasonic};
        for what in [Jar, Jar, FootBasin, FootBasin, Ultrasonic] {
            self.act(at, Known::Setting, |v, d| acts::add_thing(v, d, what))?;
        }
        for (number, contact_min, lasts_h) in [(1, 10, 24), (2, 10, 24 * 7)] {
            let jar = self.thing(Jar, number)?;
            let label = "invented, 32 ml in 1 l".to_owned();
            let set = SetJar { jar, contact_min, lasts_h: Some(lasts_h), label };
            self.act(at, Known::Setting, |v, d| acts::set_jar(v, d, set))?;
            let basin = self.thing(FootBasin, number)?;
            self.act(at, Known::Setting, |v, d| acts::set_basin(v, d, basin, 10))?;
        }
        let filter = ChoreRule {
            chore: "bacteria filter".parse().map_err(misread)?,
            about: About::Machine(self.number(1)?),
            part: DayPart::AnyTime,
            days: None,
            runs: Some(100),
            minutes: 5,
            stops_work: true,
            manual_page: Some(31),
        };
        self.act(at, Known::Setting, |v, d| acts::set_chore(v, d, filter, at))?;
        for (word, used_by, least, count) in STOCK {
            let item: StockWord = word.parse().map_err(misread)?;
            let kept = item.clone();
            self.act(at, Known::Setting, |v, d| acts::set_stock(v, d, kept, (used_by, least)))?;
            self.act(at, Known::Read, |v, d| acts::count_stock(v, d, item, count))?;
        }
        Ok(())
    }

    /// The chores of a day that is over, and both basins after a client and at its end.
    pub(super) fn plan_upkeep_of(&mut self, days: i64, begin: Instant) {
        let at = |minutes| begin + Span::from_minutes(minutes);
        for (place, (word, of)) in OPENING.into_iter().enumerate() {
            self.tend(at(-14 + place as i64), Tend::Chore(word, of));
        }
        self.tend(at(-9), Tend::Chore("door seal", Of::Machine(2)));
        self.tend(at(-8), Tend::Mixed(1));
        if days == 3 {
            self.tend(at(-7), Tend::Mixed(2));
        }
        let end = if days == 3 { BasinAfter::Week } else { BasinAfter::DayEnd };
        for (basin, minute, after) in [
            (1, 100, BasinAfter::Client),
            (2, 130, BasinAfter::Client),
            (1, 225, end),
            (2, 226, end),
        ] {
            self.tend(at(minute), Tend::Wet(basin, after));
            self.tend(at(minute + 12), Tend::Drained(basin));
        }
        for (place, (word, of)) in CLOSING.into_iter().enumerate() {
            self.tend(at(240 + place as i64), Tend::Chore(word, of));
        }
    }

    /// What was done once in the week.
    pub(super) fn plan_weekly(&mut self) {
        for (days, word, of) in WEEKLY {
            // Not before the book was opened.
            self.tend(self.ago(days * 24 * 60 - 30), Tend::Chore(word, of));
        }
    }

    /// Today so far: the seal of machine 2 was forgotten; one basin is wet.
    pub(super) fn plan_upkeep_today(&mut self) {
        for (place, (word, of)) in OPENING.into_iter().enumerate() {
            self.tend(self.ago(350 - place as i64), Tend::Chore(word, of));
        }
        self.tend(self.ago(345), Tend::Mixed(1));
        self.tend(self.ago(52), Tend::Wet(1, BasinAfter::Client));
        self.tend(self.ago(40), Tend::Drained(1));
        self.tend(self.ago(3), Tend::Wet(2, BasinAfter::Client));
        self.tend(self.ago(2), Tend::In(1));
    }

    fn tend(&mut self, at: Instant, tend: Tend) {
        self.steps.push((at, Step::Tend(tend)));
    }

    /// One of them is done.
    pub(super) fn tended(&mut self, at: Instant, tend: Tend) -> Result<(), Refusal> {
        use ThingKind::{FootBasin, Jar, Ultrasonic};
        match tend {
            Tend::Chore(word, of) => {
                let chore: ChoreWord = word.parse().map_err(misread)?;
                let about = match of {
                    Of::Salon => About::Salon,
                    Of::Machine(number) => About::Machine(self.number(number)?),
                    Of::Bath => About::Thing(self.thing(Ultrasonic, 1)?),
                };
                let which = (chore, about);
                let found = (Found::Fine, None, at);
                self.act(at, Known::Tapped, |v, d| acts::do_chore(v, d, which, found))
            }
            Tend::Mixed(number) => {
                let jar = self.thing(Jar, number)?;
                self.act(at, Known::Tapped, |v, d| acts::mix_jar(v, d, jar))
            }
            Tend::In(number) => {
                let jar = self.thing(Jar, number)?;
                self.act(at, Known::Tapped, |v, d| acts::into_jar(v, d, jar, at))
            }
            Tend::Wet(number, after) => {
                let basin = self.thing(FootBasin, number)?;
                self.act(at, Known::Tapped, |v, d| acts::wet_basin(v, d, basin, after))
            }
            Tend::Drained(number) => {
                let basin = self.thing(FootBasin, number)?;
                self.act(at, Known::Tapped, |v, d| acts::drain_basin(v, d, basin, at))
            }
        }
    }

    fn thing(&self, what: ThingKind, number: u32) -> Result<ThingId, Refusal> {
        let things = self.app.read(|view| view.things())?;
        let found = things.iter().find(|thing| thing.what == what && thing.number == number);
        found.map(|thing| thing.thing).ok_or_else(|| Refusal::rule("refused-no-such-thing"))
    }

    fn number(&self, number: u32) -> Result<MachineId, Refusal> {
        let machine = self.machines.iter().find(|row| row.number == number);
        machine.map(|row| row.machine).ok_or_else(|| Refusal::rule("refused-no-such-machine"))
    }
}
