//! What goes in: what the steam has to get through, the states of a set, the code on its pouch.
//!
//! ```
//! use load::{Contents, ShelfCode, SetState};
//! let code: ShelfCode = "3k7p".parse()?;
//! assert_eq!(code.to_string(), "3K7P");
//! assert_eq!("pouched".parse(), Ok(Contents::Pouched));
//! assert!(SetState::SetAside.safety() > SetState::Ready.safety());
//! # Ok::<(), load::NoShelfCode>(())
//! ```

mod contents;
mod plain_word;
mod shelf_code;
mod state;

pub use contents::{Contents, UnknownContents};
pub use plain_word::{NoPlainWord, Programme, ServiceWord, SetKind};
pub use shelf_code::{NoShelfCode, ShelfCode};
pub use state::SetState;
