//! Short plain words that a salon chooses: for a kind of set, for a programme of its machine, for
//! a service. Small letters, digits and single blanks, at most 24 characters, so that a word can
//! stand in a fact and on a button without being a name or a sentence.

use std::fmt;
use std::str::FromStr;

/// A text that is no short plain word.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NoPlainWord(pub String);

impl fmt::Display for NoPlainWord {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:?} is not a short plain word: one to 24 small letters, digits or blanks",
            self.0
        )
    }
}

impl std::error::Error for NoPlainWord {}

fn plain_word(text: &str) -> Result<String, NoPlainWord> {
    // A phone's keyboard begins with a capital; that is no reason to refuse a word.
    let word = text.trim().to_lowercase();
    let fits = (1..=24).contains(&word.chars().count())
        && word.chars().all(|c| c.is_lowercase() || c.is_ascii_digit() || c == ' ')
        && !word.contains("  ");
    if fits { Ok(word) } else { Err(NoPlainWord(text.chars().take(40).collect())) }
}

macro_rules! word {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(String);

        impl $name {
            /// The word.
            #[must_use]
            pub fn word(&self) -> &str {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(&self.0)
            }
        }

        impl FromStr for $name {
            type Err = NoPlainWord;
            fn from_str(text: &str) -> Result<Self, NoPlainWord> {
                plain_word(text).map(Self)
            }
        }
    };
}

word!(
    /// The word for a kind of set: `manicure`, `pedicure`, `bits`, ...
    SetKind
);
word!(
    /// The word for a programme of a machine: `long`, `middle`, `fast`, ...
    Programme
);
word!(
    /// The word for a service that the salon offers: `gel manicure`, `pedicure`, ...
    ServiceWord
);
word!(
    /// The word for an implement: `cuticle nipper`, `pusher`, ...
    ImplementWord
);
word!(
    /// The word for a size of pouch: `small`, `middle`, `long`, ...
    PouchWord
);
word!(
    /// The word for a chore: `door seal`, `foil test`, `water`, ...
    ChoreWord
);
word!(
    /// The word for what is bought and used up: `distilled water`, `spore test`, ...
    StockWord
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_kind_is_a_short_plain_word() {
        assert_eq!("manicure".parse::<SetKind>().map(|k| k.to_string()), Ok("manicure".to_owned()));
        assert_eq!("Dài".parse::<Programme>().map(|k| k.to_string()), Ok("dài".to_owned()));
        assert_eq!(" dài ".parse::<Programme>().map(|k| k.to_string()), Ok("dài".to_owned()));
        for bad in ["", "a  b", "<b>", "a\nb", &"x".repeat(25)] {
            assert!(bad.parse::<SetKind>().is_err(), "{bad:?}");
        }
    }
}
