//! Every file that the fuzzer kept is judged, and what is called lethal was held.

use crate::records::judged;
use cycle::record::{Known, read};
use release::verdict::Outcome;
use std::path::Path;

#[test]
fn every_kept_input_is_judged() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fuzz/corpus/read");
    let (mut cycles, mut lethal) = (0, 0);
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let Ok(records) = read(std::fs::read(&path).unwrap().as_slice(), &Known::default()) else {
            continue;
        };
        for record in records {
            cycles += 1;
            let (figures, verdict) = judged(&record);
            assert!(!verdict.reasons.is_empty(), "{path:?}");
            if verdict.outcome == Outcome::Lethal {
                lethal += 1;
                // The least of the published holds: 134 °C 3 min, Central Sterilising Club 2025,
                // Table 10.2.
                assert!(figures.hold_s >= 180.0 && figures.f0_low_min > 0.0, "{path:?}");
            }
        }
    }
    assert!(cycles > 100 && lethal > 10, "{cycles} cycles, {lethal} lethal");
}

/// Made cycles that were once called lethal and were not: each has the flaw that its name says.
#[test]
fn what_the_fuzzer_found_unproven_stays_so() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fuzz/corpus/unproven");
    let mut files = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        for record in read(std::fs::read(&path).unwrap().as_slice(), &Known::default()).unwrap() {
            let (_, verdict) = judged(&record);
            assert_ne!(verdict.outcome, Outcome::Lethal, "{path:?}: {:?}", verdict.reasons);
        }
        files += 1;
    }
    assert!(files > 0);
}
