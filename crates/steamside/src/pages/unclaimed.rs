//! A record that no run has claimed: what it says, and the runs that it could belong to. Nothing
//! is guessed; a person taps.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::{reads, say, telling, when};
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::fact::Judged;
use logbook::view::{Machine, Person, Run, TakenCycle, View};
use maud::{Markup, html};
use measure::{RecordHash, Span};

/// How far back runs are offered.
const BACK: Span = Span::from_minutes(7 * 24 * 60);
/// How many are offered.
const OFFERED: usize = 12;

/// What the page shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The cycle.
    pub cycle: TakenCycle,
    /// The verdict on it, for unwrapped solid goods.
    pub judged: Option<Judged>,
    /// Runs without a record, the last one first.
    pub runs: Vec<Run>,
    /// Who may sign.
    pub people: Vec<Person>,
    /// The machines that may have written it.
    pub machines: Vec<Machine>,
}

/// The page; `None` where the book has no such record.
pub fn page(
    view: &View<'_>,
    ctx: &Ctx,
    record: RecordHash,
    cycle: u32,
) -> Result<Option<Markup>, BookError> {
    let Some(cycle) = view.taken(record)?.into_iter().find(|taken| taken.cycle == cycle) else {
        return Ok(None);
    };
    let mut runs: Vec<Run> = view
        .runs_between(None, cycle.taken - BACK, ctx.now)?
        .into_iter()
        .filter(|run| run.record.is_none() && !run.undone)
        .collect();
    runs.sort_by_key(|run| std::cmp::Reverse(run.started.0));
    runs.truncate(OFFERED);
    let judged = match cycle.judged {
        Some(seq) => view.judged(seq)?.map(|fact| fact.judged),
        None => None,
    };
    let seen = Seen { cycle, judged, runs, people: view.people()?, machines: view.machines()? };
    let frame = Frame {
        title: ctx.words().say("claim-title"),
        place: Place::Machine,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(Some(frame::page(ctx, &frame, &draw(ctx, &seen))))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let cycle = &seen.cycle;
    html! {
        (parts::card(Ground::Turn, Shape::Tape, &words.say("unclaimed-title"), &html! {
            @match &cycle.start_clock {
                Some(clock) => p class="fact" {
                    (words.tell("unclaimed-clock", &[("clock", when::machine_clock(ctx, clock).into())]))
                },
                None => p class="fact" { (words.say("claim-no-clock")) },
            }
            p { (words.say("claim-taken")) " " (parts::time(ctx, cycle.taken)) }
            p { (say::outcome(ctx, cycle.outcome)) }
            @if let Some(judged) = &seen.judged {
                ul class="reasons" {
                    @for reason in &judged.reasons { li { (say::reason(ctx, reason, &judged.figures)) } }
                }
            }
        }))
        @if let Some(judged) = seen.judged.as_ref().filter(|_| cycle.run.is_none()) {
            (reads::Question {
                judged,
                machines: &seen.machines,
                unclaimed: Some((cycle.record, cycle.cycle)),
                people: &seen.people,
            }.draw(ctx))
        }
        @if let Some(run) = cycle.run {
            p class="fact" { (words.say("claim-done")) }
            p { a class="key main-key" href=(format!("/run/{run}")) { (words.say("go-run")) } }
        } @else {
            p { (words.say("claim-how")) }
            @if seen.runs.is_empty() { p class="fact" { (words.say("claim-none")) } }
            @for run in &seen.runs { (candidate(ctx, seen, run)) }
        }
    }
}

fn candidate(ctx: &Ctx, seen: &Seen, run: &Run) -> Markup {
    let words = ctx.words();
    let then = format!("/run/{}", run.run);
    let id = run.run.to_string();
    let name = telling::run_name(ctx, run.machine_number, run.number);
    parts::card(
        Ground::Fine,
        Shape::Drum,
        &name,
        &html! {
            p {
                (words.say("run-started")) " " (parts::time(ctx, run.started.0)) " · "
                (words.tell("pouch-count", &[("count", run.pouches.into())]))
                @if let Some(programme) = &run.programme { " · " (programme) }
            }
            (Form { then: Some(&then), ..Form::new("claim", &id) }.draw(ctx, &html! {
                (parts::hidden("record", seen.cycle.record))
                (parts::hidden("cycle", seen.cycle.cycle))
                (parts::hidden("run", run.run))
                (parts::sign_line(ctx, &seen.people, &words.say("claim-asks")))
            }))
        },
    )
}
