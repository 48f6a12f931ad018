//! The words of headings, notes and results, in the languages of the salons' machines.

use super::units::{PressureUnit, Reference, Said, TemperatureUnit};

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

/// Lower case, without accents; the degree sign stays.
pub(super) fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for c in text.chars().flat_map(char::to_lowercase) {
        match c {
            '²' => folded.push('2'),
            'ß' => folded.push_str("ss"),
            'æ' => folded.push_str("ae"),
            '\u{300}'..='\u{36F}' => {}
            _ if c.is_ascii() => folded.push(c),
            _ => folded.push(plain_letter(c)),
        }
    }
    folded
}

/// The letter under an accent. Latin-1, Latin Extended-A and the Vietnamese block.
fn plain_letter(c: char) -> char {
    match c {
        'à'..='å' | 'ā' | 'ă' | 'ą' | 'ạ'..='ặ' => 'a',
        'ç' | 'ć' | 'č' => 'c',
        'đ' | 'ď' => 'd',
        'è'..='ë' | 'ē' | 'ė' | 'ę' | 'ě' | 'ẹ'..='ệ' => 'e',
        'ğ' => 'g',
        'ì'..='ï' | 'ĩ' | 'ī' | 'ı' | 'ỉ' | 'ị' => 'i',
        'ł' => 'l',
        'ñ' | 'ń' | 'ň' => 'n',
        'ò'..='ö' | 'ø' | 'ő' | 'ơ' | 'ọ'..='ợ' => 'o',
        'ř' => 'r',
        'ś' | 'š' | 'ş' | 'ș' => 's',
        'ť' | 'ţ' | 'ț' => 't',
        'ù'..='ü' | 'ũ' | 'ū' | 'ů' | 'ű' | 'ư' | 'ụ'..='ự' => 'u',
        'ý' | 'ÿ' | 'ỳ'..='ỹ' => 'y',
        'ź' | 'ż' | 'ž' => 'z',
        other => other,
    }
}

/// Folded words: parted at everything that is no letter, digit or degree sign, and inside
/// `TempC` where a small letter meets a capital.
pub(super) fn split(text: &str) -> Vec<String> {
    let mut words = Vec::new();
    let mut word = String::new();
    let mut was_small = false;
    for c in text.chars() {
        let inside = c.is_alphanumeric() || matches!(c, '°' | 'º' | '\u{300}'..='\u{36F}');
        // Not inside `kPa`.
        let hump = was_small && c.is_uppercase() && word.len() > 1;
        if (!inside || hump || matches!(c, '°' | 'º')) && !word.is_empty() {
            words.push(fold(&word));
            word.clear();
        }
        if inside {
            word.push(c);
        }
        was_small = c.is_lowercase();
    }
    if !word.is_empty() {
        words.push(fold(&word));
    }
    words
}

/// Does one of the words begin with one of the stems?
pub(super) fn any_stem(words: &[String], stems: &[&str]) -> bool {
    words
        .iter()
        .any(|word| stems.iter().any(|stem| word.starts_with(stem)))
}

fn any_word(words: &[String], wanted: &[&str]) -> bool {
    words.iter().any(|word| wanted.contains(&word.as_str()))
}

const SET: &[&str] = &[
    "setpoint", "soll", "consign", "setting", "target", "zadan", "ziel", "setvalue", "instel",
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
    let joined = words.concat();
    let set = any_stem(words, SET)
        || words
            .windows(2)
            .any(|pair| pair[0] == "set" && pair[1].starts_with("p"))
        || any_word(words, &["set", "sp", "dat"]);
    if set {
        return Channel::SetPoint;
    }
    if any_stem(
        words,
        &[
            "phase", "fase", "faza", "etap", "stage", "state", "status", "estad", "stato",
            "schritt", "giaidoan",
        ],
    ) || joined.contains("giaidoan")
    {
        return Channel::Phase;
    }
    if matches!(text, "#" | "№")
        || any_word(
            words,
            &[
                "no", "nr", "num", "index", "row", "zeile", "idx", "lp", "stt", "id", "record",
            ],
        )
    {
        return Channel::Index;
    }
    if any_word(
        words,
        &[
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
        ],
    ) && words.len() == 1
    {
        return Channel::Naming;
    }
    // In physics a small t is time and a capital one temperature.
    if text == "t"
        || (words.first().is_some_and(|w| w == "t")
            && text.starts_with('t')
            && time_unit(words).is_some())
    {
        return Channel::Time;
    }
    if any_stem(words, TIME) || any_word(words, TIME_WORDS) {
        return Channel::Time;
    }
    // German writes its nouns as one word.
    let inside = |part: &str| words.iter().any(|word| word.contains(part));
    if inside("druck")
        || any_stem(words, PRESSURE)
        || (said.pressure.is_some() && said.temperature.is_none())
    {
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
    if any_stem(words, ELSEWHERE) || any_word(words, &["vo", "air", "luft"]) {
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

/// Words by which a record says that its cycle was stopped or failed.
const FAILED: &[&str] = &[
    "abort",
    "abgebroch",
    "abbruch",
    "fehlgeschl",
    "fehler",
    "fail",
    "fault",
    "error",
    "storung",
    "alarm",
    "annul",
    "interromp",
    "interrump",
    "interrupt",
    "interrott",
    "avort",
    "echec",
    "echou",
    "defaut",
    "fallo",
    "fallid",
    "falla",
    "erro",
    "falha",
    "cancel",
    "fallit",
    "przerw",
    "blad",
    "nieudan",
    "awari",
    "unsuccess",
    "incomplete",
    "invalid",
    "ungultig",
    "stopped",
    "emergency",
    "notaus",
    "unvollst",
    "incomplet",
    "nonconform",
];

/// The line's own words where it says that the cycle was stopped or failed.
pub(super) fn says_failed(line: &str) -> Option<String> {
    let words = split(line);
    let joined = words.join(" ");
    let phrases = [
        "that bai",
        "bi huy",
        "da huy",
        "nicht bestanden",
        "not ok",
        "not passed",
        "non conform",
        "no conform",
        "nao conform",
    ];
    let phrase = phrases.iter().any(|p| joined.contains(p));
    let at = words
        .iter()
        .position(|word| FAILED.iter().any(|stem| word.starts_with(stem)) && word != "errors0")
        .or(phrase.then_some(0))?;
    if phrase {
        return Some(line.trim().to_owned());
    }
    const NONE: &[&str] = &[
        "no", "none", "kein", "keine", "keiner", "sans", "aucun", "aucune", "sin", "ninguno",
        "ninguna", "sem", "nenhum", "nenhuma", "nessun", "nessuno", "nessuna", "brak", "khong",
        "0", "00", "000", "nil", "ok", "off", "false", "nein", "non", "without", "ohne", "nao",
    ];
    let denied = |word: &String| NONE.contains(&word.as_str());
    let before = words[..at].iter().rev().take(2).any(denied);
    // "no" is "in the" in Portuguese, unless nothing follows it.
    let behind = &words[at + 1..];
    let after = behind
        .iter()
        .take(2)
        .enumerate()
        .any(|(i, word)| denied(word) && (word != "no" || i + 1 == behind.len()));
    (!before && !after).then(|| line.trim().to_owned())
}

/// Unit words for the messages.
pub(super) fn pressure_words(unit: PressureUnit, reference: Reference) -> String {
    format!("{} {}", unit.as_str(), reference.as_str())
}

/// The unit's sign with its degree, for the messages.
pub(super) const fn degree(unit: TemperatureUnit) -> &'static str {
    match unit {
        TemperatureUnit::Celsius => "°C",
        TemperatureUnit::Fahrenheit => "°F",
        TemperatureUnit::Kelvin => "K",
    }
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
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

    #[test]
    fn a_record_that_says_it_failed() {
        for line in [
            "CYCLE ABORTED",
            "Status: failed",
            "Ergebnis: Abbruch",
            "Störung 12",
            "Résultat : échec",
            "Ciclo interrumpido",
            "Falha no ciclo",
            "Chu trình thất bại",
            "Cykl przerwany",
            "Ciclo fallito",
            "ALARM 04 DOOR",
            "Result: not passed",
        ] {
            assert_eq!(says_failed(line).as_deref(), Some(line), "{line}");
        }
        for line in [
            "Status : finished",
            "Errors: 0",
            "no faults",
            "Fehler: keine",
            "Alarms none",
            "Default programme",
            "END OF CYCLE",
            "Alarme: aucune",
            "Erros: 0",
            "Result: passed",
        ] {
            assert_eq!(says_failed(line), None, "{line}");
        }
    }
}
