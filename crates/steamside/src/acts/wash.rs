//! Washed: sets leave the used bin clean, dry, looked at and oiled.

use super::Refusal;
use load::SetKind;
use logbook::book::Draft;
use logbook::fact::Body;
use logbook::view::View;

/// Most sets of one kind that one tap may move: more is a slip of the finger.
const MOST: u32 = 200;

/// Writes how many sets of each kind were washed; kinds with none are left out.
pub fn wash(
    _view: &View<'_>,
    draft: &mut Draft,
    counts: Vec<(SetKind, u32)>,
) -> Result<(), Refusal> {
    let mut any = false;
    for (kind, count) in counts.into_iter().filter(|(_, count)| *count > 0) {
        if count > MOST {
            return Err(Refusal::rule_with("refused-too-many", "most", MOST));
        }
        draft.fact(Body::Washed { kind, count });
        any = true;
    }
    if any { Ok(()) } else { Err(Refusal::rule("refused-nothing-counted")) }
}
