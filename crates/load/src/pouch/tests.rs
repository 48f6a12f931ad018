//! What is bagged is looked at again by a check that shares no geometry with the code: points half a
//! millimetre apart along each edge, and their distance to the other pieces.

use super::*;
use crate::catalogue::{implements, pouch_sizes, set_of};
use crate::geometry::Point;
use crate::implement::{Form, Material};
use proptest::prelude::*;

type Spot = (f64, f64);

fn corners(outline: &Outline) -> Vec<Spot> {
    let mm = |p: &Point| (f64::from(p.x) / 10.0, f64::from(p.y) / 10.0);
    outline.corners().iter().map(mm).collect()
}

fn edges(corners: &[Spot]) -> Vec<(Spot, Spot)> {
    (0..corners.len()).map(|i| (corners[i], corners[(i + 1) % corners.len()])).collect()
}

fn along_edges(corners: &[Spot]) -> Vec<Spot> {
    let walk = |((ax, ay), (bx, by)): (Spot, Spot)| {
        let (dx, dy) = (bx - ax, by - ay);
        let steps = ((dx * dx + dy * dy).sqrt() * 2.0).ceil() as u32;
        (0..=steps)
            .map(move |i| f64::from(i) / f64::from(steps))
            .map(move |t| (ax + dx * t, ay + dy * t))
    };
    edges(corners).into_iter().flat_map(walk).collect()
}

fn from_edge((x, y): Spot, ((ax, ay), (bx, by)): (Spot, Spot)) -> f64 {
    let (dx, dy) = (bx - ax, by - ay);
    let t = (((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
    let (dx, dy) = (ax + dx * t - x, ay + dy * t - y);
    (dx * dx + dy * dy).sqrt()
}

fn inside((x, y): Spot, corners: &[Spot]) -> bool {
    let crosses = |((ax, ay), (bx, by)): &(Spot, Spot)| {
        (*ay > y) != (*by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax)
    };
    edges(corners).iter().filter(|edge| crosses(edge)).count() % 2 == 1
}

fn look_at(pieces: &[Implement], sizes: &[PouchSize], bagging: &Bagging) {
    let mut seen: Vec<usize> = bagging.refused.iter().map(|refused| refused.0).collect();
    for pouch in &bagging.pouches {
        seen.extend(pouch.pieces.iter().map(|laid| laid.piece));
        seen.extend(pouch.held.iter().map(|held| held.0));
        look_into(pieces, &sizes[pouch.size], pouch);
    }
    seen.sort_unstable();
    assert_eq!(seen, (0..pieces.len()).collect::<Vec<_>>(), "each piece once");
    assert!(bagging.pouches.len() <= 1 || !bagging.split.is_empty(), "a split has its reason");
}

fn look_into(pieces: &[Implement], size: &PouchSize, pouch: &Filled) {
    let laid: Vec<Vec<Spot>> = pouch.pieces.iter().map(|laid| corners(&laid.outline)).collect();
    let all = || laid.iter().flatten();
    // Between the seams and below the fold, by the measures of the pouch itself.
    let [width, length, seam, fold] =
        [size.width_mm, size.length_mm, size.seam_mm, size.fold_mm].map(f64::from);
    for &(x, y) in all() {
        assert!(
            x >= seam && x <= width - seam && y >= seam && y <= length - fold,
            "{x} {y} {size:?}"
        );
    }
    let span = |of: fn(&Spot) -> f64| {
        all().map(of).fold(f64::MIN, f64::max) - all().map(of).fold(f64::MAX, f64::min)
    };
    let full =
        span(|p| p.0) * span(|p| p.1) / ((width - 2.0 * seam) * (length - seam - fold)) * 100.0;
    assert!(full <= 75.0 + 1e-9, "{full}");
    assert!((f64::from(pouch.full) - full - 0.5).abs() <= 0.5 + 1e-9, "{} {full}", pouch.full);
    for (i, one) in laid.iter().enumerate() {
        let of = |laid: &Laid| &pieces[laid.piece];
        let this = of(&pouch.pieces[i]);
        assert!(!this.single_use && this.steam != Stands::Never);
        let mut sides =
            [span_of(one, |p| p.0), span_of(one, |p| p.1)].map(|side| side.round() as u32);
        sides.sort_unstable();
        let measures = [this.width_mm.min(this.length_mm), this.width_mm.max(this.length_mm)];
        assert_eq!(sides, measures, "a piece keeps its size");
        for (_, other) in laid.iter().enumerate().filter(|(j, _)| *j != i) {
            let edges = edges(other);
            for p in along_edges(one) {
                let near = edges.iter().map(|&edge| from_edge(p, edge)).fold(f64::MAX, f64::min);
                assert!(near >= 4.0 - 1e-9 && !inside(p, other), "{near} at {p:?}");
            }
        }
    }
    let held = pouch.held.iter().map(|held| held.0);
    let all: Vec<usize> = pouch.pieces.iter().map(|laid| laid.piece).chain(held).collect();
    let mass: u32 = all.iter().map(|&piece| pieces[piece].mass_dg).sum();
    assert_eq!(pouch.mass_dg, mass + size.mass_dg);
    // A millimetre for paper and film.
    let thick = all.iter().map(|&piece| pieces[piece].thick_mm).max();
    assert_eq!(Some(pouch.thick_mm - 1), thick);
    look_into_holders(pieces, pouch);
    // No metal touches another, but the holder its bits.
    let holds = |piece: usize| pouch.held.iter().any(|held| held.1 == piece);
    let bare: Vec<usize> = all.into_iter().filter(|&piece| !holds(piece)).collect();
    for &one in &bare {
        for &other in &bare {
            assert!(pieces[one].material.may_touch(pieces[other].material));
        }
    }
}

fn look_into_holders(pieces: &[Implement], pouch: &Filled) {
    for &(bit, holder) in &pouch.held {
        assert_eq!((pieces[bit].form, pieces[holder].form), (Form::Bit, Form::Holder));
        assert!(pouch.pieces.iter().any(|laid| laid.piece == holder), "the holder is laid");
        assert!(pouch.held.iter().filter(|held| held.1 == holder).count() <= 12);
    }
}

fn span_of(corners: &[Spot], of: fn(&Spot) -> f64) -> f64 {
    corners.iter().map(of).fold(f64::MIN, f64::max)
        - corners.iter().map(of).fold(f64::MAX, f64::min)
}

fn pieces(words: &[(&str, u32)]) -> Vec<Implement> {
    let known = implements();
    let piece = |word: &str| known.iter().find(|i| i.word.word() == word).unwrap().clone();
    words.iter().flat_map(|&(word, count)| vec![piece(word); count as usize]).collect()
}

fn set(kind: &str) -> Vec<Implement> {
    let set = set_of(&kind.parse().unwrap());
    let words: Vec<(&str, u32)> = set.iter().map(|(word, count)| (word.word(), *count)).collect();
    pieces(&words)
}

/// Bags, looks, and says the words of the sizes.
fn check(pieces: &[Implement], expected: &[&str]) -> Bagging {
    let sizes = pouch_sizes();
    let bagging = bag(pieces, &sizes);
    look_at(pieces, &sizes, &bagging);
    let words: Vec<&str> =
        bagging.pouches.iter().map(|pouch| sizes[pouch.size].word.word()).collect();
    assert_eq!(words, expected);
    bagging
}

/// By hand: cuticle nippers of 62 by 105 mm do not go into a face of 48 by 79 mm. A holder of
/// 70 by 40 mm is 74 hundredths of it, and the bits lie in the holder. Toenail nippers of 75 by 140 mm are more than three
/// quarters of 78 by 144 mm, and with cuticle nippers behind them more than that of 78 by 209 mm,
/// however deep the ones lie in the notch of the others.
#[test]
fn typical_sets_go_into_one_pouch_that_is_not_the_largest() {
    check(&set("nipper"), &["small"]);
    check(&set("bits"), &["tiny"]);
    check(&set("pedicure"), &["large"]);
    let sizes = pouch_sizes();
    let manicure = bag(&set("manicure"), &sizes);
    look_at(&set("manicure"), &sizes, &manicure);
    assert_eq!(manicure.pouches.len(), 1);
    assert_eq!(sizes[manicure.pouches[0].size].word.word(), "middle");
}

#[test]
fn a_set_without_scissors_goes_into_a_narrower_pouch() {
    let four = [("cuticle nipper", 1), ("pusher", 1), ("curette", 1), ("nail clipper", 1)];
    check(&pieces(&four), &["middle"]);
}

/// Nippers of 100 by 70 mm take 7000 mm². A stick of 30 by 6 mm beside them would make it 80 by 100
/// mm, one behind the other 70 by 110. A face of 84 by 112 mm has 7056 mm² in three quarters: enough
/// only where the stick lies in the notch.
#[test]
fn a_stick_lies_between_the_handles_of_nippers() {
    let mut set = pieces(&[("cuticle nipper", 1), ("pusher", 1)]);
    (set[0].length_mm, set[0].width_mm) = (100, 70);
    (set[1].length_mm, set[1].width_mm) = (30, 6);
    let mut size = pouch_sizes().remove(0);
    (size.width_mm, size.length_mm, size.seam_mm, size.fold_mm) = (84, 112, 0, 0);
    let bagging = bag(&set, std::slice::from_ref(&size));
    look_at(&set, std::slice::from_ref(&size), &bagging);
    assert_eq!((bagging.pouches.len(), bagging.split.len()), (1, 0));
}

#[test]
fn metals_that_should_not_touch_get_a_pouch_each() {
    let set = pieces(&[("carbide bit", 2), ("diamond bit", 2), ("ceramic bit", 1)]);
    let bagging = check(&set, &["tiny", "tiny"]);
    assert_eq!(bagging.split, [Split::Metals(vec![Metal::Carbide, Metal::Diamond])]);
    assert_eq!(bagging.ask_maker, [2, 3], "plated bits want their maker's word");
}

/// TRADE 10: bits in a bit basket, carbide and diamond apart. By hand: 40 + 5 times 6 + 2 times 3 g,
/// and the pouch; 18 mm of holder and 1 of paper and film.
#[test]
fn bits_lie_in_their_holder() {
    let bits = set("bits");
    let bagging = check(&bits, &["tiny"]);
    let [pouch] = &bagging.pouches[..] else { panic!("{bagging:?}") };
    assert_eq!(pouch.pieces.iter().map(|laid| laid.piece).collect::<Vec<_>>(), [0]);
    assert_eq!(pouch.held, [1, 2, 3, 4, 5, 6, 7].map(|bit| (bit, 0)));
    assert_eq!((pouch.thick_mm, pouch.mass_dg), (19, 760 + pouch_sizes()[0].mass_dg));
    assert_eq!((bagging.ask_maker, bagging.split), (vec![], vec![]));
    // Thirteen: one lies beside the holder.
    let bagging = bag(&pieces(&[("bit holder", 1), ("carbide bit", 13)]), &pouch_sizes());
    let laid: usize = bagging.pouches.iter().map(|pouch| pouch.pieces.len()).sum();
    assert_eq!((bagging.pouches.len(), bagging.pouches[0].held.len(), laid), (1, 12, 2));
    // The most of one metal have the holder; the diamonds lie apart, or in a second one.
    let mixed = [("bit holder", 1), ("diamond bit", 2), ("carbide bit", 3), ("ceramic bit", 1)];
    let bagging = check(&pieces(&mixed), &["tiny", "tiny"]);
    assert_eq!(bagging.split, [Split::Metals(vec![Metal::Carbide, Metal::Diamond])]);
    let held: Vec<_> = bagging.pouches.iter().flat_map(|pouch| pouch.held.clone()).collect();
    assert_eq!(held, [(3, 0), (4, 0), (5, 0), (6, 0)]);
    let mixed = [("bit holder", 2), ("diamond bit", 2), ("carbide bit", 3)];
    let bagging = check(&pieces(&mixed), &["tiny", "tiny"]);
    assert!(bagging.pouches.iter().all(|pouch| pouch.pieces.len() == 1));
    assert_eq!(bagging.ask_maker, [2, 3], "also what is held asks its maker");
    // A full holder lies with no other metal; one that is too small holds nothing.
    check(&pieces(&[("bit holder", 1), ("carbide bit", 2), ("pusher", 1)]), &["small", "tiny"]);
    let mut long = pieces(&[("bit holder", 1), ("carbide bit", 1)]);
    long[1].length_mm = 71;
    let bagging = bag(&long, &pouch_sizes());
    assert!(bagging.pouches.iter().all(|pouch| pouch.held.is_empty()));
}

#[test]
fn what_is_not_bagged_says_why() {
    let mut set = pieces(&[("wood stick", 1), ("handpiece", 1), ("pusher", 4), ("glass file", 1)]);
    (set[2].length_mm, set[3].width_mm, set[4].length_mm) = (400, 0, u32::MAX);
    let bagging = check(&set, &["small"]);
    let expected = [
        (0, Refused::SingleUse),
        (1, Refused::NeverSteam),
        (2, Refused::TooLarge),
        (3, Refused::NoMeasure),
        (4, Refused::TooLarge),
    ];
    assert_eq!((bagging.refused, bagging.ask_maker), (expected.to_vec(), vec![6]));
}

/// A bit and its gap take 10 by 50 mm, so that three quarters of 78 by 144 mm hold sixteen of them
/// with four millimetres to spare around: thirty take two pouches at least.
#[test]
fn thirty_bits_are_too_many_for_a_small_pouch() {
    let set = pieces(&[("carbide bit", 30)]);
    let sizes = &pouch_sizes()[..2];
    let bagging = bag(&set, sizes);
    look_at(&set, sizes, &bagging);
    assert_eq!(bagging.split, [Split::TooFull]);
    assert!((2..=3).contains(&bagging.pouches.len()), "{}", bagging.pouches.len());
}

#[test]
fn absurd_measures_and_numbers_are_answered() {
    let sizes = pouch_sizes();
    assert_eq!(bag(&[], &sizes), Bagging::default());
    let one = pieces(&[("pusher", 1)]);
    assert_eq!(bag(&one, &[]).refused, [(0, Refused::TooLarge)]);
    let many = pieces(&[("pusher", 90), ("cuticle nipper", 60), ("carbide bit", 50)]);
    look_at(&many, &sizes, &bag(&many, &sizes));
    let mut huge = sizes[0].clone();
    (huge.width_mm, huge.length_mm, huge.mass_dg) = (u32::MAX, u32::MAX, u32::MAX);
    let mut heavy = pieces(&[("pusher", 3)]);
    heavy[0].mass_dg = u32::MAX;
    (heavy[1].length_mm, heavy[1].width_mm) = (1_500, 1_400);
    let bagging = bag(&heavy, &[huge.clone()]);
    assert_eq!((bagging.pouches.len(), bagging.pouches[0].mass_dg), (1, u32::MAX));
    (huge.seam_mm, huge.fold_mm) = (u32::MAX, u32::MAX);
    assert_eq!(bag(&heavy, &[huge]).refused.len(), 3);
}

#[test]
fn sizes_are_kept_to_the_last_unit() {
    let typical = pouch_sizes();
    assert!(typical.iter().all(|size| size.check() == Ok(())));
    let check = |change: &dyn Fn(&mut PouchSize), expected| {
        let mut size = typical[1].clone();
        change(&mut size);
        assert_eq!(size.check(), expected, "{size:?}");
    };
    let measure = Err(NoPouchSize::Measure);
    check(&|s| (s.width_mm, s.length_mm) = (1_000, 1_000), Ok(()));
    check(&|s| s.width_mm = 30, Ok(()));
    check(&|s| s.width_mm = 29, measure);
    check(&|s| s.width_mm = 1_001, measure);
    check(&|s| s.length_mm = 1_001, measure);
    check(&|s| s.length_mm = 29, measure);
    check(&|s| s.length_mm = u32::MAX, measure);
    check(&|s| s.seam_mm = 3, Ok(()));
    check(&|s| s.seam_mm = 2, Err(NoPouchSize::Seam));
    check(&|s| s.seam_mm = 30, Ok(()));
    check(&|s| s.seam_mm = 31, Err(NoPouchSize::Seam));
    check(&|s| s.fold_mm = 5, Ok(()));
    check(&|s| s.fold_mm = 4, Err(NoPouchSize::Fold));
    check(&|s| s.fold_mm = 100, Ok(()));
    check(&|s| s.fold_mm = 101, Err(NoPouchSize::Fold));
    check(&|s| s.mass_dg = 0, Err(NoPouchSize::Mass));
    check(&|s| s.mass_dg = 10_000, Ok(()));
    check(&|s| s.mass_dg = 10_001, Err(NoPouchSize::Mass));
    // Two seams of 20 leave 10 of 50 across; 6 and 15 leave 10 of 31 along.
    check(&|s| (s.width_mm, s.seam_mm) = (50, 20), Ok(()));
    check(&|s| (s.width_mm, s.seam_mm) = (49, 20), Err(NoPouchSize::NoFace));
    check(&|s| s.length_mm = 31, Ok(()));
    check(&|s| s.length_mm = 30, Err(NoPouchSize::NoFace));
}

fn any_piece() -> impl Strategy<Value = Implement> {
    let form = prop::sample::select(Form::ALL.to_vec());
    // Mostly stainless, so that many pieces share a pouch.
    let material = prop_oneof![4 => Just(Material::Steel420), 1 => prop::sample::select(Material::ALL.to_vec())];
    (form, 5..200_u32, 2..80_u32, material).prop_map(|(form, length_mm, width_mm, material)| {
        let like = implements().remove(0);
        Implement { form, length_mm, width_mm, material, ..like }
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(48) })]

    #[test]
    fn random_sets_keep_every_rule_in_any_order(
        set in prop::collection::vec(any_piece(), 1..9), from in 0..5_usize, turn in 0..9_usize,
    ) {
        let sizes = pouch_sizes().split_off(from);
        let bagging = bag(&set, &sizes);
        look_at(&set, &sizes, &bagging);
        for &(piece, reason) in &bagging.refused {
            prop_assert_eq!(reason, Refused::TooLarge);
            // Alone it is its own rectangle.
            let (a, b) = (u64::from(set[piece].width_mm), u64::from(set[piece].length_mm));
            let fits = sizes.iter().any(|size| {
                let (w, l) = (u64::from(size.width_mm - 12), u64::from(size.length_mm - 21));
                a.min(b) <= w.min(l) && a.max(b) <= w.max(l) && 4 * a * b <= 3 * w * l
            });
            prop_assert!(!fits, "{:?}", set[piece]);
        }
        let (mut other, mut turned) = (set.clone(), sizes.clone());
        other.rotate_left(turn % set.len());
        turned.reverse();
        let again = bag(&other, &turned);
        let told = |set: &[Implement], sizes: &[PouchSize], bagging: &Bagging| -> Vec<_> {
            let pouch = |pouch: &Filled| {
                let laid = pouch.pieces.iter().map(|l| (set[l.piece].clone(), l.outline.clone()));
                let held = pouch.held.iter().map(|&(bit, holder)| (&set[bit], &set[holder]));
                let mut held: Vec<String> = held.map(|held| format!("{held:?}")).collect();
                held.sort();
                (sizes[pouch.size].word.clone(), laid.collect::<Vec<_>>(), held, pouch.full)
            };
            bagging.pouches.iter().map(pouch).collect()
        };
        prop_assert_eq!(told(&set, &sizes, &bagging), told(&other, &turned, &again));
    }
}
