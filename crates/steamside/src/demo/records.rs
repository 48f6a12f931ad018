//! Records as the demo's first machine would write them, from simulated series.
//!
//! The series come from a lumped physical model of an invented machine; nothing measured stands
//! behind them.

use jiff::civil::DateTime;
use jiff::{SignedDuration, ToSpan};

/// A simulated run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Series {
    /// In order.
    GoodA,
    /// In order, a lighter load.
    GoodB,
    /// In order, the first of the day: the machine was cold.
    GoodCold,
    /// Too short at temperature.
    Short,
    /// Air left in: one shallow vacuum instead of three.
    AirLeft,
    /// The file ends in the middle of the time at temperature.
    CutOff,
}

impl Series {
    const fn text(self) -> &'static str {
        match self {
            Self::GoodA => include_str!("../../demo/good_a.csv"),
            Self::GoodB => include_str!("../../demo/good_b.csv"),
            Self::GoodCold => include_str!("../../demo/good_cold.csv"),
            Self::Short => include_str!("../../demo/short.csv"),
            Self::AirLeft => include_str!("../../demo/air.csv"),
            Self::CutOff => include_str!("../../demo/cut.csv"),
        }
    }

    /// The same file with the samples from one second to another left out.
    pub fn file_with_gap(self, start: DateTime, (from, to): (i64, i64)) -> String {
        self.lines(start, |second| second < from || second > to)
    }

    /// The beginning of the file, up to a second.
    pub fn file_until(self, start: DateTime, end: i64) -> String {
        self.lines(start, |second| second <= end)
    }

    /// The file that the machine would write for a run that begins at `start`.
    pub fn file(self, start: DateTime) -> String {
        self.lines(start, |_| true)
    }

    fn lines(self, start: DateTime, keep: impl Fn(i64) -> bool) -> String {
        let mut file = String::from("time,chamber_C,chamber_kPa_abs,set_C\n");
        for line in self.text().lines().skip(1) {
            let Some((seconds, rest)) = line.split_once(',') else {
                continue;
            };
            let seconds: i64 = seconds.parse().unwrap_or_default();
            if !keep(seconds) {
                continue;
            }
            let at = start
                .checked_add(SignedDuration::from_secs(seconds))
                .unwrap_or(start)
                .round(jiff::Unit::Second)
                .unwrap_or_else(|_| start.saturating_add(0.seconds()));
            file += &format!("{},{rest},134.0\n", at.strftime("%Y-%m-%dT%H:%M:%S"));
        }
        file
    }
}
