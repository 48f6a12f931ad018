//! Readings in °C and kPa, in time order.

use super::Samples;
use super::decide::Units;
use super::parting::Raw;
use super::repair::Repaired;
use super::stamp::SECOND;
use super::units::{Reference, TemperatureUnit};
use crate::extent::extent;
use measure::bounds;

/// An absolute pressure may read this far below nothing by an offset of the sensor, kPa.
pub(super) const OFFSET_KPA: f64 = 3.0;

/// Rows in °C and kPa, those that cannot be left out. Gauge pressures stay counted from the air.
pub(super) struct Converted {
    pub at: Vec<i64>,
    pub celsius: Vec<f64>,
    pub kpa: Vec<f64>,
    pub line: Vec<u32>,
    pub zone: i64,
    /// Positions that the rows had before some were left out, if any were.
    pub from: Option<Vec<usize>>,
    pub impossible: Vec<u32>,
}

/// Converts the rows, and takes from `raw` what it can use as it is.
pub(super) fn convert(raw: &mut Raw, units: &Units) -> Converted {
    let lowest = match units.pressure {
        Some((_, (Reference::Gauge, _))) => -bounds::PRESSURE.most,
        _ => bounds::PRESSURE.least - OFFSET_KPA,
    };
    let pressures = units.pressure.filter(|_| raw.pressure.len() == raw.len());
    let factor = pressures.map(|((unit, _), _)| unit.kpa());
    let celsius: Vec<f64> = match units.temperature.0 {
        TemperatureUnit::Celsius => std::mem::take(&mut raw.temperature),
        unit => raw.temperature.iter().map(|t| unit.to_celsius(*t)).collect(),
    };
    let kpa: Vec<f64> = match factor {
        Some(1.0) => std::mem::take(&mut raw.pressure),
        Some(factor) => raw.pressure.iter().map(|p| p * factor).collect(),
        None => Vec::new(),
    };
    let fits = |i: usize| {
        bounds::TEMPERATURE.check(celsius[i]).is_ok()
            && kpa.get(i).is_none_or(|p| *p >= lowest && *p <= bounds::PRESSURE.most)
    };
    let (temperatures, pressures) = (extent(&celsius), extent(&kpa));
    let all_fit = [temperatures.0, temperatures.1]
        .into_iter()
        .all(|celsius| bounds::TEMPERATURE.check(celsius).is_ok())
        && (kpa.is_empty() || pressures.0 >= lowest && pressures.1 <= bounds::PRESSURE.most);
    if all_fit {
        return Converted {
            at: std::mem::take(&mut raw.at),
            celsius,
            kpa,
            line: std::mem::take(&mut raw.line),
            zone: raw.zone,
            from: None,
            impossible: Vec::new(),
        };
    }
    let kept: Vec<usize> = (0..raw.len()).filter(|i| fits(*i)).collect();
    let impossible = (0..raw.len()).filter(|i| !fits(*i)).map(|i| raw.line[i]).collect();
    Converted {
        at: kept.iter().map(|i| raw.at[*i]).collect(),
        celsius: kept.iter().map(|i| celsius[*i]).collect(),
        kpa: if kpa.is_empty() { kpa } else { kept.iter().map(|i| kpa[*i]).collect() },
        line: kept.iter().map(|i| raw.line[*i]).collect(),
        zone: raw.zone,
        from: Some(kept),
        impossible,
    }
}

/// Puts the rows in the order that repair found. Only lines, times and positions stay behind.
pub(super) fn arrange(rows: &mut Converted, repaired: &Repaired) -> Samples {
    let seconds = |micros: i64| micros as f64 / SECOND as f64;
    let Some(order) = &repaired.order else {
        return Samples {
            t_s: repaired.since_start.iter().map(|t| seconds(*t)).collect(),
            temp_c: std::mem::take(&mut rows.celsius),
            press_kpa: std::mem::take(&mut rows.kpa),
            line: rows.line.clone(),
        };
    };
    let positions = || order.iter().map(|i| *i as usize);
    let pressures =
        if rows.kpa.is_empty() { Vec::new() } else { positions().map(|i| rows.kpa[i]).collect() };
    Samples {
        t_s: positions().map(|i| seconds(repaired.since_start[i])).collect(),
        temp_c: positions().map(|i| rows.celsius[i]).collect(),
        press_kpa: pressures,
        line: positions().map(|i| rows.line[i]).collect(),
    }
}
