//! What a page or an act reads: rows of the fold, never SQL.
//!
//! All answers of one [`View`] belong to one moment. Lists are oldest first unless they say
//! otherwise.

mod counter;
mod day;
mod drift;
mod events;
mod folder;
mod loading;
mod log;
mod practice;
mod recall;
mod records;
mod runs;
mod salon;
mod sets;
mod spores;
mod stations;
mod upkeep;
mod visits;

pub use counter::{BoxOff, Corrected, Explained, HandOver};
pub use day::{AcceptedPlan, HandTimes, Setting, Spread};
pub use drift::JudgedRun;
pub use folder::{LastDone, ShownRun, ShownUpkeep};
pub use loading::{DryLook, Weighed};
pub use practice::{Card, CardEnd};
pub use recall::{PouchVisit, RunContents};
pub use records::TakenRecord;
pub use spores::{SporeAnswer, SporeTest};
pub use stations::{Roles, Station};
pub use upkeep::{Basin, Chore, ChoreDone, Jar, JarLabel, Stock, Thing};
pub use visits::{Appointment, Shift, Visit, VisitState};

use crate::store::Sql;

use crate::fact::{AirRemoval, BookKind, DrawerRef, Judged, Reads, StopReason, Way};
use load::{Contents, SetKind, SetState, ShelfCode};
use measure::{ActId, Instant, MachineId, PersonId, PouchId, RecordHash, RunId, SalonId, VisitId};
use release::verdict::Outcome;

/// The salon.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Salon {
    /// Its id.
    pub salon: SalonId,
    /// IANA name of its time zone.
    pub zone: String,
    /// Whose book it is.
    pub book: BookKind,
    /// When the book began.
    pub opened: Instant,
}

/// A person, with the sign from the drawer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Person {
    /// The person.
    pub person: PersonId,
    /// The sign; `None` where the drawer entry was deleted.
    pub sign: Option<String>,
    /// When the person left; `None`: works here.
    pub left: Option<Instant>,
}

/// A machine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Machine {
    /// The machine.
    pub machine: MachineId,
    /// Its number on the door.
    pub number: u32,
    /// How it gets the air out.
    pub air_removal: AirRemoval,
    /// It writes a file for each cycle.
    pub writes_files: bool,
    /// Most pouches that its tray was tested with.
    pub most_pouches: Option<u32>,
    /// Machine time less true time, ms.
    pub ahead_ms: i64,
    /// How its records read, as a person said.
    pub reads: Reads,
    /// The place of the fact that first said so.
    pub reads_since: Option<u64>,
    /// Since when it is out of use.
    pub out_since: Option<Instant>,
    /// The run that is in it now.
    pub running: Option<RunId>,
}

/// Sets of one kind that are in no pouch.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KindCount {
    /// The kind.
    pub kind: SetKind,
    /// How many the salon owns; `None` until somebody counted.
    pub owned: Option<u32>,
    /// About how many lie in the used bin.
    pub used: u32,
    /// Washed and waiting for a pouch.
    pub washed: u32,
}

/// A pouch (or a numbered tag).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pouch {
    /// The pouch.
    pub pouch: PouchId,
    /// Its four symbols.
    pub code: ShelfCode,
    /// What kind of set is in it.
    pub kind: SetKind,
    /// In a pouch; otherwise open on a numbered tag.
    pub pouched: bool,
    /// Something hollow is among it.
    pub hollow: bool,
    /// Where it is in its round.
    pub state: SetState,
    /// When it was packed.
    pub packed: Instant,
    /// The run it was in.
    pub run: Option<RunId>,
    /// When it was released, and by whom.
    pub released: Option<(Instant, Option<PersonId>)>,
    /// Unpouched: use until then.
    pub use_until: Option<Instant>,
    /// When it was opened, for which visit, at which chair.
    pub opened: Option<(Instant, VisitId, Option<u32>)>,
    /// Why it is set aside.
    pub stopped: Option<StopReason>,
    /// When it was taken apart, or its packing taken back: it is never used again.
    pub ended: Option<Instant>,
    /// Two facts about it contradict each other; the safer one holds.
    pub contradicted: bool,
}

/// A run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// The run.
    pub run: RunId,
    /// Where.
    pub machine: MachineId,
    /// Number of the machine on its door.
    pub machine_number: u32,
    /// Number of the run at this machine on its day.
    pub number: u32,
    /// The machine's programme, as the salon calls it.
    pub programme: Option<String>,
    /// What the steam has to get through.
    pub contents: Contents,
    /// When it was started, and whose sign.
    pub started: (Instant, Option<PersonId>),
    /// When its load was taken out.
    pub unloaded: Option<Instant>,
    /// How many pouches.
    pub pouches: u32,
    /// The record cycle that belongs to it.
    pub record: Option<(RecordHash, u32)>,
    /// The verdict that counts, as the sequence number of its fact.
    pub judged: Option<u64>,
    /// Its outcome.
    pub outcome: Option<Outcome>,
    /// When somebody looked, the first time.
    pub looked: Option<Instant>,
    /// When it was released, wholly or in part.
    pub released: Option<Instant>,
    /// When a stop was put on the whole run, and why.
    pub stopped: Option<(Instant, StopReason)>,
    /// Its start was undone.
    pub undone: bool,
}

/// A cycle of a record, with the run that it belongs to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TakenCycle {
    /// The file.
    pub record: RecordHash,
    /// The cycle in it.
    pub cycle: u32,
    /// When it came in.
    pub taken: Instant,
    /// How it came.
    pub way: Way,
    /// Where its bytes lie.
    pub kept: DrawerRef,
    /// Wall-clock text of its first sample.
    pub start_clock: Option<String>,
    /// The run it belongs to; `None`: unclaimed.
    pub run: Option<RunId>,
    /// The verdict on it, as the sequence number of its fact.
    pub judged: Option<u64>,
    /// Its outcome.
    pub outcome: Option<Outcome>,
    /// A longer record has replaced it.
    pub replaced_by: Option<RecordHash>,
}

/// One line of the log: an act with its facts.
#[derive(Debug, Clone, PartialEq)]
pub struct LogLine {
    /// The fact.
    pub fact: crate::fact::Fact,
    /// The act that took it back.
    pub undone_by: Option<ActId>,
    /// It did not fit what stood before it; both are kept, and the safer state holds.
    pub contradicted: bool,
}

/// A verdict with the place of its fact.
#[derive(Debug, Clone, PartialEq)]
pub struct JudgedFact {
    /// Sequence number.
    pub seq: u64,
    /// When it was written.
    pub written: Instant,
    /// The verdict.
    pub judged: Judged,
}

/// The book as it stands at one moment.
pub struct View<'a> {
    sql: Sql<'a>,
    salon: SalonId,
}

impl<'a> View<'a> {
    pub(crate) fn new(sql: Sql<'a>, salon: SalonId) -> Self {
        Self { sql, salon }
    }
}
