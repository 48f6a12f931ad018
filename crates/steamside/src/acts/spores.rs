//! Spore tests: placed, posted, read; the way on after one in which spores grew.

use super::Refusal;
use super::machines::is_open;
use crate::chance;
use crate::recalling::{self, Failed};
use load::{Contents, SetState};
use logbook::book::{Draft, DrawerKind};
use logbook::fact::{Body, StopReason, Upkeep};
use logbook::view::{SporeTest, View};
use measure::{Instant, MachineId, RunId, Span, TestId};
use release::spores::{Next, Says};

/// Longest that an answer by post is waited for, days.
const MOST_DAYS: u32 = 60;

/// A test goes into a machine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlaceTest {
    /// The machine.
    pub machine: MachineId,
    /// The run that it goes through, where one is named.
    pub run: Option<RunId>,
    /// A control of the same lot is kept beside it.
    pub control: bool,
    /// Lot and use-by date, as on the box.
    pub lot: Option<String>,
}

/// Notes that a test was placed.
pub fn place_test(view: &View<'_>, draft: &mut Draft, placed: PlaceTest) -> Result<(), Refusal> {
    let PlaceTest { machine, run, control, lot } = placed;
    if view.machine(machine)?.is_none() {
        return Err(Refusal::rule("refused-no-such-machine"));
    }
    if let Some(run) = run {
        let found = view.run(run)?.filter(|found| found.machine == machine);
        if found.is_none() {
            return Err(Refusal::rule("refused-no-such-run"));
        }
    }
    let lot = match lot {
        Some(text) => Some(draft.put(DrawerKind::Note, text.as_bytes())?),
        None => None,
    };
    let test = chance::id()?;
    said(draft, Upkeep::SporePlaced { test, machine, run, control, lot });
    Ok(())
}

/// A run for the test alone, in a machine that is out of use because an earlier one failed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StartTest {
    /// The failed test that is repeated.
    pub failed: TestId,
    /// The machine's programme: the same cycle again.
    pub programme: Option<String>,
    /// A control of the same lot is kept beside it.
    pub control: bool,
    /// First moment of the salon's day and of the next one, for the run's number.
    pub day: (Instant, Instant),
}

/// Starts such a run. Nothing for a client is inside, so nothing is released from it.
pub fn start_test(view: &View<'_>, draft: &mut Draft, start: StartTest) -> Result<(), Refusal> {
    let machine = failed(view, start.failed)?.test.machine;
    let row = view.machine(machine)?.ok_or_else(|| Refusal::rule("refused-no-such-machine"))?;
    if row.running.is_some() {
        return Err(Refusal::rule_with("refused-machine-full", "machine", row.number));
    }
    let run = chance::id()?;
    draft.fact(Body::RunStarted {
        run,
        machine,
        number: view.next_run_number(machine, start.day)?,
        programme: start.programme,
        contents: Contents::Unknown,
        pouches: Vec::new(),
    });
    let (test, control) = (chance::id()?, start.control);
    said(draft, Upkeep::SporePlaced { test, machine, run: Some(run), control, lot: None });
    Ok(())
}

/// Sent to a laboratory; its answer is expected within so many days.
pub fn post_test(
    view: &View<'_>,
    draft: &mut Draft,
    test: TestId,
    (days, now): (u32, Instant),
) -> Result<(), Refusal> {
    known(view, test)?;
    if days == 0 || days > MOST_DAYS {
        return Err(Refusal::rule_with("refused-answer-days", "most", MOST_DAYS));
    }
    let answer_by = now + Span::from_minutes(i64::from(days) * 24 * 60);
    said(draft, Upkeep::SporePosted { test, answer_by });
    Ok(())
}

/// A test was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ReadTest {
    /// The test.
    pub test: TestId,
    /// Spores grew.
    pub grew: bool,
    /// The control grew; `None`: there was none.
    pub control_grew: Option<bool>,
    /// The moment.
    pub now: Instant,
}

/// Keeps the reading. Where spores grew, in the same act its machine goes out of use and everything
/// that is reached and can still be caught is set aside.
pub fn read_test(view: &View<'_>, draft: &mut Draft, read: ReadTest) -> Result<(), Refusal> {
    let test = known(view, read.test)?;
    let ReadTest { grew, control_grew, .. } = read;
    said(draft, Upkeep::SporeRead { test: read.test, grew, control_grew });
    if !grew || test.says() == Says::Grew {
        return Ok(());
    }
    let machine =
        view.machine(test.machine)?.ok_or_else(|| Refusal::rule("refused-no-such-machine"))?;
    if machine.out_since.is_none() {
        draft.fact(Body::MachineOut { machine: machine.machine });
    }
    let all = view.spore_tests_of(test.machine)?;
    let before: Vec<SporeTest> =
        all.into_iter().take_while(|other| other.test != test.test).collect();
    let since = recalling::if_it_failed(view, &before)?;
    let reached = recalling::since_last_good(view, test.machine, since, read.now)?;
    let caught = |pouch: &measure::PouchId| {
        reached.pouches.get(pouch).is_some_and(|row| row.state != SetState::SetAside)
    };
    let pouches: Vec<_> = reached.reach.on_shelf.iter().copied().filter(caught).collect();
    if !pouches.is_empty() {
        draft.fact(Body::SetAside { pouches, run: None, why: StopReason::Recall });
    }
    Ok(())
}

/// Lost, broken or mixed up: it says nothing.
pub fn lose_test(view: &View<'_>, draft: &mut Draft, test: TestId) -> Result<(), Refusal> {
    known(view, test)?;
    said(draft, Upkeep::SporeLost { test });
    Ok(())
}

/// After a good repeat, and a look at all other results: the machine is back, and what only the
/// freeze had stopped may be used again. The caller has made sure that a person signs.
pub fn end_freeze(view: &View<'_>, draft: &mut Draft, test: TestId) -> Result<(), Refusal> {
    let failed = failed(view, test)?;
    if failed.next != Next::MayGoBack {
        return Err(Refusal::rule("refused-repeat-not-good"));
    }
    let machine = failed.test.machine;
    let row = view.machine(machine)?.ok_or_else(|| Refusal::rule("refused-no-such-machine"))?;
    let pouches: Vec<_> = frozen(view, machine)?.iter().map(|pouch| pouch.pouch).collect();
    if row.out_since.is_some() {
        draft.fact(Body::MachineBack { machine });
    }
    said(draft, Upkeep::Unfrozen { test, pouches });
    // What grew in between is over as well.
    for other in failed.all.iter().filter(|other| other.test != test && is_open(other)) {
        said(draft, Upkeep::Unfrozen { test: other.test, pouches: Vec::new() });
    }
    Ok(())
}

/// The pouches of a machine that only a failed test has stopped.
pub fn frozen(
    view: &View<'_>,
    machine: MachineId,
) -> Result<Vec<logbook::view::Pouch>, logbook::book::BookError> {
    let mut frozen = Vec::new();
    for pouch in view.pouches_in(&[SetState::SetAside])? {
        let Some(run) = pouch.run else { continue };
        let of_machine = view.run(run)?.is_some_and(|run| run.machine == machine);
        if of_machine && pouch.stopped == Some(StopReason::Recall) {
            frozen.push(pouch);
        }
    }
    Ok(frozen)
}

fn said(draft: &mut Draft, upkeep: Upkeep) {
    draft.fact(Body::Upkeep(Box::new(upkeep)));
}

fn known(view: &View<'_>, test: TestId) -> Result<SporeTest, Refusal> {
    view.spore_test(test)?.ok_or_else(|| Refusal::rule("refused-no-such-test"))
}

fn failed(view: &View<'_>, test: TestId) -> Result<Failed, Refusal> {
    let test = known(view, test)?;
    recalling::failed(view, &test)?.ok_or_else(|| Refusal::rule("refused-test-not-failed"))
}
