//! What holds for any salon and any day.

use super::*;
use crate::Chance;
use proptest::prelude::*;

/// A salon out of a seed: up to three kinds, two machines, some sets on their way.
fn salon(seed: u64) -> Problem {
    let mut chance = Chance::from_seed(seed);
    let kinds = 1 + chance.below(3);
    let machines = 1 + chance.below(2);
    let mut services = Vec::new();
    for _ in 0..2 + chance.below(14) {
        let start = chance.below(90);
        let mut needs = Vec::new();
        for k in 0..kinds {
            if chance.below(2) == 0 {
                needs.push((k, 1 + chance.below(2) as u32));
            }
        }
        services.push(service(start, start + 6 + chance.below(10), &needs));
    }
    let kinds =
        (0..kinds).map(|k| kind(&k.to_string(), 1 + chance.below(5) as u32, 150 + 60 * k as u32));
    let mut problem = day(kinds.collect(), machines, services);
    for (kind, carry) in problem.kinds.iter_mut().zip(&mut problem.carry) {
        match chance.below(4) {
            0 => (kind.ready, carry.dirty, carry.worked) = (kind.ready - 1, 1, 3),
            1 => (kind.ready, carry.loadable) = (kind.ready - 1, 1),
            2 => (kind.ready, carry.ready_at) = (kind.ready - 1, vec![(30, 1)]),
            _ => (kind.ready, carry.loadable_at) = (kind.ready - 1, vec![(20, 1)]),
        }
    }
    problem
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    /// What the policy does is a plan of the day plan's own rules, by the auditor that knows
    /// nothing of the policy: so a day that is good here can be lived.
    #[test]
    fn the_policy_keeps_the_rules_of_the_day(seed: u64, number in 0_u32..100) {
        let problem = salon(seed);
        let assumptions = Assumptions::default().every_run_good();
        let (day, trace) = lived(&problem, &assumptions, seed, number);
        // A plan cannot say that a set for use at once was not opened.
        prop_assume!(trace.spoilt == 0);
        let real = as_problem(&problem, &day);
        let unmet: u64 = trace.unmet.iter().map(|&(_, _, n)| u64::from(n)).sum();
        let audited = audit(&real, &trace.plan(problem.kinds.len()));
        prop_assert_eq!(audited.map(|objective| objective[0]), Ok(unmet));
    }

    /// Each day that the policy claims is either a plan by the auditor or planned anew.
    #[test]
    fn the_planner_confirms_the_policy(seed: u64) {
        let assumptions = Assumptions::default();
        let days = Days { assumptions: &assumptions, days: 4, seed, threads: 1 };
        let confirmed = confirm(&salon(seed), &days).unwrap();
        prop_assert!(confirmed.policy <= confirmed.planner, "{:?}", confirmed);
    }

    /// The same days and the same answer on any number of threads, also where the days do not fill
    /// the last word.
    #[test]
    fn threads_and_runs_make_no_difference(seed: u64, days in 1_u32..400, threads in 2_usize..9) {
        let problem = salon(seed);
        let assumptions = Assumptions::default();
        let on = |threads| tally(&problem, &Days { assumptions: &assumptions, days, seed, threads }).unwrap();
        prop_assert_eq!(on(1), on(threads));
        prop_assert_eq!(on(1).days, days);
    }

    /// A count does not see which other counts are asked for.
    #[test]
    fn a_curve_is_its_points(seed: u64) {
        let problem = salon(seed);
        let assumptions = Assumptions::default();
        let days = Days { assumptions: &assumptions, days: 150, seed, threads: 2 };
        for point in curve(&problem, 0, 1..=4, &days).unwrap() {
            prop_assert_eq!(&tally(&owning(&problem, 0, point.owned), &days).unwrap(), &point.tally);
        }
    }

    /// Nothing happens: every day is the booked one.
    #[test]
    fn without_chance_every_day_is_alike(seed: u64) {
        let problem = salon(seed);
        let shares = share(&problem, &Assumptions::NOTHING, 70);
        prop_assert!(shares == 0.0 || shares == 1.0);
        let (day, _) = lived(&problem, &Assumptions::NOTHING, seed, 3);
        let booked: Vec<_> = as_problem(&problem, &day).services.into_iter().rev().collect();
        prop_assert_eq!(booked, problem.services.clone());
        prop_assert_eq!(&day.hands, &Template::new(&problem).hands);
    }

    /// With as many sets as could be asked for at all, nobody waits, whatever happens.
    #[test]
    fn with_a_set_for_each_visitor_nobody_waits(seed: u64) {
        let mut problem = salon(seed);
        for k in 0..problem.kinds.len() {
            // Each appointment and one walk-in for each.
            let asked: u32 = problem.services.iter().flat_map(|s| &s.needs).filter(|n| n.0 == k).map(|n| n.1).sum();
            problem = owning(&problem, k, 2 * asked + 1 + problem.kinds[k].owned);
        }
        prop_assert_eq!(share(&problem, &Assumptions::default(), 100), 1.0);
    }

    #[test]
    fn another_number_of_sets_moves_as_many(seed: u64, owned in 0_u32..20) {
        let problem = salon(seed);
        let there = |p: &Problem| {
            let c = &p.carry[0];
            p.kinds[0].ready + c.dirty + c.loadable
        };
        let changed = owning(&problem, 0, owned);
        let expected = (i64::from(there(&problem)) + i64::from(owned) - i64::from(problem.kinds[0].owned)).max(0);
        prop_assert_eq!(i64::from(there(&changed)), expected);
        prop_assert!(changed.check().is_ok());
    }

    #[test]
    fn a_share_lies_in_its_interval(of in 1_u64..5_000, good in 0_u64..5_000) {
        let good = good.min(of);
        let it = wilson(good, of);
        prop_assert!(0.0 <= it.low && it.low <= it.share && it.share <= it.high && it.high <= 1.0);
        let other = wilson(of - good, of);
        prop_assert!((it.low - (1.0 - other.high)).abs() < 1e-12);
    }
}

/// More sets are seldom worse: a policy that does not know what comes may start another run with
/// one set more, and that run may be in the way. Measured on 2,000 such salons: fewer good days in
/// 50 of 16,000 steps, more than 2 in 100 fewer in 4 of them, 9 in 100 at most.
#[test]
fn more_sets_are_seldom_worse() {
    let assumptions = Assumptions::default();
    let mut worse = 0;
    for seed in 0..100 {
        let days = Days { assumptions: &assumptions, days: 400, seed, threads: 1 };
        for two in curve(&salon(seed), 0, 0..=8, &days).unwrap().windows(2) {
            let gain = two[1].tally.gain_over(&two[0].tally).share;
            assert!(gain > -0.09, "{} to {}: {gain}", two[0].owned, two[1].owned);
            worse += usize::from(gain < 0.0);
        }
    }
    assert!(worse <= 10, "{worse} of 800 steps");
}
