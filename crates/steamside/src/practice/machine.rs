//! The made-up machine of the practice book: when a run's time is up by the practice clock, its
//! record comes in, as one would from a memory stick. A door that was opened early leaves the
//! beginning of a record and no more.

use crate::acts::Refusal;
use crate::app::{App, Who};
use crate::demo::records::Series;
use crate::intake::take::salon_zone;
use crate::intake::take::{Arrived, take};
use crate::{chance, clock};
use logbook::fact::{Known, Way};
use logbook::view::{Run, View};
use measure::{Span, StationId};
use std::time::Duration;

/// How long a run of the made-up machine takes: the last sample of its series, rounded up.
pub const LENGTH: Span = Span::from_minutes(23);
/// A shorter beginning is no record.
const SHORTEST: Span = Span::from_minutes(2);
/// Time between two looks.
const PAUSE: Duration = Duration::from_secs(1);

/// Takes in every record whose time has come; how many.
pub fn write_due(app: &App, station: StationId) -> Result<usize, Refusal> {
    let now = app.now();
    let runs = app.read(|view| {
        let machines = view.machines()?;
        let writes =
            |run: &Run| machines.iter().any(|row| row.machine == run.machine && row.writes_files);
        let mut runs = view.runs_open()?;
        runs.retain(|run| !run.undone && run.record.is_none() && writes(run));
        Ok(runs)
    })?;
    let mut written = 0;
    for run in runs {
        let end = run.unloaded.unwrap_or(now).min(now);
        let gone = end - run.started.0;
        let over = gone >= LENGTH;
        if !over && (run.unloaded.is_none() || gone < SHORTEST) {
            continue;
        }
        let who = Who::program(station, Known::Measured)?;
        app.act(who, |view, draft| {
            let file = record_of(view, &run, gone)?;
            let machine = Some(run.machine);
            let bytes = file.as_bytes();
            let arrived = Arrived { bytes, way: Way::Folder, machine, run: Some(run.run) };
            take(view, draft, arrived).map(drop)
        })?;
        written += 1;
    }
    Ok(written)
}

fn record_of(view: &View<'_>, run: &Run, gone: Span) -> Result<String, Refusal> {
    let start = clock::civil(run.started.0, &salon_zone(view)?);
    Ok(if gone >= LENGTH {
        Series::GoodA.file(start)
    } else {
        Series::GoodA.file_until(start, gone.millis() / 1_000)
    })
}

/// Looks until the program ends.
pub async fn follow(app: App) {
    let Ok(station) = chance::id() else {
        eprintln!("the made-up machine writes no records: the computer gave no random numbers");
        return;
    };
    loop {
        tokio::time::sleep(PAUSE).await;
        match app.look(move |app| write_due(app, station)).await {
            Ok(Ok(_)) => {}
            Ok(Err(refusal)) => eprintln!("the made-up machine: {refusal}"),
            Err(error) => eprintln!("the made-up machine: {error}"),
        }
    }
}
