//! What the record of a run proves for what was inside.

use cycle::finding::Finding;
use load::Contents;

/// What a record proves. People read: steam did its work / did not / cannot tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// Every point of it did what was asked.
    Lethal,
    /// It did not.
    NotLethal,
    /// It neither proves nor disproves. Nothing is released on it.
    CannotTell,
    /// Leak test within its limit.
    LeakPass,
    /// Leak test beyond its limit.
    LeakFail,
}

/// The verdict on one cycle.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// What the record proves.
    pub outcome: Outcome,
    /// For which contents; empty unless lethal.
    pub proven_for: Vec<Contents>,
    /// Did the whole cycle keep to what was asked? `None` where that is not known.
    pub conforming: Option<bool>,
    /// Every reason, the decisive one first.
    pub reasons: Vec<Finding>,
}
