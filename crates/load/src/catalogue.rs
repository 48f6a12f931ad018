//! Typical implements, sets, pouches and a typical room, until the salon says its own.
//!
//! No entry is a product. Which implements a set has, and what may be done to them, is common
//! practice with no source; measures and masses are assumptions, near enough for a first picture.
//! One full tray on a kitchen scale is better.
//!
//! ```
//! use load::catalogue::{implements, pouch_sizes, set_of};
//! let set = set_of(&"manicure".parse()?);
//! let mass_dg: u32 = set
//!     .iter()
//!     .flat_map(|(word, count)| implements().into_iter().find(|i| i.word == *word).map(|i| i.mass_dg * count))
//!     .sum();
//! assert!((1_200..1_800).contains(&mass_dg));
//! assert_eq!(pouch_sizes().len(), 5);
//! # Ok::<(), load::NoPlainWord>(())
//! ```

use crate::chamber::{Chamber, Face, Inside, Pattern, Tray};
use crate::implement::{Form, Implement, Material, Stands};
use crate::plain_word::{ImplementWord, SetKind};
use crate::pouch::PouchSize;

/// Hinged, hollow, used once.
#[derive(Clone, Copy, PartialEq)]
enum Is {
    Plain,
    Hinged,
    Hollow,
    Once,
}

/// Word; form; length, width, thickness in mm and mass in tenths of a gram; material; what it is;
/// steam and ultrasonic.
type Row = (&'static str, Form, [u32; 4], Material, Is, (Stands, Stands));

const BOTH: (Stands, Stands) = (Stands::Yes, Stands::Yes);
const ASK: (Stands, Stands) = (Stands::AskMaker, Stands::AskMaker);
const NEVER: (Stands, Stands) = (Stands::Never, Stands::Never);

/// Common practice, no source: which of them are used once, which want the maker's word (glass,
/// plastic or rubber handles, glued or plated bits), and that a handpiece goes into neither.
const ROWS: [Row; 26] = {
    use Form::{Bit, Block, Clippers, File, Holder, Nippers, Scissors, Stick, Tweezers};
    use Is::{Hinged, Hollow, Once, Plain};
    use Material::{
        Carbide, Ceramic, Diamond, Fibre, Glass, Plated, Polypropylene, Steel304, Steel420,
    };
    [
        ("cuticle nipper", Nippers, [105, 62, 12, 700], Steel420, Hinged, BOTH),
        ("toenail nipper", Nippers, [140, 75, 16, 1_400], Steel420, Hinged, BOTH),
        ("nail clipper", Clippers, [60, 15, 16, 300], Steel420, Hinged, BOTH),
        ("toenail clipper", Clippers, [82, 20, 20, 600], Steel420, Hinged, BOTH),
        ("plated clipper", Clippers, [60, 15, 16, 300], Plated, Hinged, ASK),
        ("cuticle scissors", Scissors, [92, 55, 6, 250], Steel420, Hinged, BOTH),
        ("tweezers", Tweezers, [95, 14, 12, 180], Steel420, Plain, BOTH),
        ("pusher", Stick, [130, 8, 8, 300], Steel304, Plain, BOTH),
        ("rubber handle pusher", Stick, [135, 12, 12, 250], Steel304, Plain, ASK),
        ("curette", Stick, [140, 7, 7, 200], Steel304, Plain, BOTH),
        ("nail rasp", File, [150, 10, 3, 250], Steel420, Plain, BOTH),
        ("foot file handle", File, [190, 42, 14, 700], Steel304, Plain, BOTH),
        ("carbide bit", Bit, [46, 6, 6, 60], Carbide, Plain, BOTH),
        ("diamond bit", Bit, [46, 5, 5, 25], Diamond, Plain, ASK),
        ("ceramic bit", Bit, [46, 6, 6, 30], Ceramic, Plain, BOTH),
        ("mandrel", Bit, [44, 7, 7, 35], Steel304, Plain, BOTH),
        ("bit holder", Holder, [70, 40, 18, 400], Steel304, Plain, BOTH),
        ("handpiece", Stick, [150, 28, 28, 1_600], Steel304, Hollow, NEVER),
        ("glass file", File, [140, 12, 3, 150], Glass, Plain, ASK),
        ("plastic brush", Stick, [120, 15, 20, 150], Polypropylene, Plain, ASK),
        ("sanding band", Block, [13, 7, 7, 5], Fibre, Once, NEVER),
        ("wood stick", Stick, [115, 4, 4, 15], Fibre, Once, NEVER),
        ("toe foam", Block, [90, 45, 15, 40], Fibre, Once, NEVER),
        ("paper file", File, [178, 20, 4, 80], Fibre, Once, NEVER),
        ("buffer", Block, [95, 25, 25, 120], Fibre, Once, NEVER),
        ("foot file pad", Block, [110, 40, 2, 50], Fibre, Once, NEVER),
    ]
};

/// Typical implements, each word once. (Common practice and assumptions, see above.)
#[must_use]
pub fn implements() -> Vec<Implement> {
    let implement = |&(word, form, measures, material, is, (steam, ultrasonic)): &Row| {
        let [length_mm, width_mm, thick_mm, mass_dg] = measures;
        Some(Implement {
            word: word.parse().ok()?,
            form,
            length_mm,
            width_mm,
            thick_mm,
            mass_dg,
            material,
            hinged: is == Is::Hinged,
            hollow: is == Is::Hollow,
            single_use: is == Is::Once,
            steam,
            ultrasonic,
            most_c: material.most_c(),
        })
    };
    ROWS.iter().filter_map(implement).collect()
}

/// What a typical set of this kind is made of: how many of which implement. Known are `manicure`,
/// `pedicure`, `bits` and `nipper`; nobody knows what is in any other, and the list is empty.
#[must_use]
pub fn set_of(kind: &SetKind) -> Vec<(ImplementWord, u32)> {
    let pieces: &[(&str, u32)] = match kind.word() {
        "pedicure" => &[
            ("toenail nipper", 1),
            ("cuticle nipper", 1),
            ("toenail clipper", 1),
            ("pusher", 1),
            ("curette", 1),
        ],
        // Diamond bits want a pouch of their own, so a typical set has none.
        "bits" => &[("bit holder", 1), ("carbide bit", 5), ("ceramic bit", 2)],
        "nipper" => &[("cuticle nipper", 1)],
        // Four pieces lie in the middle pouch; scissors and tweezers would ask for the large one.
        "manicure" => &[("cuticle nipper", 1), ("nail clipper", 1), ("pusher", 1), ("curette", 1)],
        _ => &[],
    };
    pieces.iter().filter_map(|(word, count)| Some((word.parse().ok()?, *count))).collect()
}

/// Paper and film together, grams per square metre, one lying on the other (assumption).
const PAPER_AND_FILM: u32 = 120;
/// Width of a seam (assumption).
const SEAM_MM: u32 = 6;
/// Kept free below the fold (assumption).
const FOLD_MM: u32 = 15;
/// What is folded over, which weighs with the rest (assumption).
const FLAP_MM: u32 = 30;

/// Five common sizes of self-seal pouches. (Measures from memory; seam, fold and mass are
/// assumptions.)
#[must_use]
pub fn pouch_sizes() -> Vec<PouchSize> {
    let sizes = [
        ("tiny", 60, 100),
        ("small", 90, 165),
        ("middle", 90, 230),
        ("large", 135, 260),
        ("huge", 190, 330),
    ];
    let size = |(word, width_mm, length_mm): (&str, u32, u32)| {
        // Tenths of a gram: 1 g/m² is a hundred-thousandth of a tenth of a gram on 1 mm².
        let mass = width_mm * (length_mm + FLAP_MM) * PAPER_AND_FILM;
        Some(PouchSize {
            word: word.parse().ok()?,
            width_mm,
            length_mm,
            seam_mm: SEAM_MM,
            fold_mm: FOLD_MM,
            mass_dg: mass.div_ceil(100_000),
        })
    };
    sizes.into_iter().filter_map(size).collect()
}

/// The room of a typical small machine: a drum 250 mm across and 350 mm deep, four trays one above
/// the other, pouches flat in one layer with the paper down: eight sets in middle pouches, which is
/// about what a long cycle of a small machine takes (common practice, no source). The measures are
/// assumptions; no manual says them, so there is no page.
#[must_use]
pub fn inside() -> Inside {
    // Four times 37 mm with the trays themselves, 200 mm wide, stand in a circle of 250 mm.
    let tray = Tray { width_mm: 200, depth_mm: 320, height_mm: 35, mass_g: 280 };
    Inside {
        chamber: Chamber::Round { diameter_mm: 250, depth_mm: 350 },
        trays: vec![tray; 4],
        rack: None,
        pattern: Pattern::Flat,
        face: Face::Film,
        wall_mm: 5,
        between_mm: 5,
        manual_page: None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_typical_entry_is_one_that_can_be() {
        let all = implements();
        assert_eq!(all.len(), ROWS.len(), "a word that is none");
        let words: BTreeSet<_> = all.iter().map(|i| i.word.clone()).collect();
        assert_eq!(words.len(), all.len());
        for implement in &all {
            assert_eq!(implement.check(), Ok(()), "{implement:?}");
            assert!(implement.outline().is_ok());
            assert!(implement.most_c <= implement.material.most_c());
            // What is used once never comes back.
            assert!(!implement.single_use || implement.steam == Stands::Never);
        }
        assert_eq!(pouch_sizes().len(), 5);
    }

    /// Common practice, no source: what goes to the waste, what wants its maker's word.
    #[test]
    fn what_must_not_be_done_is_marked() {
        let all = implements();
        let check = |word: &str, single_use, steam| {
            let found = all.iter().find(|i| i.word.word() == word).unwrap();
            assert_eq!(
                (found.single_use, found.steam, found.ultrasonic),
                (single_use, steam, steam)
            );
        };
        for word in ["sanding band", "wood stick", "toe foam", "paper file", "buffer"] {
            check(word, true, Stands::Never);
        }
        check("handpiece", false, Stands::Never);
        for word in ["glass file", "rubber handle pusher", "diamond bit", "plated clipper"] {
            check(word, false, Stands::AskMaker);
        }
        check("cuticle nipper", false, Stands::Yes);
    }

    /// The masses that a plan takes where nobody described a kind: 150, 320 and 80 g (assumptions).
    #[test]
    fn sets_are_made_of_known_implements_and_weigh_what_the_plan_assumes() {
        let all = implements();
        let check = |kind: &str, expected_dg: Option<u32>| {
            let set = set_of(&kind.parse().unwrap());
            assert!(!set.is_empty());
            let mass = set.iter().map(|(word, count)| {
                let found = all.iter().find(|i| i.word == *word);
                found.unwrap_or_else(|| panic!("{kind}: {word}")).mass_dg * count
            });
            let mass: u32 = mass.sum();
            if let Some(expected) = expected_dg {
                assert!(mass.abs_diff(expected) * 5 <= expected, "{kind}: {mass}");
            }
        };
        check("manicure", Some(1_500));
        check("pedicure", Some(3_200));
        check("bits", Some(800));
        check("nipper", None);
        // Bits that the default set holds want nobody's word (TRADE: in a bit basket).
        let bits = set_of(&"bits".parse().unwrap());
        let asks =
            |word: &ImplementWord| all.iter().any(|i| i.word == *word && i.steam != Stands::Yes);
        assert!(!bits.iter().any(|(word, _)| asks(word)));
        for unknown in ["gel", "manicure 2", "manicures"] {
            assert_eq!(set_of(&unknown.parse().unwrap()), [], "{unknown}");
        }
    }

    /// Four trays, each with 2 mm of metal, stand one above the other in the circle: half the
    /// height and half the width against the radius.
    #[test]
    fn the_typical_room_can_be() {
        let inside = inside();
        assert_eq!(inside.check(), Ok(()));
        let high: u32 = inside.trays.iter().map(|tray| tray.height_mm + 2).sum();
        assert!(inside.chamber.takes(inside.trays[0].width_mm, high, 320));
    }
}
