//! The runs of one programme: first they teach, then they are judged.

use super::figure::Figure;
use super::model::{Row, known_parts};
use super::part::Part;
use super::state::Judge;
use super::{Alarm, RunFeatures, Settings};

/// Fewest runs that may teach; fewer would leave no spread to trust.
const LEAST_LEARNED: usize = 20;
/// Between the plateaus of 121 °C and of 132 to 134 °C programmes.
const HOT_FROM_C: f64 = 127.0;
/// A plateau this much longer or shorter is another programme, not drift.
const SAME_LENGTH: f64 = 0.15;

/// One programme of the machine.
#[derive(Debug, Clone)]
pub(super) struct Lane {
    plateau_s: Option<f64>,
    hot: Option<bool>,
    settings: Settings,
    learning: Vec<RunFeatures>,
    judge: Option<Judge>,
}

impl Lane {
    /// A lane for runs like this one.
    pub fn new(run: &RunFeatures, settings: Settings) -> Self {
        Self {
            plateau_s: Figure::PlateauLength.value(run, &[]),
            hot: hot(run),
            settings,
            learning: Vec::new(),
            judge: None,
        }
    }

    /// Is this run of the lane's programme? What is not known speaks against nothing.
    pub fn fits(&self, run: &RunFeatures) -> bool {
        let length = match (self.plateau_s, Figure::PlateauLength.value(run, &[])) {
            (Some(own), Some(other)) => (other - own).abs() <= SAME_LENGTH * own,
            _ => true,
        };
        let heat = match (self.hot, hot(run)) {
            (Some(own), Some(other)) => own == other,
            _ => true,
        };
        length && heat
    }

    /// Has this part alarmed here and not come back?
    pub fn is_changed(&self, part: Part) -> bool {
        self.judge.as_ref().is_some_and(|judge| judge.is_changed(part))
    }

    /// Takes the next run of this programme.
    pub fn take(&mut self, run: &RunFeatures) -> Option<Alarm> {
        if let Some(judge) = &mut self.judge {
            return judge.take(run);
        }
        self.learning.push(*run);
        if self.learning.len() >= self.settings.learn_runs.max(LEAST_LEARNED) {
            let runs = std::mem::take(&mut self.learning);
            let parts = known_parts(&runs);
            let rows = runs.iter().map(|run| Row::new(run, &parts)).collect();
            self.judge = Some(Judge::new(rows, parts, self.settings));
        }
        None
    }
}

fn hot(run: &RunFeatures) -> Option<bool> {
    let low = Figure::PlateauLow.value(run, &[]);
    low.or_else(|| Figure::PlateauHigh.value(run, &[])).map(|temp| temp >= HOT_FROM_C)
}
