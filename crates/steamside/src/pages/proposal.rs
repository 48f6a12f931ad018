//! Which programme is proposed for a load, why, why not the others; whether it will be dry, and how
//! that is known; what water it takes.

use super::bag::refused_key;
use super::say;
use super::shapes::Shape;
use crate::loading::propose::{Programme, Proposal};
use crate::web::Ctx;
use cycle::choose::{Change, No, Why};
use cycle::limit::By;
use maud::{Markup, html};

/// What stands on the page of a load.
pub fn draw(ctx: &Ctx, proposal: &Proposal) -> Markup {
    let words = ctx.words();
    html! {
        p class="fact proposed" { (Shape::Drum.draw()) span { (line(ctx, proposal)) } }
        @for (word, why) in &proposal.load.refused {
            p class="fact amber" { (say::implement(ctx, word)) ": " (words.say(refused_key(*why))) }
        }
        @for change in &proposal.choice.changes { p { (change_line(ctx, proposal, change)) } }
        @if !proposal.air_known { p { (words.say("propose-air-unknown")) } }
        @if !proposal.load.unknown.is_empty() { p { (words.say("propose-unknown")) } }
        p { (limit(ctx, proposal)) }
        @if let Some(outlook) = &proposal.outlook {
            // Before anybody looked it would be a guess about machines in general.
            @if let Some(chance) = outlook.chance_wet.filter(|_| looked(proposal)) {
                p class="known" { (words.tell("dry-chance", &[("percent", percent(chance).into())])) }
            }
            p class="known" {
                (words.tell("left-water", &[
                    ("middle", whole(outlook.left_g.middle).into()),
                    ("high", whole(outlook.left_g.high).into()),
                ]))
            }
            p class="known" {
                (words.tell("run-water", &[
                    ("middle", whole(outlook.water_g.middle).into()),
                    ("low", whole(outlook.water_g.low).into()),
                    ("high", whole(outlook.water_g.high).into()),
                    ("ten", tenths(outlook.water_g.middle * 10.0).into()),
                ]))
            }
        }
        @if proposal.load.typical { p class="known" { (words.say("load-typical")) } }
        @if proposal.left_out() > 0 {
            p class="known" { (words.tell("looks-left-out", &[("count", proposal.left_out().into())])) }
        }
        @if !proposal.choice.refused.is_empty() {
            details {
                summary { (words.say("propose-others")) }
                ul class="reasons" {
                    @for refused in &proposal.choice.refused {
                        @let reasons: Vec<String> = told(&refused.reasons).map(|no| words.say(no_key(no))).collect();
                        li { (name(ctx, proposal, refused.offer)) ": " (reasons.join(" ")) }
                    }
                }
            }
        }
    }
}

/// Has anybody looked whether the proposed programme's loads came out dry?
fn looked(proposal: &Proposal) -> bool {
    let first = proposal.choice.ranked.first();
    let programme = first.and_then(|first| proposal.programmes.get(first.offer));
    programme.and_then(|programme| programme.advice).is_some_and(|advice| advice.outcomes > 0)
}

/// "Proposed: long. Pouched: the quickest that will have it dry."
pub fn line(ctx: &Ctx, proposal: &Proposal) -> String {
    let words = ctx.words();
    match proposal.choice.ranked.first() {
        None => words.say("propose-none"),
        Some(first) => {
            let why = words.say(match first.why {
                Why::QuickestForNow => "why-quickest-now",
                Why::QuickestThatDries => "why-quickest-dries",
                Why::LongerDryingForWeight => "why-longer-weight",
                Why::LongerDryingForHeavyPiece => "why-longer-piece",
                Why::LongestDryingNothingKnown => "why-longest-unknown",
                Why::DryingNotKnown => "why-drying-unknown",
            });
            let cycle = name(ctx, proposal, first.offer);
            words.tell("propose-line", &[("cycle", cycle.into()), ("why", why.into())])
        }
    }
}

/// What the load weighs, how much comes out dry, and where that is known from.
pub fn limit(ctx: &Ctx, proposal: &Proposal) -> String {
    let words = ctx.words();
    let load = words.tell("load-weighs", &[("grams", proposal.load.mass_g.into())]);
    format!("{load} {}", limit_alone(ctx, proposal)).trim_end().to_owned()
}

/// How much comes out dry in the programme that is proposed, and where that is known from; empty
/// where nothing is.
pub fn limit_alone(ctx: &Ctx, proposal: &Proposal) -> String {
    let first = proposal.choice.ranked.first().map(|first| first.offer);
    // Where none fits, the one that dries longest says most.
    let longest = || {
        (0..proposal.programmes.len())
            .max_by_key(|at| proposal.programmes[*at].figures.value.drying_min)
    };
    let programme = first.or_else(longest).and_then(|at| Some((at, proposal.programmes.get(at)?)));
    let known_of = |(at, programme)| known(ctx, programme, &name(ctx, proposal, at));
    programme.map(known_of).unwrap_or_default()
}

/// What is known of a programme's limit, in one sentence; empty where it does not dry.
pub fn known(ctx: &Ctx, programme: &Programme, cycle: &str) -> String {
    let words = ctx.words();
    let (Some(advice), Some(limit)) = (programme.advice, programme.limit_g) else {
        return String::new();
    };
    let key = match advice.by {
        By::Maker if advice.outcomes == 0 => "limit-maker-only",
        By::Maker => "limit-maker",
        By::Looks => "limit-looks",
        By::Guess => "limit-guess",
    };
    words.tell(
        key,
        &[
            ("cycle", cycle.to_owned().into()),
            ("grams", advice.grams.into()),
            ("low", tens(limit.low).into()),
            ("high", tens(limit.high).into()),
            ("count", advice.outcomes.into()),
            ("wet", advice.wet.into()),
        ],
    )
}

fn name(ctx: &Ctx, proposal: &Proposal, offer: usize) -> String {
    let word = proposal.programmes.get(offer).map(|programme| &programme.cycle.programme);
    word.map_or(String::new(), |word| say::programme(ctx, word.word()))
}

/// What speaks against a programme, each thing once: that it does not dry is one thing, and so is
/// the maker's limit, which also stands for drying until looks say less.
fn told(reasons: &[No]) -> impl Iterator<Item = No> {
    let pouches = reasons.contains(&No::NoDryingForPouches);
    let maker = reasons.contains(&No::TooHeavyForMaker);
    reasons.iter().copied().filter(move |no| match no {
        No::NoDryingForShelf => !pouches,
        No::TooHeavyToDry => !maker,
        _ => true,
    })
}

const fn no_key(no: No) -> &'static str {
    match no {
        No::NoDryingForPouches => "no-drying-pouches",
        No::NoDryingForShelf => "no-drying-shelf",
        No::TooHeavyForMaker => "no-too-heavy-maker",
        No::TooHeavyToDry => "no-too-heavy-dry",
        No::TooHot => "no-too-hot",
        No::NotForPouches => "no-not-for-pouches",
        No::NotForHollow => "no-not-for-hollow",
        No::GravityHollow => "no-gravity-hollow",
        No::GravityPouchTimesNotMet => "no-gravity-times",
        No::NotReadyInTime => "no-not-in-time",
        No::BelowPublishedTimes => "no-below-times",
    }
}

fn change_line(ctx: &Ctx, proposal: &Proposal, change: &Change) -> String {
    let words = ctx.words();
    match *change {
        Change::Split { offer, grams } => words.tell(
            "change-split",
            &[("cycle", name(ctx, proposal, offer).into()), ("grams", grams.into())],
        ),
        Change::UnpouchedNow { offer } => {
            words.tell("change-unpouched", &[("cycle", name(ctx, proposal, offer).into())])
        }
        Change::TakeOutHeatLimited { offer } => {
            words.tell("change-take-out", &[("cycle", name(ctx, proposal, offer).into())])
        }
        Change::Later { offer, minutes } => words.tell(
            "change-later",
            &[("cycle", name(ctx, proposal, offer).into()), ("minutes", minutes.into())],
        ),
    }
}

fn whole(value: f64) -> u32 {
    value.round().clamp(0.0, 1e6) as u32
}

/// Millilitres as litres, to a tenth.
fn tenths(millilitres: f64) -> String {
    let tenths = whole(millilitres / 100.0);
    format!("{}.{}", tenths / 10, tenths % 10)
}

/// No limit is known to the gram.
fn tens(value: f64) -> u32 {
    whole(value / 10.0) * 10
}

/// A chance in hundredths; below one in a hundred nobody can tell.
fn percent(chance: f64) -> String {
    match whole(chance * 100.0) {
        0 => "< 1".to_owned(),
        percent => percent.to_string(),
    }
}
