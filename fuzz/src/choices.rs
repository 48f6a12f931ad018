//! Choices drawn from the fuzzer's bytes.

/// Bytes, used up one by one; zeros when they run out.
pub struct Choices<'a> {
    bytes: &'a [u8],
}

impl<'a> Choices<'a> {
    /// All of these bytes.
    pub fn new(bytes: &'a [u8]) -> Self {
        Self { bytes }
    }

    pub fn byte(&mut self) -> u8 {
        let Some((first, rest)) = self.bytes.split_first() else { return 0 };
        self.bytes = rest;
        *first
    }

    pub fn coin(&mut self) -> bool {
        self.byte() & 1 == 1
    }

    /// One chance in so many.
    pub fn rarely(&mut self, in_so_many: u8) -> bool {
        self.byte() % in_so_many == 1
    }

    /// A whole number below `end`.
    pub fn below(&mut self, end: usize) -> usize {
        let wide = usize::from(self.byte()) << 8 | usize::from(self.byte());
        wide % end.max(1)
    }

    pub fn pick<T: Copy>(&mut self, from: &[T]) -> T {
        from[usize::from(self.byte()) % from.len()]
    }

    /// From `low` up to `high`, in 255 steps.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * f64::from(self.byte()) / 255.0
    }
}
