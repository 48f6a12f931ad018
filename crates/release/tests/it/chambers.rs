//! A plain made-up cycle whose parts can be changed one by one: for tests of single questions.

use cycle::record::{CycleRecord, Integrity, KnownFrom, Layout, Samples, Source, Stated};
use cycle::steam;

/// A cycle to build. Temperatures in °C, times in seconds, one sample every `step_s`.
#[derive(Debug, Clone)]
pub struct Chamber {
    pub set_c: f64,
    pub stated: bool,
    pub hold_s: f64,
    /// Measured temperature above the set one while it is held.
    pub above_k: f64,
    /// Measured less saturation temperature.
    pub off_k: f64,
    /// Depths of the vacuum pulses, kPa; none: gravity.
    pub pulses: Vec<f64>,
    pub step_s: f64,
}

impl Default for Chamber {
    fn default() -> Self {
        Self {
            set_c: 134.0,
            stated: true,
            hold_s: 240.0,
            above_k: 1.0,
            off_k: 0.0,
            pulses: vec![15.0; 3],
            step_s: 1.0,
        }
    }
}

const AIR_KPA: f64 = 101.3;

/// Temperature and pressure, corner by corner.
struct Path {
    step_s: f64,
    temp: Vec<f64>,
    press: Vec<f64>,
}

impl Path {
    /// Straight to a corner within so many seconds. A little unrest of the last digit keeps the
    /// probe alive.
    fn to(&mut self, seconds: f64, temp_c: f64, press_kpa: f64) {
        let steps = (seconds / self.step_s).round().max(1.0);
        let (from_c, from_kpa) = (*self.temp.last().unwrap(), *self.press.last().unwrap());
        for n in 1..=steps as usize {
            let part = n as f64 / steps;
            let unrest = 0.05 * ((self.temp.len() * 7 % 5) as f64 / 4.0);
            self.temp.push(from_c + part * (temp_c - from_c) + unrest);
            let stir = 0.1 * ((self.press.len() * 5 % 7) as f64 / 3.0 - 1.0);
            self.press.push(from_kpa + part * (press_kpa - from_kpa) + stir);
        }
    }
}

impl Chamber {
    pub fn record(&self) -> CycleRecord {
        let held_c = self.set_c + self.above_k;
        let held_kpa = steam::psat(held_c - self.off_k);
        let mut path = Path { step_s: self.step_s, temp: vec![55.0], press: vec![AIR_KPA] };
        path.to(20.0, 56.0, AIR_KPA);
        for &depth in &self.pulses {
            path.to(60.0, 75.0, depth);
            path.to(20.0, 74.0, depth);
            path.to(40.0, 108.0, 150.0);
        }
        if self.pulses.is_empty() {
            path.to(200.0, 100.0, AIR_KPA + 5.0);
        } else {
            path.to(60.0, 75.0, 15.0);
            path.to(20.0, 74.0, 15.0);
        }
        path.to(90.0, self.set_c - 0.2, steam::psat(self.set_c - 0.2 - self.off_k));
        path.to(self.step_s, held_c, held_kpa);
        path.to(self.hold_s, held_c, held_kpa);
        path.to(self.step_s, self.set_c - 6.0, 0.8 * held_kpa);
        path.to(40.0, 103.0, AIR_KPA + 4.0);
        path.to(100.0, 90.0, 8.0);
        path.to(200.0, 88.0, 5.0);
        path.to(30.0, 85.0, AIR_KPA);
        path.to(30.0, 84.0, AIR_KPA);
        self.finish(path)
    }

    fn finish(&self, path: Path) -> CycleRecord {
        let rows = path.temp.len();
        CycleRecord {
            index: 0,
            samples: Samples {
                t_s: (0..rows).map(|n| n as f64 * self.step_s).collect(),
                temp_c: path.temp,
                press_kpa: path.press,
                line: (1..=rows as u32).collect(),
            },
            layout: Layout {
                time: "elapsed".to_owned(),
                temperature_unit: "C".to_owned(),
                pressure_unit: Some("kPa".to_owned()),
                pressure_reference: "absolute".to_owned(),
                decimal: '.',
                encoding: "utf-8".to_owned(),
            },
            known_from: KnownFrom {
                temperature_unit: Some(Source::Header),
                pressure_unit: Some(Source::Header),
                pressure_reference: Some(Source::Header),
                times_unclear: false,
            },
            stated: Stated { set_c: self.stated.then_some(self.set_c), ..Stated::default() },
            start_clock: None,
            ambient_kpa: Some(AIR_KPA),
            temp_resolution_k: 0.01,
            press_resolution_kpa: 0.1,
            integrity: Integrity { rows, median_step_s: self.step_s, ..Integrity::default() },
            findings: Vec::new(),
        }
    }
}
