//! The room inside a machine: chamber, trays, a rack, and the pattern in which pouches lie there.
//!
//! Sizes are inside measures in whole millimetres, as a ruler gives them. The pattern is a setting
//! of the machine: published guidance differs (flat with film up, flat with paper up, on edge in a
//! rack, overlapped), so the machine's own manual decides, and its page stands beside the setting.

use crate::stored_word::stored_words;

/// The chamber, by inside measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Chamber {
    /// A drum lying on its side.
    Round {
        /// Across, mm.
        diameter_mm: u32,
        /// From door to back, mm.
        depth_mm: u32,
    },
    /// A box.
    Box {
        /// Across, mm.
        width_mm: u32,
        /// High, mm.
        height_mm: u32,
        /// From door to back, mm.
        depth_mm: u32,
    },
}

/// A tray, by inside measure. Seen from above with the door below: `width_mm` goes across,
/// `depth_mm` from door to back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Tray {
    /// Across, mm.
    pub width_mm: u32,
    /// From door to back, mm.
    pub depth_mm: u32,
    /// Free height above it, mm.
    pub height_mm: u32,
    /// The empty tray, grams.
    pub mass_g: u32,
}

/// A rack in which pouches stand on their long edge, side by side across the tray.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Rack {
    /// Places side by side.
    pub places: u32,
    /// From the middle of one place to the next, mm.
    pub pitch_mm: u32,
    /// How high a pouch may stand in it, mm.
    pub height_mm: u32,
    /// From door to back, mm.
    pub depth_mm: u32,
    /// The empty rack, grams.
    pub mass_g: u32,
}

/// How pouches lie or stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Pattern {
    /// Flat, one layer, nothing on another.
    Flat,
    /// On edge, a place each in a rack.
    OnEdge,
    /// In rows, each over the next by about 2.5 cm, paper to paper and film to film
    /// (common practice, no source).
    Overlapped,
}

/// Which side of a pouch is up, or towards the right in a rack.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Face {
    /// The paper side.
    Paper,
    /// The film side.
    Film,
}

stored_words!(Pattern, 3, {
    Flat => "flat",
    OnEdge => "on edge",
    Overlapped => "overlapped",
});

stored_words!(Face, 2, {
    Paper => "paper",
    Film => "film",
});

/// All that is known of the room inside one machine.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Inside {
    /// The chamber.
    pub chamber: Chamber,
    /// The trays that go in together, from the top.
    pub trays: Vec<Tray>,
    /// The rack, where there is one; it replaces the trays for [`Pattern::OnEdge`].
    pub rack: Option<Rack>,
    /// How pouches lie.
    pub pattern: Pattern,
    /// Which side is up where they lie flat. Overlapped ones alternate.
    pub face: Face,
    /// Left free between a pouch and the tray's edge, mm.
    pub wall_mm: u32,
    /// Left free between two pouches, mm.
    pub between_mm: u32,
    /// Page of the machine's manual that says so.
    pub manual_page: Option<u32>,
}

/// Overlap of [`Pattern::Overlapped`], mm (common practice, no source).
pub const OVERLAP_MM: u32 = 25;

/// A tray is made of metal about so thick, which stands in the chamber too, mm (assumption).
pub const TRAY_METAL_MM: u32 = 2;

/// A room that cannot be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoRoom {
    /// A measure is nothing, or more than two metres.
    Measure,
    /// No tray, or more than twelve.
    Trays,
    /// [`Pattern::OnEdge`] without a rack.
    NoRack,
    /// A tray, all trays one above the other, or the rack do not go into the chamber.
    DoesNotGoIn,
}

impl std::fmt::Display for NoRoom {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Measure => {
                "a measure is nothing or more than two metres: measure it inside, in millimetres"
            }
            Self::Trays => "a machine has one to twelve trays",
            Self::NoRack => {
                "on edge needs a rack: say how many places it has, or choose another pattern"
            }
            Self::DoesNotGoIn => {
                "these trays, one above the other, do not go into this chamber: measure both inside, in millimetres"
            }
        })
    }
}

impl std::error::Error for NoRoom {}

impl Chamber {
    /// Volume in cubic millimetres.
    #[must_use]
    pub fn volume_mm3(&self) -> f64 {
        match *self {
            Self::Round { diameter_mm, depth_mm } => {
                let radius = f64::from(diameter_mm) / 2.0;
                std::f64::consts::PI * radius * radius * f64::from(depth_mm)
            }
            Self::Box { width_mm, height_mm, depth_mm } => {
                f64::from(width_mm) * f64::from(height_mm) * f64::from(depth_mm)
            }
        }
    }

    /// Inside wall, both ends included, square millimetres.
    #[must_use]
    pub fn wall_mm2(&self) -> f64 {
        match *self {
            Self::Round { diameter_mm, depth_mm } => {
                let d = f64::from(diameter_mm);
                std::f64::consts::PI * d * (f64::from(depth_mm) + d / 2.0)
            }
            Self::Box { width_mm, height_mm, depth_mm } => {
                let [w, h, d] = [width_mm, height_mm, depth_mm].map(f64::from);
                2.0 * (w * h + w * d + h * d)
            }
        }
    }

    /// Does a body of this width, height and depth go in, somewhere?
    #[must_use]
    pub const fn takes(&self, width_mm: u32, height_mm: u32, depth_mm: u32) -> bool {
        match *self {
            Self::Round { diameter_mm, depth_mm: depth } => {
                let across =
                    width_mm as u64 * width_mm as u64 + height_mm as u64 * height_mm as u64;
                across <= diameter_mm as u64 * diameter_mm as u64 && depth_mm <= depth
            }
            Self::Box { width_mm: w, height_mm: h, depth_mm: d } => {
                width_mm <= w && height_mm <= h && depth_mm <= d
            }
        }
    }
}

impl Inside {
    /// Can it be? Every measure positive and at most two metres, one to twelve trays that go into
    /// the chamber, a rack where the pattern needs one. Where pouches lie on the trays, all of them
    /// must go in together: their heights and [`TRAY_METAL_MM`] for each, as wide as the widest.
    ///
    /// # Errors
    /// The first [`NoRoom`] that is found.
    pub fn check(&self) -> Result<(), NoRoom> {
        let of_chamber = match self.chamber {
            Chamber::Round { diameter_mm, depth_mm } => vec![diameter_mm, depth_mm],
            Chamber::Box { width_mm, height_mm, depth_mm } => vec![width_mm, height_mm, depth_mm],
        };
        let of_trays = self.trays.iter().flat_map(|t| [t.width_mm, t.depth_mm, t.height_mm]);
        let of_rack = self.rack.iter().flat_map(|r| [r.pitch_mm, r.height_mm, r.depth_mm]);
        let measures: Vec<u32> = of_chamber.into_iter().chain(of_trays).chain(of_rack).collect();
        if measures.iter().any(|&mm| mm == 0 || mm > 2_000)
            || self.wall_mm > 2_000
            || self.between_mm > 2_000
        {
            return Err(NoRoom::Measure);
        }
        if self.trays.is_empty() || self.trays.len() > 12 {
            return Err(NoRoom::Trays);
        }
        if self.pattern == Pattern::OnEdge && self.rack.is_none() {
            return Err(NoRoom::NoRack);
        }
        let tray = |t: &Tray| self.chamber.takes(t.width_mm, t.height_mm, t.depth_mm);
        let rack = |r: &Rack| {
            r.places > 0
                && r.places <= 200
                && self.chamber.takes(r.places * r.pitch_mm, r.height_mm, r.depth_mm)
        };
        if !self.trays.iter().all(tray) || !self.rack.iter().all(rack) {
            return Err(NoRoom::DoesNotGoIn);
        }
        if self.pattern != Pattern::OnEdge && !self.stack_goes_in() {
            return Err(NoRoom::DoesNotGoIn);
        }
        Ok(())
    }

    /// Do all trays go in, one above the other?
    fn stack_goes_in(&self) -> bool {
        let most = |of: fn(&Tray) -> u32| self.trays.iter().map(of).max().unwrap_or(0);
        let high = self.trays.iter().map(|tray| tray.height_mm + TRAY_METAL_MM).sum();
        self.chamber.takes(most(|tray| tray.width_mm), high, most(|tray| tray.depth_mm))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn room(chamber: Chamber, tray: (u32, u32, u32), count: usize) -> Inside {
        let (width_mm, depth_mm, height_mm) = tray;
        let rack = Rack { places: 10, pitch_mm: 20, height_mm: 140, depth_mm: 280, mass_g: 400 };
        Inside {
            chamber,
            trays: vec![Tray { width_mm, depth_mm, height_mm, mass_g: 300 }; count],
            rack: Some(rack),
            pattern: Pattern::Flat,
            face: Face::Film,
            wall_mm: 5,
            between_mm: 5,
            manual_page: None,
        }
    }

    /// By hand: four trays of 35 and 2 mm are 148 mm high; with 200 mm across that is a diagonal of
    /// 248.8 mm. Five are 185 mm, and 272 mm.
    #[test]
    fn trays_that_stand_higher_than_the_chamber_do_not_go_in() {
        let drum = Chamber::Round { diameter_mm: 250, depth_mm: 350 };
        let cube = Chamber::Box { width_mm: 240, height_mm: 180, depth_mm: 350 };
        let check = |chamber, tray, count, expected| {
            let room = room(chamber, tray, count);
            assert_eq!(room.check(), expected, "{room:?}");
            let over = Inside { pattern: Pattern::Overlapped, ..room.clone() };
            assert_eq!(over.check(), expected, "{over:?}");
            // The rack replaces the trays.
            if room.chamber == drum {
                let rack = Inside { pattern: Pattern::OnEdge, ..room };
                assert_eq!(rack.check(), Ok(()), "{rack:?}");
            }
        };
        let no = Err(NoRoom::DoesNotGoIn);
        check(drum, (200, 320, 35), 4, Ok(()));
        check(drum, (200, 320, 35), 5, no);
        check(drum, (200, 320, 20), 12, no);
        check(drum, (205, 320, 45), 1, Ok(()));
        check(cube, (230, 330, 50), 3, Ok(()));
        // 4 times 43 and 2 are exactly 180.
        check(cube, (230, 330, 43), 4, Ok(()));
        check(cube, (230, 330, 44), 4, no);
    }

    /// The wide tray of two decides, wherever it lies.
    #[test]
    fn the_widest_tray_is_taken_for_all() {
        let drum = Chamber::Round { diameter_mm: 250, depth_mm: 350 };
        let mut two = room(drum, (100, 320, 80), 2);
        assert_eq!(two.check(), Ok(()));
        two.trays[1].width_mm = 200;
        assert_eq!(two.check(), Err(NoRoom::DoesNotGoIn));
    }
}
