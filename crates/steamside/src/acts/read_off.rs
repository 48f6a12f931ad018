//! Read off: a machine without files, or a record that cannot tell. A person reads three numbers
//! off the display; the verdict says that it rests on a reading.

use super::Refusal;
use crate::intake::judge;
use logbook::book::Draft;
use logbook::view::View;
use measure::{Celsius, Kilopascal, RunId};

/// Longer than any programme holds, seconds: seconds were typed as minutes.
const LONGEST_S: f64 = 7_200.0;

/// Three numbers read off the display.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadOff {
    /// The run.
    pub run: RunId,
    /// Lowest temperature during the time at temperature.
    pub lowest: Celsius,
    /// Time at it, seconds.
    pub held_s: f64,
    /// Absolute pressure; `None` where the display shows none.
    pub pressure: Option<Kilopascal>,
}

/// Judges a run by what was read.
pub fn read_off(view: &View<'_>, draft: &mut Draft, read: ReadOff) -> Result<(), Refusal> {
    let run = view.run(read.run)?.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
    if run.undone {
        return Err(Refusal::rule("refused-no-such-run"));
    }
    // What the display shows is complete only when the run is.
    if run.unloaded.is_none() {
        return Err(Refusal::rule("refused-not-unloaded"));
    }
    if !(0.0..=LONGEST_S).contains(&read.held_s) {
        return Err(Refusal::rule_with("refused-field-misread", "field", "minutes"));
    }
    let machine =
        view.machine(run.machine)?.ok_or_else(|| Refusal::rule("refused-no-such-machine"))?;
    // A failed record is not talked back by a reading: only "cannot tell" may be read off.
    if run.outcome == Some(release::verdict::Outcome::NotLethal) {
        return Err(Refusal::rule("refused-no-talking-back"));
    }
    let judged = judge::reading(&run, &machine, read);
    super::claim::write_verdict(view, draft, judged)
}
