//! What a plan says, and how two plans are compared.

/// A plan for a [`super::Problem`]; kinds, machines, cycles and services are indices into it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Plan {
    /// The runs, by start, then by machine.
    pub runs: Vec<Run>,
    /// Sets that an appointment goes without.
    pub unmet: Vec<Unmet>,
    /// Which appointment opens a set from a run without drying.
    pub immediate: Vec<Immediate>,
    /// Who washes what and when.
    pub hand_work: Vec<HandWork>,
}

/// One run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// Which machine.
    pub machine: usize,
    /// Which of its cycles.
    pub cycle: usize,
    /// Whether the length and price of a warm machine are used.
    pub warm: bool,
    /// Slot in which it is loaded and started.
    pub start: usize,
    /// Slot at whose start it is over.
    pub end: usize,
    /// Slot in which it is unloaded.
    pub unload: usize,
    /// Slot at whose start its sets are ready.
    pub ready: usize,
    /// How many sets of each kind, one entry a kind.
    pub load: Vec<u32>,
}

/// Sets that an appointment goes without.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Unmet {
    /// Which service.
    pub service: usize,
    /// Which kind.
    pub kind: usize,
    /// How many.
    pub n: u32,
}

/// Sets that go from a run without drying straight to a chair.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Immediate {
    /// Which run of the plan.
    pub run: usize,
    /// Which service.
    pub service: usize,
    /// Which kind.
    pub kind: usize,
    /// How many.
    pub n: u32,
}

/// Minutes of washing and packing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HandWork {
    /// Which kind.
    pub kind: usize,
    /// In which slot.
    pub slot: usize,
    /// How many minutes.
    pub minutes: u32,
}

/// What a plan costs, the first level first: an array compares as the levels do.
///
/// | level | counts |
/// |---|---|
/// | unmet | sets missing at an appointment, each by its service's weight |
/// | short | sets missing from tomorrow's target |
/// | runs | runs |
/// | cost | cents for runs and pouches |
/// | drying | per set sterilised: 2 without drying, 1 with a short one |
/// | exposure | set-minutes that would be missing if every load came 5, 10, ... 30 minutes later; 30 for each set used at once |
pub type Objective = [u64; LEVELS];

/// How many levels there are.
pub const LEVELS: usize = 6;
/// Their names.
pub const LEVEL_NAMES: [&str; LEVELS] = ["unmet", "short", "runs", "cost", "drying", "exposure"];
