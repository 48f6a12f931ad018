//! Spore tests: placed, posted, read. A good one speaks for its run; how many visits a bad one
//! would reach today stands beside it.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::{stop, telling, when};
use crate::recalling;
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::view::{Machine, Person, Run, SporeTest, View};
use maud::{Markup, html};
use measure::{Instant, MachineId, RunId};
use release::spores::Says;
use std::collections::BTreeMap;

/// Tests that are shown.
const TESTS: u32 = 40;
/// Runs of a machine that a test can be said to have gone through.
const RUNS: u32 = 4;

/// One machine as the page shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct Tested {
    /// The machine.
    pub machine: Machine,
    /// Its last runs, the newest first.
    pub runs: Vec<Run>,
    /// The last good test.
    pub good: Option<Instant>,
    /// So many visits would have to be looked for if spores grew today.
    pub visits: usize,
}

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// The machines.
    pub machines: Vec<Tested>,
    /// The tests, the newest first.
    pub tests: Vec<SporeTest>,
    /// Machine number and number of the runs that they went through.
    pub runs: BTreeMap<RunId, (u32, u32)>,
    /// Who may sign.
    pub people: Vec<Person>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let mut seen =
        Seen { tests: view.spore_tests(TESTS)?, people: view.people()?, ..Seen::default() };
    for machine in view.machines()? {
        let all = view.spore_tests_of(machine.machine)?;
        let since = recalling::if_it_failed(view, &all)?;
        let reached = recalling::since_last_good(view, machine.machine, since, ctx.now)?;
        let good = all.iter().rev().find(|test| test.says() == Says::Good);
        seen.machines.push(Tested {
            runs: runs_of(view, &machine)?,
            good: good.map(|test| test.placed.happened),
            visits: reached.reach.visits().len(),
            machine,
        });
    }
    for run in seen.tests.iter().filter_map(|test| test.run) {
        if let Some(row) = view.run(run)? {
            seen.runs.insert(run, (row.machine_number, row.number));
        }
    }
    let frame = Frame {
        title: ctx.words().say("spores-title"),
        place: Place::Log,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// The run that is in the machine, then those before it.
fn runs_of(view: &View<'_>, machine: &Machine) -> Result<Vec<Run>, BookError> {
    let going = machine.running.map(|run| view.run(run)).transpose()?.flatten();
    let mut runs = view.last_runs(machine.machine, None, RUNS)?;
    runs.retain(|run| Some(run.run) != machine.running);
    runs.splice(..0, going);
    runs.truncate(RUNS as usize);
    Ok(runs)
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let (open, told): (Vec<_>, Vec<_>) =
        seen.tests.iter().partition(|test| test.says() == Says::Waiting);
    html! {
        p class="fact" { (words.say("spores-prove")) }
        div class="cards" {
            @for test in &open { (waiting(ctx, seen, test)) }
            @for tested in &seen.machines { (machine(ctx, seen, tested)) }
        }
        @if !told.is_empty() {
            section class="card fine" {
                h2 { (Shape::Tape.draw()) span { (words.say("spores-told")) } }
                ul class="runs" { @for test in told { li { (one(ctx, seen, test)) } } }
            }
        }
        p { (words.say("caution-manual")) }
    }
}

/// A test without an answer: two pictures, the control beside them.
fn waiting(ctx: &Ctx, seen: &Seen, test: &SporeTest) -> Markup {
    let words = ctx.words();
    let id = test.test.to_string();
    let days = format!("days-{}", &id[..8]);
    let path = format!("/spores/{id}");
    parts::card(
        Ground::Turn,
        Shape::Hourglass,
        &name(ctx, seen, test),
        &html! {
            p { (words.tell("spores-placed", &[("at", when::moment(ctx, test.placed.happened).into())])) }
            @if let Some(by) = test.answer_by {
                p { (words.tell("spores-by", &[("day", when::day_of(ctx, by).into())])) }
            }
            (Form { then: Some(&path), ..Form::new("spore-read", &format!("{id} grew")) }.draw(ctx, &html! {
                (parts::hidden("test", test.test))
                (parts::hidden("grew", "yes"))
                button class="key main-key stop-key" {
                    (vial(true)) span { (words.say("spores-grew")) }
                }
            }))
            (Form::new("spore-read", &id).draw(ctx, &html! {
                (parts::hidden("test", test.test))
                (parts::hidden("grew", "no"))
                fieldset class="choices" {
                    legend { (words.say("spores-control")) }
                    @for (value, key, turned) in [
                        ("yes", "spores-control-grew", Some(true)),
                        ("no", "spores-control-same", Some(false)),
                        ("none", "spores-control-none", None),
                    ] {
                        label {
                            input type="radio" name="control-grew" value=(value) required
                                checked[value == "none" && !test.control];
                            @if let Some(turned) = turned { (vial(turned)) }
                            span { (words.say(key)) }
                        }
                    }
                }
                div class="vial-line" {
                    (vial(false))
                    (parts::sign_line(ctx, &seen.people, &words.say("spores-same-asks")))
                }
            }))
            details {
                summary { (words.say("spores-more")) }
                (Form::new("spore-post", &id).draw(ctx, &html! {
                    (parts::hidden("test", test.test))
                    p class="field" {
                        label for=(days) { (words.say("spores-days")) }
                        input type="number" id=(days) name="days" min="1" max="60" value="7" required;
                    }
                    (parts::sign_line(ctx, &seen.people, &words.say("spores-post-asks")))
                }))
                (Form::new("spore-lost", &id).draw(ctx, &html! {
                    (parts::hidden("test", test.test))
                    button class="key" { (words.say("spores-lost")) }
                }))
            }
        },
    )
}

/// A vial, upright, whose content has turned (hatched) or not: told by its pattern, not by a colour.
pub fn vial(turned: bool) -> Markup {
    html! {
        svg class="vial" viewBox="0 0 24 48" aria-hidden="true" focusable="false" {
            path d="M7 3h10M8.5 3v36a3.5 5 0 0 0 7 0V3" fill="none" stroke="currentColor" stroke-width="2" {}
            @if turned {
                path d="M9 22l6-4M9 28l6-4M9 34l6-4M9 40l6-4" stroke="currentColor" stroke-width="2" {}
            } @else {
                path d="M9 20h6" stroke="currentColor" stroke-width="2" {}
            }
        }
    }
}

fn machine(ctx: &Ctx, seen: &Seen, tested: &Tested) -> Markup {
    let words = ctx.words();
    let number = tested.machine.number.to_string();
    let heading = words.tell("machine-name", &[("machine", number.into())]);
    let id = tested.machine.machine.to_string();
    let lot = format!("lot-{}", &id[..8]);
    parts::card(
        Ground::Fine,
        Shape::Drum,
        &heading,
        &html! {
            p {
                @match tested.good {
                    Some(at) => (words.tell("spores-good-last", &[("day", when::day_of(ctx, at).into())])),
                    None => (words.say("spores-good-none")),
                }
            }
            p { (words.tell("spores-size", &[("count", tested.visits.into())])) }
            (Form::new("spore-place", &id).draw(ctx, &html! {
                (parts::hidden("machine", tested.machine.machine))
                @if !tested.runs.is_empty() { (run_choice(ctx, tested)) }
                p class="choices" {
                    label {
                        input type="checkbox" name="control" value="yes" checked;
                        span { (words.say("spores-has-control")) }
                    }
                }
                p class="field" {
                    label for=(lot) { (words.say("spores-lot")) }
                    input id=(lot) name="lot" maxlength="60" autocomplete="off";
                }
                (parts::sign_line(ctx, &seen.people, &words.say("spores-place-asks")))
            }))
        },
    )
}

fn run_choice(ctx: &Ctx, tested: &Tested) -> Markup {
    html! {
        fieldset class="choices" {
            legend { (ctx.words().say("spores-run")) }
            @for (at, run) in tested.runs.iter().enumerate() {
                label {
                    input type="radio" name="run" value=(run.run) checked[at == 0];
                    span {
                        (telling::run_name(ctx, run.machine_number, run.number)) ", "
                        (when::moment(ctx, run.started.0))
                    }
                }
            }
            label {
                input type="radio" name="run" value="";
                span { (ctx.words().say("spores-run-none")) }
            }
        }
    }
}

fn one(ctx: &Ctx, seen: &Seen, test: &SporeTest) -> Markup {
    let words = ctx.words();
    let told = words.say(says_key(test.says()));
    html! {
        @if test.says() == Says::Grew {
            a href=(format!("/spores/{}", test.test)) {
                strong { (name(ctx, seen, test)) } span { (parts::time(ctx, test.placed.happened)) }
                span class="state" { (Shape::Palm.draw()) (told) }
            }
        } @else {
            div class="run-line" {
                strong { (name(ctx, seen, test)) } " " span { (parts::time(ctx, test.placed.happened)) } " "
                span class="state" { (told) }
            }
        }
    }
}

/// What a test says, in the reader's words.
pub const fn says_key(says: Says) -> &'static str {
    match says {
        Says::Waiting => "spores-says-waiting",
        Says::Good => "spores-says-good",
        Says::Grew => "spores-says-grew",
        Says::Nothing => "spores-says-nothing",
    }
}

fn name(ctx: &Ctx, seen: &Seen, test: &SporeTest) -> String {
    let words = ctx.words();
    let run = test.run.and_then(|run| seen.runs.get(&run));
    let place = match run {
        Some((machine, run)) => telling::run_name(ctx, *machine, *run),
        None => machine_name(ctx, &seen.machines, test.machine),
    };
    words.tell("spores-test-of", &[("what", place.into())])
}

fn machine_name(ctx: &Ctx, machines: &[Tested], machine: MachineId) -> String {
    let found = machines.iter().find(|tested| tested.machine.machine == machine);
    let number = found.map_or_else(|| "?".to_owned(), |found| found.machine.number.to_string());
    ctx.words().tell("machine-name", &[("machine", number.into())])
}

/// What stands on NOW: a failed test whose machine is not back yet, and answers that are overdue.
pub fn on_now(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let words = ctx.words();
    let tests = view.spore_tests(TESTS)?;
    let mut failed = Vec::new();
    for test in tests.iter().filter(|test| test.says() == Says::Grew && test.unfrozen.is_none()) {
        let machine = view.machine(test.machine)?.filter(|machine| machine.out_since.is_some());
        failed.extend(machine.map(|machine| (test.test, machine.number)));
    }
    let late = tests.iter().filter(|test| {
        test.says() == Says::Waiting && test.answer_by.is_some_and(|by| by < ctx.now)
    });
    let late = late.count();
    Ok(html! {
        @for (test, number) in failed {
            (stop::card(ctx, &words.tell("machine-name", &[("machine", number.to_string().into())]), &html! {
                p class="fact" { (words.say("spores-says-grew")) }
                p { a class="key main-key" href=(format!("/spores/{test}")) { (words.say("spore-path")) } }
            }))
        }
        @if late > 0 {
            (parts::card(Ground::Turn, Shape::Hourglass, &words.say("spores-title"), &html! {
                p { (words.tell("spores-late", &[("count", late.into())])) }
                p { a class="key main-key" href="/spores" { (words.say("spores-title")) } }
            }))
        }
    })
}
