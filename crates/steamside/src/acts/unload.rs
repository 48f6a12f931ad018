//! Unload: the load is out on the rack; the run stays to check, the next may start.

use super::Refusal;
use logbook::book::Draft;
use logbook::fact::Body;
use logbook::view::View;
use measure::RunId;

/// Takes the load of a run out of its machine.
pub fn unload(view: &View<'_>, draft: &mut Draft, run: RunId) -> Result<(), Refusal> {
    let row = view.run(run)?.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
    if row.undone || row.unloaded.is_some() {
        return Err(Refusal::rule("refused-already-unloaded"));
    }
    draft.fact(Body::RunUnloaded { run });
    Ok(())
}
