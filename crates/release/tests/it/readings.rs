//! Readings off the display. Floors as in `contents.rs`; saturation pressures by IAPWS-IF97 region
//! 4, evaluated with another implementation of the coefficients of IAPWS R7-97, table 34: 304.2 kPa
//! at 134 °C, 286.7 at 132 °C, 205.0 at 121 °C.

use cycle::finding::Code;
use load::Contents::{self, Hollow, Pouched, Unknown, Unwrapped};
use release::limits::Limits;
use release::verdict::Outcome::{self, CannotTell, Lethal, NotLethal};
use release::verdict::{Asked, Reading, judge_reading};

fn reading(lowest_c: f64, minutes: f64, pressure_kpa: f64) -> Reading {
    Reading {
        lowest_c,
        held_s: minutes * 60.0,
        pressure_kpa: Some(pressure_kpa),
        set_c: None,
        deep_pulses: None,
    }
}

fn check(reading: Reading, contents: Contents, outcome: Outcome, code: Code) {
    let limits = Limits::default();
    let verdict = judge_reading(&reading, &Asked::new(contents, &limits));
    assert_eq!((verdict.outcome, verdict.reasons[0].code), (outcome, code), "{reading:?}");
    assert!(verdict.reasons[0].text.starts_with("read off the display"));
}

#[test]
fn the_same_floors_as_a_record() {
    check(reading(134.0, 3.0, 304.2), Unknown, Lethal, Code::HoldMet);
    check(reading(134.0, 2.9, 304.2), Unknown, NotLethal, Code::HoldShort);
    check(reading(133.9, 3.0, 304.2), Unknown, NotLethal, Code::HoldShort);
    check(reading(132.0, 4.0, 286.7), Unknown, Lethal, Code::HoldMet);
    check(reading(121.0, 15.0, 205.0), Unknown, Lethal, Code::HoldMet);
    check(reading(120.9, 60.0, 205.0), Unknown, NotLethal, Code::HoldShort);
    let missed = Reading { set_c: Some(134.0), ..reading(133.0, 10.0, 295.0) };
    check(missed, Unknown, NotLethal, Code::HoldShort);
}

#[test]
fn the_same_saturation_check() {
    let without = Reading { pressure_kpa: None, ..reading(134.0, 4.0, 0.0) };
    check(without, Unknown, CannotTell, Code::NoPressure);
    // 331 kPa belong to 137 °C, 287 kPa to 132 °C: air, and dry steam.
    check(reading(134.0, 4.0, 331.0), Unknown, NotLethal, Code::AirLeft);
    check(reading(134.5, 4.0, 287.0), Unknown, NotLethal, Code::Superheat);
    check(reading(134.0, 4.0, 293.0), Unknown, CannotTell, Code::SensorOffset);
    // A gauge reading passed off as absolute is far from saturation.
    check(reading(134.0, 4.0, 203.0), Unknown, NotLethal, Code::Superheat);
    for bad in [f64::NAN, f64::INFINITY] {
        check(reading(bad, 4.0, 304.0), Unknown, CannotTell, Code::Unreadable);
        check(reading(134.0, bad, 304.0), Unknown, CannotTell, Code::Unreadable);
        check(reading(134.0, 4.0, bad), Unknown, CannotTell, Code::Unreadable);
    }
    for absurd in [-3.0, 0.0, 1e9] {
        let limits = Limits::default();
        let verdict = judge_reading(&reading(134.0, 4.0, absurd), &Asked::new(Unknown, &limits));
        assert_ne!(verdict.outcome, Lethal, "{absurd} kPa");
    }
}

#[test]
fn a_reading_carries_pouches_only_with_the_pulses_it_reports() {
    let plain = reading(134.2, 4.0, 306.0);
    check(plain, Unwrapped, Lethal, Code::HoldMet);
    check(plain, Pouched, CannotTell, Code::LoadNotCovered);
    let pulsed = Reading { deep_pulses: Some((15.0, 3)), ..plain };
    check(pulsed, Pouched, Lethal, Code::HoldMet);
    check(pulsed, Hollow, CannotTell, Code::LoadNotCovered);
    for few in [(15.0, 2), (40.0, 3), (f64::NAN, 3), (-1.0, 3)] {
        check(
            Reading { deep_pulses: Some(few), ..plain },
            Pouched,
            CannotTell,
            Code::LoadNotCovered,
        );
    }
}
