//! Facts about what goes in: implements, what a set is made of, sizes of pouches, the room inside a
//! machine, weighed trays, and what a machine's manual says of its programmes.

use load::chamber::Inside;
use load::implement::Implement;
use load::pouch::PouchSize;
use load::{ImplementWord, PouchWord, Programme, SetKind};
use measure::MachineId;

/// What the manual of a machine says of one of its programmes. `None`: not known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProgrammeFigures {
    /// The machine.
    pub machine: MachineId,
    /// The programme, as the salon calls it.
    pub programme: Programme,
    /// Set temperature, °C; 100 to 150.
    pub set_c: u32,
    /// Time at temperature, seconds; 1 to 14 400.
    pub hold_s: u32,
    /// How many times it draws the air out before it heats up; at most 20, 0: steam pushes it out.
    pub pulses: u32,
    /// Length of the drying part, minutes; 0: it does not dry.
    pub drying_min: u32,
    /// Pressure that it dries at, Pa absolute; at most 110 000.
    pub drying_pa: Option<u32>,
    /// Made for sets in pouches.
    pub for_pouches: bool,
    /// Made for what has a bore or a cavity.
    pub for_hollow: bool,
    /// The most that it takes of sets in pouches, grams.
    pub most_pouched_g: Option<u32>,
    /// The most that it takes of sets without pouches, grams.
    pub most_unwrapped_g: Option<u32>,
    /// Page of the machine's manual that says so.
    pub manual_page: Option<u32>,
}

/// What was said about what goes in. Of a word, a kind, a machine or a programme, what was said
/// last holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Loading {
    /// An implement of the salon's own, or a typical one described anew.
    ImplementSet(Implement),
    /// An implement that the salon does not use, also a typical one.
    ImplementEnded {
        /// What the salon calls it.
        word: ImplementWord,
    },
    /// What a set of this kind is made of.
    SetOf {
        /// The kind.
        kind: SetKind,
        /// How many of which implement, each word once.
        pieces: Vec<(ImplementWord, u32)>,
    },
    /// A size of pouch that the salon keeps, or a typical one described anew.
    PouchSet(PouchSize),
    /// A size of pouch that the salon does not keep, also a typical one.
    PouchEnded {
        /// What the salon calls it.
        word: PouchWord,
    },
    /// The room inside a machine.
    InsideSet {
        /// The machine.
        machine: MachineId,
        /// Its room.
        inside: Inside,
    },
    /// One full tray on a kitchen scale.
    TrayWeighed {
        /// Tray, sets and pouches together, grams.
        grams: u32,
        /// The tray alone, grams, where it was weighed too; less than all together.
        empty_g: Option<u32>,
        /// How many sets of which kind lay on it, each kind once.
        sets: Vec<(SetKind, u32)>,
        /// They lay in pouches.
        pouched: bool,
    },
    /// What the machine's manual says of a programme.
    ProgrammeSet(ProgrammeFigures),
}
