//! The door to the practice book in a salon's own program: what it is, who opens it, where it is.

use super::frame::{self, Frame, Place};
use super::parts::{self, Ground};
use super::shapes::Shape;
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::view::{Person, View};
use maud::{Markup, html};

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// Those who teach.
    pub teachers: Vec<Person>,
    /// Where the practice book is open.
    pub open: Option<String>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, open: Option<String>) -> Result<Markup, BookError> {
    let mut teachers = Vec::new();
    for person in view.people()? {
        if view.roles(person.person)?.teaches {
            teachers.push(person);
        }
    }
    let frame = Frame {
        title: ctx.words().say("practice-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &Seen { teachers, open })))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        p { (words.say("practice-what")) }
        @match &seen.open {
            Some(address) => (parts::card(Ground::Turn, Shape::Envelope, &words.say("practice-open"), &html! {
                p { a class="key main-key" href=(address) { (words.say("practice-go")) } }
                p { (address) }
            })),
            None => (parts::card(Ground::Fine, Shape::Envelope, &words.say("practice-closed"), &html! {
                @if seen.teachers.is_empty() {
                    p class="fact" { (words.say("practice-nobody")) }
                    p class="ways" { (parts::way("/setup", Shape::Tape, &words.say("setup-title"))) }
                } @else {
                    form method="post" action="/practice" {
                        (parts::sign_line(ctx, &seen.teachers, &words.say("practice-asks")))
                    }
                }
            })),
        }
    }
}
