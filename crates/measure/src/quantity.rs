//! Quantities with a unit. Each is made only from a number that its bound lets through.

use crate::bounds::{self, Bound, OutOfBounds};
use std::fmt;

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $bound:expr, $unit:literal, $places:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// The range of believable values.
            pub const BOUND: Bound = $bound;

            /// From a number in the unit of the type; an unbelievable one is an error.
            pub fn new(value: f64) -> Result<Self, OutOfBounds> {
                Self::BOUND.check(value).map(Self)
            }

            /// The number, in the unit of the type.
            #[must_use]
            pub const fn get(self) -> f64 {
                self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, concat!("{:.", $places, "} ", $unit), self.0)
            }
        }
    };
}

quantity!(
    /// Temperature in degrees Celsius.
    Celsius, bounds::TEMPERATURE, "°C", 1
);
quantity!(
    /// Absolute pressure in kilopascal. A gauge reading plus the air pressure of the place.
    Kilopascal, bounds::PRESSURE, "kPa", 1
);
quantity!(
    /// Mass in gram.
    Gram, bounds::MASS, "g", 0
);
quantity!(
    /// Length in millimetre.
    Millimetre, bounds::LENGTH, "mm", 0
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quantity_shows_its_unit() {
        assert_eq!(Kilopascal::new(304.2).map(|p| p.to_string()), Ok("304.2 kPa".to_owned()));
        assert_eq!(Gram::new(500.0).map(|m| m.to_string()), Ok("500 g".to_owned()));
        assert!(Millimetre::new(-1.0).is_err());
    }
}
