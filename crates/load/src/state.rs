//! The states of a set on its way round.

/// Where a set is in its round. Its owner is the salon or a person.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SetState {
    /// Has touched a client; in the used bin.
    Used,
    /// In a jar of disinfectant, its time still running.
    Soaking,
    /// Scrubbed, rinsed, dried, looked at, oiled.
    Washed,
    /// Disinfected, dry and covered, not in a sterilising pouch.
    Disinfected,
    /// In a pouch (or on a numbered tag, unpouched), not yet in a machine.
    Bagged,
    /// In a machine; the run is not over.
    InMachine,
    /// The run is over; nobody has looked yet.
    ToCheck,
    /// Released to the shelf.
    Ready,
    /// Released unpouched, for use at once; used again when its time is up.
    UseNow,
    /// Opened at a chair.
    Opened,
    /// Not to be used: a number, a mark or a look failed, or somebody stopped it.
    SetAside,
    /// At the sharpener, in repair, at another site. Comes back as used.
    Away,
    /// Out of the round for good.
    Retired,
    /// Nobody knows where.
    Missing,
}

impl SetState {
    /// All states, in the order of the round, side exits last.
    pub const ALL: [Self; 14] = [
        Self::Used,
        Self::Soaking,
        Self::Washed,
        Self::Disinfected,
        Self::Bagged,
        Self::InMachine,
        Self::ToCheck,
        Self::Ready,
        Self::UseNow,
        Self::Opened,
        Self::SetAside,
        Self::Away,
        Self::Retired,
        Self::Missing,
    ];

    /// The word that the book stores.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Used => "used",
            Self::Soaking => "soaking",
            Self::Washed => "washed",
            Self::Disinfected => "disinfected",
            Self::Bagged => "bagged",
            Self::InMachine => "in the machine",
            Self::ToCheck => "to check",
            Self::Ready => "ready",
            Self::UseNow => "use now",
            Self::Opened => "opened",
            Self::SetAside => "set aside",
            Self::Away => "away",
            Self::Retired => "retired",
            Self::Missing => "missing",
        }
    }

    /// The state with this word.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|state| state.word() == word)
    }

    /// May a client be touched with it now?
    #[must_use]
    pub const fn usable(self) -> bool {
        matches!(self, Self::Ready | Self::UseNow)
    }

    /// How safe it is to believe this state when two people act at once: the greater wins.
    ///
    /// Out of the round beats set aside, set aside beats every state of the round, and among
    /// those the one that asks for more work before use beats the one that asks for less.
    #[must_use]
    pub const fn safety(self) -> u8 {
        match self {
            Self::Retired => 5,
            Self::Missing | Self::Away => 4,
            Self::SetAside => 3,
            Self::Used | Self::Opened => 2,
            Self::Ready | Self::UseNow => 0,
            _ => 1,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_come_back_and_only_released_sets_are_usable() {
        for state in SetState::ALL {
            assert_eq!(SetState::from_word(state.word()), Some(state));
            assert_eq!(state.usable(), state.safety() == 0, "{}", state.word());
        }
    }
}
