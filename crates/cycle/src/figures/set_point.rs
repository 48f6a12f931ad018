//! What temperature was asked for.

use super::view::{Stretch, View};
use super::{Ask, hold};
use crate::extent::extent;
use crate::finding::{Code, Finding};
use crate::record::Source;

/// The set temperature, and what speaks against it.
pub(super) struct SetPoint {
    pub known: Option<(f64, Source)>,
    /// The longest stretch at it.
    pub hold: Option<Stretch>,
    pub unclear: Option<Finding>,
}

/// Given, else stated, else looked for in the plateau.
pub(super) fn find(view: &View, ask: &Ask) -> SetPoint {
    let sure = |set_c, source| SetPoint {
        known: Some((set_c, source)),
        hold: view.held(set_c),
        unclear: None,
    };
    if let Some(set_c) = ask.set_c {
        return sure(set_c, Source::Setting);
    }
    if let Some(set_c) = view.record.stated.set_c.filter(|set_c| set_c.is_finite()) {
        return sure(set_c, Source::Header);
    }
    match by_temperature(view) {
        Some((set_c, hold)) => SetPoint {
            known: Some((set_c, Source::Plateau)),
            hold: Some(hold),
            unclear: just_below(view, set_c, hold).or_else(|| against_pressure(view, set_c, hold)),
        },
        None => SetPoint { known: None, hold: None, unclear: None },
    }
}

fn candidates(view: &View) -> impl Iterator<Item = (f64, f64)> {
    view.rules
        .floors
        .iter()
        .filter(|&&(_, _, looked_for)| looked_for)
        .map(|&(set_c, floor_s, _)| (set_c, floor_s))
}

/// The highest candidate that was held for its floor, or at which the chamber was for at least a
/// third of its time at the next lower one. A dip, flicker around it or a hold cut short does not
/// make a 134 °C cycle one of 121 °C, and an overshoot does not make a 132 °C cycle one of 134 °C.
fn by_temperature(view: &View) -> Option<(f64, Stretch)> {
    let total = |set_c: f64| -> f64 {
        let gate = view.gate(set_c);
        let at_heat = |at: usize| view.at_heat(at, set_c, gate);
        let steps = (1..view.len()).filter(|&at| at_heat(at - 1) && at_heat(at));
        steps.map(|at| view.t[at] - view.t[at - 1]).filter(|&step| step <= view.longest).sum()
    };
    candidates(view).enumerate().find_map(|(at, (set_c, floor_s))| {
        let held = view.held(set_c)?;
        let lower = || candidates(view).nth(at + 1).map_or(0.0, |(lower, _)| total(lower));
        (view.seconds(held) >= floor_s || total(set_c) >= lower() / 3.0).then_some((set_c, held))
    })
}

/// How near below a higher candidate a plateau may come before it may be that one, missed, K.
const NEAR_K: f64 = 0.2;

/// A plateau that ends just below the next higher candidate may be that one, never reached.
fn just_below(view: &View, set_c: f64, run: Stretch) -> Option<Finding> {
    let higher = candidates(view).map(|(other, _)| other).filter(|&other| other > set_c).last()?;
    let steady = hold::steady(view, run).unwrap_or(run);
    let (_, most) = extent(&view.temp[steady.first..=steady.last]);
    (most >= higher - NEAR_K).then(|| {
        let text = format!(
            "the record states no set temperature; the plateau reaches {most:.1} °C: a cycle of {set_c:.0} °C, or one of {higher:.0} °C that was not reached"
        );
        view.finding(Code::SetUnclear, text, run)
    })
}

/// Is the middle one of the values at least the first limit and below the second? Counting is
/// cheaper than finding it.
fn median_lies_between(values: &[f64], (least, below): (f64, f64)) -> bool {
    let middle = values.len() / 2;
    let less_than = |limit: f64| values.iter().filter(|&&value| value < limit).count();
    less_than(least) <= middle && less_than(below) > middle
}

/// Does the pressure point to another of the three?
fn against_pressure(view: &View, set_c: f64, run: Stretch) -> Option<Finding> {
    if !view.has_pressure() {
        return None;
    }
    let steady = hold::steady(view, run).unwrap_or(run);
    let higher = || candidates(view).map(|(other, _)| other).filter(|&other| other > set_c);
    if median_lies_between(
        &view.sat[steady.first..=steady.last],
        (set_c - view.rules.suspect_k, higher().fold(f64::INFINITY, f64::min)),
    ) {
        return None;
    }
    let mut sat = view.sat[steady.first..=steady.last].to_vec();
    let middle = sat.len() / 2;
    let sat_c = *sat.select_nth_unstable_by(middle, f64::total_cmp).1;
    let other = if let Some(other) = higher().find(|&other| sat_c >= other) {
        format!("{other:.0} °C")
    } else if sat_c < set_c - view.rules.suspect_k {
        let lower = candidates(view).map(|(other, _)| other).find(|&other| other <= sat_c);
        lower.map_or("none of the usual ones".to_owned(), |other| format!("{other:.0} °C"))
    } else {
        return None;
    };
    let text = format!(
        "the record states no set temperature; measured temperature points to {set_c:.0} °C, the saturation temperature of the pressure ({sat_c:.1} °C) to {other}"
    );
    Some(view.finding(Code::SetUnclear, text, run))
}
