//! What a page knows about the request: language, moment, zone, station, what was just done.

use crate::words::{Language, Words};
use jiff::tz::TimeZone;
use logbook::fact::BookKind;
use measure::{ActId, Instant, PersonId, StationId};

/// Everything around one answer.
#[derive(Clone)]
pub struct Ctx {
    /// The reader's language.
    pub language: Language,
    /// The moment of the request.
    pub now: Instant,
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
}

impl Ctx {
    /// The words in the reader's language.
    pub fn words(&self) -> &'static Words {
        Words::of(self.language)
    }
}
