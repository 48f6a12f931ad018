//! A cycle written in some layout.

use crate::choices::Choices;
use crate::made::{Made, Row};

/// How a record is written.
#[derive(Debug, Clone)]
pub struct Style {
    separator: &'static str,
    comma: bool,
    /// Name, degrees in one K, degrees at 0 °C.
    temperature: (&'static str, f64, f64),
    decimals: usize,
    /// Name, kPa in one, decimals.
    pressure: (&'static str, f64, usize),
    pub gauge: bool,
    time: &'static str,
    names: [&'static str; 3],
    swapped: bool,
    pub heading: bool,
    /// Set temperature above the table.
    pub states_set: bool,
    pub states_altitude: bool,
    line_end: &'static str,
    wide: bool,
}

const NAMES: [[&str; 3]; 5] = [
    ["Time", "Chamber temperature", "Chamber pressure"],
    ["Zeit", "Kammertemperatur", "Kammerdruck"],
    ["Hora", "Temp. cámara", "Presión cámara"],
    ["Czas", "Temperatura komory", "Ciśnienie komory"],
    ["t", "T", "p"],
];

const TIMES: [&str; 9] =
    ["iso", "clock", "elapsed", "seconds", "minutes", "epoch", "millis", "serial", "dmy"];

/// 2025-10-27 08:12:18, in seconds since 1970 (from memory of `date -u -d ... +%s`).
const START: i64 = 1_761_552_738;

impl Style {
    /// Draws one.
    pub fn draw(choices: &mut Choices<'_>) -> Self {
        let units = [
            ("kPa", 1.0, 1),
            ("bar", 100.0, 3),
            ("mbar", 0.1, 0),
            ("Pa", 0.001, 0),
            ("psi", 6.894_757, 2),
            ("MPa", 1_000.0, 4),
            ("bar", 100.0, 2),
        ];
        let separator = choices.pick(&[";", ",", "\t", "|", "   "]);
        Self {
            separator,
            comma: choices.coin() && separator != ",",
            temperature: choices.pick(&[("°C", 1.0, 0.0), ("°F", 1.8, 32.0), ("K", 1.0, 273.15)]),
            decimals: choices.pick(&[1, 2, 0]),
            pressure: choices.pick(&units),
            gauge: choices.coin(),
            time: choices.pick(&TIMES),
            names: choices.pick(&NAMES),
            swapped: choices.coin(),
            heading: !choices.rarely(6),
            states_set: choices.coin(),
            states_altitude: choices.coin(),
            line_end: choices.pick(&["\n", "\r\n"]),
            wide: choices.rarely(8),
        }
    }

    /// Step of the written temperature, K.
    pub fn step_k(&self) -> f64 {
        10_f64.powi(-(self.decimals as i32)) / self.temperature.1
    }

    /// Step of the written pressure, kPa.
    pub fn step_kpa(&self) -> f64 {
        10_f64.powi(-(self.pressure.2 as i32)) * self.pressure.1
    }

    fn number(&self, value: f64, decimals: usize) -> String {
        let plain = format!("{value:.decimals$}");
        if self.comma { plain.replace('.', ",") } else { plain }
    }

    fn time(&self, t: i64) -> String {
        let now = START + t;
        let of_day = now % 86_400;
        let clock = format!("{:02}:{:02}:{:02}", of_day / 3_600, of_day / 60 % 60, of_day % 60);
        match self.time {
            // No made cycle is longer than the rest of that day.
            "iso" => format!("2025-10-27T{clock}"),
            "dmy" => format!("27.10.2025 {clock}"),
            "clock" => clock,
            "elapsed" => format!("{:02}:{:02}", t / 60, t % 60),
            "seconds" => t.to_string(),
            "minutes" => self.number(t as f64 / 60.0, 4),
            "epoch" => now.to_string(),
            "millis" => (now * 1_000).to_string(),
            _ => self.number(now as f64 / 86_400.0 + 25_569.0, 8),
        }
    }

    fn heading(&self) -> String {
        let time = match self.time {
            "seconds" => format!("{} [s]", self.names[0]),
            "minutes" => format!("{} [min]", self.names[0]),
            _ => self.names[0].to_owned(),
        };
        let reference = if self.gauge { "rel" } else { "abs" };
        let temperature = format!("{} [{}]", self.names[1], self.temperature.0);
        let pressure = format!("{} [{} {reference}]", self.names[2], self.pressure.0);
        self.line(time, temperature, pressure)
    }

    fn line(&self, time: String, temperature: String, pressure: String) -> String {
        let cells = if self.swapped {
            [time, pressure, temperature]
        } else {
            [time, temperature, pressure]
        };
        cells.join(self.separator) + self.line_end
    }

    /// What the columns make of a row: rounded, but in °C and absolute kPa.
    pub fn rounded(&self, row: &Row, air_kpa: f64) -> Row {
        let to = |value: f64, decimals: usize| {
            let tens = 10_f64.powi(decimals as i32);
            (value * tens).round() / tens
        };
        let (_, per_k, zero) = self.temperature;
        let air = if self.gauge { air_kpa } else { 0.0 };
        Row {
            t: row.t,
            celsius: (to(row.celsius * per_k + zero, self.decimals) - zero) / per_k,
            kpa: to((row.kpa - air) / self.pressure.1, self.pressure.2) * self.pressure.1 + air,
        }
    }

    /// The file.
    pub fn file(&self, made: &Made, rows: &[Row]) -> Vec<u8> {
        let mut text = String::new();
        if self.states_set {
            text += &format!("Set temperature: {} C{}", made.set_c, self.line_end);
        }
        if self.states_altitude {
            text += &format!("Altitude: {} m{}", made.metres, self.line_end);
        }
        if self.heading {
            text += &self.heading();
        }
        let (_, per_k, zero) = self.temperature;
        let air = if self.gauge { made.air_kpa } else { 0.0 };
        for row in rows {
            let celsius = self.number(row.celsius * per_k + zero, self.decimals);
            let pressure = self.number((row.kpa - air) / self.pressure.1, self.pressure.2);
            text += &self.line(self.time(row.t), celsius, pressure);
        }
        if self.wide {
            text.encode_utf16().flat_map(u16::to_le_bytes).collect()
        } else {
            text.into_bytes()
        }
    }
}
