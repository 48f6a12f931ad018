//! Layouts drawn by chance: separators, marks, units, languages, times, encodings.

use crate::made::{ALTITUDE_M, STEP_S, cycle};
use cycle::steam::air_pressure;
use proptest::prelude::*;
use proptest::sample::select;

/// 2025-10-26 08:12:18, in seconds since 1970 (from memory of `date -u -d ... +%s`).
const START: i64 = 1_761_466_338;

/// How a record is written.
#[derive(Debug, Clone)]
pub struct Style {
    pub separator: &'static str,
    pub comma: bool,
    pub fahrenheit: u8,
    /// Name, kPa in one, decimals.
    pub pressure: (&'static str, f64, usize),
    pub gauge: bool,
    pub time: &'static str,
    pub language: usize,
    pub order: Vec<usize>,
    pub encoding: &'static str,
    pub line_end: &'static str,
    pub quoted: bool,
    pub preamble: bool,
}

/// Any style.
pub fn style() -> impl Strategy<Value = Style> {
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
        select(vec!["utf-8", "bom", "utf-16le", "utf-16be", "utf-16le bare", "latin-1"]),
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
    ["Time", "Chamber temperature", "Chamber pressure", "Jacket temperature", "Load temperature"],
    ["Zeit", "Kammertemperatur", "Kammerdruck", "Manteltemperatur", "Beladung Temperatur"],
    ["Heure", "Température cuve", "Pression cuve", "Température enveloppe", "Température charge"],
    ["Hora", "Temp. cámara", "Presión cámara", "Temp. camisa", "Temp. carga"],
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
    ["Czas", "Temperatura komory", "Ciśnienie komory", "Temperatura płaszcza", "Temperatura wsadu"],
    ["Thời gian", "Nhiệt độ buồng", "Áp suất buồng", "Nhiệt độ vỏ", "Temp load"],
];

impl Style {
    fn number(&self, value: f64, decimals: usize) -> String {
        let plain = format!("{value:.decimals$}");
        if self.comma { plain.replace('.', ",") } else { plain }
    }

    fn temperature(&self, celsius: f64) -> f64 {
        match self.fahrenheit {
            0 => celsius,
            1 => celsius * 1.8 + 32.0,
            _ => celsius + 273.15,
        }
    }

    /// The time so many seconds after the first row.
    pub fn time_at(&self, since: i64) -> String {
        let at = jiff::Timestamp::from_second(START + since).unwrap();
        let civil = jiff::tz::TimeZone::UTC.to_datetime(at);
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

    pub fn heading(&self) -> Vec<String> {
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

    pub fn line(&self, cells: &[String]) -> String {
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

    pub fn cells(&self, i: usize, celsius: f64, kpa: f64) -> Vec<String> {
        let reading = if self.gauge { kpa - air_pressure(ALTITUDE_M) } else { kpa };
        vec![
            self.time_at(i as i64 * STEP_S),
            self.number(self.temperature(celsius), 2),
            self.number(reading / self.pressure.1, self.pressure.2),
            self.number(self.temperature(137.0 + (i % 7) as f64 / 10.0), 2),
            self.number(self.temperature(20.0 + 0.9 * (celsius - 20.0)), 2),
        ]
    }

    pub fn file(&self) -> Vec<u8> {
        let mut text = String::new();
        if self.preamble {
            text.push_str(
                &["Record 12", "Set temperature: 134.0 C", "Hold time: 240 s", ""]
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

/// The text in an encoding.
pub fn encode(text: &str, encoding: &str) -> Vec<u8> {
    let wide = |big: bool| {
        text.encode_utf16().flat_map(move |u| if big { u.to_be_bytes() } else { u.to_le_bytes() })
    };
    match encoding {
        "bom" => [b"\xEF\xBB\xBF", text.as_bytes()].concat(),
        "utf-16le" => b"\xFF\xFE".iter().copied().chain(wide(false)).collect(),
        "utf-16be" => b"\xFE\xFF".iter().copied().chain(wide(true)).collect(),
        "utf-16le bare" => wide(false).collect(),
        // Letters that the encoding lacks become question marks.
        "latin-1" => text.chars().map(|c| u8::try_from(u32::from(c)).unwrap_or(b'?')).collect(),
        _ => text.as_bytes().to_vec(),
    }
}
