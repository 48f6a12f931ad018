//! The pieces that pages are put together from: forms, the sign line, counters, cautions, cards.

use super::shapes::Shape;
use super::when;
use crate::web::Ctx;
use logbook::view::Person;
use maud::{Markup, html};
use measure::{ActId, Instant, PersonId};
use sha2::{Digest, Sha256};

/// Where a form goes and what tells it from the others on its page.
#[derive(Debug, Clone, Copy)]
pub struct Form<'a> {
    /// The act, as in `/act/NAME`.
    pub act: &'a str,
    /// What it acts on: a run, a kind, or nothing.
    pub on: &'a str,
    /// Where to go afterwards; `None`: back to this page.
    pub then: Option<&'a str>,
}

impl<'a> Form<'a> {
    /// A form that comes back to its page.
    pub const fn new(act: &'a str, on: &'a str) -> Self {
        Self { act, on, then: None }
    }

    /// The id of the act, the same however often the button is hit, and another on every page:
    /// drawn from the station's random id, the moment and the place of the form.
    pub fn id(&self, ctx: &Ctx) -> ActId {
        let mut digest = Sha256::new();
        digest.update(ctx.station.bytes());
        digest.update(ctx.now.millis().to_be_bytes());
        for text in [ctx.here.as_str(), self.act, self.on] {
            digest.update((text.len() as u64).to_be_bytes());
            digest.update(text);
        }
        let mut id = [0; 16];
        id.copy_from_slice(&digest.finalize()[..16]);
        ActId::from_bytes(id)
    }

    /// The form around its fields.
    pub fn draw(&self, ctx: &Ctx, fields: &Markup) -> Markup {
        self.element(ctx, None, fields)
    }

    /// The form around its fields, for files.
    pub fn draw_for_files(&self, ctx: &Ctx, fields: &Markup) -> Markup {
        self.element(ctx, Some("multipart/form-data"), fields)
    }

    fn element(&self, ctx: &Ctx, encoding: Option<&str>, fields: &Markup) -> Markup {
        html! {
            form method="post" action=(format!("/act/{}", self.act)) enctype=[encoding] {
                input type="hidden" name="act" value=(self.id(ctx));
                input type="hidden" name="back" value=(self.then.unwrap_or(&ctx.here));
                (fields)
            }
        }
    }
}

/// A hidden field.
pub fn hidden(name: &str, value: impl std::fmt::Display) -> Markup {
    html! { input type="hidden" name=(name) value=(value.to_string()); }
}

/// The sign line under an act: tapping a sign does the act and signs it, in one.
pub fn sign_line(ctx: &Ctx, people: &[Person], asks: &str) -> Markup {
    sign_line_for(ctx, people, "", asks)
}

/// A sign line among several on a page: who hears the page is told for what each of them is.
pub fn sign_line_for(ctx: &Ctx, people: &[Person], what: &str, asks: &str) -> Markup {
    html! {
        div class="sign-line" {
            p class="asks" { (asks) }
            @if people.is_empty() {
                p { a class="key" href="/setup" { (ctx.words().say("sign-none")) } }
            }
            div class="signs" {
                @for person in people {
                    button class=(if ctx.sign == Some(person.person) { "sign last" } else { "sign" })
                        name="sign" value=(person.person) {
                        (mark(person.person))
                        span class="unseen" { @if !what.is_empty() { (what) ": " } (asks) " " }
                        span class="sign-text" { (sign_text(ctx, person)) }
                    }
                }
            }
        }
    }
}

fn sign_text(ctx: &Ctx, person: &Person) -> String {
    person.sign.clone().unwrap_or_else(|| ctx.words().say("sign-gone"))
}

/// A small pattern that belongs to the person, so that a sign is found by its look as well.
pub fn mark(person: PersonId) -> Markup {
    let bytes = person.bytes();
    // Nine fields, mirrored, so that a pattern has a middle and is remembered.
    let field = |row: usize, column: usize| {
        let column = if column > 2 { 4 - column } else { column };
        bytes[row * 3 + column].count_ones().is_multiple_of(2)
    };
    html! {
        svg class="sign-mark" viewBox="0 0 5 5" aria-hidden="true" focusable="false" {
            @for row in 0..5 {
                @for column in 0..5 {
                    @if field(row, column) {
                        rect x=(column) y=(row) width="1" height="1" fill="currentColor" {}
                    }
                }
            }
        }
    }
}

/// A whole number with a key for one fewer and one for one more. The keys need the script; the
/// field alone works without.
#[derive(Debug, Clone, Copy)]
pub struct Counter<'a> {
    /// Name of the field.
    pub name: &'a str,
    /// Its id, unique in the page.
    pub id: &'a str,
    /// What is counted.
    pub label: &'a str,
    /// Filled in already.
    pub value: u32,
    /// The most that the field takes.
    pub most: u32,
}

impl Counter<'_> {
    /// The counter.
    pub fn draw(&self, ctx: &Ctx) -> Markup {
        let words = ctx.words();
        let key = |step: i32, sign: &str, name: &str| {
            html! {
                button type="button" class="step" data-step=(step) hidden
                    aria-label=(words.tell(name, &[("what", self.label.into())])) { (sign) }
            }
        };
        html! {
            div class="counter" {
                label for=(self.id) { (self.label) }
                span class="counter-keys" {
                    (key(-1, "−", "one-fewer"))
                    input type="number" inputmode="numeric" id=(self.id) name=(self.name)
                        value=(self.value) min="0" max=(self.most) step="1" required;
                    (key(1, "+", "one-more"))
                }
            }
        }
    }
}

/// How a card asks to be seen. Ground, shape and word say the same thing three times.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ground {
    /// All is well, or for information: light, thin line.
    Fine,
    /// Somebody is waited for: light, with a thick bar.
    Turn,
    /// Not to be used: dark, with an inner white line.
    Stop,
}

impl Ground {
    const fn class(self) -> &'static str {
        match self {
            Self::Fine => "card fine",
            Self::Turn => "card turn",
            Self::Stop => "card stop",
        }
    }
}

/// A card with a heading.
pub fn card(ground: Ground, shape: Shape, heading: &str, inside: &Markup) -> Markup {
    html! {
        section class=(ground.class()) {
            h2 { (shape.draw()) span { (heading) } }
            (inside)
        }
    }
}

/// What may hurt.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Caution {
    /// Hot: tongs or heat gloves, cool before handling, never open under pressure.
    Hot,
    /// Sharp.
    Sharp,
    /// Gloves and eye cover for what is soiled or caustic.
    Gloves,
    /// Strong liquids: air, never two products together, the label first.
    Liquids,
    /// The machine's manual and the local rules come first.
    Manual,
}

/// Cautions, each with its sign and in words.
pub fn cautions(ctx: &Ctx, which: &[Caution]) -> Markup {
    let words = ctx.words();
    html! {
        ul class="cautions" {
            @for caution in which {
                @match caution {
                    Caution::Hot => { li { (Shape::Hot.draw()) span { (words.say("caution-hot")) } } }
                    Caution::Sharp => { li { (Shape::Sharp.draw()) span { (words.say("caution-sharp")) } } }
                    Caution::Gloves => { li { (Shape::Gloves.draw()) span { (words.say("caution-gloves")) } } }
                    Caution::Liquids => { li { (Shape::Jar.draw()) span { (words.say("caution-liquids")) } } }
                    Caution::Manual => { li { (Shape::Tape.draw()) span { (words.say("caution-manual")) } } }
                }
            }
        }
    }
}

/// A key among several that say the same: who hears the page is told for what each of them is.
pub fn key_for(says: &str, what: &str) -> Markup {
    html! { button class="key" aria-label=(format!("{says}: {what}")) { (says) } }
}

/// A moment, for people and for programs.
pub fn time(ctx: &Ctx, at: Instant) -> Markup {
    html! { time datetime=(when::machine_value(ctx, at)) { (when::moment(ctx, at)) } }
}

/// The cycle of counting: a link that looks like a main key.
pub fn way(href: &str, shape: Shape, text: &str) -> Markup {
    html! { a class="key" href=(href) { (shape.draw()) span { (text) } } }
}
