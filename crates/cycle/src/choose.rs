//! Which cycle for this load, and why not the others.
//!
//! Every programme of the machine is asked the same questions; what speaks against it is kept, all
//! of it. Of those that nothing speaks against, the one that fits best comes first. No words here:
//! each reason is one of a closed list, which a page says in the reader's language.
//!
//! A cycle without drying is never proposed for anything pouched or for the shelf.
//!
//! ```
//! use cycle::choose::{Air, Asked, Dry, Need, Offer, Why, choose};
//! let fast = Offer {
//!     word: "fast".parse()?, set_c: 134.0, hold_s: 210, total_min: 14, dry: Dry::None,
//!     for_pouches: true, for_hollow: true, air: Air::Vacuum, most_g: Some(2_000), advised_g: None,
//! };
//! let short = Offer {
//!     word: "short".parse()?, total_min: 24, dry: Dry::Short(4), advised_g: Some(700),
//!     ..fast.clone()
//! };
//! let full = Offer {
//!     word: "full".parse()?, total_min: 38, dry: Dry::Full(15), advised_g: Some(1_600),
//!     ..fast.clone()
//! };
//! let asked = Asked {
//!     contents: load::Contents::Pouched, wrapped: true, grams: 900, heaviest_g: 80,
//!     most_c: Some(138), need: Need::Shelf, within_min: None, unpouched_allowed: true,
//! };
//! let choice = choose(&[fast, short, full], &asked);
//! assert_eq!((choice.ranked[0].offer, choice.ranked[0].why), (2, Why::LongerDryingForWeight));
//! assert_eq!(choice.refused.len(), 2);
//! # Ok::<(), load::NoPlainWord>(())
//! ```

mod change;
#[cfg(test)]
mod tests;

pub use change::Change;

use crate::figures::Rules;
use load::implement::stands_cycle;
use load::{Contents, Programme};

/// How a cycle gets the air out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Air {
    /// By vacuum, or by pulses of steam and vacuum.
    Vacuum,
    /// Steam pushes it out downwards.
    Gravity,
    /// Nobody said; judged as gravity.
    NotKnown,
}

/// How a cycle dries, with its minutes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Dry {
    /// Not at all.
    None,
    /// For a short time.
    Short(u32),
    /// As long as it can.
    Full(u32),
}

impl Dry {
    /// Minutes of drying; 0 also where a drying of no minutes was set.
    #[must_use]
    pub const fn minutes(self) -> u32 {
        match self {
            Self::None => 0,
            Self::Short(minutes) | Self::Full(minutes) => minutes,
        }
    }

    const fn dries(self) -> bool {
        self.minutes() > 0
    }
}

/// A programme of the machine.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// Its word.
    pub word: Programme,
    /// Temperature that is set, °C.
    pub set_c: f64,
    /// Time at temperature that is set, s.
    pub hold_s: u32,
    /// From start to done, min, from a warm machine.
    pub total_min: u32,
    /// How it dries.
    pub dry: Dry,
    /// Does its maker mean it for pouches?
    pub for_pouches: bool,
    /// Does its maker mean it for hollow implements?
    pub for_hollow: bool,
    /// How it gets the air out.
    pub air: Air,
    /// The maker's limit, grams of what is on the trays; `None` where it is not known. What must
    /// come out dry keeps to the limits of those that dry longer then.
    pub most_g: Option<u32>,
    /// What comes out dry, grams ([`crate::limit::advice`]); `None` where nothing is known: what
    /// is too much for a longer drying is too much for this one too.
    pub advised_g: Option<u32>,
}

/// What a load is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Need {
    /// Kept for later.
    Shelf,
    /// Used as soon as it is cool.
    Now,
}

/// A load that wants a cycle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Asked {
    /// The most demanding thing in it.
    pub contents: Contents,
    /// Is it in pouches? Counts for hollow implements; [`Contents`] says it for the others, and
    /// what nobody named counts as pouched.
    pub wrapped: bool,
    /// Pieces and pouches, without trays, grams.
    pub grams: u32,
    /// The heaviest piece, grams.
    pub heaviest_g: u32,
    /// Lowest heat limit of all pieces, °C; `None` where none has one.
    pub most_c: Option<u32>,
    /// What it is for.
    pub need: Need,
    /// Wanted within so many minutes from now.
    pub within_min: Option<u32>,
    /// Do place and manual allow an unpouched set for use at once?
    pub unpouched_allowed: bool,
}

/// What speaks against a programme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum No {
    /// It does not dry, and pouches must be dry.
    NoDryingForPouches,
    /// It does not dry, and what goes on the shelf must be dry.
    NoDryingForShelf,
    /// Heavier than the maker allows.
    TooHeavyForMaker,
    /// Heavier than what comes out dry.
    TooHeavyToDry,
    /// Hotter, with the band above what is set, than one of the pieces stands
    /// ([`load::implement::stands_cycle`]).
    TooHot,
    /// Its maker does not mean it for pouches.
    NotForPouches,
    /// Its maker does not mean it for hollow implements.
    NotForHollow,
    /// Hollow implements, and no vacuum gets the air out of them.
    GravityHollow,
    /// Pouches, no vacuum, and not the times of CDC 2008, table 7: 121 °C for 30 min or 132 °C for
    /// 15 min.
    GravityPouchTimesNotMet,
    /// Cooler or shorter than what is published for anything: 134 °C for 180 s, 132 °C for 240 s,
    /// 126 °C for 600 s, 121 °C for 900 s, and nothing below ([`crate::figures::Rules::floor_s`];
    /// rows `csc-134` to `csc-121` of the reference).
    BelowPublishedTimes,
    /// Done too late.
    NotReadyInTime,
}

/// Why a programme is proposed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Why {
    /// Unpouched and used at once: the quickest.
    QuickestForNow,
    /// The quickest that will have it dry.
    QuickestThatDries,
    /// A quicker one dries too little for this weight.
    LongerDryingForWeight,
    /// A heavy piece holds much water in one place: the longest drying.
    LongerDryingForHeavyPiece,
    /// Nobody knows yet what comes out dry, and no other programme dries longer.
    LongestDryingNothingKnown,
    /// Nobody knows yet what comes out dry in it, and another programme dries longer.
    DryingNotKnown,
}

/// A programme that can be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Proposed {
    /// Its place among the offers.
    pub offer: usize,
    /// Why it stands where it stands.
    pub why: Why,
}

/// A programme that cannot be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refused {
    /// Its place among the offers.
    pub offer: usize,
    /// All that speaks against it; never empty.
    pub reasons: Vec<No>,
}

/// The answer.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Choice {
    /// What can be, the best first.
    pub ranked: Vec<Proposed>,
    /// What cannot be.
    pub refused: Vec<Refused>,
    /// What would make one fit; empty where one fits.
    pub changes: Vec<Change>,
}

/// A piece from this mass on wants the longest drying, grams (assumption).
pub const HEAVY_PIECE_G: u32 = 250;

/// Gravity times for wrapped implements: °C and s (CDC 2008, table 7; seen, rows `cdc7-grav-wrap`
/// and `cdc7-grav-wrap-132` of the reference).
const GRAVITY_WRAPPED: [(f64, u32); 2] = [(121.0, 1_800), (132.0, 900)];

impl Asked {
    fn pouched(&self) -> bool {
        match self.contents {
            Contents::Pouched | Contents::Unknown => true,
            Contents::Unwrapped => false,
            Contents::Hollow => self.wrapped,
        }
    }

    fn hollow(&self) -> bool {
        matches!(self.contents, Contents::Hollow | Contents::Unknown)
    }

    /// Must it come out dry?
    fn dry(&self) -> bool {
        self.pouched() || self.need == Need::Shelf
    }
}

/// Is the hold what is published for steam at this temperature, whatever is in it? The rows are
/// those that a record is judged by; below the coolest of them nothing is published that counts.
fn published(offer: &Offer) -> bool {
    Rules::default().floor_s(offer.set_c).is_some_and(|least| f64::from(offer.hold_s) >= least)
}

/// The maker's limit and what comes out dry, grams, as far as they bind this load. Where nothing is
/// known, the limits of the programmes that dry longer bind: less drying dries no more.
fn limits(offers: &[Offer], at: usize, asked: &Asked) -> [Option<u32>; 2] {
    let offer = &offers[at];
    if !asked.dry() || !offer.dry.dries() {
        return [offer.most_g, None];
    }
    let bound = |of: fn(&Offer) -> Option<u32>| {
        let longer = offers.iter().filter(|other| other.dry.minutes() > offer.dry.minutes());
        of(offer).or_else(|| longer.filter_map(of).min())
    };
    [bound(|offer| offer.most_g), bound(|offer| offer.advised_g)]
}

/// All that speaks against this programme for this load.
fn against(offers: &[Offer], at: usize, asked: &Asked) -> Vec<No> {
    let offer = &offers[at];
    let [most_g, dry_g] = limits(offers, at, asked);
    let (pouched, hollow) = (asked.pouched(), asked.hollow());
    let no_vacuum = offer.air != Air::Vacuum;
    let over = |most: Option<u32>| most.is_some_and(|most| asked.grams > most);
    let times = GRAVITY_WRAPPED.iter().any(|&(c, s)| offer.set_c >= c && offer.hold_s >= s);
    let reasons = [
        (No::NoDryingForPouches, pouched && !offer.dry.dries()),
        (No::NoDryingForShelf, asked.need == Need::Shelf && !offer.dry.dries()),
        (No::TooHeavyForMaker, over(most_g)),
        (No::TooHeavyToDry, over(dry_g)),
        (No::TooHot, asked.most_c.is_some_and(|most| !stands_cycle(most, offer.set_c))),
        (No::NotForPouches, pouched && !offer.for_pouches),
        (No::NotForHollow, hollow && !offer.for_hollow),
        (No::GravityHollow, hollow && no_vacuum),
        (No::GravityPouchTimesNotMet, pouched && no_vacuum && !times),
        (No::BelowPublishedTimes, !published(offer)),
        (No::NotReadyInTime, asked.within_min.is_some_and(|within| offer.total_min > within)),
    ];
    reasons.into_iter().filter(|(_, speaks)| *speaks).map(|(no, _)| no).collect()
}

/// Which programme for this load.
#[must_use]
pub fn choose(offers: &[Offer], asked: &Asked) -> Choice {
    let mut choice = weigh(offers, asked);
    if choice.ranked.is_empty() {
        choice.changes = change::changes(offers, asked, &choice.refused);
    }
    choice
}

/// The same without a word on what would make one fit.
fn weigh(offers: &[Offer], asked: &Asked) -> Choice {
    let (mut can, mut refused) = (Vec::new(), Vec::new());
    for offer in 0..offers.len() {
        let reasons = against(offers, offer, asked);
        if reasons.is_empty() {
            can.push(offer);
        } else {
            refused.push(Refused { offer, reasons });
        }
    }
    let heavy_piece = asked.dry() && asked.heaviest_g >= HEAVY_PIECE_G;
    let known = |at: usize| offers[at].advised_g.is_some();
    let longest = |at: usize| {
        let minutes = offers[at].dry.minutes();
        offers.iter().all(|other| other.dry.minutes() <= minutes)
    };
    // The quickest first, unless only long drying is known to help.
    can.sort_by_key(|&at| {
        let offer = &offers[at];
        let longest = u32::MAX - offer.dry.minutes();
        if !asked.dry() || known(at) && !heavy_piece {
            (0, offer.total_min, longest)
        } else {
            (1, longest, offer.total_min)
        }
    });
    let ranked = can.into_iter().map(|at| {
        let quicker_dries_less = refused.iter().any(|refused: &Refused| {
            let weight = |no: &No| matches!(no, No::TooHeavyToDry | No::TooHeavyForMaker);
            offers[refused.offer].dry.minutes() < offers[at].dry.minutes()
                && refused.reasons.iter().all(weight)
        });
        let why = if !asked.dry() {
            Why::QuickestForNow
        } else if heavy_piece {
            Why::LongerDryingForHeavyPiece
        } else if !known(at) && longest(at) {
            Why::LongestDryingNothingKnown
        } else if !known(at) {
            Why::DryingNotKnown
        } else if quicker_dries_less {
            Why::LongerDryingForWeight
        } else {
            Why::QuickestThatDries
        };
        Proposed { offer: at, why }
    });
    Choice { ranked: ranked.collect(), refused, changes: Vec::new() }
}
