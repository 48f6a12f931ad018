//! What a calendar brought, and what is open. Titles stand on this page and are not kept: it is
//! the answer to the file, and there is no way back to it.

use crate::intake::appointments::{Brought, Question};
use crate::intake::calendar::{Odd, WholeDays, Why};
use crate::pages::frame::{self, Frame, Place};
use crate::pages::parts::{self, Form, Ground};
use crate::pages::shapes::Shape;
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::fact::Service;
use logbook::view::View;
use maud::{Markup, html};
use measure::VisitId;

/// Most questions that are put at once; the rest comes with the next file.
const QUESTIONS: usize = 20;
/// Most visits that an answer reaches: what a form can carry.
const VISITS: usize = 400;
/// Most lines of what could not be taken.
const ODD: usize = 12;

/// The page.
pub fn brought(view: &View<'_>, ctx: &Ctx, brought: &Brought) -> Result<Markup, BookError> {
    let services = view.services()?;
    let frame = Frame {
        title: ctx.words().say("bring-title"),
        place: Place::Now,
        desk: true,
        again_s: None,
        did: None,
    };
    Ok(frame::page(ctx, &frame, &draw_brought(ctx, &services, brought)))
}

/// What stands on it.
pub fn draw_brought(ctx: &Ctx, services: &[Service], brought: &Brought) -> Markup {
    let words = ctx.words();
    let counts = [
        ("brought-booked", brought.booked),
        ("brought-changed", brought.changed),
        ("brought-off", brought.called_off),
        ("brought-same", brought.same),
    ];
    html! {
        (parts::card(Ground::Fine, Shape::Hourglass, &words.say("brought-title"), &html! {
            ul {
                @for (key, count) in counts {
                    li { (words.tell(key, &[("count", count.into())])) }
                }
            }
            p { (words.say("brought-names")) }
        }))
        @if !brought.questions.is_empty() { (questions(ctx, services, &brought.questions)) }
        @for (number, days) in brought.whole_days.iter().enumerate() {
            (closed_card(ctx, number, days))
        }
        @if !brought.odd.is_empty() { (odd_card(ctx, &brought.odd)) }
        p { a class="key main-key" href="/visits" { (words.say("visits-title")) } }
    }
}

fn questions(ctx: &Ctx, services: &[Service], questions: &[Question]) -> Markup {
    let words = ctx.words();
    parts::card(
        Ground::Turn,
        Shape::Bowl,
        &words.say("titles-ask"),
        &html! {
            p { (words.say("ask-how")) }
            @if services.is_empty() {
                p class="fact" { (words.say("ask-no-services")) }
                p { a class="key main-key" href="/services" { (words.say("services-title")) } }
            } @else {
                (Form { then: Some("/visits"), ..Form::new("learn", "titles") }.draw(ctx, &html! {
                    @for (number, question) in questions.iter().take(QUESTIONS).enumerate() {
                        (one(ctx, services, number, question))
                    }
                    button class="key main-key" { (words.say("ask-do")) }
                }))
            }
        },
    )
}

fn listed(visits: &[VisitId]) -> String {
    visits.iter().take(VISITS).map(ToString::to_string).collect::<Vec<_>>().join(" ")
}

fn one(ctx: &Ctx, services: &[Service], number: usize, question: &Question) -> Markup {
    let words = ctx.words();
    let name = |part: &str| format!("{number}.{part}");
    let typed = format!("words-{number}");
    let meant = format!("service-{number}");
    html! {
        fieldset class="choices" {
            legend {
                (words.tell("ask-count", &[("count", question.visits.len().into())])) " "
                @for title in &question.titles { q { (title) } " " }
            }
            (parts::hidden(&name("visits"), listed(&question.visits)))
            @for (at, (phrase, visits)) in question.phrases.iter().enumerate() {
                (parts::hidden(&name(&format!("phrase.{at}")), phrase))
                (parts::hidden(&name(&format!("visits.{at}")), listed(visits)))
                label {
                    input type="radio" name=(name("pick")) value=(at);
                    span { (phrase) }
                }
            }
            p class="field" {
                label for=(typed) { (words.say("ask-words")) }
                input type="text" id=(typed) name=(name("words")) maxlength="60" autocomplete="off";
            }
            p class="field" {
                label for=(meant) { (words.say("titles-which")) }
                select id=(meant) name=(name("service")) {
                    option value="" { (words.say("ask-later")) }
                    @for service in services { option value=(service.service) { (service.word) } }
                    option value="none" { (words.say("ask-no-visit")) }
                }
            }
        }
    }
}

fn closed_card(ctx: &Ctx, number: usize, days: &WholeDays) -> Markup {
    let words = ctx.words();
    let last = days.to.yesterday().unwrap_or(days.from);
    let shown = [
        ("title", days.title.clone().into()),
        ("from", days.from.to_string().into()),
        ("to", last.to_string().into()),
    ];
    parts::card(
        Ground::Fine,
        Shape::Hourglass,
        &words.say("closed-title"),
        &html! {
            p { (words.tell("closed-asks", &shown)) }
            (Form { then: Some("/visits"), ..Form::new("closed", &number.to_string()) }.draw(ctx, &html! {
                (parts::hidden("from", days.from))
                (parts::hidden("to", days.to))
                (parts::hidden("closed", "yes"))
                button class="key" { (words.say("closed-do")) }
            }))
        },
    )
}

fn odd_card(ctx: &Ctx, odd: &[Odd]) -> Markup {
    let words = ctx.words();
    let why = |odd: &Odd| match &odd.why {
        Why::Zone(zone) => words.tell("odd-zone", &[("zone", zone.as_str().into())]),
        Why::Rule => words.say("odd-rule"),
        Why::Time => words.say("odd-time"),
    };
    parts::card(
        Ground::Turn,
        Shape::Tape,
        &words.say("odd-title"),
        &html! {
            p { (words.tell("odd-count", &[("count", odd.len().into())])) }
            ul { @for one in odd.iter().take(ODD) { li { q { (one.title) } " " (why(one)) } } }
            p { (words.say("odd-do")) }
        },
    )
}
