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

/// A number below `limit`, each as likely as any other; `limit` from 1 to 256.
pub fn below(limit: usize) -> Result<usize, NoChance> {
    let limit = limit.clamp(1, 256);
    loop {
        let mut byte = [0];
        getrandom::fill(&mut byte)?;
        let drawn = usize::from(byte[0]);
        // What does not divide evenly would make the first numbers likelier.
        if drawn < 256 - 256 % limit {
            return Ok(drawn % limit);
        }
    }
}
