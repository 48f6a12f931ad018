//! Enough ready sets in time, at least cost.
//!
//! So far one question is answered here: when a run that nobody can measure will be over
//! ([`expected_end`]). The room is meant for the day plan, for how many sets to own, and for what
//! falls due. It knows nothing of the room `release`, so that a plan can never talk a verdict
//! round, and it asks no clock: moments are handed in.

mod expected;

pub use expected::{Expected, FEWEST_RUNS, expected_end};
