//! Moments and spans, in whole milliseconds. The core is handed moments; it never asks a clock.

use std::fmt;
use std::ops::{Add, Sub};

/// A moment: milliseconds since 1970-01-01 00:00 UTC.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Instant(i64);

/// A length of time in milliseconds; may be negative.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Span(i64);

impl Instant {
    /// From milliseconds since 1970-01-01 00:00 UTC.
    #[must_use]
    pub const fn from_millis(millis: i64) -> Self {
        Self(millis)
    }

    /// Milliseconds since 1970-01-01 00:00 UTC.
    #[must_use]
    pub const fn millis(self) -> i64 {
        self.0
    }
}

impl Span {
    /// From milliseconds.
    #[must_use]
    pub const fn from_millis(millis: i64) -> Self {
        Self(millis)
    }

    /// From whole seconds.
    #[must_use]
    pub const fn from_seconds(seconds: i64) -> Self {
        Self(seconds.saturating_mul(1_000))
    }

    /// From whole minutes.
    #[must_use]
    pub const fn from_minutes(minutes: i64) -> Self {
        Self(minutes.saturating_mul(60_000))
    }

    /// In milliseconds.
    #[must_use]
    pub const fn millis(self) -> i64 {
        self.0
    }

    /// In whole minutes, towards zero.
    #[must_use]
    pub const fn minutes(self) -> i64 {
        self.0 / 60_000
    }

    /// In seconds.
    #[must_use]
    pub fn seconds(self) -> f64 {
        self.0 as f64 / 1_000.0
    }

    /// The same length without its sign.
    #[must_use]
    pub const fn abs(self) -> Self {
        Self(self.0.saturating_abs())
    }
}

impl Add<Span> for Instant {
    type Output = Self;
    fn add(self, span: Span) -> Self {
        Self(self.0.saturating_add(span.0))
    }
}

impl Sub<Span> for Instant {
    type Output = Self;
    fn sub(self, span: Span) -> Self {
        Self(self.0.saturating_sub(span.0))
    }
}

impl Sub for Instant {
    type Output = Span;
    fn sub(self, earlier: Self) -> Span {
        Span(self.0.saturating_sub(earlier.0))
    }
}

impl fmt::Display for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let seconds = self.0.unsigned_abs() / 1_000;
        write!(f, "{sign}{}:{:02}", seconds / 60, seconds % 60)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_span_reads_as_minutes_and_seconds() {
        let start = Instant::from_millis(1_000_000);
        let end = start + Span::from_minutes(4) + Span::from_seconds(6);
        assert_eq!((end - start).to_string(), "4:06");
        assert_eq!((start - end).to_string(), "-4:06");
        assert_eq!((end - start).minutes(), 4);
    }
}
