//! A run whose numbers a person read off the display.

use super::{Asked, Outcome, Verdict, reason};
use crate::limits::Name;
use cycle::finding::{Code, Finding};
use cycle::steam;
use load::Contents;

/// What was read, and what is known of the programme. Nothing here is ever filled in beforehand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// Lowest temperature while the time at temperature ran, °C.
    pub lowest_c: f64,
    /// How long it was held, seconds.
    pub held_s: f64,
    /// Absolute pressure in that time, kPa; `None` where the display shows none.
    pub pressure_kpa: Option<f64>,
    /// Set temperature of the programme, °C, where it is known.
    pub set_c: Option<f64>,
    /// Deepest pressure of the vacuum pulses that the display reported, and how many there were;
    /// `None` where it reports none.
    pub deep_pulses: Option<(f64, u32)>,
}

/// Judges a reading: the same floors, the same saturation check, and a first reason that says that
/// it rests on a reading.
#[must_use]
pub fn judge_reading(reading: &Reading, asked: &Asked<'_>) -> Verdict {
    let (outcome, decisive) = outcome(reading, asked);
    if outcome != Outcome::Lethal {
        return verdict(outcome, Vec::new(), decisive);
    }
    let mut proven_for = vec![Contents::Unwrapped];
    let deep = reading.deep_pulses.is_some_and(|(kpa, count)| {
        kpa > 0.0
            && kpa <= asked.limits.get(Name::DeepPulse)
            && f64::from(count) >= asked.limits.get(Name::DeepPulses)
    });
    let gravity = asked.limits.get(Name::GravityPouches) >= 1.0
        && reading.held_s >= gravity_s(reading.lowest_c, asked);
    if deep || gravity {
        proven_for.push(Contents::Pouched);
    }
    if deep && asked.hollow_tested {
        proven_for.push(Contents::Hollow);
    }
    let judged_as = match asked.contents {
        Contents::Unknown => Contents::Unwrapped,
        contents => contents,
    };
    if proven_for.contains(&judged_as) {
        return verdict(outcome, proven_for, decisive);
    }
    let text = format!(
        "read off the display: the hold is met for open solid goods; what was inside ({judged_as}) needs deep vacuum pulses that the display reports, or a record"
    );
    verdict(Outcome::CannotTell, Vec::new(), reason(Code::LoadNotCovered, text))
}

fn gravity_s(lowest_c: f64, asked: &Asked<'_>) -> f64 {
    let name = if lowest_c >= 132.0 { Name::WrappedGravity132 } else { Name::WrappedGravity121 };
    asked.limits.get(name)
}

fn verdict(outcome: Outcome, proven_for: Vec<Contents>, decisive: Finding) -> Verdict {
    let conforming = (outcome == Outcome::NotLethal).then_some(false);
    Verdict { outcome, proven_for, conforming, reasons: vec![decisive] }
}

fn outcome(reading: &Reading, asked: &Asked<'_>) -> (Outcome, Finding) {
    let Reading { lowest_c, held_s, pressure_kpa, set_c, .. } = *reading;
    let cannot = |code, text: &str| {
        (Outcome::CannotTell, reason(code, format!("read off the display: {text}")))
    };
    let numbers = [Some(lowest_c), Some(held_s), pressure_kpa, set_c];
    if numbers.into_iter().flatten().any(|number| !number.is_finite()) {
        return cannot(Code::Unreadable, "a number that is none");
    }
    let failed = |code, text: String| {
        (Outcome::NotLethal, reason(code, format!("read off the display: {text}")))
    };
    let rules = asked.limits.rules();
    let looked_for = rules.floors.iter().filter(|floor| floor.2).map(|floor| floor.0);
    let wanted = set_c.or_else(|| looked_for.into_iter().find(|&floor| floor <= lowest_c));
    let Some(set_c) = wanted else {
        return failed(Code::HoldShort, format!("{lowest_c:.1} °C is below 121 °C"));
    };
    let Some(needed) = rules.floor_s(set_c) else {
        return cannot(Code::SetUnclear, "no published hold is known for this set temperature");
    };
    if lowest_c < set_c {
        return failed(
            Code::HoldShort,
            format!("the lowest temperature, {lowest_c:.1} °C, lies below the set {set_c:.1} °C"),
        );
    }
    if held_s < needed {
        return failed(
            Code::HoldShort,
            format!("{held_s:.0} s at or above {set_c:.1} °C, {needed:.0} s needed"),
        );
    }
    let Some(kpa) = pressure_kpa else {
        return cannot(Code::NoPressure, "no pressure, so whether it was steam cannot be told");
    };
    let off = lowest_c - steam::tsat(kpa);
    if off.abs() > asked.limits.get(Name::Saturation) {
        let code = if off < 0.0 { Code::AirLeft } else { Code::Superheat };
        return failed(code, format!("{off:+.1} K from saturated steam of {kpa:.0} kPa"));
    }
    // Not-a-number fails this comparison, and with it the reading.
    let near = off.abs() <= asked.limits.get(Name::Suspect) || off < 0.0;
    if !near {
        return cannot(
            Code::SensorOffset,
            &format!("{off:+.1} K from saturated steam of {kpa:.0} kPa: one of the two is off"),
        );
    }
    let text = format!(
        "read off the display: {held_s:.0} s at or above {set_c:.1} °C, {needed:.0} s needed; {off:+.1} K from saturated steam of {kpa:.0} kPa"
    );
    (Outcome::Lethal, reason(Code::HoldMet, text))
}
