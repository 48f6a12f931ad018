//! The day: chairs above, machines below, sets on their way between; what to start next and why,
//! what goes short and what helps, and what of it is proven.

mod tape;

pub use tape::unpacked;

use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Form, Ground};
use super::shapes::Shape;
use super::when;
use crate::planning::agreed::Standing;
use crate::planning::explain::Telling;
use crate::planning::kept::Want;
use crate::planning::today::Today;
use crate::web::Ctx;
use crate::words::Arg;
use day::plan::{Run, Why, reasons};
use logbook::book::BookError;
use logbook::view::{Person, Spread, View};
use maud::{Markup, html};

/// Planned again every minute: the now-line moves, and so does the day.
const AGAIN_S: u32 = 60;

/// What the page shows.
pub struct Seen {
    /// The rest of the day; `None`: nothing is left of it.
    pub day: Option<(Today, Standing)>,
    /// Why there is no plan, where the book holds figures that no plan can be made of.
    pub fault: Option<String>,
    /// Who can sign.
    pub people: Vec<Person>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let planned = ctx.plans.plan(view, (ctx.now, &ctx.zone), Want::Exact)?;
    let (day, fault) = (planned.day.clone(), planned.fault.clone());
    let people = view.people()?.into_iter().filter(|person| person.left.is_none()).collect();
    let frame = Frame {
        title: ctx.words().say("plan-title"),
        place: Place::Now,
        desk: true,
        again_s: Some(AGAIN_S),
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &Seen { day, fault, people })))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        p class="ways" {
            (parts::way("/visits", Shape::Chair, &words.say("go-visits")))
            (parts::way("/sets", Shape::Envelope, &words.say("go-sets")))
        }
        @if let Some(why) = &seen.fault {
            (parts::card(Ground::Turn, Shape::Hourglass, &words.say("plan-fault"), &html! {
                p class="fact" { (why) }
                p { a class="key" href="/services" { (words.say("plan-fault-do")) } }
            }))
        }
        @match &seen.day {
            Some((today, standing)) => (planned(ctx, today, standing, &seen.people)),
            None if seen.fault.is_some() => {},
            None => (parts::card(Ground::Fine, Shape::House, &words.say("plan-none"), &html! {
                p { (words.say("plan-none-do")) }
            })),
        }
    }
}

fn planned(ctx: &Ctx, today: &Today, standing: &Standing, people: &[Person]) -> Markup {
    let words = ctx.words();
    let clock = |slot: usize| when::clock_of(ctx, today.moment(slot));
    let telling = Telling { problem: &today.problem, words, clock: &clock };
    let why = reasons(&today.problem, &standing.plan);
    html! {
        (answer(ctx, today, standing, &telling))
        section class="card" {
            h2 { (Shape::Drum.draw()) span { (words.say("plan-runs")) } }
            @if why.is_empty() { p { (words.say("plan-no-runs")) } }
            ol class="plan-runs" {
                @for why in &why { (run(ctx, today, standing, (&telling, why))) }
            }
            @for dropped in &standing.dropped {
                p class="dropped" { (words.tell("plan-dropped", &about(today, dropped, &telling))) }
            }
            (parts::cautions(ctx, &[Caution::Hot]))
        }
        @if !standing.agreed || !standing.new.is_empty() || !standing.dropped.is_empty() {
            (accept(ctx, today, standing, people))
        }
        section class="card wide" {
            h2 { (Shape::Tape.draw()) span { (words.say("plan-tape")) } }
            (tape::draw(ctx, today, standing, &why))
        }
        (where_from(ctx, today))
    }
}

/// Does the day work, and how sure is that.
fn answer(ctx: &Ctx, today: &Today, standing: &Standing, telling: &Telling<'_>) -> Markup {
    let words = ctx.words();
    let [unmet, short] = standing.unmet_short;
    let (ground, key) = match (unmet, short) {
        (0, 0) if today.unknown > 0 => (Ground::Fine, "plan-works-known"),
        (0, 0) => (Ground::Fine, "plan-works"),
        (0, _) => (Ground::Turn, "plan-short-tomorrow"),
        _ => (Ground::Turn, "plan-somebody-waits"),
    };
    let proven = match standing.proven {
        0 => "plan-proven-not",
        1 => "plan-proven-unmet",
        2 => "plan-proven-short",
        _ => "plan-proven-runs",
    };
    let heading = words.tell(key, &[("count", short.into())]);
    parts::card(
        ground,
        Shape::Hourglass,
        &heading,
        &html! {
            @for unmet in &standing.plan.unmet { p class="fact" { (telling.unmet(unmet)) } }
            @if unmet + short > 0 { p { a class="key" href="/plan/ways" { (words.say("plan-ways")) } } }
            @if standing.spares_out { p class="fact" { (words.say("plan-spares-out")) } }
            @if today.unknown > 0 {
                p { a href="/visits" { (words.tell("plan-unknown", &[("count", today.unknown.into())])) } }
            }
            p class="known" { (words.say(proven)) }
        },
    )
}

fn run(
    ctx: &Ctx,
    today: &Today,
    standing: &Standing,
    (telling, why): (&Telling<'_>, &Why),
) -> Markup {
    let words = ctx.words();
    let is_new = standing.agreed && standing.new.contains(&why.run);
    let start = standing.plan.runs[why.run].start;
    html! {
        li {
            p class="fact" { (telling.run(&standing.plan, why)) }
            @if is_new { p class="changed" { strong { (words.say("plan-new")) } } }
            @if start == 0 {
                p { a class="key" href="/start" { (words.say("go-start")) } }
            } @else {
                p class="known" {
                    (words.tell("plan-in", &[("minutes", (start as u64 * u64::from(today.problem.slot_min)).into())]))
                }
            }
        }
    }
}

/// Machine, cycle and time of a run, for a line.
fn about(today: &Today, run: &Run, telling: &Telling<'_>) -> [(&'static str, Arg); 3] {
    let machine = &today.problem.machines[run.machine];
    [
        ("machine", machine.id.clone().into()),
        ("cycle", telling.cycle(run).into()),
        ("time", (telling.clock)(run.start).into()),
    ]
}

fn accept(ctx: &Ctx, today: &Today, standing: &Standing, people: &[Person]) -> Markup {
    let words = ctx.words();
    let asks = words.say(if standing.agreed { "plan-accept-changes" } else { "plan-accept" });
    let fields = html! {
        (parts::hidden("from", today.origin.millis()))
        (parts::hidden("to", today.moment(today.problem.slots).millis()))
        @for run in &standing.plan.runs {
            (parts::hidden("run", tape::packed(today, run)))
        }
        (parts::sign_line(ctx, people, &asks))
    };
    html! { section class="card" { (Form::new("accept-plan", "").draw(ctx, &fields)) } }
}

/// Where the figures come from: every number can be asked.
fn where_from(ctx: &Ctx, today: &Today) -> Markup {
    let words = ctx.words();
    let spread = |key: &str, typical: &str, spread: Option<Spread>| match spread {
        Some(s) => words.tell(
            key,
            &[
                ("median", minutes(s.median_s).into()),
                ("low", minutes(s.lower_s).into()),
                ("high", minutes(s.upper_s).into()),
                ("count", s.count.into()),
            ],
        ),
        None => words.say(typical),
    };
    html! {
        details class="card" {
            summary { (words.say("plan-where-from")) }
            ul {
                li { (spread("plan-wash-time", "plan-wash-time-typical", today.hand_times.wash)) }
                li { (spread("plan-pack-time", "plan-pack-time-typical", today.hand_times.pack)) }
                li { (words.say(if today.rota { "plan-hands-rota" } else { "plan-hands-assumed" })) }
                li { (words.say("plan-order-salon")) }
                li { (words.say("plan-no-claim")) }
            }
        }
    }
}

/// Seconds as minutes with one decimal.
fn minutes(seconds: u32) -> String {
    format!("{}.{}", seconds / 60, seconds % 60 / 6)
}
