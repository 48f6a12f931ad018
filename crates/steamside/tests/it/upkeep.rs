//! Upkeep through the program's own forms: what stops work, what cannot be talked round, jars.

use super::salon::{Salon, id};
use super::story::Story;
use load::SetState;
use logbook::fact::ThingKind;

/// The page of a refused act.
fn refusal(story: &Story, name: &str, fields: &[(&str, &str)]) -> String {
    let act = id();
    let mut all = vec![("sign", story.sign.as_str()), ("act", &act)];
    all.extend(fields);
    story.salon.post_page(&format!("/act/{name}"), &all)
}

fn thing(story: &Story, what: ThingKind) -> String {
    let things = story.book.read(|view| view.things()).expect("things");
    things.iter().find(|thing| thing.what == what).expect("it is here").thing.to_string()
}

fn page(salon: &Salon, path: &str) -> String {
    let (status, page) = salon.get(path);
    assert_eq!(status, 200, "{path}");
    page
}

/// A filter that lasts one run: after it nobody starts that machine, with or without a tick, until
/// the filter is changed and found fine.
#[test]
fn a_chore_that_stops_work_is_done_or_the_machine_stands() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let about = format!("machine.{}", story.machine);
    let filter = [("chore", "bacteria filter"), ("about", about.as_str())];
    let set = |more: &[(&'static str, &'static str)]| [&filter[..], more].concat();
    story.refused("chore-set", &set(&[("stops", "yes")])); // nobody said how often
    let salon_wide = [("chore", "used bin"), ("about", "salon"), ("days", "1"), ("stops", "yes")];
    story.refused("chore-set", &salon_wide);
    story.act("chore-set", &set(&[("runs", "1"), ("stops", "yes")]));
    let run = story.start(1).to_string();
    story.act("unload", &[("run", &run)]);
    story.act("wash", &[("count.manicure", "1")]);
    story.act("pack", &[("kind", "manicure"), ("count", "1"), ("wrap", "pouched")]);
    let pouch = story.pouches(SetState::Bagged)[0].pouch.to_string();
    let start = [
        ("machine", story.machine.as_str()),
        ("programme", "middle"),
        ("pouch", &pouch),
        ("over", "yes"),
    ];
    let said = refusal(&story, "start", &start);
    assert!(said.contains("The machine may not be started: air filter is late."), "{said}");
    let form = page(&story.salon, "/start");
    assert!(form.contains("1 of 1 runs") && !form.contains("/act/start"), "{form}");
    // No way round it.
    story.refused("chore-left", &filter);
    story.refused("chore-ended", &filter);
    story.refused("chore-set", &set(&[("runs", "500")]));
    story.act("chore-done", &set(&[("not-fine", "yes")]));
    story.refused("start", &start);
    story.act("chore-done", &filter);
    story.act("start", &start);
}

#[test]
fn nothing_goes_into_a_jar_that_is_empty() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.act("thing", &[("what", "jar")]);
    let jar = thing(&story, ThingKind::Jar);
    story.act(
        "jar-set",
        &[("jar", &jar), ("contact", "8"), ("lasts", "24"), ("label", "Blue 1:40")],
    );
    story.refused("jar-in", &[("jar", &jar)]);
    story.act("jar-mixed", &[("jar", &jar)]);
    story.act("jar-in", &[("jar", &jar)]);
    let said = page(&story.salon, "/upkeep");
    assert!(said.contains("Stay under until") && said.contains("Blue 1:40"), "{said}");
    story.act("jar-emptied", &[("jar", &jar)]);
    story.refused("jar-in", &[("jar", &jar)]);
    assert!(!page(&story.salon, "/upkeep").contains("Stay under until"));
    // A jar is no basin, and a chore that nobody does here is not signed for.
    story.refused("basin-wet", &[("basin", &jar), ("after", "client")]);
    story.refused("chore-done", &[("chore", "windows"), ("about", "salon")]);
    let about = format!("machine.{}", story.machine);
    story.refused("chore-done", &[("chore", "spore test"), ("about", &about)]);
}

/// A tap is a tap: it can be taken back, and what was before holds again.
#[test]
fn a_chore_is_taken_back() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let act = id();
    let done = [
        ("act", act.as_str()),
        ("sign", &story.sign),
        ("chore", "stock count"),
        ("about", "salon"),
    ];
    assert_eq!(story.salon.post("/act/chore-done", &done), Some(303));
    let last = || {
        let chores = story.book.read(|view| view.chores()).expect("chores");
        let chore = chores.into_iter().find(|row| row.rule.chore.word() == "stock count");
        chore.expect("it is done here").counts
    };
    assert!(last().is_some());
    assert_eq!(story.salon.post("/act/undo", &[("act", &id()), ("undo", &act)]), Some(303));
    assert_eq!(last(), None);
    // Nobody signs without a sign, but leaving out takes one tap.
    let unsigned = [("act", &*id()), ("chore", "stock count"), ("about", "salon")];
    assert_eq!(story.salon.post("/act/chore-done", &unsigned), Some(409));
    assert_eq!(story.salon.post("/act/chore-left", &unsigned), Some(303));
}
