//! What the examiner goes by, as data.

use crate::lethality::{F0_REFERENCE_C, F0_Z_K};

/// What is asked of the examiner beyond what the record says itself.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Ask {
    /// Set temperature that somebody gives, °C; wins over what the record says.
    pub set_c: Option<f64>,
    /// Least hold that somebody gives, seconds. It never lowers the published floor.
    pub hold_s: Option<f64>,
    /// Drying time that somebody gives, seconds.
    pub drying_s: Option<f64>,
    /// Altitude of the place, metres; used where the record does not show the air pressure.
    pub altitude_m: Option<f64>,
    /// What this machine usually does, where its history is known.
    pub usual: Usual,
    /// The rules of measuring.
    pub rules: Rules,
}

/// What one machine usually does.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Usual {
    /// Seconds from the last pulse to the set temperature.
    pub heat_up_s: Option<f64>,
    /// Seconds from the opening of the air inlet to air pressure.
    pub air_in_s: Option<f64>,
}

/// How figures are measured. The defaults are the ones that the room `release` lists with their
/// sources; they stand here so that a figure means the same wherever it is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rules {
    /// Reference temperature of F0, °C.
    pub f0_reference_c: f64,
    /// z of F0, K.
    pub f0_z_k: f64,
    /// The three set temperatures with their least holds, highest first: °C and seconds. Those
    /// marked `true` are looked for where the record states none.
    pub floors: [(f64, f64, bool); 4],
    /// Width of the band above the set temperature, K.
    pub band_k: f64,
    /// Share of the saturation pressure of the set temperature that makes it steam.
    pub steam_gate: f64,
    /// An interval longer than this many seconds and ...
    pub gap_s: f64,
    /// ... than this many usual steps adds no F0 and breaks a hold.
    pub gap_steps: f64,
    /// Seconds of the hold that `steady` leaves out.
    pub settle_s: f64,
    /// Difference between measured and saturation temperature from which a sensor, or air, is
    /// suspected, K.
    pub suspect_k: f64,
    /// Difference beyond which steam is not saturated, K.
    pub saturation_k: f64,
    /// By pressure the set temperature counts as reached this much below it, K: a reading of
    /// pressure is worth no more.
    pub pressure_slack_k: f64,
    /// Pressure in a pulse below this share of the air pressure is a vacuum.
    pub vacuum_share: f64,
    /// A pump that levels off above this pressure has not drawn a vacuum, kPa.
    pub stalled_kpa: f64,
    /// Heat-up of a cycle with vacuum pulses longer than this is slow, seconds.
    pub slow_heat_up_s: f64,
    /// Air inlet longer than this is slow, seconds.
    pub slow_air_in_s: f64,
    /// Times the usual from which a heat-up or an air inlet is slow.
    pub slow_share: f64,
}

impl Default for Rules {
    fn default() -> Self {
        Self {
            f0_reference_c: F0_REFERENCE_C,
            f0_z_k: F0_Z_K,
            floors: [
                (134.0, 180.0, true),
                (132.0, 240.0, true),
                (126.0, 600.0, false),
                (121.0, 900.0, true),
            ],
            band_k: 3.0,
            steam_gate: 0.8,
            gap_s: 60.0,
            gap_steps: 6.0,
            settle_s: 15.0,
            suspect_k: 0.8,
            saturation_k: 2.0,
            pressure_slack_k: 0.3,
            vacuum_share: 0.8,
            stalled_kpa: 20.0,
            slow_heat_up_s: 150.0,
            slow_air_in_s: 90.0,
            slow_share: 1.5,
        }
    }
}

impl Rules {
    /// Least hold for a set temperature, seconds: that of the highest published temperature that
    /// does not lie above it. `None` below all of them.
    #[must_use]
    pub fn floor_s(&self, set_c: f64) -> Option<f64> {
        self.floors.iter().find(|&&(temp, _, _)| temp <= set_c + 1e-6).map(|&(_, hold, _)| hold)
    }
}
