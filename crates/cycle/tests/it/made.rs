//! A cycle made from straight lines and the saturation line, and files with it.

use cycle::finding::Code;
use cycle::record::{CycleRecord, Known, read};
use cycle::steam::{air_pressure, tsat};

/// Height of the place where the made cycle ran.
pub const ALTITUDE_M: f64 = 350.0;

/// Seconds between two rows.
pub const STEP_S: i64 = 2;

/// Temperature in °C and absolute pressure in kPa, every two seconds: three pulses, 134 °C for
/// 250 s, a drying vacuum.
pub fn cycle() -> Vec<(f64, f64)> {
    let air = air_pressure(ALTITUDE_M);
    let mut rows = Vec::new();
    let mut go = |seconds: i64, from: f64, to: f64, steam: bool, warm: f64| {
        for k in 0..seconds / STEP_S {
            let share = k as f64 / (seconds / STEP_S) as f64;
            let kpa = from + (to - from) * share;
            let celsius = if steam { tsat(kpa * 0.999) } else { warm };
            rows.push((celsius, kpa));
        }
    };
    go(20, air, air, false, 58.0);
    for _ in 0..3 {
        go(40, air, 14.0, false, 62.0);
        go(20, 60.0, 150.0, true, 0.0);
    }
    go(40, 150.0, 14.0, false, 80.0);
    go(60, 60.0, 310.0, true, 0.0);
    for _ in 0..25 {
        go(6, 310.0, 316.0, true, 0.0);
        go(4, 316.0, 310.0, true, 0.0);
    }
    go(40, 310.0, air + 6.0, true, 0.0);
    go(120, air, 5.0, false, 88.0);
    go(30, 5.0, air, false, 75.0);
    go(20, air, air, false, 85.0);
    rows
}

/// A record in the making: one line a sample, with what a test wants between.
pub struct File {
    pub text: String,
    /// Seconds since midnight of the first row.
    pub start_s: i64,
}

impl File {
    /// A file that begins with this heading, or without one.
    pub fn new(heading: &str) -> Self {
        let text = if heading.is_empty() { String::new() } else { format!("{heading}\n") };
        Self { text, start_s: 8 * 3_600 }
    }

    /// One line more.
    pub fn line(mut self, line: &str) -> Self {
        self.text.push_str(line);
        self.text.push('\n');
        self
    }

    /// The next rows come so much later.
    pub fn wait(mut self, seconds: i64) -> Self {
        self.start_s += seconds;
        self
    }

    /// The rows of a made cycle, from one to another, each written by `row`.
    pub fn rows(
        mut self,
        rows: std::ops::Range<usize>,
        row: impl Fn(&str, f64, f64) -> String,
    ) -> Self {
        for (i, (celsius, kpa)) in cycle().into_iter().enumerate() {
            if rows.contains(&i) {
                let now = self.start_s + i as i64 * STEP_S;
                let (h, m, s) = (now / 3_600 % 24, now / 60 % 60, now % 60);
                let clock = format!("{h:02}:{m:02}:{s:02}");
                self.text.push_str(&row(&clock, celsius, kpa));
                self.text.push('\n');
            }
        }
        self
    }

    /// A whole cycle, and the time it takes.
    pub fn whole(self) -> Self {
        let end = cycle().len() as i64 * STEP_S;
        self.rows(0..usize::MAX, csv).wait(end)
    }

    /// Reads what stands in it.
    pub fn read(&self, known: &Known) -> Vec<CycleRecord> {
        read(self.text.as_bytes(), known).unwrap()
    }

    /// The one cycle in it.
    pub fn only(&self) -> CycleRecord {
        let mut found = self.read(&Known::default());
        assert_eq!(found.len(), 1, "cycles");
        found.remove(0)
    }
}

/// The heading of [`csv`].
pub const HEADING: &str = "time,temp C,press kPa abs";

/// A plain row.
pub fn csv(clock: &str, celsius: f64, kpa: f64) -> String {
    format!("{clock},{celsius:.1},{kpa:.1}")
}

/// What was noticed.
pub fn codes(record: &CycleRecord) -> Vec<Code> {
    record.findings.iter().map(|finding| finding.code).collect()
}
