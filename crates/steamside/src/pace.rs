//! How the clock of a book runs. A salon's own is the true one; a practice book's may run up to
//! thirty times as fast, so that a lesson does not wait for a machine.
//!
//! What a hand needs (taking back, a screen that is cut off) is counted in true time; everything
//! that the book, a machine or a label says is the time that the clock shows.

use crate::clock;
use logbook::book::BookError;
use logbook::fact::BookKind;
use logbook::view::View;
use measure::{Instant, Span};
use std::sync::{PoisonError, RwLock};

/// At the true moment `real` the clock showed `shown`; from then on it runs `times` as fast.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pace {
    real: Instant,
    shown: Instant,
    times: u32,
}

impl Pace {
    /// The true clock.
    pub const TRUE: Self =
        Self { real: Instant::from_millis(0), shown: Instant::from_millis(0), times: 1 };

    /// A clock that was set; one that runs less than once as fast runs once as fast.
    pub fn new(real: Instant, shown: Instant, times: u32) -> Self {
        Self { real, shown, times: times.max(1) }
    }

    /// How many times as fast as the true clock.
    pub const fn times(self) -> u32 {
        self.times
    }

    /// What it shows at a true moment. Before it was set it stands still: it never runs back.
    pub fn at(self, real: Instant) -> Instant {
        let gone = (real - self.real).millis().max(0);
        self.shown + Span::from_millis(gone.saturating_mul(self.times.into()))
    }

    /// True time between two moments that it showed. Before it was set last it counts as the true
    /// clock, so that nothing stays open for longer than a hand was promised.
    pub fn true_between(self, then: Instant, now: Instant) -> Span {
        let since = then.max(self.shown);
        let fast = (now - since).millis() / i64::from(self.times);
        Span::from_millis(fast + (since - then).millis())
    }
}

/// How the clock of the book runs that is looked at. Only a practice book's is ever set.
pub fn of(view: &View<'_>) -> Result<Pace, BookError> {
    if view.salon()?.book != BookKind::Practice {
        return Ok(Pace::TRUE);
    }
    let set = view.practice_clock()?;
    Ok(set.map_or(Pace::TRUE, |(real, shown, times)| Pace::new(real, shown, times)))
}

/// What the clock of the book shows now that is looked at.
pub fn now(view: &View<'_>) -> Result<Instant, BookError> {
    Ok(of(view)?.at(clock::now()))
}

/// The clock of an opened book, kept beside it for what has to know the time before it looks.
#[derive(Debug, Default)]
pub struct Clock(RwLock<Option<Pace>>);

impl Clock {
    /// What it shows now.
    pub fn now(&self) -> Instant {
        self.pace().at(clock::now())
    }

    /// How it runs.
    pub fn pace(&self) -> Pace {
        // A pace is whole or not there, whatever became of a thread that held the lock.
        self.0.read().unwrap_or_else(PoisonError::into_inner).unwrap_or(Pace::TRUE)
    }

    /// Sets it, as the book says.
    pub fn set(&self, pace: Pace) {
        *self.0.write().unwrap_or_else(PoisonError::into_inner) = Some(pace);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The true clock is asked only by what has to do with true time: the pace itself, a book that
    /// begins, a file that lies still. Everything else asks `App::now` or `pace::now`, or a practice
    /// book would live in two times.
    #[test]
    fn the_true_clock_is_asked_in_few_places() {
        const MAY: [&str; 11] = [
            "pace.rs",
            "clock.rs",
            "commands/serve.rs",
            // Certificates and the code that lets a screen in are good in true time.
            "commands/serve/safe.rs",
            "door.rs",
            "demo/mod.rs",
            "heartbeat.rs",
            "intake/watch.rs",
            "practice/mod.rs",
            // A page that closes itself does so in true time.
            "web/folder.rs",
            "web/practice.rs",
        ];
        let home = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
        let (mut open, mut asked) = (vec![home.clone()], Vec::new());
        while let Some(folder) = open.pop() {
            for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
                let path = entry.path();
                let name = path.strip_prefix(&home).unwrap_or(&path).display().to_string();
                if path.is_dir() {
                    open.push(path);
                } else if !name.contains("tests")
                    && std::fs::read_to_string(&path).unwrap_or_default().contains("clock::now()")
                {
                    asked.push(name);
                }
            }
        }
        asked.retain(|name| !MAY.contains(&name.as_str()));
        assert_eq!(asked, [""; 0], "ask App::now or pace::now there");
    }

    const fn at(seconds: i64) -> Instant {
        Instant::from_millis(seconds * 1_000)
    }

    #[test]
    fn a_minute_at_thirty_times_is_half_an_hour_and_undo_stays_thirty_seconds() {
        let pace = Pace::new(at(1_000), at(5_000), 30);
        assert_eq!(pace.at(at(1_060)), at(5_000 + 1_800));
        assert_eq!(pace.true_between(at(5_000), at(5_900)), Span::from_seconds(30));
        assert_eq!(pace.true_between(at(4_990), at(5_300)), Span::from_seconds(20));
        assert_eq!(Pace::TRUE.at(at(77)), at(77));
        assert_eq!(Pace::TRUE.true_between(at(40), at(77)), Span::from_seconds(37));
    }

    proptest! {
        /// Whatever the paces and whenever they change: never back, never faster than thirty
        /// times, and no jump where it changes.
        #[test]
        fn the_shown_time_is_monotone_and_never_jumps(
            steps in prop::collection::vec((0_i64..100_000, 1_u32..=30), 1..40),
        ) {
            let (mut real, mut pace) = (at(1_700_000_000), Pace::TRUE);
            let mut shown = pace.at(real);
            for (gone, times) in steps {
                let before = real;
                real = real + Span::from_millis(gone);
                let now = pace.at(real);
                prop_assert!(now >= shown);
                prop_assert_eq!((now - shown).millis(), gone * i64::from(pace.times()));
                prop_assert_eq!(pace.true_between(shown, now), real - before);
                pace = Pace::new(real, now, times);
                prop_assert_eq!(pace.at(real), now);
                shown = now;
            }
        }

        /// A true clock that is set back (by hand, by the network) never turns the shown one back.
        #[test]
        fn it_stands_still_before_it_was_set(back in 0_i64..10_000_000, times in 1_u32..=30) {
            let pace = Pace::new(at(50_000), at(9_000), times);
            prop_assert_eq!(pace.at(at(50_000) - Span::from_millis(back)), at(9_000));
        }
    }
}
