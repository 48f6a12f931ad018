// tests may stop at once
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
use super::*;
use proptest::prelude::*;

fn offer(word: &str, total_min: u32, dry: Dry) -> Offer {
    Offer {
        word: word.parse().unwrap(),
        set_c: 134.0,
        hold_s: 240,
        total_min,
        dry,
        for_pouches: true,
        for_hollow: true,
        air: Air::Vacuum,
        most_g: Some(2_000),
        advised_g: None,
    }
}

/// A small machine with vacuum.
fn machine() -> Vec<Offer> {
    let advised = |mut offer: Offer, grams: u32| {
        offer.advised_g = Some(grams);
        offer
    };
    vec![
        offer("fast", 14, Dry::None),
        advised(offer("short", 24, Dry::Short(4)), 700),
        advised(offer("full", 38, Dry::Full(15)), 1_600),
        Offer { set_c: 121.0, hold_s: 1_200, ..advised(offer("soft", 55, Dry::Full(15)), 1_500) },
    ]
}

fn gravity() -> Vec<Offer> {
    let drum = Offer { air: Air::Gravity, for_hollow: false, ..offer("open", 20, Dry::None) };
    let wrapped =
        Offer { set_c: 121.0, hold_s: 1_800, total_min: 75, dry: Dry::Full(30), ..drum.clone() };
    vec![drum, wrapped]
}

fn pouched(grams: u32) -> Asked {
    Asked {
        contents: Contents::Pouched,
        wrapped: true,
        grams,
        heaviest_g: 80,
        most_c: Some(138),
        need: Need::Shelf,
        within_min: None,
        unpouched_allowed: true,
    }
}

fn now() -> Asked {
    Asked { contents: Contents::Unwrapped, wrapped: false, need: Need::Now, ..pouched(300) }
}

#[track_caller]
fn check(offers: &[Offer], asked: &Asked, best: Option<(usize, Why)>) -> Choice {
    let choice = choose(offers, asked);
    let first = choice.ranked.first().map(|first| (first.offer, first.why));
    assert_eq!(first, best, "{choice:?}");
    choice
}

#[track_caller]
fn says(choice: &Choice, offer: usize, reasons: &[No]) {
    let refused = choice.refused.iter().find(|refused| refused.offer == offer);
    assert_eq!(refused.map(|refused| refused.reasons.as_slice()), Some(reasons), "{choice:?}");
}

#[test]
fn the_quickest_that_will_do() {
    let machine = machine();
    check(&machine, &now(), Some((0, Why::QuickestForNow)));
    check(&machine, &pouched(500), Some((1, Why::QuickestThatDries)));
    let choice = check(&machine, &pouched(900), Some((2, Why::LongerDryingForWeight)));
    says(&choice, 0, &[No::NoDryingForPouches, No::NoDryingForShelf]);
    says(&choice, 1, &[No::TooHeavyToDry]);
    let heavy = Asked { heaviest_g: 400, ..pouched(500) };
    check(&machine, &heavy, Some((2, Why::LongerDryingForHeavyPiece)));
    // A piece that stands 125 °C asks for the soft one.
    let choice = check(
        &machine,
        &Asked { most_c: Some(125), ..pouched(500) },
        Some((3, Why::QuickestThatDries)),
    );
    says(&choice, 1, &[No::TooHot]);
}

#[test]
fn where_nothing_is_known_the_longest_drying() {
    let mut machine = machine();
    machine.iter_mut().for_each(|offer| offer.advised_g = None);
    check(&machine, &pouched(500), Some((2, Why::LongestDryingNothingKnown)));
}

/// The long drying is known to dry 1600 g: nobody weighed the short one, and it dries no more. Nor
/// has its maker allowed more.
#[test]
fn a_shorter_drying_takes_no_more_than_a_longer_one() {
    let mut machine = machine();
    machine.truncate(3);
    machine[1].advised_g = None;
    let choice = check(&machine, &pouched(1_700), None);
    says(&choice, 1, &[No::TooHeavyToDry]);
    assert_eq!(choice.changes, [Change::Split { offer: 2, grams: 1_600 }]);
    machine[1].most_g = None;
    machine[2].most_g = Some(1_500);
    machine[2].advised_g = None;
    says(&check(&machine, &pouched(1_501), None), 1, &[No::TooHeavyForMaker]);
    // What is used at once need not dry, and is bound by its own limit only.
    let open = Asked { grams: 1_900, ..now() };
    check(&machine[1..], &open, Some((0, Why::QuickestForNow)));
    // Below it, nobody knows, and there is a longer one.
    let choice = choose(&machine, &pouched(900));
    let whys: Vec<_> = choice.ranked.iter().map(|one| (one.offer, one.why)).collect();
    assert_eq!(whys, [(2, Why::LongestDryingNothingKnown), (1, Why::DryingNotKnown)]);
    // Also where the longer one comes too late.
    let soon = Asked { within_min: Some(30), ..pouched(900) };
    check(&machine, &soon, Some((1, Why::DryingNotKnown)));
}

/// The rows of CDC 2008, table 7 for wrapped implements by gravity: 121 °C 30 min, 132 °C 15 min.
#[test]
fn gravity_machines_need_their_times_and_take_nothing_hollow() {
    let mut gravity = gravity();
    check(&gravity, &now(), Some((0, Why::QuickestForNow)));
    let choice = check(&gravity, &pouched(500), Some((1, Why::LongestDryingNothingKnown)));
    let short = [No::NoDryingForPouches, No::NoDryingForShelf, No::GravityPouchTimesNotMet];
    says(&choice, 0, &short);
    gravity[1].hold_s = 1_799;
    says(&check(&gravity, &pouched(500), None), 1, &[No::GravityPouchTimesNotMet]);
    (gravity[1].set_c, gravity[1].hold_s, gravity[1].air) = (132.0, 900, Air::NotKnown);
    check(&gravity, &pouched(500), Some((1, Why::LongestDryingNothingKnown)));
    let hollow = Asked { contents: Contents::Hollow, wrapped: false, ..now() };
    says(&check(&gravity, &hollow, None), 0, &[No::NotForHollow, No::GravityHollow]);
    check(&machine(), &hollow, Some((0, Why::QuickestForNow)));
    // What nobody named is taken for pouched and hollow.
    let unknown = Asked { contents: Contents::Unknown, ..now() };
    says(&choose(&machine(), &unknown), 0, &[No::NoDryingForPouches]);
}

#[test]
fn where_none_fits_it_says_what_would() {
    let machine = machine();
    let changes = |asked: &Asked| {
        let choice = choose(&machine, asked);
        assert!(choice.ranked.is_empty(), "{choice:?}");
        choice.changes
    };
    assert_eq!(changes(&pouched(1_900)), [Change::Split { offer: 2, grams: 1_600 }]);
    let late = Asked { within_min: Some(20), need: Need::Now, ..pouched(500) };
    let unpouched = Change::UnpouchedNow { offer: 0 };
    assert_eq!(changes(&late), [Change::Later { offer: 1, minutes: 24 }, unpouched]);
    let forbidden = Asked { unpouched_allowed: false, ..late };
    assert_eq!(changes(&forbidden), [Change::Later { offer: 1, minutes: 24 }]);
    let melts = Asked { most_c: Some(100), ..pouched(500) };
    assert_eq!(changes(&melts), [Change::TakeOutHeatLimited { offer: 1 }]);
    assert_eq!(choose(&[], &pouched(500)), Choice::default());
}

/// Rows `csc-*` of `tests/reference/minimum_cycles.csv`, whose last columns name the source.
#[test]
fn nothing_below_the_published_times_is_proposed() {
    let table = include_str!("../../tests/reference/minimum_cycles.csv");
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    let rows = reader.records().map(|row| row.unwrap());
    let published: Vec<(f64, u32)> = rows
        .filter(|row| row[1].contains("via CSC") && !row[9].contains("rarely used"))
        .map(|row| (row[4].parse().unwrap(), row[6].parse::<u32>().unwrap() * 60))
        .collect();
    assert_eq!(published.len(), 4);
    let one = |set_c: f64, hold_s: u32| Offer { set_c, hold_s, ..offer("any", 20, Dry::Full(15)) };
    let low = |set_c: f64, hold_s: u32| {
        let choice = check(&[one(set_c, hold_s)], &Asked { grams: 9, ..now() }, None);
        says(&choice, 0, &[No::BelowPublishedTimes]);
        says(&choose(&[one(set_c, hold_s)], &pouched(9)), 0, &[No::BelowPublishedTimes]);
    };
    for (set_c, hold_s) in published {
        let (best, asked) = (Some((0, Why::QuickestForNow)), Asked { most_c: None, ..now() });
        check(&[one(set_c, hold_s)], &asked, best);
        // The next higher row asks for less and does not count yet.
        check(&[one(set_c + 0.9, hold_s)], &asked, best);
        low(set_c, hold_s - 1);
    }
    low(121.0, 10);
    // Not even for long: 115 °C is rarely used, and gives little.
    low(120.9, 3_600);
}

/// Polypropylene stands 134 °C (from memory), and steam that is set to 134 °C may get to 138 °C
/// (4 K above what is set, from memory).
#[test]
fn plastic_at_its_limit_does_not_stand_the_steam() {
    let plastic = load::implement::Material::Polypropylene.most_c();
    let asked = Asked { most_c: Some(plastic), ..pouched(500) };
    let choice = check(&machine(), &asked, Some((3, Why::QuickestThatDries)));
    says(&choice, 2, &[No::TooHot]);
    check(&machine(), &Asked { most_c: Some(138), ..asked }, Some((1, Why::QuickestThatDries)));
    let mut odd = machine().split_off(3);
    odd[0].set_c = f64::NAN;
    says(&choose(&odd, &asked), 0, &[No::TooHot, No::BelowPublishedTimes]);
}

fn any_offer() -> impl Strategy<Value = Offer> {
    let dry = prop_oneof![
        Just(Dry::None),
        (0u32..12).prop_map(Dry::Short),
        (0u32..40).prop_map(Dry::Full),
    ];
    let air = prop_oneof![Just(Air::Vacuum), Just(Air::Gravity), Just(Air::NotKnown)];
    let limit = || prop::option::of(0u32..2_500);
    let flags = (any::<bool>(), any::<bool>());
    let times = (prop_oneof![Just(121.0), Just(132.0), Just(134.0)], 0u32..2_400, 5u32..90);
    (dry, air, limit(), limit(), flags, times).prop_map(
        |(dry, air, most_g, advised_g, (for_pouches, for_hollow), (set_c, hold_s, total_min))| {
            Offer {
                set_c,
                hold_s,
                for_pouches,
                for_hollow,
                air,
                most_g,
                advised_g,
                ..offer("any", total_min, dry)
            }
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// Over all combinations of contents, pouch and purpose: a cycle without drying for nothing
    /// pouched and nothing for the shelf, no weight above either limit, and a change that is
    /// offered makes its programme fit.
    #[test]
    fn no_cycle_without_drying_for_pouches_or_the_shelf(
        offers in prop::collection::vec(any_offer(), 0..6),
        grams in 0u32..3_000, heaviest_g in 0u32..600,
        most_c in prop::option::of(100u32..140), within_min in prop::option::of(5u32..90),
    ) {
        for contents in Contents::ALL {
            for (wrapped, need, unpouched_allowed) in [
                (false, Need::Now, false), (true, Need::Now, true), (false, Need::Now, true),
                (false, Need::Shelf, true), (true, Need::Shelf, false), (true, Need::Shelf, true),
            ] {
                let asked = Asked {
                    contents, wrapped, grams, heaviest_g, most_c, need, within_min,
                    unpouched_allowed,
                };
                let choice = choose(&offers, &asked);
                prop_assert_eq!(choice.ranked.len() + choice.refused.len(), offers.len());
                let kept = contents == Contents::Pouched || contents == Contents::Unknown
                    || need == Need::Shelf || (contents == Contents::Hollow && wrapped);
                for Proposed { offer, .. } in &choice.ranked {
                    let offer = &offers[*offer];
                    prop_assert!(!kept || offer.dry.minutes() > 0);
                    prop_assert!(offer.most_g.is_none_or(|most| grams <= most));
                    prop_assert!(!kept || offer.advised_g.is_none_or(|most| grams <= most));
                }
                prop_assert!(choice.refused.iter().all(|refused| !refused.reasons.is_empty()));
                prop_assert!(choice.changes.is_empty() || choice.ranked.is_empty());
                for change in choice.changes {
                    let (offer, changed) = match change {
                        Change::Split { offer, grams } => (offer, Asked { grams, ..asked }),
                        Change::UnpouchedNow { offer } => {
                            prop_assert!(need == Need::Now && unpouched_allowed);
                            let open = Contents::Unwrapped;
                            (offer, Asked { contents: open, wrapped: false, ..asked })
                        }
                        Change::TakeOutHeatLimited { offer } => {
                            (offer, Asked { most_c: None, ..asked })
                        }
                        Change::Later { offer, minutes } => {
                            (offer, Asked { within_min: Some(minutes), ..asked })
                        }
                    };
                    let fits = choose(&offers, &changed);
                    prop_assert!(fits.ranked.iter().any(|fit| fit.offer == offer), "{:?}", change);
                }
            }
        }
    }
}
