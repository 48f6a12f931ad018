//! How strongly the newest runs speak for a lasting shift.

use super::figure::Side;
use super::model::{FIGURES, Model, Row};
use super::solve::{TERMS, Terms, dot, times};
use measure::maths;

/// Longest window, in runs with a value; a change is proven within it or not at all.
pub(super) const LONGEST: usize = 120;
/// Shortest window: one odd run, or two, are no lasting change, however far out they lie.
const SHORTEST: usize = 4;
/// A single run counts for no more than this many spreads.
const REACH: f64 = 4.0;

/// What the companions explain they explain by a straight line through the loads seen while
/// learning. Beyond those, half as much again may be the bend of the true curve.
const EXPLAINED_ROUGHLY: f64 = 0.5;

/// The strongest window that ends at the newest run.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Evidence {
    /// Natural logarithm of the likelihood ratio.
    pub value: f64,
    /// Number of runs in the window, those without a value included.
    pub runs: usize,
}

/// Deviations of a figure over the newest rows, newest first: position back from the newest row,
/// deviation, regressors.
pub(super) type Deviation = (usize, f64, Terms);

/// The deviations of the newest `reach` rows, newest first.
pub(super) fn deviations(
    model: &Model,
    rows: &[Row],
    offsets: &[f64; FIGURES],
    reach: usize,
) -> Vec<Deviation> {
    let newest_first = rows.iter().rev().take(reach).enumerate();
    newest_first
        .filter_map(|(back, row)| {
            let (deviation, terms) = model.deviation(row, offsets)?;
            Some((back, deviation, terms))
        })
        .take(LONGEST)
        .collect()
}

/// A lasting shift up to this size is no change.
pub(super) fn tolerance(side: Side, level: f64) -> f64 {
    (side.share * level.abs()).max(side.least)
}

/// Looks at windows of all lengths that end at the newest row.
///
/// The mean shift of a window, less the tolerance, is set against its own uncertainty and that of
/// what was learned (weights known from few runs, a load heavier than any then). The spread is an
/// estimate as well, hence the logarithm of Student's ratio in place of a plain square.
pub(super) fn strongest(model: &Model, side: Side, tolerance: f64, off: &[Deviation]) -> Evidence {
    let mut best = Evidence::default();
    let mut sum = 0.0;
    let mut terms = [0.0; TERMS];
    // The tolerance comes on top, or a step far beyond it would look as small as the reach.
    let reach = tolerance + REACH * model.sigma;
    for (count, (back, deviation, x)) in (1_usize..).zip(off) {
        sum += (side.sign * deviation).clamp(-reach, reach);
        terms.iter_mut().zip(x).for_each(|(sum, x)| *sum += x);
        if count < SHORTEST || (count > 24 && count % 4 != 0) {
            continue;
        }
        let n = count as f64;
        let mean = terms.map(|sum| sum / n);
        let explained = (side.sign * model.explained(&mean)).max(0.0);
        let excess = sum / n - tolerance - EXPLAINED_ROUGHLY * explained;
        if excess <= 0.0 {
            continue;
        }
        let variance = 1.0 / n + dot(&times(&model.inverse, &mean), &mean);
        let t2 = excess * excess / (model.sigma * model.sigma * variance);
        let value = model.freedom / 2.0 * maths::ln(1.0 + t2 / model.freedom);
        if value > best.value {
            best = Evidence { value, runs: back + 1 };
        }
    }
    best
}

/// How many runs back the change most likely began: the best of all steps and of all straight
/// slopes.
///
/// A slope that began at `u` = 0 explains `(sum u d)^2 / sum u^2` of the squared deviations, a
/// step `(sum d)^2 / n`.
pub(super) fn onset(side: Side, sigma: f64, off: &[Deviation]) -> usize {
    let mut best = (0.0, 1);
    // Sums over the window of 1, d, and of k and k d, where k counts back from the newest run.
    let (mut d_sum, mut k_sum, mut kd_sum, mut kk_sum) = (0.0, 0.0, 0.0, 0.0);
    for (count, (back, deviation, _)) in (1_usize..).zip(off) {
        let k = (count - 1) as f64;
        let d = side.sign * deviation.clamp(-8.0 * sigma, 8.0 * sigma);
        d_sum += d;
        k_sum += k;
        kd_sum += k * d;
        kk_sum += k * k;
        let n = count as f64;
        // u = n - k: the oldest run of the window has 1, the newest n.
        let ud = n * d_sum - kd_sum;
        let uu = n * n * n - 2.0 * n * k_sum + kk_sum;
        for (along, squared) in [(d_sum, n), (ud, uu)] {
            let explained = if along > 0.0 { along * along / squared } else { 0.0 };
            if explained > best.0 {
                best = (explained, back + 1);
            }
        }
    }
    best.1
}

/// Mean deviation of the newest `count` values, outliers pulled in; `None` where there are fewer.
pub(super) fn mean_of(off: &[Deviation], count: usize, sigma: f64) -> Option<f64> {
    let values: Vec<f64> = off.get(..count)?.iter().map(|(_, deviation, _)| *deviation).collect();
    let middle = super::solve::median(&values);
    let near = |value: &f64| value.clamp(middle - 3.0 * sigma, middle + 3.0 * sigma);
    Some(values.iter().map(near).sum::<f64>() / count as f64)
}

/// The evidence that an alarm needs, so that `tests` figures watched together raise no more than
/// `rate` false alarms per 1000 runs.
///
/// Fitted to simulated runs with nothing wrong and no tolerance at all; the tolerances only lower
/// the true rate.
pub(super) fn needed(rate: f64, tests: usize) -> f64 {
    let per_test = rate / 1000.0 / tests.max(1) as f64;
    (NEEDED_AT_ONE - NEEDED_SLOPE * maths::ln(per_test)).max(3.0)
}

const NEEDED_AT_ONE: f64 = -1.3;
const NEEDED_SLOPE: f64 = 1.0;
