//! How little can be unmet and short if so many needs of each kind are given up.

use super::super::table::Table;
use super::ground::Counts;
use std::collections::BTreeMap;

/// Needs that were given up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) struct GivenUp {
    pub unmet: Counts,
    pub short: Counts,
}

/// All that were met with, by number; number 0 is nothing.
#[derive(Debug)]
pub(super) struct Ledger {
    slots: usize,
    /// Weights of the needs of each kind, the lightest first.
    weights: Vec<Vec<u32>>,
    all: Vec<(GivenUp, [u64; 2])>,
    numbers: BTreeMap<GivenUp, u32>,
}

impl Ledger {
    pub fn new(table: &Table) -> Self {
        let weights = (0..table.kinds).map(|k| {
            let of_kind = table.needs.iter().filter(|n| n.kind == k);
            let mut w: Vec<u32> =
                of_kind.flat_map(|n| std::iter::repeat_n(n.weight, n.n as usize)).collect();
            w.sort_unstable();
            w
        });
        Self {
            slots: table.slots,
            weights: weights.collect(),
            all: vec![(GivenUp::default(), [0, 0])],
            numbers: BTreeMap::new(),
        }
    }

    pub fn get(&self, number: u32) -> &GivenUp {
        &self.all[number as usize].0
    }

    /// Unmet and short, at least.
    pub fn value(&self, number: u32) -> [u64; 2] {
        self.all[number as usize].1
    }

    /// Arrivals that are there or given up.
    pub fn done(&self, number: u32, loaded: &Counts) -> Counts {
        let given_up = self.get(number);
        let mut done = *loaded;
        for (k, done) in done.iter_mut().enumerate() {
            *done += given_up.unmet[k] + given_up.short[k];
        }
        done
    }

    /// One more of kind `k` that is due at `due` is given up: its new number.
    pub fn one_more(&mut self, number: u32, due: u16, k: usize) -> u32 {
        let mut given_up = *self.get(number);
        let which =
            if usize::from(due) < self.slots { &mut given_up.unmet } else { &mut given_up.short };
        which[k] += 1;
        if let Some(&number) = self.numbers.get(&given_up) {
            return number;
        }
        let lightest =
            |(w, &n): (&Vec<u32>, &u8)| w.iter().take(n.into()).map(|&w| u64::from(w)).sum::<u64>();
        let unmet = self.weights.iter().zip(&given_up.unmet).map(lightest).sum();
        let short = given_up.short.iter().map(|&n| u64::from(n)).sum();
        let number = self.all.len() as u32;
        self.all.push((given_up, [unmet, short]));
        self.numbers.insert(given_up, number);
        number
    }
}
