//! The questions put to a run, in their order.

use super::{Asked, Outcome, Verdict, covers, open, reason, with_findings};
use crate::limits::Name;
use cycle::figures::{EndsEarly, Figures, Plateau};
use cycle::finding::{Code, Finding};
use cycle::record::{CycleRecord, Source};
use load::Contents;

/// What a question came to, where it decides.
enum Answer {
    Open(Finding),
    Failed(Finding),
}

pub(super) fn judge(record: &CycleRecord, figures: &Figures, asked: &Asked<'_>) -> Verdict {
    let answer = readable(record, figures)
        .or_else(|| long_enough(figures, asked))
        .or_else(|| close_enough(figures, asked))
        .or_else(|| was_steam(record, figures, asked))
        .or_else(|| nothing_hidden(figures, asked));
    match answer {
        Some(Answer::Open(decisive)) => Verdict {
            conforming: broke_what_was_asked(record, figures, asked).then_some(false),
            ..open(decisive, figures)
        },
        Some(Answer::Failed(decisive)) => Verdict {
            outcome: Outcome::NotLethal,
            proven_for: Vec::new(),
            conforming: Some(false),
            reasons: with_findings(decisive, figures),
        },
        None => proven(record, figures, asked),
    }
}

/// Could the record be read far enough to be judged at all?
fn readable(record: &CycleRecord, figures: &Figures) -> Option<Answer> {
    if record.known_from.temperature_unit.is_none() {
        let text = "it is not known in which unit the temperature stands";
        return Some(Answer::Open(noticed(figures, Code::UnitUnclear, text)));
    }
    let needed = figures.needed_hold_s.unwrap_or(0.0);
    let short = figures.hold_s < needed || figures.set_c.is_none();
    if short && figures.ends_early == Some(EndsEarly::BeforeHold) {
        let text = format!(
            "the record ends after {:.0} s, before the hold is complete: {:.0} s of {needed:.0} s are in it",
            figures.total_s, figures.hold_s
        );
        return Some(Answer::Open(reason(Code::Truncated, text)));
    }
    frozen_in_hold(figures).map(Answer::Open)
}

fn frozen_in_hold(figures: &Figures) -> Option<Finding> {
    let frozen = figures.findings.iter().filter(|finding| finding.code == Code::SensorFrozen);
    let meets = |finding: &&Finding| match (finding.at_s, &figures.plateau) {
        (Some((from, to)), Some(plateau)) => from <= plateau.end_s && to >= plateau.start_s,
        _ => true,
    };
    frozen.into_iter().find(meets).cloned()
}

/// Long enough at temperature?
fn long_enough(figures: &Figures, asked: &Asked<'_>) -> Option<Answer> {
    let hold = figures.hold_s;
    let (set_c, needed) = match (figures.set_c, figures.needed_hold_s) {
        (Some((set_c, _)), Some(needed)) => (set_c, needed),
        (Some((set_c, _)), None) => {
            let text = format!("no published hold is known for a set temperature of {set_c:.1} °C");
            return Some(Answer::Open(reason(Code::SetUnclear, text)));
        }
        (None, _) => return Some(never_hot(figures)),
    };
    if hold >= needed {
        return None;
    }
    if let Some((from, to)) = figures.gap_at_heat_s {
        let text = format!(
            "{:.0} s without a sample, or with a jump of the clock, around the hold; {hold:.0} s at or above {set_c:.1} °C are shown, {needed:.0} s are needed",
            to - from
        );
        let at_s = Some((from, to));
        return Some(Answer::Open(Finding { at_s, ..reason(Code::GapInHold, text) }));
    }
    let place = |code, text| Finding {
        at_s: figures.plateau.map(|plateau| (plateau.start_s, plateau.end_s)),
        lines: figures.plateau.map(|plateau| plateau.lines),
        ..reason(code, text)
    };
    let doubt = asked.limits.get(Name::BorderSteps) * figures.step_s;
    if hold > 0.0 && needed - hold <= doubt {
        let text = format!(
            "held {hold:.0} s at or above {set_c:.1} °C, {needed:.0} s needed: short by no more than two samples, so the true time is not known"
        );
        return Some(Answer::Open(place(Code::HoldBorder, text)));
    }
    let text =
        format!("held {hold:.0} s at or above {set_c:.1} °C with steam, {needed:.0} s needed");
    Some(Answer::Failed(place(Code::HoldShort, text)))
}

/// Samples enough to say that it was so in between, too?
fn close_enough(figures: &Figures, asked: &Asked<'_>) -> Option<Answer> {
    let (samples, longest_s) = figures.hold_samples;
    let least = asked.limits.get(Name::HoldSamples);
    let most_s = figures.needed_hold_s.unwrap_or(0.0) / 2.0;
    let few = least > samples as f64 || longest_s > most_s;
    few.then(|| {
        let text = format!(
            "the hold is {samples} readings, up to {longest_s:.0} s apart; at least {least:.0}, no more than {most_s:.0} s apart, are needed to say how it was in between"
        );
        let at_s = figures.plateau.map(|plateau| (plateau.start_s, plateau.end_s));
        Answer::Open(Finding { at_s, ..reason(Code::GapInHold, text) })
    })
}

/// No set temperature is stated and none of the three was reached.
fn never_hot(figures: &Figures) -> Answer {
    let most = figures.range_c.map_or(f64::NAN, |(_, most)| most);
    if let Some((from, to)) = figures.gap_at_heat_s {
        let text = format!(
            "{:.0} s without a sample in which the chamber may have been at temperature",
            to - from
        );
        return Answer::Open(Finding { at_s: Some((from, to)), ..reason(Code::GapInHold, text) });
    }
    let text = format!(
        "never at or above 121 °C with steam in the chamber; the hottest reading is {most:.1} °C"
    );
    Answer::Failed(reason(Code::HoldShort, text))
}

/// Saturated steam, as far as pressure shows it?
fn was_steam(record: &CycleRecord, figures: &Figures, asked: &Asked<'_>) -> Option<Answer> {
    let (Some(plateau), false) = (figures.plateau, record.samples.press_kpa.is_empty()) else {
        let text =
            "no pressure that could be used: whether it was steam, and without air, cannot be told";
        return Some(Answer::Open(noticed(figures, Code::NoPressure, text)));
    };
    let Some(mean) = plateau.satdev_mean_k.filter(|mean| mean.is_finite()) else {
        let text =
            "the pressure lies outside the saturation line: whether it was steam cannot be told";
        return Some(Answer::Open(noticed(figures, Code::NoPressure, text)));
    };
    for code in [Code::GaugeAsAbsolute, Code::UnitUnclear] {
        if let Some(finding) = figures.findings.iter().find(|finding| finding.code == code) {
            return Some(Answer::Open(finding.clone()));
        }
    }
    if mean.abs() > asked.limits.get(Name::Saturation) {
        let code = if mean < 0.0 { Code::AirLeft } else { Code::Superheat };
        let text = format!("over the hold {mean:+.1} K from saturated steam of its pressure");
        return Some(Answer::Failed(noticed(figures, code, &text)));
    }
    let unclear = figures.findings.iter().find(|finding| finding.code == Code::SetUnclear);
    unclear.cloned().or_else(|| off_and_short(figures, &plateau, asked)).map(Answer::Open)
}

/// Temperature and pressure disagree, and by pressure the hold is too short.
fn off_and_short(figures: &Figures, plateau: &Plateau, asked: &Asked<'_>) -> Option<Finding> {
    let worst = [Some(*plateau), figures.steady]
        .into_iter()
        .flatten()
        .filter_map(|part| part.satdev_mean_k)
        .fold(0.0_f64, |worst, mean| worst.max(mean.abs()));
    if worst > asked.limits.get(Name::Saturation) {
        let text = format!("once steady, {worst:.1} K from saturated steam of its pressure");
        return Some(reason(Code::SensorOffset, text));
    }
    let needed = figures.needed_hold_s?;
    let by_pressure = figures.hold_by_pressure_s.unwrap_or(0.0);
    let disagree = worst > asked.limits.get(Name::Suspect) && by_pressure < needed;
    disagree.then(|| {
        let text = format!(
            "temperature and pressure disagree by {worst:.1} K, and by pressure the hold is {by_pressure:.0} s where {needed:.0} s are needed"
        );
        Finding {
            at_s: Some((plateau.start_s, plateau.end_s)),
            lines: Some(plateau.lines),
            ..reason(Code::SensorOffset, text)
        }
    })
}

/// Anything that would keep a flaw from showing?
fn nothing_hidden(figures: &Figures, asked: &Asked<'_>) -> Option<Answer> {
    if let Some(derived) =
        figures.findings.iter().find(|finding| finding.code == Code::SensorDerived)
    {
        return Some(Answer::Open(derived.clone()));
    }
    if figures.ends_early == Some(EndsEarly::AtHeat) {
        let text = format!(
            "the record ends after {:.0} s with the chamber still at heat: how the hold went on is not known",
            figures.total_s
        );
        return Some(Answer::Open(reason(Code::Truncated, text)));
    }
    if figures.begins_late {
        let text = "the record begins with steam, or a vacuum, already in the chamber: what was done about the air is not in it";
        return Some(Answer::Open(reason(Code::Truncated, text.to_owned())));
    }
    if let Some((from, to)) = figures.gap_before_hold_s {
        let text = format!(
            "{:.0} s without a sample, or with a jump of the clock, before the hold: whether air removal went well is not shown",
            to - from
        );
        let at_s = Some((from, to));
        return Some(Answer::Open(Finding { at_s, ..reason(Code::RowsMissing, text) }));
    }
    let limit = asked.limits.get(Name::VacuumLeak);
    let leak = figures.vacuum_leak_kpa_per_min.unwrap_or(0.0);
    if leak >= limit {
        let text = format!(
            "pressure climbs by at least {leak:.0} kPa a minute while the first vacuum is held, where {limit:.0} is too much: air removal is not shown"
        );
        return Some(Answer::Open(reason(Code::GasketLeak, text)));
    }
    figures.vacuum_stalled.then(|| {
        let text = format!(
            "the pump levels off and no vacuum gets below {:.0} kPa: air comes in as fast as it is drawn, and air removal is not shown",
            figures.vacuum_sure_kpa.iter().copied().fold(f64::INFINITY, f64::min)
        );
        Answer::Open(reason(Code::GasketLeak, text))
    })
}

/// Nothing stands against it: does it carry what was inside?
fn proven(record: &CycleRecord, figures: &Figures, asked: &Asked<'_>) -> Verdict {
    let proven_for = covers::proven_for(figures, asked);
    let judged_as = match asked.contents {
        Contents::Unknown => Contents::Unwrapped,
        contents => contents,
    };
    if !proven_for.contains(&judged_as) {
        let decisive = covers::why_not(figures, asked);
        return Verdict {
            conforming: conforming(record, figures, asked),
            ..open(decisive, figures)
        };
    }
    let met = hold_met(figures);
    Verdict {
        outcome: Outcome::Lethal,
        proven_for,
        conforming: conforming(record, figures, asked),
        reasons: with_findings(met, figures),
    }
}

fn hold_met(figures: &Figures) -> Finding {
    let set_c = figures.set_c.map_or(f64::NAN, |(set_c, _)| set_c);
    let mean = figures.plateau.and_then(|plateau| plateau.satdev_mean_k).unwrap_or(f64::NAN);
    let text = format!(
        "held {:.0} s at or above {set_c:.1} °C with steam, {:.0} s needed; on average {mean:+.2} K from saturation",
        figures.hold_s,
        figures.needed_hold_s.unwrap_or(f64::NAN)
    );
    Finding {
        at_s: figures.plateau.map(|plateau| (plateau.start_s, plateau.end_s)),
        lines: figures.plateau.map(|plateau| plateau.lines),
        ..reason(Code::HoldMet, text)
    }
}

/// Did the whole cycle keep to what was asked? Known only where a set temperature is stated or
/// given. Drying does not count.
fn conforming(record: &CycleRecord, figures: &Figures, asked: &Asked<'_>) -> Option<bool> {
    if broke_what_was_asked(record, figures, asked) {
        return Some(false);
    }
    let asked_for = figures.set_c.is_some_and(|(_, source)| source != Source::Plateau);
    asked_for.then_some(true)
}

/// Something that was asked for was certainly not kept.
fn broke_what_was_asked(record: &CycleRecord, figures: &Figures, asked: &Asked<'_>) -> bool {
    let Some((_, source)) = figures.set_c else {
        return false;
    };
    let doubt = asked.limits.get(Name::BorderSteps) * figures.step_s;
    let own_hold = record.stated.hold_s.unwrap_or(0.0);
    let wanted = figures.needed_hold_s.unwrap_or(0.0).max(own_hold) - doubt;
    let over = figures.findings.iter().any(|finding| finding.code == Code::OverBand);
    // Where the set temperature was only looked for, a hot cycle may have been asked for.
    let highest = figures.plateau.is_some_and(|plateau| plateau.max_c > 137.0 + 1e-6);
    let out_of_band = over && (source != Source::Plateau || highest);
    figures.hold_s < wanted || out_of_band && figures.hold_in_band_s < wanted
}

/// The finding with this code where there is one, else a reason with this text.
fn noticed(figures: &Figures, code: Code, text: &str) -> Finding {
    let found = figures.findings.iter().find(|finding| finding.code == code);
    found.cloned().unwrap_or_else(|| reason(code, text.to_owned()))
}
