//! What comes in from outside: cycle records, from a page, a command or a watched folder.

pub mod judge;
pub mod known;
pub mod take;
pub mod watch;
