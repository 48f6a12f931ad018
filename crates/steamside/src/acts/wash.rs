//! Washed: sets leave the used bin clean, dry, looked at and oiled.

use super::Refusal;
use load::SetKind;
use logbook::book::Draft;
use logbook::fact::Body;
use logbook::view::View;
use std::collections::BTreeMap;

/// Most sets of one kind that one tap may move: more is a slip of the finger.
const MOST: u32 = 200;
/// Most kinds of sets that one form may name.
const MOST_KINDS: usize = 50;

/// Writes how many sets of each kind were washed; kinds with none are left out.
pub fn wash(
    _view: &View<'_>,
    draft: &mut Draft,
    counts: Vec<(SetKind, u32)>,
) -> Result<(), Refusal> {
    let mut by_kind: BTreeMap<SetKind, u32> = BTreeMap::new();
    for (kind, count) in counts.into_iter().filter(|(_, count)| *count > 0) {
        let sum = by_kind.entry(kind).or_default();
        *sum = sum.saturating_add(count);
    }
    if by_kind.len() > MOST_KINDS {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST_KINDS));
    }
    let any = !by_kind.is_empty();
    for (kind, count) in by_kind {
        if count > MOST {
            return Err(Refusal::rule_with("refused-too-many", "most", MOST));
        }
        draft.fact(Body::Washed { kind, count });
    }
    if any { Ok(()) } else { Err(Refusal::rule("refused-nothing-counted")) }
}
