//! Spore tests: what their readings say, what a failed one reaches, and the way on from there.
//!
//! The order after a failed test (machine out of use, test again at once in the same cycle, look at
//! all other results since the last good test, back in use after a good repeat, out until repaired
//! and three good tests in a row after a bad one, recall back to the last good test) is that of
//! CDC/MMWR 52(RR-17) 2003, "Sterilization monitoring", and CDC/HICPAC 2008, Table 12.

use crate::recall::Since;
use measure::{Instant, RunId};

/// So many good tests in a row, in an empty chamber, after a repeat that failed and the repair
/// (CDC/MMWR 52(RR-17) 2003).
pub const IN_A_ROW: usize = 3;

/// One reading of a test.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reading {
    /// Spores grew: the steam did not reach them.
    pub grew: bool,
    /// The control of the same lot grew, as it has to; `None`: there was none, or nobody looked.
    pub control_grew: Option<bool>,
}

/// What a test says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Says {
    /// No answer yet.
    Waiting,
    /// No spores grew and its control did: it speaks for its run, and for no other.
    Good,
    /// Spores grew in at least one reading.
    Grew,
    /// Its control did not grow or is missing, or it was lost: it says nothing.
    Nothing,
}

/// What the readings of one test say together, the safer side first: a reading in which spores grew
/// stands, and a control that did not grow once voids the test.
///
/// ```
/// use release::spores::{says, Reading, Says};
/// let good = Reading { grew: false, control_grew: Some(true) };
/// let no_control = Reading { grew: false, control_grew: None };
/// assert_eq!(says(&[good], false), Says::Good);
/// assert_eq!(says(&[no_control], false), Says::Nothing);
/// assert_eq!(says(&[Reading { grew: true, control_grew: None }, good], false), Says::Grew);
/// ```
#[must_use]
pub fn says(readings: &[Reading], lost: bool) -> Says {
    if readings.iter().any(|reading| reading.grew) {
        return Says::Grew;
    }
    if lost || readings.iter().any(|reading| reading.control_grew == Some(false)) {
        return Says::Nothing;
    }
    match readings.last() {
        None => Says::Waiting,
        Some(reading) if reading.control_grew == Some(true) => Says::Good,
        Some(_) => Says::Nothing,
    }
}

/// One test of a machine, as the way on looks at it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Test {
    /// When it was placed.
    pub placed: Instant,
    /// The run that it went through, where that is known.
    pub run: Option<RunId>,
    /// When that run was started, where it is known and its numbers were not missed.
    pub started: Option<Instant>,
    /// When it was first read.
    pub answered: Option<Instant>,
    /// What it says.
    pub says: Says,
}

/// From where a recall reaches after the test at `failed` in `tests`, which are of one machine and
/// in the order of their placing: from the run after the last good one that was placed before it.
#[must_use]
pub fn since(tests: &[Test], failed: usize) -> Since {
    let before = tests.get(..failed).unwrap_or_default();
    // A good test speaks for its run. One of which nobody said through which run it went speaks for
    // none, and the recall reaches further.
    let good = before.iter().rev().filter(|test| test.says == Says::Good);
    match good.filter_map(|test| test.run).next() {
        Some(run) => Since::AfterGoodTest(run),
        None => Since::Beginning,
    }
}

/// What comes next after a failed test.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Next {
    /// Test again at once, in the same cycle.
    Repeat,
    /// The repeat is placed; its answer is waited for.
    Wait,
    /// The repeat was good: where all other results are good as well, a person in charge may put
    /// the machine back into use.
    MayGoBack,
    /// The repeat failed: out of use until it is repaired and so many more tests in a row are good.
    Stays {
        /// Good ones still missing.
        missing: usize,
    },
}

/// What comes next after the test at `failed` in `tests`, which are of one machine and in the order
/// of their placing. Only a test whose run was started after the failed one was read is a repeat.
#[must_use]
pub fn next(tests: &[Test], failed: usize) -> Next {
    let Some(first) = tests.get(failed) else { return Next::Repeat };
    let from = first.answered.unwrap_or(first.placed);
    let repeats: Vec<&Test> =
        tests.iter().skip(failed + 1).filter(|test| test.started >= Some(from)).collect();
    let again = repeats.iter().rposition(|test| test.says == Says::Grew);
    let after = match again {
        Some(last) => repeats.get(last + 1..).unwrap_or_default(),
        None => repeats.as_slice(),
    };
    let mut good = 0;
    for test in after {
        match test.says {
            Says::Good => good += 1,
            // A test that says nothing breaks the row of good ones; before the first it is only
            // one that has to be done again.
            Says::Nothing => good = 0,
            Says::Waiting | Says::Grew => {}
        }
    }
    let needed = if again.is_some() { IN_A_ROW } else { 1 };
    if good >= needed {
        return Next::MayGoBack;
    }
    match (again, after.iter().any(|test| test.says == Says::Waiting)) {
        (None, true) => Next::Wait,
        (None, false) => Next::Repeat,
        (Some(_), _) => Next::Stays { missing: needed - good },
    }
}

/// May clients be written to? Only where the repeat failed too; or where the local rule counts any
/// growth as a failure, or the health authority asks, which somebody has to say.
#[must_use]
pub fn letters_open(next: Next, asked_for: bool) -> bool {
    asked_for || matches!(next, Next::Stays { .. })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn test(minute: i64, says: Says) -> Test {
        let placed = Instant::from_millis(minute * 60_000);
        let answered = (says != Says::Waiting).then(|| Instant::from_millis(minute * 60_000 + 1));
        Test { placed, run: None, started: Some(placed), answered, says }
    }

    fn row(text: &str) -> Vec<Test> {
        let each = text.chars().zip(1..).map(|(letter, minute)| {
            let says = match letter {
                'g' => Says::Good,
                'x' => Says::Grew,
                'n' => Says::Nothing,
                _ => Says::Waiting,
            };
            test(minute, says)
        });
        each.collect()
    }

    /// CDC/MMWR 52(RR-17) 2003: a good repeat puts it back; a bad one keeps it out until three in a
    /// row are good.
    #[test]
    fn the_way_on_after_a_failed_test() {
        let check = |tests: &str, failed: usize, expected: Next| {
            assert_eq!(next(&row(tests), failed), expected, "{tests} from {failed}");
        };
        check("gx", 1, Next::Repeat);
        check("gx.", 1, Next::Wait);
        check("gxn", 1, Next::Repeat);
        check("gxg", 1, Next::MayGoBack);
        check("gxng", 1, Next::MayGoBack);
        check("gxx", 1, Next::Stays { missing: 3 });
        check("gxxgg", 1, Next::Stays { missing: 1 });
        check("gxxgg.", 1, Next::Stays { missing: 1 });
        check("gxxggg", 1, Next::MayGoBack);
        check("gxxgngg", 1, Next::Stays { missing: 1 });
        check("gxxgxggg", 1, Next::MayGoBack);
        check("gxxgx", 1, Next::Stays { missing: 3 });
    }

    /// A test that lay in its machine before the failed one was read, or of which nobody says in which
    /// run it lay, is no repeat.
    #[test]
    fn only_a_run_that_began_after_the_reading_is_a_repeat() {
        let mut tests = row("gxg");
        tests[1].answered = Some(Instant::from_millis(10 * 60_000));
        assert_eq!(next(&tests, 1), Next::Repeat);
        let mut tests = row("gxg");
        tests[2].started = None;
        assert_eq!(next(&tests, 1), Next::Repeat);
    }

    #[test]
    fn a_recall_reaches_back_to_the_last_good_test() {
        let run = RunId::from_bytes([7; 16]);
        let mut tests = row("gngx");
        assert_eq!(since(&tests, 3), Since::Beginning, "nobody said through which run they went");
        tests[2].run = Some(run);
        assert_eq!(since(&tests, 3), Since::AfterGoodTest(run));
        assert_eq!(since(&row("nxx"), 2), Since::Beginning);
        assert_eq!(since(&row("x"), 0), Since::Beginning);
    }

    #[test]
    fn letters_wait_for_the_repeat() {
        assert!(!letters_open(Next::Repeat, false));
        assert!(!letters_open(Next::Wait, false));
        assert!(letters_open(Next::Wait, true));
        assert!(letters_open(Next::Stays { missing: 3 }, false));
    }
}
