//! How much may still be done before an answer is due.

/// Small things left to do: comparing two numbers is one. A step of the search counts what the
/// caller wants of it; this counts what it costs, so that no input takes long. It is never shared
/// by what `steps` ends and what comes after it: else more steps could be worse.
#[derive(Debug)]
pub struct Work(u64);

impl Work {
    /// So much.
    pub const fn new(amount: u64) -> Self {
        Self(amount)
    }

    /// Takes some off; `false` when nothing is left.
    pub const fn spend(&mut self, amount: usize) -> bool {
        self.0 = self.0.saturating_sub(amount as u64);
        self.0 > 0
    }

    /// Nothing is left.
    pub const fn is_over(&self) -> bool {
        self.0 == 0
    }

    /// What is left.
    pub const fn left(&self) -> u64 {
        self.0
    }

    /// Runs a part that may take only one of so many shares of what is left; what it does not need
    /// stays.
    pub fn share<T>(&mut self, shares: usize, part: impl FnOnce(&mut Self) -> T) -> T {
        let all = self.0;
        let given = all / shares.max(1) as u64;
        let mut own = Self(given);
        let found = part(&mut own);
        self.0 = all - (given - own.0);
        found
    }
}
