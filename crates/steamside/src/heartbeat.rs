//! The box keeps a small file beside the book with the moment at which it was last awake. When it
//! starts again and a run was in a machine meanwhile, the book says from when to when it was off,
//! and that run is set aside: nobody can tell what the machine did.

use crate::acts::{self, Refusal};
use crate::app::{App, Who};
use crate::clock;
use logbook::fact::Known;
use measure::{Instant, Span, StationId};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Name of the file, in the book's folder.
pub const FILE: &str = "awake";
/// Every so often it is written.
const EVERY: Duration = Duration::from_secs(10);
/// A shorter silence is a restart of the program, and no run goes by unseen (ours).
const SILENT: Span = Span::from_minutes(1);

fn file(folder: &Path) -> PathBuf {
    folder.join(FILE)
}

/// When the box was last awake, where that is known.
fn last(folder: &Path) -> Option<Instant> {
    let text = std::fs::read_to_string(file(folder)).ok()?;
    text.trim().parse().ok().map(Instant::from_millis)
}

/// Writes that the box is awake. Whole or not at all: a half-written moment would be another one.
fn write(folder: &Path, now: Instant) -> std::io::Result<()> {
    let new = folder.join("awake.new");
    std::fs::write(&new, now.millis().to_string())?;
    std::fs::rename(new, file(folder))
}

/// Says in the book that the box was off, where it was and a run was in a machine.
pub fn after_a_silence(app: &App, station: StationId) -> Result<(), Refusal> {
    let now = clock::now();
    let Some(from) = last(&app.folder).filter(|last| clock::since(*last, now) > SILENT) else {
        return Ok(());
    };
    let who = Who::program(station, Known::WorkedOut)?;
    // In a book for practice, as its own clock showed it.
    let span = (app.pace().at(from), app.pace().at(now));
    app.act(who, |view, draft| acts::box_was_off(view, draft, span)).map(drop)
}

/// Keeps the file until the program ends.
pub async fn beat(app: App) {
    let mut told = false;
    loop {
        if let Ok(Err(error)) = app.look(|app| write(&app.folder, clock::now())).await
            && !told
        {
            told = true;
            eprintln!(
                "steamside: {FILE} cannot be written ({error}); after a power cut the book will not \
                 say how long it lasted"
            );
        }
        tokio::time::sleep(EVERY).await;
    }
}
