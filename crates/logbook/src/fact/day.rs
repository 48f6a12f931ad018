//! Facts that a day is planned by: services, visits, working times, what machines and kinds of
//! sets need, and the plan that somebody accepted.
//!
//! Where something came from a calendar, the book keeps digests under a key of its own: they find
//! the same entry again and say nothing about it once the key is deleted. Titles, names and notes
//! of a calendar are never in a fact.

use super::DrawerRef;
use load::{Programme, ServiceWord, SetKind};
use measure::{Instant, MachineId, PersonId, ServiceId, ShiftId, VisitId};
use std::fmt;

/// HMAC-SHA-256 of something from outside, under the book's own key ([`Day::KeyMade`]). 64
/// lower-case hexadecimal digits as text.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Keyed([u8; 32]);

impl Keyed {
    /// From the 32 bytes of the digest.
    #[must_use]
    pub const fn from_bytes(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }

    /// The 32 bytes.
    #[must_use]
    pub const fn bytes(&self) -> &[u8; 32] {
        &self.0
    }
}

impl fmt::Display for Keyed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Keyed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

/// What a visit was taken from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// A calendar (RFC 5545).
    Calendar,
    /// A table of appointments.
    Table,
}

/// Where a visit came from, so that the same entry is found when it comes again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Origin {
    /// Calendar or table.
    pub source: Source,
    /// The entry: its `UID` and, in a series, the moment it was first meant for.
    pub entry: Keyed,
    /// The series: its `UID` alone.
    pub series: Keyed,
    /// The calendar or table that it lay in.
    pub calendar: Keyed,
    /// Revision of the entry (`SEQUENCE`): an older file changes nothing.
    pub sequence: u32,
}

/// How far a cycle dries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Drying {
    /// Not at all: the sets are for use at once.
    None,
    /// A little: a light load comes out dry.
    Short,
    /// In full.
    Full,
}

/// What counts first in a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlanOrder {
    /// The salon's: sets that lie overnight are dry before money is saved.
    Salon,
    /// The published one, for comparing.
    Comparing,
}

/// What a plan needs to know about a programme of a machine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DayCycle {
    /// The programme, as the salon calls it.
    pub programme: Programme,
    /// Length on a cold machine, minutes.
    pub cold_min: u32,
    /// Length on a warm one, minutes.
    pub warm_min: u32,
    /// What a load may weigh, grams.
    pub max_mass_g: u32,
    /// Pouch area that a load may have, cm²; counts where the sets lie in pouches.
    pub max_area_cm2: u32,
    /// How far it dries.
    pub drying: Drying,
    /// The sets lie in pouches.
    pub wrapped: bool,
    /// Loading, minutes of hands.
    pub load_min: u32,
    /// Unloading, minutes of hands.
    pub unload_min: u32,
    /// Cooling afterwards, minutes without hands.
    pub cool_min: u32,
    /// What a run costs on a cold machine, cents.
    pub cold_cents: u32,
    /// What it costs on a warm one, cents.
    pub warm_cents: u32,
}

/// What a plan needs to know about a machine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MachineFigures {
    /// The machine.
    pub machine: MachineId,
    /// For how long after unloading it counts as warm, minutes.
    pub warm_window_min: u32,
    /// Its programmes, each once.
    pub cycles: Vec<DayCycle>,
}

/// What a plan needs to know about a kind of set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KindFigures {
    /// The kind.
    pub kind: SetKind,
    /// Mass of one set, grams.
    pub mass_g: u32,
    /// Area of its pouch, cm².
    pub area_cm2: u32,
    /// Washing, drying, looking and packing one set, minutes of hands.
    pub hand_min: u32,
    /// What its pouch costs, cents.
    pub pouch_cents: u32,
    /// How many should be ready when the day is over.
    pub target_ready: u32,
    /// How many of the stock are spares that no visit is promised.
    pub spares: u32,
}

/// What holds for every plan of the salon.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DayRules {
    /// How long washed sets soak or dry before they can be loaded, minutes.
    pub passive_min: u32,
    /// Within how many minutes of a cycle's end an undried set must be opened.
    pub immediate_min: u32,
    /// What counts first.
    pub order: PlanOrder,
}

/// A service that the salon offers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Service {
    /// Its id.
    pub service: ServiceId,
    /// What the salon calls it.
    pub word: ServiceWord,
    /// How long it takes, minutes.
    pub minutes: u32,
    /// What one missing set of it counts, 1 or more.
    pub weight: u32,
    /// Cleaning a foot basin afterwards, minutes of hands; 0: no basin.
    pub basin_min: u32,
    /// How many sets of which kind, each kind once.
    pub needs: Vec<(SetKind, u32)>,
}

/// A run of an accepted plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlannedRun {
    /// Where.
    pub machine: MachineId,
    /// Which programme.
    pub programme: Programme,
    /// When it should start.
    pub start: Instant,
    /// Planned on a warm machine.
    pub warm: bool,
    /// How many sets of which kind, each kind once.
    pub load: Vec<(SetKind, u32)>,
}

/// What happened around the day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Day {
    /// The key under which calendars are recognised lies in the drawer. A later one holds.
    KeyMade {
        /// Where it lies.
        key: DrawerRef,
    },
    /// A service is offered, or is described anew.
    ServiceSet(Service),
    /// A service is no longer offered. Visits that have it keep it.
    ServiceEnded {
        /// The service.
        service: ServiceId,
    },
    /// A phrase in a title means this service; said again, the later holds.
    PhraseLearnt {
        /// The phrase, normalised and keyed.
        phrase: Keyed,
        /// The service; `None`: such an entry is no visit.
        service: Option<ServiceId>,
    },
    /// A visit is booked.
    VisitBooked {
        /// The visit.
        visit: VisitId,
        /// When it begins.
        start: Instant,
        /// When it ends.
        end: Instant,
        /// The chair, where it is known.
        chair: Option<u32>,
        /// The service; `None` until somebody says.
        service: Option<ServiceId>,
        /// Where it came from; `None`: by hand.
        origin: Option<Origin>,
    },
    /// A visit is booked for another time; one that was called off or missed is booked again.
    VisitMoved {
        /// The visit.
        visit: VisitId,
        /// When it begins.
        start: Instant,
        /// When it ends.
        end: Instant,
        /// The chair, where it is known.
        chair: Option<u32>,
        /// Revision of the calendar's entry; 0 by hand.
        sequence: u32,
    },
    /// Which service a visit is for.
    VisitIs {
        /// The visit.
        visit: VisitId,
        /// The service; `None`: not known any more.
        service: Option<ServiceId>,
    },
    /// A visit begins later than booked, by so many minutes more than said before.
    VisitLate {
        /// The visit.
        visit: VisitId,
        /// Minutes.
        minutes: u32,
    },
    /// A visit was called off.
    VisitCancelled {
        /// The visit.
        visit: VisitId,
    },
    /// The client did not come.
    VisitMissed {
        /// The visit.
        visit: VisitId,
    },
    /// A person works at this time. Said again of the same shift, the later holds.
    ShiftSet {
        /// The shift.
        shift: ShiftId,
        /// Who.
        person: PersonId,
        /// From.
        from: Instant,
        /// To.
        to: Instant,
        /// Lunch, from and to.
        lunch: Option<(Instant, Instant)>,
    },
    /// A shift that will not be worked.
    ShiftEnded {
        /// The shift.
        shift: ShiftId,
    },
    /// The salon is closed for a time, or open after all.
    ClosedSet {
        /// From.
        from: Instant,
        /// To.
        to: Instant,
        /// Closed; otherwise what was said of this very time is taken back.
        closed: bool,
    },
    /// A kind's own figures.
    KindFigures(KindFigures),
    /// A machine's own figures.
    MachineFigures(MachineFigures),
    /// What holds for every plan.
    Rules(DayRules),
    /// Somebody accepted a plan; the last one holds.
    PlanAccepted {
        /// From when it plans.
        from: Instant,
        /// Until when.
        to: Instant,
        /// Its runs, by their start.
        runs: Vec<PlannedRun>,
    },
}
