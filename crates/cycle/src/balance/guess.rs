//! What is not known about a machine, as guesses with a middle and a spread, and how a figure that
//! rests on several of them is spread.

use measure::maths;

/// A figure that is not known exactly, by its 5 %, 50 % and 95 % points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// It is below this in one case of twenty.
    pub low: f64,
    /// It is as likely above as below.
    pub middle: f64,
    /// It is above this in one case of twenty.
    pub high: f64,
}

/// A guess: its middle, and how far it may be off.
///
/// A power or a factor is off by a factor e^(`spread`·z), a share is off by `spread`·z in its
/// log-odds (which keeps it between 0 and 1), z being the standard normal. A `spread` of 0 is a
/// value that is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Guess {
    /// As likely too low as too high. A share from 0 to 1, a power in W, a factor.
    pub middle: f64,
    /// From 0 (known) to 3 (hardly anything known).
    pub spread: f64,
}

/// Points of the standard normal that stand for eleven equally likely parts: at the probabilities
/// 1/22, 3/22 and so on to 21/22.
pub(super) const POINTS: [f64; 11] = [
    -1.690_621_629_585,
    -1.096_803_562_094,
    -0.747_858_594_763,
    -0.472_789_120_992,
    -0.229_884_117_579,
    0.0,
    0.229_884_117_579,
    0.472_789_120_992,
    0.747_858_594_763,
    1.096_803_562_094,
    1.690_621_629_585,
];

impl Guess {
    /// A value that is known.
    #[must_use]
    pub const fn known(value: f64) -> Self {
        Self { middle: value, spread: 0.0 }
    }

    /// A guess with this middle and spread.
    #[must_use]
    pub const fn new(middle: f64, spread: f64) -> Self {
        Self { middle, spread }
    }

    /// The points of a share.
    pub(super) fn shares(self) -> Vec<f64> {
        // Nothing and all stay what they are: their log-odds are without end.
        let odds = maths::ln(self.middle / (1.0 - self.middle));
        self.points(|z| 1.0 / (1.0 + maths::exp(-(odds + self.spread * z))))
    }

    /// The points of a factor or a power.
    pub(super) fn factors(self) -> Vec<f64> {
        self.points(|z| self.middle * maths::exp(self.spread * z))
    }

    /// A known value needs one point only.
    fn points(self, at: impl Fn(f64) -> f64) -> Vec<f64> {
        if self.spread == 0.0 { vec![at(0.0)] } else { POINTS.map(at).to_vec() }
    }

    pub(super) fn is_share(self) -> bool {
        (0.0..=1.0).contains(&self.middle) && (0.0..=3.0).contains(&self.spread)
    }

    pub(super) fn is_factor(self, most: f64) -> bool {
        (0.0..=most).contains(&self.middle) && (0.0..=3.0).contains(&self.spread)
    }
}

/// What cannot be read off a machine. All middles and spreads of [`Unknowns::TYPICAL`] are
/// assumptions of ours: they are where learning begins, not what it ends with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unknowns {
    /// Factor on the heat that the load takes up: masses are typical ones and tables of specific
    /// heats disagree.
    pub heat: Guess,
    /// Share of the condensate that runs off before drying begins.
    pub drained: Guess,
    /// Share of the heat stored in load and water that reaches the water: handles are hot where no
    /// water is, and some heat goes with the air.
    pub heat_used: Guess,
    /// Power in W that walls, jacket and warm air bring into the wet load while it dries.
    pub power_w: Guess,
    /// Share of the walls' heat that steam brings, and not the machine's own heater.
    pub walls_by_steam: Guess,
}

impl Unknowns {
    /// Nothing drains, all stored heat serves, no heat comes from outside, steam heats the walls:
    /// the bare sums that can be done on paper.
    pub const BARE: Self = Self {
        heat: Guess::known(1.0),
        drained: Guess::known(0.0),
        heat_used: Guess::known(1.0),
        power_w: Guess::known(0.0),
        walls_by_steam: Guess::known(1.0),
    };

    /// A small machine of which nothing is known (assumptions): heat within ±13 %; a third runs
    /// off, 15 to 58 %; three quarters of the stored heat serve, 59 to 86 %; 25 W come from
    /// outside, 8 to 80 W; steam heats 15 % of the walls' mass, 5 to 37 %. Ranges hold nine of ten.
    pub const TYPICAL: Self = Self {
        heat: Guess::new(1.0, 0.08),
        drained: Guess::new(0.33, 0.62),
        heat_used: Guess::new(0.75, 0.45),
        power_w: Guess::new(25.0, 0.7),
        walls_by_steam: Guess::new(0.15, 0.73),
    };

    /// Power from outside times what `gain` makes of drainage and served heat, less by the factor
    /// on the heat.
    pub(crate) fn powers(
        &self,
        gain: impl Fn(f64, f64) -> f64,
    ) -> Result<Spread, super::NoBalance> {
        if !self.possible() {
            return Err(super::NoBalance::Guess);
        }
        let (heat, power) = (self.heat.factors(), self.power_w.factors());
        let mut values = Vec::new();
        for drained in self.drained.shares() {
            for used in self.heat_used.shares() {
                let gain = gain(drained, used);
                let cases = heat.iter().flat_map(|heat| power.iter().map(move |w| w * gain / heat));
                values.extend(cases);
            }
        }
        Ok(Spread::of(values))
    }

    pub(super) fn possible(&self) -> bool {
        self.heat.is_factor(2.0)
            && self.drained.is_share()
            && self.heat_used.is_share()
            && self.power_w.is_factor(2_000.0)
            && self.walls_by_steam.is_share()
    }
}

impl Spread {
    /// A value that is known.
    #[must_use]
    pub const fn known(value: f64) -> Self {
        Self { low: value, middle: value, high: value }
    }

    /// Of equally likely values; not-a-number where there are none.
    pub(super) fn of(mut values: Vec<f64>) -> Self {
        values.sort_by(f64::total_cmp);
        let at = |twentieths: usize| {
            let place = (values.len() * twentieths / 20).min(values.len().saturating_sub(1));
            values.get(place).copied().unwrap_or(f64::NAN)
        };
        Self { low: at(1), middle: at(10), high: at(19) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The definition of the normal distribution, summed in small steps: each point has the
    /// probability that its name says.
    #[test]
    fn the_points_stand_for_equal_parts() {
        let step = 1e-4;
        let mut reached = 0.0;
        let mut z = -9.0;
        for (part, point) in (0u32..).zip(POINTS) {
            while z < point {
                let middle = z + step / 2.0;
                reached += step * maths::exp(-middle * middle / 2.0);
                z += step;
            }
            let share = reached / (2.0 * std::f64::consts::PI).sqrt();
            let named = (f64::from(part) + 0.5) / 11.0;
            assert!((share - named).abs() < 1e-4, "{point}: {share} is not {named}");
        }
    }

    #[test]
    fn a_share_stays_a_share_and_its_ends_are_known() {
        assert_eq!(Guess::known(0.0).shares(), [0.0]);
        assert_eq!(Guess::known(1.0).shares(), [1.0]);
        for spread in [0.1, 1.0, 3.0] {
            let shares = Guess::new(0.3, spread).shares();
            assert!(shares.iter().all(|share| (0.0..=1.0).contains(share)));
            assert!(shares.windows(2).all(|pair| pair[0] < pair[1]));
            assert!((shares[5] - 0.3).abs() < 1e-12);
        }
    }

    #[test]
    fn a_spread_is_ordered_by_value_not_by_place() {
        let values: Vec<f64> = (0u32..100).map(|n| f64::from((n * 37) % 100)).collect();
        assert_eq!(Spread::of(values), Spread { low: 5.0, middle: 50.0, high: 95.0 });
    }
}
