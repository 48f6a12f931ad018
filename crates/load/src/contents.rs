//! What the steam has to get through. What a record proves depends on it.

use std::fmt;
use std::str::FromStr;

/// The most demanding thing in the chamber.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Contents {
    /// Solid implements, open in the tray.
    Unwrapped,
    /// Solid implements in paper-and-film pouches.
    Pouched,
    /// Implements with a bore or a cavity; the hardest for steam to reach.
    Hollow,
    /// Nobody said.
    Unknown,
}

/// A word that names no contents.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnknownContents(pub String);

impl fmt::Display for UnknownContents {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?} is none of unwrapped, pouched, hollow, unknown", self.0)
    }
}

impl std::error::Error for UnknownContents {}

impl Contents {
    /// All of them, the least demanding first.
    pub const ALL: [Self; 4] = [Self::Unwrapped, Self::Pouched, Self::Hollow, Self::Unknown];

    /// The word that commands and the book use.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Unwrapped => "unwrapped",
            Self::Pouched => "pouched",
            Self::Hollow => "hollow",
            Self::Unknown => "unknown",
        }
    }
}

impl fmt::Display for Contents {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

impl FromStr for Contents {
    type Err = UnknownContents;
    fn from_str(text: &str) -> Result<Self, UnknownContents> {
        Self::ALL
            .into_iter()
            .find(|contents| contents.word() == text)
            .ok_or_else(|| UnknownContents(text.chars().take(40).collect()))
    }
}
