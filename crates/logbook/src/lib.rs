//! The book: facts that nobody can change unseen, and what they add up to.
//!
//! [`fact`] says what a fact is; [`book::Book`] writes facts inside one transaction each act and
//! reads the fold; [`view`] is what a page or an act gets to see. SQL is known here and nowhere
//! else.

pub mod fact;
pub mod view;
