//! Visits: who is at which chair when, without names; today and tomorrow. Booked in two taps, put
//! back by one.

mod brought;
mod rota;
mod told;

pub use brought::brought;
#[cfg(test)]
pub use brought::draw_brought;
pub use told::line;

use super::frame::{self, Frame, Place};
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::when;
use crate::clock;
use crate::web::Ctx;
use jiff::ToSpan;
use logbook::book::BookError;
use logbook::fact::Service;
use logbook::view::{Person, Shift, View, Visit, VisitState};
use maud::{Markup, html};
use measure::{Instant, ServiceId, Span};

/// One tap puts a visit back by so much.
const LATE_MIN: u32 = 15;
/// Times are offered so far apart, and so many of them.
const APART: Span = Span::from_minutes(15);
const TODAY: usize = 32;
/// Tomorrow's times, on the salon's clock.
const TOMORROW: std::ops::Range<i8> = 8..20;
/// Most visits of a day that the page shows.
const MOST: usize = 80;

/// A day and what lies in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeenDay {
    /// First moment of the day, and first of the next.
    pub span: (Instant, Instant),
    /// Its visits.
    pub visits: Vec<Visit>,
    /// Working times.
    pub shifts: Vec<Shift>,
    /// The times at which it is closed.
    pub closed: Vec<(Instant, Instant)>,
}

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// Today and tomorrow.
    pub days: Vec<SeenDay>,
    /// The services that are offered.
    pub services: Vec<Service>,
    /// Every service that ever was, for visits that have one that ended.
    pub ever: Vec<Service>,
    /// Who works here.
    pub people: Vec<Person>,
    /// The service whose time is being chosen.
    pub chosen: Option<ServiceId>,
}

impl Seen {
    fn word(&self, service: Option<ServiceId>) -> Option<&str> {
        let service = service?;
        self.ever.iter().find(|row| row.service == service).map(|row| row.word.word())
    }
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, chosen: Option<ServiceId>) -> Result<Markup, BookError> {
    let mut days = Vec::new();
    for day in [0_i64, 1] {
        let span = (start_of(ctx, day), start_of(ctx, day + 1));
        let (from, to) = span;
        days.push(SeenDay {
            span,
            visits: view.visits(from, to)?,
            shifts: view.shifts(from, to)?,
            closed: view.closed(from, to)?,
        });
    }
    let seen = Seen {
        days,
        services: view.services()?,
        ever: view.services_ever()?,
        people: view.people()?,
        chosen,
    };
    let frame = Frame {
        title: ctx.words().say("visits-title"),
        place: Place::Now,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// The first moment of the day that is so many days away.
fn start_of(ctx: &Ctx, days: i64) -> Instant {
    let today = clock::civil(ctx.now, &ctx.zone).date();
    let start = today
        .checked_add(days.days())
        .and_then(|date| date.to_zoned_datetime(ctx.zone.clone()))
        .map(|start| Instant::from_millis(start.timestamp().as_millisecond()));
    start.unwrap_or(ctx.now)
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        (add_card(ctx, seen))
        @for (number, day) in seen.days.iter().enumerate() { (day_card(ctx, seen, number, day)) }
        (rota::card(ctx, seen))
        (bring_card(ctx))
        p class="ways" { (parts::way("/services", Shape::Bowl, &words.say("services-title"))) }
    }
}

/// First tap: the service. Second tap: the time.
fn add_card(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let chosen = seen.services.iter().find(|service| Some(service.service) == seen.chosen);
    parts::card(
        Ground::Turn,
        Shape::Chair,
        &words.say("visits-add"),
        &html! {
            @if seen.services.is_empty() {
                p { (words.say("visits-no-services")) }
                p { a class="key main-key" href="/services" { (words.say("services-title")) } }
            }
            p class="ways" {
                @for service in &seen.services {
                    a class="key" href=(format!("/visits?service={}", service.service))
                        aria-current=[(Some(service.service) == seen.chosen).then_some("true")] {
                        (service.word)
                    }
                }
            }
            @if let Some(service) = chosen { (time_form(ctx, service)) }
        },
    )
}

fn time_form(ctx: &Ctx, service: &Service) -> Markup {
    let words = ctx.words();
    let button = |at: Instant| {
        html! { button class="key" name="start" value=(at.millis()) { (when::clock_of(ctx, at)) } }
    };
    let quarter = APART.millis();
    let first = Instant::from_millis(ctx.now.millis().div_euclid(quarter) * quarter);
    let end = start_of(ctx, 1);
    let today = (0..TODAY as i64).map(|n| first + Span::from_millis(n * quarter));
    let today: Vec<Instant> = today.take_while(|at| *at < end).collect();
    let date = clock::civil(end, &ctx.zone).date();
    let hours = TOMORROW.flat_map(|hour| [date.at(hour, 0, 0, 0), date.at(hour, 30, 0, 0)]);
    let tomorrow: Vec<Instant> =
        hours.filter_map(|at| clock::moments_of(at, &ctx.zone).first().copied()).collect();
    let fields = html! {
        (parts::hidden("service", service.service))
        p { (words.tell("visits-when", &[("service", service.word.word().into())])) }
        p class="choices" {
            label for="visit-chair" { (words.say("visits-chair")) }
            input type="number" id="visit-chair" name="chair" min="1" max="999" inputmode="numeric";
        }
        h3 { (words.say("visits-today")) }
        p class="ways" { @for at in &today { (button(*at)) } }
        h3 { (words.say("visits-tomorrow")) }
        p class="ways" { @for at in &tomorrow { (button(*at)) } }
    };
    Form { then: Some("/visits"), ..Form::new("visit", "new") }.draw(ctx, &fields)
}

fn day_card(ctx: &Ctx, seen: &Seen, number: usize, day: &SeenDay) -> Markup {
    let words = ctx.words();
    let key = if number == 0 { "visits-today" } else { "visits-tomorrow" };
    let heading = format!("{}: {}", words.say(key), when::day_of(ctx, day.span.0));
    let coming = day.visits.iter().filter(|visit| visit.state == VisitState::Booked).count();
    let unknown = day.visits.iter().filter(|v| v.service.is_none()).count();
    parts::card(
        Ground::Fine,
        Shape::Hourglass,
        &heading,
        &html! {
            @for (from, to) in &day.closed {
                p class="fact" { (words.say("visits-closed")) }
                (Form::new("closed", &from.millis().to_string()).draw(ctx, &html! {
                    (parts::hidden("from", when::date_value(ctx, *from)))
                    (parts::hidden("to", when::date_value(ctx, *to)))
                    (parts::hidden("closed", "no"))
                    button class="key" { (words.say("visits-open-after-all")) }
                }))
            }
            p class="fact" { (words.tell("visits-count", &[("count", coming.into())])) }
            @if unknown > 0 { p class="fact" { (words.say("visits-unknown-how")) } }
            ol class="log" {
                @for visit in day.visits.iter().take(MOST) { li { (visit_line(ctx, seen, visit)) } }
            }
        },
    )
}

/// Key of what became of a visit.
const fn state_key(state: VisitState) -> &'static str {
    match state {
        VisitState::Booked => "visit-booked",
        VisitState::Cancelled => "visit-cancelled",
        VisitState::Missed => "visit-missed",
    }
}

fn visit_line(ctx: &Ctx, seen: &Seen, visit: &Visit) -> Markup {
    let words = ctx.words();
    let booked = visit.state == VisitState::Booked;
    let span = html! {
        (when::clock_of(ctx, visit.start())) "–" (when::clock_of(ctx, visit.end()))
    };
    html! {
        span class="log-when" { @if booked { (span) } @else { s { (span) } } }
        span class="log-what" {
            (seen.word(visit.service).map_or_else(|| words.say("visits-unknown"), str::to_owned))
            @if let Some(chair) = visit.chair {
                " · " (words.tell("chair-number", &[("chair", chair.to_string().into())]))
            }
            @if visit.late_min > 0 {
                " · " em { (words.tell("visit-late-by", &[("count", visit.late_min.into())])) }
            }
            @if !booked { " · " em { (words.say(state_key(visit.state))) } }
        }
        // What is over is no longer late; a list of a whole day stays short enough to be read.
        @if booked && visit.end() > ctx.now { (visit_forms(ctx, seen, visit)) }
    }
}

fn visit_forms(ctx: &Ctx, seen: &Seen, visit: &Visit) -> Markup {
    let words = ctx.words();
    let on = visit.visit.to_string();
    let named = format!("service-{on}");
    let one = |act: &str, key: &str| {
        Form::new(act, &on).draw(
            ctx,
            &html! {
                (parts::hidden("visit", visit.visit))
                button class="key" { (words.say(key)) }
            },
        )
    };
    html! {
        span class="log-who" {
            (Form::new("visit-late", &on).draw(ctx, &html! {
                (parts::hidden("visit", visit.visit))
                (parts::hidden("later", LATE_MIN))
                button class="key" {
                    (words.tell("visit-put-back", &[("count", LATE_MIN.into())]))
                }
            }))
            (one("visit-missed", "visit-did-not-come"))
            @if visit.source.is_none() { (one("visit-off", "visit-call-off")) }
            @if visit.service.is_none() && !seen.services.is_empty() {
                (Form::new("visit-is", &on).draw(ctx, &html! {
                    (parts::hidden("visit", visit.visit))
                    label for=(named) { (words.say("visits-which")) }
                    select id=(named) name="service" required {
                        option value="" { (words.say("visits-choose")) }
                        @for service in &seen.services {
                            option value=(service.service) { (service.word) }
                        }
                    }
                    button class="key" { (words.say("visits-say")) }
                }))
            }
        }
    }
}

fn bring_card(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    parts::card(
        Ground::Fine,
        Shape::Tape,
        &words.say("bring-title"),
        &html! {
            p { (words.say("bring-how")) }
            (Form::new("bring", "calendar").draw_for_files(ctx, &html! {
                p {
                    label for="bring-file" { (words.say("bring-file")) }
                    input type="file" id="bring-file" name="file" required;
                }
                button class="key main-key" { (words.say("bring-do")) }
            }))
        },
    )
}
