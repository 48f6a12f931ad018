//! Seen: somebody has read that two said different things.

use super::Refusal;
use logbook::book::Draft;
use logbook::fact::{Body, Counter};
use logbook::view::View;

/// Signs an entry as seen.
pub fn seen(view: &View<'_>, draft: &mut Draft, seq: u64) -> Result<(), Refusal> {
    if !view.contradicted(seq)? {
        return Err(Refusal::rule("refused-nothing-to-see"));
    }
    draft.fact(Body::Counter(Box::new(Counter::Seen { seq })));
    Ok(())
}
