//! Temperatures, pressures, lengths and masses with their unit, as the salon reads them: metric, or as
//! used in the United States. What is stored is metric always.

use super::when;
use crate::web::Ctx;
use logbook::fact::Units;

/// One inch is 25.4 mm, and one ounce 28.349523125 g, by definition (the international yard and pound
/// agreement of 1959; from memory).
const INCH_MM: f64 = 25.4;
const OUNCE_G: f64 = 28.349_523_125;

/// A temperature of so many thousandths of °C: `134.8 °C`, `274.6 °F`. Cut, never rounded up.
pub fn temperature(ctx: &Ctx, thousandths: i64) -> String {
    match ctx.record.1 {
        Units::Metric => format!("{} °C", when::tenths(thousandths)),
        // Exact in whole numbers: nine fifths, and 32.
        Units::Us => format!("{} °F", when::tenths((thousandths * 9).div_euclid(5) + 32_000)),
    }
}

/// A whole number of degrees that somebody set: `134 °C`, `273.2 °F`.
pub fn degrees(ctx: &Ctx, celsius: u32) -> String {
    temperature(ctx, i64::from(celsius) * 1_000).replace(".0 ", " ")
}

/// A difference of temperatures, thousandths of a kelvin: `0.4 K`, `0.7 °F`.
pub fn difference(ctx: &Ctx, thousandths: i64) -> String {
    match ctx.record.1 {
        Units::Metric => format!("{} K", when::tenths(thousandths)),
        Units::Us => format!("{} °F", when::tenths((thousandths * 9).div_euclid(5))),
    }
}

/// A mass of so many grams: `1240 g`, `43.7 oz`.
pub fn mass(ctx: &Ctx, grams: f64) -> String {
    match ctx.record.1 {
        Units::Metric if grams.fract() == 0.0 => format!("{grams}\u{a0}g"),
        Units::Metric => format!("{grams:.1}\u{a0}g"),
        Units::Us => format!("{:.1}\u{a0}oz", grams / OUNCE_G),
    }
}

/// Width and length of so many millimetres: `90 × 230 mm`, `3.5 × 9.1 in`.
pub fn width_and_length(ctx: &Ctx, width: u32, length: u32) -> (String, String) {
    match ctx.record.1 {
        Units::Metric => (width.to_string(), format!("{length} mm")),
        Units::Us => {
            let inches = |mm: u32| format!("{:.1}", f64::from(mm) / INCH_MM);
            (inches(width), format!("{} in", inches(length)))
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;
    use crate::pages::tests::ctx;
    use crate::words::Language;

    /// 134 °C is 273.2 °F and 121 °C is 249.8 °F: nine fifths and 32, by definition; an inch is
    /// 25.4 mm and an ounce 28.35 g.
    #[test]
    fn both_kinds_of_units_say_the_same() {
        let metric = ctx(Language::En);
        let us = Ctx { record: (Language::En, Units::Us), ..metric.clone() };
        let both = |said: &dyn Fn(&Ctx) -> String, expected: [&str; 2]| {
            assert_eq!([said(&metric), said(&us)], expected);
        };
        both(&|ctx| temperature(ctx, 134_000), ["134.0 °C", "273.2 °F"]);
        both(&|ctx| temperature(ctx, 121_000), ["121.0 °C", "249.8 °F"]);
        // A figure below its limit never reads as the limit.
        both(&|ctx| temperature(ctx, 133_999), ["133.9 °C", "273.1 °F"]);
        both(&|ctx| degrees(ctx, 134), ["134 °C", "273.2 °F"]);
        both(&|ctx| difference(ctx, 1_000), ["1.0 K", "1.8 °F"]);
        both(&|ctx| mass(ctx, 567.0), ["567\u{a0}g", "20.0\u{a0}oz"]);
        both(&|ctx| mass(ctx, 28.5), ["28.5\u{a0}g", "1.0\u{a0}oz"]);
        both(
            &|ctx| {
                let (width, length) = width_and_length(ctx, 127, 254);
                format!("{width} × {length}")
            },
            ["127 × 254 mm", "5.0 × 10.0 in"],
        );
    }
}
