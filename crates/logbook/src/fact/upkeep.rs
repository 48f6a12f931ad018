//! Facts about what is looked after beside the sets: chores, jars, foot basins, baths, spore tests,
//! stock.

use super::DrawerRef;
use load::{ChoreWord, StockWord};
use measure::{Instant, MachineId, PouchId, RunId, TestId, ThingId};

/// What kind of thing is looked after, beside the machines.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ThingKind {
    /// A container of disinfectant.
    Jar,
    /// A foot basin.
    FootBasin,
    /// An ultrasonic bath.
    Ultrasonic,
}

/// What a chore is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum About {
    /// The place as a whole.
    Salon,
    /// A machine.
    Machine(MachineId),
    /// A jar, a foot basin, a bath.
    Thing(ThingId),
}

/// At which time of the day a chore is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayPart {
    /// Before the first client.
    Opening,
    /// After the last client.
    Closing,
    /// Whenever hands are free.
    AnyTime,
}

/// When a chore falls due. With neither days nor runs nobody has said how often: it is shown as not
/// known until the manual's figure is there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoreRule {
    /// The chore.
    pub chore: ChoreWord,
    /// What it is about.
    pub about: About,
    /// When in the day.
    pub part: DayPart,
    /// At the latest so many days after it was last done; 1: every day. 1 to 3 660.
    pub days: Option<u32>,
    /// At the latest after so many runs of its machine; 1 to 100 000.
    pub runs: Option<u32>,
    /// Minutes of hands; at most 1 440.
    pub minutes: u32,
    /// Work stops where it is overdue.
    pub stops_work: bool,
    /// Page of the manual that says so.
    pub manual_page: Option<u32>,
}

/// What was found when a chore was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Found {
    /// As it should be.
    Fine,
    /// Worn, uneven, cracked: somebody has to see to it.
    NotFine,
}

/// Why a chore was left out this time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LeftOut {
    /// The salon was closed.
    Closed,
    /// The thing was not used.
    NotUsed,
}

/// After what a foot basin is cleaned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BasinAfter {
    /// After a client.
    Client,
    /// At the end of the day.
    DayEnd,
    /// Once a week.
    Week,
}

/// What was done to a machine by somebody from outside, or with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Serviced {
    /// Regular service.
    Service,
    /// A repair.
    Repair,
    /// Validation or calibration.
    Validation,
    /// Moved to another place.
    Moved,
}

/// What uses up a stock, so that it need not be counted each time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UsedBy {
    /// Each pouch that is packed.
    Pouch,
    /// Each run.
    Run,
    /// Each spore test.
    Test,
    /// Only a count tells.
    Counting,
}

/// What was said about upkeep. Of a thing, a chore or a stock, what was said last holds; what was
/// done is an event of its own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Upkeep {
    /// A jar, a foot basin or a bath is here.
    ThingAdded {
        /// The thing.
        thing: ThingId,
        /// Its kind.
        what: ThingKind,
        /// Its number among those of its kind.
        number: u32,
    },
    /// It is here no longer.
    ThingEnded {
        /// The thing.
        thing: ThingId,
    },
    /// What the label in the jar asks.
    JarSet {
        /// The jar.
        jar: ThingId,
        /// How long things stay fully under, minutes; 1 to 1 440.
        contact_min: u32,
        /// How long a mix lasts, hours; `None`: to the end of the day.
        lasts_h: Option<u32>,
        /// Name, registration number and strength as on the label.
        label: Option<DrawerRef>,
    },
    /// Mixed anew.
    JarMixed {
        /// The jar.
        jar: ThingId,
    },
    /// Something went in: the time of contact counts from now.
    JarIn {
        /// The jar.
        jar: ThingId,
    },
    /// Emptied and rinsed.
    JarEmptied {
        /// The jar.
        jar: ThingId,
    },
    /// How long a foot basin stays wet with disinfectant, by the label.
    BasinSet {
        /// The basin.
        basin: ThingId,
        /// Minutes; 1 to 1 440.
        wet_min: u32,
    },
    /// Drained, cleaned, rinsed, and full of disinfectant from now on.
    BasinWet {
        /// The basin.
        basin: ThingId,
        /// After what.
        after: BasinAfter,
    },
    /// Drained and dry: the cleaning that began last is over.
    BasinDrained {
        /// The basin.
        basin: ThingId,
    },
    /// Not used on the day on which this happened.
    NotUsed {
        /// The thing.
        thing: ThingId,
    },
    /// When a chore falls due.
    ChoreSet(ChoreRule),
    /// A chore is not done here, also one that is typical.
    ChoreEnded {
        /// The chore.
        chore: ChoreWord,
        /// What it is about.
        about: About,
    },
    /// A chore was done.
    ChoreDone {
        /// The chore.
        chore: ChoreWord,
        /// What it is about.
        about: About,
        /// What was found.
        found: Found,
        /// A free text.
        note: Option<DrawerRef>,
    },
    /// A chore was left out this time.
    ChoreLeft {
        /// The chore.
        chore: ChoreWord,
        /// What it is about.
        about: About,
        /// Why.
        why: LeftOut,
    },
    /// A machine was serviced, repaired, validated or moved.
    MachineServiced {
        /// The machine.
        machine: MachineId,
        /// What was done.
        what: Serviced,
        /// A free text: by whom, number of the certificate.
        note: Option<DrawerRef>,
    },
    /// A spore test went into a machine.
    SporePlaced {
        /// The test.
        test: TestId,
        /// The machine.
        machine: MachineId,
        /// Its run, where one is running or about to.
        run: Option<RunId>,
        /// A control of the same lot, that went through no steam, is kept beside it.
        control: bool,
        /// Lot and use-by date, as on the box.
        lot: Option<DrawerRef>,
    },
    /// Sent to a laboratory.
    SporePosted {
        /// The test.
        test: TestId,
        /// An answer is expected by then.
        answer_by: Instant,
    },
    /// Read.
    SporeRead {
        /// The test.
        test: TestId,
        /// Spores grew: the steam did not reach them.
        grew: bool,
        /// The control grew, as it has to; `None`: there was none, or nobody looked.
        control_grew: Option<bool>,
    },
    /// Lost, broken or mixed up: it says nothing.
    SporeLost {
        /// The test.
        test: TestId,
    },
    /// What a failed test had frozen may be used again, because the repeat was good.
    Unfrozen {
        /// The test that had failed.
        test: TestId,
        /// The pouches.
        pouches: Vec<PouchId>,
    },
    /// What is kept of something that is used up.
    StockSet {
        /// What.
        item: StockWord,
        /// What uses it up.
        used_by: UsedBy,
        /// Buy when there are fewer; at most 1 000 000.
        least: u32,
    },
    /// It is not kept any more.
    StockEnded {
        /// What.
        item: StockWord,
    },
    /// So many are here.
    StockCounted {
        /// What.
        item: StockWord,
        /// How many.
        count: u32,
    },
    /// So many came.
    StockBought {
        /// What.
        item: StockWord,
        /// How many.
        count: u32,
        /// Lot and use-by date, as on the box.
        lot: Option<DrawerRef>,
    },
}
