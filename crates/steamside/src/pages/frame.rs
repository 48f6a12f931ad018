//! The frame of every page: the places, the clock, the language, what was just done.

use super::kept::OUTBOX_PATH;
use super::shapes::{self, Shape};
use super::show;
use super::strip;
use super::telling::{self, Names};
use super::when;
use crate::acts;
use crate::web::Ctx;
use crate::words::{Language, Words};
use logbook::book::BookError;
use logbook::fact::{Body, BookKind, Fact};
use logbook::view::View;
use maud::{DOCTYPE, Markup, html};
use measure::{ActId, Span};

/// Where the style lies.
pub const STYLE_PATH: &str = "/assets/steamside.css";
/// Where the script lies.
pub const SCRIPT_PATH: &str = "/assets/steamside.js";
/// Where the icon lies.
pub const ICON_PATH: &str = "/assets/steamside.svg";
/// Where the icon of a practice book lies.
pub const PRACTICE_ICON_PATH: &str = "/assets/practice.svg";
/// The same house, drawn in broken lines.
pub const PRACTICE_ICON: &str = include_str!("../../assets/practice.svg");
/// The icon: a house with a tick, on paper.
pub const ICON: &str = include_str!("../../assets/steamside.svg");
/// The style.
pub const STYLE: &str = include_str!("../../assets/steamside.css");
/// The script: every page works without it.
pub const SCRIPT: &str = include_str!("../../assets/steamside.js");

/// Where the script lies that keeps an open page up to date.
pub const LIVE_PATH: &str = "/assets/live.js";
/// That script: without it a page is as old as it is.
pub const LIVE: &str = include_str!("../../assets/live.js");

/// How long the line that says what was done offers to take it back. Afterwards the way back is a
/// correction that stays in the log.
const UNDO: Span = Span::from_seconds(30);

/// One of the places that are at most one tap from every page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// What needs hands.
    Now,
    /// The shelf and the chairs.
    Ready,
    /// The machines.
    Machine,
    /// Chores, jars, foot basins, stock.
    Upkeep,
    /// Everything that happened.
    Log,
}

impl Place {
    const ALL: [Self; 5] = [Self::Now, Self::Ready, Self::Machine, Self::Upkeep, Self::Log];

    const fn parts(self) -> (&'static str, Shape, &'static str) {
        match self {
            Self::Now => ("/", Shape::Hourglass, "place-now"),
            Self::Ready => ("/ready", Shape::House, "place-ready"),
            Self::Machine => ("/machine", Shape::Drum, "place-machine"),
            Self::Upkeep => ("/upkeep", Shape::Brush, "place-upkeep"),
            Self::Log => ("/log", Shape::Tape, "place-log"),
        }
    }
}

/// How a page stands in its frame.
#[derive(Debug, Clone)]
pub struct Frame {
    /// Its heading.
    pub title: String,
    /// The place that it belongs to.
    pub place: Place,
    /// Text for reading at a desk; otherwise the large text for the wall above the sink.
    pub desk: bool,
    /// Read the page again every so many seconds, while nobody has typed in it.
    pub again_s: Option<u32>,
    /// What was just done.
    pub did: Option<Did>,
}

/// What was just done here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Did {
    /// The act.
    pub act: ActId,
    /// Said in one line.
    pub text: String,
    /// How it can be taken back, and for how many more seconds.
    pub undo: Option<(Undo, i64)>,
    /// It can be corrected, which has no time limit.
    pub correct: bool,
    /// Whoever signed reads another language than this screen shows.
    pub reads: Option<Language>,
}

/// How an act can be taken back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Undo {
    /// As if it had not been done; it stays in the log, struck through.
    Back,
    /// A release is taken back by setting aside.
    SetAside,
}

/// What was just done at this station, where the request brought an act along.
pub fn did(view: &View<'_>, ctx: &Ctx) -> Result<Option<Did>, BookError> {
    let Some(act) = ctx.did else { return Ok(None) };
    let facts = view.facts_of_act(act)?;
    let Some(first) = facts.first() else {
        return Ok(None);
    };
    let names = Names::of(view, &facts)?;
    let text = telling::entry(ctx, &names, &facts);
    let left_ms = (UNDO.millis()) - ctx.pace.true_between(first.stamp.written, ctx.now).millis();
    let open = left_ms > 0 && view.act_undone(act)?.is_none();
    let undo = undo_of(&facts).filter(|_| open);
    let correct =
        undo.is_none() && view.act_undone(act)?.is_none() && acts::correctable(&facts).is_some();
    let reads = match first.stamp.sign {
        Some(sign) => view.speaks(sign)?.and_then(|code| Language::from_code(&code)),
        None => None,
    };
    let reads = reads.filter(|reads| *reads != ctx.language);
    Ok(Some(Did { act, text, undo: undo.map(|undo| (undo, left_ms / 1_000)), correct, reads }))
}

/// Going to the safer side is never taken back by a tap.
fn undo_of(facts: &[Fact]) -> Option<Undo> {
    if facts.iter().any(|fact| matches!(fact.body, Body::Released { .. })) {
        Some(Undo::SetAside)
    } else if facts.iter().all(|fact| acts::can_be_undone(&fact.body)) {
        Some(Undo::Back)
    } else {
        None
    }
}

/// The whole page.
pub fn page(ctx: &Ctx, frame: &Frame, body: &Markup) -> Markup {
    let words = ctx.words();
    html! {
        (DOCTYPE)
        html lang=(ctx.language.code()) class=[book_class(ctx)] {
            (head(ctx, &frame.title))
            body class=(if frame.desk { "desk" } else { "sink" }) data-again=[frame.again_s]
                data-head=(ctx.head) data-times=[times(ctx)] {
                (shapes::sheet())
                a class="skip" href="#work" { (words.say("skip")) }
                (top(ctx))
                (not_joined(ctx, true))
                (strip::every(ctx))
                (places(ctx, frame.place))
                div id="kept" {}
                main id="work" tabindex="-1" data-kind=[book_word(ctx)] {
                    h1 { (frame.title) }
                    (body)
                }
                div class="did" role="status" aria-live="polite" {
                    @if let Some(did) = &frame.did { (did_bar(ctx, did)) }
                }
                footer {
                    p { (words.say("foot-manual")) " " (words.say("foot-person")) }
                    p { a class="key" href=(show::PATH) { (Shape::Tape.draw()) span { (words.say("show-title")) } } }
                    p { a href="/setup" { (words.say("setup-title")) } }
                }
            }
        }
    }
}

/// The head of every page, full-screen ones too. Nothing is loaded from elsewhere.
pub fn head(ctx: &Ctx, title: &str) -> Markup {
    head_of(ctx.words(), ctx.book == BookKind::Practice, title)
}

/// The same where no book is at hand; of a practice book its word comes first.
pub fn head_of(words: &Words, practice: bool, title: &str) -> Markup {
    html! {
        head {
            meta charset="utf-8";
            meta name="viewport" content="width=device-width, initial-scale=1";
            title {
                @if practice { (words.say("book-practice")) ": " }
                (title) " – " (words.say("program-name"))
            }
            link rel="stylesheet" href=(STYLE_PATH);
            link rel="icon" type="image/svg+xml" href=(icon(practice));
            script src=(SCRIPT_PATH) defer {}
            script src=(LIVE_PATH) defer {}
            script src=(OUTBOX_PATH) defer {}
        }
    }
}

/// Where the icon of a page lies; a practice book has its own.
pub const fn icon(practice: bool) -> &'static str {
    if practice { PRACTICE_ICON_PATH } else { ICON_PATH }
}

/// How many times as fast the clock runs, for the script; only where it does.
pub fn times(ctx: &Ctx) -> Option<u32> {
    Some(ctx.pace.times()).filter(|times| *times > 1)
}

/// Says since when the page has heard nothing, and how many taps wait, on pages that keep them; the
/// scripts put time and number in and show it.
pub fn not_joined(ctx: &Ctx, keeps: bool) -> Markup {
    let says = ctx.words().tell("not-joined", &[("at", "--:--".into())]);
    // The script puts the number in, in the form that its language has for it.
    let waits = |count: u32| {
        let text = ctx.words().tell("kept-count", &[("count", count.into())]);
        text.replace(&count.to_string(), "{count}")
    };
    html! {
        div class="not-joined" role="status" {
            p id="not-joined" data-says=(says) hidden {}
            @if keeps {
                p id="kept-count" data-one=(waits(1)) data-other=(waits(MANY)) hidden {
                    a href="/kept" { (ctx.words().say("kept-title")) }
                }
            }
        }
    }
}

/// A number that stands for many in a line.
const MANY: u32 = 17;

/// Class of the whole page in a book that must not be mistaken for a real one.
pub fn book_class(ctx: &Ctx) -> Option<&'static str> {
    match ctx.book {
        BookKind::Salon => None,
        BookKind::Demo => Some("demo"),
        BookKind::Practice => Some("practice"),
    }
}

/// What says on a screen and on paper that the book is not a salon's own.
pub fn book_word(ctx: &Ctx) -> Option<String> {
    match ctx.book {
        BookKind::Salon => None,
        BookKind::Demo => Some(ctx.words().say("book-demo")),
        BookKind::Practice => Some(ctx.words().say("book-practice")),
    }
}

/// What comes first on every paper of a practice book.
pub fn on_paper(ctx: &Ctx, text: String) -> String {
    if ctx.book == BookKind::Practice {
        format!("{}: {text}", ctx.words().say("book-practice"))
    } else {
        text
    }
}

fn top(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    html! {
        header class="top" {
            p class="clock" {
                time datetime=(when::machine_value(ctx, ctx.now)) {
                    strong { (when::clock_of(ctx, ctx.now)) } " " (when::day_of(ctx, ctx.now))
                }
            }
            @match (ctx.book, book_word(ctx)) {
                (BookKind::Practice, Some(word)) => {
                    p { a class="book-kind" href="/cards" { (word) @if let Some(times) = times(ctx) { " ×" (times) } } }
                }
                (_, Some(word)) => { p class="book-kind" { (word) } }
                (_, None) => {}
            }
            form class="languages" method="post" action="/language" aria-label=(words.say("language")) {
                input type="hidden" name="back" value=(ctx.here);
                @for language in Language::ALL.into_iter().filter(|it| it.is_whole() || *it == ctx.language) {
                    button name="language" value=(language.code()) lang=(language.code())
                        aria-pressed=(if language == ctx.language { "true" } else { "false" }) {
                        (language.name())
                    }
                }
            }
        }
    }
}

fn places(ctx: &Ctx, here: Place) -> Markup {
    let words = ctx.words();
    html! {
        nav class="places" aria-label=(words.say("places")) {
            @for place in Place::ALL {
                @let (href, shape, key) = place.parts();
                a href=(href) aria-current=[(place == here).then_some("page")] {
                    (shape.draw()) span { (words.say(key)) }
                }
            }
        }
    }
}

fn did_bar(ctx: &Ctx, did: &Did) -> Markup {
    let words = ctx.words();
    html! {
        p { (words.tell("did", &[("what", did.text.as_str().into())])) }
        @if let Some((undo, left)) = did.undo {
            form method="post" action="/act/undo" data-left=(left) {
                input type="hidden" name="act" value=(super::Form::new("undo", &did.act.to_string()).id(ctx));
                input type="hidden" name="back" value=(ctx.here);
                input type="hidden" name="undo" value=(did.act);
                button {
                    @match undo {
                        Undo::Back => { (words.say("undo")) }
                        Undo::SetAside => { (words.say("undo-release")) }
                    }
                    " " span class="left" { "0:" (format!("{left:02}")) }
                }
            }
        }
        @if did.correct {
            a class="key" href=(format!("/correct/{}", did.act)) { (words.say("correct-key")) }
        }
        @if let Some(reads) = did.reads {
            form method="post" action="/language" {
                input type="hidden" name="back" value=(ctx.here);
                button name="language" value=(reads.code()) lang=(reads.code()) { (reads.name()) }
            }
        }
    }
}
