//! What `check` says to people.

use crate::wire::check as words;
use cycle::figures::{DryingRan, Figures, Kind};
use cycle::record::CycleRecord;
use release::verdict::{Outcome, Verdict};
use std::fmt::Write;

/// One cycle, as a heading and a few lines.
pub(super) fn cycle(
    name: &str,
    record: &CycleRecord,
    figures: &Figures,
    verdict: &Verdict,
) -> String {
    let mut said = format!("{name}, cycle {}: {}", record.index + 1, outcome(verdict.outcome));
    if !verdict.proven_for.is_empty() {
        let contents: Vec<_> = verdict.proven_for.iter().map(|contents| contents.word()).collect();
        said.push_str(&format!(", for goods that are {}", contents.join(" or ")));
    }
    said.push('\n');
    for reason in &verdict.reasons {
        line(&mut said, &with_place(&reason.text, reason.lines));
    }
    if figures.kind == Kind::Run && figures.sound {
        run(&mut said, figures);
    }
    said
}

fn outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Lethal => "steam did its work",
        Outcome::NotLethal => "steam did not do its work",
        Outcome::CannotTell => "cannot tell",
        Outcome::LeakPass => "leak test passed",
        Outcome::LeakFail => "leak test failed",
    }
}

fn with_place(text: &str, lines: Option<(u32, u32)>) -> String {
    match lines {
        Some((from, to)) if from != to => format!("{text} (lines {from} to {to})"),
        Some((at, _)) => format!("{text} (line {at})"),
        None => text.to_owned(),
    }
}

fn line(said: &mut String, text: &str) {
    // Writing to a String cannot fail.
    writeln!(said, "  {text}").unwrap_or_default();
}

fn run(said: &mut String, figures: &Figures) {
    if let Some((set_c, from)) = figures.set_c {
        let known = words::source(from);
        line(
            said,
            &format!(
                "set to {set_c:.1} °C (known from the {known}); F0 {:.1} min, at least {:.1}",
                figures.f0_min, figures.f0_low_min
            ),
        );
    }
    if !figures.vacuum_depths_kpa.is_empty() {
        let depths: Vec<_> =
            figures.vacuum_depths_kpa.iter().map(|kpa| format!("{kpa:.1}")).collect();
        line(said, &format!("vacuum pulses down to {} kPa", depths.join(", ")));
    }
    let drying = match figures.drying.ran {
        DryingRan::AsSet => "the drying part ran as set",
        DryingRan::Short => "the drying part was shorter than set",
        DryingRan::None => "there was no drying part",
        DryingRan::CannotTell => "how long drying was set is not known",
    };
    let seen = figures.drying.phase_s.map_or(String::new(), |s| format!(" ({s:.0} s seen)"));
    line(said, &format!("{drying}{seen}; whether pouches are dry and whole only looking tells"));
}
