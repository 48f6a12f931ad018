//! Part 0: the salon today, on one page.

use super::{Kept, full};
use crate::pages::shapes::Shape;
use crate::pages::{say, telling, when};
use crate::web::Ctx;
use logbook::fact::StopReason;
use logbook::view::Pouch;
use maud::{Markup, html};
use measure::RunId;

/// The machines with their last good spore test, and everything that must not be used.
pub fn draw(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    html! {
        @if kept.machines.is_empty() { p { (words.say("folder-none")) } }
        ul class="lines" {
            @for shown in &kept.machines {
                li class=[shown.machine.out_since.map(|_| "loud")] {
                    @if shown.machine.out_since.is_some() { (Shape::Palm.draw()) } @else { (Shape::Drum.draw()) }
                    strong { (words.tell("machine-name", &[("machine", shown.machine.number.to_string().into())])) }
                    " "
                    @match shown.machine.out_since {
                        Some(at) => strong { (words.tell("folder-machine-out", &[("at", full(ctx, at).into())])) },
                        None => (words.say("folder-machine-in")),
                    }
                    ". "
                    @match shown.good {
                        Some(at) => (words.tell("spores-good-last", &[("day", super::day(ctx, at).into())])),
                        None => (words.say("spores-good-none")),
                    }
                }
            }
        }
        (aside(ctx, kept))
    }
}

/// Pouches of one run, stopped for one reason.
type Same = (Option<RunId>, Option<StopReason>);

/// Every stop that stands, by run and reason.
fn aside(ctx: &Ctx, kept: &Kept) -> Markup {
    let words = ctx.words();
    let mut groups: Vec<(Same, Vec<&Pouch>)> = Vec::new();
    for pouch in &kept.aside {
        let of = (pouch.run, pouch.stopped);
        match groups.iter_mut().find(|(known, _)| *known == of) {
            Some((_, pouches)) => pouches.push(pouch),
            None => groups.push((of, vec![pouch])),
        }
    }
    html! {
        @if kept.aside.is_empty() {
            p { (words.say("folder-aside-none")) }
        } @else {
            h3 { (words.tell("folder-aside-now", &[("count", kept.aside.len().into())])) }
            ul class="lines" {
                @for ((run, why), pouches) in &groups {
                    li class="loud" {
                        (Shape::Palm.draw())
                        strong { (words.say("do-not-use")) } " "
                        @if let Some(run) = run { (run_of(ctx, kept, *run)) ": " }
                        @for pouch in pouches { span class="code" { (pouch.code) } " " }
                        @if let Some(why) = why { (words.say(say::stop_key(*why))) "." }
                    }
                }
            }
        }
    }
}

/// Machine and number of a run, with its day.
pub fn run_of(ctx: &Ctx, kept: &Kept, run: RunId) -> String {
    let name = kept.names.runs.get(&run).map_or_else(
        || ctx.words().say("run-unnamed"),
        |(machine, number)| telling::run_name(ctx, *machine, *number),
    );
    match kept.begun.get(&run) {
        Some(at) => format!("{name}, {} {}", super::day(ctx, *at), when::clock_of(ctx, *at)),
        None => name,
    }
}
