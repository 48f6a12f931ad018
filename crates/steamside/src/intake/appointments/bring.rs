//! What a calendar or a table changes in the book: visits are booked, moved, called off, and
//! never twice.

use super::titles::{self, Learnt, Meaning};
use super::{LARGEST, table};
use crate::acts::Refusal;
use crate::app::{App, Who};
use crate::intake::calendar::{self, Asked, Item, Odd, Said, WholeDays, Why};
use crate::intake::take::salon_zone;
use crate::{chance, clock};
use jiff::tz::TimeZone;
use logbook::book::Draft;
use logbook::fact::{Body, Day, Keyed, Origin, Service, Source};
use logbook::view::{View, Visit, VisitState};
use measure::{Instant, ServiceId, Span, VisitId};
use std::collections::{BTreeMap, BTreeSet};

/// How far back visits are taken: they show what days are like here.
const BACK: Span = Span::from_minutes(56 * 24 * 60);
/// How far ahead.
const AHEAD: Span = Span::from_minutes(42 * 24 * 60);
/// An entry that does not say how long it is, of a service that nobody named. (Assumption.)
const USUAL_MIN: u32 = 60;
/// Most visits that one file may change.
const MOST: usize = 15_000;
/// Most titles that are shown for one question.
const SHOWN: usize = 3;

/// A file as it came.
#[derive(Debug, Clone, Copy)]
pub struct Arrived<'a> {
    /// Its bytes.
    pub bytes: &'a [u8],
    /// Its name, which stands for the calendar where that has none.
    pub name: &'a str,
    /// The moment.
    pub now: Instant,
}

/// Titles that nobody has said anything about yet.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Question {
    /// Some of them, for the person who answers. Never kept.
    pub titles: Vec<String>,
    /// Phrases that may mean a service, each with the visits whose title holds it.
    pub phrases: Vec<(String, Vec<VisitId>)>,
    /// The visits that the question is about.
    pub visits: Vec<VisitId>,
}

/// What became of a file.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Brought {
    /// Visits that are new.
    pub booked: usize,
    /// Visits that changed their time, chair or service.
    pub changed: usize,
    /// Visits that were called off.
    pub called_off: usize,
    /// Visits that were here already, as they are.
    pub same: usize,
    /// Titles to be asked about.
    pub questions: Vec<Question>,
    /// Entries of whole days: is the salon closed?
    pub whole_days: Vec<WholeDays>,
    /// What could not be taken.
    pub odd: Vec<Odd>,
}

/// Brings what a file says into the book, inside an act.
pub fn bring(view: &View<'_>, draft: &mut Draft, arrived: Arrived<'_>) -> Result<Brought, Refusal> {
    if arrived.bytes.len() > LARGEST {
        return Err(Refusal::rule_with("refused-large-file", "most", LARGEST / (1024 * 1024)));
    }
    let zone = salon_zone(view)?;
    let today = clock::day_start(arrived.now, &zone);
    let asked = Asked { from: today - BACK, to: today + AHEAD, zone };
    let text = table::decoded(arrived.bytes);
    let (said, source) = if calendar::is_calendar(arrived.bytes) {
        (calendar::read(&text, &asked).ok(), Source::Calendar)
    } else {
        (table::read(&text, &asked), Source::Table)
    };
    let said = said.ok_or_else(|| Refusal::rule("refused-no-calendar"))?;
    if said.items.len() > MOST || said.called_off.len() > MOST {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST));
    }
    let key = match view.book_key()? {
        Some(key) => key,
        // A file without appointments makes no key.
        None if said.items.is_empty() => return Ok(left(said)),
        None => draft.new_key()?,
    };
    let name = said.name.clone().unwrap_or_else(|| arrived.name.to_owned());
    let services = view.services_ever()?.into_iter().map(|row| (row.service, row)).collect();
    let mut bringing = Bringing {
        view,
        draft,
        calendar: key.digest("calendar", &[&name]),
        learnt: Learnt::new(key, view.phrases()?),
        source,
        services,
        now: arrived.now,
        seen: BTreeSet::new(),
        unknown: Vec::new(),
        brought: Brought::default(),
    };
    for item in &said.items {
        bringing.item(item)?;
    }
    bringing.gone(&said, &asked.zone)?;
    let Bringing { unknown, brought, .. } = bringing;
    Ok(Brought { questions: questions(&unknown), ..add_left(brought, said) })
}

fn left(said: Said) -> Brought {
    add_left(Brought::default(), said)
}

fn add_left(brought: Brought, said: Said) -> Brought {
    Brought { whole_days: said.whole_days, odd: said.odd, ..brought }
}

/// A file from a folder or the command line: what became of it, in a line for the person there.
/// None where it says nothing new. Titles are not said: the line may end in a log.
pub fn bring_file(app: &App, who: Who, arrived: Arrived<'_>) -> Result<Option<String>, Refusal> {
    let mut brought = Brought::default();
    app.act(who, |view, draft| {
        brought = bring(view, draft, arrived)?;
        Ok(())
    })?;
    let Brought { booked, changed, called_off, .. } = brought;
    let open: usize = brought.questions.iter().map(|question| question.visits.len()).sum();
    let odd = brought.odd.len();
    let mut line = format!("{booked} visits booked, {changed} changed, {called_off} called off");
    if open > 0 {
        line += &format!("; {open} without a service: bring the file to the page /visits once");
    }
    if odd > 0 {
        line += &format!("; {odd} entries could not be taken");
    }
    for odd in brought.odd.iter().take(SHOWN) {
        if let Why::Zone(zone) = &odd.why {
            line += &format!("; cannot tell which time zone {zone:?} is");
        }
    }
    Ok((booked + changed + called_off + odd > 0).then_some(line))
}

struct Bringing<'a, 'v> {
    view: &'a View<'v>,
    draft: &'a mut Draft,
    calendar: Keyed,
    learnt: Learnt,
    source: Source,
    services: BTreeMap<ServiceId, Service>,
    now: Instant,
    /// Entries that are in the file.
    seen: BTreeSet<Keyed>,
    /// Titles without a meaning, with their visits.
    unknown: Vec<(String, VisitId)>,
    brought: Brought,
}

impl Bringing<'_, '_> {
    fn fact(&mut self, day: Day) {
        self.draft.fact(Body::Day(day));
    }

    fn entry(&self, uid: &str, recurrence: Option<Instant>) -> Keyed {
        let meant = recurrence.map(|at| at.millis().to_string()).unwrap_or_default();
        self.learnt.key().digest("entry", &[uid, &meant])
    }

    fn item(&mut self, item: &Item) -> Result<(), Refusal> {
        let entry = self.entry(&item.uid, item.recurrence);
        let meaning = self.learnt.meaning(&item.title);
        // What a file says twice, it says once.
        if !self.seen.insert(entry) {
            return Ok(());
        }
        let service = match meaning {
            Meaning::Service(service) => Some(service),
            Meaning::NoVisit | Meaning::Unknown => None,
        };
        let visit = match self.view.visit_by_entry(&entry)? {
            Some(visit) if meaning == Meaning::NoVisit => {
                return self.call_off(&visit);
            }
            Some(visit) => {
                self.again(item, &visit, service);
                visit.visit
            }
            None if meaning == Meaning::NoVisit => return Ok(()),
            None => self.book(item, entry, service)?,
        };
        let known = service.is_some()
            || self.view.visit(visit)?.is_some_and(|visit| visit.service.is_some());
        if !known {
            self.unknown.push((item.title.clone(), visit));
        }
        Ok(())
    }

    fn end(&self, item: &Item, service: Option<ServiceId>) -> Instant {
        let usual = service.and_then(|service| self.services.get(&service));
        let minutes = usual.map_or(USUAL_MIN, |service| service.minutes);
        item.end.unwrap_or(item.start + Span::from_minutes(i64::from(minutes)))
    }

    fn book(
        &mut self,
        item: &Item,
        entry: Keyed,
        service: Option<ServiceId>,
    ) -> Result<VisitId, Refusal> {
        let visit = chance::id()?;
        let origin = Origin {
            source: self.source,
            entry,
            series: self.learnt.key().digest("series", &[&item.uid]),
            calendar: self.calendar,
            sequence: item.sequence,
        };
        let end = self.end(item, service);
        self.fact(Day::VisitBooked {
            visit,
            start: item.start,
            end,
            chair: item.chair,
            service,
            origin: Some(origin),
        });
        self.brought.booked += 1;
        Ok(visit)
    }

    /// The same entry once more. What was said of it here (late, did not come, another service)
    /// stays, as long as the calendar has not moved it.
    fn again(&mut self, item: &Item, visit: &Visit, service: Option<ServiceId>) {
        if item.sequence < visit.sequence {
            self.brought.same += 1;
            return;
        }
        let end = item.end.map_or(visit.booked_end - visit.booked_start, |end| end - item.start);
        let end = item.start + end;
        let moved = (item.start, end) != (visit.booked_start, visit.booked_end)
            || (item.chair.is_some() && item.chair != visit.chair)
            || visit.state == VisitState::Cancelled;
        if moved {
            self.fact(Day::VisitMoved {
                visit: visit.visit,
                start: item.start,
                end,
                chair: item.chair.or(visit.chair),
                sequence: item.sequence,
            });
        }
        let named = visit.service.is_none() && service.is_some();
        if named {
            self.fact(Day::VisitIs { visit: visit.visit, service });
        }
        if moved || named {
            self.brought.changed += 1;
        } else {
            self.brought.same += 1;
        }
    }

    fn call_off(&mut self, visit: &Visit) -> Result<(), Refusal> {
        if visit.state == VisitState::Booked {
            self.fact(Day::VisitCancelled { visit: visit.visit });
            self.brought.called_off += 1;
        }
        Ok(())
    }

    /// What the file calls off, and what is no longer in it. What is over stays as it was.
    fn gone(&mut self, said: &Said, zone: &TimeZone) -> Result<(), Refusal> {
        let mut gone: BTreeMap<VisitId, Visit> = BTreeMap::new();
        for (uid, recurrence) in &said.called_off {
            match recurrence {
                Some(_) => {
                    let entry = self.entry(uid, *recurrence);
                    gone.extend(
                        self.view.visit_by_entry(&entry)?.map(|visit| (visit.visit, visit)),
                    );
                }
                None => self.missing_of_series(uid, &mut gone)?,
            }
        }
        for uid in &said.series {
            self.missing_of_series(uid, &mut gone)?;
        }
        if let (true, Some((from, to))) = (said.list, covered(&said.items, zone)) {
            let before = self.view.visits_of_calendar(&self.calendar, from.max(self.now), to)?;
            let missing = before.into_iter().filter(|(entry, _)| !self.seen.contains(entry));
            gone.extend(missing.map(|(_, visit)| (visit.visit, visit)));
        }
        gone.retain(|_, visit| visit.start() >= self.now);
        for visit in gone.values() {
            self.call_off(visit)?;
        }
        Ok(())
    }

    fn missing_of_series(
        &self,
        uid: &str,
        gone: &mut BTreeMap<VisitId, Visit>,
    ) -> Result<(), Refusal> {
        let series = self.learnt.key().digest("series", &[uid]);
        let before = self.view.visits_of_series(&series, self.now)?;
        let missing = before.into_iter().filter(|(entry, _)| !self.seen.contains(entry));
        gone.extend(missing.map(|(_, visit)| (visit.visit, visit)));
        Ok(())
    }
}

/// The days that a list speaks of: from the first entry's to the last one's.
fn covered(items: &[Item], zone: &TimeZone) -> Option<(Instant, Instant)> {
    let first = items.iter().map(|item| item.start).min()?;
    let last = items.iter().map(|item| item.start).max()?;
    let next = clock::civil(last, zone).date().tomorrow().ok()?;
    let next = next.to_zoned_datetime(zone.clone()).ok()?;
    let to = Instant::from_millis(next.timestamp().as_millisecond());
    Some((clock::day_start(first, zone), to))
}

/// One question for all titles that share their likeliest phrase.
fn questions(unknown: &[(String, VisitId)]) -> Vec<Question> {
    let offered = titles::offered(unknown.iter().map(|(title, _)| title.as_str()));
    let mut questions: BTreeMap<String, Question> = BTreeMap::new();
    for (title, visit) in unknown {
        let phrases = offered.get(title.as_str()).cloned().unwrap_or_default();
        let about = phrases.first().cloned().unwrap_or_else(|| titles::normal(title).join(" "));
        let question = questions.entry(about).or_default();
        question.visits.push(*visit);
        if question.titles.len() < SHOWN && !question.titles.contains(title) {
            question.titles.push(title.clone());
        }
        if question.phrases.is_empty() {
            question.phrases = phrases.into_iter().map(|phrase| (phrase, Vec::new())).collect();
        }
    }
    for question in questions.values_mut() {
        for (phrase, visits) in &mut question.phrases {
            let words: Vec<&str> = phrase.split(' ').collect();
            let holds = |title: &str| {
                titles::normal(title).windows(words.len()).any(|part| part == words.as_slice())
            };
            let held = unknown.iter().filter(|(title, _)| holds(title)).map(|(_, visit)| *visit);
            visits.extend(held);
        }
    }
    let mut questions: Vec<Question> = questions.into_values().collect();
    questions.sort_by_key(|question| std::cmp::Reverse(question.visits.len()));
    questions
}
