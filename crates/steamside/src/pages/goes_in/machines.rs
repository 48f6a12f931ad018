//! The room inside each machine, and what its manual says of its programmes.

use super::{Room, choice, maybe, number, ticked, typical};
use crate::pages::parts::{self, Form, Ground};
use crate::pages::say;
use crate::pages::shapes::Shape;
use crate::web::Ctx;
use load::chamber::{Chamber, Face, Inside, Pattern, Rack, Tray};
use logbook::fact::ProgrammeFigures;
use maud::{Markup, html};

/// A tray can be added below those that are there.
const EMPTY: usize = 1;
/// A rack, until somebody measures it; 0 places: none.
const NO_RACK: Rack = Rack { places: 0, pitch_mm: 20, height_mm: 140, depth_mm: 250, mass_g: 400 };

/// The cards.
pub fn cards(ctx: &Ctx, rooms: &[Room]) -> Markup {
    let words = ctx.words();
    html! {
        @for room in rooms {
            @let number = room.machine.number.to_string();
            @let name = words.tell("machine-name", &[("machine", number.as_str().into())]);
            (parts::card(Ground::Fine, Shape::Drum, &name, &html! {
                details {
                    summary { span { (words.say("inside-title")) (typical(ctx, &room.inside)) } }
                    p { (words.say("inside-how")) }
                    (inside(ctx, room))
                }
                @for figures in &room.programmes {
                    details {
                        summary {
                            span {
                                (words.tell("run-programme", &[("programme", say::programme(ctx, figures.value.programme.word()).into())]))
                                (typical(ctx, figures))
                            }
                        }
                        (programme(ctx, &figures.value))
                    }
                }
                p { (parts::way(&format!("/tray?machine={}", room.machine.machine), Shape::Envelope, &words.say("tray-show"))) }
            }))
        }
    }
}

fn inside(ctx: &Ctx, room: &Room) -> Markup {
    let words = ctx.words();
    let inside = &room.inside.value;
    let on = room.machine.machine.to_string();
    let id = |part: &str| format!("{part}-{on}");
    let (shape, across, high, depth) = match inside.chamber {
        Chamber::Round { diameter_mm, depth_mm } => ("round", diameter_mm, diameter_mm, depth_mm),
        Chamber::Box { width_mm, height_mm, depth_mm } => ("box", width_mm, height_mm, depth_mm),
    };
    let shapes = ["round", "box"].map(|word| {
        (
            word,
            words.say(if word == "round" { "chamber-round" } else { "chamber-box" }),
            word == shape,
        )
    });
    let rows = inside.trays.iter().map(Some).chain(std::iter::repeat_n(None, EMPTY));
    Form::new("inside", &on).draw(
        ctx,
        &html! {
            (parts::hidden("machine", room.machine.machine))
            (choice(ctx, &id("chamber"), ("chamber", "inside-chamber"), &shapes))
            (number(ctx, &id("across"), ("across", "inside-across"), across))
            (number(ctx, &id("high"), ("high", "inside-high"), high))
            (number(ctx, &id("depth"), ("depth", "inside-depth"), depth))
            @for (at, row) in rows.enumerate() { (tray(ctx, &on, at, row)) }
            (rack(ctx, &on, inside))
            (pattern(ctx, &on, inside))
            button class="key main-key" { (words.say("figures-keep")) }
        },
    )
}

fn tray(ctx: &Ctx, on: &str, at: usize, tray: Option<&Tray>) -> Markup {
    let words = ctx.words();
    let parts = [
        ("width", "tray-width", tray.map(|t| t.width_mm)),
        ("depth", "tray-depth", tray.map(|t| t.depth_mm)),
        ("height", "tray-height", tray.map(|t| t.height_mm)),
        ("mass", "tray-mass", tray.map(|t| t.mass_g)),
    ];
    html! {
        fieldset class="choices" {
            legend { (words.tell("tray-name", &[("tray", (at + 1).into())])) }
            @for (part, key, value) in parts {
                p class="field" {
                    @let id = format!("tray-{part}-{at}-{on}");
                    label for=(id) { (words.say(key)) }
                    input type="number" inputmode="numeric" id=(id) name=(format!("{at}.{part}"))
                        value=[value] min="0";
                }
            }
        }
    }
}

fn rack(ctx: &Ctx, on: &str, inside: &Inside) -> Markup {
    let rack = inside.rack.unwrap_or(NO_RACK);
    let id = |part: &str| format!("rack-{part}-{on}");
    html! {
        fieldset class="choices" {
            legend { (ctx.words().say("rack-title")) }
            (number(ctx, &id("places"), ("places", "rack-places"), rack.places))
            (number(ctx, &id("pitch"), ("pitch", "rack-pitch"), rack.pitch_mm))
            (number(ctx, &id("height"), ("rack-height", "rack-height"), rack.height_mm))
            (number(ctx, &id("depth"), ("rack-depth", "tray-depth"), rack.depth_mm))
            (number(ctx, &id("mass"), ("rack-mass", "tray-mass"), rack.mass_g))
        }
    }
}

fn pattern(ctx: &Ctx, on: &str, inside: &Inside) -> Markup {
    let words = ctx.words();
    let id = |part: &str| format!("{part}-{on}");
    let patterns = Pattern::ALL.map(|pattern| {
        let said = words.say(&format!("pattern-{}", pattern.word().replace(' ', "-")));
        (pattern.word(), said, pattern == inside.pattern)
    });
    let faces = Face::ALL.map(|face| {
        let said = words.say(&format!("face-{}", face.word().replace(' ', "-")));
        (face.word(), said, face == inside.face)
    });
    html! {
        (choice(ctx, &id("pattern"), ("pattern", "inside-pattern"), &patterns))
        (choice(ctx, &id("face"), ("face", "inside-face"), &faces))
        (number(ctx, &id("wall"), ("wall", "inside-wall"), inside.wall_mm))
        (number(ctx, &id("between"), ("between", "inside-between"), inside.between_mm))
        (maybe(ctx, &id("page"), ("page", "manual-page"), inside.manual_page.map(|page| page.to_string())))
    }
}

fn programme(ctx: &Ctx, figures: &ProgrammeFigures) -> Markup {
    let words = ctx.words();
    let on = format!("{}-{}", figures.machine, figures.programme.word());
    let id = |part: &str| format!("programme-{part}-{}", on.replace(' ', "-"));
    let text = |value: Option<u32>| value.map(|value| value.to_string());
    let kpa = figures.drying_pa.map(|pa| format!("{}.{}", pa / 1_000, pa % 1_000 / 100));
    Form::new("programme", &on).draw(ctx, &html! {
        (parts::hidden("machine", figures.machine))
        (parts::hidden("programme", &figures.programme))
        (number(ctx, &id("set"), ("set", "programme-set"), figures.set_c))
        (number(ctx, &id("hold"), ("hold", "programme-hold"), figures.hold_s))
        (number(ctx, &id("pulses"), ("pulses", "programme-pulses"), figures.pulses))
        (number(ctx, &id("dry-min"), ("dry-min", "programme-dry-min"), figures.drying_min))
        (maybe(ctx, &id("dry-kpa"), ("dry-kpa", "programme-dry-kpa"), kpa))
        fieldset class="choices" {
            legend { (words.say("programme-for")) }
            (ticked(ctx, ("pouches", "programme-for-pouches"), figures.for_pouches))
            (ticked(ctx, ("hollow", "programme-for-hollow"), figures.for_hollow))
        }
        (maybe(ctx, &id("most-pouched"), ("most-pouched", "programme-most-pouched"), text(figures.most_pouched_g)))
        (maybe(ctx, &id("most-open"), ("most-open", "programme-most-open"), text(figures.most_unwrapped_g)))
        (maybe(ctx, &id("page"), ("page", "manual-page"), text(figures.manual_page)))
        button class="key main-key" { (words.say("figures-keep")) }
    })
}
