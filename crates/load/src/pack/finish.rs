//! From places to pouches in tenths of a millimetre, with masses and clearances.

use super::fills::Plan;
use super::kinds::{Item, Kind, Kinds, Places};
use super::lay::Slot;
use super::rows::{Row, begins, lies_flat};
use super::trays::Found;
use super::{Bag, Layer, Packing, Placed, Task, bounded, extra};
use crate::chamber::{Face, Tray};
use crate::geometry::{PER_MM, Rect};

/// Empty trays, all pouches left.
pub fn nothing(bags: &[Bag], layers: Vec<Layer>) -> Packing {
    Packing { layers, left: (0..bags.len()).collect(), bound: 0, mass_g: 0 }
}

/// Mass of pouches, grams; stays at the largest number where it would not go in.
pub fn mass(bags: &[Bag], placed: &[Placed]) -> u32 {
    let own = |placed: &Placed| bags.get(placed.bag).map_or(0, |bag| bag.mass_g);
    placed.iter().map(own).fold(0, u32::saturating_add)
}

/// Puts the layers together.
pub fn packing(bags: &[Bag], layers: Vec<Layer>, bound: usize) -> Packing {
    let mut inside = vec![false; bags.len()];
    let all: Vec<Placed> = layers.iter().flat_map(|layer| layer.placed.clone()).collect();
    for placed in &all {
        if let Some(own) = inside.get_mut(placed.bag) {
            *own = true;
        }
    }
    let left = (0..bags.len()).filter(|&bag| !inside[bag]).collect();
    Packing { layers, left, bound, mass_g: mass(bags, &all) }
}

/// A layer of this size with these pouches.
pub fn layer(bags: &[Bag], tray: (usize, u32), size: (i32, i32), placed: Vec<Placed>) -> Layer {
    let free = |placed: &Placed| {
        let r = &placed.rect;
        r.x.min(r.y).min(size.0 - r.right()).min(size.1 - r.far())
    };
    let clearance = placed.iter().map(free).min();
    let mass_g = mass(bags, &placed).saturating_add(tray.1);
    Layer { tray: tray.0, size, placed, mass_g, clearance }
}

/// The pouches in the places of the plans.
pub fn finish(task: &Task, kinds: &Kinds, found: &Found) -> Packing {
    let mut numbers = Places::default();
    for (plan, &class) in found.plans.iter().zip(&task.trays) {
        let own = &mut numbers[task.classes[class].rank];
        own.iter_mut().zip(plan.numbers()).for_each(|(all, own)| *all += own);
    }
    let forms = numbers.map(|own| kinds.running(&own));
    let mut hosts = Hosts::new(kinds, &kinds.chosen(&forms, task.most_g), &numbers);
    let layers = task.inside.trays.iter().enumerate().map(|(at, tray)| {
        hosts.rank = task.trays.get(at).map_or(0, |&class| task.classes[class].rank);
        let placed = match found.plans.get(at) {
            Some(Plan::Flat(slots)) => flat(task, kinds, &mut hosts, slots),
            Some(Plan::Rows { across, rows }) => in_rows(task, tray, &mut hosts, (*across, rows)),
            None => Vec::new(),
        };
        let size = (bounded(tray.width_mm) * PER_MM, bounded(tray.depth_mm) * PER_MM);
        let placed = middle(task, tray, placed);
        layer(task.bags, (at, tray.mass_g), size, placed)
    });
    packing(task.bags, layers.collect(), found.bound as usize)
}

/// Who goes into the places of each height and kind, in the order in which the places come.
struct Hosts {
    waiting: Vec<Vec<Vec<Option<usize>>>>,
    rank: usize,
}

impl Hosts {
    /// As they are counted in [`Kinds::held`]: low trays first, each place takes the largest that
    /// is without one. Some places stay empty.
    fn new(kinds: &Kinds, chosen: &[Item], places: &Places) -> Self {
        let mut without: Vec<Vec<usize>> = vec![Vec::new(); kinds.all.len()];
        let mut waiting = Vec::new();
        for (rank, places) in places.iter().enumerate() {
            for item in chosen.iter().rev().filter(|item| item.rank == rank) {
                without[item.kind].push(item.bag);
            }
            let mut of_rank: Vec<Vec<Option<usize>>> = vec![Vec::new(); kinds.all.len()];
            for kind in (0..kinds.all.len()).rev() {
                let least = if kinds.chain { 0 } else { kind };
                for _ in 0..places[kind] {
                    of_rank[kind].push((least..=kind).rev().find_map(|size| without[size].pop()));
                }
                of_rank[kind].reverse();
            }
            waiting.push(of_rank);
        }
        Self { waiting, rank: 0 }
    }

    fn next(&mut self, kind: usize) -> Option<usize> {
        self.waiting.get_mut(self.rank)?.get_mut(kind)?.pop()?
    }
}

/// Sides of a pouch as a kind has them.
fn sides(bag: &Bag) -> Kind {
    let (w, l) = (bounded(bag.width_mm), bounded(bag.length_mm));
    Kind { short: w.min(l), long: w.max(l) }
}

/// Does its length go across, when its long side does (or does not)?
const fn is_across(bag: &Bag, long_across: bool) -> bool {
    if bag.length_mm >= bag.width_mm {
        long_across && bag.length_mm != bag.width_mm
    } else {
        !long_across
    }
}

fn rect(x: i32, y: i32, (w, h): (i32, i32)) -> Rect {
    Rect { x: x * PER_MM, y: y * PER_MM, width: w * PER_MM, height: h * PER_MM }
}

fn flat(task: &Task, kinds: &Kinds, hosts: &mut Hosts, slots: &[Slot]) -> Vec<Placed> {
    let mut slots = slots.to_vec();
    slots.sort_by_key(|slot| (slot.y, slot.x));
    let wall = bounded(task.inside.wall_mm);
    let place = |slot: &Slot| {
        let at = hosts.next(slot.kind)?;
        let bag = task.bags.get(at)?;
        let (own, place) = (sides(bag).sides(slot.turned), kinds.all[slot.kind].sides(slot.turned));
        // A smaller one lies in the middle of its place.
        let free = (place.0 - extra(task.inside) - own.0, place.1 - extra(task.inside) - own.1);
        let rect = rect(wall + slot.x + free.0 / 2, wall + slot.y + free.1 / 2, own);
        Some(Placed { bag: at, rect, across: is_across(bag, slot.turned), up: task.inside.face })
    };
    slots.iter().filter_map(place).collect()
}

fn in_rows(
    task: &Task,
    tray: &Tray,
    hosts: &mut Hosts,
    (across, rows): (bool, &[Row]),
) -> Vec<Placed> {
    let room = super::room(tray, task.inside);
    let room = if across { room.0 } else { room.1 };
    let (wall, between) = (bounded(task.inside.wall_mm), bounded(task.inside.between_mm));
    let mut placed = Vec::new();
    let mut beside = 0;
    for row in rows {
        let mut bags: Vec<(usize, &Bag)> = row
            .kinds
            .iter()
            .filter_map(|&kind| hosts.next(kind))
            .filter_map(|at| Some((at, task.bags.get(at)?)))
            .collect();
        // `turned` counts along the row: as it is, the short side lies along it.
        let along = |bag: &Bag| sides(bag).sides(row.turned).0;
        bags.sort_by_key(|(_, bag)| !lies_flat(along(bag)));
        let lengths: Vec<i32> = bags.iter().map(|(_, bag)| along(bag)).collect();
        let mut up = task.inside.face;
        let mut widest = 0;
        for ((at, bag), (begin, over)) in bags.into_iter().zip(begins(&lengths, between)) {
            // Only where sizes were rounded: a smaller one that has to lie flat takes more room.
            if begin + along(bag) > room {
                continue;
            }
            up = if over { other(up) } else { task.inside.face };
            let (length, cross) = sides(bag).sides(row.turned);
            widest = widest.max(cross);
            let rect = if across {
                rect(wall + begin, wall + beside, (length, cross))
            } else {
                rect(wall + beside, wall + begin, (cross, length))
            };
            // Its long side goes across where it lies along a row that does, or beside one that does not.
            placed.push(Placed { bag: at, rect, across: is_across(bag, row.turned == across), up });
        }
        if widest > 0 {
            beside += widest + between;
        }
    }
    placed
}

const fn other(face: Face) -> Face {
    match face {
        Face::Paper => Face::Film,
        Face::Film => Face::Paper,
    }
}

/// Moves all pouches of a tray together into its middle, by whole millimetres: more clearance on
/// the tighter side.
fn middle(task: &Task, tray: &Tray, mut placed: Vec<Placed>) -> Vec<Placed> {
    let wall = bounded(task.inside.wall_mm);
    let right = placed.iter().map(|p| p.rect.right()).max().unwrap_or(0);
    let far = placed.iter().map(|p| p.rect.far()).max().unwrap_or(0);
    let half = |free: i32| free.max(0) / PER_MM / 2 * PER_MM;
    let x = half((bounded(tray.width_mm) - wall) * PER_MM - right);
    let y = half((bounded(tray.depth_mm) - wall) * PER_MM - far);
    for own in &mut placed {
        own.rect.x += x;
        own.rect.y += y;
    }
    placed
}
