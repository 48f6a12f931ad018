//! Every state once: its shape, its word and its ground. Told without a colour, so that the page can
//! be printed in black and hung up.

use super::frame::{self, Frame, Place};
use super::parts::{self, Ground};
use super::say;
use super::shapes::Shape;
use crate::web::Ctx;
use load::SetState;
use logbook::book::BookError;
use logbook::view::View;
use maud::{Markup, html};
use release::verdict::Outcome;

/// What a record can say.
const OUTCOMES: [Option<Outcome>; 4] =
    [Some(Outcome::Lethal), Some(Outcome::NotLethal), Some(Outcome::CannotTell), None];

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let frame = Frame {
        title: ctx.words().say("legend-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    html! {
        p { (words.say("legend-how")) }
        section class="card fine" {
            h2 { (Shape::Bowl.draw()) span { (words.say("legend-states")) } }
            ul class="legend" {
                @for state in SetState::ALL {
                    li { (Shape::of_state(state).draw()) span { (words.say(say::state_key(state))) } }
                }
            }
        }
        section class="card fine" {
            h2 { (Shape::Plateau.draw()) span { (words.say("legend-records")) } }
            ul class="legend" {
                @for outcome in OUTCOMES {
                    li { (Shape::of_outcome(outcome).draw()) span { (words.say(say::outcome_key(outcome))) } }
                }
            }
        }
        div class="cards" {
            (parts::card(Ground::Fine, Shape::House, &words.say("legend-fine"), &html! {
                p { (words.say("legend-fine-how")) }
            }))
            (parts::card(Ground::Turn, Shape::Hourglass, &words.say("legend-turn"), &html! {
                p { (words.say("legend-turn-how")) }
            }))
            (super::stop::card(ctx, &words.say("legend-stop"), &html! {
                p { (words.say("legend-stop-how")) }
            }))
        }
        p { button type="button" class="key" hidden data-prints="yes" { (words.say("labels-print")) } }
    }
}
