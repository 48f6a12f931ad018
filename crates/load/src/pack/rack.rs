//! On edge in a rack: fewest places first. Exact.
//!
//! Each stands on its long edge, its width is its height. All look the same way, so that the paper
//! of one is towards the film of the next (common practice, no source). It is drawn as thick as it is,
//! in the middle of the places that it takes.

use super::finish::{layer, nothing, packing};
use super::{Bag, Packing, Placed, bounded};
use crate::chamber::{Inside, Rack};
use crate::geometry::{PER_MM, Rect};

/// Places of a rack that are worked with, as [`Inside::check`] allows.
const PLACES: u32 = 200;

/// A pouch that stands: places, mass, which.
type Standing = (usize, u32, usize);

/// Stands as many as the places and the mass allow.
pub fn pack(bags: &[Bag], inside: &Inside, rack: &Rack, most_g: Option<u32>) -> Packing {
    let pitch = bounded(rack.pitch_mm);
    let (places, depth) = (rack.places.min(PLACES) as usize, bounded(rack.depth_mm));
    let size = (rack.places.min(PLACES) as i32 * pitch * PER_MM, depth * PER_MM);
    let own = |(at, bag): (usize, &Bag)| {
        let goes = bag.width_mm > 0
            && bag.length_mm > 0
            && bag.width_mm <= rack.height_mm
            && bag.length_mm <= rack.depth_mm.min(super::MOST_MM);
        let need = bag.thick_mm.div_ceil(rack.pitch_mm.max(1)).max(1) as usize;
        (goes && rack.pitch_mm > 0 && need <= places).then_some((need, bag.mass_g, at))
    };
    let standing: Vec<Standing> = bags.iter().enumerate().filter_map(own).collect();
    if standing.is_empty() {
        return nothing(bags, vec![layer(bags, (0, rack.mass_g), size, Vec::new())]);
    }
    let limit = most_g.map_or(u64::MAX, u64::from);
    let chosen = fewest_places(standing.clone(), places, limit)
        .unwrap_or_else(|| least_mass(standing, places, limit));
    let mut at = 0;
    let mut placed = Vec::new();
    for (need, _, bag) in chosen {
        let Some(own) = bags.get(bag) else { continue };
        let wide = i32::try_from(need).unwrap_or(0) * pitch;
        // As thick as it is, in the middle of its places.
        let (thick, length) = (bounded(own.thick_mm).clamp(1, wide.max(1)), bounded(own.length_mm));
        let (x, y) = (at + (wide - thick) / 2, (depth - length) / 2);
        let [x, y, width, height] = [x, y, thick, length].map(|mm| mm * PER_MM);
        let rect = Rect { x, y, width, height };
        placed.push(Placed { bag, rect, across: false, up: inside.face });
        at += wide;
    }
    let count = placed.len();
    packing(bags, vec![layer(bags, (0, rack.mass_g), size, placed)], count)
}

/// Fewest places first, the earlier ones of the list; `None` where they weigh too much.
fn fewest_places(mut all: Vec<Standing>, places: usize, limit: u64) -> Option<Vec<Standing>> {
    all.sort_unstable_by_key(|&(need, _, bag)| (need, bag));
    let mut left = places;
    let mut chosen = Vec::new();
    for own in all {
        if own.0 <= left {
            left -= own.0;
            chosen.push(own);
        }
    }
    let mass: u64 = chosen.iter().map(|&(_, mass, _)| u64::from(mass)).sum();
    chosen.sort_unstable_by_key(|&(.., bag)| bag);
    (mass <= limit).then_some(chosen)
}

/// For every number of pouches and of places the least mass; then the largest number that is light
/// enough. Of those with the same need, the light ones come first.
fn least_mass(mut all: Vec<Standing>, places: usize, limit: u64) -> Vec<Standing> {
    all.sort_unstable();
    let size = places + 1;
    // least[places used at most * size + number]: the least mass.
    let mut least = vec![None; size * size];
    (0..size).for_each(|used| least[used * size] = Some(0_u64));
    let mut taken: Vec<(&[Standing], Vec<u8>)> = Vec::new();
    for same in all.chunk_by(|a, b| a.0 == b.0) {
        let need = same.first().map_or(1, |own| own.0);
        let (mut next, mut took) = (least.clone(), vec![0_u8; size * size]);
        let mut mass = 0;
        for (before, own) in same.iter().take(places / need).enumerate() {
            let number = before + 1;
            mass += u64::from(own.1);
            for used in number * need..size {
                for all in number..=used {
                    let from: Option<u64> = least[(used - number * need) * size + all - number];
                    let Some(sum) = from.map(|from| from + mass) else { continue };
                    let at = used * size + all;
                    if sum <= limit && next[at].is_none_or(|old| sum < old) {
                        (next[at], took[at]) = (Some(sum), u8::try_from(number).unwrap_or(u8::MAX));
                    }
                }
            }
        }
        least = next;
        taken.push((same, took));
    }
    let (mut used, mut number) = (places, 0);
    for all in 0..size {
        if least[places * size + all].is_some() {
            number = all;
        }
    }
    let mut chosen: Vec<Standing> = Vec::new();
    for (same, took) in taken.iter().rev() {
        let own = usize::from(took[used * size + number]);
        chosen.extend(same.iter().take(own));
        used -= own * same.first().map_or(1, |own| own.0);
        number -= own;
    }
    chosen.sort_unstable_by_key(|&(.., bag)| bag);
    chosen
}
