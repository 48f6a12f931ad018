//! What no form, correction or paper may do, and what may never be swallowed.

use super::salon::id;
use super::story::Story;
use jiff::Timestamp;
use load::SetState;
use measure::RunId;

/// Every tenth run of a machine is released with a count, which only says "count again".
#[test]
fn every_tenth_run_is_counted_back() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    for _ in 0..9 {
        story.released(1);
    }
    let run = story.read_off(2).to_string();
    let good = [("run", &*run), ("marks", "all"), ("dry", "all"), ("inner", "yes")];
    let counted = |count| [&good[..], &[("counted", count)]].concat();
    story.refused("look", &good);
    story.refused("look", &counted("3"));
    story.act("look", &counted("2"));
    assert_eq!(story.pouches(SetState::Ready).len(), 11);
}

/// The act that started a run.
fn started_by(story: &Story, run: RunId) -> String {
    let log = story.book.read(|view| view.log(None, 200)).expect("a log");
    let is_it = |body: &logbook::fact::Body| matches!(body, logbook::fact::Body::RunStarted { run: it, .. } if *it == run);
    let line = log.iter().find(|line| is_it(&line.fact.body)).expect("it was started");
    line.fact.stamp.act.to_string()
}

/// No correction and no paper brings a pouch into steam that it never saw, or out of a run that
/// something was seen of.
#[test]
fn nothing_is_talked_into_a_run_or_out_of_it() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.read_off(3);
    let of_run: Vec<String> =
        story.pouches(SetState::ToCheck).iter().map(|pouch| pouch.pouch.to_string()).collect();
    story.act("wash", &[("count.manicure", "1")]);
    story.act("pack", &[("kind", "manicure"), ("count", "1"), ("wrap", "pouched")]);
    let later = story.pouches(SetState::Bagged)[0].pouch.to_string();
    let old = started_by(&story, run);
    let inside = |pouches: &[&str]| {
        let mut fields = vec![("old".to_owned(), old.clone())];
        fields.extend(pouches.iter().map(|pouch| ("in".to_owned(), (*pouch).to_owned())));
        fields
    };
    let refused = |fields: Vec<(String, String)>| {
        let fields: Vec<_> = fields.iter().map(|(k, v)| (k.as_str(), v.as_str())).collect();
        story.refused("correct", &fields);
    };
    refused(inside(&[&of_run[0], &of_run[1], &of_run[2], &later])); // packed after the run began
    let day = (Timestamp::now() - jiff::SignedDuration::from_hours(24)).strftime("%Y-%m-%d");
    let day = day.to_string();
    let paper = [
        ("on", day.as_str()),
        ("at", "10:00"),
        ("end-at", "11:00"),
        ("machine", &story.machine),
        ("pouch", &later),
    ];
    story.refused("later-run", &paper);
    // One was wet: the others do not become clean pouches again by being said not to have been in it.
    let named = run.to_string();
    story.act("look", &[("run", &named), ("marks", "all"), ("dry", "not"), ("wet", &of_run[0])]);
    refused(inside(&[&of_run[0]]));
    assert_eq!(story.pouches(SetState::Bagged).len(), 1);
}

/// The key that set one pouch aside sets another one aside as well.
#[test]
fn the_safer_side_is_never_taken_for_a_double_tap() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.released(2);
    let act = id();
    for pouch in story.pouches(SetState::Ready) {
        let pouch = pouch.pouch.to_string();
        let aside = [("act", act.as_str()), ("pouch", &*pouch), ("why", "torn")];
        assert_eq!(story.salon.post("/act/set-aside", &aside), Some(303));
        assert_eq!(story.salon.post("/act/set-aside", &aside), Some(303));
    }
    assert_eq!(story.pouches(SetState::SetAside).len(), 2);
}
