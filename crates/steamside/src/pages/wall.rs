//! The wall: what the salon has and waits for, read from four metres. Clients see it, so it holds
//! no sign, no code, nothing of a visit and no spore test. A stop takes the whole screen.

use super::frame;
use super::shapes::{self, Shape};
use super::{hand_over, strip, upkeep, when};
use crate::planning::explain::kind_word;
use crate::planning::kept::{Planned, Want};
use crate::upkeep::Days;
use crate::web::Ctx;
use load::{SetKind, SetState};
use logbook::book::BookError;
use logbook::fact::BookKind;
use logbook::view::{KindCount, Machine, Pouch, Run, View};
use maud::{DOCTYPE, Markup, html};
use measure::RunId;
use release::verdict::Outcome;
use std::collections::BTreeMap;

/// The style of the wall.
pub const STYLE: &str = include_str!("../../assets/wall.css");
/// Read again every so many seconds: the clock shows minutes.
const AGAIN_S: u32 = 20;

/// What the wall shows.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Seen {
    /// On the shelf, by kind; kinds that the salon has and that are out are there with 0.
    pub ready: BTreeMap<SetKind, u32>,
    /// What must not be used, run by run.
    pub stops: Vec<Stopped>,
    /// The machines; nothing of this and the following where clients wait.
    pub machines: Vec<Tile>,
    /// What the plan wants next, in one short line each.
    pub plan: Vec<String>,
    /// About how many sets lie in the bin.
    pub bin: u32,
    /// The work was offered some time ago, and nobody has taken it.
    pub nobody: bool,
    /// What upkeep waits for.
    pub upkeep: Option<upkeep::WallSign>,
}

/// Pouches of one run that must not be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stopped {
    /// Number of its machine.
    pub machine: u32,
    /// Number of the run.
    pub run: u32,
    /// How many pouches.
    pub pouches: u32,
    /// All of the run.
    pub whole: bool,
}

/// A machine and what it waits for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tile {
    /// Its number.
    pub number: u32,
    /// Out of use.
    pub out: bool,
    /// When the run in it usually ends; `Some(None)` where there are too few to tell.
    pub ends: Option<Option<String>>,
    /// The time of the run in it is up.
    pub time_up: bool,
    /// A load is out of it and nobody has looked.
    pub check: bool,
}

/// The page. `front` is the wall where clients wait: what is ready, and the clock.
pub fn page(view: &View<'_>, ctx: &Ctx, front: bool) -> Result<Markup, BookError> {
    let kinds = view.kinds()?;
    let mut seen = Seen { ready: ready(view, &kinds)?, ..Seen::default() };
    if !front {
        let open = view.runs_open()?;
        let machines = view.machines()?;
        seen.stops = stops(view, &open)?;
        seen.machines = machines.iter().map(|machine| tile(ctx, machine, &open)).collect();
        seen.nobody = hand_over::nobody_has_it(view, ctx)?.is_some();
        seen.bin = kinds.iter().map(|kind| kind.used).sum();
        let planned = ctx.plans.plan(view, (ctx.now, &ctx.zone), Want::Recent)?;
        seen.plan = next(ctx, &planned, &machines);
        let days = Days::read(view, ctx.now, &ctx.zone)?;
        seen.upkeep = upkeep::wall_sign(ctx, &crate::upkeep::see(view, &days)?);
    }
    Ok(draw(ctx, &seen, front))
}

fn ready(view: &View<'_>, kinds: &[KindCount]) -> Result<BTreeMap<SetKind, u32>, BookError> {
    let owned = kinds.iter().filter(|kind| kind.owned.is_some_and(|owned| owned > 0));
    let mut ready: BTreeMap<SetKind, u32> = owned.map(|kind| (kind.kind.clone(), 0)).collect();
    for pouch in view.pouches_in(&[SetState::Ready])? {
        *ready.entry(pouch.kind).or_default() += 1;
    }
    Ok(ready)
}

/// What was set aside and not yet taken apart, and loads whose numbers failed, newest last. The
/// record of a run that still goes on is not the whole of it.
fn stops(view: &View<'_>, open: &[Run]) -> Result<Vec<Stopped>, BookError> {
    let mut aside: BTreeMap<Option<RunId>, Vec<Pouch>> = BTreeMap::new();
    for pouch in view.pouches_in(&[SetState::SetAside])? {
        aside.entry(pouch.run).or_default().push(pouch);
    }
    let failed = |run: &&Run| run.unloaded.is_some() && run.outcome == Some(Outcome::NotLethal);
    for run in open.iter().filter(failed) {
        aside.entry(Some(run.run)).or_default();
    }
    let mut stops = Vec::new();
    for (run, pouches) in aside {
        let Some(run) = run.map(|run| view.run(run)).transpose()?.flatten() else {
            // Never in a run: a pouch that was torn while it was packed.
            let pouches = pouches.len() as u32;
            stops.push((None, Stopped { machine: 0, run: 0, pouches, whole: false }));
            continue;
        };
        let count = pouches.len() as u32;
        let whole = run.stopped.is_some() || count >= run.pouches || count == 0;
        let stopped = Stopped {
            machine: run.machine_number,
            run: run.number,
            pouches: if whole { run.pouches } else { count },
            whole,
        };
        stops.push((Some(run.started.0), stopped));
    }
    stops.sort_by_key(|(at, _)| *at);
    Ok(stops.into_iter().map(|(_, stopped)| stopped).collect())
}

fn tile(ctx: &Ctx, machine: &Machine, open: &[Run]) -> Tile {
    let running = ctx.running.iter().find(|running| running.run.machine == machine.machine);
    Tile {
        number: machine.number,
        out: machine.out_since.is_some(),
        ends: running.map(|r| r.usual.map(|usual| when::clock_of(ctx, usual.median))),
        time_up: running.is_some_and(|r| strip::time_is_up(ctx.now, r.usual, r.word)),
        check: open.iter().any(|run| run.machine == machine.machine && run.unloaded.is_some()),
    }
}

/// What goes short first, and the next run. A plan that is a little old may want a run that has
/// just been started: a machine that runs is not told to start.
fn next(ctx: &Ctx, planned: &Planned, machines: &[Machine]) -> Vec<String> {
    let words = ctx.words();
    let Some((today, standing)) = &planned.day else {
        return Vec::new();
    };
    let clock = |slot: usize| when::clock_of(ctx, today.moment(slot));
    let mut told = Vec::new();
    let start = |service: usize| today.problem.services[service].start;
    if let Some(first) = standing.plan.unmet.iter().min_by_key(|unmet| start(unmet.service)) {
        let kind = kind_word(words, &today.problem.kinds[first.kind].id);
        let time = clock(start(first.service));
        told.push(words.tell(
            "wall-short",
            &[("time", time.into()), ("count", first.n.into()), ("kind", kind.into())],
        ));
    }
    let Some(run) = standing.plan.runs.iter().min_by_key(|run| run.start) else {
        return told;
    };
    let (id, number) = today.machines[run.machine];
    let busy = machines.iter().any(|row| row.machine == id && row.running.is_some());
    let machine = ("machine", number.to_string().into());
    if run.start == 0 && !busy {
        told.push(words.tell("wall-start-now", &[machine]));
    } else if run.start > 0 && !(busy && planned.seq != ctx.head) {
        told.push(words.tell("wall-start-at", &[machine, ("time", clock(run.start).into())]));
    }
    told
}

/// The page around what stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen, front: bool) -> Markup {
    let words = ctx.words();
    let title = words.say(if front { "wall-front-title" } else { "wall-title" });
    let many = seen.machines.len() > 2;
    html! {
        (DOCTYPE)
        html lang=(ctx.language.code()) class=[frame::book_class(ctx)] {
            (head(ctx, &title))
            body class="wall" data-again=(AGAIN_S) data-head=(ctx.head) data-times=[frame::times(ctx)] {
                (shapes::sheet())
                (frame::not_joined(ctx, false))
                @if seen.stops.is_empty() {
                    main id="work" class=(if front { "wall-front" } else { "wall-all" }) {
                        h1 class="unseen" { (title) }
                        (top(ctx, seen, front))
                        (shelf(ctx, seen))
                        @if !front {
                            ul class=(if many { "wall-machines wall-many" } else { "wall-machines" }) {
                                @for tile in &seen.machines { li { (machine(ctx, tile, many)) } }
                            }
                            (lines(seen))
                        }
                    }
                } @else {
                    (stop(ctx, &seen.stops))
                }
            }
        }
    }
}

/// The lines under the machines, as far as there is room: upkeep that cannot wait, the plan, the
/// count of chores. Where the plan fills the room, the count stands behind its last line.
fn lines(seen: &Seen) -> Markup {
    let room = room(&seen.machines);
    let sign = seen.upkeep.as_ref();
    let urgent = sign.filter(|sign| sign.count.is_none()).map(|sign| (Shape::Brush, &sign.says));
    let plan = seen.plan.iter().map(|line| (Shape::Tape, line));
    let mut lines: Vec<_> = urgent.into_iter().chain(plan).take(room).collect();
    let mut behind = None;
    if let Some((sign, count)) = sign.and_then(|sign| Some((sign, sign.count?))) {
        if lines.len() < room {
            lines.push((Shape::Brush, &sign.says));
        } else {
            behind = Some((count, &sign.says));
        }
    }
    let last = lines.len();
    html! {
        @if !lines.is_empty() {
            ul class="wall-plan" {
                @for (at, (shape, line)) in lines.into_iter().enumerate() {
                    li {
                        (shape.draw()) span { (line) }
                        @if let Some((count, says)) = behind.filter(|_| at + 1 == last) {
                            (Shape::Brush.draw())
                            span { span class="unseen" { (says) } span aria-hidden="true" { (count) } }
                        }
                    }
                }
            }
        }
    }
}

/// How many lines of the plan there is room for: what waits for hands comes first.
fn room(machines: &[Tile]) -> usize {
    match machines.len() {
        0..=2 if !machines.iter().any(Tile::also) => 2,
        0..=4 => 1,
        _ => 0,
    }
}

impl Tile {
    /// It runs, or is out of use, and its last load waits for a look.
    fn also(&self) -> bool {
        self.check && (self.out || self.ends.is_some())
    }
}

/// The head, with a page that is read again without the script.
fn head(ctx: &Ctx, title: &str) -> Markup {
    html! {
        head {
            meta charset="utf-8";
            meta name="viewport" content="width=device-width, initial-scale=1";
            title { (frame::on_paper(ctx, title.to_owned())) " – " (ctx.words().say("program-name")) }
            link rel="stylesheet" href=(frame::STYLE_PATH);
            link rel="stylesheet" href="/assets/wall.css";
            link rel="icon" type="image/svg+xml" href=(frame::icon(ctx.book == BookKind::Practice));
            noscript { meta http-equiv="refresh" content=(AGAIN_S); }
            script src=(frame::LIVE_PATH) defer {}
        }
    }
}

fn top(ctx: &Ctx, seen: &Seen, front: bool) -> Markup {
    let words = ctx.words();
    html! {
        header class="wall-top" {
            time class="wall-time" datetime=(when::machine_value(ctx, ctx.now)) {
                (when::clock_of(ctx, ctx.now))
            }
            @if let Some(word) = frame::book_word(ctx) { p class="wall-kind" { (word) } }
            @if !front && seen.nobody {
                p class="wall-nobody" { (Shape::Hourglass.draw()) span { (words.say("nobody-has-it")) } }
            }
            @if !front {
                p class="wall-bin" {
                    (Shape::Bowl.draw())
                    span { (words.tell("wall-bin", &[("count", seen.bin.into())])) }
                }
            }
        }
    }
}

fn shelf(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        section class="wall-ready" {
            h2 { (Shape::House.draw()) span { (words.say("place-ready")) } }
            ul {
                @for (kind, count) in &seen.ready {
                    li { strong { (count) } " " span { (kind_word(words, kind.word())) } }
                }
                @if seen.ready.is_empty() { li { strong { "0" } } }
            }
        }
    }
}

fn machine(ctx: &Ctx, tile: &Tile, many: bool) -> Markup {
    let words = ctx.words();
    let (class, shape, says) = match (&tile.ends, tile) {
        // One line has room for one thing: what waits for hands.
        (_, tile) if many && tile.check => ("waits", Shape::Hourglass, words.say("go-check")),
        (_, tile) if tile.out => ("out", Shape::Palm, words.say("machine-out")),
        (Some(_), tile) if tile.time_up => ("waits", Shape::Hourglass, words.say("wall-look")),
        (Some(Some(at)), _) => {
            ("runs", Shape::Drum, words.tell("wall-ends", &[("at", at.as_str().into())]))
        }
        (Some(None), _) => ("runs", Shape::Drum, words.say("wall-runs")),
        (None, tile) if tile.check => ("waits", Shape::Hourglass, words.say("go-check")),
        (None, _) => ("free", Shape::Drum, words.say("wall-free")),
    };
    let number = tile.number.to_string();
    let name = words.tell("machine-name", &[("machine", number.as_str().into())]);
    html! {
        section class=(format!("wall-machine {class}")) {
            h2 {
                (shape.draw())
                @if many { span { span class="unseen" { (name) } span aria-hidden="true" { (number) } } } @else { span { (name) } }
            }
            p { (says) }
            @if !many && tile.also() {
                p class="also" { (Shape::Hourglass.draw()) span { (words.say("go-check")) } }
            }
        }
    }
}

/// At most eight words, in every language.
fn stop(ctx: &Ctx, stops: &[Stopped]) -> Markup {
    let words = ctx.words();
    let pouches: u32 = stops.iter().map(|stop| stop.pouches).sum();
    let what = match stops {
        [one] if one.whole => words.tell(
            "run-name",
            &[("machine", one.machine.to_string().into()), ("run", one.run.to_string().into())],
        ),
        [one] if one.machine > 0 => words.tell(
            "wall-stop-some",
            &[("count", one.pouches.into()), ("machine", one.machine.to_string().into())],
        ),
        _ => words.tell("pouch-count", &[("count", pouches.into())]),
    };
    html! {
        main id="work" class="wall-stop" data-kind=[frame::book_word(ctx)] {
            (Shape::Palm.draw())
            div role="alert" {
                h1 { (words.say("do-not-use")) }
                p { (what) }
            }
        }
    }
}
