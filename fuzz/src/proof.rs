//! What a lethal verdict needs, worked out a second time: slowly, plainly, and by other formulas.

/// Least holds in seconds: 134 °C 3 min, 132 °C 4 min, 121 °C 15 min (Central Sterilising Club
/// 2025, Table 10.2), 126 °C 10 min (from memory of the same series).
const FLOORS: [(f64, f64); 4] = [(134.0, 180.0), (132.0, 240.0), (126.0, 600.0), (121.0, 900.0)];

/// Saturation pressure in kPa: the equation of Wagner and Pruss in IAPWS SR1-86 (from memory),
/// another one than the program's.
pub fn psat(celsius: f64) -> f64 {
    let kelvin = celsius + 273.15;
    let x = 1.0 - kelvin / 647.096;
    let sum = -7.859_517_83 * x + 1.844_082_59 * x.powf(1.5) - 11.786_649_7 * x.powi(3)
        + 22.680_741_1 * x.powf(3.5)
        - 15.961_871_9 * x.powi(4)
        + 1.801_225_02 * x.powf(7.5);
    22_064.0 * (647.096 / kelvin * sum).exp()
}

/// Saturation temperature in °C, by halving.
pub fn tsat(kpa: f64) -> f64 {
    let (mut low, mut high) = (0.0, 370.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if psat(middle) < kpa { low = middle } else { high = middle }
    }
    low
}

/// Least hold for a set temperature.
pub fn floor_s(set_c: f64) -> Option<f64> {
    FLOORS.iter().find(|(temp, _)| *temp <= set_c + 1e-6).map(|(_, hold)| *hold)
}

/// Longest interval without samples that does not break a hold, seconds.
pub fn longest_step(t: &[f64]) -> f64 {
    let mut steps: Vec<f64> = t.windows(2).map(|pair| pair[1] - pair[0]).collect();
    steps.sort_by(f64::total_cmp);
    steps.get(steps.len() / 2).map_or(60.0, |median| (6.0 * median).max(60.0))
}

/// What is given away for the rounding of what was written.
#[derive(Debug, Clone, Copy, Default)]
pub struct Slack {
    /// Of a temperature.
    pub k: f64,
    /// Of the mean distance from saturation.
    pub saturation_k: f64,
    /// Of the hold.
    pub s: f64,
}

/// Is there a stretch at heat, with steam, long enough and near enough to saturation? The columns
/// are seconds, °C and absolute kPa.
pub fn stands(
    columns: [&[f64]; 3],
    jumps: &[(f64, f64)],
    set_c: f64,
    slack: Slack,
) -> Result<(), String> {
    let [t, celsius, kpa] = columns;
    let Some(floor) = floor_s(set_c) else {
        return Err(format!("no hold is published for {set_c} °C"));
    };
    if kpa.len() != t.len() {
        return Err("there is no pressure".to_owned());
    }
    let longest = longest_step(t);
    let gate = 0.8 * psat(set_c - slack.k) * 0.999;
    let hot = |at: usize| celsius[at] >= set_c - slack.k - 1e-6 && kpa[at] >= gate;
    let hides = |jump: f64| {
        jump > 0.0
            || (0..=24)
                .all(|h| (jump + f64::from(h) * 3_600.0 - longest / 2.0).abs() > longest / 2.0)
    };
    let jumped = |at: usize| {
        jumps.iter().any(|&(when, jump)| when > t[at - 1] && when <= t[at] && hides(jump))
    };
    let near = |at: usize| t[at] - t[at - 1] <= longest && !jumped(at);
    let mut seen = String::new();
    for first in 0..t.len() {
        // Only where a stretch begins.
        if !hot(first) || first > 0 && hot(first - 1) && near(first) {
            continue;
        }
        let mut last = first;
        while last + 1 < t.len() && hot(last + 1) && near(last + 1) {
            last += 1;
        }
        let seconds = t[last] - t[first];
        let off: f64 = (first..=last).map(|at| celsius[at] - tsat(kpa[at])).sum();
        let mean = off / (last - first + 1) as f64;
        if seconds >= floor - slack.s - 1e-6 && mean.abs() <= 2.01 + slack.saturation_k {
            return Ok(());
        }
        seen.push_str(&format!(" {seconds:.1} s with {mean:.2} K;"));
    }
    Err(format!("{floor} s at {set_c} °C needed; seen:{seen}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IAPWS-IF97 table 35: 0.1 MPa 372.755 919 K, 1 MPa 453.035 632 K. And 304.2 kPa at 134 °C.
    #[test]
    fn the_saturation_line() {
        assert!((tsat(100.0) - (372.755_919 - 273.15)).abs() < 0.01);
        assert!((tsat(1_000.0) - (453.035_632 - 273.15)).abs() < 0.01);
        assert!((psat(134.0) - 304.2).abs() < 0.1);
    }
}
