//! The numbers and the looks of one run, as the paper has them.

use super::{AT, day_and_time};
use crate::pages::parts::{self, Form, Ground};
use crate::pages::run::reading_fields;
use crate::pages::shapes::Shape;
use crate::pages::telling;
use crate::web::Ctx;
use logbook::view::{Person, Pouch, Run};
use maud::{Markup, html};

/// The card.
pub fn draw(ctx: &Ctx, run: &Run, pouches: &[Pouch], people: &[Person]) -> Markup {
    let words = ctx.words();
    let name = telling::run_name(ctx, run.machine_number, run.number);
    let id = run.run.to_string();
    let form = Form { then: Some("/later"), ..Form::new("later-look", &id) };
    html! {
        (parts::card(Ground::Turn, Shape::Hourglass, &name, &form.draw(ctx, &html! {
            p { (words.say("later-look-how")) }
            (parts::hidden("run", &id))
            (day_and_time(ctx, "look", &AT))
            @if run.outcome.is_none() { (reading_fields(ctx, false)) }
            (answer(ctx, "marks", ("look-marks", "later-all-turned")))
            (which(ctx, &[("mark", "stop-mark")], pouches))
            @if run.outcome.is_none() {
                fieldset class="choices" {
                    legend { (words.say("look-inner")) }
                    label { input type="radio" name="inner" value="yes"; span { (words.say("later-inner-yes")) } }
                    label { input type="radio" name="inner" value="no"; span { (words.say("inner-not")) } }
                }
            }
            (answer(ctx, "dry", ("look-dry", "later-all-dry")))
            (which(ctx, &[("wet", "stop-wet"), ("torn", "stop-torn"), ("dropped", "stop-dropped")], pouches))
            p class="field" {
                label for="later-counted" { (words.say("later-counted")) }
                input type="number" inputmode="numeric" id="later-counted" name="counted" min="0" max="200";
            }
            (parts::sign_line(ctx, people, &words.say("later-asks")))
        })))
        p class="ways" { (parts::way("/later", Shape::Tape, &words.say("back"))) }
    }
}

/// All, or one not.
fn answer(ctx: &Ctx, name: &str, (legend, all): (&str, &str)) -> Markup {
    let words = ctx.words();
    html! {
        fieldset class="choices" {
            legend { (words.say(legend)) }
            label { input type="radio" name=(name) value="all"; span { (words.say(all)) } }
            label { input type="radio" name=(name) value="not"; span { (words.say("one-not")) } }
        }
    }
}

/// Which pouch was not.
fn which(ctx: &Ctx, reasons: &[(&str, &str)], pouches: &[Pouch]) -> Markup {
    let words = ctx.words();
    html! {
        details {
            summary { (words.say("later-which")) }
            @for pouch in pouches {
                fieldset class="pouch-row" {
                    legend class="code" { (pouch.code) }
                    @for (name, key) in reasons {
                        label {
                            input type="checkbox" name=(name) value=(pouch.pouch);
                            span { (words.say(key)) }
                        }
                    }
                }
            }
        }
    }
}
