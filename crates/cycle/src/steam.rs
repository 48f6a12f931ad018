//! Saturated steam and the air around the machine.
//!
//! Where steam and water live together, pressure and temperature belong to each other: that is
//! what makes a chamber record checkable at all. Air in the chamber adds pressure and no heat, so
//! a chamber with air is colder than [`tsat`] of its pressure; superheated steam is hotter.
//!
//! The saturation line is region 4 of IAPWS-IF97 (IAPWS R7-97(2012), section 8), valid from 0 °C
//! to 373.946 °C. Units here are °C and kPa **absolute**, as plain `f64`, because these functions
//! run once a sample. Outside the valid range they give not-a-number, which fails every
//! comparison that a verdict could rest on.
//!
//! ```
//! use cycle::steam;
//! // The boiling point at one standard atmosphere.
//! assert!((steam::tsat(101.325) - 99.974).abs() < 0.001);
//! assert!((steam::tsat(steam::psat(134.0)) - 134.0).abs() < 1e-9);
//! ```

use measure::maths;

mod heat;
mod regions;

pub use heat::{latent_heat, liquid_enthalpy, vapour_density};

/// The ten coefficients of the region 4 equation, IAPWS R7-97(2012), table 34.
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// 0 °C in kelvin.
pub const KELVIN: f64 = 273.15;

/// One standard atmosphere in kPa, by definition (ISO 2533:1975; from memory).
pub const STANDARD_ATMOSPHERE_KPA: f64 = 101.325;

/// Range of the saturation line, °C: ice point to critical point.
const LINE_C: (f64, f64) = (0.0, 373.946);

/// Range of the saturation line, kPa: the pressures that belong to [`LINE_C`].
const LINE_KPA: (f64, f64) = (0.611_212, 22_064.0);

/// Saturation pressure in kPa absolute of steam at `celsius`; not-a-number outside 0 to 373.946 °C.
///
/// ```
/// assert!((cycle::steam::psat(121.1) - 205.685).abs() < 0.001);
/// assert!(cycle::steam::psat(-5.0).is_nan());
/// ```
#[must_use]
pub fn psat(celsius: f64) -> f64 {
    if !(celsius >= LINE_C.0 && celsius <= LINE_C.1) {
        return f64::NAN;
    }
    let t = celsius + KELVIN;
    let theta = t + N[8] / (t - N[9]);
    let a = (theta + N[0]) * theta + N[1];
    let b = (N[2] * theta + N[3]) * theta + N[4];
    let c = (N[5] * theta + N[6]) * theta + N[7];
    let root = 2.0 * c / (-b + (b * b - 4.0 * a * c).sqrt());
    let square = root * root;
    1_000.0 * square * square
}

/// Saturation temperature in °C of steam at `kpa` absolute; not-a-number outside 0.611 to 22 064 kPa.
///
/// ```
/// assert!((cycle::steam::tsat(304.0) - 133.978).abs() < 0.001);
/// assert!(cycle::steam::tsat(0.0).is_nan());
/// ```
#[must_use]
pub fn tsat(kpa: f64) -> f64 {
    if !(kpa >= LINE_KPA.0 && kpa <= LINE_KPA.1) {
        return f64::NAN;
    }
    let square = (kpa * 1e-3).sqrt();
    let beta = square.sqrt();
    let e = square + N[2] * beta + N[5];
    let f = N[0] * square + N[3] * beta + N[6];
    let g = N[1] * square + N[4] * beta + N[7];
    let d = 2.0 * g / (-f - (f * f - 4.0 * e * g).sqrt());
    let sum = N[9] + d;
    (sum - (sum * sum - 4.0 * (N[8] + N[9] * d)).sqrt()) / 2.0 - KELVIN
}

/// Air pressure in kPa of the standard atmosphere at a height above the sea.
///
/// Formula of the troposphere, ISO 2533:1975 (from memory; values compared with the table in
/// `tests/reference`). Valid over the range of [`measure::bounds::ALTITUDE`]; not-a-number
/// outside. Weather moves the true value by about ±3 kPa.
///
/// ```
/// assert_eq!(cycle::steam::air_pressure(0.0), 101.325);
/// ```
#[must_use]
pub fn air_pressure(altitude_m: f64) -> f64 {
    match measure::bounds::ALTITUDE.check(altitude_m) {
        Ok(m) => STANDARD_ATMOSPHERE_KPA * maths::pow(1.0 - 2.255_77e-5 * m, 5.255_88),
        Err(_) => f64::NAN,
    }
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    /// Columns of `tests/reference/steam_saturation.csv`, whose last two columns name each row's
    /// source: IAPWS R7-97(2012) tables 35 and 36, and two independent open libraries.
    fn rows(section: &str) -> Vec<Vec<String>> {
        let table = include_str!("../tests/reference/steam_saturation.csv");
        csv::Reader::from_reader(table.as_bytes())
            .records()
            .map(|row| row.unwrap().iter().map(str::to_owned).collect())
            .filter(|row: &Vec<String>| row[0] == section)
            .collect()
    }

    fn number(row: &[String], column: usize) -> f64 {
        row[column].parse().unwrap()
    }

    #[test]
    fn verification_values_of_the_release_itself() {
        let forward = rows("IF97_T35");
        let backward = rows("IF97_T36");
        assert_eq!((forward.len(), backward.len()), (2, 3));
        for row in &forward {
            if number(row, 3) <= LINE_C.1 {
                let given = number(row, 4);
                assert!((psat(number(row, 3)) / given - 1.0).abs() < 1e-8, "{}", row[1]);
            }
        }
        for row in &backward {
            assert!((tsat(number(row, 4)) - number(row, 3)).abs() < 1e-6, "{}", row[1]);
        }
    }

    #[test]
    fn agrees_with_the_table_of_saturated_steam() {
        let mut seen = 0;
        for section in ["SAT_1K", "SAT_extra", "SAT_vacuum_drying", "TSAT_of_p"] {
            for row in rows(section) {
                let (celsius, kpa) = (number(&row, 3), number(&row, 4));
                // The table is rounded to 0.0001 K and 0.0001 kPa.
                assert!((tsat(kpa) - celsius).abs() < 2e-3, "{} {}", row[0], row[1]);
                assert!((psat(celsius) / kpa - 1.0).abs() < 5e-5, "{}", row[1]);
                seen += 1;
            }
        }
        assert!(seen > 60, "only {seen} rows of the table were found");
    }

    #[test]
    fn agrees_with_another_implementation() {
        for tenth in 1..3_700 {
            let celsius = f64::from(tenth) / 10.0;
            let theirs = seuif97::tx(celsius, 1.0, seuif97::OP) * 1_000.0;
            assert!((psat(celsius) / theirs - 1.0).abs() < 1e-9, "{celsius} °C");
            let back = seuif97::px(psat(celsius) / 1_000.0, 1.0, seuif97::OT);
            assert!((tsat(psat(celsius)) - back).abs() < 1e-6, "{celsius} °C");
        }
    }

    #[test]
    fn air_gets_thinner_as_the_table_says() {
        let table = rows("ALTITUDE");
        assert!(table.len() >= 10);
        for row in table {
            let (metres, kpa) = (number(&row, 12), number(&row, 13));
            assert!((air_pressure(metres) - kpa).abs() < 0.01, "{metres} m");
        }
    }

    #[test]
    fn outside_the_line_there_is_no_answer() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0, 1e9] {
            assert!(psat(bad).is_nan(), "{bad}");
            assert!(tsat(bad).is_nan(), "{bad}");
            assert!(air_pressure(bad * 1e6).is_nan(), "{bad}");
        }
    }
}
