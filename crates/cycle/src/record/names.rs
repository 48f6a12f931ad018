//! Names of columns and channels, in the languages of the salons' machines.

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

const SET: &[&str] = &[
    "setpoint", "soll", "consign", "setting", "target", "zadan", "ziel", "setvalue", "instel",
];
const SET_WORDS: &[&str] = &["set", "sp", "dat"];
const PHASE: &[&str] = &[
    "phase", "fase", "faza", "etap", "stage", "state", "status", "estad", "stato", "schritt",
];
const INDEX: &[&str] = &[
    "no", "nr", "num", "index", "row", "zeile", "idx", "lp", "stt", "id", "record",
];
const NAMING: &[&str] = &[
    "channel",
    "kanal",
    "canal",
    "canale",
    "tag",
    "sensor",
    "signal",
    "parameter",
    "variable",
    "name",
];
const TIME: &[&str] = &[
    "timestamp",
    "datetime",
    "zeit",
    "uhrzeit",
    "datum",
    "heure",
    "horodat",
    "fecha",
    "czas",
    "godz",
    "tiempo",
    "elapsed",
    "laufzeit",
    "dauer",
    "duree",
    "tijd",
    "horario",
    "orario",
    "время",
    "时间",
    "時刻",
    "時間",
    "시간",
    "epoch",
    "unix",
    "zaman",
];
const TIME_WORDS: &[&str] = &[
    "time", "thoi", "date", "temps", "tempo", "hora", "data", "ora", "gio", "ngay", "tid", "cas",
    "aika", "stamp", "clock", "dato", "hms", "ts",
];
const TEMPERATURE: &[&str] = &[
    "temp",
    "tmp",
    "nhiet",
    "teplot",
    "sicakl",
    "lampot",
    "темп",
    "温度",
    "溫度",
    "온도",
    "kammertemp",
    "chambertemp",
];
const PRESSURE: &[&str] = &[
    "press",
    "pres",
    "druck",
    "prs",
    "suat",
    "cisn",
    "tlak",
    "basin",
    "tryck",
    "tryk",
    "druk",
    "paine",
    "давл",
    "压力",
    "壓力",
    "圧力",
    "압력",
    "kammerdruck",
    "vacuum",
    "vakuum",
];
const CHAMBER: &[&str] = &[
    "chamb", "kammer", "cuve", "camar", "camer", "komor", "buong", "kamer", "cavit", "hazne",
    "innen", "steril",
];
const ELSEWHERE: &[&str] = &[
    "jacket",
    "mantel",
    "envelop",
    "chemis",
    "camis",
    "camic",
    "intercap",
    "plaszcz",
    "generat",
    "boiler",
    "dampferz",
    "calder",
    "caldai",
    "kociol",
    "drain",
    "ablauf",
    "abfluss",
    "water",
    "wasser",
    "agua",
    "acqua",
    "room",
    "raum",
    "umgeb",
    "ambient",
    "atmos",
    "door",
    "pump",
    "heat",
    "heiz",
    "wand",
    "wall",
    "conden",
    "kondens",
    "reserv",
    "tank",
    "suppl",
    "inlet",
    "feed",
    "druckluft",
    "compress",
    "mantle",
    "vessel2",
    "nuoc",
    "steamgen",
    "resist",
];
const LOAD: &[&str] = &[
    "load", "ladung", "belad", "charg", "carga", "carico", "wsad", "ladun", "produ", "flexib",
    "core", "kern",
];

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
    let set_point = words
        .windows(2)
        .any(|w| w[0] == "set" && w[1].starts_with('p'));
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
    let first = words
        .first()
        .map_or("", |w| w.trim_end_matches(|c: char| c.is_ascii_digit()));
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
        assert_eq!(
            (name.channel, name.place),
            (channel, place),
            "{heading}: {name:?}"
        );
    }

    #[test]
    fn headings_in_many_languages() {
        use Channel::{Index, Phase, Pressure, SetPoint, Temperature, Time, Unknown};
        use Place::{Chamber, Elsewhere, Load, Unsaid};
        for heading in [
            "Zeit",
            "Uhrzeit",
            "Date/heure",
            "Hora",
            "Elapsed",
            "MIN:SEC",
            "timestamp",
            "DateTime",
            "Thời gian",
            "Czas",
            "Ora",
            "Tempo",
            "Temps (s)",
            "t",
            "t [s]",
            "Giờ",
            "Fecha y hora",
            "Time stamp",
            "elapsed_s",
            "Datum",
            "sec",
        ] {
            check(heading, Time, Unsaid);
        }
        for heading in [
            "T1",
            "temp",
            "T[°C]",
            "Temp/°C",
            "temp_C",
            "Temperatura (°C)",
            "Nhiệt độ",
            "Temperatur",
            "TEMP (F)",
            "T",
            "t1",
            "Température",
            "Teplota",
        ] {
            check(heading, Temperature, Unsaid);
        }
        for heading in [
            "Kammertemperatur [°C]",
            "Température cuve (°C)",
            "Temp. cámara",
            "Chamber F",
            "chamber_temp_c",
            "Temperatura da câmara",
            "Temperatura camera",
            "Temperatura komory",
            "Nhiệt độ buồng",
        ] {
            check(heading, Temperature, Chamber);
        }
        for heading in [
            "P1",
            "p[bar,abs]",
            "Druck/bar(a)",
            "press_kPa",
            "PRESS BAR",
            "Pression rel. (bar)",
            "Áp suất (kPa)",
            "Ciśnienie",
            "Pressione",
            "Pressão",
        ] {
            check(heading, Pressure, Unsaid);
        }
        for heading in [
            "Kammerdruck [bar Ü]",
            "Chamber psig",
            "Presión cámara",
            "Pressão da câmara (bar)",
            "Áp suất buồng",
        ] {
            check(heading, Pressure, Chamber);
        }
        check("Enveloppe (°C)", Temperature, Elsewhere);
        check("Jacket temperature", Temperature, Elsewhere);
        check("Manteltemperatur", Temperature, Elsewhere);
        check("Load temperature", Temperature, Load);
        check("Consigne (°C)", SetPoint, Unsaid);
        check("Set point", SetPoint, Unsaid);
        check("Solltemperatur", SetPoint, Unsaid);
        check("Phase", Phase, Unsaid);
        check("No", Index, Unsaid);
        check("F0", Unknown, Unsaid);
        assert_eq!(Name::read("probe2_c").rank, 2);
        assert_eq!(Name::read("time [min]").time_unit_s, Some(60.0));
        assert!(Name::read("Elapsed").elapsed && Name::read("MIN:SEC").elapsed);
        assert!(!Name::read("Time hh:mm:ss").elapsed);
    }
}
