//! The day plan in the salon's words.

pub mod explain;
