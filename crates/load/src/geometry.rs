//! Points, rectangles and outlines on a flat face.
//!
//! All lengths are whole tenths of a millimetre, so that "these two do not touch" is worked out
//! exactly and the same everywhere. `x` grows to the right, `y` away from the person who loads.

use std::fmt;

/// Tenths of a millimetre in a millimetre.
pub const PER_MM: i32 = 10;

/// Largest coordinate that is worked with: two metres, the bound of every length in `measure`.
pub const MOST: i32 = 2_000 * PER_MM;

/// A point, tenths of a millimetre.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Point {
    /// To the right.
    pub x: i32,
    /// Away.
    pub y: i32,
}

/// A rectangle along the axes, tenths of a millimetre.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Rect {
    /// Left side.
    pub x: i32,
    /// Near side.
    pub y: i32,
    /// Width, not negative.
    pub width: i32,
    /// Depth, not negative.
    pub height: i32,
}

impl Rect {
    /// Right side.
    #[must_use]
    pub const fn right(&self) -> i32 {
        self.x + self.width
    }

    /// Far side.
    #[must_use]
    pub const fn far(&self) -> i32 {
        self.y + self.height
    }

    /// Area, hundredths of a square millimetre.
    #[must_use]
    pub const fn area(&self) -> i64 {
        self.width as i64 * self.height as i64
    }

    /// Do the two leave less than `gap` between them along both axes? With a gap of 0: do they
    /// share more than an edge?
    #[must_use]
    pub const fn nearer_than(&self, other: &Self, gap: i32) -> bool {
        self.x < other.right() + gap
            && other.x < self.right() + gap
            && self.y < other.far() + gap
            && other.y < self.far() + gap
    }

    /// Does `inner` lie in this one, edges included?
    #[must_use]
    pub const fn holds(&self, inner: &Self) -> bool {
        inner.x >= self.x
            && inner.y >= self.y
            && inner.right() <= self.right()
            && inner.far() <= self.far()
    }

    /// The rectangle with `margin` taken off each side; an empty one where nothing is left.
    #[must_use]
    pub const fn less(&self, margin: i32) -> Self {
        let twice = 2 * margin;
        let width = if self.width > twice { self.width - twice } else { 0 };
        let height = if self.height > twice { self.height - twice } else { 0 };
        Self { x: self.x + margin, y: self.y + margin, width, height }
    }
}

/// A simple polygon: at least three corners, no edge crosses another, counter-clockwise.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Outline(Vec<Point>);

/// Corners that make no outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoOutline {
    /// Fewer than three corners or no area.
    Empty,
    /// Too far away to be worked with ([`MOST`]).
    TooLarge,
    /// Two edges that are not neighbours touch.
    Crossed,
}

impl fmt::Display for NoOutline {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Empty => "these corners enclose nothing",
            Self::TooLarge => "this outline is larger than two metres",
            Self::Crossed => "this outline crosses itself",
        })
    }
}

impl std::error::Error for NoOutline {}

impl Outline {
    /// From its corners in order, either way round.
    ///
    /// # Errors
    /// [`NoOutline`] where they enclose nothing, lie too far out or cross.
    pub fn new(mut corners: Vec<Point>) -> Result<Self, NoOutline> {
        corners.dedup();
        if corners.len() > 1 && corners.first() == corners.last() {
            corners.pop();
        }
        if corners.iter().any(|p| p.x.abs() > MOST || p.y.abs() > MOST) {
            return Err(NoOutline::TooLarge);
        }
        if corners.len() < 3 || doubled_area(&corners) == 0 {
            return Err(NoOutline::Empty);
        }
        if doubled_area(&corners) < 0 {
            corners.reverse();
        }
        let outline = Self(corners);
        let edges: Vec<(Point, Point)> = outline.edges().collect();
        for (i, a) in edges.iter().enumerate() {
            for (j, b) in edges.iter().enumerate().skip(i + 2) {
                let neighbours = i == 0 && j + 1 == edges.len();
                if !neighbours && meet(*a, *b) {
                    return Err(NoOutline::Crossed);
                }
            }
        }
        Ok(outline)
    }

    /// A rectangle with its near left corner at the origin.
    ///
    /// # Errors
    /// [`NoOutline`] where a side is not positive or too long.
    pub fn rectangle(width: i32, height: i32) -> Result<Self, NoOutline> {
        let corner = |x, y| Point { x, y };
        Self::new(vec![corner(0, 0), corner(width, 0), corner(width, height), corner(0, height)])
    }

    /// The corners, counter-clockwise.
    #[must_use]
    pub fn corners(&self) -> &[Point] {
        &self.0
    }

    /// The edges, each from corner to corner.
    pub fn edges(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        let next = self.0.iter().cycle().skip(1);
        self.0.iter().copied().zip(next.copied())
    }

    /// Area, hundredths of a square millimetre, rounded down.
    #[must_use]
    pub fn area(&self) -> i64 {
        doubled_area(&self.0) / 2
    }

    /// The smallest rectangle around it.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        let xs = || self.0.iter().map(|p| p.x);
        let ys = || self.0.iter().map(|p| p.y);
        let (x, y) = (xs().min().unwrap_or(0), ys().min().unwrap_or(0));
        let (right, far) = (xs().max().unwrap_or(0), ys().max().unwrap_or(0));
        Rect { x, y, width: right - x, height: far - y }
    }

    /// The same outline elsewhere.
    #[must_use]
    pub fn moved(&self, x: i32, y: i32) -> Self {
        Self(self.0.iter().map(|p| Point { x: p.x + x, y: p.y + y }).collect())
    }

    /// Turned counter-clockwise by so many quarters about the origin.
    #[must_use]
    pub fn turned(&self, quarters: u32) -> Self {
        let turn = |p: &Point| match quarters % 4 {
            0 => *p,
            1 => Point { x: -p.y, y: p.x },
            2 => Point { x: -p.x, y: -p.y },
            _ => Point { x: p.y, y: -p.x },
        };
        Self(self.0.iter().map(turn).collect())
    }

    /// Moved so that its bounds begin at the origin.
    #[must_use]
    pub fn at_origin(&self) -> Self {
        let bounds = self.bounds();
        self.moved(-bounds.x, -bounds.y)
    }

    /// Is there less than `gap` between the two anywhere, or does one lie in the other? Exact.
    #[must_use]
    pub fn nearer_than(&self, other: &Self, gap: i32) -> bool {
        if !self.bounds().nearer_than(&other.bounds(), gap.max(1)) {
            return false;
        }
        let within =
            |outer: &Self, inner: &Self| inner.0.first().is_some_and(|p| outer.contains(*p));
        within(self, other)
            || within(other, self)
            || self.edges().any(|a| {
                other.edges().any(|b| meet(a, b) || nearer(a, b, gap) || nearer(b, a, gap))
            })
    }

    /// Does the point lie inside or on the edge? Exact.
    #[must_use]
    pub fn contains(&self, p: Point) -> bool {
        let mut inside = false;
        for (a, b) in self.edges() {
            let side = cross(a, b, p);
            if side == 0 && between(a, b, p) {
                return true;
            }
            if (a.y > p.y) != (b.y > p.y) && (side > 0) == (b.y > a.y) {
                inside = !inside;
            }
        }
        inside
    }
}

fn doubled_area(corners: &[Point]) -> i64 {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|(a, b)| wide(a.x) * wide(b.y) - wide(b.x) * wide(a.y)).sum()
}

const fn wide(x: i32) -> i64 {
    x as i64
}

/// Twice the area of the triangle; positive where `p` lies left of the way from `a` to `b`.
fn cross(a: Point, b: Point, p: Point) -> i64 {
    (wide(b.x) - wide(a.x)) * (wide(p.y) - wide(a.y))
        - (wide(b.y) - wide(a.y)) * (wide(p.x) - wide(a.x))
}

/// For a point on the line through both: does it lie between them?
fn between(a: Point, b: Point, p: Point) -> bool {
    p.x >= a.x.min(b.x) && p.x <= a.x.max(b.x) && p.y >= a.y.min(b.y) && p.y <= a.y.max(b.y)
}

/// Do two edges share a point?
fn meet((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let (c_side, d_side) = (cross(a, b, c).signum(), cross(a, b, d).signum());
    let (a_side, b_side) = (cross(c, d, a).signum(), cross(c, d, b).signum());
    if c_side != d_side && a_side != b_side {
        return true;
    }
    (c_side == 0 && between(a, b, c))
        || (d_side == 0 && between(a, b, d))
        || (a_side == 0 && between(c, d, a))
        || (b_side == 0 && between(c, d, b))
}

/// Is an end of the first edge nearer than `gap` to the second edge?
fn nearer((p, q): (Point, Point), (a, b): (Point, Point), gap: i32) -> bool {
    [p, q].into_iter().any(|p| {
        let along = (wide(b.x) - wide(a.x), wide(b.y) - wide(a.y));
        let from = (wide(p.x) - wide(a.x), wide(p.y) - wide(a.y));
        let squared = along.0 * along.0 + along.1 * along.1;
        let dot = along.0 * from.0 + along.1 * from.1;
        let gap = i128::from(gap) * i128::from(gap);
        if dot <= 0 || squared == 0 {
            i128::from(from.0 * from.0 + from.1 * from.1) < gap
        } else if dot >= squared {
            let to = (wide(p.x) - wide(b.x), wide(p.y) - wide(b.y));
            i128::from(to.0 * to.0 + to.1 * to.1) < gap
        } else {
            let away = i128::from(cross(a, b, p));
            away * away < gap * i128::from(squared)
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outline(corners: &[(i32, i32)]) -> Outline {
        Outline::new(corners.iter().map(|&(x, y)| Point { x, y }).collect()).unwrap()
    }

    #[test]
    fn what_encloses_nothing_or_crosses_is_no_outline() {
        let new = |corners: &[(i32, i32)]| {
            Outline::new(corners.iter().map(|&(x, y)| Point { x, y }).collect())
        };
        assert_eq!(new(&[(0, 0), (5, 5)]), Err(NoOutline::Empty));
        assert_eq!(new(&[(0, 0), (5, 5), (10, 10)]), Err(NoOutline::Empty));
        assert_eq!(new(&[(0, 0), (10, 10), (10, 0), (0, 20)]), Err(NoOutline::Crossed));
        assert_eq!(new(&[(0, 0), (MOST + 1, 0), (0, 9)]), Err(NoOutline::TooLarge));
        // Clockwise comes out counter-clockwise, and 3 times 4 is 12.
        assert_eq!(outline(&[(0, 0), (0, 4), (3, 4), (3, 0)]).area(), 12);
    }

    /// Distances by hand: a corner three right of and four above an edge's end is five away.
    #[test]
    fn nearness_is_exact() {
        let square = outline(&[(0, 0), (10, 0), (10, 10), (0, 10)]);
        let other = square.moved(13, 14);
        assert!(!square.nearer_than(&other, 5));
        assert!(square.nearer_than(&other, 6));
        let inner = outline(&[(4, 4), (6, 4), (5, 6)]);
        assert!(square.nearer_than(&inner, 0) && inner.nearer_than(&square, 0));
        // A notch: inside the bounds of a V and still apart from it.
        let vee = outline(&[(0, 0), (100, 0), (100, 100), (50, 20), (0, 100)]);
        let drop = outline(&[(48, 60), (52, 60), (50, 64)]);
        assert!(!vee.nearer_than(&drop, 10));
    }

    #[test]
    fn four_quarters_are_one_turn() {
        let shape = outline(&[(0, 0), (30, 0), (10, 7)]);
        assert_eq!(shape.turned(1).turned(3), shape);
        assert_eq!(shape.turned(1).bounds().width, shape.bounds().height);
        assert_eq!(shape.turned(1).area(), shape.area());
    }
}
