//! How many sets to own, by simulation.

mod assume;
mod choose;
mod confirm;
mod life;
mod random;
mod share;
mod tally;
mod template;
mod trace;

pub use assume::{Assumptions, Basis, EVENTS, Event, Rate};
pub use confirm::{Confirmed, confirm};
pub use share::{Gain, LEVEL, Share, paired, wilson};
pub use tally::{Days, Point, Tally, curve, owning, tally};
