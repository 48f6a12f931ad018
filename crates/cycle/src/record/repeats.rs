//! Rows that stand in a file a second time: a block that was pasted or sent twice.
//!
//! Time, temperature and pressure of three rows in a row do not come back by chance. Where they do,
//! the clock was not set: one of the two is a copy and is left out, so that its time counts once.

use super::repair::is_jump;

/// Rows in a row that have to match before they are taken for a copy.
const LEAST: usize = 3;

/// Rows in file order: microseconds, °C, kPa (as long as the others, or empty).
#[derive(Clone, Copy)]
pub(super) struct Rows<'a> {
    pub at: &'a [i64],
    pub celsius: &'a [f64],
    pub kpa: &'a [f64],
}

impl Rows<'_> {
    fn key(&self, row: usize) -> (i64, u64, u64) {
        let kpa = self.kpa.get(row).map_or(0, |kpa| kpa.to_bits());
        (self.at[row], self.celsius[row].to_bits(), kpa)
    }

    /// For each row, the first of which this one and the next two are a copy; itself where they are
    /// none.
    fn first_like(&self) -> Vec<usize> {
        let last = (self.at.len() + 1).saturating_sub(LEAST);
        let key = |&row: &usize| (self.key(row), self.key(row + 1), self.key(row + 2), row);
        let mut sorted: Vec<usize> = (0..last).collect();
        sorted.sort_unstable_by_key(key);
        let mut first: Vec<usize> = (0..last).collect();
        for pair in sorted.windows(2) {
            let alike = (0..LEAST).all(|next| self.key(pair[0] + next) == self.key(pair[1] + next));
            if alike {
                first[pair[1]] = first[pair[0]];
            }
        }
        first
    }
}

/// Which rows are copies; empty where the clock never goes back, and so none can be.
pub(super) fn copies(rows: Rows<'_>) -> Vec<bool> {
    let back = rows.at.windows(2).any(|pair| is_jump(pair[1] - pair[0]) && pair[1] < pair[0]);
    if !back || rows.at.len() <= LEAST {
        return Vec::new();
    }
    let first = rows.first_like();
    let mut copies = vec![false; rows.at.len()];
    let mut row = 0;
    while row < first.len() {
        let like = first[row];
        if like == row {
            row += 1;
            continue;
        }
        let more = (1..).take_while(|n| first.get(row + n) == Some(&(like + n))).count();
        let length = LEAST + more;
        let copy = if earlier_is_copy(rows.at, &copies, (like, row, length)) { like } else { row };
        copies[copy..copy + length].fill(true);
        row += more + 1;
    }
    copies
}

/// Of two like blocks the one is the copy without which the clock jumps less; of equals the later.
fn earlier_is_copy(
    at: &[i64],
    copies: &[bool],
    (early, late, length): (usize, usize, usize),
) -> bool {
    if copies[early] || early + length >= late {
        return false;
    }
    let jumps = |from: Option<usize>, to: usize| {
        let step = from.zip(at.get(to)).map(|(from, to)| to - at[from]);
        usize::from(step.is_some_and(is_jump))
    };
    let before = |row: usize| (0..row).rev().find(|&row| !copies[row]);
    let last = |block: usize| Some(block + length - 1);
    let without_early = jumps(before(early), early + length)
        + jumps(before(late), late)
        + jumps(last(late), late + length);
    let without_late = jumps(before(early), early)
        + jumps(last(early), early + length)
        + jumps(before(late), late + length);
    without_early < without_late
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;
    use crate::record::stamp::SECOND;

    /// Seconds in file order; the temperature of a row follows from its second.
    fn check(seconds: &[i64], expected: &[usize]) {
        let at: Vec<i64> = seconds.iter().map(|second| second * SECOND).collect();
        let celsius: Vec<f64> = seconds.iter().map(|second| *second as f64 / 7.0).collect();
        let found = copies(Rows { at: &at, celsius: &celsius, kpa: &[] });
        let found: Vec<usize> = (0..found.len()).filter(|&row| found[row]).collect();
        assert_eq!(found, expected, "{seconds:?}");
    }

    #[test]
    fn a_block_that_stands_there_twice() {
        check(&[0, 20, 40, 60, 0, 20, 40, 60, 80], &[4, 5, 6, 7]);
        check(&[0, 20, 40, 60, 80, 100, 20, 40, 60], &[6, 7, 8]);
        // Pasted before the place where it belongs: the early one is the copy.
        check(&[0, 60, 80, 100, 20, 40, 60, 80, 100, 120], &[1, 2, 3]);
        // Three times.
        check(&[0, 20, 40, 0, 20, 40, 0, 20, 40, 60], &[3, 4, 5, 6, 7, 8]);
        // Two rows alike may be chance; a clock that goes on has no copies.
        check(&[0, 20, 40, 60, 20, 40, 80], &[]);
        check(&[0, 20, 40, 60, 80], &[]);
        check(&[], &[]);
    }

    #[test]
    fn an_hour_that_comes_twice_with_other_readings_is_no_copy() {
        let at: Vec<i64> = [0, 20, 40, 60, 0, 20, 40, 60].map(|second| second * SECOND).to_vec();
        let celsius: Vec<f64> = (0..8).map(f64::from).collect();
        assert!(!copies(Rows { at: &at, celsius: &celsius, kpa: &[] }).contains(&true));
    }
}
