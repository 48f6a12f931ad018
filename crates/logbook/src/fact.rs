//! Facts: what happened, who did it, when, when it was written, and how it is known.
//!
//! A fact never changes. It holds ids, counts, times and words from closed lists, never a name, a
//! contact or a free text: those lie in the drawer, and the fact holds a keyed commitment to them
//! ([`DrawerRef`]), so that deleting the entry and its key leaves the chain whole.
//!
//! Numbers are whole, in the unit that the field's name ends in; a fact holds no floating point,
//! because two programs may print one differently.

mod counter;
mod day;
mod loading;
mod upkeep;

pub use counter::{Counter, GapWhy, StationKind, Units};
pub use day::{
    Day, DayCycle, DayRules, Drying, Keyed, KindFigures, MachineFigures, Origin, PlanOrder,
    PlannedRun, Service, Source,
};
pub use loading::{Loading, ProgrammeFigures};
pub use upkeep::{
    About, BasinAfter, ChoreRule, DayPart, Found, LeftOut, Serviced, ThingKind, Upkeep, UsedBy,
};

use load::{Contents, SetKind, ShelfCode};
use measure::{
    ActId, DrawerId, Instant, MachineId, PersonId, PouchId, RecordHash, RunId, SalonId, StationId,
    VisitId,
};
use release::verdict::Outcome;

/// A fact in its place in the chain.
#[derive(Debug, Clone, PartialEq)]
pub struct Fact {
    /// Place in the salon's chain, from 1 without a gap.
    pub seq: u64,
    /// Who, where, when, how known.
    pub stamp: Stamp,
    /// What happened.
    pub body: Body,
}

/// Who, where, when, and how known: the same for all facts of one act.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp {
    /// The act, with an id made at the station.
    pub act: ActId,
    /// When it happened, as far as is known.
    pub happened: Instant,
    /// When the book took it in.
    pub written: Instant,
    /// The station where it was done.
    pub station: StationId,
    /// Whose sign stands under it; `None` where the program itself acted.
    pub sign: Option<PersonId>,
    /// How it is known.
    pub known: Known,
}

/// How a fact is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Known {
    /// A person tapped it.
    Tapped,
    /// A code was scanned or typed.
    Scanned,
    /// A machine's own record says it.
    Measured,
    /// A person read it off a display.
    Read,
    /// Only the clock says so.
    ByClock,
    /// Worked out from other facts.
    WorkedOut,
    /// Somebody set it.
    Setting,
    /// Copied in from paper.
    FromPaper,
}

/// Whose book it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BookKind {
    /// A salon's own.
    Salon,
    /// The demo: invented.
    Demo,
    /// For practice: must never be mistaken for a real one.
    Practice,
}

/// How a machine gets the air out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AirRemoval {
    /// A pump draws a vacuum.
    Vacuum,
    /// Steam pushes the air out.
    Gravity,
    /// Nobody said.
    NotKnown,
}

/// How a record came in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// Chosen or dropped on a page.
    Page,
    /// Named on the command line.
    Command,
    /// Found in a watched folder.
    Folder,
}

/// Why something must not be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StopReason {
    /// The numbers were missed.
    Numbers,
    /// The record or the reading proves neither.
    CannotTell,
    /// A mark did not turn.
    Mark,
    /// Wet pouches.
    Wet,
    /// Torn.
    Torn,
    /// Dropped.
    Dropped,
    /// The run was interrupted.
    Interrupted,
    /// A release taken back.
    ReleaseUndone,
    /// A recall reached it.
    Recall,
    /// The judge, asked again, came to the worse side.
    JudgedWorse,
    /// Somebody was not sure.
    NotSure,
}

impl StopReason {
    /// Has no way back but a new run: a number, a mark or a look failed, or nobody can tell.
    #[must_use]
    pub const fn is_final(self) -> bool {
        !matches!(self, Self::NotSure | Self::ReleaseUndone | Self::Recall)
    }

    /// May a named person lift it as a mistake, or when paperwork is there? Only a stop that nothing
    /// failed for. (A recall ends on its own way, not by a hand.)
    #[must_use]
    pub const fn may_be_a_slip(self) -> bool {
        matches!(self, Self::NotSure | Self::ReleaseUndone)
    }
}

/// Why a stop may be lifted. A failed number, mark or look is never lifted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LiftReason {
    /// The stop was made by mistake.
    Mistake,
    /// Only paperwork was missing, and it is there now.
    Paperwork,
}

/// A drawer entry and the keyed commitment to what lies in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DrawerRef {
    /// The entry.
    pub entry: DrawerId,
    /// HMAC-SHA-256 of the content under the entry's own key.
    pub commitment: [u8; 32],
}

/// A set put in a pouch, or on a numbered tag where it stays unpouched.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PackedPouch {
    /// Its own id, never used again.
    pub pouch: PouchId,
    /// The four symbols that name it while it is about.
    pub code: ShelfCode,
    /// What kind of set is in it.
    pub kind: SetKind,
    /// In a pouch; otherwise open on a numbered tag.
    pub pouched: bool,
    /// Something with a bore or a cavity is among it.
    pub hollow: bool,
}

/// What a verdict rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Basis {
    /// A cycle of a record.
    Record {
        /// The file.
        record: RecordHash,
        /// The cycle in it, from 0.
        cycle: u32,
    },
    /// Three numbers that a person read off the display.
    Reading {
        /// Lowest temperature during the time at temperature, thousandths of °C.
        lowest_mc: i64,
        /// Time at it, seconds.
        held_s: i64,
        /// Pressure in pascal, absolute; `None` where the display shows none.
        press_pa: Option<i64>,
    },
}

/// One reason of a verdict.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reason {
    /// The code (a stable word).
    pub code: cycle::finding::Code,
    /// From and to, milliseconds since the cycle's first sample.
    pub at_ms: Option<(i64, i64)>,
    /// First and last line of the file.
    pub lines: Option<(u32, u32)>,
}

/// The words that a person answers with where a record leaves its units open.
pub use cycle::record::{PressureUnit, Reference, TemperatureUnit};

/// How the records of one machine read, as a person said. `None`: as the file says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Reads {
    /// Height of the place above the sea, metres.
    pub altitude_m: Option<i64>,
    /// Unit of its temperatures.
    pub temperature_unit: Option<TemperatureUnit>,
    /// Unit of its pressures.
    pub pressure_unit: Option<PressureUnit>,
    /// What its pressures are counted from.
    pub pressure_reference: Option<Reference>,
    /// `03/04` is the third of April.
    pub day_first: Option<bool>,
}

/// The figures that a verdict stands on, so that a page can show them without judging again, and
/// those that the watch over drift compares from run to run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct KeyFigures {
    /// Set temperature, thousandths of °C.
    pub set_mc: Option<i64>,
    /// Least time at temperature that is asked, ms.
    pub needed_ms: Option<i64>,
    /// Time at temperature, ms.
    pub held_ms: Option<i64>,
    /// Lowest temperature in it, thousandths of °C.
    pub lowest_mc: Option<i64>,
    /// Highest temperature in it, thousandths of °C.
    pub highest_mc: Option<i64>,
    /// Mean deviation from saturation, thousandths of K.
    pub deviation_mk: Option<i64>,
    /// F0 by the safe lower sum, thousandths of a minute.
    pub f0_low_mmin: Option<i64>,
    /// Length of the drying part, ms.
    pub drying_ms: Option<i64>,
    /// First sample to last, ms.
    pub total_ms: Option<i64>,
    /// From the first sample to the first vacuum, ms.
    pub preheat_ms: Option<i64>,
    /// From the last pulse to the set temperature, ms.
    pub heat_up_ms: Option<i64>,
    /// Length of the first vacuum pulse, ms.
    pub first_pulse_ms: Option<i64>,
    /// Deepest pressure of the third vacuum pulse, or of the last where there are fewer, Pa
    /// absolute.
    pub pulse_depth_pa: Option<i64>,
    /// Letting off the steam, ms.
    pub exhaust_ms: Option<i64>,
    /// Deepest pressure while drying, Pa absolute.
    pub dry_vacuum_pa: Option<i64>,
    /// Letting in air at the end, ms.
    pub air_in_ms: Option<i64>,
}

/// Did the drying part run as set?
pub use cycle::figures::DryingRan;

/// A verdict as the book keeps it. Replay never works it out again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Judged {
    /// The run it speaks of; `None` for a record that no run has claimed.
    pub run: Option<RunId>,
    /// What it rests on.
    pub basis: Basis,
    /// Version of the judge.
    pub judge: String,
    /// The limits used: name and value in thousandths.
    pub limits: Vec<(String, i64)>,
    /// What was inside, as it was said.
    pub contents: Contents,
    /// What the record proves.
    pub outcome: Outcome,
    /// For which contents.
    pub proven_for: Vec<Contents>,
    /// Did the whole cycle keep to what was asked?
    pub conforming: Option<bool>,
    /// Did the drying part run as set?
    pub drying: DryingRan,
    /// Every reason, the decisive one first.
    pub reasons: Vec<Reason>,
    /// The figures.
    pub figures: KeyFigures,
    /// Wall-clock text of the record's first sample, without zone.
    pub start_clock: Option<String>,
}

/// What happened.
#[derive(Debug, Clone, PartialEq)]
pub enum Body {
    /// The book begins.
    SalonOpened {
        /// The salon.
        salon: SalonId,
        /// IANA name of its time zone.
        zone: String,
        /// Whose book it is.
        book: BookKind,
    },
    /// The time zone is another from now on.
    ZoneSet {
        /// IANA name.
        zone: String,
    },
    /// A person works here; the sign lies in the drawer.
    PersonJoined {
        /// The person.
        person: PersonId,
        /// The sign: what others see under an act.
        sign: DrawerRef,
    },
    /// A person no longer works here.
    PersonLeft {
        /// The person.
        person: PersonId,
    },
    /// A machine is here.
    MachineAdded {
        /// The machine.
        machine: MachineId,
        /// Its number on the door.
        number: u32,
        /// How it gets the air out.
        air_removal: AirRemoval,
        /// It writes a file for each cycle.
        writes_files: bool,
        /// Most pouches that its tray was tested with.
        most_pouches: Option<u32>,
    },
    /// The machine's own clock runs ahead of true time by this much.
    MachineClockSet {
        /// The machine.
        machine: MachineId,
        /// Machine time less true time, ms.
        ahead_ms: i64,
    },
    /// How its records read, where they leave it open: all that is said of it from now on.
    MachineReads {
        /// The machine.
        machine: MachineId,
        /// Height of the place above the sea, metres.
        altitude_m: Option<i64>,
        /// Unit of its temperatures.
        temperature_unit: Option<TemperatureUnit>,
        /// Unit of its pressures.
        pressure_unit: Option<PressureUnit>,
        /// What its pressures are counted from.
        pressure_reference: Option<Reference>,
        /// `03/04` is the third of April.
        day_first: Option<bool>,
    },
    /// Out of use.
    MachineOut {
        /// The machine.
        machine: MachineId,
    },
    /// In use again, by a named person.
    MachineBack {
        /// The machine.
        machine: MachineId,
    },
    /// The salon owns this many sets of a kind (counted).
    SetsOwned {
        /// The kind.
        kind: SetKind,
        /// How many.
        count: u32,
    },
    /// Counted: so many sets of the kind lie used, and so many washed.
    Counted {
        /// The kind.
        kind: SetKind,
        /// In the used bin.
        used: u32,
        /// Washed and dry.
        washed: u32,
    },
    /// Washed, dried, looked at, oiled.
    Washed {
        /// The kind.
        kind: SetKind,
        /// How many.
        count: u32,
    },
    /// Put in pouches, with a label each.
    Packed {
        /// The pouches.
        pouches: Vec<PackedPouch>,
    },
    /// A run begins.
    RunStarted {
        /// The run.
        run: RunId,
        /// Where.
        machine: MachineId,
        /// Number of the run at this machine on this day, from 1.
        number: u32,
        /// The machine's programme, as the salon calls it; a word from a list that the salon set.
        programme: Option<String>,
        /// What the steam has to get through.
        contents: Contents,
        /// What is inside.
        pouches: Vec<PouchId>,
    },
    /// The run is over and its load is out of the machine; it stays to check.
    RunUnloaded {
        /// The run.
        run: RunId,
    },
    /// A record came in and is kept byte for byte.
    RecordTaken {
        /// What it is recognised by.
        record: RecordHash,
        /// Where its bytes lie.
        kept: DrawerRef,
        /// How many bytes.
        bytes: u64,
        /// How it came.
        way: Way,
        /// The shorter record that this one begins with and replaces.
        continues: Option<RecordHash>,
        /// How many cycles are in it.
        cycles: u32,
    },
    /// A cycle of a record belongs to a run.
    RecordClaimed {
        /// The file.
        record: RecordHash,
        /// The cycle in it.
        cycle: u32,
        /// The run.
        run: RunId,
    },
    /// A verdict.
    Judged(Box<Judged>),
    /// The looks of a person at a run.
    Looked {
        /// The run.
        run: RunId,
        /// The marks of all pouches were looked at.
        marks_looked: bool,
        /// Did the indicator of type 5 or 6 inside the load reach its end point? `None`: nobody
        /// looked, or there was none.
        inner_mark: Option<bool>,
        /// All pouches were looked at for being dry and whole.
        dry_looked: bool,
        /// Pouches whose mark did not turn.
        marks_not_turned: Vec<PouchId>,
        /// Pouches that were wet.
        wet: Vec<PouchId>,
        /// Pouches that were torn.
        torn: Vec<PouchId>,
        /// Pouches that were dropped.
        dropped: Vec<PouchId>,
    },
    /// These may be used.
    Released {
        /// The run.
        run: RunId,
        /// The pouches.
        pouches: Vec<PouchId>,
        /// Unpouched sets: use until then, afterwards they are used again.
        use_until: Option<Instant>,
    },
    /// These must not be used.
    SetAside {
        /// The pouches.
        pouches: Vec<PouchId>,
        /// The run, where the stop is about a whole run.
        run: Option<RunId>,
        /// Why.
        why: StopReason,
    },
    /// A named person lifted a stop made by mistake.
    StopLifted {
        /// The pouches.
        pouches: Vec<PouchId>,
        /// Why it may be lifted.
        why: LiftReason,
    },
    /// Opened at a chair, for a visit.
    Opened {
        /// The pouch.
        pouch: PouchId,
        /// The visit.
        visit: VisitId,
        /// The chair.
        chair: Option<u32>,
    },
    /// Pouches taken apart: the sets are used again, the pouches never.
    TakenApart {
        /// The pouches.
        pouches: Vec<PouchId>,
    },
    /// An earlier act is taken back. Its facts stay.
    Undone {
        /// The act.
        act: ActId,
    },
    /// Something around the day: visits, services, working times, plans.
    Day(Day),
    /// Something about what goes in: implements, sets, pouches, machines' rooms and programmes.
    Loading(Box<Loading>),
    /// Something about what is looked after: chores, jars, foot basins, spore tests, stock.
    Upkeep(Box<Upkeep>),
    /// Something about the counter: screens, people, hand-overs, corrections, gaps, practice.
    Counter(Box<Counter>),
}
