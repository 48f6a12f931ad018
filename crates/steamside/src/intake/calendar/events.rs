//! Entries: when one recurs, which instances were moved or called off, what each is called.

use super::values::{Stamp, duration_ms, stamp};
use super::zones::{Zone, Zones};
use super::{Asked, Item, Odd, Said, WholeDays, Why, parameter, properties, property, recur};
use icalendar::parser::{Component, Property};
use jiff::civil::{Date, DateTime};
use jiff::{SpanRound, ToSpan, Unit};
use measure::{Instant, Span};
use std::collections::{BTreeMap, BTreeSet};

/// Longer than this is no visit: a holiday, a course.
const LONGEST: Span = Span::from_minutes(12 * 60);
/// Most entries of whole days that one recurring entry gives.
const MOST_DAYS: usize = 8;

/// Names of a chair, in small letters.
const CHAIRS: [&str; 7] = ["chair", "station", "seat", "ghế", "silla", "sillón", "puesto"];

/// A time with its zone.
#[derive(Debug, Clone)]
struct Placed {
    wall: DateTime,
    zone: Zone,
}

impl Placed {
    fn moment(&self) -> Result<Instant, Why> {
        self.zone.moment(self.wall).ok_or(Why::Time)
    }
}

/// When an entry is.
enum When {
    At { start: Placed, length: Option<Span> },
    Days { from: Date, to: Date },
}

/// Dates beside the rule: the moment, and its own length where it has one.
type Extra = (Placed, Option<Span>);

/// One entry of a calendar.
pub struct Event {
    /// Its `UID`.
    pub uid: String,
    title: String,
    chair: Option<u32>,
    sequence: u32,
    stamped: Option<DateTime>,
    called_off: bool,
    when: When,
    /// The instance that it speaks of, and whether it speaks of those after it too.
    instance: Option<(Placed, bool)>,
    rules: Vec<String>,
    extra: Vec<Extra>,
    without: Vec<Instant>,
    without_days: Vec<Date>,
}

/// The title of an entry.
pub fn title_of(part: &Component<'_>) -> String {
    property(part, "SUMMARY").map(|title| title.val.as_str().trim().to_owned()).unwrap_or_default()
}

fn place(property: &Property<'_>, zones: &Zones, text: &str) -> Result<Option<Placed>, Why> {
    Ok(match stamp(text).ok_or(Why::Time)? {
        Stamp::Utc(wall) => Some(Placed { wall, zone: Zone::utc() }),
        Stamp::Wall(wall) => Some(Placed { wall, zone: zones.zone(parameter(property, "TZID"))? }),
        Stamp::Day(_) => None,
    })
}

fn day(text: &str) -> Option<Date> {
    match stamp(text) {
        Some(Stamp::Day(day)) => Some(day),
        _ => None,
    }
}

impl Event {
    /// Reads one; `off`: the whole calendar is a message that calls off.
    pub fn read(part: &Component<'_>, zones: &Zones, off: bool) -> Result<Self, Why> {
        let text = |name| property(part, name).map(|found| found.val.as_str().trim());
        let uid = text("UID").filter(|uid| !uid.is_empty()).ok_or(Why::Time)?.to_owned();
        let status = text("STATUS").unwrap_or_default();
        let mut event = Self {
            uid,
            title: title_of(part),
            chair: chair(part),
            sequence: text("SEQUENCE").and_then(|text| text.parse().ok()).unwrap_or(0),
            stamped: text("DTSTAMP").and_then(stamp).and_then(|stamped| match stamped {
                Stamp::Utc(at) | Stamp::Wall(at) => Some(at),
                Stamp::Day(_) => None,
            }),
            called_off: off || status.eq_ignore_ascii_case("CANCELLED"),
            when: when(part, zones)?,
            instance: None,
            rules: properties(part, "RRULE").map(|rule| rule.val.as_str().to_owned()).collect(),
            extra: Vec::new(),
            without: Vec::new(),
            without_days: Vec::new(),
        };
        if let Some(id) = property(part, "RECURRENCE-ID") {
            let on =
                parameter(id, "RANGE").is_some_and(|r| r.eq_ignore_ascii_case("THISANDFUTURE"));
            let placed = match place(id, zones, id.val.as_str())? {
                Some(placed) => placed,
                None => event.at_start_of(day(id.val.as_str()).ok_or(Why::Time)?)?,
            };
            event.instance = Some((placed, on));
        }
        event.dates(part, zones)?;
        Ok(event)
    }

    /// The time of day of this entry, on another day.
    fn at_start_of(&self, day: Date) -> Result<Placed, Why> {
        match &self.when {
            When::At { start, .. } => {
                Ok(Placed { wall: day.to_datetime(start.wall.time()), zone: start.zone.clone() })
            }
            When::Days { .. } => Ok(Placed { wall: day.at(0, 0, 0, 0), zone: Zone::utc() }),
        }
    }

    /// `RDATE` and `EXDATE`.
    fn dates(&mut self, part: &Component<'_>, zones: &Zones) -> Result<(), Why> {
        for list in properties(part, "RDATE") {
            for text in list.val.as_str().split(',') {
                // A period: its start, and its end or its length.
                let (start, rest) =
                    text.split_once('/').map_or((text, None), |(s, r)| (s, Some(r)));
                let Some(placed) = place(list, zones, start)? else {
                    let day = day(start).ok_or(Why::Time)?;
                    self.extra.push((self.at_start_of(day)?, None));
                    continue;
                };
                let length = match rest {
                    Some(length) if length.starts_with(['P', 'p', '+']) => {
                        Some(Span::from_millis(duration_ms(length).ok_or(Why::Time)?))
                    }
                    Some(end) => {
                        let end = place(list, zones, end)?.ok_or(Why::Time)?;
                        Some(end.moment()? - placed.moment()?)
                    }
                    None => None,
                };
                self.extra.push((placed, length));
            }
        }
        for list in properties(part, "EXDATE") {
            for text in list.val.as_str().split(',') {
                match place(list, zones, text)? {
                    Some(placed) => self.without.push(placed.moment()?),
                    None => self.without_days.extend(day(text)),
                }
            }
        }
        Ok(())
    }

    fn recurs(&self) -> bool {
        !self.rules.is_empty() || !self.extra.is_empty()
    }

    /// A later revision of the same thing.
    fn revision(&self) -> (u32, Option<DateTime>) {
        (self.sequence, self.stamped)
    }

    /// Every start on the wall clock up to the end of the span, less what is taken out.
    fn starts(&self, start: &Placed, to: Instant) -> Result<Vec<Extra>, Why> {
        let last = start.zone.wall(to).ok_or(Why::Time)?;
        let until = |end| match end {
            Stamp::Utc(end) => start.zone.wall(Zone::utc().moment(end)?),
            Stamp::Wall(end) => Some(end),
            Stamp::Day(day) => Some(day.at(23, 59, 59, 0)),
        };
        let mut walls = BTreeSet::new();
        for rule in &self.rules {
            walls.extend(recur::times(start.wall, rule, last, until).map_err(|_| Why::Rule)?);
        }
        // The start counts as the first one where no rule gives it (3.8.5.3).
        if self.rules.is_empty() {
            walls.insert(start.wall);
        }
        let rule = walls.into_iter().map(|wall| (Placed { wall, zone: start.zone.clone() }, None));
        let all = rule.chain(self.extra.iter().cloned());
        let mut kept = Vec::new();
        for (placed, length) in all {
            let taken_out = self.without.contains(&placed.moment()?)
                || self.without_days.contains(&placed.wall.date());
            if !taken_out {
                kept.push((placed, length));
            }
        }
        Ok(kept)
    }
}

fn when(part: &Component<'_>, zones: &Zones) -> Result<When, Why> {
    let start = property(part, "DTSTART").ok_or(Why::Time)?;
    let end = property(part, "DTEND");
    let length = property(part, "DURATION").and_then(|length| duration_ms(length.val.as_str()));
    let Some(placed) = place(start, zones, start.val.as_str())? else {
        let from = day(start.val.as_str()).ok_or(Why::Time)?;
        let days = length.map_or(1, |ms| (ms / 86_400_000).max(1));
        let to = end.and_then(|end| day(end.val.as_str())).filter(|to| *to > from);
        let to = to.or_else(|| from.checked_add(days.days()).ok()).ok_or(Why::Time)?;
        return Ok(When::Days { from, to });
    };
    let until = end.map(|end| place(end, zones, end.val.as_str())).transpose()?.flatten();
    let length = match until {
        Some(end) => Some(end.moment()? - placed.moment()?),
        None => length.map(Span::from_millis),
    };
    if length.is_some_and(|length| length < Span::default()) {
        return Err(Why::Time);
    }
    // An entry without a length says only when it begins.
    Ok(When::At { start: placed, length: length.filter(|length| *length > Span::default()) })
}

/// The number of a chair in what an entry says of its place.
fn chair(part: &Component<'_>) -> Option<u32> {
    let place = property(part, "LOCATION").or_else(|| property(part, "RESOURCES"))?;
    chair_in(place.val.as_str())
}

/// `Chair 3`, `ghế 3`, or the number alone.
pub fn chair_in(text: &str) -> Option<u32> {
    let text = text.trim().to_lowercase();
    let rest = CHAIRS.iter().find_map(|word| text.split_once(word).map(|(_, rest)| rest));
    let rest = rest.unwrap_or(&text).trim_start_matches([' ', '#', ':', '.']);
    let number: String = rest.chars().take_while(char::is_ascii_digit).collect();
    // A street has a number too: without a word for a chair the number has to stand alone.
    let alone = number.len() == rest.trim_end().len();
    let named = CHAIRS.iter().any(|word| text.contains(word));
    number.parse().ok().filter(|chair| (alone || named) && (1..=999).contains(chair))
}

/// One instance while it is worked out.
struct Instance {
    placed: Placed,
    length: Option<Span>,
    title: String,
    chair: Option<u32>,
    sequence: u32,
}

/// Everything that the entries with one `UID` say.
pub fn entries_of(uid: &str, events: Vec<Event>, asked: &Asked, said: &mut Said) {
    let title = events.first().map(|event| event.title.clone()).unwrap_or_default();
    if let Err(why) = entries(uid, events, asked, said) {
        said.odd.push(Odd { why, title });
    }
}

fn entries(uid: &str, events: Vec<Event>, asked: &Asked, said: &mut Said) -> Result<(), Why> {
    let (mut own, mut changes): (Vec<_>, Vec<_>) =
        events.into_iter().partition(|event| event.instance.is_none());
    own.sort_by_key(Event::revision);
    changes.sort_by_key(Event::revision);
    let mut instances: BTreeMap<Instant, Instance> = BTreeMap::new();
    let mut single = false;
    if let Some(master) = own.pop() {
        if master.called_off {
            said.called_off.push((uid.to_owned(), None));
            return Ok(());
        }
        single = !master.recurs();
        match &master.when {
            When::Days { from, to } => return whole_days(&master, (*from, *to), asked, said),
            When::At { start, length } => {
                for (placed, own_length) in master.starts(start, asked.to)? {
                    let instance = Instance {
                        length: own_length.or(*length),
                        title: master.title.clone(),
                        chair: master.chair,
                        sequence: master.sequence,
                        placed,
                    };
                    instances.insert(instance.placed.moment()?, instance);
                }
            }
        }
        said.series.push(uid.to_owned());
    }
    for change in changes {
        apply(uid, &change, &mut instances, said)?;
    }
    for (meant, instance) in instances {
        let start = instance.placed.moment()?;
        if start < asked.from || start >= asked.to {
            continue;
        }
        if instance.length.is_some_and(|length| length > LONGEST) {
            let from = instance.placed.wall.date();
            let to = start + instance.length.unwrap_or_default();
            let to = instance.placed.zone.wall(to).map_or(from, |to| to.date());
            let to = to.checked_add(1.day()).map_err(|_| Why::Time)?;
            said.whole_days.push(WholeDays { from, to, title: instance.title });
            continue;
        }
        said.items.push(Item {
            uid: uid.to_owned(),
            recurrence: (!single).then_some(meant),
            sequence: instance.sequence,
            start,
            end: instance.length.map(|length| start + length),
            title: instance.title,
            chair: instance.chair,
        });
    }
    Ok(())
}

/// An entry that changes one instance, or one and all after it.
fn apply(
    uid: &str,
    change: &Event,
    instances: &mut BTreeMap<Instant, Instance>,
    said: &mut Said,
) -> Result<(), Why> {
    let Some((meant, onwards)) = &change.instance else { return Ok(()) };
    let at = meant.moment()?;
    if change.called_off {
        let gone: Vec<Instant> = match onwards {
            true => instances.range(at..).map(|(at, _)| *at).collect(),
            false => vec![at],
        };
        for at in gone {
            instances.remove(&at);
            said.called_off.push((uid.to_owned(), Some(at)));
        }
        return Ok(());
    }
    let When::At { start, length } = &change.when else {
        return Err(Why::Time);
    };
    if *onwards {
        // The same shift on the wall clock for every later one (3.8.4.4).
        let shift = meant.wall.until((Unit::Day, start.wall)).map_err(|_| Why::Time)?;
        let shift = shift.round(SpanRound::new().days_are_24_hours()).map_err(|_| Why::Time)?;
        for (_, later) in instances.range_mut(at..) {
            later.placed.wall = later.placed.wall.checked_add(shift).map_err(|_| Why::Time)?;
            later.length = length.or(later.length);
            later.title.clone_from(&change.title);
            later.chair = change.chair.or(later.chair);
            later.sequence = change.sequence;
        }
    }
    let instance = Instance {
        placed: start.clone(),
        length: *length,
        title: change.title.clone(),
        chair: change.chair,
        sequence: change.sequence,
    };
    instances.insert(at, instance);
    Ok(())
}

/// Whole days are no visits: the person is asked whether the salon is closed.
fn whole_days(
    event: &Event,
    (from, to): (Date, Date),
    asked: &Asked,
    said: &mut Said,
) -> Result<(), Why> {
    let length = from.until(to).map_err(|_| Why::Time)?;
    let zone = Zone::Known(asked.zone.clone());
    let first = zone.wall(asked.from).ok_or(Why::Time)?.date();
    let last = zone.wall(asked.to).ok_or(Why::Time)?.date();
    let start = Placed { wall: from.at(0, 0, 0, 0), zone };
    let mut days = Vec::new();
    for (placed, _) in event.starts(&start, asked.to)? {
        let from = placed.wall.date();
        let to = from.checked_add(length).map_err(|_| Why::Time)?;
        if to > first && from < last && days.len() < MOST_DAYS {
            days.push(WholeDays { from, to, title: event.title.clone() });
        }
    }
    said.whole_days.extend(days);
    Ok(())
}
