//! Moments, lengths of time and figures as people read them: the month in letters, because
//! 03/04 is two days in two countries; hours from 0 to 24; a point before decimals everywhere, as
//! on the displays of the machines.

use crate::clock;
use crate::web::Ctx;
use jiff::civil;
use measure::{Instant, Span};

fn time(ctx: &Ctx, at: Instant) -> civil::DateTime {
    clock::civil(at, &ctx.zone)
}

/// `14:32`.
pub fn clock_of(ctx: &Ctx, at: Instant) -> String {
    let at = time(ctx, at);
    format!("{:02}:{:02}", at.hour(), at.minute())
}

/// `Wed 25 Nov`, with the year where it is not this one.
pub fn day_of(ctx: &Ctx, at: Instant) -> String {
    let at = time(ctx, at);
    let words = ctx.words();
    let text = words.tell(
        "date-day",
        &[
            (
                "weekday",
                words.say(&format!("weekday-{}", at.weekday().to_monday_one_offset())).into(),
            ),
            ("day", at.day().to_string().into()),
            ("month", words.say(&format!("month-{}", at.month())).into()),
        ],
    );
    if at.year() == time(ctx, ctx.now).year() { text } else { format!("{text} {}", at.year()) }
}

/// `Wed 25 Nov`, of a day by its number; a day that no calendar reaches by its number alone.
pub fn day_by_number(ctx: &Ctx, number: i64) -> String {
    clock::start_of_day(number, &ctx.zone).map_or(number.to_string(), |at| day_of(ctx, at))
}

/// `25 Nov`, for a label.
pub fn day_and_month(ctx: &Ctx, at: Instant) -> String {
    let at = time(ctx, at);
    let words = ctx.words();
    let month = words.say(&format!("month-{}", at.month()));
    words.tell("date-short", &[("day", at.day().to_string().into()), ("month", month.into())])
}

/// The text of a machine's own clock, with the month in letters where it has a date. A text that
/// is no time is shown as it is.
pub fn machine_clock(ctx: &Ctx, text: &str) -> String {
    let Ok(at) = text.parse::<civil::DateTime>() else {
        return text.to_owned();
    };
    let words = ctx.words();
    let month = words.say(&format!("month-{}", at.month()));
    let day =
        words.tell("date-short", &[("day", at.day().to_string().into()), ("month", month.into())]);
    format!("{day} {} {:02}:{:02}:{:02}", at.year(), at.hour(), at.minute(), at.second())
}

/// The time today, day and time on any other day.
pub fn moment(ctx: &Ctx, at: Instant) -> String {
    if same_day(ctx, at, ctx.now) {
        clock_of(ctx, at)
    } else {
        format!("{} {}", day_of(ctx, at), clock_of(ctx, at))
    }
}

/// Do two moments lie on one day of the salon?
pub fn same_day(ctx: &Ctx, one: Instant, other: Instant) -> bool {
    time(ctx, one).date() == time(ctx, other).date()
}

/// The day as a date field holds it.
pub fn date_value(ctx: &Ctx, at: Instant) -> String {
    time(ctx, at).date().to_string()
}

/// A machine-readable moment for a `time` element.
pub fn machine_value(ctx: &Ctx, at: Instant) -> String {
    let at = time(ctx, at);
    format!("{}T{:02}:{:02}", at.date(), at.hour(), at.minute())
}

/// Milliseconds as minutes and seconds, `4:06`.
pub fn length(millis: i64) -> String {
    Span::from_millis(millis).to_string()
}

/// Thousandths with one decimal, `134.8`, cut and never rounded up: 133.96 is not 134.0, and a
/// figure that missed its limit must not look like one that met it.
pub fn tenths(thousandths: i64) -> String {
    let tenths = thousandths.div_euclid(100);
    let sign = if tenths < 0 { "-" } else { "" };
    let tenths = tenths.unsigned_abs();
    format!("{sign}{}.{}", tenths / 10, tenths % 10)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_below_its_limit_never_reads_as_the_limit() {
        assert_eq!(tenths(133_999), "133.9");
        assert_eq!(tenths(134_000), "134.0");
        assert_eq!(tenths(-120), "-0.2");
        assert_eq!(tenths(-100), "-0.1");
        assert_eq!(tenths(0), "0.0");
    }

    #[test]
    fn four_minutes_six() {
        assert_eq!(length(246_000), "4:06");
    }
}
