// tests may stop at once
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
use super::*;
use crate::balance::{Drying, Heated, Part};
use proptest::prelude::*;

const PRIOR: Prior = Prior { middle_w: 100.0, spread: 1.0 };

fn looks(pairs: &[(f64, bool)]) -> Vec<Outcome> {
    pairs.iter().map(|&(demand_w, wet)| Outcome { demand_w, wet }).collect()
}

fn of(pairs: &[(f64, bool)]) -> Learnt {
    learn(&PRIOR, &looks(pairs)).unwrap()
}

/// Where one in ten is wet by the data themselves: of twenty loads each at 40, 50 and 60 W none,
/// two and twelve were wet.
#[test]
fn many_looks_speak_for_themselves() {
    let mut pairs = Vec::new();
    for (demand, wet) in [(40.0, 0), (50.0, 20), (60.0, 120)] {
        pairs.extend((0..200).map(|n| (demand, n < wet)));
    }
    let learnt = of(&pairs);
    assert!((46.0..53.0).contains(&learnt.limit_w.middle), "{:?}", learnt.limit_w);
    assert!(learnt.limit_w.high / learnt.limit_w.low < 1.25, "{:?}", learnt.limit_w);
    assert!((learnt.chance_wet(60.0) - 0.6).abs() < 0.07);
    assert!(learnt.chance_wet(30.0) < 0.02 && learnt.chance_wet(500.0) > 0.9);
}

#[test]
fn without_a_look_the_prior_stands() {
    let learnt = of(&[]);
    // Half are wet at the prior's middle, and nine of ten machines lie within the spread.
    assert!((learnt.chance_wet(100.0) - 0.5).abs() < 0.05, "{}", learnt.chance_wet(100.0));
    let Spread { low, middle, high } = learnt.limit_w;
    assert!(low > 5.0 && high < 500.0 && (middle / 60.0 - 1.0).abs() < 0.15, "{middle}");
}

/// The two passes against their definition: curves climbed at random, weighed by how well they fit
/// three looks.
#[test]
fn both_passes_agree_with_curves_drawn_at_random() {
    let (demands, wet) = ([30.0, 60.0, 90.0], [false, true, false]);
    let mut seed = 1u64;
    let mut even = || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 11) as f64 / (1u64 << 53) as f64
    };
    let (mut sum, mut below) = (0.0, 0.0);
    let pairs: Vec<(f64, bool)> = demands.into_iter().zip(wet).collect();
    let chain = chain::Chain::new(maths::ln(PRIOR.middle_w), PRIOR.spread);
    let middle = maths::ln(of(&pairs).limit_w.middle);
    for _ in 0..6_000 {
        let curve = chain.draw(&mut even);
        let near = |demand: f64| {
            let at = |point: &&(f64, f64)| (point.0 - maths::ln(demand)).abs() <= 0.012_5;
            curve.iter().find(at).map(|point| point.1).unwrap()
        };
        let fits = |&(demand, wet): &(f64, bool)| {
            if wet { near(demand) } else { 1.0 - near(demand) }
        };
        let weight: f64 = pairs.iter().map(fits).product();
        sum += weight;
        let passes = curve.iter().find(|point| point.1 >= 0.099).map(|point| point.0);
        below += if passes.is_some_and(|at| at <= middle) { weight } else { 0.0 };
    }
    // Half of the weight lies below the middle; 6 000 curves know it to about 0.02.
    assert!((below / sum - 0.5).abs() < 0.05, "{}", below / sum);
}

#[test]
fn physics_begins_where_the_balance_says() {
    let prior = |vacuum_kpa| {
        let heated = vec![Heated { part: Part::Pieces, grams: 900.0, specific_heat: 480.0 }];
        let drying = Drying { minutes: 15.0, vacuum_kpa };
        let charge = Charge { heated, from_c: 20.0, steam_c: 134.0, drying };
        Prior::of(&charge, &Unknowns::TYPICAL).unwrap()
    };
    let (deep, none) = (prior(Some(10.0)), prior(None));
    // With a vacuum stored heat does most of the work, without one heat from outside.
    assert!(deep.middle_w > none.middle_w && none.middle_w > 25.0, "{deep:?} {none:?}");
    assert!(deep.spread >= 0.8 && none.spread >= 0.8);
    assert!(
        Prior::of(
            &Charge {
                heated: Vec::new(),
                from_c: 20.0,
                steam_c: 134.0,
                drying: Drying { minutes: 1.0, vacuum_kpa: None },
            },
            &Unknowns::TYPICAL
        )
        .is_err()
    );
}

#[test]
fn advice_says_who_set_it() {
    let check = |pairs: &[(f64, bool)], maker: Option<u32>, by: By| {
        let advice = advice(&of(pairs), maker, |watts| 10.0 * watts);
        assert_eq!(advice.by, by, "{pairs:?} {maker:?}");
        assert!(maker.is_none_or(|maker| advice.grams <= maker));
        assert_eq!(advice.outcomes as usize, pairs.len());
    };
    check(&[], None, By::Guess);
    check(&[], Some(1_000), By::Maker);
    check(&[(50.0, false)], None, By::Guess);
    check(&[(50.0, true); 2], None, By::Looks);
    check(&[(50.0, false); 9], Some(1_000), By::Maker);
    // One wet load may be a mishap.
    check(&[(50.0, true), (20.0, false)], Some(1_000), By::Maker);
    check(&[(50.0, true), (40.0, true), (20.0, false)], Some(1_000), By::Looks);
    // Wet loads far above what the maker allows change nothing.
    check(&[(400.0, true); 2], Some(100), By::Maker);
}

#[test]
fn what_cannot_be_learnt_from_is_refused() {
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(matches!(learn(&PRIOR, &looks(&[(bad, true)])), Err(NotLearnt::Demand(_))));
        let prior = Prior { middle_w: bad, spread: 1.0 };
        assert_eq!(learn(&prior, &[]), Err(NotLearnt::Prior));
    }
    assert!(of(&[]).chance_wet(f64::NAN).is_nan());
    let absurd = [vec![(50.0, true); 9_000], vec![(100.0, false); 9_000]].concat();
    let Spread { low, middle, high } = of(&absurd).limit_w;
    assert!(0.0 < low && low <= middle && middle <= high && high < 1e9, "{low} {middle} {high}");
    assert!(of(&[(1e-6, false), (1e8, true)]).limit_w.middle.is_finite());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// One more dry look never lowers anything, one more wet look never raises it, whatever was
    /// seen before; a higher demand is never less likely wet.
    #[test]
    fn a_look_counts_for_its_own_side_only(
        pairs in prop::collection::vec((1.0..1_000.0f64, any::<bool>()), 0..40),
        more in 1.0..1_000.0f64,
        maker in prop::option::of(50u32..3_000),
    ) {
        let with = |wet: bool| of(&[pairs.as_slice(), &[(more, wet)]].concat());
        let (dry, now, wet) = (with(false), of(&pairs), with(true));
        let order = |a: f64, b: f64| a >= b * (1.0 - 1e-9);
        let limits = |l: &Learnt| [l.limit_w.low, l.limit_w.middle, l.limit_w.high];
        for at in 0..3 {
            let limit = |learnt: &Learnt| limits(learnt)[at];
            prop_assert!(order(limit(&dry), limit(&now)), "{} {}", limit(&dry), limit(&now));
            prop_assert!(order(limit(&now), limit(&wet)), "{} {}", limit(&now), limit(&wet));
        }
        let grams = |learnt: &Learnt| advice(learnt, maker, |watts| 7.3 * watts).grams;
        prop_assert!(grams(&dry) >= grams(&now) && grams(&now) >= grams(&wet));
        prop_assert!(maker.is_none_or(|maker| grams(&dry) <= maker));
        let mut before = 0.0;
        for tenths in -20..90 {
            let demand = maths::exp(f64::from(tenths) / 10.0);
            let chance = now.chance_wet(demand);
            prop_assert!(chance >= before - 1e-9 && chance <= 1.0);
            prop_assert!(order(chance + 1e-12, dry.chance_wet(demand)));
            before = chance;
        }
    }

    /// The order in which looks came in does not matter.
    #[test]
    fn the_order_does_not_matter(
        pairs in prop::collection::vec((1.0..1_000.0f64, any::<bool>()), 0..40),
    ) {
        let turned: Vec<(f64, bool)> = pairs.iter().rev().copied().collect();
        prop_assert_eq!(of(&pairs), of(&turned));
    }
}
