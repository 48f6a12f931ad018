//! What the record of a run proves for what was inside.
//!
//! The order of the questions is fixed, and the first that fails decides; where two could be
//! answered, the one that is certain comes first. A record that does not prove it is never called
//! lethal, and "cannot tell" is never turned by anything but a new record, a reading or a new run.
//!
//! ```
//! use load::Contents;
//! use release::limits::Limits;
//! use release::verdict::{Asked, Outcome, Reading, judge_reading};
//! let limits = Limits::default();
//! let asked = Asked::new(Contents::Unwrapped, &limits);
//! let read = Reading { lowest_c: 134.2, held_s: 240.0, pressure_kpa: Some(306.0), set_c: Some(134.0), deep_pulses: None };
//! assert_eq!(judge_reading(&read, &asked).outcome, Outcome::Lethal);
//! // Without a pressure nobody can say that it was steam.
//! let without = Reading { pressure_kpa: None, ..read };
//! assert_eq!(judge_reading(&without, &asked).outcome, Outcome::CannotTell);
//! ```

mod covers;
mod leak;
mod reading;
mod run;

pub use covers::proven_for;
pub use reading::{Reading, judge_reading};

use crate::limits::Limits;
use cycle::figures::{Figures, Kind};
use cycle::finding::{Code, Finding};
use cycle::record::CycleRecord;
use load::Contents;

/// Version of the judge; a verdict keeps the one it was made by.
pub const JUDGE: &str = "1";

/// What a record proves. People read: steam did its work / did not / cannot tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// Every point of it did what was asked.
    Lethal,
    /// It did not.
    NotLethal,
    /// It neither proves nor disproves. Nothing is released on it.
    CannotTell,
    /// Leak test within its limit.
    LeakPass,
    /// Leak test beyond its limit.
    LeakFail,
}

/// The verdict on one cycle.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// What the record proves.
    pub outcome: Outcome,
    /// For which contents; empty unless lethal.
    pub proven_for: Vec<Contents>,
    /// Did the whole cycle keep to what was asked? `None` where that is not known.
    pub conforming: Option<bool>,
    /// Every reason, the decisive one first.
    pub reasons: Vec<Finding>,
}

/// For what, and by which limits, a run is judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked<'a> {
    /// The most demanding thing inside. Unknown: judged as unwrapped solid goods, and
    /// [`Verdict::proven_for`] says what else the record carries.
    pub contents: Contents,
    /// The limits in force.
    pub limits: &'a Limits,
    /// A steam penetration test with a hollow load was passed on this machine and day with this
    /// programme. Without it no record carries hollow goods: a probe in the chamber does not see
    /// into a bore.
    pub hollow_tested: bool,
}

impl<'a> Asked<'a> {
    /// For these contents, by these limits.
    #[must_use]
    pub const fn new(contents: Contents, limits: &'a Limits) -> Self {
        Self { contents, limits, hollow_tested: false }
    }
}

/// Judges one cycle.
#[must_use]
pub fn judge(record: &CycleRecord, figures: &Figures, asked: &Asked<'_>) -> Verdict {
    if !figures.sound {
        let text = "the record holds too few samples, or numbers that are none; nothing can be concluded from it";
        return open(reason(Code::Unreadable, text.to_owned()), figures);
    }
    // Every hold and every rate would rest on them.
    if record.known_from.times_unclear {
        let found = figures.findings.iter().find(|finding| finding.code == Code::UnitUnclear);
        let text = "it is not known how far apart in time the readings lie";
        let unclear = || reason(Code::UnitUnclear, text.to_owned());
        return open(found.cloned().unwrap_or_else(unclear), figures);
    }
    match figures.kind {
        Kind::LeakTest => leak::judge(figures, asked.limits),
        Kind::Run => run::judge(record, figures, asked),
        Kind::Unknown => {
            let text =
                "neither steam nor a vacuum shows in this record: it is not known what it is of";
            open(reason(Code::Unreadable, text.to_owned()), figures)
        }
    }
}

/// A reason without a place.
fn reason(code: Code, text: String) -> Finding {
    Finding { code, text, at_s: None, lines: None }
}

/// "Cannot tell", for this reason.
fn open(decisive: Finding, figures: &Figures) -> Verdict {
    Verdict {
        outcome: Outcome::CannotTell,
        proven_for: Vec::new(),
        conforming: None,
        reasons: with_findings(decisive, figures),
    }
}

/// The decisive reason first, then everything that was noticed, nothing twice: what the decisive
/// one already says of the same stretch is left out.
fn with_findings(decisive: Finding, figures: &Figures) -> Vec<Finding> {
    let said = |finding: &Finding| finding.code == decisive.code && finding.at_s == decisive.at_s;
    let others: Vec<_> =
        figures.findings.iter().filter(|finding| !said(finding)).cloned().collect();
    let mut reasons = vec![decisive];
    for finding in others {
        if !reasons.contains(&finding) {
            reasons.push(finding);
        }
    }
    reasons
}
