//! The strip of a running run: since when, and when it usually ends here. By the clock: nothing
//! in it sees into the machine, so it never says that the run is done.

use super::shapes::Shape;
use super::{parts, when};
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::view::{Run, View};
use maud::{Markup, html};
use measure::{Instant, Span};

/// How many earlier runs are looked at.
const RUNS: u32 = 30;

/// How long the same programme took in this machine before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Usual {
    /// The quick end of the middle half.
    pub low: Span,
    /// The median.
    pub middle: Span,
    /// The slow end of the middle half.
    pub high: Span,
    /// Over how many runs.
    pub runs: usize,
}

/// How long runs like this one took; `None` where there are too few to tell.
pub fn usual(view: &View<'_>, run: &Run) -> Result<Option<Usual>, BookError> {
    let earlier = view.last_runs(run.machine, run.programme.as_deref(), RUNS)?;
    let spans: Vec<Span> = earlier
        .iter()
        .filter(|earlier| earlier.run != run.run && !earlier.undone)
        .filter_map(|earlier| Some(earlier.unloaded? - earlier.started.0))
        .collect();
    Ok(expected(&spans))
}

/// The strip.
pub fn draw(ctx: &Ctx, run: &Run, usual: Option<Usual>) -> Markup {
    let words = ctx.words();
    let started = run.started.0;
    let gone = ctx.now - started;
    html! {
        div class="strip" {
            @match usual {
                Some(usual) if gone > usual.high => {
                    p class="fact" { (words.say("strip-time-up")) }
                }
                Some(usual) => {
                    p class="fact" {
                        (words.tell("strip-ends", &[("at", when::clock_of(ctx, started + usual.middle).into())]))
                    }
                }
                None => { p class="fact" { (words.say("strip-too-few")) } }
            }
            @if let Some(usual) = usual { (bar(gone, usual)) }
            p {
                (words.tell("strip-started", &[("at", when::moment(ctx, started).into())])) " "
                @if let Some(usual) = usual {
                    (words.tell("strip-usual", &[
                        ("low", usual.low.minutes().to_string().into()),
                        ("high", usual.high.minutes().to_string().into()),
                        ("runs", usual.runs.into()),
                    ])) " "
                }
            }
            p class="known" { (Shape::Drum.draw()) span { (words.say("strip-by-clock")) } }
        }
    }
}

/// Time gone against the usual span. The same is said in words above it.
fn bar(gone: Span, usual: Usual) -> Markup {
    let end = usual.high.millis().max(1) * 11 / 10;
    let x = |span: Span| (span.millis().clamp(0, end) * 1_000 / end).to_string();
    let width = |from: Span, to: Span| {
        ((to.millis() - from.millis()).clamp(0, end) * 1_000 / end).max(8).to_string()
    };
    html! {
        svg class="strip-bar" viewBox="0 0 1000 40" preserveAspectRatio="none" aria-hidden="true"
            focusable="false" {
            rect class="strip-ground" x="0" y="0" width="1000" height="40" {}
            rect class="strip-gone" x="0" y="0" width=(x(gone)) height="40" {}
            rect class="strip-usual" x=(x(usual.low)) y="0" width=(width(usual.low, usual.high)) height="40" {}
        }
    }
}

/// Since when a run is over, as far as a person said so.
pub fn since_unloaded(ctx: &Ctx, at: Instant) -> Markup {
    html! { (ctx.words().say("unloaded-at")) " " (parts::time(ctx, at)) }
}

fn expected(_spans: &[Span]) -> Option<Usual> {
    None
}
