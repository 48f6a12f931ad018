//! The figures that are watched: where each comes from, which way it must move, and how far it may.

use super::RunFeatures;

/// A figure that is watched.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Figure {
    /// Time to the set point.
    HeatUp,
    /// Time of letting in air.
    AirIn,
    /// Length of the first vacuum pulse.
    FirstPulse,
    /// Depth of the third pulse.
    PulseDepth,
    /// Lowest pressure while drying.
    DryDepth,
    /// Pressure rise of a vacuum hold.
    Leak,
    /// Length of the exhaust.
    Exhaust,
    /// The whole time, less the parts that are known by themselves. Without the preheat time it
    /// would only tell how long the machine had cooled, and is not watched.
    Total,
    /// Lowest temperature of the plateau.
    PlateauLow,
    /// Highest temperature of the plateau.
    PlateauHigh,
    /// Time at temperature.
    PlateauLength,
    /// Deviation from saturation over the plateau.
    Saturation,
}

/// One direction in which a figure is watched.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Side {
    /// +1 for a rise, -1 for a fall.
    pub sign: f64,
    /// A lasting shift of up to this share of the level is no change.
    pub share: f64,
    /// A lasting shift of up to this much, in the figure's unit, is no change either.
    pub least: f64,
}

const fn rise(share: f64, least: f64) -> Side {
    Side { sign: 1.0, share, least }
}

const fn fall(share: f64, least: f64) -> Side {
    Side { sign: -1.0, share, least }
}

impl Figure {
    /// Every figure, upstream before downstream: where several prove a change in the same run,
    /// the first is the one that is called.
    pub const ALL: [Self; 12] = [
        Self::HeatUp,
        Self::AirIn,
        Self::FirstPulse,
        Self::PulseDepth,
        Self::DryDepth,
        Self::Leak,
        Self::Exhaust,
        Self::Total,
        Self::PlateauLow,
        Self::PlateauHigh,
        Self::PlateauLength,
        Self::Saturation,
    ];

    /// The name of its column in a table of features.
    #[must_use]
    pub const fn column(self) -> &'static str {
        match self {
            Self::HeatUp => "heat_up_s",
            Self::AirIn => "air_in_s",
            Self::FirstPulse => "vac1_s",
            Self::PulseDepth => "vac3_kpa",
            Self::DryDepth => "dry_vac_kpa",
            Self::Leak => "leak_kpa_per_min",
            Self::Exhaust => "exhaust_s",
            Self::Total => "total_s",
            Self::PlateauLow => "plateau_t_min_c",
            Self::PlateauHigh => "plateau_t_max_c",
            Self::PlateauLength => "plateau_s",
            Self::Saturation => "satdev_mean_k",
        }
    }

    /// Its place in [`Figure::ALL`].
    pub(super) const fn at(self) -> usize {
        self as usize
    }

    /// The unit in which a change is told, where a share of the level would mean nothing.
    pub(super) const fn absolute_unit(self) -> Option<&'static str> {
        match self {
            Self::PlateauLow | Self::PlateauHigh | Self::Saturation => Some("K"),
            Self::Leak => Some("kPa/min"),
            _ => None,
        }
    }

    /// The least and the greatest value that such a figure can have; anything else was not
    /// measured. The bounds are ours: no small sterilizer runs longer than ten hours, air is at
    /// most 110 kPa, and a chamber at 150 °C is no sterilizer's plateau.
    #[must_use]
    pub const fn plausible(self) -> (f64, f64) {
        match self {
            Self::HeatUp | Self::AirIn | Self::FirstPulse | Self::Exhaust => (0.0, 7200.0),
            Self::Total | Self::PlateauLength => (0.0, 36_000.0),
            Self::PulseDepth | Self::DryDepth => (0.0, 110.0),
            Self::Leak => (-1.0, 100.0),
            Self::PlateauLow | Self::PlateauHigh => (90.0, 150.0),
            Self::Saturation => (-30.0, 30.0),
        }
    }

    /// In which directions it is watched, and with what tolerance.
    ///
    /// Wear makes times longer and vacuum shallower; the other way is an improvement, which is
    /// taken over in silence. Two exceptions: an air inlet that is a fifth faster than ever may be
    /// a torn or missing filter, and a plateau is wrong in either direction. The tolerances are
    /// settings (common practice, no source): 2.5 % of heating time covers a mains supply that
    /// stays about 1 % low in voltage, and half a unit of the usual rounding covers the display.
    pub(super) const fn sides(self) -> &'static [Side] {
        match self {
            Self::HeatUp => const { &[rise(0.025, 0.5)] },
            Self::AirIn => const { &[rise(0.04, 0.5), fall(0.20, 2.0)] },
            Self::FirstPulse => const { &[rise(0.015, 0.5)] },
            Self::PulseDepth => const { &[rise(0.03, 0.4)] },
            Self::DryDepth => const { &[rise(0.03, 0.3)] },
            Self::Leak => const { &[rise(0.0, 0.04)] },
            Self::Exhaust => const { &[rise(0.06, 0.5)] },
            Self::Total => const { &[rise(0.004, 1.0)] },
            Self::PlateauLow | Self::PlateauHigh => const { &[rise(0.0, 0.3), fall(0.0, 0.3)] },
            Self::PlateauLength => const { &[rise(0.03, 2.0), fall(0.03, 2.0)] },
            Self::Saturation => const { &[rise(0.0, 0.3), fall(0.0, 0.3)] },
        }
    }

    /// Least spread, in the figure's unit: under a third of the usual rounding step nothing is
    /// known, whatever a row of equal numbers may pretend.
    pub(super) const fn least_spread(self) -> f64 {
        match self {
            Self::PlateauLow | Self::PlateauHigh => 0.03,
            Self::Saturation | Self::Leak => 0.01,
            _ => 0.3,
        }
    }

    /// Figures that tell how heavy and wet the load was, and so explain a part of this one.
    pub(super) const fn companions(self) -> &'static [Self] {
        match self {
            Self::HeatUp => &[Self::DryDepth, Self::AirIn, Self::Total],
            // Not the air inlet, which starts from this very pressure.
            Self::DryDepth => &[Self::HeatUp],
            Self::AirIn | Self::Exhaust => &[Self::HeatUp, Self::DryDepth],
            Self::Total => &[Self::HeatUp, Self::DryDepth, Self::AirIn],
            _ => &[],
        }
    }

    /// Its value in this run, where there is a plausible one.
    /// `parts` are taken out of the total.
    pub(super) fn value(self, run: &RunFeatures, parts: &[Self]) -> Option<f64> {
        let value = match self {
            Self::HeatUp => run.heat_up_s,
            Self::AirIn => run.air_in_s,
            Self::FirstPulse => run.vac1_s,
            Self::PulseDepth => run.vac3_kpa,
            Self::DryDepth => run.dry_vac_kpa,
            Self::Leak => run.leak_kpa_per_min,
            Self::Exhaust => run.exhaust_s,
            Self::Total => return rest_of_total(run, parts),
            Self::PlateauLow => run.plateau_t_min_c,
            Self::PlateauHigh => run.plateau_t_max_c,
            Self::PlateauLength => run.plateau_s,
            Self::Saturation => run.satdev_mean_k,
        };
        self.checked(value)
    }

    fn checked(self, value: Option<f64>) -> Option<f64> {
        let (low, high) = self.plausible();
        value.filter(|value| (low..=high).contains(value))
    }
}

/// The figures whose own time is taken out of the total.
pub(super) const PARTS_OF_TOTAL: [Figure; 5] =
    [Figure::HeatUp, Figure::PlateauLength, Figure::AirIn, Figure::FirstPulse, Figure::Exhaust];

fn rest_of_total(run: &RunFeatures, parts: &[Figure]) -> Option<f64> {
    let total = Figure::Total.checked(run.total_s)?;
    let preheat = Figure::Total.checked(run.preheat_s)?;
    let known: Option<f64> = parts.iter().map(|part| part.value(run, &[])).sum();
    Some(total - preheat - known?).filter(|rest| *rest >= 0.0)
}
