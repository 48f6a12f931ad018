//! Facts about upkeep, in plain words, for the log.

use super::Names;
use crate::pages::{say, upkeep};
use crate::web::Ctx;
use crate::words::Arg;
use load::ChoreWord;
use logbook::fact::{About, ChoreRule, Found, LeftOut, Upkeep};

/// One fact about upkeep as one line.
pub(super) fn line(ctx: &Ctx, names: &Names, said: &Upkeep) -> String {
    let words = ctx.words();
    let named = |key: &str, thing| words.tell(key, &[("what", names.thing(ctx, thing).into())]);
    match said {
        Upkeep::ThingAdded { thing, .. } => named("line-thing", *thing),
        Upkeep::ThingEnded { thing } => named("line-thing-ended", *thing),
        Upkeep::JarSet { jar, contact_min, lasts_h, .. } => {
            let lasts = lasts_h.map_or_else(
                || words.say("jar-lasts-day"),
                |hours| words.tell("jar-lasts-hours", &[("count", hours.into())]),
            );
            let what = names.thing(ctx, *jar).into();
            let args = [("what", what), ("count", (*contact_min).into()), ("lasts", lasts.into())];
            words.tell("line-jar-set", &args)
        }
        Upkeep::JarMixed { jar } => named("line-jar-mixed", *jar),
        Upkeep::JarIn { jar } => named("line-jar-in", *jar),
        Upkeep::JarEmptied { jar } => named("line-jar-emptied", *jar),
        Upkeep::BasinSet { basin, wet_min } => words.tell(
            "line-basin-set",
            &[("what", names.thing(ctx, *basin).into()), ("count", (*wet_min).into())],
        ),
        Upkeep::BasinWet { basin, after } => words.tell(
            "line-basin-wet",
            &[
                ("what", names.thing(ctx, *basin).into()),
                ("after", words.say(upkeep::after_key(*after)).into()),
            ],
        ),
        Upkeep::BasinDrained { basin } => named("line-basin-drained", *basin),
        Upkeep::NotUsed { thing } => named("line-not-used", *thing),
        other => chore_line(ctx, names, other),
    }
}

fn chore_line(ctx: &Ctx, names: &Names, said: &Upkeep) -> String {
    let words = ctx.words();
    let named = |key: &str, chore, about| {
        words.tell(key, &[("chore", chore_name(ctx, names, chore, about).into())])
    };
    match said {
        Upkeep::ChoreSet(rule) => words.tell(
            "line-chore-set",
            &[
                ("chore", chore_name(ctx, names, &rule.chore, rule.about).into()),
                ("often", how_often(ctx, rule).into()),
            ],
        ),
        Upkeep::ChoreEnded { chore, about } => named("line-chore-ended", chore, *about),
        Upkeep::ChoreDone { chore, about, found, .. } => match found {
            Found::Fine => named("line-chore-done", chore, *about),
            Found::NotFine => named("line-chore-not-fine", chore, *about),
        },
        Upkeep::ChoreLeft { chore, about, why } => match why {
            LeftOut::Closed => named("line-chore-closed", chore, *about),
            LeftOut::NotUsed => named("line-chore-not-used", chore, *about),
        },
        other => stock_line(ctx, other),
    }
}

fn stock_line(ctx: &Ctx, said: &Upkeep) -> String {
    let words = ctx.words();
    let counted = |key: &str, item, count: &u32| {
        let args = [("what", say::stock(ctx, item).into()), ("count", Arg::from(*count))];
        words.tell(key, &args)
    };
    match said {
        Upkeep::StockSet { item, least, .. } => counted("line-stock-set", item, least),
        Upkeep::StockEnded { item } => {
            words.tell("line-stock-ended", &[("what", say::stock(ctx, item).into())])
        }
        Upkeep::StockCounted { item, count } => counted("line-stock-counted", item, count),
        Upkeep::StockBought { item, count, .. } => counted("line-stock-bought", item, count),
        _ => words.say("line-upkeep"),
    }
}

fn chore_name(ctx: &Ctx, names: &Names, chore: &ChoreWord, about: About) -> String {
    let chore = say::chore(ctx, chore);
    let about = match about {
        About::Salon => return chore,
        About::Machine(machine) => names.machine(ctx, machine),
        About::Thing(thing) => names.thing(ctx, thing),
    };
    ctx.words().tell("chore-of", &[("about", about.into()), ("chore", chore.into())])
}

/// `every 7 days, after 100 runs`.
pub fn how_often(ctx: &Ctx, rule: &ChoreRule) -> String {
    let words = ctx.words();
    let days = rule.days.map(|days| match days {
        1 => words.say("often-day"),
        days => words.tell("often-days", &[("count", days.into())]),
    });
    let runs = rule.runs.map(|runs| words.tell("often-runs", &[("count", runs.into())]));
    let both: Vec<String> = days.into_iter().chain(runs).collect();
    if both.is_empty() { words.say("due-not-known") } else { both.join(", ") }
}
