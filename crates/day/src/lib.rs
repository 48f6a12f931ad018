//! Enough ready sets in time, at least cost.

mod chance;
pub mod chores;
mod expected;
pub mod gaps;
pub mod plan;
pub mod sets;

pub use chance::Chance;
pub use expected::{Expected, FEWEST_RUNS, expected_end};
