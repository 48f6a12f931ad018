//! Any fact about the counter, over few words, so that facts meet.

use crate::common::{at, id, kind};
use logbook::fact::{Counter, GapWhy, StationKind, Units};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

fn stations() -> impl Strategy<Value = Counter> {
    let what =
        select(vec![StationKind::Tablet, StationKind::Phone, StationKind::Wall, StationKind::Desk]);
    let station = || 1_u32..3;
    prop_oneof![
        (station(), what, any::<[u8; 32]>()).prop_map(|(station, what, key_hash)| {
            Counter::StationPaired { station: id(station), what, key_hash, name: None }
        }),
        station().prop_map(|station| Counter::StationParted { station: id(station) }),
        (1_u64..40).prop_map(|seq| Counter::Seen { seq }),
    ]
}

fn hands() -> impl Strategy<Value = Counter> {
    let pouches = || vec((1_u32..5).prop_map(id), 0..2);
    prop_oneof![
        (option::of(1_u32..3), 0_u32..9).prop_map(|(to, drying)| Counter::HandedOver {
            to: to.map(id),
            drying,
            note: None
        }),
        (1_u32..24).prop_map(|act| Counter::TakenOver { given: id(act) }),
        (1_u32..4, pouches(), vec((5_u32..9).prop_map(id), 0..2))
            .prop_map(|(run, out, put)| Counter::RunCorrected { run: id(run), out, put }),
        (1_u32..4, 0_u32..20).prop_map(|(run, count)| Counter::CountedBack { run: id(run), count }),
        (1_u32..4, option::of(1_u32..9)).prop_map(|(visit, chair)| Counter::OpenedNoCode {
            kind: kind("manicure"),
            visit: id(visit),
            chair
        }),
        option::of(1_u32..9).prop_map(|chair| Counter::ExposureNoted { chair, note: None }),
    ]
}

fn times() -> impl Strategy<Value = Counter> {
    let why = select(vec![
        GapWhy::Closed,
        GapWhy::Holiday,
        GapWhy::Power,
        GapWhy::NothingToDo,
        GapWhy::OnPaper,
        GapWhy::Forgotten,
    ]);
    let span = || (0_i64..900, 0_i64..900).prop_map(|(from, long)| (at(from), at(from + long)));
    prop_oneof![
        (span(), why).prop_map(|((from, to), why)| Counter::GapExplained { from, to, why }),
        span().prop_map(|(from, to)| Counter::BoxWasOff { from, to }),
        (span(), 1_u32..=30).prop_map(|((real, shown), times)| Counter::PracticeClock {
            real,
            shown,
            times
        }),
        option::of(1_u32..3).prop_map(|learner| Counter::CardDealt {
            card: "wet pouch".to_owned(),
            learner: learner.map(id)
        }),
        (1_u32..24, 0_u32..3, 3_u32..6).prop_map(|(dealt, right, asked)| Counter::CardEnded {
            dealt: id(dealt),
            right,
            asked
        }),
    ]
}

fn people() -> impl Strategy<Value = Counter> {
    let language = || select(vec!["en", "vi", "es"]).prop_map(str::to_owned);
    prop_oneof![
        (1_u32..3, language())
            .prop_map(|(person, language)| Counter::PersonSpeaks { person: id(person), language }),
        (1_u32..3, any::<[bool; 3]>()).prop_map(|(person, [learns, in_charge, teaches])| {
            Counter::PersonIs { person: id(person), learns, in_charge, teaches }
        }),
        (language(), select(vec![Units::Metric, Units::Us]))
            .prop_map(|(language, units)| Counter::RecordShows { language, units }),
    ]
}

/// Any fact about the counter.
pub fn counter() -> impl Strategy<Value = Counter> {
    prop_oneof![stations(), hands(), times(), people()]
}
