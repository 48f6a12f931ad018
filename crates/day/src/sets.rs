//! How many sets to own, by simulation.
//!
//! A booked day is the template of random days: clients stay away, come late, take longer or walk in,
//! runs fail and loads come out wet, as [`Assumptions`] say. A fixed policy lives each day
//! without knowing what comes; [`curve`] counts the days on which nobody waits for a set, for each
//! number of sets owned. All counts see the same days, so that a difference between two of them is
//! one between counts and not between days. [`confirm`] plans some of the days, so that the policy
//! does not lie.

mod assume;
mod choose;
mod confirm;
mod life;
mod prices;
mod random;
mod share;
mod tally;
mod template;
#[cfg(test)]
mod tests;
mod trace;
mod what_if;

pub use assume::{Assumptions, Basis, EVENTS, Event, Rate};
pub use confirm::{Confirmed, confirm};
pub use prices::{Bought, Prices, buy};
pub use share::{Gain, LEVEL, Share, paired, wilson};
pub use tally::{Days, Point, Tally, curve, owning, tally};
pub use what_if::Purchase;
