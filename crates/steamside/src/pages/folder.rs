//! The record, for somebody who asks to see it: one page to read, in the order in which an inspector
//! asks, for a time that is chosen. Nothing on it leads to a place where something can be changed.

mod beside;
pub mod gather;
mod people;
pub mod period;
mod rule;
mod runs;
mod stops;
mod table;
mod tests_done;
mod today;

use gather::{Kept, MachineShown, TestShown, gather};
pub use period::{Asked, Period};

use super::frame::{self, STYLE_PATH};
use super::{shapes, when};
use crate::clock;
use crate::web::Ctx;
use crate::words::Language;
use logbook::book::BookError;
use logbook::fact::BookKind;
use logbook::view::View;
use maud::{DOCTYPE, Markup, PreEscaped, html};
use measure::Instant;

/// Where the style of this page lies, beside the one that all pages share.
pub const FOLDER_STYLE_PATH: &str = "/assets/folder.css";
/// That style.
pub const STYLE: &str = include_str!("../../assets/folder.css");

/// The headings, in the order in which an inspector asks.
pub const PARTS: [&str; 14] = [
    "folder-part-0",
    "folder-part-1",
    "folder-part-2",
    "folder-part-3",
    "folder-part-4",
    "folder-part-5",
    "folder-part-6",
    "folder-part-7",
    "folder-part-8",
    "folder-part-9",
    "folder-part-10",
    "folder-part-11",
    "folder-part-12",
    "folder-part-13",
];

/// What the page shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// Its own address, without what was chosen.
    pub path: String,
    /// When it closes itself.
    pub until: Instant,
    /// The time that is shown.
    pub period: Period,
    /// The language was chosen on the page.
    pub chosen: bool,
    /// What the book holds.
    pub kept: Kept,
}

/// Where the page lies and until when.
#[derive(Debug, Clone)]
pub struct Open {
    /// Its address.
    pub path: String,
    /// When it closes itself.
    pub until: Instant,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx, open: Open, asked: &Asked) -> Result<Markup, BookError> {
    let record = view.record_shows()?.and_then(|(code, _)| Language::from_code(&code));
    let chosen = asked.language.as_deref().and_then(Language::from_code);
    let language = chosen.or(record).unwrap_or(ctx.language);
    let ctx = Ctx { language, ..ctx.clone() };
    let period = period::of(&ctx, asked);
    let kept = gather(view, &ctx, &period)?;
    let Open { path, until } = open;
    let seen = Seen { path, until, period, chosen: chosen.is_some(), kept };
    Ok(draw(&ctx, &seen))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let until = [("at", when::clock_of(ctx, seen.until).into())];
    let body = html! {
        (languages(ctx, seen))
        main id="work" tabindex="-1" data-kind=[frame::book_word(ctx)] {
            p class="band no-print" { strong { (words.tell("folder-until", &until)) } }
            h1 { (words.say("folder-title")) }
            p class="fact" { (span(ctx, &seen.period)) }
            @if seen.period.unread { p class="amber" role="status" { (words.say("folder-unread")) } }
            p { (salon(ctx, seen)) }
            (draft(ctx))
            (period::chooser(ctx, seen))
            (contents(ctx))
            (part(ctx, 0, &today::draw(ctx, &seen.kept)))
            (part(ctx, 1, &people::who(ctx, &seen.kept)))
            (part(ctx, 2, &rule::draw(ctx, &seen.kept)))
            (part(ctx, 3, &runs::draw(ctx, &seen.kept)))
            (part(ctx, 4, &tests_done::draw(ctx, &seen.kept)))
            (part(ctx, 5, &stops::draw(ctx, &seen.kept)))
            (part(ctx, 6, &beside::jars(ctx, &seen.kept)))
            (part(ctx, 7, &beside::baths(ctx, &seen.kept)))
            (part(ctx, 8, &beside::machines(ctx, &seen.kept)))
            (part(ctx, 9, &beside::basins(ctx, &seen.kept)))
            (part(ctx, 10, &people::safety(ctx, &seen.kept)))
            (part(ctx, 11, &people::gaps(ctx, &seen.kept)))
            (part(ctx, 12, &html! { p { (words.say("folder-sheets")) } }))
            (part(ctx, 13, &people::reading(ctx)))
            (people::ask_us(ctx, &seen.kept))
        }
    };
    alone(ctx, "folder-title", Some(seen), &body)
}

/// In place of a page whose time is over, and of one that nobody ever opened: the same words, so that
/// nothing is learnt by guessing.
pub fn over(ctx: &Ctx) -> Markup {
    let words = ctx.words();
    let body = html! {
        main id="work" tabindex="-1" data-kind=[frame::book_word(ctx)] {
            @if let Some(word) = frame::book_word(ctx) { p { span class="book-kind" { (word) } } }
            h1 { (words.say("folder-over-title")) }
            p class="fact" { (words.say("folder-over")) }
        }
    };
    alone(ctx, "folder-over-title", None, &body)
}

/// A page without the salon's frame: no places, no scripts, no forms that post.
fn alone(ctx: &Ctx, title: &str, seen: Option<&Seen>, body: &Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang=(ctx.language.code()) class=[frame::book_class(ctx)] {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="robots" content="noindex";
                title { (frame::on_paper(ctx, ctx.words().say(title))) }
                link rel="stylesheet" href=(STYLE_PATH);
                link rel="stylesheet" href=(FOLDER_STYLE_PATH);
                link rel="icon" type="image/svg+xml" href=(frame::icon(ctx.book == BookKind::Practice));
                @if let Some(seen) = seen { style { (PreEscaped(margins(ctx, seen))) } }
            }
            body class="desk folder" {
                (shapes::sheet())
                (body)
            }
        }
    }
}

/// What is printed at the edge of every sheet of paper.
fn margins(ctx: &Ctx, seen: &Seen) -> String {
    let words = ctx.words();
    let printed = [("at", full(ctx, ctx.now).into())];
    let [top, span, printed, page, of] = [
        salon(ctx, seen),
        span(ctx, &seen.period),
        words.tell("folder-printed", &printed),
        words.say("folder-page"),
        words.say("folder-of"),
    ]
    .map(|text| css_text(&text));
    format!(
        "@page {{ @top-left {{ content: {top} }} @top-right {{ content: {span} }} \
         @bottom-left {{ content: {printed} }} \
         @bottom-right {{ content: {page} \" \" counter(page) \" \" {of} \" \" counter(pages) }} }}"
    )
}

/// A text for a style sheet. Whatever could end the text, or the style, is written as its number.
fn css_text(text: &str) -> String {
    let one = |c: char| match c {
        '"' | '\\' | '<' | '>' | '&' | '\u{0}'..='\u{1f}' => format!("\\{:x} ", u32::from(c)),
        c => c.to_string(),
    };
    format!("\"{}\"", text.chars().map(one).collect::<String>())
}

/// Whose book it is and in which zone. A salon has no name in its book.
fn salon(ctx: &Ctx, seen: &Seen) -> String {
    let words = ctx.words();
    let kind = match ctx.book {
        BookKind::Salon => "folder-book-salon",
        BookKind::Demo => "book-demo",
        BookKind::Practice => "book-practice",
    };
    format!("{}, {}", words.say(kind), seen.kept.zone)
}

fn span(ctx: &Ctx, period: &Period) -> String {
    let (from, to) = (day(ctx, period.from), day(ctx, period.last()));
    ctx.words().tell("folder-span", &[("from", from.into()), ("to", to.into())])
}

/// `28 Nov 2026`: what is printed is read in other years.
pub fn day(ctx: &Ctx, at: Instant) -> String {
    format!("{} {}", when::day_and_month(ctx, at), clock::civil(at, &ctx.zone).year())
}

/// Day and time.
pub fn full(ctx: &Ctx, at: Instant) -> String {
    format!("{} {}", day(ctx, at), when::clock_of(ctx, at))
}

fn languages(ctx: &Ctx, seen: &Seen) -> Markup {
    html! {
        nav class="languages no-print" aria-label=(ctx.words().say("folder-languages")) {
            @for language in Language::ALL.into_iter().filter(|it| it.is_whole() || *it == ctx.language) {
                a class="key" href=(seen.address(&seen.period, Some(language))) lang=(language.code())
                    aria-current=[(language == ctx.language).then_some("true")] { (language.name()) }
            }
        }
    }
}

/// Said where the words of this page were not read by somebody of the trade.
fn draft(ctx: &Ctx) -> Markup {
    let (drafts, lines) = ctx.language.drafts();
    let args = [("drafts", drafts.to_string().into()), ("lines", lines.to_string().into())];
    html! {
        @if drafts > 0 {
            p class="draft" { (ctx.language.name()) ": " (ctx.words().tell("language-drafts", &args)) }
        }
    }
}

fn contents(ctx: &Ctx) -> Markup {
    html! {
        nav class="parts no-print" aria-label=(ctx.words().say("folder-parts")) {
            ul {
                @for (number, key) in PARTS.iter().enumerate() {
                    li { a href=(format!("#part-{number}")) { (number) ". " (ctx.words().say(key)) } }
                }
            }
        }
    }
}

fn part(ctx: &Ctx, number: usize, inside: &Markup) -> Markup {
    html! {
        section class="part" id=(format!("part-{number}")) {
            h2 { span { (number) ". " (ctx.words().say(PARTS[number])) } }
            (inside)
        }
    }
}

impl Seen {
    /// The address of this page for a time and a language.
    pub fn address(&self, period: &Period, language: Option<Language>) -> String {
        let time = period.query();
        match language {
            Some(language) => format!("{}?{time}&in={}", self.path, language.code()),
            None => format!("{}?{time}", self.path),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::css_text;

    #[test]
    fn no_text_ends_the_style_it_stands_in() {
        assert_eq!(css_text("a \"b\" </style>\\"), r#""a \22 b\22  \3c /style\3e \5c ""#);
    }
}
