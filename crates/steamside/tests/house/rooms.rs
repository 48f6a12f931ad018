//! Which room may use which, and which library belongs to one room.

use super::{none, one, root};
use serde_json::Value;
use std::collections::BTreeSet;
use std::process::Command;

/// The table of `docs/decisions/0001-the-house.md`. No arrow but these.
const MAY_USE: &[(&str, &[&str])] = &[
    ("measure", &[]),
    ("load", &["measure"]),
    ("cycle", &["measure", "load"]),
    ("release", &["measure", "load", "cycle"]),
    ("day", &["measure", "load", "cycle"]),
    ("logbook", &["measure", "load", "cycle", "release", "day"]),
    ("papers", &["measure", "load", "cycle", "release", "day"]),
    ("steamside", &["measure", "load", "cycle", "release", "day", "logbook", "papers"]),
];

/// Libraries that only these rooms may use, and why.
const ONLY: &[(&str, &[&str], &str)] = &[
    ("rusqlite", &["logbook"], "SQL is known in one room"),
    ("axum", &["steamside"], "HTTP is known in one room"),
    ("maud", &["steamside"], "HTML is known in one room"),
    ("tokio", &["steamside"], "the core does not wait for anything"),
    ("getrandom", &["logbook", "steamside"], "chance is handed in"),
    ("libm", &["measure"], "powers and logarithms have one home"),
    ("fast_qr", &["papers"], "only labels carry a code"),
    ("serde", &["logbook", "steamside"], "core types promise no stored form"),
];

const MOST_ROOMS: usize = 8;

/// One crate, as the checks see it.
#[derive(Clone)]
pub(super) struct Room {
    pub(super) name: String,
    folder: String,
    /// Name and whether only tests use it.
    uses: Vec<(String, bool)>,
}

impl Room {
    /// A made-up one.
    pub(super) fn new(name: &str, folder: &str, uses: &[(&str, bool)]) -> Self {
        let used = |(name, test): &(&str, bool)| ((*name).to_owned(), *test);
        Self {
            name: name.to_owned(),
            folder: folder.to_owned(),
            uses: uses.iter().map(used).collect(),
        }
    }

    /// Whether the room or its tests use this.
    pub(super) fn uses(&self, name: &str) -> bool {
        self.uses.iter().any(|(used, _)| used == name)
    }
}

/// The crates of the workspace, by what cargo says of them.
pub(super) fn rooms() -> Vec<Room> {
    let answer = Command::new(env!("CARGO"))
        .args(["metadata", "--format-version=1", "--no-deps", "--offline"])
        .arg("--manifest-path")
        .arg(root().join("Cargo.toml"))
        .output()
        .expect("cargo runs");
    assert!(answer.status.success(), "{}", String::from_utf8_lossy(&answer.stderr));
    let metadata: Value = serde_json::from_slice(&answer.stdout).expect("cargo writes JSON");
    let packages = metadata["packages"].as_array().expect("packages");
    packages.iter().map(room).collect()
}

fn room(package: &Value) -> Room {
    let word = |value: &Value| value.as_str().expect("a text").to_owned();
    let manifest = word(&package["manifest_path"]);
    let folder = manifest.rsplit(['/', '\\']).nth(1).expect("a folder");
    let used = package["dependencies"].as_array().expect("dependencies");
    Room {
        name: word(&package["name"]),
        folder: folder.to_owned(),
        uses: used.iter().map(|one| (word(&one["name"]), one["kind"] == "dev")).collect(),
    }
}

fn faults(rooms: &[Room]) -> Vec<String> {
    let mut faults = Vec::new();
    if rooms.len() > MOST_ROOMS {
        faults.push(format!("{} rooms, at most {MOST_ROOMS}", rooms.len()));
    }
    for room in rooms {
        let Room { name, folder, uses } = room;
        if name != folder {
            faults.push(format!("the room {name} lies in the folder {folder}"));
        }
        let Some((_, allowed)) = MAY_USE.iter().find(|(known, _)| known == name) else {
            faults.push(format!("{name} is no room of the table"));
            continue;
        };
        // A test may not add an arrow either: what is hard to test without it is in the wrong room.
        for (used, _) in uses {
            let is_room = MAY_USE.iter().any(|(known, _)| known == used);
            if is_room && !allowed.contains(&used.as_str()) {
                faults.push(format!("{name} uses {used}, an arrow that is not in the table"));
            }
        }
        for (library, homes, why) in ONLY {
            let used = uses.iter().any(|(used, test)| used == library && !test);
            if used && !homes.contains(&name.as_str()) {
                faults.push(format!("{name} uses {library}: {why}"));
            }
        }
    }
    faults
}

#[test]
fn the_rooms_use_each_other_as_the_table_says() {
    none(faults(&rooms()));
}

/// The table itself: no circle, and the core knows neither the book nor the outside.
#[test]
fn the_table_has_no_circle() {
    let mut before = BTreeSet::new();
    for (name, uses) in MAY_USE {
        for used in *uses {
            assert!(before.contains(used), "{name} uses {used}, which comes later");
        }
        before.insert(*name);
    }
}

#[test]
fn a_wrong_arrow_a_wrong_folder_and_a_ninth_room_are_found() {
    let room = Room::new;
    none(faults(&[room("day", "day", &[("cycle", false), ("proptest", true)])]));
    one(faults(&[room("day", "day", &[("release", false)])]), "day uses release");
    one(faults(&[room("day", "day", &[("logbook", true)])]), "day uses logbook");
    one(faults(&[room("day", "days", &[])]), "folder days");
    one(faults(&[room("helpers", "helpers", &[])]), "no room of the table");
    one(faults(&[room("cycle", "cycle", &[("rusqlite", false)])]), "SQL");
    none(faults(&[room("cycle", "cycle", &[("rusqlite", true)])]));
    one(faults(&vec![room("load", "load", &[]); 9]), "9 rooms");
}
