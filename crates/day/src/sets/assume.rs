//! What happens on a day that nobody booked.

use crate::plan::Unusable;
use std::ops::{Index, IndexMut};

/// Something that makes a day another than the book said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Event {
    /// Somebody comes without an appointment and asks for what one of the day's appointments asks
    /// for. Counted per appointment.
    WalkIn,
    /// A client with an appointment does not come.
    NoShow,
    /// A client comes late; the whole appointment moves.
    Late,
    /// An appointment takes longer, and its sets come back later.
    Overrun,
    /// A run fails: its sets are washed and packed anew.
    Failed,
    /// A load that was dried comes out wet: its sets are washed and packed anew.
    Wet,
}

/// How many events there are.
pub const EVENTS: usize = 6;

impl Event {
    /// All of them.
    pub const ALL: [Self; EVENTS] =
        [Self::WalkIn, Self::NoShow, Self::Late, Self::Overrun, Self::Failed, Self::Wet];

    /// Its name in what the command prints.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::WalkIn => "walk-ins",
            Self::NoShow => "no-shows",
            Self::Late => "late",
            Self::Overrun => "overruns",
            Self::Failed => "failed",
            Self::Wet => "wet",
        }
    }
}

/// Where a rate comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Basis {
    /// Nobody counted: an assumption, ours or the reader's.
    Assumed,
    /// Counted in the salon's own book, out of so many.
    Counted(u32),
}

/// How often something happens.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rate {
    /// Out of all appointments or runs, 0 to 1.
    pub share: f64,
    /// Where that comes from.
    pub basis: Basis,
}

/// How days differ from what was booked. Each event falls by its own chance, apart from the others.
///
/// The defaults are assumptions: nobody measured them, and a salon's own counts are better.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Assumptions {
    rates: [Rate; EVENTS],
    /// A late client comes at most so much later, each slot as likely; minutes.
    pub late_most_min: u32,
    /// An appointment takes at most so much longer, each slot as likely; minutes.
    pub overrun_most_min: u32,
}

/// A delay of more than half a day is another appointment.
const MOST_DELAY_MIN: u32 = 720;

impl Default for Assumptions {
    fn default() -> Self {
        let rates = [0.10, 0.05, 0.15, 0.15, 0.01, 0.02];
        Self {
            rates: rates.map(|share| Rate { share, basis: Basis::Assumed }),
            late_most_min: 15,
            overrun_most_min: 15,
        }
    }
}

impl Index<Event> for Assumptions {
    type Output = Rate;
    fn index(&self, event: Event) -> &Rate {
        &self.rates[event as usize]
    }
}

impl IndexMut<Event> for Assumptions {
    fn index_mut(&mut self, event: Event) -> &mut Rate {
        &mut self.rates[event as usize]
    }
}

impl Assumptions {
    /// Every day as it was booked, every run good.
    pub const NOTHING: Self = Self {
        rates: [Rate { share: 0.0, basis: Basis::Assumed }; EVENTS],
        late_most_min: 0,
        overrun_most_min: 0,
    };

    /// The same days, but no run fails and no load is wet.
    #[must_use]
    pub fn every_run_good(mut self) -> Self {
        self[Event::Failed].share = 0.0;
        self[Event::Wet].share = 0.0;
        self
    }

    /// Whether every rate is a share and every delay one of a day.
    ///
    /// # Errors
    /// The first that is not, by its name.
    pub fn check(&self) -> Result<(), Unusable> {
        for event in Event::ALL {
            if !(0.0..=1.0).contains(&self[event].share) {
                return Err(Unusable(format!("{} must be a share from 0 to 1", event.name())));
            }
        }
        if self.late_most_min.max(self.overrun_most_min) > MOST_DELAY_MIN {
            return Err(Unusable(format!("a delay must be at most {MOST_DELAY_MIN} minutes")));
        }
        Ok(())
    }
}
