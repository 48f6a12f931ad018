//! The water of a whole run: what condenses on load, trays and walls, and the steam that fills the
//! chamber.

use super::{Charge, NoBalance, Part, PerGram, Spread, Unknowns};
use crate::steam::{tsat, vapour_density};
use load::chamber::Chamber;

/// How the chamber is filled with steam.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Filling {
    /// The chamber, 1 to 60 litres.
    pub chamber: Chamber,
    /// How often it is filled and emptied again before the last filling; 0 to 20.
    pub pulses: u32,
    /// Pressure at the top of each of those, kPa absolute, 10 to 360.
    pub pulse_kpa: f64,
}

/// The water that one run takes from the tank, grams: about as many millilitres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunWater {
    /// On pieces and pouches.
    pub load: Spread,
    /// On trays and rack.
    pub trays: Spread,
    /// On the walls, as far as steam heats them.
    pub walls: Spread,
    /// The steam of the pulses.
    pub pulses: f64,
    /// The steam of the last filling.
    pub filling: f64,
    /// All of it.
    pub total: Spread,
}

/// The water of one run. Not in it: what leaks, what the pulses boil off the load and put back on
/// it, and water that the machine throws away on purpose.
///
/// # Errors
/// [`NoBalance`] where an input cannot be.
pub fn run_water(
    charge: &Charge,
    filling: &Filling,
    unknowns: &Unknowns,
) -> Result<RunWater, NoBalance> {
    charge.check()?;
    if !unknowns.possible() {
        return Err(NoBalance::Guess);
    }
    let cubic_metres = filling.chamber.volume_mm3() * 1e-9;
    let size = (1e-3..=60e-3).contains(&cubic_metres);
    if !size || filling.pulses > 20 || !(10.0..=360.0).contains(&filling.pulse_kpa) {
        return Err(NoBalance::Chamber);
    }
    let grams = |celsius: f64| 1e3 * cubic_metres * vapour_density(celsius);
    let pulses = f64::from(filling.pulses) * grams(tsat(filling.pulse_kpa));
    let last = grams(charge.steam_c);

    let condensed = PerGram::of(charge).condensed;
    let heat = unknowns.heat.factors();
    let by_steam = unknowns.walls_by_steam.shares();
    let on =
        |capacity: f64| -> Vec<f64> { heat.iter().map(|f| f * capacity * condensed).collect() };
    let on_walls = charge.capacity_of(Part::Walls) * condensed;
    let load = charge.capacity_of(Part::Pieces) + charge.capacity_of(Part::Pouches);
    let total = on(charge.load_capacity())
        .into_iter()
        .flat_map(|on_load| by_steam.iter().map(move |share| on_load + share * on_walls))
        .map(|on_all| on_all + pulses + last);
    Ok(RunWater {
        load: Spread::of(on(load)),
        trays: Spread::of(on(charge.capacity_of(Part::Trays))),
        walls: Spread::of(by_steam.iter().map(|share| share * on_walls).collect()),
        pulses,
        filling: last,
        total: Spread::of(total.collect()),
    })
}
