//! Names of columns and channels, in the languages of the salons' machines.

use super::stems::{
    CHAMBER, ELSEWHERE, INDEX, LOAD, NAMING, PHASE, PRESSURE, SET, SET_WORDS, TEMPERATURE, TIME,
    TIME_WORDS,
};
use super::units::Said;
use super::words::{any_stem, any_word, split};

/// What a column or channel holds, by its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Channel {
    Time,
    Temperature,
    Pressure,
    /// What was asked for, not what was.
    SetPoint,
    /// A number that counts the rows.
    Index,
    /// The part of the cycle, in words.
    Phase,
    /// A channel's name, in records with one row a reading.
    Naming,
    #[default]
    Unknown,
}

/// Where a sensor sits, by its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) enum Place {
    /// The name says: in the chamber.
    Chamber,
    /// The name says nothing.
    #[default]
    Unsaid,
    /// In the load.
    Load,
    /// Somewhere else: jacket, boiler, drain, room.
    Elsewhere,
}

/// A heading, understood.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Name {
    pub channel: Channel,
    pub place: Place,
    /// The number at the end of `T2` or `probe 2`; 0 where there is none.
    pub rank: u32,
    pub said: Said,
    /// A time counted from the start.
    pub elapsed: bool,
    /// Seconds that one unit of a numeric time lasts.
    pub time_unit_s: Option<f64>,
    /// The heading's words, folded.
    pub words: Vec<String>,
}

impl Name {
    /// Understands a heading, with the unit that stands below it already appended.
    pub fn read(text: &str) -> Self {
        let mut words = split(text);
        for word in &mut words {
            for stem in ["kammer", "chamber"] {
                if let Some(rest) = word.strip_prefix(stem).filter(|rest| rest.len() > 3) {
                    *word = rest.to_owned();
                    break;
                }
            }
        }
        let chamber = any_stem(&split(text), CHAMBER);
        let said = Said::from_words(&words);
        let mut name = Self {
            channel: channel(text.trim(), &words, said),
            place: place(&words, chamber),
            rank: rank(&words),
            said,
            elapsed: any_stem(
                &words,
                &[
                    "elapsed",
                    "laufzeit",
                    "dauer",
                    "duree",
                    "ecoul",
                    "transcurr",
                    "decorr",
                    "trascors",
                    "duration",
                    "runtime",
                ],
            ),
            time_unit_s: None,
            words,
        };
        if name.channel == Channel::Time {
            name.time_unit_s = time_unit(&name.words);
            name.elapsed |= min_sec(&name.words);
        }
        name
    }
}

/// `mm:ss` or `min:sec` as a heading or a unit.
fn min_sec(words: &[String]) -> bool {
    words.windows(2).any(|pair| {
        matches!(
            (pair[0].as_str(), pair[1].as_str()),
            ("min", "sec") | ("mm", "ss") | ("m", "s") | ("min", "s")
        )
    }) && !any_word(words, &["hh", "h"])
}

fn channel(text: &str, words: &[String], said: Said) -> Channel {
    let set_point = words.windows(2).any(|w| w[0] == "set" && w[1].starts_with('p'));
    if set_point || any_stem(words, SET) || any_word(words, SET_WORDS) {
        return Channel::SetPoint;
    }
    if any_stem(words, PHASE) || words.concat().contains("giaidoan") {
        return Channel::Phase;
    }
    if matches!(text, "#" | "№") || any_word(words, INDEX) {
        return Channel::Index;
    }
    if words.len() == 1 && any_word(words, NAMING) {
        return Channel::Naming;
    }
    // In physics a small t is time and a capital one temperature.
    let small_t = text.starts_with('t') && words.first().is_some_and(|w| w == "t");
    if text == "t" || (small_t && time_unit(words).is_some()) {
        return Channel::Time;
    }
    quantity(words, said)
}

/// What is measured, by the name and, where that says nothing, by the unit.
fn quantity(words: &[String], said: Said) -> Channel {
    // German writes its nouns as one word.
    let inside = |part: &str| words.iter().any(|word| word.contains(part));
    if any_stem(words, TIME) || any_word(words, TIME_WORDS) {
        return Channel::Time;
    }
    let only_pressure = said.pressure.is_some() && said.temperature.is_none();
    if inside("druck") || any_stem(words, PRESSURE) || only_pressure {
        return Channel::Pressure;
    }
    if inside("temperat") || any_stem(words, TEMPERATURE) {
        return Channel::Temperature;
    }
    if inside("zeit") {
        return Channel::Time;
    }
    let first = words.first().map_or("", |w| w.trim_end_matches(|c: char| c.is_ascii_digit()));
    match first {
        "t" => Channel::Temperature,
        "p" => Channel::Pressure,
        _ if said.temperature.is_some() => Channel::Temperature,
        "hh" | "mm" => Channel::Time,
        _ if time_unit(words).is_some() => Channel::Time,
        _ => Channel::Unknown,
    }
}

fn place(words: &[String], chamber: bool) -> Place {
    if any_stem(words, ELSEWHERE) || any_word(words, &["vo", "air", "luft", "max", "maximum"]) {
        Place::Elsewhere
    } else if any_stem(words, LOAD) {
        Place::Load
    } else if chamber {
        Place::Chamber
    } else {
        Place::Unsaid
    }
}

fn rank(words: &[String]) -> u32 {
    words
        .iter()
        .filter(|word| !word.starts_with("cm"))
        .filter_map(|word| {
            let digits = word.len() - word.trim_end_matches(|c: char| c.is_ascii_digit()).len();
            word[word.len() - digits..].parse().ok()
        })
        .next_back()
        .unwrap_or(0)
}

fn time_unit(words: &[String]) -> Option<f64> {
    words.iter().rev().find_map(|word| match word.as_str() {
        "ms" | "msec" | "millis" | "milliseconds" | "millisekunden" => Some(0.001),
        "s" | "sec" | "secs" | "second" | "seconds" | "sek" | "sekunden" | "segundos"
        | "secondes" | "secondi" | "sekundy" | "giay" => Some(1.0),
        "min" | "minute" | "minutes" | "minuten" | "minutos" | "minuti" | "minuty" | "phut" => {
            Some(60.0)
        }
        "h" | "hour" | "hours" | "std" | "stunden" => Some(3_600.0),
        _ => None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(heading: &str, channel: Channel, place: Place) {
        let name = Name::read(heading);
        assert_eq!((name.channel, name.place), (channel, place), "{heading}: {name:?}");
    }

    /// Headings parted by `|`.
    #[track_caller]
    fn check_all(headings: &str, channel: Channel, place: Place) {
        for heading in headings.split('|') {
            check(heading.trim(), channel, place);
        }
    }

    #[test]
    fn headings_in_many_languages() {
        use Channel::{Index, Phase, Pressure, SetPoint, Temperature, Time, Unknown};
        use Place::{Chamber, Elsewhere, Load, Unsaid};
        let times = "Zeit | Uhrzeit | Date/heure | Hora | Elapsed | MIN:SEC | timestamp | DateTime \
            | Thời gian | Czas | Ora | Tempo | Temps (s) | t | t [s] | Giờ | Fecha y hora \
            | Time stamp | elapsed_s | Datum | sec";
        check_all(times, Time, Unsaid);
        let temperatures = "T1 | temp | T[°C] | Temp/°C | temp_C | Temperatura (°C) | Nhiệt độ \
            | Temperatur | TEMP (F) | T | t1 | Température | Teplota";
        check_all(temperatures, Temperature, Unsaid);
        let chamber = "Kammertemperatur [°C] | Température cuve (°C) | Temp. cámara | Chamber F \
            | chamber_temp_c | Temperatura da câmara | Temperatura camera | Temperatura komory \
            | Nhiệt độ buồng";
        check_all(chamber, Temperature, Chamber);
        let pressures = "P1 | p[bar,abs] | Druck/bar(a) | press_kPa | PRESS BAR \
            | Pression rel. (bar) | Áp suất (kPa) | Ciśnienie | Pressione | Pressão";
        check_all(pressures, Pressure, Unsaid);
        let chamber = "Kammerdruck [bar Ü] | Chamber psig | Presión cámara \
            | Pressão da câmara (bar) | Áp suất buồng";
        check_all(chamber, Pressure, Chamber);
        let jacket = "Enveloppe (°C) | Jacket temperature | Manteltemperatur | Temp max";
        check_all(jacket, Temperature, Elsewhere);
        check("Load temperature", Temperature, Load);
        check_all("Consigne (°C) | Set point | Solltemperatur", SetPoint, Unsaid);
        check("Phase", Phase, Unsaid);
        check("No", Index, Unsaid);
        check("F0", Unknown, Unsaid);
    }

    #[test]
    fn ranks_and_units_of_time() {
        assert_eq!(Name::read("probe2_c").rank, 2);
        assert_eq!(Name::read("time [min]").time_unit_s, Some(60.0));
        assert!(Name::read("Elapsed").elapsed && Name::read("MIN:SEC").elapsed);
        assert!(!Name::read("Time hh:mm:ss").elapsed);
    }
}
