//! Records whose rows have no times.

use crate::made::{File, STEP_S, codes, cycle};
use cycle::finding::Code;
use cycle::record::{CycleRecord, Known, read};

fn row(_: &str, celsius: f64, kpa: f64) -> String {
    format!("{celsius:.1},{kpa:.1}")
}

const HEADING: &str = "temp C,press kPa abs";

fn end(record: &CycleRecord) -> f64 {
    record.samples.t_s.last().copied().unwrap()
}

#[test]
fn samples_follow_one_another_at_the_interval() {
    let record = File::new("Start: 2025-04-24 08:26:16\nInterval: 2 s\n")
        .line(HEADING)
        .rows(0..usize::MAX, row)
        .only();
    assert_eq!(end(&record), ((cycle().len() as i64 - 1) * STEP_S) as f64);
    assert_eq!(record.start_clock.as_deref(), Some("2025-04-24T08:26:16"));
    assert_eq!((record.layout.time.as_str(), record.samples.line[0]), ("counted", 5));
    assert!(record.findings.is_empty(), "{:?}", record.findings);
}

#[test]
fn without_an_interval_it_is_asked_for() {
    for before in
        ["", "Interval: 2\n", "Interval: 2 s\nSample rate: 1 Hz\n", "Pulse interval 30 s\n"]
    {
        let file = File::new("").line(&format!("{before}{HEADING}")).rows(0..usize::MAX, row);
        let record = file.only();
        assert_eq!(codes(&record), [Code::UnitUnclear], "{before}");
        assert!(record.known_from.times_unclear);
        assert!(record.findings[0].text.ends_with("how many seconds lie between two rows?"));
        let known = Known { interval_s: Some(2.0), ..Known::default() };
        let answered = &file.read(&known)[0];
        assert!(!answered.known_from.times_unclear);
        assert_eq!((end(answered), codes(answered)), (end(&record) * 2.0, vec![]));
    }
}

#[test]
fn a_row_that_cannot_be_used_keeps_its_place() {
    let broken = |_: &str, celsius: f64, kpa: f64| {
        if (310.0..312.0).contains(&kpa) { "---,---".to_owned() } else { row("", celsius, kpa) }
    };
    let record = File::new("Interval: 2 s").line(HEADING).rows(0..usize::MAX, broken).only();
    let whole = File::new("Interval: 2 s").line(HEADING).rows(0..usize::MAX, row).only();
    assert_eq!(end(&record), end(&whole));
    assert!(record.integrity.dropped > 10);
}

#[test]
fn an_empty_line_in_front_of_the_open_chamber_parts_two_cycles() {
    let file = File::new("Interval: 2 s\nSet temperature: 134 C")
        .line(HEADING)
        .rows(0..usize::MAX, row)
        .line("")
        .line("Record 2")
        .line(HEADING)
        .rows(0..usize::MAX, row);
    let records = file.read(&Known::default());
    assert_eq!(records.len(), 2);
    assert_eq!(end(&records[0]), end(&records[1]));
    // On a new page the cycle goes on.
    let paged = File::new("Interval: 2 s")
        .line(HEADING)
        .rows(0..200, row)
        .line("")
        .rows(200..usize::MAX, row)
        .only();
    assert_eq!(paged.samples.t_s.len(), cycle().len());
}

#[test]
fn lists_without_a_time_are_counted_as_well() {
    let list = |of: fn(&(f64, f64)) -> f64| {
        cycle().iter().map(|row| format!("{:.2}", of(row))).collect::<Vec<_>>().join(",")
    };
    let text = format!(
        r#"{{"temp_c": [{}], "interval_s": 2, "press_kpa_abs": [{}]}}"#,
        list(|row| row.0),
        list(|row| row.1)
    );
    let record = read(text.as_bytes(), &Known::default()).unwrap().remove(0);
    assert_eq!(end(&record), ((cycle().len() as i64 - 1) * STEP_S) as f64);
    assert!(record.findings.is_empty());
}

#[test]
fn a_table_of_anything_is_no_record() {
    let text: String = (0..60).map(|i| format!("{};{}\n", 10 + i % 7, 100 - i % 5)).collect();
    assert!(read(text.as_bytes(), &Known::default()).is_err());
    let text: String = (0..60).map(|i| format!("{}|{}\n", 3 + i % 4, i % 9)).collect();
    assert!(read(format!("pieces|price\n{text}").as_bytes(), &Known::default()).is_err());
}
