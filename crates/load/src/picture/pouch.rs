//! One pouch with its pieces, its film side seen, its fold far away.

use super::{Distance, Part, Picture, Role};
use crate::geometry::{MOST, Outline, PER_MM, Point, Rect};
use crate::pouch::{Filled, PouchSize};

/// One pouch with its pieces: its edge as [`Role::Film`], the face between the seams, the strip that
/// is kept free below the fold, and each piece that is laid, which names which of the set's pieces it is; what a holder
/// holds is not drawn.
///
/// The distances are its width and its length. Measures above two metres are drawn as two metres;
/// what has no width or depth is left out.
#[must_use]
pub fn of_pouch(size: &PouchSize, filled: &Filled) -> Picture {
    let tenths = |mm: u32| i32::try_from(mm).map_or(MOST, |mm| mm.saturating_mul(PER_MM).min(MOST));
    let frame = Rect { x: 0, y: 0, width: tenths(size.width_mm), height: tenths(size.length_mm) };
    let face = size.face();
    let fold = Rect { y: face.far(), height: (frame.height - face.far()).max(0), ..face };
    let area = |role, rect: Rect| {
        let outline = Outline::rectangle(rect.width, rect.height).ok()?.moved(rect.x, rect.y);
        Some(Part { role, outline, names: None })
    };
    let areas = [(Role::Film, frame), (Role::Face, face), (Role::Fold, fold)];
    let mut parts: Vec<Part> =
        areas.into_iter().filter_map(|(role, rect)| area(role, rect)).collect();
    parts.extend(filled.pieces.iter().map(|laid| Part {
        role: Role::Piece,
        outline: laid.outline.clone(),
        names: Some(laid.piece),
    }));
    let near_left = Point { x: 0, y: 0 };
    let to = |x, y| Distance { from: near_left, to: Point { x, y } };
    Picture { frame, parts, distances: vec![to(frame.width, 0), to(0, frame.height)] }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{implements, pouch_sizes};
    use crate::pouch::bag;

    #[test]
    fn a_pouch_shows_edge_face_fold_and_each_piece_where_it_lies() {
        let nipper = implements().into_iter().find(|i| i.word.word() == "cuticle nipper").unwrap();
        let mut size = pouch_sizes().remove(1);
        (size.width_mm, size.length_mm, size.seam_mm, size.fold_mm) = (90, 165, 6, 15);
        let bagging = bag(&[nipper.clone(), nipper], std::slice::from_ref(&size));
        let picture = of_pouch(&size, &bagging.pouches[1]);
        let bounds = |role: Role| {
            let part = picture.parts.iter().find(|part| part.role == role).unwrap();
            let Rect { x, y, width, height } = part.outline.bounds();
            (x, y, width, height)
        };
        assert_eq!(bounds(Role::Film), (0, 0, 900, 1_650));
        assert_eq!(bounds(Role::Face), (60, 60, 780, 1_440));
        assert_eq!(bounds(Role::Fold), (60, 1_500, 780, 150));
        let last = picture.parts.last().unwrap();
        let laid = &bagging.pouches[1].pieces[0];
        assert_eq!(
            (last.role, last.names, &last.outline),
            (Role::Piece, Some(laid.piece), &laid.outline)
        );
        assert!(picture.parts.iter().all(|part| picture.frame.holds(&part.outline.bounds())));
    }

    #[test]
    fn a_pouch_that_cannot_be_is_still_a_picture() {
        let mut size = pouch_sizes().remove(0);
        (size.width_mm, size.length_mm, size.seam_mm, size.fold_mm) =
            (u32::MAX, 0, u32::MAX, u32::MAX);
        let filled =
            Filled { size: 0, pieces: vec![], held: vec![], full: 0, thick_mm: 0, mass_dg: 0 };
        let picture = of_pouch(&size, &filled);
        assert_eq!((picture.parts.len(), picture.frame.width), (0, MOST));
    }
}
