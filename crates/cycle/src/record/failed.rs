//! Words by which a record says of itself that its cycle was stopped or failed.

use super::words::{any_stem, split};

/// Stems in English, German, French, Spanish, Portuguese, Italian and Polish.
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
    // A limit at which the machine would raise an alarm is no alarm; nor is a default a fault.
    let limits = ["limit", "grenz", "seuil", "umbral", "soglia", "threshold", "setting", "delay"];
    if any_stem(&words, &limits) || joined.contains("par defaut") {
        return None;
    }
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
        .position(|word| {
            FAILED.iter().any(|stem| word.starts_with(stem)) && !word.ends_with("frei")
        })
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

#[cfg(test)]
mod tests {
    use super::*;

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
            "Alarm limit: 138 C",
            "Zyklus fehlerfrei",
            "Valeur par défaut",
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
