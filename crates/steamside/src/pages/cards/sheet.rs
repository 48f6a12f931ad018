//! The answer sheet: what a learner did, act by act, which steps were right, and lines to write
//! the name on and to sign. Printed by the browser on A4 or Letter.

use super::{learner, read, score, title};
use crate::pages::frame::{self, Frame, Place};
use crate::pages::parts;
use crate::pages::say;
use crate::pages::shapes::Shape;
use crate::pages::telling::{self, Names};
use crate::pages::when;
use crate::practice::deal::{Played, find, played};
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::view::{Person, View};
use maud::{Markup, html};
use measure::{ActId, PersonId};

/// Which cards a sheet is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    /// One, by the act that dealt it.
    Card(ActId),
    /// All that a learner has ended.
    Learner(PersonId),
}

/// The page; `None` where there is no such card.
pub fn page(view: &View<'_>, ctx: &Ctx, which: Which) -> Result<Option<Markup>, BookError> {
    let cards = match which {
        Which::Card(dealt) => find(view, dealt)?.into_iter().collect(),
        Which::Learner(learner) => {
            let all = view.cards()?.into_iter();
            let own = all.filter(|card| card.learner == Some(learner) && card.ended.is_some());
            own.map(|card| played(view, card)).collect::<Result<Vec<_>, _>>()?
        }
    };
    if cards.is_empty() {
        return Ok(None);
    }
    let people = view.people()?;
    let mut names = Vec::new();
    for card in &cards {
        names.push(Names::of(view, &card.facts)?);
    }
    let frame = Frame {
        title: ctx.words().say("sheet-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    let cards: Vec<_> = cards.into_iter().zip(names).collect();
    Ok(Some(frame::page(ctx, &frame, &draw(ctx, &people, &cards))))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, people: &[Person], cards: &[(Played, Names)]) -> Markup {
    let words = ctx.words();
    html! {
        p class="ways" {
            button type="button" class="key main-key" hidden data-prints="yes" { (words.say("sheet-print")) }
            (parts::way("/cards", Shape::Envelope, &words.say("cards-title")))
        }
        @for (card, names) in cards { (one(ctx, people, card, names)) }
    }
}

fn one(ctx: &Ctx, people: &[Person], played: &Played, names: &Names) -> Markup {
    let words = ctx.words();
    html! {
        section class="card fine answer" {
            p class="to-write" { span { (words.say("sheet-name")) } span class="line" {} }
            h2 { span { (words.say("sheet-title")) ": " (title(ctx, &played.dealt)) } }
            p class="fact" { (read(ctx, played)) }
            p class="facts" {
                span { (words.say("sheet-sign")) " " strong { (learner(ctx, people, played.dealt.learner)) } }
                span {
                    (words.say("cards-dealt")) " " (when::day_of(ctx, played.dealt.stamp.happened)) ", "
                    (parts::time(ctx, played.dealt.stamp.happened))
                }
                @if let Some(end) = played.dealt.ended {
                    span { (words.say("sheet-ended")) " " (parts::time(ctx, end.stamp.happened)) }
                }
            }
            h3 { (words.say("sheet-acts")) }
            (acts(ctx, played, names))
            h3 { (words.say("sheet-steps")) }
            @match played.dealt.ended {
                // Until it ends nothing is said of what was right.
                None => p { (words.say("sheet-open")) },
                Some(end) => {
                    (steps(ctx, played))
                    p class="fact" { (score(ctx, end.right, end.asked)) }
                }
            }
            p class="to-write" { span { (words.say("sheet-teacher")) } span class="line" {} }
        }
    }
}

fn acts(ctx: &Ctx, played: &Played, names: &Names) -> Markup {
    let words = ctx.words();
    html! {
        @if played.facts.is_empty() {
            p { (words.say("sheet-nothing")) }
        } @else {
            ol class="answer-acts" {
                @for fact in &played.facts {
                    li {
                        (parts::time(ctx, fact.stamp.happened)) " "
                        strong { (telling::line(ctx, names, fact)) } " "
                        span class="known" { (words.say(say::known_key(fact.stamp.known))) }
                    }
                }
            }
        }
    }
}

/// Sign and word say what was right; of a wrong one stands why it matters.
fn steps(ctx: &Ctx, played: &Played) -> Markup {
    let words = ctx.words();
    html! {
        ul class="answer-steps" {
            @for step in &played.steps {
                @let (sign, said) = if step.right { ("✓", "step-right") } else { ("✗", "step-wrong") };
                li {
                    span class="sign-of" aria-hidden="true" { (sign) }
                    span {
                        strong { (words.say(said)) ": " } (words.say(step.key))
                        @if !step.right { br; (words.say(&format!("{}.why", step.key))) }
                    }
                }
            }
        }
    }
}
