//! What the chamber did: reading a cycle record of any layout, its phases and its figures.
//!
//! Two steps, each pure: [`record::read`] turns the bytes of a file into repaired cycles in known
//! units, and says how each unit was known; [`figures::examine`] measures one cycle (kind, set
//! point, hold, F0, saturation deviation, pulses, drying, leak rate, sensors) without judging it.
//! Whether that suffices for what was inside is for the room `release` to say.

pub mod balance;
pub mod choose;
pub mod drift;
mod extent;
pub mod figures;
pub mod finding;
pub mod lethality;
pub mod limit;
mod memo;
pub mod record;
pub mod steam;
