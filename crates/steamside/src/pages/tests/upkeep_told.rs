//! Facts about upkeep, in the log.

use super::made_up::{ctx, fact, id, names};
use crate::pages::telling;
use crate::words::Language;
use logbook::fact::{
    About, BasinAfter, Body, ChoreRule, DayPart, Found, LeftOut, ThingKind, Upkeep, UsedBy,
};
use std::collections::BTreeSet;

fn said() -> Vec<Upkeep> {
    let chore = || "door seal".parse().unwrap();
    let item = || "pouches".parse().unwrap();
    let about = About::Machine(id(21));
    let done = |found| Upkeep::ChoreDone { chore: chore(), about, found, note: None };
    let rule = |days, runs| {
        let part = DayPart::Opening;
        let (minutes, stops_work, manual_page) = (2, true, None);
        Upkeep::ChoreSet(ChoreRule {
            chore: chore(),
            about,
            part,
            days,
            runs,
            minutes,
            stops_work,
            manual_page,
        })
    };
    vec![
        Upkeep::ThingAdded { thing: id(201), what: ThingKind::Jar, number: 1 },
        Upkeep::ThingEnded { thing: id(204) },
        Upkeep::JarSet { jar: id(201), contact_min: 10, lasts_h: None, label: None },
        Upkeep::JarSet { jar: id(201), contact_min: 10, lasts_h: Some(24), label: None },
        Upkeep::JarMixed { jar: id(201) },
        Upkeep::JarIn { jar: id(201) },
        Upkeep::JarEmptied { jar: id(201) },
        Upkeep::BasinSet { basin: id(204), wet_min: 10 },
        Upkeep::BasinWet { basin: id(204), after: BasinAfter::Client },
        Upkeep::BasinWet { basin: id(204), after: BasinAfter::DayEnd },
        Upkeep::BasinDrained { basin: id(204) },
        Upkeep::NotUsed { thing: id(204) },
        rule(Some(1), Some(100)),
        rule(None, None),
        Upkeep::ChoreEnded { chore: chore(), about: About::Salon },
        done(Found::Fine),
        done(Found::NotFine),
        Upkeep::ChoreLeft { chore: chore(), about, why: LeftOut::Closed },
        Upkeep::ChoreLeft { chore: chore(), about, why: LeftOut::NotUsed },
        Upkeep::StockSet { item: item(), used_by: UsedBy::Pouch, least: 100 },
        Upkeep::StockEnded { item: item() },
        Upkeep::StockCounted { item: item(), count: 140 },
        Upkeep::StockBought { item: item(), count: 200, lot: None },
    ]
}

/// Every kind of fact about upkeep has a line of its own, in every language.
#[test]
fn every_fact_about_upkeep_is_told() {
    let said = said();
    for language in Language::ALL {
        let ctx = ctx(language);
        let tell = |said: &Upkeep| {
            telling::line(&ctx, &names(), &fact(1, 0, 0, Body::Upkeep(Box::new(said.clone()))))
        };
        let lines: BTreeSet<String> = said.iter().map(tell).collect();
        assert_eq!(lines.len(), said.len(), "{lines:?}");
        assert!(lines.iter().all(|line| line.ends_with('.')), "{lines:?}");
        if language == Language::En {
            for line in [
                "Machine 1: door seal: every day, after 100 runs.",
                "Foot basin 1: cleaned and wet. After: a client.",
                "Bought: 200 pouches.",
            ] {
                assert!(lines.contains(line), "{line}: {lines:?}");
            }
        }
    }
}
