//! How a table of runs is read, and how an unusable one is refused.
// tests may stop at once
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use super::{Table, parse};

/// The runs in short: number, cold, heat-up time.
fn short(table: &Table) -> String {
    let run = |run: &cycle::drift::RunFeatures| {
        format!("{} {:?} {:?}", run.cycle, run.first_of_day, run.heat_up_s)
    };
    table.runs.iter().map(run).collect::<Vec<_>>().join("; ")
}

fn check(text: &str, runs: &str, notes: usize) {
    let table = parse(text.as_bytes()).unwrap();
    assert_eq!(short(&table), runs, "{text}");
    assert_eq!(table.notes.len(), notes, "{:?}", table.notes);
}

fn refused(text: &[u8], says: &str) {
    let error = parse(text).expect_err("this table is not usable").to_string();
    assert!(error.contains(says), "{error}");
}

#[test]
fn unknown_columns_are_ignored_and_missing_values_stay_missing() {
    check(
        "cycle,colour,heat_up_s,first_of_day\n1,red,34,1\n2,,,0\n3,blue,NA,0\n",
        "1 Some(true) Some(34.0); 2 Some(false) None; 3 Some(false) None",
        0,
    );
}

#[test]
fn rows_are_put_in_order_and_a_doubled_one_counts_once() {
    check(
        "\u{feff}Cycle, heat_up_s\r\n3,36\r\n1,34\r\n2,35\r\n1,34\r\n",
        "1 None Some(34.0); 2 None Some(35.0); 3 None Some(36.0)",
        1,
    );
}

#[test]
fn without_numbers_the_start_orders_and_without_the_column_the_date_tells_cold_runs() {
    check(
        "start,heat_up_s\n2025-02-04T08:00:00,36\n2025-02-03T09:00:00,34\n2025-02-03T10:00:00,35\n",
        "1 Some(true) Some(34.0); 2 Some(false) Some(35.0); 3 Some(true) Some(36.0)",
        1,
    );
}

#[test]
fn a_row_cut_short_and_an_impossible_value_are_said() {
    check(
        "cycle,heat_up_s,air_in_s\n1,34,25\n2,-5,25\n3,3",
        "1 None Some(34.0); 2 None Some(-5.0)",
        2,
    );
}

#[test]
fn what_cannot_be_used_is_refused_with_its_place() {
    refused(b"", "no column that can be watched");
    refused(b"cycle,colour\n1,red\n", "no column that can be watched");
    refused(b"cycle,heat_up_s\n", "no run");
    refused(b"cycle,heat_up_s\n1,34\n2,34 s\n", "line 3: heat_up_s");
    refused(b"cycle,heat_up_s\nA1,34\n", "line 2: cycle");
    refused(b"cycle,heat_up_s,heat_up_s\n1,34,35\n", "stands there twice");
    refused(b"heat_up_s,first_of_day\n34,perhaps\n", "line 2: first_of_day");
    refused(&[0xff, 0xfe, 0x00, 0x81], "UTF-8");
}
