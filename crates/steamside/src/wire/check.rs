//! JSON of `steamside check`: one object a cycle, every key always there.

use cycle::figures::{DryingRan, Figures, Kind, Plateau};
use cycle::finding::{Code, Finding};
use cycle::record::{CycleRecord, Source};
use release::verdict::{Outcome, Verdict};
use serde_json::{Value, json};

/// One judged cycle.
pub fn cycle(file: &str, record: &CycleRecord, figures: &Figures, verdict: &Verdict) -> Value {
    let clean = |value: Option<f64>| value.map(|value| rounded(value, 3));
    json!({
        "file": file,
        "cycle": record.index,
        "kind": kind(figures.kind),
        "verdict": outcome(verdict.outcome),
        "proven_for": verdict.proven_for.iter().map(|contents| contents.word()).collect::<Vec<_>>(),
        "conforming": verdict.conforming,
        "reasons": verdict.reasons.iter().map(reason).collect::<Vec<_>>(),
        "layout": layout(record),
        "known_from": known_from(record, figures),
        "start_clock": record.start_clock,
        "set_C": clean(figures.set_c.map(|(set_c, _)| set_c)),
        "needed_hold_s": clean(figures.needed_hold_s),
        "hold_s": measured(figures, figures.hold_s),
        "f0_min": measured(figures, figures.f0_min),
        "f0_low_min": measured(figures, figures.f0_low_min),
        "plateau": figures.plateau.as_ref().map(plateau),
        "steady": figures.steady.as_ref().map(plateau),
        "vacuum_depths_kpa": figures.vacuum_depths_kpa.iter().map(|&kpa| rounded(kpa, 2)).collect::<Vec<_>>(),
        "leak_kpa_per_min": figures.leak.map(|leak| rounded(leak.kpa_per_min, 4)),
        "drying": drying(figures),
        "phases": phases(figures),
        "record": rows(record, figures),
    })
}

/// A file, or the rest of one, that could not be used.
pub fn unreadable(file: &str, line: Option<u32>, text: &str) -> Value {
    json!({
        "file": file,
        "cycle": null,
        "kind": "unknown",
        "verdict": "cannot tell",
        "proven_for": [],
        "conforming": null,
        "reasons": [{
            "code": Code::Unreadable.as_str(),
            "text": text,
            "at_s": null,
            "lines": line.map(|line| [line, line]),
        }],
        "layout": null,
        "known_from": null,
        "start_clock": null,
        "set_C": null,
        "needed_hold_s": null,
        "hold_s": null,
        "f0_min": null,
        "f0_low_min": null,
        "plateau": null,
        "steady": null,
        "vacuum_depths_kpa": [],
        "leak_kpa_per_min": null,
        "drying": null,
        "phases": [],
        "record": null,
    })
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

fn reason(finding: &Finding) -> Value {
    json!({
        "code": finding.code.as_str(),
        "text": finding.text,
        "at_s": finding.at_s.map(|(from, to)| [rounded(from, 3), rounded(to, 3)]),
        "lines": finding.lines.map(|(from, to)| [from, to]),
    })
}

fn layout(record: &CycleRecord) -> Value {
    let layout = &record.layout;
    json!({
        "time": layout.time,
        "temperature_unit": layout.temperature_unit,
        "pressure_unit": layout.pressure_unit,
        "pressure_reference": layout.pressure_reference,
        "decimal": layout.decimal,
        "encoding": layout.encoding,
    })
}

fn known_from(record: &CycleRecord, figures: &Figures) -> Value {
    let known = &record.known_from;
    json!({
        "temperature_unit": known.temperature_unit.map(source),
        "pressure_unit": known.pressure_unit.map(source),
        "pressure_reference": known.pressure_reference.map(source),
        "set_C": figures.set_c.map(|(_, from)| source(from)),
    })
}

fn plateau(plateau: &Plateau) -> Value {
    json!({
        "start_s": rounded(plateau.start_s, 3),
        "end_s": rounded(plateau.end_s, 3),
        "min_C": rounded(plateau.min_c, 3),
        "max_C": rounded(plateau.max_c, 3),
        "satdev_mean_K": plateau.satdev_mean_k.map(|mean| rounded(mean, 3)),
        "satdev_maxabs_K": plateau.satdev_maxabs_k.map(|most| rounded(most, 3)),
    })
}

fn drying(figures: &Figures) -> Value {
    if figures.kind != Kind::Run {
        return Value::Null;
    }
    let drying = &figures.drying;
    json!({
        "phase_s": drying.phase_s.map(|seconds| rounded(seconds, 3)),
        "vacuum": drying.vacuum,
        "min_kpa": drying.min_kpa.map(|kpa| rounded(kpa, 2)),
        "ran": ran(drying.ran),
    })
}

/// The contract has no word for steam flowing through an open chamber, nor for the release after a
/// pulse of steam: there they are `unknown`.
fn phases(figures: &Figures) -> Vec<Value> {
    figures
        .phases
        .iter()
        .map(|phase| {
            let outside = phase.name == "purge" || phase.name.starts_with("release");
            json!({
                "name": if outside { "unknown" } else { &phase.name },
                "start_s": rounded(phase.start_s, 3),
                "end_s": rounded(phase.end_s, 3),
            })
        })
        .collect()
}

fn rows(record: &CycleRecord, figures: &Figures) -> Value {
    let rows = &record.integrity;
    let jumps: Vec<Value> = rows
        .clock_jumps
        .iter()
        .map(|&(at_s, jump_s)| json!({"at_s": rounded(at_s, 3), "jump_s": rounded(jump_s, 3)}))
        .collect();
    json!({
        "rows": rows.rows,
        "dropped": rows.dropped,
        "duplicated": rows.duplicated,
        "out_of_order": rows.out_of_order,
        "clock_jumps": jumps,
        "largest_gap_s": rounded(rows.largest_gap_s, 3),
        "truncated": rows.truncated || figures.ends_early.is_some(),
    })
}
