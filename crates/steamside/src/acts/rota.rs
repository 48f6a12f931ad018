//! Who works when.

use super::Refusal;
use crate::chance;
use jiff::ToSpan;
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use logbook::book::Draft;
use logbook::fact::{Body, Day};
use logbook::view::View;
use measure::{Instant, PersonId, ShiftId};

/// Most weeks that one tap fills.
const MOST_WEEKS: u32 = 12;

/// A working time as somebody says it, on the salon's clock.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetShift {
    /// Who.
    pub person: PersonId,
    /// From.
    pub from: DateTime,
    /// To.
    pub to: DateTime,
    /// Lunch, from and to.
    pub lunch: Option<(DateTime, DateTime)>,
    /// The same in so many weeks after it.
    pub weeks: u32,
    /// The salon's zone.
    pub zone: TimeZone,
}

/// Says when a person works; what was said of the same person at that time before is replaced.
pub fn set_shift(view: &View<'_>, draft: &mut Draft, set: SetShift) -> Result<(), Refusal> {
    if view.people()?.iter().all(|person| person.person != set.person) {
        return Err(Refusal::rule("refused-no-such-person"));
    }
    let eats = |(from, to): (DateTime, DateTime)| set.from <= from && from <= to && to <= set.to;
    if set.from >= set.to || !set.lunch.is_none_or(eats) || set.weeks > MOST_WEEKS {
        return Err(Refusal::rule("refused-shift"));
    }
    for week in 0..=set.weeks {
        let at = |wall: DateTime| -> Result<Instant, Refusal> {
            let wall = wall.checked_add(i64::from(week).weeks());
            let at = wall.and_then(|wall| set.zone.to_ambiguous_timestamp(wall).compatible());
            let at = at.map_err(|_| Refusal::rule("refused-shift"))?;
            Ok(Instant::from_millis(at.as_millisecond()))
        };
        let (from, to) = (at(set.from)?, at(set.to)?);
        let lunch = set.lunch.map(|(a, b)| Ok::<_, Refusal>((at(a)?, at(b)?))).transpose()?;
        for before in view.shifts(from, to)? {
            if before.person == set.person {
                draft.fact(Body::Day(Day::ShiftEnded { shift: before.shift }));
            }
        }
        let (shift, person) = (chance::id()?, set.person);
        draft.fact(Body::Day(Day::ShiftSet { shift, person, from, to, lunch }));
    }
    Ok(())
}

/// A shift that will not be worked. Only coming ones are asked about.
pub fn end_shift(
    view: &View<'_>,
    draft: &mut Draft,
    shift: ShiftId,
    now: Instant,
) -> Result<(), Refusal> {
    let end_of_time = Instant::from_millis(i64::MAX);
    if view.shifts(now, end_of_time)?.iter().all(|row| row.shift != shift) {
        return Err(Refusal::rule("refused-no-such-shift"));
    }
    draft.fact(Body::Day(Day::ShiftEnded { shift }));
    Ok(())
}
