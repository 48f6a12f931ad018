//! One table of physical bounds. A reading outside is a finding, never a value.

use std::fmt;

/// A named physical range. Both ends belong to it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bound {
    /// What the number is, as a person would say it.
    pub name: &'static str,
    /// The unit in which `least` and `most` stand.
    pub unit: &'static str,
    /// Smallest believable value.
    pub least: f64,
    /// Largest believable value.
    pub most: f64,
    /// Why the range ends there.
    pub why: &'static str,
}

/// Temperature in or near a small steam sterilizer.
pub const TEMPERATURE: Bound = Bound {
    name: "temperature",
    unit: "°C",
    least: -40.0,
    most: 300.0,
    why: "below: no workroom; above: dry heat at its hottest with room to spare (common practice, no source)",
};

/// Absolute pressure in a small steam sterilizer.
pub const PRESSURE: Bound = Bound {
    name: "absolute pressure",
    unit: "kPa",
    least: 0.0,
    most: 1_000.0,
    why: "steam at 180 °C; a small sterilizer's safety valve opens far below (common practice, no source)",
};

/// Mass of a load or of one piece.
pub const MASS: Bound = Bound {
    name: "mass",
    unit: "g",
    least: 0.0,
    most: 100_000.0,
    why: "a small sterilizer has a chamber below 60 L (EN 13060:2014 scope, seen)",
};

/// Length of an implement, a pouch or a tray.
pub const LENGTH: Bound = Bound {
    name: "length",
    unit: "mm",
    least: 0.0,
    most: 2_000.0,
    why: "nothing in a salon's sterilizer is longer (common practice, no source)",
};

/// Height of the place above the sea.
pub const ALTITUDE: Bound = Bound {
    name: "altitude",
    unit: "m",
    least: -430.0,
    most: 5_500.0,
    why: "the lowest shore and the highest towns (from memory)",
};

/// All bounds, for a page that shows them and for the test that reads them.
pub const TABLE: &[Bound] = &[TEMPERATURE, PRESSURE, MASS, LENGTH, ALTITUDE];

/// A number that is not believable for what it is said to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutOfBounds {
    /// The range that it should have been in.
    pub bound: Bound,
    /// What was given.
    pub value: f64,
}

impl fmt::Display for OutOfBounds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Bound { name, unit, least, most, .. } = self.bound;
        write!(f, "{} {unit} is not a {name} between {least} and {most} {unit}", self.value)
    }
}

impl std::error::Error for OutOfBounds {}

impl Bound {
    /// The value itself when it lies in the range. Not-a-number lies in no range.
    pub fn check(self, value: f64) -> Result<f64, OutOfBounds> {
        if value >= self.least && value <= self.most {
            Ok(value)
        } else {
            Err(OutOfBounds { bound: self, value })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn not_a_number_and_infinity_lie_in_no_range() {
        for bound in TABLE {
            assert!(bound.least < bound.most, "{}", bound.name);
            for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                assert!(bound.check(bad).is_err(), "{} let {bad} through", bound.name);
            }
            assert_eq!(bound.check(bound.least), Ok(bound.least));
            assert_eq!(bound.check(bound.most), Ok(bound.most));
        }
    }

    #[test]
    fn the_message_names_the_range() {
        let said = TEMPERATURE.check(999.0).map_err(|e| e.to_string());
        assert_eq!(said, Err("999 °C is not a temperature between -40 and 300 °C".to_owned()));
    }
}
