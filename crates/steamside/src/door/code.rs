//! The code that lets one screen in: six symbols, ten minutes, one screen, few wrong tries.

use crate::chance::NoChance;
use load::ShelfCode;
use measure::{Instant, Span};
use std::fmt;

/// How long a code is good.
const GOOD: Span = Span::from_minutes(10);
/// Wrong tries within [`MINUTE`], all screens together, that make the code void.
const MOST_WRONG: usize = 5;
const MINUTE: Span = Span::from_minutes(1);
/// Symbols of a code. With 24 symbols there are 191 million codes, for at most 40 tries.
const LONG: usize = 6;

/// Six symbols of the shelf codes' alphabet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Code([u8; LONG]);

impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|&symbol| write!(f, "{}", char::from(symbol)))
    }
}

impl Code {
    /// These symbols.
    #[cfg(test)]
    pub const fn of(symbols: [u8; LONG]) -> Self {
        Self(symbols)
    }

    /// A new one, by chance.
    ///
    /// # Errors
    /// A system without random bytes.
    pub fn draw() -> Result<Self, NoChance> {
        let alphabet: Vec<u8> = ShelfCode::symbols().filter_map(|c| u8::try_from(c).ok()).collect();
        let mut symbols = [0; LONG];
        for symbol in &mut symbols {
            *symbol = alphabet[crate::chance::below(alphabet.len())?];
        }
        Ok(Self(symbols))
    }

    /// The same, whatever of the two differs and where: the time it takes tells nothing. Spaces and
    /// small letters are let through.
    fn is(self, typed: &str) -> bool {
        let typed: Vec<u8> = typed
            .bytes()
            .filter(|byte| !byte.is_ascii_whitespace() && *byte != b'-')
            .map(|byte| byte.to_ascii_uppercase())
            .collect();
        typed.len() == LONG && same(&self.0, &typed)
    }
}

/// Are two texts of one length the same? Takes as long for any difference.
pub fn same(one: &[u8], other: &[u8]) -> bool {
    let differs = one.iter().zip(other).fold(0, |seen, (a, b)| seen | (a ^ b));
    one.len() == other.len() && std::hint::black_box(differs) == 0
}

/// Why a screen was not let in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum No {
    /// No code is open: none was made, it was used, or its time is over.
    Shut,
    /// Not this code.
    Wrong,
    /// Not this code, and so many were not that it is void now.
    Void,
}

/// The one code that may be good now.
#[derive(Debug, Clone, Default)]
pub struct Codes {
    open: Option<(Code, Instant)>,
    wrong: Vec<Instant>,
}

impl Codes {
    /// A code is good from now on, and no other.
    pub fn open(&mut self, code: Code, now: Instant) {
        self.open = Some((code, now + GOOD));
        self.wrong.clear();
    }

    /// The code that is good now, and until when.
    pub fn current(&self, now: Instant) -> Option<(Code, Instant)> {
        self.open.filter(|(_, until)| now < *until)
    }

    /// Takes a code in: it is used up when it is right.
    ///
    /// # Errors
    /// Why it lets nobody in.
    pub fn enter(&mut self, typed: &str, now: Instant) -> Result<(), No> {
        let Some((code, _)) = self.current(now) else {
            self.open = None;
            return Err(No::Shut);
        };
        if code.is(typed) {
            self.open = None;
            return Ok(());
        }
        self.wrong.retain(|at| now - *at < MINUTE);
        self.wrong.push(now);
        if self.wrong.len() < MOST_WRONG {
            return Err(No::Wrong);
        }
        self.open = None;
        Err(No::Void)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;

    fn at(seconds: i64) -> Instant {
        Instant::from_millis(1_000 * seconds)
    }

    fn opened() -> Codes {
        let mut codes = Codes::default();
        codes.open(Code(*b"3K7P9W"), at(0));
        codes
    }

    #[test]
    fn a_code_lets_one_screen_in_within_ten_minutes() {
        for (typed, when, said) in [
            ("3K7P9W", 0, Ok(())),
            (" 3k7 p9w ", 599, Ok(())),
            ("3K7-P9W", 1, Ok(())),
            ("3K7P9W", 600, Err(No::Shut)),
            ("3K7P9X", 1, Err(No::Wrong)),
            ("3K7P9", 1, Err(No::Wrong)),
            ("3K7P9WW", 1, Err(No::Wrong)),
            ("", 1, Err(No::Wrong)),
        ] {
            assert_eq!(opened().enter(typed, at(when)), said, "{typed:?} after {when} s");
        }
        let mut codes = opened();
        assert_eq!(codes.enter("3K7P9W", at(1)), Ok(()));
        assert_eq!(codes.enter("3K7P9W", at(2)), Err(No::Shut), "one screen");
        assert_eq!(Codes::default().enter("3K7P9W", at(0)), Err(No::Shut));
    }

    #[test]
    fn five_wrong_tries_in_a_minute_make_it_void() {
        let mut codes = opened();
        for second in 0..4 {
            assert_eq!(codes.enter("222222", at(second)), Err(No::Wrong));
        }
        assert_eq!(codes.enter("222222", at(59)), Err(No::Void));
        assert_eq!(codes.enter("3K7P9W", at(59)), Err(No::Shut), "nor the right one now");
        let mut codes = opened();
        // One every 15 s: the fifth comes when the first is a minute old.
        for try_no in 0..39 {
            assert_eq!(codes.enter("222222", at(15 * try_no)), Err(No::Wrong), "{try_no}");
        }
        assert_eq!(codes.enter("3K7P9W", at(599)), Ok(()));
        codes.open(Code(*b"9Y9Y9Y"), at(600));
        assert_eq!(codes.current(at(600)), Some((Code(*b"9Y9Y9Y"), at(1_200))));
    }

    #[test]
    fn codes_come_from_the_alphabet_and_differ() {
        let drawn: Vec<String> = (0..20).map(|_| Code::draw().unwrap().to_string()).collect();
        for code in &drawn {
            assert!(code.len() == 6 && code.chars().all(|c| ShelfCode::symbols().any(|s| s == c)));
            assert_eq!(drawn.iter().filter(|other| *other == code).count(), 1, "{drawn:?}");
        }
        assert!(same(b"ab", b"ab") && !same(b"ab", b"aB") && !same(b"ab", b"abc"));
    }
}
