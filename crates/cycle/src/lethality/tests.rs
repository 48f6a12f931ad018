#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

use super::*;
use proptest::prelude::*;

fn check(name: &str, got: f64, wanted: f64, within: f64) {
    assert!((got - wanted).abs() <= within, "{name}: {got} is not {wanted} within {within}");
}

/// Lethal rates that others published, Tref 121.1 °C, z 10 K.
#[test]
fn lethal_rates_as_published() {
    // Teaching sheet "Ejercicio de letalidad 2", es.scribd.com/document/437890704, ten digits.
    for (temp, published) in [
        (130.0, 7.762_471_166),
        (135.0, 24.547_089_16),
        (140.0, 77.624_711_66),
        (142.0, 123.026_877_1),
    ] {
        check("L", rate(temp, 121.1, 10.0), published, published * 1e-9);
    }
    // Teaching sheet "Metodo grafico para efecto letal aplicado", scribd.com/document/326964168.
    for (temp, published) in [
        (106.0, 0.030_902_954),
        (110.0, 0.077_624_712),
        (113.0, 0.154_881_662),
        (115.0, 0.245_470_892),
        (116.5, 0.346_736_85),
        (117.5, 0.436_515_832),
        (118.5, 0.549_540_874),
        (119.0, 0.616_595_002),
    ] {
        check("L", rate(temp, 121.1, 10.0), published, 5e-9);
    }
    // A public note on F0 for retorts and its test: 0.9772 within 0.0005.
    check("L(121)", rate(121.0, 121.1, 10.0), 0.9772, 0.0005);
}

/// F0 of the holding times in the Central Sterilising Club table (2025, Table 10.2) and of CDC
/// 2008 Table 7: minutes times 10^((T - 121.1)/10), worked out by hand with a pocket calculator's
/// power of ten.
#[test]
fn f0_of_the_published_holds() {
    for (temp, minutes, f0) in [
        (121.0, 15.0, 14.6586),
        (126.0, 10.0, 30.9030),
        (134.0, 3.0, 58.4953),
        (132.0, 4.0, 49.2108),
        (132.0, 15.0, 184.5403),
        (121.0, 30.0, 29.3171),
        (115.0, 30.0, 7.3641),
    ] {
        let sums = sums(&[0.0, minutes * 60.0], &[temp, temp], 3600.0, (121.1, 10.0));
        check("trapezoid", sums.trapezoid_min, f0, 6e-5);
        check("low", sums.low_min, f0, 6e-5);
        check("rectangle", sums.rectangle_min, f0, 6e-5);
    }
}

/// Published worked example: 22 samples every 5 min in °F, Tref 250 °F, z 18 °F, total
/// 21.68993687 (teaching sheet "Conservacion de alimentos", es.scribd.com/document/423874786).
/// Its last sample counts for 5 min too, so a sample is put after it. The trapezoid 21.68992473
/// is the sum of the same published rates with the ends halved.
#[test]
fn worked_example_in_fahrenheit() {
    let fahrenheit = [
        140.0, 140.0, 140.0, 140.0, 163.0, 185.0, 201.0, 213.0, 224.0, 229.4, 234.5, 238.0, 241.0,
        243.5, 245.0, 246.3, 247.3, 247.0, 245.2, 223.5, 175.0, 153.0,
    ];
    let t: Vec<f64> = (0..=22).map(|n| f64::from(n) * 300.0).collect();
    let mut temp = fahrenheit.to_vec();
    temp.push(0.0);
    check("as published", sums(&t, &temp, 300.0, (250.0, 18.0)).rectangle_min, 21.689_936_87, 1e-7);
    let whole = sums(&t[..22], &temp[..22], 300.0, (250.0, 18.0));
    check("trapezoid", whole.trapezoid_min, 21.689_924_73, 1e-7);
    let celsius: Vec<f64> = temp.iter().map(|f| (f - 32.0) / 1.8).collect();
    // The same in Celsius with Tref 121.1 °C: 21.74550006 (reference notes, recomputed there).
    check("Celsius", sums(&t, &celsius, 300.0, (121.1, 10.0)).rectangle_min, 21.745_500_06, 1e-7);
}

/// Teaching sheet es.scribd.com/document/437890704: problem 1, 4 s at 138 °C with z 8.5 K are
/// 400 s at 121 °C; problem 2, four holds add up to 534.52 s.
#[test]
fn worked_examples_of_holds() {
    check("problem 1", rate(138.0, 121.0, 8.5) * 4.0, 400.0, 1e-9);
    let holds = [(1.0, 135.0), (2.0, 142.0), (3.0, 140.0), (4.0, 130.0)];
    let sum: f64 = holds.iter().map(|(s, temp)| s * rate(*temp, 121.1, 10.0)).sum();
    check("problem 2", sum, 534.52, 0.005);
}

/// FAO Manual on fish canning (Warne 1988), Table 3 as reproduced: rates that sum to 2.925 every
/// 5 min give 14.6; up to the moment when steam was turned off, with ends 0 and 0.776 halved, 8.6.
#[test]
fn trapezoid_of_the_canning_manual() {
    check("0.776 is L(120.0)", rate(120.0, 121.1, 10.0), 0.776, 0.0005);
    check("whole", 2.925 * 5.0, 14.6, 0.05);
    // Two samples of the manual's own: from a rate of 0.388 below to 0.776, one interval.
    let temp = |wanted: f64| 121.1 + 10.0 * maths::log10(wanted);
    let last = sums(&[0.0, 300.0], &[temp(0.388), temp(0.776)], 300.0, (121.1, 10.0));
    check("one interval", last.trapezoid_min, (0.388 + 0.776) / 2.0 * 5.0, 1e-9);
}

/// Open-source test in a food laboratory's program (commit 69a27ad): seven samples a minute
/// apart, 3.5065 by rectangle; the trapezoid of the same data is 3.498704254. Four readings half
/// a minute apart span 1.5 min, not 2.
#[test]
fn fence_posts() {
    let temp = [100.0, 115.0, 121.1, 121.1, 121.1, 115.0, 100.0, 0.0];
    let t: Vec<f64> = (0..8).map(|n| f64::from(n) * 60.0).collect();
    check("rectangle", sums(&t, &temp, 60.0, (121.1, 10.0)).rectangle_min, 3.506_466_725, 1e-8);
    let seven = sums(&t[..7], &temp[..7], 60.0, (121.1, 10.0));
    check("trapezoid", seven.trapezoid_min, 3.498_704_254, 1e-8);
    let four = sums(&[0.0, 30.0, 60.0, 90.0], &[121.1; 4], 60.0, (121.1, 10.0));
    check("four readings", four.low_min, 1.5, 1e-12);
}

/// Linear ramp from 100 to 121.1 °C at 1 K/min: z/(r ln 10) (L2 - L1) = 4.309232835 (calculus).
/// Both sums close in on it from their own side.
#[test]
fn linear_ramp() {
    let steps = 21_100;
    let t: Vec<f64> = (0..=steps).map(|n| f64::from(n) * 0.06).collect();
    let temp: Vec<f64> = (0..=steps).map(|n| 100.0 + f64::from(n) * 0.001).collect();
    let sums = sums(&t, &temp, 1.0, (121.1, 10.0));
    check("trapezoid", sums.trapezoid_min, 4.309_232_835, 1e-7);
    assert!(sums.low_min < 4.309_232_835 && sums.low_min > 4.308);
    // The notes' bound for a coarse step: at 5 K a step the trapezoid is 10.8 % too high.
    let coarse = super::sums(&[0.0, 300.0], &[100.0, 105.0], 300.0, (121.1, 10.0));
    let exact =
        10.0 / std::f64::consts::LN_10 * (rate(105.0, 121.1, 10.0) - rate(100.0, 121.1, 10.0));
    check("5 K a step", coarse.trapezoid_min / exact, 1.108, 0.0005);
}

/// A0 by its definition, ISO 15883-1: 80 °C 600 s, 90 °C 60 s, 90 °C 300 s, 70 °C 600 s; 93 °C
/// 600 s and 75 °C 1800 s by the same formula; below 65 °C nothing counts.
#[test]
fn a0_by_definition() {
    for (temp, seconds, a0) in [
        (80.0, 600.0, 600.0),
        (90.0, 60.0, 600.0),
        (90.0, 300.0, 3000.0),
        (70.0, 600.0, 60.0),
        (93.0, 600.0, 11_971.573_9),
        (75.0, 1800.0, 569.2100),
        (64.9, 6000.0, 0.0),
    ] {
        check("A0", a0_low_s(&[0.0, seconds], &[temp, temp], 6000.0), a0, 1e-4);
    }
}

/// Survival and kill times as explained at ask.pharmaguideline.com with N0 1e5, D 1.5; a published
/// quiz pair; the stated value 16.5 min of an integrating indicator and its 7-log point 10.5 min
/// (GOST R ISO 11140-1-2009, p. 22); F 18 with N0 1e6, D 1.5 gives 1e-6.
#[test]
fn spores() {
    let spore = |count, d| Spore::new(count, d).unwrap();
    check("survival", spore(1e5, 1.5).survival_min(), 4.5, 1e-12);
    check("kill", spore(1e5, 1.5).kill_min(), 13.5, 1e-12);
    check("survival", spore(2e5, 2.2).survival_min(), 7.2618, 5e-4);
    check("kill", spore(2e5, 2.2).kill_min(), 20.4623, 5e-5);
    check("survival", spore(3.3e6, 1.8).survival_min(), 8.1333, 5e-5);
    check("kill", spore(3.3e6, 1.8).kill_min(), 18.9333, 5e-5);
    check("stated value", spore(1e5, 1.5).minutes_to_a_millionth(), 16.5, 1e-12);
    // 10.5 min take 7 of the 11 logs: two are left of five.
    check("7-log point", spore(1e5, 1.5).log10_left(10.5), -2.0, 1e-12);
    check("18 min", spore(1e6, 1.5).log10_left(18.0), -6.0, 1e-12);
    for (count, d) in [(0.0, 1.5), (1e5, 0.0), (f64::NAN, 1.5), (1e5, f64::INFINITY), (1e13, 1.5)] {
        assert_eq!(Spore::new(count, d), Err(NoSpore), "{count} {d}");
    }
}

proptest! {
    /// More time at temperature never lowers a sum, and the lesser sum is never the greater.
    #[test]
    fn more_hold_never_lowers_f0(temps in proptest::collection::vec(20.0..145.0_f64, 2..60), step in 0.5..20.0_f64) {
        let t: Vec<f64> = (0..temps.len()).map(|n| n as f64 * step).collect();
        let whole = sums(&t, &temps, 60.0, (121.1, 10.0));
        let cut = sums(&t[..t.len() - 1], &temps[..temps.len() - 1], 60.0, (121.1, 10.0));
        prop_assert!(cut.trapezoid_min <= whole.trapezoid_min);
        prop_assert!(cut.low_min <= whole.low_min);
        prop_assert!(whole.low_min <= whole.trapezoid_min + 1e-12);
    }
}
