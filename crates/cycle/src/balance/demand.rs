//! The drying power that a load asks of a machine, and the load that asks for a power.

use super::{Charge, Heated, NoBalance, Part, PerGram};

/// Share of the stored heat that counts in a [`demand`] (assumption). Were it all of it, a deep
/// vacuum would leave nothing to dry in this first order and no load would ask for anything; with
/// a known share a demand is a plain measure of the load, and what a machine does better or worse
/// is what it is learnt to be.
pub const DOSE_HEAT_USED: f64 = 0.75;

/// Watts that this load asks of the machine: the water that neither runs off (none is taken to) nor
/// boils off by stored heat, times its heat of boiling, over the minutes of drying. Above 0 but for a load that goes in warmer
/// than 30 °C under the deepest vacuum.
///
/// ```
/// use cycle::balance::{Charge, Drying, Heated, Part, demand, specific};
/// let pieces = Heated { part: Part::Pieces, grams: 1_000.0, specific_heat: specific::STEEL_420 };
/// let drying = Drying { minutes: 15.0, vacuum_kpa: Some(10.0) };
/// let mut charge = Charge { heated: vec![pieces], from_c: 20.0, steam_c: 134.0, drying };
/// let long = demand(&charge)?;
/// charge.drying.minutes = 5.0;
/// // A third of the time asks for three times the power.
/// assert!((demand(&charge)? / long - 3.0).abs() < 1e-9);
/// # Ok::<(), cycle::balance::NoBalance>(())
/// ```
///
/// # Errors
/// [`NoBalance`], among others [`NoBalance::NoDrying`].
pub fn demand(charge: &Charge) -> Result<f64, NoBalance> {
    charge.check()?;
    if charge.drying.minutes <= 0.0 {
        return Err(NoBalance::NoDrying);
    }
    Ok(pouched_capacity(charge) * watts_per_capacity(charge))
}

/// Heat for one kelvin of what must come out dry, J/K.
fn pouched_capacity(charge: &Charge) -> f64 {
    charge.capacity_of(Part::Pieces) + charge.capacity_of(Part::Pouches)
}

/// Watts for each J/K on the trays.
fn watts_per_capacity(charge: &Charge) -> f64 {
    let per = PerGram::of(charge);
    let left = 1.0 - per.flashed(1.0, 1.0, DOSE_HEAT_USED);
    per.condensed * left * per.boiling / (60.0 * charge.drying.minutes)
}

/// The salon's usual mix: what a full tray holds, so that a power can be told in grams.
#[derive(Debug, Clone, PartialEq)]
pub struct Usual {
    watts_per_gram: f64,
}

impl Usual {
    /// From one load as the salon makes it: pieces and pouches grow and shrink together.
    ///
    /// # Errors
    /// [`NoBalance`] as [`demand`]; [`NoBalance::Mass`] where nothing but trays is in it.
    pub fn of(charge: &Charge) -> Result<Self, NoBalance> {
        demand(charge)?;
        let moves = |heated: &&Heated| matches!(heated.part, Part::Pieces | Part::Pouches);
        let grams: f64 = charge.heated.iter().filter(moves).map(|heated| heated.grams).sum();
        let watts = watts_per_capacity(charge);
        if grams <= 0.0 || watts <= 0.0 {
            return Err(NoBalance::Mass);
        }
        Ok(Self { watts_per_gram: pouched_capacity(charge) * watts / grams })
    }

    /// What so many grams of pieces and pouches ask, W.
    ///
    /// ```
    /// # use cycle::balance::{Charge, Drying, Heated, Part, Usual, specific};
    /// # let heated = vec![Heated { part: Part::Pieces, grams: 900.0, specific_heat: 480.0 }];
    /// # let drying = Drying { minutes: 15.0, vacuum_kpa: Some(10.0) };
    /// let charge = Charge { heated, from_c: 20.0, steam_c: 134.0, drying };
    /// let usual = Usual::of(&charge)?;
    /// assert!((usual.grams(usual.demand(700.0)) - 700.0).abs() < 1e-6);
    /// # Ok::<(), cycle::balance::NoBalance>(())
    /// ```
    #[must_use]
    pub fn demand(&self, grams: f64) -> f64 {
        self.watts_per_gram * grams
    }

    /// How many grams of pieces and pouches ask for `watts`, at least 0.
    #[must_use]
    pub fn grams(&self, watts: f64) -> f64 {
        (watts / self.watts_per_gram).max(0.0)
    }
}
