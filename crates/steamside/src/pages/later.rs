//! From paper: what was kept by hand, copied in with the day and the time that stand there. The
//! order is that of the weekly sheet. The log says that it was written later, and from paper.

mod look;

use super::frame::{self, Frame, Place};
use super::parts::{self, Counter, Form};
use super::shapes::Shape;
use super::{say, telling, upkeep, when};
use crate::web::Ctx;
use load::SetState;
use logbook::book::BookError;
use logbook::view::{KindCount, Machine, Person, Pouch, Run, View};
use maud::{Markup, html};
use measure::RunId;

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// Who may sign.
    pub people: Vec<Person>,
    /// All machines.
    pub machines: Vec<Machine>,
    /// Loose sets.
    pub kinds: Vec<KindCount>,
    /// Pouches that wait for a run.
    pub bagged: Vec<Pouch>,
    /// Runs whose looks are not written yet.
    pub to_check: Vec<Run>,
    /// The run whose looks are copied in, with what is to be looked at.
    pub look: Option<(Run, Vec<Pouch>)>,
    /// Chores, each with the value of its choice and its name.
    pub chores: Vec<(String, String)>,
}

/// The page; with a run, the one on which its looks are copied in.
pub fn page(view: &View<'_>, ctx: &Ctx, run: Option<RunId>) -> Result<Option<Markup>, BookError> {
    let out = |run: &Run| run.unloaded.is_some();
    let look = match run {
        None => None,
        Some(id) => match view.run(id)?.filter(|run| out(run) && !run.undone) {
            None => return Ok(None),
            Some(run) => {
                let mut pouches = view.pouches_of_run(id)?;
                pouches.retain(|pouch| pouch.state == SetState::ToCheck);
                Some((run, pouches))
            }
        },
    };
    let seen = Seen {
        people: view.people()?,
        machines: view.machines()?,
        kinds: view.kinds()?,
        bagged: view.pouches_in(&[SetState::Bagged])?,
        to_check: view.runs_open()?.into_iter().filter(out).collect(),
        look,
        chores: upkeep::choices(view, ctx)?,
    };
    let frame = Frame {
        title: ctx.words().say("later-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(Some(frame::page(ctx, &frame, &draw(ctx, &seen))))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    if let Some((run, pouches)) = &seen.look {
        return look::draw(ctx, run, pouches, &seen.people);
    }
    html! {
        p { (words.say("later-how")) }
        (part(ctx, Shape::Tape, "later-chore", &chore(ctx, seen)))
        (part(ctx, Shape::Waves, "later-wash", &washed(ctx, seen)))
        (part(ctx, Shape::Drum, "later-run", &run(ctx, seen)))
        (part(ctx, Shape::Hourglass, "later-look", &looks(ctx, seen)))
        (part(ctx, Shape::OpenEnvelope, "later-open", &opened(ctx, seen)))
        (part(ctx, Shape::House, "later-closed", &closed(ctx, seen)))
        p class="ways" {
            (parts::way("/week", Shape::Tape, &words.say("week-title")))
            (parts::way("/log", Shape::Tape, &words.say("log-title")))
        }
    }
}

fn part(ctx: &Ctx, shape: Shape, key: &str, inside: &Markup) -> Markup {
    html! {
        details class="card fine" {
            summary { (shape.draw()) span { (ctx.words().say(key)) } }
            (inside)
        }
    }
}

/// The day, today until somebody says another, and the time as it stands on the paper.
fn day_and_time(ctx: &Ctx, id: &str, times: &[(&str, &str)]) -> Markup {
    let words = ctx.words();
    let today = when::date_value(ctx, ctx.now);
    let day = format!("{id}-on");
    html! {
        p class="field" {
            label for=(day) { (words.say("later-day")) }
            input type="date" id=(day) name="on" value=(today) max=(today) required;
        }
        @for (name, key) in times {
            @let field = format!("{id}-{name}");
            p class="field" {
                label for=(field) { (words.say(key)) }
                input type="time" id=(field) name=(name) required;
            }
        }
    }
}

const AT: [(&str, &str); 1] = [("at", "later-time")];

fn form(ctx: &Ctx, seen: &Seen, act: &str, fields: &Markup) -> Markup {
    Form::new(act, "paper").draw(
        ctx,
        &html! {
            (fields)
            (parts::sign_line(ctx, &seen.people, &ctx.words().say("later-asks")))
        },
    )
}

fn washed(ctx: &Ctx, seen: &Seen) -> Markup {
    let fields = html! {
        (day_and_time(ctx, "wash", &AT))
        div class="counters" {
            @for (index, kind) in seen.kinds.iter().enumerate() {
                (Counter {
                    name: &format!("count.{}", kind.kind), id: &format!("later-washed-{index}"),
                    label: &say::kind(ctx, &kind.kind), value: 0, most: 200,
                }.draw(ctx))
            }
        }
    };
    form(ctx, seen, "later-wash", &fields)
}

fn run(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let times = [("at", "later-start"), ("end-at", "later-end")];
    let fields = html! {
        (day_and_time(ctx, "run", &times))
        fieldset class="choices" {
            legend { (words.say("later-machine")) }
            @for (at, machine) in seen.machines.iter().enumerate() {
                label {
                    input type="radio" name="machine" value=(machine.machine) required checked[at == 0];
                    span { (words.tell("machine-name", &[("machine", machine.number.to_string().into())])) }
                }
            }
        }
        p class="field" {
            label for="later-programme" { (words.say("start-programme")) }
            input id="later-programme" name="programme" autocomplete="off" autocapitalize="none"
                spellcheck="false" maxlength="24";
        }
        @if !seen.bagged.is_empty() {
            fieldset class="pouches" {
                legend { (words.say("later-inside")) }
                @for pouch in &seen.bagged {
                    label class="pouch-box" {
                        input type="checkbox" name="pouch" value=(pouch.pouch);
                        span class="code" { (pouch.code) }
                        span { (say::kind(ctx, &pouch.kind)) }
                    }
                }
            }
        }
        @if !seen.kinds.is_empty() {
            p { (words.say("later-packed-how")) }
            (Counter {
                name: "count", id: "later-count", label: &words.say("later-packed"), value: 0, most: 60,
            }.draw(ctx))
            fieldset class="choices" {
                legend { (words.say("later-kind")) }
                @for (at, kind) in seen.kinds.iter().enumerate() {
                    label {
                        input type="radio" name="kind" value=(kind.kind) checked[at == 0];
                        span { (say::kind(ctx, &kind.kind)) }
                    }
                }
            }
        }
    };
    form(ctx, seen, "later-run", &fields)
}

fn looks(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        @if seen.to_check.is_empty() { p { (words.say("later-no-look")) } }
        ul class="runs" {
            @for run in &seen.to_check {
                li {
                    a class="key" href=(format!("/later?run={}", run.run)) {
                        (telling::run_name(ctx, run.machine_number, run.number)) ", "
                        (when::moment(ctx, run.started.0))
                    }
                }
            }
        }
    }
}

fn opened(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let fields = html! {
        (day_and_time(ctx, "open", &AT))
        p class="field" {
            label for="later-code" { (words.say("later-code")) }
            input id="later-code" name="code" maxlength="4" size="4" autocomplete="off" spellcheck="false" required;
        }
        p class="field" {
            label for="later-chair" { (words.say("correct-chair")) }
            input type="number" inputmode="numeric" id="later-chair" name="chair" min="1" max="99";
        }
    };
    form(ctx, seen, "later-open", &fields)
}

fn chore(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let fields = html! {
        (day_and_time(ctx, "chore", &AT))
        fieldset class="choices" {
            legend { (words.say("later-which-chore")) }
            @for (at, (value, name)) in seen.chores.iter().enumerate() {
                label {
                    input type="radio" name="which" value=(value) checked[at == 0];
                    span { (name) }
                }
            }
        }
        fieldset class="choices" {
            legend { (words.say("later-found")) }
            label { input type="radio" name="found" value="fine" required; span { (words.say("later-fine")) } }
            label { input type="radio" name="found" value="not-fine"; span { (words.say("later-not-fine")) } }
        }
    };
    form(ctx, seen, "later-chore", &fields)
}

fn closed(ctx: &Ctx, seen: &Seen) -> Markup {
    let fields = day_and_time(ctx, "closed", &[]);
    form(ctx, seen, "later-closed", &fields)
}
