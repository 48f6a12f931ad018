//! The day plan.

mod answer;
mod audit;
mod bound_one;
mod decode;
mod hands;
mod order;
mod problem;
mod search;
mod solve;
mod table;

pub use answer::{HandWork, Immediate, LEVEL_NAMES, LEVELS, Objective, Plan, Run, Unmet};
pub use audit::audit;
pub use order::{CRITERIA, Criteria, Criterion, DAYPLAN, SALON};
pub use problem::{
    Carry, Cycle, Drying, Kind, MOST_KINDS, MOST_MACHINES, MOST_SETS, MOST_SLOTS, Machine, Problem, Service,
    Unusable,
};
pub use solve::{Answer, Options, solve};
