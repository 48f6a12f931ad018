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

/// Plain comparing is one instruction; what the library does for not-a-number costs several.
#[inline]
fn lesser(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

#[inline]
fn greater(a: f64, b: f64) -> f64 {
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
    }
}
