//! Implements: what they are made of, how large and heavy they are, and what must never be done to
//! them.
//!
//! Nobody draws an outline: a [`Form`] with length and width makes one, as it lies in the pouch,
//! hinges open.
//!
//! ```
//! use load::implement::{Form, Material, Metal};
//! let nipper = Form::Nippers.outline(105, 62)?;
//! assert_eq!((nipper.bounds().width, nipper.bounds().height), (620, 1_050));
//! // Open handles leave a notch.
//! assert!(nipper.area() < 620 * 1_050 * 3 / 4);
//! assert!(!Metal::Carbide.may_touch(Metal::Diamond));
//! assert_eq!(Material::Glass.metal(), None);
//! # Ok::<(), load::geometry::NoOutline>(())
//! ```

mod advice;
mod form;
mod material;

pub use advice::{Caution, HOTTEST_STEAM_C, NoImplement, STEAM_BAND_K, stands_cycle};

use crate::plain_word::ImplementWord;
use crate::stored_word::stored_words;

/// What an implement is made of, where it counts for heat and for rust.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Material {
    /// Hardened stainless steel, such as 420: nippers, scissors.
    Steel420,
    /// Stainless steel such as 304: pushers, trays, boxes.
    Steel304,
    /// Steel with a plated surface, chromed or nickelled.
    Plated,
    /// Plain carbon steel: rusts in steam.
    Carbon,
    /// Aluminium, also anodised.
    Aluminium,
    /// Tungsten carbide with a cobalt binder, on a steel shank.
    Carbide,
    /// Diamond grit bonded with nickel, on a steel shank.
    Diamond,
    /// Ceramic: zirconia.
    Ceramic,
    /// Glass.
    Glass,
    /// Silicone rubber.
    Silicone,
    /// Polypropylene.
    Polypropylene,
    /// Wood, paper, foam: what is used once.
    Fibre,
}

/// What may lie together without one spoiling the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Metal {
    /// Stainless steel.
    Stainless,
    /// Plated steel.
    Plated,
    /// Plain carbon steel.
    Carbon,
    /// Aluminium.
    Aluminium,
    /// Carbide.
    Carbide,
    /// Diamond.
    Diamond,
}

/// May a thing be done to an implement?
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stands {
    /// Yes.
    Yes,
    /// Only where its maker says so.
    AskMaker,
    /// Never.
    Never,
}

/// Things that are put on implements.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Chemical {
    /// Chlorine bleach.
    Hypochlorite,
    /// Iodine and iodophors.
    Iodine,
    /// Chlorides of iron, aluminium or tin.
    MetalChlorides,
    /// Acids, such as descaler.
    Acid,
    /// Strong alkali.
    Alkali,
    /// Acetone.
    Acetone,
    /// Alcohol.
    Alcohol,
    /// Peroxide.
    Peroxide,
    /// Quaternary ammonium.
    Quaternary,
}

/// The shape family, from which an outline is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Form {
    /// Two handles that open like a V, jaws at the tip.
    Nippers,
    /// Two finger rings, blades open like a narrow V.
    Scissors,
    /// A short flat body with a lever.
    Clippers,
    /// Two arms joined at one end, slightly open.
    Tweezers,
    /// A straight thin rod, wider at one end.
    Stick,
    /// A short shank with a head.
    Bit,
    /// A block or box.
    Block,
    /// A flat blade with a handle.
    File,
    /// A block that bits stand or lie in.
    Holder,
}

/// An implement of the catalogue.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Implement {
    /// What the salon calls it.
    pub word: ImplementWord,
    /// Its shape family.
    pub form: Form,
    /// Length as it lies in the pouch, mm.
    pub length_mm: u32,
    /// Width as it lies in the pouch, hinges open, mm.
    pub width_mm: u32,
    /// Thickness, mm.
    pub thick_mm: u32,
    /// Mass of one, tenths of a gram: a bit weighs a few grams.
    pub mass_dg: u32,
    /// What most of it is made of.
    pub material: Material,
    /// Has a hinge that must lie open.
    pub hinged: bool,
    /// Has a bore or a cavity.
    pub hollow: bool,
    /// To the waste after one client: never bagged.
    pub single_use: bool,
    /// May it go into steam?
    pub steam: Stands,
    /// May it go into the ultrasonic bath?
    pub ultrasonic: Stands,
    /// Highest temperature that it stands, °C.
    pub most_c: u32,
}

stored_words!(Material, 12, {
    Steel420 => "stainless 420",
    Steel304 => "stainless 304",
    Plated => "plated steel",
    Carbon => "carbon steel",
    Aluminium => "aluminium",
    Carbide => "carbide",
    Diamond => "diamond",
    Ceramic => "ceramic",
    Glass => "glass",
    Silicone => "silicone",
    Polypropylene => "polypropylene",
    Fibre => "fibre",
});

stored_words!(Metal, 6, {
    Stainless => "stainless",
    Plated => "plated",
    Carbon => "carbon",
    Aluminium => "aluminium",
    Carbide => "carbide",
    Diamond => "diamond",
});

stored_words!(Stands, 3, {
    Yes => "yes",
    AskMaker => "ask the maker",
    Never => "never",
});

stored_words!(Chemical, 9, {
    Hypochlorite => "bleach",
    Iodine => "iodine",
    MetalChlorides => "metal chlorides",
    Acid => "acid",
    Alkali => "alkali",
    Acetone => "acetone",
    Alcohol => "alcohol",
    Peroxide => "peroxide",
    Quaternary => "quaternary ammonium",
});

stored_words!(Form, 9, {
    Nippers => "nippers",
    Scissors => "scissors",
    Clippers => "clippers",
    Tweezers => "tweezers",
    Stick => "stick",
    Bit => "bit",
    Block => "block",
    File => "file",
    Holder => "holder",
});
