//! The strip of a running run: since when, and when it usually ends here. By the clock: nothing
//! in it sees into the machine, so it never says that the run is done.

use super::shapes::Shape;
use super::{parts, when};
use crate::web::Ctx;
use day::{Expected, expected_end};
use logbook::book::BookError;
use logbook::view::{Run, View};
use maud::{Markup, html};
use measure::{Instant, Span};

/// How many earlier runs are looked at.
const RUNS: u32 = 30;

/// When the run should be over, by how long runs like it took here; `None` where there are too
/// few to tell.
pub fn usual(view: &View<'_>, run: &Run) -> Result<Option<Expected>, BookError> {
    let earlier = view.last_runs(run.machine, run.programme.as_deref(), RUNS)?;
    let lengths: Vec<Span> = earlier
        .iter()
        .filter(|earlier| earlier.run != run.run && !earlier.undone)
        .filter_map(|earlier| Some(earlier.unloaded? - earlier.started.0))
        .collect();
    Ok(expected_end(run.started.0, &lengths))
}

/// The strip.
pub fn draw(ctx: &Ctx, run: &Run, usual: Option<Expected>) -> Markup {
    let words = ctx.words();
    let started = run.started.0;
    html! {
        div class="strip" {
            @match usual {
                Some(usual) if ctx.now > usual.latest => {
                    p class="fact" { (words.say("strip-time-up")) }
                }
                Some(usual) => {
                    p class="fact" {
                        (words.tell("strip-ends", &[("at", when::clock_of(ctx, usual.median).into())]))
                    }
                }
                None => { p class="fact" { (words.say("strip-too-few")) } }
            }
            @if let Some(usual) = usual { (bar(ctx.now - started, started, usual)) }
            p {
                (words.tell("strip-started", &[("at", when::moment(ctx, started).into())])) " "
                @if let Some(usual) = usual {
                    (words.tell("strip-usual", &[
                        ("low", (usual.earliest - started).minutes().to_string().into()),
                        ("high", (usual.latest - started).minutes().to_string().into()),
                        ("runs", usual.from.into()),
                    ]))
                }
            }
            p class="known" { (Shape::Drum.draw()) span { (words.say("strip-by-clock")) } }
        }
    }
}

/// Time gone against the usual span. The same is said in words above it.
fn bar(gone: Span, started: Instant, usual: Expected) -> Markup {
    let (low, high) = (usual.earliest - started, usual.latest - started);
    let end = (high.millis() * 11 / 10).max(1);
    let x = |span: Span| span.millis().clamp(0, end) * 1_000 / end;
    html! {
        svg class="strip-bar" viewBox="0 0 1000 40" preserveAspectRatio="none" aria-hidden="true"
            focusable="false" {
            rect class="strip-ground" x="0" y="0" width="1000" height="40" {}
            rect class="strip-gone" x="0" y="0" width=(x(gone)) height="40" {}
            rect class="strip-usual" x=(x(low)) y="4" width=((x(high) - x(low)).max(8)) height="32" {}
        }
    }
}

/// Since when a run is over, as far as a person said so.
pub fn since_unloaded(ctx: &Ctx, at: Instant) -> Markup {
    html! { (ctx.words().say("unloaded-at")) " " (parts::time(ctx, at)) }
}
