//! Facts about the counter: screens that were let in, people, hand-overs, corrections, gaps, and the
//! practice book.

use super::DrawerRef;
use load::SetKind;
use measure::{ActId, Instant, PersonId, PouchId, RunId, StationId, VisitId};

/// What a screen is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StationKind {
    /// A tablet at the sink or on the clean side.
    Tablet,
    /// A phone.
    Phone,
    /// A wall that only shows.
    Wall,
    /// A desk.
    Desk,
}

/// Why the book has nothing for a time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GapWhy {
    /// The salon was closed.
    Closed,
    /// A holiday.
    Holiday,
    /// No power.
    Power,
    /// Open, and nothing was done that belongs here.
    NothingToDo,
    /// Kept on paper; copied in, or to be.
    OnPaper,
    /// Forgotten.
    Forgotten,
}

/// Units that people read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Units {
    /// °C, kPa, millimetres, grams.
    Metric,
    /// °F, psi, inches, ounces, as used in the United States.
    Us,
}

/// What happened at the counter.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Counter {
    /// A screen was let in.
    StationPaired {
        /// The screen.
        station: StationId,
        /// What it is.
        what: StationKind,
        /// SHA-256 of the key that it was given.
        key_hash: [u8; 32],
        /// What the salon calls it.
        name: Option<DrawerRef>,
    },
    /// A screen is let in no longer.
    StationParted {
        /// The screen.
        station: StationId,
    },
    /// A person has seen the entry at this place of the book: two said different things, or
    /// something was opened before anybody could tell.
    Seen {
        /// The place.
        seq: u64,
    },
    /// The work was offered to whoever comes next.
    HandedOver {
        /// To whom; `None`: to whoever takes it.
        to: Option<PersonId>,
        /// Sets that dry on the rack.
        drying: u32,
        /// A free text: what to watch.
        note: Option<DrawerRef>,
    },
    /// Somebody has the work.
    TakenOver {
        /// The act that offered it.
        given: ActId,
    },
    /// What was in a run was said wrongly.
    RunCorrected {
        /// The run.
        run: RunId,
        /// These were not in it.
        out: Vec<PouchId>,
        /// These were in it too.
        put: Vec<PouchId>,
    },
    /// Somebody counted the pouches of a run.
    CountedBack {
        /// The run.
        run: RunId,
        /// How many.
        count: u32,
    },
    /// A pouch without a code was opened.
    OpenedNoCode {
        /// What kind of set was in it.
        kind: SetKind,
        /// The visit.
        visit: VisitId,
        /// The chair.
        chair: Option<u32>,
    },
    /// Somebody came into contact with blood; what was done lies in the drawer.
    ExposureNoted {
        /// The chair.
        chair: Option<u32>,
        /// A free text.
        note: Option<DrawerRef>,
    },
    /// Why the book has nothing for this time.
    GapExplained {
        /// From.
        from: Instant,
        /// To.
        to: Instant,
        /// Why.
        why: GapWhy,
    },
    /// The salon's box itself was off.
    BoxWasOff {
        /// It was last heard then.
        from: Instant,
        /// It was back then.
        to: Instant,
    },
    /// The language in which a person reads, as its code.
    PersonSpeaks {
        /// The person.
        person: PersonId,
        /// `en`, `vi`, `es`, ...
        language: String,
    },
    /// What a person is here.
    PersonIs {
        /// The person.
        person: PersonId,
        /// Learns: another one looks as well.
        learns: bool,
        /// May lift a stop made by mistake and see to the machines.
        in_charge: bool,
        /// Teaches: may open the practice book.
        teaches: bool,
    },
    /// How the record is written, apart from what each screen shows.
    RecordShows {
        /// Its language, as its code.
        language: String,
        /// Its units.
        units: Units,
    },
    /// The clock of a practice book runs faster or slower from now on.
    PracticeClock {
        /// The true moment.
        real: Instant,
        /// What the practice clock showed then.
        shown: Instant,
        /// How many times as fast; 1 to 30.
        times: u32,
    },
    /// A scenario card was dealt in a practice book.
    CardDealt {
        /// The card, by its word.
        card: String,
        /// Who learns by it.
        learner: Option<PersonId>,
    },
    /// A scenario card is over.
    CardEnded {
        /// The act that dealt it.
        dealt: ActId,
        /// Steps that were right.
        right: u32,
        /// Steps that were asked.
        asked: u32,
    },
}
