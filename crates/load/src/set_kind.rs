//! Kinds of sets, by a short plain word: `manicure`, `pedicure`, `bits`, ...

use std::fmt;
use std::str::FromStr;

/// The word for a kind of set; small letters, digits and single blanks, at most 24 characters.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SetKind(String);

/// A text that names no kind of set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NoSetKind(pub String);

impl fmt::Display for NoSetKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:?} is not a kind of set: one to 24 small letters, digits or blanks",
            self.0
        )
    }
}

impl std::error::Error for NoSetKind {}

impl SetKind {
    /// The word.
    #[must_use]
    pub fn word(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for SetKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl FromStr for SetKind {
    type Err = NoSetKind;
    fn from_str(text: &str) -> Result<Self, NoSetKind> {
        let word = text.trim();
        let fits = (1..=24).contains(&word.chars().count())
            && word
                .chars()
                .all(|c| c.is_lowercase() || c.is_ascii_digit() || c == ' ')
            && !word.contains("  ");
        if fits {
            Ok(Self(word.to_owned()))
        } else {
            Err(NoSetKind(text.chars().take(40).collect()))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_kind_is_a_short_plain_word() {
        assert_eq!(
            "manicure".parse::<SetKind>().map(|k| k.to_string()),
            Ok("manicure".to_owned())
        );
        for bad in ["", "Manicure", "a  b", "<b>", "a\nb", &"x".repeat(25)] {
            assert!(bad.parse::<SetKind>().is_err(), "{bad:?}");
        }
    }
}
