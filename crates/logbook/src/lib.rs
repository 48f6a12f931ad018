//! The book: facts that nobody can change unseen, and what they add up to.
//!
//! [`fact`] says what a fact is; [`book::Book`] writes facts inside one transaction each act and
//! reads the fold; [`view`] is what a page or an act gets to see. SQL is known here and nowhere
//! else.

pub mod book;
mod chain;
mod check;
pub mod drawer;
pub mod error;
pub mod fact;
mod facts;
mod fold;
mod store;
pub mod verify;
pub mod view;
mod wire;

pub use book::{Book, Draft, DrawerKind, Opening, Written};
pub use error::BookError;
pub use verify::verify;
pub use view::View;
