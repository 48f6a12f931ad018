//! Painted millimetre by millimetre, with nothing of the packing's own geometry.

use super::*;

/// Everything that a packing promises.
pub fn check(bags: &[Bag], inside: &Inside, limit: Option<u32>, packing: &Packing) {
    let mut seen: Vec<usize> = packing.left.clone();
    for layer in &packing.layers {
        seen.extend(layer.placed.iter().map(|placed| placed.bag));
    }
    seen.sort_unstable();
    assert_eq!(seen, (0..bags.len()).collect::<Vec<_>>(), "each pouch is somewhere, once");
    let mut all = 0;
    for layer in &packing.layers {
        let own: u32 = layer.placed.iter().map(|placed| bags[placed.bag].mass_g).sum();
        all += own;
        let edges = layer.placed.iter().flat_map(|placed| {
            let r = placed.rect;
            [r.x, r.y, layer.size.0 - r.x - r.width, layer.size.1 - r.y - r.height]
        });
        assert_eq!(layer.clearance, edges.min());
        if inside.pattern == Pattern::OnEdge {
            let rack = inside.rack.unwrap();
            assert_eq!(layer.mass_g, own + rack.mass_g);
            stands(bags, &rack, layer);
        } else {
            let tray = inside.trays[layer.tray];
            assert_eq!(layer.mass_g, own + tray.mass_g);
            lies(bags, inside, &tray, layer);
        }
    }
    assert_eq!(packing.mass_g, all);
    assert!(limit.is_none_or(|limit| all <= limit));
}

/// Left, near, right, far in whole millimetres.
fn millimetres(placed: &Placed) -> [usize; 4] {
    let r = placed.rect;
    [r.x, r.y, r.x + r.width, r.y + r.height].map(|tenths| {
        assert_eq!(tenths % 10, 0, "whole millimetres");
        usize::try_from(tenths / 10).unwrap()
    })
}

fn lies(bags: &[Bag], inside: &Inside, tray: &Tray, layer: &Layer) {
    let (wide, deep) = (tray.width_mm as usize, tray.depth_mm as usize);
    let (wall, between) = (inside.wall_mm as usize, inside.between_mm as usize);
    // Who lies on each millimetre: the lowest, and the one over it. Who does when each is grown by
    // the free way to the right and away: a bit for each.
    let size = (wide + between) * (deep + between);
    let mut cells: Vec<[Option<usize>; 2]> = vec![[None; 2]; size];
    let mut grown: Vec<u128> = vec![0; size];
    assert!(layer.placed.len() <= 128, "the loads of these tests have fewer");
    for (at, placed) in layer.placed.iter().enumerate() {
        let bag = bags[placed.bag];
        let [left, near, right, far] = millimetres(placed);
        assert!(left >= wall && near >= wall && right + wall <= wide && far + wall <= deep);
        let (w, l) = (bag.width_mm as usize, bag.length_mm as usize);
        let sides = if placed.across { (l, w) } else { (w, l) };
        assert_eq!((right - left, far - near), sides);
        assert!(bag.thick_mm <= tray.height_mm);
        for y in near..far + between {
            for x in left..right + between {
                let cell = y * (wide + between) + x;
                grown[cell] |= 1 << at;
                if x < right && y < far {
                    let free = cells[cell].iter_mut().find(|own| own.is_none());
                    *free.expect("three over each other") = Some(at);
                }
            }
        }
    }
    let mut pairs = std::collections::BTreeMap::new();
    for cell in &cells {
        if let [Some(under), Some(over)] = *cell {
            *pairs.entry((under, over)).or_insert(0_usize) += 1;
        }
    }
    // Neighbouring millimetres mostly have the same ones.
    grown.dedup();
    for cell in &grown {
        let own: Vec<usize> = (0..layer.placed.len()).filter(|at| cell >> at & 1 == 1).collect();
        for (i, &a) in own.iter().enumerate() {
            for &b in &own[i + 1..] {
                // The first and the third of three in a row may come near: the second bridges them.
                let bridged = b == a + 2
                    && pairs.contains_key(&(a, a + 1))
                    && pairs.contains_key(&(a + 1, b));
                assert!(pairs.contains_key(&(a, b)) || bridged, "too near");
            }
        }
    }
    assert!(inside.pattern == Pattern::Overlapped || pairs.is_empty(), "one over the other");
    for (&(under, over), &area) in &pairs {
        assert_eq!(over, under + 1, "only neighbours in the order of laying");
        let (a, b) = (&layer.placed[under], &layer.placed[over]);
        let ([al, an, ar, af], [bl, bn, br, bf]) = (millimetres(a), millimetres(b));
        let cross =
            if af - bn == 25 && an < bn { (ar - al).min(br - bl) } else { (af - an).min(bf - bn) };
        assert_eq!(area, 25 * cross, "by the overlap and no more");
        assert_ne!(a.up, b.up, "paper to paper, film to film");
        // Long sides along the row in all of them, or in none.
        let (a_long, b_long) = ((ar - al).cmp(&(af - an)), (br - bl).cmp(&(bf - bn)));
        assert_ne!(a_long as i8 * b_long as i8, -1, "the same way round");
    }
}

fn stands(bags: &[Bag], rack: &Rack, layer: &Layer) {
    let mut taken = vec![false; rack.places as usize];
    for placed in &layer.placed {
        let bag = bags[placed.bag];
        let [left, near, right, far] = millimetres(placed);
        let pitch = rack.pitch_mm as usize;
        assert!(bag.width_mm <= rack.height_mm && far <= rack.depth_mm as usize);
        assert_eq!(far - near, bag.length_mm as usize);
        // As thick as it is, in the middle of the fewest places that take it.
        let thick = (bag.thick_mm as usize).max(1);
        assert_eq!(right - left, thick);
        let (first, last) = (left / pitch, (right - 1) / pitch);
        assert_eq!(last + 1 - first, thick.div_ceil(pitch));
        assert!((left - first * pitch).abs_diff((last + 1) * pitch - right) <= 1);
        for place in &mut taken[first..=last] {
            assert!(!*place, "two in one place");
            *place = true;
        }
    }
}
