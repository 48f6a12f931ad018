//! Times of which the book has nothing, although the salon was open.

use measure::{Instant, Span};

/// A silence has to be longer than this to be asked about (ours).
pub const LONGER_THAN: Span = Span::from_minutes(24 * 60);

/// And so much of it has to lie in open hours: half of a working day (ours). A Sunday off, or a quiet
/// Saturday evening before it, is no gap.
pub const OPEN_IN_IT: Span = Span::from_minutes(4 * 60);

/// A time without an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Gap {
    /// The last moment before it of which the book has something.
    pub from: Instant,
    /// The first moment after it.
    pub to: Instant,
}

/// The gaps between what is known, in their order.
///
/// `known` are the times of which the book has something: entries, as times without length, and
/// times that somebody explained. `open` are the salon's open hours. Both may come in any order and
/// may overlap; a time that ends before it begins is left out. Before the first known moment and
/// after the last there is no gap: the caller adds the moment now where the silence goes on.
///
/// ```
/// use day::gaps;
/// use measure::{Instant, Span};
/// let hour = |hour: i64| Instant::from_millis(0) + Span::from_minutes(hour * 60);
/// // Entries on Monday at 18:00 and on Wednesday at 9:00; open from 9 to 18.
/// let known = [(hour(18), hour(18)), (hour(57), hour(57))];
/// let open = [(hour(9), hour(18)), (hour(33), hour(42)), (hour(57), hour(66))];
/// assert_eq!(gaps::find(&known, &open), [gaps::Gap { from: hour(18), to: hour(57) }]);
/// // Tuesday was closed.
/// assert!(gaps::find(&known, &[open[0], open[2]]).is_empty());
/// ```
#[must_use]
pub fn find(known: &[(Instant, Instant)], open: &[(Instant, Instant)]) -> Vec<Gap> {
    let (known, open) = (apart(known), apart(open));
    let silences = known.windows(2).map(|pair| Gap { from: pair[0].1, to: pair[1].0 });
    silences
        .filter(|gap| gap.to - gap.from > LONGER_THAN && open_in(gap, &open) >= OPEN_IN_IT)
        .collect()
}

/// The times in their order, those that touch as one.
fn apart(times: &[(Instant, Instant)]) -> Vec<(Instant, Instant)> {
    let mut times: Vec<_> = times.iter().copied().filter(|(from, to)| from <= to).collect();
    times.sort_unstable();
    let mut apart: Vec<(Instant, Instant)> = Vec::with_capacity(times.len());
    for (from, to) in times {
        match apart.last_mut() {
            Some(last) if from <= last.1 => last.1 = last.1.max(to),
            _ => apart.push((from, to)),
        }
    }
    apart
}

fn open_in(gap: &Gap, open: &[(Instant, Instant)]) -> Span {
    let inside = open.iter().map(|(from, to)| {
        let millis = ((*to).min(gap.to) - (*from).max(gap.from)).millis();
        millis.max(0)
    });
    Span::from_millis(inside.sum())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn hour(hour: i64) -> Instant {
        Instant::from_millis(0) + Span::from_minutes(hour * 60)
    }

    fn times(most: i64) -> impl Strategy<Value = Vec<(Instant, Instant)>> {
        prop::collection::vec((0..most, 0..30_i64), 0..12).prop_map(|times| {
            times.into_iter().map(|(from, long)| (hour(from), hour(from + long))).collect()
        })
    }

    proptest! {
        /// Whatever is known, no gap reaches into it; each gap is long and holds open hours; and
        /// between two gaps something is known.
        #[test]
        fn a_gap_is_silent_long_and_open(known in times(400), open in times(400)) {
            let gaps = find(&known, &open);
            for gap in &gaps {
                prop_assert!(gap.to - gap.from > LONGER_THAN);
                let touched = known.iter().any(|(from, to)| *from < gap.to && *to > gap.from);
                prop_assert!(!touched, "{gap:?}");
                let hours = (gap.from.millis()..gap.to.millis()).step_by(3_600_000);
                let is_open = |at: &i64| {
                    open.iter().any(|(from, to)| from.millis() <= *at && *at < to.millis())
                };
                prop_assert!(hours.filter(is_open).count() >= 4, "{gap:?}");
            }
            for pair in gaps.windows(2) {
                prop_assert!(pair[0].to <= pair[1].from);
            }
        }

        /// A gap that was explained is asked about no longer, and no other comes or goes.
        #[test]
        fn an_explained_gap_is_gone(known in times(400), open in times(400), which in 0..12_usize) {
            let gaps = find(&known, &open);
            if let Some(gap) = gaps.get(which) {
                let mut more = known.clone();
                more.push((gap.from, gap.to));
                let mut left = gaps.clone();
                left.remove(which);
                prop_assert_eq!(find(&more, &open), left);
            }
        }

        /// More that is known makes no silence longer; less that is open makes no gap.
        #[test]
        fn more_entries_make_no_gap(known in times(400), more in times(400), open in times(400)) {
            let both = [known.clone(), more].concat();
            let before = find(&known, &open);
            let first = known.iter().map(|known| known.0).min();
            let last = known.iter().map(|known| known.1).max();
            for gap in find(&both, &open) {
                let inside = first.is_some_and(|at| at <= gap.from) && last.is_some_and(|at| gap.to <= at);
                let held = before.iter().any(|old| old.from <= gap.from && gap.to <= old.to);
                prop_assert!(!inside || held, "{gap:?}");
            }
            prop_assert!(find(&known, &[]).is_empty());
        }

        /// The order in which things were written does not matter.
        #[test]
        fn order_does_not_matter(known in times(400), open in times(400)) {
            let turned: Vec<_> = known.iter().rev().copied().collect();
            prop_assert_eq!(find(&turned, &open), find(&known, &open));
        }
    }

    #[test]
    fn a_day_and_four_open_hours_are_the_limits() {
        let check = |from, to, open: &[(i64, i64)], gaps: usize| {
            let open: Vec<_> = open.iter().map(|(from, to)| (hour(*from), hour(*to))).collect();
            let known = [(hour(from), hour(from)), (hour(to), hour(to))];
            assert_eq!(find(&known, &open).len(), gaps, "{from} to {to}");
        };
        check(0, 24, &[(0, 24)], 0);
        check(0, 25, &[(0, 24)], 1);
        check(0, 30, &[(4, 7)], 0);
        check(0, 30, &[(4, 8)], 1);
        check(0, 30, &[(4, 7), (6, 8), (5, 6)], 1);
    }
}
