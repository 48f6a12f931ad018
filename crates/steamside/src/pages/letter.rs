//! A letter to those who were here: two languages side by side, dates filled in, the sentence about
//! the risk left empty, because nobody here knows it. A template, and no legal advice.

use super::frame::{self, Frame, Place};
use super::{parts, when};
use crate::recalling;
use crate::web::Ctx;
use crate::words::{Language, Words};
use logbook::book::BookError;
use logbook::view::{PouchVisit, View};
use maud::{Markup, html};
use measure::{Instant, TestId, VisitId};
use release::spores::letters_open;

/// What was asked for.
#[derive(Debug, Clone, Copy)]
pub struct Asked {
    /// The failed test.
    pub test: TestId,
    /// The visit that it is for; `None`: the dates of all.
    pub visit: Option<VisitId>,
    /// The local rule or the health authority asks for letters already.
    pub asked: bool,
}

/// What the letter says.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The visit.
    pub visit: Option<PouchVisit>,
    /// First and last moment of the visits that are reached.
    pub span: Option<(Instant, Instant)>,
    /// So many visits.
    pub visits: usize,
    /// Letters may be written.
    pub open: bool,
}

/// The page; `None` where no spores grew in this test.
pub fn page(view: &View<'_>, ctx: &Ctx, asked: Asked) -> Result<Option<Markup>, BookError> {
    let Some(test) = view.spore_test(asked.test)? else { return Ok(None) };
    let Some(failed) = recalling::failed(view, &test)? else { return Ok(None) };
    let out = view.machine(test.machine)?.and_then(|machine| machine.out_since);
    let to = out.unwrap_or(ctx.now);
    let reached = recalling::since_last_good(view, test.machine, failed.since, to)?;
    let visits = reached.reach.visits();
    let times = || visits.iter().filter_map(|visit| reached.visits.get(visit)).map(|it| it.opened);
    let seen = Seen {
        visit: asked.visit.and_then(|visit| reached.visits.get(&visit).copied()),
        span: times().min().zip(times().max()),
        visits: visits.len(),
        open: letters_open(failed.next, asked.asked) && !visits.is_empty(),
    };
    let frame = Frame {
        title: ctx.words().say("letter-title"),
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
    if !seen.open {
        return html! { p class="fact" { (words.say("letter-closed")) } };
    }
    // The reader's language beside the one that most offices read.
    let other = if ctx.language == Language::En { Language::Vi } else { Language::En };
    html! {
        p class="fact" { (words.say("recall-authority")) }
        p { (words.tell("letter-count", &[("count", seen.visits.into())])) }
        div class="letters" {
            @for language in [ctx.language, other] { (letter(&ctx.in_language(language), seen)) }
        }
        p { button type="button" class="key" hidden data-prints="yes" { (words.say("labels-print")) } }
        p class="ways" { (parts::way("/log", super::shapes::Shape::Tape, &words.say("place-log"))) }
    }
}

fn letter(ctx: &Ctx, seen: &Seen) -> Markup {
    let words: &Words = ctx.words();
    let date = |at: Instant| when::day_of(ctx, at);
    html! {
        article class="letter" lang=(ctx.language.code()) {
            p { (words.tell("letter-date", &[("day", date(ctx.now).into())])) }
            p { (words.say("letter-what")) }
            @match (seen.visit, seen.span) {
                (Some(visit), _) => {
                    p { (words.tell("letter-visit", &[("at", when::moment(ctx, visit.opened).into())])) }
                }
                (None, Some((from, to))) => {
                    p { (words.tell("letter-span", &[("from", date(from).into()), ("to", date(to).into())])) }
                }
                (None, None) => { p { (words.say("letter-nobody")) } }
            }
            // Only the health authority can say this. It is never filled in by a program.
            p { (words.say("letter-risk")) }
            p class="blank-lines" aria-hidden="true" {}
            p { (words.say("letter-do")) }
            p class="blank-lines" aria-hidden="true" {}
            p { (words.say("letter-ring")) }
            p class="blank-lines" aria-hidden="true" {}
            p { (words.say("letter-changed")) }
            p class="blank-lines" aria-hidden="true" {}
            p { (words.say("letter-sorry")) }
        }
    }
}
