//! Facts about what goes in, in the log.

use super::made_up::{ctx, fact, id, names};
use crate::pages::telling;
use crate::words::Language;
use load::catalogue;
use logbook::fact::{Body, Loading};
use logbook::typical;
use std::collections::BTreeSet;

/// Every kind of fact about what goes in has a line of its own, in every language.
#[test]
fn every_fact_about_what_goes_in_is_told() {
    let word = || "pusher".parse().unwrap();
    let kind = || "manicure".parse().unwrap();
    let cycle = typical::machine(id(3)).cycles.remove(2);
    let said = [
        Loading::ImplementSet(catalogue::implements().remove(0)),
        Loading::ImplementEnded { word: word() },
        Loading::SetOf { kind: kind(), pieces: vec![(word(), 2)] },
        Loading::PouchSet(catalogue::pouch_sizes().remove(0)),
        Loading::PouchEnded { word: "long".parse().unwrap() },
        Loading::InsideSet { machine: id(3), inside: catalogue::inside() },
        Loading::TrayWeighed {
            grams: 1_240,
            empty_g: None,
            sets: vec![(kind(), 6), ("bits".parse().unwrap(), 1)],
            pouched: true,
        },
        Loading::ProgrammeSet(typical::programme(id(3), &cycle)),
    ];
    for language in Language::ALL {
        let ctx = ctx(language);
        let tell = |said: &Loading| {
            telling::line(&ctx, &names(), &fact(1, 0, 0, Body::Loading(Box::new(said.clone()))))
        };
        let lines: BTreeSet<String> = said.iter().map(tell).collect();
        assert_eq!(lines.len(), said.len(), "{lines:?}");
        assert!(lines.iter().all(|line| line.ends_with('.')), "{lines:?}");
        if language == Language::En {
            assert!(
                lines.contains("Tray weighed: 1240\u{a0}g with 6 manicure, 1 e-file bit."),
                "{lines:?}"
            );
        }
    }
}
