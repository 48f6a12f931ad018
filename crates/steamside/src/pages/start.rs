//! Start: the door is shut; which pouches, which machine, which programme; a sign starts it.

use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Form, Ground};
use super::shapes::Shape;
use super::{proposal, say, tray, upkeep};
use crate::upkeep::{Days, Kept, stops_of};
use crate::web::Ctx;
use load::{Contents, SetState};
use logbook::book::BookError;
use logbook::view::{Machine, Person, Pouch, View};
use maud::{Markup, html};
use measure::MachineId;
use std::collections::BTreeSet;

/// How many earlier runs are looked through for programmes.
const RUNS: u32 = 60;

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// Machines that could be started.
    pub free: Vec<Machine>,
    /// The one that was chosen.
    pub machine: Option<Machine>,
    /// Programmes used in it before, the last one first.
    pub programmes: Vec<String>,
    /// The one that was used last.
    pub last: Option<String>,
    /// Pouches waiting.
    pub bagged: Vec<Pouch>,
    /// Who may sign.
    pub people: Vec<Person>,
    /// How they go in, and which programme is proposed.
    pub tray: Option<tray::Seen>,
    /// The load is another than last time, so the picture stands open.
    pub changed: bool,
    /// Chores that keep the chosen machine from being started.
    pub stops: Vec<Kept>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, machine: Option<MachineId>) -> Result<Markup, BookError> {
    let free: Vec<Machine> = view
        .machines()?
        .into_iter()
        .filter(|machine| machine.out_since.is_none() && machine.running.is_none())
        .collect();
    let chosen = free.iter().find(|known| Some(known.machine) == machine).or(free.first()).cloned();
    let mut programmes = Vec::new();
    if let Some(chosen) = &chosen {
        let mut seen = BTreeSet::new();
        for run in view.last_runs(chosen.machine, None, RUNS)? {
            if let Some(programme) = run.programme
                && seen.insert(programme.clone())
            {
                programmes.push(programme);
            }
        }
    }
    let bagged = view.pouches_in(&[SetState::Bagged])?;
    let (tray, changed) = match &chosen {
        Some(machine) if !bagged.is_empty() => {
            let tray = tray::see(view, machine.clone(), &bagged, None)?;
            (Some(tray), changed(view, machine, &bagged)?)
        }
        _ => (None, false),
    };
    let last = programmes.first().cloned();
    if let Some(tray) = &tray {
        for programme in &tray.proposal.programmes {
            let word = programme.cycle.programme.word();
            if programmes.iter().all(|known| known != word) {
                programmes.push(word.to_owned());
            }
        }
    }
    let stops = match &chosen {
        Some(machine) => stops_of(view, machine.machine, &Days::read(view, ctx.now, &ctx.zone)?)?,
        None => Vec::new(),
    };
    let people = view.people()?;
    let seen =
        Seen { stops, free, machine: chosen, programmes, last, bagged, people, tray, changed };
    let frame = Frame {
        title: ctx.words().say("start-title"),
        place: Place::Machine,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// Is the load another than the one that went into this machine last? Who sees the same picture
/// every day does not look at it any more.
fn changed(view: &View<'_>, machine: &Machine, bagged: &[Pouch]) -> Result<bool, BookError> {
    let mix = |pouches: &[Pouch]| {
        let mut kinds: Vec<_> =
            pouches.iter().map(|pouch| (pouch.kind.clone(), pouch.pouched)).collect();
        kinds.sort();
        kinds
    };
    Ok(match view.last_runs(machine.machine, None, 1)?.first() {
        Some(last) => mix(&view.pouches_of_run(last.run)?) != mix(bagged),
        None => true,
    })
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        @if let Some(machine) = seen.machine.as_ref().filter(|_| !seen.bagged.is_empty()) {
            (machines(ctx, seen, machine))
            @for kept in &seen.stops {
                @let number = machine.number.to_string();
                (upkeep::stop_card(ctx, &words.tell("machine-name", &[("machine", number.into())]), kept, true))
            }
            @if seen.stops.is_empty() { (Form { then: Some("/"), ..Form::new("start", &machine.machine.to_string()) }
                .draw(ctx, &fields(ctx, seen, machine))) }
            // Below the signs: who has loaded already starts without scrolling past the picture.
            @if let Some(tray) = seen.tray.as_ref().filter(|_| seen.stops.is_empty()) {
                details id="trays" open[seen.changed] {
                    summary { (words.say("start-picture")) }
                    (tray::pictures(ctx, tray))
                    p { (parts::way(&tray::print_address(tray), Shape::Tape, &words.say("tray-print"))) }
                }
            }
        } @else if seen.machine.is_none() {
            (parts::card(Ground::Fine, Shape::Drum, &words.say("start-no-machine"), &html! {
                p { a class="key main-key" href="/machine" { (words.say("place-machine")) } }
            }))
        } @else {
            (parts::card(Ground::Fine, Shape::Envelope, &words.say("start-no-pouch"), &html! {
                p { a class="key main-key" href="/wash" { (words.say("wash-title")) } }
            }))
        }
        (parts::cautions(ctx, &[Caution::Hot, Caution::Manual]))
    }
}

fn machines(ctx: &Ctx, seen: &Seen, chosen: &Machine) -> Markup {
    let words = ctx.words();
    html! {
        nav class="tabs" aria-label=(words.say("place-machine")) {
            @for machine in &seen.free {
                a class="key" href=(format!("/start?machine={}", machine.machine))
                    aria-current=[(machine.machine == chosen.machine).then_some("true")] {
                    (Shape::Drum.draw())
                    span { (words.tell("machine-name", &[("machine", machine.number.to_string().into())])) }
                }
            }
        }
    }
}

fn fields(ctx: &Ctx, seen: &Seen, machine: &Machine) -> Markup {
    let words = ctx.words();
    let load = seen.tray.as_ref().map(|tray| tray.proposal.load.contents);
    let contents = words.say(say::contents_key(load.unwrap_or(Contents::Unknown)));
    let left = seen.tray.as_ref().map(|tray| tray.laid.left()).unwrap_or_default();
    let over = machine.most_pouches.filter(|most| seen.bagged.len() > *most as usize);
    let proposed = seen.tray.as_ref().and_then(|tray| {
        let first = tray.proposal.choice.ranked.first()?;
        Some(tray.proposal.programmes.get(first.offer)?.cycle.programme.word())
    });
    html! {
        (parts::hidden("machine", machine.machine))
        section class="card turn" {
            h2 {
                (Shape::Envelope.draw())
                span { (words.tell("start-inside", &[("count", seen.bagged.len().into())])) }
            }
            p { (words.tell("start-contents", &[("contents", contents.into())])) }
            @if let Some(tray) = &seen.tray {
                (proposal::draw(ctx, &tray.proposal))
                (tray::summary(ctx, tray))
                p { a href="#trays" { (words.say("start-picture")) } }
            }
            fieldset class="pouches" {
                legend class="unseen" { (words.say("start-which")) }
                @for (at, pouch) in seen.bagged.iter().enumerate() { (pouch_box(ctx, pouch, !left.contains(&at))) }
            }
            @let risky = over.is_some() || seen.tray.as_ref().is_some_and(|tray| {
                tray.proposal.choice.ranked.is_empty() || !tray.proposal.load.refused.is_empty()
            });
            @if let Some(most) = over { p class="amber" { (words.tell("start-over", &[("most", most.into())])) } }
            p class="field" {
                label for="programme" { (words.say("start-programme")) }
                input id="programme" name="programme" list="programmes" autocomplete="off"
                    autocapitalize="none" spellcheck="false" maxlength="24"
                    value=[proposed.or(seen.last.as_deref())];
                datalist id="programmes" {
                    @for programme in &seen.programmes { option value=(programme) { (say::programme(ctx, programme)) } }
                }
            }
            p class="programmes" {
                @for programme in seen.programmes.iter().take(4) {
                    button type="button" class="key" hidden data-fills="programme" data-with=(programme) { (say::programme(ctx, programme)) }
                }
            }
            p class=(if risky { "choices amber" } else { "choices" }) {
                label { input type="checkbox" name="over" value="yes"; span { (words.say("start-against")) } }
            }
            p { (words.say("start-cautions")) }
            (parts::sign_line(ctx, &seen.people, &words.say("start-asks")))
        }
    }
}

/// What does not go in is for the next run, and is not ticked.
fn pouch_box(ctx: &Ctx, pouch: &Pouch, goes_in: bool) -> Markup {
    html! {
        label class="pouch-box" {
            input type="checkbox" name="pouch" value=(pouch.pouch) checked[goes_in];
            span class="code" { (pouch.code) }
            span { (say::kind(ctx, &pouch.kind)) }
        }
    }
}
