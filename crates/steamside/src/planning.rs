//! The day plan of the salon: from the book to a day, to a plan, to sentences.

pub mod agreed;
pub mod explain;
pub mod kept;
pub mod room;
pub mod stock;
pub mod today;
