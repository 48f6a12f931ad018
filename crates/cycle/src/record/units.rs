//! Units of temperature and pressure, and the words that name them.

/// Unit of a temperature column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TemperatureUnit {
    /// Degree Celsius.
    Celsius,
    /// Degree Fahrenheit.
    Fahrenheit,
    /// Kelvin.
    Kelvin,
}

/// Unit of a pressure column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PressureUnit {
    /// Kilopascal.
    Kpa,
    /// Bar.
    Bar,
    /// Millibar, the same as hectopascal.
    Mbar,
    /// Pascal.
    Pa,
    /// Pound-force per square inch.
    Psi,
    /// Megapascal.
    Mpa,
    /// Kilogram-force per square centimetre, the technical atmosphere.
    KgfCm2,
    /// Inch of mercury.
    InHg,
    /// Millimetre of mercury.
    MmHg,
}

/// What a pressure is counted from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reference {
    /// From nothing.
    Absolute,
    /// From the air around the machine.
    Gauge,
}

impl TemperatureUnit {
    /// Every unit.
    pub const ALL: [Self; 3] = [Self::Celsius, Self::Fahrenheit, Self::Kelvin];

    /// The unit's sign as commands print it: `C`, `F` or `K`.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Celsius => "C",
            Self::Fahrenheit => "F",
            Self::Kelvin => "K",
        }
    }

    /// A reading in °C.
    ///
    /// ```
    /// use cycle::record::TemperatureUnit;
    /// assert_eq!(TemperatureUnit::Fahrenheit.to_celsius(273.2), 134.0);
    /// ```
    #[must_use]
    pub fn to_celsius(self, reading: f64) -> f64 {
        match self {
            Self::Celsius => reading,
            // Rounded to a millionth of a kelvin, so that 273.2 °F is 134 °C and not a hair less.
            Self::Fahrenheit => ((reading - 32.0) * 5e6 / 9.0).round() / 1e6,
            Self::Kelvin => ((reading - crate::steam::KELVIN) * 1e6).round() / 1e6,
        }
    }

    /// Size of one degree in kelvin.
    #[must_use]
    pub const fn kelvin_per_degree(self) -> f64 {
        match self {
            Self::Celsius | Self::Kelvin => 1.0,
            Self::Fahrenheit => 5.0 / 9.0,
        }
    }
}

impl PressureUnit {
    /// The units that physics may tell apart on its own.
    pub const COMMON: [Self; 6] =
        [Self::Kpa, Self::Bar, Self::Mbar, Self::Pa, Self::Psi, Self::Mpa];

    /// The unit as commands print it.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Kpa => "kPa",
            Self::Bar => "bar",
            Self::Mbar => "mbar",
            Self::Pa => "Pa",
            Self::Psi => "psi",
            Self::Mpa => "MPa",
            Self::KgfCm2 => "kgf/cm2",
            Self::InHg => "inHg",
            Self::MmHg => "mmHg",
        }
    }

    /// One unit in kPa; factors of NIST SP 811, appendix B (from memory).
    #[must_use]
    pub const fn kpa(self) -> f64 {
        match self {
            Self::Kpa => 1.0,
            Self::Bar => 100.0,
            Self::Mbar => 0.1,
            Self::Pa => 0.001,
            Self::Psi => 6.894_757,
            Self::Mpa => 1_000.0,
            Self::KgfCm2 => 98.066_5,
            Self::InHg => 3.386_389,
            Self::MmHg => 0.133_322_4,
        }
    }
}

impl Reference {
    /// The word of the contract.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Absolute => "absolute",
            Self::Gauge => "gauge",
        }
    }
}

/// What the words of a heading say about units.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Said {
    pub temperature: Option<TemperatureUnit>,
    pub pressure: Option<PressureUnit>,
    pub reference: Option<Reference>,
}

impl Said {
    /// From folded words in order (see `words::fold`).
    pub fn from_words(words: &[String]) -> Self {
        let mut said = Self::default();
        for (i, word) in words.iter().enumerate() {
            let before = i.checked_sub(1).map_or("", |j| words[j].as_str());
            let after = words.get(i + 1).map_or("", String::as_str);
            if said.pressure.is_none() {
                let (unit, reference) = pressure_word(word, after);
                said.pressure = unit;
                said.reference = said.reference.or(reference);
            }
            if said.temperature.is_none() {
                said.temperature = temperature_word(word);
            }
            // A lone letter says something about the reference only right behind a unit.
            let behind_unit = pressure_word(before, "").0.is_some() || before == "cm2";
            said.reference = said.reference.or(reference_word(word, behind_unit));
        }
        said
    }
}

fn pressure_word(word: &str, after: &str) -> (Option<PressureUnit>, Option<Reference>) {
    use PressureUnit as P;
    let (absolute, gauge) = (Some(Reference::Absolute), Some(Reference::Gauge));
    match word {
        "kpa" => (Some(P::Kpa), None),
        "kpaa" | "kpaabs" => (Some(P::Kpa), absolute),
        "kpag" => (Some(P::Kpa), gauge),
        "bar" | "bars" => (Some(P::Bar), None),
        "bara" | "barabs" => (Some(P::Bar), absolute),
        "barg" | "baru" | "barrel" => (Some(P::Bar), gauge),
        "mbar" | "hpa" | "millibar" => (Some(P::Mbar), None),
        "mbara" | "mbarabs" | "hpaa" => (Some(P::Mbar), absolute),
        "mbarg" => (Some(P::Mbar), gauge),
        "pa" | "pascal" => (Some(P::Pa), None),
        "psi" | "lbf" => (Some(P::Psi), None),
        "psia" => (Some(P::Psi), absolute),
        "psig" => (Some(P::Psi), gauge),
        "mpa" | "megapascal" => (Some(P::Mpa), None),
        "mpaa" => (Some(P::Mpa), absolute),
        "mpag" => (Some(P::Mpa), gauge),
        "kg" | "kgf" | "kp" if after == "cm2" => (Some(P::KgfCm2), None),
        "inhg" => (Some(P::InHg), None),
        "mmhg" | "torr" => (Some(P::MmHg), None),
        "in" if after == "hg" => (Some(P::InHg), None),
        "mm" if after == "hg" => (Some(P::MmHg), None),
        _ => (None, None),
    }
}

fn temperature_word(word: &str) -> Option<TemperatureUnit> {
    match word {
        "c" | "°c" | "degc" | "celsius" | "ºc" | "oc" => Some(TemperatureUnit::Celsius),
        "f" | "°f" | "degf" | "fahrenheit" | "ºf" => Some(TemperatureUnit::Fahrenheit),
        "k" | "kelvin" | "°k" => Some(TemperatureUnit::Kelvin),
        _ => None,
    }
}

/// Stems in English, German, French, Spanish, Portuguese, Italian, Polish and Vietnamese.
fn reference_word(word: &str, behind_unit: bool) -> Option<Reference> {
    let starts = |stems: &[&str]| stems.iter().any(|stem| word.starts_with(stem));
    if starts(&["abs", "assol", "bezwzgl", "tuyet"]) || (behind_unit && word == "a") {
        return Some(Reference::Absolute);
    }
    let gauge = starts(&[
        "gauge",
        "rel",
        "uberdruck",
        "manom",
        "nadcisn",
        "sobrepres",
        "surpres",
        "sovrapres",
        "wzgled",
        "effec",
        "effet",
    ]);
    if gauge || (behind_unit && matches!(word, "g" | "u" | "ue" | "du" | "r" | "e")) {
        return Some(Reference::Gauge);
    }
    None
}

/// Unit words for the messages.
pub(super) fn pressure_words(unit: PressureUnit, reference: Reference) -> String {
    format!("{} {}", unit.as_str(), reference.as_str())
}

/// The unit's sign with its degree, for the messages.
pub(super) const fn degree(unit: TemperatureUnit) -> &'static str {
    match unit {
        TemperatureUnit::Celsius => "°C",
        TemperatureUnit::Fahrenheit => "°F",
        TemperatureUnit::Kelvin => "K",
    }
}

/// Is this text, as it stands behind a number, a unit of temperature, pressure or time?
pub(super) fn is_unit(text: &str) -> bool {
    let words = super::words::split(text);
    if words.is_empty() {
        return matches!(text.trim(), "°" | "%" | "\"");
    }
    let said = Said::from_words(&words);
    said.temperature.is_some()
        || said.pressure.is_some()
        || words.len() == 1
            && matches!(
                words[0].as_str(),
                "s" | "sec" | "ms" | "min" | "h" | "m" | "ft" | "v" | "ma"
            )
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    #[track_caller]
    fn check(heading: &str, temperature: &str, pressure: &str, reference: &str) {
        let said = Said::from_words(&super::super::words::split(heading));
        let got = (
            said.temperature.map_or("", TemperatureUnit::as_str),
            said.pressure.map_or("", PressureUnit::as_str),
            said.reference.map_or("", Reference::as_str),
        );
        assert_eq!(got, (temperature, pressure, reference), "{heading}");
    }

    #[test]
    fn headings_say_their_units() {
        check("Kammerdruck [bar Ü]", "", "bar", "gauge");
        check("Kammertemperatur [°C]", "C", "", "");
        check("Pression rel. (bar)", "", "bar", "gauge");
        check("Chamber psig", "", "psi", "gauge");
        check("TEMP (F)", "F", "", "");
        check("p[bar,abs]", "", "bar", "absolute");
        check("Druck/bar(a)", "", "bar", "absolute");
        check("chamber_press_kpa", "", "kPa", "");
        check("pressure_kPa_abs", "", "kPa", "absolute");
        check("temp_C", "C", "", "");
        check("PressKPa", "", "kPa", "");
        check("TempC", "C", "", "");
        check("Ciśnienie bezwzględne MPa", "", "MPa", "absolute");
        check("Áp suất tuyệt đối (kPa)", "", "kPa", "absolute");
        check("Presión manométrica kg/cm²", "", "kgf/cm2", "gauge");
        check("Pressure inHg", "", "inHg", "");
        check("P (mbar a)", "", "mbar", "absolute");
        check("Temp K", "K", "", "");
        check("T1", "", "", "");
    }

    /// Definitions: 273.15 K and 32 °F are 0 °C, one degree Fahrenheit is five ninths of a kelvin.
    #[test]
    fn readings_become_celsius() {
        for (unit, reading, celsius) in [
            (TemperatureUnit::Fahrenheit, 32.0, 0.0),
            (TemperatureUnit::Fahrenheit, 249.8, 121.0),
            (TemperatureUnit::Fahrenheit, 273.2, 134.0),
            (TemperatureUnit::Kelvin, 407.15, 134.0),
            (TemperatureUnit::Celsius, 134.0, 134.0),
        ] {
            assert_eq!(unit.to_celsius(reading), celsius);
        }
    }
}
