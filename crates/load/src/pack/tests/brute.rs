//! Every way there is, as plainly as can be written.

use super::*;

fn light(bags: &[Bag], chosen: &[usize], limit: Option<u32>) -> bool {
    let mass: u32 = chosen.iter().map(|&bag| bags[bag].mass_g).sum();
    limit.is_none_or(|limit| mass <= limit)
}

/// The largest number of pouches of all choices for which `goes` says yes.
fn largest(bags: &[Bag], limit: Option<u32>, goes: impl Fn(&[usize]) -> bool) -> usize {
    let mut best = 0;
    for choice in 0_u32..1 << bags.len() {
        let chosen: Vec<usize> = (0..bags.len()).filter(|bag| choice >> bag & 1 == 1).collect();
        if chosen.len() > best && light(bags, &chosen, limit) && goes(&chosen) {
            best = chosen.len();
        }
    }
    best
}

/// Each pouch on each tray, both ways, at every millimetre.
pub fn flat(bags: &[Bag], inside: &Inside, limit: Option<u32>) -> usize {
    largest(bags, limit, |chosen| place(bags, inside, chosen, &mut Vec::new()))
}

/// Tray, left, near, right, far.
type Lying = (usize, u32, u32, u32, u32);

fn place(bags: &[Bag], inside: &Inside, chosen: &[usize], lying: &mut Vec<Lying>) -> bool {
    let Some((&first, rest)) = chosen.split_first() else { return true };
    let (bag, wall, between) = (bags[first], inside.wall_mm, inside.between_mm);
    for (at, tray) in inside.trays.iter().enumerate() {
        if bag.thick_mm > tray.height_mm {
            continue;
        }
        for (w, h) in [(bag.width_mm, bag.length_mm), (bag.length_mm, bag.width_mm)] {
            for x in wall..(tray.width_mm + 1).saturating_sub(wall + w) {
                for y in wall..(tray.depth_mm + 1).saturating_sub(wall + h) {
                    let free = lying.iter().all(|&(other, left, near, right, far)| {
                        other != at
                            || x >= right + between
                            || left >= x + w + between
                            || y >= far + between
                            || near >= y + h + between
                    });
                    if free {
                        lying.push((at, x, y, x + w, y + h));
                        if place(bags, inside, rest, lying) {
                            return true;
                        }
                        lying.pop();
                    }
                }
            }
        }
    }
    false
}

/// Each pouch in each row both ways round, the rows both ways.
pub fn rows(bags: &[Bag], inside: &Inside, limit: Option<u32>) -> usize {
    let tray = inside.trays[0];
    let (w, d) = (tray.width_mm - 2 * inside.wall_mm, tray.depth_mm - 2 * inside.wall_mm);
    largest(bags, limit, |chosen| {
        [(w, d), (d, w)].into_iter().any(|(length, room)| {
            let ways = (2 * chosen.len()).max(1);
            // Which row and which way round: a number to the base of all of these.
            (0..ways.pow(u32::try_from(chosen.len()).unwrap())).any(|mut code| {
                let mut rows: Vec<Vec<(u32, u32)>> = vec![Vec::new(); ways];
                for &bag in chosen {
                    let (way, bag) = (code % ways, bags[bag]);
                    code /= ways;
                    let own = (bag.width_mm, bag.length_mm);
                    rows[way / 2].push(if way % 2 == 0 { own } else { (own.1, own.0) });
                }
                // Where a row has long sides along it, whichever side that is.
                let same = |row: &&Vec<(u32, u32)>| {
                    row.iter().all(|(a, b)| a <= b) || row.iter().all(|(a, b)| a >= b)
                };
                rows.iter().all(|row| same(&row) && row_length(row, inside.between_mm) <= length)
                    && cross(&rows, inside.between_mm) <= room
            })
        })
    })
}

fn row_length(row: &[(u32, u32)], between: u32) -> u32 {
    let flat = row.iter().filter(|(along, _)| *along <= 50);
    let flat: Vec<u32> = flat.map(|(along, _)| *along).collect();
    let over: Vec<u32> = row.iter().map(|(along, _)| *along).filter(|along| *along > 50).collect();
    let gaps = match (flat.len(), over.len()) {
        (0, _) => 0,
        (flat, 0) => flat - 1,
        (flat, _) => flat,
    };
    let overlaps = over.len().saturating_sub(1);
    flat.iter().chain(&over).sum::<u32>() + gaps as u32 * between - overlaps as u32 * 25
}

fn cross(rows: &[Vec<(u32, u32)>], between: u32) -> u32 {
    let used: Vec<u32> =
        rows.iter().filter_map(|row| row.iter().map(|(_, cross)| *cross).max()).collect();
    used.iter().sum::<u32>() + (used.len().saturating_sub(1)) as u32 * between
}

/// Each choice, place by place.
pub fn rack(bags: &[Bag], inside: &Inside, limit: Option<u32>) -> usize {
    let rack = inside.rack.unwrap();
    largest(bags, limit, |chosen| {
        let places = chosen.iter().map(|&bag| bags[bag].thick_mm.max(1).div_ceil(rack.pitch_mm));
        places.sum::<u32>() <= rack.places
    })
}
