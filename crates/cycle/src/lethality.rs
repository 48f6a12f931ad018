//! Lethality worked out from temperature over time: F0, A0, and what a spore of known resistance
//! would make of them.
//!
//! The lethal rate is `10^((T - reference) / z)`; F0 adds it up with 121.1 °C and z = 10 K and
//! comes out in minutes "at 121.1 °C"; A0 does so with 80 °C and counts seconds (ISO 15883-1,
//! Annex B, from memory).
//!
//! # Limits of validity
//! The model with constant D and z holds in a limited range only and promises too much below
//! 120 °C (van Doornmalen and Kopinga 2009, J Appl Microbiol, abstract seen). Nothing here knows
//! about air, superheat or bores. A run is therefore judged by temperature, time and saturation;
//! F0 is reported beside it, and of the two sums below only the lesser may be used by a verdict.
//! Log reductions are for tests and for study, not for screens.

use crate::extent::lesser;
use crate::memo::Memo;
use measure::maths;
use std::fmt;

/// Reference temperature of F0, °C (121.1 and 121.11 are both in use and differ by 0.23 %).
pub const F0_REFERENCE_C: f64 = 121.1;
/// z of F0, K.
pub const F0_Z_K: f64 = 10.0;
/// Reference temperature of A0, °C (ISO 15883-1 Annex B, from memory).
pub const A0_REFERENCE_C: f64 = 80.0;
/// Temperature from which A0 is counted, °C (ISO 15883-1, from memory).
pub const A0_FROM_C: f64 = 65.0;

/// Lethal rate at `temp_c`: seconds at `reference_c` that one second is worth.
///
/// ```
/// // Published teaching table, Tref 121.1 °C, z 10 K: L(130 °C) = 7.762471166.
/// assert!((cycle::lethality::rate(130.0, 121.1, 10.0) - 7.762_471_166).abs() < 1e-9);
/// ```
#[must_use]
pub fn rate(temp_c: f64, reference_c: f64, z_k: f64) -> f64 {
    maths::pow10((temp_c - reference_c) / z_k)
}

/// Equivalent minutes, added up in three ways.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Sums {
    /// Trapezoid: for comparing with published series. Too high on every ramp.
    pub trapezoid_min: f64,
    /// Lesser end of each interval: never too high, and the only one that a verdict may use.
    pub low_min: f64,
    /// Each sample times the interval that follows it: how published teaching sheets count.
    pub rectangle_min: f64,
}

/// Adds up the lethal rate over `t_s` (seconds, ascending) and `temp_c`, which are of one length.
///
/// An interval longer than `longest_s` adds nothing: what happened in it is not known.
#[must_use]
pub fn sums(t_s: &[f64], temp_c: &[f64], longest_s: f64, (reference_c, z_k): (f64, f64)) -> Sums {
    let mut rate = Memo::new(|temp_c| rate(temp_c, reference_c, z_k));
    let mut sums = Sums::default();
    let mut samples = t_s.iter().zip(temp_c);
    let Some((&first_t, &first_temp)) = samples.next() else {
        return sums;
    };
    let mut before = (first_t, rate.get(first_temp));
    // Mostly one step follows the other, and dividing costs more than looking.
    let (mut usual, mut minutes) = (0.0, 0.0);
    for (&t, &temp) in samples {
        let here = rate.get(temp);
        let step = t - before.0;
        if step <= longest_s {
            if step != usual {
                (usual, minutes) = (step, step / 60.0);
            }
            sums.trapezoid_min += 0.5 * (before.1 + here) * minutes;
            sums.low_min += lesser(before.1, here) * minutes;
            sums.rectangle_min += before.1 * minutes;
        }
        before = (t, here);
    }
    sums
}

/// A0 in seconds, by the lesser end of each interval; nothing below 65 °C counts.
///
/// ```
/// // By definition: 600 s at 80 °C are A0 = 600.
/// assert_eq!(cycle::lethality::a0_low_s(&[0.0, 600.0], &[80.0, 80.0], 600.0), 600.0);
/// ```
#[must_use]
pub fn a0_low_s(t_s: &[f64], temp_c: &[f64], longest_s: f64) -> f64 {
    let mut sum = 0.0;
    for (t, temp) in t_s.windows(2).zip(temp_c.windows(2)) {
        let low = temp[0].min(temp[1]);
        let step = t[1] - t[0];
        if low >= A0_FROM_C && step <= longest_s {
            sum += rate(low, A0_REFERENCE_C, F0_Z_K) * step;
        }
    }
    sum
}

/// A spore, as its supplier states it: how many, and how long at 121 °C a tenth of them survives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spore {
    /// How many there are, as a logarithm to base 10.
    log10_count: f64,
    /// Minutes at the reference temperature that leave one in ten.
    d_min: f64,
}

/// A spore that cannot be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NoSpore;

impl fmt::Display for NoSpore {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a spore count is between 1 and 1e12 and D between 0.01 and 100 minutes; nothing was worked out; look at the leaflet of the spore test")
    }
}

impl std::error::Error for NoSpore {}

impl Spore {
    /// From a count and D in minutes.
    ///
    /// # Errors
    /// A count outside 1 to 1e12 or D outside 0.01 to 100 minutes (common practice, no source).
    pub fn new(count: f64, d_min: f64) -> Result<Self, NoSpore> {
        if (1.0..=1e12).contains(&count) && (0.01..=100.0).contains(&d_min) {
            Ok(Self { log10_count: maths::log10(count), d_min })
        } else {
            Err(NoSpore)
        }
    }

    /// Logarithm to base 10 of how many are left after `f_min` minutes: below 0, the chance that
    /// one is.
    #[must_use]
    pub fn log10_left(self, f_min: f64) -> f64 {
        self.log10_count - f_min / self.d_min
    }

    /// Minutes after which at most one in a million samples holds a survivor.
    #[must_use]
    pub fn minutes_to_a_millionth(self) -> f64 {
        self.d_min * (self.log10_count + 6.0)
    }

    /// Minutes up to which every sample still grows.
    #[must_use]
    pub fn survival_min(self) -> f64 {
        (self.log10_count - 2.0) * self.d_min
    }

    /// Minutes from which on none grows.
    #[must_use]
    pub fn kill_min(self) -> f64 {
        (self.log10_count + 4.0) * self.d_min
    }
}

#[cfg(test)]
mod tests;
