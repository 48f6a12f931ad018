//! What changes from run to run on a machine, told quietly: one line a change, in plain words.

use super::{telling, when};
use crate::drifting::{Certainty, Change};
use crate::web::Ctx;
use cycle::drift::{Figure, Part};
use maud::{Markup, html};

/// The changes of one machine; nothing where there are none.
pub fn draw(ctx: &Ctx, machine: u32, changes: &[Change]) -> Markup {
    let words = ctx.words();
    html! {
        @if !changes.is_empty() {
            h3 { (words.say("drift-title")) }
            ul class="reasons" {
                @for change in changes { li { (one(ctx, machine, change)) } }
            }
            p class="known" { span { (words.say("drift-ask")) } }
        }
    }
}

fn one(ctx: &Ctx, machine: u32, change: &Change) -> Markup {
    let words = ctx.words();
    let alarm = &change.alarm;
    let since = format!(
        "{} ({})",
        telling::run_name(ctx, machine, change.since.number),
        when::day_of(ctx, change.since.started)
    );
    html! {
        (words.tell("drift-line", &[
            ("figure", words.say(figure_key(alarm.figure)).into()),
            ("change", alarm.change().into()),
            ("since", since.into()),
        ]))
        " " (words.say(certainty_key(Certainty::of(alarm)))) " "
        (words.say(part_key(alarm.part, alarm.shift)))
        @if alarm.part != Part::Unclear {
            " " (words.tell("drift-share", &[
                ("share", format!("{:.0}", 100.0 * alarm.part_share).into()),
            ]))
        }
        " " a href=(format!("/run/{}", change.proven.run)) { (words.say("drift-proven")) }
    }
}

const fn figure_key(figure: Figure) -> &'static str {
    match figure {
        Figure::HeatUp => "drift-heat-up",
        Figure::AirIn => "drift-air-in",
        Figure::FirstPulse => "drift-first-pulse",
        Figure::PulseDepth => "drift-pulse-depth",
        Figure::DryDepth => "drift-dry-depth",
        Figure::Leak => "drift-leak",
        Figure::Exhaust => "drift-exhaust",
        Figure::Total => "drift-total",
        Figure::PlateauLow => "drift-plateau-low",
        Figure::PlateauHigh => "drift-plateau-high",
        Figure::PlateauLength => "drift-plateau-length",
        Figure::Saturation => "drift-saturation",
    }
}

const fn certainty_key(certainty: Certainty) -> &'static str {
    match certainty {
        Certainty::Very => "drift-very-sure",
        Certainty::Sure => "drift-sure",
        Certainty::JustPast => "drift-just-past",
    }
}

fn part_key(part: Part, shift: f64) -> &'static str {
    match part {
        Part::Heater => "drift-part-heater",
        Part::Seal => "drift-part-seal",
        Part::Pump => "drift-part-pump",
        Part::Filter if shift < 0.0 => "drift-part-filter-fast",
        Part::Filter => "drift-part-filter",
        Part::Drain => "drift-part-drain",
        Part::Unclear => "drift-part-unclear",
    }
}
