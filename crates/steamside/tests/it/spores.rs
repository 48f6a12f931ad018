//! A failed spore test, through the program's own forms: what it freezes at once, what stays usable,
//! and the way back.

use super::salon::id;
use super::story::Story;
use load::SetState;
use logbook::view::SporeTest;
use measure::{PouchId, RunId};
use release::spores::Says;

/// The pouches of a released run, and the run.
fn released(story: &Story, count: usize) -> (RunId, Vec<PouchId>) {
    let run = story.released(count);
    let ready = story.pouches(SetState::Ready);
    let of_run = ready.iter().filter(|pouch| pouch.run == Some(run)).map(|pouch| pouch.pouch);
    (run, of_run.collect())
}

fn newest(story: &Story) -> SporeTest {
    story.book.read(|view| view.spore_tests(1)).expect("tests").remove(0)
}

fn place(story: &Story, run: RunId) -> String {
    let run = run.to_string();
    story.act("spore-place", &[("machine", &story.machine), ("run", &run), ("control", "yes")]);
    newest(story).test.to_string()
}

fn is_out(story: &Story) -> bool {
    let machine = story.machine.parse().expect("an id");
    let machine = story.book.read(|view| view.machine(machine)).expect("a machine");
    machine.expect("it is there").out_since.is_some()
}

#[test]
fn a_failed_test_stops_machine_and_shelf_and_a_good_repeat_gives_them_back() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let (good_run, before) = released(&story, 2);
    let good = place(&story, good_run);
    story.refused("spore-read", &[("test", &good), ("grew", "no")]); // and the control?
    story.act("spore-read", &[("test", &good), ("grew", "no"), ("control-grew", "yes")]);
    assert_eq!(newest(&story).says(), Says::Good);

    let (run, pouches) = released(&story, 3);
    let opened = pouches[0].to_string();
    story.act("open", &[("pouch", &opened), ("chair", "2")]);
    let test = place(&story, run);
    story.act("spore-post", &[("test", &test), ("days", "7")]);
    assert!(newest(&story).answer_by.is_some());
    // Nobody has to sign for the safer side.
    let act = id();
    let grew = [("act", &*act), ("test", &*test), ("grew", "yes")];
    assert_eq!(story.salon.post("/act/spore-read", &grew), Some(303));
    assert!(is_out(&story));
    let aside: Vec<_> = story.pouches(SetState::SetAside).iter().map(|row| row.pouch).collect();
    assert_eq!(aside, pouches[1..], "what can still be caught, and nothing from before");
    let ready: Vec<_> = story.pouches(SetState::Ready).iter().map(|row| row.pouch).collect();
    assert_eq!(ready, before, "what the good test spoke for stays usable");

    let (status, recall) = story.salon.get(&format!("/recall?test={test}"));
    assert!(status == 200 && recall.contains("1 visit"), "{recall}");
    let (_, closed) = story.salon.get(&format!("/letter?test={test}"));
    assert!(!closed.contains("class=\"letter\""), "letters wait for the repeat");
    let frozen = aside[0].to_string();
    story.refused("lift", &[("pouch", &frozen), ("why", "mistake")]);
    story.refused("spore-back", &[("test", &test)]);
    story.refused("machine-back", &[("machine", &story.machine)]);
    // A test that is said to have lain in a run before the answer is no repeat, however good it is.
    let old = place(&story, run);
    story.act("spore-read", &[("test", &old), ("grew", "no"), ("control-grew", "yes")]);
    story.refused("spore-back", &[("test", &test)]);

    story.act("spore-start", &[("test", &test), ("control", "yes"), ("programme", "middle")]);
    let repeat = newest(&story);
    story.act("unload", &[("run", &repeat.run.expect("a run").to_string())]);
    let repeat = repeat.test.to_string();
    story.refused("spore-back", &[("test", &test)]); // no answer yet
    story.act("spore-read", &[("test", &repeat), ("grew", "no"), ("control-grew", "yes")]);
    story.act("spore-back", &[("test", &test)]);
    assert!(!is_out(&story));
    assert_eq!(story.pouches(SetState::SetAside).len(), 0);
    assert_eq!(story.pouches(SetState::Ready).len(), 4);
    assert!(logbook::verify(home.path().join("book").as_path()).expect("readable").ok);
}

#[test]
fn a_repeat_that_fails_opens_the_letters_and_keeps_the_machine_out() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let (run, pouches) = released(&story, 1);
    story.act("open", &[("pouch", &pouches[0].to_string()), ("chair", "2")]);
    let test = place(&story, run);
    story.act("spore-read", &[("test", &test), ("grew", "yes")]);
    story.act("spore-start", &[("test", &test), ("control", "yes")]);
    let repeat = newest(&story);
    story.act("unload", &[("run", &repeat.run.expect("a run").to_string())]);
    story.act("spore-read", &[("test", &repeat.test.to_string()), ("grew", "yes")]);
    story.refused("spore-back", &[("test", &test)]);
    assert!(is_out(&story));
    let (_, path) = story.salon.get(&format!("/spores/{test}"));
    assert!(path.contains("3 good tests in a row are missing"), "{path}");
    let (_, letter) = story.salon.get(&format!("/letter?test={test}"));
    assert!(letter.contains("class=\"letter\""), "{letter}");
}
