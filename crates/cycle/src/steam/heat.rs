//! What water and steam carry along the saturation line: heat and density.
//!
//! Regions 1 and 2 of IAPWS-IF97 at the pressure of region 4, so that heat and pressure come from
//! one formulation. Its coefficients are those of the release; the tests prove them against two
//! other open libraries (`tests/reference/steam_saturation.csv`) and a third.

use super::{KELVIN, psat, regions};

/// Regions 1 and 2 end here on the line, °C (IAPWS R7-97(2012): 623.15 K).
const MOST_C: f64 = 350.0;

/// Kelvin and MPa at `celsius`; `None` off the line.
fn place(celsius: f64) -> Option<(f64, f64)> {
    (0.0..=MOST_C).contains(&celsius).then(|| (celsius + KELVIN, psat(celsius) * 1e-3))
}

/// Heat that a kilogram of steam gives when it becomes water at `celsius`, J/kg; not-a-number
/// outside 0 to 350 °C.
///
/// ```
/// assert!((cycle::steam::latent_heat(134.0) / 2_162_045.0 - 1.0).abs() < 2e-4);
/// ```
#[must_use]
pub fn latent_heat(celsius: f64) -> f64 {
    place(celsius).map_or(f64::NAN, |(kelvin, mpa)| {
        regions::steam_enthalpy(kelvin, mpa) - regions::water_enthalpy(kelvin, mpa)
    })
}

/// Heat in a kilogram of water on the saturation line, J/kg, from about nothing at 0 °C: only
/// differences mean anything. Not-a-number outside 0 to 350 °C.
///
/// ```
/// let cooled = cycle::steam::liquid_enthalpy(134.0) - cycle::steam::liquid_enthalpy(45.0);
/// assert!((cooled - 375_049.0).abs() < 100.0);
/// ```
#[must_use]
pub fn liquid_enthalpy(celsius: f64) -> f64 {
    place(celsius).map_or(f64::NAN, |(kelvin, mpa)| regions::water_enthalpy(kelvin, mpa))
}

/// Mass of a cubic metre of saturated steam, kg/m³; not-a-number outside 0 to 350 °C.
///
/// ```
/// assert!((cycle::steam::vapour_density(134.0) * 0.597_939 - 1.0).abs() < 2e-4);
/// ```
#[must_use]
pub fn vapour_density(celsius: f64) -> f64 {
    place(celsius).map_or(f64::NAN, |(kelvin, mpa)| 1.0 / regions::steam_volume(kelvin, mpa))
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    /// Rows of the table; its last two columns name the source: two independent open libraries.
    #[test]
    fn agrees_with_the_table_of_saturated_steam() {
        let table = include_str!("../../tests/reference/steam_saturation.csv");
        let mut seen = 0;
        for row in csv::Reader::from_reader(table.as_bytes()).records() {
            let row = row.unwrap();
            if !["SAT_1K", "SAT_extra", "SAT_vacuum_drying"].contains(&&row[0]) {
                continue;
            }
            let number = |column: usize| row[column].parse::<f64>().unwrap();
            let celsius = number(3);
            let near = |ours: f64, given: f64| (ours / given - 1.0).abs() < 2e-4;
            // The columns of IF97 to their last digit (one row has its temperature rounded to
            // 0.001 K), those of IAPWS-95 as far as the two agree.
            assert!((latent_heat(celsius) - 1_000.0 * number(7)).abs() < 2.0, "{}", &row[1]);
            for column in [7, 8] {
                assert!(near(latent_heat(celsius), 1_000.0 * number(column)), "{}", &row[1]);
            }
            for column in [9, 10] {
                assert!(near(vapour_density(celsius), 1.0 / number(column)), "{}", &row[1]);
            }
            // The table counts from the triple point, in kJ to 0.001.
            assert!(near(liquid_enthalpy(celsius), 1_000.0 * number(11)), "{}", &row[1]);
            seen += 1;
        }
        assert!(seen > 50, "only {seen} rows of the table were found");
    }

    #[test]
    fn agrees_with_another_implementation() {
        for celsius in 1..=200 {
            let celsius = f64::from(celsius);
            let theirs = |share: f64, what: i32| seuif97::tx(celsius, share, what);
            let (h0, h1) = (theirs(0.0, seuif97::OH), theirs(1.0, seuif97::OH));
            let near = |ours: f64, given: f64| (ours / given - 1.0).abs() < 1e-9;
            assert!(near(latent_heat(celsius), 1_000.0 * (h1 - h0)), "{celsius} °C");
            assert!(near(vapour_density(celsius), 1.0 / theirs(1.0, seuif97::OV)), "{celsius} °C");
            assert!(near(liquid_enthalpy(celsius), 1_000.0 * h0), "{celsius} °C");
        }
    }

    #[test]
    fn outside_the_line_there_is_no_answer() {
        for bad in [f64::NAN, f64::INFINITY, -1.0, 351.0, 1e9] {
            assert!(latent_heat(bad).is_nan(), "{bad}");
            assert!(liquid_enthalpy(bad).is_nan(), "{bad}");
            assert!(vapour_density(bad).is_nan(), "{bad}");
        }
    }
}
