//! Whatever the file holds, the reader answers in bounded memory and never stops the program.

use cycle::finding::Code;
use cycle::record::{CycleRecord, Known, Unreadable, cycles, read};
use proptest::prelude::*;
use std::io::Read;

fn of(text: &str) -> Result<Vec<CycleRecord>, Unreadable> {
    read(text.as_bytes(), &Known::default())
}

/// Ten rows at ambient, two seconds apart, with this in place of the sixth.
fn with_row(row: &str) -> CycleRecord {
    let mut text = String::from("time s,temp C,press kPa abs\n");
    for i in 0..12 {
        if i == 5 {
            text.push_str(row);
        } else {
            text.push_str(&format!("{},{}.5,100.{i}", i * 2, 20 + i));
        }
        text.push('\n');
    }
    of(&text).unwrap().remove(0)
}

/// Gives these bytes again and again, up to so many.
struct Endless {
    piece: Vec<u8>,
    at: usize,
    left: usize,
}

impl Endless {
    fn of(piece: &[u8], bytes: usize) -> Self {
        Self { piece: piece.to_vec(), at: 0, left: bytes }
    }
}

impl Read for Endless {
    fn read(&mut self, into: &mut [u8]) -> std::io::Result<usize> {
        let count = into.len().min(self.left);
        for b in &mut into[..count] {
            *b = self.piece[self.at];
            self.at = (self.at + 1) % self.piece.len();
        }
        self.left -= count;
        Ok(count)
    }
}

#[test]
fn what_is_no_record_is_refused_with_a_way_out() {
    for text in [
        "",
        "\n",
        "\n\n\n",
        "hello",
        "time,temp,press\n",
        "a,b,c\n1,2\n",
        "12:00:00,134.0,304",
        "time;temp\n;\n;\n",
        "{\"a\":1}\n",
        "{}\n{}\n{}\n",
        "=====\n=====\n",
        "x=1\nx=2\n",
        "\u{feff}",
        "time,temp\nnow,hot\nthen,cold\n",
    ] {
        let said = of(text).expect_err(text).to_string();
        assert!(said.contains(": "), "{text:?}: {said}");
    }
}

#[test]
fn an_unreadable_source_is_said_in_one_sentence() {
    struct Folder;
    impl Read for Folder {
        fn read(&mut self, _: &mut [u8]) -> std::io::Result<usize> {
            Err(std::io::Error::other("is a directory"))
        }
    }
    let said = read(Folder, &Known::default()).unwrap_err().to_string();
    assert!(said.contains("could not be read"), "{said}");
}

#[test]
fn endless_files_end() {
    const GIGABYTE: usize = 1 << 30;
    for piece in [&b"\0"[..], b"x", b"\xFF\xFE\x00\xD8", b"a,b\n", b"{", b"\"", b"1,2,", b"\n"] {
        // What is read before the answer is a small part of it.
        let mut source = Endless::of(piece, GIGABYTE);
        assert!(read(&mut source, &Known::default()).is_err(), "{piece:?}");
        let read = GIGABYTE - source.left;
        assert!(read < 1_000_000, "{piece:?}: {read} bytes read");
    }
}

#[test]
fn a_cycle_without_an_end_is_refused() {
    let rows = Endless::of(b"10:00:00;134.0;304.0\n10:00:01;134.1;304.1\n", 21 * 600_000);
    let error = read(rows, &Known::default()).unwrap_err();
    assert!(error.to_string().contains("without the end of a cycle"), "{error}");
    assert_eq!(error.line, Some(500_001));
}

#[test]
fn a_line_of_ten_megabytes_is_words() {
    let mut text = String::from("time s,temp C,press kPa abs\n");
    for i in 0..40 {
        text.push_str(&format!("{},{}.5,100.0\n", i * 2, 20 + i));
        if i == 20 {
            text.push_str(&"x".repeat(10_000_000));
            text.push('\n');
        }
    }
    let found = of(&text).unwrap();
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].samples.t_s.len(), 40);
    assert_eq!(found[0].samples.line[39], 42);
}

#[test]
fn a_reading_that_is_none_leaves_its_row_out_and_is_said() {
    for row in [
        "10,,100.0",
        "10,25.5,",
        "10,NaN,100.0",
        "10,25.5,inf",
        "10,1e999,100.0",
        "10,---,100.0",
        ",25.5,100.0",
        "10,99999,100.0",
        "10,25.5,-9999",
        "10,-273.15,100.0",
        "1e300,25.5,100.0",
        "10,25#5,100.0",
    ] {
        let record = with_row(row);
        assert_eq!(record.samples.t_s.len(), 11, "{row}");
        let said = record.findings.iter().filter(|f| f.code == Code::RowsMissing);
        assert!(said.count() >= 1, "{row}: {:?}", record.findings);
        assert!(record.samples.temp_c.iter().all(|t| t.is_finite()), "{row}");
        assert_eq!(record.integrity.dropped, 1, "{row}");
    }
}

#[test]
fn a_time_beyond_any_clock_does_not_stop_the_reader() {
    for row in ["9e15,25.5,100.0", "-9e15,25.5,100.0", "99999999999999999999,25.5,100.0"] {
        let record = with_row(row);
        assert!(record.samples.t_s.windows(2).all(|w| w[0] < w[1]), "{row}");
    }
}

/// Whatever comes back is whole: a reason in words, or samples that are numbers in time order.
pub fn check(answer: Result<Vec<CycleRecord>, Unreadable>) -> Result<(), TestCaseError> {
    let found = match answer {
        Ok(found) => found,
        Err(error) => {
            prop_assert!(!error.what.is_empty() && !error.way_out.is_empty());
            return Ok(());
        }
    };
    prop_assert!(!found.is_empty());
    for record in found {
        let samples = &record.samples;
        let count = samples.t_s.len();
        prop_assert!(samples.t_s.windows(2).all(|w| w[0] < w[1]));
        prop_assert_eq!((count, count), (samples.temp_c.len(), samples.line.len()));
        prop_assert!(samples.press_kpa.is_empty() || samples.press_kpa.len() == count);
        let numbers = samples.temp_c.iter().chain(&samples.press_kpa);
        prop_assert!(numbers.copied().all(f64::is_finite));
    }
    Ok(())
}

proptest! {
    #[test]
    fn any_bytes(bytes in proptest::collection::vec(any::<u8>(), 0..3_000)) {
        check(read(bytes.as_slice(), &Known::default()))?;
    }

    /// Bytes that look like a record, with some of them changed.
    #[test]
    fn a_damaged_record(changes in proptest::collection::vec((0_usize..4_000, any::<u8>()), 0..60), cut in 0_usize..4_000) {
        let mut bytes: Vec<u8> = include_bytes!("../records/p09.txt").iter().copied().take(4_000).collect();
        for (at, byte) in changes {
            bytes[at] = byte;
        }
        bytes.truncate(cut);
        check(read(bytes.as_slice(), &Known::default()))?;
    }

    /// Letters and marks as records have them.
    #[test]
    fn anything_like_a_table(text in "([0-9:.,;/ \tTZ+-]{0,30}[\r\n]{0,2}){0,40}") {
        check(of(&text))?;
    }

    #[test]
    fn reading_cycle_by_cycle_gives_the_same(cut in 0_usize..9_300) {
        let bytes = &include_bytes!("../records/p13.csv")[..cut];
        let known = Known::default();
        let one_by_one = cycles(bytes, &known).and_then(|all| all.collect::<Result<Vec<_>, _>>());
        prop_assert_eq!(one_by_one, read(bytes, &known));
    }
}
