//! Which pouch for which set: the pieces laid out so that nothing touches, hinges open, no more
//! than three quarters of the pouch used, the fold of the seal kept free.
//!
//! ```
//! use load::catalogue::{implements, pouch_sizes};
//! use load::pouch::{Refused, bag};
//! let known = implements();
//! let piece = |word: &str| known.iter().find(|i| i.word.word() == word).cloned();
//! let set: Vec<_> = ["cuticle nipper", "pusher", "wood stick"].into_iter().filter_map(piece).collect();
//! let bagging = bag(&set, &pouch_sizes());
//! assert_eq!(bagging.pouches.len(), 1);
//! assert!(bagging.pouches[0].full <= 75);
//! // What is used once is not bagged.
//! assert_eq!(bagging.refused, [(2, Refused::SingleUse)]);
//! ```

mod grid;
mod holder;
mod lay;
mod share;

use crate::geometry::{MOST, Outline, PER_MM, Rect};
use crate::implement::{Implement, Metal, Stands};
use crate::plain_word::PouchWord;
use lay::{Shapes, Spot};
use share::{Share, Shared};
use std::cmp::Reverse;
use std::fmt;

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

/// A size of pouch that cannot be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoPouchSize {
    /// Width or length is not 30 to 1000 mm.
    Measure,
    /// A seam is not 3 to 30 mm.
    Seam,
    /// The strip below the fold is not 5 to 100 mm.
    Fold,
    /// It weighs less than a tenth of a gram or more than 1 kg.
    Mass,
    /// Between seams and fold less than 10 mm are left across or along.
    NoFace,
}

impl fmt::Display for NoPouchSize {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Measure => {
                "a pouch is 30 to 1000 mm wide and long: measure it flat and empty, up to the fold \
                 line; nothing was changed"
            }
            Self::Seam => "a seam is 3 to 30 mm wide: measure one of them; nothing was changed",
            Self::Fold => {
                "5 to 100 mm are kept free below the fold line: measure it; nothing was changed"
            }
            Self::Mass => {
                "an empty pouch weighs a tenth of a gram to 1 kg: weigh ten and divide by ten; \
                 nothing was changed"
            }
            Self::NoFace => {
                "this pouch has no room between its seams and below its fold: measure all of them \
                 again; nothing was changed"
            }
        })
    }
}

impl std::error::Error for NoPouchSize {}

/// At most so many hundredths of the face between the seams may be used (common practice, no
/// source): counted as the rectangle around all pieces.
pub const MOST_FULL: u32 = 75;

/// Left free between two pieces in a pouch, mm (ours: they shift a little when it is carried).
pub const APART_MM: u32 = 4;

/// Paper and film do not lie close: so much is added to the thickest piece, mm (assumption).
pub const PAPER_AND_FILM_MM: u32 = 1;

/// So many bits lie in one holder (assumption).
pub const MOST_HELD: usize = 12;

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
    /// The pieces that are laid.
    pub pieces: Vec<Laid>,
    /// Pieces that lie in a holder instead, each with its holder, which is one of `pieces`; both
    /// are places among the pieces that were asked for. Sorted by piece.
    pub held: Vec<(usize, usize)>,
    /// Hundredths of the face between the seams that the rectangle around all pieces takes, rounded up.
    pub full: u32,
    /// Thickness of the filled pouch, mm: its thickest piece, and [`PAPER_AND_FILM_MM`].
    pub thick_mm: u32,
    /// Pieces, those in holders too, and pouch, tenths of a gram.
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
    /// One of its measures is nothing: nobody knows how large it is.
    NoMeasure,
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

/// Steps of search for a whole set, some ten nanoseconds each. Ten times as many took 3 % off the
/// area of the pouches of random sets.
const STEPS: u64 = 700_000;

/// A piece that is to be bagged.
struct Piece {
    /// Which of the pieces that were asked for.
    at: usize,
    /// Which of the different shapes.
    shape: usize,
    metal: Option<Metal>,
}

/// A size that is offered.
struct Size {
    /// Which of the sizes that were offered.
    at: usize,
    face: Rect,
    /// Of the whole pouch, square millimetres.
    area: u64,
}

/// Which pouches a set needs: the fewest that are found, each as small as the rules allow.
///
/// Up to eight pieces every way to halve a set is tried, as far as the steps of the search go; a
/// larger set is filled pouch by pouch, and above 60 pieces laid in rows. The order of `pieces` and
/// `sizes` is only a name: the same set gives the same answer. Whatever does not fit is told in
/// `refused`; measures that are no measures are no fault.
///
/// Bits lie in a holder where the set has one that is not smaller than they are, up to [`MOST_HELD`]
/// in each, those of one metal together and what has no metal with any. A holder counts as of the
/// metal of its bits then: they touch what it lies beside sooner than it does.
#[must_use]
pub fn bag(pieces: &[Implement], sizes: &[PouchSize]) -> Bagging {
    let mut bagging = Bagging::default();
    let sizes_sorted = sorted_sizes(sizes);
    let (outlines, wanted) = sorted_pieces(pieces, &mut bagging.refused);
    let shapes = Shapes::new(outlines, STEPS);
    let goes_in: Vec<bool> = (0..shapes.count())
        .map(|shape| sizes_sorted.iter().any(|size| shapes.fits_alone(shape, &size.face)))
        .collect();
    let (wanted, too_large): (Vec<Piece>, Vec<Piece>) =
        wanted.into_iter().partition(|piece| goes_in[piece.shape]);
    bagging.refused.extend(too_large.iter().map(|piece| (piece.at, Refused::TooLarge)));
    bagging.refused.sort_unstable_by_key(|refused| refused.0);
    let asks = |piece: &&Piece| pieces[piece.at].steam == Stands::AskMaker;
    bagging.ask_maker = wanted.iter().filter(asks).map(|piece| piece.at).collect();
    bagging.ask_maker.sort_unstable();

    let (wanted, held) = holder::hold(wanted, pieces);
    let Shared { pouches, metals, too_full } = Share::new(&wanted, &sizes_sorted, shapes).all();
    if metals.len() > 1 {
        bagging.split.push(Split::Metals(metals.into_iter().collect()));
    }
    if too_full {
        bagging.split.push(Split::TooFull);
    }
    let filled = pouches.into_iter().map(|(size, spots)| {
        let size = &sizes_sorted[size];
        let full = share::hundredths(&spots, size);
        let laid = middle(spots, &size.face);
        let laid = laid.into_iter().map(|(i, outline)| Laid { piece: wanted[i].at, outline });
        filled((pieces, &held), (size.at, &sizes[size.at]), laid.collect(), full)
    });
    bagging.pouches = filled.collect();
    bagging
}

/// Sizes, the least pouch first, whatever order they came in.
fn sorted_sizes(sizes: &[PouchSize]) -> Vec<Size> {
    let mut order: Vec<usize> = (0..sizes.len()).collect();
    let area = |size: &PouchSize| u64::from(size.width_mm) * u64::from(size.length_mm);
    let key = |size: &PouchSize| {
        let more = (size.length_mm, size.seam_mm, size.fold_mm, size.mass_dg, size.word.clone());
        (area(size), more)
    };
    order.sort_by_key(|&at| key(&sizes[at]));
    let size = |at: usize| Size { at, face: sizes[at].face(), area: area(&sizes[at]) };
    order.into_iter().map(size).collect()
}

/// The different shapes, and the pieces that may be bagged: the largest first, whatever order they
/// came in.
fn sorted_pieces(
    pieces: &[Implement],
    refused: &mut Vec<(usize, Refused)>,
) -> (Vec<Outline>, Vec<Piece>) {
    let key = |piece: &Implement| {
        let size = u64::from(piece.length_mm) * u64::from(piece.width_mm);
        let shape = (Reverse(size), Reverse(piece.length_mm), piece.form);
        let rest = (piece.thick_mm, piece.mass_dg, piece.hinged, piece.hollow);
        (
            shape,
            piece.material,
            piece.word.clone(),
            rest,
            (piece.steam, piece.ultrasonic, piece.most_c),
        )
    };
    let mut order: Vec<usize> = (0..pieces.len()).collect();
    order.sort_by_cached_key(|&at| key(&pieces[at]));
    let (mut outlines, mut wanted): (Vec<Outline>, Vec<Piece>) = (Vec::new(), Vec::new());
    let mut last = None;
    for at in order {
        let piece = &pieces[at];
        let reason = if piece.single_use {
            Some(Refused::SingleUse)
        } else if piece.steam == Stands::Never {
            Some(Refused::NeverSteam)
        } else if piece.length_mm == 0 || piece.width_mm == 0 {
            Some(Refused::NoMeasure)
        } else {
            None
        };
        if let Some(reason) = reason {
            refused.push((at, reason));
            continue;
        }
        let shape = (piece.form, piece.length_mm, piece.width_mm);
        if last != Some(shape) {
            // The only error that is left: longer than anything that is worked with.
            let Ok(outline) = piece.outline() else {
                refused.push((at, Refused::TooLarge));
                continue;
            };
            outlines.push(outline);
            last = Some(shape);
        }
        wanted.push(Piece { at, shape: outlines.len() - 1, metal: piece.material.metal() });
    }
    (outlines, wanted)
}

/// From their room into the middle of the face, so that there is air all round.
fn middle(spots: Vec<Spot>, face: &Rect) -> Vec<Spot> {
    let Some(around) = lay::around(&spots) else { return spots };
    let x = face.x + (face.width - around.width) / 2 - around.x;
    let y = face.y + (face.height - around.height) / 2 - around.y;
    spots.into_iter().map(|(i, outline)| (i, outline.moved(x, y))).collect()
}

fn filled(
    (pieces, held): (&[Implement], &[(usize, usize)]),
    (at, size): (usize, &PouchSize),
    laid: Vec<Laid>,
    full: u32,
) -> Filled {
    let lies = |(_, holder): &&(usize, usize)| laid.iter().any(|laid| laid.piece == *holder);
    let held: Vec<(usize, usize)> = held.iter().filter(lies).copied().collect();
    let all = || laid.iter().map(|laid| laid.piece).chain(held.iter().map(|held| held.0));
    let inside = || all().map(|piece| &pieces[piece]);
    let mass = inside().fold(size.mass_dg, |mass, piece| mass.saturating_add(piece.mass_dg));
    let thickest = inside().map(|piece| piece.thick_mm).max().unwrap_or(0);
    let thick_mm = thickest.saturating_add(PAPER_AND_FILM_MM);
    Filled { size: at, full, thick_mm, mass_dg: mass, pieces: laid, held }
}

impl PouchSize {
    /// Can it be? Width and length 30 to 1000 mm, seam 3 to 30 mm, fold 5 to 100 mm, 0.1 g to 1 kg,
    /// and a [`PouchSize::face`] of at least 10 mm both ways. (Assumptions: wide enough for any
    /// pouch of a small machine.)
    ///
    /// # Errors
    /// The first [`NoPouchSize`] that is found.
    pub fn check(&self) -> Result<(), NoPouchSize> {
        if ![self.width_mm, self.length_mm].iter().all(|mm| (30..=1_000).contains(mm)) {
            return Err(NoPouchSize::Measure);
        }
        if !(3..=30).contains(&self.seam_mm) {
            return Err(NoPouchSize::Seam);
        }
        if !(5..=100).contains(&self.fold_mm) {
            return Err(NoPouchSize::Fold);
        }
        if !(1..=10_000).contains(&self.mass_dg) {
            return Err(NoPouchSize::Mass);
        }
        let face = self.face();
        if face.width.min(face.height) < 10 * PER_MM {
            return Err(NoPouchSize::NoFace);
        }
        Ok(())
    }

    /// The face between the seams and below the fold, tenths of a millimetre; without width or depth
    /// where seams and fold leave nothing. Measures above two metres count as two metres.
    #[must_use]
    pub fn face(&self) -> Rect {
        let tenths =
            |mm: u32| i32::try_from(mm).map_or(MOST, |mm| mm.saturating_mul(PER_MM).min(MOST));
        let [width, length] = [self.width_mm, self.length_mm].map(tenths);
        let [seam, fold] = [self.seam_mm, self.fold_mm].map(tenths);
        let face = |width: i32, height: i32| Rect { x: seam, y: seam, width, height };
        face((width - 2 * seam).max(0), (length - seam - fold).max(0))
    }
}

#[cfg(test)]
mod tests;
