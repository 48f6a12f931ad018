//! What a record leaves open is asked once, and the answer is kept for the machine.

use super::salon::{Salon, id};
use super::story::{GOOD, Story, record};
use load::SetState;
use logbook::BookError;
use logbook::fact::{Reads, Reference};
use measure::MachineId;
use release::verdict::Outcome;

/// The good record with its pressures counted from the air (101 kPa in its first line), still
/// under a heading that says absolute.
fn gauge_said_to_be_absolute() -> String {
    let mut series = String::from("seconds,celsius,kilopascal\n");
    for line in GOOD.lines().skip(1) {
        let (start, kpa) = line.rsplit_once(',').expect("three columns");
        let kpa: f64 = kpa.parse().expect("a pressure");
        series += &format!("{start},{}\n", kpa - 101.0);
    }
    record(&series)
}

fn reads(story: &Story) -> Reads {
    let machine: MachineId = story.machine.parse().expect("an id");
    let row = story.book.read::<_, BookError>(|view| view.machine(machine)).expect("a book");
    row.expect("a machine").reads
}

/// Everything but the sign.
fn unsigned(salon: &Salon, fields: &[(&str, &str)]) -> Option<u16> {
    let act = id();
    let mut all = vec![("act", act.as_str())];
    all.extend(fields);
    salon.post("/act/machine-reads", &all)
}

#[test]
fn the_answer_turns_cannot_tell_into_what_the_record_proves() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(2);
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    story.drop_file(&gauge_said_to_be_absolute());
    assert_eq!(story.run(run).outcome, Some(Outcome::CannotTell));
    let (_, page) = story.salon.get(&format!("/run/{named}"));
    assert!(page.contains("with the door open?"), "the question is put");
    let answer = [("machine", story.machine.as_str()), ("reference", "gauge")];
    assert_eq!(unsigned(&story.salon, &answer), Some(409), "nobody signed");
    assert_eq!(reads(&story), Reads::default());
    story.act("machine-reads", &answer);
    let kept = Reads { pressure_reference: Some(Reference::Gauge), ..Reads::default() };
    assert_eq!(reads(&story), kept);
    assert_eq!(story.run(run).outcome, Some(Outcome::Lethal), "judged again in the same act");
    let (_, page) = story.salon.get(&format!("/run/{named}"));
    assert!(!page.contains("with the door open?"), "nothing is open any more");
    let verdicts = story.book.read::<_, BookError>(|view| view.judged_of_run(run)).expect("both");
    assert_eq!(verdicts.len(), 2, "the earlier verdict stays in the log");
    // The next file of that machine is read so from the start.
    let next = story.start(1);
    story.act("unload", &[("run", &next.to_string())]);
    let upload = [("act", &*id()), ("run", &*next.to_string())];
    let another = gauge_said_to_be_absolute().replacen("time", "Time", 1);
    assert_eq!(story.salon.upload(&upload, &another), 303);
    assert_eq!(story.run(next).outcome, Some(Outcome::Lethal));
    assert!(logbook::verify(&home.path().join("book")).expect("readable").ok);
}

#[test]
fn an_answer_taken_back_sets_aside_what_was_released_on_it() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let machine = story.machine.clone();
    story.act("machine-reads", &[("machine", &machine), ("reference", "gauge")]);
    let run = story.start(2);
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    story.drop_file(&gauge_said_to_be_absolute());
    story.act("look", &[("run", &named), ("marks", "all"), ("dry", "all")]);
    assert_eq!(story.pouches(SetState::Ready).len(), 2);
    // An answer to something else leaves it alone; the whole form without it takes it back.
    story.act("machine-reads", &[("machine", &machine), ("altitude", "40")]);
    assert_eq!(story.pouches(SetState::Ready).len(), 2);
    story.act("machine-reads", &[("machine", &machine), ("whole", "yes"), ("altitude", "40")]);
    assert_eq!(reads(&story), Reads { altitude_m: Some(40), ..Reads::default() });
    assert_eq!(story.run(run).outcome, Some(Outcome::CannotTell));
    assert_eq!(story.pouches(SetState::SetAside).len(), 2);
}

#[test]
fn an_answer_does_not_talk_a_failed_reading_round() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(1);
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    story.drop_file(&gauge_said_to_be_absolute());
    let read = [
        ("run", &*named),
        ("lowest", "134"),
        ("minutes", "1"),
        ("pressure", "304"),
        ("unit", "kPa-abs"),
    ];
    story.act("read-off", &read);
    assert_eq!(story.run(run).outcome, Some(Outcome::NotLethal));
    story.act("machine-reads", &[("machine", &story.machine), ("reference", "gauge")]);
    assert_eq!(story.run(run).outcome, Some(Outcome::NotLethal));
}

#[test]
fn a_wrong_answer_proves_nothing() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(1);
    story.act("unload", &[("run", &run.to_string())]);
    story.drop_file(&gauge_said_to_be_absolute());
    let machine = story.machine.clone();
    for (field, word) in [("reference", "absolute"), ("temperature", "fahrenheit")] {
        story.act("machine-reads", &[("machine", &machine), (field, word)]);
        assert_ne!(story.run(run).outcome, Some(Outcome::Lethal), "{word}");
    }
    story.refused("machine-reads", &[("machine", &machine), ("pressure", "ells")]);
    story.refused("machine-reads", &[("machine", &machine), ("altitude", "9000")]);
    story.refused("machine-reads", &[("machine", &id()), ("reference", "gauge")]);
}

#[test]
fn an_unclaimed_record_asks_for_its_machine_too() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.drop_file(&gauge_said_to_be_absolute());
    let unclaimed = || {
        let taken = story.book.read::<_, BookError>(|view| view.taken_unclaimed());
        taken.expect("records").remove(0)
    };
    let first = unclaimed();
    assert_eq!(first.outcome, Some(Outcome::CannotTell));
    let record = first.record.to_string();
    let (_, page) = story.salon.get(&format!("/unclaimed/{record}/0"));
    assert!(page.contains("with the door open?") && page.contains(&story.machine));
    let machine = story.machine.clone();
    let answer =
        [("machine", &*machine), ("reference", "gauge"), ("record", &*record), ("cycle", "0")];
    story.act("machine-reads", &answer);
    assert_eq!(unclaimed().outcome, Some(Outcome::Lethal));
}
