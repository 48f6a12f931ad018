//! Pouches on the trays of one machine: as many as go in, and how many could at best.

use crate::chamber::{Face, Inside};
use crate::geometry::Rect;

/// A pouch that wants to go in, closed and filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Bag {
    /// Across, mm.
    pub width_mm: u32,
    /// From bottom to fold, mm.
    pub length_mm: u32,
    /// Thickest place, mm.
    pub thick_mm: u32,
    /// Pouch and contents, grams.
    pub mass_g: u32,
}

/// A pouch in its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Placed {
    /// Which of the pouches that were handed in.
    pub bag: usize,
    /// Where it lies on its tray, seen from above, tenths of a millimetre; the origin is the near
    /// left inner corner of the tray. In a rack: the places it takes across, its length in depth.
    pub rect: Rect,
    /// Its length goes across instead of from door to back.
    pub across: bool,
    /// Which side is up; in a rack, which side looks to the right.
    pub up: Face,
}

/// One tray, or the rack.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Layer {
    /// Which tray, from the top; 0 for the rack.
    pub tray: usize,
    /// Inner size, tenths of a millimetre.
    pub size: (i32, i32),
    /// What lies on it, in the order in which to lay it: later ones lie over earlier ones.
    pub placed: Vec<Placed>,
    /// Pouches, contents and the tray itself, grams.
    pub mass_g: u32,
    /// Least way between a pouch and the edge, tenths of a millimetre; `None` on an empty tray.
    pub clearance: Option<i32>,
}

/// A load on its trays.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Packing {
    /// Each tray, also an empty one.
    pub layers: Vec<Layer>,
    /// Pouches that did not go in, in the order in which they were handed in.
    pub left: Vec<usize>,
    /// No method could bring in more than so many of these pouches: proven.
    pub bound: usize,
    /// Pouches and contents that are in, grams, without trays.
    pub mass_g: u32,
}

impl Packing {
    /// How many pouches are in.
    #[must_use]
    pub fn count(&self) -> usize {
        self.layers.iter().map(|layer| layer.placed.len()).sum()
    }
}

/// Lays pouches on the trays for the machine's pattern: as many of them as it can, and never one
/// over `most_g` (pouches and contents of the whole run; `None`: no limit is known).
///
/// Nothing overlaps, or in the overlapped pattern only neighbours in a row do, by
/// [`crate::chamber::OVERLAP_MM`]; everything keeps the free ways of `inside`. A pouch that is
/// thicker than the free height of a tray goes on none. The same pouches in the same order give
/// the same picture. `steps` bounds the search; more of them is never worse, and
/// [`STEPS`] is what a page asks for.
#[must_use]
pub fn pack(bags: &[Bag], inside: &Inside, most_g: Option<u32>, steps: u32) -> Packing {
    todo!()
}

/// Steps of search that a page asks for.
pub const STEPS: u32 = 20_000;
