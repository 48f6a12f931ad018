//! Services, figures, the accepted plan, and how long hands take here.

use super::View;
use crate::drawer::{self, BookKey};
use crate::error::BookError;
use crate::fact::{Body, Day, DayRules, Keyed, KindFigures, MachineFigures, PlannedRun, Service};
use crate::facts;
use crate::fold::day::topic;
use crate::fold::hands::{PACK, WASH};
use crate::store::Value;
use crate::typical;
use load::SetKind;
use measure::{Instant, MachineId, PersonId, ServiceId};
use std::collections::{BTreeMap, BTreeSet};

/// A setting, and whether it is the salon's own or only what is usual.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Setting<T> {
    /// What holds.
    pub value: T,
    /// The place of the fact in which the salon said so; `None`: typical figures, common practice
    /// or assumption, until the salon says its own.
    pub said: Option<u64>,
}

/// The plan that somebody accepted last.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AcceptedPlan {
    /// The place of its fact.
    pub seq: u64,
    /// When it was accepted.
    pub at: Instant,
    /// By whom.
    pub by: Option<PersonId>,
    /// From when it plans, and until when.
    pub span: (Instant, Instant),
    /// Its runs.
    pub runs: Vec<PlannedRun>,
}

/// How long a piece of work took, each time for one set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spread {
    /// How many times it was measured.
    pub count: u32,
    /// A quarter of the times were shorter, seconds.
    pub lower_s: u32,
    /// Half of the times were shorter, seconds.
    pub median_s: u32,
    /// Three quarters of the times were shorter, seconds.
    pub upper_s: u32,
}

/// What the book's own times say about hands; `None` where it has none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct HandTimes {
    /// Washed, dried, looked at, oiled; one set.
    pub wash: Option<Spread>,
    /// Put in a pouch, with its label; one set.
    pub pack: Option<Spread>,
}

/// How many of the newest times count: what was usual a year ago need not be now.
const NEWEST: i64 = 200;
/// Shorter for one set is a tap after a tap; longer is a pause. (Common practice, no source.)
const ONE_SET_S: std::ops::RangeInclusive<i64> = 10..=15 * 60;

impl View<'_> {
    /// What was said of a topic, each name once, in the order in which it was last said.
    pub(super) fn said(&self, topic: &str) -> Result<Vec<(String, u64)>, BookError> {
        self.sql.all(
            "SELECT name, seq FROM setting WHERE topic = $1 ORDER BY seq",
            &[Value::Text(topic)],
            |row| Ok((row.text(0)?, row.count(1)?)),
        )
    }

    /// The place of the fact that says what holds of `name`.
    pub(super) fn said_of(&self, topic: &str, name: &str) -> Result<Option<u64>, BookError> {
        self.sql.first(
            "SELECT seq FROM setting WHERE topic = $1 AND name = $2",
            &[Value::Text(topic), Value::Text(name)],
            |row| row.count(0),
        )
    }

    fn day_at(&self, seq: u64) -> Result<Option<Day>, BookError> {
        Ok(match facts::at(self.sql, seq)?.map(|fact| fact.body) {
            Some(Body::Day(day)) => Some(day),
            _ => None,
        })
    }

    /// The services that are offered, in the order in which they were last described.
    pub fn services(&self) -> Result<Vec<Service>, BookError> {
        let ended: BTreeSet<String> =
            self.said(topic::SERVICE_ENDED)?.into_iter().map(|(name, _)| name).collect();
        let mut services = self.services_ever()?;
        services.retain(|service| !ended.contains(&service.service.to_string()));
        Ok(services)
    }

    /// Every service that was ever offered.
    pub fn services_ever(&self) -> Result<Vec<Service>, BookError> {
        let mut services = Vec::new();
        for (_, seq) in self.said(topic::SERVICE)? {
            if let Some(Day::ServiceSet(service)) = self.day_at(seq)? {
                services.push(service);
            }
        }
        Ok(services)
    }

    /// What a kind needs of hands, steam and room: the salon's own figures, or typical ones.
    pub fn kind_figures(&self, kind: &SetKind) -> Result<Setting<KindFigures>, BookError> {
        if let Some(seq) = self.said_of(topic::KIND, kind.word())?
            && let Some(Day::KindFigures(value)) = self.day_at(seq)?
        {
            return Ok(Setting { value, said: Some(seq) });
        }
        Ok(Setting { value: typical::kind(kind), said: None })
    }

    /// What a machine can do in a day: the salon's own figures, or typical ones.
    pub fn machine_figures(
        &self,
        machine: MachineId,
    ) -> Result<Setting<MachineFigures>, BookError> {
        if let Some(seq) = self.said_of(topic::MACHINE, &machine.to_string())?
            && let Some(Day::MachineFigures(value)) = self.day_at(seq)?
        {
            return Ok(Setting { value, said: Some(seq) });
        }
        Ok(Setting { value: typical::machine(machine), said: None })
    }

    /// What holds for every plan: the salon's own rules, or typical ones.
    pub fn day_rules(&self) -> Result<Setting<DayRules>, BookError> {
        if let Some(seq) = self.said_of(topic::RULES, "")?
            && let Some(Day::Rules(value)) = self.day_at(seq)?
        {
            return Ok(Setting { value, said: Some(seq) });
        }
        Ok(Setting { value: typical::RULES, said: None })
    }

    /// The plan that somebody accepted last.
    pub fn accepted_plan(&self) -> Result<Option<AcceptedPlan>, BookError> {
        let Some(seq) = self.said_of(topic::PLAN, "")? else {
            return Ok(None);
        };
        let Some(fact) = facts::at(self.sql, seq)? else {
            return Ok(None);
        };
        Ok(match fact.body {
            Body::Day(Day::PlanAccepted { from, to, runs }) => Some(AcceptedPlan {
                seq,
                at: fact.stamp.happened,
                by: fact.stamp.sign,
                span: (from, to),
                runs,
            }),
            _ => None,
        })
    }

    /// The key under which calendars are recognised; `None` before the first import, and after
    /// the key was deleted.
    ///
    /// # Errors
    /// A key that is not the one that was put in the drawer.
    pub fn book_key(&self) -> Result<Option<BookKey>, BookError> {
        let Some(seq) = self.said_of(topic::KEY, "")? else {
            return Ok(None);
        };
        let Some(Day::KeyMade { key }) = self.day_at(seq)? else {
            return Ok(None);
        };
        let kept = self.kept(&key)?;
        kept.map(|bytes| drawer::book_key(key.entry, &bytes)).transpose()
    }

    /// Every phrase that the salon confirmed, with the service it means; `None`: such an entry is
    /// no visit.
    pub fn phrases(&self) -> Result<BTreeMap<Keyed, Option<ServiceId>>, BookError> {
        let rows = self.sql.all("SELECT phrase, service FROM phrase", &[], |row| {
            Ok((Keyed::from_bytes(row.fixed(0)?), row.maybe_id(1)?))
        })?;
        Ok(rows.into_iter().collect())
    }

    /// How long washing and packing take here, for one set.
    ///
    /// Nobody taps when they begin: a time runs from the person's tap before to the tap that says
    /// that it is done, so it is rather too long than too short.
    pub fn hand_times(&self) -> Result<HandTimes, BookError> {
        Ok(HandTimes { wash: self.spread(WASH)?, pack: self.spread(PACK)? })
    }

    fn spread(&self, what: &str) -> Result<Option<Spread>, BookError> {
        let times = self.sql.all(
            "SELECT took_ms, sets FROM hand_time WHERE what = $1 ORDER BY seq DESC LIMIT $2",
            &[Value::Text(what), Value::Int(NEWEST)],
            |row| Ok((row.int(0)?, row.int(1)?)),
        )?;
        let mut each: Vec<i64> = times
            .into_iter()
            .filter(|(_, sets)| *sets > 0)
            .map(|(took_ms, sets)| took_ms / sets / 1_000)
            .filter(|seconds| ONE_SET_S.contains(seconds))
            .collect();
        each.sort_unstable();
        Ok(spread_of(&each))
    }
}

/// Quartiles of sorted seconds, between two values by their distance.
fn spread_of(each: &[i64]) -> Option<Spread> {
    let count = u32::try_from(each.len()).ok().filter(|count| *count > 0)?;
    let at = |quarter: usize| {
        let place = quarter * (each.len() - 1);
        let (below, part) = (place / 4, (place % 4) as i64);
        let low = each.get(below).copied().unwrap_or(0);
        let high = each.get(below + 1).copied().unwrap_or(low);
        u32::try_from(low + (high - low) * part / 4).unwrap_or(0)
    };
    Some(Spread { count, lower_s: at(1), median_s: at(2), upper_s: at(3) })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Quartiles by linear interpolation between the sorted values, worked out by hand.
    #[test]
    fn quartiles_lie_between_the_values() {
        let check = |each: &[i64], expected: Option<(u32, u32, u32)>| {
            let found = spread_of(each).map(|s| (s.lower_s, s.median_s, s.upper_s));
            assert_eq!(found, expected, "{each:?}");
        };
        check(&[], None);
        check(&[60], Some((60, 60, 60)));
        check(&[60, 100], Some((70, 80, 90)));
        check(&[10, 20, 30, 40, 50], Some((20, 30, 40)));
    }
}
