//! The JSON of the commands, written by hand so that no core type promises its own shape.

pub mod check;
pub mod dayplan;
pub mod drift;
pub mod sets;
pub mod verify;
