//! Money, in whole cents, so that sums never round.

use std::fmt;
use std::ops::Add;

/// An amount in the smallest unit of the salon's currency.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Money(i64);

impl Money {
    /// From cents.
    #[must_use]
    pub const fn from_cents(cents: i64) -> Self {
        Self(cents)
    }

    /// In cents.
    #[must_use]
    pub const fn cents(self) -> i64 {
        self.0
    }
}

impl Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        write!(f, "{sign}{}.{:02}", self.0.unsigned_abs() / 100, self.0.unsigned_abs() % 100)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cents_never_get_lost() {
        assert_eq!((Money::from_cents(199) + Money::from_cents(2)).to_string(), "2.01");
        assert_eq!(Money::from_cents(-5).to_string(), "-0.05");
    }
}
