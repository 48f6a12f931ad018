//! Heat and water of one load in one cycle: what condenses while it heats, what runs off, what the
//! stored heat boils off again at the vacuum, what heat from outside dries, what is left.
//!
//! First order: everything reaches the steam's temperature, everything may cool to the boiling
//! point of the vacuum, and heat goes where the water is as far as [`Unknowns`] says. No chance is
//! used: a figure that rests on unknowns is worked out for fixed points of each of them.
//!
//! ```
//! use cycle::balance::{Charge, Drying, Heated, Part, Unknowns, balance};
//! let charge = Charge {
//!     heated: vec![Heated { part: Part::Pieces, grams: 500.0, specific_heat: 480.0 }],
//!     from_c: 20.0,
//!     steam_c: 134.0,
//!     drying: Drying { minutes: 0.0, vacuum_kpa: Some(10.0) },
//! };
//! let water = balance(&charge, &Unknowns::BARE)?;
//! assert!((water.condensate.middle - 12.65).abs() < 0.01);
//! assert!((water.left.middle - 1.8).abs() < 0.1);
//! # Ok::<(), cycle::balance::NoBalance>(())
//! ```

mod demand;
mod guess;
mod run_water;
#[cfg(test)]
mod tests;

pub use demand::{DOSE_HEAT_USED, Usual, demand};
pub use guess::{Guess, Spread, Unknowns};
pub use run_water::{Filling, RunWater, run_water};

use crate::steam::{latent_heat, liquid_enthalpy, tsat};
use std::fmt;

/// What a mass belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// The implements.
    Pieces,
    /// Paper and film.
    Pouches,
    /// Trays and racks.
    Trays,
    /// The chamber. Its water never lies on the load.
    Walls,
}

/// A mass that is heated.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heated {
    /// What it belongs to.
    pub part: Part,
    /// Grams, from 0 to 100 000.
    pub grams: f64,
    /// J/kg/K, above 0 and at most 5 000; [`specific`] has the usual ones.
    pub specific_heat: f64,
}

/// Specific heats in J/kg/K. Sources stand in `tests/reference/water_and_materials.csv`.
pub mod specific {
    /// Hardened stainless steel 420.
    pub const STEEL_420: f64 = 480.0;
    /// Stainless steel 304: trays, racks, walls.
    pub const STEEL_304: f64 = 500.0;
    /// Tungsten carbide; sources give 203 to 292.
    pub const CARBIDE: f64 = 292.0;
    /// Zirconia.
    pub const ZIRCONIA: f64 = 500.0;
    /// Silicone rubber (from memory).
    pub const SILICONE: f64 = 1_300.0;
    /// Polypropylene.
    pub const POLYPROPYLENE: f64 = 1_700.0;
    /// Paper; taken for pouches of paper and film as a whole.
    pub const PAPER: f64 = 1_600.0;
}

/// How a cycle dries.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drying {
    /// Minutes, 0 to 240; 0 is a cycle without drying.
    pub minutes: f64,
    /// Pressure of the vacuum, kPa absolute, 0.7 to 110 (a deep pump gets to about 1, and below 0.611
    /// there is no water to boil); `None` where there is no vacuum: water then
    /// boils at 100 °C, and the jacket's heat does the work.
    pub vacuum_kpa: Option<f64>,
}

/// What is heated, and what the cycle does to it.
#[derive(Debug, Clone, PartialEq)]
pub struct Charge {
    /// The masses.
    pub heated: Vec<Heated>,
    /// Temperature at which they go in, °C, 0 to 50.
    pub from_c: f64,
    /// Temperature of the steam, °C, 105 to 140.
    pub steam_c: f64,
    /// How the cycle dries.
    pub drying: Drying,
}

/// A room is about so warm, °C (common practice, no source).
pub const ROOM_C: f64 = 20.0;

/// Boiling point where there is no vacuum, °C.
pub const BOILING_C: f64 = 100.0;

/// The water of one run, grams. What lies on load and trays; walls are in [`RunWater`].
#[derive(Debug, Clone, PartialEq)]
pub struct Balance {
    /// Condensed on each part, in the order of [`Part`]; parts without mass have none.
    pub by_part: Vec<(Part, Spread)>,
    /// Condensed on pieces, pouches and trays together.
    pub condensate: Spread,
    /// Ran off before drying.
    pub drained: Spread,
    /// Boiled off by stored heat at the vacuum.
    pub flashed: Spread,
    /// Dried by heat from outside within the minutes.
    pub dried: Spread,
    /// Still there at the end.
    pub left: Spread,
}

/// Why there is no balance.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoBalance {
    /// A mass is outside 0 to 100 kg, or nothing on the trays is heated.
    Mass,
    /// A specific heat is outside 0 to 5 000 J/kg/K.
    SpecificHeat,
    /// The load goes in below 0 or above 50 °C, or the steam is outside 105 to 140 °C.
    Temperature,
    /// The vacuum is outside 0.7 to 110 kPa absolute.
    Vacuum,
    /// Drying lasts less than nothing or over four hours.
    Minutes,
    /// The cycle does not dry, so there is no drying power to ask for.
    NoDrying,
    /// A guess is no share, no factor or has no believable spread.
    Guess,
    /// The chamber or its pulses cannot be.
    Chamber,
}

impl fmt::Display for NoBalance {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Mass => "no water can be worked out: give the masses in grams, 0 to 100 000 and not all nothing",
            Self::SpecificHeat => "a specific heat is above 0 and at most 5000 J/kg/K: look up the material again",
            Self::Temperature => "the load goes in at 0 to 50 °C and the steam has 105 to 140 °C: check both",
            Self::Vacuum => "the vacuum is 0.7 to 110 kPa absolute: a gauge counts from the air's pressure, add that",
            Self::Minutes => "drying lasts 0 to 240 minutes: check the programme",
            Self::NoDrying => "this cycle does not dry: nothing pouched and nothing for the shelf goes into it",
            Self::Guess => "a share is 0 to 1, a factor or power is positive, a spread 0 to 3: check the settings",
            Self::Chamber => "the chamber holds 1 to 60 litres and is filled by at most 20 pulses of 10 to 360 kPa",
        })
    }
}

impl std::error::Error for NoBalance {}

impl Heated {
    /// Heat for one kelvin, J/K.
    pub(crate) fn capacity(&self) -> f64 {
        self.grams * 1e-3 * self.specific_heat
    }
}

impl Charge {
    /// Heat for one kelvin of all that lies on the load side, J/K.
    pub(crate) fn load_capacity(&self) -> f64 {
        let load = self.heated.iter().filter(|heated| heated.part != Part::Walls);
        load.map(Heated::capacity).sum()
    }

    /// Heat for one kelvin of one part, J/K.
    pub(crate) fn capacity_of(&self, part: Part) -> f64 {
        self.heated.iter().filter(|heated| heated.part == part).map(Heated::capacity).sum()
    }

    /// Is it believable?
    pub(crate) fn check(&self) -> Result<(), NoBalance> {
        let within = |value: f64, least: f64, most: f64| value >= least && value <= most;
        if !self.heated.iter().all(|heated| within(heated.grams, 0.0, 100_000.0)) {
            return Err(NoBalance::Mass);
        }
        let heats = |heated: &Heated| heated.specific_heat > 0.0 && heated.specific_heat <= 5_000.0;
        if !self.heated.iter().all(heats) {
            return Err(NoBalance::SpecificHeat);
        }
        if self.load_capacity() <= 0.0 {
            return Err(NoBalance::Mass);
        }
        if !within(self.from_c, 0.0, 50.0) || !within(self.steam_c, 105.0, 140.0) {
            return Err(NoBalance::Temperature);
        }
        if !self.drying.vacuum_kpa.is_none_or(|kpa| within(kpa, 0.7, 110.0)) {
            return Err(NoBalance::Vacuum);
        }
        if !within(self.drying.minutes, 0.0, 240.0) {
            return Err(NoBalance::Minutes);
        }
        Ok(())
    }

    /// Temperature at which water boils while this cycle dries, °C.
    #[must_use]
    pub fn boils_at(&self) -> f64 {
        self.drying.vacuum_kpa.map_or(BOILING_C, tsat)
    }
}

/// What one gram of condensate needs and what its share of the stored heat gives: the same for
/// every part, because all of them go through the same temperatures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct PerGram {
    /// Grams that condense for each J/K that is heated.
    pub condensed: f64,
    /// Grams that the load's heat boils off again for each gram that condensed.
    pub by_load: f64,
    /// Grams that the water's own heat boils off for each gram that stayed.
    pub by_water: f64,
    /// Heat of boiling at the vacuum, J/g.
    pub boiling: f64,
}

impl PerGram {
    pub(crate) fn of(charge: &Charge) -> Self {
        let vacuum_c = charge.boils_at();
        let boiling = latent_heat(vacuum_c);
        let condensed = 1e3 * (charge.steam_c - charge.from_c) / latent_heat(charge.steam_c);
        let water = liquid_enthalpy(charge.steam_c) - liquid_enthalpy(vacuum_c);
        Self {
            condensed,
            by_load: 1e3 * (charge.steam_c - vacuum_c) / boiling / condensed,
            by_water: water / boiling,
            boiling: boiling * 1e-3,
        }
    }

    /// Grams that flash off of `condensed`, of which `kept` did not run off.
    pub(crate) fn flashed(&self, condensed: f64, kept: f64, heat_used: f64) -> f64 {
        (heat_used * (condensed * self.by_load + kept * self.by_water)).clamp(0.0, kept)
    }
}

/// The water of this load in this cycle.
///
/// # Errors
/// [`NoBalance`] where an input cannot be; a cycle without drying is no error.
pub fn balance(charge: &Charge, unknowns: &Unknowns) -> Result<Balance, NoBalance> {
    charge.check()?;
    if !unknowns.possible() {
        return Err(NoBalance::Guess);
    }
    let per = PerGram::of(charge);
    let heat = unknowns.heat.factors();
    let condense = |capacity: f64| -> Vec<f64> {
        heat.iter().map(|factor| factor * capacity * per.condensed).collect()
    };
    let mut cases = Cases::default();
    for condensed in condense(charge.load_capacity()) {
        for share in unknowns.drained.shares() {
            let kept = condensed * (1.0 - share);
            for used in unknowns.heat_used.shares() {
                let flashed = per.flashed(condensed, kept, used);
                for power in unknowns.power_w.factors() {
                    let could = power * 60.0 * charge.drying.minutes / per.boiling;
                    let dried = could.min(kept - flashed);
                    cases.add(condensed - kept, flashed, dried, kept - flashed - dried);
                }
            }
        }
    }
    let parts = [Part::Pieces, Part::Pouches, Part::Trays];
    let by_part = |part: Part| (part, Spread::of(condense(charge.capacity_of(part))));
    Ok(Balance {
        by_part: parts.into_iter().map(by_part).collect(),
        condensate: Spread::of(condense(charge.load_capacity())),
        drained: Spread::of(cases.drained),
        flashed: Spread::of(cases.flashed),
        dried: Spread::of(cases.dried),
        left: Spread::of(cases.left),
    })
}

/// One number for each point of all unknowns.
#[derive(Debug, Default)]
struct Cases {
    drained: Vec<f64>,
    flashed: Vec<f64>,
    dried: Vec<f64>,
    left: Vec<f64>,
}

impl Cases {
    fn add(&mut self, drained: f64, flashed: f64, dried: f64, left: f64) {
        self.drained.push(drained);
        self.flashed.push(flashed);
        self.dried.push(dried);
        self.left.push(left.max(0.0));
    }
}
