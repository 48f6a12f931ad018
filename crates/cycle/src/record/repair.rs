//! Rows put into time order, with an account of what was wrong with them.
//!
//! In file order a step of −30 s or less, or of +1800 s or more, is a jump of the clock (a change
//! to winter time, or midnight where no day is written) and becomes one usual step. Then the rows
//! are sorted, rows at equal times keeping their order, and of rows at the same time the first
//! stays. Rows that were copied into the file a second time are left out before.

use super::repeats::{self, Rows};
use super::stamp::SECOND;

/// A step this far back is a jump of the clock.
const JUMP_BACK: i64 = -30 * SECOND;

/// A step this far ahead is one too.
const JUMP_AHEAD: i64 = 1_800 * SECOND;

/// Is a step of so many microseconds a jump of the clock?
pub(super) const fn is_jump(step: i64) -> bool {
    step <= JUMP_BACK || step >= JUMP_AHEAD
}

/// Steps on both sides by which a gap is judged, so that a record that is written less often while
/// nothing happens has no gaps there.
const NEIGHBOURS: usize = 4;

/// What repair found. Positions are those in the file.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Repaired {
    /// Microseconds since the first sample, in file order.
    pub since_start: Vec<i64>,
    /// Positions of the rows that stay, in time order; `None`: all of them, as they are.
    pub order: Option<Vec<u32>>,
    /// Position of each row behind a jump, and the jump in microseconds.
    pub jumps: Vec<(usize, i64)>,
    /// Rows left out because another one has the same time, or because they are copies.
    pub doubled: Vec<usize>,
    /// Rows that stood behind a later one.
    pub swapped: Vec<usize>,
    /// Positions of the rows before and behind each gap.
    pub gaps: Vec<(usize, usize)>,
    /// Rows that should stand in the gaps.
    pub dropped: usize,
    /// Usual step, microseconds.
    pub usual: i64,
    /// Longest step, microseconds.
    pub longest: i64,
}

impl Repaired {
    /// Repairs these rows.
    pub fn of(rows: Rows<'_>) -> Self {
        Self::untouched(rows.at).unwrap_or_else(|| Self::thorough(rows))
    }

    /// Rows that ascend without a jump or a gap stay as they are, as most do; nothing where these do
    /// not.
    fn untouched(at: &[i64]) -> Option<Self> {
        let (start, first) = (*at.first()?, at.get(1)? - at[0]);
        let steps = || at.array_windows().map(|[before, now]| now - before);
        let (least, longest) = if steps().all(|step| step == first) {
            (first, first)
        } else {
            steps().fold((first, first), |(least, most), step| (least.min(step), most.max(step)))
        };
        if least <= 0 || longest >= JUMP_AHEAD {
            return None;
        }
        let usual = if least == longest { least } else { usual_step(at) };
        (2 * longest <= 3 * usual).then(|| Self {
            since_start: at.iter().map(|at| at - start).collect(),
            usual,
            longest,
            ..Self::default()
        })
    }

    fn thorough(rows: Rows<'_>) -> Self {
        let at = rows.at;
        let copies = repeats::copies(rows);
        let is_copy = |i: usize| copies.get(i).is_some_and(|copy| *copy);
        let usual = if copies.is_empty() {
            usual_step(at)
        } else {
            let kept = at.iter().enumerate().filter(|(i, _)| !is_copy(*i));
            usual_step(&kept.map(|(_, at)| *at).collect::<Vec<_>>())
        };
        let mut repaired = Self { usual, ..Self::default() };
        let (mut shift, mut latest, mut sorted) = (0, i64::MIN, true);
        let mut before = None;
        let mut fixed = Vec::with_capacity(at.len());
        for (i, &now) in at.iter().enumerate() {
            if is_copy(i) {
                sorted = false;
                fixed.push(now + shift);
                continue;
            }
            if let Some(step) = before.map(|before| now - before).filter(|&step| is_jump(step)) {
                shift += usual - step;
                repaired.jumps.push((i, step));
            }
            before = Some(now);
            let time = now + shift;
            sorted &= time > latest;
            latest = latest.max(time);
            fixed.push(time);
        }
        if !sorted {
            repaired.sort(&fixed, &is_copy);
        }
        let start = match &repaired.order {
            Some(order) => order.first().map_or(0, |first| fixed[*first as usize]),
            None => fixed.first().copied().unwrap_or(0),
        };
        for time in &mut fixed {
            *time -= start;
        }
        repaired.since_start = fixed;
        repaired.find_gaps();
        repaired
    }

    fn sort(&mut self, fixed: &[i64], is_copy: &impl Fn(usize) -> bool) {
        let mut doubled: Vec<bool> = (0..fixed.len()).map(is_copy).collect();
        let kept = |i: &u32| !doubled[*i as usize];
        let mut order: Vec<u32> = (0..fixed.len() as u32).filter(kept).collect();
        order.sort_by_key(|i| fixed[*i as usize]);
        let mut last = None;
        order.retain(|&i| {
            let time = fixed[i as usize];
            let fresh = last != Some(time);
            last = Some(time);
            doubled[i as usize] = !fresh;
            fresh
        });
        let mut latest = i64::MIN;
        for (i, &time) in fixed.iter().enumerate() {
            if doubled[i] {
                self.doubled.push(i);
            }
            if is_copy(i) {
                continue;
            }
            if time < latest {
                self.swapped.push(i);
            }
            latest = latest.max(time);
        }
        self.order = Some(order);
    }

    fn find_gaps(&mut self) {
        let position = |k: usize| match &self.order {
            Some(order) => order[k] as usize,
            None => k,
        };
        let kept = self.order.as_ref().map_or(self.since_start.len(), Vec::len);
        let step = |k: usize| self.since_start[position(k + 1)] - self.since_start[position(k)];
        let mut around = Vec::with_capacity(2 * NEIGHBOURS + 1);
        for k in 0..kept.saturating_sub(1) {
            let now = step(k);
            self.longest = self.longest.max(now);
            if 2 * now <= 3 * self.usual {
                continue;
            }
            around.clear();
            let from = k.saturating_sub(NEIGHBOURS);
            around.extend((from..(k + NEIGHBOURS + 1).min(kept - 1)).map(step));
            around.sort_unstable();
            let local = around[around.len() / 2].max(1);
            if 2 * now > 3 * local {
                self.gaps.push((position(k), position(k + 1)));
                let missing = (now + local / 2) / local - 1;
                self.dropped = self.dropped.saturating_add(usize::try_from(missing).unwrap_or(0));
            }
        }
    }
}

/// The median of the steps that are neither back nor jumps.
fn usual_step(at: &[i64]) -> i64 {
    let steps = || {
        let all = at.windows(2).map(|pair| pair[1] - pair[0]);
        all.filter(|step| (1..JUMP_AHEAD).contains(step))
    };
    // Most records keep one step throughout: what more than half of them are is the median.
    let count = steps().count();
    let Some(likely) = steps().nth(count / 2) else {
        return SECOND;
    };
    if steps().filter(|step| *step == likely).count() > count / 2 {
        return likely;
    }
    let mut steps: Vec<i64> = steps().collect();
    let middle = steps.len() / 2;
    *steps.select_nth_unstable(middle).1
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;
    use proptest::prelude::*;

    fn of(seconds: &[i64]) -> Repaired {
        of_micros(&seconds.iter().map(|s| s * SECOND).collect::<Vec<_>>())
    }

    /// Rows with a temperature each of its own: none is a copy.
    fn of_micros(at: &[i64]) -> Repaired {
        let celsius: Vec<f64> = (0..at.len() as u32).map(f64::from).collect();
        Repaired::of(Rows { at, celsius: &celsius, kpa: &[] })
    }

    #[test]
    fn a_clean_record_stays_as_it_is() {
        let repaired = of(&[100, 101, 102, 103]);
        assert_eq!(repaired.order, None);
        assert_eq!((repaired.usual, repaired.longest), (SECOND, SECOND));
        assert!(repaired.gaps.is_empty() && repaired.jumps.is_empty());
    }

    #[test]
    fn a_change_to_winter_time_becomes_one_step() {
        let repaired = of(&[10, 12, 14, 16 - 3_600, 18 - 3_600]);
        assert_eq!(repaired.jumps, [(3, -3_598 * SECOND)]);
        assert_eq!(repaired.since_start.last(), Some(&(8 * SECOND)));
    }

    #[test]
    fn doubled_and_swapped_rows() {
        let repaired = of(&[0, 1, 1, 3, 2, 4, 5]);
        assert_eq!(repaired.order, Some(vec![0, 1, 4, 3, 5, 6]));
        assert_eq!((repaired.doubled, repaired.swapped), (vec![2], vec![4]));
    }

    #[test]
    fn missing_rows_are_counted_by_the_steps_around_them() {
        let repaired = of(&[0, 2, 4, 6, 8, 14, 16, 18, 20, 22]);
        assert_eq!((repaired.dropped, repaired.gaps.len()), (2, 1));
        let slow_then_fast = of(&[0, 10, 20, 30, 40, 50, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60]);
        assert_eq!(slow_then_fast.dropped, 0);
    }

    #[test]
    fn a_block_pasted_twice_counts_once() {
        let at = [0, 20, 40, 60, 80, 20, 40, 60, 80, 100].map(|s| s * SECOND);
        let celsius = [0, 1, 2, 3, 4, 1, 2, 3, 4, 5].map(f64::from);
        let repaired = Repaired::of(Rows { at: &at, celsius: &celsius, kpa: &[] });
        assert_eq!(repaired.order, Some(vec![0, 1, 2, 3, 4, 9]));
        assert_eq!((repaired.doubled, repaired.jumps), (vec![5, 6, 7, 8], vec![]));
        assert!(repaired.swapped.is_empty() && repaired.gaps.is_empty());
    }

    proptest! {
        /// The thorough way is the yardstick.
        #[test]
        fn untouched_rows_are_those_that_need_nothing(
            steps in proptest::collection::vec(prop_oneof![9 => 9_i64..12, 1 => -40_i64..2_000], 0..30),
            evenly: bool,
        ) {
            let mut at = vec![0];
            for step in steps {
                at.push(at[at.len() - 1] + SECOND * if evenly { 10 } else { step });
            }
            let celsius: Vec<f64> = (0..at.len() as u32).map(f64::from).collect();
            let thorough = Repaired::thorough(Rows { at: &at, celsius: &celsius, kpa: &[] });
            let clean = thorough.order.is_none() && thorough.jumps.is_empty() && thorough.gaps.is_empty();
            match Repaired::untouched(&at) {
                Some(untouched) => prop_assert_eq!(untouched, thorough),
                None => prop_assert!(!clean || thorough.longest * 2 > thorough.usual * 3 || at.len() < 2),
            }
        }

        #[test]
        fn kept_rows_are_in_strict_order_and_none_is_lost(
            at in proptest::collection::vec(-5_000_i64..5_000, 1..80),
        ) {
            let repaired = of(&at);
            let order = repaired.order.clone().unwrap_or_else(|| (0..at.len() as u32).collect());
            let times: Vec<i64> = order.iter().map(|i| repaired.since_start[*i as usize]).collect();
            prop_assert!(times.windows(2).all(|pair| pair[0] < pair[1]));
            prop_assert_eq!(times[0], 0);
            prop_assert_eq!(order.len() + repaired.doubled.len(), at.len());
        }
    }
}
