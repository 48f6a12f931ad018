//! A function's last values, kept for arguments that come again.
//!
//! Records are rounded: a few hundred temperatures and pressures make up thousands of samples. The
//! saturation line and the lethal rate cost far more than looking up what they gave before.

/// Places for values; a power of two.
const PLACES: usize = 512;

/// A pure function with a memory. Two arguments that share a place push each other out, so it
/// never grows, and always gives what the function gives.
pub(crate) struct Memo<F> {
    of: F,
    /// Bits of the argument, and the value.
    kept: Vec<(u64, f64)>,
}

impl<F: Fn(f64) -> f64> Memo<F> {
    pub fn new(of: F) -> Self {
        // Every place begins with a true value, so that none needs to be marked as empty.
        let zero = (0.0_f64.to_bits(), of(0.0));
        Self { of, kept: vec![zero; PLACES] }
    }

    /// What the function gives.
    #[inline]
    pub fn get(&mut self, argument: f64) -> f64 {
        let bits = argument.to_bits();
        // The multiplier of Fibonacci hashing spreads nearby numbers well.
        let place = (bits.wrapping_mul(0x9E37_79B9_7F4A_7C15) >> (64 - PLACES.ilog2())) as usize;
        let kept = &mut self.kept[place % PLACES];
        if kept.0 != bits {
            *kept = (bits, (self.of)(argument));
        }
        kept.1
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn gives_what_the_function_gives(arguments in proptest::collection::vec(-30_i32..30, 0..2_000)) {
            let mut memo = Memo::new(crate::steam::tsat);
            for tenth in arguments {
                let kpa = 10.0 + f64::from(tenth) / 3.0;
                prop_assert_eq!(memo.get(kpa).to_bits(), crate::steam::tsat(kpa).to_bits());
                prop_assert_eq!(memo.get(-0.0).to_bits(), crate::steam::tsat(-0.0).to_bits());
            }
        }
    }
}
