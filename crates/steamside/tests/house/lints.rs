//! The lints are on everywhere, each says why, and the pure rooms have the stricter list.

use super::{none, one, rooms, root, text};

/// Rooms without a clock, disk, network, environment or chance of their own.
const PURE: &[&str] = &["measure", "load", "cycle", "release", "day", "papers"];

/// One of each kind that the strict list must name; the list itself has more.
const BANNED: &[&str] = &[
    "std::time::SystemTime",
    "std::time::Instant",
    "std::fs::read",
    "std::fs::File",
    "std::net::TcpStream",
    "std::process::Command",
    "std::env::var",
    "std::collections::HashMap",
    "f64::exp",
    "f64::ln",
    "f64::log10",
    "f64::powf",
    "f64::powi",
    "f64::sin",
];

/// Crates that do not take the workspace's lints.
fn opted_out(name: &str, manifest: &str) -> Vec<String> {
    let lints = manifest.split("[lints]").nth(1);
    let taken = lints.is_some_and(|rest| rest.trim_start().starts_with("workspace = true"));
    let fault = format!("{name} does not take the workspace's lints");
    if taken { Vec::new() } else { vec![fault] }
}

/// Lints of the root manifest without a sentence above them.
fn without_reason(manifest: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let (mut inside, mut above) = (false, "");
    for line in manifest.lines().map(str::trim) {
        if line.starts_with('[') {
            inside = line.starts_with("[workspace.lints");
        } else if inside && line.contains('=') && !line.starts_with('#') && !above.starts_with('#')
        {
            faults.push(format!("{line}: no reason above it"));
        }
        above = line;
    }
    faults
}

/// What is wrong with the strict list of one room.
fn unstrict(name: &str, list: &str) -> Vec<String> {
    let lines = || list.lines().map(str::trim).filter(|line| line.starts_with("{ path"));
    let mut faults: Vec<String> = BANNED
        .iter()
        .filter(|banned| !lines().any(|line| line.contains(&format!("\"{banned}\""))))
        .map(|banned| format!("crates/{name}/clippy.toml does not name {banned}"))
        .collect();
    let bare = lines().filter(|line| !line.contains("reason = \""));
    faults.extend(bare.map(|line| format!("crates/{name}/clippy.toml: no reason: {line}")));
    faults
}

#[test]
fn every_crate_takes_the_lints_and_every_lint_says_why() {
    let manifest = |name: &str| text(format!("crates/{name}/Cargo.toml"));
    let rooms = rooms::rooms();
    let out = rooms.iter().flat_map(|room| opted_out(&room.name, &manifest(&room.name)));
    none(out.chain(without_reason(&text("Cargo.toml"))).collect());
}

/// The strict list replaces the root's in a room, it does not add to it, so each pure room has
/// its own copy; they may not drift apart.
#[test]
fn the_pure_rooms_share_one_strict_list() {
    let list = |name: &str| text(format!("crates/{name}/clippy.toml"));
    for name in PURE {
        assert_eq!(list(name), list("measure"), "crates/{name}/clippy.toml differs");
    }
    none(unstrict("measure", &list("measure")));
    assert!(root().join("clippy.toml").exists());
}

#[test]
fn a_crate_that_opts_out_is_found() {
    none(opted_out("a", "[package]\n\n[lints]\nworkspace = true\n"));
    one(opted_out("a", "[package]\n"), "a does not take");
    one(opted_out("a", "[lints]\nworkspace = false\n"), "a does not take");
}

#[test]
fn a_lint_without_a_reason_is_found() {
    let with = "[workspace.lints.rust]\n# Nobody needs it.\nunsafe_code = \"forbid\"\n[profile.dev]\ndebug = 1\n";
    none(without_reason(with));
    one(without_reason(&with.replace("# Nobody needs it.\n", "")), "unsafe_code");
    one(without_reason(&with.replace("\n[profile", "\ntwo = \"warn\"\n[profile")), "two");
}

#[test]
fn a_gap_in_the_strict_list_is_found() {
    let full: String = BANNED
        .iter()
        .map(|banned| format!("  {{ path = \"{banned}\", reason = \"because\" }},\n"))
        .collect();
    none(unstrict("a", &full));
    one(unstrict("a", &full.replace("\"f64::ln\"", "\"f64::abs\"")), "does not name f64::ln");
    let bare = full.replacen(", reason = \"because\"", "", 1);
    one(unstrict("a", &bare), "no reason");
}
