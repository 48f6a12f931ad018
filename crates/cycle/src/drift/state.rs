//! The judge of one programme: weighs each run, raises an alarm, and follows a changed part until
//! it is put right.

use super::evidence::{
    Deviation, Evidence, LONGEST, deviations, mean_of, needed, onset, strongest, tolerance,
};
use super::figure::{Figure, Side};
use super::model::{FIGURES, Model, Row};
use super::part::{Clue, Part};
use super::solve::median;
use super::{Alarm, RunFeatures, Settings};

/// Most runs that teach; later ones add nothing that a slow slope could hide in.
const MOST_LEARNED: usize = 150;
/// A run teaches only when it is this old, every part has been well since, and nothing is
/// suspected at present.
const TEACHES_AFTER: usize = 30;
/// Evidence from which something is suspected.
const SUSPECTED: f64 = 3.0;
/// Evidence that the figure must have by itself, without its companions.
const BY_ITSELF: f64 = 3.0;
/// Models are fitted anew after this many new teachers.
const REFIT_EVERY: usize = 10;
/// Runs at the old level that show that a part was put right.
const BACK_AFTER: usize = 20;
/// ... and are nearer to it than this share of the greatest shift.
const BACK_WITHIN: f64 = 0.25;
/// Level runs after which a lasting new level is taken as usual.
const LEVEL_AFTER: usize = 100;
/// A change that nobody could place, and one that began within this many runs of it, are one.
const SAME_CHANGE: usize = 20;
/// An alarm whose part is undecided waits this many runs at most.
const WAITS_FOR: usize = 15;
/// Rows that are kept.
const KEPT: usize = 160;

/// What a figure is doing.
#[derive(Debug, Clone, Copy, PartialEq)]
enum State {
    /// Judged at every run.
    Watched,
    /// It proved a change of this part and lies off its level.
    Changed {
        part: Part,
        side: Side,
        /// Greatest shift so far, and the number of the run since when.
        peak: f64,
        since: usize,
    },
    /// Not judged, because a changed part moves it.
    Touched,
}

/// A figure, its fits, and what it is doing.
#[derive(Debug, Clone)]
struct Watched {
    figure: Figure,
    state: State,
    /// Rows since it entered this state.
    rows: usize,
    /// With companions, and by itself.
    adjusted: Model,
    alone: Model,
}

/// The judge of one programme.
#[derive(Debug, Clone)]
pub(super) struct Judge {
    settings: Settings,
    parts: Vec<Figure>,
    learned: Vec<Row>,
    newly_learned: usize,
    rows: Vec<Row>,
    /// Runs judged so far, and how many of the newest saw every figure watched.
    judged: usize,
    settled: usize,
    /// Runs for which an alarm has waited for its part.
    waited: usize,
    offsets: [f64; FIGURES],
    whole_s: f64,
    watched: Vec<Watched>,
    needed: f64,
}

impl Judge {
    /// A judge taught by these rows, whose totals have `parts` taken out.
    pub fn new(learned: Vec<Row>, parts: Vec<Figure>, settings: Settings) -> Self {
        let whole: Vec<f64> = learned.iter().filter_map(|row| row.whole_s).collect();
        let mut judge = Self {
            settings,
            parts,
            newly_learned: 0,
            rows: Vec::new(),
            judged: 0,
            settled: 0,
            waited: 0,
            offsets: [0.0; FIGURES],
            whole_s: median(&whole),
            watched: Vec::new(),
            needed: 0.0,
            learned,
        };
        for figure in Figure::ALL {
            let fits = (judge.model(figure, true), judge.model(figure, false));
            if let (Some(adjusted), Some(alone)) = fits {
                let state = State::Watched;
                judge.watched.push(Watched { figure, state, rows: 0, adjusted, alone });
            }
        }
        let tests = judge.watched.iter().map(|watched| watched.figure.sides().len()).sum();
        judge.needed = needed(settings.false_alarms_per_1000_runs, tests);
        judge
    }

    /// Has this part alarmed and not come back?
    pub fn is_changed(&self, part: Part) -> bool {
        self.changed_parts().any(|changed| changed == part)
    }

    fn changed_parts(&self) -> impl Iterator<Item = Part> {
        self.watched.iter().filter_map(|watched| match watched.state {
            State::Changed { part, .. } => Some(part),
            _ => None,
        })
    }

    /// Takes the next run.
    pub fn take(&mut self, run: &RunFeatures) -> Option<Alarm> {
        self.rows.push(Row::new(run, &self.parts));
        self.judged += 1;
        if self.rows.len() > 2 * KEPT {
            self.rows.drain(..KEPT);
        }
        self.watched.iter_mut().for_each(|watched| watched.rows += 1);
        let findings: Vec<Finding> = (0..self.watched.len()).map(|at| self.weigh(at)).collect();
        let alarm = self.raise(&findings);
        if alarm.is_none() {
            self.learn(&findings);
            self.follow();
        }
        alarm
    }

    /// The evidence of one figure at this run, the lesser of what it shows with and without its
    /// companions: a companion that moved must not pass its own shift on to this figure, and a
    /// heavier load must not count as one.
    fn weigh(&self, at: usize) -> Finding {
        let watched = &self.watched[at];
        let mut best = Finding::default();
        if watched.state != State::Watched {
            return best;
        }
        let off = self.off(&watched.adjusted, watched.rows);
        // A run without this figure cannot be the one that proves something about it.
        if off.first().is_none_or(|(back, ..)| *back > 0) {
            return best;
        }
        for side in watched.figure.sides() {
            let tolerance = tolerance(*side, self.level(watched));
            let mut evidence = strongest(&watched.adjusted, *side, tolerance, &off);
            if evidence.value > SUSPECTED {
                let alone = self.off(&watched.alone, watched.rows);
                let by_itself = strongest(&watched.alone, *side, tolerance, &alone);
                if by_itself.value < BY_ITSELF {
                    evidence.value = evidence.value.min(by_itself.value);
                }
            }
            if evidence.value > best.evidence.value {
                best = Finding { evidence, side: Some(*side) };
            }
        }
        best
    }

    fn off(&self, model: &Model, rows: usize) -> Vec<Deviation> {
        deviations(model, &self.rows, &self.offsets, rows.min(KEPT))
    }

    /// The level that shares and tolerances refer to.
    fn level(&self, watched: &Watched) -> f64 {
        let base =
            if watched.figure == Figure::Total { self.whole_s } else { watched.adjusted.level };
        base + self.offsets[watched.figure.at()]
    }

    /// The alarm of this run, if a figure has enough evidence; the first of them names it.
    fn raise(&mut self, findings: &[Finding]) -> Option<Alarm> {
        let at = findings.iter().position(|finding| finding.evidence.value >= self.needed)?;
        let finding = findings.get(at)?;
        let side = finding.side?;
        let clues = self.clues(findings, finding.evidence.runs);
        let watched = &self.watched[at];
        let named = Part::of(watched.figure, side.sign, &clues);
        if named.undecided && self.waited < WAITS_FOR {
            self.waited += 1;
            return None;
        }
        self.waited = 0;
        let part = named.part;
        let off = self.off(&watched.adjusted, watched.rows);
        let since = onset(side, watched.adjusted.sigma, &off);
        let recent = finding.evidence.runs.min(10);
        let shift =
            (3..=recent).rev().find_map(|count| mean_of(&off, count, watched.adjusted.sigma));
        let since_row = self.rows.len().checked_sub(since).and_then(|at| self.rows.get(at));
        let alarm = Alarm {
            figure: watched.figure,
            part,
            alarm_at_cycle: self.rows.last()?.cycle,
            since_cycle: since_row?.cycle,
            shift: shift?,
            level: self.level(watched),
            evidence: finding.evidence.value,
            needed: self.needed,
            part_share: named.share,
            false_alarms_per_1000_runs: self.settings.false_alarms_per_1000_runs,
        };
        let since = self.judged - since;
        let told_before = self.is_told(part, since);
        let peak = side.sign * alarm.shift;
        self.enter(at, State::Changed { part, side, peak, since });
        (!told_before).then_some(alarm)
    }

    /// Is a change of this part since then the one that was told already, before or after anybody
    /// could place it?
    fn is_told(&self, part: Part, since: usize) -> bool {
        self.watched.iter().any(|watched| match watched.state {
            State::Changed { part: told, since: told_since, .. } => {
                (part == Part::Unclear || told == Part::Unclear)
                    && since.abs_diff(told_since) <= SAME_CHANGE
            }
            _ => false,
        })
    }

    /// What every figure says about the time since the change.
    fn clues(&self, findings: &[Finding], runs: usize) -> Vec<Clue> {
        let clue = |(watched, finding): (&Watched, &Finding)| {
            let off: Vec<Deviation> = self.off(&watched.adjusted, runs);
            let shift = mean_of(&off, off.len(), watched.adjusted.sigma)?;
            let level = self.level(watched).abs().max(watched.figure.least_spread());
            Some(Clue {
                figure: watched.figure,
                evidence: finding.evidence.value,
                share: shift / level,
                doubt: watched.adjusted.sigma / level / (off.len() as f64).sqrt(),
            })
        };
        self.watched.iter().zip(findings).filter_map(clue).collect()
    }

    /// Puts one figure into a state, and every other into the state that follows from it.
    fn enter(&mut self, at: usize, state: State) {
        if let Some(watched) = self.watched.get_mut(at) {
            watched.state = state;
            watched.rows = 0;
        }
        let changed: Vec<Part> = self.changed_parts().collect();
        for watched in &mut self.watched {
            let touched = changed.iter().any(|part| part.touches().contains(&watched.figure));
            let next = match (watched.state, touched) {
                (State::Changed { .. }, _) => continue,
                (_, true) => State::Touched,
                (_, false) => State::Watched,
            };
            if watched.state != next {
                watched.state = next;
                watched.rows = 0;
            }
        }
        for at in 0..self.watched.len() {
            if self.watched[at].state == State::Watched && self.watched[at].rows == 0 {
                self.shorten_dependents(at);
            }
        }
        self.refit();
    }

    /// Lets old runs teach while nothing is suspected.
    fn learn(&mut self, findings: &[Finding]) {
        let all_watched = self.watched.iter().all(|watched| watched.state == State::Watched);
        self.settled = if all_watched { self.settled + 1 } else { 0 };
        let calm = findings.iter().all(|finding| finding.evidence.value < SUSPECTED)
            && self.settled > TEACHES_AFTER
            && self.offsets.iter().all(|offset| *offset == 0.0);
        let old = self.rows.len().checked_sub(TEACHES_AFTER + 1).and_then(|at| self.rows.get(at));
        if let (true, true, Some(row)) = (calm, self.learned.len() < MOST_LEARNED, old) {
            self.learned.push(*row);
            self.newly_learned += 1;
            if self.newly_learned >= REFIT_EVERY {
                self.newly_learned = 0;
                self.refit();
            }
        }
    }

    fn model(&self, figure: Figure, with_companions: bool) -> Option<Model> {
        let steady = |companion: &Figure| {
            let mut known = self.watched.iter();
            known.all(|other| other.figure != *companion || other.state == State::Watched)
        };
        let companions: Vec<Figure> = match with_companions {
            true => figure.companions().iter().copied().filter(steady).collect(),
            false => Vec::new(),
        };
        // Offsets begin after the learned runs, so these are fitted without any.
        Model::learn(&self.learned, figure, &companions, &[0.0; FIGURES])
    }

    fn refit(&mut self) {
        for at in 0..self.watched.len() {
            let figure = self.watched[at].figure;
            if let (Some(adjusted), Some(alone)) =
                (self.model(figure, true), self.model(figure, false))
            {
                self.watched[at].adjusted = adjusted;
                self.watched[at].alone = alone;
            }
        }
    }

    /// Follows every changed figure: back at its old level it was put right; level for long, its
    /// new level is the usual one from here on.
    fn follow(&mut self) {
        for at in 0..self.watched.len() {
            let watched = &self.watched[at];
            let State::Changed { part, side, peak, since } = watched.state else {
                continue;
            };
            let sigma = watched.adjusted.sigma;
            let off = self.off(&watched.adjusted, watched.rows);
            let Some(mean) = mean_of(&off, BACK_AFTER, sigma) else {
                continue;
            };
            let tolerance = tolerance(side, self.level(watched));
            let shift = side.sign * mean;
            if shift < tolerance && shift < BACK_WITHIN * peak {
                self.enter(at, State::Watched);
            } else if is_level(&off, sigma, tolerance) {
                self.take_over(part);
                self.enter(at, State::Watched);
            } else if shift > peak {
                let peak = shift;
                self.watched[at].state = State::Changed { part, side, peak, since };
            }
        }
    }

    /// Windows of figures that lean on this one may not reach back over its return or its new
    /// level: what it said of the load before then was wrong.
    fn shorten_dependents(&mut self, at: usize) {
        let figure = self.watched[at].figure;
        for watched in &mut self.watched {
            if watched.figure.companions().contains(&figure) {
                watched.rows = watched.rows.min(BACK_AFTER);
            }
        }
    }

    /// Takes the present level of everything that `part` touches as usual.
    fn take_over(&mut self, part: Part) {
        let mut shifts = [0.0; FIGURES];
        for watched in &self.watched {
            if part.touches().contains(&watched.figure) {
                let off = self.off(&watched.adjusted, LEVEL_AFTER);
                shifts[watched.figure.at()] =
                    mean_of(&off, off.len(), watched.adjusted.sigma).unwrap_or(0.0);
            }
        }
        self.offsets.iter_mut().zip(shifts).for_each(|(offset, shift)| *offset += shift);
    }
}

/// What one figure shows at one run.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct Finding {
    evidence: Evidence,
    side: Option<Side>,
}

/// Have the last hundred values neither risen nor fallen? Their halves differ by less than half
/// the tolerance and by less than chance may do.
fn is_level(off: &[Deviation], sigma: f64, tolerance: f64) -> bool {
    let half = LEVEL_AFTER / 2;
    let newer = mean_of(off, half, sigma);
    let older = off.get(half..).and_then(|off| mean_of(off, half, sigma));
    let (Some(newer), Some(older)) = (newer, older) else {
        return false;
    };
    let chance = 2.0 * sigma * (2.0 / half as f64).sqrt();
    (newer - older).abs() < (tolerance / 2.0).min(chance)
}

const _: () = assert!(LONGEST <= KEPT && LEVEL_AFTER <= LONGEST);
