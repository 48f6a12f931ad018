//! The demo: an invented salon, six days of history and a busy day that is half over.
//!
//! Everything is written through the same acts as a real tap, only with moments in the past.

pub mod records;
mod script;

use crate::acts::Refusal;
use crate::app::App;
use crate::{chance, clock};
use jiff::tz::TimeZone;
use logbook::book::{Book, BookError, Opening};
use logbook::fact::{BookKind, Known, Stamp};
use measure::{Instant, Span, StationId};
use std::path::Path;

/// Folder of the records that can be tried.
pub const RECORDS: &str = "records";
/// Folder that stands for the machine's memory stick.
pub const STICK: &str = "stick";
/// Marks a folder as one that a new demo may replace.
const MARK: &str = "this-is-a-demo.txt";
const MARK_TEXT: &str =
    "An invented salon. `steamside demo` replaces this folder when it starts.\n";

/// Why there is no demo.
#[derive(Debug, thiserror::Error)]
pub enum NoDemo {
    /// The folder holds something else.
    #[error("this folder is no demo, so it is left as it is; name another with --folder")]
    NotADemo,
    /// The disk said no.
    #[error("{0}; choose a folder that can be written with --folder")]
    Disk(#[from] std::io::Error),
    /// The book said no.
    #[error("{0}")]
    Book(#[from] BookError),
    /// An act was refused: the script does not fit the rules.
    #[error("the demo could not be written: {0}")]
    Refused(Refusal),
}

impl From<Refusal> for NoDemo {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(refusal)
    }
}

impl From<chance::NoChance> for NoDemo {
    fn from(error: chance::NoChance) -> Self {
        Self::Refused(error.into())
    }
}

/// Opens the demo in a folder: a new one, or the one that is there.
pub fn open(folder: &Path, keep: bool) -> Result<App, NoDemo> {
    let is_demo = folder.join(MARK).is_file();
    let occupied = folder.read_dir().is_ok_and(|mut entries| entries.next().is_some());
    if occupied && !is_demo {
        return Err(NoDemo::NotADemo);
    }
    if keep && Book::exists(folder) {
        return Ok(App::new(Book::open(folder)?, folder.to_owned()));
    }
    if is_demo {
        std::fs::remove_dir_all(folder)?;
    }
    for inner in [RECORDS, STICK] {
        std::fs::create_dir_all(folder.join(inner))?;
    }
    std::fs::write(folder.join(MARK), MARK_TEXT)?;
    create(folder)
}

/// The same salon on two quiet days, with these signs and nothing left over: for practice.
pub fn quiet(
    app: &App,
    station: StationId,
    (now, zone): (Instant, TimeZone),
    signs: &'static [&'static str],
) -> Result<(), Refusal> {
    script::Script::new(app, station, now, zone).play_quiet(signs)
}

fn create(folder: &Path) -> Result<App, NoDemo> {
    let station: StationId = chance::id()?;
    let now = clock::now();
    let begun = now - Span::from_minutes(7 * 24 * 60);
    let stamp = Stamp {
        act: chance::id()?,
        happened: begun,
        written: begun,
        station,
        sign: None,
        known: Known::Setting,
    };
    let zone = clock::system_zone();
    let opening = Opening { salon: chance::id()?, zone: zone.clone(), book: BookKind::Demo, stamp };
    let app = App::new(Book::create(folder, opening)?, folder.to_owned());
    let zone = clock::zone(&zone).map_err(|_| Refusal::rule_with("refused-zone", "zone", zone))?;
    let mut script = script::Script::new(&app, station, now, zone);
    for file in script.play()? {
        std::fs::write(folder.join(RECORDS).join(file.name), file.text)?;
    }
    Ok(app)
}
