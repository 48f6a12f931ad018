//! What is usual for one figure of this machine: a robust straight-line fit over its own runs.

use super::RunFeatures;
use super::figure::{Figure, PARTS_OF_TOTAL};
use super::solve::{Square, TERMS, Terms, dot, inverse_of_products, median, times};

/// Number of figures.
pub(super) const FIGURES: usize = Figure::ALL.len();

/// One run as the judge sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Row {
    pub cycle: u64,
    pub cold: bool,
    pub values: [Option<f64>; FIGURES],
    /// The whole time, for telling a change of [`Figure::Total`] as a share of it.
    pub whole_s: Option<f64>,
}

impl Row {
    /// The run with those figures taken out of its total that `parts` names.
    pub fn new(run: &RunFeatures, parts: &[Figure]) -> Self {
        Self {
            cycle: run.cycle,
            cold: run.first_of_day == Some(true),
            values: std::array::from_fn(|at| Figure::ALL[at].value(run, parts)),
            whole_s: run.total_s.filter(|total| total.is_finite()),
        }
    }

    /// The value of `figure`.
    pub fn value(&self, figure: Figure) -> Option<f64> {
        self.values[figure.at()]
    }
}

/// The parts of the total that these runs nearly always state. A part that is mostly missing
/// stays inside the rest; one that is always there must be there for the rest to be known.
pub(super) fn known_parts(runs: &[RunFeatures]) -> Vec<Figure> {
    let stated = |part: &Figure| {
        let known = runs.iter().filter(|run| part.value(run, &[]).is_some()).count();
        known * 5 >= runs.len() * 4
    };
    PARTS_OF_TOTAL.into_iter().filter(stated).collect()
}

/// Which runs a model speaks for: those of which it has seen enough.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    All,
    WarmOnly,
    ColdOnly,
}

/// A companion and how it is scaled.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Companion {
    figure: Figure,
    centre: f64,
    spread: f64,
}

/// The fit of one figure.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Model {
    figure: Figure,
    kind: Kind,
    companions: Vec<Companion>,
    weights: Terms,
    /// Inverse of the products of the regressors: how uncertain the weights are.
    pub inverse: Square,
    /// Spread of a single run round the fit.
    pub sigma: f64,
    /// Runs less weights.
    pub freedom: f64,
    /// The usual level.
    pub level: f64,
}

/// Fewest runs from which a figure is learned, and fewest cold ones that count as known.
const LEAST_RUNS: usize = 15;
const LEAST_COLD: usize = 5;
/// A companion further out than this says no more than this: in spreads.
const COMPANION_REACH: f64 = 8.0;

impl Model {
    /// Learns `figure` from `rows` with the help of `companions`; `None` where too few rows have
    /// it. `offsets` are levels that were taken over since.
    pub fn learn(
        rows: &[Row],
        figure: Figure,
        companions: &[Figure],
        offsets: &[f64; FIGURES],
    ) -> Option<Self> {
        let stated = || rows.iter().filter(|row| row.value(figure).is_some());
        let cold = stated().filter(|row| row.cold).count();
        let warm = stated().count() - cold;
        let kind = match (warm >= LEAST_COLD, cold >= LEAST_COLD) {
            (true, true) => Kind::All,
            (true, false) => Kind::WarmOnly,
            _ => Kind::ColdOnly,
        };
        let used: Vec<&Row> = stated().filter(|row| kind.speaks_for(row)).collect();
        if used.len() < LEAST_RUNS || used.len() * 2 < rows.len() {
            return None;
        }
        let companions = companions.iter().filter_map(|c| Companion::new(&used, *c)).collect();
        let y: Vec<f64> = used.iter().filter_map(|row| row.value(figure)).collect();
        let mut model = Self {
            figure,
            kind,
            companions,
            weights: [0.0; TERMS],
            inverse: [[0.0; TERMS]; TERMS],
            sigma: 0.0,
            freedom: 0.0,
            level: median(&y),
        };
        let x: Vec<Terms> = used.iter().map(|row| model.terms(row, offsets)).collect();
        model.fit(&x, y);
        Some(model)
    }

    /// Least squares with outliers pulled in, a few rounds.
    fn fit(&mut self, x: &[Terms], mut y: Vec<f64>) {
        self.inverse = inverse_of_products(x);
        let used = 2 + self.companions.len();
        self.freedom = (y.len().saturating_sub(used)).max(5) as f64;
        for _ in 0..4 {
            let mut sums = [0.0; TERMS];
            for (x, y) in x.iter().zip(&y) {
                sums.iter_mut().zip(x).for_each(|(sum, x)| *sum += x * y);
            }
            self.weights = times(&self.inverse, &sums);
            let off = |(x, y): (&Terms, &f64)| y - dot(&self.weights, x);
            let rest: Vec<f64> = x.iter().zip(&y).map(off).collect();
            let sizes: Vec<f64> = rest.iter().map(|rest| rest.abs()).collect();
            let squares: f64 = rest.iter().map(|rest| rest * rest).sum();
            // The median is blind to heavy tails and the squares are not: the larger one counts.
            self.sigma = (1.4826 * median(&sizes))
                .max((squares / self.freedom).sqrt())
                .max(self.figure.least_spread());
            for (y, rest) in y.iter_mut().zip(&rest) {
                *y -= rest - rest.clamp(-3.0 * self.sigma, 3.0 * self.sigma);
            }
        }
    }

    /// Regressors of a run. A companion that is missing says nothing.
    fn terms(&self, row: &Row, offsets: &[f64; FIGURES]) -> Terms {
        let mut terms = [0.0; TERMS];
        terms[0] = 1.0;
        terms[1] = f64::from(u8::from(row.cold && self.kind == Kind::All));
        for (term, companion) in terms.iter_mut().skip(2).zip(&self.companions) {
            *term = companion.scaled(row, offsets);
        }
        terms
    }

    /// The share of a prediction that comes from the companions.
    pub fn explained(&self, terms: &Terms) -> f64 {
        terms.iter().zip(&self.weights).skip(2).map(|(term, weight)| term * weight).sum()
    }

    /// How far the run lies from what is usual, with its regressors; `None` where the figure is
    /// missing, or the run is of a kind (cold, warm) that was not learned.
    pub fn deviation(&self, row: &Row, offsets: &[f64; FIGURES]) -> Option<(f64, Terms)> {
        let value = row.value(self.figure).filter(|_| self.kind.speaks_for(row))?;
        let terms = self.terms(row, offsets);
        Some((value - offsets[self.figure.at()] - dot(&self.weights, &terms), terms))
    }
}

impl Kind {
    fn speaks_for(self, row: &Row) -> bool {
        match self {
            Self::All => true,
            Self::WarmOnly => !row.cold,
            Self::ColdOnly => row.cold,
        }
    }
}

impl Companion {
    fn new(rows: &[&Row], figure: Figure) -> Option<Self> {
        let values: Vec<f64> = rows.iter().filter_map(|row| row.value(figure)).collect();
        if values.len() * 5 < rows.len() * 4 {
            return None;
        }
        let centre = median(&values);
        let sizes: Vec<f64> = values.iter().map(|value| (value - centre).abs()).collect();
        let spread = (1.4826 * median(&sizes)).max(figure.least_spread());
        Some(Self { figure, centre, spread })
    }

    fn scaled(&self, row: &Row, offsets: &[f64; FIGURES]) -> f64 {
        row.value(self.figure).map_or(0.0, |value| {
            let off = (value - offsets[self.figure.at()] - self.centre) / self.spread;
            off.clamp(-COMPANION_REACH, COMPANION_REACH)
        })
    }
}
