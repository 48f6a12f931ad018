//! What comes in from outside: cycle records and appointments, from a page, a command or a watched
//! folder.

pub mod appointments;
pub mod calendar;
pub mod growing;
pub mod judge;
pub mod known;
pub mod take;
pub mod watch;
