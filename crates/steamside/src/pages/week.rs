//! The weekly sheet: one page across for the wall, which works without electricity. Three languages,
//! seven days, a box where something is due. Copied in afterwards in the same order.

use super::frame;
use super::when;
use crate::clock;
use crate::web::Ctx;
use crate::words::{Language, Words};
use jiff::ToSpan;
use jiff::civil::Date;
use logbook::book::BookError;
use logbook::fact::BookKind;
use logbook::view::{Machine, View};
use maud::{DOCTYPE, Markup, html};
use measure::{Instant, Span};

/// The style of the sheet.
pub const STYLE: &str = include_str!("../../assets/week.css");
/// A spore test falls due so long after the last one (the dental guideline of the United States'
/// disease agency, 2003: once a week).
const SPORE: Span = Span::from_minutes(7 * 24 * 60);
/// Rows for runs.
const RUNS: usize = 6;
/// The languages of the sheet.
const LANGUAGES: [Language; 3] = [Language::En, Language::Vi, Language::Es];
/// The rows before the runs, and after them; a box stands in those that are due each day.
const BEFORE: [(&str, bool); 3] =
    [("week-water", true), ("week-seal", true), ("week-washed", false)];
const AFTER: [(&str, bool); 7] = [
    ("week-jar-a", true),
    ("week-jar-b", true),
    ("week-bath", true),
    ("week-foil", false),
    ("week-retired", false),
    ("week-odd", false),
    ("week-back", false),
];

/// What the sheet shows.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The Monday.
    pub monday: Date,
    /// On which of the seven days a spore test is due, by machine: number and days.
    pub spores: Vec<(u32, Vec<usize>)>,
    /// Days that were set closed.
    pub closed: Vec<usize>,
}

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let ctx = &ctx.for_record();
    let today = clock::civil(ctx.now, &ctx.zone).date();
    let back = i64::from(today.weekday().to_monday_zero_offset());
    let monday = today.checked_sub(back.days()).unwrap_or(today);
    let days: Vec<(Instant, Instant)> =
        (0..7).filter_map(|day| span_of(ctx, monday, day)).collect();
    let mut spores = Vec::new();
    for machine in view.machines()? {
        spores.push((machine.number, spore_days(view, &machine, &days)?));
    }
    let mut closed = Vec::new();
    for (at, day) in days.iter().enumerate() {
        let times = view.closed(day.0, day.1)?;
        if times.iter().any(|(from, to)| *from <= day.0 && day.1 <= *to) {
            closed.push(at);
        }
    }
    Ok(draw(ctx, &Seen { monday, spores, closed }))
}

fn span_of(ctx: &Ctx, monday: Date, day: i64) -> Option<(Instant, Instant)> {
    let date = monday.checked_add(day.days()).ok()?;
    let noon = clock::moments_of(date.at(12, 0, 0, 0), &ctx.zone).first().copied()?;
    Some(clock::day(noon, &ctx.zone))
}

/// The first day of the week on which it is due; where none was ever placed, the first day.
fn spore_days(
    view: &View<'_>,
    machine: &Machine,
    days: &[(Instant, Instant)],
) -> Result<Vec<usize>, BookError> {
    let last = view.spore_tests_of(machine.machine)?.iter().map(|test| test.placed.happened).max();
    let due = days.iter().position(|day| last.is_none_or(|last| last + SPORE < day.1));
    Ok(due.into_iter().collect())
}

/// The page around the sheet.
pub fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        (DOCTYPE)
        html lang=(ctx.language.code()) class=[frame::book_class(ctx)] {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (frame::on_paper(ctx, words.say("week-title"))) " – " (words.say("program-name")) }
                link rel="stylesheet" href=(frame::STYLE_PATH);
                link rel="stylesheet" href="/assets/week.css";
                link rel="icon" type="image/svg+xml" href=(frame::icon(ctx.book == BookKind::Practice));
                script src=(frame::SCRIPT_PATH) defer {}
            }
            body class="desk week-page" {
                main id="work" tabindex="-1" data-kind=[frame::book_word(ctx)] {
                    div class="no-print" {
                        @if let Some(word) = frame::book_word(ctx) { p { span class="book-kind" { (word) } } }
                        p { (words.say("week-how")) }
                        p class="ways" {
                            button type="button" class="key" hidden data-prints="yes" { (words.say("labels-print")) }
                            a class="key" href="/later" { (words.say("later-title")) }
                        }
                    }
                    (sheet(ctx, seen))
                }
            }
        }
    }
}

fn sheet(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        section class="week" aria-labelledby="week-title" {
            h1 id="week-title" {
                (words.say("week-title"))
                @if let Some((monday, _)) = span_of(ctx, seen.monday, 0) {
                    " · " (when::day_and_month(ctx, monday)) " " (seen.monday.year())
                }
                @if let Some(kind) = frame::book_class(ctx) {
                    " · " (words.say(if kind == "demo" { "book-demo" } else { "book-practice" }))
                }
            }
            div class="scroll" tabindex="0" role="group" aria-label=(words.say("week-title")) {
                table {
                    thead {
                        tr {
                            td {}
                            @for day in 0..7 { (heading(ctx, seen, day)) }
                        }
                    }
                    tbody {
                        @for (key, daily) in BEFORE { (row(key, &[], |_| daily)) }
                        @for number in 1..=RUNS { (run_row(number)) }
                        @for (machine, days) in &seen.spores {
                            @let machine = [("machine", machine.to_string())];
                            (row("week-spore", &machine, |day| days.contains(&day)))
                        }
                        @for (key, daily) in AFTER { (row(key, &[], |_| daily)) }
                    }
                }
            }
            p class="week-foot" { (words.say("week-marks")) " " (words.say("foot-manual")) }
        }
    }
}

fn heading(ctx: &Ctx, seen: &Seen, day: usize) -> Markup {
    let at = i64::try_from(day).ok().and_then(|day| span_of(ctx, seen.monday, day));
    html! {
        th scope="col" {
            @for language in LANGUAGES {
                span lang=(language.code()) { (Words::of(language).say(&format!("weekday-{}", day + 1))) } " "
            }
            @if let Some((at, _)) = at { strong { (when::day_and_month(ctx, at)) } }
            @if seen.closed.contains(&day) { " " em { (ctx.words().say("gap-closed")) } }
        }
    }
}

fn named(key: &str, args: &[(&str, String)]) -> Markup {
    let args: Vec<_> = args.iter().map(|(name, value)| (*name, value.as_str().into())).collect();
    html! {
        th scope="row" {
            @for language in LANGUAGES {
                span class="of" lang=(language.code()) { (Words::of(language).tell(key, &args)) } " "
            }
        }
    }
}

fn row(key: &str, args: &[(&str, String)], due: impl Fn(usize) -> bool) -> Markup {
    html! {
        tr {
            (named(key, args))
            @for day in 0..7 { td { @if due(day) { span class="box" {} } } }
        }
    }
}

/// Number, programme; from, to, marks, dry; who.
fn run_row(number: usize) -> Markup {
    html! {
        tr class="run" {
            // What the slots are for stands in the first row; the others have their number.
            (named(if number == 1 { "week-run-first" } else { "week-run" }, &[("run", number.to_string())]))
            @for _ in 0..7 {
                td {
                    span class="slot wide" {} span class="slot" {} "–" span class="slot" {}
                    span class="box" {} span class="box" {} span class="slot" {}
                }
            }
        }
    }
}
