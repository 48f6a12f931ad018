//! What would make a programme fit where none does.

use super::{Asked, Need, No, Offer, Refused, against, limits, weigh};
use load::Contents;

/// A change of the load, or of what is asked of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Change {
    /// Split it: at most so many grams go into one run of this programme.
    Split {
        /// The programme's place among the offers.
        offer: usize,
        /// Grams of pieces and pouches, above 0.
        grams: u32,
    },
    /// Run it unpouched in this programme and use it at once.
    UnpouchedNow {
        /// The programme's place among the offers.
        offer: usize,
    },
    /// Take out the pieces that stand less heat than this programme's.
    TakeOutHeatLimited {
        /// The programme's place among the offers.
        offer: usize,
    },
    /// Wait: this programme is done in so many minutes.
    Later {
        /// The programme's place among the offers.
        offer: usize,
        /// From now on.
        minutes: u32,
    },
}

/// One of each kind at most, the least trouble first: split, take out, wait, unpouched.
pub(super) fn changes(offers: &[Offer], asked: &Asked, refused: &[Refused]) -> Vec<Change> {
    // Only where the one change takes away all that speaks against it.
    let only = |fits: fn(&No) -> bool| {
        let all = refused.iter().filter(move |no| no.reasons.iter().all(fits));
        all.map(|no| no.offer)
    };
    let grams = |offer: &usize| {
        limits(offers, *offer, asked).into_iter().flatten().min().filter(|grams| *grams > 0)
    };
    let split = only(|no| matches!(no, No::TooHeavyForMaker | No::TooHeavyToDry))
        .filter_map(|offer| Some((grams(&offer)?, offer)))
        .filter(|(grams, offer)| {
            against(offers, *offer, &Asked { grams: *grams, ..*asked }).is_empty()
        })
        .max_by_key(|(grams, offer)| (*grams, offers[*offer].dry.minutes(), usize::MAX - offer))
        .map(|(grams, offer)| Change::Split { offer, grams });
    let cooler = only(|no| *no == No::TooHot)
        .min_by_key(|offer| offers[*offer].total_min)
        .map(|offer| Change::TakeOutHeatLimited { offer });
    let later = only(|no| *no == No::NotReadyInTime)
        .min_by_key(|offer| offers[*offer].total_min)
        .map(|offer| Change::Later { offer, minutes: offers[offer].total_min });
    [split, cooler, later, unpouched(offers, asked)].into_iter().flatten().collect()
}

/// Only for what is needed now, and only solid things: nobody knows what is in a load that nobody
/// named.
fn unpouched(offers: &[Offer], asked: &Asked) -> Option<Change> {
    let pouched_solid = asked.contents == Contents::Pouched;
    if asked.need != Need::Now || !asked.unpouched_allowed || !pouched_solid {
        return None;
    }
    let open = Asked { contents: Contents::Unwrapped, wrapped: false, ..*asked };
    let first = weigh(offers, &open).ranked.first().copied()?;
    Some(Change::UnpouchedNow { offer: first.offer })
}
