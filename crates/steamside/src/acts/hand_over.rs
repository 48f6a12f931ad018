//! Hand over: the giver taps once, the receiver taps once. If nobody takes it the work goes on.

use super::Refusal;
use logbook::book::{Draft, DrawerKind};
use logbook::fact::{Body, Counter};
use logbook::view::View;
use measure::{ActId, PersonId};

/// Longest note, characters: one thing to watch, and no report.
pub const LONGEST_NOTE: usize = 200;
/// More sets than dry on any rack.
pub const MOST_DRYING: u32 = 200;

/// What is handed over.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HandOver {
    /// To whom; `None`: to whoever takes it.
    pub to: Option<PersonId>,
    /// Sets that dry on the rack.
    pub drying: u32,
    /// What to watch, where somebody wrote it.
    pub note: Option<String>,
}

/// Offers the work to whoever comes next.
pub fn hand_over(view: &View<'_>, draft: &mut Draft, given: HandOver) -> Result<(), Refusal> {
    let people = view.people()?;
    if people.len() < 2 {
        return Err(Refusal::rule("refused-alone"));
    }
    if given.to.is_some_and(|to| people.iter().all(|person| person.person != to)) {
        return Err(Refusal::rule("refused-no-such-person"));
    }
    if given.drying > MOST_DRYING {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST_DRYING));
    }
    let note = given.note.as_deref().map(str::trim).filter(|note| !note.is_empty());
    if note.is_some_and(|note| note.chars().count() > LONGEST_NOTE) {
        return Err(Refusal::rule_with("refused-note-long", "most", LONGEST_NOTE));
    }
    let note = note.map(|note| draft.put(DrawerKind::Note, note.as_bytes())).transpose()?;
    let given = Counter::HandedOver { to: given.to, drying: given.drying, note };
    draft.fact(Body::Counter(Box::new(given)));
    Ok(())
}

/// "I have it."
pub fn take_over(view: &View<'_>, draft: &mut Draft, given: ActId) -> Result<(), Refusal> {
    match view.last_hand_over()? {
        Some(last) if last.act == given && last.taken.is_none() => {
            draft.fact(Body::Counter(Box::new(Counter::TakenOver { given })));
            Ok(())
        }
        Some(last) if last.act == given => Err(Refusal::rule("refused-taken-already")),
        _ => Err(Refusal::rule("refused-not-offered")),
    }
}
