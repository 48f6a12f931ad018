//! The book, on a real file in a throw-away folder.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

mod acts;
mod bodies;
mod chain;
mod common;
mod counter;
mod counter_bodies;
mod day;
mod day_bodies;
mod dry_looks;
mod fold;
mod loading;
mod loading_bodies;
mod record_shown;
mod story;
mod upkeep;
mod upkeep_bodies;
