//! What a recall reaches in this book: the rule is `release`'s, the runs, pouches and visits are the
//! log's.

use load::SetState;
use logbook::book::BookError;
use logbook::view::{Pouch, PouchVisit, RunContents, SporeTest, View};
use measure::{Instant, MachineId, PouchId, RunId, Span, VisitId};
use release::recall::{self, Ask, PouchNow, PouchOfRun, Reach, RunOfMachine, Since};
use release::spores::{self, Next, Says, Test};
use release::verdict::Outcome;
use std::collections::BTreeMap;

/// A run that began this long before the first moment may still have been going at it.
const LONGEST_RUN: Span = Span::from_minutes(24 * 60);

/// What a recall reaches, with what is known of each.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Reached {
    /// The ids.
    pub reach: Reach,
    /// The pouches that it reaches.
    pub pouches: BTreeMap<PouchId, Pouch>,
    /// The visits that they were opened for.
    pub visits: BTreeMap<VisitId, PouchVisit>,
    /// Machine number and number of the runs that were looked through.
    pub runs: BTreeMap<RunId, (u32, u32)>,
}

/// What the recall reaches that is asked for: of one machine, from `since` (which is not before
/// `from`) to `to`, which belongs to it.
pub fn reached(
    view: &View<'_>,
    machine: MachineId,
    since: Since,
    (from, to): (Instant, Instant),
) -> Result<Reached, BookError> {
    // The end belongs to the span.
    let found = view.recall_input(machine, from - LONGEST_RUN, to + Span::from_millis(1))?;
    let mut reached = Reached::default();
    let mut of_machine = Vec::new();
    for RunContents { run, pouches, visits } in found {
        of_machine.push(RunOfMachine {
            id: run.run,
            machine: run.machine,
            started: run.started.0,
            ended: run.unloaded,
            pouches: pouches.iter().flat_map(|pouch| now_of(pouch, &visits)).collect(),
        });
        reached.runs.insert(run.run, (run.machine_number, run.number));
        reached.pouches.extend(pouches.into_iter().map(|pouch| (pouch.pouch, pouch)));
        reached.visits.extend(visits.into_iter().map(|visit| (visit.visit, visit)));
    }
    let ask = Ask { machine, since, out_of_use: Some(to) };
    reached.reach = recall::reach(&of_machine, &ask);
    Ok(reached)
}

/// Opened outranks every later state: what touched a client stays on the list, once for every
/// visit that it was said to be opened for.
fn now_of(pouch: &Pouch, visits: &[PouchVisit]) -> Vec<PouchOfRun> {
    let opened: Vec<_> = visits
        .iter()
        .filter(|visit| visit.pouch == pouch.pouch)
        .map(|visit| PouchOfRun { id: pouch.pouch, now: PouchNow::Opened(Some(visit.visit)) })
        .collect();
    if !opened.is_empty() {
        return opened;
    }
    let now = match pouch.state {
        SetState::Used | SetState::Retired => PouchNow::Gone,
        _ => PouchNow::NotOpened,
    };
    vec![PouchOfRun { id: pouch.pouch, now }]
}

/// A spore test in which spores grew, and where its machine stands on the way on.
#[derive(Debug, Clone, PartialEq)]
pub struct Failed {
    /// The test.
    pub test: SporeTest,
    /// All tests of its machine, the first placed first.
    pub all: Vec<SporeTest>,
    /// What comes next.
    pub next: Next,
    /// From where a recall reaches.
    pub since: Since,
}

/// The failed test and the way on from it; `None` where no spores grew in it.
pub fn failed(view: &View<'_>, test: &SporeTest) -> Result<Option<Failed>, BookError> {
    if test.says() != Says::Grew {
        return Ok(None);
    }
    let all = view.spore_tests_of(test.machine)?;
    let Some(at) = all.iter().position(|other| other.test == test.test) else {
        return Ok(None);
    };
    let rows = all.iter().map(|test| row(view, test)).collect::<Result<Vec<_>, _>>()?;
    let (next, since) = (spores::next(&rows, at), spores::since(&rows, at));
    Ok(Some(Failed { test: test.clone(), all, next, since }))
}

fn row(view: &View<'_>, test: &SporeTest) -> Result<Test, BookError> {
    let run = test.run.map(|run| view.run(run)).transpose()?.flatten();
    let good = run.filter(|run| run.outcome != Some(Outcome::NotLethal) && !run.undone);
    Ok(Test {
        placed: test.placed.happened,
        run: test.run,
        started: good.map(|run| run.started.0),
        answered: test.answers.first().map(|answer| answer.stamp.happened),
        says: test.says(),
    })
}

/// What a recall after a test of this machine would reach if it ended at `to`: from the run after
/// the last good test among `before`, which are of the machine and in the order of their placing.
pub fn since_last_good(
    view: &View<'_>,
    machine: MachineId,
    since: Since,
    to: Instant,
) -> Result<Reached, BookError> {
    let from = match since {
        Since::Moment(at) => at,
        Since::AfterGoodTest(run) | Since::Run(run) => {
            view.run(run)?.map_or(Instant::from_millis(0), |run| run.started.0)
        }
        Since::Beginning => Instant::from_millis(0),
    };
    reached(view, machine, since, (from, to))
}

/// From where a recall would reach if the next answer of this machine were a bad one.
pub fn if_it_failed(view: &View<'_>, all: &[SporeTest]) -> Result<Since, BookError> {
    let rows = all.iter().map(|test| row(view, test)).collect::<Result<Vec<_>, _>>()?;
    Ok(spores::since(&rows, rows.len()))
}
