//! What was tapped while a station was cut off comes later, and two act on one thing at once: both
//! are kept, the safer one holds, and everybody is told.

use super::salon::id;
use super::story::{GOOD, Story, record};
use load::SetState;
use logbook::book::Book;
use logbook::fact::Body;
use logbook::view::Pouch;
use measure::{ActId, RunId};
use serde_json::Value;

/// Sends what was kept for so many minutes; what the box said.
fn kept(story: &Story, name: &str, act: &str, minutes: u32, fields: &[(&str, &str)]) -> Value {
    let ago = (minutes * 60_000).to_string();
    let mut all = vec![("act", act), ("sign", &story.sign), ("kept-ago", &ago)];
    all.extend(fields);
    let (status, text) = story.salon.answer(&format!("/kept/{name}"), &all);
    assert_eq!(status, 200, "{text}");
    serde_json::from_str(&text).expect("JSON")
}

/// A run of three, out of the machine, with a good record.
fn to_check(story: &Story) -> RunId {
    let run = story.start(3);
    story.act("unload", &[("run", &run.to_string())]);
    // A record tells its seconds only; two of one second would be one.
    std::thread::sleep(std::time::Duration::from_millis(1_100));
    story.drop_file(&record(GOOD));
    run
}

fn states(story: &Story, run: RunId) -> Vec<SetState> {
    let pouches = story.book.read(|view| view.pouches_of_run(run)).expect("pouches");
    pouches.iter().map(|pouch| pouch.state).collect()
}

fn head(story: &Story) -> String {
    story.book.read(|view| view.last_seq()).expect("a book").to_string()
}

fn pouch(story: &Story, pouch: &Pouch) -> Pouch {
    story.book.read(|view| view.pouch(pouch.pouch)).expect("a book").expect("a pouch")
}

const ALL_GOOD: [(&str, &str); 2] = [("marks", "all"), ("dry", "all")];

#[test]
fn opened_while_cut_off_and_set_aside_meanwhile() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = to_check(&story);
    story.act("look", &[("run", &run.to_string()), ALL_GOOD[0], ALL_GOOD[1]]);
    let ready = story.pouches(SetState::Ready);
    let (first, second) = (ready[0].pouch.to_string(), ready[1].pouch.to_string());
    let act = id();
    assert_eq!(
        kept(&story, "open", &act, 0, &[("pouch", &first), ("chair", "4")]),
        serde_json::json!({ "is": "done" })
    );
    assert_eq!(pouch(&story, &ready[0]).state, SetState::Opened);
    story.act("set-aside", &[("pouch", &second), ("why", "mark")]);
    let act = id();
    let open = [("pouch", second.as_str()), ("chair", "4")];
    for time in ["the first time", "and again"] {
        let said = kept(&story, "open", &act, 1, &open);
        assert_eq!(said["is"], "done", "{time}: {said}");
        assert_eq!(said["title"], "Opened before we could tell", "{time}");
        let lines = said["lines"].to_string();
        for part in [&*ready[1].code.to_string(), "HL", "A mark did not turn", "chair 4"] {
            assert!(lines.contains(part), "{time}: {lines}");
        }
    }
    let now = pouch(&story, &ready[1]);
    assert_eq!(now.state, SetState::SetAside, "the safer one holds");
    assert!(now.opened.is_some(), "a recall reaches the visit");
    let act: ActId = act.parse().expect("an id");
    assert_eq!(story.book.read(|view| view.facts_of_act(act)).expect("facts").len(), 1, "once");
    // Who is in charge is told until somebody signs.
    for page in ["/", "/log"] {
        assert!(story.salon.get(page).1.contains("Opened before we could tell"), "{page}");
    }
    let seq = story.book.read(|view| view.unseen(9)).expect("a book")[0].seq.to_string();
    story.refused("seen", &[("seq", "1")]);
    story.act("seen", &[("seq", &seq)]);
    for page in ["/", "/log"] {
        let html = story.salon.get(page).1;
        assert!(!html.contains("Somebody in charge: tap"), "{page} still asks");
    }
}

#[test]
fn a_release_made_while_cut_off_counts_unless_something_was_set_aside() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = to_check(&story);
    let (named, seen) = (run.to_string(), head(&story));
    let look = [("run", named.as_str()), ALL_GOOD[0], ALL_GOOD[1], ("head", &seen)];
    let said = kept(&story, "look", &id(), 0, &look);
    assert_eq!(said, serde_json::json!({ "is": "done" }));
    assert_eq!(states(&story, run), [SetState::Ready; 3], "it counts when it arrives");
    // The same again, told by another screen: both looks are kept, nothing else changes.
    assert_eq!(kept(&story, "look", &id(), 0, &look)["is"], "done");
    // Set aside after the release was tapped, and before it came.
    let second = to_check(&story);
    let (named, seen) = (second.to_string(), head(&story));
    story.act("set-aside", &[("run", &named), ("why", "not-sure")]);
    let look = [("run", named.as_str()), ALL_GOOD[0], ALL_GOOD[1], ("head", &seen)];
    let said = kept(&story, "look", &id(), 0, &look);
    assert_eq!((&said["is"], &said["title"]), (&"done".into(), &"Set aside meanwhile".into()));
    assert!(said["lines"].to_string().contains("Somebody was not sure"), "{said}");
    assert_eq!(states(&story, second), [SetState::SetAside; 3], "the safer one holds");
    assert!(story.salon.get("/").1.contains("Set aside meanwhile"), "who is in charge is told");
}

#[test]
fn what_cannot_be_written_is_said_and_nothing_is_taken_early_or_too_late() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.act("wash", &[("count.manicure", "1")]);
    let before = head(&story);
    let late = kept(&story, "wash", &id(), 72 * 60 + 1, &[("count.manicure", "2")]);
    assert_eq!(late["is"], "refused");
    assert!(late["lines"][0].as_str().is_some_and(|line| line.contains("three days")), "{late}");
    let (status, text) =
        story.salon.answer("/kept/wash", &[("act", &id()), ("count.manicure", "2")]);
    assert!(status == 200 && text.contains("refused"), "not without its age: {text}");
    let unknown = kept(&story, "open", &id(), 5, &[("code", "9Y9Y")]);
    assert_eq!((&unknown["is"], &unknown["title"]), (&"refused".into(), &"DO NOT USE".into()));
    assert_eq!(head(&story), before, "nothing was written");
    let act = id();
    assert_eq!(kept(&story, "wash", &act, 72 * 60 - 1, &[("count.manicure", "2")])["is"], "done");
    let act: ActId = act.parse().expect("an id");
    let fact = story.book.read(|view| view.facts_of_act(act)).expect("facts").remove(0);
    let ago = (fact.stamp.written - fact.stamp.happened).millis() / 60_000;
    assert_eq!(ago, 72 * 60 - 1, "when it happened, and when it was written");
}

/// Two stand before one load with the same page; who comes second is told who, when and what holds.
#[test]
fn two_act_on_one_run_at_once() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.salon.answer("/act/person", &[("act", &id()), ("sign-text", "TN")]);
    let people = story.book.read(|view| view.people()).expect("people");
    let other = people.iter().find(|one| one.sign.as_deref() == Some("TN")).expect("TN");
    let other = other.person.to_string();
    let run = to_check(&story);
    let (named, seen) = (run.to_string(), head(&story));
    let act = id();
    let [marks, dry] = ALL_GOOD;
    let look = [("act", &*act), ("sign", &*other), ("run", &*named), marks, dry, ("head", &*seen)];
    story.act("look", &[("run", &named), marks, dry]);
    let (status, page) = story.salon.answer("/act/look", &look);
    assert_eq!(status, 409, "the load is on the shelf already");
    assert!(page.contains("run 1: released") && page.contains("HL"), "{page}");
    // One mark had not turned, the second one saw: that reaches all of the run.
    let seen_bad = story.pouches(SetState::Ready)[0].pouch.to_string();
    let bad = [
        ("act", &*id()),
        ("sign", &other),
        ("run", &named),
        ("marks", "not"),
        ("mark", &seen_bad),
        ALL_GOOD[1],
        ("head", &seen),
    ];
    assert_eq!(story.salon.answer("/act/look", &bad).0, 303);
    assert_eq!(states(&story, run), [SetState::SetAside; 3]);
    // The other way round: set aside first, then all good from a page that did not show it.
    let run = to_check(&story);
    let (named, seen) = (run.to_string(), head(&story));
    story.act("set-aside", &[("run", &named), ("why", "wet")]);
    let act = id();
    let late = [
        ("act", &*act),
        ("sign", &other),
        ("run", &named),
        ALL_GOOD[0],
        ALL_GOOD[1],
        ("head", &seen),
    ];
    let (status, page) = story.salon.answer("/act/look", &late);
    assert_eq!(status, 200);
    for part in ["Set aside meanwhile", "HL", "Wet", "It stays set aside", "Yours was written too"]
    {
        assert!(page.contains(part), "{part}: {page}");
    }
    assert_eq!(states(&story, run), [SetState::SetAside; 3]);
    let act: ActId = act.parse().expect("an id");
    let facts = story.book.read(|view| view.facts_of_act(act)).expect("facts");
    assert!(facts.iter().any(|fact| matches!(fact.body, Body::Looked { .. })), "both are kept");
    assert!(facts.iter().any(|fact| matches!(fact.body, Body::Released { .. })), "both are kept");
    assert!(logbook::verify::verify(&story.salon.book).expect("a book").ok);
}

/// The box dies between taking an act and answering: sent again, it is written once.
#[test]
fn killed_between_post_and_answer() {
    let home = tempfile::tempdir().expect("a folder");
    let mut story = Story::begin(&home.path().join("book"));
    let (mut written, mut lost) = (0, 0);
    for round in 0..24_u32 {
        let act = id();
        let fields = [
            ("act", &*act),
            ("sign", &*story.sign),
            ("kept-ago", "60000"),
            ("count.manicure", "1"),
        ];
        let pid = story.salon.pid();
        let wait = std::time::Duration::from_micros(u64::from(round) * 400);
        let killer = std::thread::spawn(move || {
            std::thread::sleep(wait);
            let sent = std::process::Command::new("kill").args(["-9", &pid]).status();
            assert!(sent.expect("kill runs").success());
        });
        let first = story.salon.post("/kept/wash", &fields);
        killer.join().expect("the killer ends");
        story.salon.kill();
        story.salon.again();
        let there = |book: &Book| {
            let act: ActId = act.parse().expect("an id");
            book.read(|view| view.facts_of_act(act)).expect("facts").len()
        };
        match (first, there(&story.book)) {
            (Some(_), 1) => {}
            (Some(status), facts) => panic!("answered {status} with {facts} facts"),
            (None, 1) => written += 1,
            (None, facts) => {
                assert_eq!(facts, 0);
                lost += 1;
            }
        }
        let said = kept(&story, "wash", &act, 2, &[("count.manicure", "1")]);
        assert_eq!((&said["is"], there(&story.book)), (&"done".into(), 1), "once");
    }
    println!("not answered: {written} written already, {lost} not; each is there once");
    let verified = logbook::verify::verify(&home.path().join("book")).expect("it can be read");
    assert!(verified.ok, "{:?}", verified.first_bad);
}
