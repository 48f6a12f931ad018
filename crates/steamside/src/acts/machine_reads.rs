//! Machine reads: a person answers what the records of a machine leave open. The answer is kept for
//! that machine, and what could not be told for want of it is judged again.

use super::Refusal;
use super::claim::{Claim, write_verdict};
use crate::intake::{judge, known};
use cycle::finding::Code;
use cycle::record::Known;
use logbook::book::Draft;
use logbook::fact::{Basis, Body, Judged, Reads};
use logbook::view::{Machine, TakenCycle, View};
use measure::bounds::ALTITUDE;
use measure::{MachineId, RecordHash};
use release::verdict::Outcome;

/// All that is said of a machine's records.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MachineReads {
    /// The machine.
    pub machine: MachineId,
    /// What is said.
    pub reads: Reads,
    /// The cycle that no run has claimed yet and that the question was about.
    pub unclaimed: Option<(RecordHash, u32)>,
}

/// Keeps what is said of a machine's records, and judges again what it bears on.
pub fn machine_reads(
    view: &View<'_>,
    draft: &mut Draft,
    said: MachineReads,
) -> Result<(), Refusal> {
    let before = view.machines()?;
    let mut after = before.clone();
    let row = after
        .iter_mut()
        .find(|row| row.machine == said.machine)
        .ok_or_else(|| Refusal::rule("refused-no-such-machine"))?;
    row.reads = said.reads;
    let Reads { altitude_m, temperature_unit, pressure_unit, pressure_reference, day_first } =
        said.reads;
    if altitude_m.is_some_and(|metres| ALTITUDE.check(metres as f64).is_err()) {
        return Err(Refusal::rule_with("refused-field-misread", "field", "altitude"));
    }
    draft.fact(Body::MachineReads {
        machine: said.machine,
        altitude_m,
        temperature_unit,
        pressure_unit,
        pressure_reference,
        day_first,
    });
    judge_all_again(view, draft, (&before, &after), said.machine)?;
    if let Some((record, number)) = said.unclaimed {
        let cycle = view.taken(record)?.into_iter().find(|taken| taken.cycle == number);
        let cycle = cycle.ok_or_else(|| Refusal::rule("refused-no-such-record"))?;
        if cycle.run.is_none() {
            let known = known::of_machine(&after, Some(said.machine));
            judge_again(view, draft, &cycle, &known)?;
        }
    }
    Ok(())
}

/// Judges again what the answer bears on: open questions of that machine, and where an earlier
/// answer is gone or another one now, every verdict since the first answer: it may rest on a
/// mistake. The altitude may bear on the other machines, too.
fn judge_all_again(
    view: &View<'_>,
    draft: &mut Draft,
    (before, after): (&[Machine], &[Machine]),
    said_of: MachineId,
) -> Result<(), Refusal> {
    let since = before.iter().filter_map(|row| row.reads_since).min();
    for machine in before.iter().map(|row| row.machine) {
        let was = known::of_machine(before, Some(machine));
        let now = known::of_machine(after, Some(machine));
        if machine != said_of && was == now {
            continue;
        }
        for cycle in view.taken_of_machine(machine)? {
            let on_a_mistake = takes_back(&was, &now) && cycle.judged > since;
            if on_a_mistake || asks(view, &cycle)? {
                judge_again(view, draft, &cycle, &now)?;
            }
        }
    }
    Ok(())
}

fn takes_back(was: &Known, now: &Known) -> bool {
    fn gone<T: PartialEq>(was: Option<T>, is: Option<T>) -> bool {
        was.is_some() && was != is
    }
    gone(was.altitude_m, now.altitude_m)
        || gone(was.temperature_unit, now.temperature_unit)
        || gone(was.pressure_unit, now.pressure_unit)
        || gone(was.pressure_reference, now.pressure_reference)
        || gone(was.day_first, now.day_first)
}

/// Could the record not tell because it was not clear how it reads?
pub fn is_open_question(judged: &Judged) -> bool {
    let open = |code| matches!(code, Code::UnitUnclear | Code::GaugeAsAbsolute | Code::SetUnclear);
    judged.outcome == Outcome::CannotTell && judged.reasons.iter().any(|reason| open(reason.code))
}

fn asks(view: &View<'_>, cycle: &TakenCycle) -> Result<bool, Refusal> {
    if cycle.outcome != Some(Outcome::CannotTell) {
        return Ok(false);
    }
    let verdict = cycle.judged.map(|seq| view.judged(seq)).transpose()?.flatten();
    Ok(verdict.is_some_and(|fact| is_open_question(&fact.judged)))
}

/// A new verdict, where it is another one than before. A record whose bytes were deleted keeps
/// the verdict that it has, and a run that failed is not talked round by an answer.
fn judge_again(
    view: &View<'_>,
    draft: &mut Draft,
    cycle: &TakenCycle,
    known: &Known,
) -> Result<(), Refusal> {
    let Some(bytes) = view.drawer(cycle.kept.entry)? else {
        return Ok(());
    };
    let judged = match cycle.run.map(|run| view.run(run)).transpose()?.flatten() {
        Some(run) if run.outcome == Some(Outcome::NotLethal) => None,
        Some(run) => {
            let claim = Claim { record: cycle.record, cycle: cycle.cycle, run: run.run };
            judge::cycle_for_run(&bytes, claim, &run, known)
        }
        None => {
            let basis = Basis::Record { record: cycle.record, cycle: cycle.cycle };
            let examined = judge::examine_file(&bytes, known);
            examined.get(cycle.cycle as usize).map(|cycle| judge::judged(cycle, basis, None))
        }
    };
    match judged {
        Some(judged) if Some(judged.outcome) != cycle.outcome => write_verdict(view, draft, judged),
        _ => Ok(()),
    }
}
