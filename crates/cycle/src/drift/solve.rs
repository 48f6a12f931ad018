//! Least squares for the few regressors of a figure.

/// Regressors of one figure: constant, cold, and up to three companions.
pub(super) const TERMS: usize = 5;

/// One row of regressors.
pub(super) type Terms = [f64; TERMS];

/// A square matrix over the regressors.
pub(super) type Square = [Terms; TERMS];

/// A little pull towards zero for everything but the constant, as a share of the number of rows:
/// it keeps two companions that say the same from cancelling each other, and makes an unused
/// regressor (all zeros) harmless.
const PULL: f64 = 1e-3;

/// Sum of products.
pub(super) fn dot(a: &Terms, b: &Terms) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// `m x`.
pub(super) fn times(m: &Square, x: &Terms) -> Terms {
    std::array::from_fn(|i| dot(&m[i], x))
}

/// Inverse of `X'X` (with the pull), for rows `x`; the constant comes first and is 1 throughout.
pub(super) fn inverse_of_products(rows: &[Terms]) -> Square {
    let mut m = [[0.0; TERMS]; TERMS];
    for x in rows {
        for i in 0..TERMS {
            for j in 0..TERMS {
                m[i][j] += x[i] * x[j];
            }
        }
    }
    let pull = PULL * rows.len().max(1) as f64;
    for (i, row) in m.iter_mut().enumerate().skip(1) {
        row[i] += pull;
    }
    invert(m)
}

/// Gauss and Jordan without exchange of rows, which a symmetric positive matrix does not need.
fn invert(mut m: Square) -> Square {
    let mut inverse: Square =
        std::array::from_fn(|i| std::array::from_fn(|j| f64::from(u8::from(i == j))));
    for at in 0..TERMS {
        let pivot = m[at][at];
        for j in 0..TERMS {
            m[at][j] /= pivot;
            inverse[at][j] /= pivot;
        }
        for i in (0..TERMS).filter(|i| *i != at) {
            let factor = m[i][at];
            for j in 0..TERMS {
                m[i][j] -= factor * m[at][j];
                inverse[i][j] -= factor * inverse[at][j];
            }
        }
    }
    inverse
}

/// Median of the values, which must be finite; 0 of none.
pub(super) fn median(values: &[f64]) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_unstable_by(f64::total_cmp);
    let half = sorted.len() / 2;
    match (sorted.get(half), sorted.len() % 2) {
        (None, _) => 0.0,
        (Some(upper), 1) => *upper,
        (Some(upper), _) => (upper + sorted[half - 1]) / 2.0,
    }
}
