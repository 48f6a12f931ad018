//! Which pieces share a pouch: metals apart, the fewest pouches, then the least pouch.

use super::lay::{Shapes, Spot, around};
use super::{Piece, Size};
use crate::implement::Metal;
use std::collections::{BTreeMap, BTreeSet};

/// Steps to search one size for one choice of pieces.
const STEPS_OF_SIZE: u64 = 100_000;
/// With more pieces than this, not every way to halve them is tried.
const MOST_HALVED: usize = 8;
/// Most ways to spread pieces without a metal over pouches.
const MOST_SPREADS: usize = 64;

/// A pouch: its size, and its pieces where they lie in the room.
pub(super) type Pouch = (usize, Vec<Spot>);

/// Pieces to share out, in their order.
pub(super) struct Share<'a> {
    pub pieces: &'a [Piece],
    /// The least pouch first.
    pub sizes: &'a [Size],
    pub shapes: Shapes,
    /// What was found for the same shapes.
    known: BTreeMap<Vec<usize>, Option<Pouch>>,
}

/// How pieces were shared out.
pub(super) struct Shared {
    pub pouches: Vec<Pouch>,
    /// Metals that had to be kept apart; empty where there are less than two.
    pub metals: BTreeSet<Metal>,
    /// Something was too much for one pouch.
    pub too_full: bool,
}

impl<'a> Share<'a> {
    pub fn new(pieces: &'a [Piece], sizes: &'a [Size], shapes: Shapes) -> Self {
        Self { pieces, sizes, shapes, known: BTreeMap::new() }
    }

    /// Shares all pieces out.
    pub fn all(&mut self) -> Shared {
        let mut groups: BTreeMap<Metal, Vec<usize>> = BTreeMap::new();
        let mut free: Vec<usize> = Vec::new();
        for (i, piece) in self.pieces.iter().enumerate() {
            match piece.metal {
                Some(metal) => groups.entry(metal).or_default().push(i),
                None => free.push(i),
            }
        }
        if groups.len() <= 1 {
            let all: Vec<usize> = (0..self.pieces.len()).collect();
            let pouches = self.one_or_more(&all);
            let too_full = pouches.len() > 1;
            return Shared { pouches, metals: BTreeSet::new(), too_full };
        }
        let metals: BTreeSet<Metal> = groups.keys().copied().collect();
        let groups: Vec<Vec<usize>> = groups.into_values().collect();
        let count = groups.len();
        let pouches = self.spread(groups, &free);
        Shared { too_full: pouches.len() > count, pouches, metals }
    }

    /// One pouch for each group, pieces without a metal where they cost the least.
    fn spread(&mut self, groups: Vec<Vec<usize>>, free: &[usize]) -> Vec<Pouch> {
        let count = groups.len();
        let ways = u32::try_from(free.len()).ok().and_then(|n| count.checked_pow(n));
        // All of them, or all free pieces together with one group each.
        let every = ways.filter(|&ways| ways <= MOST_SPREADS);
        let mut best: Option<(u64, Vec<Pouch>)> = None;
        for way in 0..every.unwrap_or(count) {
            let mut filled = groups.clone();
            let mut rest = way;
            for &piece in free {
                let group = if every.is_some() { rest % count } else { way };
                rest /= count;
                filled[group].push(piece);
            }
            let least = best.as_ref().map_or(u64::MAX, |best| best.0);
            best = self.one_each(&filled, least).or(best);
        }
        if let Some((_, pouches)) = best {
            return pouches;
        }
        // Some group is too much: each by itself, what has no metal with the last.
        let mut groups = groups;
        if let Some(last) = groups.last_mut() {
            last.extend(free);
        }
        groups.iter().flat_map(|group| self.one_or_more(group)).collect()
    }

    /// Each group in one pouch, where that takes less than `least` of pouch.
    fn one_each(&mut self, groups: &[Vec<usize>], least: u64) -> Option<(u64, Vec<Pouch>)> {
        let mut pouches = Vec::new();
        let mut area = 0;
        for group in groups {
            let pouch = self.one(group)?;
            area += self.sizes[pouch.0].area;
            if area >= least {
                return None;
            }
            pouches.push(pouch);
        }
        Some((area, pouches))
    }

    /// All of these in the least pouch that takes them.
    fn one(&mut self, pieces: &[usize]) -> Option<Pouch> {
        let mut pieces = pieces.to_vec();
        pieces.sort_unstable();
        let shapes: Vec<usize> = pieces.iter().map(|&i| self.pieces[i].shape).collect();
        let known = self.known.get(&shapes).cloned();
        let found = known.unwrap_or_else(|| {
            let try_size = |(at, size): (usize, &Size)| {
                self.shapes.lay(&shapes, &size.face, STEPS_OF_SIZE).map(|spots| (at, spots))
            };
            let found = self.sizes.iter().enumerate().find_map(try_size);
            self.known.insert(shapes, found.clone());
            found
        });
        // Equal shapes may be other pieces.
        found.map(|(size, spots)| (size, name(spots, &pieces)))
    }

    fn one_or_more(&mut self, pieces: &[usize]) -> Vec<Pouch> {
        if pieces.is_empty() {
            return Vec::new();
        }
        if let Some(pouch) = self.one(pieces) {
            return vec![pouch];
        }
        if pieces.len() <= MOST_HALVED
            && let Some(two) = self.two(pieces)
        {
            return two;
        }
        self.more(pieces)
    }

    /// The two least pouches of all ways to halve these.
    fn two(&mut self, pieces: &[usize]) -> Option<Vec<Pouch>> {
        let mut best: Option<(u64, Vec<Pouch>)> = None;
        // The first piece is in the second half: no way comes twice.
        for way in 1_usize..1 << (pieces.len() - 1) {
            let side = |first: bool| -> Vec<usize> {
                let in_first = |at: usize| at > 0 && way >> (at - 1) & 1 == 1;
                let these = pieces.iter().enumerate().filter(|(at, _)| in_first(*at) == first);
                these.map(|(_, &piece)| piece).collect()
            };
            let Some(one) = self.one(&side(true)) else { continue };
            if best.as_ref().is_some_and(|best| self.sizes[one.0].area >= best.0) {
                continue;
            }
            let Some(other) = self.one(&side(false)) else { continue };
            let area = self.sizes[one.0].area + self.sizes[other.0].area;
            if best.as_ref().is_none_or(|best| area < best.0) {
                best = Some((area, vec![other, one]));
            }
        }
        best.map(|best| best.1)
    }

    /// Pouch after pouch, each with as many as go in; then each as small as it can be.
    fn more(&mut self, pieces: &[usize]) -> Vec<Pouch> {
        let mut pouches = Vec::new();
        let mut left = pieces.to_vec();
        left.sort_unstable();
        while !left.is_empty() {
            let shapes: Vec<usize> = left.iter().map(|&i| self.pieces[i].shape).collect();
            let mut best: Option<Pouch> = None;
            for (at, size) in self.sizes.iter().enumerate() {
                let spots = self.shapes.fill(&shapes, &size.face);
                if spots.len() > best.as_ref().map_or(0, |best| best.1.len()) {
                    best = Some((at, spots));
                }
            }
            // Each piece was seen to go into some size alone.
            let Some((size, spots)) = best else { break };
            let inside: BTreeSet<usize> = spots.iter().map(|spot| spot.0).collect();
            let taken: Vec<usize> = inside.iter().map(|&at| left[at]).collect();
            let spots = name(spots, &left);
            let small =
                if taken.len() <= super::lay::MOST_SEARCHED { self.one(&taken) } else { None };
            pouches.push(small.unwrap_or((size, spots)));
            let mut at = 0;
            left.retain(|_| {
                at += 1;
                !inside.contains(&(at - 1))
            });
        }
        pouches
    }
}

fn name(spots: Vec<Spot>, pieces: &[usize]) -> Vec<Spot> {
    spots.into_iter().map(|(at, outline)| (pieces[at], outline)).collect()
}

/// Hundredths of the face that the rectangle around these takes, rounded up.
pub(super) fn hundredths(spots: &[Spot], size: &Size) -> u32 {
    let area = around(spots).map_or(0, |around| around.area());
    let full = (area * 100).checked_div(size.face.area()).unwrap_or(100);
    let over = full * size.face.area() < area * 100;
    (full + i64::from(over)) as u32
}
