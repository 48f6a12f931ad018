//! Any fact about upkeep, over few words, so that facts meet.

use crate::common::{at, id};
use logbook::fact::{
    About, BasinAfter, ChoreRule, DayPart, Found, LeftOut, Serviced, ThingKind, Upkeep, UsedBy,
};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

fn about() -> impl Strategy<Value = About> {
    prop_oneof![
        Just(About::Salon),
        (1_u32..3).prop_map(|machine| About::Machine(id(machine))),
        (1_u32..3).prop_map(|thing| About::Thing(id(thing))),
    ]
}

fn rule() -> impl Strategy<Value = ChoreRule> {
    let part = select(vec![DayPart::Opening, DayPart::Closing, DayPart::AnyTime]);
    let often = (option::of(1_u32..400), option::of(1_u32..4_000), option::of(1_u32..300));
    (about(), part, often, 0_u32..60, any::<bool>()).prop_map(
        |(about, part, (days, runs, manual_page), minutes, stops_work)| ChoreRule {
            chore: "door seal".parse().unwrap(),
            about,
            part,
            days,
            runs,
            minutes,
            stops_work,
            manual_page,
        },
    )
}

fn things() -> impl Strategy<Value = Upkeep> {
    let kind = select(vec![ThingKind::Jar, ThingKind::FootBasin, ThingKind::Ultrasonic]);
    let after = select(vec![BasinAfter::Client, BasinAfter::DayEnd, BasinAfter::Week]);
    let thing = || 1_u32..3;
    prop_oneof![
        (thing(), kind, 1_u32..9).prop_map(|(thing, what, number)| Upkeep::ThingAdded {
            thing: id(thing),
            what,
            number
        }),
        thing().prop_map(|thing| Upkeep::ThingEnded { thing: id(thing) }),
        (thing(), 1_u32..60, option::of(1_u32..200)).prop_map(|(jar, contact_min, lasts_h)| {
            Upkeep::JarSet { jar: id(jar), contact_min, lasts_h, label: None }
        }),
        thing().prop_map(|jar| Upkeep::JarMixed { jar: id(jar) }),
        thing().prop_map(|jar| Upkeep::JarIn { jar: id(jar) }),
        thing().prop_map(|jar| Upkeep::JarEmptied { jar: id(jar) }),
        (thing(), 1_u32..60)
            .prop_map(|(basin, wet_min)| Upkeep::BasinSet { basin: id(basin), wet_min }),
        (thing(), after).prop_map(|(basin, after)| Upkeep::BasinWet { basin: id(basin), after }),
        thing().prop_map(|basin| Upkeep::BasinDrained { basin: id(basin) }),
        thing().prop_map(|thing| Upkeep::NotUsed { thing: id(thing) }),
    ]
}

fn chores() -> impl Strategy<Value = Upkeep> {
    let chore = || "door seal".parse().unwrap();
    let found = select(vec![Found::Fine, Found::NotFine]);
    let why = select(vec![LeftOut::Closed, LeftOut::NotUsed]);
    let what =
        select(vec![Serviced::Service, Serviced::Repair, Serviced::Validation, Serviced::Moved]);
    prop_oneof![
        rule().prop_map(Upkeep::ChoreSet),
        about().prop_map(move |about| Upkeep::ChoreEnded { chore: chore(), about }),
        (about(), found).prop_map(move |(about, found)| Upkeep::ChoreDone {
            chore: chore(),
            about,
            found,
            note: None
        }),
        (about(), why).prop_map(move |(about, why)| Upkeep::ChoreLeft {
            chore: chore(),
            about,
            why
        }),
        (1_u32..3, what).prop_map(|(machine, what)| Upkeep::MachineServiced {
            machine: id(machine),
            what,
            note: None
        }),
    ]
}

fn spores() -> impl Strategy<Value = Upkeep> {
    let test = || 1_u32..4;
    prop_oneof![
        (test(), 1_u32..3, option::of(1_u32..4), any::<bool>()).prop_map(
            |(test, machine, run, control)| Upkeep::SporePlaced {
                test: id(test),
                machine: id(machine),
                run: run.map(id),
                control,
                lot: None,
            }
        ),
        (test(), 0_i64..9_000)
            .prop_map(|(test, by)| Upkeep::SporePosted { test: id(test), answer_by: at(by) }),
        (test(), any::<bool>(), option::of(any::<bool>())).prop_map(
            |(test, grew, control_grew)| Upkeep::SporeRead { test: id(test), grew, control_grew }
        ),
        test().prop_map(|test| Upkeep::SporeLost { test: id(test) }),
        (test(), 1_u32..9).prop_map(|(test, pouch)| Upkeep::Unfrozen {
            test: id(test),
            pouches: vec![id(pouch)]
        }),
    ]
}

fn stock() -> impl Strategy<Value = Upkeep> {
    let item = || "distilled water".parse().unwrap();
    let used_by = select(vec![UsedBy::Pouch, UsedBy::Run, UsedBy::Test, UsedBy::Counting]);
    prop_oneof![
        (used_by, 0_u32..500).prop_map(move |(used_by, least)| Upkeep::StockSet {
            item: item(),
            used_by,
            least
        }),
        Just(()).prop_map(move |()| Upkeep::StockEnded { item: item() }),
        (0_u32..500).prop_map(move |count| Upkeep::StockCounted { item: item(), count }),
        (0_u32..500).prop_map(move |count| Upkeep::StockBought { item: item(), count, lot: None }),
    ]
}

/// Any fact about upkeep.
pub fn upkeep() -> impl Strategy<Value = Upkeep> {
    prop_oneof![things(), chores(), spores(), stock()]
}
