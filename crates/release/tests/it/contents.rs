//! What a proven hold carries. Times for wrapped goods without forced air removal: CDC/HICPAC 2008,
//! Table 7 (121 °C 30 min, 132 °C 15 min). Holding times of open solid goods: Central Sterilising
//! Club 2025, Table 10.2 (134 °C 3 min, 132 °C 4 min, 121 °C 15 min).

use crate::chambers::Chamber;
use crate::records::judged_for;
use cycle::figures::{Ask, examine};
use cycle::finding::Code;
use cycle::record::CycleRecord;
use load::Contents::{self, Hollow, Pouched, Unknown, Unwrapped};
use release::limits::Limits;
use release::verdict::{Asked, Outcome, judge};

fn check(chamber: &Chamber, contents: Contents, expected: Outcome) {
    let (_, verdict) = judged_for(&chamber.record(), contents);
    assert_eq!(verdict.outcome, expected, "{contents} {chamber:?}: {:?}", verdict.reasons);
    if expected == Outcome::CannotTell {
        assert_eq!(verdict.reasons[0].code, Code::LoadNotCovered, "{chamber:?}");
        assert!(verdict.proven_for.is_empty());
    }
}

fn gravity(set_c: f64, hold_s: f64) -> Chamber {
    Chamber { set_c, hold_s, pulses: Vec::new(), ..Chamber::default() }
}

#[test]
fn three_deep_pulses_carry_pouches() {
    check(&Chamber::default(), Unwrapped, Outcome::Lethal);
    check(&Chamber::default(), Unknown, Outcome::Lethal);
    check(&Chamber::default(), Pouched, Outcome::Lethal);
    check(&Chamber::default(), Hollow, Outcome::CannotTell);
    let shallow = Chamber { pulses: vec![45.0, 45.0, 45.0], ..Chamber::default() };
    check(&shallow, Unwrapped, Outcome::Lethal);
    check(&shallow, Pouched, Outcome::CannotTell);
    let airy = Chamber { off_k: -1.2, ..Chamber::default() };
    check(&airy, Unwrapped, Outcome::Lethal);
    check(&airy, Pouched, Outcome::CannotTell);
}

#[test]
fn gravity_carries_no_pouches_without_the_longer_time_and_the_manual() {
    for (chamber, with_manual) in [
        (gravity(134.0, 240.0), Outcome::CannotTell),
        (gravity(132.0, 890.0), Outcome::CannotTell),
        (gravity(132.0, 905.0), Outcome::Lethal),
        (gravity(134.0, 905.0), Outcome::Lethal),
        (gravity(121.0, 1790.0), Outcome::CannotTell),
        (gravity(121.0, 1805.0), Outcome::Lethal),
    ] {
        check(&chamber, Unwrapped, Outcome::Lethal);
        // Nobody said that the manual allows pouches.
        check(&chamber, Pouched, Outcome::CannotTell);
        check(&chamber, Hollow, Outcome::CannotTell);
        let mut limits = Limits::default();
        limits.set("gravity_pouches", 1.0).unwrap();
        let record = chamber.record();
        let figures = examine(&record, &Ask { rules: limits.rules(), ..Ask::default() });
        let verdict = judge(&record, &figures, &Asked::new(Pouched, &limits));
        assert_eq!(verdict.outcome, with_manual, "{chamber:?}: {:?}", verdict.reasons);
        let hollow = Asked { hollow_tested: true, ..Asked::new(Hollow, &limits) };
        assert_eq!(judge(&record, &figures, &hollow).outcome, Outcome::CannotTell);
    }
}

#[test]
fn hollow_goods_need_a_test_of_their_own() {
    let record = Chamber::default().record();
    let limits = Limits::default();
    let figures = examine(&record, &Ask::default());
    let asked = Asked { hollow_tested: true, ..Asked::new(Hollow, &limits) };
    let verdict = judge(&record, &figures, &asked);
    assert_eq!(verdict.outcome, Outcome::Lethal);
    assert_eq!(verdict.proven_for, [Unwrapped, Pouched, Hollow]);
}

/// A programme's own header never lowers the published floor, and a caller's hold only raises it.
#[test]
fn floors_are_not_lowered() {
    let outcome = |record: &CycleRecord, hold_s: Option<f64>| {
        let limits = Limits::default();
        let figures = examine(record, &Ask { hold_s, ..Ask::default() });
        judge(record, &figures, &Asked::new(Unknown, &limits)).outcome
    };
    let mut short = Chamber { hold_s: 120.0, ..Chamber::default() }.record();
    short.stated.hold_s = Some(110.0);
    assert_eq!(outcome(&short, None), Outcome::NotLethal);
    assert_eq!(outcome(&short, Some(60.0)), Outcome::NotLethal);
    let long = Chamber::default().record();
    assert_eq!(outcome(&long, Some(180.0)), Outcome::Lethal);
    assert_eq!(outcome(&long, Some(300.0)), Outcome::NotLethal);
}
