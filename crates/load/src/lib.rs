//! What goes in: implements and their metals, sets, pouches, trays and chambers; what fits, with
//! which spacing and facing, how heavy it is, and its picture as plain geometry. Also the states
//! of a set and the code on its pouch.
//!
//! ```
//! use load::{Contents, ShelfCode, SetState};
//! let code: ShelfCode = "3k7p".parse()?;
//! assert_eq!(code.to_string(), "3K7P");
//! assert_eq!("pouched".parse(), Ok(Contents::Pouched));
//! assert!(SetState::SetAside.safety() > SetState::Ready.safety());
//! # Ok::<(), load::NoShelfCode>(())
//! ```

pub mod catalogue;
pub mod chamber;
mod contents;
pub mod geometry;
pub mod implement;
pub mod pack;
pub mod picture;
mod plain_word;
pub mod pouch;
mod shelf_code;
mod state;
mod stored_word;

pub use contents::{Contents, UnknownContents};
pub use plain_word::{
    ChoreWord, ImplementWord, NoPlainWord, PouchWord, Programme, ServiceWord, SetKind, StockWord,
};
pub use shelf_code::{NoShelfCode, ShelfCode};
pub use state::SetState;
