//! Taking in a record: kept byte for byte, recognised when it comes twice, judged, and offered to
//! the run it belongs to by machine and time. What fits none stays unclaimed: never lost, never
//! guessed.

use crate::acts::{Claim, Refusal};
use crate::clock;
use crate::intake::judge::{self, Examined};
use crate::intake::known;
use cycle::record::Known;
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use logbook::book::{Draft, DrawerKind};
use logbook::drawer::record_hash;
use logbook::fact::{Basis, Body, Way};
use logbook::view::{Machine, Run, TakenCycle, View};
use measure::{MachineId, RecordHash, RunId, Span};
use release::verdict::Outcome;

/// Largest record that is taken in. A day of samples twice a second is about 5 MB.
pub const LARGEST: usize = 64 * 1024 * 1024;

/// How far a record's clock may lie from the start that a person tapped.
const NEAR: Span = Span::from_minutes(10);

/// A file as it came.
#[derive(Debug, Clone, Copy)]
pub struct Arrived<'a> {
    /// Its bytes.
    pub bytes: &'a [u8],
    /// How it came.
    pub way: Way,
    /// The machine it is said to come from.
    pub machine: Option<MachineId>,
    /// The run it was dropped on.
    pub run: Option<RunId>,
}

/// What became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// What it is recognised by.
    pub record: RecordHash,
    /// It was here already; nothing was written.
    pub known_before: bool,
    /// The runs that its cycles belong to; `None`: unclaimed.
    pub cycles: Vec<Option<RunId>>,
}

/// Takes one file in, inside an act.
pub fn take(view: &View<'_>, draft: &mut Draft, arrived: Arrived<'_>) -> Result<Taken, Refusal> {
    if arrived.bytes.is_empty() {
        return Err(Refusal::rule("refused-empty-file"));
    }
    if arrived.bytes.len() > LARGEST {
        return Err(Refusal::rule_with("refused-large-file", "most", LARGEST / (1024 * 1024)));
    }
    let record = record_hash(arrived.bytes);
    let before = view.taken(record)?;
    if !before.is_empty() {
        return known_before(view, draft, &before, arrived.run);
    }
    let machine = said_machine(view, arrived)?;
    let mut readings = Readings::new(view, arrived.bytes)?;
    let count = readings.of(machine).len();
    let shorter = continued_by(view, arrived.bytes)?;
    let kept = draft.put(DrawerKind::Record, arrived.bytes)?;
    draft.fact(Body::RecordTaken {
        record,
        kept,
        bytes: arrived.bytes.len() as u64,
        way: arrived.way,
        continues: shorter.as_ref().map(|(shorter, _)| *shorter),
        cycles: count as u32,
    });
    let before = shorter.map(|(_, cycles)| cycles).unwrap_or_default();
    let runs = readings.of(machine).iter().filter(|examined| examined.is_run()).count();
    let mut claimer = Claimer { view, arrived, before, runs, claimed: Vec::new() };
    let mut cycles = Vec::new();
    for index in 0..count {
        let run = claimer.run_for(index as u32, &readings.of(machine)[index])?;
        let basis = Basis::Record { record, cycle: index as u32 };
        // What is known of the run's own machine counts, once it is known which that is.
        let of = run.as_ref().map(|run| run.machine).or(machine);
        let of = if readings.of(of).len() == count { of } else { machine };
        write_cycle(view, draft, basis, &readings.of(of)[index], run.as_ref())?;
        cycles.push(run.map(|run| run.run));
    }
    Ok(Taken { record, known_before: false, cycles })
}

/// The machine that the file is said to come from, by name or by the run it was dropped on.
fn said_machine(view: &View<'_>, arrived: Arrived<'_>) -> Result<Option<MachineId>, Refusal> {
    let run = arrived.run.map(|run| view.run(run)).transpose()?.flatten();
    Ok(run.map(|run| run.machine).or(arrived.machine))
}

/// The cycles of one file, read with what is known of one machine or another; each way once.
struct Readings<'a> {
    bytes: &'a [u8],
    machines: Vec<Machine>,
    read: Vec<(Known, Vec<Examined>)>,
}

impl<'a> Readings<'a> {
    fn new(view: &View<'_>, bytes: &'a [u8]) -> Result<Self, Refusal> {
        Ok(Self { bytes, machines: view.machines()?, read: Vec::new() })
    }

    fn of(&mut self, machine: Option<MachineId>) -> &[Examined] {
        let known = known::of_machine(&self.machines, machine);
        let at = self.read.iter().position(|(with, _)| *with == known).unwrap_or_else(|| {
            self.read.push((known, judge::examine_file(self.bytes, &known)));
            self.read.len() - 1
        });
        &self.read[at].1
    }
}

fn known_before(
    view: &View<'_>,
    draft: &mut Draft,
    before: &[TakenCycle],
    run: Option<RunId>,
) -> Result<Taken, Refusal> {
    let mut cycles: Vec<_> = before.iter().map(|cycle| cycle.run).collect();
    // Dropped on a run that has none: what was unclaimed is claimed now, by the person's hand.
    if let (Some(run), [only]) = (run, before)
        && only.run.is_none()
        && view.run(run)?.is_some_and(|row| row.record.is_none())
    {
        let claim = Claim { record: only.record, cycle: only.cycle, run };
        crate::acts::claim(view, draft, claim)?;
        cycles = vec![Some(run)];
    }
    let record = before.first().map_or(RecordHash::from_bytes([0; 32]), |cycle| cycle.record);
    Ok(Taken { record, known_before: true, cycles })
}

/// The longest record kept before that these bytes begin with, and its cycles.
fn continued_by(
    view: &View<'_>,
    bytes: &[u8],
) -> Result<Option<(RecordHash, Vec<TakenCycle>)>, Refusal> {
    let mut best: Option<(usize, RecordHash)> = None;
    for shorter in view.records_shorter_than(bytes.len() as u64)? {
        let Some(kept) = view.drawer(shorter.kept.entry)? else {
            continue;
        };
        if bytes.starts_with(&kept) && best.is_none_or(|(length, _)| kept.len() > length) {
            best = Some((kept.len(), shorter.record));
        }
    }
    best.map(|(_, record)| Ok((record, view.taken(record)?))).transpose()
}

fn write_cycle(
    view: &View<'_>,
    draft: &mut Draft,
    basis: Basis,
    examined: &Examined,
    run: Option<&Run>,
) -> Result<(), Refusal> {
    if let (Some(run), Basis::Record { record, cycle }) = (run, basis) {
        draft.fact(Body::RecordClaimed { record, cycle, run: run.run });
    }
    crate::acts::write_verdict(view, draft, judge::judged(examined, basis, run))
}

/// Finds the run that a cycle belongs to; two cycles never get the same one.
struct Claimer<'a, 'v> {
    view: &'a View<'v>,
    arrived: Arrived<'a>,
    before: Vec<TakenCycle>,
    /// Cycles in the file that could belong to a run.
    runs: usize,
    claimed: Vec<RunId>,
}

impl Claimer<'_, '_> {
    fn run_for(&mut self, index: u32, examined: &Examined) -> Result<Option<Run>, Refusal> {
        if !examined.is_run() {
            return Ok(None);
        }
        let run = match self.inherited(index)? {
            Some(run) => Some(run),
            None => self.by_clock(examined)?,
        };
        self.claimed.extend(run.iter().map(|run| run.run));
        Ok(run)
    }

    /// The run that the same cycle of the shorter record belonged to.
    fn inherited(&self, index: u32) -> Result<Option<Run>, Refusal> {
        let run = self.before.iter().find(|cycle| cycle.cycle == index).and_then(|c| c.run);
        Ok(run.map(|run| self.view.run(run)).transpose()?.flatten())
    }

    fn by_clock(&self, examined: &Examined) -> Result<Option<Run>, Refusal> {
        let mut fits = match examined.start_clock() {
            Some(start) => candidates(self.view, start, self.arrived.machine)?,
            // Without a clock only the person's hand can say which run it is; and of two cycles
            // not even that says which of them is meant.
            None => self
                .arrived
                .run
                .filter(|_| self.runs == 1)
                .map(|run| self.view.run(run))
                .transpose()?
                .flatten()
                .into_iter()
                .filter(waits_for_record)
                .collect(),
        };
        fits.retain(|run| !self.claimed.contains(&run.run));
        if let Some(run) = self.arrived.run {
            fits.retain(|fit| fit.run == run);
        }
        // More than one run fits: a person has to say.
        Ok(if fits.len() == 1 { fits.pop() } else { None })
    }
}

/// Runs without a record that began near a record's clock, by each machine's own clock. In the
/// hour that autumn repeats, both meanings count.
pub fn candidates(
    view: &View<'_>,
    start: DateTime,
    machine: Option<MachineId>,
) -> Result<Vec<Run>, Refusal> {
    let zone = salon_zone(view)?;
    let mut machines = view.machines()?;
    match machine {
        Some(machine) => machines.retain(|row| row.machine == machine),
        // Which of two machines wrote it is not to be guessed.
        None => {
            machines.retain(|row| row.writes_files);
            machines.truncate(if machines.len() == 1 { 1 } else { 0 });
        }
    }
    let mut fits: Vec<Run> = Vec::new();
    for row in &machines {
        for run in near(view, row, start, &zone)? {
            if fits.iter().all(|fit| fit.run != run.run) {
                fits.push(run);
            }
        }
    }
    Ok(fits)
}

fn near(
    view: &View<'_>,
    machine: &Machine,
    start: DateTime,
    zone: &TimeZone,
) -> Result<Vec<Run>, Refusal> {
    let mut runs = Vec::new();
    for moment in clock::moments_of(start, zone) {
        let at = moment - Span::from_millis(machine.ahead_ms);
        runs.extend(view.runs_between(Some(machine.machine), at - NEAR, at + NEAR)?);
    }
    runs.retain(waits_for_record);
    Ok(runs)
}

/// A run that failed by a reading is not talked round by a record that nobody looked at.
fn waits_for_record(run: &Run) -> bool {
    run.record.is_none() && !run.undone && run.outcome != Some(Outcome::NotLethal)
}

/// The salon's zone, from its facts.
pub fn salon_zone(view: &View<'_>) -> Result<TimeZone, Refusal> {
    let salon = view.salon()?;
    clock::zone(&salon.zone).map_err(|_| Refusal::rule_with("refused-zone", "zone", salon.zone))
}
