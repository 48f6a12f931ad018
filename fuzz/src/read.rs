//! Any bytes: read, measured, judged.

use crate::proof::{Slack, stands};
use cycle::figures::{Ask, Figures, examine};
use cycle::finding::Code;
use cycle::record::{CycleRecord, Known, cycles};
use release::limits::Limits;
use release::verdict::{Asked, Outcome, Verdict, judge};

/// Measured and judged by the published limits, for nothing in particular.
pub fn judged(record: &CycleRecord) -> (Figures, Verdict) {
    let limits = Limits::default();
    let figures = examine(record, &Ask { rules: limits.rules(), ..Ask::default() });
    let verdict = judge(record, &figures, &Asked::new(load::Contents::Unknown, &limits));
    (figures, verdict)
}

/// Reads the bytes as a file and checks what comes back.
pub fn run(bytes: &[u8]) {
    let known = Known::default();
    let Ok(found) = cycles(bytes, &known) else { return };
    let mut rows = 0;
    for cycle in found {
        let record = match cycle {
            Ok(record) => record,
            Err(error) => {
                assert!(!error.what.is_empty() && !error.way_out.is_empty());
                break;
            }
        };
        rows += record.samples.t_s.len();
        // A row is a time and a temperature at the very least.
        assert!(rows <= bytes.len() / 2 + 1, "{rows} rows out of {} bytes", bytes.len());
        whole(&record, bytes.len());
        let (figures, verdict) = judged(&record);
        assert!(!verdict.reasons.is_empty());
        sane(&figures);
        if verdict.outcome == Outcome::Lethal {
            proven(&record, &figures, &verdict);
        }
    }
}

/// Numbers in time order, as many of each.
pub fn whole(record: &CycleRecord, bytes: usize) {
    let samples = &record.samples;
    let rows = samples.t_s.len();
    assert_eq!((samples.temp_c.len(), samples.line.len()), (rows, rows));
    assert!(samples.press_kpa.is_empty() || samples.press_kpa.len() == rows);
    assert!(samples.t_s.windows(2).all(|pair| pair[0] < pair[1]), "times ascend");
    let numbers = samples.t_s.iter().chain(&samples.temp_c).chain(&samples.press_kpa);
    assert!(numbers.copied().all(f64::is_finite));
    assert!(samples.line.iter().all(|&line| line >= 1 && line as usize <= bytes + 1));
    assert_eq!(record.integrity.rows, rows);
    for finding in &record.findings {
        assert!(!finding.text.is_empty());
        let lines = finding.lines.unwrap_or((1, 1));
        assert!(lines.0 >= 1 && lines.0 <= lines.1, "{finding:?}");
        let at_s = finding.at_s.unwrap_or((0.0, 0.0));
        assert!(at_s.0 <= at_s.1, "{finding:?}");
    }
}

pub fn sane(figures: &Figures) {
    assert!(
        figures.phases.iter().all(|phase| phase.end_s >= phase.start_s),
        "{:?}",
        figures.phases
    );
    assert!(figures.hold_s >= 0.0 && figures.hold_s <= figures.total_s + 1e-9);
    assert!(figures.hold_in_band_s <= figures.hold_s);
    assert!(
        !figures.sound
            || figures.f0_low_min >= 0.0
                && figures.f0_low_min <= figures.f0_min * (1.0 + 1e-9) + 1e-9
    );
}

/// The one error without excuse is a run called lethal whose record does not prove it.
pub fn proven(record: &CycleRecord, figures: &Figures, verdict: &Verdict) {
    let (set_c, _) = figures.set_c.expect("a set temperature");
    let samples = &record.samples;
    let columns = [&samples.t_s[..], &samples.temp_c, &samples.press_kpa];
    if let Err(why) = stands(columns, &record.integrity.clock_jumps, set_c, Slack::default()) {
        panic!("falsely lethal: {why} {verdict:?}");
    }
    let never = [
        Code::UnitUnclear,
        Code::GaugeAsAbsolute,
        Code::SetUnclear,
        Code::SensorDerived,
        Code::NoPressure,
    ];
    let against = verdict.reasons.iter().find(|reason| never.contains(&reason.code));
    assert!(against.is_none(), "lethal in spite of {against:?}");
    assert_eq!(verdict.reasons[0].code, Code::HoldMet);
}
