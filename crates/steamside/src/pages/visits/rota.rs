//! Who works when: today and tomorrow, and the form that says so for weeks.

use super::Seen;
use crate::pages::parts::{self, Counter, Form, Ground};
use crate::pages::shapes::Shape;
use crate::pages::when;
use crate::web::Ctx;
use logbook::view::{Person, Shift};
use maud::{Markup, html};

/// The day that is filled in already; common practice, no source.
const FROM: &str = "09:00";
const TO: &str = "18:00";
const LUNCH: (&str, &str) = ("12:30", "13:00");
/// Most weeks that one tap fills.
const MOST_WEEKS: u32 = 12;

/// The card.
pub fn card(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let none = seen.days.iter().all(|day| day.shifts.is_empty());
    parts::card(
        Ground::Fine,
        Shape::Gloves,
        &words.say("rota-title"),
        &html! {
            @if none { p class="fact" { (words.say("rota-none")) } }
            @for day in seen.days.iter().filter(|day| !day.shifts.is_empty()) {
                h3 { (when::day_of(ctx, day.span.0)) }
                ul { @for shift in &day.shifts { li { (line(ctx, seen, shift)) } } }
            }
            @if !seen.people.is_empty() {
                details { summary { (words.say("rota-add")) } (form(ctx, &seen.people)) }
            }
        },
    )
}

fn line(ctx: &Ctx, seen: &Seen, shift: &Shift) -> Markup {
    let words = ctx.words();
    let person = seen.people.iter().find(|person| person.person == shift.person);
    let sign = person.and_then(|person| person.sign.clone());
    html! {
        span class="signed" { (sign.unwrap_or_else(|| words.say("sign-gone"))) } " "
        (when::clock_of(ctx, shift.from)) "–" (when::clock_of(ctx, shift.to))
        @if let Some((from, to)) = shift.lunch {
            " · " (words.say("rota-lunch")) " " (when::clock_of(ctx, from)) "–" (when::clock_of(ctx, to))
        }
        (Form::new("shift-ended", &shift.shift.to_string()).draw(ctx, &html! {
            (parts::hidden("shift", shift.shift))
            button class="key" { (words.say("rota-not")) }
        }))
    }
}

fn form(ctx: &Ctx, people: &[Person]) -> Markup {
    let words = ctx.words();
    let time = |name: &str, key: &str, value: &str| {
        let id = format!("rota-{name}");
        html! {
            p class="field" {
                label for=(id) { (words.say(key)) }
                input type="time" id=(id) name=(name) value=(value);
            }
        }
    };
    Form::new("shift", "new").draw(ctx, &html! {
        p class="field" {
            label for="rota-day" { (words.say("rota-day")) }
            input type="date" id="rota-day" name="day" value=(when::date_value(ctx, ctx.now)) required;
        }
        (time("from", "rota-from", FROM))
        (time("to", "rota-to", TO))
        (time("lunch-from", "rota-lunch-from", LUNCH.0))
        (time("lunch-to", "rota-lunch-to", LUNCH.1))
        (Counter {
            name: "weeks",
            id: "rota-weeks",
            label: &words.say("rota-weeks"),
            value: 0,
            most: MOST_WEEKS,
        }.draw(ctx))
        p { (words.say("rota-who")) }
        p class="ways" {
            @for person in people {
                button class="key" name="person" value=(person.person) {
                    (person.sign.clone().unwrap_or_else(|| words.say("sign-gone")))
                }
            }
        }
    })
}
