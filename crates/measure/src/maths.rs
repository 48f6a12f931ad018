//! Powers, exponentials and logarithms that give the same bits on every machine.
//!
//! The results come from the pure-Rust `libm`, never from the platform; `sqrt` is exact by
//! IEEE 754 and may be used directly.

/// 10 to the power of `x`.
///
/// ```
/// assert!((measure::maths::pow10(1.0) - 10.0).abs() < 1e-14);
/// ```
#[must_use]
pub fn pow10(x: f64) -> f64 {
    libm::exp(x * std::f64::consts::LN_10)
}

/// e to the power of `x`.
#[must_use]
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Natural logarithm of `x`; negative infinity at 0, not-a-number below.
#[must_use]
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// Logarithm to base 10.
#[must_use]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// `base` to the power of `exponent`.
#[must_use]
pub fn pow(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Identities of the functions themselves, not values from this code.
    #[test]
    fn identities_hold() {
        for x in [-5.0, -0.3, 0.0, 0.7, 2.5] {
            assert!((log10(pow10(x)) - x).abs() < 1e-13);
            assert!((ln(exp(x)) - x).abs() < 1e-13);
            assert!((pow(2.0, x) * pow(2.0, -x) - 1.0).abs() < 1e-13);
        }
    }
}
