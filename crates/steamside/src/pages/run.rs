//! One run: what its record proves, why, what was inside, and the three looks.

mod figures;
mod looks;
mod numbers;

pub use numbers::reading_fields;

use super::frame::{self, Frame, Place};
use super::outage::{self, Outage};
use super::parts::{self, Caution, Form};
use super::plot::Trace;
use super::shapes::Shape;
use super::strip;
use super::{now, reads, say, stop, telling};
use crate::acts;
use crate::intake::known;
use crate::web::Ctx;
use cycle::record::{self, Known, Samples};
use day::Expected;
use load::SetState;
use logbook::book::BookError;
use logbook::fact::{Basis, Judged, StopReason};
use logbook::view::{Machine, Person, Pouch, Run, TakenCycle, View};
use maud::{Markup, html};
use measure::RunId;
use release::verdict::Outcome;

/// Read again every minute, while nobody has typed.
const AGAIN_S: u32 = 60;

/// What the page shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The run.
    pub run: Run,
    /// Its machine; `None` where a run names one that nobody has added.
    pub machine: Option<Machine>,
    /// How long such runs take.
    pub usual: Option<Expected>,
    /// Its verdicts, the one that counts first.
    pub judged: Vec<Judged>,
    /// The samples of its record.
    pub samples: Option<Samples>,
    /// Its pouches.
    pub pouches: Vec<Pouch>,
    /// Who may sign.
    pub people: Vec<Person>,
    /// The sign that started it.
    pub starter: Option<String>,
    /// The box was off while it was in its machine.
    pub outage: Option<Outage>,
    /// Its load is hot still.
    pub hot: Option<strip::Hot>,
    /// A count of the pouches is asked for.
    pub count: bool,
}

/// The page; `None` where no such run is in the book.
pub fn page(view: &View<'_>, ctx: &Ctx, run: RunId) -> Result<Option<Markup>, BookError> {
    let Some(run) = view.run(run)? else {
        return Ok(None);
    };
    let people = view.people()?;
    let starter = match run.started.1 {
        Some(who) => view.person(who)?.and_then(|person| person.sign),
        None => None,
    };
    let machines = view.machines()?;
    let known = known::of_machine(&machines, Some(run.machine));
    let seen = Seen {
        machine: machines.into_iter().find(|row| row.machine == run.machine),
        usual: strip::usual(view, &run)?,
        judged: view.judged_of_run(run.run)?.into_iter().map(|fact| fact.judged).collect(),
        samples: samples(view, &view.taken_of_run(run.run)?, &known)?,
        pouches: view.pouches_of_run(run.run)?,
        people,
        starter,
        outage: outage::outages(view)?.into_iter().find(|cut| cut.run == run.run),
        hot: strip::hot(view, &run, ctx.now)?,
        count: acts::asks_count(view, &run, ctx.sign)?,
        run,
    };
    let frame = Frame {
        title: telling::run_name(ctx, seen.run.machine_number, seen.run.number),
        place: Place::Machine,
        desk: false,
        again_s: Some(AGAIN_S),
        did: frame::did(view, ctx)?,
    };
    Ok(Some(frame::page(ctx, &frame, &draw(ctx, &seen))))
}

/// The samples of the record that belongs to the run. A record that cannot be read any more is no
/// reason to hide the verdict on it: the trace is left out.
fn samples(
    view: &View<'_>,
    taken: &[TakenCycle],
    known: &Known,
) -> Result<Option<Samples>, BookError> {
    let Some(cycle) = taken.iter().find(|cycle| cycle.replaced_by.is_none()) else {
        return Ok(None);
    };
    let Some(bytes) = view.drawer(cycle.kept.entry)? else {
        return Ok(None);
    };
    Ok(read_samples(&bytes, cycle.cycle, known))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let running = seen.run.unloaded.is_none() && !seen.run.undone;
    let judged = seen.judged.first();
    html! {
        p class="facts" { (heading(ctx, seen)) }
        @if let Some(cut) = &seen.outage { (outage::card(ctx, cut)) }
        @if running { (now::running_card(ctx, &seen.run, seen.usual, &seen.people)) }
        @if !running || judged.is_some() { (verdict(ctx, seen, judged)) }
        @if let Some((_, why)) = seen.run.stopped { (stopped(ctx, why)) }
        @if running {
            (looks::set_aside(ctx, seen, "interrupted"))
        } @else {
            (question(ctx, seen))
            (looks::draw(ctx, seen))
            (numbers::draw(ctx, seen))
        }
        @if let Some(judged) = judged { (trace(ctx, seen, judged)) }
        @if let Some(judged) = judged { (figures::draw(ctx, judged)) }
        (pouches(ctx, seen))
        p { a href=(format!("/recall?run={}", seen.run.run)) { (ctx.words().say("recall-from-run")) } }
        (parts::cautions(ctx, &[Caution::Hot, Caution::Manual]))
    }
}

fn heading(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        span { (words.say("run-started")) " " (parts::time(ctx, seen.run.started.0)) }
        @if let Some(sign) = &seen.starter { span class="signed" { (sign) } }
        @if let Some(programme) = &seen.run.programme {
            span { (words.tell("run-programme", &[("programme", say::programme(ctx, programme).into())])) }
        }
        span { (words.tell("pouch-count", &[("count", seen.run.pouches.into())])) }
        span { (words.say(say::contents_key(seen.run.contents))) }
        @if seen.run.undone { span class="state" { (words.say("run-undone")) } }
    }
}

/// The verdict, large: ground, shape and word, then every reason with its place in the record.
fn verdict(ctx: &Ctx, seen: &Seen, judged: Option<&Judged>) -> Markup {
    let words = ctx.words();
    let outcome = judged.map(|judged| judged.outcome);
    let ground = match outcome {
        Some(Outcome::Lethal | Outcome::LeakPass) => "verdict fine",
        Some(Outcome::NotLethal | Outcome::LeakFail) => "verdict stop",
        Some(Outcome::CannotTell) | None => "verdict turn",
    };
    let carried = judged.is_some_and(|judged| judged.proven_for.contains(&seen.run.contents));
    html! {
        section class=(ground) {
            h2 {
                (Shape::of_outcome(outcome).draw())
                span { (words.say(say::outcome_key(outcome))) }
            }
            @if let Some(samples) = &seen.samples {
                (Trace { samples, set_c: set_c(judged), reasons: &[] }.small(ctx))
            }
            @if outcome == Some(Outcome::Lethal) && !carried {
                p class="fact" { (words.say("verdict-not-carried")) }
            }
            @if let Some(judged) = judged {
                ol class="reasons" {
                    @for reason in &judged.reasons {
                        li {
                            (say::reason(ctx, reason, &judged.figures))
                            @let place = say::place(ctx, reason);
                            @if !place.is_empty() { " " span class="place" { "(" (place) ")" } }
                        }
                    }
                }
                p class="known" { (basis(ctx, judged)) }
            }
        }
    }
}

/// What the record leaves open and a person can say.
fn question(ctx: &Ctx, seen: &Seen) -> Markup {
    let (Some(judged), Some(machine), false) =
        (seen.judged.first(), &seen.machine, seen.run.undone)
    else {
        return html! {};
    };
    let machines = std::slice::from_ref(machine);
    reads::Question { judged, machines, unclaimed: None, people: &seen.people }.draw(ctx)
}

fn basis(ctx: &Ctx, judged: &Judged) -> String {
    let key = match judged.basis {
        Basis::Record { .. } => "basis-record",
        Basis::Reading { .. } => "basis-reading",
    };
    ctx.words().tell(key, &[("judge", judged.judge.as_str().into())])
}

fn set_c(judged: Option<&Judged>) -> Option<f64> {
    judged.and_then(|judged| judged.figures.set_mc).map(|set| set as f64 / 1_000.0)
}

/// What to do with what must not be used.
fn stopped(ctx: &Ctx, why: StopReason) -> Markup {
    let words = ctx.words();
    stop::card(
        ctx,
        &words.say(say::stop_key(why)),
        &html! {
            ol {
                li { (words.say("stopped-1")) }
                li { (words.say("stopped-2")) }
                li { (words.say("stopped-3")) }
                li { (words.say("stopped-4")) }
            }
        },
    )
}

/// The trace, large, each reason numbered as in the list above.
fn trace(ctx: &Ctx, seen: &Seen, judged: &Judged) -> Markup {
    let Some(samples) = &seen.samples else {
        return html! {};
    };
    let seconds = |millis: i64| millis as f64 / 1_000.0;
    let reasons: Vec<_> = judged
        .reasons
        .iter()
        .enumerate()
        .filter_map(|(index, reason)| {
            reason.at_ms.map(|(from, to)| (index + 1, seconds(from), seconds(to)))
        })
        .collect();
    let trace = Trace { samples, set_c: set_c(Some(judged)), reasons: &reasons };
    html! {
        section class="card fine" {
            h2 { (Shape::Plateau.draw()) span { (ctx.words().say("trace-title")) } }
            (trace.large(ctx))
        }
    }
}

/// Every pouch, its state, and for a stop that nothing failed for the way back.
fn pouches(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let slip = |pouch: &&Pouch| {
        pouch.state == SetState::SetAside && pouch.stopped.is_some_and(StopReason::may_be_a_slip)
    };
    let slips: Vec<_> = seen.pouches.iter().filter(slip).collect();
    html! {
        section class="card fine" {
            h2 { (Shape::Envelope.draw()) span { (words.say("run-inside")) } }
            @if seen.pouches.is_empty() { p { (words.say("run-nothing-said")) } }
            ul class="pouch-list" {
                @for pouch in &seen.pouches {
                    li {
                        span class="code" { (pouch.code) }
                        span { (say::kind(ctx, &pouch.kind)) }
                        (say::state(ctx, pouch.state))
                        @if pouch.contradicted { span { (words.say("contradicted")) } }
                    }
                }
            }
            @if !slips.is_empty() { (lift(ctx, &slips, &seen.people)) }
            p { (parts::way(&format!("/tray?run={}", seen.run.run), Shape::Tray, &words.say("tray-show"))) }
        }
    }
}

fn lift(ctx: &Ctx, slips: &[&Pouch], people: &[Person]) -> Markup {
    let words = ctx.words();
    html! {
        details {
            summary { (words.say("lift-title")) }
            p { (words.say("lift-only")) }
            (Form::new("lift", "slips").draw(ctx, &html! {
                fieldset class="pouches" {
                    legend { (words.say("lift-which")) }
                    @for pouch in slips {
                        label class="pouch-box" {
                            input type="checkbox" name="pouch" value=(pouch.pouch);
                            span class="code" { (pouch.code) }
                        }
                    }
                }
                fieldset class="choices" {
                    legend { (words.say("lift-why")) }
                    label { input type="radio" name="why" value="mistake" required; span { (words.say("lift-mistake")) } }
                    label { input type="radio" name="why" value="paperwork"; span { (words.say("lift-paperwork")) } }
                }
                (parts::sign_line(ctx, people, &words.say("lift-asks")))
            }))
        }
    }
}

/// The samples of one cycle of a kept file.
fn read_samples(bytes: &[u8], cycle: u32, known: &Known) -> Option<Samples> {
    let cycles = record::read(bytes, known).ok()?;
    cycles.into_iter().nth(cycle as usize).map(|cycle| cycle.samples)
}
