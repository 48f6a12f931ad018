//! `take`: cycle records and appointments into the book, from the command line.

use super::{own_folder, unusable};
use crate::acts::Refusal;
use crate::app::{App, Who};
use crate::chance;
use crate::intake::appointments::{self, bring_file, is_appointments};
use crate::intake::take::{Arrived, LARGEST, Taken, take};
use clap::Args;
use logbook::book::Book;
use logbook::fact::{Known, Way};
use measure::{MachineId, StationId};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Which files, into which book.
#[derive(Debug, Args)]
pub struct TakeArgs {
    /// Cycle records; calendars and tables of appointments.
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// The folder of the book.
    #[arg(long)]
    book: Option<PathBuf>,
    /// Number of the machine that wrote them.
    #[arg(long)]
    machine: Option<u32>,
}

/// Takes each file in; 0 all are here, 2 one could not be used.
pub fn run(args: TakeArgs) -> ExitCode {
    let folder = args.book.clone().unwrap_or_else(own_folder);
    let book = match Book::open(&folder) {
        Ok(book) => book,
        Err(error) => return unusable(format_args!("{}: {error}", folder.display())),
    };
    let app = match App::new(book, folder).at_its_pace() {
        Ok(app) => app,
        Err(error) => return unusable(error),
    };
    let machine = match args.machine.map(|number| machine(&app, number)).transpose() {
        Ok(machine) => machine,
        Err(refusal) => return unusable(refusal),
    };
    let station: StationId = match chance::id() {
        Ok(station) => station,
        Err(error) => return unusable(error),
    };
    let mut all = true;
    for path in &args.files {
        match take_one(&app, path, machine, station) {
            Ok(line) => println!("{}: {line}", path.display()),
            Err(why) => {
                all = false;
                eprintln!("steamside: {}: {why}", path.display());
            }
        }
    }
    if all { ExitCode::SUCCESS } else { ExitCode::from(2) }
}

fn machine(app: &App, number: u32) -> Result<MachineId, Refusal> {
    app.read(|view| view.machines())?
        .into_iter()
        .find(|machine| machine.number == number)
        .map(|machine| machine.machine)
        .ok_or_else(|| Refusal::rule("refused-no-such-machine"))
}

fn take_one(
    app: &App,
    path: &Path,
    machine: Option<MachineId>,
    station: StationId,
) -> Result<String, String> {
    let about = std::fs::metadata(path).map_err(|error| error.to_string())?;
    if !about.is_file() {
        return Err("not a file".to_owned());
    }
    if about.len() > LARGEST as u64 {
        return Err("larger than any cycle record; nothing was taken in".to_owned());
    }
    let bytes = std::fs::read(path).map_err(|error| error.to_string())?;
    if is_appointments(&bytes) {
        let who = Who::program(station, Known::WorkedOut).map_err(|error| error.to_string())?;
        let called = path.file_name().unwrap_or_default().to_string_lossy();
        let arrived = appointments::Arrived { bytes: &bytes, name: &called, now: app.now() };
        let line = bring_file(app, who, arrived).map_err(|refusal| refusal.to_string())?;
        return Ok(line.unwrap_or_else(|| "was here already; nothing has changed".to_owned()));
    }
    let who = Who::program(station, Known::Measured).map_err(|error| error.to_string())?;
    let arrived = Arrived { bytes: &bytes, way: Way::Command, machine, run: None };
    let mut taken = None;
    app.act(who, |view, draft| {
        taken = Some(take(view, draft, arrived)?);
        Ok(())
    })
    .map_err(|refusal| refusal.to_string())?;
    Ok(taken.map_or_else(String::new, |taken| said(&taken)))
}

fn said(taken: &Taken) -> String {
    let claimed = taken.cycles.iter().flatten().count();
    let here = if taken.known_before { "was here already" } else { "taken in" };
    match (claimed, taken.cycles.len()) {
        (0, _) => format!("{here}; belongs to no run yet: a person has to say which"),
        (claimed, all) => format!("{here}; {claimed} of {all} cycles belong to a run"),
    }
}
