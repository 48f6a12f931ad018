//! The commands from outside: what they print, how they end, what they leave alone.

use super::salon::{Salon, program};
use serde_json::Value;
use std::path::Path;

fn verify(book: &Path) -> (i32, Value) {
    let out = program().args(["verify", "--format", "json"]).arg(book).output().expect("it runs");
    let text = String::from_utf8(out.stdout).expect("text");
    (out.status.code().expect("a status"), serde_json::from_str(&text).unwrap_or_default())
}

#[test]
fn the_demo_opens_answers_and_ends_on_ctrl_c() {
    let home = tempfile::tempdir().expect("a folder");
    let folder = home.path().join("demo");
    let mut salon = Salon::demo(&folder);
    for page in [
        "/", "/wash", "/start", "/machine", "/ready", "/chair", "/log", "/setup", "/plan",
        "/visits",
    ] {
        let (status, text) = salon.get(page);
        assert_eq!(status, 200, "{page}");
        assert!(text.contains("DEMO"), "{page} does not say that it is a demo");
    }
    assert_eq!(salon.get("/no-such-page").0, 404);
    assert!(salon.interrupt().success());
    let records = folder.join("records").read_dir().expect("a folder").count();
    assert_eq!(records, 4, "a good run, a short one, one with air left in, one cut off");
    let (status, report) = verify(&folder);
    assert_eq!((status, &report["ok"]), (0, &Value::Bool(true)));
    for key in ["ok", "facts", "first_at", "last_at", "head", "first_bad"] {
        assert!(report.get(key).is_some(), "{key} is missing");
    }
}

#[test]
fn the_demo_leaves_a_folder_alone_that_is_none() {
    let home = tempfile::tempdir().expect("a folder");
    std::fs::write(home.path().join("thesis.txt"), "years of work").expect("a file");
    let out = program().args(["demo", "--folder"]).arg(home.path()).output().expect("it runs");
    assert_eq!(out.status.code(), Some(2));
    assert!(home.path().join("thesis.txt").exists());
}

#[test]
fn records_of_the_demo_are_judged_as_their_names_say() {
    let home = tempfile::tempdir().expect("a folder");
    let folder = home.path().join("demo");
    drop(Salon::demo(&folder));
    let records = folder.join("records");
    let expected = [
        ("1-short-at-temperature.csv", "not lethal"),
        ("2-air-left-in.csv", "not lethal"),
        ("3-cut-off.csv", "cannot tell"),
        ("4-good-run.csv", "lethal"),
    ];
    for (name, verdict) in expected {
        let file = records.join(name);
        let out =
            program().args(["check", "--format", "json"]).arg(&file).output().expect("it runs");
        let report: Value = serde_json::from_slice(&out.stdout).expect("one object");
        assert_eq!(report["verdict"], verdict, "{name}");
        let taken =
            program().arg("take").arg(&file).arg("--book").arg(&folder).output().expect("it runs");
        let said = String::from_utf8_lossy(&taken.stdout).into_owned();
        assert!(said.contains("1 of 1 cycles belong to a run"), "{name}: {said}");
    }
}

#[test]
fn what_cannot_be_used_ends_with_two() {
    let home = tempfile::tempdir().expect("a folder");
    let missing = home.path().join("nothing-here");
    assert_eq!(verify(&missing).0, 2);
    let out = program().args(["take", "x.csv", "--book"]).arg(&missing).output().expect("it runs");
    assert_eq!(out.status.code(), Some(2));
    let busy = std::net::TcpListener::bind("127.0.0.1:0").expect("a port");
    let at = busy.local_addr().expect("its address").to_string();
    let book = home.path().join("book");
    let out = program().args(["serve", "--listen", &at, "--book"]).arg(&book).output();
    let out = out.expect("it runs");
    assert_eq!(out.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&out.stderr).contains("--listen"), "it says the way out");
}
