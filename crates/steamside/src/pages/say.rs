//! States, verdicts and reasons in the reader's language.

use super::shapes::Shape;
use super::{units, when};
use crate::planning::explain::kind_word;
use crate::web::Ctx;
use crate::words::Arg;
use load::{ChoreWord, Contents, ImplementWord, PouchWord, SetKind, SetState, StockWord};
use logbook::fact::{Basis, DryingRan, KeyFigures, Known, Reason, StopReason, ThingKind};
use maud::{Markup, html};
use release::verdict::Outcome;

/// Key of a state's word.
pub const fn state_key(state: SetState) -> &'static str {
    match state {
        SetState::Used => "state-used",
        SetState::Soaking => "state-soaking",
        SetState::Washed => "state-washed",
        SetState::Disinfected => "state-disinfected",
        SetState::Bagged => "state-bagged",
        SetState::InMachine => "state-in-machine",
        SetState::ToCheck => "state-to-check",
        SetState::Ready => "state-ready",
        SetState::UseNow => "state-use-now",
        SetState::Opened => "state-opened",
        SetState::SetAside => "state-set-aside",
        SetState::Away => "state-away",
        SetState::Retired => "state-retired",
        SetState::Missing => "state-missing",
    }
}

/// Key of what a record proves. Nothing here claims more than steam.
pub const fn outcome_key(outcome: Option<Outcome>) -> &'static str {
    match outcome {
        Some(Outcome::Lethal) => "outcome-did",
        Some(Outcome::NotLethal) => "outcome-did-not",
        Some(Outcome::CannotTell) => "outcome-cannot-tell",
        Some(Outcome::LeakPass) => "outcome-leak-pass",
        Some(Outcome::LeakFail) => "outcome-leak-fail",
        None => "outcome-none",
    }
}

/// Key of the reason of a stop.
pub const fn stop_key(why: StopReason) -> &'static str {
    match why {
        StopReason::Numbers => "stop-numbers",
        StopReason::CannotTell => "stop-cannot-tell",
        StopReason::Mark => "stop-mark",
        StopReason::Wet => "stop-wet",
        StopReason::Torn => "stop-torn",
        StopReason::Dropped => "stop-dropped",
        StopReason::Interrupted => "stop-interrupted",
        StopReason::ReleaseUndone => "stop-release-undone",
        StopReason::Recall => "stop-recall",
        StopReason::JudgedWorse => "stop-judged-worse",
        StopReason::NotSure => "stop-not-sure",
    }
}

/// Key of what was inside.
pub const fn contents_key(contents: Contents) -> &'static str {
    match contents {
        Contents::Unwrapped => "contents-unwrapped",
        Contents::Pouched => "contents-pouched",
        Contents::Hollow => "contents-hollow",
        Contents::Unknown => "contents-unknown",
    }
}

/// Key of how a thing is known.
pub const fn known_key(known: Known) -> &'static str {
    match known {
        Known::Tapped => "known-tapped",
        Known::Scanned => "known-scanned",
        Known::Measured => "known-measured",
        Known::Read => "known-read",
        Known::ByClock => "known-by-clock",
        Known::WorkedOut => "known-worked-out",
        Known::Setting => "known-setting",
        Known::FromPaper => "known-from-paper",
    }
}

/// Key of what the record says about the drying part.
pub const fn drying_key(ran: DryingRan) -> &'static str {
    match ran {
        DryingRan::AsSet => "drying-as-set",
        DryingRan::Short => "drying-short",
        DryingRan::None => "drying-none",
        DryingRan::CannotTell => "drying-cannot-tell",
    }
}

/// What a verdict rests on: a record was measured, a display was read.
pub const fn basis_known(basis: &Basis) -> Known {
    match basis {
        Basis::Record { .. } => Known::Measured,
        Basis::Reading { .. } => Known::Read,
    }
}

/// A kind of set in the reader's language, where the salon uses one of the trade's plain words.
pub fn kind(ctx: &Ctx, kind: &SetKind) -> String {
    kind_word(ctx.words(), kind.word())
}

/// A programme in the reader's language, where it is one of the plain words.
pub fn programme(ctx: &Ctx, word: &str) -> String {
    plain(ctx, "cycle", word)
}

/// An implement in the reader's language, where it is one of the trade's plain words.
pub fn implement(ctx: &Ctx, word: &ImplementWord) -> String {
    plain(ctx, "implement", word.word())
}

/// A size of pouch in the reader's language, where it is one of the plain words.
pub fn pouch_size(ctx: &Ctx, word: &PouchWord) -> String {
    plain(ctx, "pouch-word", word.word())
}

/// A chore in the reader's language, where it is a typical one.
pub fn chore(ctx: &Ctx, word: &ChoreWord) -> String {
    plain(ctx, "chore-word", word.word())
}

/// Something that is used up, in the reader's language, where it is a typical one.
pub fn stock(ctx: &Ctx, word: &StockWord) -> String {
    plain(ctx, "stock-word", word.word())
}

/// Key of the name of a thing, with its `number`.
pub const fn thing_key(what: ThingKind) -> &'static str {
    match what {
        ThingKind::Jar => "thing-jar",
        ThingKind::FootBasin => "thing-basin",
        ThingKind::Ultrasonic => "thing-bath",
    }
}

/// A salon's own word has no line and stays as it was written.
fn plain(ctx: &Ctx, family: &str, word: &str) -> String {
    let key = format!("{family}-{}", word.replace(' ', "-"));
    if ctx.words().has(&key) { ctx.words().say(&key) } else { word.to_owned() }
}

/// A state: shape and word, on its ground.
pub fn state(ctx: &Ctx, state: SetState) -> Markup {
    let key = state_key(state);
    html! {
        span class=(format!("state {key}")) {
            (Shape::of_state(state).draw())
            span { (ctx.words().say(key)) }
        }
    }
}

/// What a record proves: shape and word.
pub fn outcome(ctx: &Ctx, outcome: Option<Outcome>) -> Markup {
    let key = outcome_key(outcome);
    html! {
        span class=(format!("state {key}")) {
            (Shape::of_outcome(outcome).draw())
            span { (ctx.words().say(key)) }
        }
    }
}

/// The figures that a reason may name; an unknown one is said to be unknown.
fn figures(ctx: &Ctx, figures: &KeyFigures) -> Vec<(&'static str, Arg)> {
    let words = ctx.words();
    let degrees = |mc| units::temperature(ctx, mc);
    let show = |value: Option<i64>, how: &dyn Fn(i64) -> String| {
        Arg::Text(value.map_or_else(|| words.say("not-known"), how))
    };
    vec![
        ("held", show(figures.held_ms, &when::length)),
        ("needed", show(figures.needed_ms, &when::length)),
        ("set", show(figures.set_mc, &degrees)),
        ("lowest", show(figures.lowest_mc, &degrees)),
        ("highest", show(figures.highest_mc, &degrees)),
        ("deviation", show(figures.deviation_mk, &|mk| units::difference(ctx, mk))),
        ("drying", show(figures.drying_ms, &when::length)),
    ]
}

/// A reason, from its code, with the figures that it rests on.
pub fn reason(ctx: &Ctx, reason: &Reason, of: &KeyFigures) -> String {
    let key = format!("reason-{}", reason.code.as_str().replace('_', "-"));
    ctx.words().tell(&key, &figures(ctx, of))
}

/// Where in the record a reason lies; empty where it has no place.
pub fn place(ctx: &Ctx, reason: &Reason) -> String {
    let words = ctx.words();
    let mut parts = Vec::new();
    if let Some((from, to)) = reason.at_ms {
        let span = [("from", when::length(from).into()), ("to", when::length(to).into())];
        parts.push(words.tell("place-time", &span));
    }
    if let Some((first, last)) = reason.lines {
        let span = [("first", first.to_string().into()), ("last", last.to_string().into())];
        parts.push(words.tell("place-lines", &span));
    }
    parts.join(", ")
}
