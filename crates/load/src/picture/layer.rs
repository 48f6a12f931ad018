//! One tray or rack with its pouches, as seen from above.

use super::{Distance, Part, Picture, Role};
use crate::chamber::{Face, Inside, Pattern};
use crate::geometry::{Outline, PER_MM, Point, Rect};
use crate::pack::{Layer, Placed};

/// Tray, free border, empty places of a rack, pouches in the order of laying, and where one lies
/// over the other. The least free way on each side is a distance where there is a pouch.
pub(super) fn of_layer(layer: &Layer, inside: &Inside) -> Picture {
    let frame = Rect { x: 0, y: 0, width: layer.size.0, height: layer.size.1 };
    let mut parts = Vec::new();
    let mut add = |role: Role, rect: &Rect, names: Option<usize>| {
        // What has no area is not drawn.
        if let Ok(outline) = outline(rect) {
            parts.push(Part { role, outline, names });
        }
    };
    add(Role::Tray, &frame, Some(layer.tray));
    if inside.pattern == Pattern::OnEdge {
        for place in empty_places(layer, inside) {
            add(Role::Place, &place, None);
        }
    } else {
        let most = layer.size.0.min(layer.size.1) / 2;
        let wall = i32::try_from(inside.wall_mm).unwrap_or(i32::MAX).saturating_mul(PER_MM);
        add(Role::Free, &frame.less(wall.min(most)), None);
    }
    for placed in &layer.placed {
        let role = match placed.up {
            Face::Paper => Role::Paper,
            Face::Film => Role::Film,
        };
        add(role, &placed.rect, Some(placed.bag));
    }
    for two in layer.placed.windows(2) {
        if let [under, over] = two
            && let Some(both) = both(&under.rect, &over.rect)
        {
            add(Role::Over, &both, None);
        }
    }
    // A place of a rack is where it is; only a tray's edge is kept away from.
    let distances = if inside.pattern == Pattern::OnEdge {
        between(layer).into_iter().collect()
    } else {
        distances(layer)
    };
    Picture { frame, parts, distances }
}

fn outline(rect: &Rect) -> Result<Outline, crate::geometry::NoOutline> {
    Ok(Outline::rectangle(rect.width, rect.height)?.moved(rect.x, rect.y))
}

/// What both cover.
fn both(a: &Rect, b: &Rect) -> Option<Rect> {
    let (x, y) = (a.x.max(b.x), a.y.max(b.y));
    let (width, height) = (a.right().min(b.right()) - x, a.far().min(b.far()) - y);
    (width > 0 && height > 0).then_some(Rect { x, y, width, height })
}

/// Places of the rack in which nothing stands.
fn empty_places(layer: &Layer, inside: &Inside) -> Vec<Rect> {
    let pitch = inside.rack.map_or(0, |rack| i32::try_from(rack.pitch_mm).unwrap_or(0));
    let wide = pitch.saturating_mul(PER_MM);
    if wide == 0 {
        return Vec::new();
    }
    let place = |at: i32| Rect { x: at * wide, y: 0, width: wide, height: layer.size.1 };
    let places = (0..layer.size.0 / wide).map(place);
    let taken = |place: &Rect| layer.placed.iter().any(|own| both(&own.rect, place).is_some());
    places.filter(|place| !taken(place)).collect()
}

/// The least way between two neighbours in a rack, straight across in the middle of its depth.
fn between(layer: &Layer) -> Option<Distance> {
    let mut across: Vec<(i32, i32)> =
        layer.placed.iter().map(|placed| (placed.rect.x, placed.rect.right())).collect();
    across.sort_unstable();
    let ways = across.windows(2).filter_map(|two| match two {
        [one, next] if next.0 > one.1 => Some((one.1, next.0)),
        _ => None,
    });
    let (from, to) = ways.min_by_key(|(from, to)| to - from)?;
    let y = layer.size.1 / 2;
    Some(Distance { from: Point { x: from, y }, to: Point { x: to, y } })
}

/// From the pouch that is nearest to it, straight to each edge.
fn distances(layer: &Layer) -> Vec<Distance> {
    let least = |free: &dyn Fn(&Rect) -> i32| -> Option<Rect> {
        let rects = layer.placed.iter().map(|placed: &Placed| placed.rect);
        rects.min_by_key(|rect| free(rect))
    };
    let (width, depth) = layer.size;
    let line = |from: (i32, i32), to: (i32, i32)| Distance {
        from: Point { x: from.0, y: from.1 },
        to: Point { x: to.0, y: to.1 },
    };
    let across = |rect: &Rect| rect.x + rect.width / 2;
    let away = |rect: &Rect| rect.y + rect.height / 2;
    let left = least(&|rect| rect.x).map(|r| line((0, away(&r)), (r.x, away(&r))));
    let near = least(&|rect| rect.y).map(|r| line((across(&r), 0), (across(&r), r.y)));
    let right =
        least(&|rect| width - rect.right()).map(|r| line((r.right(), away(&r)), (width, away(&r))));
    let far =
        least(&|rect| depth - rect.far()).map(|r| line((across(&r), r.far()), (across(&r), depth)));
    let longer = |distance: &Distance| distance.from != distance.to;
    [left, near, right, far].into_iter().flatten().filter(longer).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chamber::{Chamber, Rack, Tray};
    use crate::pack::{Bag, STEPS, pack};

    fn inside(pattern: Pattern) -> Inside {
        Inside {
            chamber: Chamber::Round { diameter_mm: 250, depth_mm: 500 },
            trays: vec![Tray { width_mm: 100, depth_mm: 455, height_mm: 30, mass_g: 300 }],
            rack: Some(Rack {
                places: 3,
                pitch_mm: 20,
                height_mm: 100,
                depth_mm: 200,
                mass_g: 400,
            }),
            pattern,
            face: Face::Film,
            wall_mm: 5,
            between_mm: 5,
            manual_page: None,
        }
    }

    fn roles(pattern: Pattern) -> (Vec<Role>, Picture) {
        let bag = Bag { width_mm: 90, length_mm: 165, thick_mm: 15, mass_g: 50 };
        let packing = pack(&[bag; 2], &inside(pattern), None, STEPS);
        let picture = of_layer(&packing.layers[0], &inside(pattern));
        (picture.parts.iter().map(|part| part.role).collect(), picture)
    }

    /// By hand: two of 165 overlap by 25, 305 of 455 are taken, 75 are free at each end.
    #[test]
    fn one_over_the_other_is_seen() {
        let (roles, picture) = roles(Pattern::Overlapped);
        assert_eq!(roles, [Role::Tray, Role::Free, Role::Film, Role::Paper, Role::Over]);
        let over = picture.parts[4].outline.bounds();
        assert_eq!((over.y, over.width, over.height), (750 + 1_400, 900, 250));
        let lengths = |d: &Distance| (d.to.x - d.from.x) + (d.to.y - d.from.y);
        let lengths: Vec<i32> = picture.distances.iter().map(lengths).collect();
        assert_eq!(lengths, [50, 750, 50, 750]);
    }

    /// 25 mm thick takes two places of 20 mm, thinner than nothing still is a millimetre; the least
    /// way to side or end is the clearance: 7 mm at the left, 17 at the ends.
    #[test]
    fn a_pouch_in_a_rack_is_drawn_as_thick_as_it_is() {
        let own = inside(Pattern::OnEdge);
        let bag = |thick_mm| Bag { width_mm: 90, length_mm: 165, thick_mm, mass_g: 50 };
        let packing = pack(&[bag(25), bag(0)], &own, None, STEPS);
        let layer = &packing.layers[0];
        let across: Vec<_> = layer.placed.iter().map(|p| (p.rect.x, p.rect.width)).collect();
        assert_eq!(across, [(70, 250), (490, 10)]);
        assert_eq!(layer.clearance, Some(70));
        assert!(empty_places(layer, &own).is_empty());
    }

    #[test]
    fn a_rack_shows_its_empty_place() {
        let (roles, picture) = roles(Pattern::OnEdge);
        assert_eq!(roles, [Role::Tray, Role::Place, Role::Film, Role::Film]);
        assert_eq!(picture.parts[1].outline.bounds().x, 400);
        // By hand: 15 mm in the middle of a place of 20, so 2 and 3 mm are free beside each.
        let bounds = |part: &Part| part.outline.bounds();
        let drawn: Vec<_> = picture.parts[2..].iter().map(bounds).collect();
        let expected = [20, 220].map(|x| Rect { x, y: 170, width: 150, height: 1_650 });
        assert_eq!(drawn, expected);
        let way = Distance { from: Point { x: 170, y: 1_000 }, to: Point { x: 220, y: 1_000 } };
        assert_eq!(picture.distances, [way]);
        assert!(picture.parts.iter().all(|part| picture.frame.holds(&part.outline.bounds())));
    }
}
