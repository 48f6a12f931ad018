//! The log: everything that happened, newest first, in plain words. Nothing is hidden: late
//! entries say so, and what was taken back stays, struck through.

use super::frame::{self, Frame, Place};
use super::parts;
use super::telling::{self, Names};
use super::{say, when};
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::fact::{Body, Fact, Stamp};
use logbook::view::{LogLine, View};
use maud::{Markup, html};
use measure::Span;

/// Read again every minute; an older part of the log does not change.
const AGAIN_S: u32 = 60;
/// Lines a page.
const LINES: u32 = 60;
/// Written later than this after it happened: said to be so. (Common practice, no source: nine
/// in ten entries made at the place come within five minutes.)
const LATER: Span = Span::from_minutes(5);

/// The facts of one act, as one entry.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Who, where, when.
    pub stamp: Stamp,
    /// Its facts, in order.
    pub facts: Vec<Fact>,
    /// It was taken back.
    pub undone: bool,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, before: Option<u64>) -> Result<Markup, BookError> {
    let lines = view.log(before, LINES)?;
    let facts: Vec<Fact> = lines.iter().map(|line| line.fact.clone()).collect();
    let names = Names::of(view, &facts)?;
    let older = lines.last().map(|line| line.fact.seq).filter(|seq| *seq > 1);
    let entries = entries(lines);
    let frame = Frame {
        title: ctx.words().say("log-title"),
        place: Place::Log,
        desk: true,
        again_s: before.is_none().then_some(AGAIN_S),
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &names, &entries, older)))
}

/// Facts of one act belong together; newest entry first, facts in the order of their doing.
pub fn entries(lines: Vec<LogLine>) -> Vec<Entry> {
    let mut entries: Vec<Entry> = Vec::new();
    for line in lines {
        match entries.last_mut() {
            Some(last) if last.stamp.act == line.fact.stamp.act => last.facts.insert(0, line.fact),
            _ => entries.push(Entry {
                stamp: line.fact.stamp,
                undone: line.undone_by.is_some(),
                facts: vec![line.fact],
            }),
        }
    }
    entries
}

/// What stands on it.
pub fn draw(ctx: &Ctx, names: &Names, entries: &[Entry], older: Option<u64>) -> Markup {
    let words = ctx.words();
    html! {
        @if entries.is_empty() { p class="fact" { (words.say("log-empty")) } }
        ol class="log" {
            @for entry in entries { li { (one(ctx, names, entry)) } }
        }
        p class="ways" {
            @if let Some(seq) = older {
                a class="key" href=(format!("/log?before={seq}")) { (words.say("log-older")) }
            }
            a class="key" href="/log" { (words.say("log-newest")) }
            a class="key" href="/recall" { (words.say("go-recall")) }
            a class="key" href="/spores" { (words.say("spores-title")) }
            a class="key" href="/show" { (words.say("show-title")) }
        }
        p { (words.say("log-verify")) }
    }
}

fn one(ctx: &Ctx, names: &Names, entry: &Entry) -> Markup {
    let words = ctx.words();
    let stamp = &entry.stamp;
    let later = stamp.written - stamp.happened > LATER;
    let linked = entry.facts.iter().all(|fact| matches!(fact.body, Body::Opened { .. }));
    let sign = stamp
        .sign
        .map(|who| names.signs.get(&who).cloned().unwrap_or_else(|| words.say("sign-gone")));
    html! {
        span class="log-when" { (parts::time(ctx, stamp.happened)) }
        span class="log-what" {
            @for fact in &entry.facts {
                @let text = telling::line(ctx, names, fact);
                @if entry.undone { s { (text) } } @else { (text) }
                " "
            }
            @if entry.undone { em { (words.say("log-undone")) } }
            @if later {
                @let at = [("at", when::moment(ctx, stamp.written).into())];
                em { (words.tell(if linked { "log-linked" } else { "log-later" }, &at)) }
            }
        }
        span class="log-who" {
            @match sign {
                Some(sign) => span class="signed" { (sign) },
                None => (words.say("log-program")),
            }
            " · " (words.say(say::known_key(stamp.known)))
            " · " (station(ctx, stamp))
        }
    }
}

/// The first four digits of a station's id tell the few stations of a salon apart.
fn station(ctx: &Ctx, stamp: &Stamp) -> String {
    let short: String = stamp.station.to_string().chars().take(4).collect();
    ctx.words().tell("log-station", &[("station", short.into())])
}
