//! What the numbers themselves say about their units.
//!
//! In a sterilizer three things are known beforehand. The open chamber shows the air pressure of
//! the place, 50 to 112 kPa counted from nothing, or about zero counted from the air. No pressure
//! lies below nothing. And while steam stands over water, temperature and pressure lie on the
//! saturation line. Each pair of units is tried against these; one that fits much better than
//! every other is taken, and where two fit nothing is.

use super::units::{PressureUnit, Reference, TemperatureUnit};
use crate::extent::{all_finite, extent};
use crate::memo::Memo;
use crate::steam;
use std::borrow::Cow;

/// Air pressure that an open chamber may show, kPa: 5 500 m above the sea to a strong high.
const OPEN_KPA: (f64, f64) = (50.0, 112.0);

/// How far from zero an open chamber's gauge may stand, kPa.
const ZERO_KPA: f64 = 6.0;

/// Added to the cost of a reading whose first samples do not look like an open chamber.
const NOT_OPEN: f64 = 6.0;

/// Cost of a reading in a record without steam, where the saturation line says nothing.
const NO_STEAM: f64 = 3.0;

/// A pressure that moves less than this over a whole record is no chamber's, kPa.
const STILL_KPA: f64 = 15.0;

/// Above this absolute pressure there is steam in the chamber, kPa.
const STEAM_KPA: f64 = 125.0;

/// Pairs that are held against the saturation line.
const TOP_PAIRS: usize = 150;

/// A reading is clear when every other costs this much more, K.
pub(super) const CLEAR: f64 = 4.0;

/// One way to read a pair of columns.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Guess {
    pub temperature: TemperatureUnit,
    pub pressure: PressureUnit,
    pub reference: Reference,
    /// Distance from what physics allows, in kelvin.
    pub cost: f64,
}

/// A pair of columns in brief.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Digest {
    /// Pressures of the first samples: the pump may start at once.
    start: Vec<f64>,
    least: f64,
    most: f64,
    /// Pairs of temperature and pressure where the pressure is highest.
    top: Vec<(f64, f64)>,
    coldest: f64,
    hottest: f64,
}

impl Digest {
    /// From readings in file order. Nothing when fewer than three of them are pairs of numbers.
    pub fn of(temperature: &[f64], pressure: &[f64]) -> Option<Self> {
        let (temperature, pressure) = finite_pairs(temperature, pressure);
        if temperature.len() < 3 {
            return None;
        }
        let start = pressure.iter().take(3).copied().collect();
        let (least, most) = inner(&pressure);
        let (coldest, hottest) = inner(&temperature);
        let floor = most - 0.12 * (most - least);
        let near = |p: f64| p >= floor && p <= most + 0.1 * (most - least);

        let pairs = || temperature.iter().copied().zip(pressure.iter().copied());
        let top = || pairs().filter(|pair| near(pair.1));
        let every = top().count().div_ceil(TOP_PAIRS).max(1);
        Some(Self { start, least, most, top: top().step_by(every).collect(), coldest, hottest })
    }

    /// Every way to read the pair that physics allows, the best first.
    pub fn guesses(&self, units: &[PressureUnit]) -> Vec<Guess> {
        let mut all = Vec::new();
        let mut tsat = Memo::new(steam::tsat as fn(f64) -> f64);
        for temperature in TemperatureUnit::ALL {
            for &pressure in units {
                for reference in [Reference::Absolute, Reference::Gauge] {
                    if let Some(cost) = self.cost((temperature, pressure, reference), &mut tsat) {
                        all.push(Guess { temperature, pressure, reference, cost });
                    }
                }
            }
        }
        all.sort_by(|a, b| a.cost.total_cmp(&b.cost));
        all
    }

    fn cost(
        &self,
        (t, p, reference): (TemperatureUnit, PressureUnit, Reference),
        tsat: &mut Memo<fn(f64) -> f64>,
    ) -> Option<f64> {
        let kpa = p.kpa();
        let (least, most) = (self.least * kpa, self.most * kpa);
        let (at_rest, air, lowest) = match reference {
            Reference::Absolute => (OPEN_KPA, (0.0, 0.0), -2.0),
            Reference::Gauge => ((-ZERO_KPA, ZERO_KPA), (58.0, 105.0), -107.0),
        };
        let open = self.start.iter().any(|p| within(p * kpa, at_rest));
        if least < lowest || most + air.1 > 700.0 {
            return None;
        }
        let penalty = if open { 0.0 } else { NOT_OPEN };
        let (coldest, hottest) = (t.to_celsius(self.coldest), t.to_celsius(self.hottest));
        if most + air.1 < STEAM_KPA {
            // Without steam pressure: a cold chamber, or one still waiting to be heated. Only
            // boiling water lifts the pressure above the air's.
            let over = match reference {
                Reference::Absolute => most - self.start.iter().fold(0.0, |m, p| p.max(m)) * kpa,
                Reference::Gauge => most,
            };
            let boils = hottest > 85.0 || over < 10.0;
            let believable = coldest > 2.0 && hottest < 118.0 && boils;
            let still = if most - least < STILL_KPA { 2.0 * NOT_OPEN } else { 0.0 };
            // Nothing but the open chamber speaks for it.
            return believable.then_some(NO_STEAM + 2.0 * penalty + still);
        }
        if !within(hottest, (95.0, 160.0)) || coldest < -20.0 {
            return None;
        }
        let gap = self.distance_from_saturation(t, kpa, air, tsat)?;
        (gap < 15.0).then_some(gap + penalty)
    }

    /// Median distance in K between temperature and the saturation line at the highest pressures;
    /// for a gauge the nearest over every believable air pressure.
    fn distance_from_saturation(
        &self,
        t: TemperatureUnit,
        kpa: f64,
        air: (f64, f64),
        tsat: &mut Memo<fn(f64) -> f64>,
    ) -> Option<f64> {
        let mut far: Vec<f64> = self
            .top
            .iter()
            .map(|&(reading, p)| {
                let celsius = t.to_celsius(reading);
                let low = celsius - tsat.get(p * kpa + air.0);
                let high = if air.0 == air.1 { low } else { celsius - tsat.get(p * kpa + air.1) };
                if low.signum() == high.signum() { low.abs().min(high.abs()) } else { 0.0 }
            })
            .filter(|d| d.is_finite())
            .collect();
        (!far.is_empty()).then(|| quantile(&mut far, 0.5))
    }
}

/// Do all readings that cost little more than the best agree in this?
pub(super) fn clear<T: PartialEq>(guesses: &[Guess], of: impl Fn(&Guess) -> T) -> Option<T> {
    let best = guesses.first()?;
    let wanted = of(best);
    guesses
        .iter()
        .take_while(|guess| guess.cost < best.cost + CLEAR)
        .all(|guess| of(guess) == wanted)
        .then_some(wanted)
}

/// The unit of a lone temperature column: the three ranges of a sterilising cycle do not meet.
pub(super) fn temperature_alone(readings: &[f64]) -> Option<TemperatureUnit> {
    let mut finite: Vec<f64> = readings.iter().copied().filter(|r| r.is_finite()).collect();
    if finite.is_empty() {
        return None;
    }
    let hottest = quantile(&mut finite, 0.99);
    TemperatureUnit::ALL.into_iter().find(|unit| within(unit.to_celsius(hottest), (112.0, 150.0)))
}

/// Lowest and highest value, leaving out one in two hundred and at least one on each side: a
/// broken sensor's stray values must not decide.
fn inner(values: &[f64]) -> (f64, f64) {
    let strays = (values.len() / 200).max(usize::from(values.len() > 7));
    let groups: Vec<(&[f64], (f64, f64))> =
        values.chunks(GROUP).map(|group| (group, extent(group))).collect();
    let low = nth_least(strays, &groups, |value| value, |extent| extent.0);
    let high = nth_least(strays, &groups, |value| -value, |extent| extent.1);
    (low, -high)
}

/// Values whose least and most are found together.
const GROUP: usize = 16;

/// The value before which so many lie once they are turned by `sign` and sorted; `end` gives the
/// first of a group's two ends in that order.
///
/// As many groups as have to be passed over, and one more, reach down to the last of their ends: so
/// the value wanted is no higher. Records are rounded, and mostly it is that end itself.
fn nth_least(
    strays: usize,
    groups: &[(&[f64], (f64, f64))],
    sign: impl Fn(f64) -> f64,
    end: impl Fn((f64, f64)) -> f64,
) -> f64 {
    let mut ends: Vec<f64> = groups.iter().map(|group| sign(end(group.1))).collect();
    let bound = match ends.len() > strays {
        true => *ends.select_nth_unstable_by(strays, f64::total_cmp).1,
        false => f64::INFINITY,
    };
    let mut below = Vec::new();
    for (values, extent) in groups {
        if sign(end(*extent)) < bound {
            below.extend(values.iter().map(|value| sign(*value)).filter(|value| *value < bound));
        }
    }
    if below.len() <= strays {
        return bound;
    }
    *below.select_nth_unstable_by(strays, f64::total_cmp).1
}

/// Both columns without the rows in which one of them is not a number.
fn finite_pairs<'a>(a: &'a [f64], b: &'a [f64]) -> (Cow<'a, [f64]>, Cow<'a, [f64]>) {
    if a.len() == b.len() && all_finite(a) && all_finite(b) {
        return (Cow::Borrowed(a), Cow::Borrowed(b));
    }
    let pairs = a.iter().zip(b).filter(|(a, b)| a.is_finite() && b.is_finite());
    let (a, b): (Vec<f64>, Vec<f64>) = pairs.unzip();
    (Cow::Owned(a), Cow::Owned(b))
}

fn within(value: f64, range: (f64, f64)) -> bool {
    value >= range.0 && value <= range.1
}

/// The value below which this share of the values lies. The slice must not be empty.
pub(super) fn quantile(values: &mut [f64], share: f64) -> f64 {
    let last = values.len() - 1;
    let at = (last as f64 * share).round() as usize;
    *values.select_nth_unstable_by(at.min(last), f64::total_cmp).1
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Sorting everything is the yardstick.
        #[test]
        fn strays_are_left_out_on_both_sides(
            tenths in proptest::collection::vec(-50_i32..50, 3..9_000), every in 1_usize..60,
        ) {
            let values: Vec<f64> =
                tenths.iter().step_by(every.min(tenths.len() / 3)).map(|t| f64::from(*t) / 10.0).collect();
            let mut sorted = values.clone();
            sorted.sort_by(f64::total_cmp);
            let strays = (values.len() / 200).max(usize::from(values.len() > 7));
            let wanted = (sorted[strays], sorted[values.len() - 1 - strays]);
            prop_assert_eq!(inner(&values), wanted);
        }
    }
}
