//! The way on after a spore test in which spores grew: counts first, then the steps in order.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::{spores, stop, when};
use crate::acts;
use crate::recalling::{self, Failed, Reached};
use crate::web::Ctx;
use load::SetState;
use logbook::book::BookError;
use logbook::view::{Machine, Person, View};
use maud::{Markup, html};
use measure::TestId;
use release::spores::{Next, Says, letters_open};

/// What the page shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The failed test and what comes next.
    pub failed: Failed,
    /// Its machine.
    pub machine: Machine,
    /// Its programmes, the one of the failed run first.
    pub programme: Option<String>,
    /// What a recall reaches.
    pub reached: Reached,
    /// Ready pouches that it does not reach.
    pub usable: usize,
    /// Pouches that the freeze holds.
    pub frozen: usize,
    /// Who may sign.
    pub people: Vec<Person>,
}

/// The page; `None` where no spores grew in this test.
pub fn page(view: &View<'_>, ctx: &Ctx, test: TestId) -> Result<Option<Markup>, BookError> {
    let Some(seen) = seen(view, ctx, test)? else { return Ok(None) };
    let frame = Frame {
        title: ctx.words().say("spore-path"),
        place: Place::Log,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    Ok(Some(frame::page(ctx, &frame, &draw(ctx, &seen))))
}

fn seen(view: &View<'_>, ctx: &Ctx, test: TestId) -> Result<Option<Seen>, BookError> {
    let Some(test) = view.spore_test(test)? else { return Ok(None) };
    let Some(failed) = recalling::failed(view, &test)? else { return Ok(None) };
    let Some(machine) = view.machine(test.machine)? else { return Ok(None) };
    let to = machine.out_since.unwrap_or(ctx.now);
    let reached = recalling::since_last_good(view, test.machine, failed.since, to)?;
    let run = test.run.map(|run| view.run(run)).transpose()?.flatten();
    Ok(Some(Seen {
        programme: run.and_then(|run| run.programme),
        usable: view.pouches_in(&[SetState::Ready])?.len(),
        frozen: acts::frozen(view, test.machine)?.len(),
        people: view.people()?,
        failed,
        machine,
        reached,
    }))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let number = seen.machine.number.to_string();
    let heading = words.tell("machine-name", &[("machine", number.into())]);
    let count = |key: &str, count: usize| words.tell(key, &[("count", count.into())]);
    html! {
        (stop::card(ctx, &heading, &html! {
            p class="fact" { (words.say("spores-says-grew")) }
            ul class="counts" {
                li { (count("spore-usable", seen.usable)) }
                li { (count("spore-frozen", seen.frozen)) }
                li { (count("spore-visits", seen.reached.reach.visits().len())) }
                li { (words.say("spore-single-use")) }
                li { (words.say("spore-lawful")) }
            }
        }))
        ol class="steps" {
            li { (done(seen.machine.out_since.is_some() || seen.failed.next == Next::MayGoBack)) (words.say("spore-step-out")) }
            li { (done(true)) (words.say("spore-step-freeze")) }
            li { (repeat(ctx, seen)) }
            li {
                (words.say("spore-step-look"))
                p class="ways" {
                    (parts::way(&format!("/recall?test={}", seen.failed.test.test), Shape::Tape, &words.say("go-recall")))
                }
            }
            li { (back(ctx, seen)) }
            li { (letters(ctx, seen)) }
        }
        p class="fact" { (words.say("recall-authority")) }
    }
}

/// Done or not, by shape and by word for those who hear the page.
fn done(done: bool) -> Markup {
    html! { span class="tick" aria-hidden="true" { (if done { "✓" } else { "○" }) } " " }
}

fn repeat(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let test = seen.failed.test.test;
    let open = matches!(seen.failed.next, Next::Repeat | Next::Stays { .. });
    html! {
        (done(!open)) (words.say("spore-step-repeat"))
        @match seen.failed.next {
            Next::Wait => { p { (words.say("spore-wait")) } p { a class="key" href="/spores" { (words.say("spores-title")) } } }
            Next::Stays { missing } => { p class="amber" { (words.tell("spore-stays", &[("count", missing.into())])) } }
            Next::Repeat | Next::MayGoBack => {}
        }
        @if open && seen.machine.running.is_none() {
            (parts::card(Ground::Turn, Shape::Drum, &words.say("spore-start"), &html! {
                p { (words.say("spore-start-how")) }
                (Form::new("spore-start", &test.to_string()).draw(ctx, &html! {
                    (parts::hidden("test", test))
                    (parts::hidden("control", "yes"))
                    @if let Some(programme) = &seen.programme { (parts::hidden("programme", programme)) }
                    (parts::sign_line(ctx, &seen.people, &words.say("spore-start-asks")))
                }))
            }))
        }
    }
}

fn back(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let test = seen.failed.test.test;
    let over = seen.failed.test.unfrozen;
    html! {
        (done(over.is_some())) (words.say("spore-step-back"))
        @match (over, seen.failed.next) {
            (Some(at), _) => { p { (words.tell("spore-back-at", &[("at", when::moment(ctx, at).into())])) } }
            (None, Next::MayGoBack) => {
                (parts::card(Ground::Turn, Shape::House, &words.say("spore-back"), &html! {
                    p { (words.say("spore-back-how")) }
                    (Form::new("spore-back", &test.to_string()).draw(ctx, &html! {
                        (parts::hidden("test", test))
                        (parts::sign_line(ctx, &seen.people, &words.say("spore-back-asks")))
                    }))
                }))
            }
            _ => {}
        }
        @let later = seen.failed.all.iter().skip_while(|other| other.test != test).skip(1);
        ul class="reasons" {
            @for other in later {
                li {
                    (when::moment(ctx, other.placed.happened)) ": "
                    (words.say(spores::says_key(other.says())))
                    @if other.says() == Says::Waiting { " (" a href="/spores" { (words.say("spores-title")) } ")" }
                }
            }
        }
    }
}

fn letters(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let test = seen.failed.test.test;
    html! {
        (words.say("spore-step-letters"))
        @if letters_open(seen.failed.next, false) {
            p class="ways" { (parts::way(&format!("/letter?test={test}"), Shape::Tape, &words.say("letter-title"))) }
        } @else {
            details {
                summary { (words.say("spore-letters-asked")) }
                p class="ways" {
                    (parts::way(&format!("/letter?test={test}&asked=yes"), Shape::Tape, &words.say("letter-title")))
                }
            }
        }
    }
}
