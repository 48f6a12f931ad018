//! Pouches on the trays of one machine: as many as go in, and how many could at best.
//!
//! ```
//! use load::chamber::{Chamber, Face, Inside, Pattern, Tray};
//! use load::pack::{Bag, STEPS, pack};
//! let inside = Inside {
//!     chamber: Chamber::Round { diameter_mm: 250, depth_mm: 350 },
//!     trays: vec![Tray { width_mm: 190, depth_mm: 290, height_mm: 40, mass_g: 300 }],
//!     rack: None,
//!     pattern: Pattern::Flat,
//!     face: Face::Paper,
//!     wall_mm: 5,
//!     between_mm: 5,
//!     manual_page: None,
//! };
//! let bag = Bag { width_mm: 90, length_mm: 165, thick_mm: 15, mass_g: 60 };
//! let packing = pack(&[bag; 4], &inside, None, STEPS);
//! // Two across would need 185 mm and there are 180: they lie turned, one behind the other.
//! assert_eq!((packing.count(), packing.bound), (2, 2));
//! ```

mod fills;
mod finish;
mod kinds;
mod lay;
mod rack;
mod rows;
mod scales;
#[cfg(test)]
mod tests;
mod trays;

use crate::chamber::{Face, Inside, Pattern, Tray};
use crate::geometry::{MOST, PER_MM, Rect};
use fills::{Class, Counting};
use kinds::{Kind, Kinds, Rounded};
use trays::{Found, Trays};

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
///
/// A pouch without width or length is in none. A room that [`Inside::check`] refuses is still
/// answered: measures above two metres count as two metres, trays after the twelfth stay empty, and
/// without a rack nothing stands on edge.
#[must_use]
pub fn pack(bags: &[Bag], inside: &Inside, most_g: Option<u32>, steps: u32) -> Packing {
    match (inside.pattern, inside.rack) {
        (Pattern::OnEdge, Some(rack)) => rack::pack(bags, inside, &rack, most_g),
        (Pattern::OnEdge, None) => finish::nothing(bags, Vec::new()),
        _ => on_trays(bags, inside, most_g, steps),
    }
}

/// Steps of search that a page asks for.
pub const STEPS: u32 = 20_000;

/// Trays that are looked at: more than [`Inside::check`] allows stay empty.
const TRAYS: usize = 12;

/// The largest measure, mm.
const MOST_MM: u32 = (MOST / PER_MM) as u32;

/// A measure of at most two metres.
fn bounded(mm: u32) -> i32 {
    i32::try_from(mm.min(MOST_MM)).unwrap_or(MOST / PER_MM)
}

/// What pouches and trays are to the search.
struct Task<'a> {
    bags: &'a [Bag],
    inside: &'a Inside,
    most_g: Option<u32>,
    /// Classes without fillings.
    classes: Vec<Class>,
    trays: Vec<usize>,
    fits: Vec<(usize, Kind)>,
}

fn on_trays(bags: &[Bag], inside: &Inside, most_g: Option<u32>, steps: u32) -> Packing {
    let heights = heights(inside);
    let (classes, trays) = classes(inside, &heights);
    let fits = fits(bags, inside, &heights, &classes);
    let task = Task { bags, inside, most_g, classes, trays, fits };
    let up = task.kinds(Rounded::Up);
    let down = task.kinds(Rounded::Down);
    let one = up.all == down.all;
    let mut found = task.search(&up, if one { steps } else { steps / 2 });
    if !one {
        found.bound = task.rounded_down(&down, steps / 2);
    }
    found.bound = found.bound.min(task.by_area()).max(found.count);
    finish::finish(&task, &up, &found)
}

/// The different free heights, low ones first.
fn heights(inside: &Inside) -> Vec<u32> {
    let mut heights: Vec<u32> = inside.trays.iter().take(TRAYS).map(|tray| tray.height_mm).collect();
    heights.sort_unstable();
    heights.dedup();
    heights
}

/// The room of a tray without its edge, mm.
fn room(tray: &Tray, inside: &Inside) -> (i32, i32) {
    let wall = 2 * bounded(inside.wall_mm);
    ((bounded(tray.width_mm) - wall).max(0), (bounded(tray.depth_mm) - wall).max(0))
}

/// What a side takes beyond the pouch: a free way beside it where it lies flat.
fn extra(inside: &Inside) -> i32 {
    if inside.pattern == Pattern::Flat { bounded(inside.between_mm) } else { 0 }
}

fn classes(inside: &Inside, heights: &[u32]) -> (Vec<Class>, Vec<usize>) {
    let mut classes: Vec<Class> = Vec::new();
    let mut trays = Vec::new();
    for tray in inside.trays.iter().take(TRAYS) {
        let rank = heights.iter().filter(|&&height| height < tray.height_mm).count();
        let (across, depth) = room(tray, inside);
        let room = if across == 0 || depth == 0 {
            (0, 0)
        } else {
            (across + extra(inside), depth + extra(inside))
        };
        let same = classes.iter().position(|class| class.room == room && class.rank == rank);
        trays.push(same.unwrap_or(classes.len()));
        if same.is_none() {
            classes.push(Class { room, rank, fillings: Vec::new(), never: Vec::new() });
        }
    }
    (classes, trays)
}

/// The pouches that lie on some tray, alone.
fn fits(bags: &[Bag], inside: &Inside, heights: &[u32], classes: &[Class]) -> Vec<(usize, Kind)> {
    let kind = |bag: &Bag| {
        let (short, long) = (bag.width_mm.min(bag.length_mm), bag.width_mm.max(bag.length_mm));
        if short == 0 || long > MOST_MM {
            return None;
        }
        let rank = heights.iter().filter(|&&height| height < bag.thick_mm).count();
        let own = Kind {
            short: bounded(short) + extra(inside),
            long: bounded(long) + extra(inside),
            rank,
        };
        let goes = |class: &Class| {
            let (w, h) = class.room;
            rank <= class.rank && own.short <= w.min(h) && own.long <= w.max(h)
        };
        classes.iter().any(goes).then_some(own)
    };
    let numbered = bags.iter().enumerate();
    numbered.filter_map(|(at, bag)| Some((at, kind(bag)?))).collect()
}

impl Task<'_> {
    fn kinds(&self, rounded: Rounded) -> Kinds {
        let flat = self.inside.pattern == Pattern::Flat;
        let all: Vec<Kind> = self.fits.iter().map(|(_, kind)| *kind).collect();
        Kinds::new(self.bags, &self.fits, rounded, !flat && rows::any_flat(&all))
    }

    fn search(&self, kinds: &Kinds, steps: u32) -> Found {
        let mut classes = self.classes.clone();
        let mut whole = true;
        for class in &mut classes {
            if self.inside.pattern == Pattern::Flat {
                let rules = scales::rules(&kinds.all, class.room.0, class.room.1);
                *class = Counting::of(kinds, &rules, class.clone());
            } else {
                whole &= rows::fillings(kinds, bounded(self.inside.between_mm), class);
            }
        }
        let trays = self.trays.clone();
        let mut trays = Trays { kinds, classes, trays, most_g: self.most_g, whole, steps };
        let all = u32::try_from(self.fits.len()).unwrap_or(u32::MAX);
        if self.inside.pattern == Pattern::Flat {
            let bound = trays.bound();
            let guess = trays.guess(bound);
            trays.search(guess)
        } else {
            let bound = if whole { trays.bound() } else { all };
            trays.search(Found { plans: Vec::new(), count: 0, bound })
        }
    }

    /// The bound for more sizes than are told apart. Where some lie flat in a row and some do not,
    /// a shorter one may take more: then only area counts.
    fn rounded_down(&self, down: &Kinds, steps: u32) -> u32 {
        let mixed = self.inside.pattern == Pattern::Overlapped && rows::any_flat(&down.all);
        let all = u32::try_from(self.fits.len()).unwrap_or(u32::MAX);
        if mixed { all } else { self.search(down, steps).bound }
    }

    /// So many by area alone, the small ones first. Overlapped: what counts of each is what the
    /// next one does not cover, and of the tray what is left when each row has its first overlap.
    fn by_area(&self) -> u32 {
        let flat = self.inside.pattern == Pattern::Flat;
        let overlap = i64::from(crate::chamber::OVERLAP_MM);
        let between = i64::from(bounded(self.inside.between_mm));
        let need = |kind: &Kind| {
            let (short, long) = (i64::from(kind.short), i64::from(kind.long));
            if flat {
                return short * long;
            }
            let row = |along: i64, cross: i64| (along - overlap).max(0) * (cross + between);
            row(short, long).min(row(long, short))
        };
        let room = |&class: &usize| {
            let (w, h) = self.classes.get(class).map_or((0, 0), |class| class.room);
            let (w, h) = (i64::from(w), i64::from(h));
            let row = |along: i64, cross: i64| (along - overlap).max(0) * (cross + between);
            if flat { w * h } else { row(w, h).max(row(h, w)) }
        };
        let mut needs: Vec<i64> = self.fits.iter().map(|(_, kind)| need(kind)).collect();
        needs.sort_unstable();
        let mut left: i64 = self.trays.iter().map(room).sum();
        let held = needs.iter().take_while(|&&need| {
            left -= need;
            left >= 0
        });
        u32::try_from(held.count()).unwrap_or(u32::MAX)
    }
}
