//! Shares of days and how sure they are.

/// The level of every interval here.
pub const LEVEL: f64 = 0.95;

/// The normal deviate that 2.5 in 100 lie above (tables of the normal distribution give 1.95996).
const Z: f64 = 1.959_963_984_540_054;

/// A share with its interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// What was found, 0 to 1.
    pub share: f64,
    /// Lower end of the interval, 0 to `share`.
    pub low: f64,
    /// Upper end of the interval, `share` to 1.
    pub high: f64,
}

/// `good` out of `of` days with Wilson's score interval at [`LEVEL`] (Wilson, "Probable inference,
/// the law of succession, and statistical inference", 1927), which keeps to its level even where
/// almost every day is good. Of no days at all nothing is known: 0 to 1.
///
/// ```
/// let none_of_twenty = day::sets::wilson(0, 20);
/// assert_eq!((none_of_twenty.low * 1e4).round(), 0.0);
/// assert_eq!((none_of_twenty.high * 1e4).round(), 1_611.0); // Newcombe 1998, table I
/// ```
#[must_use]
pub fn wilson(good: u64, of: u64) -> Share {
    if of == 0 {
        return Share { share: 0.0, low: 0.0, high: 1.0 };
    }
    let (good, n) = (good.min(of) as f64, of as f64);
    let share = good / n;
    let middle = good + Z * Z / 2.0;
    let half = Z * (good * (1.0 - share) + Z * Z / 4.0).sqrt();
    let end = |value: f64| value / (n + Z * Z);
    // The ends are 0 and 1 by the formula where no day or every day is good; rounding would miss that.
    let low = end(middle - half).clamp(0.0, share);
    let high = end(middle + half).clamp(share, 1.0);
    Share { share, low, high }
}

/// What changes between two ways to live the same days, as a share of all days.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gain {
    /// Good days more, -1 to 1.
    pub share: f64,
    /// Lower end of the interval.
    pub low: f64,
    /// Upper end of the interval.
    pub high: f64,
}

/// `gained` days became good and `lost` ones bad, out of `of` pairs of days. The interval is
/// Wald's for paired shares with half a day added to each of the four cells (Agresti and Min,
/// "Simple improved confidence intervals for comparing matched proportions", 2005).
#[must_use]
pub fn paired(gained: u64, lost: u64, of: u64) -> Gain {
    if of == 0 {
        return Gain { share: 0.0, low: -1.0, high: 1.0 };
    }
    let (gained, lost, n) = (gained as f64, lost as f64, of as f64);
    let share = (gained - lost) / n;
    let wide = n + 2.0;
    let middle = (gained - lost) / wide;
    let half = Z * (gained + lost + 1.0 - (gained - lost) * (gained - lost) / wide).sqrt() / wide;
    Gain { share, low: (middle - half).max(-1.0), high: (middle + half).min(1.0) }
}
