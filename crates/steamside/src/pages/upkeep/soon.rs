//! Upkeep in a few words, for NOW and for the wall.

use super::{basins, chores, jars};
use crate::pages::parts::{self, Ground};
use crate::pages::shapes::Shape;
use crate::pages::when;
use crate::upkeep::{self, BasinStep, Days, Mix, Upkeep, is_soon};
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::view::View;
use maud::{Markup, html};

/// How many chores are named before they are only counted.
const NAMED: usize = 3;

/// What waits in the next hour.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Soon {
    /// A line for each foot basin that waits.
    pub basins: Vec<String>,
    /// How many chores are due.
    pub chores: usize,
    /// The first of them.
    pub first: Vec<String>,
}

/// What waits in the next hour, by the book.
pub fn soon_of(view: &View<'_>, ctx: &Ctx) -> Result<Soon, BookError> {
    let upkeep = upkeep::see(view, &Days::read(view, ctx.now, &ctx.zone)?)?;
    Ok(soon(ctx, &upkeep))
}

/// At most two quiet cards.
pub fn soon_cards(ctx: &Ctx, soon: &Soon) -> Markup {
    let words = ctx.words();
    let card = |shape, heading: &str, lines: &[String], more: usize| {
        parts::card(
            Ground::Fine,
            shape,
            heading,
            &html! {
                ul {
                    @for line in lines { li { (line) } }
                    @if more > 0 { li { (words.tell("chores-more", &[("count", more.into())])) } }
                }
                p { a class="key" href="/upkeep" { (words.say("place-upkeep")) } }
            },
        )
    };
    html! {
        @if !soon.basins.is_empty() { (card(Shape::Basin, &words.say("basins-title"), &soon.basins, 0)) }
        @if soon.chores > 0 {
            @let heading = words.tell("chores-soon", &[("count", soon.chores.into())]);
            (card(Shape::Brush, &heading, &soon.first, soon.chores - soon.first.len()))
        }
    }
}

/// What waits in the next hour.
fn soon(ctx: &Ctx, upkeep: &Upkeep) -> Soon {
    let words = ctx.words();
    let mut lines = Vec::new();
    for seen in upkeep.basins_waiting(ctx.now) {
        let says = match seen.step {
            BasinStep::Wet(until) => {
                words.tell("basin-wet-until", &[("time", when::clock_of(ctx, until).into())])
            }
            BasinStep::Drain(since) => {
                words.tell("basin-drain-now", &[("time", when::clock_of(ctx, since).into())])
            }
            BasinStep::Dry if is_soon(seen.day_end, ctx.now) => words.say("basin-day-end"),
            BasinStep::Dry => words.say("basin-week"),
        };
        let args = [("about", basins::name(ctx, seen).into()), ("chore", says.into())];
        lines.push(words.tell("chore-of", &args));
    }
    if upkeep.uncleaned > 0 {
        lines.push(words.tell("basin-waits", &[("count", upkeep.uncleaned.into())]));
    }
    let mut first: Vec<String> = upkeep
        .jars
        .iter()
        .filter(|jar| matches!(jar.mix, Mix::Past(_)))
        .map(|jar| {
            let args =
                [("about", jars::name(ctx, jar).into()), ("chore", words.say("jar-change").into())];
            words.tell("chore-of", &args)
        })
        .collect();
    first.extend(upkeep.soon(ctx.now).map(|kept| chores::name(ctx, upkeep, kept)));
    let count = first.len();
    first.truncate(NAMED);
    Soon { basins: lines, chores: count, first }
}

/// One sign for the wall, without anybody's name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WallSign {
    /// In a few words.
    pub says: String,
    /// How many chores are due; `None`: it is something that cannot wait.
    pub count: Option<usize>,
}

/// What cannot wait, or how many chores are due.
pub fn wall_sign(ctx: &Ctx, upkeep: &Upkeep) -> Option<WallSign> {
    let words = ctx.words();
    let now = |key: &str, number: u32| {
        let says = words.tell(key, &[("number", number.to_string().into())]);
        Some(WallSign { says, count: None })
    };
    let drain = |seen: &&upkeep::BasinSeen| matches!(seen.step, BasinStep::Drain(_));
    if let Some(seen) = upkeep.basins.iter().find(drain) {
        return now("wall-drain", seen.basin.thing.number);
    }
    if let Some(seen) = upkeep.jars.iter().find(|jar| matches!(jar.mix, Mix::Past(_))) {
        return now("wall-jar", seen.jar.thing.number);
    }
    let count = upkeep.soon(ctx.now).count();
    let says = words.tell("wall-upkeep", &[("count", count.into())]);
    (count > 0).then_some(WallSign { says, count: Some(count) })
}
