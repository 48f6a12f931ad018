//! What is worth a word beside the figures.

use super::drying::After;
use super::heat::{self, Marks};
use super::view::{Stretch, View};
use super::{AirRemoval, Ask, EndsEarly, Plateau};
use crate::finding::{Code, Finding};

/// A fall below the set temperature between its first and its last moment at heat.
pub(super) fn dip(view: &View, set_c: f64, run: Stretch) -> Option<Finding> {
    let gate = view.gate(set_c);
    let heat = |at: &usize| view.at_heat(*at, set_c, gate);
    let first = view.first_at_heat(run.first, set_c)?;
    let last = (run.last..view.len()).rev().find(heat)?;
    // The run itself has none that is below.
    if (first, last) == (run.first, run.last) {
        return None;
    }
    let cold = |at: &usize| !view.at_heat(*at, set_c, gate);
    let from = (first..=last).find(cold)?;
    let to = (first..=last).rev().find(cold)?;
    let lowest = view.temp[from..=to].iter().copied().fold(f64::INFINITY, f64::min);
    let below = match (from..=to).filter(cold).count() {
        1 => "one reading".to_owned(),
        many => format!("{many} readings"),
    };
    let text = format!(
        "{below} below {set_c:.1} °C between the first and the last at it; the lowest is {lowest:.1} °C; time at temperature is counted on one side of them only"
    );
    Some(view.finding(Code::Dip, text, Stretch { first: from, last: to }))
}

/// Hotter than the band above the set temperature.
pub(super) fn over_band(
    view: &View,
    set_c: f64,
    (run, plateau): (Stretch, &Plateau),
) -> Option<Finding> {
    let top = set_c + view.rules.band_k + 1e-6;
    if plateau.max_c <= top {
        return None;
    }
    let hot = |at: &usize| view.temp[*at] > top;
    let first = (run.first..=run.last).find(hot)?;
    let last = (run.first..=run.last).rev().find(hot)?;
    let most = view.temp[first..=last].iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let text = format!(
        "up to {most:.1} °C, {:.1} K above the set temperature where {:.0} K are allowed: implements may suffer",
        most - set_c,
        view.rules.band_k
    );
    Some(view.finding(Code::OverBand, text, Stretch { first, last }))
}

/// Where the record stops before the cycle's end.
pub(super) fn ends_early(
    view: &View,
    run: Option<Stretch>,
    needed_s: f64,
    after: Option<After>,
) -> Option<EndsEarly> {
    let cut = view.record.integrity.truncated;
    let Some(run) = run else {
        // Nothing but an open chamber is the beginning of a record, unless it says otherwise.
        let begun = anything_happened(view) || view.record.stated.says_aborted.is_some();
        return (!at_rest(view) || !begun).then_some(EndsEarly::BeforeHold);
    };
    if !cooled(view, run) {
        let complete = view.seconds(run) >= needed_s;
        return Some(if complete { EndsEarly::AtHeat } else { EndsEarly::BeforeHold });
    }
    let open = !at_rest(view) || after.is_some_and(|after| !after.complete);
    (cut || open).then_some(EndsEarly::AfterHold)
}

/// Did the chamber leave the hold after this stretch, by more than one reading?
fn cooled(view: &View, run: Stretch) -> bool {
    let half = |at: usize| 0.5 * (view.press[at] + view.air);
    let left = |at: usize| {
        if view.has_pressure() {
            view.press[at] <= half(run.first)
        } else {
            view.temp[at] <= view.temp[run.first] - 10.0
        }
    };
    (run.last + 1..view.len()).any(|at| left(at - 1) && left(at))
}

/// Does the record begin when steam, or a vacuum, is already at work? Then what was done about the
/// air is not in it. The chamber of a warm machine may be above 100 °C, but its pressure does not
/// climb from the first reading on.
pub(super) fn begins_late(view: &View) -> bool {
    let (Some(&kpa), Some(&temp)) = (view.press.first(), view.temp.first()) else {
        return false;
    };
    let soon = view.press.iter().take(BEGINNING).copied().fold(kpa, f64::max);
    // The air pressure may have been taken from the first reading; the open chamber at the end
    // shows better.
    let opened = rests_at(view).is_some_and(|end| end - kpa > OPEN_KPA);
    (kpa - view.air).abs() > OPEN_KPA || opened || temp > 100.0 && soon > kpa + view.rise()
}

/// Pressure at which the record ends, where it stands still and the chamber is neither hot nor
/// under vacuum.
fn rests_at(view: &View) -> Option<f64> {
    let last = view.len().checked_sub(1)?;
    let end = (0..=last).rev().take_while(|&at| view.t[last] - view.t[at] <= RESTS_S);
    let (least, most) = end.fold((f64::INFINITY, 0.0_f64), |(least, most), at| {
        (least.min(view.press[at]), most.max(view.press[at]))
    });
    let still = most - least <= view.rise();
    (still && (60.0..110.0).contains(&least)).then_some(least)
}

/// Seconds for which the open chamber at the end stands still.
const RESTS_S: f64 = 5.0;

/// An open chamber lies within this of the air pressure, kPa.
const OPEN_KPA: f64 = 20.0;

/// Samples by which a climb from the first one shows.
const BEGINNING: usize = 4;

/// Two samples at the end near air pressure, or without pressure, cooler than boiling water.
fn at_rest(view: &View) -> bool {
    let Some(last) = view.len().checked_sub(1) else {
        return false;
    };
    let rests = |at: usize| {
        if view.has_pressure() {
            // A hot load still gives off steam after the exhaust.
            (-10.0..=heat::STEAMING_KPA).contains(&(view.press[at] - view.air))
        } else {
            view.temp[at] < 105.0
        }
    };
    (0..=last).rev().take_while(|&at| rests(at)).any(|at| view.t[last] - view.t[at] >= 8.0)
}

/// Was any vacuum drawn, or any steam let in?
pub(super) fn anything_happened(view: &View) -> bool {
    view.press.iter().any(|&kpa| (kpa - view.air).abs() > 15.0)
        || view.press.is_empty() && view.temp.iter().any(|&temp| temp >= 100.0)
}

/// Why no hold was seen, or that the record itself says so.
pub(super) fn aborted(view: &View, run: Option<Stretch>, complete: bool) -> Option<Finding> {
    let last = view.len().checked_sub(1)?;
    let whole = Stretch { first: 0, last };
    if let Some(words) = &view.record.stated.says_aborted {
        let text = format!("the record says: {words}");
        return Some(view.finding(Code::Aborted, text, whole));
    }
    if run.is_some() || !complete || !anything_happened(view) {
        return None;
    }
    let most = view.temp.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let text = format!(
        "the cycle went back to air pressure without a hold; {most:.1} °C is the hottest it got"
    );
    Some(view.finding(Code::Aborted, text, whole))
}

/// Parts that take longer than they should; notes for upkeep, never for the verdict.
pub(super) fn slow_parts(
    view: &View,
    ask: &Ask,
    marks: &Marks,
    (air_removal, after): (AirRemoval, Option<After>),
) -> Vec<Finding> {
    let mut findings = Vec::new();
    let rules = view.rules;
    let limit =
        |usual: Option<f64>, plain: f64| usual.map_or(plain, |usual| usual * rules.slow_share);
    // Where the samples lie too far apart, a stretch is as much too long as they do.
    let measured = |stretch: Stretch| view.seconds(stretch) >= 5.0 * view.step;
    let heat_up = Stretch { first: marks.climb, last: marks.top };
    // Without vacuum pulses the climb heats the load too, and a history is needed to judge it.
    let judged = air_removal == AirRemoval::Vacuum || ask.usual.heat_up_s.is_some();
    let most = limit(ask.usual.heat_up_s, rules.slow_heat_up_s);
    if judged && measured(heat_up) && view.seconds(heat_up) > most {
        let text = format!(
            "{:.0} s from the last pulse to the set temperature, where {most:.0} s would be slow: a weak heater, low mains, or scale",
            view.seconds(heat_up)
        );
        findings.push(view.finding(Code::WeakHeater, text, heat_up));
    }
    if let Some((first, last)) = after.and_then(|after| after.air_in) {
        let inlet = Stretch { first, last };
        let most = limit(ask.usual.air_in_s, rules.slow_air_in_s);
        if measured(inlet) && view.seconds(inlet) > most {
            let text = format!(
                "{:.0} s to let air in, where {most:.0} s would be slow: a clogged air filter",
                view.seconds(inlet)
            );
            findings.push(view.finding(Code::CloggedFilter, text, inlet));
        }
    }
    findings
}
