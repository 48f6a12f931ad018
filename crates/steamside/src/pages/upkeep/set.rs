//! Upkeep's settings: which jars, basins and baths there are and what their labels say, how often a
//! chore, what is kept in stock.

use super::{about, about_value, chores, labels};
use crate::pages::frame::{self, Frame, Place};
use crate::pages::parts::{self, Caution, Form, Ground};
use crate::pages::shapes::Shape;
use crate::pages::{say, telling};
use crate::upkeep::{self, Days, Kept, Upkeep};
use crate::web::Ctx;
use logbook::book::BookError;
use logbook::fact::{About, DayPart, ThingKind, UsedBy};
use logbook::typical::chores::{SPORE_TEST, STOCK};
use logbook::view::{JarLabel, Stock, Thing, View};
use maud::{Markup, html};

/// Longest word of a chore or a stock.
const WORD: u32 = 24;

/// The page.
pub fn page(view: &View<'_>, ctx: &Ctx) -> Result<Markup, BookError> {
    let upkeep = upkeep::see(view, &Days::read(view, ctx.now, &ctx.zone)?)?;
    let frame = Frame {
        title: ctx.words().say("upkeep-set-title"),
        place: Place::Upkeep,
        desk: true,
        again_s: None,
        did: frame::did(view, ctx)?,
    };
    let labels = labels(view, &upkeep)?;
    Ok(frame::page(ctx, &frame, &draw(ctx, &upkeep, &labels)))
}

/// What stands on it.
pub fn draw(ctx: &Ctx, upkeep: &Upkeep, labels: &[Option<String>]) -> Markup {
    let words = ctx.words();
    let mut chores: Vec<&Kept> = upkeep.chores.iter().collect();
    // As people look for them: by name, not by what is due.
    chores.sort_by_key(|kept| chores::name(ctx, upkeep, kept));
    html! {
        p { a class="key" href="/upkeep" { (words.say("upkeep-all")) } }
        (parts::card(Ground::Fine, Shape::Jar, &words.say("set-things"), &html! {
            @for thing in &upkeep.things { (thing_part(ctx, upkeep, labels, thing)) }
            p class="ways" {
                @for (what, key) in [("jar", "add-jar"), ("basin", "add-basin"), ("bath", "add-bath")] {
                    (Form::new("thing", what).draw(ctx, &html! {
                        (parts::hidden("what", what))
                        button class="key" { (words.say(key)) }
                    }))
                }
            }
        }))
        (parts::card(Ground::Fine, Shape::Brush, &words.say("set-chores"), &html! {
            p { (words.say("set-chores-how")) }
            @for (at, kept) in chores.iter().enumerate() { (chore_part(ctx, upkeep, at, kept)) }
            details { summary { (words.say("set-chore-own")) } (own_form(ctx, upkeep)) }
        }))
        (parts::card(Ground::Fine, Shape::Bag, &words.say("stock-title"), &html! {
            @for (at, stock) in upkeep.stock.iter().enumerate() { (stock_part(ctx, at, stock)) }
            details { summary { (words.say("set-stock-add")) } (stock_form(ctx, "new", None)) }
        }))
        (parts::cautions(ctx, &[Caution::Liquids, Caution::Manual]))
    }
}

/// A thing, what its label says, and that it is here no longer.
fn thing_part(ctx: &Ctx, upkeep: &Upkeep, labels: &[Option<String>], thing: &Thing) -> Markup {
    let words = ctx.words();
    let id = thing.thing.to_string();
    html! {
        details {
            summary { (about(ctx, upkeep, About::Thing(thing.thing))) }
            @match thing.what {
                ThingKind::Jar => {
                    @let mut jars = upkeep.jars.iter().zip(labels);
                    @if let Some((seen, label)) = jars.find(|(jar, _)| jar.jar.thing.thing == thing.thing) {
                        (jar_form(ctx, &id, seen.jar.label, label.as_deref()))
                    }
                }
                ThingKind::FootBasin => {
                    @let seen = upkeep.basins.iter().find(|basin| basin.basin.thing.thing == thing.thing);
                    @let wet = seen.and_then(|seen| seen.basin.wet_min);
                    (Form::new("basin-set", &id).draw(ctx, &html! {
                        (parts::hidden("basin", &id))
                        (number(&format!("wet-{id}"), ("wet", &words.say("set-wet")), wet, true))
                        p { button class="key" { (words.say("set-keep")) } }
                    }))
                }
                ThingKind::Ultrasonic => {}
            }
            (Form::new("thing-ended", &id).draw(ctx, &html! {
                (parts::hidden("thing", &id))
                p { button class="key stop-key" { (words.say("set-thing-ended")) } }
            }))
        }
    }
}

fn jar_form(ctx: &Ctx, id: &str, label: Option<JarLabel>, says: Option<&str>) -> Markup {
    let words = ctx.words();
    let text = format!("label-{id}");
    Form::new("jar-set", id).draw(
        ctx,
        &html! {
            (parts::hidden("jar", id))
            (number(&format!("contact-{id}"), ("contact", &words.say("set-contact")), label.map(|label| label.contact_min), true))
            (number(&format!("lasts-{id}"), ("lasts", &words.say("set-lasts")), label.and_then(|label| label.lasts_h), false))
            p class="field" {
                label for=(text) { (words.say("set-label")) }
                input id=(text) name="label" autocomplete="off" maxlength="120" value=[says];
            }
            p { button class="key" { (words.say("set-keep")) } }
        },
    )
}

/// A whole number; where it may be empty, nobody knows it yet.
fn number(id: &str, (name, label): (&str, &str), value: Option<u32>, needed: bool) -> Markup {
    html! {
        p class="field" {
            label for=(id) { (label) }
            input type="number" inputmode="numeric" id=(id) name=(name) min="1" step="1"
                value=[value] required[needed];
        }
    }
}

fn chore_part(ctx: &Ctx, upkeep: &Upkeep, at: usize, kept: &Kept) -> Markup {
    let words = ctx.words();
    let rule = &kept.chore.rule;
    let often = telling::how_often(ctx, rule);
    let on = at.to_string();
    html! {
        details {
            summary { (chores::name(ctx, upkeep, kept)) ": " (often) }
            p class="known" { (chores::source(ctx, kept)) }
            (Form::new("chore-set", &on).draw(ctx, &html! {
                (parts::hidden("chore", &rule.chore))
                (parts::hidden("about", about_value(rule.about)))
                (rule_fields(ctx, &on, Some(kept), matches!(rule.about, About::Machine(_))))
                p { button class="key" { (words.say("set-keep")) } }
            }))
            (Form::new("chore-ended", &on).draw(ctx, &html! {
                (parts::hidden("chore", &rule.chore))
                (parts::hidden("about", about_value(rule.about)))
                p { button class="key stop-key" { (words.say("set-chore-ended")) } }
            }))
        }
    }
}

/// How often, when in the day, how long, whether work stops, the page.
fn rule_fields(ctx: &Ctx, on: &str, kept: Option<&Kept>, machine: bool) -> Markup {
    let words = ctx.words();
    let rule = kept.map(|kept| &kept.chore.rule);
    let part = rule.map_or(DayPart::AnyTime, |rule| rule.part);
    let id = |name: &str| format!("{name}-{on}");
    html! {
        (number(&id("days"), ("days", &words.say("set-days")), rule.and_then(|rule| rule.days), false))
        @if machine && rule.is_none_or(|rule| rule.chore.word() != SPORE_TEST) {
            (number(&id("runs"), ("runs", &words.say("set-runs")), rule.and_then(|rule| rule.runs), false))
        }
        p class="field" {
            label for=(id("part")) { (words.say("set-part")) }
            select id=(id("part")) name="part" {
                @for (known, word, key) in [
                    (DayPart::Opening, "opening", "part-opening"),
                    (DayPart::Closing, "closing", "part-closing"),
                    (DayPart::AnyTime, "any", "part-any"),
                ] { option value=(word) selected[known == part] { (words.say(key)) } }
            }
        }
        (number(&id("page"), ("page", &words.say("set-page")), rule.and_then(|rule| rule.manual_page), false))
        @if let Some(minutes) = rule.map(|rule| rule.minutes) { (parts::hidden("takes", minutes)) }
        @if machine {
            p class="choices" {
                label {
                    input type="checkbox" name="stops" value="yes" checked[rule.is_some_and(|rule| rule.stops_work)];
                    span { (words.say("set-stops")) }
                }
            }
        }
    }
}

/// A chore of the salon's own.
fn own_form(ctx: &Ctx, upkeep: &Upkeep) -> Markup {
    let words = ctx.words();
    let machines = upkeep.machines.keys().map(|machine| About::Machine(*machine));
    let things = upkeep.things.iter().map(|thing| About::Thing(thing.thing));
    let all: Vec<About> = [About::Salon].into_iter().chain(machines).chain(things).collect();
    Form::new("chore-set", "own").draw(
        ctx,
        &html! {
            p class="field" {
                label for="own-chore" { (words.say("set-chore-word")) }
                input id="own-chore" name="chore" autocomplete="off" autocapitalize="none" maxlength=(WORD) required;
            }
            p class="field" {
                label for="own-about" { (words.say("set-about")) }
                select id="own-about" name="about" {
                    @for of in all { option value=(about_value(of)) { (about(ctx, upkeep, of)) } }
                }
            }
            (rule_fields(ctx, "own", None, false))
            p { button class="key" { (words.say("set-keep")) } }
        },
    )
}

fn stock_part(ctx: &Ctx, at: usize, stock: &Stock) -> Markup {
    let words = ctx.words();
    html! {
        details {
            summary { (say::stock(ctx, &stock.item)) }
            (stock_form(ctx, &at.to_string(), Some(stock)))
            (Form::new("stock-ended", &at.to_string()).draw(ctx, &html! {
                (parts::hidden("item", &stock.item))
                p { button class="key stop-key" { (words.say("set-stock-ended")) } }
            }))
        }
    }
}

fn stock_form(ctx: &Ctx, on: &str, stock: Option<&Stock>) -> Markup {
    let words = ctx.words();
    let used_by = stock.map_or(UsedBy::Counting, |stock| stock.used_by);
    let id = |name: &str| format!("{name}-{on}");
    Form::new("stock-set", on).draw(
        ctx,
        &html! {
            @match stock {
                Some(stock) => { (parts::hidden("item", &stock.item)) }
                None => {
                    p class="field" {
                        label for="new-item" { (words.say("set-stock-word")) }
                        input id="new-item" name="item" list="items" autocomplete="off" autocapitalize="none" maxlength=(WORD) required;
                        datalist id="items" { @for word in STOCK { option value=(word) {} } }
                    }
                }
            }
            p class="field" {
                label for=(id("used-by")) { (words.say("set-used-by")) }
                select id=(id("used-by")) name="used-by" {
                    @for (known, word, key) in [
                        (UsedBy::Counting, "counting", "used-by-counting"),
                        (UsedBy::Pouch, "pouch", "used-by-pouch"),
                        (UsedBy::Run, "run", "used-by-run"),
                        (UsedBy::Test, "test", "used-by-test"),
                    ] { option value=(word) selected[known == used_by] { (words.say(key)) } }
                }
            }
            p class="field" {
                label for=(id("least")) { (words.say("set-least")) }
                input type="number" inputmode="numeric" id=(id("least")) name="least" min="0" step="1"
                    value=[stock.map(|stock| stock.least)] required;
            }
            p { button class="key" { (words.say("set-keep")) } }
        },
    )
}
