//! A map for keys that nobody chose in order to be slow.

use std::hash::{BuildHasherDefault, Hasher};

pub(super) type FastMap<K, V> = std::collections::HashMap<K, V, BuildHasherDefault<Mix>>;

/// Multiplies and turns, eight bytes at a time: a few times as fast as the standard hasher, and the
/// same in each process. Enough for keys that come from a day, not from a stranger.
#[derive(Debug, Default, Clone, Copy)]
pub(super) struct Mix(u64);

/// An odd number with its bits spread: 2^64 over the golden ratio, as in Fibonacci hashing (Knuth,
/// The Art of Computer Programming, volume 3, 6.4).
const ODD: u64 = 0x9e37_79b9_7f4a_7c15;

impl Hasher for Mix {
    fn finish(&self) -> u64 {
        self.0 ^ (self.0 >> 32)
    }

    fn write(&mut self, bytes: &[u8]) {
        for chunk in bytes.chunks(8) {
            let mut word = [0; 8];
            word[..chunk.len()].copy_from_slice(chunk);
            self.write_u64(u64::from_le_bytes(word));
        }
    }

    fn write_u64(&mut self, word: u64) {
        self.0 = (self.0.rotate_left(23) ^ word).wrapping_mul(ODD);
    }

    fn write_u32(&mut self, word: u32) {
        self.write_u64(u64::from(word));
    }

    fn write_usize(&mut self, word: usize) {
        self.write_u64(word as u64);
    }
}
