//! Packed: each set gets a pouch (or a numbered tag), a shelf code and a label before the run.

use super::Refusal;
use crate::chance;
use load::SetKind;
use logbook::book::Draft;
use logbook::fact::{Body, PackedPouch};
use logbook::view::View;

/// Most pouches that one tap may make: a full roll of labels is a slip of the finger.
const MOST: u32 = 60;

/// What was packed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pack {
    /// The kind of set.
    pub kind: SetKind,
    /// How many.
    pub count: u32,
    /// In pouches; otherwise open on numbered tags, for use at once.
    pub pouched: bool,
    /// Something hollow is among it.
    pub hollow: bool,
}

/// Gives each set an id and a code that no pouch about has.
pub fn pack(view: &View<'_>, draft: &mut Draft, packed: Pack) -> Result<(), Refusal> {
    if packed.count == 0 {
        return Err(Refusal::rule("refused-nothing-counted"));
    }
    if packed.count > MOST {
        return Err(Refusal::rule_with("refused-too-many", "most", MOST));
    }
    let mut pouches = Vec::new();
    for code in view.free_codes(packed.count as usize)? {
        pouches.push(PackedPouch {
            pouch: chance::id()?,
            code,
            kind: packed.kind.clone(),
            pouched: packed.pouched,
            hollow: packed.hollow,
        });
    }
    draft.fact(Body::Packed { pouches });
    Ok(())
}
