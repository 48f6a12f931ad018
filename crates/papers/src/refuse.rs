//! What this room will not print, and why.

use std::fmt;

/// Why nothing was printed. No page is given out when one label of it cannot be right.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unprintable {
    /// No label was asked for.
    Nothing,
    /// The first label would lie outside the sheet.
    Start {
        /// What was asked for, counted from 1.
        asked: usize,
        /// How many labels one sheet has.
        labels: usize,
    },
    /// The text does not fit its place, not even in the smallest letters that are allowed.
    TooLong {
        /// The text.
        text: String,
    },
    /// The text has a line end, a tabulator or another character that cannot be printed.
    NotPlain {
        /// The text, with the character escaped.
        text: String,
    },
    /// The text claims what nobody has measured.
    Claim {
        /// The word.
        word: &'static str,
    },
    /// A word that has to stand on the page was left out.
    Blank {
        /// What it is for.
        what: &'static str,
    },
    /// The name of a drawing is not made of `a` to `z`, digits and hyphens, a letter first.
    Name {
        /// The name.
        name: String,
    },
    /// A picture has nothing in it, or a shape that leaves its frame.
    Frame,
    /// A tray is too large for the page at any scale that can be read.
    TooLarge,
    /// The code could not be made. It holds 33 characters of at most 38, so this is a fault of ours.
    Code(String),
}

impl fmt::Display for Unprintable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Nothing was printed: ")?;
        match self {
            Self::Nothing => {
                f.write_str("no label and no tray was asked for. Pack a set or fill a tray first")
            }
            Self::Start { asked, labels } => write!(
                f,
                "label {asked} is not on this sheet, which has 1 to {labels}. Count from the top left, along the rows"
            ),
            Self::TooLong { text } => write!(
                f,
                "{text:?} does not fit its place. Use a shorter text, or a larger label or picture"
            ),
            Self::NotPlain { text } => {
                write!(f, "{text:?} has a character that cannot be printed. Type the text again")
            }
            Self::Claim { word } => write!(
                f,
                "{word:?} claims what a label cannot know before the run. Take the word out"
            ),
            Self::Blank { what } => {
                write!(f, "the word for {what} is missing. Add it to the words of this language")
            }
            Self::Name { name } => write!(
                f,
                "{name:?} cannot name a drawing. Use small letters, digits and hyphens, a letter first"
            ),
            Self::Frame => f.write_str(
                "the picture is empty or a shape leaves it. Lay the tray again from the list; tell its makers",
            ),
            Self::TooLarge => f.write_str(
                "the tray is too large for the page. Look whether its sizes are in millimetres",
            ),
            Self::Code(why) => write!(f, "the code could not be made ({why}). Tell its makers"),
        }
    }
}

impl std::error::Error for Unprintable {}

/// Words that would be a lie on a wet pouch, in the three languages that the pages ship with.
const CLAIMS: [&str; 4] = [
    concat!("ster", "ile"),
    concat!("est", "éril"),
    concat!("est", "ériles"),
    concat!("vô ", "trùng"),
];

/// Lets a text through that has to be there and may be.
pub(crate) fn wanted<'a>(text: &'a str, what: &'static str) -> Result<&'a str, Unprintable> {
    if text.trim().is_empty() { Err(Unprintable::Blank { what }) } else { plain(text) }
}

/// Lets a text through that a label or a sheet may carry.
pub(crate) fn plain(text: &str) -> Result<&str, Unprintable> {
    if text.chars().any(char::is_control) {
        let text = text.chars().take(80).collect();
        return Err(Unprintable::NotPlain { text });
    }
    match CLAIMS.iter().find(|word| has_word(text, word)) {
        Some(word) => Err(Unprintable::Claim { word }),
        None => Ok(text),
    }
}

/// Whether `word` stands in `text` as a whole word, in any case.
fn has_word(text: &str, word: &str) -> bool {
    let spaced = |text: &str| -> String {
        let letters = text.to_lowercase();
        let words: Vec<&str> =
            letters.split(|c: char| !c.is_alphanumeric()).filter(|part| !part.is_empty()).collect();
        format!(" {} ", words.join(" "))
    };
    spaced(text).contains(&spaced(word))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_claim_is_refused_in_any_case_and_any_language() {
        for claim in CLAIMS {
            for text in [
                claim.to_owned(),
                claim.to_uppercase(),
                format!("(This is {claim}!)"),
                format!("manicure, {claim}"),
            ] {
                assert_eq!(plain(&text), Err(Unprintable::Claim { word: claim }), "{text}");
            }
        }
    }

    #[test]
    fn the_names_of_things_are_let_through() {
        for text in ["sterilizer", "esterilizador", "Look: dry? whole?", "Nhìn: khô? nguyên?"] {
            assert_eq!(plain(text), Ok(text));
        }
    }

    #[test]
    fn a_line_end_is_not_plain() {
        for text in ["a\nb", "a\tb", "\u{0}", "\u{1b}[1m"] {
            assert!(matches!(plain(text), Err(Unprintable::NotPlain { .. })), "{text:?}");
        }
    }
}
