//! How many grams to load: never more than the maker says, less where looks say so.

use super::Learnt;

/// Who set the figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum By {
    /// The maker of the machine: no look speaks against it.
    Maker,
    /// The looks: wet loads below the maker's limit, or looks where the maker's is not known.
    Looks,
    /// Nobody yet: neither a maker's limit nor a look, so the cautious end of what physics says.
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

/// How much to load at most in this cycle: `to_grams` turns a demand in W into grams of the usual
/// mix ([`crate::balance::Usual::grams`]) and must not fall.
///
/// - Never above `maker_g`. As long as no load was wet the maker's limit stands.
/// - After a wet load, half-way (in logarithms) between the low end and the middle of what was
///   learnt, where that is less: the middle alone is too bold for a machine that is worse than most.
/// - Where the maker's limit is not known nobody vouches for the middle: the low end, from the
///   first look to the last. It rises towards the true limit as looks come in.
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
    let (grams, by) = match maker_g {
        Some(maker) if learnt.wet == 0 => (maker, By::Maker),
        Some(maker) => match grams(careful) {
            looks if looks < maker => (looks, By::Looks),
            _ => (maker, By::Maker),
        },
        None => {
            let by = if learnt.outcomes == 0 { By::Guess } else { By::Looks };
            (grams(learnt.limit_w.low), by)
        }
    };
    Advice { grams, by, outcomes: learnt.outcomes, wet: learnt.wet }
}
