//! Ways out of a day on which somebody would wait: each one was planned, none is a guess.

use super::frame::{self, Frame, Place};
use super::parts::{self, Ground};
use super::shapes::Shape;
use super::when;
use crate::planning::agreed::{self, Fault, Standing};
use crate::planning::explain::Telling;
use crate::planning::today;
use crate::web::Ctx;
use day::plan::{Problem, Way, WayOut, ways_out};
use logbook::book::BookError;
use logbook::view::View;
use maud::{Markup, html};
use std::time::{Duration, Instant};

/// How long the page looks for ways out.
const WAIT: Duration = Duration::from_millis(1_000);

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let words = ctx.words();
    let accepted = view.accepted_plan()?;
    let day = match today::today(view, ctx.now, &ctx.zone)? {
        Some(today) => match agreed::standing(view, today, accepted.as_ref()) {
            Ok(day) => Some(day),
            Err(Fault::Book(error)) => return Err(error),
            // The page of the plan says why there is none.
            Err(Fault::Day(_)) => None,
        },
        None => None,
    };
    let told = match day {
        Some((today, standing)) => {
            let clock = |slot: usize| when::clock_of(ctx, today.moment(slot));
            let telling = Telling { problem: &today.problem, words, clock: &clock };
            found(&today.problem, &standing).iter().map(|way| telling.way(way)).collect()
        }
        None => Vec::new(),
    };
    let frame = Frame {
        title: words.say("ways-title"),
        place: Place::Now,
        desk: true,
        again_s: None,
        did: None,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &told)))
}

/// Ways that help the plan that stands. An earlier beginning is none: the day has begun.
fn found(problem: &Problem, standing: &Standing) -> Vec<WayOut> {
    let begun = Instant::now();
    let ways = ways_out(problem, &standing.plan, standing.unmet_short, &|| begun.elapsed() > WAIT);
    // What cannot be planned has no way out that could be planned.
    let mut ways = ways.unwrap_or_default();
    ways.retain(|out| !matches!(out.way, Way::Earlier { .. }));
    ways
}

/// What stands on it.
pub fn draw(ctx: &Ctx, told: &[String]) -> Markup {
    let words = ctx.words();
    html! {
        (parts::card(Ground::Fine, Shape::Hourglass, &words.say("ways-heading"), &html! {
            @if told.is_empty() { p { (words.say("ways-none")) } }
            ul { @for way in told { li class="fact" { (way) } } }
            p class="known" { (words.say("ways-known")) }
        }))
        p class="ways" { (parts::way("/plan", Shape::Hourglass, &words.say("plan-title"))) }
    }
}
