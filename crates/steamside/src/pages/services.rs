//! Services and what they need; the figures of kinds and machines that plans are made with. What
//! nobody has set is typical, and says so.

mod figures;

use super::frame::{self, Frame, Place};
use super::parts::{self, Counter, Form, Ground};
use super::say;
use super::shapes::Shape;
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::fact::{DayRules, KindFigures, MachineFigures, Service};
use logbook::view::{HandTimes, Machine, Setting, View};
use maud::{Markup, html};

/// The most that a counter of sets takes.
const MOST_SETS: u32 = 20;
/// A new service is as long as this until somebody says. (Assumption.)
const USUAL_MIN: u32 = 60;

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// The services that are offered.
    pub services: Vec<Service>,
    /// Every kind with its figures.
    pub kinds: Vec<Setting<KindFigures>>,
    /// Every machine with its figures.
    pub machines: Vec<(Machine, Setting<MachineFigures>)>,
    /// What holds for every plan.
    pub rules: Option<Setting<DayRules>>,
    /// How long hands take here.
    pub hands: HandTimes,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let mut seen = Seen {
        services: view.services()?,
        rules: Some(view.day_rules()?),
        hands: view.hand_times()?,
        ..Seen::default()
    };
    for row in view.kinds()? {
        seen.kinds.push(view.kind_figures(&row.kind)?);
    }
    for machine in view.machines()? {
        let figures = view.machine_figures(machine.machine)?;
        seen.machines.push((machine, figures));
    }
    let frame = Frame {
        title: ctx.words().say("services-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        (parts::card(Ground::Fine, Shape::Chair, &words.say("services-title"), &html! {
            p { (words.say("services-how")) }
            @for (number, service) in seen.services.iter().enumerate() {
                details {
                    summary { (service.word) " · " (words.tell("minutes-count", &[("count", service.minutes.into())])) }
                    (service_form(ctx, seen, Some(service), &number.to_string()))
                    (Form::new("service-ended", &service.service.to_string()).draw(ctx, &html! {
                        (parts::hidden("service", service.service))
                        button class="key" { (words.say("service-end")) }
                    }))
                }
            }
            details open[seen.services.is_empty()] {
                summary { (words.say("service-add")) }
                (service_form(ctx, seen, None, "new"))
            }
        }))
        (figures::cards(ctx, seen))
        p class="ways" { (parts::way("/visits", Shape::Hourglass, &words.say("visits-title"))) }
    }
}

fn service_form(ctx: &Ctx, seen: &Seen, service: Option<&Service>, on: &str) -> Markup {
    let words = ctx.words();
    let named = format!("service-word-{on}");
    let counter = |name: &str, key: &str, value: u32, most: u32| {
        let id = format!("service-{name}-{on}");
        Counter { name, id: &id, label: &words.say(key), value, most }.draw(ctx)
    };
    let needs = |kind: &load::SetKind| {
        let needs = service.map(|service| service.needs.as_slice()).unwrap_or_default();
        needs.iter().find(|(needed, _)| needed == kind).map_or(0, |(_, count)| *count)
    };
    Form::new("service", on).draw(
        ctx,
        &html! {
            @if let Some(service) = service { (parts::hidden("service", service.service)) }
            p class="field" {
                label for=(named) { (words.say("service-word")) }
                input type="text" id=(named) name="word" maxlength="24" required autocomplete="off"
                    value=[service.map(|service| service.word.word())];
            }
            (counter("length", "service-minutes", service.map_or(USUAL_MIN, |s| s.minutes), 600))
            p { (words.say("service-needs")) }
            div class="counters" {
                @for (at, kind) in seen.kinds.iter().map(|row| &row.value.kind).enumerate() {
                    (Counter {
                        name: &format!("need.{kind}"),
                        id: &format!("need-{on}-{at}"),
                        label: &say::kind(ctx, kind),
                        value: needs(kind),
                        most: MOST_SETS,
                    }.draw(ctx))
                }
            }
            (counter("weight", "service-weight", service.map_or(1, |s| s.weight), 9))
            (counter("basin", "service-basin", service.map_or(0, |s| s.basin_min), 60))
            button class="key main-key" { (words.say("service-keep")) }
        },
    )
}
