//! The share of days on which nobody waits, drawn against the number of sets.

use super::Curve;
use crate::planning::explain::kind_word;
use crate::web::Ctx;
use day::sets::Point;
use maud::{Markup, html};

const LEFT: f64 = 90.0;
const TOP: f64 = 20.0;
const WIDE: f64 = 520.0;
const HIGH: f64 = 240.0;

/// Down the paper for a share.
fn y(share: f64) -> f64 {
    TOP + HIGH * (1.0 - share)
}

/// Along the paper for the point number `i` of `count`.
fn x(i: usize, count: usize) -> f64 {
    LEFT + WIDE * (i as f64 + 0.5) / count.max(1) as f64
}

/// The points with their intervals, and the same in words for who does not see it.
pub fn draw(ctx: &Ctx, curve: &Curve) -> Markup {
    let words = ctx.words();
    let kind = kind_word(words, &curve.kind);
    let count = curve.points.len();
    let title = words.tell("own-plot", &[("kind", kind.as_str().into())]);
    html! {
        svg class="shares" viewBox="0 0 640 330" role="img" aria-label=(title) {
            @for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
                path class="t-line" d=(format!("M{LEFT} {:.1}h{WIDE}", y(share))) {}
                text class="t-text" x="80" y=(format!("{:.1}", y(share))) text-anchor="end"
                    dominant-baseline="middle" { (format!("{:.0}", 100.0 * share)) }
            }
            @for (i, point) in curve.points.iter().enumerate() {
                (mark(point, x(i, count), point.owned == curve.now.owned))
            }
            text class="t-text" x=(LEFT + WIDE / 2.0) y="322" text-anchor="middle" { (words.say("own-axis")) }
        }
        details {
            summary { (words.say("own-numbers")) }
            ul { @for point in &curve.points { li { (words.tell("own-now", &super::of_100(point))) } } }
        }
    }
}

/// A dot with its interval, and its number below; what is owned has a ring and a bold number.
fn mark(point: &Point, x: f64, owned: bool) -> Markup {
    let share = point.tally.share();
    let at = format!("{x:.1}");
    let (low, high) = (y(share.low), y(share.high));
    html! {
        path class="s-range" d=(format!(
            "M{x:.1} {low:.1}V{high:.1}M{:.1} {low:.1}h12M{:.1} {high:.1}h12", x - 6.0, x - 6.0
        )) {}
        circle class="s-dot" cx=(at) cy=(format!("{:.1}", y(share.share))) r="6" {}
        @if owned {
            circle class="s-owned" cx=(at) cy=(format!("{:.1}", y(share.share))) r="13" {}
        }
        text class=(if owned { "t-number" } else { "t-text" }) x=(at) y="288" text-anchor="middle" {
            (point.owned)
        }
    }
}
