//! Records in JSON that is not written an object a line.

use crate::layouts::{at_altitude, check};
use crate::made::{STEP_S, cycle};
use crate::style::{Style, encode, style};
use cycle::record::{Known, cycles, read};
use proptest::prelude::*;
use proptest::sample::select;
use serde_json::{Map, Value, json};

/// The readings of a style, as pairs of a name and a value for each row.
fn rows(style: &Style) -> Vec<Vec<(String, Value)>> {
    let unit = ["c", "f", "k"][usize::from(style.fahrenheit)];
    let reference = if style.gauge { "gauge" } else { "abs" };
    let pressure = format!("press_{}_{reference}", style.pressure.0.to_lowercase());
    let number = |text: &str| serde_json::from_str::<Value>(text).unwrap();
    let row = |(i, (celsius, kpa)): (usize, (f64, f64))| {
        let c = style.cells(i, celsius, kpa);
        vec![
            ("time".to_owned(), Value::from(c[0].as_str())),
            (format!("temp_{unit}"), number(&c[1])),
            (pressure.clone(), number(&c[2])),
            (format!("jacket_{unit}"), number(&c[3])),
        ]
    };
    cycle().into_iter().enumerate().map(row).collect()
}

fn object(row: &[(String, Value)]) -> Value {
    Value::Object(row.iter().cloned().collect())
}

fn columns(rows: &[Vec<(String, Value)>]) -> Map<String, Value> {
    let column = |i: usize| {
        (rows[0][i].0.clone(), Value::from_iter(rows.iter().map(|row| row[i].1.clone())))
    };
    (0..rows[0].len()).map(column).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(option_env!("HUNT").map_or(40, |n| n.parse().unwrap())))]

    #[test]
    fn json_of_any_shape(
        style in style(), pretty: bool,
        shape in select(vec!["list", "samples", "columns", "within", "lists", "named lists", "a line"]),
    ) {
        let mut style = style;
        (style.comma, style.quoted) = (false, false);
        if matches!(style.time, "two columns" | "minutes") {
            style.time = "iso";
        }
        let rows = rows(&style);
        let objects: Value = rows.iter().map(|row| object(row)).collect();
        let names: Value = rows[0].iter().map(|(name, _)| name.as_str()).collect();
        let lists: Vec<Value> =
            rows.iter().map(|row| row.iter().map(|(_, value)| value.clone()).collect()).collect();
        let header = json!({"programme": "B134", "set_c": 134.0, "hold_s": 240, "door": [1, 2]});
        let value = match shape {
            "samples" => json!({"header": header, "samples": objects}),
            "columns" => Value::Object(columns(&rows)),
            "within" => json!({"a": header, "data": Value::Object(columns(&rows)), "result": "ok"}),
            "lists" => std::iter::once(names).chain(lists).collect(),
            "named lists" => json!({"columns": names, "header": header, "rows": lists}),
            "a line" => json!([{"run": header, "samples": objects}]),
            _ => objects,
        };
        let text =
            if pretty { serde_json::to_string_pretty(&value) } else { serde_json::to_string(&value) };
        let text = text.unwrap().replace('\n', style.line_end);
        let step_kpa = style.pressure.1 / 10_f64.powi(style.pressure.2 as i32);
        let file = encode(&text, style.encoding);
        check(&file, &at_altitude(), 0.01, step_kpa)?;
        // Every reading belongs to the physical line on which it stands.
        let record = read(file.as_slice(), &at_altitude()).unwrap().remove(0);
        let last = text.lines().count() as u32;
        prop_assert!(record.samples.line.iter().all(|&line| line >= 1 && line <= last));
        let apart = record.samples.line.windows(2).all(|pair| pair[0] < pair[1]);
        prop_assert_eq!(apart, pretty);
    }
}

const HEADER: &str = r#"{"start": "2025-04-24T08:26:16", "set_c": 134, "altitude_m": 350}"#;

fn sample(i: usize, (celsius, kpa): (f64, f64)) -> String {
    format!(
        r#"{{"t_s": {}, "temp_c": {celsius:.2}, "press_kpa_abs": {kpa:.1}}}"#,
        i as i64 * STEP_S
    )
}

fn samples() -> Vec<String> {
    cycle().into_iter().enumerate().map(|(i, row)| sample(i, row)).collect()
}

#[test]
fn what_the_file_says_of_itself_is_read() {
    let text = format!(
        r#"{{"header": {HEADER}, "samples": [{}], "status": "aborted"}}"#,
        samples().join(",")
    );
    let record = read(text.as_bytes(), &Known::default()).unwrap().remove(0);
    let stated = &record.stated;
    assert_eq!((stated.set_c, stated.altitude_m), (Some(134.0), Some(350.0)));
    assert_eq!(stated.says_aborted.as_deref(), Some("status: aborted"));
    assert_eq!(record.start_clock.as_deref(), Some("2025-04-24T08:26:16"));
    assert!(!record.integrity.truncated);
}

#[test]
fn several_cycles_in_one_list() {
    let one = format!(r#"{{"header": {HEADER}, "samples": [{}]}}"#, samples().join(","));
    let text = format!("[{one},{one}, {one}]");
    let records = read(text.as_bytes(), &Known::default()).unwrap();
    assert_eq!(records.len(), 3);
    for record in &records {
        assert_eq!((record.samples.t_s.len(), record.stated.set_c), (cycle().len(), Some(134.0)));
    }
}

#[test]
fn a_file_that_was_cut_off_says_so() {
    let whole = format!(r#"{{"header": {HEADER}, "samples": [{}]}}"#, samples().join(", "));
    let rows = |text: &str| {
        let record = read(text.as_bytes(), &Known::default()).unwrap().remove(0);
        (record.samples.t_s.len(), record.integrity.truncated)
    };
    assert_eq!(rows(&whole), (cycle().len(), false));
    assert_eq!(rows(&whole[..whole.len() - 1]), (cycle().len(), true));
    assert_eq!(rows(&whole[..whole.len() - 5]), (cycle().len() - 1, true));
    let columns = |of: fn((f64, f64)) -> f64| {
        cycle().into_iter().map(|row| format!("{:.2}", of(row))).collect::<Vec<_>>().join(",")
    };
    let seconds: Vec<String> = (0..cycle().len()).map(|i| (i * 2).to_string()).collect();
    let text = format!(
        r#"{{"t_s": [{}], "temp_c": [{}], "press_kpa_abs": [{}]}}"#,
        seconds.join(","),
        columns(|row| row.0),
        columns(|row| row.1)
    );
    assert_eq!(rows(&text), (cycle().len(), false));
    let (kept, cut) = rows(&text[..text.len() - 300]);
    assert!(cut && kept > cycle().len() - 60 && kept < cycle().len() - 30, "{kept}");
}

#[test]
fn values_that_are_missing_are_left_out() {
    let mut samples = samples();
    samples[10] = r#"{"t_s": 20, "temp_c": NaN, "press_kpa_abs": 101.3}"#.to_owned();
    samples[11] = r#"{"t_s": 22, "temp_c": null, "press_kpa_abs": -Infinity}"#.to_owned();
    let text = format!("[{}]", samples.join(","));
    let record = read(text.as_bytes(), &Known::default()).unwrap().remove(0);
    assert_eq!(record.samples.t_s.len(), cycle().len() - 2);
    assert!(!record.integrity.truncated && record.integrity.dropped == 2);
}

#[test]
fn columns_of_unlike_length_are_refused() {
    let list = |rows: usize| vec!["20"; rows].join(",");
    let text = format!(
        r#"{{"t_s": [{}], "temp_c": [{}], "press_kpa": [{}]}}"#,
        list(40),
        list(39),
        list(40)
    );
    let error = read(text.as_bytes(), &Known::default()).unwrap_err();
    assert!(error.to_string().contains("equally long"), "{error}");
}

#[test]
fn a_bracket_does_not_make_json() {
    let rows: String = cycle()
        .iter()
        .enumerate()
        .map(|(i, (t, p))| format!("{};{t:.1};{p:.1}\n", i * 2))
        .collect();
    let text = format!("[Record 12]\ntime s;temp C;press kPa abs\n{rows}");
    let record = read(text.as_bytes(), &Known::default()).unwrap().remove(0);
    assert_eq!(record.samples.line[0], 3);
}

/// A list of cycles that never ends, and how much of it was asked for.
struct Endless {
    one: Vec<u8>,
    given: usize,
}

impl std::io::Read for &mut Endless {
    fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
        if self.given == 0 {
            self.given = 1;
            buffer[0] = b'[';
            return Ok(1);
        }
        let at = (self.given - 1) % self.one.len();
        let count = buffer.len().min(self.one.len() - at);
        buffer[..count].copy_from_slice(&self.one[at..at + count]);
        self.given += count;
        Ok(count)
    }
}

#[test]
fn no_more_is_read_than_a_cycle_needs() {
    let one =
        format!(r#"{{"header": {HEADER}, "samples": [{}]}},"#, samples().join(",")).into_bytes();
    let length = one.len();
    let mut endless = Endless { one, given: 0 };
    let (known, rows) = (Known::default(), cycle().len());
    let found = cycles(&mut endless, &known).unwrap().take(20);
    assert_eq!(found.filter(|cycle| cycle.as_ref().unwrap().samples.t_s.len() == rows).count(), 20);
    // The window in which the table is looked for, and the cycle that follows.
    assert!(endless.given < 22 * length + 512 * 1024, "{}", endless.given);
}
