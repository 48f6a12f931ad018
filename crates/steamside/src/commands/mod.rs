//! The commands: one file each. What scripts read is fixed in `docs/contract.md`.

mod check;
mod demo;
mod drift;
mod plan;
mod practice;
mod serve;
mod sets;
mod take;
mod verify;

use crate::wire;
use clap::Parser;
use day::plan::Problem;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Looks after the implements that touch clients: what the record of a run proves, what may be
/// used, which visits a recall reaches.
///
/// It supports a decision that a trained person makes; it is no medical device. The machine's own
/// manual and the local rules come first.
#[derive(Debug, Parser)]
#[command(name = "steamside", version, about, long_about)]
pub enum Command {
    /// Judge cycle records and say why.
    Check(check::CheckArgs),
    /// Open an invented salon in the middle of a busy day.
    Demo(demo::DemoArgs),
    /// What changes from run to run on one machine, and which part that points to.
    Drift(drift::DriftArgs),
    /// Open a made-up salon for teaching: cards to deal, a clock that runs faster.
    Practice(practice::PracticeArgs),
    /// Plan a day: which runs, when, why, and what is proven.
    Plan(plan::PlanArgs),
    /// Open the salon's own book in the browser.
    Serve(serve::ServeArgs),
    /// How many sets to own, by simulating many days.
    Sets(sets::SetsArgs),
    /// Take cycle records and appointments into the book.
    Take(take::TakeArgs),
    /// Is the record whole and unchanged?
    Verify(verify::VerifyArgs),
}

/// Runs one command to its end.
pub fn run(command: Command) -> ExitCode {
    match command {
        Command::Check(args) => check::run(args),
        Command::Demo(args) => demo::run(args),
        Command::Drift(args) => drift::run(args),
        Command::Plan(args) => plan::run(args),
        Command::Practice(args) => practice::run(args),
        Command::Serve(args) => serve::run(args),
        Command::Sets(args) => sets::run(args),
        Command::Take(args) => take::run(args),
        Command::Verify(args) => verify::run(args),
    }
}

/// Could not be used: one plain sentence on standard error, exit status 2.
fn unusable(what: impl std::fmt::Display) -> ExitCode {
    eprintln!("steamside: {what}");
    ExitCode::from(2)
}

/// A day's description is a few kilobytes; more than this is something else.
const MOST_BYTES: u64 = 16 << 20;

/// Reads a described day; why not, in one sentence.
fn described_day(path: &Path) -> Result<Problem, String> {
    let file = std::fs::File::open(path).map_err(|e| format!("it cannot be opened: {e}"))?;
    let mut bytes = Vec::new();
    let read = file.take(MOST_BYTES + 1).read_to_end(&mut bytes);
    read.map_err(|e| format!("it cannot be read: {e}; name the file of one day"))?;
    if bytes.len() as u64 > MOST_BYTES {
        return Err("it is far too large for one day".to_owned());
    }
    wire::dayplan::read(&bytes)
}

/// Where the salon's own book lies when nothing else is said.
fn own_folder() -> PathBuf {
    let home = |name: &str| std::env::var_os(name).filter(|value| !value.is_empty());
    match (home("XDG_DATA_HOME"), home("HOME")) {
        (Some(data), _) => PathBuf::from(data).join("steamside"),
        (None, Some(home)) => PathBuf::from(home).join(".local/share/steamside"),
        (None, None) => PathBuf::from("steamside-book"),
    }
}
