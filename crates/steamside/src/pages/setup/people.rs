//! What a person is here and reads; and how the record is written, whatever each screen shows.

use crate::pages::parts::{self, Form, Ground};
use crate::pages::shapes::Shape;
use crate::pages::telling;
use crate::web::Ctx;
use crate::words::Language;
use logbook::fact::Units;
use logbook::view::{Person, Roles};
use maud::{Markup, html};

/// A person with what was said of them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Known {
    /// The person.
    pub person: Person,
    /// The language in which they read.
    pub speaks: Option<Language>,
    /// What they are.
    pub roles: Roles,
}

/// The words of a form for each unit system.
const UNITS: [(Units, &str); 2] = [(Units::Metric, "metric"), (Units::Us, "us")];

/// The form of one person; who of `people` signs it says who is in charge.
pub fn is_form(ctx: &Ctx, known: &Known, people: &[Person]) -> Markup {
    let words = ctx.words();
    let id = known.person.person.to_string();
    let roles = [
        ("learns", "role-learns", known.roles.learns),
        ("in-charge", "role-charge", known.roles.in_charge),
        ("teaches", "role-teaches", known.roles.teaches),
    ];
    html! {
        details {
            summary { (words.say("person-is")) }
            (Form::new("person-is", &id).draw(ctx, &html! {
                (parts::hidden("person", &id))
                fieldset class="choices" {
                    legend { (words.say("person-reads")) }
                    label {
                        input type="radio" name="language" value="" checked[known.speaks.is_none()];
                        span { (words.say("person-reads-any")) }
                    }
                    (languages(known.speaks))
                }
                fieldset class="choices" {
                    legend { (words.say("person-roles")) }
                    @for (name, key, is) in roles {
                        label {
                            input type="checkbox" name=(name) value="yes" checked[is];
                            span { (words.say(key)) }
                        }
                    }
                }
                (parts::sign_line(ctx, people, &words.say("person-is-do")))
            }))
        }
    }
}

fn languages(chosen: Option<Language>) -> Markup {
    html! {
        @for language in Language::ALL.into_iter().filter(|it| it.is_whole() || Some(*it) == chosen) {
            label {
                input type="radio" name="language" value=(language.code()) checked[Some(language) == chosen];
                span lang=(language.code()) { (language.name()) }
            }
        }
    }
}

/// The record's language and units.
pub fn record(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    let (language, units) = ctx.record;
    parts::card(
        Ground::Fine,
        Shape::Tape,
        &words.say("record-title"),
        &Form::new("record-shows", "salon").draw(ctx, &html! {
            p { (words.say("record-how")) }
            fieldset class="choices" { legend { (words.say("record-language")) } (languages(Some(language))) }
            fieldset class="choices" {
                legend { (words.say("record-units")) }
                @for (known, word) in UNITS {
                    label {
                        input type="radio" name="units" value=(word) checked[known == units];
                        span { (words.say(telling::units_key(known))) }
                    }
                }
            }
            p { button class="key main-key" { (words.say("record-do")) } }
        }),
    )
}
