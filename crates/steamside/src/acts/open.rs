//! Open: at a chair, in front of the client, one scan. Links the pouch to the visit.

use super::Refusal;
use crate::chance;
use load::{SetState, ShelfCode};
use logbook::book::Draft;
use logbook::fact::Body;
use logbook::view::{Pouch, View};
use measure::{Instant, PouchId};

/// How the pouch is named.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum What {
    /// By its four symbols.
    Code(ShelfCode),
    /// By its own id, from the square code.
    Pouch(PouchId),
}

/// What was opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Open {
    /// The pouch.
    pub what: What,
    /// The chair.
    pub chair: Option<u32>,
    /// When it was opened, where the empty pouch is linked after the service.
    pub opened: Option<Instant>,
    /// It was opened while the station was cut off: what is told now is done already.
    pub kept: bool,
    /// Now, or the moment at which it was opened.
    pub now: Instant,
}

/// Opens a pouch that may be used; any other is a stop. What was opened while a station was cut off
/// is written whatever became of the pouch meanwhile: a recall must reach its visit, and the safer
/// state holds.
pub fn open(view: &View<'_>, draft: &mut Draft, open: Open) -> Result<(), Refusal> {
    let pouch = find(view, open.what)?;
    if !open.kept && !may_open(&pouch, open.now) {
        return Err(Refusal::Stop(Box::new(pouch)));
    }
    let before_release = |at| pouch.released.is_none_or(|(released, _)| at < released);
    if !open.kept && open.opened.is_some_and(before_release) {
        return Err(Refusal::rule_with("refused-opened-before", "code", pouch.code));
    }
    draft.fact(Body::Opened { pouch: pouch.pouch, visit: chance::id()?, chair: open.chair });
    Ok(())
}

/// The pouch that a code or an id names.
pub fn find(view: &View<'_>, what: What) -> Result<Pouch, Refusal> {
    match what {
        What::Code(code) => {
            view.pouch_by_code(code)?.ok_or_else(|| Refusal::NoSuchCode(code.to_string()))
        }
        What::Pouch(pouch) => {
            view.pouch(pouch)?.ok_or_else(|| Refusal::NoSuchCode(pouch.to_string()))
        }
    }
}

/// May a client be touched with it now? For use at once means: until its time.
pub fn may_open(pouch: &Pouch, now: Instant) -> bool {
    match pouch.state {
        SetState::UseNow => pouch.use_until.is_some_and(|until| now <= until),
        state => state.usable(),
    }
}
