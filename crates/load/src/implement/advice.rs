//! What must be watched with an implement, and which implements cannot be.

use super::{Implement, Material, Metal, Stands};
use std::fmt;

/// So much hotter than set may steam get in a small machine, K (from memory: the band of small
/// machines is 4 K, that of large ones 3 K).
pub const STEAM_BAND_K: u32 = 4;

/// Hottest that steam in a small machine gets, °C: 134 and the band above it.
pub const HOTTEST_STEAM_C: u32 = 134 + STEAM_BAND_K;

/// Does what stands `most_c` stand a cycle that is set to `set_c`, both in °C? Only where it stands
/// the whole band above it; what is not a temperature is stood by nothing.
///
/// ```
/// use load::implement::{Material, stands_cycle};
/// let most_c = Material::Polypropylene.most_c();
/// assert!(stands_cycle(most_c, 121.0) && !stands_cycle(most_c, 134.0));
/// ```
#[must_use]
pub fn stands_cycle(most_c: u32, set_c: f64) -> bool {
    set_c >= 0.0 && set_c + f64::from(STEAM_BAND_K) <= f64::from(most_c)
}

/// What must be watched with an implement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Caution {
    /// To the waste after one client; never washed, bagged or put into steam.
    SingleUse,
    /// Never into steam.
    NeverSteam,
    /// Into steam only where its maker says so.
    AskMakerSteam,
    /// Never into the ultrasonic bath.
    NeverUltrasonic,
    /// Into the ultrasonic bath only where its maker says so.
    AskMakerUltrasonic,
    /// Plain carbon steel: rusts in steam.
    RustsInSteam,
    /// Stands no more than so many °C, which is less than steam of 134 °C may reach.
    HeatBelow(u32),
    /// Lies with this metal only, or with what has none.
    Apart(Metal),
    /// Has a hinge, which lies open.
    OpenHinge,
    /// Has a bore or a cavity: asks for a machine that draws the air out first.
    HollowNeedsVacuum,
}

/// An implement that cannot be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoImplement {
    /// A measure is nothing or more than two metres.
    Measure,
    /// It weighs nothing, or more than 20 kg.
    Mass,
    /// It stands less than 40 °C or more than 300 °C.
    Heat,
}

impl fmt::Display for NoImplement {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Measure => {
                "a measure is nothing or more than two metres: measure it as it lies in the pouch, \
                 in millimetres; nothing was changed"
            }
            Self::Mass => {
                "an implement weighs a tenth of a gram to 20 kg: weigh it, or keep the typical \
                 figure; nothing was changed"
            }
            Self::Heat => {
                "the highest temperature is 40 to 300 °C: its maker says which; nothing was changed"
            }
        })
    }
}

impl std::error::Error for NoImplement {}

impl Implement {
    /// Can it be? Length, width and thickness 1 to 2000 mm, 0.1 g to 20 kg, heat 40 to 300 °C.
    ///
    /// # Errors
    /// The first [`NoImplement`] that is found.
    pub fn check(&self) -> Result<(), NoImplement> {
        let measures = [self.length_mm, self.width_mm, self.thick_mm];
        if !measures.iter().all(|mm| (1..=2_000).contains(mm)) {
            return Err(NoImplement::Measure);
        }
        if !(1..=200_000).contains(&self.mass_dg) {
            return Err(NoImplement::Mass);
        }
        if !(40..=300).contains(&self.most_c) {
            return Err(NoImplement::Heat);
        }
        Ok(())
    }

    /// What must be watched with it, the gravest first. What is used once has that caution only.
    #[must_use]
    pub fn cautions(&self) -> Vec<Caution> {
        if self.single_use {
            return vec![Caution::SingleUse];
        }
        let mut cautions = Vec::new();
        match self.steam {
            Stands::Yes => {}
            Stands::AskMaker => cautions.push(Caution::AskMakerSteam),
            Stands::Never => cautions.push(Caution::NeverSteam),
        }
        match self.ultrasonic {
            Stands::Yes => {}
            Stands::AskMaker => cautions.push(Caution::AskMakerUltrasonic),
            Stands::Never => cautions.push(Caution::NeverUltrasonic),
        }
        if self.material == Material::Carbon {
            cautions.push(Caution::RustsInSteam);
        }
        if !stands_cycle(self.most_c, f64::from(HOTTEST_STEAM_C - STEAM_BAND_K)) {
            cautions.push(Caution::HeatBelow(self.most_c));
        }
        // Nearly everything is stainless; what is not has to be told.
        cautions.extend(
            self.material.metal().filter(|metal| *metal != Metal::Stainless).map(Caution::Apart),
        );
        if self.hinged {
            cautions.push(Caution::OpenHinge);
        }
        if self.hollow {
            cautions.push(Caution::HollowNeedsVacuum);
        }
        cautions
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::implement::Form;

    fn bit() -> Implement {
        Implement {
            word: "bit".parse().unwrap(),
            form: Form::Bit,
            length_mm: 46,
            width_mm: 6,
            thick_mm: 6,
            mass_dg: 60,
            material: Material::Carbide,
            hinged: false,
            hollow: false,
            single_use: false,
            steam: Stands::Yes,
            ultrasonic: Stands::Yes,
            most_c: 300,
        }
    }

    #[test]
    fn bounds_are_kept_to_the_last_unit() {
        let check = |change: &dyn Fn(&mut Implement), expected| {
            let mut changed = bit();
            change(&mut changed);
            assert_eq!(changed.check(), expected, "{changed:?}");
        };
        check(&|_| {}, Ok(()));
        check(&|i| i.length_mm = 2_000, Ok(()));
        check(&|i| i.length_mm = 2_001, Err(NoImplement::Measure));
        check(&|i| i.width_mm = 0, Err(NoImplement::Measure));
        check(&|i| i.thick_mm = u32::MAX, Err(NoImplement::Measure));
        check(&|i| i.mass_dg = 200_000, Ok(()));
        check(&|i| i.mass_dg = 0, Err(NoImplement::Mass));
        check(&|i| i.mass_dg = 200_001, Err(NoImplement::Mass));
        check(&|i| i.most_c = 40, Ok(()));
        check(&|i| i.most_c = 39, Err(NoImplement::Heat));
        check(&|i| i.most_c = 301, Err(NoImplement::Heat));
    }

    #[test]
    fn cautions_follow_from_what_is_known() {
        let check = |change: &dyn Fn(&mut Implement), expected: &[Caution]| {
            let mut changed = bit();
            change(&mut changed);
            assert_eq!(changed.cautions(), expected, "{changed:?}");
        };
        check(&|_| {}, &[Caution::Apart(Metal::Carbide)]);
        check(&|i| i.most_c = 138, &[Caution::Apart(Metal::Carbide)]);
        check(&|i| i.most_c = 137, &[Caution::HeatBelow(137), Caution::Apart(Metal::Carbide)]);
        check(
            &|i| {
                (i.material, i.hinged, i.most_c) = (Material::Carbon, true, 134);
                (i.steam, i.ultrasonic) = (Stands::AskMaker, Stands::Never);
            },
            &[
                Caution::AskMakerSteam,
                Caution::NeverUltrasonic,
                Caution::RustsInSteam,
                Caution::HeatBelow(134),
                Caution::Apart(Metal::Carbon),
                Caution::OpenHinge,
            ],
        );
        check(
            &|i| (i.material, i.hollow, i.steam) = (Material::Steel420, true, Stands::Never),
            &[Caution::NeverSteam, Caution::HollowNeedsVacuum],
        );
        check(&|i| (i.single_use, i.hinged) = (true, true), &[Caution::SingleUse]);
    }
}
