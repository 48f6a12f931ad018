//! Where on a shape a text can lie: the part of a pouch that is seen, the middle of a piece.

use load::geometry::{Outline, Point, Rect};
use load::picture::{Part, Role};

/// The largest rectangle of a pouch that nothing else covers.
pub(crate) fn seen(parts: &[Part], number: usize) -> Rect {
    let whole = parts[number].outline.bounds();
    let covers = |at: usize, role: Role| match role {
        Role::Over | Role::Fold | Role::Piece => true,
        Role::Paper | Role::Film => at > number,
        Role::Tray | Role::Free | Role::Face | Role::Place => false,
    };
    let parts = parts.iter().enumerate().filter(|(at, part)| covers(*at, part.role));
    let bounds = parts.map(|(_, part)| part.outline.bounds());
    let near: Vec<Rect> = bounds.filter(|cover| whole.nearer_than(cover, 0)).collect();
    free(whole, &near)
}

/// The largest rectangle of `whole` that meets none of `covers`: its left and right side each lie
/// on a side of one of them, so trying all pairs finds it. More than the first two dozen are not
/// tried in pairs, which would take long; it is then cut by each of the rest.
fn free(whole: Rect, covers: &[Rect]) -> Rect {
    const PAIRS: usize = 24;
    let (first, rest) = covers.split_at(covers.len().min(PAIRS));
    let inside = |x: i32| x.clamp(whole.x, whole.right());
    let mut sides = vec![whole.x, whole.right()];
    sides.extend(first.iter().flat_map(|cover| [inside(cover.x), inside(cover.right())]));
    sides.sort_unstable();
    sides.dedup();
    let mut best = Rect { width: 0, height: 0, ..whole };
    for (at, &left) in sides.iter().enumerate() {
        for &right in &sides[at + 1..] {
            let strip = Rect { x: left, width: right - left, ..whole };
            let tried = highest(strip, first);
            best = if tried.area() > best.area() { tried } else { best };
        }
    }
    rest.iter().fold(
        best,
        |left, cover| {
            if left.nearer_than(cover, 0) { without(left, *cover) } else { left }
        },
    )
}

/// The highest part of a strip, over its whole width, that meets none of `covers`.
fn highest(strip: Rect, covers: &[Rect]) -> Rect {
    let mut blocks: Vec<(i32, i32)> = covers
        .iter()
        .filter(|cover| strip.nearer_than(cover, 0))
        .map(|cover| (cover.y, cover.far()))
        .collect();
    blocks.push((strip.far(), strip.far()));
    blocks.sort_unstable();
    let mut best = Rect { height: 0, ..strip };
    let mut from = strip.y;
    for (near, far) in blocks {
        if near - from > best.height {
            best = Rect { y: from, height: near - from, ..strip };
        }
        from = from.max(far);
    }
    best
}

/// The largest rectangle of `whole` beside `cover`.
fn without(whole: Rect, cover: Rect) -> Rect {
    let span = |from: i32, to: i32| if to > from { to - from } else { 0 };
    let beside = [
        Rect { width: span(whole.x, cover.x), ..whole },
        Rect { x: cover.right(), width: span(cover.right(), whole.right()), ..whole },
        Rect { height: span(whole.y, cover.y), ..whole },
        Rect { y: cover.far(), height: span(cover.far(), whole.far()), ..whole },
    ];
    let [first, rest @ ..] = beside;
    rest.into_iter().fold(first, |best, next| if next.area() > best.area() { next } else { best })
}

/// Points inside a piece, the middle of it first, then towards its ends.
pub(crate) fn middles(outline: &Outline) -> Vec<Point> {
    let bounds = outline.bounds();
    let level = bounds.height >= bounds.width;
    [50, 40, 60, 30, 70, 20, 80, 10, 90]
        .into_iter()
        .filter_map(|share| {
            let at = |from: i32, long: i32| from + long * share / 100;
            let line = if level { at(bounds.y, bounds.height) } else { at(bounds.x, bounds.width) };
            let middle = middle_of_longest(outline, line, level)?;
            Some(if level { Point { x: middle, y: line } } else { Point { x: line, y: middle } })
        })
        .collect()
}

/// Where a level (or an upright) line runs longest through the outline: the middle of that way.
fn middle_of_longest(outline: &Outline, line: i32, level: bool) -> Option<i32> {
    let turned = |p: Point| if level { (p.x, p.y) } else { (p.y, p.x) };
    let mut cuts: Vec<i32> = outline
        .edges()
        .filter_map(|(a, b)| {
            let ((ax, ay), (bx, by)) = (turned(a), turned(b));
            let crosses = (ay > line) != (by > line);
            // At most four metres times four metres: this is why it is reckoned in 64 bits.
            let along = |rise: i64| i64::from(bx - ax) * i64::from(line - ay) / rise;
            crosses.then(|| ax + i32::try_from(along(i64::from(by - ay))).unwrap_or(0))
        })
        .collect();
    cuts.sort_unstable();
    let longest = cuts.chunks_exact(2).max_by_key(|pair| pair[1] - pair[0])?;
    Some(longest[0] + (longest[1] - longest[0]) / 2)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;
    use proptest::prelude::*;

    fn rect(x: i32, y: i32, width: i32, height: i32) -> Rect {
        Rect { x, y, width, height }
    }

    proptest! {
    /// By brute force: on a grid of ten, every rectangle is tried.
    #[test]
    fn the_largest_free_rectangle_is_found(
        covers in prop::collection::vec((0..10, 0..10, 1..6, 1..6), 0..6),
    ) {
        let covers: Vec<Rect> = covers.iter().map(|&(x, y, w, h)| rect(x, y, w, h)).collect();
        let found = free(rect(0, 0, 10, 10), &covers);
        prop_assert!(found.area() == 0 || covers.iter().all(|cover| !found.nearer_than(cover, 0)));
        let mut best = 0;
        for (x, y) in (0..10).flat_map(|x| (0..10).map(move |y| (x, y))) {
            for (w, h) in (1..=10 - x).flat_map(|w| (1..=10 - y).map(move |h| (w, h))) {
                let tried = rect(x, y, w, h);
                if covers.iter().all(|cover| !tried.nearer_than(cover, 0)) {
                    best = best.max(tried.area());
                }
            }
        }
        prop_assert_eq!(found.area(), best);
    }
    }

    /// An open pair of nippers: the middle of its bounds is between the handles, the number is not.
    #[test]
    fn a_number_lies_on_its_piece() {
        let corners =
            [(0, 0), (80, 0), (140, 600), (160, 600), (220, 0), (300, 0), (200, 900), (100, 900)];
        let corners = corners.iter().map(|&(x, y)| Point { x, y }).collect();
        let outline = Outline::new(corners).unwrap();
        let spots = middles(&outline);
        assert_eq!(spots.len(), 9);
        assert!(spots.iter().all(|spot| outline.contains(*spot)), "{spots:?}");
    }
}
