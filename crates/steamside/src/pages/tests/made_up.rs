//! An invented salon on an invented Saturday, as the pages see it. Nothing of it is measured
//! except the trace, which is one of the made-up records with known truth.

use crate::clock;
use crate::drifting::Change;
use crate::pages::{run, telling};
use crate::web::Ctx;
use crate::words::Language;
use cycle::drift::{Alarm, Figure, Part};
use cycle::finding::Code;
use cycle::record::{self, Samples};
use load::{Contents, SetState, ShelfCode};
use logbook::fact::{
    AirRemoval, Basis, Body, BookKind, DrawerRef, DryingRan, Fact, Judged, KeyFigures, Known,
    PackedPouch, Reads, Reason, Stamp, StopReason, Units, Way,
};
use logbook::view::{JudgedRun, KindCount, Machine, Person, Pouch, Run, TakenCycle};
use measure::{DrawerId, Id, Instant, RecordHash, Span};
use release::verdict::Outcome;

const RECORD: &[u8] = include_bytes!("../../../../cycle/tests/records/p01.csv");

pub fn id<T>(number: u8) -> Id<T> {
    // Mixed, so that signs drawn from ids differ as random ones do.
    let mix = |at: u32| (u32::from(number) * 2_654_435 + at * 40_503).rotate_left(at) as u8;
    let mut bytes = [0; 16];
    for (at, byte) in bytes.iter_mut().enumerate() {
        *byte = mix(at as u32);
    }
    bytes[15] = number;
    Id::from_bytes(bytes)
}

/// 10:42 on Saturday, 28 November 2026, in Chicago.
pub fn now() -> Instant {
    Instant::from_millis(1_795_884_120_000)
}

pub fn ago(minutes: i64) -> Instant {
    now() - Span::from_minutes(minutes)
}

pub fn ctx(language: Language) -> Ctx {
    Ctx {
        language,
        record: (language, Units::Metric),
        now: now(),
        pace: crate::pace::Pace::TRUE,
        zone: clock::zone("America/Chicago").unwrap(),
        book: BookKind::Demo,
        station: id(1),
        sign: Some(id(12)),
        did: None,
        here: "/here".to_owned(),
        head: 300,
        running: Vec::new(),
        plans: std::sync::Arc::default(),
        lived: std::sync::Arc::default(),
    }
}

pub fn people() -> Vec<Person> {
    [(11, "HL fish"), (12, "TN star"), (13, "MR leaf")]
        .map(|(number, sign)| Person {
            person: id(number),
            sign: Some(sign.to_owned()),
            left: None,
        })
        .to_vec()
}

pub fn machine_row(number: u8) -> Machine {
    Machine {
        machine: id(20 + number),
        number: u32::from(number),
        air_removal: AirRemoval::Vacuum,
        writes_files: number == 1,
        most_pouches: Some(12),
        ahead_ms: 120_000,
        reads: Reads { altitude_m: Some(180), ..Reads::default() },
        reads_since: Some(3),
        out_since: None,
        running: None,
    }
}

pub fn kind(word: &str, used: u32, washed: u32) -> KindCount {
    KindCount { kind: word.parse().unwrap(), owned: Some(24), used, washed }
}

pub fn kinds() -> Vec<KindCount> {
    vec![kind("bits", 0, 0), kind("manicure", 6, 4), kind("pedicure", 2, 0)]
}

pub fn pouch(number: u8, state: SetState) -> Pouch {
    let released = matches!(state, SetState::Ready | SetState::UseNow | SetState::Opened)
        .then(|| (ago(60 * 24 * i64::from(number % 4)), Some(id(12))));
    Pouch {
        pouch: id(100 + number),
        code: ShelfCode::from_number(u32::from(number) * 997),
        kind: if number.is_multiple_of(3) { "pedicure" } else { "manicure" }.parse().unwrap(),
        pouched: state != SetState::UseNow,
        hollow: false,
        state,
        packed: ago(200),
        run: Some(id(41)),
        released,
        use_until: (state == SetState::UseNow).then(|| now() + Span::from_minutes(40)),
        opened: (state == SetState::Opened).then(|| {
            (ago(15 * i64::from(number)), id(70 + number), Some(u32::from(number % 12) + 1))
        }),
        stopped: (state == SetState::SetAside).then_some(StopReason::Mark),
        ended: None,
        contradicted: false,
    }
}

pub fn pouches(count: u8, state: SetState) -> Vec<Pouch> {
    (1..=count).map(|number| pouch(number, state)).collect()
}

pub fn run_row(number: u8) -> Run {
    Run {
        run: id(40 + number),
        machine: id(21),
        machine_number: 1,
        number: u32::from(number),
        programme: Some("wrapped 134".to_owned()),
        contents: Contents::Pouched,
        started: (ago(50), Some(id(11))),
        unloaded: Some(ago(4)),
        pouches: 11,
        record: Some((RecordHash::from_bytes([3; 32]), 0)),
        judged: Some(9),
        outcome: Some(Outcome::Lethal),
        looked: None,
        released: None,
        stopped: None,
        undone: false,
    }
}

pub fn running() -> Run {
    Run {
        unloaded: None,
        record: None,
        judged: None,
        outcome: None,
        started: (ago(22), Some(id(12))),
        ..run_row(4)
    }
}

pub fn expected() -> Option<day::Expected> {
    let lengths: Vec<Span> = (0..30).map(|n| Span::from_minutes(55 + n % 6)).collect();
    day::expected_end(ago(22), &lengths)
}

pub fn samples() -> Samples {
    let cycles = record::read(RECORD, &record::Known::default()).unwrap();
    cycles.into_iter().next().unwrap().samples
}

pub fn judged(outcome: Outcome) -> Judged {
    let reason = |code, at: (i64, i64), lines| Reason {
        code,
        at_ms: Some((at.0 * 1_000, at.1 * 1_000)),
        lines: Some(lines),
    };
    let (reasons, held_ms) = match outcome {
        Outcome::Lethal => (
            vec![
                reason(Code::HoldMet, (373, 637), (375, 639)),
                reason(Code::DryingShort, (700, 1_100), (702, 1_102)),
            ],
            264_000,
        ),
        Outcome::NotLethal => (
            vec![
                reason(Code::HoldShort, (373, 511), (375, 513)),
                reason(Code::Dip, (511, 514), (513, 516)),
            ],
            138_000,
        ),
        _ => (vec![Reason { code: Code::SetUnclear, at_ms: None, lines: None }], 264_000),
    };
    Judged {
        run: Some(id(41)),
        basis: Basis::Record { record: RecordHash::from_bytes([3; 32]), cycle: 0 },
        judge: "1".to_owned(),
        limits: vec![("hold_134".to_owned(), 180_000), ("band".to_owned(), 3_000)],
        contents: Contents::Pouched,
        outcome,
        proven_for: if outcome == Outcome::Lethal {
            vec![Contents::Unwrapped, Contents::Pouched]
        } else {
            Vec::new()
        },
        conforming: Some(outcome == Outcome::Lethal),
        drying: DryingRan::Short,
        reasons,
        figures: KeyFigures {
            set_mc: Some(134_000),
            needed_ms: Some(180_000),
            held_ms: Some(held_ms),
            lowest_mc: Some(134_020),
            highest_mc: Some(135_610),
            deviation_mk: Some(-120),
            f0_low_mmin: Some(121_900),
            drying_ms: Some(400_000),
            total_ms: Some(1_400_000),
            ..KeyFigures::default()
        },
        start_clock: Some("2026-11-28T09:54:10".to_owned()),
    }
}

pub fn seen_run(outcome: Option<Outcome>) -> run::Seen {
    run::Seen {
        run: Run { outcome, ..run_row(3) },
        machine: Some(machine_row(1)),
        usual: None,
        judged: outcome.map(judged).into_iter().collect(),
        samples: outcome.map(|_| samples()),
        pouches: pouches(11, SetState::ToCheck),
        people: people(),
        starter: Some("HL fish".to_owned()),
        outage: None,
        hot: None,
        count: false,
    }
}

/// A heater that began to fade fifty runs ago.
pub fn fading_heater() -> Change {
    let run = |number: u8, ago_min| JudgedRun {
        run: id(40 + number),
        number: u32::from(number),
        started: ago(ago_min),
        first_of_day: false,
        figures: KeyFigures::default(),
    };
    let alarm = Alarm {
        figure: Figure::HeatUp,
        part: Part::Heater,
        alarm_at_cycle: 231,
        since_cycle: 196,
        shift: 6.4,
        level: 35.0,
        evidence: 21.0,
        needed: 14.0,
        part_share: 0.9,
        false_alarms_per_1000_runs: 0.5,
    };
    Change { alarm, since: run(2, 20_000), proven: run(3, 60) }
}

pub fn taken() -> TakenCycle {
    TakenCycle {
        record: RecordHash::from_bytes([4; 32]),
        cycle: 0,
        taken: ago(9),
        way: Way::Folder,
        kept: DrawerRef { entry: DrawerId::from_bytes([9; 16]), commitment: [0; 32] },
        start_clock: Some("2026-11-28T09:54:10".to_owned()),
        run: None,
        judged: None,
        outcome: Some(Outcome::Lethal),
        replaced_by: None,
    }
}

pub fn fact(seq: u64, written: i64, late: i64, body: Body) -> Fact {
    let stamp = Stamp {
        act: id(seq as u8),
        happened: ago(written + late),
        written: ago(written),
        station: id(1),
        sign: Some(id(11)),
        known: Known::Tapped,
    };
    Fact { seq, stamp, body }
}

pub fn facts() -> Vec<Fact> {
    let manicure = || "manicure".parse().unwrap();
    let pouches: Vec<_> = (1..=11).map(|number| id(100 + number)).collect();
    vec![
        fact(1, 300, 0, Body::Washed { kind: manicure(), count: 12 }),
        fact(2, 280, 0, Body::Packed { pouches: packed() }),
        fact(
            3,
            240,
            90,
            Body::RunStarted {
                run: id(41),
                machine: id(21),
                number: 3,
                programme: None,
                contents: Contents::Pouched,
                pouches: pouches.clone(),
            },
        ),
        fact(4, 190, 0, Body::Judged(Box::new(judged(Outcome::Lethal)))),
        fact(5, 180, 0, Body::Released { run: id(41), pouches: pouches.clone(), use_until: None }),
        fact(6, 60, 0, Body::Opened { pouch: pouches[0], visit: id(90), chair: Some(4) }),
        fact(
            7,
            12,
            0,
            Body::SetAside { pouches: pouches[1..3].to_vec(), run: None, why: StopReason::Torn },
        ),
    ]
}

pub fn packed() -> Vec<PackedPouch> {
    pouches(6, SetState::Bagged)
        .into_iter()
        .map(|pouch| PackedPouch {
            pouch: pouch.pouch,
            code: pouch.code,
            kind: pouch.kind,
            pouched: true,
            hollow: false,
        })
        .collect()
}

pub fn names() -> telling::Names {
    telling::Names {
        signs: people().into_iter().filter_map(|p| Some((p.person, p.sign?))).collect(),
        machines: [(id(21), 1)].into(),
        runs: [(id(41), (1, 3))].into(),
        codes: pouches(3, SetState::Ready).into_iter().map(|p| (p.pouch, p.code)).collect(),
        services: [].into(),
        things: super::upkeep_screens::things()
            .into_iter()
            .map(|row| (row.thing, (row.what, row.number)))
            .collect(),
    }
}
