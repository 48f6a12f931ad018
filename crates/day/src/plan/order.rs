//! What counts first.

use std::ops::{Index, IndexMut};

/// Something that a plan has less or more of; less is better.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Criterion {
    /// Sets missing at an appointment, by weight.
    Unmet,
    /// Sets missing tomorrow morning.
    Short,
    /// Runs.
    Runs,
    /// Cents for runs and pouches.
    Cost,
    /// Drying missed, over all sets.
    Drying,
    /// Set-minutes that would be missing if loads came later.
    Exposure,
    /// Sets used at once, without drying.
    Immediate,
    /// Drying missed by the sets that lie overnight.
    Overnight,
    /// Minutes for which finished loads wait in the machine.
    Wait,
    /// Minutes between a run and the nearest break.
    Break,
    /// Runs that an earlier plan had not, and runs of it that are gone.
    Changed,
}

/// How many criteria there are.
pub const CRITERIA: usize = 11;

impl Criterion {
    /// Its name in what the command prints.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Unmet => "unmet",
            Self::Short => "short",
            Self::Runs => "runs",
            Self::Cost => "cost",
            Self::Drying => "drying",
            Self::Exposure => "exposure",
            Self::Immediate => "immediate",
            Self::Overnight => "overnight",
            Self::Wait => "wait",
            Self::Break => "break",
            Self::Changed => "changed",
        }
    }
}

/// All criteria of one plan, whatever their order.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Criteria([u64; CRITERIA]);

impl Index<Criterion> for Criteria {
    type Output = u64;
    fn index(&self, which: Criterion) -> &u64 {
        &self.0[which as usize]
    }
}

impl IndexMut<Criterion> for Criteria {
    fn index_mut(&mut self, which: Criterion) -> &mut u64 {
        &mut self.0[which as usize]
    }
}

impl Criteria {
    /// The values in the order in which they count; tuples compare as plans do.
    #[must_use]
    pub fn in_order(&self, order: &[Criterion]) -> [u64; CRITERIA] {
        let mut values = [0; CRITERIA];
        values.iter_mut().zip(order).for_each(|(value, &which)| *value = self[which]);
        values
    }
}

/// The order of `dayplan-1`: for comparing.
pub const DAYPLAN: &[Criterion] = &[
    Criterion::Unmet,
    Criterion::Short,
    Criterion::Runs,
    Criterion::Cost,
    Criterion::Drying,
    Criterion::Exposure,
];

/// The order of a salon: nobody waits, tomorrow begins well, as little as may be is used without
/// drying; then few runs, and what lies overnight is dried in full before it is cheap. Between
/// plans alike in all that, a finished load should not wait, and a run should touch a break.
pub const SALON: &[Criterion] = &[
    Criterion::Unmet,
    Criterion::Short,
    Criterion::Immediate,
    Criterion::Runs,
    Criterion::Overnight,
    Criterion::Cost,
    Criterion::Drying,
    Criterion::Exposure,
    Criterion::Wait,
    Criterion::Break,
];

/// The order in which a plan is mended: nobody waits, tomorrow begins well, and of what was agreed
/// as much stays as can.
pub const MENDING: &[Criterion] = &[
    Criterion::Unmet,
    Criterion::Short,
    Criterion::Changed,
    Criterion::Immediate,
    Criterion::Runs,
    Criterion::Overnight,
    Criterion::Cost,
    Criterion::Drying,
    Criterion::Exposure,
    Criterion::Wait,
    Criterion::Break,
];
