//! What a person is shown, as plain geometry: true to scale, without colours, words or markup.
//!
//! [`papers`](https://docs.rs) draws it for the screen and for paper; paper and film are told
//! apart by hatch and word, never by colour alone.

mod layer;
mod pouch;

pub use pouch::of_pouch;

use crate::geometry::{Outline, Point, Rect};

/// What a shape stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// The inner edge of a tray or rack.
    Tray,
    /// What is kept free along the edge.
    Free,
    /// A pouch whose paper side is seen.
    Paper,
    /// A pouch whose film side is seen.
    Film,
    /// Where one pouch lies over another.
    Over,
    /// The face of a pouch between its seams.
    Face,
    /// The strip that is kept free for the fold.
    Fold,
    /// An implement.
    Piece,
    /// A place of a rack that is empty.
    Place,
}

/// A shape in its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// What it stands for.
    pub role: Role,
    /// Its outline, tenths of a millimetre.
    pub outline: Outline,
    /// Which pouch, piece or tray it is, where the reader needs its name.
    pub names: Option<usize>,
}

/// A distance worth telling: between two points, in tenths of a millimetre.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Distance {
    /// From.
    pub from: Point,
    /// To.
    pub to: Point,
}

/// A picture, tenths of a millimetre, origin near left; later parts lie over earlier ones.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picture {
    /// All that is drawn lies in here.
    pub frame: Rect,
    /// The shapes.
    pub parts: Vec<Part>,
    /// Distances to write beside them.
    pub distances: Vec<Distance>,
}

/// One tray with its pouches.
#[must_use]
pub fn of_layer(layer: &crate::pack::Layer, inside: &crate::chamber::Inside) -> Picture {
    layer::of_layer(layer, inside)
}
