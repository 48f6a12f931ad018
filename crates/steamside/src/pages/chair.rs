//! At the chair: a code by camera, photo, scanner or four symbols, then the pouch, then one sign. Scan first, put the phone down,
//! clean hands, glove, then open.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form, Ground};
use super::shapes::Shape;
use super::stop::{self, Stop};
use super::{say, when};
use crate::acts;
use crate::photo::NotRead;
use crate::web::Ctx;
use load::ShelfCode;
use logbook::book::BookError;
use logbook::view::{Person, Pouch, View};
use maud::{Markup, html};
use measure::{PouchId, Span};

/// Chairs offered as keys; a greater number can be typed.
const CHAIRS: u32 = 12;
/// Where the script of the chair lies.
pub const SCRIPT_PATH: &str = "/assets/chair.js";
/// Camera and scanner; every chair page works without it.
pub const SCRIPT: &str = include_str!("../../assets/chair.js");
/// Minutes ago that are offered for a pouch that was opened before it could be scanned.
const AGO_MIN: [u32; 6] = [10, 20, 30, 45, 60, 90];

/// What was asked for.
#[derive(Debug, Clone, Copy, Default)]
pub struct Asked<'a> {
    /// A code as it was typed, scanned or read out: four symbols, or the text of a label's square.
    pub code: Option<&'a str>,
    /// A pouch's own id, from its square code.
    pub pouch: Option<PouchId>,
    /// The chair.
    pub chair: Option<u32>,
    /// Why the photo just sent names no pouch.
    pub photo: Option<NotRead>,
}

/// The page: the keypad, the pouch, or a stop over the whole screen.
pub fn page(view: &View<'_>, ctx: &Ctx, asked: Asked<'_>) -> Result<Markup, BookError> {
    let typed = asked.code.map(str::trim).filter(|code| !code.is_empty());
    let found = match (asked.pouch, typed) {
        (Some(pouch), _) => view.pouch(pouch)?,
        (None, Some(code)) => by_text(view, code)?,
        (None, None) => {
            let body = keypad(ctx, asked.chair, asked.photo);
            return Ok(frame::page(ctx, &in_frame(view, ctx)?, &body));
        }
    };
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
            Ok(stop::page(
                ctx,
                &Stop { pouch: found.as_ref(), code: &shown, run, chair: asked.chair },
            ))
        }
    }
}

/// The pouch that a typed or scanned text names.
fn by_text(view: &View<'_>, text: &str) -> Result<Option<Pouch>, BookError> {
    match (text.parse::<ShelfCode>(), papers::read_payload(text)) {
        (Ok(code), _) => view.pouch_by_code(code),
        (_, Ok(pouch)) => view.pouch(pouch),
        _ => Ok(None),
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

/// The page of a chair.
pub fn back(chair: Option<u32>) -> String {
    chair.map_or_else(|| "/chair".to_owned(), |chair| format!("/chair?chair={chair}"))
}

/// What lets a scanner type on any part of the page, and the camera look.
pub fn scanner(base: &str) -> Markup {
    html! {
        div hidden data-scan=(base) {}
        script src=(SCRIPT_PATH) defer {}
    }
}

/// Chair and code: camera or photo, the field for a scanner or fingers, the keys. The keys write
/// into the field; without the script the field is typed in.
pub fn keypad(ctx: &Ctx, chair: Option<u32>, photo: Option<NotRead>) -> Markup {
    let words = ctx.words();
    html! {
        @if let Some(reason) = photo { (unread(ctx, reason)) }
        (camera(ctx, chair))
        form method="get" action="/chair" class="chair-form" {
            p class="field code-field" {
                label for="code" { (words.say("code-label")) }
                input id="code" name="code" class="code" maxlength="40" autocomplete="off"
                    autocapitalize="characters" spellcheck="false" required autofocus[photo.is_none()];
                button class="key main-key" { (words.say("code-look")) }
            }
            div class="keypad" role="group" aria-label=(words.say("code-keys")) hidden {
                @for symbol in ShelfCode::symbols() {
                    button type="button" class="key" data-types=(symbol) { (symbol) }
                }
                button type="button" class="key wide" data-types="" { (words.say("code-clear")) }
            }
            p class="unseen" role="status" data-typed {}
            (chairs(ctx, chair))
        }
        p { (words.say("chair-order")) }
        p { a class="key" href=(another(chair, None)) { (words.say("need-another")) } }
        (scanner(&back(chair)))
    }
}

/// Which chair: folded away where it is known.
fn chairs(ctx: &Ctx, chair: Option<u32>) -> Markup {
    let words = ctx.words();
    let keys = html! {
        fieldset class="chairs" {
            legend { (words.say("chair-which")) }
            @for number in (1..=CHAIRS).chain(chair.filter(|chair| *chair > CHAIRS)) {
                label {
                    input type="radio" name="chair" value=(number) checked[chair == Some(number)];
                    span { (number) }
                }
            }
        }
    };
    html! {
        @match chair {
            None => (keys),
            Some(chair) => details {
                summary { (words.tell("chair-name", &[("chair", chair.to_string().into())])) }
                (keys)
            },
        }
    }
}

/// The live picture where the browser can read codes, and a photo where it cannot.
fn camera(ctx: &Ctx, chair: Option<u32>) -> Markup {
    let words = ctx.words();
    html! {
        section class="camera" data-camera hidden {
            p { button type="button" class="key main-key" data-camera-start { (words.say("camera-start")) } }
            video muted playsinline hidden aria-label=(words.say("camera-picture")) {}
            p { button type="button" class="key" data-camera-stop hidden { (words.say("camera-stop")) } }
            p role="status" data-camera-says data-looking=(words.say("camera-looking"))
                data-other=(words.say("photo-other-code")) data-several=(words.say("photo-several"))
                data-refused=(words.say("camera-refused")) {}
        }
        form method="post" action="/chair/photo" enctype="multipart/form-data" class="photo-form" {
            @if let Some(chair) = chair { (parts::hidden("chair", chair)) }
            p class="field" {
                label for="photo" { (words.say("photo-label")) }
                input type="file" id="photo" name="photo" accept="image/*" capture="environment" required;
                button class="key" { (words.say("photo-read")) }
                span class="place" { (words.say("photo-not-kept")) }
            }
        }
    }
}

/// Why a photo named no pouch, and what to do.
fn unread(ctx: &Ctx, reason: NotRead) -> Markup {
    let words = ctx.words();
    let key = match reason {
        NotRead::NoPicture => "photo-no-picture",
        NotRead::TooLarge => "photo-too-large",
        NotRead::NoCode => "photo-no-code",
        NotRead::OtherCode => "photo-other-code",
        NotRead::Several => "photo-several",
    };
    html! {
        div role="alert" {
            (parts::card(Ground::Turn, Shape::Hourglass, &words.say(key), &html! {
                p { (words.say("photo-again")) }
            }))
        }
    }
}

/// The page for another set of the same kind, or of what was opened at the chair.
pub fn another(chair: Option<u32>, pouch: Option<PouchId>) -> String {
    let chair = chair.map(|chair| format!("chair={chair}"));
    let pouch = pouch.map(|pouch| format!("pouch={pouch}"));
    let asked: Vec<String> = chair.into_iter().chain(pouch).collect();
    match asked.join("&") {
        asked if asked.is_empty() => "/chair/another".to_owned(),
        asked => format!("/chair/another?{asked}"),
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
        (after(ctx, pouch, chair, people))
        p { a class="key" href=(back) { (words.say("code-other")) } }
        (scanner(&back))
    }
}

/// Gloves were on: the empty pouch is linked after the service. No time is filled in.
fn after(ctx: &Ctx, pouch: &Pouch, chair: Option<u32>, people: &[Person]) -> Markup {
    let words = ctx.words();
    let fits = |minutes: &u32| {
        let at = ctx.now - Span::from_minutes(i64::from(*minutes));
        pouch.released.is_some_and(|(released, _)| released <= at)
    };
    let offered: Vec<u32> = AGO_MIN.into_iter().filter(fits).collect();
    let back = back(chair);
    let on = format!("{}-after", pouch.pouch);
    let form = Form { then: Some(&back), ..Form::new("open", &on) };
    html! {
        @if !offered.is_empty() {
            details {
                summary { (words.say("after-title")) }
                (form.draw(ctx, &html! {
                    (parts::hidden("pouch", pouch.pouch))
                    @if let Some(chair) = chair { (parts::hidden("chair", chair)) }
                    fieldset class="choices" {
                        legend { (words.say("after-when")) }
                        @for minutes in offered {
                            label {
                                input type="radio" name="ago" value=(minutes) required;
                                span { (words.tell("after-minutes", &[("minutes", minutes.into())])) }
                            }
                        }
                    }
                    (parts::sign_line(ctx, people, &words.say("after-asks")))
                }))
            }
        }
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
