//! What a screen keeps for when the salon's box cannot be reached: this page with the last list of
//! pouches in it. A script on the page answers a scanned code from the list and says its age; without
//! it, and while the box is there, the page only says what is kept.

use super::frame::{self, Frame, Place};
use super::parts::{self, Form};
use super::shapes::Shape;
use super::stop::{self, Stop};
use super::{say, when};
use crate::acts;
use crate::web::Ctx;
use load::SetState;
use logbook::book::BookError;
use logbook::view::{Person, Pouch, View};
use maud::{Markup, PreEscaped, html};
use serde::Serialize;

/// Where the script of this page lies.
pub const SCRIPT_PATH: &str = "/assets/kept.js";
/// That script.
pub const SCRIPT: &str = include_str!("../../assets/kept.js");
/// Where the script lies that shows what is kept, on every page.
pub const OUTBOX_PATH: &str = "/assets/outbox.js";
/// That script.
pub const OUTBOX: &str = include_str!("../../assets/outbox.js");
/// The part that works beside the pages, while the box cannot be reached too.
pub const WORKER: &str = include_str!("../../assets/worker.js");

/// Pages that are kept, and how they are called.
const PAGES: [(&str, Shape, &str); 5] = [
    ("/", Shape::Hourglass, "place-now"),
    ("/ready", Shape::House, "place-ready"),
    ("/wash", Shape::Waves, "wash-title"),
    ("/start", Shape::Drum, "go-start"),
    ("/chair", Shape::Chair, "go-chair"),
];

/// Acts that are kept, by their names in forms, and how they are called.
const ACTS: [(&str, &str); 9] = [
    ("wash", "kept-wash"),
    ("pack", "kept-pack"),
    ("start", "kept-start"),
    ("unload", "kept-unload"),
    ("look", "kept-look"),
    ("set-aside", "kept-set-aside"),
    ("open", "kept-open"),
    ("apart", "kept-apart"),
    ("machine-out", "kept-machine-out"),
];

/// The list for a script: texts once, and each pouch as code, id, kind, released, until, reason.
#[derive(Debug, Serialize)]
struct List {
    kinds: Vec<String>,
    whys: Vec<(String, String)>,
    pouches: Vec<(String, String, usize, String, i64, i64)>,
}

/// What the page shows.
#[derive(Debug, Clone, Default)]
pub struct Seen {
    /// Every pouch in its round that was not opened.
    pub pouches: Vec<Pouch>,
    /// Who may sign.
    pub people: Vec<Person>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    // What is not on the list must not be used; that holds for opened ones as well.
    let listed = [
        SetState::Ready,
        SetState::UseNow,
        SetState::SetAside,
        SetState::ToCheck,
        SetState::InMachine,
        SetState::Bagged,
    ];
    let seen = Seen { pouches: view.pouches_in(&listed)?, people: view.people()? };
    let frame = Frame {
        title: ctx.words().say("kept-title"),
        place: Place::Ready,
        desk: false,
        again_s: None,
        did: None,
    };
    Ok(frame::page(ctx, &frame, &draw(ctx, &seen)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        section data-kept-part="about" {
            p { (words.say("kept-about")) }
            p { (words.say("kept-nothing-else")) }
        }
        section data-kept-part="none" role="alert" hidden { p class="fact" { (words.say("kept-none")) } }
        section data-kept-part="no-act" role="alert" hidden { p class="fact" { (words.say("kept-no-act")) } }
        div data-kept-part="good" hidden { (good(ctx, &seen.people)) }
        div data-kept-part="stop" hidden { (stop_part(ctx)) }
        ul class="kept-waits" data-kept-waits {}
        p class="ways" data-kept-ways {
            @for (href, shape, key) in PAGES { (parts::way(href, shape, &words.say(key))) }
        }
        (texts(ctx))
        script type="application/json" id="kept-list" { (PreEscaped(list(ctx, &seen.pouches))) }
        script src=(SCRIPT_PATH) defer {}
        (super::chair::scanner("/chair"))
    }
}

/// A pouch that was good when the list was made. The script fills in which.
fn good(ctx: &Ctx, people: &[Person]) -> Markup {
    let words = ctx.words();
    let form = |act: &'static str| Form { then: Some("/chair"), ..Form::new(act, "kept") };
    let pouch = html! {
        input type="hidden" name="pouch" value="";
        input type="hidden" name="chair" value="";
    };
    html! {
        section class="card fine good" {
            h2 { (Shape::House.draw()) span { (words.say("kept-good")) } }
            p class="code" data-kept="code" {}
            p class="fact" data-kept="kind" {}
            p { (words.say("pouch-released")) " " span data-kept="released" {} }
            p class="fact" data-kept="list" data-says=(words.tell("kept-list", &[("at", "--:--".into())])) {}
            p class="fact" { (words.say("kept-cannot-know")) }
            p class="fact" { (words.say("chair-look")) }
            (form("open").draw(ctx, &html! {
                (pouch)
                (parts::sign_line(ctx, people, &words.say("opened-asks")))
            }))
        }
        (form("set-aside").draw(ctx, &html! {
            (pouch)
            fieldset class="not-sure" {
                legend { (words.say("chair-not-good")) }
                @for (why, key) in [("wet", "stop-wet"), ("torn", "stop-torn"), ("mark", "stop-mark"), ("not-sure", "stop-not-sure")] {
                    button class="key stop-key" name="why" value=(why) {
                        (Shape::Palm.draw()) span { (words.say(key)) }
                    }
                }
            }
        }))
    }
}

/// A pouch that must not be used, by the list.
fn stop_part(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    html! {
        div role="alert" aria-live="assertive" {
            (Shape::Palm.draw())
            h2 tabindex="-1" { (words.say("do-not-use")) }
            p class="code" data-kept="code" {}
            p class="fact" data-kept="why" data-unknown=(words.say("kept-unknown"))
                data-used=(words.say("kept-used")) {}
            p class="fact" data-kept="do" data-unknown=(words.say("stop-unknown-do"))
                data-used=(words.say("stop-do-used")) {}
            p data-kept="list" data-says=(words.tell("kept-list", &[("at", "--:--".into())])) {}
        }
        p { a class="key main-key" href="/chair" { (words.say("stop-another")) } }
    }
}

/// Words for the script that shows what is kept.
fn texts(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    html! {
        div id="kept-words" hidden data-kept=(words.tell("kept-here", &[("what", "{what}".into())]))
            data-undo=(words.say("undo")) data-undone=(words.say("kept-undone"))
            data-read=(words.say("kept-read")) data-waits=(words.tell("kept-waits", &[("what", "{what}".into()), ("at", "{at}".into())]))
            data-stranger=(words.say("kept-stranger")) data-pair=(words.say("pair-title")) {
            @for (act, key) in ACTS { span data-act=(act) { (words.say(key)) } }
        }
    }
}

/// The list as JSON that may stand in a page.
fn list(ctx: &Ctx, pouches: &[Pouch]) -> String {
    let mut list = List { kinds: Vec::new(), whys: Vec::new(), pouches: Vec::new() };
    for pouch in pouches {
        let kind = place(&mut list.kinds, say::kind(ctx, &pouch.kind));
        let usable = acts::may_open(pouch, ctx.now);
        let code = pouch.code.to_string();
        let why = if usable {
            -1
        } else {
            let stop = Stop { pouch: Some(pouch), code: &code, run: None, chair: None };
            place(&mut list.whys, stop::reason(ctx, &stop)) as i64
        };
        let released = pouch.released.filter(|_| usable);
        let released = released.map(|(at, _)| when::moment(ctx, at)).unwrap_or_default();
        let until = pouch.use_until.map_or(0, |until| until.millis());
        list.pouches.push((code, pouch.pouch.to_string(), kind, released, until, why));
    }
    let text = serde_json::to_string(&list).unwrap_or_else(|_| "{}".to_owned());
    // Inside a page, nothing in it may end the element that holds it.
    text.replace('<', "\\u003c")
}

/// Where a text stands in a list, which grows by it where it is new.
fn place<T: PartialEq>(list: &mut Vec<T>, text: T) -> usize {
    list.iter().position(|known| *known == text).unwrap_or_else(|| {
        list.push(text);
        list.len() - 1
    })
}
