//! `steamside sets` from outside: what it prints, and that it says the same on any thread count.

use super::salon::{Salon, program};
use serde_json::Value;
use std::path::Path;

/// A made-up day: 12 appointments, two kinds of sets, one machine.
const DAY: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/it/days/small.json");

fn sets(day: &str, more: &[&str]) -> (i32, String, String) {
    let out = program().args(["sets", day]).args(more).output().expect("it runs");
    let text = |bytes| String::from_utf8(bytes).expect("text");
    (out.status.code().expect("a status"), text(out.stdout), text(out.stderr))
}

fn objects(text: &str) -> Vec<Value> {
    text.lines().map(|line| serde_json::from_str(line).expect("one object a line")).collect()
}

#[test]
fn one_object_a_count_the_same_on_any_thread_count() {
    let asked = ["--kind", "manicure", "--from", "3", "--to", "6", "--days", "500", "--seed", "7"];
    let on = |threads| {
        let more =
            [&asked[..], &["--format", "json", "--confirm", "8", "--threads", threads]].concat();
        sets(DAY, &more)
    };
    let (status, text, _) = on("1");
    assert_eq!(status, 0);
    assert_eq!(text, on("2").1);
    assert_eq!(text, on("7").1);
    let objects = objects(&text);
    let owned: Vec<&Value> = objects.iter().map(|object| &object["owned"]).collect();
    assert_eq!(owned, [3, 4, 5, 6]);
    for object in &objects {
        let number = |key: &str| object[key].as_f64().expect("a number");
        assert!(number("low") <= number("share") && number("share") <= number("high"), "{object}");
        assert_eq!((&object["kind"], number("level")), (&Value::from("manicure"), 0.95));
        assert_eq!((&object["days"], &object["seed"]), (&Value::from(500), &Value::from(7)));
        let confirmed = |key: &str| object["confirmed"][key].as_f64().expect("a number");
        assert!(confirmed("policy") <= confirmed("planner"), "{object}");
    }
}

#[test]
fn another_seed_is_another_sample() {
    let with = |seed| {
        let more = ["--format", "json", "--days", "500", "--confirm", "0", "--seed", seed];
        objects(&sets(DAY, &more).1)
    };
    let (one, two) = (with("1"), with("2"));
    assert_eq!(one[0]["confirmed"], Value::Null);
    let shares =
        |objects: &[Value]| objects.iter().map(|o| o["share"].to_string()).collect::<Vec<_>>();
    assert_ne!(shares(&one), shares(&two));
}

#[test]
fn what_else_would_buy_time_comes_after_the_counts() {
    let more =
        ["--kind", "pedicure", "--from", "3", "--to", "3", "--days", "500", "--confirm", "0"];
    let (status, text, _) = sets(DAY, &[&more[..], &["--what-if", "--format", "json"]].concat());
    let objects = objects(&text);
    let what: Vec<&Value> = objects.iter().map(|object| &object["one_more"]).collect();
    assert_eq!((status, what[0]), (0, &Value::Null));
    assert_eq!(what[1..], ["set", "set", "machine", "lunch"]);
    for object in &objects[1..] {
        for key in ["kind", "minutes", "price", "clients_a_year", "saved_a_year", "pays_back_years"]
        {
            assert!(object.get(key).is_some(), "{key} is missing");
        }
    }
}

#[test]
fn people_read_what_is_assumed() {
    let (status, text, _) =
        sets(DAY, &["--days", "200", "--confirm", "2", "--what-if", "--no-shows", "0.5"]);
    assert_eq!(status, 0);
    for part in [
        "4 owned now",
        "of 100 days",
        "planned beforehand",
        "To 50 of 100 appointments",
        "assumption",
    ] {
        assert!(text.contains(part), "{part} is missing in\n{text}");
    }
}

#[test]
fn what_cannot_be_used_is_said() {
    let check = |day: &str, more: &[&str], said: &str| {
        let (status, out, error) = sets(day, more);
        assert_eq!((status, out.as_str()), (2, ""), "{more:?}");
        assert!(error.contains(said), "{error}");
    };
    check("no-such-day.json", &[], "no-such-day.json");
    check(DAY, &["--kind", "toes"], "only manicure, pedicure");
    check(DAY, &["--from", "5", "--to", "2"], "upwards");
    check(DAY, &["--to", "251"], "250");
    check(DAY, &["--no-shows", "1.5"], "from 0 to 1");
    check(DAY, &["--days", "0"], "0");
    let folder = Path::new(DAY).parent().and_then(Path::to_str).expect("a folder");
    check(folder, &[], folder);
}

#[test]
fn the_page_grows_out_of_the_booked_day() {
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::demo(&home.path().join("demo"));
    let (status, page) = salon.get("/sets");
    assert_eq!(status, 200);
    for part in ["How many sets to own", "class=\"shares\"", "of 100 days", "(assumed)"] {
        assert!(page.contains(part), "{part} is missing");
    }
}
