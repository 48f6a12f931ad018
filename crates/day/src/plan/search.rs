//! Looking for a good day: annealing over wishes, in one fixed sequence of rounds.

use super::answer::Run;
use super::decode::{Decoder, Genome, Wish};
use super::order::{CRITERIA, Criteria, Criterion};
use super::problem::MOST_KINDS;
use super::table::Table;
use crate::Chance;

type Values = [u64; CRITERIA];

/// What somebody who waits is worth to most chains, cents.
const USUAL_UNMET: f64 = 260.0;

/// How a chain of steps wanders.
#[derive(Debug, Clone, Copy)]
pub(super) struct Manner {
    /// From an empty day, not from the best one.
    pub fresh: bool,
    /// Temperatures at the beginning and at the end, cents.
    hot: f64,
    cold: f64,
    /// What a run is worth, cents. Little lets a plan with one run more lead to a cheaper one,
    /// much keeps to few runs.
    run: f64,
    /// What somebody who waits is worth at least, cents. Much lets one fewer wait for many more sets
    /// that are short tomorrow.
    unmet: f64,
}

impl Manner {
    /// The chains of one round.
    pub fn of_round(round: u32) -> [Self; 4] {
        let run = [400.0, 150.0, 800.0][round as usize % 3];
        let unmet = [USUAL_UNMET, 1200.0][round as usize % 2];
        [
            Self { fresh: false, hot: 5.0, cold: 0.05, run: 400.0, unmet: USUAL_UNMET },
            Self { fresh: true, hot: 150.0, cold: 0.05, run, unmet },
            Self { fresh: false, hot: 40.0, cold: 0.05, run, unmet },
            Self { fresh: true, hot: 150.0, cold: 0.05, run: 400.0, unmet: USUAL_UNMET },
        ]
    }

    /// The chains that mend a plan, nearest first.
    pub fn of_mending(chain: u32) -> Self {
        match chain {
            0 | 1 => Self { fresh: false, hot: 3.0, cold: 0.05, run: 150.0, unmet: USUAL_UNMET },
            2 | 3 => Self { fresh: false, hot: 30.0, cold: 0.05, run: 150.0, unmet: USUAL_UNMET },
            // Somebody would still wait: runs are cheap now.
            _ if chain.is_multiple_of(2) => {
                Self { fresh: true, hot: 150.0, cold: 1.0, run: 40.0, unmet: 1200.0 }
            }
            _ => Self { fresh: false, hot: 60.0, cold: 1.0, run: 40.0, unmet: 1200.0 },
        }
    }

    /// What one of each is worth in cents while the search wanders. Only what guides the steps:
    /// plans are kept by their exact order.
    fn price(&self, which: Criterion) -> f64 {
        match which {
            Criterion::Unmet => self.unmet.max(self.run * 0.8),
            Criterion::Short => 200.0_f64.max(self.run * 0.7),
            Criterion::Runs => self.run,
            Criterion::Cost => 1.0,
            Criterion::Drying => 0.6,
            Criterion::Exposure => 0.02,
            Criterion::Immediate => 12.0,
            Criterion::Overnight => 8.0,
            Criterion::Wait => 0.01,
            Criterion::Break => 0.002,
            Criterion::Changed => 15.0,
        }
    }

    fn energy(&self, sum: &Criteria, order: &[Criterion]) -> f64 {
        order.iter().map(|&which| self.price(which) * sum[which] as f64).sum()
    }
}

/// The best day found so far.
#[derive(Debug, Clone)]
pub(super) struct Found {
    pub values: Values,
    pub genome: Genome,
}

pub(super) struct Chain<'t> {
    decoder: Decoder<'t>,
    order: &'static [Criterion],
    manner: Manner,
    chance: Chance,
    current: Genome,
    current_energy: f64,
    trial: Genome,
    kept: Vec<Wish>,
    /// Needs that go without in the current day.
    unmet: Vec<usize>,
    pub best: Found,
    pub count: u64,
}

impl<'t> Chain<'t> {
    pub fn new(
        table: &'t Table,
        order: &'static [Criterion],
        manner: Manner,
        seed: u64,
        from: Genome,
    ) -> Self {
        let mut decoder = Decoder::new(table);
        let sum = decoder.decode(&from, order);
        let best = Found { values: sum.in_order(order), genome: from.clone() };
        let current_energy = manner.energy(&sum, order);
        Self {
            decoder,
            order,
            manner,
            chance: Chance::from_seed(seed),
            trial: from.clone(),
            kept: Vec::new(),
            unmet: Vec::new(),
            current: from,
            current_energy,
            best,
            count: 0,
        }
    }

    /// From now on changes against these runs count.
    pub fn keep_close_to(&mut self, planned: &[Run]) {
        self.decoder.planned(planned);
        let sum = self.decoder.decode(&self.current, self.order);
        self.current_energy = self.manner.energy(&sum, self.order);
        self.best.values = sum.in_order(self.order);
    }

    /// So many steps, cooling down; fewer when asked to stop.
    pub fn anneal(&mut self, steps: u32, stop: &dyn Fn() -> bool) {
        let Manner { hot, cold, .. } = self.manner;
        let ratio = measure::maths::pow(cold / hot, 1.0 / f64::from(steps.max(1)));
        let mut heat = hot;
        for step in 0..steps {
            if step % 64 == 0 && stop() {
                return;
            }
            heat *= ratio;
            self.step(heat);
        }
    }

    fn step(&mut self, heat: f64) {
        self.count += 1;
        self.trial.clone_from(&self.current);
        if !self.change() {
            return;
        }
        let sum = self.decoder.decode(&self.trial, self.order);
        let trial_energy = self.manner.energy(&sum, self.order);
        let worse = trial_energy - self.current_energy;
        if worse <= 0.0 || self.chance.unit() < measure::maths::exp(-worse / heat) {
            self.keep_what_was_made();
            self.unmet.clear();
            self.unmet.extend(self.decoder.unmet.iter().map(|u| u.0));
            std::mem::swap(&mut self.current, &mut self.trial);
            self.current_energy = trial_energy;
            let values = sum.in_order(self.order);
            if values < self.best.values {
                self.best.values = values;
                self.best.genome.clone_from(&self.current);
            }
        }
    }

    /// Wishes that came to nothing go; the others start when they did.
    fn keep_what_was_made(&mut self) {
        let Self { decoder, trial, kept, .. } = self;
        kept.clear();
        kept.extend(
            decoder
                .made
                .iter()
                .map(|made| Wish { start: made.start, ..trial.wishes[usize::from(made.wish)] }),
        );
        std::mem::swap(&mut trial.wishes, kept);
    }

    fn change(&mut self) -> bool {
        let n = self.trial.wishes.len();
        if !self.unmet.is_empty() && self.chance.below(6) == 0 {
            return self.refuse_a_lighter();
        }
        let what = self.chance.below(100);
        if n == 0 || what < 14 {
            return self.insert();
        }
        let i = self.chance.below(n);
        match what {
            14..=39 => {
                let by = 1 + self.chance.below(3);
                self.shift(i, by);
            }
            40..=51 => {
                let by = 1 + self.chance.below(24);
                self.shift(i, by);
            }
            52..=61 => {
                let cycles = self.decoder.table.machines[usize::from(self.trial.wishes[i].machine)]
                    .cycles
                    .len();
                self.trial.wishes[i].cycle = self.chance.below(cycles) as u8;
            }
            62..=67 => self.other_machine(i),
            68..=75 => {
                self.trial.wishes.remove(i);
            }
            76..=83 => {
                self.trial.wishes.remove(i);
                return self.insert();
            }
            84..=87 if n > 1 => {
                let j = self.chance.below(n);
                let (a, b) = (self.trial.wishes[i], self.trial.wishes[j]);
                self.trial.wishes[i].cycle = b.cycle;
                self.trial.wishes[j].cycle = a.cycle;
                self.trial.wishes[i].machine = b.machine;
                self.trial.wishes[j].machine = a.machine;
            }
            88..=97 => self.cap(i),
            _ => return self.refuse(),
        }
        self.trial.wishes.sort_unstable();
        true
    }

    fn insert(&mut self) -> bool {
        let table = self.decoder.table;
        let machine = self.chance.below(table.machines.len());
        let Some(m) = table.machines.get(machine).filter(|m| !m.cycles.is_empty()) else {
            return false;
        };
        let wish = Wish {
            start: self.chance.below(table.slots) as u16,
            machine: machine as u8,
            cycle: self.chance.below(m.cycles.len()) as u8,
            most: [u8::MAX; MOST_KINDS],
        };
        self.trial.wishes.push(wish);
        self.trial.wishes.sort_unstable();
        true
    }

    fn shift(&mut self, i: usize, by: usize) {
        let wish = &mut self.trial.wishes[i];
        let last = self.decoder.table.slots - 1;
        let start = usize::from(wish.start);
        wish.start = if self.chance.below(2) == 0 {
            start.saturating_sub(by)
        } else {
            (start + by).min(last)
        } as u16;
    }

    fn other_machine(&mut self, i: usize) {
        let machines = &self.decoder.table.machines;
        let machine = self.chance.below(machines.len());
        let cycles = machines[machine].cycles.len();
        let wish = &mut self.trial.wishes[i];
        if usize::from(wish.cycle) < cycles {
            wish.machine = machine as u8;
        }
    }

    fn cap(&mut self, i: usize) {
        let k = self.chance.below(self.decoder.table.kinds);
        let most = &mut self.trial.wishes[i].most[k];
        *most = if *most < u8::MAX && self.chance.below(2) == 0 {
            u8::MAX
        } else {
            self.chance.below(6) as u8
        };
    }

    /// Leaves somebody without who counts less than one who goes without now, and comes before.
    fn refuse_a_lighter(&mut self) -> bool {
        let needs = &self.decoder.table.needs;
        let heavy = needs[self.unmet[self.chance.below(self.unmet.len())]];
        let before = needs.partition_point(|n| n.start <= heavy.start);
        let i = self.chance.below(before);
        let light = needs[i];
        if light.kind != heavy.kind || light.weight >= heavy.weight {
            return self.refuse();
        }
        self.refuse_one(i)
    }

    fn refuse(&mut self) -> bool {
        let table = self.decoder.table;
        if table.needs.is_empty() || self.best.values[0] == 0 {
            return false;
        }
        let refused = &mut self.trial.refused;
        if !refused.is_empty() && self.chance.below(2) == 0 {
            refused.remove(self.chance.below(refused.len()));
            return true;
        }
        let need = self.chance.below(table.needs.len());
        self.refuse_one(need)
    }

    fn refuse_one(&mut self, need: usize) -> bool {
        let table = self.decoder.table;
        let refused = &mut self.trial.refused;
        let already = refused.iter().filter(|&&r| usize::from(r) == need).count();
        if already as u32 >= table.needs[need].n {
            return false;
        }
        refused.push(need as u16);
        refused.sort_unstable();
        true
    }
}
