//! Every limit that a verdict uses, as data, each with its source.
//!
//! The defaults are the published floors, or this project's own test rules where nothing is
//! published. A salon's own value wins only where it is stricter; [`Limits::set`] refuses a laxer
//! one, and whoever asked is told.

use cycle::figures::Rules;
use std::fmt;

/// How the source of a limit is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Known {
    /// Read in the named source.
    Seen,
    /// Remembered; to be checked against the paper before it is relied on.
    FromMemory,
    /// A rule of this project; no standard says it in these words.
    Ours,
}

/// Which way is stricter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stricter {
    /// A greater value asks for more.
    Greater,
    /// A smaller value asks for more.
    Smaller,
    /// It depends on the machine; any believable value is taken.
    AsTheMachineSays,
}

/// One limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// The word by which rules and commands name it.
    pub key: &'static str,
    /// Value where nothing else is set.
    pub value: f64,
    /// Unit.
    pub unit: &'static str,
    /// Smallest and largest believable value.
    pub range: (f64, f64),
    /// Which way is stricter.
    pub stricter: Stricter,
    /// What it is for.
    pub what: &'static str,
    /// Where it comes from.
    pub source: &'static str,
    /// How that source is known.
    pub known: Known,
}

macro_rules! limits {
    ($(#[doc = $what:literal] $name:ident = $key:literal, $value:literal, $unit:literal,
        $least:literal .. $most:literal, $stricter:ident, $known:ident, $source:expr;)*) => {
        /// Names of the limits.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub enum Name { $(#[doc = $what] $name),* }

        /// All limits with their defaults, in the order of [`Name`].
        pub const TABLE: &[Limit] = &[$(Limit {
            key: $key,
            value: $value,
            unit: $unit,
            range: ($least, $most),
            stricter: Stricter::$stricter,
            what: $what.trim_ascii_start(),
            source: $source,
            known: Known::$known,
        }),*];
    };
}

const CSC: &str = "Central Sterilising Club, The Principles of Medical Device Decontamination (2025), p. 101, Table 10.2: holding time of saturated steam at the load";
const CDC7: &str = "CDC/HICPAC, Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), Table 7";
const TEST_RULES: &str = "test rules of this project's made-up records; no standard's wording";

include!("limits/table.rs");

/// Values in force, one for each entry of [`TABLE`].
#[derive(Debug, Clone, PartialEq)]
pub struct Limits {
    values: Vec<f64>,
}

impl Default for Limits {
    fn default() -> Self {
        Self { values: TABLE.iter().map(|limit| limit.value).collect() }
    }
}

/// Why a value was not taken.
#[derive(Debug, Clone, PartialEq)]
pub enum NotTaken {
    /// No limit has this name.
    NoSuchLimit(String),
    /// Not a believable value.
    NotBelievable(Limit, f64),
    /// Laxer than the published one, which stays in force.
    Laxer(Limit, f64),
}

impl fmt::Display for NotTaken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchLimit(key) => {
                let keys: Vec<_> = TABLE.iter().map(|limit| limit.key).collect();
                write!(f, "there is no rule {key:?}; the rules are {}", keys.join(", "))
            }
            Self::NotBelievable(limit, value) => write!(
                f,
                "{} cannot be {value} {}; it lies between {} and {}",
                limit.key, limit.unit, limit.range.0, limit.range.1
            ),
            Self::Laxer(limit, value) => write!(
                f,
                "{} = {value} {} is laxer than {} ({}); the stricter one stays in force",
                limit.key, limit.unit, limit.value, limit.source
            ),
        }
    }
}

impl std::error::Error for NotTaken {}

impl Limits {
    /// The value in force.
    #[must_use]
    pub fn get(&self, name: Name) -> f64 {
        // One value an entry, and the names are made with the entries.
        self.values[name as usize]
    }

    /// Every limit with the value in force.
    pub fn in_force(&self) -> impl Iterator<Item = (&'static Limit, f64)> + '_ {
        TABLE.iter().zip(self.values.iter().copied())
    }

    /// Takes a salon's own value.
    ///
    /// # Errors
    /// [`NotTaken`] for an unknown name, an unbelievable value or a laxer one; the value in force
    /// stays then.
    ///
    /// ```
    /// use release::limits::{Limits, Name};
    /// let mut limits = Limits::default();
    /// limits.set("hold_134_s", 210.0)?;
    /// assert_eq!(limits.get(Name::Hold134), 210.0);
    /// assert!(limits.set("hold_134_s", 120.0).is_err());
    /// # Ok::<(), release::limits::NotTaken>(())
    /// ```
    pub fn set(&mut self, key: &str, value: f64) -> Result<(), NotTaken> {
        let Some(at) = TABLE.iter().position(|limit| limit.key == key) else {
            return Err(NotTaken::NoSuchLimit(key.chars().take(40).collect()));
        };
        let limit = TABLE[at];
        if !(value >= limit.range.0 && value <= limit.range.1) {
            return Err(NotTaken::NotBelievable(limit, value));
        }
        let laxer = match limit.stricter {
            Stricter::Greater => value < limit.value,
            Stricter::Smaller => value > limit.value,
            Stricter::AsTheMachineSays => false,
        };
        if laxer {
            return Err(NotTaken::Laxer(limit, value));
        }
        self.values[at] = value;
        Ok(())
    }

    /// Least hold for a set temperature, in seconds, of unwrapped solid goods.
    #[must_use]
    pub fn floor_s(&self, set_c: f64) -> Option<f64> {
        self.rules().floor_s(set_c)
    }

    /// What the examiner goes by under these limits.
    #[must_use]
    pub fn rules(&self) -> Rules {
        let get = |name| self.get(name);
        Rules {
            floors: [
                (134.0, get(Name::Hold134), true),
                (132.0, get(Name::Hold132), true),
                (126.0, get(Name::Hold126), false),
                (121.0, get(Name::Hold121), true),
            ],
            band_k: get(Name::Band),
            steam_gate: get(Name::SteamGate),
            gap_s: get(Name::Gap),
            gap_steps: get(Name::GapSteps),
            settle_s: get(Name::Settle),
            suspect_k: get(Name::Suspect),
            saturation_k: get(Name::Saturation),
            pressure_slack_k: get(Name::PressureSlack),
            vacuum_share: get(Name::VacuumShare),
            stalled_kpa: get(Name::Stalled),
            slow_heat_up_s: get(Name::SlowHeatUp),
            slow_air_in_s: get(Name::SlowAirIn),
            slow_share: get(Name::SlowShare),
            ..Rules::default()
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once
    use super::*;

    #[test]
    fn the_table_and_the_examiner_start_from_the_same_values() {
        assert_eq!(Limits::default().rules(), Rules::default());
    }

    #[test]
    fn every_limit_has_a_source_a_range_and_a_key_of_its_own() {
        for (at, limit) in TABLE.iter().enumerate() {
            assert!(limit.source.len() > 10, "{}", limit.key);
            assert!(limit.value >= limit.range.0 && limit.value <= limit.range.1, "{}", limit.key);
            assert!(TABLE[..at].iter().all(|other| other.key != limit.key), "{}", limit.key);
            assert!(!limit.what.trim().is_empty());
        }
    }

    /// A salon may ask for more, never for less.
    #[test]
    fn only_stricter_values_are_taken() {
        let mut limits = Limits::default();
        for limit in TABLE {
            for value in [limit.range.0, limit.range.1] {
                let taken = limits.set(limit.key, value);
                let laxer = match limit.stricter {
                    Stricter::Greater => value < limit.value,
                    Stricter::Smaller => value > limit.value,
                    Stricter::AsTheMachineSays => false,
                };
                assert_eq!(taken.is_err(), laxer, "{} {value}", limit.key);
            }
            for value in [f64::NAN, f64::INFINITY, limit.range.0 - 1.0] {
                assert!(matches!(limits.set(limit.key, value), Err(NotTaken::NotBelievable(..))));
            }
        }
        let said = limits.set("no_such", 1.0).map_err(|error| error.to_string());
        assert!(said.is_err_and(|text| text.starts_with("there is no rule \"no_such\"")));
    }
}
