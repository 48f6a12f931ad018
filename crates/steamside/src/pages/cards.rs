//! The cards of a practice book: its clock, the cards that are open, twelve to deal, those that
//! ended. And the sheet that can be printed of what a learner did.

mod sheet;

#[cfg(test)]
pub use sheet::draw as draw_sheet;
pub use sheet::{Which, page as sheet_page};

use super::frame::{self, Frame, Place};
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::when;
use crate::practice::cards::Card;
use crate::practice::checks::DISPLAY;
use crate::practice::deal::{Played, played};
use crate::web::Ctx;
use crate::words::Arg;
use logbook::book::BookError;
use logbook::view::{Card as Dealt, Person, View};
use maud::{Markup, html};
use measure::PersonId;

/// Paces that have a key.
const PACES: [u32; 3] = [1, 10, 30];
/// Minutes by which one key puts the clock on.
const LATER_MIN: u32 = 30;

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// All signs.
    pub people: Vec<Person>,
    /// Cards that are open, the newest first.
    pub open: Vec<Played>,
    /// Cards that ended, the newest first.
    pub ended: Vec<Dealt>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let (ended, open): (Vec<Dealt>, Vec<Dealt>) =
        view.cards()?.into_iter().rev().partition(|card| card.ended.is_some());
    let open = open.into_iter().map(|card| played(view, card)).collect::<Result<_, _>>()?;
    let seen = Seen { people: view.people()?, open, ended };
    let frame = Frame {
        title: ctx.words().say("cards-title"),
        place: Place::Log,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        p { (words.say("cards-how")) }
        @for played in &seen.open { (open(ctx, seen, played)) }
        (clock(ctx))
        (deal(ctx, &seen.people))
        @if !seen.ended.is_empty() { (ended(ctx, seen)) }
    }
}

fn clock(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    let times = ctx.pace.times();
    parts::card(
        Ground::Fine,
        Shape::Hourglass,
        &words.say("cards-clock"),
        &html! {
            p class="fact" {
                (words.tell("cards-clock-shows", &[
                    ("at", when::moment(ctx, ctx.now).into()),
                    ("times", times.to_string().into()),
                ]))
            }
            (Form::new("practice-clock", "times").draw(ctx, &html! {
                div class="tabs" {
                    @for pace in PACES {
                        button class="key" name="times" value=(pace)
                            aria-pressed=(if pace == times { "true" } else { "false" }) {
                            (words.tell("cards-times", &[("times", pace.to_string().into())]))
                        }
                    }
                }
            }))
            (Form::new("practice-clock", "later").draw(ctx, &html! {
                (parts::hidden("later", LATER_MIN))
                div class="tabs" { button class="key" { (words.say("cards-later")) } }
            }))
            p { (words.say("cards-clock-how")) }
        },
    )
}

/// What a learner is called: by the sign, or that it is for all.
fn learner(ctx: &Ctx, people: &[Person], learner: Option<PersonId>) -> String {
    let Some(learner) = learner else { return ctx.words().say("cards-everyone") };
    let known = people.iter().find(|person| person.person == learner);
    known.and_then(|person| person.sign.clone()).unwrap_or_else(|| ctx.words().say("sign-gone"))
}

/// Its title, of a card of a newer program its word.
fn title(ctx: &Ctx, card: &Dealt) -> String {
    match card.card.parse::<Card>() {
        Ok(known) => ctx.words().say(known.key()),
        Err(_) => card.card.clone(),
    }
}

/// What the learner reads.
fn read(ctx: &Ctx, played: &Played) -> String {
    let Some(card) = played.card else { return String::new() };
    let code = |at: usize| played.odd.get(at).map(|(_, code)| code.to_string()).unwrap_or_default();
    let (lowest_mc, held_s, kpa) = DISPLAY;
    let args: [(&str, Arg); 6] = [
        ("code", code(0).into()),
        ("other", code(1).into()),
        ("machine", played.machine.map(|number| number.to_string()).unwrap_or_default().into()),
        ("lowest", when::tenths(lowest_mc).into()),
        ("held", when::length(held_s * 1_000).into()),
        ("kpa", kpa.to_string().into()),
    ];
    ctx.words().tell(&format!("{}.read", card.key()), &args)
}

fn open(ctx: &Ctx, seen: &Seen, played: &Played) -> Markup {
    let words = ctx.words();
    let dealt = played.dealt.dealt.to_string();
    let then = format!("/cards/sheet?card={dealt}");
    parts::card(
        Ground::Turn,
        Shape::Hourglass,
        &title(ctx, &played.dealt),
        &html! {
            p class="signed" { (learner(ctx, &seen.people, played.dealt.learner)) }
            p class="fact" { (read(ctx, played)) }
            p { (words.say("cards-dealt")) " " (parts::time(ctx, played.dealt.stamp.happened)) }
            details {
                summary { (words.say("cards-asked")) }
                ol { @for step in &played.steps { li { (words.say(step.key)) } } }
            }
            (Form { act: "card-end", on: &dealt, then: Some(&then) }.draw(ctx, &html! {
                (parts::hidden("dealt", &dealt))
                p { button class="key main-key" { (words.say("cards-end")) } }
            }))
        },
    )
}

fn deal(ctx: &Ctx, people: &[Person]) -> Markup {
    let words = ctx.words();
    let last = people.iter().rposition(|person| Some(person.person) == ctx.sign);
    let chosen = last.unwrap_or(usize::from(people.len() > 1));
    parts::card(
        Ground::Fine,
        Shape::Envelope,
        &words.say("cards-deal"),
        &Form::new("card-deal", "").draw(
            ctx,
            &html! {
                fieldset class="choices" {
                    legend { (words.say("cards-learner")) }
                    @for (at, person) in people.iter().enumerate() {
                        label {
                            input type="radio" name="learner" value=(person.person) checked[at == chosen];
                            span { (person.sign.clone().unwrap_or_else(|| words.say("sign-gone"))) }
                        }
                    }
                }
                div class="tabs cards-twelve" {
                    @for (number, card) in (1..).zip(Card::ALL) {
                        button class="key" name="card" value=(card.word()) { (number) " · " (words.say(card.key())) }
                    }
                }
            },
        ),
    )
}

fn ended(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let mut learners: Vec<PersonId> = seen.ended.iter().filter_map(|card| card.learner).collect();
    learners.sort();
    learners.dedup();
    parts::card(
        Ground::Fine,
        Shape::Tape,
        &words.say("cards-ended"),
        &html! {
            ul {
                @for card in &seen.ended {
                    @if let Some(end) = card.ended {
                        li {
                            a class="key" href=(format!("/cards/sheet?card={}", card.dealt)) {
                                (title(ctx, card)) ", " (learner(ctx, &seen.people, card.learner)) ": "
                                (score(ctx, end.right, end.asked))
                            }
                        }
                    }
                }
            }
            p class="ways" {
                @for person in learners {
                    a class="key" href=(format!("/cards/sheet?learner={person}")) {
                        (words.tell("cards-all-of", &[("sign", learner(ctx, &seen.people, Some(person)).into())]))
                    }
                }
            }
        },
    )
}

fn score(ctx: &Ctx, right: u32, asked: u32) -> String {
    let args = [("right", right.to_string().into()), ("asked", asked.to_string().into())];
    ctx.words().tell("cards-score", &args)
}
