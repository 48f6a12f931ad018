//! What this machine can dry, learnt from looks.
//!
//! The dose is the drying power that a load asks for ([`crate::balance::demand`]); the answer is
//! whether it came out wet. The *limit* is the demand at which one load in ten is wet. Physics says
//! where learning begins ([`Prior`]); how the chance of a wet load rises with the demand is not
//! forced into one shape, only that it never falls (see `chain.rs`). So each look
//! counts for its own side only: one more dry load never lowers the limit, one more wet load never
//! raises it.
//!
//! ```
//! use cycle::limit::{Outcome, Prior, learn};
//! let prior = Prior { middle_w: 100.0, spread: 1.0 };
//! let looks = [(40.0, false), (60.0, false), (80.0, true), (70.0, false)];
//! let outcomes = looks.map(|(demand_w, wet)| Outcome { demand_w, wet });
//! let learnt = learn(&prior, &outcomes)?;
//! assert_eq!((learnt.outcomes, learnt.wet), (4, 1));
//! assert!(learnt.chance_wet(30.0) < learnt.chance_wet(90.0));
//! # Ok::<(), cycle::limit::NotLearnt>(())
//! ```

mod advice;
mod chain;
#[cfg(test)]
mod tests;

pub use advice::{Advice, By, MISHAPS, advice};

use crate::balance::{Charge, DOSE_HEAT_USED, NoBalance, PerGram, Spread, Unknowns};
use chain::Chain;
use measure::maths;
use std::fmt;

/// Chance of a wet load at the limit: one in ten.
pub const LIMIT_CHANCE: f64 = 0.1;

/// One load that somebody looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outcome {
    /// What the load asked for, W, as [`crate::balance::demand`] says.
    pub demand_w: f64,
    /// Was anything in it wet at the first look?
    pub wet: bool,
}

/// Where learning begins: the drying power of the machine in this cycle, before any look.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prior {
    /// The demand at which half of the loads are wet, W; as likely too low as too high.
    pub middle_w: f64,
    /// Half-width of what nine of ten machines are, as a logarithm over 1.645; 0.3 to 2.
    pub spread: f64,
}

/// Why nothing could be learnt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NotLearnt {
    /// A demand is no positive power.
    Demand(f64),
    /// The prior is no positive power, or its spread is not 0.3 to 2.
    Prior,
}

impl fmt::Display for NotLearnt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Demand(watts) => write!(
                f,
                "{watts} W is not what a load asks for: leave that run out and check its masses"
            ),
            Self::Prior => f.write_str(
                "where learning begins is a positive power with a spread of 0.3 to 2: check the settings",
            ),
        }
    }
}

impl std::error::Error for NotLearnt {}

/// The sums on paper are not trusted to promise more than this many times the power that comes
/// from outside (assumption): where most water runs off they would promise anything.
const MOST_GAIN: f64 = 6.0;
/// No prior is narrower (assumption): no real machine was measured.
const LEAST_SPREAD: f64 = 0.8;

impl Prior {
    /// What the balance of this charge says, with its unknowns; masses do not matter.
    ///
    /// A load is just dry when the heat from outside does what stored heat leaves; how many watts
    /// of demand that is depends on what drains and on how much stored heat serves.
    ///
    /// # Errors
    /// [`NoBalance`] where the charge or the unknowns cannot be.
    pub fn of(charge: &Charge, unknowns: &Unknowns) -> Result<Self, NoBalance> {
        charge.check()?;
        let per = PerGram::of(charge);
        let asked = 1.0 - per.flashed(1.0, 1.0, DOSE_HEAT_USED);
        let needed = |drained: f64, used: f64| {
            let kept = 1.0 - drained;
            (kept - per.flashed(1.0, kept, used)).max(asked / MOST_GAIN)
        };
        let powers = unknowns.powers(|drained, used| asked / needed(drained, used))?;
        let Spread { low, middle, .. } = powers;
        if !(low > 0.0 && middle.is_finite()) {
            return Err(NoBalance::Guess);
        }
        let spread = (maths::ln(middle / low) / 1.645).clamp(LEAST_SPREAD, 2.0);
        Ok(Self { middle_w: middle, spread })
    }
}

/// What is known of one cycle of one machine.
#[derive(Debug, Clone, PartialEq)]
pub struct Learnt {
    /// Loads that were looked at.
    pub outcomes: u32,
    /// Of these, wet ones.
    pub wet: u32,
    /// The demand at which one load in ten is wet, W: nine of ten such machines have it between
    /// `low` and `high`.
    pub limit_w: Spread,
    /// Logarithm of a demand and the chance there, rising.
    curve: Vec<(f64, f64)>,
}

impl Learnt {
    /// The chance that a load which asks `demand_w` comes out wet, 0 to 1; never falls with the
    /// demand. Not-a-number for a demand that is no number or below 0.
    #[must_use]
    pub fn chance_wet(&self, demand_w: f64) -> f64 {
        let known = demand_w >= 0.0;
        if known { chain::between(&self.curve, maths::ln(demand_w)) } else { f64::NAN }
    }
}

/// Learns from all looks at one cycle of one machine. Their order does not matter.
///
/// # Errors
/// [`NotLearnt`] where a demand or the prior cannot be: nothing is left out in silence.
pub fn learn(prior: &Prior, outcomes: &[Outcome]) -> Result<Learnt, NotLearnt> {
    let spread = (0.3..=2.0).contains(&prior.spread);
    if !spread || !(1e-3..=1e6).contains(&prior.middle_w) {
        return Err(NotLearnt::Prior);
    }
    let mut chain = Chain::new(maths::ln(prior.middle_w), prior.spread);
    for outcome in outcomes {
        if !(outcome.demand_w > 0.0 && outcome.demand_w < 1e9) {
            return Err(NotLearnt::Demand(outcome.demand_w));
        }
        chain.add(maths::ln(outcome.demand_w), outcome.wet);
    }
    let posterior = chain.posterior();
    let count = |wanted: fn(&&Outcome) -> bool| {
        u32::try_from(outcomes.iter().filter(wanted).count()).unwrap_or(u32::MAX)
    };
    Ok(Learnt {
        outcomes: count(|_| true),
        wet: count(|outcome| outcome.wet),
        limit_w: Spread {
            low: maths::exp(posterior.low),
            middle: maths::exp(posterior.middle),
            high: maths::exp(posterior.high),
        },
        curve: posterior.chance,
    })
}
