//! Made-up salons with a hidden limit: how often is it where the learnt interval says?

use cycle::balance::{Charge, Drying, Heated, Part, Unknowns, Usual, specific};
use cycle::limit::{Outcome, Prior, advice, learn};
use measure::maths::{exp, ln};

/// Chance with a seed (SplitMix64 by its published constants, from memory).
pub struct Chance(pub u64);

impl Chance {
    /// Evenly between 0 and 1.
    pub fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }

    /// The standard normal (polar method).
    pub fn normal(&mut self) -> f64 {
        loop {
            let (u, v) = (self.between(-1.0, 1.0), self.between(-1.0, 1.0));
            let square = u * u + v * v;
            if square > 0.0 && square < 1.0 {
                return u * (-2.0 * ln(square) / square).sqrt();
            }
        }
    }
}

/// Where the hidden truth comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// From the physical assumption: power log-normal, slope about a fifth.
    Physics,
    /// Dry below its power, wet above it, nothing between.
    Hard,
    /// Half the power that physics says.
    Half,
    /// Twice the power that physics says.
    Twice,
    /// Chance plays a larger part: half the loads are wet at e^0.5 times where a quarter is.
    Wide,
    /// As from physics, and three loads in a hundred are wet for how they were packed.
    Mishaps,
}

pub const KINDS: [(Kind, &str); 6] = [
    (Kind::Physics, "(a) from the physical assumption"),
    (Kind::Hard, "(b) hard threshold"),
    (Kind::Half, "(c) half as good as physics says"),
    (Kind::Twice, "(c) twice as good as physics says"),
    (Kind::Wide, "(d) wider noise"),
    (Kind::Mishaps, "(e) 3 % wet by mishap"),
];

/// A hidden truth: `floor` + (1 - floor) * logistic((ln x - ln power) / slope).
struct Truth {
    power: f64,
    slope: f64,
    floor: f64,
}

impl Truth {
    fn of(kind: Kind, prior: &Prior, chance: &mut Chance) -> Self {
        let drawn = prior.middle_w * exp(prior.spread * chance.normal());
        let slope = 0.2 * exp(0.35 * chance.normal());
        let usual = Self { power: drawn, slope, floor: 0.0 };
        match kind {
            Kind::Physics => usual,
            Kind::Hard => Self { slope: 0.005, ..usual },
            Kind::Half => Self { power: prior.middle_w / 2.0, ..usual },
            Kind::Twice => Self { power: prior.middle_w * 2.0, ..usual },
            Kind::Wide => Self { slope: 0.45, ..usual },
            Kind::Mishaps => Self { floor: 0.03, ..usual },
        }
    }

    fn wet(&self, demand: f64) -> f64 {
        let odds = (ln(demand) - ln(self.power)) / self.slope;
        self.floor + (1.0 - self.floor) / (1.0 + exp(-odds))
    }

    /// The demand at which one load in ten is wet.
    fn limit(&self) -> f64 {
        let rest = (0.1 - self.floor) / (1.0 - self.floor);
        self.power * exp(self.slope * ln(rest / (1.0 - rest)))
    }
}

/// The usual mix: steel in pouches, full drying under vacuum.
pub fn charge() -> Charge {
    let heated = |part, grams, specific_heat| Heated { part, grams, specific_heat };
    Charge {
        heated: vec![
            heated(Part::Pieces, 1_200.0, specific::STEEL_420),
            heated(Part::Pouches, 40.0, specific::PAPER),
        ],
        from_c: 20.0,
        steam_c: 134.0,
        drying: Drying { minutes: 15.0, vacuum_kpa: Some(10.0) },
    }
}

/// A load as a salon makes it: some small, most middling, some full, a few over the maker's limit.
fn load(maker: f64, chance: &mut Chance) -> f64 {
    let which = chance.even();
    let share = match which {
        w if w < 0.3 => chance.between(0.15, 0.5),
        w if w < 0.75 => chance.between(0.5, 0.9),
        w if w < 0.95 => chance.between(0.9, 1.0),
        _ => chance.between(1.0, 1.25),
    };
    share * maker
}

/// One cell of the table.
#[derive(Debug, Clone, Copy)]
pub struct Cell {
    /// Share of salons whose 90 % interval in grams holds the hidden limit.
    pub covered: f64,
    /// Share of salons whose hidden limit is below it: the interval promises too much.
    pub below: f64,
    /// Middle of the intervals' widths, as `high / low`.
    pub times: f64,
    /// The same in grams, where the hidden limit lies within twice the maker's.
    pub grams: f64,
    /// Share of salons whose advice was above the hidden limit by more than a fifth.
    pub bold: f64,
}

fn middle(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values.get(values.len() / 2).copied().unwrap_or(f64::NAN)
}

/// Simulates `salons` of one kind with `looks` outcomes each. Asserts that no advice is above the
/// maker's limit.
pub fn cell(kind: Kind, looks: usize, salons: usize, seed: u64) -> Cell {
    cell_with(kind, looks, salons, (seed, 1.0))
}

/// The same where the demands that are told are `told` times the true ones.
pub fn cell_with(kind: Kind, looks: usize, salons: usize, (seed, told): (u64, f64)) -> Cell {
    let mut chance = Chance(seed);
    let charge = charge();
    let prior = Prior::of(&charge, &Unknowns::TYPICAL).expect("a charge that can be");
    let usual = Usual::of(&charge).expect("a charge that can be");
    let (mut covered, mut below, mut bold) = (0.0, 0.0, 0.0);
    let (mut times, mut widths) = (Vec::new(), Vec::new());
    for _ in 0..salons {
        let truth = Truth::of(kind, &prior, &mut chance);
        // What a maker names has little to do with this machine's true limit.
        let maker = chance.between(600.0, 4_000.0).round();
        let mut look = || {
            let demand_w = usual.demand(load(maker, &mut chance));
            let wet = chance.even() < truth.wet(demand_w);
            Outcome { demand_w: told * demand_w, wet }
        };
        let outcomes: Vec<Outcome> = (0..looks).map(|_| look()).collect();
        let learnt = learn(&prior, &outcomes).expect("demands of real loads");
        let advised = advice(&learnt, Some(maker as u32), |watts| usual.grams(watts));
        assert!(f64::from(advised.grams) <= maker, "{kind:?}: advice above the maker's limit");
        let (low, high) = (usual.grams(learnt.limit_w.low), usual.grams(learnt.limit_w.high));
        let hidden = usual.grams(truth.limit());
        covered += f64::from(u8::from(low <= hidden && hidden <= high));
        below += f64::from(u8::from(hidden < low));
        bold += f64::from(u8::from(f64::from(advised.grams) > 1.2 * hidden));
        times.push(learnt.limit_w.high / learnt.limit_w.low);
        if hidden < 2.0 * maker {
            widths.push(high - low);
        }
    }
    let share = |count: f64| count / salons as f64;
    Cell {
        covered: share(covered),
        below: share(below),
        times: middle(times),
        grams: middle(widths),
        bold: share(bold),
    }
}
