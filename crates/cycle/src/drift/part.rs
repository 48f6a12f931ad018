//! The parts that a change can point to, and what each of them can touch.

use super::figure::Figure;
use measure::maths;

/// A part of the machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// Heating element, and what keeps its heat from the water: scale, a weak connection.
    Heater,
    /// Door seal, and other ways for air into the chamber.
    Seal,
    /// Vacuum pump, and its condenser.
    Pump,
    /// Air inlet filter.
    Filter,
    /// Drain, exhaust valve and strainer.
    Drain,
    /// Something changed; from these figures nobody can tell where.
    Unclear,
}

impl Part {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Heater => "heater",
            Self::Seal => "seal",
            Self::Pump => "pump",
            Self::Filter => "filter",
            Self::Drain => "drain",
            Self::Unclear => "unclear",
        }
    }

    /// Figures that a change of this part can move, and which are therefore not called again
    /// while it lasts. Worked out from what the part does, checked with the model that made the
    /// drift series: a weak heater also slows the steam pulses and lowers the plateau; pump and
    /// seal both touch every vacuum and all pulse times, and air that stays slows the heat-up.
    pub(super) fn touches(self) -> &'static [Figure] {
        use Figure::*;
        match self {
            Self::Heater => {
                &[HeatUp, Total, Exhaust, PlateauLow, PlateauHigh, Saturation, PlateauLength]
            }
            Self::Filter => &[AirIn, Total],
            Self::Pump | Self::Seal => &[
                FirstPulse,
                PulseDepth,
                DryDepth,
                Leak,
                Total,
                HeatUp,
                AirIn,
                Saturation,
                PlateauLow,
                PlateauHigh,
            ],
            Self::Drain => &[Total, Exhaust],
            Self::Unclear => &[Total, PlateauLow, PlateauHigh, PlateauLength, Saturation],
        }
    }
}

/// What one figure says about the runs since a change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Clue {
    pub figure: Figure,
    /// Its own evidence for a shift.
    pub evidence: f64,
    /// Its mean shift as a share of its level, and the doubt of that.
    pub share: f64,
    pub doubt: f64,
}

/// Evidence from which a companion's own shift explains a change better than the figure that
/// alarmed: an upstream cause shows there first or at the same time.
const EXPLAINS: f64 = 4.0;

/// How a fading pump and a leaking seal show in two of the vacuum figures, as shares of their
/// level.
///
/// Worked out from the gas balance `V dp/dt = -S (p - p_end) + leak`: a pump that is slower by x
/// lengthens every pull-down by x and raises only that share of the drying pressure which lies
/// above the pump's end pressure; a leak adds one constant to the drying pressure, and lengthens a
/// pull-down that stops well above that pressure by about a third as much. The depth of a pulse
/// says nothing here: the machine ends a pulse at that depth, however long it takes.
const VACUUM: [(Figure, f64, f64); 2] =
    [(Figure::FirstPulse, 1.0, 0.35), (Figure::DryDepth, 0.7, 1.0)];
/// The patterns are good to this share of the shift.
const PATTERN_DOUBT: f64 = 0.15;

/// How sure a part is that alone is known to move a figure so (common practice, no source).
const USUAL: f64 = 0.9;
/// How sure a part is that is merely the likeliest (common practice, no source).
const LIKELIEST: f64 = 0.6;

/// The part that is named.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Named {
    pub part: Part,
    /// How sure the part is, 0 to 1.
    pub share: f64,
    /// Two parts fit about equally well, and a few more runs are likely to tell them apart.
    pub undecided: bool,
}

const fn named(part: Part, share: f64) -> Named {
    Named { part, share, undecided: false }
}

/// Below this share the pump and the seal are told apart by waiting.
const DECIDED: f64 = 0.85;

impl Part {
    /// The part to which a change of `figure` points, and how sure that is.
    pub(super) fn of(figure: Figure, sign: f64, clues: &[Clue]) -> Named {
        let known = |figure: Figure| clues.iter().any(|clue| clue.figure == figure);
        let shows = |figure: Figure| {
            let mut clues = clues.iter();
            clues.any(|clue| clue.figure == figure && clue.evidence >= EXPLAINS)
        };
        let vacuum = [Figure::FirstPulse, Figure::PulseDepth, Figure::DryDepth, Figure::Leak];
        if vacuum.contains(&figure) || (figure != Figure::AirIn && vacuum.into_iter().any(shows)) {
            return pump_or_seal(clues);
        }
        match figure {
            Figure::AirIn if sign > 0.0 => named(Self::Filter, USUAL),
            Figure::AirIn => named(Self::Filter, LIKELIEST),
            Figure::HeatUp => named(Self::Heater, USUAL),
            Figure::Exhaust => named(Self::Drain, USUAL),
            // A weak heater slows the pulses and lowers the plateau as well.
            _ if shows(Figure::HeatUp) => named(Self::Heater, LIKELIEST),
            Figure::Total => {
                let others = [Figure::HeatUp, Figure::AirIn, Figure::FirstPulse];
                match others.into_iter().all(known) {
                    true => named(Self::Drain, LIKELIEST),
                    false => named(Self::Unclear, 0.0),
                }
            }
            _ => named(Self::Unclear, 0.0),
        }
    }
}

/// Pump or seal, by which of the two patterns fits the vacuum figures better.
///
/// With the depth alone the two look the same; the seal is named then, because it is the cheaper
/// to look at and a leak test tells them apart. With the time alone it is the pump.
fn pump_or_seal(clues: &[Clue]) -> Named {
    let of = |figure: Figure| clues.iter().find(|clue| clue.figure == figure);
    if of(Figure::Leak).is_some_and(|clue| clue.evidence >= EXPLAINS) {
        return named(Part::Seal, USUAL);
    }
    match (of(Figure::FirstPulse), of(Figure::DryDepth)) {
        (Some(_), None) => return named(Part::Pump, LIKELIEST),
        (None, _) => return named(Part::Seal, LIKELIEST),
        _ => {}
    }
    let seen: Vec<(f64, f64, f64)> = VACUUM
        .iter()
        .filter_map(|(figure, pump, seal)| {
            let clue = of(*figure)?;
            let rough = PATTERN_DOUBT * clue.share;
            let doubt = (clue.doubt * clue.doubt + rough * rough).sqrt();
            Some((clue.share / doubt, pump / doubt, seal / doubt))
        })
        .collect();
    let misfit = |pattern: fn(&(f64, f64, f64)) -> f64| {
        let along: f64 = seen.iter().map(|clue| clue.0 * pattern(clue)).sum();
        let length: f64 = seen.iter().map(|clue| pattern(clue) * pattern(clue)).sum();
        let size = (along / length).max(0.0);
        let off = |clue: &(f64, f64, f64)| clue.0 - size * pattern(clue);
        seen.iter().map(|clue| off(clue) * off(clue)).sum::<f64>()
    };
    let ahead = (misfit(|clue| clue.1) - misfit(|clue| clue.2)) / 2.0;
    let seal = 1.0 / (1.0 + maths::exp(-ahead.clamp(-30.0, 30.0)));
    let (part, share) = match seal >= 0.5 {
        true => (Part::Seal, seal),
        false => (Part::Pump, 1.0 - seal),
    };
    Named { part, share: share.min(USUAL), undecided: share < DECIDED }
}
