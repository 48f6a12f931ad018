//! How many grams to load: never more than the maker says, less where looks say so.

use super::Learnt;

/// Who set the figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum By {
    /// The maker of the machine: the looks do not speak against it.
    Maker,
    /// The looks: more than one wet load.
    Looks,
    /// Nobody yet: no maker's limit and not enough wet loads, so a careful guess from physics and
    /// what looks there are.
    Guess,
}

/// How much to load at most.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Advice {
    /// Grams of pieces and pouches, without trays.
    pub grams: u32,
    /// Who set it.
    pub by: By,
    /// Loads that were looked at.
    pub outcomes: u32,
    /// Of these, wet ones.
    pub wet: u32,
}

/// So many wet loads say nothing yet about the machine (ours).
pub const MISHAPS: u32 = 1;

/// How much to load at most in this cycle: `to_grams` turns a demand in W into grams of the usual
/// mix ([`crate::balance::Usual::grams`]) and must not fall.
///
/// - Never above `maker_g`. It stands until a second load was wet ([`MISHAPS`]): one may have had a
///   pouch on another, or a hinge shut.
/// - From then on, half-way (in logarithms) between the low end and the middle of what was learnt,
///   where that is less: the middle alone is too bold for a machine that is worse than most.
/// - Where the maker's limit is not known the same figure is a guess until a second load was wet.
///
/// So one more dry load never lowers it, one more wet load never raises it.
///
/// ```
/// use cycle::limit::{By, Outcome, Prior, advice, learn};
/// let prior = Prior { middle_w: 100.0, spread: 1.0 };
/// let to_grams = |watts: f64| 20.0 * watts;
/// let nothing = learn(&prior, &[])?;
/// let first = advice(&nothing, Some(900), to_grams);
/// assert_eq!((first.grams, first.by, first.outcomes), (900, By::Maker, 0));
/// let wet = [Outcome { demand_w: 30.0, wet: true }; 3];
/// let less = advice(&learn(&prior, &wet)?, Some(900), to_grams);
/// assert!(less.grams < 900 && less.by == By::Looks);
/// # Ok::<(), cycle::limit::NotLearnt>(())
/// ```
pub fn advice(learnt: &Learnt, maker_g: Option<u32>, to_grams: impl Fn(f64) -> f64) -> Advice {
    let grams = |watts: f64| to_grams(watts).max(0.0).floor() as u32;
    let careful = (learnt.limit_w.low * learnt.limit_w.middle).sqrt();
    let told = learnt.wet > MISHAPS;
    let (grams, by) = match (maker_g, grams(careful)) {
        (Some(maker), looks) if told && looks < maker => (looks, By::Looks),
        (Some(maker), _) => (maker, By::Maker),
        (None, looks) => (looks, if told { By::Looks } else { By::Guess }),
    };
    Advice { grams, by, outcomes: learnt.outcomes, wet: learnt.wet }
}
