//! What the code on a label says: the pouch's own id and nothing else.
//!
//! Capitals and digits only, so that the code stays in the alphanumeric mode of ISO/IEC 18004 and
//! 33 characters fit version 2 at level M (which holds 38, read at the code inventor's own page
//! on versions). The id is unique across salons, so no salon's letters are needed.

use measure::{IdText, PouchId};
use std::fmt;

/// Tells our labels from any other code that a camera meets in a salon.
const MARK: char = 'S';

/// A scanned text that is not the code of one of our labels.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotOurCode(pub String);

impl fmt::Display for NotOurCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:?} is not the code of a pouch label. Nothing was written. Scan the label again, or type its four symbols",
            self.0
        )
    }
}

impl std::error::Error for NotOurCode {}

/// The text in the code of a pouch's label: `S` and 32 hexadecimal digits in capitals.
///
/// ```
/// use measure::PouchId;
/// let pouch = PouchId::from_bytes(*b"\x00\x01\x02\x03\x04\x05\x06\x07\x08\x09\x0a\x0b\x0c\x0d\x0e\xff");
/// assert_eq!(papers::label_payload(pouch), "S000102030405060708090A0B0C0D0EFF");
/// assert_eq!(papers::read_payload("S000102030405060708090A0B0C0D0EFF"), Ok(pouch));
/// ```
#[must_use]
pub fn label_payload(pouch: PouchId) -> String {
    format!("{MARK}{}", pouch.to_string().to_ascii_uppercase())
}

/// The pouch that a scanned text names.
///
/// White space at the ends and small letters are let through, because some scanners add a line
/// end or change the case.
///
/// # Errors
/// [`NotOurCode`] for every other text; it never names a pouch by guess.
pub fn read_payload(text: &str) -> Result<PouchId, NotOurCode> {
    let bad = || NotOurCode(text.chars().take(80).collect());
    let folded = text.trim().to_ascii_lowercase();
    let digits = folded.strip_prefix(MARK.to_ascii_lowercase()).ok_or_else(bad)?;
    digits.parse().map_err(|IdText(_)| bad())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn what_is_printed_is_read_back(bytes: [u8; 16]) {
            let pouch = PouchId::from_bytes(bytes);
            let text = label_payload(pouch);
            prop_assert_eq!(text.len(), 33);
            prop_assert!(text.chars().all(|c| c.is_ascii_uppercase() || c.is_ascii_digit()));
            prop_assert_eq!(read_payload(&text), Ok(pouch));
            prop_assert_eq!(read_payload(&format!(" {}\r\n", text.to_ascii_lowercase())), Ok(pouch));
        }

        #[test]
        fn any_text_at_all_gets_an_answer(text in ".{0,60}") {
            if let Ok(pouch) = read_payload(&text) {
                prop_assert_eq!(text.trim().to_ascii_uppercase(), label_payload(pouch));
            }
        }
    }

    #[test]
    fn another_code_names_no_pouch() {
        let short = format!("S{}", "0".repeat(31));
        let other = format!("T{}", "0".repeat(32));
        for bad in ["", "S", "https://example.org/", &short, &other, "ệ"] {
            assert!(read_payload(bad).is_err(), "{bad:?}");
        }
    }
}
