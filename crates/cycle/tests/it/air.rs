//! Pressures counted from the air of a place whose altitude nobody gave, in a machine without a
//! pump: a wrong air pressure and a probe that is off look alike in the hold, not in the rise.

use cycle::finding::Code;
use cycle::record::{CycleRecord, Known, read};
use cycle::steam::{air_pressure, psat, tsat};

/// A record whose probe reads so much too hot wherever there is steam: purge, rise, 20 minutes
/// at 135 °C on its display, blow-off.
fn record(metres: f64, too_hot_k: f64, known: &Known) -> CycleRecord {
    let air = air_pressure(metres);
    let top = psat(135.0 - too_hot_k);
    let mut rows: Vec<(f64, f64)> = (0..60).map(|k| (20.0 + 0.5 * f64::from(k), air)).collect();
    let mut steam = |from: f64, to: f64, steps: u32| {
        for k in 0..steps {
            let kpa = from + (to - from) * f64::from(k) / f64::from(steps);
            rows.push((tsat(kpa) + too_hot_k, kpa));
        }
    };
    steam(air + 6.0, air + 9.0, 60);
    steam(air + 9.0, top, 100);
    for _ in 0..60 {
        steam(top - 5.0, top + 5.0, 6);
        steam(top + 5.0, top - 5.0, 4);
    }
    steam(top, air + 3.0, 30);
    let written = |(i, (t, p)): (usize, &(f64, f64))| format!("{};{t:.1};{:.1}\n", 2 * i, p - air);
    let text: String = rows.iter().enumerate().map(written).collect();
    let text = format!("time s;temp C;press kPa gauge\n{text}");
    read(text.as_bytes(), known).unwrap().remove(0)
}

fn open(record: &CycleRecord) -> bool {
    record.findings.iter().any(|finding| finding.code == Code::UnitUnclear)
}

#[test]
fn a_true_probe_gives_the_air_pressure_away() {
    for metres in [0.0, 350.0, 1_200.0, 2_400.0] {
        let found = record(metres, 0.0, &Known::default());
        assert!(!open(&found), "{metres} m: {:?}", found.findings);
        let off = found.ambient_kpa.unwrap() - air_pressure(metres);
        assert!(off.abs() < 1.0, "{metres} m: {off} kPa off");
    }
}

#[test]
fn a_probe_that_is_off_is_not_taken_for_another_place() {
    for metres in [1_200.0, 2_400.0] {
        let off_k = 3.5;
        let found = record(metres, off_k, &Known::default());
        assert!(open(&found), "{metres} m: {:?}", found.ambient_kpa);
        // Given the altitude there is nothing to ask, and the probe is seen to be off.
        let known = Known { altitude_m: Some(metres), ..Known::default() };
        let found = record(metres, off_k, &known);
        assert!(!open(&found));
        let samples = &found.samples;
        let hold = samples.temp_c.iter().zip(&samples.press_kpa).filter(|(t, _)| **t > 133.0);
        assert!(hold.clone().count() > 500);
        assert!(hold.map(|(t, p)| t - tsat(*p)).all(|off| (off - off_k).abs() < 0.2));
    }
}
