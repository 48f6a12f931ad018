//! Where the numbers come from when there is no verdict yet, or one that cannot tell: a file, or
//! three numbers that a person reads off the display. They are never filled in.

use super::Seen;
use crate::pages::parts::{self, Form};
use crate::pages::shapes::Shape;
use crate::web::Ctx;
use maud::{Markup, html};
use release::verdict::Outcome;

/// The card, where numbers are missing.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let outcome = seen.judged.first().map(|judged| judged.outcome);
    let missing = matches!(outcome, None | Some(Outcome::CannotTell));
    if !missing || seen.run.undone || seen.run.stopped.is_some() {
        return html! {};
    }
    let words = ctx.words();
    html! {
        section class="card turn" {
            h2 { (Shape::Tape.draw()) span { (words.say("numbers-title")) } }
            @if seen.run.record.is_none() { (file(ctx, seen)) }
            (reading(ctx, seen))
        }
    }
}

fn file(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        h3 { (words.say("numbers-file")) }
        (Form::new("take", &seen.run.run.to_string()).draw_for_files(ctx, &html! {
            (parts::hidden("machine", seen.run.machine))
            (parts::hidden("run", seen.run.run))
            p class="field drop" {
                label for="run-file" { (words.say("take-file")) }
                input type="file" id="run-file" name="file" multiple required;
            }
            p { button class="key main-key" { (words.say("take-do")) } }
        }))
    }
}

fn reading(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        h3 { (words.say("numbers-read")) }
        p { (words.say("numbers-read-how")) }
        (Form::new("read-off", &seen.run.run.to_string()).draw(ctx, &html! {
            (parts::hidden("run", seen.run.run))
            (reading_fields(ctx, true))
            (parts::sign_line(ctx, &seen.people, &words.say("read-asks")))
        }))
    }
}

/// Three numbers off the display, never filled in already.
pub fn reading_fields(ctx: &Ctx, required: bool) -> Markup {
    let words = ctx.words();
    html! {
        p class="field" {
            label for="lowest" { (words.say("read-lowest")) }
            input id="lowest" name="lowest" inputmode="decimal" autocomplete="off" required[required] size="6";
            select name="degrees" aria-label=(words.say("read-degrees")) {
                option value="C" { "°C" }
                option value="F" { "°F" }
            }
        }
        fieldset class="field" {
            legend { (words.say("read-held")) }
            label { input name="minutes" inputmode="numeric" autocomplete="off" required[required] size="3"; span { (words.say("minutes")) } }
            label { input name="seconds" inputmode="numeric" autocomplete="off" size="3"; span { (words.say("seconds")) } }
        }
        p class="field" {
            label for="pressure" { (words.say("read-pressure")) }
            input id="pressure" name="pressure" inputmode="decimal" autocomplete="off" size="6";
            select name="unit" aria-label=(words.say("read-unit")) {
                @for (unit, key) in [
                    ("kPa-abs", "unit-kpa-abs"),
                    ("kPa-gauge", "unit-kpa-gauge"),
                    ("bar-abs", "unit-bar-abs"),
                    ("bar-gauge", "unit-bar-gauge"),
                    ("psi-gauge", "unit-psi-gauge"),
                ] {
                    option value=(unit) { (words.say(key)) }
                }
            }
        }
    }
}
