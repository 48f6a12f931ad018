//! What holds for any series.

use crate::made_up::{Chance, Wear, series};
use cycle::drift::{Figure, RunFeatures, Settings, Watcher, watch};
use proptest::prelude::*;

fn worn(start: u64, kind: u64) -> impl Fn(u64) -> Wear {
    move |cycle| {
        let share = (cycle.saturating_sub(start) as f64 / 60.0).min(1.0);
        let mut wear = Wear::default();
        match kind {
            0 => wear.heater -= 0.3 * share,
            1 => wear.pump -= 0.3 * share,
            2 => wear.filter -= 0.5 * share,
            _ => wear.leak_kpa_per_min += 6.0 * share,
        }
        wear
    }
}

/// Takes values out at random.
fn with_holes(mut runs: Vec<RunFeatures>, seed: u64, share: f64) -> Vec<RunFeatures> {
    let mut chance = Chance(seed);
    for run in &mut runs {
        let values = [
            &mut run.heat_up_s,
            &mut run.air_in_s,
            &mut run.vac1_s,
            &mut run.dry_vac_kpa,
            &mut run.total_s,
            &mut run.plateau_s,
            &mut run.plateau_t_min_c,
        ];
        for value in values {
            if chance.even() < share {
                *value = None;
            }
        }
    }
    runs
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 8, failure_persistence: None, ..ProptestConfig::default() })]

    /// Forward only: what comes later changes no alarm, and no alarm's number.
    #[test]
    fn cutting_the_end_off_changes_nothing_before(
        seed in any::<u64>(), start in 60_u64..120, kind in 0_u64..4, cut in 100_usize..200,
    ) {
        let runs = with_holes(series(seed, 220, worn(start, kind)), seed, 0.02);
        let whole = watch(&runs, &Settings::default());
        let part = watch(&runs[..cut], &Settings::default());
        let last = runs[cut - 1].cycle;
        let before: Vec<_> = whole.into_iter().filter(|alarm| alarm.alarm_at_cycle <= last).collect();
        prop_assert_eq!(part, before);
    }

    /// Anything may stand in a file: no panic, and numbers only of runs that exist.
    #[test]
    fn rubbish_does_no_harm(
        values in prop::collection::vec(prop::array::uniform8(prop::option::of(any::<f64>())), 45..90),
    ) {
        let run = |(cycle, v): (u64, &[Option<f64>; 8])| RunFeatures {
            cycle, preheat_s: v[0], heat_up_s: v[1], air_in_s: v[2], vac1_s: v[3],
            dry_vac_kpa: v[4], total_s: v[5], plateau_t_min_c: v[6], plateau_s: v[7],
            ..RunFeatures::default()
        };
        let runs: Vec<RunFeatures> = (1..).zip(&values).map(run).collect();
        for alarm in watch(&runs, &Settings::default()) {
            prop_assert!(alarm.since_cycle >= 1 && alarm.since_cycle <= alarm.alarm_at_cycle);
        }
    }
}

#[test]
fn one_run_at_a_time_is_the_same_as_all_at_once() {
    let runs = series(5, 200, worn(100, 2));
    let mut watcher = Watcher::new(Settings::default());
    let one_by_one: Vec<_> = runs.iter().filter_map(|run| watcher.take(run)).collect();
    assert_eq!(one_by_one.len(), 1);
    assert_eq!(one_by_one, watch(&runs, &Settings::default()));
}

#[test]
fn an_impossible_value_counts_as_not_measured() {
    let mut absent = series(6, 200, worn(100, 2));
    let mut impossible = absent.clone();
    for at in (10..200).step_by(9) {
        absent[at].air_in_s = None;
        impossible[at].air_in_s = Some([-4.0, f64::NAN, f64::INFINITY, 1e9][at % 4]);
    }
    let alarms = watch(&absent, &Settings::default());
    assert_eq!(alarms.len(), 1);
    assert_eq!(alarms, watch(&impossible, &Settings::default()));
}

#[test]
fn missing_values_delay_but_do_not_hide() {
    let runs = with_holes(series(7, 220, worn(100, 1)), 7, 0.15);
    let alarms = watch(&runs, &Settings::default());
    assert_eq!(alarms.len(), 1, "{alarms:?}");
    assert_eq!(alarms[0].part, cycle::drift::Part::Pump, "{alarms:?}");
}

/// Two programmes in turn, one of them much longer: each is judged against its own kind, and a
/// part that fails in both is called once.
#[test]
fn programmes_are_kept_apart() {
    let mut runs = series(8, 400, worn(200, 2));
    for run in runs.iter_mut().filter(|run| run.cycle % 3 == 0) {
        run.plateau_s = Some(900.0);
        run.plateau_t_min_c = run.plateau_t_min_c.map(|temp| temp - 13.0);
        run.plateau_t_max_c = run.plateau_t_max_c.map(|temp| temp - 13.0);
        run.heat_up_s = run.heat_up_s.map(|time| time - 9.0);
        run.total_s = run.total_s.map(|time| time + 690.0);
    }
    let alarms = watch(&runs, &Settings::default());
    assert_eq!(alarms.len(), 1, "{alarms:?}");
    assert_eq!(alarms[0].figure, Figure::AirIn);
}

#[test]
fn a_higher_rate_speaks_no_later() {
    let runs = series(9, 260, worn(100, 3));
    let at = |rate: f64| watch(&runs, &Settings::with_rate(rate).unwrap())[0].alarm_at_cycle;
    assert!(at(10.0) <= at(0.5) && at(0.5) <= at(0.01));
}

#[test]
fn a_rate_that_means_nothing_is_refused() {
    for rate in [0.0, -1.0, f64::NAN, f64::INFINITY, 101.0] {
        assert!(Settings::with_rate(rate).is_err(), "{rate}");
    }
}
