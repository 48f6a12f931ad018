//! How a load goes on the trays of a machine: true to scale, which side is up, how heavy, how much
//! is free at the wall; and the same as a page of A5 for the machine's door.

mod sheet;

#[cfg(test)]
pub use sheet::draw as sheet_of;

use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Ground};
use super::shapes::Shape;
use crate::loading::kinds::Kinds;
use crate::loading::load::Load;
use crate::loading::propose::{self, Proposal};
use crate::loading::trays::{Item, Laid, lay};
use crate::planning::explain::kind_word;
use crate::web::Ctx;
use load::chamber::{Inside, Pattern};
use load::pack::Layer;
use load::picture::{Role, of_layer};
use load::{SetState, geometry::PER_MM};
use logbook::book::BookError;
use logbook::view::{Machine, Pouch, Run, Setting, View};
use maud::{Markup, PreEscaped, html};
use measure::{MachineId, RunId};
use papers::{Caption, DrawingNames, PictureWords, Unprintable, drawing};

/// Which load on which machine.
#[derive(Debug, Clone, Copy, Default)]
pub struct Asked {
    /// The machine; the first one where none is named.
    pub machine: Option<MachineId>,
    /// The load of this run, instead of what is bagged.
    pub run: Option<RunId>,
    /// As a page to print.
    pub print: bool,
}

/// What the page shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The machine.
    pub machine: Machine,
    /// Its room.
    pub inside: Setting<Inside>,
    /// What goes in.
    pub items: Vec<Item>,
    /// How it lies.
    pub laid: Laid,
    /// Which programme, and what comes out.
    pub proposal: Proposal,
    /// The load of a run that has been started, instead of what is bagged.
    pub run: Option<RunId>,
    /// The programme that it was started with.
    pub programme: Option<String>,
}

/// The page; `None` where there is no such machine.
pub fn page(view: &View<'_>, ctx: &Ctx, asked: Asked) -> Result<Option<Markup>, BookError> {
    let run = asked.run.map(|run| view.run(run)).transpose()?.flatten();
    if asked.run.is_some() && run.is_none() {
        return Ok(None);
    }
    let machines = view.machines()?;
    let free = |machine: &&Machine| machine.running.is_none() && machine.out_since.is_none();
    let chosen = match run.as_ref().map(|run| run.machine).or(asked.machine) {
        Some(wanted) => machines.iter().find(|machine| machine.machine == wanted),
        None => machines.iter().find(free).or(machines.first()),
    };
    let Some(machine) = chosen.cloned() else {
        return Ok(None);
    };
    let pouches = match &run {
        Some(run) => view.pouches_of_run(run.run)?,
        None => view.pouches_in(&[SetState::Bagged])?,
    };
    let seen = see(view, machine, &pouches, run)?;
    let frame = Frame {
        title: ctx.words().say("tray-title"),
        place: Place::Machine,
        desk: asked.print,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    let body = if asked.print { sheet::draw(ctx, &seen) } else { draw(ctx, &seen) };
    Ok(Some(frame::page(ctx, &frame, &body)))
}

/// A load on a machine.
pub fn see(
    view: &View<'_>,
    machine: Machine,
    pouches: &[Pouch],
    run: Option<Run>,
) -> Result<Seen, BookError> {
    let items: Vec<Item> = pouches.iter().map(Item::of).collect();
    let words: Vec<load::SetKind> = items.iter().map(|item| item.kind.clone()).collect();
    let kinds = Kinds::read(view, &words)?;
    let inside = view.inside(machine.machine)?;
    let hollow: Vec<bool> = pouches.iter().map(|pouch| pouch.hollow).collect();
    // What goes in by room, then by what the proposed programme takes, or would take of a part.
    let mut laid = lay(&items, &kinds, &inside.value, None);
    let mut proposal =
        of_those_in(view, &machine, (&items, &hollow), (&laid, &kinds, &inside.value))?;
    if let Some(most_g) = proposal.part_g().filter(|most_g| *most_g < laid.packing.mass_g) {
        laid = lay(&items, &kinds, &inside.value, Some(most_g));
        proposal = of_those_in(view, &machine, (&items, &hollow), (&laid, &kinds, &inside.value))?;
    }
    let programme = run.as_ref().and_then(|run| run.programme.clone());
    Ok(Seen { machine, inside, items, laid, proposal, run: run.map(|run| run.run), programme })
}

/// The proposal for the sets that go in.
fn of_those_in(
    view: &View<'_>,
    machine: &Machine,
    (items, hollow): (&[Item], &[bool]),
    (laid, kinds, inside): (&Laid, &Kinds, &Inside),
) -> Result<Proposal, BookError> {
    let left = laid.left();
    let goes = |at: &usize| !left.contains(at);
    let those: Vec<Item> = (0..items.len()).filter(goes).map(|at| items[at].clone()).collect();
    let hollow = (0..items.len()).filter(goes).any(|at| hollow.get(at) == Some(&true));
    propose::propose(view, machine, inside, &Load::of(&those, hollow, kinds))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let number = seen.machine.number.to_string();
    let name = words.tell("machine-name", &[("machine", number.into())]);
    html! {
        @if seen.items.is_empty() {
            (parts::card(Ground::Fine, Shape::Envelope, &words.say("start-no-pouch"), &html! {
                p { a class="key main-key" href="/wash" { (words.say("wash-title")) } }
            }))
        } @else {
            (parts::card(if seen.laid.fits() { Ground::Fine } else { Ground::Turn }, Shape::Drum, &name, &html! {
                (summary(ctx, seen))
                @if let Some(programme) = &seen.programme {
                    p class="fact" { (words.tell("run-programme", &[("programme", super::say::programme(ctx, programme).into())])) }
                }
                @if seen.run.is_none() { (super::proposal::draw(ctx, &seen.proposal)) }
                @if seen.run.is_none() && seen.machine.running.is_some() { p { (words.say("tray-machine-busy")) } }
                p class="ways" {
                    @if seen.run.is_none() && seen.machine.running.is_none() && seen.machine.out_since.is_none() {
                        (parts::way(&format!("/start?machine={}", seen.machine.machine), Shape::Drum, &words.say("go-start")))
                    }
                    (parts::way(&print_address(seen), Shape::Tape, &words.say("tray-print")))
                }
            }))
            (pictures(ctx, seen))
            (pattern(ctx, seen))
        }
        (parts::cautions(ctx, &[Caution::Hot, Caution::Manual]))
    }
}

/// Each tray.
pub fn pictures(ctx: &Ctx, seen: &Seen) -> Markup {
    html! {
        div class="trays" {
            @for (at, layer) in seen.laid.packing.layers.iter().enumerate() {
                (tray(ctx, seen, at, layer))
            }
        }
    }
}

/// Where the page to print is.
pub fn print_address(seen: &Seen) -> String {
    format!("{}&print=a5", address(seen))
}

/// Where this load on this machine is shown.
fn address(seen: &Seen) -> String {
    match seen.run {
        Some(run) => format!("/tray?run={run}"),
        None => format!("/tray?machine={}", seen.machine.machine),
    }
}

/// How much goes in, and what does not.
pub fn summary(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let packing = &seen.laid.packing;
    let left: Vec<String> =
        seen.laid.left().iter().map(|item| called(ctx, &seen.items[*item])).collect();
    html! {
        @if seen.laid.fits() {
            p class="fact" { (words.tell("tray-all-in", &[("count", packing.count().into())])) }
        } @else {
            p class="fact" {
                (words.tell("tray-some-in", &[
                    ("count", packing.count().into()),
                    ("of", seen.laid.of.len().into()),
                    ("most", packing.bound.into()),
                ]))
            }
            @if !left.is_empty() { p { (words.say("tray-left")) " " (left.join(", ")) } }
            @for item in &seen.laid.unknown {
                p { (words.tell("tray-unknown", &[("what", called(ctx, &seen.items[*item]).into())])) }
            }
        }
        @if let Some(most) = seen.machine.most_pouches.filter(|most| seen.items.len() > *most as usize) {
            p class="fact" { (words.tell("start-over", &[("most", most.into())])) }
        }
    }
}

/// A set as a person calls it: by its code and its kind.
fn called(ctx: &Ctx, item: &Item) -> String {
    let kind = kind_word(ctx.words(), item.kind.word());
    item.code.map_or(kind.clone(), |code| format!("{code} {kind}"))
}

/// One tray: its picture, what it weighs, what is free.
fn tray(ctx: &Ctx, seen: &Seen, at: usize, layer: &Layer) -> Markup {
    let heading = heading(ctx, seen, layer);
    html! {
        section class="card tray-card" {
            h2 { (heading) }
            @if layer.placed.is_empty() {
                p { (ctx.words().say("tray-empty")) }
            } @else {
                @match picture(ctx, seen, at, layer) {
                    Ok(svg) => (PreEscaped(svg)),
                    Err(why) => p lang="en" { (why) },
                }
                p { (mass(ctx, seen, layer)) " " (clearance(ctx, layer).unwrap_or_default()) }
            }
        }
    }
}

/// "Tray 1 from the top", or the rack.
fn heading(ctx: &Ctx, seen: &Seen, layer: &Layer) -> String {
    match seen.inside.value.pattern {
        Pattern::OnEdge => ctx.words().say("rack-title"),
        _ => ctx.words().tell("tray-from-top", &[("tray", (layer.tray + 1).into())]),
    }
}

fn mass(ctx: &Ctx, seen: &Seen, layer: &Layer) -> String {
    let on_edge = seen.inside.value.pattern == Pattern::OnEdge;
    let key = if on_edge { "rack-mass-is" } else { "tray-mass-is" };
    ctx.words().tell(key, &[("grams", layer.mass_g.into())])
}

fn clearance(ctx: &Ctx, layer: &Layer) -> Option<String> {
    let free = layer.clearance?;
    Some(ctx.words().tell("tray-free", &[("free", millimetres(free).into())]))
}

fn millimetres(tenths: i32) -> String {
    format!("{} mm", (tenths + PER_MM / 2) / PER_MM)
}

/// The words in a picture of this load.
fn with_words<T>(ctx: &Ctx, seen: &Seen, then: impl FnOnce(PictureWords<'_>) -> T) -> T {
    let words = ctx.words();
    let on_edge = seen.inside.value.pattern == Pattern::OnEdge;
    let paper = words.say(if on_edge { "paper-right" } else { "paper-up" });
    let film = words.say(if on_edge { "film-right" } else { "film-up" });
    let (over, fold, near) = (words.say("lies-over"), words.say("fold-free"), words.say("door"));
    let caption = |role: Role, bag: usize| {
        let item = &seen.items[*seen.laid.of.get(bag)?];
        let more = kind_word(words, item.kind.word());
        match role {
            Role::Paper | Role::Film => Some(match item.code {
                Some(code) => Caption { main: code.to_string(), more },
                None => Caption { main: more, more: String::new() },
            }),
            _ => None,
        }
    };
    then(PictureWords {
        paper: &paper,
        film: &film,
        over: &over,
        fold: &fold,
        near: Some(&near),
        caption: &caption,
        distance: &millimetres,
    })
}

fn picture(ctx: &Ctx, seen: &Seen, at: usize, layer: &Layer) -> Result<String, Unprintable> {
    let mut picture = of_layer(layer, &seen.inside.value);
    let title = heading(ctx, seen, layer);
    let codes: Vec<String> = (layer.placed.iter())
        .filter_map(|placed| seen.laid.of.get(placed.bag))
        .map(|item| called(ctx, &seen.items[*item]))
        .collect();
    let desc = ctx.words().tell("tray-desc", &[("what", codes.join(", ").into())]);
    with_words(ctx, seen, |words| {
        let id = format!("tray-{at}");
        let names = DrawingNames { id: &id, title: &title, desc: &desc, words };
        // A way that is too short to write on stands below the picture all the same.
        drawing(&picture, &names).or_else(|_| {
            picture.distances.clear();
            drawing(&picture, &names)
        })
    })
}

/// Which pattern, and whose.
fn pattern(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let key = match seen.inside.value.pattern {
        Pattern::Flat => "pattern-flat-how",
        Pattern::OnEdge => "pattern-on-edge-how",
        Pattern::Overlapped => "pattern-overlapped-how",
    };
    html! {
        section class="card" {
            p { (words.say(key)) }
            p { (whose_pattern(ctx, seen)) }
            p class="ways" { (parts::way("/in", Shape::Envelope, &words.say("goes-in-title"))) }
        }
    }
}

/// "From the machine's manual, page 31", or that nobody has said.
fn whose_pattern(ctx: &Ctx, seen: &Seen) -> String {
    let words = ctx.words();
    match (seen.inside.said, seen.inside.value.manual_page) {
        (Some(_), Some(page)) => words.tell("pattern-page", &[("page", page.into())]),
        (Some(_), None) => words.say("pattern-no-page"),
        (None, _) => words.say("pattern-typical"),
    }
}
