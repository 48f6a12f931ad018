//! Recall: which runs, which pouches still on the shelf, which visits. Counts first. Who was here
//! is all that it says: about risk it knows nothing, and the health authority leads.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::{stop, telling, when};
use crate::clock;
use crate::web::Ctx;
use jiff::civil::Date;
use load::SetState;
use logbook::book::BookError;
use logbook::view::{Machine, Pouch, PouchVisit, RunContents, View};
use maud::{Markup, html};
use measure::{Instant, MachineId, PouchId, RunId, Span, VisitId};
use release::recall::{self, Ask, PouchNow, PouchOfRun, Reach, RunOfMachine, Since};
use std::collections::BTreeMap;

/// A run that began this long before the first moment may still have been going at it.
const LONGEST_RUN: Span = Span::from_minutes(24 * 60);

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
    pub reach: Option<Reach>,
    /// The pouches that it reaches.
    pub pouches: BTreeMap<PouchId, Pouch>,
    /// The visits that they were opened for.
    pub visits: BTreeMap<VisitId, PouchVisit>,
    /// Machine number and number of the runs that it reaches.
    pub runs: BTreeMap<RunId, (u32, u32)>,
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
    // The end belongs to the span.
    let until = to + Span::from_millis(1);
    let found = view.recall_input(machine, from - LONGEST_RUN, until)?;
    let ask = Ask { machine, since, out_of_use: Some(to) };
    reached(&mut seen, found, &ask);
    Ok(seen)
}

fn reached(seen: &mut Seen, found: Vec<RunContents>, ask: &Ask) {
    let mut of_machine = Vec::new();
    for RunContents { run, pouches, visits } in found {
        of_machine.push(RunOfMachine {
            id: run.run,
            machine: run.machine,
            started: run.started.0,
            ended: run.unloaded,
            pouches: pouches.iter().flat_map(|pouch| now_of(pouch, &visits)).collect(),
        });
        seen.runs.insert(run.run, (run.machine_number, run.number));
        seen.pouches.extend(pouches.into_iter().map(|pouch| (pouch.pouch, pouch)));
        seen.visits.extend(visits.into_iter().map(|visit| (visit.visit, visit)));
    }
    seen.reach = Some(recall::reach(&of_machine, ask));
}

/// Opened outranks every later state: what touched a client stays on the list, once for every
/// visit that it was said to be opened for.
fn now_of(pouch: &Pouch, visits: &[PouchVisit]) -> Vec<PouchOfRun> {
    let opened: Vec<_> = visits
        .iter()
        .filter(|visit| visit.pouch == pouch.pouch)
        .map(|visit| PouchOfRun { id: pouch.pouch, now: PouchNow::Opened(Some(visit.visit)) })
        .collect();
    if !opened.is_empty() {
        return opened;
    }
    let now = match pouch.state {
        SetState::Used | SetState::Retired => PouchNow::Gone,
        _ => PouchNow::NotOpened,
    };
    vec![PouchOfRun { id: pouch.pouch, now }]
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        p class="fact" { (words.say("recall-authority")) }
        @if let Some(reach) = &seen.reach { (counts(ctx, seen, reach)) }
        (question(ctx, seen))
    }
}

fn counts(ctx: &Ctx, seen: &Seen, reach: &Reach) -> Markup {
    let words = ctx.words();
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
                    @for pouch in reach.on_shelf.iter().filter_map(|id| seen.pouches.get(id)) {
                        span class="code" { (pouch.code) } " "
                    }
                }
            }
        }))
        @if !reach.opened.is_empty() { (visits(ctx, seen, reach)) }
        p { button type="button" class="key" hidden data-prints="yes" { (words.say("labels-print")) } }
    }
}

fn visits(ctx: &Ctx, seen: &Seen, reach: &Reach) -> Markup {
    let words = ctx.words();
    let mut rows: Vec<(&PouchVisit, &Pouch)> = reach
        .opened
        .iter()
        .filter_map(|(pouch, visit)| seen.visits.get(visit).zip(seen.pouches.get(pouch)))
        .collect();
    rows.sort_by_key(|(visit, pouch)| (visit.opened, pouch.code));
    html! {
        div class="scroll" tabindex="0" role="group" aria-label=(words.say("recall-title")) {
            table {
                thead { tr {
                    @for key in ["recall-date", "recall-time", "recall-chair", "recall-code", "recall-of-run"] {
                        th scope="col" { (words.say(key)) }
                    }
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
                                @if let Some((machine, run)) = pouch.run.and_then(|run| seen.runs.get(&run)) {
                                    (telling::run_name(ctx, *machine, *run))
                                }
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
