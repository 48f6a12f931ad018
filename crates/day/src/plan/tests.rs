//! Days made up from a seed, and the rules of thumb of the trade.
#![allow(clippy::unwrap_used, clippy::panic)] // tests may stop at once

use super::decode::{Decoder, Genome, Wish};
use super::table::Table;
use super::*;
use crate::Chance;

/// The cycles of the made days: about 7, 15 and 45 minutes (common practice, no source); masses,
/// areas and prices are assumptions.
fn cycles() -> Vec<Cycle> {
    let cycle =
        |id: &str, [cold, warm]: [u32; 2], [mass, area]: [u32; 2], drying, cost: [u32; 2]| Cycle {
            id: id.to_owned(),
            dur_cold_min: cold,
            dur_warm_min: warm,
            max_mass_g: mass,
            max_area: area,
            drying,
            wrapped: drying != Drying::None,
            load_min: 2,
            unload_min: if drying == Drying::None { 1 } else { 2 },
            cool_min: if drying == Drying::Full { 5 } else { 3 },
            cost_cold: cost[0],
            cost_warm: cost[1],
        };
    vec![
        cycle("fast", [12, 7], [500, 40], Drying::None, [45, 35]),
        cycle("middle", [20, 15], [1000, 52], Drying::Short, [75, 62]),
        cycle("long", [55, 45], [1700, 86], Drying::Full, [98, 84]),
    ]
}

fn machine() -> Machine {
    Machine {
        id: "m1".to_owned(),
        warm_window_min: 45,
        free_from: 0,
        warm_until: None,
        cycles: cycles(),
    }
}

fn kind(owned: u32, ready: u32, target_ready: u32) -> Kind {
    Kind {
        id: "manicure".to_owned(),
        owned,
        ready,
        mass_g: 180,
        area: 10,
        hand_min: 5,
        target_ready,
        pouch_cost: 8,
    }
}

fn service(start: usize, end: usize, needs: &[(usize, u32)]) -> Service {
    Service { id: format!("at {start}"), start, end, weight: 1, needs: needs.to_vec() }
}

/// A day of one person who serves, washes between appointments and has lunch after the fourth.
fn one_person(owned: u32, ready: u32, target: u32, starts: &[usize]) -> Problem {
    let services: Vec<Service> = starts.iter().map(|&t| service(t, t + 9, &[(0, 1)])).collect();
    let slots = 120;
    let mut hands = vec![5; slots];
    for s in &services {
        hands[s.start..s.end].fill(0);
    }
    // Lunch: hands in its first and last slot only.
    if starts.len() > 4 {
        hands[44..48].fill(0);
    }
    Problem {
        name: "one person".to_owned(),
        slot_min: 5,
        slots,
        passive_min: 10,
        immediate_window_min: 30,
        kinds: vec![kind(owned, ready, target)],
        machines: vec![machine()],
        services,
        hands,
        carry: vec![Carry { dirty: owned - ready, ..Carry::default() }],
    }
}

/// Eight appointments with a break of 40 minutes after the fourth.
const EIGHT: [usize; 8] = [0, 11, 22, 33, 50, 61, 72, 83];

/// A day with chance in everything, feasible or not.
pub(super) fn made(seed: u64) -> Problem {
    let mut chance = Chance::from_seed(seed);
    let mut n = |from: usize, below: usize| from + chance.below(below - from);
    let slots = n(30, 90);
    let kinds: Vec<Kind> = (0..n(1, 4))
        .map(|i| {
            let owned = n(1, 7) as u32;
            let ready = n(0, owned as usize + 1) as u32;
            Kind {
                mass_g: n(40, 300) as u32,
                area: n(3, 14) as u32,
                hand_min: n(1, 8) as u32,
                id: format!("k{i}"),
                ..kind(owned, ready, n(0, owned as usize + 1) as u32)
            }
        })
        .collect();
    let services = (0..n(1, 14))
        .map(|_| {
            let start = n(0, slots - 8);
            let needs: Vec<(usize, u32)> = (0..kinds.len())
                .filter_map(|k| Some((k, n(0, 3) as u32)).filter(|need| need.1 > 0))
                .collect();
            Service { weight: n(1, 4) as u32, ..service(start, start + n(3, 14), &needs) }
        })
        .collect();
    let hands = (0..slots).map(|_| 5 * n(0, 4) as u32).collect();
    let machines = (0..n(1, 3))
        .map(|_| Machine {
            warm_window_min: 5 * n(2, 10) as u32,
            free_from: n(0, 5),
            warm_until: Some(n(0, 12)).filter(|&t| t > 6),
            ..machine()
        })
        .collect();
    let carry = (kinds.iter())
        .map(|k| {
            let dirty = k.owned - k.ready;
            let worked = n(0, k.hand_min as usize) as u32 * dirty.min(1);
            Carry { dirty, worked, ..Carry::default() }
        })
        .collect();
    Problem { slots, kinds, services, hands, machines, carry, ..one_person(1, 1, 1, &[0]) }
}

fn wishes(problem: &Problem, chance: &mut Chance) -> Genome {
    let mut wishes: Vec<Wish> = (0..chance.below(9))
        .map(|_| {
            let mut most = [u8::MAX; MOST_KINDS];
            if chance.below(3) == 0 {
                most[0] = chance.below(3) as u8;
            }
            Wish {
                start: chance.below(problem.slots) as u16,
                machine: chance.below(problem.machines.len()) as u8,
                cycle: chance.below(3) as u8,
                most,
            }
        })
        .collect();
    wishes.sort_unstable();
    Genome { wishes, refused: Vec::new() }
}

fn never() -> bool {
    false
}

fn rounds(rounds: u32, threads: usize, order: &'static [Criterion]) -> Options {
    Options { order, threads, rounds }
}

#[test]
fn whatever_is_wished_for_keeps_the_rules_and_comes_to_what_the_auditor_says() {
    let mut runs = 0;
    for seed in 0..600 {
        let problem = made(seed);
        problem.check().unwrap();
        let table = Table::new(&problem);
        let genome = wishes(&problem, &mut Chance::from_seed(!seed));
        let (plan, sum) = Decoder::new(&table).plan(&genome, DAYPLAN);
        let six = [0, 1, 2, 3, 4, 5].map(|i| sum.in_order(DAYPLAN)[i]);
        assert_eq!(audit(&problem, &plan), Ok(six), "seed {seed}: {plan:?}");
        runs += plan.runs.len();
    }
    assert!(runs > 600, "too few runs to show anything: {runs}");
}

#[test]
fn the_answer_does_not_depend_on_the_threads_and_more_rounds_are_never_worse() {
    for seed in [1, 2, 3, 5, 8] {
        let problem = made(seed);
        let one = solve(&problem, &rounds(3, 1, DAYPLAN), &never).unwrap();
        let two = solve(&problem, &rounds(3, 2, DAYPLAN), &never).unwrap();
        assert_eq!(one.plan, two.plan, "seed {seed}");
        let more = solve(&problem, &rounds(5, 2, DAYPLAN), &never).unwrap();
        assert!(more.objective <= one.objective, "seed {seed}");
    }
}

#[test]
fn a_bound_is_never_above_a_plan() {
    for seed in 0..40 {
        let answer = solve(&made(seed), &rounds(4, 1, DAYPLAN), &never).unwrap();
        for (level, bound) in answer.bound.iter().enumerate() {
            let above =
                answer.bound[..level].iter().zip(&answer.objective).all(|(b, v)| *b == Some(*v));
            assert!(
                above || bound.is_none(),
                "seed {seed}: level {level} bound, but not those above"
            );
            assert!(bound.is_none_or(|b| b <= answer.objective[level]), "seed {seed}: {answer:?}");
        }
    }
}

/// What the rest of a plan comes to: unmet of those to come, and short.
fn to_come(problem: &Problem, plan: &Plan, now: usize) -> [u64; 2] {
    let unmet = plan.unmet.iter().filter(|u| problem.services[u.service].start >= now);
    let weighed =
        unmet.map(|u| u64::from(problem.services[u.service].weight) * u64::from(u.n)).sum();
    [weighed, audit(problem, plan).unwrap()[1]]
}

#[test]
fn a_day_that_goes_as_planned_needs_no_mending() {
    for seed in 0..25 {
        let problem = made(seed);
        let plan = solve(&problem, &rounds(2, 1, SALON), &never).unwrap().plan;
        for now in (0..problem.slots).step_by(5) {
            let rest = rest(&problem, &plan, now, &[]);
            let mended = mend(&rest, &never).unwrap();
            let then = audit(&rest.problem, &mended.plan).unwrap();
            let before = to_come(&problem, &plan, now);
            assert!(then[..2] <= before[..], "seed {seed}, slot {now}: {then:?} after {before:?}");
            let same = then[..2] == before;
            assert!(!same || mended.new.is_empty(), "seed {seed}, slot {now}: {mended:?}");
        }
    }
}

#[test]
fn every_set_is_somewhere_at_any_time() {
    for seed in 0..60 {
        let problem = made(seed);
        let plan = solve(&problem, &rounds(2, 1, SALON), &never).unwrap().plan;
        for now in 0..problem.slots {
            let change = match seed % 4 {
                0 => vec![Change::Lost { run: 0 }]
                    .into_iter()
                    .filter(|_| !plan.runs.is_empty())
                    .collect(),
                1 => vec![Change::Out { machine: 0, until: now + 9 }],
                2 => vec![Change::Late { service: 0, by: 4 }],
                _ => vec![Change::Gone { service: 0 }],
            };
            let rest = rest(&problem, &plan, now, &change);
            rest.problem.check().unwrap();
            for (k, kind) in problem.kinds.iter().enumerate() {
                let carry = &rest.problem.carry[k];
                let later = [&carry.dirty_at, &carry.loadable_at, &carry.ready_at];
                let later: u32 = later.iter().flat_map(|list| list.iter().map(|l| l.1)).sum();
                let found = rest.problem.kinds[k].ready + carry.dirty + carry.loadable + later;
                // In use beyond the end of the day.
                let away: u32 = (problem.services.iter().enumerate())
                    .filter(|(i, s)| {
                        let late = matches!(change[..], [Change::Late { service, by }] if service == *i && s.end > now && s.end + by > problem.slots);
                        s.start < now && (s.end > problem.slots || late)
                    })
                    .flat_map(|(i, s)| s.needs.iter().filter(|n| n.0 == k).map(move |n| (i, n.1)))
                    .map(|(i, n)| {
                        let unmet = plan.unmet.iter().filter(|u| (u.service, u.kind) == (i, k));
                        n - unmet.map(|u| u.n).sum::<u32>()
                    })
                    .sum();
                // On its way from a machine to somebody who stays beyond the day, or not in time.
                let on_its_way = plan.immediate.iter().filter(|i| {
                    i.kind == k
                        && plan.runs[i.run].start < now
                        && problem.services[i.service].start >= now
                });
                let open: u32 = on_its_way.map(|i| i.n).sum();
                let missing = kind.owned - (found + away);
                assert!(
                    missing <= open,
                    "seed {seed}, slot {now}, kind {k}, {change:?}: {carry:?}"
                );
            }
        }
    }
}

/// Cycle and number of sets of each run of the salon's own plan.
fn check_salon(problem: &Problem, expected: &[(&str, u32)]) -> Plan {
    let plan = solve(problem, &rounds(6, 1, SALON), &never).unwrap().plan;
    let runs: Vec<(&str, u32)> = (plan.runs.iter())
        .map(|run| {
            (problem.machines[run.machine].cycles[run.cycle].id.as_str(), run.load.iter().sum())
        })
        .collect();
    assert_eq!(runs, expected);
    plan
}

/// The middle cycle holds as much as the long one.
fn roomy(mut problem: Problem) -> Problem {
    for cycle in &mut problem.machines[0].cycles[1..] {
        (cycle.max_mass_g, cycle.max_area) = (1700, 86);
    }
    problem
}

#[test]
fn enough_sets_until_lunch_then_the_middle_cycle_over_lunch() {
    // Rule of thumb of the trade (common practice, no source).
    for problem in [one_person(5, 5, 0, &EIGHT), roomy(one_person(5, 5, 0, &EIGHT))] {
        let run = &check_salon(&problem, &[("middle", 3)]).runs[0];
        assert!(run.start <= 44 && run.unload >= 48, "it spans the break: {run:?}");
    }
}

#[test]
fn enough_sets_for_the_day_then_one_long_cycle_at_the_end() {
    // Rule of thumb of the trade (common practice, no source).
    for problem in [one_person(8, 8, 8, &EIGHT), roomy(one_person(8, 8, 8, &EIGHT))] {
        check_salon(&problem, &[("long", 8)]);
    }
}

#[test]
fn one_set_short_now_then_the_fast_cycle() {
    // Rule of thumb of the trade (common practice, no source).
    let mut problem = one_person(2, 1, 0, &[0, 13]);
    problem.carry[0] = Carry { loadable: 1, ..Carry::default() };
    problem.hands[..9].fill(0);
    for problem in [problem.clone(), roomy(problem)] {
        check_salon(&problem, &[("fast", 1)]);
    }
}

#[test]
fn a_run_is_for_those_who_would_go_without() {
    let problem = one_person(5, 5, 0, &EIGHT);
    let plan = check_salon(&problem, &[("middle", 3)]);
    // Five sets serve the first five; the sixth appointment begins in slot 61.
    let why = Why { run: 0, when: Some(When::Slot(61)), missing: vec![(0, 1)] };
    assert_eq!(reasons(&problem, &plan), [why]);
}

#[test]
fn a_way_out_is_one_that_was_planned() {
    // One set and two appointments with five minutes between them: nothing can be washed and run.
    let problem = one_person(1, 1, 0, &[0, 10]);
    let answer = solve(&problem, &rounds(3, 1, SALON), &never).unwrap();
    assert_eq!(answer.objective[0], 1);
    let ways = ways_out(&problem, &answer.plan, [1, 0], &never).unwrap();
    let single = Way::SingleUse { service: answer.plan.unmet[0].service, kind: 0, n: 1 };
    assert!(ways.iter().any(|w| w.way == single && w.unmet == 0), "{ways:?}");
    assert!(
        !ways.iter().any(|w| matches!(w.way, Way::OtherMachine { .. })),
        "no machine is fast enough"
    );
}

#[test]
fn what_is_no_day_is_refused() {
    let good = one_person(2, 2, 1, &[0, 10]);
    let no = |change: fn(&mut Problem)| {
        let mut problem = good.clone();
        change(&mut problem);
        assert!(solve(&problem, &rounds(1, 1, DAYPLAN), &never).is_err(), "{problem:?}");
    };
    no(|p| p.slots = 0);
    no(|p| p.slots = 7);
    no(|p| p.slot_min = 0);
    no(|p| p.services[0].start = 500);
    no(|p| p.services[0].needs = vec![(7, 1)]);
    no(|p| p.services[0].needs = vec![(0, 1), (0, 1)]);
    no(|p| p.carry[0].worked = 5);
    no(|p| p.carry[0].ready_at = vec![(121, 1)]);
    no(|p| p.kinds[0].ready = MOST_SETS + 1);
    no(|p| (p.machines[0].cycles[0].dur_warm_min, p.machines[0].cycles[0].load_min) = (0, 0));
}
