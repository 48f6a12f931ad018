//! Reads the made-up records in `tests/records` and compares with their known truth.
//!
//! The records come from a physical model, and the truth from an independent program with readers
//! and a saturation formula of its own; no real machine or file format stands behind them. A
//! change of the clock and doubled, swapped and dropped rows are written into them on purpose.

use cycle::finding::Code;
use cycle::record::{CycleRecord, Known, read};
use cycle::steam::{psat, tsat};
use serde_json::Value;
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/records")
}

fn truths() -> Vec<Value> {
    let mut names: Vec<_> = std::fs::read_dir(folder())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.to_string_lossy().ends_with(".truth.json"))
        .collect();
    names.sort();
    assert_eq!(names.len(), 34);
    names
        .iter()
        .map(|path| serde_json::from_slice(&std::fs::read(path).unwrap()).unwrap())
        .collect()
}

fn cycles(truth: &Value) -> Vec<CycleRecord> {
    let file = truth["file"].as_str().unwrap();
    let bytes = std::fs::read(folder().join(file)).unwrap();
    read(bytes.as_slice(), &Known::default()).unwrap_or_else(|error| panic!("{file}: {error}"))
}

#[test]
fn every_record_is_read_as_its_truth_says() {
    let mut wrong = Vec::new();
    for truth in truths() {
        let file = truth["file"].as_str().unwrap().to_owned();
        let found = cycles(&truth);
        let expected = truth["cycles"].as_array().unwrap();
        if found.len() != expected.len() {
            wrong.push(format!("{file}: {} cycles", found.len()));
            continue;
        }
        for (got, want) in found.iter().zip(expected) {
            let mut check = |what: &str, got: String, want: String| {
                if got != want {
                    wrong.push(format!("{file}: {what} {got}, not {want}"));
                }
            };
            rows(got, want, &mut check);
            layout(got, &truth, &mut check);
            clock(got, want, &truth["layout"], &mut check);
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

type Check<'a> = &'a mut dyn FnMut(&str, String, String);

fn rows(got: &CycleRecord, want: &Value, check: Check<'_>) {
    let integrity = &got.integrity;
    let defects = &want["record_defects"];
    let count = |name: &str| defects[name].as_u64().unwrap().to_string();
    let samples = &got.samples;
    check("samples", integrity.rows.to_string(), samples.t_s.len().to_string());
    // The truth counts the rows as written, the repeated ones with them.
    let written = integrity.rows + integrity.duplicated;
    check("rows", written.to_string(), want["rows"].to_string());
    check("dropped", integrity.dropped.to_string(), count("dropped_rows"));
    check("duplicated", integrity.duplicated.to_string(), count("duplicated_rows"));
    check("out of order", integrity.out_of_order.to_string(), count("swapped_pairs"));
    let cut = defects["cut_off_at_s"].is_number();
    check("truncated", integrity.truncated.to_string(), cut.to_string());
    let line = |l: u32| l.to_string();
    check("first line", line(*samples.line.iter().min().unwrap()), want["first_line"].to_string());
    let last = *samples.line.iter().max().unwrap();
    check("last line", line(last), want["last_line"].to_string());
    steps(got, &want["recorded"], check);
    findings(got, defects, check);
}

fn steps(got: &CycleRecord, recorded: &Value, check: Check<'_>) {
    let integrity = &got.integrity;
    if recorded["median_step_s"].is_number() {
        let number = |name: &str| recorded[name].as_f64().unwrap().to_string();
        check("median", integrity.median_step_s.to_string(), number("median_step_s"));
        check("gap", integrity.largest_gap_s.to_string(), number("largest_gap_s"));
        let jumps: Vec<f64> = integrity.clock_jumps.iter().map(|jump| jump.1).collect();
        let wanted: Vec<f64> = recorded["clock_jumps"]
            .as_array()
            .unwrap()
            .iter()
            .map(|jump| jump["seconds"].as_f64().unwrap())
            .collect();
        check("jumps", format!("{jumps:?}"), format!("{wanted:?}"));
    }
}

fn findings(got: &CycleRecord, defects: &Value, check: Check<'_>) {
    let integrity = &got.integrity;
    let has = |code: Code| got.findings.iter().any(|finding| finding.code == code);
    for (code, wanted) in [
        (Code::RowsDoubled, integrity.duplicated > 0),
        (Code::RowsSwapped, integrity.out_of_order > 0),
        (Code::RowsMissing, integrity.dropped > 0),
        (Code::ClockJump, !integrity.clock_jumps.is_empty()),
        (Code::Truncated, defects["cut_off_at_s"].is_number()),
        (Code::GaugeAsAbsolute, defects["pressure_label_wrong"].is_string()),
        (Code::UnitUnclear, false),
    ] {
        check(code.as_str(), has(code).to_string(), wanted.to_string());
    }
}

fn layout(got: &CycleRecord, truth: &Value, check: Check<'_>) {
    let want = &truth["layout"];
    let word = |name: &str| want[name].as_str().unwrap().to_owned();
    check("temperature unit", got.layout.temperature_unit.clone(), word("temperature_unit"));
    check(
        "pressure unit",
        got.layout.pressure_unit.clone().unwrap_or_default(),
        word("pressure_unit"),
    );
    let mut reference = word("pressure_reference");
    if truth["cycles"][0]["record_defects"]["pressure_label_wrong"].is_string() {
        "gauge".clone_into(&mut reference);
    }
    check("reference", got.layout.pressure_reference.clone(), reference);
    check("decimal mark", got.layout.decimal.to_string(), word("decimal"));
    let encoding = match want["encoding"].as_str().unwrap() {
        "ascii" => "utf-8",
        name => name.split(' ').next().unwrap(),
    };
    check("encoding", got.layout.encoding.clone(), encoding.to_owned());
    let time = match want["time_kind"].as_str().unwrap() {
        "iso_space" => "iso",
        "hms_clock" => "clock",
        "mmss" | "sec" => "elapsed",
        word => word,
    };
    check("time", got.layout.time.clone(), time.to_owned());
    let ambient = truth["site"]["ambient_kpa"].as_f64().unwrap();
    // Sensor noise of the open chamber, or what the hold's own deviation from saturation adds.
    let off = got.ambient_kpa.map_or(99.0, |kpa| (kpa - ambient).abs());
    check(
        "air pressure",
        (off < 2.5 || got.stated.altitude_m.is_none() && is_cold(got)).to_string(),
        "true".to_owned(),
    );
}

/// A gauge record without a hold, where nothing tells the air pressure.
fn is_cold(got: &CycleRecord) -> bool {
    got.layout.pressure_reference == "gauge" && got.samples.temp_c.iter().all(|t| *t < 120.0)
}

fn clock(got: &CycleRecord, want: &Value, layout: &Value, check: Check<'_>) {
    let start = want["start_clock"].as_str().unwrap();
    let expected = match layout["id"].as_str().unwrap() {
        // Only a clock, or only the time since the start, is in the file.
        "L5" => Some(start[11..].to_owned()),
        "L3" | "L7" => None,
        _ => Some(start.to_owned()),
    };
    check("start", format!("{:?}", got.start_clock), format!("{expected:?}"));
}

/// The absolute records, written as if counted from the air of a place that nobody names.
///
/// What the air pressure is taken for must not make a hold look better than it was: the deviation
/// from saturation stays what it is, or a finding says that the air pressure is not known.
#[test]
fn an_unknown_air_pressure_never_hides_air_or_superheat() {
    let mut wrong = Vec::new();
    let mut seen = 0;
    for truth in truths() {
        let (layout, run) = (&truth["layout"], &truth["cycles"][0]);
        let file = truth["file"].as_str().unwrap();
        if layout["pressure_reference"] != "absolute" || run["recorded"]["run_T_min"].is_null() {
            continue;
        }
        let set_c = run["programme"]["set_C"].as_f64().unwrap();
        let ambient = truth["site"]["ambient_kpa"].as_f64().unwrap();
        let absolute = cycles(&truth).remove(0);
        let mut text = String::from("time s,temp C,press kPa gauge\n");
        let samples = &absolute.samples;
        for i in 0..samples.t_s.len() {
            let gauge = samples.press_kpa[i] - ambient;
            text.push_str(&format!("{},{},{gauge:.1}\n", samples.t_s[i], samples.temp_c[i]));
        }
        let found = read(text.as_bytes(), &Known::default()).unwrap().remove(0);
        let doubted = found.findings.iter().any(|f| f.code == Code::UnitUnclear);
        let (got, want) = (deviation(&found, set_c), deviation(&absolute, set_c));
        let both_bad = got.abs() > 2.0 && want.abs() > 2.0;
        if !doubted && !both_bad && (got - want).abs() > 0.5 {
            wrong.push(format!("{file}: {got:.2} K from saturation, not {want:.2} K"));
        }
        seen += 1;
    }
    assert!(seen > 15, "{seen}");
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// Mean distance from the saturation line at and above the set temperature, K.
fn deviation(record: &CycleRecord, set_c: f64) -> f64 {
    let samples = &record.samples;
    let gaps: Vec<f64> = (0..samples.t_s.len())
        .filter(|&i| samples.temp_c[i] >= set_c && samples.press_kpa[i] > 0.8 * psat(set_c))
        .map(|i| samples.temp_c[i] - tsat(samples.press_kpa[i]))
        .collect();
    gaps.iter().sum::<f64>() / gaps.len() as f64
}
