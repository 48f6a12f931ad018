//! A row's shape, laid over the rows behind it.
//!
//! From row to row mostly the digits change, and not where they stand. So the last row makes a
//! stencil: which bytes have to stay as they are, the minute among them, and which have to be
//! digits. A row that fits is checked in words of eight bytes, and its numbers are cut out by masks
//! that are known beforehand.

use super::number::{ONES, eight_digits, ten_to};

/// Words of the longest row that makes a stencil.
const WORDS: usize = 5;

/// Bytes that a row is looked at in: a number is taken as eight bytes wherever it begins.
pub(super) const LOOKED_AT: usize = WORDS * 8 + 8;

/// The shape of one row.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Stencil {
    /// Bytes with the line end.
    pub length: usize,
    /// Where the two digits of the seconds stand.
    pub seconds: usize,
    pub temperature: Number8,
    /// Meaningless in a record without pressure.
    pub pressure: Number8,
    /// The bytes that stay, 0 elsewhere, and which they are.
    same: [u64; WORDS],
    same_mask: [u64; WORDS],
    /// Those of them that are the minute.
    minute_mask: [u64; WORDS],
    /// The high bit of each byte that has to be a digit.
    digits: [u64; WORDS],
}

/// A number of at most seven digits without a sign, by where it stands in a row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number8 {
    start: usize,
    /// The bytes in front of the mark; all where there is none.
    before_mark: u64,
    /// What moves the last digit to the end of a word.
    shift: u32,
    scale: f64,
    pub decimals: u8,
}

/// What a stencil is drawn from: parts of a row from left to right.
#[derive(Debug)]
pub(super) struct Drawing<'a> {
    row: &'a [u8],
    at: usize,
    stencil: Stencil,
}

impl<'a> Drawing<'a> {
    /// Nothing where the row, given with its line end, is too long.
    pub fn of(row: &'a [u8]) -> Option<Self> {
        let number = Number8 { start: 0, before_mark: 0, shift: 0, scale: 1.0, decimals: 0 };
        let stencil = Stencil {
            length: row.len(),
            seconds: 0,
            temperature: number,
            pressure: number,
            same: [0; WORDS],
            same_mask: [0; WORDS],
            minute_mask: [0; WORDS],
            digits: [0; WORDS],
        };
        (row.len() <= WORDS * 8).then_some(Self { row, at: 0, stencil })
    }

    /// So many bytes have to stay as they are.
    pub fn same(&mut self, count: usize) -> Option<()> {
        for byte in self.row.get(self.at..self.at + count)? {
            let (word, shift) = (self.at / 8, self.at % 8 * 8);
            self.stencil.same[word] |= u64::from(*byte) << shift;
            self.stencil.same_mask[word] |= 0xFF << shift;
            self.at += 1;
        }
        Some(())
    }

    /// So many bytes have to be digits, as they are.
    fn digits(&mut self, count: usize) -> Option<()> {
        for byte in self.row.get(self.at..self.at + count)? {
            if !byte.is_ascii_digit() {
                return None;
            }
            self.stencil.digits[self.at / 8] |= 0x80 << (self.at % 8 * 8);
            self.at += 1;
        }
        Some(())
    }

    /// So many bytes are the minute.
    pub fn minute(&mut self, count: usize) -> Option<()> {
        let before = self.stencil.same_mask;
        self.same(count)?;
        for ((minute, after), before) in
            self.stencil.minute_mask.iter_mut().zip(self.stencil.same_mask).zip(before)
        {
            *minute |= after & !before;
        }
        Some(())
    }

    /// The two digits of the seconds.
    pub fn seconds(&mut self) -> Option<()> {
        self.stencil.seconds = self.at;
        self.digits(2)
    }

    /// A number; nothing where it is signed, too long, or has no digit in front of its mark.
    fn number(&mut self, mark: u8) -> Option<Number8> {
        let start = self.at;
        let rest = self.row.get(start..)?;
        let count = |rest: &[u8]| rest.iter().take_while(|b| b.is_ascii_digit()).count();
        let front = count(rest);
        let marked = rest.get(front) == Some(&mark);
        let places = if marked { count(&rest[front + 1..]) } else { 0 };
        if front == 0 || front + places > 7 {
            return None;
        }
        self.digits(front)?;
        if marked {
            self.same(1)?;
            self.digits(places)?;
        }
        Some(Number8 {
            start,
            before_mark: if marked { (1 << (8 * front)) - 1 } else { u64::MAX },
            shift: 64 - 8 * (front + places) as u32,
            scale: ten_to(places as u8),
            decimals: places as u8,
        })
    }

    /// The temperature.
    pub fn temperature(&mut self, mark: u8) -> Option<()> {
        self.stencil.temperature = self.number(mark)?;
        Some(())
    }

    /// The pressure.
    pub fn pressure(&mut self, mark: u8) -> Option<()> {
        self.stencil.pressure = self.number(mark)?;
        Some(())
    }

    /// The stencil, if the whole row was drawn.
    pub fn done(self) -> Option<Stencil> {
        (self.at == self.row.len()).then_some(self.stencil)
    }
}

impl Stencil {
    /// Does a row of this shape, of the same minute, begin here?
    #[inline(always)]
    pub fn fits(&self, row: &[u8; LOOKED_AT]) -> bool {
        let (words, _) = row.as_chunks::<8>();
        let mut other = 0;
        for (word, bytes) in words.iter().enumerate().take(WORDS) {
            let bytes = u64::from_le_bytes(*bytes);
            // What is no digit gets a high bit. A carry out of a byte that has to stay can only make
            // a row seem not to fit.
            let no_digit = (bytes ^ (ONES * 0x30)).wrapping_add(ONES * 0x76) | bytes;
            other |= (bytes ^ self.same[word]) & self.same_mask[word];
            other |= no_digit & self.digits[word];
        }
        other == 0 && row[self.seconds % LOOKED_AT] < b'6'
    }

    /// Takes the minute of this row for its own.
    pub fn set_minute(&mut self, row: &[u8; LOOKED_AT]) {
        let (words, _) = row.as_chunks::<8>();
        for ((same, mask), bytes) in self.same.iter_mut().zip(self.minute_mask).zip(words) {
            *same = *same & !mask | u64::from_le_bytes(*bytes) & mask;
        }
    }

    /// The seconds of a row that fits.
    #[inline(always)]
    pub fn second(&self, row: &[u8; LOOKED_AT]) -> i64 {
        let digit = |at: usize| i64::from(row[at % LOOKED_AT] & 0x0F);
        digit(self.seconds) * 10 + digit(self.seconds + 1)
    }
}

impl Number8 {
    /// The number, in a row that fits.
    #[inline(always)]
    pub fn of(&self, row: &[u8; LOOKED_AT]) -> f64 {
        // No row that makes a stencil is so long that a number in it begins later.
        let start = self.start.min(LOOKED_AT - 8);
        let Some(eight) = row[start..].first_chunk() else {
            return f64::NAN;
        };
        let values = u64::from_le_bytes(*eight) ^ (ONES * 0x30);
        let joined = (values & self.before_mark) | ((values >> 8) & !self.before_mark);
        // Both are exact in a double, so the quotient is the nearest one.
        eight_digits(joined << self.shift).cast_signed() as f64 / self.scale
    }
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::super::number::{Number, parse};
    use super::*;
    use proptest::prelude::*;

    fn drawn(row: &str) -> Option<Stencil> {
        let mut drawing = Drawing::of(row.as_bytes())?;
        drawing.minute(6)?;
        drawing.seconds()?;
        drawing.same(1)?;
        drawing.temperature(b'.')?;
        drawing.same(1)?;
        drawing.pressure(b'.')?;
        drawing.same(1)?;
        drawing.done()
    }

    fn padded(row: &str) -> [u8; LOOKED_AT] {
        let mut bytes = [b'7'; LOOKED_AT];
        bytes[..row.len()].copy_from_slice(row.as_bytes());
        bytes
    }

    #[test]
    fn what_has_another_shape_does_not_fit() {
        let stencil = drawn("10:20:30,134.2,304\n").unwrap();
        assert!(stencil.fits(&padded("10:20:59,987.0,111\n")));
        for other in [
            "10:21:59,987.0,111\n",
            "10:20:60,987.0,111\n",
            "10:20:5x,987.0,111\n",
            "10:20:59;987.0,111\n",
            "10:20:59,-87.0,111\n",
            "10:20:59,98.70,111\n",
            "10:20:59,987.0,1111\n",
            "10:20:59,987.0,11\n",
            "10:20:59,987.0,1:1\n",
            "10:20:59,987.0,1\u{fc}\n",
        ] {
            assert!(!stencil.fits(&padded(other)), "{other}");
        }
    }

    #[test]
    fn another_minute_is_taken() {
        let mut stencil = drawn("10:20:30,134.2,304\n").unwrap();
        let next = padded("10:21:00,134.2,304\n");
        assert!(!stencil.fits(&next));
        stencil.set_minute(&next);
        assert!(stencil.fits(&next));
        assert_eq!(stencil, drawn("10:21:00,134.2,304\n").unwrap());
    }

    #[test]
    fn what_makes_no_stencil() {
        for row in ["10:20:30,-34.2,304\n", "10:20:30,.2,304\n", "10:20:30,134.20000,304\n"] {
            assert_eq!(drawn(row), None, "{row}");
        }
        assert!(Drawing::of(&[b'1'; 41]).is_none());
    }

    proptest! {
        /// A number read by itself is the yardstick; and what fits has the same shape.
        #[test]
        fn numbers_are_those_that_stand_there(
            first in "[0-9]{1,3}(\\.[0-9]{0,3})?,[0-9]{1,7}",
            second in "[0-9]{1,3}(\\.[0-9]{0,3})?,[0-9]{1,7}",
            seconds in "[0-9]{2}",
        ) {
            let stencil = drawn(&format!("10:20:00,{first}\n")).unwrap();
            let row = format!("10:20:{seconds},{second}\n");
            let bytes = padded(&row);
            if stencil.fits(&bytes) {
                let number = |cell: &str| parse(cell.as_bytes(), b'.').unwrap();
                let read = |number: Number8, row| Number { value: number.of(row), decimals: number.decimals };
                let (temperature, pressure) = second.split_once(',').unwrap();
                prop_assert_eq!(stencil.length, row.len());
                prop_assert_eq!(stencil.second(&bytes), seconds.parse::<i64>().unwrap());
                prop_assert_eq!(read(stencil.temperature, &bytes), number(temperature));
                prop_assert_eq!(read(stencil.pressure, &bytes), number(pressure));
            } else {
                let shape = |row: &str| row.replace(|c: char| c.is_ascii_digit(), "0");
                prop_assert!(shape(&first) != shape(&second) || seconds.as_bytes()[0] > b'5');
            }
        }
    }
}
