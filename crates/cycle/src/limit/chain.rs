//! The chance of a wet load as a function of the demand: any function that never falls.
//!
//! Demands stand on a grid of logarithms, chances on levels of equal steps in log-odds. From one
//! point of the grid to the next the level stays or climbs by a geometrically distributed number of
//! steps; below its foot the curve lies at the lowest level, a mishap in a hundred. That makes a
//! chain of levels, and all that is wanted of it (where it passes one in ten, its mean at each
//! demand) is summed exactly by one pass forward and one back.
//!
//! Why this and not a logistic curve with two unknowns: each step from a level to the next is
//! totally positive of order two (from a higher level one climbs to a higher level, in the order of
//! likelihood ratios). Then a dry look, whose likelihood falls with the level, moves every level
//! down, and a wet one up (Karlin and Rinott 1980, from memory). With an unknown slope a
//! logistic curve does not do that: a dry load far above the limit can speak for a flatter slope
//! and by that lower the limit, which nobody at the machine would understand.

use super::LIMIT_CHANCE;
use measure::maths;

/// Step between demands, as a logarithm.
const STEP: f64 = 0.025;
/// Levels, and which of them is the limit's chance.
const LEVELS: usize = 24;
const LIMIT_LEVEL: usize = 6;
/// Step between levels in log-odds: the lowest is a chance of about 0.01, the highest of 0.99.
const CLIMB: f64 = 0.4;
/// Mean width of the rise: the demand grows by e^width while the log-odds grow by one. Loads of the
/// same demand differ by about a fifth in how they are packed and lie (assumption).
const WIDTH: f64 = 0.22;
/// The same for a machine that is nearly a threshold. It can lift the upper end only.
const SHARP: f64 = 0.012;
/// The same where chance plays a larger part. It can lower the lower end only.
const BROAD: f64 = 0.50;
/// Left out at an end of the interval that should hold nine of ten, by each shape. More than a
/// twentieth, because the curves are freer than true ones: found with made-up salons, see
/// `examples/limit_table.rs`.
const TAIL: f64 = 0.09;
/// The same for [`BROAD`] at the lower end.
const BELOW: f64 = 0.20;
/// The same for [`SHARP`] at the upper end.
const ABOVE: f64 = 0.055;

/// No level is ever quite impossible: thousands of looks that contradict each other would else leave
/// nothing at all, and no number.
const LEAST_FIT: f64 = 1e-100;
const LEAST_SHARE: f64 = 1e-150;

type Row = [f64; LEVELS];

/// Log-odds of a level.
fn log_odds(level: usize) -> f64 {
    let steps = level as f64 - LIMIT_LEVEL as f64;
    maths::ln(LIMIT_CHANCE / (1.0 - LIMIT_CHANCE)) + CLIMB * steps
}

fn logistic(x: f64) -> f64 {
    1.0 / (1.0 + maths::exp(-x))
}

/// The prior on the grid and the looks so far.
#[derive(Debug, Clone)]
pub(super) struct Chain {
    first: f64,
    smooth: Shape,
    sharp: Shape,
    broad: Shape,
    /// Dry and wet looks at each point.
    looks: Vec<[u32; 2]>,
}

/// One width of the rise.
#[derive(Debug, Clone)]
struct Shape {
    /// Chance of one more step up.
    up: f64,
    /// Chance that the curve leaves its foot at this point, given that it has not before.
    leaves: Vec<f64>,
}

/// What the looks leave, as logarithms of demands.
#[derive(Debug, Clone)]
pub(super) struct Posterior {
    /// The limit: nine of ten lie between `low` and `high`.
    pub low: f64,
    /// The limit: as likely above as below.
    pub middle: f64,
    /// See `low`.
    pub high: f64,
    /// Logarithm of demand; mean chance of a wet load.
    pub chance: Vec<(f64, f64)>,
}

impl Chain {
    /// Before any look, round the logarithm of the power at which half are wet.
    pub fn new(middle: f64, spread: f64) -> Self {
        // A logistic spread: its tails are longer than the normal's, so that a machine that is
        // nothing like the sums is believed after fewer looks.
        let scale = spread * 3.0_f64.sqrt() / std::f64::consts::PI;
        let reach = 3.5 * spread + 1.0;
        let first = middle - reach - 1.0;
        // The range is 0.3 to 2 in spread: a few hundred points.
        let points = ((2.0 * reach + 1.0) / STEP) as usize;
        let shape = |width: f64| {
            // From the foot to one half the log-odds climb by those of the lowest level.
            let foot = middle + width * log_odds(0);
            let below = |at: f64| logistic((first + STEP * at - foot) / scale);
            let leaves = (0..points).map(|at| {
                let at = at as f64;
                let (before, now) = (below(at - 0.5), below(at + 0.5));
                (now - before) / (1.0 - before)
            });
            let climb = STEP / (width * CLIMB);
            Shape { up: climb / (1.0 + climb), leaves: leaves.collect() }
        };
        Self {
            first,
            smooth: shape(WIDTH),
            sharp: shape(SHARP),
            broad: shape(BROAD),
            looks: vec![[0; 2]; points],
        }
    }

    /// One more look. Beyond the grid it counts at its end.
    pub fn add(&mut self, demand: f64, wet: bool) {
        let last = self.looks.len() - 1;
        let at = ((demand - self.first) / STEP).round().clamp(0.0, last as f64) as usize;
        self.looks[at][usize::from(wet)] += 1;
    }

    /// Likelihood of the looks at one point for each level, the largest 1.
    fn likelihood(&self, at: usize) -> Row {
        let [dry, wet] = self.looks[at].map(f64::from);
        let log = std::array::from_fn::<f64, LEVELS, _>(|level| {
            let z = log_odds(level);
            wet * maths::ln(logistic(z)) + dry * maths::ln(logistic(-z))
        });
        let most = log.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        log.map(|value| maths::exp(value - most).max(LEAST_FIT))
    }

    /// One curve of the smooth shape as it is defined: logarithm of demand and chance there.
    #[cfg(test)]
    pub fn draw(&self, even: &mut impl FnMut() -> f64) -> Vec<(f64, f64)> {
        let mut level = 0;
        let mut curve = Vec::new();
        for (at, leaves) in self.smooth.leaves.iter().enumerate() {
            if level > 0 || even() < *leaves {
                level = level.max(1);
                while level + 1 < LEVELS && even() < self.smooth.up {
                    level += 1;
                }
            }
            curve.push((self.first + STEP * at as f64, logistic(log_odds(level))));
        }
        curve
    }

    /// What the looks leave.
    pub fn posterior(&self) -> Posterior {
        let seen = |at: usize| self.looks[at] != [0; 2];
        let likelihoods: Vec<Option<Row>> =
            (0..self.looks.len()).map(|at| seen(at).then(|| self.likelihood(at))).collect();
        let demand = |at: usize| self.first + STEP * at as f64;
        let read = |levels: &[Row], of: &dyn Fn(&Row) -> f64| -> Vec<(f64, f64)> {
            levels.iter().enumerate().map(|(at, row)| (demand(at), of(row))).collect()
        };
        let chances: Row = std::array::from_fn(|level| logistic(log_odds(level)));
        let mean = |row: &Row| row.iter().zip(&chances).map(|(share, p)| share * p).sum::<f64>();
        let passed = |row: &Row| row[LIMIT_LEVEL..].iter().sum::<f64>();
        let limit = |levels: &[Row]| read(levels, &passed);
        let smooth = self.smooth.levels(&likelihoods);
        let middle = limit(&smooth);
        let sharp = limit(&self.sharp.levels(&likelihoods));
        let broad = limit(&self.broad.levels(&likelihoods));
        Posterior {
            low: quantile(&middle, TAIL).min(quantile(&broad, BELOW)),
            middle: quantile(&middle, 0.5),
            high: quantile(&middle, 1.0 - TAIL).max(quantile(&sharp, 1.0 - ABOVE)),
            chance: read(&smooth, &mean),
        }
    }
}

/// Logarithm of the demand below which the limit lies with this probability.
fn quantile(passed: &[(f64, f64)], share: f64) -> f64 {
    let turned: Vec<(f64, f64)> = passed.iter().map(|&(x, p)| (p, x)).collect();
    between(&turned, share)
}

impl Shape {
    /// One pass forward and one back: how likely each level is at each point.
    fn levels(&self, likelihoods: &[Option<Row>]) -> Vec<Row> {
        let weigh = |row: &mut Row, at: usize| {
            if let Some(likelihood) = &likelihoods[at] {
                row.iter_mut().zip(likelihood).for_each(|(value, factor)| *value *= factor);
            }
            normalise(row);
        };
        let mut row = [0.0; LEVELS];
        row[0] = 1.0;
        let mut forward = Vec::with_capacity(likelihoods.len());
        for (at, leaves) in self.leaves.iter().enumerate() {
            row = self.climb(&row, *leaves);
            weigh(&mut row, at);
            forward.push(row);
        }
        let mut back = [1.0; LEVELS];
        for (at, row) in forward.iter_mut().enumerate().rev() {
            row.iter_mut().zip(&back).for_each(|(value, factor)| *value *= factor);
            normalise(row);
            weigh(&mut back, at);
            back = self.look_back(&back, self.leaves[at]);
        }
        forward
    }

    /// From one point of the grid to the next.
    fn climb(&self, row: &Row, leaves: f64) -> Row {
        let mut next = [0.0; LEVELS];
        next[0] = row[0] * (1.0 - leaves);
        let mut carried = row[0] * leaves;
        for level in 1..LEVELS {
            carried += row[level];
            let stays = if level + 1 == LEVELS { 1.0 } else { 1.0 - self.up };
            next[level] = carried * stays;
            carried *= self.up;
        }
        next
    }

    /// The same the other way: what a level is worth by what can follow.
    fn look_back(&self, row: &Row, leaves: f64) -> Row {
        let mut before = [0.0; LEVELS];
        let mut ahead = row[LEVELS - 1];
        before[LEVELS - 1] = ahead;
        for level in (1..LEVELS - 1).rev() {
            ahead = (1.0 - self.up) * row[level] + self.up * ahead;
            before[level] = ahead;
        }
        before[0] = (1.0 - leaves) * row[0] + leaves * ahead;
        before
    }
}

fn normalise(row: &mut Row) {
    let sum: f64 = row.iter().sum();
    row.iter_mut().for_each(|value| *value = (*value / sum).max(LEAST_SHARE));
}

/// Straight lines between points that rise in both; their ends beyond them.
pub(super) fn between(points: &[(f64, f64)], x: f64) -> f64 {
    let after = points.partition_point(|point| point.0 < x);
    match (after.checked_sub(1).and_then(|at| points.get(at)), points.get(after)) {
        (Some(&(x0, y0)), Some(&(x1, y1))) => y0 + (y1 - y0) * (x - x0) / (x1 - x0),
        (None, Some(&(_, y))) | (Some(&(_, y)), None) => y,
        (None, None) => f64::NAN,
    }
}
