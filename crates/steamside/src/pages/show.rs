//! From here the record is shown to somebody who asks to see it, for a while.

use super::folder::Open;
use super::frame::{self, Frame, Place};
use super::parts;
use super::shapes::Shape;
use super::when;
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::view::View;
use maud::{Markup, html};

/// Where this page lies; the key for it stands under every page.
pub const PATH: &str = "/show";

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// For how many minutes a page stays open.
    pub minutes: u32,
    /// Those that are open now.
    pub open: Vec<Open>,
    /// How this computer is called in the request.
    pub origin: String,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, seen: &Seen) -> Result<Markup, BookError> {
    let frame = Frame {
        title: ctx.words().say("show-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, seen)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        p class="fact" { (words.say("show-how")) }
        p { (words.tell("show-minutes", &[("count", seen.minutes.into())])) }
        form method="post" action=(PATH) {
            p { button class="key main-key" { (Shape::Tape.draw()) span { (words.say("show-do")) } } }
        }
        p { (words.say("show-back")) }
        @if !seen.open.is_empty() {
            (parts::card(parts::Ground::Fine, Shape::Tape, &words.say("show-open"), &html! {
                @for open in &seen.open {
                    @let until = [("at", when::clock_of(ctx, open.until).into())];
                    p { (words.tell("show-address", &until)) }
                    p { a href=(open.path) { (seen.origin) (open.path) } }
                }
                form method="post" action="/show/close" {
                    p { button class="key" { (words.say("show-close")) } }
                }
            }))
        }
    }
}
