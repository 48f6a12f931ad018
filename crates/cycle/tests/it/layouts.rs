//! One cycle, written in many layouts, is read as the same samples.
//!
//! The cycle is made here from a few straight lines and the saturation line; the layouts are drawn
//! by chance, none of them from a real machine.

use crate::made::{ALTITUDE_M, STEP_S, cycle};
use cycle::record::{Known, read};
use cycle::steam::air_pressure;
use proptest::prelude::*;
use proptest::sample::select;

/// 2025-10-26 08:12:18, in seconds since 1970 (from memory of `date -u -d ... +%s`).
const START: i64 = 1_761_466_338;

#[derive(Debug, Clone)]
struct Style {
    separator: &'static str,
    comma: bool,
    fahrenheit: u8,
    /// Name, kPa in one, decimals.
    pressure: (&'static str, f64, usize),
    gauge: bool,
    time: &'static str,
    language: usize,
    order: Vec<usize>,
    encoding: &'static str,
    line_end: &'static str,
    quoted: bool,
    preamble: bool,
}

fn style() -> impl Strategy<Value = Style> {
    let units = select(vec![
        ("kPa", 1.0, 1),
        ("bar", 100.0, 3),
        ("mbar", 0.1, 0),
        ("Pa", 0.001, 0),
        ("psi", 6.894_757, 2),
        ("MPa", 1_000.0, 4),
    ]);
    let times = select(vec![
        "iso",
        "iso blank",
        "dmy",
        "dmy short",
        "mdy pm",
        "ymd slash",
        "two columns",
        "clock",
        "elapsed",
        "hours",
        "seconds",
        "minutes",
        "epoch",
        "millis",
        "serial",
        "zone",
    ]);
    let written = (
        select(vec![";", "\t", "|", ",", "   "]),
        any::<bool>(),
        0_u8..3,
        units,
        any::<bool>(),
        times,
    );
    let around = (
        0_usize..8,
        Just((0..5).collect::<Vec<usize>>()).prop_shuffle(),
        select(vec![
            "utf-8",
            "bom",
            "utf-16le",
            "utf-16be",
            "utf-16le bare",
            "latin-1",
        ]),
        select(vec!["\n", "\r\n"]),
        any::<bool>(),
        any::<bool>(),
    );
    (written, around).prop_map(
        |(
            (separator, comma, fahrenheit, pressure, gauge, time),
            (language, order, encoding, line_end, quoted, preamble),
        )| Style {
            separator,
            comma: comma && separator != ",",
            fahrenheit,
            pressure,
            gauge,
            time,
            language,
            order,
            encoding,
            line_end,
            quoted: quoted && separator != "   ",
            preamble,
        },
    )
}

/// Time, chamber temperature, chamber pressure, jacket temperature, load temperature.
const NAMES: [[&str; 5]; 8] = [
    [
        "Time",
        "Chamber temperature",
        "Chamber pressure",
        "Jacket temperature",
        "Load temperature",
    ],
    [
        "Zeit",
        "Kammertemperatur",
        "Kammerdruck",
        "Manteltemperatur",
        "Beladung Temperatur",
    ],
    [
        "Heure",
        "Température cuve",
        "Pression cuve",
        "Température enveloppe",
        "Température charge",
    ],
    [
        "Hora",
        "Temp. cámara",
        "Presión cámara",
        "Temp. camisa",
        "Temp. carga",
    ],
    [
        "Data/hora",
        "Temperatura da câmara",
        "Pressão da câmara",
        "Temperatura da camisa",
        "Temperatura da carga",
    ],
    [
        "Ora",
        "Temperatura camera",
        "Pressione camera",
        "Temperatura intercapedine",
        "Temperatura carico",
    ],
    [
        "Czas",
        "Temperatura komory",
        "Ciśnienie komory",
        "Temperatura płaszcza",
        "Temperatura wsadu",
    ],
    [
        "Thời gian",
        "Nhiệt độ buồng",
        "Áp suất buồng",
        "Nhiệt độ vỏ",
        "Temp load",
    ],
];

impl Style {
    fn number(&self, value: f64, decimals: usize) -> String {
        let plain = format!("{value:.decimals$}");
        if self.comma {
            plain.replace('.', ",")
        } else {
            plain
        }
    }

    fn temperature(&self, celsius: f64) -> f64 {
        match self.fahrenheit {
            0 => celsius,
            1 => celsius * 1.8 + 32.0,
            _ => celsius + 273.15,
        }
    }

    fn time(&self, i: i64) -> String {
        let at = jiff::Timestamp::from_second(START + i * STEP_S).unwrap();
        let civil = jiff::tz::TimeZone::UTC.to_datetime(at);
        let since = i * STEP_S;
        let (h, m, s) = (since / 3_600, since / 60 % 60, since % 60);
        let form = |form: &str| civil.strftime(form).to_string();
        match self.time {
            "iso" => form("%Y-%m-%dT%H:%M:%S"),
            "iso blank" => form("%Y-%m-%d %H:%M:%S"),
            "dmy" => form("%d.%m.%Y %H:%M:%S"),
            "dmy short" => form("%d/%m/%y %H:%M:%S"),
            "mdy pm" => form("%m/%d/%Y %I:%M:%S %p"),
            "ymd slash" => form("%Y/%m/%d %H:%M:%S"),
            "two columns" => form("%d.%m.%Y") + self.separator + &form("%H:%M:%S"),
            "clock" => form("%H:%M:%S"),
            "zone" => form("%Y-%m-%dT%H:%M:%S") + "+02:00",
            "elapsed" => format!("{:02}:{s:02}", since / 60),
            "hours" => format!("{h}:{m:02}:{s:02}"),
            "seconds" => since.to_string(),
            "minutes" => self.number(since as f64 / 60.0, 4),
            "epoch" => (START + since).to_string(),
            "millis" => ((START + since) * 1_000).to_string(),
            _ => self.number((START + since) as f64 / 86_400.0 + 25_569.0, 8),
        }
    }

    fn heading(&self) -> Vec<String> {
        let names = NAMES[self.language];
        let t = ["°C", "°F", "K"][usize::from(self.fahrenheit)];
        let reference = if self.gauge { "rel" } else { "abs" };
        let time = match self.time {
            "two columns" => "Datum".to_owned() + self.separator + names[0],
            "seconds" => format!("{} [s]", names[0]),
            "minutes" => format!("{} [min]", names[0]),
            _ => names[0].to_owned(),
        };
        vec![
            time,
            format!("{} [{t}]", names[1]),
            format!("{} [{} {reference}]", names[2], self.pressure.0),
            format!("{} [{t}]", names[3]),
            format!("{} [{t}]", names[4]),
        ]
    }

    fn line(&self, cells: &[String]) -> String {
        let quote = |cell: &String| {
            if self.quoted && !cell.contains(self.separator) {
                format!("\"{cell}\"")
            } else {
                cell.clone()
            }
        };
        let cells: Vec<String> = self.order.iter().map(|i| quote(&cells[*i])).collect();
        cells.join(self.separator) + self.line_end
    }

    fn cells(&self, i: usize, celsius: f64, kpa: f64) -> Vec<String> {
        let reading = if self.gauge {
            kpa - air_pressure(ALTITUDE_M)
        } else {
            kpa
        };
        vec![
            self.time(i as i64),
            self.number(self.temperature(celsius), 2),
            self.number(reading / self.pressure.1, self.pressure.2),
            self.number(self.temperature(137.0 + (i % 7) as f64 / 10.0), 2),
            self.number(self.temperature(20.0 + 0.9 * (celsius - 20.0)), 2),
        ]
    }

    fn file(&self) -> Vec<u8> {
        let mut text = String::new();
        if self.preamble {
            text.push_str(
                &[
                    "Record 12",
                    "Set temperature: 134.0 C",
                    "Hold time: 240 s",
                    "",
                ]
                .join(self.line_end),
            );
            text.push_str(self.line_end);
        }
        text.push_str(&self.line(&self.heading()));
        for (i, (celsius, kpa)) in cycle().into_iter().enumerate() {
            text.push_str(&self.line(&self.cells(i, celsius, kpa)));
        }
        encode(&text, self.encoding)
    }
}

fn encode(text: &str, encoding: &str) -> Vec<u8> {
    let wide = |big: bool| {
        text.encode_utf16().flat_map(move |u| {
            if big {
                u.to_be_bytes()
            } else {
                u.to_le_bytes()
            }
        })
    };
    match encoding {
        "bom" => [b"\xEF\xBB\xBF", text.as_bytes()].concat(),
        "utf-16le" => b"\xFF\xFE".iter().copied().chain(wide(false)).collect(),
        "utf-16be" => b"\xFE\xFF".iter().copied().chain(wide(true)).collect(),
        "utf-16le bare" => wide(false).collect(),
        // Letters that the encoding lacks become question marks.
        "latin-1" => text
            .chars()
            .map(|c| u8::try_from(u32::from(c)).unwrap_or(b'?'))
            .collect(),
        _ => text.as_bytes().to_vec(),
    }
}

/// The same samples, within what the rounding of the columns takes away.
fn check(file: &[u8], known: &Known, step_c: f64, step_kpa: f64) -> Result<(), TestCaseError> {
    let found = read(file, known).map_err(|e| TestCaseError::fail(e.to_string()))?;
    prop_assert_eq!(found.len(), 1, "cycles");
    let record = &found[0];
    prop_assert!(record.findings.is_empty(), "{:?}", record.findings);
    let wanted = cycle();
    prop_assert_eq!(record.samples.t_s.len(), wanted.len());
    prop_assert_eq!(
        record.samples.press_kpa.len(),
        wanted.len(),
        "{:?}",
        record.layout
    );
    for (i, (celsius, kpa)) in wanted.into_iter().enumerate() {
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
    Ok(())
}

fn at_altitude() -> Known {
    Known {
        altitude_m: Some(ALTITUDE_M),
        ..Known::default()
    }
}

proptest! {
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
