//! The day plan from outside: the command against published values and an independent checker, and
//! the page from a proposal to an agreed plan.

use super::salon::{Salon, id, program};
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::Command;

fn day(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/it/days/{name}.json"))
}

fn plan(file: &Path, more: &[&str]) -> (i32, String, String) {
    let out = program().arg("plan").arg(file).args(more).output().expect("it runs");
    let text = |bytes| String::from_utf8(bytes).expect("text");
    (out.status.code().expect("a status"), text(out.stdout), text(out.stderr))
}

fn object(file: &Path, more: &[&str]) -> (i32, Value) {
    let (status, text, errors) = plan(file, &[&["--format", "json"], more].concat());
    let value = serde_json::from_str(text.trim()).unwrap_or_else(|e| panic!("{e}: {text}{errors}"));
    (status, value)
}

/// Values that two general solvers proved (the plan definition's `reference.csv`, columns `value_*`
/// and `bound_*` where they agree; of the two small days the first four levels).
const PROVEN: [(&str, &[u64]); 9] = [
    ("rule_lunch_a", &[0, 0, 1, 99, 3, 0]),
    ("rule_oneshort_a", &[0, 0, 1, 45, 2, 30]),
    ("rule_wholeday_a", &[0, 0, 1, 162, 0, 0]),
    ("tiny_01a", &[1, 0, 3, 252, 5, 25]),
    ("tiny_02a", &[0, 0, 3, 236, 7, 30]),
    ("tiny_03a", &[2, 0, 3, 268, 5, 30]),
    ("tiny_04a", &[0, 0, 1, 108, 4, 25]),
    ("small_01a", &[0, 0, 3, 316]),
    ("small_02a", &[0, 0, 3, 380]),
];

/// The checker of the plan definition: it shares no code with this program. `None` without Python.
fn checked(file: &Path, plan: &Value) -> Option<bool> {
    let kept = tempfile::NamedTempFile::new().expect("a file");
    std::fs::write(kept.path(), plan.to_string()).expect("written");
    let checker = day("verify_plan").with_extension("py");
    Some(
        Command::new("python3")
            .arg(checker)
            .arg(file)
            .arg(kept.path())
            .output()
            .ok()?
            .status
            .success(),
    )
}

#[test]
fn published_values_are_reached_and_proven() {
    for (name, expected) in PROVEN {
        // All six levels are proven, which ends the search long before this.
        let (status, found) = object(&day(name), &["--time-limit", "60"]);
        let numbers = |key: &str| -> Vec<u64> {
            found[key]
                .as_array()
                .expect("six")
                .iter()
                .map(|n| n.as_u64().expect("proven"))
                .collect()
        };
        assert_eq!(&numbers("objective")[..expected.len()], expected, "{name}");
        assert_eq!(numbers("bound"), numbers("objective"), "{name}");
        assert_eq!(status, i32::from(expected[0] > 0), "{name}");
        assert_eq!(found["instance"], name);
        let runs = found["runs"].as_array().expect("runs").len();
        assert_eq!(found["explain"].as_array().expect("sentences").len(), runs);
        match checked(&day(name), &found) {
            Some(fits) => assert!(fits, "{name}: the checker objects to {found}"),
            None => eprintln!("skipped the independent checker: there is no python3"),
        }
    }
}

#[test]
fn the_salons_order_is_named_with_its_values() {
    let (_, found) = object(&day("rule_lunch_a"), &["--time-limit", "0.2", "--order", "salon"]);
    let order: Vec<&str> =
        found["order"].as_array().expect("names").iter().filter_map(Value::as_str).collect();
    assert_eq!(order[..3], ["unmet", "short", "immediate"]);
    assert_eq!(found["salon"].as_array().expect("values").len(), order.len());
    assert_eq!(found["objective"], serde_json::json!([0, 0, 1, 99, 3, 0]));
    let (status, text, _) =
        plan(&day("rule_lunch_a"), &["--time-limit", "0.2", "--order", "salon"]);
    assert_eq!(status, 0);
    assert!(text.contains("Start the middle cycle on machine m1"), "{text}");
    assert!(!text.to_lowercase().contains(concat!("ste", "rile")), "{text}");
}

#[test]
fn what_is_no_day_ends_with_two_and_a_sentence() {
    let home = tempfile::tempdir().expect("a folder");
    let file = home.path().join("day.json");
    let good: Value =
        serde_json::from_slice(&std::fs::read(day("tiny_01a")).expect("a day")).expect("JSON");
    let broken = |change: fn(&mut Value)| {
        let mut day = good.clone();
        change(&mut day);
        day.to_string()
    };
    let cases = [
        String::new(),
        "{".to_owned(),
        "[]".to_owned(),
        "\u{0}\u{1}binary".to_owned(),
        broken(|d| d["format"] = "dayplan-9".into()),
        broken(|d| d["slot_min"] = 0.into()),
        broken(|d| d["slots"] = 1_000_000_000.into()),
        broken(|d| d["hands"] = serde_json::json!([1, 2])),
        broken(|d| d["services"][1]["id"] = d["services"][0]["id"].clone()),
        broken(|d| d["machines"][0]["cycles"][0]["load_min"] = u32::MAX.into()),
        broken(|d| d["machines"][0]["free_from_slot"] = u64::MAX.into()),
        broken(|d| d["hands"][0] = u32::MAX.into()),
        broken(|d| d["kinds"][0]["owned"] = (-3).into()),
        broken(|d| d["services"][0]["needs"] = serde_json::json!({"unheard of": 1})),
        broken(|d| d["services"][0]["start_min"] = 100_000.into()),
        broken(|d| d["machines"][0]["cycles"][0]["drying"] = "half".into()),
        broken(|d| d["carry"] = serde_json::json!({"ready_at": {"manicure": [[9999, 1]]}})),
    ];
    for case in cases {
        std::fs::write(&file, &case).expect("written");
        let (status, text, errors) = plan(&file, &["--format", "json", "--time-limit", "0.1"]);
        assert_eq!((status, text.as_str()), (2, ""), "{case}");
        assert!(errors.contains("day.json: ") && errors.lines().count() == 1, "{errors}");
    }
    assert_eq!(plan(&home.path().join("missing.json"), &[]).0, 2);
    assert_eq!(plan(home.path(), &[]).0, 2);
}

#[test]
fn a_day_without_machine_kinds_or_clients_is_a_day() {
    let home = tempfile::tempdir().expect("a folder");
    let file = home.path().join("day.json");
    for empty in ["machines", "services", "kinds"] {
        let mut d: Value =
            serde_json::from_slice(&std::fs::read(day("tiny_02a")).expect("a day")).expect("JSON");
        d[empty] = serde_json::json!([]);
        if empty == "kinds" {
            d["services"] = serde_json::json!([]);
        }
        std::fs::write(&file, d.to_string()).expect("written");
        let (status, found) = object(&file, &["--time-limit", "0.2"]);
        assert!((0..=1).contains(&status), "{empty}");
        assert_ne!(checked(&file, &found), Some(false), "{empty}: {found}");
    }
}

/// The hidden fields of the form that agrees to the plan.
fn hidden(page: &str, name: &str) -> Vec<String> {
    let mark = format!("name=\"{name}\" value=\"");
    page.split(&mark).skip(1).filter_map(|rest| Some(rest.split('"').next()?.to_owned())).collect()
}

#[test]
fn a_plan_is_shown_agreed_to_and_stands() {
    let home = tempfile::tempdir().expect("a folder");
    let folder = home.path().join("demo");
    let mut salon = Salon::demo(&folder);
    let (status, page) = salon.get("/plan");
    assert_eq!(status, 200);
    if hidden(&page, "from").is_empty() {
        // Late in the evening nothing is left of the demo's day, and the page says so.
        assert!(page.contains("Nothing is planned"), "{page}");
        return;
    }
    let one = |name: &str| hidden(&page, name).first().cloned().expect(name);
    let sign = page
        .split("name=\"sign\" value=\"")
        .nth(1)
        .and_then(|r| r.split('"').next())
        .expect("a sign");
    let (act, from, to) = (id(), one("from"), one("to"));
    let mut fields = vec![("act", act.as_str()), ("from", &from), ("to", &to), ("sign", sign)];
    let runs = hidden(&page, "run");
    fields.extend(runs.iter().map(|run| ("run", run.as_str())));
    assert_eq!(salon.post("/act/accept-plan", &fields), Some(303));
    let (_, agreed) = salon.get("/plan");
    assert!(!agreed.contains("Agree to this plan"), "an agreed plan is mended, not proposed again");
    assert_eq!(salon.get("/plan/ways").0, 200);
    // What no page of ours packed is refused and writes nothing.
    let other = id();
    let bad =
        [("act", other.as_str()), ("from", &from), ("to", &to), ("sign", sign), ("run", "x|y")];
    assert_ne!(salon.post("/act/accept-plan", &bad), Some(303));
    assert!(salon.interrupt().success());
}
