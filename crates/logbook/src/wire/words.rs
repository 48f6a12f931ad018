//! Words from closed lists, as the book stores them.

use crate::fact::{
    AirRemoval, BasinAfter, BookKind, DayPart, Drying, DryingRan, Found, GapWhy, Known, LeftOut,
    LiftReason, PlanOrder, PressureUnit, Reference, Serviced, Source, StationKind, StopReason,
    TemperatureUnit, ThingKind, Units, UsedBy, Way,
};
use load::{Contents, SetState};
use release::verdict::Outcome;

/// A value that is stored as one word out of a closed list.
pub(crate) trait Word: Copy + Sized + 'static {
    /// Every value with its word.
    const WORDS: &'static [(Self, &'static str)];

    /// The word.
    fn word(self) -> &'static str;

    /// The value with this word.
    fn from_word(word: &str) -> Result<Self, String> {
        Self::WORDS
            .iter()
            .find(|(_, known)| *known == word)
            .map(|(value, _)| *value)
            .ok_or_else(|| format!("the word {word:?} is not one that the book uses here"))
    }
}

/// The match makes the compiler ask for a word when a value is added to the list.
macro_rules! words {
    ($($kind:ident { $($value:ident = $word:literal),* $(,)? })*) => { $(
        impl Word for $kind {
            const WORDS: &'static [(Self, &'static str)] = &[$(($kind::$value, $word)),*];
            fn word(self) -> &'static str {
                match self { $($kind::$value => $word),* }
            }
        }
    )* };
}

words! {
    Known {
        Tapped = "tapped",
        Scanned = "scanned",
        Measured = "measured",
        Read = "read",
        ByClock = "by clock",
        WorkedOut = "worked out",
        Setting = "setting",
        FromPaper = "from paper",
    }
    BookKind {
        Salon = "salon",
        Demo = "demo",
        Practice = "practice",
    }
    AirRemoval {
        Vacuum = "vacuum",
        Gravity = "gravity",
        NotKnown = "not known",
    }
    TemperatureUnit {
        Celsius = "celsius",
        Fahrenheit = "fahrenheit",
        Kelvin = "kelvin",
    }
    PressureUnit {
        Kpa = "kPa",
        Bar = "bar",
        Mbar = "mbar",
        Pa = "Pa",
        Psi = "psi",
        Mpa = "MPa",
        KgfCm2 = "kgf/cm2",
        InHg = "inHg",
        MmHg = "mmHg",
    }
    Reference {
        Absolute = "absolute",
        Gauge = "gauge",
    }
    Way {
        Page = "page",
        Command = "command",
        Folder = "folder",
    }
    StopReason {
        Numbers = "numbers",
        CannotTell = "cannot tell",
        Mark = "mark",
        Wet = "wet",
        Torn = "torn",
        Dropped = "dropped",
        Interrupted = "interrupted",
        ReleaseUndone = "release undone",
        Recall = "recall",
        JudgedWorse = "judged worse",
        NotSure = "not sure",
    }
    LiftReason {
        Mistake = "mistake",
        Paperwork = "paperwork",
    }
    Outcome {
        Lethal = "lethal",
        NotLethal = "not lethal",
        CannotTell = "cannot tell",
        LeakPass = "leak pass",
        LeakFail = "leak fail",
    }
    DryingRan {
        AsSet = "as set",
        Short = "short",
        None = "none",
        CannotTell = "cannot tell",
    }
    Source {
        Calendar = "calendar",
        Table = "table",
    }
    Drying {
        None = "none",
        Short = "short",
        Full = "full",
    }
    PlanOrder {
        Salon = "salon",
        Comparing = "comparing",
    }
    ThingKind {
        Jar = "jar",
        FootBasin = "foot basin",
        Ultrasonic = "ultrasonic",
    }
    DayPart {
        Opening = "opening",
        Closing = "closing",
        AnyTime = "any time",
    }
    Found {
        Fine = "fine",
        NotFine = "not fine",
    }
    LeftOut {
        Closed = "closed",
        NotUsed = "not used",
    }
    BasinAfter {
        Client = "client",
        DayEnd = "day end",
        Week = "week",
    }
    Serviced {
        Service = "service",
        Repair = "repair",
        Validation = "validation",
        Moved = "moved",
    }
    UsedBy {
        Pouch = "pouch",
        Run = "run",
        Test = "test",
        Counting = "counting",
    }
    StationKind {
        Tablet = "tablet",
        Phone = "phone",
        Wall = "wall",
        Desk = "desk",
    }
    GapWhy {
        Closed = "closed",
        Holiday = "holiday",
        Power = "power",
        NothingToDo = "nothing to do",
        OnPaper = "on paper",
        Forgotten = "forgotten",
    }
    Units {
        Metric = "metric",
        Us = "us",
    }
    Contents {
        Unwrapped = "unwrapped",
        Pouched = "pouched",
        Hollow = "hollow",
        Unknown = "unknown",
    }
    SetState {
        Used = "used",
        Soaking = "soaking",
        Washed = "washed",
        Disinfected = "disinfected",
        Bagged = "bagged",
        InMachine = "in the machine",
        ToCheck = "to check",
        Ready = "ready",
        UseNow = "use now",
        Opened = "opened",
        SetAside = "set aside",
        Away = "away",
        Retired = "retired",
        Missing = "missing",
    }
}
