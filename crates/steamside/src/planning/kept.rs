//! The day plan that was made last, kept for as long as it is the plan of this book and this slot:
//! making one takes most of a second, and several screens ask for the same.

use super::agreed::{self, Fault, Standing};
use super::today::{self, SLOT_MIN, Today};
use jiff::tz::TimeZone;
use logbook::book::BookError;
use logbook::view::View;
use measure::{Instant, Span};
use std::sync::{Arc, Mutex, PoisonError};

/// A screen that nobody works at may show a plan that is this old.
const OLD: Span = Span::from_minutes(1);

/// A day with its plan, or why there is none.
pub struct Planned {
    /// The rest of the day and its plan; `None`: nothing is left of the day.
    pub day: Option<(Today, Standing)>,
    /// Why there is no plan, where the book holds figures that no plan can be made of.
    pub fault: Option<String>,
    /// Last fact of the book that it was made from.
    pub seq: u64,
    made: Instant,
}

/// How new a plan has to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Want {
    /// Made from the book as it stands, in this slot of five minutes.
    Exact,
    /// The same, or made within the last minute.
    Recent,
}

/// The plan made last.
#[derive(Default)]
pub struct Kept {
    last: Mutex<Option<Arc<Planned>>>,
}

impl Kept {
    /// The plan of the day: the kept one where it will do, otherwise a new one. Whoever asks while
    /// one is being made waits for it instead of making another.
    ///
    /// # Errors
    /// The book could not be read.
    pub fn plan(
        &self,
        view: &View<'_>,
        (now, zone): (Instant, &TimeZone),
        want: Want,
    ) -> Result<Arc<Planned>, BookError> {
        let seq = view.last_seq()?;
        // A kept plan is whole, whatever became of a thread that held the lock.
        let mut last = self.last.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(kept) = last.as_ref().filter(|kept| kept.will_do(seq, now, want)) {
            return Ok(Arc::clone(kept));
        }
        let (mut day, mut fault) = (None, None);
        if let Some(today) = today::today(view, now, zone)? {
            match agreed::standing(view, today, view.accepted_plan()?.as_ref()) {
                Ok(found) => day = Some(found),
                Err(Fault::Day(why)) => fault = Some(why.to_string()),
                Err(Fault::Book(error)) => return Err(error),
            }
        }
        let planned = Arc::new(Planned { day, fault, seq, made: now });
        *last = Some(Arc::clone(&planned));
        Ok(planned)
    }
}

impl Planned {
    fn will_do(&self, seq: u64, now: Instant, want: Want) -> bool {
        let slot = |at: Instant| at.millis().div_euclid(i64::from(SLOT_MIN) * 60_000);
        let exact = self.seq == seq && slot(self.made) == slot(now);
        let recent = self.made <= now && now - self.made < OLD;
        exact || (want == Want::Recent && recent)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Fact and minute of a plan made at fact 7 in minute 6: is it made again?
    #[test]
    fn a_plan_is_kept_for_its_book_and_its_slot() {
        let at = |tenths: i64| Instant::from_millis(tenths * 6_000);
        let kept = Planned { day: None, fault: None, seq: 7, made: at(60) };
        let check = |seq, tenths, exact, recent| {
            assert_eq!(kept.will_do(seq, at(tenths), Want::Exact), exact, "{seq} {tenths}");
            assert_eq!(kept.will_do(seq, at(tenths), Want::Recent), recent, "{seq} {tenths}");
        };
        check(7, 60, true, true);
        check(7, 99, true, true);
        check(7, 100, false, false);
        check(8, 69, false, true);
        check(8, 70, false, false);
        check(8, 55, false, false);
    }
}
