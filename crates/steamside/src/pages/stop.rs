//! A pouch that must not be used, over the whole screen: dark ground, palm, two words.

use super::frame;
use super::shapes::{self, Shape};
use super::{chair, parts, say, telling};
use crate::web::Ctx;
use load::SetState;
use logbook::view::Pouch;
use maud::{DOCTYPE, Markup, html};

/// What is known about a pouch that must not be used.
#[derive(Debug, Clone, Copy)]
pub struct Stop<'a> {
    /// The pouch; `None`: this book does not know the code.
    pub pouch: Option<&'a Pouch>,
    /// The code as it was typed.
    pub code: &'a str,
    /// Machine number and number of its run.
    pub run: Option<(u32, u32)>,
    /// The chair where it was asked for.
    pub chair: Option<u32>,
}

/// The page.
pub fn page(ctx: &Ctx, stop: &Stop<'_>) -> Markup {
    let words = ctx.words();
    let (why, what_to_do) = reason(ctx, stop);
    let back = chair::back(stop.chair);
    html! {
        (DOCTYPE)
        html lang=(ctx.language.code()) class=[frame::book_class(ctx)] {
            (frame::head(ctx, &words.say("do-not-use")))
            body class="sink full-stop" data-buzz="yes" {
                (shapes::sheet())
                main id="work" data-kind=[frame::book_word(ctx)] {
                    @if let Some(word) = frame::book_word(ctx) { p class="book-kind" { (word) } }
                    // Focus goes to the two words, also where there is no script.
                    div role="alert" aria-live="assertive" {
                        (Shape::Palm.draw())
                        h1 tabindex="-1" autofocus { (words.say("do-not-use")) }
                        p class="code" { (stop.code) }
                        p class="fact" { (why) }
                        @if let Some((machine, run)) = stop.run {
                            p { (telling::run_name(ctx, machine, run)) }
                        }
                        p class="fact" { (what_to_do) }
                    }
                    (ways(ctx, stop))
                }
                (chair::scanner(&back))
            }
        }
    }
}

/// Where to go from here. None of it lets the pouch be used.
fn ways(ctx: &Ctx, stop: &Stop<'_>) -> Markup {
    let words = ctx.words();
    let back = chair::back(stop.chair);
    let Some(pouch) = stop.pouch else {
        // The first choice is the safe one; the others say what to do with such a pouch.
        return html! {
            p { a class="key main-key" href=(back) { (words.say("unknown-aside")) } }
            details {
                summary { (words.say("unknown-salon")) }
                p { (words.say("unknown-salon-do")) }
            }
            details {
                summary { (words.say("unknown-roll")) }
                p { (words.say("unknown-roll-do")) }
            }
        };
    };
    let spare = chair::another(stop.chair, Some(pouch.pouch));
    html! {
        p { a class="key main-key" href=(back) { (words.say("stop-another")) } }
        p { a class="key" href=(spare) { (words.say("stop-spare")) } }
    }
}

/// Why, and what to do with it.
pub fn reason(ctx: &Ctx, stop: &Stop<'_>) -> (String, String) {
    let words = ctx.words();
    let Some(pouch) = stop.pouch else {
        return (words.say("stop-unknown"), words.say("stop-unknown-do"));
    };
    let aside = words.say("stop-do-aside");
    if let Some(why) = pouch.stopped {
        return (words.say(say::stop_key(why)), aside);
    }
    match pouch.state {
        SetState::Opened => {
            let at = pouch.opened.map(|(at, _, _)| super::when::moment(ctx, at));
            let at = at.unwrap_or_else(|| words.say("not-known"));
            (words.tell("stop-opened", &[("at", at.into())]), words.say("stop-do-used"))
        }
        SetState::UseNow => (words.say("stop-too-late"), words.say("stop-do-used")),
        SetState::Bagged => (words.say("stop-bagged"), words.say("stop-do-start")),
        SetState::InMachine | SetState::ToCheck => {
            (words.say("stop-to-check"), words.say("stop-do-check"))
        }
        SetState::Retired | SetState::Used => (words.say("stop-apart"), words.say("stop-do-used")),
        state => (words.say(say::state_key(state)), aside),
    }
}

/// The same thing as a card on an ordinary page.
pub fn card(ctx: &Ctx, heading: &str, inside: &Markup) -> Markup {
    parts::card(
        parts::Ground::Stop,
        Shape::Palm,
        heading,
        &html! {
            p class="stop-word" { (ctx.words().say("do-not-use")) }
            (inside)
        },
    )
}
