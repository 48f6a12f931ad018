//! Days so small that the best plan can be told by hand, each made for one argument of the bounds.
#![allow(clippy::unwrap_used, clippy::panic)] // tests may stop at once

use super::super::problem::{Carry, Cycle, Drying, Kind, Machine, Problem, Service};
use super::super::table::Table;
use super::Prover;

/// Two kinds of which one set each is asked for; slots of five minutes, nothing to soak.
fn day(slots: usize, cycles: Vec<Cycle>, asked: &[(usize, usize)], carry: [Carry; 2]) -> Problem {
    let kind = |k: u32| Kind {
        id: format!("k{k}"),
        owned: 1,
        ready: 0,
        mass_g: [100, 500][k as usize],
        area: 1,
        hand_min: 10,
        target_ready: 0,
        pouch_cost: 0,
    };
    let service = |&(kind, start): &(usize, usize)| Service {
        id: format!("at {start}"),
        start,
        end: start + 1,
        weight: 1,
        needs: vec![(kind, 1)],
    };
    Problem {
        name: "by hand".to_owned(),
        slot_min: 5,
        slots,
        passive_min: 0,
        immediate_window_min: 0,
        kinds: vec![kind(0), kind(1)],
        machines: vec![Machine {
            id: "m".to_owned(),
            warm_window_min: 10,
            free_from: 0,
            warm_until: None,
            cycles,
        }],
        services: asked.iter().map(service).collect(),
        hands: vec![5; slots],
        carry: carry.to_vec(),
    }
}

/// Cold and warm length, what it holds and how long that cools; no hands.
fn cycle(cold: u32, warm: u32, max_mass_g: u32, cool_min: u32) -> Cycle {
    Cycle {
        id: format!("{cold} {warm}"),
        dur_cold_min: cold,
        dur_warm_min: warm,
        max_mass_g,
        max_area: 9,
        drying: Drying::Full,
        wrapped: true,
        load_min: 0,
        unload_min: 0,
        cool_min,
        cost_cold: 1,
        cost_warm: 1,
    }
}

fn loadable() -> Carry {
    Carry { loadable: 1, ..Carry::default() }
}

/// Unmet, short and runs of the best plan; the bound is no more, and here no less. Once more with a
/// machine beside it that can do nothing, which is another programme.
fn check(mut day: Problem, best: [u64; 3], with_another: [u64; 3]) {
    for expected in [best, with_another] {
        let table = Table::new(&day);
        let mut prover = Prover::new(&table);
        prover.attempt(&[9, 9, 9, 0, 0, 0], 3, u64::MAX, &|| false);
        assert_eq!(prover.least, Some(expected));
        day.machines.push(Machine { cycles: Vec::new(), ..day.machines[0].clone() });
    }
}

#[test]
fn a_load_that_cools_for_long_may_be_ready_after_the_next() {
    // The heavy set must be in from the first slot: out at 2, ready at 14, when it is asked for.
    // The light one is there from slot 2 and asked for in slot 4.
    let cycles = vec![cycle(10, 10, 500, 60), cycle(10, 10, 100, 0)];
    let later = Carry { loadable_at: vec![(2, 1)], ..Carry::default() };
    check(day(20, cycles, &[(0, 4), (1, 14)], [later, loadable()]), [0, 0, 2], [0, 0, 2]);
}

#[test]
fn a_set_that_nobody_needs_can_warm_the_machine() {
    // Cold it takes from slot 6 to 12, warm to 8, when the light set is asked for. So the heavy one
    // is run before, for nothing but the warmth. With more machines all are warm.
    let later = Carry { loadable_at: vec![(6, 1)], ..Carry::default() };
    let day = day(20, vec![cycle(30, 10, 500, 0)], &[(0, 8)], [later, loadable()]);
    check(day.clone(), [0, 0, 2], [0, 0, 1]);
    // One cent a run, found from a plan of which it is known only that it serves all in two runs.
    let table = Table::new(&day);
    let mut prover = Prover::new(&table);
    let known = [0, 0, 2, 100, 0, 0];
    prover.attempt(&known, 6, u64::MAX, &|| false);
    assert_eq!(prover.bound(&known, 6)[3], Some(2));
}

#[test]
fn minutes_that_were_worked_before_count() {
    // Nine of ten minutes are done: the set is in from slot 1 and out in slot 3.
    let begun = Carry { dirty: 1, worked: 9, ..Carry::default() };
    let cycles = vec![cycle(10, 10, 500, 0)];
    check(day(9, cycles, &[(0, 3)], [begun, Carry::default()]), [0, 0, 1], [0, 0, 1]);
}

#[test]
fn a_kind_that_takes_no_washing_need_not_be_there() {
    // The rules ask for washed minutes only, and no minutes are soon washed.
    let mut day = day(9, vec![cycle(10, 10, 500, 0)], &[(0, 2)], Default::default());
    day.kinds[0].hand_min = 0;
    // And none comes back.
    day.services[0].end = 90;
    check(day, [0, 0, 1], [0, 0, 1]);
}

#[test]
fn a_machine_still_warm_is_warm_for_each_run_until_then() {
    // Both sets are asked for at once and the machine holds one; the second run starts in slot 6,
    // long after the first was out, and is warm because the day began so.
    let at = |slot| Carry { loadable_at: vec![(slot, 1)], ..Carry::default() };
    let mut day = day(20, vec![cycle(30, 10, 500, 0)], &[(0, 2), (1, 8)], [loadable(), at(6)]);
    day.machines[0].warm_until = Some(6);
    check(day, [0, 0, 2], [0, 0, 2]);
}

#[test]
fn what_cannot_be_there_is_unmet() {
    // Half an hour of a cold machine, and the client comes after a quarter.
    let cycles = || vec![cycle(30, 30, 500, 0)];
    let one = [loadable(), Carry::default()];
    check(day(20, cycles(), &[(0, 3)], one.clone()), [1, 0, 0], [1, 0, 0]);
    check(day(20, cycles(), &[(0, 6)], one), [0, 0, 1], [0, 0, 1]);
}
