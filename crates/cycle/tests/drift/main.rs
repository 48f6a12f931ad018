//! Drift: what is alarmed, when, as which part, and what is not.
// tests may stop at once
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
// the series are files beside this one
#![allow(clippy::disallowed_methods)]

mod golden;
mod made_up;
mod nothing_wrong;
mod rules;
mod table;
