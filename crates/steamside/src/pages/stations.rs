//! Screens that were let in, and letting another one in.

use super::frame::{self, Frame, Place};
use super::pair::KINDS;
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::{trust, when};
use crate::door::{Code, Door, Reach};
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::fact::StationKind;
use logbook::view::{Station, View};
use maud::{Markup, PreEscaped, html};
use measure::{Instant, StationId};
use std::collections::BTreeMap;

/// Read again, so that the page shows a screen that has just come in.
const AGAIN_S: u32 = 60;

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen<'a> {
    /// Screens that are let in, each with what the salon calls it.
    pub stations: Vec<(Station, Option<String>)>,
    /// When each was heard last.
    pub heard: BTreeMap<StationId, Instant>,
    /// The code that is good now, and until when.
    pub code: Option<(Code, Instant)>,
    /// How the box is reached.
    pub reach: Option<&'a Reach>,
    /// Whoever looks may let screens in and go.
    pub may: bool,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, door: &Door, may: bool) -> Result<Markup, BookError> {
    let mut stations = Vec::new();
    for station in view.stations()?.into_iter().filter(|station| station.parted.is_none()) {
        let name = match station.name {
            Some(kept) => view.drawer(kept.entry)?.and_then(|bytes| String::from_utf8(bytes).ok()),
            None => None,
        };
        stations.push((station, name));
    }
    let code = door.code().filter(|_| may);
    let seen = Seen { stations, heard: door.heard(), code, reach: Some(&door.reach), may };
    let frame = Frame {
        title: ctx.words().say("screens-title"),
        place: Place::Log,
        desk: true,
        again_s: Some(AGAIN_S),
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen<'_>) -> Markup {
    let words = ctx.words();
    html! {
        @if seen.may { (let_in(ctx, seen)) } @else { p class="fact" { (words.say("screens-not-here")) } }
        (parts::card(Ground::Fine, Shape::Tape, &words.say("screens-known"), &html! {
            @if seen.stations.is_empty() { p { (words.say("screens-none")) } }
            ul class="screens" {
                @for (station, name) in &seen.stations {
                    li { (known(ctx, seen, station, name.as_deref())) }
                }
            }
        }))
        @if let Some((_, public)) = seen.reach.and_then(|reach| reach.secure.as_ref()) {
            (parts::card(Ground::Fine, Shape::House, &words.say("trust-title"), &html! {
                (trust::fingerprint(words, &public.fingerprint))
                p { a href="/trust" { (words.say("trust-how")) } }
            }))
        }
    }
}

fn let_in(ctx: &Ctx, seen: &Seen<'_>) -> Markup {
    let words = ctx.words();
    let addresses = seen.reach.map(Reach::for_others).unwrap_or_default();
    let button = |key: &str| {
        html! {
            form method="post" action="/stations/code" {
                p { button class="key main-key" { (words.say(key)) } }
            }
        }
    };
    let inside = html! {
        @match (&seen.code, addresses.first()) {
            (_, None) => p { (words.say("screens-only-here")) },
            (None, Some(_)) => {
                p { (words.say("screens-how")) }
                (button("screens-code"))
            }
            (Some((code, until)), Some(address)) => {
                p class="code pair-code" { (code) }
                p { (words.tell("screens-until", &[("at", when::clock_of(ctx, *until).into())])) }
                @if let Some(trust) = seen.reach.and_then(Reach::to_trust) {
                    p { (words.say("screens-trust-first")) }
                    p class="fact" { (trust) }
                }
                @if let Ok(square) = papers::square(&format!("{address}/pair?code={code}"), &words.say("screens-square")) {
                    div class="pair-square" { (PreEscaped(square)) }
                }
                p { (words.say("screens-type")) }
                @for address in &addresses { p class="fact" { (address) "/pair" } }
                (button("screens-new-code"))
            }
        }
    };
    parts::card(Ground::Fine, Shape::House, &words.say("screens-let-in"), &inside)
}

fn known(ctx: &Ctx, seen: &Seen<'_>, station: &Station, name: Option<&str>) -> Markup {
    let words = ctx.words();
    let id = station.station.to_string();
    html! {
        strong { (words.say(kind_key(station.what))) @if let Some(name) = name { ": " (name) } }
        " " span class="place" {
            (words.say("screens-since")) " " (parts::time(ctx, station.paired)) " · "
            @match seen.heard.get(&station.station) {
                Some(at) => { (words.say("screens-heard")) " " (parts::time(ctx, *at)) }
                None => { (words.say("screens-not-heard")) }
            }
            " · " (words.tell("log-station", &[("station", id.chars().take(4).collect::<String>().into())]))
        }
        @if seen.may {
            (Form::new("station-parted", &id).draw(ctx, &html! {
                (parts::hidden("station", &id))
                button class="key" { (words.say("screens-let-go")) span class="unseen" { " " (words.say(kind_key(station.what))) " " (name.unwrap_or_default()) } }
            }))
        }
    }
}

/// What a screen is, in words.
pub fn kind_key(what: StationKind) -> &'static str {
    let word = match what {
        StationKind::Phone => 0,
        StationKind::Tablet => 1,
        StationKind::Wall => 2,
        StationKind::Desk => 3,
    };
    KINDS[word].1
}
