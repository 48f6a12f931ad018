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
//! // Two across would need 185 mm and there are 180. Turned, one behind the other, three take 280
//! // of 280.
//! assert_eq!((packing.count(), packing.bound), (3, 3));
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
mod work;

use crate::chamber::{Face, Inside, Pattern, Tray};
use crate::geometry::{MOST, PER_MM, Rect};
use fills::{Class, Counting};
use kinds::{Fit, Kind, Kinds, MOST_RANKS, Rounded};
use trays::{Found, Real, Trays};
use work::Work;

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
    /// left inner corner of the tray. In a rack: its thickness across, at least a millimetre, in the
    /// middle of the places that it takes; its length in depth.
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

/// Work to count through what the trays may hold, for each search.
const COUNTING: u64 = 12_000_000;

/// Work of each search itself.
const SEARCHING: u64 = 12_000_000;

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
    fits: Vec<Fit>,
}

/// Easier loads first: fewer heights told apart, sizes rounded down where there are many. Their
/// bounds hold for the real load, and their places hold pouches of it, too. The real load itself
/// comes last, and only where those leave something open.
fn on_trays(bags: &[Bag], inside: &Inside, most_g: Option<u32>, steps: u32) -> Packing {
    let task = Task::new(bags, inside, most_g, Ranks { most: MOST_RANKS, rounded: Rounded::Up });
    let (up, down) = (task.kinds(Rounded::Up), task.kinds(Rounded::Down));
    let heights = Ranks::needed(bags, inside).len();
    let bound = task.by_area().min(up.by_mass(most_g));
    let mut best = Found { plans: Vec::new(), count: 0, bound };
    let ranks = task.trays.iter().map(|&class| task.classes[class].rank).collect();
    let mut real = Real { kinds: &up, ranks, same: up.all == down.all, most_g };
    let mut exact = false;
    for most in [1, 2, MOST_RANKS] {
        if best.count < best.bound && !exact {
            let easy = Task::new(bags, inside, most_g, Ranks { most, rounded: Rounded::Down });
            let kinds = easy.kinds(Rounded::Down);
            let bound = easy.search(&kinds, steps, &real, &mut best);
            if easy.certain(&kinds) {
                best.bound = best.bound.min(bound).max(best.count);
            }
            exact = heights <= most && real.same;
        }
    }
    if best.count < best.bound && !exact {
        real.same = true;
        task.search(&up, steps, &real, &mut best);
    }
    if best.count == 0 && best.bound > 0 && bags.len() > 1 {
        return one(&task, &best, steps);
    }
    finish::finish(&task, &up, &best)
}

/// The lightest pouch that fits, alone: where sizes or heights were rounded up so far that nothing
/// found a place.
fn one(task: &Task, best: &Found, steps: u32) -> Packing {
    let light = task.fits.iter().min_by_key(|fit| task.bags.get(fit.bag).map(|bag| bag.mass_g));
    let Some((own, bag)) = light.and_then(|fit| Some((fit.bag, *task.bags.get(fit.bag)?))) else {
        return finish::finish(task, &task.kinds(Rounded::Up), best);
    };
    let mut packing = on_trays(&[bag], task.inside, task.most_g, steps);
    for placed in packing.layers.iter_mut().flat_map(|layer| &mut layer.placed) {
        placed.bag = own;
    }
    let inside = packing.count() > 0;
    packing.left = (0..task.bags.len()).filter(|&at| !inside || at != own).collect();
    packing.bound = best.bound as usize;
    packing
}

/// How heights are told apart: a pouch goes on trays of its own rank and above.
#[derive(Debug, Clone, Copy)]
struct Ranks {
    /// At most so many.
    most: usize,
    /// Up: a pouch whose height is not told apart goes only on the highest. Down: on all above.
    rounded: Rounded,
}

impl Ranks {
    /// The heights that any pouch needs, low ones first.
    fn needed(bags: &[Bag], inside: &Inside) -> Vec<u32> {
        let lowest = |bag: &Bag| {
            let trays = inside.trays.iter().take(TRAYS).map(|tray| tray.height_mm);
            trays.filter(|&height| height >= bag.thick_mm).min()
        };
        let mut needed: Vec<u32> = bags.iter().filter_map(lowest).collect();
        needed.sort_unstable();
        needed.dedup();
        needed
    }

    fn of_bag(self, needed: &[u32], thick_mm: u32) -> Option<usize> {
        let own = needed.iter().position(|&height| height >= thick_mm)?;
        Some(own.min(self.most - 1))
    }

    fn of_tray(self, needed: &[u32], height_mm: u32) -> Option<usize> {
        let own = needed.iter().filter(|&&height| height <= height_mm).count().checked_sub(1)?;
        let last = self.most - 1;
        let below = self.rounded == Rounded::Up && own >= last && own + 1 < needed.len();
        Some(if below { last.saturating_sub(1) } else { own.min(last) })
    }
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

impl<'a> Task<'a> {
    fn new(bags: &'a [Bag], inside: &'a Inside, most_g: Option<u32>, ranks: Ranks) -> Self {
        let needed = Ranks::needed(bags, inside);
        let mut task =
            Self { bags, inside, most_g, classes: Vec::new(), trays: Vec::new(), fits: Vec::new() };
        for tray in inside.trays.iter().take(TRAYS) {
            let (across, depth) = room(tray, inside);
            let rank = ranks.of_tray(&needed, tray.height_mm);
            let room = if across == 0 || depth == 0 || rank.is_none() {
                (0, 0)
            } else {
                (across + extra(inside), depth + extra(inside))
            };
            let rank = rank.unwrap_or(0);
            let same =
                task.classes.iter().position(|class| class.room == room && class.rank == rank);
            task.trays.push(same.unwrap_or(task.classes.len()));
            if same.is_none() {
                task.classes.push(Class { room, rank, fillings: Vec::new(), never: Vec::new() });
            }
        }
        task.fits =
            bags.iter().enumerate().filter_map(|own| task.fit(&needed, ranks, own)).collect();
        task
    }

    /// The pouch, if it lies on some tray, alone.
    fn fit(&self, needed: &[u32], ranks: Ranks, (at, bag): (usize, &Bag)) -> Option<Fit> {
        let (short, long) = (bag.width_mm.min(bag.length_mm), bag.width_mm.max(bag.length_mm));
        if short == 0 || long > MOST_MM {
            return None;
        }
        let kind = Kind { short: bounded(short), long: bounded(long) };
        let goes = |tray: &Tray| {
            let (w, h) = room(tray, self.inside);
            tray.height_mm >= bag.thick_mm && kind.short <= w.min(h) && kind.long <= w.max(h)
        };
        let extra = extra(self.inside);
        let kind = Kind { short: kind.short + extra, long: kind.long + extra };
        let rank = ranks.of_bag(needed, bag.thick_mm)?;
        self.inside.trays.iter().take(TRAYS).any(goes).then_some(Fit { bag: at, kind, rank })
    }

    /// Is the bound of a search with such kinds one for the real load? Where some lie flat in a row
    /// and some do not, a shorter one may take more; then not, if sizes were rounded.
    fn certain(&self, kinds: &Kinds) -> bool {
        let rounded = self.kinds(Rounded::Up).all != kinds.all;
        !(rounded && self.inside.pattern == Pattern::Overlapped && rows::any_flat(&kinds.all))
    }

    fn kinds(&self, rounded: Rounded) -> Kinds {
        let flat = self.inside.pattern == Pattern::Flat;
        let all: Vec<Kind> = self.fits.iter().map(|fit| fit.kind).collect();
        Kinds::new(self.bags, &self.fits, rounded, !flat && rows::any_flat(&all))
    }

    /// Searches; whatever holds more of the real load goes into `best`. Gives the bound.
    fn search(&self, kinds: &Kinds, steps: u32, real: &Real, best: &mut Found) -> u32 {
        let flat = self.inside.pattern == Pattern::Flat;
        let mut classes = self.classes.clone();
        let mut whole = true;
        // Rows are counted through faster, but what was cut short is searched longer.
        let half = if flat { 1 } else { 2 };
        let (mut work, number) = (Work::new(COUNTING / half), classes.len());
        for (at, class) in classes.iter_mut().enumerate() {
            work.share(number - at, |work| {
                if flat {
                    let rules = work.share(2, |work| scales::rules(&kinds.all, class.room, work));
                    *class = Counting::of(kinds, &rules, class.clone(), work);
                } else {
                    whole &= rows::fillings(kinds, bounded(self.inside.between_mm), class, work);
                }
            });
        }
        let trays = self.trays.clone();
        let work = Work::new(SEARCHING / half);
        let mut trays = Trays { kinds, classes, trays, real, best, whole, steps, work };
        let bound = if whole { trays.bound() } else { kinds.by_mass(self.most_g) };
        let start = if flat { trays.guess(bound) } else { trays.greedy(bound) };
        trays.search(start).bound
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
        let mut needs: Vec<i64> = self.fits.iter().map(|fit| need(&fit.kind)).collect();
        needs.sort_unstable();
        let mut left: i64 = self.trays.iter().map(room).sum();
        let held = needs.iter().take_while(|&&need| {
            left -= need;
            left >= 0
        });
        u32::try_from(held.count()).unwrap_or(u32::MAX)
    }
}
