//! Ways out of a day on which somebody would wait: each one was planned, none is a guess.

use super::frame::{self, Frame, Place};
use super::parts::{self, Ground};
use super::shapes::Shape;
use super::when;
use crate::planning::explain::Telling;
use crate::planning::today;
use crate::web::Ctx;
use day::plan::{Options, SALON, WayOut, solve, ways_out};
use logbook::book::BookError;
use logbook::view::View;
use maud::{Markup, html};
use std::time::{Duration, Instant};

/// How long the page looks for a plan, and then for ways out.
const WAIT: [Duration; 2] = [Duration::from_millis(500), Duration::from_millis(2_500)];

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let words = ctx.words();
    let told = match today::today(view, ctx.now, &ctx.zone)? {
        Some(today) => {
            let clock = |slot: usize| when::clock_of(ctx, today.moment(slot));
            let telling = Telling { problem: &today.problem, words, clock: &clock };
            found(&today.problem).iter().map(|way| telling.way(way)).collect()
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

fn found(problem: &day::plan::Problem) -> Vec<WayOut> {
    let begun = Instant::now();
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let options = Options { order: SALON, threads, ..Options::default() };
    // What cannot be planned has no way out that could be planned.
    let Ok(answer) = solve(problem, &options, &|| begun.elapsed() > WAIT[0]) else {
        return Vec::new();
    };
    let begun = Instant::now();
    ways_out(problem, &answer, &|| begun.elapsed() > WAIT[1]).unwrap_or_default()
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
