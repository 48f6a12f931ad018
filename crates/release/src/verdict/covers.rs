//! For which contents a proven hold counts.
//!
//! The published 134 °C / 3 min and 121 °C / 15 min are holding times at the load. Steam gets to
//! an open tray by itself; into a pouch it gets when the air was drawn out in deep pulses, or in
//! the longer times that CDC 2008 Table 7 gives for gravity displacement, where the machine's
//! manual allows pouches there; into a bore only a penetration test shows it.

use super::{Asked, reason};
use crate::limits::Name;
use cycle::figures::Figures;
use cycle::finding::{Code, Finding};
use load::Contents;

/// What a run carries whose hold and saturation are proven, the least demanding first.
#[must_use]
pub fn proven_for(figures: &Figures, asked: &Asked<'_>) -> Vec<Contents> {
    let mut proven = vec![Contents::Unwrapped];
    // Air that shows at the probe is thicker where steam has to find its way in.
    if air_shows(figures) {
        return proven;
    }
    let deep = deep_pulses(figures, asked);
    if deep || long_for_gravity(figures, asked) && asked.limits.get(Name::GravityPouches) >= 1.0 {
        proven.push(Contents::Pouched);
    }
    if deep && asked.hollow_tested {
        proven.push(Contents::Hollow);
    }
    proven
}

fn air_shows(figures: &Figures) -> bool {
    figures.findings.iter().any(|finding| finding.code == Code::AirLeft)
}

fn deep_pulses(figures: &Figures, asked: &Asked<'_>) -> bool {
    let depth = asked.limits.get(Name::DeepPulse);
    let deep = figures.vacuum_sure_kpa.iter().filter(|&&kpa| kpa <= depth).count();
    deep as f64 >= asked.limits.get(Name::DeepPulses)
}

fn long_for_gravity(figures: &Figures, asked: &Asked<'_>) -> bool {
    needed_for_gravity(figures, asked).is_some_and(|needed| figures.hold_s >= needed)
}

fn needed_for_gravity(figures: &Figures, asked: &Asked<'_>) -> Option<f64> {
    let (set_c, _) = figures.set_c?;
    if set_c >= 132.0 {
        Some(asked.limits.get(Name::WrappedGravity132))
    } else if set_c >= 121.0 {
        Some(asked.limits.get(Name::WrappedGravity121))
    } else {
        None
    }
}

/// Why the contents that were asked for are not carried.
pub(super) fn why_not(figures: &Figures, asked: &Asked<'_>) -> Finding {
    if air_shows(figures) {
        let text = "the hold is met for open solid goods; some air shows at the probe, and more of it would stay in pouches and bores";
        return reason(Code::LoadNotCovered, text.to_owned());
    }
    let pulses = || {
        format!(
            "{} vacuum pulses of at most {:.0} kPa ({} seen: {})",
            asked.limits.get(Name::DeepPulses),
            asked.limits.get(Name::DeepPulse),
            figures.vacuum_sure_kpa.len(),
            listed(&figures.vacuum_sure_kpa)
        )
    };
    let text = if asked.contents == Contents::Hollow {
        format!(
            "the hold is met for open solid goods; hollow goods need {} and a penetration test with a hollow load passed that day",
            pulses()
        )
    } else {
        let long = long_for_gravity(figures, asked);
        let needed = needed_for_gravity(figures, asked).unwrap_or(f64::NAN);
        let other = if long {
            "or that the manual allows pouches without forced air removal, which nobody set"
                .to_owned()
        } else {
            format!(
                "or {needed:.0} s at temperature ({:.0} s seen; CDC 2008 Table 7, gravity, wrapped) with a manual that allows pouches",
                figures.hold_s
            )
        };
        format!("the hold is met for open solid goods; pouches need {}, {other}", pulses())
    };
    reason(Code::LoadNotCovered, text)
}

fn listed(depths: &[f64]) -> String {
    if depths.is_empty() {
        return "none".to_owned();
    }
    let depths: Vec<_> = depths.iter().map(|kpa| format!("{kpa:.1}")).collect();
    format!("{} kPa", depths.join(", "))
}
