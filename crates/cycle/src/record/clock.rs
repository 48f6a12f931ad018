//! Written times whose minute is known from the row before.

use super::plan::Plan;
use super::quick::LONGEST_ROW;
use super::stamp::{SECOND, Stamp};

/// Times in a row that could not be remembered, after which no more is tried.
const PATIENCE: u8 = 8;

/// Written times, of which mostly only the seconds move.
#[derive(Debug)]
pub(super) struct Clock {
    separator: u8,
    stem: Stem,
    /// The time of the stem at second 0.
    pub minute: Stamp,
    /// Times since the last one that could be remembered.
    failed: u8,
}

/// The last time read the long way, without the two digits of its seconds.
#[derive(Debug, Default)]
struct Stem {
    length: usize,
    /// Its bytes, and which of them count, in words.
    words: [u64; STEM_WORDS],
    mask: [u64; STEM_WORDS],
}

/// Words of the longest stem: a day and a clock with hours and minutes.
const STEM_WORDS: usize = 3;

impl Stem {
    /// Nothing where it is too long, or empty.
    fn of(bytes: &[u8]) -> Option<Self> {
        let (mut text, mut mask) = ([0; STEM_WORDS * 8], [0; STEM_WORDS * 8]);
        text.get_mut(..bytes.len())?.copy_from_slice(bytes);
        mask[..bytes.len()].fill(0xFF);
        let words = |bytes: [u8; STEM_WORDS * 8]| {
            let mut words = [0; STEM_WORDS];
            for (word, eight) in words.iter_mut().zip(bytes.as_chunks().0) {
                *word = u64::from_le_bytes(*eight);
            }
            words
        };
        let stem = Self { length: bytes.len(), words: words(text), mask: words(mask) };
        (!bytes.is_empty()).then_some(stem)
    }

    /// Does it stand at the front of `cell`? Near the end of what was read in: perhaps, and no.
    #[inline]
    fn begins(&self, cell: &[u8]) -> bool {
        let Some(front) = cell.first_chunk::<{ STEM_WORDS * 8 }>() else {
            return false;
        };
        let (words, _) = front.as_chunks::<8>();
        let mut other = 0;
        for (word, bytes) in words.iter().enumerate() {
            other |= (u64::from_le_bytes(*bytes) ^ self.words[word]) & self.mask[word];
        }
        other == 0 && self.length > 0
    }
}

impl Clock {
    /// Nothing remembered yet.
    pub fn new(separator: u8) -> Self {
        let minute = Stamp { micros: 0, zone: 0 };
        Self { separator, stem: Stem::default(), minute, failed: 0 }
    }

    /// Bytes of a time in front of its seconds.
    pub fn length(&self) -> usize {
        self.stem.length
    }

    /// The time at the front of `cell`, and its length.
    #[inline(always)]
    pub fn time(&mut self, plan: &Plan, cell: &[u8]) -> Option<(Stamp, usize)> {
        if !self.stem.begins(cell) {
            self.remember(plan, cell)?;
        }
        let length = self.stem.length;
        let [ten, one, ..] = *cell.get(length..)? else {
            return None;
        };
        let (ten, one) = (ten.wrapping_sub(b'0'), one.wrapping_sub(b'0'));
        if ten > 5 || one > 9 {
            return None;
        }
        let micros = self.minute.micros + i64::from(ten * 10 + one) * SECOND;
        Some((Stamp { micros, ..self.minute }, length + 2))
    }

    /// Remembers all but the last two digits of a time, where these are its seconds: the long way
    /// must read second 0 and second 59 that far apart.
    #[cold]
    fn remember(&mut self, plan: &Plan, cell: &[u8]) -> Option<()> {
        if self.failed >= PATIENCE {
            return None;
        }
        self.failed += 1;
        self.stem = Stem::default();
        let length = cell_length(cell, self.separator)?.checked_sub(2)?;
        let stem = Stem::of(&cell[..length])?;
        let mut time = [0; STEM_WORDS * 8 + 2];
        let time = &mut time[..length + 2];
        time[..length].copy_from_slice(&cell[..length]);
        let mut at = |second: &[u8; 2]| {
            time[length..].copy_from_slice(second);
            plan.time.read_alone(plan.mark, time)
        };
        let (first, last) = (at(b"00")?, at(b"59")?);
        if last.micros - first.micros != 59 * SECOND || last.zone != first.zone {
            return None;
        }
        self.stem = stem;
        self.minute = first;
        self.failed = 0;
        Some(())
    }
}

/// Bytes up to the next separator or line end; nothing where there is a quote.
pub(super) fn cell_length(cell: &[u8], separator: u8) -> Option<usize> {
    let ends = |b: &u8| *b == separator || matches!(*b, b'\r' | b'\n' | b'"');
    let length = cell.iter().take(LONGEST_ROW).position(ends)?;
    (cell[length] != b'"').then_some(length)
}
