//! The made-up records of the room `cycle`, with the truth that goes with each.
//!
//! They come from a physical model of no machine in particular; the truth was worked out by another
//! program with a saturation formula of its own.

use cycle::figures::{Ask, Figures, examine};
use cycle::record::{CycleRecord, Known, read};
use release::limits::Limits;
use release::verdict::{Asked, Outcome, Verdict, judge};
use serde_json::Value;
use std::path::{Path, PathBuf};

pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../cycle/tests/records")
}

/// One cycle of one file.
pub struct Case {
    pub name: String,
    pub record: CycleRecord,
    pub truth: Value,
    /// Air pressure of the place, kPa.
    pub air_kpa: f64,
}

impl Case {
    /// Pressures counted from the air are only as true as the air pressure that the reader found.
    pub fn pressure_doubt_kpa(&self) -> f64 {
        let gauge = self.record.layout.pressure_reference == "gauge";
        let found = self.record.ambient_kpa.unwrap_or(self.air_kpa);
        if gauge { (found - self.air_kpa).abs() } else { 0.0 }
    }
}

/// All 37 cycles of the 34 files.
pub fn cases() -> Vec<Case> {
    let mut names: Vec<_> = std::fs::read_dir(folder())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.to_string_lossy().ends_with(".truth.json"))
        .collect();
    names.sort();
    assert_eq!(names.len(), 34);
    let cases: Vec<Case> = names.iter().flat_map(|path| cases_of(path)).collect();
    assert_eq!(cases.len(), 37);
    cases
}

fn cases_of(path: &Path) -> Vec<Case> {
    let truth: Value = serde_json::from_slice(&std::fs::read(path).unwrap()).unwrap();
    let file = truth["file"].as_str().unwrap();
    let bytes = std::fs::read(folder().join(file)).unwrap();
    let records = read(bytes.as_slice(), &Known::default()).unwrap();
    let air_kpa = truth["site"]["ambient_kpa"].as_f64().unwrap();
    let cycles = truth["cycles"].as_array().unwrap();
    assert_eq!(records.len(), cycles.len(), "{file}");
    records
        .into_iter()
        .zip(cycles)
        .map(|(record, truth)| Case {
            name: format!("{file} cycle {}", record.index),
            record,
            truth: truth.clone(),
            air_kpa,
        })
        .collect()
}

/// The record of one file with a single cycle.
pub fn record(file: &str) -> CycleRecord {
    let bytes = std::fs::read(folder().join(file)).unwrap();
    let mut records = read(bytes.as_slice(), &Known::default()).unwrap();
    assert_eq!(records.len(), 1, "{file}");
    records.remove(0)
}

/// Examined and judged by the published limits.
pub fn judged(record: &CycleRecord) -> (Figures, Verdict) {
    judged_for(record, load::Contents::Unknown)
}

pub fn judged_for(record: &CycleRecord, contents: load::Contents) -> (Figures, Verdict) {
    let limits = Limits::default();
    let figures = examine(record, &Ask { rules: limits.rules(), ..Ask::default() });
    let verdict = judge(record, &figures, &Asked::new(contents, &limits));
    (figures, verdict)
}

/// The outcome in the words of the truth files.
pub fn word(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Lethal => "lethal",
        Outcome::NotLethal => "not lethal",
        Outcome::CannotTell => "cannot tell",
        Outcome::LeakPass => "pass",
        Outcome::LeakFail => "fail",
    }
}
