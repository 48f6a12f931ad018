//! At the chair: four symbols, then the pouch, then one sign. Scan first, put the phone down,
//! clean hands, glove, then open.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form};
use super::shapes::Shape;
use super::stop::{self, Stop};
use super::{say, when};
use crate::acts;
use crate::web::Ctx;
use load::ShelfCode;
use logbook::book::BookError;
use logbook::view::{Person, Pouch, View};
use maud::{Markup, html};
use measure::PouchId;

/// Chairs offered as keys; a greater number can be typed.
const CHAIRS: u32 = 12;

/// What was asked for.
#[derive(Debug, Clone, Copy, Default)]
pub struct Asked<'a> {
    /// A code as it was typed or read out.
    pub code: Option<&'a str>,
    /// A pouch's own id, from its square code.
    pub pouch: Option<PouchId>,
    /// The chair.
    pub chair: Option<u32>,
}

/// The page: the keypad, the pouch, or a stop over the whole screen.
pub fn page(view: &View<'_>, ctx: &Ctx, asked: Asked<'_>) -> Result<Markup, BookError> {
    let typed = asked.code.map(str::trim).filter(|code| !code.is_empty());
    let found = match (asked.pouch, typed) {
        (Some(pouch), _) => view.pouch(pouch)?,
        (None, Some(code)) => match code.parse::<ShelfCode>() {
            Ok(code) => view.pouch_by_code(code)?,
            Err(_) => None,
        },
        (None, None) => {
            let body = keypad(ctx, asked.chair);
            return Ok(frame::page(ctx, &in_frame(view, ctx)?, &body));
        }
    };
    let back = back(asked.chair);
    let shown = found.as_ref().map_or_else(
        || typed.unwrap_or("?").chars().take(12).collect(),
        |pouch| pouch.code.to_string(),
    );
    match found.as_ref().filter(|pouch| acts::may_open(pouch, ctx.now)) {
        Some(pouch) => {
            let by = match pouch.released.and_then(|(_, who)| who) {
                Some(who) => view.person(who)?.and_then(|person| person.sign),
                None => None,
            };
            let body = good(ctx, pouch, asked.chair, by.as_deref(), &view.people()?);
            Ok(frame::page(ctx, &in_frame(view, ctx)?, &body))
        }
        None => {
            let run = match found.as_ref().and_then(|pouch| pouch.run) {
                Some(run) => view.run(run)?.map(|run| (run.machine_number, run.number)),
                None => None,
            };
            Ok(stop::page(ctx, &Stop { pouch: found.as_ref(), code: &shown, run, back: &back }))
        }
    }
}

fn in_frame(view: &View<'_>, ctx: &Ctx) -> Result<Frame, BookError> {
    Ok(Frame {
        title: ctx.words().say("chair-title"),
        place: Place::Ready,
        desk: false,
        again_s: None,
        did: frame::did(view, ctx)?,
    })
}

fn back(chair: Option<u32>) -> String {
    chair.map_or_else(|| "/chair".to_owned(), |chair| format!("/chair?chair={chair}"))
}

/// Chair and code. The keys write into the field; without the script the field is typed in.
pub fn keypad(ctx: &Ctx, chair: Option<u32>) -> Markup {
    let words = ctx.words();
    let other = chair.filter(|chair| *chair > CHAIRS);
    html! {
        form method="get" action="/chair" class="chair-form" {
            fieldset class="chairs" {
                legend { (words.say("chair-which")) }
                @for number in (1..=CHAIRS).chain(other) {
                    label {
                        input type="radio" name="chair" value=(number) checked[chair == Some(number)];
                        span { (number) }
                    }
                }
            }
            p class="field code-field" {
                label for="code" { (words.say("code-label")) }
                input id="code" name="code" class="code" maxlength="8" autocomplete="off"
                    autocapitalize="characters" spellcheck="false" required;
            }
            div class="keypad" hidden {
                @for symbol in ShelfCode::symbols() {
                    button type="button" class="key" data-types=(symbol) { (symbol) }
                }
                button type="button" class="key wide" data-types="" { (words.say("code-clear")) }
            }
            p { button class="key main-key" { (words.say("code-look")) } }
        }
        p { (words.say("chair-order")) }
    }
}

/// A pouch that may be opened, released by this sign.
pub fn good(
    ctx: &Ctx,
    pouch: &Pouch,
    chair: Option<u32>,
    by: Option<&str>,
    people: &[Person],
) -> Markup {
    let words = ctx.words();
    let back = back(chair);
    let id = pouch.pouch.to_string();
    html! {
        section class="card fine good" {
            h2 { (say::state(ctx, pouch.state)) }
            p class="code" { (pouch.code) }
            p class="fact" { (say::kind(ctx, &pouch.kind)) }
            @if let Some((at, _)) = pouch.released {
                p {
                    (words.say("pouch-released")) " " (parts::time(ctx, at))
                    @if let Some(by) = by { " " span class="signed" { (by) } }
                }
            }
            @if let Some(until) = pouch.use_until {
                p class="fact" { (words.tell("use-now-until", &[("at", when::moment(ctx, until).into())])) }
            }
            p class="fact" { (words.say("chair-look")) }
            (Form { then: Some(&back), ..Form::new("open", &id) }.draw(ctx, &html! {
                (parts::hidden("pouch", pouch.pouch))
                @if let Some(chair) = chair { (parts::hidden("chair", chair)) }
                (parts::sign_line(ctx, people, &opened_asks(ctx, chair)))
            }))
        }
        (Form { then: Some(&back), ..Form::new("set-aside", &id) }.draw(ctx, &html! {
            (parts::hidden("pouch", pouch.pouch))
            fieldset class="not-sure" {
                legend { (words.say("chair-not-good")) }
                @for (why, key) in [("wet", "stop-wet"), ("torn", "stop-torn"), ("mark", "stop-mark"), ("not-sure", "stop-not-sure")] {
                    button class="key stop-key" name="why" value=(why) {
                        (Shape::Palm.draw()) span { (words.say(key)) }
                    }
                }
            }
        }))
        p { a class="key" href=(back) { (words.say("code-other")) } }
    }
}

fn opened_asks(ctx: &Ctx, chair: Option<u32>) -> String {
    match chair {
        Some(chair) => {
            ctx.words().tell("opened-asks-chair", &[("chair", chair.to_string().into())])
        }
        None => ctx.words().say("opened-asks"),
    }
}
