//! May it be used: the verdict on a run with every reason, the three looks, how far a stop
//! reaches, and what a recall reaches.
//!
//! Nothing here asks a clock or a disk. A verdict is made from [`cycle::figures::Figures`] and the
//! [`limits`], which are data with a source each; "cannot tell" is a verdict of its own, and
//! nothing is released on it.

pub mod limits;
pub mod looks;
pub mod recall;
pub mod spores;
pub mod verdict;
