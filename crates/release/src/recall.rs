//! What a recall reaches: which runs, which pouches still on the shelf, which were opened, at
//! which visit.
//!
//! A recall reaches from the run after the last good spore test to the moment the machine was
//! taken out of use; a good test dates from its run, not from its answer ("recall everything
//! since the last negative test": CDC/HICPAC 2008, Table 12, and MMWR 52(RR-17) 2003). Where
//! something is not known, it reaches further, never less.

use measure::{Instant, MachineId, PouchId, RunId, VisitId};

/// What became of a pouch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PouchNow {
    /// Released and not yet opened, or set aside, or still to check: it can be caught.
    NotOpened,
    /// Opened; at this visit, where that was written down.
    Opened(Option<VisitId>),
    /// Opened by nobody and out of the round: washed again, binned, retired.
    Gone,
}

/// One pouch of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PouchOfRun {
    /// Its id.
    pub id: PouchId,
    /// What became of it.
    pub now: PouchNow,
}

/// One run, as the book has it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RunOfMachine {
    /// Its id.
    pub id: RunId,
    /// In which machine.
    pub machine: MachineId,
    /// When it began.
    pub started: Instant,
    /// When it ended; `None` where nobody knows or it still runs.
    pub ended: Option<Instant>,
    /// What was inside.
    pub pouches: Vec<PouchOfRun>,
}

/// From where a recall reaches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Since {
    /// From the run after this one, which had the last good spore test.
    AfterGoodTest(RunId),
    /// From this run on, itself included.
    Run(RunId),
    /// From this moment on: every run that was going at it or began later.
    Moment(Instant),
    /// There is no good test to count from: everything.
    Beginning,
}

/// What is asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ask {
    /// The machine.
    pub machine: MachineId,
    /// From where.
    pub since: Since,
    /// The moment it was taken out of use; `None` while it is still in use: to the last run.
    pub out_of_use: Option<Instant>,
}

/// What a recall reaches. Runs by their beginning; pouches in the order of the runs.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Reach {
    /// The runs.
    pub runs: Vec<RunId>,
    /// Pouches that can still be caught.
    pub on_shelf: Vec<PouchId>,
    /// Pouches that were opened at a visit.
    pub opened: Vec<(PouchId, VisitId)>,
    /// Pouches that were opened without a visit being written down: they have to be looked for.
    pub opened_unlinked: Vec<PouchId>,
    /// Pouches that are out of the round.
    pub gone: Vec<PouchId>,
    /// The run to count from is not in the book; therefore everything is reached.
    pub start_unknown: bool,
}

impl Reach {
    /// The visits, each once, in order.
    #[must_use]
    pub fn visits(&self) -> Vec<VisitId> {
        let mut visits: Vec<_> = self.opened.iter().map(|&(_, visit)| visit).collect();
        visits.sort_unstable();
        visits.dedup();
        visits
    }
}

/// What the recall reaches among `runs`, which may be in any order and of any machine.
///
/// ```
/// use measure::{Instant, MachineId, RunId};
/// use release::recall::{reach, Ask, RunOfMachine, Since};
/// let machine = MachineId::from_bytes([1; 16]);
/// let run = |n: u8| RunOfMachine {
///     id: RunId::from_bytes([n; 16]),
///     machine,
///     started: Instant::from_millis(i64::from(n) * 1_000),
///     ended: None,
///     pouches: vec![],
/// };
/// let ask = Ask {
///     machine,
///     since: Since::AfterGoodTest(RunId::from_bytes([1; 16])),
///     out_of_use: Some(Instant::from_millis(3_000)),
/// };
/// let reached = reach(&[run(1), run(2), run(3), run(4)], &ask);
/// assert_eq!(reached.runs, [RunId::from_bytes([2; 16]), RunId::from_bytes([3; 16])]);
/// ```
#[must_use]
pub fn reach(runs: &[RunOfMachine], ask: &Ask) -> Reach {
    let mut of_machine: Vec<&RunOfMachine> =
        runs.iter().filter(|run| run.machine == ask.machine).collect();
    of_machine.sort_by_key(|run| (run.started, run.id));
    let start = |id: RunId| of_machine.iter().find(|run| run.id == id).map(|run| run.started);
    let mut reach = Reach {
        start_unknown: match ask.since {
            Since::AfterGoodTest(id) | Since::Run(id) => start(id).is_none(),
            Since::Moment(_) | Since::Beginning => false,
        },
        ..Reach::default()
    };
    let begins_in_time = |run: &RunOfMachine| match ask.since {
        // Another run with the very same beginning cannot be told to lie before: it is reached.
        Since::AfterGoodTest(id) => {
            start(id).is_none_or(|good| run.started >= good && run.id != id)
        }
        Since::Run(id) => start(id).is_none_or(|first| run.started >= first),
        Since::Moment(moment) => run.started >= moment || run.ended.is_none_or(|end| end >= moment),
        Since::Beginning => true,
    };
    let in_use = |run: &RunOfMachine| ask.out_of_use.is_none_or(|end| run.started <= end);
    for run in of_machine.iter().filter(|run| begins_in_time(run) && in_use(run)) {
        reach.runs.push(run.id);
        for pouch in &run.pouches {
            match pouch.now {
                PouchNow::NotOpened => reach.on_shelf.push(pouch.id),
                PouchNow::Opened(Some(visit)) => reach.opened.push((pouch.id, visit)),
                PouchNow::Opened(None) => reach.opened_unlinked.push(pouch.id),
                PouchNow::Gone => reach.gone.push(pouch.id),
            }
        }
    }
    reach
}
