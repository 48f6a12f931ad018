//! Figures of kinds and machines, and what holds for every plan.

use super::Seen;
use crate::pages::parts::{self, Form, Ground};
use crate::pages::say;
use crate::pages::shapes::Shape;
use crate::web::Ctx;
use logbook::fact::{DayCycle, DayRules, Drying, KindFigures, MachineFigures, PlanOrder};
use logbook::view::{HandTimes, Machine, Setting, Spread};
use maud::{Markup, html};

/// A programme can be added below those that are there.
const EMPTY: usize = 1;

/// The cards.
pub fn cards(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    html! {
        (parts::card(Ground::Fine, Shape::Gloves, &words.say("hands-title"), &html! {
            (hands(ctx, &seen.hands))
        }))
        (parts::card(Ground::Fine, Shape::Bowl, &words.say("kind-figures-title"), &html! {
            @for (at, kind) in seen.kinds.iter().enumerate() {
                details { summary { span { (say::kind(ctx, &kind.value.kind)) (typical(ctx, kind)) } } (kind_form(ctx, at, &kind.value)) }
            }
        }))
        (parts::card(Ground::Fine, Shape::Drum, &words.say("machine-figures-title"), &html! {
            @for (machine, figures) in &seen.machines {
                details {
                    summary { span { (machine_name(ctx, machine)) (typical(ctx, figures)) } }
                    (machine_form(ctx, machine, &figures.value))
                }
            }
        }))
        @if let Some(rules) = &seen.rules {
            (parts::card(Ground::Fine, Shape::Hourglass, &words.say("rules-title"), &html! {
                details { summary { span { (words.say("rules-how")) (typical(ctx, rules)) } } (rules_form(ctx, &rules.value)) }
            }))
        }
    }
}

/// Where figures are nobody's own, the page says so.
fn typical<T>(ctx: &Ctx, setting: &Setting<T>) -> Markup {
    html! {
        @if setting.said.is_none() { " · " em { (ctx.words().say("figures-typical")) } }
    }
}

fn machine_name(ctx: &Ctx, machine: &Machine) -> String {
    ctx.words().tell("machine-name", &[("machine", machine.number.to_string().into())])
}

fn hands(ctx: &Ctx, hands: &HandTimes) -> Markup {
    let words = ctx.words();
    let clock = |seconds: u32| format!("{}:{:02}", seconds / 60, seconds % 60);
    let line = |key: &str, spread: Option<Spread>| {
        html! {
            li {
                (words.say(key)) ": "
                @match spread {
                    Some(spread) => (words.tell("hands-spread", &[
                        ("median", clock(spread.median_s).into()),
                        ("lower", clock(spread.lower_s).into()),
                        ("upper", clock(spread.upper_s).into()),
                        ("count", spread.count.into()),
                    ])),
                    None => (words.say("hands-none")),
                }
            }
        }
    };
    html! {
        ul { (line("hands-wash", hands.wash)) (line("hands-pack", hands.pack)) }
        p { (words.say("hands-how")) }
    }
}

/// A whole number with its label.
fn number(ctx: &Ctx, id: &str, (name, key): (&str, &str), value: u32) -> Markup {
    html! {
        p class="field" {
            label for=(id) { (ctx.words().say(key)) }
            input type="number" inputmode="numeric" id=(id) name=(name) value=(value) min="0" required;
        }
    }
}

fn kind_form(ctx: &Ctx, at: usize, kind: &KindFigures) -> Markup {
    let fields = [
        ("mass", "kind-mass", kind.mass_g),
        ("hand", "kind-hand", kind.hand_min),
        ("pouch", "kind-pouch", kind.pouch_cents),
        ("target", "kind-target", kind.target_ready),
        ("spares", "kind-spares", kind.spares),
    ];
    Form::new("kind-figures", kind.kind.word()).draw(
        ctx,
        &html! {
            (parts::hidden("kind", &kind.kind))
            @for (name, key, value) in fields {
                (number(ctx, &format!("kind-{name}-{at}"), (name, key), value))
            }
            button class="key main-key" { (ctx.words().say("figures-keep")) }
        },
    )
}

fn machine_form(ctx: &Ctx, machine: &Machine, figures: &MachineFigures) -> Markup {
    let words = ctx.words();
    let on = machine.machine.to_string();
    let rows = figures.cycles.iter().map(Some).chain(std::iter::repeat_n(None, EMPTY));
    Form::new("machine-figures", &on).draw(ctx, &html! {
        (parts::hidden("machine", machine.machine))
        (number(ctx, &format!("warm-{on}"), ("warm-window", "machine-warm"), figures.warm_window_min))
        @for (at, cycle) in rows.enumerate() { (programme(ctx, &on, at, cycle)) }
        button class="key main-key" { (words.say("figures-keep")) }
    })
}

fn programme(ctx: &Ctx, on: &str, at: usize, cycle: Option<&DayCycle>) -> Markup {
    let words = ctx.words();
    let id = |part: &str| format!("{part}-{at}-{on}");
    let name = |part: &str| format!("{at}.{part}");
    let value = |read: fn(&DayCycle) -> u32| cycle.map_or(0, read);
    let fields = [
        ("cold", "programme-cold", value(|c| c.cold_min)),
        ("warm", "programme-warm", value(|c| c.warm_min)),
        ("mass", "programme-mass", value(|c| c.max_mass_g)),
        ("load", "programme-load", value(|c| c.load_min)),
        ("unload", "programme-unload", value(|c| c.unload_min)),
        ("cool", "programme-cool", value(|c| c.cool_min)),
        ("cost-cold", "programme-cost-cold", value(|c| c.cold_cents)),
        ("cost-warm", "programme-cost-warm", value(|c| c.warm_cents)),
    ];
    let dryings = [
        (Drying::None, "none", "drying-is-none"),
        (Drying::Short, "short", "drying-is-short"),
        (Drying::Full, "full", "drying-is-full"),
    ];
    html! {
        fieldset class="choices" {
            legend { (cycle.map_or_else(|| words.say("programme-more"), |c| c.programme.to_string())) }
            p class="field" {
                label for=(id("programme")) { (words.say("programme-word")) }
                input type="text" id=(id("programme")) name=(name("programme")) maxlength="24"
                    autocomplete="off" value=[cycle.map(|c| c.programme.word())];
            }
            @for (part, key, value) in fields {
                (number(ctx, &id(part), (&name(part), key), value))
            }
            p class="field" {
                label for=(id("drying")) { (words.say("programme-drying")) }
                select id=(id("drying")) name=(name("drying")) {
                    @for (drying, word, key) in dryings {
                        option value=(word) selected[cycle.is_some_and(|c| c.drying == drying)] { (words.say(key)) }
                    }
                }
            }
            label {
                input type="checkbox" name=(name("wrapped")) value="yes"
                    checked[cycle.is_some_and(|c| c.wrapped)];
                span { (words.say("programme-wrapped")) }
            }
        }
    }
}

fn rules_form(ctx: &Ctx, rules: &DayRules) -> Markup {
    let words = ctx.words();
    let orders = [
        (PlanOrder::Salon, "salon", "order-salon"),
        (PlanOrder::Comparing, "comparing", "order-comparing"),
    ];
    Form::new("day-rules", "all").draw(
        ctx,
        &html! {
            (number(ctx, "rules-passive", ("passive", "rules-passive"), rules.passive_min))
            (number(ctx, "rules-immediate", ("immediate", "rules-immediate"), rules.immediate_min))
            fieldset class="choices" {
                legend { (words.say("rules-order")) }
                @for (order, word, key) in orders {
                    label {
                        input type="radio" name="order" value=(word) checked[rules.order == order];
                        span { (words.say(key)) }
                    }
                }
            }
            button class="key main-key" { (words.say("figures-keep")) }
        },
    )
}
