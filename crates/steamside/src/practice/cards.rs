//! The twelve scenario cards: what each is called, and which kind of salon it wants.

use std::str::FromStr;

/// A scenario card.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Card {
    /// A good load from bin to shelf.
    GoodLoad,
    /// One pouch came out wet.
    Wet,
    /// Two pouches came out wet.
    TwoWet,
    /// A mark did not turn.
    Mark,
    /// One torn, one dropped.
    Torn,
    /// The power went off.
    Power,
    /// A spore test failed.
    Spore,
    /// The wrong pouch at the chair.
    WrongPouch,
    /// A fast cycle for use at once.
    Fast,
    /// The record cannot tell.
    CannotTell,
    /// Too many pouches for the tray.
    TooMany,
    /// A foot bath after a client.
    FootBath,
}

impl Card {
    /// All of them, in the order of the lesson.
    pub const ALL: [Self; 12] = [
        Self::GoodLoad,
        Self::Wet,
        Self::TwoWet,
        Self::Mark,
        Self::Torn,
        Self::Power,
        Self::Spore,
        Self::WrongPouch,
        Self::Fast,
        Self::CannotTell,
        Self::TooMany,
        Self::FootBath,
    ];

    /// Its word in the book.
    pub const fn word(self) -> &'static str {
        match self {
            Self::GoodLoad => "good-load",
            Self::Wet => "wet",
            Self::TwoWet => "two-wet",
            Self::Mark => "mark",
            Self::Torn => "torn",
            Self::Power => "power",
            Self::Spore => "spore",
            Self::WrongPouch => "wrong-pouch",
            Self::Fast => "fast",
            Self::CannotTell => "cannot-tell",
            Self::TooMany => "too-many",
            Self::FootBath => "foot-bath",
        }
    }

    /// Key of its title; `.read` is what the learner reads.
    pub const fn key(self) -> &'static str {
        match self {
            Self::GoodLoad => "card-good-load",
            Self::Wet => "card-wet",
            Self::TwoWet => "card-two-wet",
            Self::Mark => "card-mark",
            Self::Torn => "card-torn",
            Self::Power => "card-power",
            Self::Spore => "card-spore",
            Self::WrongPouch => "card-wrong-pouch",
            Self::Fast => "card-fast",
            Self::CannotTell => "card-cannot-tell",
            Self::TooMany => "card-too-many",
            Self::FootBath => "card-foot-bath",
        }
    }

    /// How many of its pouches it speaks of by their codes.
    pub const fn odd(self) -> usize {
        match self {
            Self::Wet | Self::Mark | Self::WrongPouch | Self::Fast => 1,
            Self::TwoWet | Self::Torn => 2,
            _ => 0,
        }
    }
}

/// A word that is no card's.
#[derive(Debug, thiserror::Error)]
#[error("no card is called so")]
pub struct NoSuchCard;

impl FromStr for Card {
    type Err = NoSuchCard;

    fn from_str(word: &str) -> Result<Self, NoSuchCard> {
        Self::ALL.into_iter().find(|card| card.word() == word).ok_or(NoSuchCard)
    }
}
