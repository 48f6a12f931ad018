//! Setup: machines, signs, how many sets; and which lines are still drafts. Everything else is
//! added when it first matters.

pub mod people;

use super::frame::{self, Frame, Place};
use super::parts::{self, Caution, Form, Ground};
use super::shapes::Shape;
use super::{first, say, telling};
use crate::web::Ctx;
use crate::words::Language;
use logbook::book::BookError;
use logbook::fact::BookKind;
use logbook::view::{KindCount, Machine, Person, View};
use maud::{Markup, html};

/// Longest sign: initials and a picture, not a name.
const SIGN: u32 = 12;

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// All machines.
    pub machines: Vec<Machine>,
    /// All signs.
    pub people: Vec<Person>,
    /// All kinds.
    pub kinds: Vec<KindCount>,
    /// The salon's time zone.
    pub zone: String,
    /// What was said of each person.
    pub known: Vec<people::Known>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let people = view.people()?;
    let mut known = Vec::new();
    for person in &people {
        let speaks = view.speaks(person.person)?;
        known.push(people::Known {
            person: person.clone(),
            speaks: speaks.and_then(|code| Language::from_code(&code)),
            roles: view.roles(person.person)?,
        });
    }
    let seen = Seen {
        machines: view.machines()?,
        known,
        people,
        kinds: view.kinds()?,
        zone: view.salon()?.zone,
    };
    let frame = Frame {
        title: ctx.words().say("setup-title"),
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
        (parts::card(Ground::Fine, Shape::Drum, &words.say("setup-machines"), &html! {
            ul { @for known in &seen.machines { li { (machine_line(ctx, known)) } } }
            details open[seen.machines.is_empty()] {
                summary { (words.say("setup-machine-add")) }
                (machine_form(ctx, &seen.machines, true))
            }
        }))
        (parts::card(Ground::Fine, Shape::Tape, &words.say("setup-signs"), &html! {
            p { (words.say("setup-signs-how")) }
            ul class="known-signs" {
                @for known in &seen.known {
                    @let person = &known.person;
                    li {
                        span class="signed" { (person.sign.clone().unwrap_or_else(|| words.say("sign-gone"))) }
                        (people::is_form(ctx, known, &seen.people))
                        (left_form(ctx, person, &seen.people))
                    }
                }
            }
            (person_form(ctx))
        }))
        (parts::card(Ground::Fine, Shape::Bowl, &words.say("setup-sets"), &html! {
            p { (words.say("setup-sets-how")) }
            @for (index, kind) in seen.kinds.iter().enumerate() { (sets_form(ctx, Some(kind), index, &seen.people)) }
            (sets_form(ctx, None, seen.kinds.len(), &seen.people))
        }))
        p class="ways" {
            (parts::way("/in", Shape::Envelope, &words.say("goes-in-title")))
            (parts::way("/services", Shape::Chair, &words.say("services-title")))
            (parts::way("/stations", Shape::Tape, &words.say("screens-title")))
            @if ctx.book == BookKind::Practice {
                (parts::way("/cards", Shape::Envelope, &words.say("cards-title")))
            } @else {
                (parts::way("/practice", Shape::Envelope, &words.say("practice-title")))
            }
            (parts::way("/shapes", Shape::Plateau, &words.say("legend-title")))
            (parts::way("/wall", Shape::House, &words.say("go-wall")))
            (parts::way("/wall?front=yes", Shape::House, &words.say("go-wall-front")))
        }
        (languages(ctx))
        (people::record(ctx))
        p { (words.tell("setup-zone", &[("zone", seen.zone.as_str().into())])) }
        p { (words.say("setup-no-device")) }
        (parts::cautions(ctx, &[Caution::Manual]))
    }
}

/// The first minute: one example and a single key at a time.
pub fn first_steps(ctx: &Ctx, machines: &[Machine], people: &[Person]) -> Markup {
    let words = ctx.words();
    html! {
        @if machines.is_empty() && people.is_empty() {
            (first::machines(ctx))
        } @else if machines.is_empty() {
            (parts::card(Ground::Turn, Shape::Drum, &words.say("setup-machine-add"), &html! {
                (machine_form(ctx, machines, false))
            }))
        } @else if people.is_empty() {
            (parts::card(Ground::Turn, Shape::Tape, &words.say("setup-signs"), &html! {
                p { (words.say("setup-signs-how")) }
                (person_form(ctx))
            }))
        }
        @if !machines.is_empty() || !people.is_empty() {
            p { a href="/setup" { (words.say("first-all")) } }
        }
    }
}

fn machine_line(ctx: &Ctx, known: &Machine) -> Markup {
    let words = ctx.words();
    html! {
        strong { (words.tell("machine-name", &[("machine", known.number.to_string().into())])) } ": "
        (words.say(telling::air_key(known.air_removal))) ", "
        @if known.writes_files { (words.say("machine-files")) } @else { (words.say("machine-no-files")) } ", "
        @match known.most_pouches {
            Some(most) => (words.tell("machine-most", &[("most", most.to_string().into())])),
            None => (words.say("machine-most-not-known")),
        }
    }
}

/// A machine. In the first minute only its number is asked for: the rest is "not known" until
/// somebody says so, and never guessed.
fn machine_form(ctx: &Ctx, machines: &[Machine], all: bool) -> Markup {
    let words = ctx.words();
    let number = machines.iter().map(|known| known.number).max().unwrap_or(0) + 1;
    Form::new("machine", "new").draw(ctx, &html! {
        p class="field" {
            label for="machine-number" { (words.say("machine-number")) }
            input type="number" id="machine-number" name="number" min="1" max="99" value=(number) required;
        }
        fieldset class="choices" {
            legend { (words.say("machine-air")) }
            @for (value, key) in [("vacuum", "air-vacuum"), ("gravity", "air-gravity"), ("not-known", "air-not-known")] {
                label {
                    input type="radio" name="air" value=(value) checked[value == "not-known"];
                    span { (words.say(key)) }
                }
            }
        }
        p class="choices" {
            label { input type="checkbox" name="files" value="yes"; span { (words.say("machine-files")) } }
        }
        @if all {
            p class="field" {
                label for="machine-most" { (words.say("machine-most-ask")) }
                input type="number" id="machine-most" name="most" min="1" max="200";
            }
        }
        p { button class="key main-key" { (words.say("machine-add")) } }
    })
}

fn person_form(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    Form::new("person", "new").draw(
        ctx,
        &html! {
            p class="field" {
                label for="sign-text" { (words.say("sign-label")) }
                input id="sign-text" name="sign-text" maxlength=(SIGN) autocomplete="off" required
                    placeholder=(words.say("sign-example"));
            }
            p { button class="key main-key" { (words.say("sign-add")) } }
        },
    )
}

fn left_form(ctx: &Ctx, person: &Person, people: &[Person]) -> Markup {
    let words = ctx.words();
    let id = person.person.to_string();
    html! {
        details {
            summary { (words.say("person-left")) }
            (Form::new("person-left", &id).draw(ctx, &html! {
                (parts::hidden("person", &id))
                (parts::sign_line(ctx, people, &words.say("person-left-asks")))
            }))
        }
    }
}

fn sets_form(ctx: &Ctx, kind: Option<&KindCount>, index: usize, people: &[Person]) -> Markup {
    let words = ctx.words();
    let on = kind.map_or("new", |kind| kind.kind.word());
    let value = |of: fn(&KindCount) -> Option<u32>| kind.and_then(of);
    let numbers = [
        ("owned", "sets-owned", value(|kind| kind.owned)),
        ("used", "sets-used", value(|kind| Some(kind.used))),
        ("washed", "sets-washed", value(|kind| Some(kind.washed))),
    ];
    html! {
        details open[kind.is_none() && index == 0] {
            summary {
                @match kind {
                    Some(kind) => (words.tell("sets-kind", &[
                        ("kind", say::kind(ctx, &kind.kind).into()),
                        ("owned", kind.owned.map_or_else(|| words.say("not-known"), |owned| owned.to_string()).into()),
                    ])),
                    None => (words.say("sets-new")),
                }
            }
            (Form::new("sets", on).draw(ctx, &html! {
                @match kind {
                    Some(kind) => (parts::hidden("kind", &kind.kind)),
                    None => p class="field" {
                        label for="kind-new" { (words.say("sets-kind-label")) }
                        input id="kind-new" name="kind" maxlength="24" autocomplete="off"
                            autocapitalize="none" required placeholder=(words.say("sets-kind-example"));
                    },
                }
                @for (name, key, value) in numbers {
                    @let id = format!("{name}-{index}");
                    p class="field" {
                        label for=(id) { (words.say(key)) }
                        input type="number" id=(id) name=(name) min="0" max="2000" value=[value];
                    }
                }
                (parts::sign_line(ctx, people, &words.say("sets-asks")))
            }))
        }
    }
}

/// Which languages there are, and how far somebody of the trade has read them. One that has only
/// some of its lines is chosen here, and not on every page.
fn languages(ctx: &Ctx) -> Markup {
    parts::card(
        Ground::Fine,
        Shape::Tape,
        &ctx.words().say("setup-languages"),
        &html! {
            ul {
                @for language in Language::ALL {
                    li { strong lang=(language.code()) { (language.name()) } ": " (state_of(ctx, language)) }
                }
            }
            form class="choices" method="post" action="/language" {
                input type="hidden" name="back" value=(ctx.here);
                @for language in Language::ALL.into_iter().filter(|it| !it.is_whole()) {
                    button class="key" name="language" value=(language.code())
                        aria-pressed=(if language == ctx.language { "true" } else { "false" }) {
                        span lang=(language.code()) { (language.name()) } " " (ctx.words().say("language-draft"))
                    }
                }
            }
        },
    )
}

fn state_of(ctx: &Ctx, language: Language) -> String {
    let words = ctx.words();
    let (drafts, lines) = language.drafts();
    let lines = ("lines", lines.to_string().into());
    if language == Language::En {
        words.say("language-own")
    } else if !language.is_whole() {
        let (_, all) = Language::En.drafts();
        words.tell("language-partial", &[lines, ("all", all.to_string().into())])
    } else if drafts == 0 {
        words.tell("language-checked", &[lines])
    } else {
        words.tell("language-drafts", &[("drafts", drafts.to_string().into()), lines])
    }
}
