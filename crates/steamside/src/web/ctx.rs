//! What a page knows about the request: language, moment, zone, station, what was just done.

use crate::pace::Pace;
use crate::pages::sets::Lived;
use crate::pages::strip::Running;
use crate::planning::kept::Kept;
use crate::words::{Language, Words};
use jiff::tz::TimeZone;
use logbook::fact::{BookKind, Units};
use measure::{ActId, Instant, PersonId, StationId};
use std::sync::Arc;

/// Everything around one answer.
#[derive(Clone)]
pub struct Ctx {
    /// The reader's language.
    pub language: Language,
    /// Language and units of the record, whatever this screen shows.
    pub record: (Language, Units),
    /// The moment of the request, as the clock of the book shows it.
    pub now: Instant,
    /// How that clock runs.
    pub pace: Pace,
    /// The salon's zone.
    pub zone: TimeZone,
    /// Whose book it is.
    pub book: BookKind,
    /// The station.
    pub station: StationId,
    /// The sign last used at this station.
    pub sign: Option<PersonId>,
    /// The act just done here, for the line that says so and offers undo.
    pub did: Option<ActId>,
    /// Path and query of this page, to come back to after an act.
    pub here: String,
    /// Place of the book's last fact, so that a page knows whether it is the newest.
    pub head: u64,
    /// The runs that are in a machine now, for the strip on every page.
    pub running: Vec<Running>,
    /// The day plan that was made last.
    pub plans: Arc<Kept>,
    /// What was found out last of how many sets to own.
    pub lived: Arc<Lived>,
}

impl Ctx {
    /// The same, as the record is written: what is printed is for those who come later.
    pub fn for_record(&self) -> Self {
        self.in_language(self.record.0)
    }

    /// The same in another language.
    pub fn in_language(&self, language: Language) -> Self {
        Self { language, ..self.clone() }
    }

    /// The words in the reader's language.
    pub fn words(&self) -> &'static Words {
        Words::of(self.language)
    }
}
