//! The three looks before anything is put away: the numbers, the marks, dry and whole.
//!
//! Pure: what the record proves and what people answered go in, what becomes of each pouch comes
//! out. The reach of one bad pouch is the trade's (common practice, no source, except where a
//! line says otherwise): torn or dropped, that pouch; one wet, that pouch, and all are looked at
//! again; two or more wet, all; a mark or the numbers, all. A wet pack is not releasable, and the
//! parameters, the marks and the packs are each checked before a release (RACGP guidelines,
//! ch. 10, "Unloading the steriliser" and "Record keeping"). There is no way back but a new run.

use crate::verdict::Outcome;
use load::Contents;
use measure::PouchId;
use std::collections::BTreeSet;
use std::fmt;

/// What was in the run, and what its verdict rests on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Looked {
    /// What the record, or a person's reading, proves.
    pub outcome: Outcome,
    /// For which contents it proves it.
    pub proven_for: Vec<Contents>,
    /// The most demanding thing inside.
    pub contents: Contents,
    /// The pouches (or tags) of the run.
    pub pouches: Vec<PouchId>,
    /// Is an indicator of type 5 or 6 asked for in each load? A setting for machines without a
    /// record.
    pub needs_inner_mark: bool,
}

/// Answer to "have all marks turned?".
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Marks {
    /// Every one.
    AllTurned,
    /// These have not.
    NotTurned(Vec<PouchId>),
}

/// Answer to "dry? whole?". Both lists empty: all dry and whole.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct DryWhole {
    /// These are wet or damp.
    pub wet: Vec<PouchId>,
    /// These are torn, open or were dropped.
    pub torn: Vec<PouchId>,
}

/// Every answer given so far, the oldest first. An answer is added, never replaced.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Answers {
    /// To "have all marks turned?".
    pub marks: Vec<Marks>,
    /// To "has the indicator of type 5 or 6 inside reached its end point?".
    pub inner_mark: Vec<bool>,
    /// To "dry? whole?".
    pub dry: Vec<DryWhole>,
}

/// Why a pouch is not to be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Why {
    /// The numbers of the run were missed.
    Numbers,
    /// The record neither proves nor disproves; read it off the display, or run again.
    CannotTell,
    /// The record does not carry what was inside.
    NotCovered,
    /// A mark in this run has not turned.
    Mark,
    /// This pouch is wet.
    Wet,
    /// Two or more in this run were wet.
    WetRun,
    /// This pouch is torn, open or was dropped.
    Torn,
}

impl Why {
    /// All of them.
    pub const ALL: [Self; 7] = [
        Self::Numbers,
        Self::CannotTell,
        Self::NotCovered,
        Self::Mark,
        Self::Wet,
        Self::WetRun,
        Self::Torn,
    ];
}

/// The question that has to be answered before the run can be released.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Question {
    /// Have all marks turned?
    Marks,
    /// Has the indicator of type 5 or 6 inside reached its end point?
    InnerMark,
    /// Dry? Whole?
    DryWhole,
    /// One was wet: look at all others again.
    DryWholeAgain,
}

/// What follows from the verdict and the answers.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Decision {
    /// Released to the shelf, or for use now. Empty while a question is open.
    pub release: Vec<PouchId>,
    /// Not to be used, with the reason. This is certain even while a question is open.
    pub set_aside: Vec<(PouchId, Why)>,
    /// What still has to be asked; `None` when everything is decided.
    pub ask: Option<Question>,
}

/// An answer names a pouch that was not in the run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NotInRun(pub PouchId);

impl fmt::Display for NotInRun {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "pouch {} was not in this run; nothing was released; look at the code on the pouch again",
            self.0
        )
    }
}

impl std::error::Error for NotInRun {}

/// Why the whole run is not to be used, whatever the looks say.
fn numbers(run: &Looked) -> Option<Why> {
    match run.outcome {
        Outcome::Lethal if run.proven_for.contains(&run.contents) => None,
        Outcome::Lethal => Some(Why::NotCovered),
        Outcome::NotLethal => Some(Why::Numbers),
        // A leak test has no load; whatever was named with it has not been through a cycle.
        Outcome::CannotTell | Outcome::LeakPass | Outcome::LeakFail => Some(Why::CannotTell),
    }
}

fn known(run: &Looked, answers: &Answers) -> Result<(), NotInRun> {
    let inside: BTreeSet<PouchId> = run.pouches.iter().copied().collect();
    let marks = answers.marks.iter().flat_map(|answer| match answer {
        Marks::AllTurned => [].iter(),
        Marks::NotTurned(these) => these.iter(),
    });
    let dry = answers.dry.iter().flat_map(|answer| answer.wet.iter().chain(&answer.torn));
    match marks.chain(dry).find(|pouch| !inside.contains(pouch)) {
        Some(&stranger) => Err(NotInRun(stranger)),
        None => Ok(()),
    }
}

/// What becomes of each pouch.
///
/// The answers are the whole history: a pouch once called wet stays wet, a mark once called not
/// turned stays so.
///
/// # Errors
/// An answer that names a pouch which was not in the run: nothing is decided then.
///
/// ```
/// use load::Contents;
/// use measure::PouchId;
/// use release::looks::{decide, Answers, DryWhole, Looked, Marks, Question, Why};
/// use release::verdict::Outcome;
/// let pouches: Vec<_> = (0..3).map(|n| PouchId::from_bytes([n; 16])).collect();
/// let run = Looked {
///     outcome: Outcome::Lethal,
///     proven_for: vec![Contents::Unwrapped, Contents::Pouched],
///     contents: Contents::Pouched,
///     pouches: pouches.clone(),
///     needs_inner_mark: false,
/// };
/// let mut answers = Answers { marks: vec![Marks::AllTurned], ..Answers::default() };
/// answers.dry.push(DryWhole { wet: vec![pouches[1]], torn: vec![] });
/// let first = decide(&run, &answers)?;
/// assert_eq!(first.ask, Some(Question::DryWholeAgain));
/// assert_eq!(first.set_aside, [(pouches[1], Why::Wet)]);
/// answers.dry.push(DryWhole::default());
/// assert_eq!(decide(&run, &answers)?.release, [pouches[0], pouches[2]]);
/// # Ok::<(), release::looks::NotInRun>(())
/// ```
pub fn decide(run: &Looked, answers: &Answers) -> Result<Decision, NotInRun> {
    known(run, answers)?;
    let all = |why| Decision {
        set_aside: run.pouches.iter().map(|&pouch| (pouch, why)).collect(),
        ..Decision::default()
    };
    if let Some(why) = numbers(run) {
        return Ok(all(why));
    }
    let mark_failed = answers.inner_mark.contains(&false)
        || answers.marks.iter().any(|answer| matches!(answer, Marks::NotTurned(_)));
    if mark_failed {
        return Ok(all(Why::Mark));
    }
    let wet: BTreeSet<PouchId> = gathered(answers, |answer| &answer.wet);
    if wet.len() > 1 {
        return Ok(all(Why::WetRun));
    }
    let torn: BTreeSet<PouchId> = gathered(answers, |answer| &answer.torn);
    let why = |pouch: &PouchId| {
        if wet.contains(pouch) { Some(Why::Wet) } else { torn.contains(pouch).then_some(Why::Torn) }
    };
    let mut decision =
        Decision { ask: open_question(run, answers, !wet.is_empty()), ..Decision::default() };
    for &pouch in &run.pouches {
        match why(&pouch) {
            Some(why) => decision.set_aside.push((pouch, why)),
            None if decision.ask.is_none() => decision.release.push(pouch),
            None => {}
        }
    }
    Ok(decision)
}

fn gathered(answers: &Answers, which: fn(&DryWhole) -> &Vec<PouchId>) -> BTreeSet<PouchId> {
    answers.dry.iter().flat_map(which).copied().collect()
}

fn open_question(run: &Looked, answers: &Answers, one_wet: bool) -> Option<Question> {
    if answers.marks.is_empty() {
        return Some(Question::Marks);
    }
    if run.needs_inner_mark && answers.inner_mark.is_empty() {
        return Some(Question::InnerMark);
    }
    let Some(first_wet) = answers.dry.iter().position(|answer| !answer.wet.is_empty()) else {
        return answers.dry.is_empty().then_some(Question::DryWhole);
    };
    // The look that found the wet one does not count as the look again.
    (one_wet && answers.dry.len() == first_wet + 1).then_some(Question::DryWholeAgain)
}
