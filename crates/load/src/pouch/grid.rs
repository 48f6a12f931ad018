//! Pieces as cells of a fine grid, so that a free place is found a whole row at a time.
//!
//! A piece takes every cell that its inside touches, and what lies is kept clear by every cell that
//! is nearer than the gap: what fits here is truly apart. What truly fits may be missed by less than
//! two cells.

use crate::geometry::{Outline, Point};

/// Cells in a row: the bits of a word.
pub(super) const ACROSS: i32 = 128;
/// Most rows.
pub(super) const ALONG: i32 = 512;

/// A run of cells in one row of a piece.
#[derive(Debug, Clone, Copy)]
struct Run {
    row: usize,
    from: u32,
    /// The longest power of two that is not longer than the run.
    log: usize,
    /// Where a window of that length begins that ends with the run.
    last: u32,
}

/// A piece in one turn.
#[derive(Debug)]
pub(super) struct Stamp {
    /// Cells across.
    pub width: i32,
    rows: Vec<u128>,
    runs: Vec<Run>,
}

/// The bits from `from` up to, not with, `to`.
const fn cells(from: i64, to: i64) -> u128 {
    let (from, to) = (if from < 0 { 0 } else { from }, if to > 128 { 128 } else { to });
    if from >= to {
        return 0;
    }
    let all = if to - from == 128 { u128::MAX } else { (1 << (to - from)) - 1 };
    all << from
}

impl Stamp {
    /// From an outline at the origin; `None` where it is larger than the grid.
    pub fn new(outline: &Outline, cell: i32) -> Option<Self> {
        let bounds = outline.bounds();
        let width = bounds.width.div_euclid(cell) + i32::from(bounds.width % cell > 0);
        let height = bounds.height.div_euclid(cell) + i32::from(bounds.height % cell > 0);
        if width > ACROSS || height > ALONG || width < 1 || height < 1 {
            return None;
        }
        let rows: Vec<u128> = (0..height).map(|row| row_of(outline, row * cell, cell)).collect();
        let mut runs = Vec::new();
        // Rows far apart first: they say soonest that there is no room.
        let spread = (0..16).flat_map(|start| (start..rows.len()).step_by(16));
        for row in spread {
            let mut rest = rows[row];
            while rest != 0 {
                let from = rest.trailing_zeros();
                let length = (rest >> from).trailing_ones();
                let log = length.ilog2();
                runs.push(Run { row, from, log: log as usize, last: from + length - (1 << log) });
                rest &= !cells(i64::from(from), i64::from(from + length));
            }
        }
        Some(Self { width, rows, runs })
    }

    /// Cells along.
    pub fn height(&self) -> usize {
        self.rows.len()
    }
}

/// The cells between `low` and `low + cell` that the inside of the outline touches.
fn row_of(outline: &Outline, low: i32, cell: i32) -> u128 {
    let (low, high, cell) = (i64::from(low), i64::from(low + cell), i64::from(cell));
    let mut row = 0;
    // Doubled, so that the middle of a row of odd height is whole.
    let middle = low + high;
    let mut crossed: Vec<(i64, i64)> = Vec::new();
    for (a, b) in outline.edges() {
        let (a, b) = if a.y <= b.y { (a, b) } else { (b, a) };
        let (bottom, top) = (i64::from(a.y), i64::from(b.y));
        let level = bottom == top && bottom > low && bottom < high;
        if level || (bottom < high && top > low) {
            let ((p, p_up), (q, q_up)) = if level {
                (ends(i64::from(a.x)), ends(i64::from(b.x)))
            } else {
                (x_at(a, b, low.max(bottom)), x_at(a, b, high.min(top)))
            };
            let (from, to) = (p.min(q), p_up.max(q_up));
            row |= cells(from.div_euclid(cell), -(-to).div_euclid(cell));
        }
        if 2 * bottom <= middle && middle < 2 * top {
            // Twice the x at the middle, which the edge's own cells make up for in rounding.
            crossed.push(x_at_doubled(a, b, middle));
        }
    }
    crossed.sort_unstable();
    for pair in crossed.chunks_exact(2) {
        row |= cells(pair[0].0.div_euclid(2 * cell), -(-pair[1].1).div_euclid(2 * cell));
    }
    row
}

const fn ends(x: i64) -> (i64, i64) {
    (x, x)
}

/// Where an edge that rises from `a` to `b` is at this height, rounded down and up.
fn x_at(a: Point, b: Point, y: i64) -> (i64, i64) {
    let rise = i64::from(b.y) - i64::from(a.y);
    let run = (i64::from(b.x) - i64::from(a.x)) * (y - i64::from(a.y));
    (i64::from(a.x) + run.div_euclid(rise), i64::from(a.x) - (-run).div_euclid(rise))
}

/// Twice [`x_at`] at half of `y`.
fn x_at_doubled(a: Point, b: Point, y: i64) -> (i64, i64) {
    let rise = i64::from(b.y) - i64::from(a.y);
    let run = (i64::from(b.x) - i64::from(a.x)) * (y - 2 * i64::from(a.y));
    (2 * i64::from(a.x) + run.div_euclid(rise), 2 * i64::from(a.x) - (-run).div_euclid(rise))
}

/// What is taken so far.
#[derive(Debug)]
pub(super) struct Ground {
    width: i32,
    /// Bit x of window k of a row: is any of the cells x to x + 2^k taken?
    rows: Vec<[u128; 8]>,
    /// For a row so many away: how far a piece reaches to each side.
    reach: Vec<u32>,
}

impl Ground {
    /// An empty one; pieces keep `gap` from each other.
    pub fn new((width, height): (i32, i32), gap: i32, cell: i32) -> Self {
        // Two cells n apart leave n - 1 cells between them.
        let between = |cells: i32| i64::from((cells - 1).max(0)) * i64::from(cell);
        let near = |dx: i32, dy: i32| {
            between(dx) * between(dx) + between(dy) * between(dy) < i64::from(gap) * i64::from(gap)
        };
        let reach = (0..).take_while(|&dy| near(0, dy));
        let reach = reach.map(|dy| (1..).take_while(|&dx| near(dx, dy)).count() as u32).collect();
        Self { width, rows: vec![[0; 8]; height.max(0) as usize], reach }
    }

    /// The nearest row with room, from row `from` on, and the leftmost place in it. Every run that
    /// is looked at takes one of the `steps`; `None` also where they are used up.
    pub fn find(&self, stamp: &Stamp, from: usize, steps: &mut u64) -> Option<(i32, usize)> {
        let last = self.rows.len().checked_sub(stamp.height())?;
        let places = cells(0, i64::from(self.width - stamp.width + 1));
        if places == 0 {
            return None;
        }
        for y in from..=last {
            let mut free = places;
            for run in &stamp.runs {
                let windows = self.rows[y + run.row][run.log];
                free &= !((windows >> run.from) | (windows >> run.last));
                *steps = steps.saturating_sub(1);
                if free == 0 {
                    break;
                }
            }
            if free != 0 {
                return Some((free.trailing_zeros() as i32, y));
            }
            if *steps == 0 {
                return None;
            }
        }
        None
    }

    /// Takes the cells of a piece and those that are too near to it.
    pub fn put(&mut self, stamp: &Stamp, x: i32, y: usize) {
        let reach = self.reach.len() as i64 - 1;
        for (row, cells) in stamp.rows.iter().enumerate() {
            let mut wide = cells << x;
            let mut grown = 0;
            // Farthest rows first: their reach is the least, and it only grows.
            for away in (0..=reach).rev() {
                let want = self.reach[away as usize];
                while grown < want {
                    wide |= (wide << 1) | (wide >> 1);
                    grown += 1;
                }
                for at in [(y + row) as i64 - away, (y + row) as i64 + away] {
                    if let Some(taken) =
                        usize::try_from(at).ok().and_then(|at| self.rows.get_mut(at))
                    {
                        taken[0] |= wide;
                    }
                }
            }
        }
        let from = (y as i64 - reach).max(0) as usize;
        let to = (y + stamp.height() + reach as usize).min(self.rows.len());
        for windows in &mut self.rows[from..to] {
            for k in 1..8 {
                windows[k] = windows[k - 1] | (windows[k - 1] >> (1 << (k - 1)));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outline(corners: &[(i32, i32)]) -> Outline {
        Outline::new(corners.iter().map(|&(x, y)| Point { x, y }).collect()).unwrap()
    }

    /// Drawn by hand on squared paper.
    #[test]
    fn a_piece_takes_the_cells_that_it_touches() {
        let check = |corners: &[(i32, i32)], expected: &[u128]| {
            let stamp = Stamp::new(&outline(corners), 10).unwrap();
            assert_eq!(stamp.rows, expected, "{corners:?}");
        };
        check(&[(0, 0), (20, 0), (20, 20), (0, 20)], &[0b11, 0b11]);
        check(&[(0, 0), (21, 0), (21, 11), (0, 11)], &[0b111, 0b111]);
        // A triangle: its slope touches the cell beside the diagonal only at corners.
        check(&[(0, 0), (30, 0), (0, 30)], &[0b111, 0b011, 0b001]);
        // A V: the notch stays free.
        check(
            &[(0, 0), (50, 0), (50, 30), (40, 30), (40, 10), (10, 10), (10, 30), (0, 30)],
            &[0b11111, 0b10001, 0b10001],
        );
    }

    #[test]
    fn the_first_free_place_keeps_the_gap() {
        let square = Stamp::new(&outline(&[(0, 0), (20, 0), (20, 20), (0, 20)]), 10).unwrap();
        let mut ground = Ground::new((9, 9), 40, 10);
        let steps = &mut 1_000;
        assert_eq!(ground.find(&square, 0, steps), Some((0, 0)));
        ground.put(&square, 0, 0);
        // Two cells, four apart, two cells: eight of nine.
        assert_eq!(ground.find(&square, 0, steps), Some((6, 0)));
        ground.put(&square, 6, 0);
        assert_eq!(ground.find(&square, 0, steps), Some((0, 6)));
        // Without a step left nothing is found.
        assert_eq!(ground.find(&square, 0, &mut 1), None);
    }
}
