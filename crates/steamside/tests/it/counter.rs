//! Handing over, correcting and power cuts, through the program's own forms on a real SQLite file.

use super::salon::{Salon, id};
use super::story::{GOOD, Story, record};
use jiff::{SignedDuration, Timestamp};
use load::SetState;
use logbook::book::BookError;
use logbook::fact::{Body, Counter, Fact, Known, StopReason};
use measure::{ActId, Instant};

/// The newest fact of a kind.
pub fn newest(story: &Story, is: impl Fn(&Body) -> bool) -> Fact {
    let lines = story.book.read(|view| view.log(None, 200)).expect("a log");
    lines.into_iter().map(|line| line.fact).find(|fact| is(&fact.body)).expect("such a fact")
}

fn facts(story: &Story, act: ActId) -> Vec<Fact> {
    story.book.read(|view| view.facts_of_act(act)).expect("facts")
}

fn washed(story: &Story) -> (u32, u32) {
    let kinds = story.book.read(|view| view.kinds()).expect("kinds");
    let manicure = kinds.iter().find(|row| row.kind.word() == "manicure").expect("it is there");
    (manicure.used, manicure.washed)
}

fn contradictions(story: &Story) -> usize {
    let lines = story.book.read(|view| view.log(None, 200)).expect("a log");
    lines.iter().filter(|line| line.contradicted).count()
}

fn second_person(story: &Story) -> String {
    let joined = [("act", &*id()), ("sign-text", "TN")];
    assert_eq!(story.salon.post("/act/person", &joined), Some(303));
    let people = story.book.read(|view| view.people()).expect("people");
    let other = people.iter().find(|person| person.sign.as_deref() == Some("TN"));
    other.expect("she joined").person.to_string()
}

#[test]
fn a_count_is_corrected_and_both_stand_in_the_log() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.act("sets", &[("kind", "manicure"), ("used", "9"), ("washed", "0")]);
    story.act("wash", &[("count.manicure", "8")]);
    let old = newest(&story, |body| matches!(body, Body::Washed { .. })).stamp;
    let (was, named) = (old.act, old.act.to_string());
    story.refused("correct", &[("old", &named), ("count.manicure", "8")]); // nothing changed
    story.act("correct", &[("old", &named), ("count.manicure", "7")]);
    assert_eq!(washed(&story), (2, 7));
    let new = newest(&story, |body| matches!(body, Body::Washed { .. })).stamp;
    assert_eq!(new.happened, old.happened);
    assert!(new.written > old.written);
    assert!(matches!(facts(&story, new.act)[0].body, Body::Undone { act } if act == was));
    story.refused("correct", &[("old", &named), ("count.manicure", "6")]); // taken back already
    story.act("correct", &[("old", &new.act.to_string()), ("count.manicure", "6")]);
    assert_eq!(washed(&story), (3, 6));
    assert_eq!(contradictions(&story), 0);
    let (_, log) = story.salon.get("/log");
    assert!(log.contains("<s>8 sets washed") && log.contains("Corrected"), "{log}");
    // What went on into pouches is not taken back behind anybody's back.
    story.act("pack", &[("kind", "manicure"), ("count", "3"), ("wrap", "pouched")]);
    let last = newest(&story, |body| matches!(body, Body::Washed { .. })).stamp.act;
    story.refused("correct", &[("old", &last.to_string()), ("count.manicure", "2")]);
    assert_eq!(washed(&story), (3, 3));
}

#[test]
fn a_run_of_nine_was_a_run_of_eight() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(9);
    let start = newest(&story, |body| matches!(body, Body::RunStarted { .. })).stamp;
    let pouches: Vec<String> =
        story.pouches(SetState::InMachine).iter().map(|held| held.pouch.to_string()).collect();
    let correct = |inside: &[String]| {
        let act = start.act.to_string();
        let mut fields = vec![("old".to_owned(), act)];
        fields.extend(inside.iter().map(|pouch| ("in".to_owned(), pouch.clone())));
        fields
    };
    let refused = |inside: &[String]| {
        let fields = correct(inside);
        let fields: Vec<_> = fields.iter().map(|(k, v)| (k.as_str(), v.as_str())).collect();
        story.refused("correct", &fields);
    };
    refused(&pouches); // nothing changed
    refused(&[]); // a run of nothing
    let fields = correct(&pouches[..8]);
    let fields: Vec<_> = fields.iter().map(|(k, v)| (k.as_str(), v.as_str())).collect();
    story.act("correct", &fields);
    assert_eq!(story.run(run).pouches, 8);
    assert_eq!(story.pouches(SetState::Bagged).len(), 1);
    let corrected = newest(&story, |body| matches!(body, Body::Counter(_))).stamp;
    assert_eq!(corrected.happened, start.happened);
    let (_, log) = story.salon.get("/log");
    assert!(log.contains("<s>Machine 1, run 1"), "struck through, with the correction beside it");
    // Once released, a pouch stays in its run: a recall has to reach it.
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    story.drop_file(&record(GOOD));
    story.act("look", &[("run", &named), ("marks", "all"), ("dry", "all")]);
    refused(&pouches[1..8]);
    assert_eq!(story.run(run).pouches, 8);
    assert_eq!(contradictions(&story), 0);
}

#[test]
fn the_chair_of_an_opening_is_corrected() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(1).to_string();
    story.act("unload", &[("run", &run)]);
    story.drop_file(&record(GOOD));
    story.act("look", &[("run", &run), ("marks", "all"), ("dry", "all")]);
    let code = story.pouches(SetState::Ready)[0].code.to_string();
    story.act("open", &[("code", &code), ("chair", "4")]);
    let opened = newest(&story, |body| matches!(body, Body::Opened { .. }));
    story.act("correct", &[("old", &opened.stamp.act.to_string()), ("chair", "5")]);
    let pouch = story.pouches(SetState::Opened).remove(0);
    let Body::Opened { visit, .. } = opened.body else { panic!("an opening") };
    assert_eq!(pouch.opened, Some((opened.stamp.happened, visit, Some(5))));
    let visits = story.book.read(|view| view.visits_of(&[pouch.pouch])).expect("visits");
    assert_eq!(visits.len(), 1, "one opening, at one chair");
    assert_eq!(contradictions(&story), 0);
    // Set aside since: the opening stays as it is.
    let again = newest(&story, |body| matches!(body, Body::Opened { .. })).stamp.act;
    story.act("set-aside", &[("pouch", &pouch.pouch.to_string()), ("why", "torn")]);
    story.refused("correct", &[("old", &again.to_string()), ("chair", "4")]);
}

#[test]
fn work_is_offered_by_one_and_taken_by_another() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.refused("hand-over", &[("drying", "2")]); // nobody to hand over to
    let (_, page) = story.salon.get("/");
    assert!(!page.contains("/hand-over"), "not offered where one person works");
    let other = second_person(&story);
    story.start(3);
    story.act("hand-over", &[("drying", "2"), ("note", "seal looks worn")]);
    let given = newest(&story, |body| matches!(body, Body::Counter(_))).stamp.act.to_string();
    let (_, page) = story.salon.get("/hand-over");
    for part in ["Machine 1, run 1", "Drying on the rack: 2", "seal looks worn", "machine 1 stops"]
    {
        assert!(page.contains(part), "{part}: {page}");
    }
    let (_, page) = story.salon.get("/");
    assert!(page.contains("See it and take it"));
    let (_, wall) = story.salon.get("/wall");
    assert!(!wall.contains("Nobody has the back"), "it was offered just now");
    let take = |sign: &str| {
        let fields = [("act", &*id()), ("sign", sign), ("given", &*given)];
        story.salon.post("/act/take-over", &fields)
    };
    assert_eq!(take(&other), Some(303));
    assert_eq!(take(&story.sign), Some(409), "somebody has it already");
    let offered = story.book.read(|view| view.last_hand_over()).expect("a book").expect("offered");
    let (_, who) = offered.taken.expect("taken");
    assert_eq!(who.map(|who| who.to_string()), Some(other));
    let (_, log) = story.salon.get("/log");
    assert!(log.contains("Handed over to whoever takes it") && log.contains("I have it"));
}

/// The book as it would be when the offer had been made half an hour ago.
#[test]
fn after_twenty_minutes_nobody_has_the_back() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    second_person(&story);
    let now = Timestamp::now().as_millisecond();
    // The half hour before midnight belongs to another day.
    if now % 86_400_000 < 1_900_000 {
        return;
    }
    let at = |minutes: i64| Instant::from_millis(now - minutes * 60_000);
    let stamp = logbook::fact::Stamp {
        act: id().parse().expect("an id"),
        happened: at(30),
        written: at(30),
        station: id().parse().expect("an id"),
        sign: Some(story.sign.parse().expect("an id")),
        known: Known::Tapped,
    };
    let said = Counter::HandedOver { to: None, drying: 0, note: None };
    story
        .book
        .act(stamp, |_, draft| {
            draft.fact(Body::Counter(Box::new(said)));
            Ok::<_, BookError>(())
        })
        .expect("written");
    for path in ["/", "/wall"] {
        let (_, page) = story.salon.get(path);
        assert!(page.contains("Nobody has the back"), "{path}");
    }
    let (_, wall) = story.salon.get("/wall");
    assert!(!wall.contains("HL"), "the wall has no names");
    let (_, front) = story.salon.get("/wall?front=yes");
    assert!(!front.contains("Nobody has the back"), "clients wait there");
}

/// Power went at the box while a run was in the machine, and came back seven minutes later.
#[test]
fn a_power_cut_sets_the_run_aside_and_its_numbers_still_count() {
    let home = tempfile::tempdir().expect("a folder");
    let folder = home.path().join("book");
    let mut story = Story::begin(&folder);
    let run = story.start(3);
    let seq = story.book.read(|view| view.last_seq()).expect("a book");
    let again = |story: &mut Story, minutes: i64| {
        story.salon.kill();
        let last = Timestamp::now() - SignedDuration::from_mins(minutes);
        std::fs::write(folder.join("awake"), last.as_millisecond().to_string()).expect("a file");
        story.salon = Salon::serve(&folder, &[]);
    };
    again(&mut story, 0);
    assert_eq!(story.book.read(|view| view.last_seq()).expect("a book"), seq, "no silence");
    again(&mut story, 7);
    let off = newest(&story, |body| matches!(body, Body::Counter(_)));
    let Body::Counter(said) = &off.body else { panic!("of the counter") };
    let Counter::BoxWasOff { from, to } = **said else { panic!("{said:?}") };
    assert_eq!((to - from).millis() / 60_000, 7);
    assert!(off.seq > seq, "what was acknowledged before is all there");
    assert_eq!(story.pouches(SetState::SetAside).len(), 3);
    assert!(story.run(run).unloaded.is_none(), "it is in the machine still");
    for path in ["/", &format!("/run/{run}")] {
        let (_, page) = story.salon.get(path);
        assert!(page.contains("Power was lost"), "{path}");
        assert!(page.contains("Machine 1 must show complete"), "{path}");
    }
    // Nothing is released by itself, not even by a good record.
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    story.drop_file(&record(GOOD));
    assert_eq!(story.pouches(SetState::SetAside).len(), 3);
    assert_eq!(story.pouches(SetState::SetAside)[0].stopped, Some(StopReason::NotSure));
    let all_good = [("run", named.as_str()), ("marks", "all"), ("dry", "all")];
    story.refused("look", &all_good);
    let pouches = story.pouches(SetState::SetAside);
    let ids: Vec<String> = pouches.iter().map(|held| held.pouch.to_string()).collect();
    let mut lift: Vec<_> = ids.iter().map(|pouch| ("pouch", pouch.as_str())).collect();
    lift.push(("why", "paperwork"));
    story.act("lift", &lift);
    story.act("look", &all_good);
    assert_eq!(story.pouches(SetState::Ready).len(), 3);
    let (_, page) = story.salon.get("/");
    assert!(!page.contains("Power was lost"), "it is decided on");
    assert!(logbook::verify(&folder).expect("readable").ok);
    assert_eq!(contradictions(&story), 0);
}

#[test]
fn what_people_read_and_what_the_record_is_written_in_are_two_things() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let person = story.sign.clone();
    let is = [("person", person.as_str()), ("language", "vi"), ("in-charge", "yes")];
    story.act("person-is", &is);
    story.refused("person-is", &is); // said already
    story.act("record-shows", &[("language", "es"), ("units", "us")]);
    story.act("wash", &[("count.manicure", "1")]);
    let act = newest(&story, |body| matches!(body, Body::Washed { .. })).stamp.act;
    let (_, page) = story.salon.get(&format!("/wash?did={act}"));
    assert!(page.contains("Tiếng Việt"), "a person's own language is offered after the sign");
    let (_, page) = story.salon.get("/log");
    assert!(page.contains("lang=\"en\"") && !page.contains("<html lang=\"es\""));
    let (_, page) = story.salon.get("/log?print=yes");
    assert!(page.contains("<html lang=\"es\""), "what is printed is in the record's language");
    let (_, page) = story.salon.get("/week");
    assert!(page.contains("<html lang=\"es\""));
}

/// The bar offers it for thirty seconds; each of the new acts fits.
#[test]
fn what_was_tapped_by_mistake_is_taken_back() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let other = second_person(&story);
    let now = Timestamp::now().as_millisecond();
    let (from, to) = ((now - 200_000_000).to_string(), (now - 1_000).to_string());
    let undone = |name: &str, fields: &[(&str, &str)]| {
        let act = id();
        let mut all = vec![("act", act.as_str()), ("sign", story.sign.as_str())];
        all.extend(fields);
        assert_eq!(story.salon.post(&format!("/act/{name}"), &all), Some(303), "{name}");
        let (_, page) = story.salon.get(&format!("/log?did={act}"));
        let left = page.split("data-left=\"").nth(1).and_then(|rest| rest.split('"').next());
        let left: u32 = left.expect("an undo bar").parse().expect("seconds");
        assert!((20..=30).contains(&left), "{name}: {left}");
        let undo = [("act", &*id()), ("undo", &*act)];
        assert_eq!(story.salon.post("/act/undo", &undo), Some(303), "{name} is not taken back");
    };
    undone("hand-over", &[("drying", "1")]);
    assert_eq!(story.book.read(|view| view.last_hand_over()).expect("a book"), None);
    story.act("hand-over", &[("drying", "1")]);
    let given = newest(&story, |body| matches!(body, Body::Counter(_))).stamp.act.to_string();
    undone("take-over", &[("given", &given)]);
    let offered = story.book.read(|view| view.last_hand_over()).expect("a book").expect("offered");
    assert_eq!(offered.taken, None);
    undone("gap", &[("from", &from), ("to", &to), ("why", "forgotten")]);
    undone("person-is", &[("person", &other), ("language", "vi"), ("teaches", "yes")]);
    let person = other.parse().expect("an id");
    assert_eq!(story.book.read(|view| view.speaks(person)).expect("a book"), None);
    undone("record-shows", &[("language", "vi"), ("units", "us")]);
    assert_eq!(story.book.read(|view| view.record_shows()).expect("a book"), None);
    assert_eq!(contradictions(&story), 0);
}

/// From the shelf: one tap, no sign.
#[test]
fn the_safer_side_is_free() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(2).to_string();
    story.act("unload", &[("run", &run)]);
    story.drop_file(&record(GOOD));
    story.act("look", &[("run", &run), ("marks", "all"), ("dry", "all")]);
    let (_, shelf) = story.salon.get("/ready");
    let pouch = story.pouches(SetState::Ready)[0].pouch.to_string();
    assert!(shelf.contains(&format!("value=\"{pouch}\"")) && shelf.contains("/act/set-aside"));
    let aside = [("act", &*id()), ("why", "not-sure"), ("pouch", &*pouch)];
    assert_eq!(story.salon.post("/act/set-aside", &aside), Some(303));
    assert_eq!(story.pouches(SetState::SetAside).len(), 1);
}
