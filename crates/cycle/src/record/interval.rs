//! How far apart the rows lie, where the file says it once and no row has a time.

use super::INTERVAL_S;
use super::notes::{quantity, tokens};
use super::words::{any_stem, any_word, fold, split};

/// Words for an interval, and for taking a sample.
const INTERVAL: &[&str] = &["interv", "interw", "odstep", "takt", "cadenc"];
const SAMPLING: &[&str] =
    &["sampl", "abtast", "echantil", "muestr", "amostr", "campion", "probk", "bemonster", "laymau"];
const EVERY: &[&str] = &["every", "alle", "toutes", "cada", "ogni", "co", "moi", "elke"];

/// What may stand beside these. An interval of anything else, of pulses or of upkeep, is not meant.
const BESIDE: &[&str] = &[
    "log",
    "record",
    "stor",
    "sav",
    "print",
    "data",
    "date",
    "daten",
    "dato",
    "dati",
    "measur",
    "scan",
    "acqui",
    "adqui",
    "read",
    "row",
    "line",
    "time",
    "rate",
    "period",
    "freq",
    "zeit",
    "mess",
    "aufzeichn",
    "speicher",
    "druck",
    "schreib",
    "regist",
    "enregist",
    "mesur",
    "duree",
    "temps",
    "medic",
    "medid",
    "grab",
    "lectur",
    "grav",
    "leitur",
    "lettur",
    "zapis",
    "pomiar",
    "czas",
    "okres",
    "tiempo",
    "tempo",
    "khoang",
    "thoi",
    "gian",
    "chu",
    "ky",
    "lan",
    "zeile",
    "wert",
    "value",
    "tasa",
    "tassa",
    "taxa",
    "taux",
    "frecuen",
];
const SMALL: &[&str] = &[
    "of", "in", "the", "one", "a", "at", "is", "was", "de", "d", "des", "la", "le", "les", "l",
    "du", "di", "del", "do", "da", "between", "entre", "zwischen", "tra", "fra", "giua", "cac",
    "ghi", "s", "sec", "ms", "min", "hz", "seconds", "sekunden", "lay", "mau",
];

/// What is said of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Stated {
    /// Nothing.
    Nowhere,
    /// Seconds between two rows.
    Seconds(f64),
    /// More than one thing.
    Unlike,
}

/// Reads it from the lines before the rows.
pub(super) fn stated<'a>(lines: impl Iterator<Item = &'a str>) -> Stated {
    let mut found = Stated::Nowhere;
    for seconds in lines.flat_map(in_line) {
        found = match found {
            Stated::Nowhere => Stated::Seconds(seconds),
            Stated::Seconds(before) if before == seconds => found,
            _ => Stated::Unlike,
        };
    }
    found
}

/// Every interval on a line.
fn in_line(line: &str) -> Vec<f64> {
    let tokens = tokens(line);
    let mut names: Vec<String> = Vec::new();
    let mut found = Vec::new();
    for (at, token) in tokens.iter().enumerate() {
        let Some((value, _)) = quantity(token) else {
            names.extend(split(token));
            continue;
        };
        let own = token.trim_start_matches(|c: char| !c.is_alphabetic());
        let next = tokens.get(at + 1).map_or("", String::as_str);
        let last = names.last().map_or("", String::as_str);
        let clock = token.split(':').count() == 3;
        let seconds = if clock {
            Some(value)
        } else if token.contains(':') {
            // Minutes and seconds, or hours and minutes.
            None
        } else {
            [own, next, last].iter().find_map(|unit| in_seconds(value, unit))
        };
        if is_meant(&names) {
            found.extend(seconds.filter(|seconds| INTERVAL_S.contains(seconds)));
        }
        names.clear();
    }
    found
}

/// Seconds between two rows, from a number and what stands behind it.
fn in_seconds(value: f64, unit: &str) -> Option<f64> {
    match fold(unit).as_str() {
        "s" | "sec" | "secs" | "second" | "seconds" | "sek" | "sekunde" | "sekunden"
        | "seconde" | "secondes" | "segundo" | "segundos" | "secondo" | "secondi" | "sekund"
        | "sekundy" | "giay" => Some(value),
        "ms" | "msec" | "milliseconds" | "millisekunden" => Some(value / 1_000.0),
        "min" | "minute" | "minutes" | "minuten" | "minuto" | "minuti" | "minutos" => {
            Some(value * 60.0)
        }
        "hz" | "hertz" if value > 0.0 => Some(1.0 / value),
        _ => None,
    }
}

/// Do these words speak of the time between two rows, and of nothing else?
fn is_meant(names: &[String]) -> bool {
    let joined = names.concat();
    let interval = any_stem(names, INTERVAL) || names.iter().any(|w| w.ends_with("intervall"));
    let sampling = any_stem(names, SAMPLING) || joined.contains("laymau");
    let every = any_word(names, EVERY);
    let beside = |word: &String| {
        let stem = word.strip_suffix("intervall").unwrap_or(word);
        let one = [stem.to_owned()];
        stem.is_empty()
            || any_stem(&one, INTERVAL)
            || any_stem(&one, SAMPLING)
            || any_stem(&one, BESIDE)
            || any_word(&one, EVERY)
            || any_word(&one, SMALL)
    };
    (interval || sampling || every) && names.iter().all(beside)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(line: &str, expected: Stated) {
        assert_eq!(stated(line.split('\n')), expected, "{line}");
    }

    #[test]
    fn intervals_in_many_languages() {
        use Stated::Seconds;
        check("Interval: 1 s", Seconds(1.0));
        check("Sample rate 2 Hz", Seconds(0.5));
        check("Sampling interval [s]: 2.5", Seconds(2.5));
        check("interval_s;2", Seconds(2.0));
        check("interval_ms: 500 ms", Seconds(0.5));
        check("Log interval = 00:00:10", Seconds(10.0));
        check("1 sample every 5 seconds", Seconds(5.0));
        check("Abtastintervall 5 s", Seconds(5.0));
        check("Abtastrate: 1 Hz", Seconds(1.0));
        check("Aufzeichnungsintervall: 2,5 s", Seconds(2.5));
        check("Messwerte alle 10 Sekunden", Seconds(10.0));
        check("Intervalle d'enregistrement : 1 s", Seconds(1.0));
        check("Période d'échantillonnage : 2 s", Seconds(2.0));
        check("Intervalo de muestreo: 5 segundos", Seconds(5.0));
        check("Intervalo de amostragem (s): 2", Seconds(2.0));
        check("Intervallo di campionamento 1 s", Seconds(1.0));
        check("Okres próbkowania: 2 s", Seconds(2.0));
        check("Khoảng thời gian lấy mẫu: 2 giây", Seconds(2.0));
        check("Interval: 2 s\nSample rate: 0.5 Hz", Seconds(2.0));
    }

    #[test]
    fn what_is_no_interval_of_the_rows() {
        use Stated::{Nowhere, Unlike};
        for line in [
            "Interval: 2",
            "Interval: 0:02",
            "Pulse interval: 30 s",
            "Service interval: 100 min",
            "Leak test interval 30 s",
            "Wartungsintervall: 60 s",
            "Hold time: 240 s",
            "Sample 12",
            "Interval: 0 s",
            "Interval: 3600 s",
            "Sample rate: 0 Hz",
            "Start 10:00:00",
        ] {
            check(line, Nowhere);
        }
        check("Interval: 2 s\nLog interval: 5 s", Unlike);
    }
}
