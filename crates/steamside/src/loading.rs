//! What a load is, worked out from the book: what each kind of set is made of and weighs, which
//! pouch it lies in, how pouches go on the trays of a machine, whether they come out dry, and which
//! programme to choose.

pub mod kinds;
pub mod load;
pub mod propose;
pub mod trays;
