//! Four symbols that name one pouch at a time: short enough to say across a room.
//!
//! Look-alikes and sound-alikes are left out; the first and the third symbol are always digits,
//! so that no code spells a word. 8 × 24 × 8 × 24 = 36,864 codes.

use std::fmt;
use std::str::FromStr;

const SYMBOLS: &[u8; 24] = b"23456789ACDEFHJKMPRTUWXY";
const DIGITS: u32 = 8;

/// A shelf code such as `3K7P`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ShelfCode([u8; 4]);

/// A text that is no shelf code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NoShelfCode(pub String);

impl fmt::Display for NoShelfCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?} is not a shelf code: digit, symbol, digit, symbol, such as 3K7P", self.0)
    }
}

impl std::error::Error for NoShelfCode {}

impl ShelfCode {
    /// How many codes there are.
    pub const COUNT: u32 = DIGITS * 24 * DIGITS * 24;

    /// The symbols, in the order in which a keypad shows them.
    pub fn symbols() -> impl Iterator<Item = char> {
        SYMBOLS.iter().map(|&symbol| char::from(symbol))
    }

    /// The code with this number; numbers go round after [`ShelfCode::COUNT`].
    #[must_use]
    pub fn from_number(number: u32) -> Self {
        let mut rest = number % Self::COUNT;
        let mut symbols = [0; 4];
        for (place, base) in [(3, 24), (2, DIGITS), (1, 24), (0, DIGITS)] {
            symbols[place] = SYMBOLS[(rest % base) as usize];
            rest /= base;
        }
        Self(symbols)
    }

    /// The number of this code, below [`ShelfCode::COUNT`].
    #[must_use]
    pub fn number(self) -> u32 {
        let place = |symbol: u8| {
            SYMBOLS.iter().position(|&known| known == symbol).map_or(0, |at| at as u32)
        };
        let [a, b, c, d] = self.0.map(place);
        ((a * 24 + b) * DIGITS + c) * 24 + d
    }
}

impl fmt::Display for ShelfCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|&symbol| write!(f, "{}", char::from(symbol)))
    }
}

impl FromStr for ShelfCode {
    type Err = NoShelfCode;

    /// Spaces and small letters are let through: a person types it.
    fn from_str(text: &str) -> Result<Self, NoShelfCode> {
        let bad = || NoShelfCode(text.chars().take(40).collect());
        let typed: Vec<u8> = text
            .bytes()
            .filter(|byte| !byte.is_ascii_whitespace())
            .map(|byte| byte.to_ascii_uppercase())
            .collect();
        let symbols: [u8; 4] = typed.try_into().map_err(|_| bad())?;
        let fits = symbols.iter().enumerate().all(|(place, symbol)| {
            SYMBOLS.contains(symbol) && (place % 2 == 1 || symbol.is_ascii_digit())
        });
        if fits { Ok(Self(symbols)) } else { Err(bad()) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_number_has_its_own_code_and_comes_back() {
        let mut seen = BTreeSet::new();
        for number in 0..ShelfCode::COUNT {
            let code = ShelfCode::from_number(number);
            assert_eq!(code.number(), number);
            assert_eq!(code.to_string().parse(), Ok(code));
            assert!(seen.insert(code));
        }
        assert_eq!(seen.len(), 36_864, "the count that the trade page states");
    }

    #[test]
    fn what_spells_or_looks_alike_is_no_code() {
        for bad in ["", "3K7", "3K7PP", "K37P", "3KK7", "0A2C", "3K7O", "3B7P", "ệK7P"] {
            assert!(bad.parse::<ShelfCode>().is_err(), "{bad}");
        }
        assert_eq!(" 3k7p ".parse::<ShelfCode>().map(|c| c.to_string()), Ok("3K7P".to_owned()));
    }
}
