//! Any fact at all, over few ids, so that facts meet and contradict each other.

use crate::common::{id, kind};
use load::{Contents, ShelfCode};
use logbook::fact::{
    AirRemoval, Basis, Body, BookKind, DrawerRef, DryingRan, Judged, KeyFigures, LiftReason,
    PackedPouch, PressureUnit, Reason, Reference, StopReason, TemperatureUnit, Way,
};
use measure::{Id, Instant, RecordHash};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use release::verdict::Outcome;

/// One of a few ids; the same few for every kind of thing.
fn any_id<T: 'static>() -> impl Strategy<Value = Id<T>> {
    (1_u32..5).prop_map(id)
}

fn record() -> impl Strategy<Value = RecordHash> {
    (1_u8..4).prop_map(|byte| RecordHash::from_bytes([byte; 32]))
}

fn drawer() -> impl Strategy<Value = DrawerRef> {
    (any_id(), any::<[u8; 32]>()).prop_map(|(entry, commitment)| DrawerRef { entry, commitment })
}

fn pouch_list<T: 'static>() -> impl Strategy<Value = Vec<Id<T>>> {
    vec(any_id(), 0..4)
}

fn kinds() -> impl Strategy<Value = load::SetKind> {
    select(vec!["manicure", "pédicure 2"]).prop_map(kind)
}

fn count() -> impl Strategy<Value = u32> {
    prop_oneof![4 => 0_u32..6, 1 => any::<u32>()]
}

fn contents() -> impl Strategy<Value = Contents> {
    select(Contents::ALL.to_vec())
}

const STOPS: [StopReason; 11] = [
    StopReason::Numbers,
    StopReason::CannotTell,
    StopReason::Mark,
    StopReason::Wet,
    StopReason::Torn,
    StopReason::Dropped,
    StopReason::Interrupted,
    StopReason::ReleaseUndone,
    StopReason::Recall,
    StopReason::JudgedWorse,
    StopReason::NotSure,
];

fn salon() -> impl Strategy<Value = Body> {
    let zone = select(vec!["America/Chicago", "Asia/Ho_Chi_Minh"]).prop_map(str::to_owned);
    let book = select(vec![BookKind::Salon, BookKind::Demo, BookKind::Practice]);
    prop_oneof![
        (any_id(), zone.clone(), book).prop_map(|(salon, zone, book)| Body::SalonOpened {
            salon,
            zone,
            book
        }),
        zone.prop_map(|zone| Body::ZoneSet { zone }),
        (any_id(), drawer()).prop_map(|(person, sign)| Body::PersonJoined { person, sign }),
        any_id().prop_map(|person| Body::PersonLeft { person }),
    ]
}

fn machines() -> impl Strategy<Value = Body> {
    let air = select(vec![AirRemoval::Vacuum, AirRemoval::Gravity, AirRemoval::NotKnown]);
    prop_oneof![
        (any_id(), count(), air, any::<bool>(), option::of(count())).prop_map(
            |(machine, number, air_removal, writes_files, most_pouches)| Body::MachineAdded {
                machine,
                number,
                air_removal,
                writes_files,
                most_pouches,
            }
        ),
        (any_id(), any::<i64>())
            .prop_map(|(machine, ahead_ms)| Body::MachineClockSet { machine, ahead_ms }),
        reads(),
        any_id().prop_map(|machine| Body::MachineOut { machine }),
        any_id().prop_map(|machine| Body::MachineBack { machine }),
    ]
}

fn reads() -> impl Strategy<Value = Body> {
    use PressureUnit as P;
    let pressures = [P::Kpa, P::Bar, P::Mbar, P::Pa, P::Psi, P::Mpa, P::KgfCm2, P::InHg, P::MmHg];
    (
        any_id(),
        option::of(-430_i64..=5_500),
        option::of(select(TemperatureUnit::ALL.to_vec())),
        option::of(select(pressures.to_vec())),
        option::of(select(vec![Reference::Absolute, Reference::Gauge])),
        option::of(any::<bool>()),
    )
        .prop_map(
            |(
                machine,
                altitude_m,
                temperature_unit,
                pressure_unit,
                pressure_reference,
                day_first,
            )| {
                Body::MachineReads {
                    machine,
                    altitude_m,
                    temperature_unit,
                    pressure_unit,
                    pressure_reference,
                    day_first,
                }
            },
        )
}

fn packed() -> impl Strategy<Value = PackedPouch> {
    (any_id(), 0..8_u32, kinds(), any::<bool>(), any::<bool>()).prop_map(
        |(pouch, code, kind, pouched, hollow)| PackedPouch {
            pouch,
            code: ShelfCode::from_number(code),
            kind,
            pouched,
            hollow,
        },
    )
}

fn sets() -> impl Strategy<Value = Body> {
    prop_oneof![
        (kinds(), count()).prop_map(|(kind, count)| Body::SetsOwned { kind, count }),
        (kinds(), count(), count()).prop_map(|(kind, used, washed)| Body::Counted {
            kind,
            used,
            washed
        }),
        (kinds(), count()).prop_map(|(kind, count)| Body::Washed { kind, count }),
        vec(packed(), 0..4).prop_map(|pouches| Body::Packed { pouches }),
        (any_id(), any_id(), option::of(count())).prop_map(|(pouch, visit, chair)| Body::Opened {
            pouch,
            visit,
            chair
        }),
        pouch_list().prop_map(|pouches| Body::TakenApart { pouches }),
    ]
}

fn runs() -> impl Strategy<Value = Body> {
    let programme = option::of(Just("134 pouched".to_owned()));
    prop_oneof![
        (any_id(), any_id(), count(), programme, contents(), pouch_list()).prop_map(
            |(run, machine, number, programme, contents, pouches)| {
                Body::RunStarted { run, machine, number, programme, contents, pouches }
            }
        ),
        any_id().prop_map(|run| Body::RunUnloaded { run }),
        (
            any_id(),
            (any::<bool>(), option::of(any::<bool>()), any::<bool>()),
            (pouch_list(), pouch_list(), pouch_list(), pouch_list()),
        )
            .prop_map(|(run, looked, (marks_not_turned, wet, torn, dropped))| {
                Body::Looked {
                    run,
                    marks_looked: looked.0,
                    inner_mark: looked.1,
                    dry_looked: looked.2,
                    marks_not_turned,
                    wet,
                    torn,
                    dropped,
                }
            }),
    ]
}

fn checks() -> impl Strategy<Value = Body> {
    let until = option::of(any::<i64>().prop_map(Instant::from_millis));
    let lift = select(vec![LiftReason::Mistake, LiftReason::Paperwork]);
    prop_oneof![
        3 => (any_id(), pouch_list(), until).prop_map(|(run, pouches, use_until)| {
            Body::Released { run, pouches, use_until }
        }),
        2 => (pouch_list(), option::of(any_id()), select(STOPS.to_vec()))
            .prop_map(|(pouches, run, why)| Body::SetAside { pouches, run, why }),
        2 => (pouch_list(), lift).prop_map(|(pouches, why)| Body::StopLifted { pouches, why }),
    ]
}

fn records() -> impl Strategy<Value = Body> {
    let way = select(vec![Way::Page, Way::Command, Way::Folder]);
    let bytes = 0..=i64::MAX as u64;
    prop_oneof![
        (record(), drawer(), bytes, way, option::of(record()), 0_u32..4).prop_map(
            |(record, kept, bytes, way, continues, cycles)| Body::RecordTaken {
                record,
                kept,
                bytes,
                way,
                continues,
                cycles,
            }
        ),
        (record(), 0_u32..4, any_id()).prop_map(|(record, cycle, run)| Body::RecordClaimed {
            record,
            cycle,
            run
        }),
        judged().prop_map(|judged| Body::Judged(Box::new(judged))),
    ]
}

fn figures() -> impl Strategy<Value = KeyFigures> {
    let judged = [(); 9].map(|()| option::of(any::<i64>()));
    let watched = [(); 7].map(|()| option::of(any::<i64>()));
    (judged, watched).prop_map(|(judged, watched)| {
        let [
            set_mc,
            needed_ms,
            held_ms,
            lowest_mc,
            highest_mc,
            deviation_mk,
            f0_low_mmin,
            drying_ms,
            total_ms,
        ] = judged;
        let [
            preheat_ms,
            heat_up_ms,
            first_pulse_ms,
            pulse_depth_pa,
            exhaust_ms,
            dry_vacuum_pa,
            air_in_ms,
        ] = watched;
        KeyFigures {
            set_mc,
            needed_ms,
            held_ms,
            lowest_mc,
            highest_mc,
            deviation_mk,
            f0_low_mmin,
            drying_ms,
            total_ms,
            preheat_ms,
            heat_up_ms,
            first_pulse_ms,
            pulse_depth_pa,
            exhaust_ms,
            dry_vacuum_pa,
            air_in_ms,
        }
    })
}

fn judged() -> impl Strategy<Value = Judged> {
    let basis = prop_oneof![
        (record(), 0_u32..4).prop_map(|(record, cycle)| Basis::Record { record, cycle }),
        (any::<i64>(), any::<i64>(), option::of(any::<i64>())).prop_map(
            |(lowest_mc, held_s, press_pa)| Basis::Reading { lowest_mc, held_s, press_pa }
        ),
    ];
    let outcome = select(vec![
        Outcome::Lethal,
        Outcome::NotLethal,
        Outcome::CannotTell,
        Outcome::LeakPass,
        Outcome::LeakFail,
    ]);
    let drying =
        select(vec![DryingRan::AsSet, DryingRan::Short, DryingRan::None, DryingRan::CannotTell]);
    let reason = (
        select(cycle::finding::Code::ALL.to_vec()),
        option::of(any::<(i64, i64)>()),
        option::of(any::<(u32, u32)>()),
    )
        .prop_map(|(code, at_ms, lines)| Reason { code, at_ms, lines });
    (
        (option::of(any_id()), basis, contents(), outcome, drying),
        vec(("[a-z_]{1,9}", any::<i64>()), 0..3),
        vec(contents(), 0..3),
        option::of(any::<bool>()),
        vec(reason, 0..3),
        figures(),
        option::of("2025-06-0[1-9]T08:31:12"),
    )
        .prop_map(
            |(
                (run, basis, contents, outcome, drying),
                limits,
                proven_for,
                conforming,
                reasons,
                figures,
                start_clock,
            )| {
                Judged {
                    run,
                    basis,
                    judge: "1".to_owned(),
                    limits,
                    contents,
                    outcome,
                    proven_for,
                    conforming,
                    drying,
                    reasons,
                    figures,
                    start_clock,
                }
            },
        )
}

/// Any fact; `Undone` names one of the first `acts` acts.
pub fn body(acts: u32) -> impl Strategy<Value = Body> {
    prop_oneof![
        1 => salon(),
        2 => machines(),
        5 => sets(),
        4 => runs(),
        4 => checks(),
        3 => records(),
        4 => crate::day_bodies::day().prop_map(Body::Day),
        2 => crate::loading_bodies::loading().prop_map(|said| Body::Loading(Box::new(said))),
        2 => crate::upkeep_bodies::upkeep().prop_map(|said| Body::Upkeep(Box::new(said))),
        2 => crate::counter_bodies::counter().prop_map(|said| Body::Counter(Box::new(said))),
        4 => (0..acts.max(1)).prop_map(|act| Body::Undone { act: id(act) }),
    ]
}

/// A day in order, as hands do it, with a little of everything thrown in: such sequences come
/// further round than blind chance would.
pub fn day() -> impl Strategy<Value = Vec<Vec<Body>>> {
    let round = (packed_round(), vec(vec(body(24), 1..4), 0..20)).prop_map(|(mut round, rest)| {
        // Every third act of the round gives way to something else.
        for (at, act) in rest.into_iter().enumerate() {
            round.insert((at * 3).min(round.len()), act);
        }
        round
    });
    prop_oneof![round, vec(vec(body(24), 1..4), 0..24)]
}

fn packed_round() -> impl Strategy<Value = Vec<Vec<Body>>> {
    vec(packed(), 1..4).prop_map(|pouches| {
        let ids: Vec<_> = pouches.iter().map(|pouch| pouch.pouch).collect();
        let mut acts = vec![
            vec![Body::MachineAdded {
                machine: id(1),
                number: 1,
                air_removal: AirRemoval::Vacuum,
                writes_files: true,
                most_pouches: None,
            }],
            vec![Body::Packed { pouches }],
            vec![Body::RunStarted {
                run: id(1),
                machine: id(1),
                number: 1,
                programme: None,
                contents: Contents::Pouched,
                pouches: ids.clone(),
            }],
            vec![Body::RunUnloaded { run: id(1) }],
            vec![Body::Released { run: id(1), pouches: ids.clone(), use_until: None }],
        ];
        acts.extend(
            ids.into_iter().map(|pouch| vec![Body::Opened { pouch, visit: id(1), chair: None }]),
        );
        acts
    })
}
