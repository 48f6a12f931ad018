//! A bound is never above a plan, and where it is known it is there.
#![allow(clippy::unwrap_used, clippy::panic)] // tests may stop at once

use super::super::answer::Objective;
use super::super::order::DAYPLAN;
use super::super::problem::{Carry, Cycle, Drying, Kind, Machine, Problem, Service};
use super::super::solve::{Options, solve};
use super::super::table::Table;
use super::Prover;
use crate::Chance;

fn cycle(
    drying: Drying,
    cold_warm: [u32; 2],
    holds: [u32; 2],
    hands: [u32; 3],
    cost: [u32; 2],
) -> Cycle {
    Cycle {
        id: format!("{drying:?} {}", cold_warm[0]),
        dur_cold_min: cold_warm[0],
        dur_warm_min: cold_warm[1],
        max_mass_g: holds[0],
        max_area: holds[1],
        drying,
        wrapped: drying != Drying::None,
        load_min: hands[0],
        unload_min: hands[1],
        cool_min: hands[2],
        cost_cold: cost[0],
        cost_warm: cost[1],
    }
}

/// One of a list, by chance.
struct Draw(Chance);

impl Draw {
    fn of(&mut self, list: &[u32]) -> u32 {
        list[self.0.below(list.len())]
    }

    fn slot(&mut self, list: &[u32]) -> usize {
        self.of(list) as usize
    }

    fn kind(&mut self, k: u32) -> Kind {
        let owned = self.of(&[1, 2, 3, 4]);
        Kind {
            id: format!("k{k}"),
            owned,
            ready: self.of(&[0, 1, 2, 4]).min(owned),
            mass_g: self.of(&[100, 180, 260]),
            area: self.of(&[4, 10, 12]),
            hand_min: self.of(&[0, 2, 5, 5, 8, 12]),
            target_ready: self.of(&[0, 1, 2, 4]).min(owned),
            pouch_cost: self.of(&[0, 5, 8]),
        }
    }

    fn cycle(&mut self) -> Cycle {
        let cold = self.of(&[8, 12, 20, 40]);
        let drying = [Drying::None, Drying::Short, Drying::Full][self.slot(&[0, 1, 2])];
        let lengths = [cold, cold - self.of(&[0, 2, 5])];
        let holds = [self.of(&[260, 500, 800]), self.of(&[12, 24, 40])];
        let hands = [self.of(&[0, 2, 4]), self.of(&[0, 1, 3]), self.of(&[0, 3, 5, 30])];
        let cost = [self.of(&[40, 60, 90]), self.of(&[30, 40, 60, 80])];
        Cycle { wrapped: self.of(&[0, 1]) == 1, ..cycle(drying, lengths, holds, hands, cost) }
    }

    fn machine(&mut self, m: usize) -> Machine {
        Machine {
            id: format!("m{m}"),
            warm_window_min: self.of(&[0, 10, 20, 45]),
            free_from: self.slot(&[0, 0, 3, 8]),
            warm_until: Some(self.slot(&[0, 0, 0, 5, 15, 20])).filter(|&t| t > 0),
            cycles: (0..self.of(&[1, 2, 3])).map(|_| self.cycle()).collect(),
        }
    }

    fn service(&mut self, s: u32, slots: usize, kinds: usize) -> Service {
        let start = self.0.below(slots - 2);
        let needs = (0..kinds).map(|k| (k, self.of(&[0, 1, 1, 2]))).filter(|need| need.1 > 0);
        let needs = needs.collect();
        let (weight, end) = (self.of(&[1, 1, 1, 2, 3]), start + self.slot(&[1, 4, 12]));
        Service { id: format!("s{s}"), start, end, weight, needs }
    }

    fn later(&mut self) -> Vec<(usize, u32)> {
        let slot = self.slot(&[2, 7, 12, 17]);
        if self.of(&[0, 0, 0, 0, 1]) == 1 { vec![(slot, 1)] } else { Vec::new() }
    }

    fn carry(&mut self, kind: &Kind) -> Carry {
        let dirty = kind.owned - kind.ready;
        Carry {
            dirty,
            loadable: self.of(&[0, 0, 0, 1]),
            dirty_at: self.later(),
            loadable_at: self.later(),
            ready_at: self.later(),
            worked: self.of(&[0, 0, 1]).min(dirty).min(kind.hand_min.saturating_sub(1)),
        }
    }
}

/// Short days in which everything that a bound must reckon with comes up: kinds that take no
/// washing, cooling longer than a run, machines warm from before, sets on their way, hands away.
fn harsh(seed: u64, machines: usize) -> Problem {
    let mut draw = Draw(Chance::from_seed(seed));
    let slots = draw.slot(&[18, 24, 30, 40]);
    let kinds: Vec<Kind> = (0..draw.of(&[1, 2])).map(|k| draw.kind(k)).collect();
    let free = if draw.of(&[0, 1]) == 0 { [5, 5, 10, 5] } else { [0, 2, 5, 10] };
    Problem {
        name: format!("harsh {seed}"),
        slot_min: 5,
        slots,
        passive_min: draw.of(&[0, 5, 10, 15]),
        immediate_window_min: draw.of(&[0, 10, 30]),
        carry: kinds.iter().map(|kind| draw.carry(kind)).collect(),
        machines: (0..machines).map(|m| draw.machine(m)).collect(),
        services: (0..draw.of(&[2, 4, 6, 7]))
            .map(|s| draw.service(s, slots, kinds.len()))
            .collect(),
        hands: (0..slots).map(|_| draw.of(&free)).collect(),
        kinds,
    }
}

fn best(problem: &Problem, rounds: u32) -> Objective {
    let options = Options { order: DAYPLAN, threads: 1, rounds };
    solve(problem, &options, &|| false).unwrap().objective
}

/// The bounds, worked out without knowing a plan: from the empty day, and then from a price that is
/// above any.
fn bounds(problem: &Problem, plan: &Objective) -> [Option<u64>; 6] {
    let table = Table::new(problem);
    let mut prover = Prover::new(&table);
    let never = || false;
    prover.attempt(&best(problem, 0), 6, 1 << 20, &never);
    let [unmet, short, runs, cost, ..] = *plan;
    prover.attempt(&[unmet, short, runs, cost + 1_000, 0, 0], 6, 1 << 21, &never);
    prover.bound(plan, 6)
}

/// Every bound at or below the plan; how many levels are proven.
fn check_below(problem: &Problem) -> usize {
    let plan = best(problem, 2);
    let bounds = bounds(problem, &plan);
    let below = bounds.iter().zip(&plan).all(|(bound, value)| bound.is_none_or(|b| b <= *value));
    assert!(below, "{}: {plan:?} {bounds:?}", problem.name);
    bounds.iter().zip(&plan).take_while(|(bound, value)| **bound == Some(**value)).count()
}

#[test]
fn no_bound_is_above_a_plan_for_one_machine() {
    let proven: Vec<usize> = (0..250).map(|seed| check_below(&harsh(seed, 1))).collect();
    // Many of them to the last level, or the law would say little.
    assert!(proven.iter().filter(|&&levels| levels == 6).count() >= 80, "{proven:?}");
}

#[test]
fn no_bound_is_above_a_plan_for_several_machines() {
    let check = |seed: u64| check_below(&harsh(1_000 + seed, 2 + seed as usize % 2));
    let proven: Vec<usize> = (0..150).map(check).collect();
    assert!(proven.iter().filter(|&&levels| levels >= 3).count() >= 40, "{proven:?}");
}

/// The cycles of the public days: about 7, 15 and 45 minutes (common practice, no source).
fn public_cycles(fast_cold: u32) -> Vec<Cycle> {
    vec![
        cycle(Drying::None, [fast_cold, 7], [500, 40], [2, 1, 3], [45, 35]),
        cycle(Drying::Short, [20, 15], [1000, 52], [2, 2, 3], [75, 62]),
        cycle(Drying::Full, [55, 45], [1700, 86], [2, 2, 5], [98, 84]),
    ]
}

/// A public day: sets owned, ready and wanted tomorrow; start, end, weight and kind of each
/// service; hands as lengths and minutes.
fn public(
    (name, fast_cold, warm_window_min): (&str, u32, u32),
    kinds: &[[u32; 3]],
    services: &[(usize, usize, u32, usize)],
    hands: &[(usize, u32)],
) -> Problem {
    let of_kind = |(k, &[owned, ready, target_ready]): (usize, &[u32; 3])| Kind {
        id: ["manicure", "pedicure"][k].to_owned(),
        owned,
        ready,
        target_ready,
        mass_g: [180, 260][k],
        area: [10, 12][k],
        hand_min: [5, 6][k],
        pouch_cost: [8, 9][k],
    };
    let service = |(s, &(start, end, weight, kind)): (usize, &(usize, usize, u32, usize))| {
        Service { id: format!("s{s}"), start, end, weight, needs: vec![(kind, 1)] }
    };
    let hands: Vec<u32> =
        hands.iter().flat_map(|&(n, minutes)| std::iter::repeat_n(minutes, n)).collect();
    let dirty = |&[owned, ready, _]: &[u32; 3]| Carry { dirty: owned - ready, ..Carry::default() };
    Problem {
        name: name.to_owned(),
        slot_min: 5,
        slots: hands.len(),
        passive_min: 10,
        immediate_window_min: 30,
        kinds: kinds.iter().enumerate().map(of_kind).collect(),
        machines: vec![Machine {
            id: "m1".to_owned(),
            warm_window_min,
            free_from: 0,
            warm_until: None,
            cycles: public_cycles(fast_cold),
        }],
        services: services.iter().enumerate().map(service).collect(),
        hands,
        carry: kinds.iter().map(dirty).collect(),
    }
}

/// The optimum as far as another method proved it.
fn check(problem: &Problem, optimum: Objective, levels: usize) {
    let bounds = bounds(problem, &optimum);
    assert_eq!(bounds[..levels], optimum.map(Some)[..levels], "{}", problem.name);
    for (bound, value) in bounds.iter().zip(&optimum) {
        assert!(bound.is_none_or(|b| b <= *value), "{}: {bounds:?}", problem.name);
    }
}

// The values of these are those of `reference.csv` beside the public days, in its columns `bound_`:
// two general solvers (CP-SAT and HiGHS) agree on them as far as `levels_proven` says.

#[test]
fn one_set_short() {
    let hands = [(9, 0), (4, 5), (9, 0), (98, 5)];
    let mut day =
        public(("rule_oneshort_a", 12, 45), &[[2, 1, 0]], &[(0, 9, 1, 0), (13, 22, 1, 0)], &hands);
    day.carry[0] = Carry { loadable: 1, ..Carry::default() };
    check(&day, [0, 0, 1, 45, 2, 30], 6);
}

#[test]
fn one_client_goes_without() {
    let services = [
        (0, 14, 1, 0),
        (15, 29, 1, 0),
        (30, 39, 2, 0),
        (47, 55, 1, 0),
        (56, 66, 2, 0),
        (68, 75, 2, 0),
    ];
    let hands = [
        [(14, 0), (1, 5), (14, 0), (1, 5), (9, 0), (2, 5), (4, 0)],
        [(2, 5), (8, 0), (1, 5), (10, 0), (2, 5), (7, 0), (33, 5)],
    ];
    let day = public(("tiny_01a", 12, 30), &[[3, 2, 2]], &services, hands.as_flattened());
    check(&day, [1, 0, 3, 252, 5, 25], 6);
}

#[test]
fn two_kinds_and_two_go_without() {
    let services = [
        (2, 9, 1, 1),
        (12, 18, 1, 1),
        (19, 26, 1, 1),
        (53, 61, 1, 0),
        (62, 74, 1, 1),
        (77, 89, 1, 0),
        (90, 97, 1, 0),
    ];
    let hands = [
        [(2, 5), (7, 0), (3, 5), (6, 0), (1, 5), (7, 0), (20, 5), (4, 0), (3, 5)],
        [(8, 0), (1, 5), (12, 0), (3, 5), (12, 0), (1, 5), (7, 0), (23, 5), (0, 0)],
    ];
    let day =
        public(("tiny_03a", 13, 30), &[[1, 1, 1], [2, 2, 2]], &services, hands.as_flattened());
    check(&day, [2, 0, 3, 268, 5, 30], 6);
}

#[test]
fn twelve_clients() {
    let services = [
        [(1, 10, 1, 1), (2, 11, 2, 0), (13, 22, 2, 1), (13, 23, 2, 0)],
        [(24, 39, 3, 0), (46, 56, 3, 0), (48, 55, 1, 0), (56, 68, 3, 0)],
        [(57, 67, 1, 0), (70, 79, 1, 1), (71, 80, 1, 1), (83, 95, 2, 1)],
    ];
    let hands = [
        [(1, 10), (1, 5), (8, 0), (1, 5), (2, 10)],
        [(9, 0), (1, 5), (1, 10), (15, 5), (2, 10)],
        [(4, 0), (1, 10), (2, 5), (7, 0), (2, 5)],
        [(10, 0), (1, 5), (2, 10), (1, 5), (8, 0)],
        [(1, 5), (3, 10), (12, 5), (1, 10), (15, 5)],
    ];
    let day = public(
        ("small_01a", 12, 45),
        &[[4, 4, 3], [3, 2, 2]],
        services.as_flattened(),
        hands.as_flattened(),
    );
    check(&day, [0, 0, 3, 316, 2, 30], 4);
}
