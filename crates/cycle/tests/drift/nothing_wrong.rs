//! The rate of false alarms, and how long a change waits for its alarm.

use crate::made_up::{Chance, Wear, series};
use cycle::drift::{Part, RunFeatures, Settings, watch};

/// Runs without any tolerance to hide behind: spreads so wide that the tolerances vanish in them,
/// companions that share a load, and once in fifty a value four times as wide.
fn bare(seed: u64, count: u64) -> Vec<RunFeatures> {
    let mut chance = Chance(seed);
    let mut one = |cycle: u64| {
        let load = chance.bell();
        RunFeatures {
            cycle,
            first_of_day: Some(cycle % 6 == 1),
            preheat_s: Some(10.0),
            heat_up_s: Some(1500.0 + 200.0 * (load + chance.odd())),
            air_in_s: Some(1500.0 + 200.0 * (chance.odd() - load)),
            vac1_s: Some(1500.0 + 200.0 * chance.odd()),
            vac3_kpa: Some(50.0 + 8.0 * chance.odd()),
            dry_vac_kpa: Some(50.0 + 7.0 * (load + chance.odd())),
            leak_kpa_per_min: Some(50.0 + 8.0 * chance.odd()),
            satdev_mean_k: Some(4.0 * chance.odd()),
            total_s: Some(20_000.0 + 1000.0 * chance.odd()),
            ..RunFeatures::default()
        }
    };
    (1..=count).map(&mut one).collect()
}

/// Alarms and judged runs of many machines with nothing wrong.
fn count(machines: u64, rate: f64, runs: impl Fn(u64) -> Vec<RunFeatures>) -> (usize, usize) {
    let settings = Settings::with_rate(rate).unwrap();
    let one = |seed: u64| {
        let runs = runs(seed);
        (watch(&runs, &settings).len(), runs.len() - settings.learn_runs)
    };
    (0..machines).map(one).fold((0, 0), |sum, one| (sum.0 + one.0, sum.1 + one.1))
}

/// At a rate high enough to count: 20 in 1000. The measured rate may not pass it, and a judge that
/// never speaks would not pass either.
#[test]
fn the_stated_rate_holds_without_any_tolerance() {
    let (alarms, judged) = count(16, 20.0, |seed| bare(seed * 7919 + 13, 260));
    let stated = judged as f64 * 20.0 / 1000.0;
    assert!((alarms as f64) < stated, "{alarms} alarms in {judged} runs");
    assert!(alarms as f64 > stated / 20.0, "{alarms} alarms in {judged} runs");
}

/// At the default rate twenty machines of 240 runs may raise two.
#[test]
fn machines_with_nothing_wrong_stay_quiet() {
    let (alarms, judged) = count(20, 0.5, |seed| series(seed, 240, |_| Wear::default()));
    let stated = judged as f64 * 0.5 / 1000.0;
    assert!(alarms as f64 <= stated, "{alarms} alarms in {judged} runs");
}

/// What the judge must not take for wear.
#[test]
fn load_mains_and_season_are_no_alarm() {
    for seed in 0..4 {
        let heavier = |cycle| Wear { load: if cycle > 100 { 1.2 } else { 1.0 }, ..Wear::default() };
        assert_eq!(watch(&series(seed, 200, heavier), &Settings::default()), [], "load, {seed}");
        let weaker =
            |cycle| Wear { mains: if cycle > 100 { 0.985 } else { 1.0 }, ..Wear::default() };
        assert_eq!(watch(&series(seed, 200, weaker), &Settings::default()), [], "mains, {seed}");
    }
}

/// A change from run 101 on: at once, or over the next 200 runs.
fn changed(part: Part, cycle: u64, slow: bool) -> Wear {
    let share = match (cycle > 100, slow) {
        (false, _) => 0.0,
        (true, false) => 1.0,
        (true, true) => ((cycle - 100) as f64 / 200.0).min(1.0),
    };
    let mut wear = Wear::default();
    match part {
        Part::Heater => wear.heater -= 0.25 * share,
        Part::Pump => wear.pump -= 0.25 * share,
        Part::Filter => wear.filter -= 0.4 * share,
        Part::Drain => wear.drain -= 0.4 * share,
        Part::Seal => wear.leak_kpa_per_min += 6.0 * share,
        Part::Unclear => {}
    }
    wear
}

const PARTS: [Part; 5] = [Part::Heater, Part::Seal, Part::Pump, Part::Filter, Part::Drain];

/// Delays from the change to the one alarm, sorted; how many were named right, and how many
/// further alarms came.
fn delays(part: Part, slow: bool, machines: u64, length: u64) -> (Vec<u64>, usize, usize) {
    let (mut delays, mut right, mut further) = (Vec::new(), 0, 0);
    for seed in 0..machines {
        let runs = series(900 + seed, length, |cycle| changed(part, cycle, slow));
        let alarms = watch(&runs, &Settings::default());
        if let Some(first) = alarms.first() {
            delays.push(first.alarm_at_cycle.saturating_sub(100));
            right += usize::from(first.part == part);
            further += alarms.len() - 1;
        }
    }
    delays.sort_unstable();
    (delays, right, further)
}

/// A step is told by its right name, once, within twenty runs; the bounds are ours.
#[test]
fn a_step_alarms_once_and_soon() {
    for part in PARTS {
        let (delays, right, further) = delays(part, false, 3, 140);
        assert_eq!((delays.len(), right, further), (3, 3, 0), "{part:?}: {delays:?}");
        assert!(delays.iter().all(|delay| (3..=20).contains(delay)), "{part:?}: {delays:?}");
    }
}

/// Prints the figures of the page on performance; run with `--ignored --nocapture`, in release.
#[test]
#[ignore = "a measurement for a page, minutes long in a debug build"]
fn measure_rates_and_delays() {
    for (name, rate) in [("stated 0.5", 0.5), ("stated 5", 5.0), ("stated 20", 20.0)] {
        let (alarms, judged) = count(200, rate, |seed| series(seed, 400, |_| Wear::default()));
        println!(
            "nothing wrong, {name}: {:.3} in 1000 ({judged} runs)",
            1000.0 * alarms as f64 / judged as f64
        );
        let (alarms, judged) = count(200, rate, |seed| bare(seed * 7919 + 13, 400));
        println!(
            "no tolerance, {name}: {:.3} in 1000 ({judged} runs)",
            1000.0 * alarms as f64 / judged as f64
        );
    }
    for part in PARTS {
        for slow in [false, true] {
            let (delays, right, further) = delays(part, slow, 100, 300);
            let at = |share: usize| delays.get((delays.len().max(1) - 1) * share / 100);
            println!(
                "{part:?} slow {slow}: {} of 100 alarmed, {right} right, {further} further; delay {:?} {:?} {:?}",
                delays.len(),
                at(10),
                at(50),
                at(90)
            );
        }
    }
}
