//! A cycle made from straight lines and the saturation line.

use cycle::steam::{air_pressure, tsat};

/// Height of the place where the made cycle ran.
pub const ALTITUDE_M: f64 = 350.0;

/// Seconds between two rows.
pub const STEP_S: i64 = 2;

/// Temperature in °C and absolute pressure in kPa, every two seconds: three pulses, 134 °C for
/// 250 s, a drying vacuum.
pub fn cycle() -> Vec<(f64, f64)> {
    let air = air_pressure(ALTITUDE_M);
    let mut rows = Vec::new();
    let mut go = |seconds: i64, from: f64, to: f64, steam: bool, warm: f64| {
        for k in 0..seconds / STEP_S {
            let share = k as f64 / (seconds / STEP_S) as f64;
            let kpa = from + (to - from) * share;
            let celsius = if steam { tsat(kpa * 0.999) } else { warm };
            rows.push((celsius, kpa));
        }
    };
    go(20, air, air, false, 58.0);
    for _ in 0..3 {
        go(40, air, 14.0, false, 62.0);
        go(20, 60.0, 150.0, true, 0.0);
    }
    go(40, 150.0, 14.0, false, 80.0);
    go(60, 60.0, 310.0, true, 0.0);
    for _ in 0..25 {
        go(6, 310.0, 316.0, true, 0.0);
        go(4, 316.0, 310.0, true, 0.0);
    }
    go(40, 310.0, air + 6.0, true, 0.0);
    go(120, air, 5.0, false, 88.0);
    go(30, 5.0, air, false, 75.0);
    go(20, air, air, false, 85.0);
    rows
}
