//! The three looks. Reach of one bad pouch: common practice, no source; a wet pack is not
//! releasable (RACGP guidelines, ch. 10, "Unloading the steriliser").

use load::Contents;
use measure::PouchId;
use proptest::prelude::*;
use release::looks::{Answers, Decision, DryWhole, Looked, Marks, Question, Why, decide};
use release::verdict::Outcome;

fn pouch(n: u8) -> PouchId {
    PouchId::from_bytes([n; 16])
}

fn run() -> Looked {
    Looked {
        outcome: Outcome::Lethal,
        proven_for: vec![Contents::Unwrapped, Contents::Pouched],
        contents: Contents::Pouched,
        pouches: (0..4).map(pouch).collect(),
        needs_inner_mark: false,
    }
}

fn answers(marks: &[Marks], dry: &[DryWhole]) -> Answers {
    Answers { marks: marks.to_vec(), inner_mark: Vec::new(), dry: dry.to_vec() }
}

fn wet(these: &[u8]) -> DryWhole {
    DryWhole { wet: these.iter().copied().map(pouch).collect(), torn: Vec::new() }
}

fn torn(these: &[u8]) -> DryWhole {
    DryWhole { wet: Vec::new(), torn: these.iter().copied().map(pouch).collect() }
}

fn check(
    run: &Looked,
    answers: &Answers,
    release: &[u8],
    aside: &[(u8, Why)],
    ask: Option<Question>,
) {
    let expected = Decision {
        release: release.iter().copied().map(pouch).collect(),
        set_aside: aside.iter().map(|&(n, why)| (pouch(n), why)).collect(),
        ask,
    };
    assert_eq!(decide(run, answers), Ok(expected), "{answers:?}");
}

fn all(why: Why) -> Vec<(u8, Why)> {
    (0..4).map(|n| (n, why)).collect()
}

#[test]
fn released_only_when_everything_was_asked_and_is_well() {
    let turned = [Marks::AllTurned];
    check(&run(), &answers(&[], &[]), &[], &[], Some(Question::Marks));
    check(&run(), &answers(&turned, &[]), &[], &[], Some(Question::DryWhole));
    check(&run(), &answers(&turned, &[wet(&[])]), &[0, 1, 2, 3], &[], None);
    let inner = Looked { needs_inner_mark: true, ..run() };
    let mut given = answers(&turned, &[wet(&[])]);
    check(&inner, &given, &[], &[], Some(Question::InnerMark));
    given.inner_mark.push(true);
    check(&inner, &given, &[0, 1, 2, 3], &[], None);
    given.inner_mark.push(false);
    check(&inner, &given, &[], &all(Why::Mark), None);
}

#[test]
fn how_far_one_bad_pouch_reaches() {
    let turned = [Marks::AllTurned];
    let one = [(2, Why::Wet)];
    check(&run(), &answers(&turned, &[torn(&[2])]), &[0, 1, 3], &[(2, Why::Torn)], None);
    check(
        &run(),
        &answers(&turned, &[torn(&[1, 2])]),
        &[0, 3],
        &[(1, Why::Torn), (2, Why::Torn)],
        None,
    );
    check(&run(), &answers(&turned, &[wet(&[2])]), &[], &one, Some(Question::DryWholeAgain));
    check(&run(), &answers(&turned, &[wet(&[2]), wet(&[])]), &[0, 1, 3], &one, None);
    check(&run(), &answers(&turned, &[wet(&[2]), wet(&[2])]), &[0, 1, 3], &one, None);
    check(&run(), &answers(&turned, &[wet(&[2]), wet(&[3])]), &[], &all(Why::WetRun), None);
    check(&run(), &answers(&turned, &[wet(&[1, 2])]), &[], &all(Why::WetRun), None);
    check(&run(), &answers(&[Marks::NotTurned(vec![pouch(1)])], &[]), &[], &all(Why::Mark), None);
}

/// Dry later is still wet, turned later is still not turned.
#[test]
fn the_first_answer_stands() {
    let turned_later = [Marks::NotTurned(vec![pouch(0)]), Marks::AllTurned];
    check(&run(), &answers(&turned_later, &[wet(&[])]), &[], &all(Why::Mark), None);
    let dry_later = [wet(&[0, 1]), wet(&[]), wet(&[])];
    check(&run(), &answers(&[Marks::AllTurned], &dry_later), &[], &all(Why::WetRun), None);
}

#[test]
fn nothing_is_released_on_looks_alone() {
    let good = answers(&[Marks::AllTurned], &[wet(&[])]);
    for (outcome, why) in [
        (Outcome::NotLethal, Why::Numbers),
        (Outcome::CannotTell, Why::CannotTell),
        (Outcome::LeakPass, Why::CannotTell),
        (Outcome::LeakFail, Why::CannotTell),
    ] {
        let proven_for = Vec::new();
        check(&Looked { outcome, proven_for, ..run() }, &good, &[], &all(why), None);
    }
    for contents in [Contents::Hollow, Contents::Unknown] {
        check(&Looked { contents, ..run() }, &good, &[], &all(Why::NotCovered), None);
    }
    let stranger = answers(&[Marks::AllTurned], &[wet(&[9])]);
    assert!(decide(&run(), &stranger).is_err());
}

fn some_answers() -> impl Strategy<Value = Answers> {
    let some = || proptest::collection::vec((0..4_u8).prop_map(pouch), 0..3);
    let marks = prop_oneof![3 => Just(Marks::AllTurned), 1 => some().prop_map(Marks::NotTurned)];
    let dry = (some(), some()).prop_map(|(wet, torn)| DryWhole { wet, torn });
    (
        proptest::collection::vec(marks, 0..3),
        proptest::collection::vec(any::<bool>(), 0..2),
        proptest::collection::vec(dry, 0..4),
    )
        .prop_map(|(marks, inner_mark, dry)| Answers { marks, inner_mark, dry })
}

proptest! {
    /// A pouch once called wet, torn or not turned is never released, whatever is said later, and
    /// no pouch is both released and set aside.
    #[test]
    fn no_talking_back(before in some_answers(), after in some_answers()) {
        let first = decide(&run(), &before).unwrap();
        let mut both = before;
        both.marks.extend(after.marks);
        both.inner_mark.extend(after.inner_mark);
        both.dry.extend(after.dry);
        let second = decide(&run(), &both).unwrap();
        for (pouch, _) in &first.set_aside {
            prop_assert!(!second.release.contains(pouch));
            prop_assert!(second.set_aside.iter().any(|(aside, _)| aside == pouch));
        }
        let aside = |pouch: &PouchId| second.set_aside.iter().any(|(aside, _)| aside == pouch);
        prop_assert!(!second.release.iter().any(aside));
        prop_assert!(second.release.is_empty() || second.ask.is_none());
    }
}
