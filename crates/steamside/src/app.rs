//! What every page and act is handed: the book, the folder it lies in, how the place was opened.

use crate::acts::Refusal;
use crate::chance;
use crate::live::Live;
use crate::pace::{self, Clock, Pace};
use crate::pages::sets::Lived;
use crate::planning::kept::Kept;
use logbook::book::{Book, BookError, Draft, Written};
use logbook::fact::{BookKind, Known, Stamp};
use logbook::view::View;
use measure::{ActId, Instant, PersonId, StationId};
use std::path::PathBuf;
use std::sync::Arc;

/// The opened book and where it lies. Cheap to clone.
#[derive(Clone)]
pub struct App {
    /// The book.
    pub book: Arc<Book>,
    /// The folder that holds it.
    pub folder: Arc<PathBuf>,
    /// What has just changed, for the screens that are open.
    pub live: Arc<Live>,
    /// The day plan that was made last.
    pub plans: Arc<Kept>,
    /// What the clock of the book shows.
    pub clock: Arc<Clock>,
    /// It is a book for practice.
    pub practice: bool,
    /// What was found out last of how many sets to own.
    pub lived: Arc<Lived>,
}

/// Who acts, where, and how that is known.
#[derive(Debug, Clone, Copy)]
pub struct Who {
    /// The act's id, made at the station.
    pub act: ActId,
    /// The station.
    pub station: StationId,
    /// Whose sign stands under it.
    pub sign: Option<PersonId>,
    /// When it happened, where that is not now.
    pub happened: Option<Instant>,
    /// How it is known.
    pub known: Known,
}

impl Who {
    /// The program itself, at a station.
    pub fn program(station: StationId, known: Known) -> Result<Self, chance::NoChance> {
        Ok(Self { act: chance::id()?, station, sign: None, happened: None, known })
    }

    fn stamp(self, written: Instant) -> Stamp {
        Stamp {
            act: self.act,
            happened: self.happened.unwrap_or(written),
            written,
            station: self.station,
            sign: self.sign,
            known: self.known,
        }
    }
}

impl App {
    /// An opened book in its folder.
    pub fn new(book: Book, folder: PathBuf) -> Self {
        Self {
            book: Arc::new(book),
            folder: Arc::new(folder),
            live: Arc::default(),
            plans: Arc::default(),
            clock: Arc::default(),
            practice: false,
            lived: Arc::default(),
        }
    }

    /// The same, with the kind of the book known and its clock as it was set.
    pub fn at_its_pace(mut self) -> Result<Self, BookError> {
        let (kind, pace) = self.read(|view| Ok((view.salon()?.book, pace::of(view)?)))?;
        self.practice = kind == BookKind::Practice;
        self.clock.set(pace);
        Ok(self)
    }

    /// What the clock of the book shows now.
    pub fn now(&self) -> Instant {
        self.clock.now()
    }

    /// How that clock runs.
    pub fn pace(&self) -> Pace {
        self.clock.pace()
    }

    /// Reads one consistent state of the book. Blocks; pages call it through [`App::look`].
    pub fn read<T>(
        &self,
        f: impl FnOnce(&View<'_>) -> Result<T, BookError>,
    ) -> Result<T, BookError> {
        self.book.read(f)
    }

    /// Writes one act: all of its facts or none, and durable when this returns. A time that is still
    /// to come is refused: nobody has seen it.
    pub fn act(
        &self,
        who: Who,
        decide: impl FnOnce(&View<'_>, &mut Draft) -> Result<(), Refusal>,
    ) -> Result<Written, Refusal> {
        let stamp = who.stamp(self.now());
        if stamp.happened > stamp.written {
            return Err(Refusal::rule("refused-future"));
        }
        let written = self.book.act(stamp, decide)?;
        if self.practice {
            self.clock.set(self.read(pace::of)?);
        }
        self.live.book(written.last_seq);
        Ok(written)
    }

    /// Runs blocking work on the book away from the threads that answer requests.
    pub async fn look<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Self) -> T + Send + 'static,
    ) -> Result<T, tokio::task::JoinError> {
        let app = self.clone();
        tokio::task::spawn_blocking(move || work(&app)).await
    }
}
