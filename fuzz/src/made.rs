//! A made cycle, with flaws drawn by chance.

use crate::choices::Choices;
use crate::proof::{psat, tsat};

/// One sample, before it is written and rounded.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// Whole seconds since the first.
    pub t: i64,
    pub celsius: f64,
    /// Absolute.
    pub kpa: f64,
}

/// What was made.
#[derive(Debug)]
pub struct Made {
    pub rows: Vec<Row>,
    pub set_c: f64,
    pub step: i64,
    pub air_kpa: f64,
    /// Height of the place.
    pub metres: f64,
}

/// A stretch of the hold.
#[derive(Debug)]
struct Piece {
    seconds: i64,
    above_k: f64,
}

struct Path {
    rows: Vec<Row>,
    step: i64,
    unrest: u32,
    still: bool,
}

impl Path {
    /// Straight to these, a row every step, with a little unrest.
    fn to(&mut self, seconds: i64, celsius: f64, kpa: f64) {
        let from = self.rows[self.rows.len() - 1];
        let steps = (seconds / self.step).max(1);
        for k in 1..=steps {
            let share = k as f64 / steps as f64;
            self.unrest = self.unrest.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let stir = if self.still { 0.0 } else { f64::from(self.unrest >> 16) / 65_536.0 - 0.5 };
            self.rows.push(Row {
                t: from.t + k * self.step,
                celsius: from.celsius + share * (celsius - from.celsius) + 0.06 * stir,
                kpa: from.kpa + share * (kpa - from.kpa) - 0.3 * stir,
            });
        }
    }
}

/// Air pressure at a height in metres: ICAO standard atmosphere, from memory.
pub fn air_kpa(metres: f64) -> f64 {
    101.325 * (1.0 - 2.255_77e-5 * metres).powf(5.255_88)
}

/// Draws a cycle.
pub fn cycle(choices: &mut Choices<'_>) -> Made {
    let (set_c, floor) = choices.pick(&[(134.0, 180), (134.0, 180), (132.0, 240), (121.0, 900)]);
    let step = choices.pick(&[2, 4, 6, 10]);
    let metres = choices.pick(&[0.0, 350.0, 1_200.0, 2_400.0]);
    let air_kpa = air_kpa(metres);
    let above_k = choices.pick(&[1.0, 0.6, 0.3, 1.8, 0.1, 2.9, 3.6, -0.1, -0.4, -1.5]);
    let pieces = pieces(choices, floor, above_k);
    // Measured less saturation temperature.
    let off_k =
        choices.pick(&[0.0, 0.1, -0.3, 0.7, -1.0, 1.4, -1.9, 1.9, 2.2, -2.3, 3.5, -4.0, 8.0]);
    let start = Row { t: 0, celsius: choices.between(18.0, 70.0), kpa: air_kpa };
    let mut path = Path {
        rows: vec![start],
        step,
        unrest: u32::from(choices.byte()),
        still: choices.rarely(16),
    };
    path.to(20, start.celsius + 0.5, air_kpa);
    before(choices, &mut path, air_kpa);
    let steam = |celsius: f64| psat(celsius - off_k);
    let first = set_c + pieces[0].above_k;
    path.to(90, first - 0.3, steam(first - 0.3));
    for piece in &pieces {
        let celsius = set_c + piece.above_k;
        path.to(step, celsius, steam(celsius));
        path.to(piece.seconds, celsius, steam(celsius));
    }
    after(choices, &mut path, air_kpa);
    Made { rows: path.rows, set_c, step, air_kpa, metres }
}

/// The hold in one piece, or with dips.
fn pieces(choices: &mut Choices<'_>, floor: i64, above_k: f64) -> Vec<Piece> {
    let long = |choices: &mut Choices<'_>| {
        let off = [60, 20, 4, 0, -2, -4, -8, -30, -60, 200, -100];
        (floor + choices.pick(&off)).max(0)
    };
    let mut pieces = vec![Piece { seconds: long(choices), above_k }];
    while pieces.len() < 5 && choices.rarely(3) {
        let dip = choices.pick(&[-0.3, -1.0, -3.0, -9.0, -25.0]);
        let seconds = choices.pick(&[4, 12, 60, 130, 400, 1_900, 3_600]);
        pieces.push(Piece { seconds, above_k: dip });
        let seconds = long(choices) / choices.pick(&[1, 2, 3]);
        pieces.push(Piece { seconds, above_k });
    }
    pieces
}

/// Air removal: pulses, shallow ones, a leaking vacuum, or none. Without a pump the steam drives the
/// air out, as hot as it boils at that place: where it began hotter than that by as many kPa as the
/// hold, no record could tell the place from one lower down.
fn before(choices: &mut Choices<'_>, path: &mut Path, air_kpa: f64) {
    let pulses = usize::from(choices.byte() % 5);
    let depth = choices.pick(&[8.0, 14.0, 25.0, 45.0, 70.0]);
    let leak = choices.pick(&[0.0, 0.0, 1.0, 6.0, 20.0]);
    if pulses == 0 {
        path.to(150, tsat(air_kpa + 5.0), air_kpa + 5.0);
        return;
    }
    for pulse in 0..=pulses {
        path.to(60, 70.0, depth);
        let held = choices.pick(&[6, 20, 80]);
        path.to(held, 69.0, depth + leak * held as f64 / 60.0);
        if pulse < pulses {
            path.to(40, tsat(150.0), 150.0);
        }
    }
}

/// Exhaust, drying and air inlet, or less of them.
fn after(choices: &mut Choices<'_>, path: &mut Path, air_kpa: f64) {
    if choices.rarely(8) {
        return;
    }
    path.to(40, 103.0, air_kpa + 4.0);
    if !choices.rarely(8) {
        path.to(90, 90.0, 8.0);
        path.to(choices.pick(&[200, 60, 600]), 88.0, 5.0);
    }
    path.to(30, 85.0, air_kpa);
    path.to(30, 84.0, air_kpa);
}
