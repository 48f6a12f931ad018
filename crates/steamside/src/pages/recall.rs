//! Recall: which runs, which pouches still on the shelf, which visits. Counts first. Who was here
//! is all that it says: about risk it knows nothing, and the health authority leads.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::{stop, telling, when};
use crate::clock;
use crate::recalling::{self, Reached};
use crate::web::Ctx;
use jiff::civil::Date;
use logbook::book::BookError;
use logbook::view::{Machine, Pouch, PouchVisit, SporeTest, View};
use maud::{Markup, html};
use measure::{Instant, MachineId, RunId, Span, TestId};
use release::recall::Since;

/// What was asked for.
#[derive(Debug, Clone, Copy, Default)]
pub struct Asked<'a> {
    /// From this run on.
    pub run: Option<RunId>,
    /// Or this machine,
    pub machine: Option<MachineId>,
    /// from this day,
    pub from: Option<&'a str>,
    /// to this one.
    pub to: Option<&'a str>,
    /// Or from the last good spore test before this one to the end of its machine's use.
    pub test: Option<TestId>,
}

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// Machines to choose from.
    pub machines: Vec<Machine>,
    /// The machine that was asked about.
    pub machine: Option<MachineId>,
    /// From this moment.
    pub from: Option<Instant>,
    /// To this one.
    pub to: Option<Instant>,
    /// What the recall reaches; `None`: nothing was asked yet.
    pub reached: Option<Reached>,
    /// The spore test that it is about; its letter is open.
    pub letter: Option<TestId>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, asked: Asked<'_>) -> Result<Markup, BookError> {
    let seen = seen(view, ctx, asked)?;
    let frame = Frame {
        title: ctx.words().say("recall-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

fn seen(view: &View<'_>, ctx: &Ctx, asked: Asked<'_>) -> Result<Seen, BookError> {
    let mut seen = Seen { machines: view.machines()?, ..Seen::default() };
    let test = asked.test.map(|test| view.spore_test(test)).transpose()?.flatten();
    if let Some(test) = test {
        return of_test(view, ctx, seen, &test);
    }
    let first = match asked.run {
        Some(run) => view.run(run)?,
        None => None,
    };
    let machine = first.as_ref().map(|run| run.machine).or(asked.machine);
    let day = |text: Option<&str>| text.and_then(|text| text.trim().parse::<Date>().ok());
    let start = |date: Date| clock::moments_of(date.at(0, 0, 0, 0), &ctx.zone).into_iter().min();
    seen.machine = machine;
    seen.from = first.as_ref().map(|run| run.started.0).or(day(asked.from).and_then(start));
    let out = seen.machines.iter().find(|known| Some(known.machine) == machine);
    seen.to = day(asked.to)
        .and_then(|date| date.tomorrow().ok())
        .and_then(start)
        .map(|next| next - Span::from_millis(1))
        .or(out.and_then(|machine| machine.out_since));
    let (Some(machine), Some(from)) = (machine, seen.from) else {
        return Ok(seen);
    };
    let to = seen.to.unwrap_or(ctx.now);
    let since = first.map_or(Since::Moment(from), |run| Since::Run(run.run));
    seen.reached = Some(recalling::reached(view, machine, since, (from, to))?);
    Ok(seen)
}

/// After a failed test: to the moment at which its machine was taken out of use.
fn of_test(
    view: &View<'_>,
    ctx: &Ctx,
    mut seen: Seen,
    test: &SporeTest,
) -> Result<Seen, BookError> {
    let Some(failed) = recalling::failed(view, test)? else { return Ok(seen) };
    let out = seen.machines.iter().find(|known| known.machine == test.machine);
    let to = out.and_then(|machine| machine.out_since).unwrap_or(ctx.now);
    let reached = recalling::since_last_good(view, test.machine, failed.since, to)?;
    seen.machine = Some(test.machine);
    seen.to = Some(to);
    seen.from = match reached.reach.runs.first() {
        Some(run) => view.run(*run)?.map(|run| run.started.0),
        None => None,
    };
    seen.letter = Some(test.test);
    seen.reached = Some(reached);
    Ok(seen)
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        p class="fact" { (words.say("recall-authority")) }
        @if let Some(reached) = &seen.reached { (counts(ctx, seen, reached)) }
        (question(ctx, seen))
    }
}

fn counts(ctx: &Ctx, seen: &Seen, reached: &Reached) -> Markup {
    let words = ctx.words();
    let reach = &reached.reach;
    let count = |key: &str, count: usize| words.tell(key, &[("count", count.into())]);
    html! {
        (stop::card(ctx, &count("recall-runs", reach.runs.len()), &html! {
            @if reach.runs.is_empty() { p { (words.say("recall-nothing")) } }
            @if reach.start_unknown { p { (words.say("recall-start-unknown")) } }
            ul class="counts" {
                li { (count("recall-visits", reach.visits().len())) }
                li { (count("recall-shelf", reach.on_shelf.len())) }
                @if !reach.opened_unlinked.is_empty() {
                    li { (count("recall-unlinked", reach.opened_unlinked.len())) }
                }
                @if !reach.gone.is_empty() { li { (count("recall-gone", reach.gone.len())) } }
            }
            @if !reach.on_shelf.is_empty() {
                (Form::new("set-aside", "recall").draw(ctx, &html! {
                    @for pouch in &reach.on_shelf { (parts::hidden("pouch", pouch)) }
                    (parts::hidden("why", "recall"))
                    button class="key main-key stop-key" { (words.say("recall-set-aside")) }
                }))
                p class="codes" {
                    @for pouch in reach.on_shelf.iter().filter_map(|id| reached.pouches.get(id)) {
                        span class="code" { (pouch.code) } " "
                    }
                }
            }
        }))
        @if let Some(test) = seen.letter {
            p class="ways" {
                (parts::way(&format!("/spores/{test}"), Shape::Palm, &words.say("spore-path")))
                (parts::way(&format!("/letter?test={test}"), Shape::Tape, &words.say("letter-title")))
            }
        }
        @if !reach.opened.is_empty() { (visits(ctx, seen, reached)) }
        p { button type="button" class="key" hidden data-prints="yes" { (words.say("labels-print")) } }
    }
}

fn visits(ctx: &Ctx, seen: &Seen, reached: &Reached) -> Markup {
    let words = ctx.words();
    let mut rows: Vec<(&PouchVisit, &Pouch)> = reached
        .reach
        .opened
        .iter()
        .filter_map(|(pouch, visit)| reached.visits.get(visit).zip(reached.pouches.get(pouch)))
        .collect();
    rows.sort_by_key(|(visit, pouch)| (visit.opened, pouch.code));
    html! {
        div class="scroll" tabindex="0" role="group" aria-label=(words.say("recall-title")) {
            table {
                thead { tr {
                    @for key in ["recall-date", "recall-time", "recall-chair", "recall-code", "recall-of-run"] {
                        th scope="col" { (words.say(key)) }
                    }
                    @if seen.letter.is_some() { th scope="col" { (words.say("letter-title")) } }
                } }
                tbody {
                    @for (visit, pouch) in rows {
                        tr {
                            td { (when::day_of(ctx, visit.opened)) }
                            td { (when::clock_of(ctx, visit.opened)) }
                            td { @match visit.chair {
                                Some(chair) => (chair),
                                None => (words.say("not-known")),
                            } }
                            td { span class="code" { (pouch.code) } }
                            td {
                                @if let Some((machine, run)) = pouch.run.and_then(|run| reached.runs.get(&run)) {
                                    (telling::run_name(ctx, *machine, *run))
                                }
                            }
                            @if let Some(test) = seen.letter {
                                td { a class="key" href=(format!("/letter?test={test}&visit={}", visit.visit)) {
                                    (words.say("letter-write"))
                                } }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn question(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let date = |at: Option<Instant>| at.map(|at| when::date_value(ctx, at));
    parts::card(
        Ground::Fine,
        Shape::Tape,
        &words.say("recall-title"),
        &html! {
            p { (words.say("recall-how")) }
            form method="get" action="/recall" {
                fieldset class="choices" {
                    legend { (words.say("recall-machine")) }
                    @for machine in &seen.machines {
                        label {
                            input type="radio" name="machine" value=(machine.machine) required
                                checked[seen.machine == Some(machine.machine) || seen.machines.len() == 1];
                            span { (words.tell("machine-name", &[("machine", machine.number.to_string().into())])) }
                        }
                    }
                }
                p class="field" {
                    label for="recall-from" { (words.say("recall-from")) }
                    input type="date" id="recall-from" name="from" required value=[date(seen.from)];
                }
                p class="field" {
                    label for="recall-to" { (words.say("recall-to")) }
                    input type="date" id="recall-to" name="to" value=[date(seen.to)];
                }
                p { button class="key main-key" { (words.say("recall-do")) } }
            }
        },
    )
}
