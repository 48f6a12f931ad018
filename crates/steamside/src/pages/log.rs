//! The log: everything that happened, newest first, in plain words. Nothing is hidden: late
//! entries say so, and what was taken back stays, struck through.

pub mod gaps;

use super::frame::{self, Frame, Place};
use super::meanwhile;
use super::parts;
use super::telling::{self, Names};
use super::{correct, say, when};
use crate::acts;
use crate::web::Ctx;
use gaps::Silence;
use logbook::book::BookError;
use logbook::fact::{Body, Fact, Known, Stamp};
use logbook::view::{LogLine, View};
use maud::{Markup, html};
use measure::{ActId, Instant, Span};
use std::collections::BTreeMap;

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

/// The correction that stands beside an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Beside {
    /// When it was written.
    pub written: Instant,
    /// By whom.
    pub sign: Option<String>,
    /// What it says.
    pub text: String,
}

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// The entries, newest first.
    pub entries: Vec<Entry>,
    /// Times without an entry, the last one first.
    pub silences: Vec<Silence>,
    /// Corrections of entries, by the act that they correct.
    pub beside: BTreeMap<ActId, Vec<Beside>>,
    /// The last place of the page before this one in time.
    pub older: Option<u64>,
    /// It is drawn to be printed.
    pub print: bool,
}

/// The page. Printed, it is written in the record's language.
pub fn page(
    view: &View<'_>,
    ctx: &Ctx,
    before: Option<u64>,
    print: bool,
) -> Result<Markup, BookError> {
    let for_record = ctx.for_record();
    let ctx = if print { &for_record } else { ctx };
    let lines = view.log(before, LINES)?;
    let facts: Vec<Fact> = lines.iter().map(|line| line.fact.clone()).collect();
    let names = Names::of(view, &facts)?;
    let older = lines.last().map(|line| line.fact.seq).filter(|seq| *seq > 1);
    let silences = silences(view, ctx, &facts, before.is_none())?;
    let beside = corrections(view, ctx, &lines)?;
    let seen = Seen { entries: entries(lines), silences, beside, older, print };
    let frame = Frame {
        title: ctx.words().say("log-title"),
        place: Place::Log,
        desk: true,
        again_s: before.is_none().then_some(AGAIN_S),
        did: frame::did(view, ctx)?,
    };
    let unseen = match before {
        None => meanwhile::cards(ctx, &meanwhile::unseen(view, ctx)?, &view.people()?),
        Some(_) => Markup::default(),
    };
    let body = html! { (unseen) (draw(ctx, &names, &seen)) };
    Ok(frame::page(ctx, &frame, &body))
}

fn silences(
    view: &View<'_>,
    ctx: &Ctx,
    facts: &[Fact],
    newest: bool,
) -> Result<Vec<Silence>, BookError> {
    let moments = facts.iter().map(|fact| fact.stamp.happened);
    let (Some(from), Some(to)) = (moments.clone().min(), moments.max()) else {
        return Ok(Vec::new());
    };
    let to = if newest { ctx.now } else { to };
    let first = facts.iter().map(|fact| fact.seq).min().unwrap_or(1);
    gaps::between(view, ctx, (from, to), first)
}

/// What was said anew, beside what was said first.
fn corrections(
    view: &View<'_>,
    ctx: &Ctx,
    lines: &[LogLine],
) -> Result<BTreeMap<ActId, Vec<Beside>>, BookError> {
    let mut beside: BTreeMap<ActId, Vec<Beside>> = BTreeMap::new();
    for line in lines {
        let act = line.fact.stamp.act;
        let mut by: Vec<Vec<Fact>> = Vec::new();
        if let Some(undone_by) = line.undone_by.filter(|_| !beside.contains_key(&act)) {
            let facts = view.facts_of_act(undone_by)?;
            by.extend((facts.len() > 1).then_some(facts));
        }
        if let Body::RunStarted { run, .. } = &line.fact.body {
            for corrected in view.corrections_of_run(*run)? {
                by.push(view.facts_of_act(corrected.stamp.act)?);
            }
        }
        for facts in by {
            let (Some(first), names) = (facts.first(), Names::of(view, &facts)?) else { continue };
            let sign = first.stamp.sign.and_then(|who| names.signs.get(&who).cloned());
            let told = facts.iter().filter(|fact| !matches!(fact.body, Body::Undone { .. }));
            let text: Vec<String> = told.map(|fact| telling::line(ctx, &names, fact)).collect();
            let said = Beside { written: first.stamp.written, sign, text: text.join(" ") };
            beside.entry(act).or_default().push(said);
        }
    }
    Ok(beside)
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
pub fn draw(ctx: &Ctx, names: &Names, seen: &Seen) -> Markup {
    let words = ctx.words();
    let mut silences = seen.silences.iter().peekable();
    html! {
        @if seen.entries.is_empty() { p class="fact" { (words.say("log-empty")) } }
        ol class="log" {
            @for entry in &seen.entries {
                // A silence stands above the last entry before it.
                @while let Some(silence) = silences.next_if(|s| s.span.0 >= entry.stamp.happened) {
                    (gaps::draw(ctx, silence))
                }
                li { (one(ctx, names, entry, seen)) }
            }
        }
        p class="ways no-print" {
            @if let Some(seq) = seen.older {
                a class="key" href=(format!("/log?before={seq}")) { (words.say("log-older")) }
            }
            a class="key" href="/log" { (words.say("log-newest")) }
            a class="key" href="/later" { (words.say("later-title")) }
            a class="key" href="/recall" { (words.say("go-recall")) }
            @if seen.print {
                button type="button" class="key" hidden data-prints="yes" { (words.say("labels-print")) }
            } @else {
                a class="key" href="/log?print=yes" { (words.say("log-print")) }
            }
            a class="key" href="/spores" { (words.say("spores-title")) }
            a class="key" href="/show" { (words.say("show-title")) }
        }
        p { (words.say("log-verify")) }
    }
}

fn one(ctx: &Ctx, names: &Names, entry: &Entry, seen: &Seen) -> Markup {
    let words = ctx.words();
    let stamp = &entry.stamp;
    let sign = stamp
        .sign
        .map(|who| names.signs.get(&who).cloned().unwrap_or_else(|| words.say("sign-gone")));
    let text = telling::entry(ctx, names, &entry.facts);
    let beside = seen.beside.get(&stamp.act).map(Vec::as_slice).unwrap_or_default();
    html! {
        span class="log-when" { (parts::time(ctx, stamp.happened)) }
        span class="log-what" {
            @if entry.undone || !beside.is_empty() { s { (text) } } @else { (text) }
            " "
            @for said in beside { em class="beside" { (correct::beside(ctx, said)) } " " }
            @if entry.undone && beside.is_empty() { em { (words.say("log-undone")) } " " }
            (later(ctx, entry))
        }
        span class="log-who" {
            @match sign {
                Some(sign) => span class="signed" { (sign) },
                None => (words.say("log-program")),
            }
            " · " (words.say(say::known_key(stamp.known)))
            " · " (station(ctx, stamp))
            @if !entry.undone && !seen.print && acts::correctable(&entry.facts).is_some() {
                " " a class="correct-key" href=(format!("/correct/{}", stamp.act))
                    aria-label=(format!("{}: {text}", words.say("correct-key"))) {
                    (words.say("correct-key"))
                }
            }
        }
    }
}

/// Written later than it happened: said to be so, with the other time.
fn later(ctx: &Ctx, entry: &Entry) -> Markup {
    let stamp = &entry.stamp;
    let linked = entry.facts.iter().all(|fact| matches!(fact.body, Body::Opened { .. }))
        && stamp.known != Known::FromPaper;
    let at = [("at", when::moment(ctx, stamp.written).into())];
    html! {
        @if stamp.written - stamp.happened > LATER {
            em { (ctx.words().tell(if linked { "log-linked" } else { "log-later" }, &at)) }
        }
    }
}

/// The first four digits of a station's id tell the few stations of a salon apart.
fn station(ctx: &Ctx, stamp: &Stamp) -> String {
    let short: String = stamp.station.to_string().chars().take(4).collect();
    ctx.words().tell("log-station", &[("station", short.into())])
}
