//! The practice book: a made-up salon in a folder of its own, for teachers and who learns.
//!
//! It is a book of its own kind, in a file of its own, served from an address of its own: no act
//! on one of its pages can reach a salon's own book. Its clock may run faster, and scenario cards
//! can be dealt in it (see [`cards`]).

pub mod cards;
pub mod checks;
pub mod deal;
pub mod machine;
mod stage;

use crate::acts::Refusal;
use crate::app::{App, Who};
use crate::pace::Pace;
use crate::{chance, clock, demo};
use logbook::book::{Book, BookError, Draft, Opening};
use logbook::fact::{Body, BookKind, Counter, Known, Stamp, ThingKind, Upkeep};
use logbook::view::View;
use measure::{Instant, Span, StationId, ThingId};
use std::path::Path;

/// Signs of the made-up salon: the first teaches.
const SIGNS: &[&str] = &["T1", "L1", "L2", "L3"];
/// Marks a folder as one that a new practice book may replace.
const MARK: &str = "this-is-for-practice.txt";
const MARK_TEXT: &str =
    "A made-up salon for practice. `steamside practice --new` replaces this folder.\n";
/// What the label of the made-up foot bath asks: EPA-registered products name 10 minutes.
const WET_MIN: u32 = 10;

/// Why there is no practice book.
#[derive(Debug, thiserror::Error)]
pub enum NoPractice {
    /// The folder holds something else.
    #[error(
        "this folder holds no practice book, so it is left as it is; name another with --folder"
    )]
    SomethingElse,
    /// The disk said no.
    #[error("{0}; choose a folder that can be written with --folder")]
    Disk(#[from] std::io::Error),
    /// The book said no.
    #[error("{0}")]
    Book(#[from] BookError),
    /// An act was refused.
    #[error("the practice book could not be written: {0}")]
    Refused(Refusal),
}

impl From<Refusal> for NoPractice {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(refusal)
    }
}

impl From<chance::NoChance> for NoPractice {
    fn from(error: chance::NoChance) -> Self {
        Self::Refused(error.into())
    }
}

/// Opens the practice book in a folder and goes on with it; begins one where there is none, or
/// where a `new` one is wished for. Nothing but a practice book is ever replaced.
pub fn open(folder: &Path, new: bool) -> Result<App, NoPractice> {
    let marked = folder.join(MARK).is_file();
    let occupied = folder.read_dir().is_ok_and(|mut entries| entries.next().is_some());
    if occupied && !marked {
        return Err(NoPractice::SomethingElse);
    }
    if Book::exists(folder) {
        let app = App::new(Book::open(folder)?, folder.to_owned()).at_its_pace()?;
        if !app.practice {
            return Err(NoPractice::SomethingElse);
        }
        if !new {
            slow_again(&app)?;
            return Ok(app);
        }
    }
    if marked {
        std::fs::remove_dir_all(folder)?;
    }
    std::fs::create_dir_all(folder)?;
    std::fs::write(folder.join(MARK), MARK_TEXT)?;
    create(folder)
}

/// While it was closed a fast clock would have run for days: it goes on where the book ends, at
/// the pace of the true clock.
fn slow_again(app: &App) -> Result<(), Refusal> {
    if app.pace().times() == 1 {
        return Ok(());
    }
    let last = app.read(|view| view.log(None, 1))?;
    let real = clock::now();
    let shown = last.first().map_or(real, |line| line.fact.stamp.written);
    app.clock.set(Pace::new(real, shown, 1));
    let who = Who::program(chance::id()?, Known::ByClock)?;
    app.act(who, |_, draft| {
        draft.fact(Body::Counter(Box::new(Counter::PracticeClock { real, shown, times: 1 })));
        Ok(())
    })
    .map(drop)
}

fn create(folder: &Path) -> Result<App, NoPractice> {
    let station: StationId = chance::id()?;
    let now = clock::now();
    let zone = clock::system_zone();
    let civil =
        clock::zone(&zone).map_err(|_| Refusal::rule_with("refused-zone", "zone", &zone))?;
    let begun = now - Span::from_minutes(7 * 24 * 60);
    let stamp = stamp(station, begun)?;
    let opening = Opening { salon: chance::id()?, zone, book: BookKind::Practice, stamp };
    let app = App::new(Book::create(folder, opening)?, folder.to_owned()).at_its_pace()?;
    demo::quiet(&app, station, (now, civil), SIGNS)?;
    app.book.act(self::stamp(station, now)?, |view, draft| furnish(view, draft, now))?;
    Ok(app.at_its_pace()?)
}

fn stamp(station: StationId, at: Instant) -> Result<Stamp, chance::NoChance> {
    let act = chance::id()?;
    Ok(Stamp { act, happened: at, written: at, station, sign: None, known: Known::Setting })
}

/// Who teaches, a foot bath, a jar, and the clock as it is.
fn furnish(view: &View<'_>, draft: &mut Draft, now: Instant) -> Result<(), Refusal> {
    if let Some(teacher) = view.people()?.first() {
        draft.fact(Body::Counter(Box::new(Counter::PersonIs {
            person: teacher.person,
            learns: false,
            in_charge: true,
            teaches: true,
        })));
    }
    let (basin, jar): (ThingId, ThingId) = (chance::id()?, chance::id()?);
    for said in [
        Upkeep::ThingAdded { thing: basin, what: ThingKind::FootBasin, number: 1 },
        Upkeep::BasinSet { basin, wet_min: WET_MIN },
        Upkeep::ThingAdded { thing: jar, what: ThingKind::Jar, number: 1 },
        Upkeep::JarSet { jar, contact_min: WET_MIN, lasts_h: None, label: None },
    ] {
        draft.fact(Body::Upkeep(Box::new(said)));
    }
    let clock = Counter::PracticeClock { real: now, shown: now, times: 1 };
    draft.fact(Body::Counter(Box::new(clock)));
    Ok(())
}

#[cfg(test)]
mod tests;
