//! The least and the most of many values, several at a time.

/// Values looked at side by side: enough that no comparison waits for the one before.
const LANES: usize = 8;

/// Least and most of the values, which must be numbers; infinity and less than everything where
/// there are none.
#[inline]
pub(crate) fn extent(values: &[f64]) -> (f64, f64) {
    let (groups, rest) = values.as_chunks::<LANES>();
    let (mut least, mut most) = ([f64::INFINITY; LANES], [f64::NEG_INFINITY; LANES]);
    for group in groups {
        for lane in 0..LANES {
            least[lane] = lesser(least[lane], group[lane]);
            most[lane] = greater(most[lane], group[lane]);
        }
    }
    let all = (least.iter().chain(rest), most.iter().chain(rest));
    (all.0.copied().fold(f64::INFINITY, lesser), all.1.copied().fold(f64::NEG_INFINITY, greater))
}

/// Is every value a number, and none of them infinite? Nothing but such values gives zero when it is
/// taken no times.
#[inline]
pub(crate) fn all_finite(values: &[f64]) -> bool {
    let (groups, rest) = values.as_chunks::<LANES>();
    let mut sums = [0.0; LANES];
    for group in groups {
        for lane in 0..LANES {
            sums[lane] += group[lane] * 0.0;
        }
    }
    sums.iter().chain(rest).all(|value| value.is_finite())
}

/// The least and the greatest step from one value to the next, as [`extent`] gives them.
#[inline]
pub(crate) fn steps(values: &[f64]) -> (f64, f64) {
    let later = values.get(1..).unwrap_or_default();
    let (groups, rest) = later.as_chunks::<LANES>();
    let (mut least, mut most) = ([f64::INFINITY; LANES], [f64::NEG_INFINITY; LANES]);
    for (later, earlier) in groups.iter().zip(values.as_chunks::<LANES>().0) {
        for lane in 0..LANES {
            let step = later[lane] - earlier[lane];
            least[lane] = lesser(least[lane], step);
            most[lane] = greater(most[lane], step);
        }
    }
    let rest = values[values.len().saturating_sub(rest.len() + 1)..].windows(2);
    let rest = || rest.clone().map(|pair| pair[1] - pair[0]);
    (
        least.into_iter().chain(rest()).fold(f64::INFINITY, lesser),
        most.into_iter().chain(rest()).fold(f64::NEG_INFINITY, greater),
    )
}

/// Plain comparing is one instruction; what the library does for not-a-number costs several.
#[inline]
pub(crate) fn lesser(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

#[inline]
pub(crate) fn greater(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The library is the yardstick.
        #[test]
        fn gives_what_one_after_the_other_gives(values in proptest::collection::vec(-9.0..9.0, 0..40)) {
            let least = values.iter().copied().fold(f64::INFINITY, f64::min);
            let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            prop_assert_eq!(extent(&values), (least, most));
        }

        #[test]
        fn steps_are_those_of_pairs(values in proptest::collection::vec(-9.0..9.0, 0..40)) {
            let pairs = || values.windows(2).map(|pair| pair[1] - pair[0]);
            let least = pairs().fold(f64::INFINITY, f64::min);
            let most = pairs().fold(f64::NEG_INFINITY, f64::max);
            prop_assert_eq!(steps(&values), (least, most));
        }

        #[test]
        fn one_that_is_no_number_is_found(
            mut values in proptest::collection::vec(-1e300..1e300, 1..40), at: proptest::sample::Index,
            bad in prop_oneof![Just(f64::NAN), Just(f64::INFINITY), Just(f64::NEG_INFINITY)],
        ) {
            prop_assert!(all_finite(&values));
            *at.get_mut(&mut values) = bad;
            prop_assert!(!all_finite(&values));
        }
    }
}
