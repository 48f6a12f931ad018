//! The three looks. All good is one tap on a sign; "one not" asks which; set aside is always one
//! tap, without a sign and without a reason. The first answer to "dry?" stands.

use super::Seen;
use crate::acts;
use crate::pages::parts::{self, Caution, Form, Ground};
use crate::pages::shapes::Shape;
use crate::pages::strip::Hot;
use crate::pages::when;
use crate::web::Ctx;
use load::SetState;
use logbook::view::Pouch;
use maud::{Markup, html};
use release::verdict::Outcome;

/// The card, while there is anything to look at; the way to the safer side as long as there is
/// anything that could still be used.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let waiting: Vec<&Pouch> =
        seen.pouches.iter().filter(|pouch| pouch.state == SetState::ToCheck).collect();
    let judged = seen.judged.first();
    let outcome = judged.map(|judged| judged.outcome);
    let carried = judged.is_some_and(|judged| judged.proven_for.contains(&seen.run.contents));
    let about =
        seen.pouches.iter().any(|pouch| pouch.state == SetState::ToCheck || pouch.state.usable());
    let why = match outcome {
        Some(Outcome::NotLethal) => "numbers",
        Some(Outcome::CannotTell) => "cannot-tell",
        _ => "not-sure",
    };
    html! {
        @if waiting.is_empty() {
        } @else if outcome == Some(Outcome::Lethal) && carried {
            @match seen.hot {
                Some(hot) => (cooling(ctx, hot, &looks(ctx, seen, &waiting))),
                None => (looks(ctx, seen, &waiting)),
            }
        } @else if outcome.is_some() {
            (no_release(ctx, outcome))
        }
        @if about { (set_aside(ctx, seen, why)) }
    }
}

/// Hot still: the looks wait. Where only a typical figure says so, whoever stands there knows
/// better.
fn cooling(ctx: &Ctx, hot: Hot, looks: &Markup) -> Markup {
    let words = ctx.words();
    let heading = words.tell("hot-until", &[("at", when::clock_of(ctx, hot.until).into())]);
    html! {
        (parts::card(Ground::Turn, Shape::Hot, &heading, &html! {
            p { (words.say("hot-then")) }
            (parts::cautions(ctx, &[Caution::Hot]))
        }))
        @if !hot.said {
            details { summary { (words.say("hot-cool")) } (looks) }
        }
    }
}

fn looks(ctx: &Ctx, seen: &Seen, waiting: &[&Pouch]) -> Markup {
    let words = ctx.words();
    let run = seen.run.run.to_string();
    // One was wet before: all others are looked at again.
    let inner = seen.judged.first().is_some_and(acts::rests_on_reading);
    let again = seen.pouches.iter().any(|pouch| pouch.state == SetState::SetAside);
    html! {
        section class="card turn looks" {
            h2 {
                (Shape::Hourglass.draw())
                span { (words.tell("looks-title", &[("count", waiting.len().into())])) }
            }
            @if again { p class="fact" { (words.say("looks-again")) } }
            ol class="looks-three" {
                li {
                    h3 { (words.say("look-numbers")) }
                    p class="fact" { (Shape::Plateau.draw()) (words.say("look-numbers-yes")) }
                }
                li {
                    h3 { (words.say("look-marks")) }
                    p { (words.say("look-marks-how")) }
                    (marks_not(ctx, seen, waiting, &run))
                }
                li {
                    h3 { (words.say("look-dry")) }
                    p { (words.say("look-dry-how")) }
                    (dry_not(ctx, seen, waiting, &run))
                }
                @if inner {
                    li {
                        h3 { (words.say("look-inner")) }
                        p { (words.say("look-inner-how")) }
                        (inner_not(ctx, seen, &run))
                    }
                }
            }
            (Form::new("look", &format!("all-{run}")).draw(ctx, &html! {
                (parts::hidden("run", &run))
                (parts::hidden("marks", "all"))
                @if inner { (parts::hidden("inner", "yes")) }
                (parts::hidden("dry", "all"))
                @if seen.count { (count_field(ctx)) }
                (parts::sign_line(ctx, &seen.people, &words.say("looks-asks")))
            }))
        }
    }
}

/// How many are there? It cannot be answered from a desk.
fn count_field(ctx: &Ctx) -> Markup {
    html! {
        p class="field" {
            label for="counted" { (ctx.words().say("look-count")) }
            input type="number" id="counted" name="counted" min="1" max="999" inputmode="numeric"
                autocomplete="off" required;
        }
    }
}

/// A verdict on numbers that a person read wants an inner mark as well.
fn inner_not(ctx: &Ctx, seen: &Seen, run: &str) -> Markup {
    let words = ctx.words();
    html! {
        details class="one-not" {
            summary { (Shape::Palm.draw()) span { (words.say("inner-not")) } }
            (Form::new("look", &format!("inner-{run}")).draw(ctx, &html! {
                (parts::hidden("run", run))
                (parts::hidden("inner", "no"))
                p { (words.say("marks-reach")) }
                (parts::sign_line(ctx, &seen.people, &words.say("one-not-asks")))
            }))
        }
    }
}

fn marks_not(ctx: &Ctx, seen: &Seen, waiting: &[&Pouch], run: &str) -> Markup {
    let words = ctx.words();
    html! {
        details class="one-not" {
            summary { (Shape::Palm.draw()) span { (words.say("one-not")) } }
            (Form::new("look", &format!("marks-{run}")).draw(ctx, &html! {
                (parts::hidden("run", run))
                (parts::hidden("marks", "not"))
                fieldset class="pouches" {
                    legend { (words.say("which-marks")) }
                    @for pouch in waiting {
                        label class="pouch-box" {
                            input type="checkbox" name="mark" value=(pouch.pouch);
                            span class="code" { (pouch.code) }
                        }
                    }
                }
                p { (words.say("marks-reach")) }
                (parts::sign_line(ctx, &seen.people, &words.say("one-not-asks")))
            }))
        }
    }
}

fn dry_not(ctx: &Ctx, seen: &Seen, waiting: &[&Pouch], run: &str) -> Markup {
    let words = ctx.words();
    html! {
        details class="one-not" {
            summary { (Shape::Palm.draw()) span { (words.say("one-not")) } }
            (Form::new("look", &format!("dry-{run}")).draw(ctx, &html! {
                (parts::hidden("run", run))
                (parts::hidden("dry", "not"))
                p class="fact" { (words.say("which-dry")) }
                @for pouch in waiting {
                    fieldset class="pouch-row" {
                        legend class="code" { (pouch.code) }
                        @for (name, key) in [("wet", "stop-wet"), ("torn", "stop-torn"), ("dropped", "stop-dropped")] {
                            label {
                                input type="checkbox" name=(name) value=(pouch.pouch);
                                span { (words.say(key)) }
                            }
                        }
                    }
                }
                p { (words.say("dry-reach")) }
                (parts::sign_line(ctx, &seen.people, &words.say("one-not-asks")))
            }))
        }
    }
}

/// No release on these numbers; what helps instead.
fn no_release(ctx: &Ctx, outcome: Option<Outcome>) -> Markup {
    let words = ctx.words();
    let (title, what) = match outcome {
        Some(Outcome::CannotTell) => ("no-release-cannot-tell", "no-release-cannot-tell-do"),
        Some(Outcome::Lethal) => ("no-release-not-carried", "no-release-do"),
        _ => ("no-release-did-not", "no-release-do"),
    };
    html! {
        section class="card turn" {
            h2 { (Shape::Palm.draw()) span { (words.say(title)) } }
            p class="fact" { (words.say(what)) }
        }
    }
}

/// The safer side: open to everyone, one tap.
pub fn set_aside(ctx: &Ctx, seen: &Seen, why: &str) -> Markup {
    let words = ctx.words();
    Form::new("set-aside", &seen.run.run.to_string()).draw(
        ctx,
        &html! {
            (parts::hidden("run", seen.run.run))
            (parts::hidden("why", why))
            div class="not-sure" {
                p { (words.say("not-sure")) }
                button class="key main-key stop-key" {
                    (Shape::Palm.draw()) span { (words.say("set-aside-run")) }
                }
            }
        },
    )
}
