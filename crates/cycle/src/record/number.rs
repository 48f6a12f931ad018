//! Decimal numbers as machines and spreadsheets write them.

use super::units::is_unit;

/// A number and how finely it was written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    pub value: f64,
    /// Digits after the decimal mark.
    pub decimals: u8,
}

/// Any number of so many digits is exact in a double.
const MOST_DIGITS: usize = 15;

/// Powers of ten, exact in a double as well.
const EXACT: [f64; MOST_DIGITS + 1] =
    [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

/// Reads a cell as a number with this decimal mark.
///
/// Nothing comes back for an empty cell, words, not-a-number and infinity. Between digits before
/// the mark a point, comma, apostrophe or blank may part thousands, three digits each. A unit may
/// stand behind.
pub(super) fn parse(cell: &[u8], mark: u8) -> Option<Number> {
    let (negative, digits) = match cell.trim_ascii() {
        [b'-', rest @ ..] => (true, rest),
        [b'+', rest @ ..] => (false, rest),
        // U+2212, the typographer's minus
        [0xE2, 0x88, 0x92, rest @ ..] => (true, rest),
        rest => (false, rest),
    };
    let Some(Digits { whole, places, length: at, any }) = digits_of(digits, mark) else {
        return long_way(digits, mark, negative);
    };
    if at < digits.len() && (!any || !is_suffix(&digits[at..])) {
        return long_way(digits, mark, negative);
    }
    if !any {
        return None;
    }
    Some(exact(whole, places, negative))
}

/// The plain number at the front of `rest`, and its length: a sign, digits, a mark, digits. What
/// follows it is for the caller to look at. Anything else is left to [`parse`].
#[inline(always)]
pub(super) fn plain(rest: &[u8], mark: u8) -> Option<(Number, usize)> {
    let negative = rest.first() == Some(&b'-');
    let signed = usize::from(negative);
    let eight = rest.get(signed..).and_then(|rest| rest.first_chunk());
    match eight.and_then(|eight| short_digits(u64::from_le_bytes(*eight), mark)) {
        Some(digits) => {
            Some((exact(digits.whole, digits.places, negative), signed + digits.length))
        }
        None => plain_bytewise(rest, mark),
    }
}

/// The same byte by byte: for numbers that are long, or near the end of what was read in.
#[cold]
fn plain_bytewise(rest: &[u8], mark: u8) -> Option<(Number, usize)> {
    let (negative, signed, rest) = match rest {
        [b'-', rest @ ..] => (true, 1, rest),
        [b'+', rest @ ..] => (false, 1, rest),
        rest => (false, 0, rest),
    };
    let Digits { whole, places, length, any } = digits_of(rest, mark)?;
    any.then(|| (exact(whole, places, negative), signed + length))
}

/// Digits in front and behind the mark.
struct Digits {
    whole: u64,
    places: u8,
    /// Bytes, with the mark.
    length: usize,
    /// Is there a digit at all?
    any: bool,
}

/// One in each byte of a word.
pub(super) const ONES: u64 = 0x0101_0101_0101_0101;

/// The same as [`digits_of`] from eight bytes at once, the first one lowest; nothing where the
/// number does not end within them, or does not begin with a digit.
#[inline(always)]
fn short_digits(eight: u64, mark: u8) -> Option<Digits> {
    // Digits become 0 to 9; whatever is more gets a high bit. Only above a byte that is neither a
    // digit nor a mark may a wrong one follow, and there is no more to find there.
    let values = eight ^ (ONES * 0x30);
    let others = (values.wrapping_add(ONES * 0x76) | values) & (ONES * 0x80);
    let front = others.trailing_zeros() & !7;
    if front == 0 || front == 64 {
        return None;
    }
    if (eight >> front) as u8 != mark {
        let whole = eight_digits(values << (64 - front));
        return Some(Digits { whole, places: 0, length: front as usize / 8, any: true });
    }
    // Of the bits that say "no digit" the lowest was that of the mark.
    let end = (others & (others - 1)).trailing_zeros() & !7;
    if end == 64 {
        return None;
    }
    let before = (1 << front) - 1;
    let joined = (values & before) | ((values >> 8) & !before);
    let places = (end - front) / 8 - 1;
    Some(Digits {
        whole: eight_digits(joined << (72 - end)),
        places: places as u8,
        length: end as usize / 8,
        any: true,
    })
}

/// The number that eight digits make, the first one lowest: pairs, then fours, then all.
#[inline]
pub(super) fn eight_digits(digits: u64) -> u64 {
    let pairs = digits.wrapping_mul(10).wrapping_add(digits >> 8) & 0x00FF_00FF_00FF_00FF;
    let fours = pairs.wrapping_mul(100).wrapping_add(pairs >> 16) & 0x0000_FFFF_0000_FFFF;
    fours.wrapping_mul(10_000).wrapping_add(fours >> 32) & 0xFFFF_FFFF
}

/// Nothing when there are more digits than a double is sure to hold.
#[inline]
fn digits_of(rest: &[u8], mark: u8) -> Option<Digits> {
    let (front_value, front) = run_of_digits(rest, 0);
    let (whole, length, places) = match rest.get(front) {
        Some(b) if *b == mark => {
            let (whole, places) = run_of_digits(&rest[front + 1..], front_value);
            (whole, front + 1 + places, places)
        }
        _ => (front_value, front, 0),
    };
    let count = front + places;
    (count <= MOST_DIGITS).then_some(Digits { whole, places: places as u8, length, any: count > 0 })
}

/// The digits at the front, put behind those of `value`, and how many they are. With more than a
/// number can hold the value is meaningless.
#[inline]
fn run_of_digits(rest: &[u8], mut value: u64) -> (u64, usize) {
    let mut length = 0;
    for b in rest {
        let digit = b.wrapping_sub(b'0');
        if digit > 9 {
            break;
        }
        value = value.wrapping_mul(10).wrapping_add(u64::from(digit));
        length += 1;
    }
    (value, length)
}

/// Ten to the power of so many places, at most fifteen.
#[inline]
pub(super) fn ten_to(places: u8) -> f64 {
    EXACT[usize::from(places) % EXACT.len()]
}

/// Both numbers are exact in a double, so the quotient is the nearest one, as the library rounds.
#[inline]
fn exact(whole: u64, places: u8, negative: bool) -> Number {
    // Fifteen digits fit a signed word, which becomes a double in one step; a word that is not
    // signed takes seven.
    let value = whole.cast_signed() as f64 / ten_to(places);
    Number { value: if negative { -value } else { value }, decimals: places }
}

/// Thousands, exponents and very long numbers, by way of the library.
fn long_way(digits: &[u8], mark: u8, negative: bool) -> Option<Number> {
    let end = digits.iter().rposition(u8::is_ascii_digit).map(|last| last + 1)?;
    let (digits, suffix) = digits.split_at(end);
    if digits.len() > 60 || !is_suffix(suffix) {
        return None;
    }
    let mut plain = String::with_capacity(digits.len() + 1);
    if negative {
        plain.push('-');
    }
    let (mut decimals, mut behind_mark, mut exponent) = (0_u8, false, false);
    let mut rest = digits;
    while let [b, tail @ ..] = rest {
        let thousands = thousands_mark(rest, mark);
        match *b {
            b'0'..=b'9' => {
                plain.push(char::from(*b));
                decimals += u8::from(behind_mark && !exponent);
            }
            m if m == mark && !behind_mark && !exponent => {
                plain.push('.');
                behind_mark = true;
            }
            b'e' | b'E' if !exponent && !plain.is_empty() => {
                plain.push('e');
                exponent = true;
            }
            b'+' | b'-' if plain.ends_with('e') => plain.push(char::from(*b)),
            _ if thousands > 0 && !behind_mark && !exponent && !plain.is_empty() => {
                rest = &rest[thousands..];
                continue;
            }
            _ => return None,
        }
        rest = tail;
    }
    let value = plain.parse::<f64>().ok().filter(|v| v.is_finite())?;
    Some(Number { value, decimals })
}

/// Length of a mark between thousands at the front, if exactly three digits or a multiple follow.
fn thousands_mark(rest: &[u8], mark: u8) -> usize {
    let length = match rest {
        [0xC2, 0xA0, ..] => 2,
        [0xE2, 0x80, 0xAF, ..] => 3,
        [b' ' | b'\'' | 0xA0, ..] => 1,
        [b @ (b'.' | b','), ..] if *b != mark => 1,
        _ => return 0,
    };
    let digits = rest[length..].iter().take_while(|b| b.is_ascii_digit()).count();
    if digits == 3 { length } else { 0 }
}

/// Nothing, or a unit as in `134.2 °C`.
fn is_suffix(rest: &[u8]) -> bool {
    let separates = |b: &u8| matches!(b, b';' | b'|' | b',' | b'\t' | b'=' | b'"');
    let separated = rest.iter().any(separates);
    let rest = rest.trim_ascii();
    rest.is_empty() || (rest.len() <= 12 && !separated && is_unit(&super::source::text(rest)))
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;
    use proptest::prelude::*;

    #[track_caller]
    fn check(cell: &str, mark: char, expected: Option<(f64, u8)>) {
        let got = parse(cell.as_bytes(), mark as u8).map(|n| (n.value, n.decimals));
        assert_eq!(got, expected, "{cell}");
    }

    #[test]
    fn numbers_as_machines_write_them() {
        check("134.2", '.', Some((134.2, 1)));
        check(" +2,16 ", ',', Some((2.16, 2)));
        check("-0,94", ',', Some((-0.94, 2)));
        check("\u{2212}0.94", '.', Some((-0.94, 2)));
        check("1.013,2", ',', Some((1013.2, 1)));
        check("1,013.25", '.', Some((1013.25, 2)));
        check("1 013,2", ',', Some((1013.2, 1)));
        check("1\u{a0}013,2", ',', Some((1013.2, 1)));
        check("101'325", '.', Some((101_325.0, 0)));
        check("1,013,250", '.', Some((1_013_250.0, 0)));
        check("1.5e2", '.', Some((150.0, 1)));
        check("134.2°C", '.', Some((134.2, 1)));
        check("2.18 bar", '.', Some((2.18, 2)));
        check(".5", '.', Some((0.5, 1)));
        check("5.", '.', Some((5.0, 0)));
    }

    #[test]
    fn what_is_no_number_gives_nothing() {
        for cell in ["", "-", "---", "NaN", "inf", "1e999", "12:30", "1.2.3", "12abc", "0x10", "."]
        {
            check(cell, '.', None);
        }
        check("26.10.2025", '.', None);
        check("1,2,3", '.', None);
    }

    proptest! {
        /// The standard library is the yardstick.
        #[test]
        fn equals_the_library(whole in 0_u64..10_000_000_000, places in 0_usize..9, negative: bool) {
            let digits = format!("{whole:010}");
            let (front, back) = digits.split_at(10 - places);
            let sign = if negative { "-" } else { "" };
            let plain = format!("{sign}{front}.{back}");
            let got = parse(plain.replace('.', ",").as_bytes(), b',').unwrap();
            prop_assert_eq!(got.value.to_bits(), plain.parse::<f64>().unwrap().to_bits());
            prop_assert_eq!(usize::from(got.decimals), places);
        }

        /// One byte after the other is the yardstick.
        #[test]
        fn eight_bytes_at_once_are_the_same(text in "[0-9]{0,7}[.,]?[0-9]{0,7}[.,;\r\n \\xFF0-9-]{1,3}") {
            let bytes = text.as_bytes();
            if let Some(eight) = bytes.first_chunk()
                && let Some(short) = short_digits(u64::from_le_bytes(*eight), b'.')
            {
                let long = digits_of(bytes, b'.').unwrap();
                prop_assert_eq!((short.whole, short.places), (long.whole, long.places));
                prop_assert_eq!((short.length, short.any), (long.length, long.any));
            }
        }

        #[test]
        fn eight_bytes_at_once_suffice(front in "[0-9]{1,3}", back in "(\\.[0-9]{0,2})?", next in "[,;\n]") {
            let text = format!("{front}{back}{next}12345678");
            let eight = text.as_bytes().first_chunk().unwrap();
            prop_assert!(short_digits(u64::from_le_bytes(*eight), b'.').is_some());
        }

        #[test]
        fn never_panics(cell in proptest::collection::vec(any::<u8>(), 0..80)) {
            let _ = parse(&cell, b'.').map(|n| assert!(n.value.is_finite()));
        }
    }
}
