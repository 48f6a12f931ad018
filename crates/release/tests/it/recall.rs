//! What a recall reaches, against a brute search that asks of every pouch by itself.

use measure::{Instant, MachineId, PouchId, RunId, VisitId};
use proptest::prelude::*;
use release::recall::{Ask, PouchNow, PouchOfRun, RunOfMachine, Since, reach};

fn machine(n: u8) -> MachineId {
    MachineId::from_bytes([n; 16])
}

fn id16(n: u32) -> [u8; 16] {
    let mut bytes = [0; 16];
    bytes[..4].copy_from_slice(&n.to_be_bytes());
    bytes
}

fn at(minutes: i64) -> Instant {
    Instant::from_millis(minutes * 60_000)
}

/// Twelve chairs, six clients a chair and day, one pouch a client, eight runs of nine pouches a
/// day, six days: a weekly test read the next day reaches 432 visits (12 × 6 × 6, by hand).
#[test]
fn a_week_of_a_twelve_chair_salon() {
    let mut runs = Vec::new();
    let mut next = 0;
    for day in 0..7_i64 {
        for run in 0..8_i64 {
            let started = at(day * 1_440 + 480 + run * 60);
            let pouches = (0..9)
                .map(|_| {
                    next += 1;
                    let visit = VisitId::from_bytes(id16(next));
                    PouchOfRun {
                        id: PouchId::from_bytes(id16(next)),
                        now: PouchNow::Opened(Some(visit)),
                    }
                })
                .collect();
            let id = RunId::from_bytes(id16((day * 8 + run) as u32));
            runs.push(RunOfMachine { id, machine: machine(1), started, ended: None, pouches });
        }
    }
    // The last run of the first day had the good test; out of use on the last evening.
    let ask = Ask {
        machine: machine(1),
        since: Since::AfterGoodTest(RunId::from_bytes(id16(7))),
        out_of_use: Some(at(7 * 1_440)),
    };
    let reached = reach(&runs, &ask);
    assert_eq!(reached.visits().len(), 432);
    assert_eq!(reached.runs.len(), 48);
    assert!(!reached.start_unknown);
    // Posted tests: the machine ran on until the answer came. Everything until then is reached.
    let early = Ask { out_of_use: Some(at(3 * 1_440)), ..ask };
    assert_eq!(reach(&runs, &early).runs.len(), 16);
}

#[test]
fn what_is_not_known_reaches_further() {
    let run = |n: u32, minutes| RunOfMachine {
        id: RunId::from_bytes(id16(n)),
        machine: machine(1),
        started: at(minutes),
        ended: None,
        pouches: Vec::new(),
    };
    let runs = [run(3, 30), run(1, 10), run(2, 10)];
    let ask = |since| Ask { machine: machine(1), since, out_of_use: None };
    // Run 2 began in the very minute of the good one: it is reached.
    let after = reach(&runs, &ask(Since::AfterGoodTest(RunId::from_bytes(id16(1)))));
    assert_eq!(after.runs, [RunId::from_bytes(id16(2)), RunId::from_bytes(id16(3))]);
    let missing = reach(&runs, &ask(Since::AfterGoodTest(RunId::from_bytes(id16(9)))));
    assert!(missing.start_unknown);
    assert_eq!(missing.runs.len(), 3);
    // A run whose end nobody knows may have been going on at that moment.
    assert_eq!(reach(&runs, &ask(Since::Moment(at(20)))).runs.len(), 3);
    assert_eq!(reach(&runs, &ask(Since::Beginning)).runs.len(), 3);
}

fn some_runs() -> impl Strategy<Value = Vec<RunOfMachine>> {
    let pouch = (any::<u32>(), 0..4_u8, any::<u32>()).prop_map(|(id, now, visit)| PouchOfRun {
        id: PouchId::from_bytes(id16(id)),
        now: match now {
            0 => PouchNow::NotOpened,
            1 => PouchNow::Opened(Some(VisitId::from_bytes(id16(visit % 9)))),
            2 => PouchNow::Opened(None),
            _ => PouchNow::Gone,
        },
    });
    let run = (0..12_u32, 0..2_u8, 0..40_i64, 0..3_i64, proptest::collection::vec(pouch, 0..4));
    proptest::collection::vec(run, 0..25).prop_map(|runs| {
        runs.into_iter()
            .enumerate()
            .map(|(n, (id, kind, started, lasts, pouches))| RunOfMachine {
                id: RunId::from_bytes(id16(id * 100 + n as u32)),
                machine: machine(kind),
                started: at(started),
                ended: (lasts > 0).then(|| at(started + lasts)),
                pouches,
            })
            .collect()
    })
}

fn some_ask() -> impl Strategy<Value = (u8, u8, usize, i64, Option<i64>)> {
    (0..2_u8, 0..4_u8, 0..25_usize, -5..45_i64, proptest::option::of(-5..45_i64))
}

proptest! {
    /// Zero missed, and nothing before the good test or of another machine.
    #[test]
    fn no_pouch_is_missed(runs in some_runs(), (kind, since, place, moment, out) in some_ask()) {
        let chosen = runs.get(place).map_or(RunId::from_bytes([9; 16]), |run| run.id);
        let since = match since {
            0 => Since::AfterGoodTest(chosen),
            1 => Since::Run(chosen),
            2 => Since::Moment(at(moment)),
            _ => Since::Beginning,
        };
        let ask = Ask { machine: machine(kind), since, out_of_use: out.map(at) };
        let reached = reach(&runs, &ask);
        let caught: Vec<PouchId> = reached
            .on_shelf
            .iter()
            .chain(reached.opened.iter().map(|(pouch, _)| pouch))
            .chain(&reached.opened_unlinked)
            .chain(&reached.gone)
            .copied()
            .collect();
        let mut expected = 0;
        for run in &runs {
            let good = runs.iter().find(|other| other.id == chosen && other.machine == machine(kind));
            let late_enough = match since {
                Since::AfterGoodTest(_) => good.is_none_or(|good| run.started >= good.started && run.id != good.id),
                Since::Run(_) => good.is_none_or(|good| run.started >= good.started),
                Since::Moment(moment) => run.ended.is_none_or(|end| end >= moment) || run.started >= moment,
                Since::Beginning => true,
            };
            let inside = run.machine == machine(kind) && late_enough && out.is_none_or(|out| run.started <= at(out));
            prop_assert_eq!(reached.runs.contains(&run.id), inside);
            if inside {
                expected += run.pouches.len();
                for pouch in &run.pouches {
                    prop_assert!(caught.contains(&pouch.id));
                }
            }
        }
        prop_assert_eq!(caught.len(), expected);
    }
}
