//! Days small enough to follow by hand.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

mod laws;

use super::confirm::as_problem;
use super::life::Life;
use super::random::{Coming, Day, Draws};
use super::template::{Template, begins};
use super::trace::Trace;
use super::*;
use crate::plan::{Carry, Cycle, Drying, Kind, Machine, Problem, Service, audit};

/// About 7, 15 and 45 minutes (common practice, no source); the rest is assumption.
fn cycles() -> Vec<Cycle> {
    let cycle = |id: &str, [cold, warm]: [u32; 2], mass, drying| Cycle {
        id: id.to_owned(),
        dur_cold_min: cold,
        dur_warm_min: warm,
        max_mass_g: mass,
        max_area: 60,
        drying,
        wrapped: drying != Drying::None,
        load_min: 2,
        unload_min: 2,
        cool_min: 3,
        cost_cold: 70,
        cost_warm: 60,
    };
    vec![
        cycle("fast", [12, 7], 500, Drying::None),
        cycle("middle", [20, 15], 1000, Drying::Short),
        cycle("long", [55, 45], 1700, Drying::Full),
    ]
}

fn kind(id: &str, owned: u32, mass_g: u32) -> Kind {
    Kind {
        id: id.to_owned(),
        owned,
        ready: owned,
        mass_g,
        area: 10,
        hand_min: 5,
        target_ready: 0,
        pouch_cost: 8,
    }
}

/// A day with two people, of whom each appointment keeps one at a chair.
fn day(kinds: Vec<Kind>, machines: usize, services: Vec<Service>) -> Problem {
    let slots = 120;
    let mut hands = vec![10_u32; slots];
    for service in &services {
        hands[service.start..service.end.min(slots)]
            .iter_mut()
            .for_each(|h| *h = h.saturating_sub(5));
    }
    let machine = |i| Machine {
        id: format!("m{i}"),
        warm_window_min: 45,
        free_from: 0,
        warm_until: None,
        cycles: cycles(),
    };
    Problem {
        name: "made up".to_owned(),
        slot_min: 5,
        slots,
        passive_min: 10,
        immediate_window_min: 30,
        carry: vec![Carry::default(); kinds.len()],
        kinds,
        machines: (0..machines).map(machine).collect(),
        services,
        hands,
    }
}

fn service(start: usize, end: usize, needs: &[(usize, u32)]) -> Service {
    Service { id: format!("at {start}"), start, end, weight: 1, needs: needs.to_vec() }
}

fn share(problem: &Problem, assumptions: &Assumptions, days: u32) -> f64 {
    tally(problem, &Days { assumptions, days, seed: 7, threads: 1 }).unwrap().share().share
}

/// One chair, one set, two appointments. By hand, with one free person: the set comes back at the
/// start of slot 12, is washed in it, soaks in 13 and 14, and is loaded in 15. The machine is cold:
/// 2 + 12 minutes are 3 slots for the fast cycle, so it ends at 18, is unloaded there, and cools for
/// 2 + 3 minutes, 1 slot: ready at 19. So a client at 19 is served and a client at 18 waits.
#[test]
fn one_chair_and_one_set_by_hand() {
    let check = |second: usize, owned: u32, expected: f64| {
        let services = vec![service(2, 12, &[(0, 1)]), service(second, second + 10, &[(0, 1)])];
        let problem = day(vec![kind("manicure", owned, 180)], 1, services);
        assert_eq!(
            share(&problem, &Assumptions::NOTHING, 100),
            expected,
            "second at {second}, {owned} owned"
        );
    };
    check(12, 1, 0.0);
    check(18, 1, 0.0);
    check(19, 1, 1.0);
    check(12, 2, 1.0);
}

/// Without drying is the last way out: where the middle cycle is in time, it is run. By hand: loaded
/// in 15, 2 + 20 minutes are 5 slots, unloaded at 20, ready at 21.
#[test]
fn the_fast_cycle_runs_only_where_no_other_is_in_time() {
    let cycle_of = |second: usize| {
        let services = vec![service(2, 12, &[(0, 1)]), service(second, second + 10, &[(0, 1)])];
        let problem = day(vec![kind("manicure", 1, 180)], 1, services);
        let trace = lived(&problem, &Assumptions::NOTHING, 7, 0).1;
        cycles()[trace.runs[0].2.cycle].id.clone()
    };
    assert_eq!(cycle_of(20), "fast");
    assert_eq!(cycle_of(21), "middle");
}

#[test]
fn every_failed_run_leaves_nothing_ready() {
    let services = vec![service(2, 12, &[(0, 1)]), service(60, 70, &[(0, 1)])];
    let problem = day(vec![kind("manicure", 1, 180)], 1, services);
    assert_eq!(share(&problem, &Assumptions::NOTHING, 100), 1.0);
    for event in [Event::Failed, Event::Wet] {
        let mut always = Assumptions::NOTHING;
        always[event].share = 1.0;
        assert_eq!(share(&problem, &always, 100), 0.0, "{}", event.name());
    }
}

/// With one set and appointments back to back, the second client waits unless the first stays away
/// or the second does: 1 - 0.6 * 0.6 of the days.
#[test]
fn who_stays_away_needs_nothing() {
    let services = vec![service(2, 12, &[(0, 1)]), service(12, 22, &[(0, 1)])];
    let problem = day(vec![kind("manicure", 1, 180)], 1, services);
    let mut away = Assumptions::NOTHING;
    away[Event::NoShow].share = 0.4;
    let tally =
        tally(&problem, &Days { assumptions: &away, days: 20_000, seed: 7, threads: 1 }).unwrap();
    let share = tally.share();
    assert!(share.low < 0.64 && 0.64 < share.high, "{share:?}");
    assert!((tally.waiting_a_day() - 0.36).abs() < 0.02);
}

#[test]
fn a_walk_in_comes_only_where_a_person_is_free() {
    let mut all = Assumptions::NOTHING;
    all[Event::WalkIn].share = 1.0;
    let problem = day(vec![kind("manicure", 1, 180)], 1, vec![service(2, 12, &[(0, 1)]); 2]);
    assert_eq!(lived(&problem, &all, 7, 0).0.visitors.len(), 2, "both people are busy until 12");
    let problem = day(vec![kind("manicure", 1, 180)], 1, vec![service(2, 12, &[(0, 1)])]);
    let visitors = lived(&problem, &all, 7, 0).0.visitors;
    assert!(visitors.iter().any(|v| v.coming == Coming::WalkIn && v.end - v.start == 10));
}

/// Day `number` and what the policy does on it.
fn lived(problem: &Problem, assumptions: &Assumptions, seed: u64, number: u32) -> (Day, Trace) {
    let template = Template::new(problem);
    let mut day = Day::new(&template);
    day.draw(&template, assumptions, seed, number);
    let mut life = Life::new(&template, assumptions);
    life.trace = Some(Trace::default());
    life.live(&day, &begins(problem));
    (day, life.trace.unwrap())
}

/// Two clients who always come late, by one to three slots each, and one set. By hand (see above):
/// the set is back with the end of the first visit and can be ready 7 slots later by the fast cycle,
/// 9 by the middle one. The book says that the second client comes before either, so the policy
/// takes the middle one and is always too late; a planner who knows when she comes is not.
#[test]
fn a_planner_knows_who_comes_late() {
    let services = vec![service(2, 12, &[(0, 1)]), service(18, 28, &[(0, 1)])];
    let problem = day(vec![kind("manicure", 1, 180)], 1, services);
    let mut late = Assumptions::default().every_run_good();
    for event in [Event::WalkIn, Event::NoShow, Event::Overrun] {
        late[event].share = 0.0;
    }
    late[Event::Late].share = 1.0;
    let in_time = |number: &u32| {
        let mut visitors = lived(&problem, &late, 7, *number).0.visitors;
        visitors.sort_by_key(|visitor| visitor.start);
        visitors[1].start >= visitors[0].end + 7
    };
    let expected = (0..60).filter(in_time).count() as u32;
    let days = Days { assumptions: &late, days: 60, seed: 7, threads: 1 };
    assert_eq!(confirm(&problem, &days), Ok(Confirmed { days: 60, policy: 0, planner: expected }));
    assert!((10..30).contains(&expected), "about one in three");
    let surely = Days { assumptions: &Assumptions::NOTHING, days: 3, ..days };
    let enough = confirm(&owning(&problem, 0, 2), &surely);
    assert_eq!(enough, Ok(Confirmed { days: 3, policy: 3, planner: 3 }));
}

/// Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven
/// methods", Statistics in Medicine 17 (1998), table I, method 3 (score without continuity
/// correction): his four examples, to four places, from memory.
#[test]
fn wilson_as_published() {
    let check = |good, of, low: f64, high: f64| {
        let it = wilson(good, of);
        assert!(
            (it.low - low).abs() < 5e-5 && (it.high - high).abs() < 5e-5,
            "{good}/{of}: {it:?}"
        );
    };
    check(81, 263, 0.2553, 0.3662);
    check(15, 148, 0.0624, 0.1605);
    check(0, 20, 0.0, 0.1611);
    check(1, 29, 0.0061, 0.1718);
}

/// Of many intervals nineteen in twenty hold the truth: 300 sets of 200 days, whose truth by hand is
/// 0.64 (see above). By the binomial law fewer than 270 or all 300 would come once in 5,000 times.
#[test]
fn the_interval_keeps_to_its_level() {
    let services = vec![service(2, 12, &[(0, 1)]), service(12, 22, &[(0, 1)])];
    let problem = day(vec![kind("manicure", 1, 180)], 1, services);
    let mut away = Assumptions::NOTHING;
    away[Event::NoShow].share = 0.4;
    let holds = |seed: &u64| {
        let days = Days { assumptions: &away, days: 200, seed: *seed, threads: 1 };
        let share = tally(&problem, &days).unwrap().share();
        share.low <= 0.64 && 0.64 <= share.high
    };
    let held = (0..300).filter(holds).count();
    assert!((270..300).contains(&held), "{held} of 300");
}

/// By hand: 12 gained and 4 lost of 98 pairs make 8/98; the middle is 8/100 and half the width
/// 1.96 * sqrt(17 - 64/100) / 100 = 0.0793.
#[test]
fn a_gain_by_hand() {
    let gain = paired(12, 4, 98);
    assert!((gain.share - 8.0 / 98.0).abs() < 1e-12);
    assert!((gain.low - 0.0007).abs() < 1e-4 && (gain.high - 0.1593).abs() < 1e-4, "{gain:?}");
}

/// Every event falls as often as it is said to, apart from every other.
#[test]
fn events_fall_as_often_as_assumed() {
    let assumptions = Assumptions::default();
    for event in Event::ALL {
        let fell = |other: Option<Event>| {
            let falls = |d: &u32| {
                let draws = Draws::of(3, *d);
                let too = other.is_none_or(|other| draws.stream(other, 5).unit() < 0.5);
                too && draws.falls(event, 5, &assumptions)
            };
            (0..100_000).filter(falls).count() as f64 / 1e5
        };
        let expected = assumptions[event].share;
        assert!((fell(None) - expected).abs() < 0.004, "{}", event.name());
        let other = if event == Event::Late { Event::Overrun } else { Event::Late };
        assert!(
            (fell(Some(other)) - expected / 2.0).abs() < 0.004,
            "{} with another",
            event.name()
        );
    }
}

/// By hand: between 12 and 30 nobody is under way; a longer lunch begins in the slot nearest the
/// middle of the first and the last appointment, (2 + 40) / 2.
#[test]
fn a_longer_lunch_moves_the_afternoon() {
    let services =
        vec![service(2, 12, &[(0, 1)]), service(30, 40, &[(0, 1)]), service(40, 50, &[(0, 1)])];
    let problem = day(vec![kind("manicure", 1, 180)], 1, services);
    let longer = Purchase::Lunch(30).bought(&problem).unwrap();
    assert_eq!(longer.services.iter().map(|s| s.start).collect::<Vec<_>>(), [2, 36, 46]);
    assert_eq!((longer.slots, longer.hands.len()), (126, 126));
    assert_eq!(longer.hands[21..27], [10; 6]);
    assert!(longer.check().is_ok());
}

#[test]
fn a_purchase_is_what_it_says() {
    let problem = day(vec![kind("manicure", 1, 180)], 1, vec![service(2, 12, &[(0, 1)])]);
    let machine = Purchase::Machine.bought(&problem).unwrap();
    assert_eq!(machine.machines.len(), 2);
    assert!(
        Purchase::Machine.bought(&Problem { machines: Vec::new(), ..problem.clone() }).is_err()
    );
    assert_eq!(Purchase::Set(0).bought(&problem).unwrap().kinds[0].owned, 2);
    assert!(Purchase::Set(1).bought(&problem).is_err());
    assert!(Purchase::Lunch(20_000).bought(&problem).is_err());
}

/// One set and two clients back to back: one waits each day. By hand: a second set saves 250 clients
/// and as many days a year, at 20 each 5,000; 60 come back in 60/5,000 of a year. A longer lunch of
/// an hour does the same, since the second client then comes 12 slots later, and costs 15 a day.
#[test]
fn what_a_purchase_buys_by_hand() {
    let services = vec![service(2, 12, &[(0, 1)]), service(12, 22, &[(0, 1)])];
    let problem = day(vec![kind("manicure", 1, 180)], 1, services);
    let days = Days { assumptions: &Assumptions::NOTHING, days: 100, seed: 1, threads: 1 };
    let prices = Prices {
        set: 60.0,
        machine: 3_000.0,
        lunch_a_day: 15.0,
        waiting: 20.0,
        working_days: 250.0,
    };
    let before = tally(&problem, &days).unwrap();
    let check = |purchase, clients: f64, saved: f64, back: Option<f64>| {
        let bought = buy(&problem, &before, purchase, &days, &prices).unwrap();
        assert_eq!((bought.days_a_year, bought.clients_a_year), (clients, clients), "{purchase:?}");
        assert_eq!((bought.saved_a_year, bought.pays_back_years), (saved, back), "{purchase:?}");
    };
    check(Purchase::Set(0), 250.0, 5_000.0, Some(0.012));
    check(Purchase::Machine, 0.0, 0.0, None);
    check(Purchase::Lunch(60), 250.0, 1_250.0, Some(0.0));
}

#[test]
fn what_cannot_be_simulated_is_refused() {
    let problem = day(vec![kind("manicure", 1, 180)], 1, vec![service(2, 12, &[(0, 1)])]);
    let mut wild = Assumptions::default();
    wild[Event::NoShow].share = f64::NAN;
    let days = Days { assumptions: &wild, days: 10, seed: 1, threads: 1 };
    assert!(tally(&problem, &days).unwrap_err().to_string().contains("no-shows"));
    let usual = Assumptions::default();
    let days = Days { assumptions: &usual, ..days };
    assert!(curve(&problem, 1, 0..=2, &days).is_err());
    assert!(curve(&problem, 0, 0..=251, &days).is_err());
    assert_eq!(tally(&problem, &Days { days: 0, ..days }).unwrap().share().high, 1.0);
}
