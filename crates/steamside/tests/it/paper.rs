//! What was kept on paper and copied in, times that are still to come, and gaps.

use super::counter::newest;
use super::salon::id;
use super::story::Story;
use jiff::{SignedDuration, Timestamp};
use load::SetState;
use logbook::fact::{Body, Known};

/// The day and the time so many hours ago, in UTC, as a form has them.
fn ago(hours: i64) -> (String, String) {
    let at = Timestamp::now() - SignedDuration::from_hours(hours);
    (at.strftime("%Y-%m-%d").to_string(), at.strftime("%H:%M").to_string())
}

#[test]
fn nobody_enters_a_time_that_is_still_to_come() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let before = story.book.read(|view| view.last_seq()).expect("a book");
    let (day, time) = ago(-30);
    let (past, _) = ago(50);
    let tomorrow = [("on", day.as_str()), ("at", time.as_str())];
    let with = |more: &[(&'static str, &str)]| {
        let mut fields = tomorrow.to_vec();
        let more: Vec<(&str, &str)> = more.to_vec();
        fields.extend(more.iter().map(|(k, v)| (*k, *v)));
        fields.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect::<Vec<_>>()
    };
    let refused = |name: &str, fields: Vec<(String, String)>| {
        let fields: Vec<_> = fields.iter().map(|(k, v)| (k.as_str(), v.as_str())).collect();
        story.refused(name, &fields);
    };
    refused("later-wash", with(&[("count.manicure", "3")]));
    refused("later-chore", with(&[("which", "salon stock count")]));
    refused("later-closed", vec![("on".to_owned(), day.clone())]);
    let machine = story.machine.clone();
    let run = [
        ("on", past.as_str()),
        ("at", "00:10"),
        ("end-on", day.as_str()),
        ("end-at", time.as_str()),
        ("machine", &machine),
        ("kind", "manicure"),
        ("count", "3"),
    ];
    story.refused("later-run", &run);
    let soon = (Timestamp::now() + SignedDuration::from_hours(1)).as_millisecond().to_string();
    story.refused("gap", &[("from", "0"), ("to", &soon), ("why", "holiday")]);
    assert_eq!(story.book.read(|view| view.last_seq()).expect("a book"), before, "nothing of it");
}

#[test]
fn a_run_from_paper_counts_on_its_own_day_and_is_not_talked_back() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let today = story.start(1);
    story.act("unload", &[("run", &today.to_string())]);
    assert_eq!(story.run(today).number, 1);
    let (day, _) = ago(48);
    let machine = story.machine.clone();
    story.act(
        "later-run",
        &[
            ("on", &day),
            ("at", "10:10"),
            ("end-at", "10:58"),
            ("machine", &machine),
            ("programme", "Middle"),
            ("kind", "manicure"),
            ("count", "2"),
        ],
    );
    let started = newest(&story, |body| matches!(body, Body::RunStarted { .. }));
    let Body::RunStarted { run, number, .. } = started.body else { panic!("a run") };
    assert_eq!(number, 1, "the first run of its day");
    assert_eq!(started.stamp.known, Known::FromPaper);
    assert!((started.stamp.written - started.stamp.happened).millis() > 24 * 3_600_000);
    let row = story.run(run);
    let took = row.unloaded.expect("it is out") - row.started.0;
    assert_eq!(took.millis(), 48 * 60_000);
    let (_, log) = story.salon.get("/log");
    assert!(log.contains("from paper") && log.contains("written later"));
    // The numbers, the mark inside, and one pouch that was wet: it stays wet, whatever comes later.
    let named = run.to_string();
    let pouches = story.book.read(|view| view.pouches_of_run(run)).expect("pouches");
    let wet = pouches[0].pouch.to_string();
    let numbers = [
        ("lowest", "134.4"),
        ("minutes", "4"),
        ("seconds", "10"),
        ("degrees", "C"),
        ("pressure", "308"),
        ("unit", "kPa-abs"),
    ];
    let looked = |at: &'static str, more: &[(&'static str, &str)]| {
        let mut fields = vec![("run", named.as_str()), ("on", day.as_str()), ("at", at)];
        fields.extend([("marks", "all"), ("inner", "yes")]);
        fields.extend(more.iter().map(|(k, v)| (*k, *v)));
        fields.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect::<Vec<_>>()
    };
    let pairs = |fields: &[(String, String)]| {
        fields.iter().map(|(k, v)| (k.clone(), v.clone())).collect::<Vec<_>>()
    };
    let post = |fields: &[(String, String)], taken: bool| {
        let fields = pairs(fields);
        let fields: Vec<_> = fields.iter().map(|(k, v)| (k.as_str(), v.as_str())).collect();
        if taken { story.act("later-look", &fields) } else { story.refused("later-look", &fields) }
    };
    post(&looked("10:30", &[("dry", "all")]), false); // it was still in the machine then
    post(&looked("11:10", &[("dry", "all")]), false); // no numbers
    let mut first = numbers.to_vec();
    first.extend([("dry", "not"), ("wet", wet.as_str())]);
    post(&looked("11:12", &first), true);
    let states = || {
        let rows = story.book.read(|view| view.pouches_of_run(run)).expect("pouches");
        rows.iter().map(|row| row.state).collect::<Vec<_>>()
    };
    assert_eq!(states(), [SetState::SetAside, SetState::ToCheck]);
    post(&looked("11:20", &[("dry", "all")]), true);
    assert_eq!(states(), [SetState::SetAside, SetState::Ready], "dry later is still wet");
}

/// Entries twelve and five days ago, on the same day of the week, and nothing between: the hours
/// after the first of them, and those after the second, are asked about.
#[test]
fn a_gap_is_asked_about_and_stays_with_its_reason() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    for days in [12, 5] {
        let (day, _) = ago(days * 24);
        story.act("later-wash", &[("on", &day), ("at", "10:00"), ("count.manicure", "1")]);
    }
    let (_, log) = story.salon.get("/log");
    let asked = |log: &str| log.matches("action=\"/act/gap\"").count();
    assert_eq!(asked(&log), 2);
    let field = |name: &str| {
        let after = log.split(&format!("name=\"{name}\" value=\"")).last().expect("a field");
        after.split('"').next().expect("a value").to_owned()
    };
    let (from, to) = (field("from"), field("to"));
    let fields = [("act", &*id()), ("from", &*from), ("to", &*to), ("why", "holiday")];
    assert_eq!(story.salon.post("/act/gap", &fields), Some(303), "no sign is asked for");
    let (_, log) = story.salon.get("/log");
    assert_eq!(asked(&log), 1);
    assert_eq!(log.matches("class=\"gap\"").count(), 2, "it stays visible");
    assert!(log.contains("Holiday"));
    // A day that was set closed is no gap.
    let closed = ago(5 * 24).0;
    story.act("later-closed", &[("on", &closed)]);
    let (_, log) = story.salon.get("/log");
    assert_eq!(asked(&log), 0);
}
