//! Any fact of the day, over few ids, so that facts meet.

use crate::common::{id, kind};
use logbook::fact::{
    Day, DayCycle, DayRules, DrawerRef, Drying, Keyed, KindFigures, MachineFigures, Origin,
    PlanOrder, PlannedRun, Service, Source,
};
use measure::{Id, Instant};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

fn any_id<T: 'static>() -> impl Strategy<Value = Id<T>> {
    (1_u32..5).prop_map(id)
}

fn keyed() -> impl Strategy<Value = Keyed> {
    (1_u8..4).prop_map(|byte| Keyed::from_bytes([byte; 32]))
}

fn span() -> impl Strategy<Value = (Instant, Instant)> {
    (crate::common::MORNING..crate::common::MORNING + 3 * 86_400_000, 0_i64..10_000_000)
        .prop_map(|(from, ms)| (Instant::from_millis(from), Instant::from_millis(from + ms)))
}

fn origin() -> impl Strategy<Value = Origin> {
    let source = select(vec![Source::Calendar, Source::Table]);
    (source, keyed(), keyed(), keyed(), any::<u32>()).prop_map(
        |(source, entry, series, calendar, sequence)| Origin {
            source,
            entry,
            series,
            calendar,
            sequence,
        },
    )
}

fn needs() -> impl Strategy<Value = Vec<(load::SetKind, u32)>> {
    prop_oneof![
        Just(vec![]),
        (0_u32..9).prop_map(|n| vec![(kind("manicure"), n), (kind("bits"), 1)])
    ]
}

fn visits() -> impl Strategy<Value = Day> {
    let chair = || option::of(any::<u32>());
    prop_oneof![
        3 => (any_id(), span(), chair(), option::of(any_id()), option::of(origin())).prop_map(
            |(visit, (start, end), chair, service, origin)| Day::VisitBooked {
                visit,
                start,
                end,
                chair,
                service,
                origin,
            }
        ),
        2 => (any_id(), span(), chair(), any::<u32>()).prop_map(
            |(visit, (start, end), chair, sequence)| Day::VisitMoved {
                visit,
                start,
                end,
                chair,
                sequence,
            }
        ),
        1 => (any_id(), option::of(any_id()))
            .prop_map(|(visit, service)| Day::VisitIs { visit, service }),
        1 => (any_id(), 0_u32..=1_440)
            .prop_map(|(visit, minutes)| Day::VisitLate { visit, minutes }),
        1 => any_id().prop_map(|visit| Day::VisitCancelled { visit }),
        1 => any_id().prop_map(|visit| Day::VisitMissed { visit }),
    ]
}

fn services() -> impl Strategy<Value = Day> {
    let word = select(vec!["gel manicure", "dài"]);
    prop_oneof![
        (any_id(), word, 1_u32..600, 1_u32..9, 0_u32..30, needs()).prop_map(
            |(service, word, minutes, weight, basin_min, needs)| Day::ServiceSet(Service {
                service,
                word: word.parse().unwrap(),
                minutes,
                weight,
                basin_min,
                needs,
            })
        ),
        any_id().prop_map(|service| Day::ServiceEnded { service }),
        (keyed(), option::of(any_id()))
            .prop_map(|(phrase, service)| Day::PhraseLearnt { phrase, service }),
        (any_id(), any::<[u8; 32]>())
            .prop_map(|(entry, commitment)| Day::KeyMade { key: DrawerRef { entry, commitment } }),
    ]
}

fn hours() -> impl Strategy<Value = Day> {
    prop_oneof![
        (any_id(), any_id(), span(), any::<bool>()).prop_map(|(shift, person, (from, to), ate)| {
            Day::ShiftSet { shift, person, from, to, lunch: ate.then_some((from, to)) }
        }),
        any_id().prop_map(|shift| Day::ShiftEnded { shift }),
        (select(vec![1_i64, 2]), any::<bool>()).prop_map(|(day, closed)| {
            let from = Instant::from_millis(day * 86_400_000);
            Day::ClosedSet { from, to: from, closed }
        }),
    ]
}

fn cycle() -> impl Strategy<Value = DayCycle> {
    let drying = select(vec![Drying::None, Drying::Short, Drying::Full]);
    (
        (1_u32..90, 1_u32..90),
        (0_u32..9_000, 0_u32..9_000),
        drying,
        any::<bool>(),
        [(); 5].map(|()| 0_u32..60),
    )
        .prop_map(
            |(lengths, limits, drying, wrapped, [load_min, unload_min, cool_min, c, w])| DayCycle {
                programme: "long".parse().unwrap(),
                cold_min: lengths.0,
                warm_min: lengths.1,
                max_mass_g: limits.0,
                max_area_cm2: limits.1,
                drying,
                wrapped,
                load_min,
                unload_min,
                cool_min,
                cold_cents: c,
                warm_cents: w,
            },
        )
}

fn figures() -> impl Strategy<Value = Day> {
    let order = select(vec![PlanOrder::Salon, PlanOrder::Comparing]);
    prop_oneof![
        [(); 6].map(|()| 0_u32..900).prop_map(
            |[mass_g, area_cm2, hand_min, pouch_cents, target_ready, spares]| {
                Day::KindFigures(KindFigures {
                    kind: kind("manicure"),
                    mass_g,
                    area_cm2,
                    hand_min,
                    pouch_cents,
                    target_ready,
                    spares,
                })
            }
        ),
        (any_id(), 0_u32..90, vec(cycle(), 0..2)).prop_map(|(machine, warm_window_min, cycles)| {
            Day::MachineFigures(MachineFigures { machine, warm_window_min, cycles })
        }),
        (0_u32..90, 0_u32..90, order).prop_map(|(passive_min, immediate_min, order)| {
            Day::Rules(DayRules { passive_min, immediate_min, order })
        }),
        (span(), any_id(), any::<bool>(), needs()).prop_map(|((from, to), machine, warm, load)| {
            let programme = "long".parse().unwrap();
            let runs = vec![PlannedRun { machine, programme, start: from, warm, load }];
            Day::PlanAccepted { from, to, runs }
        }),
    ]
}

/// Any fact of the day.
pub fn day() -> impl Strategy<Value = Day> {
    prop_oneof![4 => visits(), 2 => services(), 1 => hours(), 1 => figures()]
}
