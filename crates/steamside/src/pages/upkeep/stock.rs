//! What is used up: about how many are left, what to buy.

use super::Seen;
use crate::pages::parts::{self, Form, Ground};
use crate::pages::shapes::Shape;
use crate::pages::{say, when};
use crate::web::Ctx;
use logbook::fact::UsedBy;
use logbook::view::Stock;
use maud::{Markup, html};

/// What falls below first, everything else folded.
pub(super) fn draw(ctx: &Ctx, seen: &Seen) -> Markup {
    let words = ctx.words();
    let (low, rest): (Vec<&Stock>, Vec<&Stock>) =
        seen.upkeep.stock.iter().partition(|stock| stock.is_low() || stock.counted.is_none());
    if seen.upkeep.stock.is_empty() {
        return html! {};
    }
    parts::card(
        if low.is_empty() { Ground::Fine } else { Ground::Turn },
        Shape::Bag,
        &words.say("stock-title"),
        &html! {
            @if low.is_empty() { p { (words.say("stock-enough")) } }
            @for stock in low { (row(ctx, stock)) }
            @if !rest.is_empty() {
                details {
                    summary { (words.tell("stock-rest", &[("count", rest.len().into())])) }
                    @for stock in rest { (row(ctx, stock)) }
                }
            }
        },
    )
}

fn row(ctx: &Ctx, stock: &Stock) -> Markup {
    let words = ctx.words();
    let item = say::stock(ctx, &stock.item);
    html! {
        div class="stock" {
            h3 { (item) }
            p {
                @match (stock.left(), stock.counted) {
                    (Some(left), Some((at, _))) => {
                        (words.tell(left_key(stock), &[("count", left.into()), ("day", when::day_of(ctx, at).into())]))
                    }
                    _ => (words.say("stock-not-counted")),
                }
                " "
                @if stock.is_low() { strong { (words.tell("stock-buy", &[("count", stock.least.into())])) } }
            }
            div class="stock-keys" {
                (form(ctx, stock, &item, ("stock-bought", "stock-bought")))
                (form(ctx, stock, &item, ("stock-counted", "stock-counted")))
            }
        }
    }
}

/// What is only counted is as old as its count.
fn left_key(stock: &Stock) -> &'static str {
    match stock.used_by {
        UsedBy::Counting => "stock-left-counted",
        UsedBy::Pouch | UsedBy::Run | UsedBy::Test => "stock-left",
    }
}

fn form(ctx: &Ctx, stock: &Stock, item: &str, (act, key): (&str, &str)) -> Markup {
    let label = ctx.words().say(key);
    Form { then: Some("/upkeep"), ..Form::new(act, stock.item.word()) }.draw(
        ctx,
        &html! {
            (parts::hidden("item", &stock.item))
            p class="field" {
                input type="number" inputmode="numeric" name="count" min="0" max="1000000" required
                    aria-label=(format!("{label}: {item}"));
                (parts::key_for(&label, item))
            }
        },
    )
}
