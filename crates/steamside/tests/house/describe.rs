//! The pages that describe the house describe this one: the map, the list of libraries, the list
//! of changes.

use super::rooms::{self, Room};
use super::{none, one, root, text};
use std::collections::BTreeSet;

/// Headings that a list of changes may have under a version.
const CHANGES: &[&str] = &["Added", "Changed", "Fixed", "Removed", "Security"];

/// The folder names that follow `crates/` in a text.
fn named_rooms(map: &str) -> BTreeSet<String> {
    let name = |rest: &str| rest.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
    let all = map.split("crates/").skip(1).map(name);
    all.filter(|name: &String| !name.is_empty()).collect()
}

/// Rooms that the map leaves out or makes up.
fn map_faults(map: &str, rooms: &BTreeSet<String>) -> Vec<String> {
    let named = named_rooms(map);
    let left_out = rooms.difference(&named).map(|name| format!("left out: crates/{name}"));
    let made_up = named.difference(rooms).map(|name| format!("made up: crates/{name}"));
    left_out.chain(made_up).collect()
}

/// Paths in backquotes that begin at the root's folders and are not there.
fn dead_paths(page: &str, exists: impl Fn(&str) -> bool) -> Vec<String> {
    let quoted = page.split('`').skip(1).step_by(2);
    let path = |text: &&str| ["crates/", "docs/", "bench/"].iter().any(|top| text.starts_with(top));
    // A star stands for "each of them".
    let whole = quoted.filter(path).filter(|path| !path.contains(['*', ' ']));
    whole.filter(|path| !exists(path)).map(|path| format!("not there: {path}")).collect()
}

/// The libraries of the root manifest that are not rooms.
fn libraries(manifest: &str) -> BTreeSet<String> {
    let section = manifest.split("[workspace.dependencies]").nth(1).unwrap_or_default();
    let lines = section.lines().take_while(|line| !line.starts_with('['));
    let entries = lines.filter_map(|line| line.split_once('='));
    entries
        .filter(|(name, value)| !name.starts_with('#') && !value.contains("path ="))
        .map(|(name, _)| name.trim().trim_end_matches(".workspace").to_owned())
        .collect()
}

/// Libraries without a line, and lines without a library.
fn library_faults(page: &str, libraries: &BTreeSet<String>) -> Vec<String> {
    let row = |line: &str| line.strip_prefix("| `")?.split_once('`').map(|(n, _)| n.to_owned());
    let listed: BTreeSet<String> = page.lines().filter_map(row).collect();
    let without = libraries.difference(&listed).map(|name| format!("no line: {name}"));
    let unused = listed.difference(libraries).map(|name| format!("not used: {name}"));
    without.chain(unused).collect()
}

/// Libraries of the root manifest that no room uses.
fn unused(libraries: &BTreeSet<String>, rooms: &[Room]) -> Vec<String> {
    let used = |name: &String| rooms.iter().any(|room| room.uses(name));
    let unused = libraries.iter().filter(|name| !used(name));
    unused.map(|name| format!("no room uses {name}")).collect()
}

/// Headings of the list of changes that are not the fixed ones.
fn change_faults(changes: &str) -> Vec<String> {
    let mut faults = Vec::new();
    if !changes.starts_with("# Changelog\n") {
        faults.push("the first line is not `# Changelog`".to_owned());
    }
    let versions: Vec<&str> = changes.lines().filter_map(|line| line.strip_prefix("## ")).collect();
    if versions.first() != Some(&"Unreleased") {
        faults.push("the first version is not `Unreleased`".to_owned());
    }
    let kinds = changes.lines().filter_map(|line| line.strip_prefix("### "));
    let unknown = kinds.filter(|kind| !CHANGES.contains(kind));
    faults.extend(unknown.map(|kind| format!("{kind} is not one of {CHANGES:?}")));
    faults
}

fn set(names: &[&str]) -> BTreeSet<String> {
    names.iter().map(|name| (*name).to_owned()).collect()
}

#[test]
fn the_map_names_the_rooms_that_exist_and_no_other() {
    let rooms = rooms::rooms().into_iter().map(|room| room.name).collect();
    none(map_faults(&text("ARCHITECTURE.md"), &rooms));
}

#[test]
fn the_pages_name_no_file_that_is_gone() {
    for page in ["ARCHITECTURE.md", "CONTRIBUTING.md", "README.md"] {
        none(dead_paths(&text(page), |path| root().join(path).exists()));
    }
}

#[test]
fn every_library_has_its_line_and_every_line_its_library() {
    let libraries = libraries(&text("Cargo.toml"));
    none(library_faults(&text("docs/dependencies.md"), &libraries));
    none(unused(&libraries, &rooms::rooms()));
}

#[test]
fn the_changelog_has_its_fixed_headings() {
    none(change_faults(&text("CHANGELOG.md")));
}

#[test]
fn every_decision_is_in_the_index() {
    let index = text("docs/decisions/README.md");
    let decisions = super::files("docs/decisions", &["md"]);
    let names = decisions.iter().filter_map(|path| path.rsplit('/').next());
    let missing = names.filter(|name| *name != "README.md" && !index.contains(name));
    none(missing.map(|name| format!("not in the index: {name}")).collect());
}

#[test]
fn a_map_of_another_house_is_found() {
    let rooms = set(&["day", "load"]);
    none(map_faults("`crates/day` and `crates/load/src/lib.rs`", &rooms));
    one(map_faults("`crates/day`", &rooms), "left out: crates/load");
    one(map_faults("crates/day crates/load crates/helpers", &rooms), "made up: crates/helpers");
}

#[test]
fn a_path_that_is_gone_is_found() {
    let exists = |path: &str| path == "crates/day/src/lib.rs";
    none(dead_paths("see `crates/day/src/lib.rs`, `day` and `crates/*/src`", exists));
    one(dead_paths("see `crates/day/src/plan.rs`", exists), "plan.rs");
}

#[test]
fn a_library_without_a_line_is_found() {
    let manifest = "[workspace.dependencies]\nday = { path = \"crates/day\" }\n\naxum = \"1\"\n# tests only\ninsta = \"1\"\n\n[profile.dev]\ndebug = 1\n";
    let used = libraries(manifest);
    assert_eq!(used, set(&["axum", "insta"]));
    none(library_faults("| `axum` | web |\n| `insta` | tests |\n", &used));
    one(library_faults("| `axum` | web |\n", &used), "no line: insta");
    let room = Room::new("day", "day", &[("insta", true)]);
    one(unused(&used, &[room]), "no room uses axum");
    one(library_faults("| `axum` |\n| `insta` |\n| `rand` |\n", &used), "not used: rand");
}

#[test]
fn an_odd_heading_is_found() {
    let good = "# Changelog\n\n## Unreleased\n\n### Added\n- A.\n";
    none(change_faults(good));
    one(change_faults(&good.replace("Added", "New")), "New");
    one(change_faults(&good.replace("Unreleased", "1.0")), "Unreleased");
    one(change_faults(&good.replace("# Changelog\n", "# News\n")), "Changelog");
}
