//! What every page and act is handed: the book, the folder it lies in, how the place was opened.

use crate::acts::Refusal;
use crate::live::Live;
use crate::pages::sets::Lived;
use crate::planning::kept::Kept;
use crate::{chance, clock};
use logbook::book::{Book, BookError, Draft, Written};
use logbook::fact::{Known, Stamp};
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

    fn stamp(self) -> Stamp {
        let written = clock::now();
        Stamp {
            act: self.act,
            happened: self.happened.map_or(written, |at| at.min(written)),
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
            lived: Arc::default(),
        }
    }

    /// Reads one consistent state of the book. Blocks; pages call it through [`App::look`].
    pub fn read<T>(
        &self,
        f: impl FnOnce(&View<'_>) -> Result<T, BookError>,
    ) -> Result<T, BookError> {
        self.book.read(f)
    }

    /// Writes one act: all of its facts or none, and durable when this returns.
    pub fn act(
        &self,
        who: Who,
        decide: impl FnOnce(&View<'_>, &mut Draft) -> Result<(), Refusal>,
    ) -> Result<Written, Refusal> {
        let written = self.book.act(who.stamp(), decide)?;
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
