//! Practice: how fast the clock of a practice book runs, cards dealt and ended. A salon's
//! own book can be given no speed and no card.

use super::Refusal;
use crate::pace;
use crate::practice::deal::find;
use logbook::book::Draft;
use logbook::fact::{Body, BookKind, Counter};
use logbook::view::View;
use measure::{ActId, Instant, PersonId, Span};

/// The clock runs at most so many times as fast.
const MOST_TIMES: u32 = 30;
/// It is put on by at most a day.
const MOST_LATER_MIN: i64 = 24 * 60;

/// How the practice clock is to run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PracticeClock {
    /// The true moment.
    pub real: Instant,
    /// How many times as fast; `None`: as before.
    pub times: Option<u32>,
    /// Minutes by which it is put on; a pace alone never makes it jump.
    pub later_min: i64,
}

/// Sets the clock of a practice book.
pub fn practice_clock(
    view: &View<'_>,
    draft: &mut Draft,
    set: PracticeClock,
) -> Result<(), Refusal> {
    only_practice(view)?;
    let pace = pace::of(view)?;
    let times = set.times.unwrap_or(pace.times());
    if !(1..=MOST_TIMES).contains(&times) {
        return Err(Refusal::rule_with("refused-practice-times", "most", MOST_TIMES));
    }
    if !(0..=MOST_LATER_MIN).contains(&set.later_min) {
        return Err(Refusal::rule_with("refused-field-misread", "field", "later"));
    }
    let shown = pace.at(set.real) + Span::from_minutes(set.later_min);
    let set = Counter::PracticeClock { real: set.real, shown, times };
    draft.fact(Body::Counter(Box::new(set)));
    Ok(())
}

/// Notes that a card was dealt.
pub fn deal_card(
    view: &View<'_>,
    draft: &mut Draft,
    card: &str,
    learner: Option<PersonId>,
) -> Result<(), Refusal> {
    only_practice(view)?;
    let card = card.to_owned();
    draft.fact(Body::Counter(Box::new(Counter::CardDealt { card, learner })));
    Ok(())
}

/// Ends a card; how many of its steps were right follows from what was done since.
pub fn end_card(view: &View<'_>, draft: &mut Draft, dealt: ActId) -> Result<(), Refusal> {
    only_practice(view)?;
    let played = find(view, dealt)?.filter(|played| played.dealt.ended.is_none());
    let played = played.ok_or_else(|| Refusal::rule("refused-no-such-card"))?;
    let right = played.steps.iter().filter(|step| step.right).count() as u32;
    let asked = played.steps.len() as u32;
    draft.fact(Body::Counter(Box::new(Counter::CardEnded { dealt, right, asked })));
    Ok(())
}

fn only_practice(view: &View<'_>) -> Result<(), Refusal> {
    if view.salon()?.book == BookKind::Practice {
        Ok(())
    } else {
        Err(Refusal::rule("refused-not-practice"))
    }
}
