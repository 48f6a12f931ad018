//! Files that somebody spoilt: what is said twice, or once and wrongly, proves nothing more.

use crate::records::{folder, judged};
use cycle::record::{CycleRecord, Known, read};
use release::verdict::Outcome;

/// Lines of a file of the made-up records that are plain bytes, with the place of its first and
/// last row.
struct Lines {
    file: String,
    lines: Vec<Vec<u8>>,
    rows: (usize, usize),
    records: Vec<CycleRecord>,
}

/// Every file with a single cycle, but for the one whose characters take two bytes.
fn files() -> Vec<Lines> {
    let mut names: Vec<_> = std::fs::read_dir(folder())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| !name.ends_with(".json"))
        .collect();
    names.sort();
    let files: Vec<_> = names.into_iter().filter_map(lines_of).collect();
    assert!(files.len() >= 30, "{}", files.len());
    files
}

fn lines_of(file: String) -> Option<Lines> {
    let bytes = std::fs::read(folder().join(&file)).unwrap();
    if bytes.starts_with(&[0xff, 0xfe]) {
        return None;
    }
    let records = read(bytes.as_slice(), &Known::default()).unwrap();
    let [record] = records.as_slice() else { return None };
    let places = || record.samples.line.iter().map(|&line| line as usize - 1);
    let rows = (places().min().unwrap(), places().max().unwrap());
    let lines = bytes.split_inclusive(|&byte| byte == b'\n').map(<[u8]>::to_vec).collect();
    Some(Lines { file, lines, rows, records })
}

/// Most seconds of a hold, and whether any cycle is lethal.
fn proven(records: &[CycleRecord]) -> (f64, bool) {
    records.iter().map(judged).fold((0.0, false), |(most, lethal), (figures, verdict)| {
        (figures.hold_s.max(most), lethal || verdict.outcome == Outcome::Lethal)
    })
}

impl Lines {
    /// These lines (from 0, the last not among them) pasted in once more before this line.
    fn pasted(&self, (from, until): (usize, usize), place: usize) -> Vec<CycleRecord> {
        let mut lines = self.lines.clone();
        lines.splice(place..place, self.lines[from..until].to_vec());
        // What cannot be read any more proves nothing.
        read(lines.concat().as_slice(), &Known::default()).unwrap_or_default()
    }
}

/// A hold of 132 s and one of 150 s (their truth files), each in the file twice.
#[test]
fn a_hold_pasted_behind_itself_counts_once() {
    for (name, first, last, hold_s) in [("p14.csv", 380, 512, 132.0), ("p18.txt", 156, 186, 150.0)]
    {
        let file = lines_of(name.to_owned()).unwrap();
        assert_eq!(proven(&file.records), (hold_s, false));
        let pasted = file.pasted((first - 1, last), last);
        assert_eq!(proven(&pasted), (hold_s, false), "{name}");
        let integrity = &pasted[0].integrity;
        assert_eq!(integrity.duplicated, last - first + 1, "{name}");
        assert_eq!(integrity.clock_jumps, [], "{name}");
    }
}

/// Pasting rows into the file a second time, anywhere, lengthens no hold and proves nothing.
#[test]
fn rows_pasted_twice_prove_nothing_more() {
    for file in files() {
        let (hold_s, lethal) = proven(&file.records);
        let (first, last) = file.rows;
        let count = last - first + 1;
        for (part, length) in [(0, 40), (1, 3), (2, 133), (3, 20), (4, 31), (5, 300)] {
            let from = first + count * part / 7;
            let until = (from + length).min(last + 1);
            for place in [until, first, from + length / 2, last + 1] {
                let place = place.min(last + 1);
                let (longer_s, now_lethal) = proven(&file.pasted((from, until), place));
                let what = format!("{} lines {from} to {until} at {place}", file.file);
                assert!(longer_s <= hold_s, "{what}: {longer_s} s, {hold_s} s before");
                assert!(lethal || !now_lethal, "{what}: lethal");
            }
        }
    }
}

/// A file whose first rows are gone: what was done about the air is not in it.
#[test]
fn files_that_begin_late_prove_nothing_more() {
    for file in files() {
        let (_, lethal) = proven(&file.records);
        let (first, last) = file.rows;
        let count = last - first + 1;
        for from in (1..count).step_by(count / 25 + 1) {
            let mut lines = file.lines.clone();
            lines.drain(first..first + from);
            let records = read(lines.concat().as_slice(), &Known::default()).unwrap_or_default();
            assert!(lethal || !proven(&records).1, "{} without {from} rows", file.file);
        }
    }
}
