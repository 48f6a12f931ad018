//! The levels from the cost on.

use std::ops::Add;

/// Cost, drying and exposure; compares as the levels do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) struct Price {
    pub cost: u64,
    pub drying: u64,
    /// May be below 0 on the way.
    pub exposure: i64,
}

/// More than any plan.
pub(super) const NEVER: Price = Price { cost: u64::MAX / 4, drying: 0, exposure: 0 };

impl Add for Price {
    type Output = Self;
    fn add(self, more: Self) -> Self {
        Self {
            cost: self.cost + more.cost,
            drying: self.drying + more.drying,
            exposure: self.exposure + more.exposure,
        }
    }
}
