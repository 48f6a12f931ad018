//! Machines: one is here, its clock runs ahead, it is out of use or back.

use super::Refusal;
use crate::chance;
use logbook::book::Draft;
use logbook::fact::{AirRemoval, Body};
use logbook::view::{SporeTest, View};
use measure::MachineId;
use release::spores::Says;

/// A machine as somebody describes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AddMachine {
    /// Its number on the door.
    pub number: u32,
    /// How it gets the air out.
    pub air_removal: AirRemoval,
    /// It writes a file for each cycle.
    pub writes_files: bool,
    /// Most pouches that its tray was tested with.
    pub most_pouches: Option<u32>,
}

/// Adds a machine under a number that is free.
pub fn add_machine(view: &View<'_>, draft: &mut Draft, new: AddMachine) -> Result<(), Refusal> {
    if new.number == 0 || new.number > 99 {
        return Err(Refusal::rule("refused-machine-number"));
    }
    if view.machines()?.iter().any(|machine| machine.number == new.number) {
        return Err(Refusal::rule_with("refused-number-taken", "machine", new.number));
    }
    draft.fact(Body::MachineAdded {
        machine: chance::id()?,
        number: new.number,
        air_removal: new.air_removal,
        writes_files: new.writes_files,
        most_pouches: new.most_pouches,
    });
    Ok(())
}

/// How far a machine's own clock runs ahead.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SetClock {
    /// The machine.
    pub machine: MachineId,
    /// Minutes ahead of true time; negative: behind.
    pub ahead_min: i64,
}

/// Writes the clock offset of a machine.
pub fn set_machine_clock(
    view: &View<'_>,
    draft: &mut Draft,
    clock: SetClock,
) -> Result<(), Refusal> {
    known(view, clock.machine)?;
    const YEAR: i64 = 60 * 24 * 366;
    if !(-YEAR..=YEAR).contains(&clock.ahead_min) {
        return Err(Refusal::rule("refused-clock-offset"));
    }
    draft
        .fact(Body::MachineClockSet { machine: clock.machine, ahead_ms: clock.ahead_min * 60_000 });
    Ok(())
}

/// Takes a machine out of use: open to everyone.
pub fn machine_out(view: &View<'_>, draft: &mut Draft, machine: MachineId) -> Result<(), Refusal> {
    known(view, machine)?;
    draft.fact(Body::MachineOut { machine });
    Ok(())
}

/// Spores grew in it, and nothing has ended that yet.
pub fn is_open(test: &SporeTest) -> bool {
    test.says() == Says::Grew && test.unfrozen.is_none()
}

/// Puts a machine back into use; the caller has made sure that a person signs.
pub fn machine_back(view: &View<'_>, draft: &mut Draft, machine: MachineId) -> Result<(), Refusal> {
    known(view, machine)?;
    // A failed spore test has its own way back: a good repeat.
    if view.spore_tests_of(machine)?.iter().any(is_open) {
        return Err(Refusal::rule("refused-test-open"));
    }
    draft.fact(Body::MachineBack { machine });
    Ok(())
}

fn known(view: &View<'_>, machine: MachineId) -> Result<(), Refusal> {
    view.machine(machine)?.map(|_| ()).ok_or_else(|| Refusal::rule("refused-no-such-machine"))
}
