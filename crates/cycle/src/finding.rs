//! What was noticed in a record, tied to its place in time and in the file.

/// Reason codes: a stable surface that other people's scripts read. New ones may be added, none
/// renamed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)] // the words are those of the contract; `Code::as_str` shows each
pub enum Code {
    HoldMet,
    HoldShort,
    HoldBorder,
    Dip,
    OverBand,
    AirLeft,
    Superheat,
    GasketLeak,
    LeakRate,
    SensorOffset,
    SensorFrozen,
    SensorDerived,
    NoPressure,
    GaugeAsAbsolute,
    SetUnclear,
    UnitUnclear,
    GapInHold,
    Truncated,
    Aborted,
    ClockJump,
    RowsMissing,
    RowsDoubled,
    RowsSwapped,
    DryingShort,
    DryingNone,
    WeakHeater,
    CloggedFilter,
    LoadNotCovered,
    Unreadable,
}

impl Code {
    /// Every code.
    pub const ALL: [Self; 29] = [
        Self::HoldMet,
        Self::HoldShort,
        Self::HoldBorder,
        Self::Dip,
        Self::OverBand,
        Self::AirLeft,
        Self::Superheat,
        Self::GasketLeak,
        Self::LeakRate,
        Self::SensorOffset,
        Self::SensorFrozen,
        Self::SensorDerived,
        Self::NoPressure,
        Self::GaugeAsAbsolute,
        Self::SetUnclear,
        Self::UnitUnclear,
        Self::GapInHold,
        Self::Truncated,
        Self::Aborted,
        Self::ClockJump,
        Self::RowsMissing,
        Self::RowsDoubled,
        Self::RowsSwapped,
        Self::DryingShort,
        Self::DryingNone,
        Self::WeakHeater,
        Self::CloggedFilter,
        Self::LoadNotCovered,
        Self::Unreadable,
    ];

    /// The code as commands print it.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::HoldMet => "hold_met",
            Self::HoldShort => "hold_short",
            Self::HoldBorder => "hold_border",
            Self::Dip => "dip",
            Self::OverBand => "over_band",
            Self::AirLeft => "air_left",
            Self::Superheat => "superheat",
            Self::GasketLeak => "gasket_leak",
            Self::LeakRate => "leak_rate",
            Self::SensorOffset => "sensor_offset",
            Self::SensorFrozen => "sensor_frozen",
            Self::SensorDerived => "sensor_derived",
            Self::NoPressure => "no_pressure",
            Self::GaugeAsAbsolute => "gauge_as_absolute",
            Self::SetUnclear => "set_unclear",
            Self::UnitUnclear => "unit_unclear",
            Self::GapInHold => "gap_in_hold",
            Self::Truncated => "truncated",
            Self::Aborted => "aborted",
            Self::ClockJump => "clock_jump",
            Self::RowsMissing => "rows_missing",
            Self::RowsDoubled => "rows_doubled",
            Self::RowsSwapped => "rows_swapped",
            Self::DryingShort => "drying_short",
            Self::DryingNone => "drying_none",
            Self::WeakHeater => "weak_heater",
            Self::CloggedFilter => "clogged_filter",
            Self::LoadNotCovered => "load_not_covered",
            Self::Unreadable => "unreadable",
        }
    }

    /// The code with this word.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|code| code.as_str() == word)
    }
}

/// One thing noticed.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// What it is.
    pub code: Code,
    /// One plain English sentence with the numbers that it rests on, for commands and scripts;
    /// pages say it from the code, in the reader's language.
    pub text: String,
    /// From and to, in seconds since the cycle's first sample.
    pub at_s: Option<(f64, f64)>,
    /// First and last physical line of the file, from 1.
    pub lines: Option<(u32, u32)>,
}
