//! Steamside: the one executable. Pages, commands, settings; the only room that knows HTTP, HTML,
//! the clock, loose files and the printer.

mod acts;
mod app;
mod chance;
mod clock;
mod commands;
mod demo;
mod door;
mod drifting;
mod heartbeat;
mod intake;
mod live;
mod loading;
mod pace;
mod pages;
mod photo;
mod planning;
mod practice;
mod recalling;
mod secure;
mod upkeep;
mod web;
mod wire;
mod words;

use clap::Parser;
use std::process::ExitCode;

fn main() -> ExitCode {
    photo::quieten();
    commands::run(commands::Command::parse())
}
