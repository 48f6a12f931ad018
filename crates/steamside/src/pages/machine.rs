//! The machines: what runs, what ran, a file to take in, out of use and back.

use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Form, Ground};
use super::shapes::Shape;
use super::strip;
use super::{changes, now, proposal, reads, say, stop, telling, upkeep};
use crate::drifting::{self, Change};
use crate::loading::kinds::Kinds;
use crate::loading::load::Load;
use crate::loading::propose;
use crate::upkeep::{self as looked_after, Days, Kept};
use crate::web::Ctx;
use day::Expected;
use logbook::book::BookError;
use logbook::fact::About;
use logbook::view::{Machine, Person, Run, View};
use maud::{Markup, html};

/// How many earlier runs are shown.
const RUNS: u32 = 6;
/// Read again every minute, while nobody has typed.
const AGAIN_S: u32 = 60;

/// One machine as the page shows it.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The machine.
    pub machine: Machine,
    /// The run in it, and how long such runs take.
    pub running: Option<(Run, Option<Expected>)>,
    /// Earlier runs, the last one first.
    pub last: Vec<Run>,
    /// What changes from run to run.
    pub changes: Vec<Change>,
    /// What each programme dries, in one sentence each.
    pub dries: Vec<String>,
    /// Chores of this machine that go by runs.
    pub counted: Vec<String>,
    /// Chores that keep it from being started.
    pub stops: Vec<Kept>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let mut machines = Vec::new();
    let chores = looked_after::of_machines(view, &Days::read(view, ctx.now, &ctx.zone)?)?;
    for machine in view.machines()? {
        let running = match machine.running {
            Some(run) => view.run(run)?,
            None => None,
        };
        let running = match running {
            Some(run) => {
                let usual = strip::usual(view, &run)?;
                Some((run, usual))
            }
            None => None,
        };
        let last = view
            .last_runs(machine.machine, None, RUNS)?
            .into_iter()
            .filter(|run| Some(run.run) != machine.running)
            .collect();
        let changes = drifting::changes(view, machine.machine)?;
        let dries = dries(view, ctx, &machine)?;
        let own = |kept: &&Kept| kept.chore.rule.about == About::Machine(machine.machine);
        let counted = chores.iter().filter(own).filter_map(|kept| upkeep::counted_line(ctx, kept));
        let counted = counted.collect();
        let stops = chores.iter().filter(own).filter(|kept| kept.stops).cloned().collect();
        machines.push(Seen { machine, running, last, changes, dries, counted, stops });
    }
    let people = view.people()?;
    let frame = Frame {
        title: ctx.words().say("machine-title"),
        place: Place::Machine,
        desk: false,
        again_s: Some(AGAIN_S),
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &machines, &people)))
}

/// What each programme of a machine dries, and how that is known.
fn dries(view: &View<'_>, ctx: &Ctx, machine: &Machine) -> Result<Vec<String>, BookError> {
    let kinds = Kinds::read(view, &[])?;
    let each: Vec<_> = kinds.kinds.iter().map(|kind| (kind.kind.clone(), 1, true)).collect();
    let usual = Load::of_counts(&each, &kinds);
    let inside = view.inside(machine.machine)?.value;
    let programmes = propose::programmes(view, machine.machine, &inside, &usual)?;
    let told = programmes.iter().map(|programme| {
        let name = say::programme(ctx, programme.cycle.programme.word());
        proposal::known(ctx, programme, &name)
    });
    Ok(told.filter(|line| !line.is_empty()).collect())
}

/// What stands on it.
pub fn draw(ctx: &Ctx, machines: &[Seen], people: &[Person]) -> Markup {
    let words = ctx.words();
    html! {
        @if machines.is_empty() {
            p class="fact" { (words.say("machine-none")) }
            p { a class="key main-key" href="/setup" { (words.say("setup-title")) } }
        }
        @for seen in machines { (one(ctx, seen, people)) }
        p class="ways" { (parts::way("/wall", Shape::House, &words.say("go-wall"))) }
        (parts::cautions(ctx, &[Caution::Hot, Caution::Gloves, Caution::Manual]))
    }
}

fn one(ctx: &Ctx, seen: &Seen, people: &[Person]) -> Markup {
    let words = ctx.words();
    let machine = &seen.machine;
    let number = machine.number.to_string();
    let name = words.tell("machine-name", &[("machine", number.as_str().into())]);
    html! {
        section class="machine" aria-label=(name) {
            @if let Some((run, usual)) = &seen.running {
                (now::running_card(ctx, run, *usual, people))
            }
            @if let Some(since) = machine.out_since {
                (stop::card(ctx, &name, &html! {
                    p class="fact" { (words.say("machine-out")) }
                    p { (words.say("since")) " " (parts::time(ctx, since)) }
                    (back_form(ctx, machine, people))
                }))
            }
            @for kept in &seen.stops { (upkeep::stop_card(ctx, &name, kept, true)) }
            (parts::card(Ground::Fine, Shape::Drum, &name, &html! {
                @if seen.running.is_none() && machine.out_since.is_none() {
                    p class="ways" {
                        a class="key main-key" href=(format!("/start?machine={}", machine.machine)) {
                            (words.say("go-start"))
                        }
                    }
                }
                (runs(ctx, &seen.last))
                (changes::draw(ctx, machine.number, &seen.changes))
                @if !seen.counted.is_empty() {
                    h3 { (words.say("chores-counted")) }
                    ul { @for line in &seen.counted { li { (line) } } }
                    p { a class="key" href="/upkeep" { (words.say("place-upkeep")) } }
                }
                @if !seen.dries.is_empty() {
                    h3 { (words.say("machine-dries")) }
                    ul class="reasons" { @for line in &seen.dries { li { (line) } } }
                    p class="ways" {
                        (parts::way(&format!("/tray?machine={}", machine.machine), Shape::Tray, &words.say("tray-show")))
                        (parts::way("/in", Shape::Envelope, &words.say("goes-in-title")))
                    }
                }
                (take_form(ctx, machine))
                (settings(ctx, machine, people))
            }))
        }
    }
}

/// Earlier runs, each with what its record proves.
fn runs(ctx: &Ctx, runs: &[Run]) -> Markup {
    let words = ctx.words();
    html! {
        h3 { (words.say("machine-last")) }
        @if runs.is_empty() { p { (words.say("machine-no-runs")) } }
        ul class="runs" {
            @for run in runs {
                li {
                    a href=(format!("/run/{}", run.run)) {
                        strong { (telling::run_name(ctx, run.machine_number, run.number)) }
                        span { (parts::time(ctx, run.started.0)) }
                        (run_state(ctx, run))
                    }
                }
            }
        }
    }
}

/// Where a run stands: a stop outranks everything, an undone start is struck through.
pub fn run_state(ctx: &Ctx, run: &Run) -> Markup {
    let words = ctx.words();
    html! {
        @if run.undone {
            span class="state" { s { (words.say("run-undone")) } }
        } @else if run.stopped.is_some() {
            span class="state state-set-aside" { (Shape::Palm.draw()) span { (words.say("do-not-use")) } }
        } @else if run.released.is_some() {
            (say::outcome(ctx, run.outcome))
            span class="state state-ready" { (Shape::House.draw()) span { (words.say("run-released")) } }
        } @else {
            (say::outcome(ctx, run.outcome))
        }
    }
}

/// Choose a file, or drop it on the form.
fn take_form(ctx: &Ctx, machine: &Machine) -> Markup {
    let words = ctx.words();
    let id = format!("file-{}", machine.number);
    html! {
        h3 { (words.say("take-title")) }
        (Form::new("take", &machine.machine.to_string()).draw_for_files(ctx, &html! {
            (parts::hidden("machine", machine.machine))
            p class="field drop" {
                label for=(id) { (words.say("take-file")) }
                input type="file" id=(id) name="file" multiple required;
            }
            p { button class="key main-key" { (words.say("take-do")) } }
        }))
    }
}

fn settings(ctx: &Ctx, machine: &Machine, people: &[Person]) -> Markup {
    let words = ctx.words();
    let on = machine.machine.to_string();
    let clock = format!("ahead-{}", machine.number);
    let ahead = machine.ahead_ms / 60_000;
    html! {
        @if machine.out_since.is_none() {
            (Form::new("machine-out", &on).draw(ctx, &html! {
                (parts::hidden("machine", machine.machine))
                p { button class="key stop-key" { (Shape::Palm.draw()) span { (words.say("machine-out-do")) } } }
            }))
        }
        details {
            summary { (words.tell("machine-clock", &[("ahead", ahead.to_string().into())])) }
            (Form::new("machine-clock", &on).draw(ctx, &html! {
                (parts::hidden("machine", machine.machine))
                p class="field" {
                    label for=(clock) { (words.say("machine-clock-ahead")) }
                    input type="number" id=(clock) name="ahead" step="1" value=(ahead) required;
                }
                (parts::sign_line(ctx, people, &words.say("machine-clock-asks")))
            }))
        }
        (reads::settings(ctx, machine, people))
    }
}

fn back_form(ctx: &Ctx, machine: &Machine, people: &[Person]) -> Markup {
    Form::new("machine-back", &machine.machine.to_string()).draw(
        ctx,
        &html! {
            (parts::hidden("machine", machine.machine))
            (parts::sign_line(ctx, people, &ctx.words().say("machine-back-asks")))
        },
    )
}
