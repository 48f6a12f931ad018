//! The day plan.

mod answer;
mod audit;
mod bound;
mod decode;
mod hands;
mod later;
mod mend;
mod order;
mod problem;
mod reason;
mod search;
mod solve;
mod table;
mod ways;

pub use answer::{HandWork, Immediate, LEVEL_NAMES, LEVELS, Objective, Plan, Run, Unmet};
pub use audit::audit;
pub use later::{Change, Rest, rest};
pub use mend::{Mended, mend};
pub use order::{CRITERIA, Criteria, Criterion, DAYPLAN, MENDING, SALON};
pub use problem::{
    Carry, Cycle, Drying, Kind, MOST_KINDS, MOST_MACHINES, MOST_SERVICES, MOST_SETS, MOST_SLOTS,
    Machine, Problem, Service, Unusable,
};
pub use reason::{When, Why, reasons};
pub use solve::{Answer, Options, solve};
pub use ways::{Way, WayOut, ways_out};

#[cfg(test)]
mod tests;
