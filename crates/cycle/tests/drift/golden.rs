//! Made-up series with known truth (see `series/README.md`): every change is alarmed once, in
//! time, with the right part.

use crate::table::runs;
use cycle::drift::{Alarm, Figure, Part, RunFeatures, Settings, watch};

/// A change that must be alarmed: part, last run without it, most runs until the alarm.
type Truth = (Part, u64, u64);

fn check(name: &str, truth: &[Truth]) -> Vec<Alarm> {
    let alarms = watch(&runs(name), &Settings::default());
    assert_eq!(alarms.len(), truth.len(), "{name}: {alarms:?}");
    for (alarm, (part, after, within)) in alarms.iter().zip(truth) {
        assert_eq!(alarm.part, *part, "{name}: {alarm:?}");
        let delay = alarm.alarm_at_cycle.checked_sub(*after);
        assert!(delay.is_some_and(|delay| delay <= *within), "{name}: {alarm:?}");
        assert!(alarm.since_cycle <= alarm.alarm_at_cycle, "{name}: {alarm:?}");
        assert!(alarm.since_cycle + 10 >= *after, "{name}: {alarm:?}");
        assert!(alarm.shift > 0.0 && alarm.evidence >= alarm.needed, "{name}: {alarm:?}");
    }
    alarms
}

/// `drift_a.truth.json`: change points heat_up_s after 180 and air_in_s after 300; the promise is
/// an alarm within 60 runs of each.
#[test]
fn heater_and_filter_each_alarm_once_within_sixty_runs() {
    let alarms = check("drift_a", &[(Part::Heater, 180, 60), (Part::Filter, 300, 60)]);
    let figures: Vec<Figure> = alarms.iter().map(|alarm| alarm.figure).collect();
    assert_eq!(figures, [Figure::HeatUp, Figure::AirIn]);
}

/// `drift_none.truth.json`: no change points.
#[test]
fn nothing_wrong_raises_nothing() {
    check("drift_none", &[]);
}

/// The bounds are ours, for slopes that need 160 runs to reach their end.
#[test]
fn other_parts_on_other_machines() {
    check("seal_mid", &[(Part::Seal, 120, 90)]);
    check("pump_big", &[(Part::Pump, 120, 40)]);
    check("drain_fast", &[(Part::Drain, 120, 90)]);
}

#[test]
fn a_part_put_right_is_no_alarm_and_the_next_change_is() {
    check("heater_back_fast", &[(Part::Heater, 120, 15)]);
    check("filter_back_fast", &[(Part::Filter, 100, 40), (Part::Filter, 230, 60)]);
}

#[test]
fn heavier_loads_are_no_alarm() {
    check("load_fast", &[]);
}

/// Less is watched without a column, but nothing is called by a wrong name and no change twice.
#[test]
fn any_column_may_be_missing() {
    type Without = (&'static str, fn(&mut RunFeatures));
    let columns: [Without; 9] = [
        ("preheat_s", |run| run.preheat_s = None),
        ("heat_up_s", |run| run.heat_up_s = None),
        ("first_of_day", |run| run.first_of_day = None),
        ("vac1_s", |run| run.vac1_s = None),
        ("vac3_kpa", |run| run.vac3_kpa = None),
        ("dry_vac_kpa", |run| run.dry_vac_kpa = None),
        ("air_in_s", |run| run.air_in_s = None),
        ("total_s", |run| run.total_s = None),
        ("plateau", |run| {
            run.plateau_s = None;
            run.plateau_t_min_c = None;
            run.plateau_t_max_c = None;
        }),
    ];
    for (column, remove) in columns {
        let mut series = runs("drift_a");
        series.iter_mut().for_each(remove);
        let alarms = watch(&series, &Settings::default());
        let parts: Vec<Part> = alarms.iter().map(|alarm| alarm.part).collect();
        let expected: &[Part] = match column {
            // The whole run gets longer as well, but that does not say where.
            "heat_up_s" => &[Part::Unclear, Part::Filter],
            "air_in_s" => &[Part::Heater],
            _ => &[Part::Heater, Part::Filter],
        };
        assert_eq!(parts, expected, "without {column}: {alarms:?}");

        let mut quiet = runs("drift_none");
        quiet.iter_mut().for_each(remove);
        assert_eq!(watch(&quiet, &Settings::default()), [], "without {column}");
    }
}
