//! What the fuzz targets do with the bytes that they are given.

pub mod choices;
pub mod made;
pub mod proof;
pub mod read;
pub mod table;
pub mod written;
