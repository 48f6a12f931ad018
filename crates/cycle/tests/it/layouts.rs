//! One cycle, written in many layouts, is read as the same samples.
//!
//! The cycle is made here from a few straight lines and the saturation line; the layouts are drawn
//! by chance, none of them from a real machine.

use crate::made::{ALTITUDE_M, STEP_S, cycle};
use crate::style::{encode, style};
use cycle::figures::{Ask, examine};
use cycle::record::{CycleRecord, Known, read};
use proptest::prelude::*;
use proptest::sample::select;

/// The same samples, within what the rounding of the columns takes away.
pub fn check(file: &[u8], known: &Known, step_c: f64, step_kpa: f64) -> Result<(), TestCaseError> {
    let found = read(file, known).map_err(|e| TestCaseError::fail(e.to_string()))?;
    prop_assert_eq!(found.len(), 1, "cycles");
    let record = &found[0];
    prop_assert!(record.findings.is_empty(), "{:?}", record.findings);
    let wanted = cycle();
    prop_assert_eq!(record.samples.t_s.len(), wanted.len());
    prop_assert_eq!(record.samples.press_kpa.len(), wanted.len(), "{:?}", record.layout);
    for (i, &(celsius, kpa)) in wanted.iter().enumerate() {
        let samples = &record.samples;
        let near = |got: f64, want: f64, step: f64| (got - want).abs() <= step * 0.51 + 1e-6;
        prop_assert!(
            (samples.t_s[i] - (i as i64 * STEP_S) as f64).abs() < 0.01,
            "time {i}: {}",
            samples.t_s[i]
        );
        prop_assert!(
            near(samples.temp_c[i], celsius, step_c),
            "row {i}: {} °C, not {celsius}",
            samples.temp_c[i]
        );
        prop_assert!(
            near(samples.press_kpa[i], kpa, step_kpa),
            "row {i}: {} kPa, not {kpa}",
            samples.press_kpa[i]
        );
    }
    same_figures(record, &wanted, step_c, step_kpa)
}

/// The same hold, F0 and depths, worked out here from the rows as they were made.
fn same_figures(
    record: &CycleRecord,
    wanted: &[(f64, f64)],
    step_c: f64,
    step_kpa: f64,
) -> Result<(), TestCaseError> {
    let figures = examine(record, &Ask::default());
    // No made row lies within a digit of 134 °C, so rounding moves no end of the hold.
    let held = wanted.iter().filter(|row| row.0 >= 134.0).count() as i64 - 1;
    // Minutes are written with four places: either end may lie 3 ms off.
    let off_s = figures.hold_s - (held * STEP_S) as f64;
    prop_assert!(off_s.abs() <= 0.01, "hold {}", figures.hold_s);
    let lethal = |celsius: f64| 10_f64.powf((celsius - 121.1) / 10.0) * STEP_S as f64 / 60.0;
    let f0: f64 = wanted.windows(2).map(|w| 0.5 * (lethal(w[0].0) + lethal(w[1].0))).sum();
    // An error of one step changes every addend by this share.
    let share = 10_f64.powf(step_c / 10.0) - 1.0 + 1e-4;
    prop_assert!((figures.f0_min - f0).abs() <= share * f0, "F0 {}, not {f0}", figures.f0_min);
    // A vacuum is the lowest row between two stretches at the air pressure or above.
    let depths: Vec<f64> = wanted
        .split(|row| row.1 >= 59.0)
        .filter_map(|rows| rows.iter().map(|row| row.1).reduce(f64::min))
        .take(4)
        .collect();
    prop_assert_eq!(figures.vacuum_depths_kpa.len(), depths.len());
    for (got, want) in figures.vacuum_depths_kpa.iter().zip(&depths) {
        prop_assert!((got - want).abs() <= step_kpa * 0.51 + 1e-6, "depth {got}, not {want}");
    }
    Ok(())
}

pub fn at_altitude() -> Known {
    Known { altitude_m: Some(ALTITUDE_M), ..Known::default() }
}

proptest! {
    // `HUNT=2000 cargo test -p cycle --test it layouts` looks longer.
    #![proptest_config(ProptestConfig::with_cases(option_env!("HUNT").map_or(40, |n| n.parse().unwrap())))]

    #[test]
    fn every_layout_gives_the_same_samples(style in style()) {
        let step_kpa = style.pressure.1 / 10_f64.powi(style.pressure.2 as i32);
        check(&style.file(), &at_altitude(), 0.01, step_kpa)?;
    }

    /// Without a heading the numbers alone must tell; the columns that are not the chamber's are
    /// left away, as two probes in the same steam cannot be told apart.
    #[test]
    fn a_table_without_a_heading_is_read_by_physics(mut style in style(), swap: bool) {
        style.order = if swap { vec![0, 2, 1] } else { vec![0, 1, 2] };
        style.preamble = false;
        if style.time == "minutes" {
            style.time = "seconds";
        }
        let mut text = String::new();
        for (i, (celsius, kpa)) in cycle().into_iter().enumerate() {
            text.push_str(&style.line(&style.cells(i, celsius, kpa)));
        }
        let step_kpa = style.pressure.1 / 10_f64.powi(style.pressure.2 as i32);
        check(&encode(&text, style.encoding), &at_altitude(), 0.01, step_kpa)?;
    }

    #[test]
    fn one_row_a_reading(style in style(), separator in select(vec![";", "\t", ","]), unit_column: bool) {
        let mut style = style;
        (style.separator, style.comma, style.quoted) = (separator, style.comma && separator != ",", false);
        if matches!(style.time, "two columns" | "seconds" | "minutes") {
            style.time = "iso";
        }
        let heading = style.heading();
        let mut text = ["time", "channel", "value"].join(separator) + if unit_column { separator } else { "" } + if unit_column { "unit\n" } else { "\n" };
        for (i, (celsius, kpa)) in cycle().into_iter().enumerate() {
            let cells = style.cells(i, celsius, kpa);
            for channel in [3, 1, 2] {
                let (name, unit) = heading[channel].split_once(" [").unwrap();
                let line = if unit_column {
                    [&cells[0], name, &cells[channel], unit.trim_end_matches(']')].join(separator)
                } else {
                    [cells[0].as_str(), &heading[channel], &cells[channel]].join(separator)
                };
                text.push_str(&line);
                text.push('\n');
            }
        }
        let step_kpa = style.pressure.1 / 10_f64.powi(style.pressure.2 as i32);
        check(&encode(&text, style.encoding), &at_altitude(), 0.01, step_kpa)?;
    }

    /// Temperature and pressure in rows of their own, at the same time or half a step apart.
    #[test]
    fn temperature_and_pressure_in_turn(style in style(), pressure_first: bool, apart: bool, object: bool) {
        let mut style = style;
        if matches!(style.time, "two columns" | "minutes" | "hours") || style.separator == "   " {
            (style.time, style.separator) = ("iso", ";");
        }
        if object {
            (style.comma, style.quoted) = (false, false);
        }
        if style.encoding == "latin-1" {
            // JSON is Unicode, and a time that stands still for a row has to be named.
            style.encoding = "utf-8";
        }
        style.order = vec![0, 1, 2];
        let names = style.heading();
        let mut text = if object { String::new() } else { style.line(&names) };
        for (i, (celsius, kpa)) in cycle().into_iter().enumerate() {
            let cells = style.cells(i, celsius, kpa);
            // The reading that comes second, a second later.
            let later = if apart { style.time_at(i as i64 * STEP_S + 1) } else { cells[0].clone() };
            for (k, column) in if pressure_first { [2, 1] } else { [1, 2] }.into_iter().enumerate() {
                let time = if apart && k == 1 { &later } else { &cells[0] };
                if object {
                    text.push_str(&format!("{{\"time\": \"{time}\", {:?}: {}}}\n", names[column], cells[column]));
                } else {
                    let mut row = vec![time.clone(), String::new(), String::new()];
                    row[column].clone_from(&cells[column]);
                    text.push_str(&style.line(&row));
                }
            }
        }
        let step_kpa = style.pressure.1 / 10_f64.powi(style.pressure.2 as i32);
        check(&encode(&text, style.encoding), &at_altitude(), 0.01, step_kpa)?;
    }

    /// No row has a time; a line above them says how far apart they are.
    #[test]
    fn an_interval_stands_for_the_times(
        style in style(),
        said in select(vec![
            "Interval: 2 s", "Sample rate: 0.5 Hz", "Abtastintervall 2 s", "Log interval 00:00:02",
            "Intervalo de muestreo: 2 segundos", "Période d'échantillonnage : 2000 ms",
        ]),
        numbered: bool,
    ) {
        let mut style = style;
        style.order.retain(|column| *column != 0);
        let numbers = |cells: Vec<String>| if numbered { cells } else { cells[1..].to_vec() };
        if numbered {
            style.order.insert(0, 0);
        } else {
            style.order.iter_mut().for_each(|column| *column -= 1);
        }
        let mut heading = style.heading();
        heading[0] = "No".to_owned();
        let mut text = format!("{said}{}{}", style.line_end, style.line(&numbers(heading)));
        for (i, (celsius, kpa)) in cycle().into_iter().enumerate() {
            let mut cells = style.cells(i, celsius, kpa);
            cells[0] = (i + 1).to_string();
            text.push_str(&style.line(&numbers(cells)));
        }
        let step_kpa = style.pressure.1 / 10_f64.powi(style.pressure.2 as i32);
        check(&encode(&text, style.encoding), &at_altitude(), 0.01, step_kpa)?;
    }

    #[test]
    fn one_object_a_line(style in style(), nested: bool, in_array: bool) {
        let mut style = style;
        (style.comma, style.quoted) = (false, false);
        if matches!(style.time, "two columns" | "minutes") {
            style.time = "iso";
        }
        let mut text = String::from(if in_array { "[\n" } else { "" });
        let unit = ["c", "f", "k"][usize::from(style.fahrenheit)];
        let pressure = format!("press_{}_{}", style.pressure.0.to_lowercase(), if style.gauge { "gauge" } else { "abs" });
        for (i, (celsius, kpa)) in cycle().into_iter().enumerate() {
            let c = style.cells(i, celsius, kpa);
            let body = format!("\"temp_{unit}\": {}, \"{pressure}\": {}, \"jacket_{unit}\": {}", c[1], c[2], c[3]);
            let body = if nested { format!("\"chamber\": {{{body}}}") } else { body };
            let line = format!("{{\"time\": \"{}\", {body}, \"door\": false}}{}\n", c[0], if in_array { "," } else { "" });
            text.push_str(&line);
        }
        text.push_str(if in_array { "]\n" } else { "" });
        let step_kpa = style.pressure.1 / 10_f64.powi(style.pressure.2 as i32);
        check(&encode(&text, style.encoding), &at_altitude(), 0.01, step_kpa)?;
    }

    #[test]
    fn names_and_values_with_an_equals_sign(style in style()) {
        let mut style = style;
        (style.comma, style.quoted) = (false, false);
        if style.time != "clock" && style.time != "elapsed" {
            style.time = "iso";
        }
        let mut text = String::new();
        let unit = ["C", "F", "K"][usize::from(style.fahrenheit)];
        for (i, (celsius, kpa)) in cycle().into_iter().enumerate() {
            let c = style.cells(i, celsius, kpa);
            let reference = if style.gauge { "g" } else { "a" };
            text.push_str(&format!("time={} T_{unit}={} p_{}_{reference}={}\n", c[0], c[1], style.pressure.0, c[2]));
        }
        let step_kpa = style.pressure.1 / 10_f64.powi(style.pressure.2 as i32);
        check(&encode(&text, style.encoding), &at_altitude(), 0.01, step_kpa)?;
    }
}
