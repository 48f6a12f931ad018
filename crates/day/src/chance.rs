//! Chance that repeats: numbers from a seed that is handed in.

/// A stream of numbers that look random and depend on the seed alone, on every machine.
///
/// SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014).
///
/// ```
/// use day::Chance;
/// let mut a = Chance::from_seed(7);
/// let mut b = Chance::from_seed(7);
/// assert_eq!(a.below(6), b.below(6));
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chance(u64);

impl Chance {
    /// The stream of this seed.
    #[must_use]
    pub const fn from_seed(seed: u64) -> Self {
        Self(seed)
    }

    /// 64 bits, each as likely as the other.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A number from 0 to below `n`; 0 where `n` is 0. Off from even by less than 2^-32 for small `n`.
    pub fn below(&mut self, n: usize) -> usize {
        ((u128::from(self.bits()) * n as u128) >> 64) as usize
    }

    /// A number in `[0, 1)`.
    pub fn unit(&mut self) -> f64 {
        (self.bits() >> 11) as f64 * (1.0 / 9_007_199_254_740_992.0)
    }
}
