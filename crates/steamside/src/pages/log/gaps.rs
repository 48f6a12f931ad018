//! Times of which the book has nothing: a hatched span between two entries, with one tap for the
//! reason; afterwards it stays, with its reason.

use crate::clock;
use crate::pages::parts::{self, Form};
use crate::pages::telling;
use crate::pages::when;
use crate::web::{Ctx, REASONS};
use day::gaps;
use jiff::civil::Time;
use logbook::book::BookError;
use logbook::fact::GapWhy;
use logbook::view::{View, VisitState};
use maud::{Markup, html};
use measure::{Instant, Span};

/// So many entries before the page are looked at, for what happened earlier and was written then.
const LOOK_BACK: u64 = 5_000;
/// A page looks for silences in so long a time: one entry of last year, copied in today, does not make
/// it a year.
const LONGEST: Span = Span::from_minutes(62 * 24 * 60);
/// A week.
const WEEK: Span = Span::from_minutes(7 * 24 * 60);
/// Open hours of a day of which nobody said any, where the same day a week before or after has
/// entries (assumption).
const USUAL: (i8, i8) = (9, 18);

/// A time without an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Silence {
    /// From and to.
    pub span: (Instant, Instant),
    /// Why, once somebody said so.
    pub why: Option<GapWhy>,
}

/// The times without an entry between two moments, the last one first.
pub fn between(
    view: &View<'_>,
    ctx: &Ctx,
    (from, to): (Instant, Instant),
    first_seq: u64,
) -> Result<Vec<Silence>, BookError> {
    let from = from.max(to - LONGEST);
    let seq = first_seq.saturating_sub(LOOK_BACK);
    let around = view.moments(seq, (from - WEEK, to + WEEK))?;
    let explained = view.gaps_explained(from, to)?;
    let mut known: Vec<(Instant, Instant)> = around.iter().map(|at| (*at, *at)).collect();
    known.extend(explained.iter().map(|gap| gap.span));
    known.push((ctx.now, ctx.now));
    let open = open_hours(view, ctx, (from, to), &around)?;
    let mut silences: Vec<Silence> = gaps::find(&known, &open)
        .into_iter()
        .filter(|gap| gap.to > from && gap.from < to)
        .map(|gap| Silence { span: (gap.from, gap.to), why: None })
        .collect();
    silences.extend(explained.iter().map(|gap| Silence { span: gap.span, why: Some(gap.why) }));
    silences.sort_by_key(|silence| std::cmp::Reverse(silence.span));
    Ok(silences)
}

/// The salon's open hours: its working times; where a day has none, from the first visit to the
/// last; where it has none either and the same day of a week before or after has entries, the usual
/// hours. Never a time that was set closed.
fn open_hours(
    view: &View<'_>,
    ctx: &Ctx,
    (from, to): (Instant, Instant),
    around: &[Instant],
) -> Result<Vec<(Instant, Instant)>, BookError> {
    let closed = view.closed(from - WEEK, to + WEEK)?;
    let mut open = Vec::new();
    let mut day = clock::day(from, &ctx.zone);
    while day.0 < to {
        let shifts = view.shifts(day.0, day.1)?;
        let visits = view.visits(day.0, day.1)?;
        let came = visits.iter().filter(|visit| visit.state != VisitState::Cancelled);
        let came: Vec<(Instant, Instant)> =
            came.map(|visit| (visit.start(), visit.end())).collect();
        if shifts.is_empty() && came.is_empty() {
            open.extend(usual(ctx, day, around));
        } else if shifts.is_empty() {
            let first = came.iter().map(|visit| visit.0).min();
            let last = came.iter().map(|visit| visit.1).max();
            open.extend(first.zip(last));
        } else {
            open.extend(shifts.iter().map(|shift| (shift.from, shift.to)));
        }
        day = clock::day(day.1, &ctx.zone);
    }
    Ok(open.into_iter().flat_map(|span| without(span, &closed)).collect())
}

fn usual(ctx: &Ctx, day: (Instant, Instant), around: &[Instant]) -> Option<(Instant, Instant)> {
    let has = |shift: Span| {
        let noon = Span::from_minutes(12 * 60);
        let (from, to) = clock::day(day.0 + noon + shift, &ctx.zone);
        around.iter().any(|at| (from..to).contains(at))
    };
    if !has(WEEK) && !has(Span::from_millis(-WEEK.millis())) {
        return None;
    }
    let date = clock::civil(day.0, &ctx.zone).date();
    let at = |hour: i8| {
        let time = Time::new(hour, 0, 0, 0).ok()?;
        clock::moments_of(date.to_datetime(time), &ctx.zone).first().copied()
    };
    at(USUAL.0).zip(at(USUAL.1))
}

/// What is left of a time without those in which the salon was closed.
fn without(span: (Instant, Instant), closed: &[(Instant, Instant)]) -> Vec<(Instant, Instant)> {
    let mut left = vec![span];
    for (from, to) in closed {
        left = left
            .into_iter()
            .flat_map(|(begin, end)| [(begin, end.min(*from)), (begin.max(*to), end)])
            .filter(|(begin, end)| begin < end)
            .collect();
    }
    left
}

/// The hatched span.
pub fn draw(ctx: &Ctx, silence: &Silence) -> Markup {
    let words = ctx.words();
    let (from, to) = silence.span;
    let says = [("from", when::moment(ctx, from).into()), ("to", when::moment(ctx, to).into())];
    let id = format!("{}-{}", from.millis(), to.millis());
    html! {
        li class="gap" {
            p class="gap-says" { strong { (words.tell("gap-nothing-written", &says)) } }
            @match silence.why {
                Some(why) => p { (words.say(telling::why_key(why))) },
                None => {
                    p { (words.say("gap-asks")) }
                    (Form::new("gap", &id).draw(ctx, &html! {
                        (parts::hidden("from", from.millis()))
                        (parts::hidden("to", to.millis()))
                        @if let Some(sign) = ctx.sign { (parts::hidden("sign", sign)) }
                        div class="gap-keys" {
                            @for (_, word, key) in REASONS {
                                button class="key" name="why" value=(word) { (words.say(key)) }
                            }
                        }
                    }))
                }
            }
        }
    }
}
