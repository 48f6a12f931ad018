//! Records with one row a reading: a temperature and a pressure made one sample again.
//!
//! A pressure belongs to a temperature that was read at the same time or, where a machine reads the
//! two in turn, to the one before or behind it that is no further away than half a step between
//! two temperatures; the order in the file decides between two that are as near. Nothing is worked
//! out between two readings: a sample has the time and the value of one temperature that was
//! measured, and a pressure that was measured beside it and belongs to no other. A temperature that
//! has no pressure so near is left out and counted, as any row is that lacks a reading.

use super::number::Number;
use super::plan::Reading;
use super::stamp::Stamp;
use std::collections::VecDeque;

/// Readings that wait until two temperatures show the step.
const MOST_WAITING: usize = 64;

/// One reading.
#[derive(Debug, Clone, Copy)]
pub(super) struct Half {
    pub at: Stamp,
    pub is_temperature: bool,
    pub number: Number,
    pub line: u32,
}

/// What became of readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Made {
    Sample(Reading, u32),
    /// A temperature without its pressure.
    Alone(u32),
}

/// Readings on their way to become samples.
#[derive(Debug, Default)]
pub(super) struct Halves {
    /// The first ones, as long as the step is not known.
    first: Vec<Half>,
    waiting: Option<Half>,
    last_temperature: Option<i64>,
    /// The last two steps between temperatures, microseconds: a gap is not taken for one.
    steps: Option<(i64, i64)>,
    made: VecDeque<Made>,
}

impl Halves {
    /// Takes one reading.
    pub fn take(&mut self, half: Half) {
        if self.steps.is_some() {
            return self.pair(half);
        }
        let before = self.first.iter().find(|other| other.is_temperature);
        let step = before
            .filter(|_| half.is_temperature)
            .map(|before| (half.at.micros - before.at.micros).abs())
            .filter(|step| *step > 0);
        self.first.push(half);
        if step.is_some() || self.first.len() >= MOST_WAITING {
            self.steps = Some((step.unwrap_or(0), step.unwrap_or(0)));
            for half in std::mem::take(&mut self.first) {
                self.pair(half);
            }
        }
    }

    /// The next that was made.
    pub fn next(&mut self) -> Option<Made> {
        self.made.pop_front()
    }

    /// Nothing follows: what still waits stays alone.
    pub fn finish(&mut self) {
        for half in std::mem::take(&mut self.first) {
            self.pair(half);
        }
        if let Some(half) = self.waiting.take() {
            self.leave(half);
        }
        self.last_temperature = None;
    }

    fn pair(&mut self, half: Half) {
        if half.is_temperature {
            if let Some(before) = self.last_temperature {
                let (_, last) = self.steps.unwrap_or_default();
                self.steps = Some((last, (half.at.micros - before).abs()));
            }
            self.last_temperature = Some(half.at.micros);
        }
        let Some(waiting) = self.waiting.take() else {
            self.waiting = Some(half);
            return;
        };
        let (before, last) = self.steps.unwrap_or_default();
        let apart = (half.at.micros - waiting.at.micros).abs();
        if waiting.is_temperature == half.is_temperature
            || apart.saturating_mul(2) > before.min(last)
        {
            self.leave(waiting);
            self.waiting = Some(half);
            return;
        }
        let (temperature, pressure) =
            if half.is_temperature { (half, waiting) } else { (waiting, half) };
        let reading = Reading {
            at: temperature.at,
            temperature: temperature.number,
            pressure: Some(pressure.number),
        };
        self.made.push_back(Made::Sample(reading, temperature.line));
    }

    fn leave(&mut self, half: Half) {
        // A pressure that nobody needs is no missing row.
        if half.is_temperature {
            self.made.push_back(Made::Alone(half.line));
        }
    }
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    /// Readings as `T` or `p` with their time in seconds; gives the times of the pairs, and how many
    /// temperatures stayed alone.
    #[track_caller]
    fn check(readings: &str, pairs: &[(i64, i64)], alone: usize) {
        let mut halves = Halves::default();
        for (i, reading) in readings.split(' ').enumerate() {
            let (kind, time) = reading.split_at(1);
            let seconds: f64 = time.parse().unwrap();
            halves.take(Half {
                at: Stamp { micros: (seconds * 1e6) as i64, zone: 0 },
                is_temperature: kind == "T",
                number: Number { value: seconds, decimals: 0 },
                line: i as u32 + 1,
            });
        }
        halves.finish();
        let (mut found, mut left) = (Vec::new(), 0);
        while let Some(made) = halves.next() {
            match made {
                Made::Sample(reading, line) => {
                    assert!(readings.split(' ').nth(line as usize - 1).unwrap().starts_with('T'));
                    let pressure = reading.pressure.unwrap().value as i64;
                    found.push((reading.temperature.value as i64, pressure));
                }
                Made::Alone(_) => left += 1,
            }
        }
        assert_eq!((found.as_slice(), left), (pairs, alone), "{readings}");
    }

    #[test]
    fn readings_find_their_partner() {
        check("T0 p0 T2 p2 T4 p4", &[(0, 0), (2, 2), (4, 4)], 0);
        check("p0 T0 p2 T2 T4 p4", &[(0, 0), (2, 2), (4, 4)], 0);
        // In turn.
        check("T0 p5 T10 p15 T20 p25", &[(0, 5), (10, 15), (20, 25)], 0);
        check("p0 T5 p10 T15 p20 T25", &[(5, 0), (15, 10), (25, 20)], 0);
        // One is missing: none takes what belongs to another.
        check("T0 p5 T10 T20 p25 T30 p35", &[(0, 5), (20, 25), (30, 35)], 1);
        check("T0 p5 p15 T20 p25 T30", &[(0, 5), (20, 15), (30, 25)], 0);
        // Behind a gap the step is still the usual one.
        check("T0 p5 T10 p15 T910 p1200", &[(0, 5), (10, 15)], 1);
        // Further away than half a step.
        check("T0 p9 T10 p19 T20 p29", &[(10, 9), (20, 19)], 1);
        check("T0 T10 T20", &[], 3);
        check("p0 p10", &[], 0);
        check("T0 p0", &[(0, 0)], 0);
    }
}
