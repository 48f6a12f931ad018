//! Which pouch for which set: the pieces laid out so that nothing touches, hinges open, no more
//! than three quarters of the pouch used, the fold of the seal kept free.

use crate::geometry::{Outline, Rect};
use crate::implement::{Implement, Metal};
use crate::plain_word::PouchWord;

/// A size of pouch that the salon keeps. Measures in millimetres, flat and empty.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct PouchSize {
    /// What the salon calls it.
    pub word: PouchWord,
    /// Across, from outer edge to outer edge.
    pub width_mm: u32,
    /// From the bottom edge to the fold line, as it lies closed.
    pub length_mm: u32,
    /// Width of the seam at each side and at the bottom.
    pub seam_mm: u32,
    /// Kept free below the fold line, so that the seal closes flat.
    pub fold_mm: u32,
    /// Mass of the empty pouch, tenths of a gram.
    pub mass_dg: u32,
}

/// At most so many hundredths of the face between the seams may be used (common practice, no
/// source): counted as the rectangle around all pieces.
pub const MOST_FULL: u32 = 75;

/// Left free between two pieces in a pouch, mm (ours: they shift a little when it is carried).
pub const APART_MM: u32 = 4;

/// A piece in its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Laid {
    /// Which of the pieces that were asked for.
    pub piece: usize,
    /// Where it lies; the origin is the near left corner of the pouch, its fold is far away.
    pub outline: Outline,
}

/// A pouch with its pieces.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Filled {
    /// Which of the sizes that were offered.
    pub size: usize,
    /// The pieces.
    pub pieces: Vec<Laid>,
    /// Hundredths of the face between the seams that the rectangle around all pieces takes, rounded up.
    pub full: u32,
    /// The thickest piece, mm.
    pub thick_mm: u32,
    /// Pieces and pouch, tenths of a gram.
    pub mass_dg: u32,
}

/// Why pieces go into more than one pouch.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Split {
    /// These metals should not touch (dissimilar metals corrode each other).
    Metals(Vec<Metal>),
    /// All together would be too full for the largest pouch.
    TooFull,
}

/// Why a piece goes into no pouch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Refused {
    /// It is used once and goes to the waste.
    SingleUse,
    /// It must never go into steam.
    NeverSteam,
    /// No size is large enough for it, even alone.
    TooLarge,
}

/// How a set is bagged.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Bagging {
    /// Its pouches; one where nothing asks for more.
    pub pouches: Vec<Filled>,
    /// Why there are more than one.
    pub split: Vec<Split>,
    /// Pieces that are in none, with the reason.
    pub refused: Vec<(usize, Refused)>,
    /// Pieces that go in only where their maker says so.
    pub ask_maker: Vec<usize>,
}

/// Which pouches a set needs: the fewest, each as small as the rules allow.
///
/// The order of `pieces` and `sizes` is only a name: the same set gives the same answer.
#[must_use]
pub fn bag(pieces: &[Implement], sizes: &[PouchSize]) -> Bagging {
    todo!()
}

impl PouchSize {
    /// The face between the seams and below the fold, tenths of a millimetre.
    #[must_use]
    pub fn face(&self) -> Rect {
        todo!()
    }
}
