//! What a record says of itself, and what the numbers say to that.

use crate::made::{ALTITUDE_M, File, HEADING, STEP_S, codes, csv, cycle};
use cycle::finding::Code;
use cycle::record::{CycleRecord, Known, PressureUnit, Source, TemperatureUnit, read};
use cycle::steam::air_pressure;

#[test]
fn words_between_the_rows_are_kept_with_their_time() {
    let record = File::new(HEADING)
        .line("* PREHEAT *")
        .rows(0..10, csv)
        .line("08:00:20,VACUUM 1")
        .rows(10..200, csv)
        .line("--- Sterilising ---")
        .rows(200..usize::MAX, csv)
        .line("END OF CYCLE")
        .only();
    let words: Vec<(f64, &str)> =
        record.stated.phase_words.iter().map(|(t, w)| (*t, w.as_str())).collect();
    assert_eq!(words, [(0.0, "PREHEAT"), (20.0, "08:00:20,VACUUM 1"), (400.0, "Sterilising")]);
    assert_eq!(record.stated.says_aborted, None);
    assert!(record.findings.is_empty(), "{:?}", record.findings);
    let column = File::new("time,phase,temp C,press kPa abs")
        .rows(0..usize::MAX, |clock, t, p| {
            format!("{clock},{},{t:.1},{p:.1}", if t > 130.0 { "hold" } else { "other" })
        })
        .only();
    let names: Vec<&str> = column.stated.phase_words.iter().map(|(_, w)| w.as_str()).collect();
    assert_eq!(names, ["other", "hold", "other"]);
}

#[test]
fn a_record_that_says_it_was_stopped() {
    let behind = File::new(HEADING).whole().line("Result: FAILED").only();
    assert_eq!(behind.stated.says_aborted.as_deref(), Some("Result: FAILED"));
    let within = File::new(HEADING)
        .rows(0..200, csv)
        .line("*** ABBRUCH ***")
        .rows(200..usize::MAX, csv)
        .only();
    assert_eq!(within.stated.says_aborted.as_deref(), Some("ABBRUCH"));
    let fine = File::new(HEADING).whole().line("Status: finished").line("Errors: 0").only();
    assert_eq!(fine.stated.says_aborted, None);
    let known = Known::default();
    let second = File::new(HEADING)
        .whole()
        .line("OK")
        .line("")
        .line(HEADING)
        .wait(60)
        .whole()
        .line("ABORTED")
        .read(&known);
    let said: Vec<bool> = second.iter().map(|r| r.stated.says_aborted.is_some()).collect();
    assert_eq!(said, [false, true]);
}

#[test]
fn what_was_asked_for_comes_from_the_preamble_or_a_column() {
    let record = File::new("Programm: Beutel lang\nSolltemperatur: 134,0 °C\nHaltezeit: 4 min\nTrockenzeit: 15 min\nHöhe: 350 m\n\ntime,temp C,press bar gauge")
        .rows(0..usize::MAX, |clock, t, p| format!("{clock},{t:.1},{:.3}", (p - air_pressure(ALTITUDE_M)) / 100.0))
        .only();
    let stated = &record.stated;
    assert_eq!(stated.programme.as_deref(), Some("Beutel lang"));
    assert_eq!(
        (stated.set_c, stated.hold_s, stated.drying_s),
        (Some(134.0), Some(240.0), Some(900.0))
    );
    assert_eq!((stated.altitude_m, record.ambient_kpa), (Some(350.0), Some(air_pressure(350.0))));
    let row = |clock: &str, t: f64, p: f64| format!("{clock},134.0,{t:.1},{p:.1},{:.1}", t - 3.0);
    let column =
        File::new("time,set point C,temp C,press kPa abs,load C").rows(0..usize::MAX, row).only();
    assert_eq!(column.stated.set_c, Some(134.0));
    assert!(column.samples.temp_c[0] > 57.0 && column.samples.temp_c[0] < 59.0);
    let nameless = File::new("").rows(0..usize::MAX, row).only();
    assert_eq!(
        nameless.stated.set_c,
        Some(134.0),
        "a column that stands at a usual set temperature"
    );
    assert!(
        (nameless.samples.temp_c[0] - 58.0).abs() < 0.1,
        "the chamber lies on the saturation line, not the load"
    );
}

#[test]
fn physics_objects_to_what_the_heading_says() {
    let fahrenheit = |clock: &str, t: f64, p: f64| format!("{clock},{:.1},{p:.1}", t * 1.8 + 32.0);
    let lie = File::new(HEADING).rows(0..usize::MAX, fahrenheit).only();
    assert_eq!((lie.layout.temperature_unit.as_str(), codes(&lie)), ("F", vec![Code::UnitUnclear]));
    assert_eq!(lie.known_from.temperature_unit, Some(Source::Physics));
    let gauge =
        |clock: &str, t: f64, p: f64| format!("{clock},{t:.1},{:.1}", p - air_pressure(ALTITUDE_M));
    let as_absolute = File::new(HEADING).rows(0..usize::MAX, gauge).only();
    assert_eq!(codes(&as_absolute), [Code::GaugeAsAbsolute]);
    assert_eq!(as_absolute.layout.pressure_reference, "gauge");
    let as_gauge = File::new("time,temp C,press kPa gauge").rows(0..usize::MAX, csv).only();
    assert_eq!(
        (as_gauge.layout.pressure_reference.as_str(), codes(&as_gauge)),
        ("absolute", vec![Code::UnitUnclear])
    );
    let bar = File::new("time,temp C,press bar abs").rows(0..usize::MAX, csv).only();
    assert_eq!(
        (bar.layout.pressure_unit.as_deref(), codes(&bar)),
        (Some("kPa"), vec![Code::UnitUnclear])
    );
}

#[test]
fn a_setting_goes_before_the_heading_and_is_held_against_physics() {
    let file = File::new("time,T1,P1").whole();
    let known = Known {
        temperature_unit: Some(TemperatureUnit::Celsius),
        pressure_unit: Some(PressureUnit::Kpa),
        altitude_m: Some(ALTITUDE_M),
        ..Known::default()
    };
    let record = file.read(&known).remove(0);
    let from = record.known_from;
    assert_eq!(
        (from.temperature_unit, from.pressure_unit, from.pressure_reference),
        (Some(Source::Setting), Some(Source::Setting), Some(Source::Physics))
    );
    assert!(record.findings.is_empty());
    let wrong = Known { temperature_unit: Some(TemperatureUnit::Kelvin), ..Known::default() };
    assert_eq!(codes(&file.read(&wrong)[0]), [Code::UnitUnclear]);
    let high = Known { altitude_m: Some(2_400.0), ..Known::default() };
    assert_eq!(codes(&file.read(&high)[0]), [Code::UnitUnclear], "no such air pressure at 2400 m");
}

#[test]
fn without_pressure_the_temperature_is_read_alone() {
    let record = File::new("time,temp")
        .rows(0..usize::MAX, |clock, t, _| format!("{clock},{:.1}", t * 1.8 + 32.0))
        .only();
    assert!(record.samples.press_kpa.is_empty());
    assert_eq!(
        (record.layout.temperature_unit.as_str(), record.layout.pressure_reference.as_str()),
        ("F", "none")
    );
    assert_eq!(record.layout.pressure_unit, None);
    let cold = File::new("time,temp")
        .rows(0..usize::MAX, |clock, t, _| format!("{clock},{:.1}", t / 2.0))
        .only();
    assert_eq!((cold.known_from.temperature_unit, codes(&cold)), (None, vec![Code::UnitUnclear]));
}

#[test]
fn units_that_few_machines_use() {
    for (unit, kpa, places) in
        [("kgf/cm2", 98.066_5, 3), ("inHg", 3.386_389, 2), ("mmHg", 0.133_322_4, 1)]
    {
        let record = File::new(&format!("time,temp C,press {unit} gauge"))
            .rows(0..usize::MAX, |clock, t, p| {
                format!("{clock},{t:.1},{:.places$}", (p - air_pressure(ALTITUDE_M)) / kpa)
            })
            .read(&Known { altitude_m: Some(ALTITUDE_M), ..Known::default() })
            .remove(0);
        assert_eq!(record.layout.pressure_unit.as_deref(), Some(unit));
        assert!((record.samples.press_kpa[250] - cycle()[250].1).abs() < 0.1, "{unit}");
        assert!(record.findings.is_empty(), "{unit}: {:?}", record.findings);
    }
}

#[test]
fn midnight_takes_the_day_from_the_preamble() {
    let mut file = File::new("Start: 31/12/2025 23:58:00\ntime,temp C,press kPa abs");
    file.start_s = 23 * 3_600 + 58 * 60;
    let record = file.whole().only();
    assert_eq!(record.start_clock.as_deref(), Some("2025-12-31T23:58:00"));
    assert_eq!(record.integrity.clock_jumps.len(), 1);
    let end = (cycle().len() as i64 - 1) * STEP_S;
    assert_eq!(record.samples.t_s.last(), Some(&(end as f64)));
}

#[test]
fn days_and_months() {
    let at = |day: &str, known: &Known| {
        let text: String = cycle()
            .iter()
            .enumerate()
            .map(|(i, (t, p))| format!("{day} 10:{:02}:{:02};{t:.1};{p:.1}\n", i / 30, i % 30 * 2))
            .take(900)
            .collect();
        read(text.as_bytes(), known).unwrap()[0].start_clock.clone().unwrap()
    };
    let known = Known::default();
    assert_eq!(at("26/10/2025", &known), "2025-10-26T10:00:00");
    assert_eq!(at("10/26/2025", &known), "2025-10-26T10:00:00");
    assert_eq!(at("03.04.2025", &known), "2025-04-03T10:00:00");
    let month_first = Known { day_first: Some(false), ..known };
    assert_eq!(at("03/04/2025", &month_first), "2025-03-04T10:00:00");
    assert_eq!(at("03/04/2025", &known), "2025-04-03T10:00:00");
}

#[test]
fn thousands_are_told_from_decimals() {
    let rows = |row: &dyn Fn(&str, f64, f64) -> String| {
        File::new("time;temp C;press mbar abs").rows(0..usize::MAX, row).only()
    };
    let comma = |clock: &str, t: f64, p: f64| {
        let mbar = (p * 10.0).round() as i64;
        let written = if mbar >= 1_000 {
            format!("{}.{:03}", mbar / 1_000, mbar % 1_000)
        } else {
            mbar.to_string()
        };
        format!("{clock};{};{written}", format!("{t:.1}").replace('.', ","))
    };
    let record = rows(&comma);
    assert!((record.samples.press_kpa[250] - cycle()[250].1).abs() < 0.06);
    assert_eq!(record.layout.decimal, ',');
    let point = |clock: &str, t: f64, p: f64| {
        comma(clock, t, p).replace('.', "#").replace(',', ".").replace('#', ",")
    };
    let record = rows(&point);
    assert!((record.samples.press_kpa[250] - cycle()[250].1).abs() < 0.06);
}

/// A hold read sixty times too long would be the worst of errors.
#[test]
fn times_are_never_read_longer_than_they_may_be() {
    let rows = |form: &dyn Fn(usize) -> String, heading: &str, from: usize| {
        let text: String = cycle()
            .iter()
            .enumerate()
            .skip(from)
            .map(|(i, (t, p))| format!("{};{t:.1};{p:.1}\n", form(i)))
            .collect();
        let text = format!("{heading}{text}");
        read(text.as_bytes(), &Known::default()).unwrap().remove(0)
    };
    let end = |record: &CycleRecord| record.samples.t_s.last().copied().unwrap();
    // Two numbers from the middle of a record: minutes and seconds, or hours and minutes?
    let two = |i: usize| format!("{:02}:{:02}", 7 + i * 2 / 60, i * 2 % 60);
    let record = rows(&two, "", 250);
    assert_eq!(
        (end(&record), codes(&record)[0]),
        ((cycle().len() - 251) as f64 * 2.0, Code::UnitUnclear)
    );
    let said = rows(&two, "elapsed;temp C;press kPa abs\n", 250);
    assert!(!codes(&said).contains(&Code::UnitUnclear));
    // Fractions over a short span: seconds, or minutes?
    let fractions = |i: usize| format!("{:.1}", i as f64 / 2.0);
    let record = rows(&fractions, "", 0);
    assert_eq!(
        (end(&record), codes(&record)),
        ((cycle().len() - 1) as f64 / 2.0, vec![Code::UnitUnclear])
    );
    // Whole numbers a thousand apart can only be thousandths.
    let millis = |i: usize| (i * 2_000).to_string();
    let record = rows(&millis, "", 0);
    assert_eq!(
        (end(&record), codes(&record)),
        ((cycle().len() - 1) as f64 * 2.0, vec![Code::UnitUnclear])
    );
    // Hours that are said, and cannot be.
    let record = rows(&|i| i.to_string(), "time [h];temp C;press kPa abs\n", 0);
    assert!(codes(&record).contains(&Code::UnitUnclear));
}

#[test]
fn commas_that_do_two_things_are_refused() {
    let comma = |x: f64| format!("{x:.1}").replace('.', ",");
    let text: String = cycle()
        .iter()
        .enumerate()
        .map(|(i, (t, p))| format!("{},{},{}\n", i * 2, comma(*t), comma(*p)))
        .collect();
    let said = read(format!("time s,temp C,press kPa abs\n{text}").as_bytes(), &Known::default())
        .unwrap_err();
    assert!(said.to_string().contains("commas"), "{said}");
}

#[test]
fn a_separator_too_many_at_the_end_does_no_harm() {
    let row = |clock: &str, t: f64, p: f64| csv(clock, t, p) + ",";
    let rows = File::new(HEADING).rows(0..usize::MAX, row).only();
    assert_eq!(rows.known_from.pressure_reference, Some(Source::Header));
    let heading = File::new("time,temp C,press kPa abs,").whole().only();
    assert_eq!(heading.known_from.pressure_reference, Some(Source::Header));
}
