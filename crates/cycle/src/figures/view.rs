//! One record, with what every measurement needs worked out once.

use super::{Ask, Rules};
use crate::extent::{all_finite, steps};
use crate::finding::{Code, Finding};
use crate::memo::Memo;
use crate::record::CycleRecord;
use crate::steam;

/// Samples of one cycle and what goes with each.
pub(super) struct View<'a> {
    pub record: &'a CycleRecord,
    pub t: &'a [f64],
    pub temp: &'a [f64],
    /// Absolute pressure; empty where the record has none.
    pub press: &'a [f64],
    /// Saturation temperature of the pressure; empty where the record has none.
    pub sat: Vec<f64>,
    /// Air pressure of the place, kPa.
    pub air: f64,
    /// Usual step, seconds.
    pub step: f64,
    /// Longest interval that is not a gap, seconds.
    pub longest: f64,
    /// Longest interval there is, seconds.
    pub longest_step: f64,
    /// Places of the samples behind a jump of the clock in which a gap may hide, ascending.
    jumped: Vec<usize>,
    /// Neither a gap nor such a jump anywhere.
    pub unbroken: bool,
    pub rules: &'a Rules,
}

/// A stretch of samples, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Stretch {
    pub first: usize,
    pub last: usize,
}

impl<'a> View<'a> {
    /// `None` where a number is not a number, times do not ascend or the columns differ in length.
    pub fn new(record: &'a CycleRecord, ask: &'a Ask) -> Option<Self> {
        let samples = &record.samples;
        let (t, temp, press) = (&samples.t_s[..], &samples.temp_c[..], &samples.press_kpa[..]);
        let (least_step, longest_step) = steps(t);
        let sound = t.len() == temp.len()
            && t.len() == samples.line.len()
            && (press.is_empty() || press.len() == t.len())
            && [t, temp, press].into_iter().all(all_finite)
            && least_step > 0.0;
        if !sound {
            return None;
        }
        // Most records keep one step throughout.
        let step = if least_step == longest_step { least_step } else { median_step(t) };
        let rules = &ask.rules;
        let longest = rules.gap_s.max(rules.gap_steps * step);
        let jumped = jumped(record, longest);
        let mut tsat = Memo::new(steam::tsat);
        Some(Self {
            record,
            t,
            temp,
            press,
            // Below 0.7 kPa the line ends; no chamber is drawn that deep.
            sat: press.iter().map(|&kpa| tsat.get(kpa.max(0.7))).collect(),
            air: air_pressure(record, ask),
            step,
            longest,
            longest_step,
            unbroken: jumped.is_empty() && longest_step <= longest,
            jumped,
            rules,
        })
    }

    /// The same with another pressure, for looking at its curve alone: without saturation.
    pub fn with_pressure<'b>(&'b self, press: &'b [f64]) -> View<'b> {
        let jumped = self.jumped.clone();
        View { press, sat: Vec::new(), jumped, ..*self }
    }

    pub fn len(&self) -> usize {
        self.t.len()
    }

    pub fn has_pressure(&self) -> bool {
        !self.press.is_empty()
    }

    /// Smallest rise of pressure that is neither rounding nor noise, kPa.
    pub fn rise(&self) -> f64 {
        (2.0 * self.record.press_resolution_kpa).max(3.0)
    }

    pub fn seconds(&self, stretch: Stretch) -> f64 {
        self.t[stretch.last] - self.t[stretch.first]
    }

    /// The longest stretch of samples at the set temperature.
    pub fn held(&self, set_c: f64) -> Option<Stretch> {
        let gate = self.gate(set_c);
        let within = reach(self.temp, set_c - HEAT_SLACK_K)?;
        self.longest_stretch(within, |at| self.at_heat(at, set_c, gate))
    }

    /// The first sample at the set temperature, of those up to `until`.
    pub fn first_at_heat(&self, until: usize, set_c: f64) -> Option<usize> {
        let gate = self.gate(set_c);
        let hot = self.temp[..=until].iter().position(|&temp| temp >= set_c - HEAT_SLACK_K)?;
        (hot..=until).find(|&at| self.at_heat(at, set_c, gate))
    }

    /// The longest stretch of samples within another one that all satisfy `holds` and between which
    /// no interval is a gap; the first of equals.
    pub fn longest_stretch(
        &self,
        within: Stretch,
        holds: impl Fn(usize) -> bool,
    ) -> Option<Stretch> {
        let mut best: Option<Stretch> = None;
        let mut at = within.first;
        while at <= within.last {
            if !holds(at) {
                at += 1;
                continue;
            }
            let first = at;
            at += 1;
            while at <= within.last && holds(at) && !self.may_hide(at) {
                at += 1;
            }
            let here = Stretch { first, last: at - 1 };
            if best.is_none_or(|longest| self.seconds(here) > self.seconds(longest)) {
                best = Some(here);
            }
        }
        best
    }

    /// Is so much unknown before this sample that a hold does not go on over it: a gap, or a jump of
    /// the clock in which one may hide?
    pub fn may_hide(&self, at: usize) -> bool {
        !self.unbroken
            && (self.t[at] - self.t[at - 1] > self.longest
                || self.jumped.binary_search(&at).is_ok())
    }

    /// At or above the set temperature, with steam in the chamber as far as the record can show it.
    pub fn at_heat(&self, at: usize, set_c: f64, gate_kpa: f64) -> bool {
        self.temp[at] >= set_c - HEAT_SLACK_K
            && (self.press.is_empty() || self.press[at] >= gate_kpa)
    }

    /// Pressure from which the chamber holds steam for this set temperature, kPa.
    pub fn gate(&self, set_c: f64) -> f64 {
        self.rules.steam_gate * steam::psat(set_c)
    }

    pub fn finding(&self, code: Code, text: String, stretch: Stretch) -> Finding {
        let lines = &self.record.samples.line;
        let (from, to) = (lines[stretch.first], lines[stretch.last]);
        Finding {
            code,
            text,
            at_s: Some((self.t[stretch.first], self.t[stretch.last])),
            // Rows that stood in the wrong place were sorted: the lower line comes first.
            lines: Some((from.min(to), from.max(to))),
        }
    }
}

/// A reading counts as at the set temperature this little below it: numbers are rounded, K.
pub(super) const HEAT_SLACK_K: f64 = 1e-6;

/// From the first to the last value that is at least so much.
pub(super) fn reach(values: &[f64], least: f64) -> Option<Stretch> {
    let first = values.iter().position(|&value| value >= least)?;
    let last = values.iter().rposition(|&value| value >= least)?;
    Some(Stretch { first, last })
}

/// A clock set back by whole hours, as in autumn or at a midnight without a date, leaves no more
/// than a step open. One that goes ahead may as well be rows left out, one by more than a day a
/// misread date, and any other a mixture.
fn jumped(record: &CycleRecord, longest: f64) -> Vec<usize> {
    let open = |&&(_, jump): &&(f64, f64)| {
        !(-86_400.0..=0.0).contains(&jump) || jump.rem_euclid(3_600.0) > longest
    };
    let t = &record.samples.t_s;
    let jumps = record.integrity.clock_jumps.iter().filter(open);
    let mut places: Vec<usize> = jumps.map(|&(at, _)| t.partition_point(|&t| t < at)).collect();
    places.sort_unstable();
    places
}

/// Median step, seconds; 0 for fewer than two samples.
fn median_step(t: &[f64]) -> f64 {
    // What more than half of the steps are is the median.
    let middle = t.len() / 2;
    if let Some(&[before, after]) = t[middle.saturating_sub(1)..].first_chunk() {
        let step: f64 = after - before;
        let equal = t.windows(2).filter(|pair| pair[1] - pair[0] == step).count();
        if equal > (t.len() - 1) / 2 {
            return step;
        }
    }
    let mut steps: Vec<f64> = t.windows(2).map(|pair| pair[1] - pair[0]).collect();
    if steps.is_empty() {
        return 0.0;
    }
    let middle = steps.len() / 2;
    *steps.select_nth_unstable_by(middle, f64::total_cmp).1
}

/// From the reader, else from the altitude, else a standard atmosphere. It bounds phases only:
/// pressures are absolute already.
fn air_pressure(record: &CycleRecord, ask: &Ask) -> f64 {
    let altitude = ask.altitude_m.or(record.stated.altitude_m);
    record
        .ambient_kpa
        .filter(|kpa| kpa.is_finite() && *kpa > 40.0)
        .or_else(|| altitude.map(steam::air_pressure))
        .filter(|kpa| kpa.is_finite())
        .unwrap_or(steam::STANDARD_ATMOSPHERE_KPA)
}

/// Slope of the least-squares line through the points, per second;
/// `None` for fewer than three points or none apart in time.
pub(super) fn slope(t: &[f64], values: &[f64]) -> Option<f64> {
    let n = t.len() as f64;
    if t.len() < 3 || t.len() != values.len() {
        return None;
    }
    let mean_t = t.iter().sum::<f64>() / n;
    let mean = values.iter().sum::<f64>() / n;
    let spread: f64 = t.iter().map(|t| (t - mean_t) * (t - mean_t)).sum();
    let common: f64 = t.iter().zip(values).map(|(t, v)| (t - mean_t) * (v - mean)).sum();
    (spread > 0.0).then(|| common / spread)
}
