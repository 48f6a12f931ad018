//! The time that the record is shown for.

use super::Seen;
use crate::clock;
use crate::pages::{parts, when};
use crate::web::Ctx;
use jiff::civil::{Date, date};
use maud::{Markup, html};
use measure::{Instant, Span};

/// What was asked for in the address.
#[derive(Debug, Clone, Default)]
pub struct Asked {
    /// `30`, `90` or `year`.
    pub time: Option<String>,
    /// From this day,
    pub from: Option<String>,
    /// to this one.
    pub to: Option<String>,
    /// The code of a language.
    pub language: Option<String>,
}

/// How the time was chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Choice {
    /// The last so many days, today among them.
    Days(u32),
    /// From the first of January.
    Year,
    /// From day to day.
    Between(Date, Date),
}

/// The time that is shown: from `from` on and before `to`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Period {
    /// How it was chosen.
    pub choice: Choice,
    /// Its first moment.
    pub from: Instant,
    /// The first moment after it.
    pub to: Instant,
    /// Days were asked for that could not be read.
    pub unread: bool,
}

impl Period {
    /// A moment of its last day.
    pub fn last(&self) -> Instant {
        self.to - Span::from_millis(1)
    }

    /// How it is said in an address.
    pub fn query(&self) -> String {
        match self.choice {
            Choice::Days(days) => format!("time={days}"),
            Choice::Year => "time=year".to_owned(),
            Choice::Between(from, to) => format!("from={from}&to={to}"),
        }
    }
}

/// The time that was asked for. Days that cannot be read are said to be so.
pub fn of(ctx: &Ctx, asked: &Asked) -> Period {
    let said = |text: &Option<String>| {
        text.as_deref().map(str::trim).filter(|text| !text.is_empty()).map(str::to_owned)
    };
    let choice = match (said(&asked.from), said(&asked.to), asked.time.as_deref()) {
        (None, None, None | Some("30")) => Some(Choice::Days(30)),
        (None, None, Some("90")) => Some(Choice::Days(90)),
        (None, None, Some("year")) => Some(Choice::Year),
        (Some(from), to, _) => between(ctx, &from, to.as_deref()),
        _ => None,
    };
    match choice.and_then(|choice| spread(ctx, choice, false)) {
        Some(period) => period,
        None => spread(ctx, Choice::Days(30), true).unwrap_or(Period {
            choice: Choice::Days(30),
            from: ctx.now - Span::from_minutes(30 * 24 * 60),
            to: ctx.now,
            unread: true,
        }),
    }
}

/// From day to day; without a second one to today. Days in the wrong order are turned round.
fn between(ctx: &Ctx, from: &str, to: Option<&str>) -> Option<Choice> {
    let from: Date = from.parse().ok()?;
    let to: Date = match to {
        Some(to) => to.parse().ok()?,
        None => clock::civil(ctx.now, &ctx.zone).date(),
    };
    Some(Choice::Between(from.min(to), from.max(to)))
}

fn spread(ctx: &Ctx, choice: Choice, unread: bool) -> Option<Period> {
    let today = clock::civil(ctx.now, &ctx.zone).date();
    let (first, last) = match choice {
        Choice::Days(days) => {
            let back = jiff::Span::new().try_days(i64::from(days) - 1).ok()?;
            (today.checked_sub(back).ok()?, today)
        }
        Choice::Year => (date(today.year(), 1, 1), today),
        Choice::Between(first, last) => (first, last),
    };
    let start = |date: Date| clock::moments_of(date.at(0, 0, 0, 0), &ctx.zone).into_iter().min();
    Some(Period { choice, from: start(first)?, to: start(last.tomorrow().ok()?)?, unread })
}

/// Plain links and a form that asks again: it posts nothing.
pub fn chooser(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let language = seen.chosen.then_some(ctx.language);
    let link = |choice: Choice, key: &str| {
        let there = Period { choice, ..seen.period };
        let current = (seen.period.choice == choice).then_some("true");
        html! {
            a class="key" href=(seen.address(&there, language)) aria-current=[current] { (words.say(key)) }
        }
    };
    html! {
        nav class="period no-print" aria-label=(words.say("folder-period")) {
            p class="tabs" {
                (link(Choice::Days(30), "folder-days-30"))
                (link(Choice::Days(90), "folder-days-90"))
                (link(Choice::Year, "folder-year"))
            }
            form method="get" action=(seen.path) {
                @if let Some(language) = language { (parts::hidden("in", language.code())) }
                p class="field" {
                    label for="folder-from" { (words.say("folder-from")) }
                    input type="date" id="folder-from" name="from" required
                        value=(when::date_value(ctx, seen.period.from));
                }
                p class="field" {
                    label for="folder-to" { (words.say("folder-to")) }
                    input type="date" id="folder-to" name="to" value=(when::date_value(ctx, seen.period.last()));
                }
                p { button class="key" { (words.say("folder-choose")) } }
            }
        }
    }
}
