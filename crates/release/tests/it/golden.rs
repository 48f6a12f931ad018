//! Every record with known truth: verdict, figures, borders, faults.

use crate::records::{Case, cases, judged, word};
use cycle::figures::{Figures, Kind};
use cycle::finding::Code;
use release::verdict::{Outcome, Verdict};
use serde_json::Value;

fn is_run(case: &Case) -> bool {
    case.truth["kind"] == "sterilising cycle"
}

fn runs() -> Vec<(Case, Figures, Verdict)> {
    let runs: Vec<_> = cases()
        .into_iter()
        .filter(is_run)
        .map(|case| {
            let (figures, verdict) = judged(&case.record);
            (case, figures, verdict)
        })
        .collect();
    assert_eq!(runs.len(), 35);
    runs
}

fn near(name: &str, what: &str, got: Option<f64>, truth: &Value, within: f64) {
    let Some(wanted) = truth.as_f64() else { return };
    let got = got.unwrap_or_else(|| panic!("{name}: no {what}, {wanted} is true"));
    assert!((got - wanted).abs() <= within, "{name}: {what} {got}, {wanted} is true");
}

/// The verdict of every file is one that a careful reader may give, and none is falsely lethal.
#[test]
fn verdicts() {
    for (case, figures, verdict) in runs() {
        let accepted = case.truth["verdict_accept"].as_array().unwrap();
        let got = word(verdict.outcome);
        assert!(
            accepted.iter().any(|accepted| accepted == got),
            "{}: {got}, but {accepted:?}: {:?}",
            case.name,
            verdict.reasons
        );
        assert_eq!(figures.kind, Kind::Run, "{}", case.name);
        assert_eq!(verdict.proven_for.is_empty(), verdict.outcome != Outcome::Lethal);
        if let (Some(got), Some(truth)) = (verdict.conforming, case.truth["conforming"].as_bool()) {
            assert_eq!(got, truth, "{}: conforming", case.name);
        }
    }
}

/// Figures of the hold as the truth files have them from the written, rounded rows.
#[test]
fn figures_of_the_hold() {
    for (case, figures, _) in runs() {
        let (name, truth) = (case.name.as_str(), &case.truth["recorded"]);
        near(name, "F0", Some(figures.f0_min), &truth["f0_min"], 0.001);
        near(name, "hold", Some(figures.hold_s), &truth["hold_at_or_above_s"], 0.01);
        near(name, "hold in band", Some(figures.hold_in_band_s), &truth["hold_in_band_s"], 0.01);
        let plateau = figures.plateau;
        near(name, "least", plateau.map(|p| p.min_c), &truth["run_T_min"], 0.006);
        near(name, "most", plateau.map(|p| p.max_c), &truth["run_T_max"], 0.006);
        assert!(figures.f0_low_min <= figures.f0_min, "{name}");
        if case.record.samples.press_kpa.is_empty() {
            continue;
        }
        let off = case.pressure_doubt_kpa();
        let by_pressure = figures.hold_by_pressure_s;
        // Where the air pressure is a little off, a sample at either end may count or not.
        let within = if off > 0.0 { 2.0 * figures.step_s } else { 0.01 };
        near(name, "hold by pressure", by_pressure, &truth["hold_by_pressure_s"], within);
        let mean = plateau.and_then(|p| p.satdev_mean_k);
        // 1 kPa is 0.11 K at 134 °C and 0.15 K at 121 °C.
        let doubt = 0.16 * off;
        near(name, "mean deviation", mean, &truth["run_satdev_mean_K"], 0.005 + doubt);
        let most = plateau.and_then(|p| p.satdev_maxabs_k);
        near(name, "greatest deviation", most, &truth["run_satdev_maxabs_K"], 0.01 + 2.0 * doubt);
    }
}

/// Each air-removal pulse once, its depth as far as the samples caught it, and no other.
#[test]
fn depths_of_the_vacuum_pulses() {
    for (case, figures, _) in runs() {
        if case.record.samples.press_kpa.is_empty() {
            continue;
        }
        let truth: Vec<f64> = case.truth["vacuum_depths"]
            .as_array()
            .unwrap()
            .iter()
            .filter(|depth| depth["phase"].as_str().unwrap().starts_with("vacuum"))
            .map(|depth| depth["min_kpa_abs"].as_f64().unwrap())
            .collect();
        assert_eq!(figures.vacuum_depths_kpa.len(), truth.len(), "{}", case.name);
        // At 10 s a sample the deepest moment falls between two.
        let rounding = case.record.press_resolution_kpa / 2.0;
        let within = 0.6 + 0.15 * figures.step_s + rounding + case.pressure_doubt_kpa();
        for (got, wanted) in figures.vacuum_depths_kpa.iter().zip(&truth) {
            assert!((got - wanted).abs() <= within, "{}: {got}, {wanted} is true", case.name);
        }
    }
}

/// Borders of the phases within two samples or 10 s; equilibration and plateau are one.
#[test]
fn borders_of_the_phases() {
    for case in cases() {
        let (figures, _) = judged(&case.record);
        if case.record.samples.press_kpa.is_empty() {
            continue;
        }
        let within = (2.0 * figures.step_s).max(10.0);
        for (name, from, to) in true_phases(&case.truth) {
            let cut = case.truth["record_defects"]["cut_off_at_s"].as_f64().unwrap_or(f64::MAX);
            let to = to.min(cut);
            if name == "purge" || name.starts_with("release") || to - from < within {
                continue;
            }
            let got = figures.phases.iter().find(|phase| phase.name == name);
            let got =
                got.unwrap_or_else(|| panic!("{}: no {name} in {:?}", case.name, figures.phases));
            assert!(
                (got.start_s - from).abs() <= within && (got.end_s - to).abs() <= within,
                "{}: {name} {} to {}, {from} to {to} is true",
                case.name,
                got.start_s,
                got.end_s
            );
        }
    }
}

fn true_phases(truth: &Value) -> Vec<(String, f64, f64)> {
    let mut phases: Vec<(String, f64, f64)> = Vec::new();
    for phase in truth["phases"].as_array().unwrap() {
        let (from, to) = (phase["start_s"].as_f64().unwrap(), phase["end_s"].as_f64().unwrap());
        match phase["name"].as_str().unwrap() {
            "plateau" if phases.last().is_some_and(|last| last.0 == "plateau") => {
                let last = phases.len() - 1;
                phases[last].2 = to;
            }
            "equilibration" => phases.push(("plateau".to_owned(), from, to)),
            name => phases.push((name.to_owned(), from, to)),
        }
    }
    phases
}

/// How long drying ran, and whether under vacuum.
#[test]
fn drying() {
    for (case, figures, _) in runs() {
        let truth = &case.truth["drying"];
        let cut = case.truth["record_defects"].get("cut_off_at_s").is_some();
        if case.record.samples.press_kpa.is_empty() || cut {
            assert_eq!(figures.drying.phase_s, None, "{}", case.name);
            continue;
        }
        let within = (2.0 * figures.step_s).max(10.0);
        near(&case.name, "drying", figures.drying.phase_s, &truth["phase_s"], within);
        if truth["phase_s"].as_f64().unwrap() > 0.0 {
            assert_eq!(figures.drying.vacuum, truth["vacuum"].as_bool(), "{}", case.name);
        }
    }
}

/// Both leak tests: rate within 0.01 kPa/min of the slope of the written rows, and the verdict.
#[test]
fn leak_tests() {
    let tests: Vec<_> = cases().into_iter().filter(|case| !is_run(case)).collect();
    assert_eq!(tests.len(), 2);
    for case in tests {
        let (figures, verdict) = judged(&case.record);
        let truth = &case.truth["leak"];
        assert_eq!(figures.kind, Kind::LeakTest, "{}", case.name);
        let rate = figures.leak.map(|leak| leak.kpa_per_min * 10.0);
        near(&case.name, "rate in mbar/min", rate, &truth["recorded_slope_mbar_min"], 0.1);
        assert_eq!(word(verdict.outcome), truth["verdict"].as_str().unwrap(), "{}", case.name);
    }
}

/// Every fault is named by its code; a record without one gets no fault named.
#[test]
fn faults_by_their_codes() {
    let mut seen = 0;
    for (case, _, verdict) in runs() {
        let has = |code: Code| verdict.reasons.iter().any(|reason| reason.code == code);
        let faults = case.truth["faults"].as_array().unwrap();
        for fault in faults {
            let code = match fault["id"].as_str().unwrap() {
                "plateau_too_short" => Code::HoldShort,
                "dip" => Code::Dip,
                "over_temperature" => Code::OverBand,
                "residual_air" | "non_condensable_gas" => Code::AirLeft,
                "superheat" => Code::Superheat,
                "gasket_leak" => Code::GasketLeak,
                "sensor_offset" => Code::SensorOffset,
                "sensor_freeze" => Code::SensorFrozen,
                "cut_off" => Code::Truncated,
                "aborted" => Code::Aborted,
                "gauge_as_absolute" => Code::GaugeAsAbsolute,
                "weak_heater" => Code::WeakHeater,
                "clogged_filter" => Code::CloggedFilter,
                "clock_jump" => Code::ClockJump,
                "dropped_rows" => Code::RowsMissing,
                "duplicate_rows" => Code::RowsDoubled,
                "out_of_order" => Code::RowsSwapped,
                // Wet steam moves neither temperature nor pressure, and how long drying was set
                // these records do not say.
                "wet_steam" | "drying_short" => continue,
                "drying_omitted" => Code::DryingNone,
                other => panic!("{}: unknown fault {other}", case.name),
            };
            assert!(has(code), "{}: {code:?} not named in {:?}", case.name, verdict.reasons);
            seen += 1;
        }
        if faults.is_empty() {
            let named: Vec<_> = verdict.reasons.iter().map(|reason| reason.code).collect();
            let harmless = [Code::HoldMet, Code::ClockJump, Code::NoPressure];
            assert!(named.iter().all(|code| harmless.contains(code)), "{}: {named:?}", case.name);
        }
    }
    assert!(seen >= 18, "{seen} faults were looked for");
}
