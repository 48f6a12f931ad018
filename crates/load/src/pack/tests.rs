//! The packing against a raster that knows nothing of it, against every way there is on small
//! trays, and against input that cannot be.

use super::*;
use crate::chamber::{Chamber, Rack};
use proptest::prelude::*;

mod brute;
mod raster;

fn bag(width_mm: u32, length_mm: u32) -> Bag {
    Bag { width_mm, length_mm, thick_mm: 10, mass_g: 50 }
}

fn tray(width_mm: u32, depth_mm: u32) -> Tray {
    Tray { width_mm, depth_mm, height_mm: 30, mass_g: 300 }
}

fn inside(pattern: Pattern, trays: Vec<Tray>) -> Inside {
    Inside {
        chamber: Chamber::Box { width_mm: 500, height_mm: 500, depth_mm: 500 },
        trays,
        rack: Some(Rack { places: 8, pitch_mm: 15, height_mm: 140, depth_mm: 300, mass_g: 400 }),
        pattern,
        face: Face::Film,
        wall_mm: 5,
        between_mm: 5,
        manual_page: None,
    }
}

/// A load as salons have it (sizes are typical, common practice, no source): few pouches to clearly
/// too many, one to five trays.
fn loads() -> impl Strategy<Value = (Vec<Bag>, Inside, Option<u32>)> {
    let size = prop::sample::select(vec![(60, 100), (90, 165), (90, 230), (135, 260), (190, 330)]);
    let bag =
        (size, 5..28_u32, 20..200_u32).prop_map(|((width_mm, length_mm), thick_mm, mass_g)| Bag {
            width_mm,
            length_mm,
            thick_mm,
            mass_g,
        });
    let tray = (180..301_u32, 280..401_u32, 20..45_u32)
        .prop_map(|(w, d, height_mm)| Tray { height_mm, ..tray(w, d) });
    let bags =
        prop_oneof![prop::collection::vec(bag.clone(), 1..10), prop::collection::vec(bag, 10..120)];
    let pattern = prop::sample::select(vec![Pattern::Flat, Pattern::Overlapped, Pattern::OnEdge]);
    let free = (0..11_u32, 0..9_u32, any::<bool>());
    let limit = prop::option::weighted(0.3, 300..4_000_u32);
    (bags, prop::collection::vec(tray, 1..6), pattern, free, limit).prop_map(
        |(bags, trays, pattern, (wall_mm, between_mm, same), limit)| {
            let count = trays.len();
            let trays = if same { vec![trays[0]; count] } else { trays };
            (bags, Inside { wall_mm, between_mm, ..inside(pattern, trays) }, limit)
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, ..ProptestConfig::default() })]

    /// The 500 loads: nothing overlaps or leaves the tray, masses and clearances as recounted.
    #[test]
    fn nothing_overlaps_or_leaves_its_tray((bags, inside, limit) in loads()) {
        let packing = pack(&bags, &inside, limit, 1_000);
        raster::check(&bags, &inside, limit, &packing);
        prop_assert!(packing.count() <= packing.bound);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, ..ProptestConfig::default() })]

    #[test]
    fn more_steps_are_never_worse((bags, inside, limit) in loads()) {
        let of = |steps| pack(&bags, &inside, limit, steps);
        let found: Vec<Packing> = [0, 30, 300, 3_000].into_iter().map(of).collect();
        for two in found.windows(2) {
            prop_assert!(two[0].count() <= two[1].count() && two[0].bound >= two[1].bound);
        }
        prop_assert_eq!(&of(300), &found[2]);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, ..ProptestConfig::default() })]

    /// Trays of a few millimetres, tried out completely: the best is found, and the bound says so.
    #[test]
    fn flat_is_as_good_as_every_way_there_is(
        sizes in prop::collection::vec((1..5_u32, 1..5_u32, 0..2_u32, 1..9_u32), 1..6),
        trays in prop::collection::vec((3..7_u32, 3..6_u32, 0..2_u32), 1..3),
        free in (0..2_u32, 0..2_u32),
        limit in prop::option::of(1..25_u32),
    ) {
        let bags: Vec<Bag> = sizes
            .into_iter()
            .map(|(width_mm, length_mm, thick_mm, mass_g)| Bag { width_mm, length_mm, thick_mm, mass_g })
            .collect();
        let trays = trays
            .into_iter()
            .map(|(width_mm, depth_mm, height_mm)| Tray { width_mm, depth_mm, height_mm, mass_g: 1 });
        let inside = Inside {
            wall_mm: free.0,
            between_mm: free.1,
            ..inside(Pattern::Flat, trays.collect())
        };
        let packing = pack(&bags, &inside, limit, STEPS);
        raster::check(&bags, &inside, limit, &packing);
        let best = brute::flat(&bags, &inside, limit);
        prop_assert_eq!((packing.count(), packing.bound), (best, best));
    }

    #[test]
    fn rows_are_as_good_as_every_way_there_is(
        sizes in prop::collection::vec((20..110_u32, 20..110_u32, 1..9_u32), 1..6),
        (width, depth) in (60..230_u32, 60..230_u32),
        between_mm in 0..9_u32,
        limit in prop::option::of(1..25_u32),
    ) {
        let bags: Vec<Bag> = sizes
            .into_iter()
            .map(|(w, l, mass_g)| Bag { mass_g, ..bag(w, l) })
            .collect();
        let inside = Inside { between_mm, ..inside(Pattern::Overlapped, vec![tray(width, depth)]) };
        let packing = pack(&bags, &inside, limit, STEPS);
        raster::check(&bags, &inside, limit, &packing);
        let best = brute::rows(&bags, &inside, limit);
        prop_assert_eq!((packing.count(), packing.bound), (best, best));
    }

    #[test]
    fn the_rack_is_as_good_as_every_choice(
        thick in prop::collection::vec((1..60_u32, 1..9_u32), 1..10),
        limit in prop::option::of(1..40_u32),
    ) {
        let bags: Vec<Bag> = thick
            .into_iter()
            .map(|(thick_mm, mass_g)| Bag { thick_mm, mass_g, ..bag(90, 165) })
            .collect();
        let inside = inside(Pattern::OnEdge, Vec::new());
        let packing = pack(&bags, &inside, limit, 0);
        raster::check(&bags, &inside, limit, &packing);
        let best = brute::rack(&bags, &inside, limit);
        prop_assert_eq!((packing.count(), packing.bound), (best, best));
    }
}

/// By hand: 90 x 165 on 190 x 350. Free are 180 x 340. Two side by side need 185: no. Turned, three
/// of 90 and two free ways of 5 are 280, and a fourth would need 375.
#[test]
fn three_lie_turned_one_behind_the_other() {
    let packing =
        pack(&[bag(90, 165); 5], &inside(Pattern::Flat, vec![tray(190, 350)]), None, STEPS);
    assert_eq!((packing.count(), packing.bound), (3, 3));
    assert!(packing.layers[0].placed.iter().all(|placed| placed.across));
    assert_eq!(packing.left, [3, 4]);
    assert_eq!((packing.mass_g, packing.layers[0].mass_g), (150, 450));
    // 190 - 165 leaves 12.5 at each side, by whole millimetres 12; 350 - 280 leaves 35.
    assert_eq!(packing.layers[0].clearance, Some(120));
}

/// The first has its film up. The next lies with its film on that, so its paper is up; the third
/// lies with its paper on that, so its film is up. Three times 165 less two overlaps are 445.
#[test]
fn faces_alternate_where_one_lies_over_the_other() {
    let inside = inside(Pattern::Overlapped, vec![tray(100, 455)]);
    let packing = pack(&[bag(90, 165); 4], &inside, None, STEPS);
    assert_eq!((packing.count(), packing.bound), (3, 3));
    let seen: Vec<(i32, Face)> =
        packing.layers[0].placed.iter().map(|placed| (placed.rect.y, placed.up)).collect();
    assert_eq!(seen, [(50, Face::Film), (1_450, Face::Paper), (2_850, Face::Film)]);
}

/// The limit of mass is kept, with the light ones if need be; else the earlier ones of the list go in.
#[test]
fn mass_decides_only_where_it_must() {
    let inside = inside(Pattern::Flat, vec![tray(190, 350)]);
    let heavy = |mass_g| Bag { mass_g, ..bag(90, 165) };
    let bags = [heavy(300), heavy(100), heavy(100), heavy(90)];
    let left = |limit| pack(&bags, &inside, limit, STEPS).left;
    assert_eq!(left(None), [3]);
    assert_eq!(left(Some(500)), [3]);
    assert_eq!(left(Some(499)), [0]);
    assert_eq!(left(Some(190)), [0, 2]);
    assert_eq!(left(Some(89)), [0, 1, 2, 3]);
}

/// Too thick for the tray: on none.
#[test]
fn what_is_too_thick_stays_out() {
    let low = Tray { height_mm: 9, ..tray(300, 300) };
    let packing = pack(&[bag(90, 165)], &inside(Pattern::Flat, vec![low]), None, STEPS);
    assert_eq!((packing.count(), packing.bound, packing.left), (0, 0, vec![0]));
}

#[test]
fn what_cannot_be_is_answered_too() {
    let huge = Bag { width_mm: u32::MAX, length_mm: u32::MAX, thick_mm: 0, mass_g: u32::MAX };
    let nothing = Bag { width_mm: 0, ..bag(0, 100) };
    let point = Bag { thick_mm: u32::MAX, ..bag(1, 1) };
    let odd =
        [huge, nothing, point, bag(1, 1), bag(2_000, 1), Bag { mass_g: u32::MAX, ..bag(3, 4) }];
    let vast =
        Tray { width_mm: u32::MAX, depth_mm: u32::MAX, height_mm: u32::MAX, mass_g: u32::MAX };
    for pattern in [Pattern::Flat, Pattern::Overlapped, Pattern::OnEdge] {
        for trays in [vec![], vec![vast], vec![tray(0, 0), tray(1, 1)], vec![tray(200, 300); 30]] {
            for (wall_mm, between_mm) in [(0, 0), (u32::MAX, u32::MAX), (5, 5)] {
                let vast_rack = Rack {
                    places: u32::MAX,
                    pitch_mm: u32::MAX,
                    height_mm: u32::MAX,
                    depth_mm: u32::MAX,
                    mass_g: u32::MAX,
                };
                for rack in
                    [None, Some(vast_rack), Some(Rack { pitch_mm: 0, places: 0, ..vast_rack })]
                {
                    let own = inside(pattern, trays.clone());
                    let own = Inside { wall_mm, between_mm, rack, ..own };
                    for limit in [None, Some(0), Some(u32::MAX)] {
                        let packing = pack(&odd, &own, limit, 100);
                        assert!(packing.count() <= packing.bound);
                        assert!(packing.left.contains(&1));
                    }
                }
            }
        }
    }
}

/// One tray takes what is long and narrow, the other what is nearly square; by area they take turns,
/// so that rounded up to eight kinds each is long and wide and goes on neither.
#[test]
fn something_goes_in_where_something_fits() {
    let long = (0..10).map(|i| bag(20, 202 + 3 * i));
    let square = (1..11).map(|i| bag(63 + i / 2, 63 + i.div_ceil(2)));
    let bags: Vec<Bag> = long.chain(square).collect();
    for pattern in [Pattern::Flat, Pattern::Overlapped] {
        let inside = inside(pattern, vec![tray(30, 240), tray(78, 78)]);
        let packing = pack(&bags, &inside, None, 100);
        raster::check(&bags, &inside, None, &packing);
        assert!(packing.count() > 0 && packing.count() <= packing.bound);
    }
}

/// Ten thousand pouches of as many sizes as can be, and ten thousand of one.
#[test]
fn many_pouches_are_answered() {
    let many: Vec<Bag> = (0..10_000).map(|i| bag(20 + i % 97, 30 + i % 89)).collect();
    for pattern in [Pattern::Flat, Pattern::Overlapped, Pattern::OnEdge] {
        for bags in [&many, &vec![bag(1, 1); 10_000], &vec![bag(60, 100); 10_000]] {
            for trays in [vec![tray(250, 350); 5], vec![tray(2_000, 2_000)]] {
                for limit in [None, Some(3_000)] {
                    let inside = inside(pattern, trays.clone());
                    let packing = pack(bags, &inside, limit, 100);
                    assert!(packing.count() <= packing.bound && packing.count() > 0);
                }
            }
        }
    }
}
