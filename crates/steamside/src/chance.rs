//! The one source of chance: ids, drawn from the operating system.

use measure::Id;

/// The operating system gave no random bytes; nothing can be written safely without.
#[derive(Debug, thiserror::Error)]
#[error(
    "the computer gave no random numbers ({0}), so nothing was written; restart it and try again"
)]
pub struct NoChance(#[from] getrandom::Error);

/// A new id of 128 random bits.
pub fn id<T>() -> Result<Id<T>, NoChance> {
    let mut bytes = [0; 16];
    getrandom::fill(&mut bytes)?;
    Ok(Id::from_bytes(bytes))
}
