//! Visits by hand: booked in two taps, later, not come; what a title means; closed days.

use super::Refusal;
use crate::chance;
use crate::intake::appointments::{normal, phrase_digest};
use logbook::book::Draft;
use logbook::fact::{Body, Day};
use logbook::view::{View, Visit, VisitState};
use measure::{Instant, ServiceId, Span, VisitId};

/// Most minutes that one tap may put a visit back.
const MOST_LATE: u32 = 240;
/// Longest phrase, in letters: no service has a longer name, and it goes no further than here.
const LONGEST_PHRASE: usize = 120;
/// Most answers in one form.
const MOST_ANSWERS: usize = 200;

/// A visit as somebody books it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Book {
    /// The service.
    pub service: ServiceId,
    /// When it begins.
    pub start: Instant,
    /// The chair, where it is known.
    pub chair: Option<u32>,
}

/// Books a visit; it is as long as its service.
pub fn book(view: &View<'_>, draft: &mut Draft, book: Book) -> Result<(), Refusal> {
    let services = view.services()?;
    let service = services.iter().find(|service| service.service == book.service);
    let service = service.ok_or_else(|| Refusal::rule("refused-no-such-service"))?;
    draft.fact(Body::Day(Day::VisitBooked {
        visit: chance::id()?,
        start: book.start,
        end: book.start + Span::from_minutes(i64::from(service.minutes)),
        chair: book.chair,
        service: Some(book.service),
        origin: None,
    }));
    Ok(())
}

fn booked(view: &View<'_>, visit: VisitId) -> Result<Visit, Refusal> {
    let row = view.visit(visit)?.ok_or_else(|| Refusal::rule("refused-no-such-visit"))?;
    if row.state == VisitState::Booked { Ok(row) } else { Err(Refusal::rule("refused-visit-over")) }
}

/// The client comes later than said so far.
pub fn late(
    view: &View<'_>,
    draft: &mut Draft,
    visit: VisitId,
    minutes: u32,
) -> Result<(), Refusal> {
    let row = booked(view, visit)?;
    if minutes == 0 || row.late_min + minutes > MOST_LATE {
        return Err(Refusal::rule_with("refused-too-late", "most", MOST_LATE));
    }
    draft.fact(Body::Day(Day::VisitLate { visit, minutes }));
    Ok(())
}

/// The client did not come.
pub fn missed(view: &View<'_>, draft: &mut Draft, visit: VisitId) -> Result<(), Refusal> {
    booked(view, visit)?;
    draft.fact(Body::Day(Day::VisitMissed { visit }));
    Ok(())
}

/// A visit that was booked by hand is called off. One from a calendar is called off there, or the
/// next look at the calendar would book it again.
pub fn call_off(view: &View<'_>, draft: &mut Draft, visit: VisitId) -> Result<(), Refusal> {
    if booked(view, visit)?.source.is_some() {
        return Err(Refusal::rule("refused-off-in-calendar"));
    }
    draft.fact(Body::Day(Day::VisitCancelled { visit }));
    Ok(())
}

/// Which service a visit is for.
pub fn visit_is(
    view: &View<'_>,
    draft: &mut Draft,
    visit: VisitId,
    service: ServiceId,
) -> Result<(), Refusal> {
    booked(view, visit)?;
    offered(view, service)?;
    draft.fact(Body::Day(Day::VisitIs { visit, service: Some(service) }));
    Ok(())
}

fn offered(view: &View<'_>, service: ServiceId) -> Result<(), Refusal> {
    let known = view.services()?.iter().any(|row| row.service == service);
    if known { Ok(()) } else { Err(Refusal::rule("refused-no-such-service")) }
}

/// What a phrase in titles means, and the visits that it was asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// The phrase, as it was shown or typed. Only its digest is kept. None: for these visits only.
    pub phrase: Option<String>,
    /// The service; `None`: such an entry is no visit.
    pub service: Option<ServiceId>,
    /// The visits.
    pub visits: Vec<VisitId>,
}

/// Learns what phrases mean, and says so of the visits that wait for it.
pub fn learn(view: &View<'_>, draft: &mut Draft, answers: Vec<Answer>) -> Result<(), Refusal> {
    if answers.is_empty() || answers.len() > MOST_ANSWERS {
        return Err(Refusal::rule("refused-no-answer"));
    }
    let key = match view.book_key()? {
        Some(key) => key,
        None => draft.new_key()?,
    };
    for answer in answers {
        if let Some(service) = answer.service {
            offered(view, service)?;
        }
        if let Some(text) = &answer.phrase {
            let phrase = normal(text).join(" ");
            if phrase.is_empty() || text.chars().count() > LONGEST_PHRASE {
                return Err(Refusal::rule("refused-phrase"));
            }
            let phrase = phrase_digest(&key, &phrase);
            draft.fact(Body::Day(Day::PhraseLearnt { phrase, service: answer.service }));
        }
        for visit in answer.visits {
            let Some(row) = view.visit(visit)? else { continue };
            // What somebody said of this very visit stays.
            if row.service.is_some() || row.state != VisitState::Booked {
                continue;
            }
            draft.fact(Body::Day(match answer.service {
                Some(service) => Day::VisitIs { visit, service: Some(service) },
                None => Day::VisitCancelled { visit },
            }));
        }
    }
    Ok(())
}

/// The salon is closed for a time, or open after all.
pub fn closed(
    view: &View<'_>,
    draft: &mut Draft,
    (from, to): (Instant, Instant),
    closed: bool,
) -> Result<(), Refusal> {
    let known = view.closed(from, to)?.contains(&(from, to));
    if from >= to || known == closed {
        return Err(Refusal::rule("refused-said-already"));
    }
    draft.fact(Body::Day(Day::ClosedSet { from, to, closed }));
    Ok(())
}

/// Is a visit still as this fact left it, so that taking it back undoes it and nothing else?
pub fn as_said(view: &View<'_>, day: &Day) -> Result<bool, Refusal> {
    let row = |visit: &VisitId| view.visit(*visit);
    Ok(match day {
        Day::VisitBooked { visit, start, service, .. } => row(visit)?.is_some_and(|row| {
            row.state == VisitState::Booked && row.start() == *start && row.service == *service
        }),
        Day::VisitLate { visit, minutes } => row(visit)?
            .is_some_and(|row| row.state == VisitState::Booked && row.late_min >= *minutes),
        Day::VisitMissed { visit } => {
            row(visit)?.is_some_and(|row| row.state == VisitState::Missed)
        }
        Day::VisitCancelled { visit } => {
            row(visit)?.is_some_and(|row| row.state == VisitState::Cancelled)
        }
        Day::VisitIs { visit, service } => row(visit)?.is_some_and(|row| row.service == *service),
        _ => false,
    })
}
