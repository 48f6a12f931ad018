//! The house keeps its own rules: rooms and arrows, sizes, lints, words, and that the pages which
//! describe the house describe this one.
//!
//! Each rule is a function from text to the faults it finds, so that each has a test on a made-up
//! house that breaks it: a check that cannot fail is no check.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

mod describe;
mod lints;
mod rooms;
mod sizes;
mod words;

use std::path::{Path, PathBuf};

/// The root of the workspace.
fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// A file under the root, as text.
fn text(path: impl AsRef<Path>) -> String {
    let path = root().join(path);
    std::fs::read_to_string(&path).unwrap_or_else(|why| panic!("{}: {why}", path.display()))
}

/// All files below a folder of the root with one of these endings, by their path from the root.
fn files(below: &str, endings: &[&str]) -> Vec<String> {
    let mut found = Vec::new();
    let mut open = vec![root().join(below)];
    while let Some(folder) = open.pop() {
        for entry in std::fs::read_dir(&folder).expect("a folder of the workspace") {
            let path = entry.expect("a readable entry").path();
            let ending = path.extension().and_then(|ending| ending.to_str());
            if path.is_dir() {
                if !path.ends_with("target") {
                    open.push(path);
                }
            } else if ending.is_some_and(|ending| endings.contains(&ending)) {
                let inside = path.strip_prefix(root()).expect("below the root");
                found.push(inside.to_string_lossy().replace('\\', "/"));
            }
        }
    }
    found.sort();
    found
}

/// Fails with every fault on a line of its own.
#[track_caller]
fn none(faults: Vec<String>) {
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

/// Fails unless exactly one fault was found, and it speaks of `about`.
#[track_caller]
fn one(faults: Vec<String>, about: &str) {
    assert!(
        matches!(faults.as_slice(), [fault] if fault.contains(about)),
        "expected one fault about {about:?}, found {faults:#?}"
    );
}
