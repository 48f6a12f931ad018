//! When a run will be over, by the salon's own past runs.

use measure::{Instant, Span};

/// When a run is expected to be over. How it is known is "worked out", never "measured".
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Expected {
    /// All but the shortest tenth of the past runs took at least until then.
    pub earliest: Instant,
    /// Half of the past runs were over by then.
    pub median: Instant,
    /// All but the longest tenth of the past runs were over by then.
    pub latest: Instant,
    /// How many past runs this rests on.
    pub from: usize,
}

/// With fewer past runs there are too few to tell (ours: below three, a middle and two ends are
/// the runs themselves).
pub const FEWEST_RUNS: usize = 3;

/// No run of a small sterilizer takes a day; a longer span is a door that stayed shut overnight
/// (common practice, no source).
const LONGEST: Span = Span::from_minutes(24 * 60);

/// When a run that began at `started` will be over, by how long past runs of the same machine and
/// programme took.
///
/// A tenth of the runs, rounded down, is left out at each end; the median of an even count lies
/// half way between the middle two. Lengths that are not above zero or above a day are no
/// lengths of runs and are left out; [`Expected::from`] counts the ones that stayed. `None` says
/// that fewer than [`FEWEST_RUNS`] stayed: too few to tell.
///
/// ```
/// use day::expected_end;
/// use measure::{Instant, Span};
/// let minutes = |m: &[i64]| m.iter().map(|&m| Span::from_minutes(m)).collect::<Vec<_>>();
/// let start = Instant::from_millis(0);
///
/// let expected = expected_end(start, &minutes(&[41, 39, 44])).expect("three runs");
/// assert_eq!(expected.median - start, Span::from_minutes(41));
/// assert_eq!(expected.latest - start, Span::from_minutes(44));
/// assert_eq!(expected_end(start, &minutes(&[41, 39])), None);
/// ```
#[must_use]
pub fn expected_end(started: Instant, lengths_of_past_runs: &[Span]) -> Option<Expected> {
    let mut lengths: Vec<i64> = lengths_of_past_runs
        .iter()
        .filter(|&&length| length > Span::default() && length <= LONGEST)
        .map(|length| length.millis())
        .collect();
    lengths.sort_unstable();
    let from = lengths.len();
    if from < FEWEST_RUNS {
        return None;
    }
    let left_out = from / 10;
    let after = |millis: i64| started + Span::from_millis(millis);
    Some(Expected {
        earliest: after(lengths[left_out]),
        median: after(i64::midpoint(lengths[(from - 1) / 2], lengths[from / 2])),
        latest: after(lengths[from - 1 - left_out]),
        from,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;
    use proptest::prelude::*;

    const START: Instant = Instant::from_millis(1_795_852_800_000);

    /// Minutes in, minutes out; counted by hand.
    fn check(minutes: &[i64], expected: Option<(i64, i64, i64, usize)>) {
        let lengths: Vec<Span> = minutes.iter().map(|&m| Span::from_minutes(m)).collect();
        let found = expected_end(START, &lengths).map(|e| {
            let after = |moment: Instant| (moment - START).minutes();
            (after(e.earliest), after(e.median), after(e.latest), e.from)
        });
        assert_eq!(found, expected, "{minutes:?}");
    }

    #[test]
    fn the_middle_and_the_ends_of_what_was() {
        check(&[], None);
        check(&[40, 41], None);
        check(&[42, 40, 41], Some((40, 41, 42, 3)));
        check(&[30, 40, 44, 60], Some((30, 42, 60, 4)));
        // Ten runs: the one that was cut short and the one that was forgotten do not count.
        check(&[3, 40, 40, 41, 41, 43, 43, 44, 44, 300], Some((40, 42, 44, 10)));
    }

    #[test]
    fn what_is_no_length_of_a_run_is_left_out() {
        check(&[0, -5, 40, 41, 42, 24 * 60 + 1], Some((40, 41, 42, 3)));
        check(&[0, 40, 41], None);
    }

    proptest! {
        #[test]
        fn the_ends_lie_about_the_middle_and_order_does_not_matter(
            mut millis in prop::collection::vec(1..86_400_000_i64, 3..60),
        ) {
            let spans = |m: &[i64]| m.iter().map(|&m| Span::from_millis(m)).collect::<Vec<_>>();
            let found = expected_end(START, &spans(&millis)).unwrap();
            prop_assert!(START < found.earliest);
            prop_assert!(found.earliest <= found.median && found.median <= found.latest);
            prop_assert_eq!(found.from, millis.len());
            let over = |moment| spans(&millis).into_iter().filter(|&s| START + s <= moment).count();
            prop_assert!(2 * over(found.median) >= millis.len());
            prop_assert!(10 * over(found.latest) >= 9 * millis.len());
            millis.reverse();
            prop_assert_eq!(expected_end(START, &spans(&millis)), Some(found));
        }

        #[test]
        fn slower_runs_never_promise_an_earlier_end(
            millis in prop::collection::vec(1..40_000_000_i64, 3..40), more in 0..1_000_000_i64,
        ) {
            let later: Vec<Span> = millis.iter().map(|&m| Span::from_millis(m + more)).collect();
            let lengths: Vec<Span> = millis.iter().map(|&m| Span::from_millis(m)).collect();
            let (slow, fast) = (expected_end(START, &later).unwrap(), expected_end(START, &lengths).unwrap());
            prop_assert_eq!((slow.median - fast.median).millis(), more);
            prop_assert!(slow.latest >= fast.latest);
        }
    }
}
