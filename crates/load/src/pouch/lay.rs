//! Laying pieces into one room: rows first, then a search on a fine grid.
//!
//! The rectangle around all pieces may be three quarters of the face. So rooms of that area are cut
//! from the face, wide and low to narrow and long, and each is filled from the near end.

use super::grid::{ACROSS, ALONG, Ground, Stamp};
use super::{APART_MM, MOST_FULL};
use crate::geometry::{Outline, PER_MM, Rect};
use std::collections::BTreeMap;

/// Between two pieces, tenths of a millimetre.
pub(super) const APART: i32 = APART_MM as i32 * PER_MM;
/// With more pieces than this, rows have to do.
pub(super) const MOST_SEARCHED: usize = 60;

/// What an attempt costs besides its steps.
const STEPS_OF_ATTEMPT: u64 = 50;

/// A piece in its place: which of those that were to be laid, and where in the room.
pub(super) type Spot = (usize, Outline);

/// A part of the face that is filled, tenths of a millimetre.
#[derive(Debug, Clone, Copy)]
struct Room {
    width: i32,
    height: i32,
    /// Side of a cell of the grid for this face.
    cell: i32,
}

/// One shape in its turns, each at the origin.
#[derive(Debug)]
struct Turns(Vec<Outline>);

/// The different shapes of a set, and their cells.
#[derive(Debug)]
pub(super) struct Shapes {
    turns: Vec<Turns>,
    /// For each size of cell: for each shape its turns. Made when they are first asked for.
    stamps: BTreeMap<i32, Vec<Vec<Option<Stamp>>>>,
    /// Steps of search that are left for the whole set.
    pub steps: u64,
}

/// A fixed row of numbers that look unordered: the same search for the same set.
struct Mix(u64);

impl Mix {
    fn below(&mut self, most: u64) -> u64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % most.max(1)
    }
}

/// How one attempt goes about it.
struct Way {
    /// Pieces in the order in which they are laid.
    order: Vec<usize>,
    /// Which turns of each piece are tried, as bits.
    turns: Vec<u8>,
    /// Prefer what ends nearest; otherwise what begins nearest.
    by_end: bool,
    /// Leave off at the first piece that finds no place.
    all: bool,
}

impl Shapes {
    /// From outlines at the origin, with so many steps to search.
    pub fn new(outlines: Vec<Outline>, steps: u64) -> Self {
        let turns = outlines.into_iter().map(|outline| {
            let mut turns: Vec<Outline> = Vec::new();
            for quarters in 0..4 {
                let turned = outline.turned(quarters).at_origin();
                let same = |known: &Outline| {
                    let sorted = |outline: &Outline| {
                        let mut corners = outline.corners().to_vec();
                        corners.sort_unstable();
                        corners
                    };
                    sorted(known) == sorted(&turned)
                };
                if !turns.iter().any(same) {
                    turns.push(turned);
                }
            }
            Turns(turns)
        });
        Self { turns: turns.collect(), stamps: BTreeMap::new(), steps }
    }

    /// How many there are.
    pub fn count(&self) -> usize {
        self.turns.len()
    }

    /// Area of a shape, hundredths of a square millimetre.
    pub fn area(&self, shape: usize) -> i64 {
        self.turns[shape].0[0].area()
    }

    /// Does it go into the face, alone?
    pub fn fits_alone(&self, shape: usize, face: &Rect) -> bool {
        self.alone(shape, face).is_some()
    }

    fn alone(&self, shape: usize, face: &Rect) -> Option<&Outline> {
        self.turns[shape].0.iter().find(|turn| {
            let bounds = turn.bounds();
            bounds.width <= face.width && bounds.height <= face.height && allowed(&bounds, face)
        })
    }

    /// Can these certainly not all lie in the face?
    fn hopeless(&self, shapes: &[usize], face: &Rect) -> bool {
        let area: i64 = shapes.iter().map(|&shape| self.area(shape)).sum();
        area * 100 > face.area() * i64::from(MOST_FULL)
            || shapes.iter().any(|&shape| !self.fits_alone(shape, face))
    }

    /// All of these shapes in the face, in the order of `shapes`; `None` where no way is found
    /// within `most` steps.
    pub fn lay(&mut self, shapes: &[usize], face: &Rect, most: u64) -> Option<Vec<Spot>> {
        if self.hopeless(shapes, face) {
            return None;
        }
        let mut spots = self.lay_rows(shapes, face).or_else(|| self.search(shapes, face, most))?;
        spots.sort_unstable_by_key(|spot| spot.0);
        apart(&spots, face).then_some(spots)
    }

    /// As many of these shapes as one way brings in, always the first; the rest stays out.
    pub fn fill(&mut self, shapes: &[usize], face: &Rect) -> Vec<Spot> {
        let mut best: Vec<Spot> = Vec::new();
        let few = &shapes[..shapes.len().min(MOST_SEARCHED)];
        for room in rooms(face) {
            let mut ways = vec![self.rows(shapes, room, false)];
            ways.push(self.rows(shapes, room, true));
            if self.steps > 0 {
                let way = self.first_way(few, false);
                let mut steps = self.steps;
                ways.push(self.attempt(few, room, &way, &mut steps));
                self.steps = steps;
            }
            for spots in ways {
                let first = spots.iter().any(|spot| spot.0 == 0);
                if first && spots.len() > best.len() && apart(&spots, face) {
                    best = spots;
                }
            }
        }
        if best.is_empty() {
            best.extend(shapes.first().and_then(|&s| self.alone(s, face)).map(|o| (0, o.clone())));
        }
        best.sort_unstable_by_key(|spot| spot.0);
        best
    }

    fn lay_rows(&self, shapes: &[usize], face: &Rect) -> Option<Vec<Spot>> {
        if let [shape] = *shapes {
            return self.alone(shape, face).map(|outline| vec![(0, outline.clone())]);
        }
        let mut order: Vec<usize> = (0..shapes.len()).collect();
        order.sort_by_key(|&i| std::cmp::Reverse(long(&self.turns[shapes[i]].0[0])));
        let sorted: Vec<usize> = order.iter().map(|&i| shapes[i]).collect();
        let found = rooms(face).into_iter().find_map(|room| {
            [false, true]
                .into_iter()
                .map(|flat| self.rows(&sorted, room, flat))
                .find(|spots| spots.len() == shapes.len())
        })?;
        Some(found.into_iter().map(|(i, outline)| (order[i], outline)).collect())
    }

    /// Rows from the near end, as many pieces from the front as go in; long ones along the pouch, or
    /// `flat` across it.
    fn rows(&self, shapes: &[usize], room: Room, flat: bool) -> Vec<Spot> {
        let Room { width, height, .. } = room;
        let mut spots = Vec::new();
        let (mut x, mut y, mut row) = (0, 0, 0);
        for (i, &shape) in shapes.iter().enumerate() {
            let fits =
                |turn: &&Outline| turn.bounds().width <= width && turn.bounds().height <= height;
            let turns = || self.turns[shape].0.iter().filter(fits);
            let upright = |turn: &&Outline| turn.bounds().height;
            let turn =
                if flat { turns().min_by_key(upright) } else { turns().rev().max_by_key(upright) };
            let Some(turn) = turn else { break };
            let bounds = turn.bounds();
            if x > 0 && x + bounds.width > width {
                (x, y, row) = (0, y + row + APART, 0);
            }
            if y + bounds.height > height {
                break;
            }
            spots.push((i, turn.moved(x, y)));
            x += bounds.width + APART;
            row = row.max(bounds.height);
        }
        spots
    }

    fn search(&mut self, shapes: &[usize], face: &Rect, most: u64) -> Option<Vec<Spot>> {
        if shapes.len() > MOST_SEARCHED || self.steps == 0 {
            return None;
        }
        let mut left = most.min(self.steps);
        self.steps -= left;
        let mut mix = Mix(shapes.len() as u64);
        let mut way = self.first_way(shapes, true);
        let mut next = rooms(face);
        next.extend(self.rooms_of(shapes, face));
        let found = 'found: loop {
            let count = next.len() as u64;
            for &room in &next {
                let spots = self.attempt(shapes, room, &way, &mut left);
                if spots.len() == shapes.len() {
                    break 'found Some(spots);
                }
                // Also an attempt that ends at once has cost something.
                left = left.saturating_sub(STEPS_OF_ATTEMPT);
                if left == 0 {
                    break 'found None;
                }
            }
            way = self.next_way(shapes, &mut mix);
            let any = (0..count)
                .filter_map(|_| room(face, face.width * (750 + mix.below(251) as i32) / 1000));
            next = any.collect();
        };
        self.steps += left;
        found
    }

    /// Rooms that are just as wide, or just as long, as the largest piece.
    fn rooms_of(&self, shapes: &[usize], face: &Rect) -> Vec<Room> {
        let largest = shapes.iter().max_by_key(|&&shape| self.turns[shape].0[0].bounds().area());
        let turns = largest.iter().flat_map(|&&shape| &self.turns[shape].0).map(Outline::bounds);
        let widths = turns.flat_map(|bounds| {
            let across = most_area(face).checked_div(i64::from(bounds.height)).unwrap_or(0);
            [bounds.width, across.min(i64::from(face.width)) as i32]
        });
        let mut widths: Vec<i32> = widths.filter(|width| *width <= face.width).collect();
        widths.sort_unstable();
        widths.dedup();
        widths.into_iter().filter_map(|width| room(face, width)).collect()
    }

    /// The largest first, all turns.
    fn first_way(&self, shapes: &[usize], all: bool) -> Way {
        let mut order: Vec<usize> = (0..shapes.len()).collect();
        order.sort_by_key(|&i| std::cmp::Reverse(self.turns[shapes[i]].0[0].bounds().area()));
        Way { order, turns: vec![0b1111; shapes.len()], by_end: true, all }
    }

    /// Larger ones rather first, each with some of its turns.
    fn next_way(&self, shapes: &[usize], mix: &mut Mix) -> Way {
        let mut keyed: Vec<(i64, usize)> = (0..shapes.len())
            .map(|i| {
                let area = self.turns[shapes[i]].0[0].bounds().area();
                (-(area / 100) * (50 + mix.below(200) as i64), i)
            })
            .collect();
        keyed.sort_unstable();
        let order = keyed.into_iter().map(|(_, i)| i).collect();
        let turns = shapes.iter().map(|_| 1 + mix.below(15) as u8).collect();
        Way { order, turns, by_end: mix.below(3) > 0, all: true }
    }

    /// One way of filling a room.
    fn attempt(&mut self, shapes: &[usize], room: Room, way: &Way, steps: &mut u64) -> Vec<Spot> {
        let Room { width, height, cell } = room;
        let turns = &self.turns;
        let stamps = self.stamps.entry(cell).or_insert_with(|| {
            let stamp = |turns: &Turns| turns.0.iter().map(|turn| Stamp::new(turn, cell)).collect();
            turns.iter().map(stamp).collect()
        });
        let mut ground = Ground::new((width / cell, height / cell), APART, cell);
        // A row that had no room for a shape has none later.
        let mut from: BTreeMap<(usize, usize), usize> = BTreeMap::new();
        let mut spots: Vec<Spot> = Vec::new();
        for &i in &way.order {
            let shape = shapes[i];
            let best = stamps[shape].iter().enumerate().filter_map(|(turn, stamp)| {
                let stamp = stamp.as_ref().filter(|_| way.turns[i] >> turn & 1 == 1)?;
                let start = from.entry((shape, turn)).or_insert(0);
                let Some((x, y)) = ground.find(stamp, *start, steps) else {
                    *start = usize::MAX;
                    return None;
                };
                *start = y;
                let end = if way.by_end { y + stamp.height() } else { y };
                Some((end, x + stamp.width, turn, (x, y), stamp))
            });
            let Some((_, _, turn, (x, y), stamp)) = best.min_by_key(|b| (b.0, b.1, b.2)) else {
                if way.all {
                    break;
                }
                continue;
            };
            ground.put(stamp, x, y);
            spots.push((i, turns[shape].0[turn].moved(x * cell, y as i32 * cell)));
        }
        spots
    }
}

fn long(outline: &Outline) -> i32 {
    outline.bounds().width.max(outline.bounds().height)
}

fn allowed(around: &Rect, face: &Rect) -> bool {
    around.area() * 100 <= face.area() * i64::from(MOST_FULL)
}

/// The rectangle around pieces.
pub(super) fn around(spots: &[Spot]) -> Option<Rect> {
    spots.iter().map(|spot| spot.1.bounds()).reduce(|a, b| {
        let (x, y) = (a.x.min(b.x), a.y.min(b.y));
        Rect { x, y, width: a.right().max(b.right()) - x, height: a.far().max(b.far()) - y }
    })
}

/// Is every rule kept? Asked of every answer, exactly and not by the grid.
fn apart(spots: &[Spot], face: &Rect) -> bool {
    let fits = around(spots).is_some_and(|around| {
        around.width <= face.width && around.height <= face.height && allowed(&around, face)
    });
    // Rows keep apart by how they are made; so many pairs are not looked at again.
    let pairs = spots.len() > MOST_SEARCHED
        || spots
            .iter()
            .enumerate()
            .all(|(i, a)| spots[i + 1..].iter().all(|b| !a.1.nearer_than(&b.1, APART)));
    fits && pairs
}

fn most_area(face: &Rect) -> i64 {
    face.area() * i64::from(MOST_FULL) / 100
}

/// The room of this width that is as long as the rules allow.
fn room(face: &Rect, width: i32) -> Option<Room> {
    let height = most_area(face).checked_div(i64::from(width))?.min(i64::from(face.height));
    Some(Room { width, height: height as i32, cell: cell(face) })
}

/// Some rooms, tenths of a millimetre, the widest first.
fn rooms(face: &Rect) -> Vec<Room> {
    let percents = [100, 95, 90, 85, 80, 75];
    percents.into_iter().filter_map(|percent| room(face, face.width * percent / 100)).collect()
}

/// Side of a cell: a millimetre, or more where the face is wider or longer than the grid.
fn cell(face: &Rect) -> i32 {
    let most = |length: i32, cells: i32| length / cells + i32::from(length % cells > 0);
    PER_MM.max(most(face.width, ACROSS)).max(most(face.height, ALONG))
}
