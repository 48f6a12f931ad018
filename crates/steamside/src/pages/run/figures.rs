//! The figures that a verdict stands on, each with where it comes from.

use crate::pages::{say, units, when};
use crate::web::Ctx;
use logbook::fact::{Judged, KeyFigures, Known};
use maud::{Markup, html};

/// The table, folded: it is there for whoever asks.
pub fn draw(ctx: &Ctx, judged: &Judged) -> Markup {
    let words = ctx.words();
    let known = say::basis_known(&judged.basis);
    let proven: Vec<_> =
        judged.proven_for.iter().map(|contents| words.say(say::contents_key(*contents))).collect();
    html! {
        details class="card fine figures" {
            summary { (words.say("figures-title")) }
            table {
                thead { tr {
                    th scope="col" { (words.say("figure")) }
                    th scope="col" { (words.say("value")) }
                    th scope="col" { (words.say("where-from")) }
                } }
                tbody {
                    @for (key, value, known) in rows(ctx, &judged.figures, known) {
                        tr {
                            th scope="row" { (words.say(key)) }
                            td { (value.unwrap_or_else(|| words.say("not-known"))) }
                            td { (words.say(say::known_key(known))) }
                        }
                    }
                    tr {
                        th scope="row" { (words.say("figure-drying")) }
                        td { (words.say(say::drying_key(judged.drying))) }
                        td { (words.say(say::known_key(known))) }
                    }
                    tr {
                        th scope="row" { (words.say("figure-inside")) }
                        td { (words.say(say::contents_key(judged.contents))) }
                        td { (words.say(say::known_key(Known::Tapped))) }
                    }
                    tr {
                        th scope="row" { (words.say("figure-proven")) }
                        td {
                            @if proven.is_empty() { (words.say("figure-proven-none")) }
                            (proven.join(", "))
                        }
                        td { (words.say(say::known_key(Known::WorkedOut))) }
                    }
                }
            }
            p { (words.say("drying-only-looks")) }
            (limits(ctx, judged))
        }
    }
}

type Row = (&'static str, Option<String>, Known);

fn rows(ctx: &Ctx, figures: &KeyFigures, known: Known) -> Vec<Row> {
    let celsius = |value: Option<i64>| value.map(|value| units::temperature(ctx, value));
    let kelvin = |value: i64| units::difference(ctx, value);
    vec![
        ("figure-set", celsius(figures.set_mc), known),
        ("figure-held", figures.held_ms.map(when::length), known),
        ("figure-needed", figures.needed_ms.map(when::length), Known::Setting),
        ("figure-lowest", celsius(figures.lowest_mc), known),
        ("figure-highest", celsius(figures.highest_mc), known),
        ("figure-deviation", figures.deviation_mk.map(kelvin), Known::WorkedOut),
        ("figure-drying-time", figures.drying_ms.map(when::length), known),
        ("figure-total", figures.total_ms.map(when::length), known),
    ]
}

/// The limits that the judge used, as the book keeps them.
fn limits(ctx: &Ctx, judged: &Judged) -> Markup {
    let words = ctx.words();
    html! {
        @if !judged.limits.is_empty() {
            h3 { (words.say("limits-title")) }
            ul class="limits" {
                @for (name, value) in &judged.limits {
                    li { code lang="en" { (name) } " " (thousandths(*value)) }
                }
            }
        }
    }
}

fn thousandths(value: i64) -> String {
    let sign = if value < 0 { "-" } else { "" };
    let value = value.unsigned_abs();
    let text = format!("{sign}{}.{:03}", value / 1_000, value % 1_000);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::thousandths;

    #[test]
    fn a_limit_reads_as_it_was_set() {
        for (value, text) in [(180_000, "180"), (1_300, "1.3"), (-2_005, "-2.005"), (0, "0")] {
            assert_eq!(thousandths(value), text);
        }
    }
}
