//! The options of `check`, checked once for all files.

use super::{Ask, CheckArgs, Known, Limits};
use cycle::record::INTERVAL_S;
use measure::{Celsius, bounds};
use release::limits::NotTaken;

/// By what the files are checked.
pub(super) struct Terms {
    pub known: Known,
    pub ask: Ask,
    pub limits: Limits,
    /// Rules of the caller's own that were laxer than the published ones.
    pub not_taken: Vec<String>,
}

impl Terms {
    pub fn of(args: &CheckArgs) -> Result<Self, String> {
        let mut limits = Limits::default();
        let mut not_taken = Vec::new();
        for rule in &args.rule {
            let (key, value) = key_and_value(rule)?;
            match limits.set(key, value) {
                Ok(()) => {}
                Err(laxer @ NotTaken::Laxer(..)) => not_taken.push(laxer.to_string()),
                Err(other) => return Err(format!("--rule {rule}: {other}")),
            }
        }
        let set_c = args.set_temp.map(Celsius::new).transpose();
        let set_c = set_c.map_err(|error| format!("--set-temp: {error}"))?;
        let altitude_m = args.altitude.map(|metres| bounds::ALTITUDE.check(metres)).transpose();
        let altitude_m = altitude_m.map_err(|error| format!("--altitude: {error}"))?;
        let interval_s = args.interval;
        if interval_s.is_some_and(|seconds| !INTERVAL_S.contains(&seconds)) {
            return Err("--interval lies between 0.01 and 120 s".to_owned());
        }
        let (reference, z) = (args.f0_reference, args.z);
        if !(0.0..=200.0).contains(&reference) || !(1.0..=100.0).contains(&z) {
            return Err("--f0-reference lies between 0 and 200 °C and --z between 1 and 100 K; 121.1 and 10 are usual".to_owned());
        }
        let mut rules = limits.rules();
        (rules.f0_reference_c, rules.f0_z_k) = (reference, z);
        let ask = Ask {
            set_c: set_c.map(Celsius::get),
            hold_s: args.hold,
            drying_s: args.drying,
            altitude_m,
            rules,
            ..Ask::default()
        };
        Ok(Self {
            known: Known { altitude_m, interval_s, ..Known::default() },
            ask,
            limits,
            not_taken,
        })
    }
}

fn key_and_value(rule: &str) -> Result<(&str, f64), String> {
    let wanted = || format!("--rule {rule}: write KEY=VALUE, as leak_kpa_per_min=0.1");
    let (key, value) = rule.split_once('=').ok_or_else(wanted)?;
    let value = match value.trim() {
        "yes" => 1.0,
        "no" => 0.0,
        number => number.parse().map_err(|_| wanted())?,
    };
    Ok((key.trim(), value))
}

/// `180`, `180s`, `3min`, `3 min`: seconds.
pub(super) fn seconds(text: &str) -> Result<f64, String> {
    let text = text.trim();
    let (number, scale) = if let Some(number) = text.strip_suffix("min") {
        (number, 60.0)
    } else {
        (text.strip_suffix('s').unwrap_or(text), 1.0)
    };
    let seconds = number.trim().parse::<f64>().map(|number| number * scale);
    match seconds {
        Ok(seconds) if (0.0..=86_400.0).contains(&seconds) => Ok(seconds),
        _ => Err("write a time up to a day, as 180, 180s or 3min".to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_as_people_write_them() {
        for (text, wanted) in
            [("180", 180.0), ("180s", 180.0), ("3min", 180.0), (" 3.5 min", 210.0)]
        {
            assert_eq!(seconds(text), Ok(wanted), "{text}");
        }
        for bad in ["", "min", "-1", "3h", "NaN", "inf", "1e9"] {
            assert!(seconds(bad).is_err(), "{bad}");
        }
    }
}
