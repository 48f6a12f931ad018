//! Screens: let in by a code, let go at any time.

use super::Refusal;
use logbook::book::{Draft, DrawerKind};
use logbook::fact::{Body, Counter, StationKind};
use logbook::view::View;
use measure::StationId;

/// Longest name of a screen, in letters.
pub const LONGEST_NAME: usize = 24;

/// A screen that is let in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pair {
    /// The screen.
    pub station: StationId,
    /// What it is.
    pub what: StationKind,
    /// SHA-256 of its key.
    pub key_hash: [u8; 32],
    /// What the salon calls it; may be empty.
    pub name: String,
}

/// Lets a screen in.
pub fn pair(_view: &View<'_>, draft: &mut Draft, pair: Pair) -> Result<(), Refusal> {
    let name: String = pair.name.trim().chars().take(LONGEST_NAME).collect();
    let name = match name.as_str() {
        "" => None,
        name => Some(draft.put(DrawerKind::Note, name.as_bytes())?),
    };
    let Pair { station, what, key_hash, .. } = pair;
    draft.fact(Body::Counter(Box::new(Counter::StationPaired { station, what, key_hash, name })));
    Ok(())
}

/// Lets a screen go: its next request is a stranger's.
pub fn part(view: &View<'_>, draft: &mut Draft, station: StationId) -> Result<(), Refusal> {
    let known = view.stations()?;
    if !known.iter().any(|known| known.station == station && known.parted.is_none()) {
        return Err(Refusal::rule("refused-no-such-screen"));
    }
    draft.fact(Body::Counter(Box::new(Counter::StationParted { station })));
    Ok(())
}
