//! A machine in a few lines, for runs by the thousand: not physics, but the same entanglements. A
//! heavy load heats slowly, dries badly and leaves less air to let in; a cold start is longer.

use cycle::drift::RunFeatures;

/// SplitMix64, as published by Steele, Lea and Flood 2014; the constants are from memory, and any
/// mixing would do here.
#[derive(Debug, Clone)]
pub struct Chance(pub u64);

impl Chance {
    /// Evenly between 0 and 1.
    pub fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Near enough to normal, with mean 0 and spread 1.
    pub fn bell(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }

    /// Normal, and once in fifty four times as wide: doors left open, odd loads.
    pub fn odd(&mut self) -> f64 {
        let wide = if self.even() < 0.02 { 4.0 } else { 1.0 };
        wide * self.bell()
    }
}

/// What is wrong at a run; 1 is new, for the leak 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wear {
    pub heater: f64,
    pub pump: f64,
    pub filter: f64,
    pub drain: f64,
    pub leak_kpa_per_min: f64,
    /// Not wear: how heavy the loads are, and the mains.
    pub load: f64,
    pub mains: f64,
}

impl Default for Wear {
    fn default() -> Self {
        Self {
            heater: 1.0,
            pump: 1.0,
            filter: 1.0,
            drain: 1.0,
            leak_kpa_per_min: 0.0,
            load: 1.0,
            mains: 1.0,
        }
    }
}

/// `count` runs, six a day, whose wear at each run is told by `wear`.
pub fn series(seed: u64, count: u64, wear: impl Fn(u64) -> Wear) -> Vec<RunFeatures> {
    let mut chance = Chance(seed);
    let size = 0.8 + 0.6 * chance.even();
    (1..=count).map(|cycle| run(&mut chance, size, cycle, wear(cycle))).collect()
}

fn run(chance: &mut Chance, size: f64, cycle: u64, wear: Wear) -> RunFeatures {
    let cold = cycle % 6 == 1;
    // Up and down in straight lines between -1 and 1, once in 1200 runs.
    let season = 1.0 - ((cycle as f64 / 300.0 + 3.0) % 4.0 - 2.0).abs();
    let load = wear.load * (0.75 + 0.5 * chance.even()) - 1.0;
    let power = wear.heater * wear.mains * (0.98 + 0.04 * chance.even());
    let heat_up = size * (34.0 + 7.0 * load) / power * (1.0 - 0.004 * season) + 0.6 * chance.odd();
    // Leak times volume over pump speed, as in the gas balance of a small chamber.
    let dry = 5.0 + (3.0 + 8.0 * load.max(-0.3) + 0.32 * wear.leak_kpa_per_min) / wear.pump;
    let dry = dry + 0.4 * chance.odd();
    let pulse = size * 40.0 / wear.pump + 8.0 + 0.6 * wear.leak_kpa_per_min + 0.8 * chance.odd();
    let air_in = size * 25.0 / wear.filter - 6.0 * load + 0.7 * chance.odd();
    let rest =
        480.0 + 40.0 * size / wear.drain + 2.0 * size * 40.0 / wear.pump + 5.0 * chance.odd();
    let preheat = if cold { 305.0 - 15.0 * season } else { 4.0 + 70.0 * chance.even() };
    let [preheat, heat_up, pulse, air_in] = [preheat, heat_up, pulse, air_in].map(f64::round);
    RunFeatures {
        cycle,
        first_of_day: Some(cold),
        preheat_s: Some(preheat),
        heat_up_s: Some(heat_up),
        plateau_s: Some(210.0),
        plateau_t_min_c: Some(tenths(134.9 + 0.04 * chance.bell())),
        plateau_t_max_c: Some(tenths(135.9 - 0.4 * (1.0 - wear.heater) + 0.07 * chance.bell())),
        satdev_mean_k: Some(tenths(-0.2 + 0.03 * chance.bell())),
        vac3_kpa: Some((16.0 + 0.2 * chance.bell()).round()),
        vac1_s: Some(pulse),
        dry_vac_kpa: Some(dry.round()),
        air_in_s: Some(air_in),
        exhaust_s: None,
        leak_kpa_per_min: None,
        total_s: Some(preheat + heat_up + 210.0 + pulse + air_in + rest.round()),
    }
}

fn tenths(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}
