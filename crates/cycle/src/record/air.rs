//! Air pressure of the place, for pressures that are counted from it.
//!
//! Where somebody gave the altitude there is nothing to work out. Where nobody did, the record
//! bounds it from four sides, and each bound rests on another part of the cycle:
//!
//! - no vacuum is deeper than nothing, so the air pressure is at least the deepest vacuum;
//! - while steam pours onto a cold load it condenses and cannot be hotter than saturation, so it
//!   is at least what saturation asks for early in the rise, less what a probe that reads too hot
//!   may have added there (see [`rise_bound`]);
//! - the chamber blowing off after the hold is full of steam no colder than saturation, so it is at
//!   most what saturation asks for there;
//! - and nowhere that people work is it above a strong high at sea level.
//!
//! Within these bounds the hold itself says best. But reading the air pressure off the hold would
//! also explain away air left in it or superheat, as far as the bounds are apart. So where they
//! are so far apart that more than [`HIDDEN_K`] could hide between them, the pressure is called
//! unclear, and no verdict rests on it. Where the hold lies outside the bounds it is the hold that
//! is wrong, and the deviation is shown from the likeliest air pressure.

use super::Samples;
use super::convert::OFFSET_KPA;
use super::physics::quantile;
use crate::steam::{STANDARD_ATMOSPHERE_KPA, air_pressure, psat, tsat};

/// The largest deviation from saturation that an unknown air pressure may hide, K: what a hold may
/// deviate at all (common practice, no source).
const HIDDEN_K: f64 = 2.0;

/// Air pressure between 4 500 m and a strong high at sea level, kPa (from memory).
const PLAUSIBLE_KPA: (f64, f64) = (58.0, 104.5);

/// Noise of the bounds, kPa.
const SLACK_KPA: f64 = 1.5;

/// Above this over the air there is steam in the chamber, kPa (common practice, no source).
const STEAM_KPA: f64 = 5.0;

/// The early rise is where the saturation line has no more than this share of its slope in the
/// hold: nearer to it the two hardly differ in what an error of the probe does.
const MOST_SLOPE: f64 = 0.7;

/// What small vacuum pumps leave in the chamber, kPa (common practice, no source).
const PUMP_END_KPA: f64 = 4.0;

/// Weather moves the air pressure by 3 kPa, and a sensor by as much again (from memory).
const WEATHER_AND_SENSOR_KPA: f64 = 8.0;

/// Air pressure of the place.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Air {
    /// In kPa absolute; `None` where nothing tells it.
    pub kpa: Option<f64>,
    /// Why a verdict must not rest on it.
    pub doubt: Option<String>,
}

/// Air pressure around a chamber whose pressures are counted from it.
pub(super) fn around_gauge(samples: &Samples, altitude_m: Option<f64>) -> Air {
    let Some(metres) = altitude_m else {
        return of_place(&samples.temp_c, &samples.press_kpa);
    };
    let air = air_pressure(metres);
    let deepest = samples.press_kpa.iter().copied().fold(0.0, f64::min);
    let doubt = (air + deepest < -OFFSET_KPA).then(|| {
        format!(
            "the vacuum of {deepest:.1} kPa is deeper than the air pressure of {air:.1} kPa at {metres:.0} m allows: check the altitude"
        )
    });
    Air { kpa: Some(air), doubt }
}

/// Air pressure from an absolute pressure in the open chamber at the start.
pub(super) fn of_open_chamber(samples: &Samples, altitude_m: Option<f64>) -> Air {
    let promised = altitude_m.map(air_pressure);
    // The first row alone: the pump may start at once.
    let first = samples.press_kpa.first().copied();
    let Some(open) = first.filter(|kpa| (50.0..=110.0).contains(kpa)) else {
        return Air { kpa: promised, doubt: None };
    };
    let doubt = promised
        .filter(|air| (air - open).abs() > WEATHER_AND_SENSOR_KPA)
        .map(|air| {
            format!(
                "the open chamber shows {open:.1} kPa where the altitude promises {air:.1} kPa: check the altitude, or whether the pressures are absolute"
            )
        });
    Air { kpa: Some(open), doubt }
}

/// Works out the air pressure from temperatures in °C and gauge pressures in kPa, in time order.
fn of_place(celsius: &[f64], gauge: &[f64]) -> Air {
    let deepest = gauge.iter().copied().fold(f64::INFINITY, f64::min);
    let top = gauge.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let hold: Vec<usize> =
        (0..gauge.len()).filter(|&i| gauge[i] >= 0.85 * top && celsius[i] > 105.0).collect();
    let mut low = PLAUSIBLE_KPA.0.max(1.0 - deepest);
    let (Some(first), Some(last), true) = (hold.first(), hold.last(), top > 50.0) else {
        let kpa = STANDARD_ATMOSPHERE_KPA.clamp(low.min(PLAUSIBLE_KPA.1), PLAUSIBLE_KPA.1);
        return Air { kpa: Some(kpa), doubt: None };
    };
    let high = match blow_off_bound(&celsius[*last..], &gauge[*last..]) {
        Some(bound) => PLAUSIBLE_KPA.1.min(bound + 2.0),
        None => PLAUSIBLE_KPA.1,
    };
    let median = |of: &dyn Fn(usize) -> f64| {
        quantile(&mut hold.iter().map(|&i| of(i)).collect::<Vec<_>>(), 0.5)
    };
    let seen = median(&|i| psat(celsius[i]) - gauge[i]);
    let hottest = median(&|i| celsius[i]);
    if let Some(rise) = rise_bound((&celsius[..*first], &gauge[..*first]), (hottest, seen)) {
        low = low.max(rise - 0.5);
    }
    let deviation = |kpa: f64| median(&|i| celsius[i] - tsat(gauge[i] + kpa));
    let (warmest, coldest) = (deviation(low), deviation(high));
    let inside = seen >= low - SLACK_KPA && seen <= high + SLACK_KPA;
    let hidden = if inside {
        warmest > HIDDEN_K || coldest < -HIDDEN_K
    } else {
        // Certainly wrong only where it is so at every air pressure that the bounds allow.
        warmest > -HIDDEN_K && coldest < HIDDEN_K
    };
    let kpa = if inside {
        seen.clamp(low.min(PLAUSIBLE_KPA.1), PLAUSIBLE_KPA.1)
    } else {
        // Whatever is likeliest, an air pressure out of bounds would show too small a deviation.
        let likeliest =
            if deepest < -60.0 { PUMP_END_KPA - deepest } else { STANDARD_ATMOSPHERE_KPA };
        likeliest.clamp(low.min(high), high.max(low))
    };
    let doubt = hidden.then(|| {
        format!(
            "the pressures are counted from the air, whose pressure is not given and could be {low:.0} to {high:.0} kPa: set the altitude of the place"
        )
    });
    Air { kpa: Some(kpa), doubt }
}

/// The least that the air pressure can be by the early rise: temperature and pressure both rising
/// over two steps, above the air. `hold` has the temperature of the hold and the air pressure that
/// saturation asks for there.
///
/// A wrong air pressure is off by as many kPa everywhere. A probe that is off by some kelvins
/// moves what saturation asks for by as many times the slope of the line, 3.6 kPa a K at 100 °C
/// and 9 at 134 °C. So where the rise asks for less than the hold, so much of a probe's error is
/// taken off as explains the whole difference. Steam that still had air in it early on looks the
/// same and lowers the bound as well: the record cannot tell the two apart.
fn rise_bound((celsius, gauge): (&[f64], &[f64]), hold: (f64, f64)) -> Option<f64> {
    let (hottest, seen) = hold;
    let steepest = slope(hottest);
    let mut bounds: Vec<f64> = celsius
        .windows(3)
        .zip(gauge.windows(3))
        .filter(|(t, g)| g[0] > STEAM_KPA && t.is_sorted() && g.is_sorted())
        .filter(|(t, g)| t[0] < t[1] && t[1] < t[2] && g[0] < g[2])
        .map(|(t, g)| (psat(t[2]) - g[2], slope(t[2])))
        .filter(|(_, slope)| *slope <= MOST_SLOPE * steepest)
        .map(|(asked, slope)| {
            let too_hot_k = ((seen - asked) / (steepest - slope)).max(0.0);
            asked - too_hot_k * slope
        })
        .collect();
    // A lagging probe or air in the steam only lowers a bound, so the upper ones are the better.
    (!bounds.is_empty()).then(|| quantile(&mut bounds, 0.75))
}

/// Slope of the saturation line in kPa a K.
fn slope(celsius: f64) -> f64 {
    psat(celsius + 0.5) - psat(celsius - 0.5)
}

/// The least that saturation asks for while the chamber blows off into the open.
fn blow_off_bound(celsius: &[f64], gauge: &[f64]) -> Option<f64> {
    let end = gauge.iter().position(|g| *g < STEAM_KPA).unwrap_or(gauge.len());
    let low: Vec<usize> = (0..end).filter(|&i| gauge[i] <= 30.0).collect();
    if low.len() < 2 {
        return None;
    }
    low.into_iter().map(|i| psat(celsius[i]) - gauge[i]).reduce(f64::min)
}
