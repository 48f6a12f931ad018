//! JSON of `steamside check`: one object a cycle, every key always there, in the order of their
//! letters.

use cycle::figures::{DryingRan, Figures, Kind};
use cycle::finding::{Code, Finding};
use cycle::record::{self, CycleRecord, Source};
use release::verdict::{Outcome, Verdict};
use serde::Serialize;

/// One judged cycle, or a file that could not be used.
#[derive(Debug, Serialize)]
pub struct Line<'a> {
    conforming: Option<bool>,
    cycle: Option<usize>,
    drying: Option<Drying>,
    f0_low_min: Option<f64>,
    f0_min: Option<f64>,
    file: &'a str,
    hold_s: Option<f64>,
    kind: &'static str,
    known_from: Option<KnownFrom>,
    layout: Option<Layout<'a>>,
    leak_kpa_per_min: Option<f64>,
    needed_hold_s: Option<f64>,
    phases: Vec<Phase<'a>>,
    plateau: Option<Plateau>,
    proven_for: Vec<&'static str>,
    reasons: Vec<Reason<'a>>,
    record: Option<Rows>,
    #[serde(rename = "set_C")]
    set_c: Option<f64>,
    start_clock: Option<&'a str>,
    steady: Option<Plateau>,
    vacuum_depths_kpa: Vec<f64>,
    verdict: &'static str,
}

#[derive(Debug, Serialize)]
struct Drying {
    min_kpa: Option<f64>,
    phase_s: Option<f64>,
    ran: &'static str,
    vacuum: Option<bool>,
}

#[derive(Debug, Serialize)]
struct KnownFrom {
    pressure_reference: Option<&'static str>,
    pressure_unit: Option<&'static str>,
    #[serde(rename = "set_C")]
    set_c: Option<&'static str>,
    temperature_unit: Option<&'static str>,
}

#[derive(Debug, Serialize)]
struct Layout<'a> {
    decimal: char,
    encoding: &'a str,
    pressure_reference: &'a str,
    pressure_unit: Option<&'a str>,
    temperature_unit: &'a str,
    time: &'a str,
}

#[derive(Debug, Serialize)]
struct Phase<'a> {
    end_s: f64,
    name: &'a str,
    start_s: f64,
}

#[derive(Debug, Serialize)]
struct Plateau {
    end_s: f64,
    #[serde(rename = "max_C")]
    max_c: f64,
    #[serde(rename = "min_C")]
    min_c: f64,
    #[serde(rename = "satdev_maxabs_K")]
    satdev_maxabs_k: Option<f64>,
    #[serde(rename = "satdev_mean_K")]
    satdev_mean_k: Option<f64>,
    start_s: f64,
}

#[derive(Debug, Serialize)]
struct Reason<'a> {
    at_s: Option<[f64; 2]>,
    code: &'static str,
    lines: Option<[u32; 2]>,
    text: &'a str,
}

#[derive(Debug, Serialize)]
struct Rows {
    clock_jumps: Vec<Jump>,
    dropped: usize,
    duplicated: usize,
    largest_gap_s: f64,
    out_of_order: usize,
    rows: usize,
    truncated: bool,
}

#[derive(Debug, Serialize)]
struct Jump {
    at_s: f64,
    jump_s: f64,
}

/// One judged cycle.
pub fn cycle<'a>(
    file: &'a str,
    record: &'a CycleRecord,
    figures: &'a Figures,
    verdict: &'a Verdict,
) -> Line<'a> {
    let clean = |value: Option<f64>| value.map(|value| rounded(value, 3));
    Line {
        conforming: verdict.conforming,
        cycle: Some(record.index),
        drying: drying(figures),
        f0_low_min: measured(figures, figures.f0_low_min),
        f0_min: measured(figures, figures.f0_min),
        file,
        hold_s: measured(figures, figures.hold_s),
        kind: kind(figures.kind),
        known_from: Some(known_from(record, figures)),
        layout: Some(layout(&record.layout)),
        leak_kpa_per_min: figures.leak.map(|leak| rounded(leak.kpa_per_min, 4)),
        needed_hold_s: clean(figures.needed_hold_s),
        phases: phases(figures),
        plateau: figures.plateau.as_ref().map(plateau),
        proven_for: verdict.proven_for.iter().map(|contents| contents.word()).collect(),
        reasons: verdict.reasons.iter().map(reason).collect(),
        record: Some(rows(record, figures)),
        set_c: clean(figures.set_c.map(|(set_c, _)| set_c)),
        start_clock: record.start_clock.as_deref(),
        steady: figures.steady.as_ref().map(plateau),
        vacuum_depths_kpa: figures.vacuum_depths_kpa.iter().map(|&kpa| rounded(kpa, 2)).collect(),
        verdict: outcome(verdict.outcome),
    }
}

/// A file, or the rest of one, that could not be used.
pub fn unreadable<'a>(file: &'a str, line: Option<u32>, text: &'a str) -> Line<'a> {
    Line {
        conforming: None,
        cycle: None,
        drying: None,
        f0_low_min: None,
        f0_min: None,
        file,
        hold_s: None,
        kind: kind(Kind::Unknown),
        known_from: None,
        layout: None,
        leak_kpa_per_min: None,
        needed_hold_s: None,
        phases: Vec::new(),
        plateau: None,
        proven_for: Vec::new(),
        reasons: vec![Reason {
            at_s: None,
            code: Code::Unreadable.as_str(),
            lines: line.map(|line| [line, line]),
            text,
        }],
        record: None,
        set_c: None,
        start_clock: None,
        steady: None,
        vacuum_depths_kpa: Vec::new(),
        verdict: outcome(Outcome::CannotTell),
    }
}

/// Numbers are for reading, not for counting on: figures beyond the last written digit say
/// nothing. What is no number comes out as `null`.
fn rounded(value: f64, places: i32) -> f64 {
    let scale = 10_f64.powi(places);
    (value * scale).round() / scale
}

/// A sum over nothing is not zero, it is not known.
fn measured(figures: &Figures, value: f64) -> Option<f64> {
    figures.sound.then(|| rounded(value, 3))
}

pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Run => "run",
        Kind::LeakTest => "leak test",
        Kind::Unknown => "unknown",
    }
}

pub fn outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Lethal => "lethal",
        Outcome::NotLethal => "not lethal",
        Outcome::CannotTell => "cannot tell",
        Outcome::LeakPass => "pass",
        Outcome::LeakFail => "fail",
    }
}

pub fn source(source: Source) -> &'static str {
    match source {
        Source::Header => "header",
        Source::Physics => "physics",
        Source::Setting => "setting",
        Source::Plateau => "plateau",
    }
}

pub fn ran(ran: DryingRan) -> &'static str {
    match ran {
        DryingRan::AsSet => "as set",
        DryingRan::Short => "short",
        DryingRan::None => "none",
        DryingRan::CannotTell => "cannot tell",
    }
}

fn reason(finding: &Finding) -> Reason<'_> {
    Reason {
        at_s: finding.at_s.map(|(from, to)| [rounded(from, 3), rounded(to, 3)]),
        code: finding.code.as_str(),
        lines: finding.lines.map(|(from, to)| [from, to]),
        text: &finding.text,
    }
}

fn layout(layout: &record::Layout) -> Layout<'_> {
    Layout {
        decimal: layout.decimal,
        encoding: &layout.encoding,
        pressure_reference: &layout.pressure_reference,
        pressure_unit: layout.pressure_unit.as_deref(),
        temperature_unit: &layout.temperature_unit,
        time: &layout.time,
    }
}

fn known_from(record: &CycleRecord, figures: &Figures) -> KnownFrom {
    let known = &record.known_from;
    KnownFrom {
        pressure_reference: known.pressure_reference.map(source),
        pressure_unit: known.pressure_unit.map(source),
        set_c: figures.set_c.map(|(_, from)| source(from)),
        temperature_unit: known.temperature_unit.map(source),
    }
}

fn plateau(plateau: &cycle::figures::Plateau) -> Plateau {
    Plateau {
        end_s: rounded(plateau.end_s, 3),
        max_c: rounded(plateau.max_c, 3),
        min_c: rounded(plateau.min_c, 3),
        satdev_maxabs_k: plateau.satdev_maxabs_k.map(|most| rounded(most, 3)),
        satdev_mean_k: plateau.satdev_mean_k.map(|mean| rounded(mean, 3)),
        start_s: rounded(plateau.start_s, 3),
    }
}

fn drying(figures: &Figures) -> Option<Drying> {
    let drying = &figures.drying;
    (figures.kind == Kind::Run).then(|| Drying {
        min_kpa: drying.min_kpa.map(|kpa| rounded(kpa, 2)),
        phase_s: drying.phase_s.map(|seconds| rounded(seconds, 3)),
        ran: ran(drying.ran),
        vacuum: drying.vacuum,
    })
}

/// The contract has no word for steam flowing through an open chamber, nor for the release after a
/// pulse of steam: there they are `unknown`.
fn phases(figures: &Figures) -> Vec<Phase<'_>> {
    let phases = figures.phases.iter();
    phases
        .map(|phase| {
            let outside = phase.name == "purge" || phase.name.starts_with("release");
            Phase {
                end_s: rounded(phase.end_s, 3),
                name: if outside { "unknown" } else { &phase.name },
                start_s: rounded(phase.start_s, 3),
            }
        })
        .collect()
}

fn rows(record: &CycleRecord, figures: &Figures) -> Rows {
    let rows = &record.integrity;
    let jumps = rows.clock_jumps.iter();
    Rows {
        clock_jumps: jumps
            .map(|&(at_s, jump_s)| Jump { at_s: rounded(at_s, 3), jump_s: rounded(jump_s, 3) })
            .collect(),
        dropped: rows.dropped,
        duplicated: rows.duplicated,
        largest_gap_s: rounded(rows.largest_gap_s, 3),
        out_of_order: rows.out_of_order,
        rows: rows.rows,
        truncated: rows.truncated || figures.ends_early.is_some(),
    }
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;
    use cycle::figures::{Ask, examine};
    use cycle::record::{Known, read};
    use load::Contents;
    use release::limits::Limits;
    use release::verdict::{Asked, judge};
    use serde_json::Value;

    /// The keys of every object, as written and as the library sorts them.
    fn check_order(text: &str) {
        let value: Value = serde_json::from_str(text).unwrap();
        assert_eq!(value.to_string(), text);
    }

    fn of_a_run() -> String {
        let bytes = include_bytes!("../../demo/good_a.csv");
        let record = read(&bytes[..], &Known::default()).unwrap().remove(0);
        let figures = examine(&record, &Ask::default());
        let limits = Limits::default();
        let verdict = judge(&record, &figures, &Asked::new(Contents::Unknown, &limits));
        serde_json::to_string(&cycle("a \"b\".csv", &record, &figures, &verdict)).unwrap()
    }

    #[test]
    fn keys_stand_in_the_order_of_their_letters() {
        let text = of_a_run();
        check_order(&text);
        assert!(text.contains(r#""file":"a \"b\".csv""#), "{text}");
        assert!(text.contains("satdev_mean_K"), "{text}");
    }

    #[test]
    fn a_file_that_could_not_be_used_has_the_same_keys() {
        let text = serde_json::to_string(&unreadable("x", Some(3), "empty")).unwrap();
        check_order(&text);
        let keys = |text: &str| -> Vec<String> {
            let value: Value = serde_json::from_str(text).unwrap();
            value.as_object().unwrap().keys().cloned().collect()
        };
        assert_eq!(keys(&text), keys(&of_a_run()));
        assert!(text.contains(r#""lines":[3,3]"#), "{text}");
    }
}
