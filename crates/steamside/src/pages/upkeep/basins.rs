//! Foot basins: drain, clean, rinse, keep wet for the label's minutes, drain; after each client, at
//! the day's end, weekly.

use super::Seen;
use crate::pages::parts::{self, Form, Ground};
use crate::pages::shapes::Shape;
use crate::pages::{say, when};
use crate::upkeep::{BasinSeen, BasinStep, is_soon, likely};
use crate::web::Ctx;
use day::chores::{Due, Late};
use logbook::fact::BasinAfter;
use maud::{Markup, html};

/// What a basin is cleaned after: its word in a form, its line.
const AFTER: [(BasinAfter, &str, &str); 3] = [
    (BasinAfter::Client, "client", "basin-after-client"),
    (BasinAfter::DayEnd, "day", "basin-after-day"),
    (BasinAfter::Week, "week", "basin-after-week"),
];

/// The key of what a basin is cleaned after.
pub fn after_key(after: BasinAfter) -> &'static str {
    AFTER.iter().find(|(known, ..)| *known == after).map_or("basin-after-client", |row| row.2)
}

/// Name of a basin.
pub(super) fn name(ctx: &Ctx, seen: &BasinSeen) -> String {
    let thing = seen.basin.thing;
    ctx.words().tell(say::thing_key(thing.what), &[("number", thing.number.to_string().into())])
}

/// All foot basins, those that wait first.
pub(super) fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let mut basins: Vec<&BasinSeen> = seen.upkeep.basins.iter().collect();
    basins.sort_by_key(|basin| match basin.step {
        BasinStep::Drain(_) => 0,
        BasinStep::Wet(_) => 1,
        BasinStep::Dry => 2,
    });
    html! {
        h2 { (Shape::Basin.draw()) span { (words.say("basins-title")) } }
        @if seen.upkeep.uncleaned > 0 {
            p class="fact" { (words.tell("basin-waits", &[("count", seen.upkeep.uncleaned.into())])) }
        }
        p { (words.say("basin-how")) " " (words.say("basin-liner")) }
        div class="cards" { @for basin in basins { (card(ctx, seen, basin)) } }
    }
}

fn card(ctx: &Ctx, seen: &Seen, basin: &BasinSeen) -> Markup {
    let words = ctx.words();
    let waits = basin.step != BasinStep::Dry || is_soon(basin.day_end, ctx.now);
    let source =
        if basin.basin.wet_min.is_some() { "basin-label-own" } else { "basin-label-typical" };
    parts::card(
        if waits { Ground::Turn } else { Ground::Fine },
        Shape::Basin,
        &name(ctx, basin),
        &html! {
            @match basin.step {
                BasinStep::Wet(until) => {
                    p class="fact" { (words.tell("basin-wet-until", &[("time", when::clock_of(ctx, until).into())])) }
                    p { (words.say("basin-not-yet")) }
                    details { summary { (words.say("basin-again")) } (wet_form(ctx, seen, basin)) }
                }
                BasinStep::Drain(since) => {
                    p class="fact" { (words.tell("basin-drain-now", &[("time", when::clock_of(ctx, since).into())])) }
                    (drain_form(ctx, seen, basin))
                    details { summary { (words.say("basin-again")) } (wet_form(ctx, seen, basin)) }
                }
                BasinStep::Dry => {
                    @if let Some(drained) = basin.basin.drained {
                        p { (words.tell("basin-clean-since", &[("time", when::moment(ctx, drained.happened).into())])) }
                    }
                    (wet_form(ctx, seen, basin))
                }
            }
            ul class="chores" {
                li { span { (words.say("basin-day-end")) } span { (stands(ctx, basin.day_end)) } }
                li { span { (words.say("basin-week")) } span { (stands(ctx, basin.week)) } }
            }
            @if !used_today(ctx, basin) && basin.day_end != Due::Left { (not_used_form(ctx, basin)) }
            p class="known" { (words.tell(source, &[("count", basin.wet_min.into())])) }
        },
    )
}

fn used_today(ctx: &Ctx, basin: &BasinSeen) -> bool {
    basin.basin.wet.is_some_and(|(stamp, _)| when::same_day(ctx, stamp.happened, ctx.now))
}

fn stands(ctx: &Ctx, due: Due) -> String {
    let words = ctx.words();
    let day = |day: i64| when::day_by_number(ctx, day).into();
    match due {
        Due::Overdue(Late::Since(since)) => words.tell("due-late", &[("day", day(since))]),
        Due::Later(at) => words.tell("due-later", &[("time", when::clock_of(ctx, at).into())]),
        Due::Done => words.say("due-done-today"),
        Due::Left => words.say("basin-not-used-today"),
        Due::Next(Some(next)) => words.tell("due-next", &[("day", day(next))]),
        _ => words.say("due-now"),
    }
}

fn wet_form(ctx: &Ctx, seen: &Seen, basin: &BasinSeen) -> Markup {
    let words = ctx.words();
    let id = basin.basin.thing.thing.to_string();
    let likely = likely(basin);
    Form { then: Some("/upkeep"), ..Form::new("basin-wet", &id) }.draw(
        ctx,
        &html! {
            (parts::hidden("basin", &id))
            fieldset class="choices" {
                legend { (words.say("basin-after")) }
                @for (after, word, key) in AFTER {
                    label {
                        input type="radio" name="after" value=(word) checked[after == likely];
                        span { (words.say(key)) }
                    }
                }
            }
            (parts::sign_line_for(ctx, &seen.people, &name(ctx, basin), &words.tell("basin-wet-asks", &[("count", basin.wet_min.into())])))
        },
    )
}

fn drain_form(ctx: &Ctx, seen: &Seen, basin: &BasinSeen) -> Markup {
    let id = basin.basin.thing.thing.to_string();
    Form { then: Some("/upkeep"), ..Form::new("basin-drained", &id) }.draw(
        ctx,
        &html! {
            (parts::hidden("basin", &id))
            (parts::sign_line_for(ctx, &seen.people, &name(ctx, basin), &ctx.words().say("basin-drain-asks")))
        },
    )
}

fn not_used_form(ctx: &Ctx, basin: &BasinSeen) -> Markup {
    let id = basin.basin.thing.thing.to_string();
    Form { then: Some("/upkeep"), ..Form::new("not-used", &id) }.draw(
        ctx,
        &html! {
            (parts::hidden("thing", &id))
            p { (parts::key_for(&ctx.words().say("chore-not-used"), &name(ctx, basin))) }
        },
    )
}
