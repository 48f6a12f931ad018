//! The program from outside: its commands, its pages, its promises.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

mod access;
mod answers;
mod browser;
mod chair_in_browser;
mod check;
mod commands;
mod counter;
mod drifting;
mod kept;
mod kill;
mod loading;
mod loop_in_browser;
mod never;
mod outbox;
mod pairing;
mod paper;
mod plan;
mod plan_in_browser;
mod practice_in_browser;
mod salon;
mod secure;
mod sets;
mod spores;
mod story;
mod tasks;
mod upkeep;
mod visits;
mod wall;
mod weight;
