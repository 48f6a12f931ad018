//! What the lines before, between and behind the rows say.

use super::number;
use super::stamp::{Order, Scan, Shape};
use super::units::TemperatureUnit;
use super::words::{any_stem, split};

/// What the preamble says was asked for.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Asked {
    pub set_c: Option<f64>,
    pub hold_s: Option<f64>,
    pub drying_s: Option<f64>,
    pub programme: Option<String>,
    pub altitude_m: Option<f64>,
    /// Day of the start in microseconds since 1970.
    pub day: Option<i64>,
    /// Clock of the start in microseconds since midnight.
    pub clock: Option<i64>,
}

const SET: &[&str] = &[
    "setpoint", "settemp", "solltemp", "sollwert", "consign", "zadan", "zieltemp", "impostat",
    "instelt",
];
const STERILISE: &[&str] = &["steril", "tiet", "esteril", "sterylizac"];
const TEMPERATURE: &[&str] = &["temp", "nhiet"];
const HOLD: &[&str] = &[
    "hold",
    "halte",
    "exposure",
    "exposit",
    "einwirk",
    "palier",
    "manten",
    "manutenc",
    "sterilisierzeit",
    "sterilisationszeit",
    "mantenim",
];
const DRY: &[&str] = &["dry", "trock", "sech", "secad", "secag", "asciug", "susz", "say"];
const ALTITUDE: &[&str] =
    &["altitud", "hohe", "hoehe", "elevat", "wysok", "hoogte", "meereshohe", "seehohe", "altura"];
const START: &[&str] = &["start", "begin", "debut", "inic", "inizi", "rozpocz", "bat", "beginn"];
const TIME: &[&str] = &[
    "time", "zeit", "duree", "temps", "tiempo", "tempo", "czas", "thoi", "dauer", "duration",
    "durac",
];

impl Asked {
    /// Reads the lines before the rows.
    pub fn read<'a>(lines: impl Iterator<Item = &'a str>, order: Order) -> Self {
        let mut asked = Self::default();
        let mut start_named = false;
        for line in lines {
            asked.programme = asked.programme.take().or_else(|| programme(line));
            asked.start(line, order, &mut start_named);
            asked.values(line);
        }
        asked
    }

    /// The first day and clock; those behind a word for the start win over an earlier print time.
    fn start(&mut self, line: &str, order: Order, named: &mut bool) {
        let is_start = any_stem(&split(line), START);
        if self.day.is_some() && (*named || !is_start) {
            return;
        }
        let mut day = None;
        let mut clock = None;
        for word in line.split([' ', '\t', ';', ',', 'T', '|', '=']) {
            let word =
                word.trim_matches(|c: char| "()[]\"".contains(c)).trim_end_matches([':', '.']);
            let Some(scan) = Scan::read(word.as_bytes()) else {
                continue;
            };
            match scan.shape() {
                Some(Shape::Day) => {
                    let first_is_year = scan.day_numbers().is_some_and(|(n, _)| n[0] > 999);
                    let order = if first_is_year { Order::Ymd } else { order };
                    day = day.or_else(|| scan.day(order).or_else(|| scan.day(swapped(order))));
                }
                Some(Shape::Clock(_)) => clock = clock.or_else(|| scan.clock()),
                _ => {}
            }
        }
        if let Some(day) = day {
            (self.day, self.clock, *named) = (Some(day), clock, is_start);
        }
    }

    /// Every `name … number unit` on the line: a print tape puts several on one.
    fn values(&mut self, line: &str) {
        let tokens = tokens(line);
        let mut names: Vec<String> = Vec::new();
        let mut at = 0;
        while let Some(token) = tokens.get(at) {
            at += 1;
            let Some((value, unit)) = quantity(token) else {
                names.extend(split(token));
                continue;
            };
            let next = tokens.get(at).filter(|next| quantity(next).is_none());
            let unit = match (unit, next) {
                (Unit::None, Some(next)) => Unit::of(next),
                (unit, _) => unit,
            };
            self.take(&names, value, unit);
            names.clear();
        }
    }

    fn take(&mut self, names: &[String], value: f64, unit: Unit) {
        let set_word = names.iter().any(|name| name == "set") || any_stem(names, SET);
        let names_time = any_stem(names, TIME) || matches!(unit, Unit::Seconds(_));
        let names_temperature = any_stem(names, TEMPERATURE) || matches!(unit, Unit::Degrees(_));
        let sterilise = any_stem(names, STERILISE);
        if any_stem(names, ALTITUDE) || names.windows(2).any(|w| w[0] == "do" && w[1] == "cao") {
            let metres = if matches!(unit, Unit::Feet) { value * 0.3048 } else { value };
            let fits = measure::bounds::ALTITUDE.check(metres).ok();
            self.altitude_m = self.altitude_m.or(fits);
        } else if any_stem(names, DRY) {
            self.drying_s = self.drying_s.or(unit.seconds(value));
        } else if (any_stem(names, HOLD) || sterilise && names_time)
            && !matches!(unit, Unit::Degrees(_))
        {
            self.hold_s = self.hold_s.or(unit.seconds(value));
        } else if set_word || sterilise && names_temperature {
            self.set_c = self.set_c.or_else(|| set_point(value, unit));
        }
    }
}

const fn swapped(order: Order) -> Order {
    match order {
        Order::Dmy => Order::Mdy,
        _ => Order::Dmy,
    }
}

/// A believable set point in °C.
fn set_point(value: f64, unit: Unit) -> Option<f64> {
    let units = match unit {
        Unit::Degrees(unit) => vec![unit],
        _ => TemperatureUnit::ALL.to_vec(),
    };
    units
        .into_iter()
        .map(|unit| unit.to_celsius(value))
        .find(|celsius| (105.0..=140.0).contains(celsius))
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Unit {
    None,
    Seconds(f64),
    Degrees(TemperatureUnit),
    Metres,
    Feet,
    Other,
}

impl Unit {
    fn of(word: &str) -> Self {
        match split(word).concat().as_str() {
            "s" | "sec" | "secs" | "second" | "seconds" | "sek" | "sekunden" | "segundos"
            | "secondes" | "secondi" | "giay" => Self::Seconds(1.0),
            "min" | "mins" | "minute" | "minutes" | "minuten" | "minutos" | "minuti" | "minuty"
            | "phut" => Self::Seconds(60.0),
            "h" | "std" | "hours" => Self::Seconds(3_600.0),
            "c" | "°c" | "degc" | "ºc" | "celsius" => Self::Degrees(TemperatureUnit::Celsius),
            "f" | "°f" | "degf" | "fahrenheit" => Self::Degrees(TemperatureUnit::Fahrenheit),
            "k" | "kelvin" => Self::Degrees(TemperatureUnit::Kelvin),
            "m" | "metres" | "meter" | "meters" | "mnn" => Self::Metres,
            "ft" | "feet" => Self::Feet,
            "" => Self::None,
            _ => Self::Other,
        }
    }

    /// Without a unit a length of time stays unknown.
    fn seconds(self, value: f64) -> Option<f64> {
        match self {
            Self::Seconds(unit) => Some(value * unit).filter(|s| (0.0..86_400.0).contains(s)),
            _ => None,
        }
    }
}

/// Words and numbers; marks that part names from values become blanks.
pub(super) fn tokens(line: &str) -> Vec<String> {
    let characters: Vec<char> = line.chars().collect();
    let digit =
        |i: Option<usize>| i.and_then(|i| characters.get(i)).is_some_and(char::is_ascii_digit);
    let spaced: String = characters
        .iter()
        .enumerate()
        .map(|(i, &c)| match c {
            ';' | '\t' | '|' | '=' | '(' | ')' | '[' | ']' | '"' | '_' => ' ',
            ',' | ':' | '.' if !(digit(i.checked_sub(1)) && digit(Some(i + 1))) => ' ',
            _ => c,
        })
        .collect();
    spaced.split_whitespace().map(str::to_owned).collect()
}

/// A number, its own unit, or minutes and seconds with a colon.
pub(super) fn quantity(token: &str) -> Option<(f64, Unit)> {
    if let Some(scan) = Scan::read(token.as_bytes()) {
        let micros = scan.elapsed()?;
        return Some((micros as f64 / 1e6, Unit::Seconds(1.0)));
    }
    let mark = if token.contains(',') { b',' } else { b'.' };
    let number = number::parse(token.as_bytes(), mark)?;
    let unit = token.trim_start_matches(|c: char| !c.is_alphabetic() && c != '°');
    Some((number.value, Unit::of(unit)))
}

/// The name behind the word for a programme.
fn programme(line: &str) -> Option<String> {
    let line = line.trim();
    let (key, rest) = match line.split_once([':', '=', ';', '\t', ',']) {
        Some(pair) => pair,
        None => line.split_once(char::is_whitespace)?,
    };
    let words = split(key);
    let named = words.len() <= 3
        && (any_stem(&words, &["program", "prog"]) || words.concat().contains("chuongtrinh"));
    let name = rest.trim().trim_matches('"');
    (named && !name.is_empty()).then(|| name.chars().take(80).collect())
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    #[track_caller]
    fn check(
        line: &str,
        set_c: Option<f64>,
        hold_s: Option<f64>,
        drying_s: Option<f64>,
        altitude_m: Option<f64>,
    ) {
        let asked = Asked::read([line].into_iter(), Order::Dmy);
        assert_eq!(
            (asked.set_c, asked.hold_s, asked.drying_s),
            (set_c, hold_s, drying_s),
            "{line}"
        );
        let same = match (asked.altitude_m, altitude_m) {
            (Some(a), Some(b)) => (a - b).abs() < 0.01,
            (a, b) => a == b,
        };
        assert!(same, "{line}: {:?}", asked.altitude_m);
    }

    #[test]
    fn preambles_in_many_languages() {
        check("Set temperature: 134.0 °C", Some(134.0), None, None, None);
        check(" SET 134.0 C  HOLD 210 S", Some(134.0), Some(210.0), None, None);
        check("Solltemperatur;121,0 °C", Some(121.0), None, None, None);
        check("Température de consigne : 134 °C", Some(134.0), None, None, None);
        check("Sterilisation temperature = 273.2 F", Some(134.0), None, None, None);
        check("Temperatura de esterilización: 134 °C", Some(134.0), None, None, None);
        check("Set temperature 2.7", None, None, None, None);
        check("Hold time: 1080 s", None, Some(1080.0), None, None);
        check("Haltezeit: 3,5 min", None, Some(210.0), None, None);
        check("Sterilisierzeit 04:00", None, Some(240.0), None, None);
        check("Tempo di sterilizzazione: 4 min", None, Some(240.0), None, None);
        check("Hold time: 4", None, None, None, None);
        check("Drying time: 780 s", None, None, Some(780.0), None);
        check("Séchage: 10 min", None, None, Some(600.0), None);
        check("Site altitude: 210 m", None, None, None, Some(210.0));
        check("Höhe über NN: 450 m", None, None, None, Some(450.0));
        check("Altitude: 5250 ft", None, None, None, Some(1600.2));
        check("Interval: 2 s", None, None, None, None);
        check("Operator: operator 4", None, None, None, None);
    }

    #[test]
    fn the_start_and_the_programme() {
        let day = 86_400_000_000;
        let asked = Asked::read(
            ["Printed 02.02.2025 10:00:00", "Programme: B134_18", "Start: 2025-04-24 08:26:16"]
                .into_iter(),
            Order::Dmy,
        );
        // 2025-04-24 is day 20 202 since 1970 (from memory of `date -d 2025-04-24 +%s` / 86400).
        assert_eq!(asked.day, Some(20_202 * day));
        assert_eq!(asked.clock, Some((8 * 3_600 + 26 * 60 + 16) * 1_000_000));
        assert_eq!(asked.programme.as_deref(), Some("B134_18"));
        let tape = Asked::read([" 21/01/2025 13:24:00", " PROGRAM  FAST"].into_iter(), Order::Mdy);
        assert_eq!((tape.day, tape.programme.as_deref()), (Some(20_109 * day), Some("FAST")));
    }
}
