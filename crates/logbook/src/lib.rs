//! The book: facts that nobody can change unseen, and what they add up to.
//!
//! [`fact`] says what a fact is; [`book::Book`] writes facts inside one transaction each act and
//! reads the fold; [`view`] is what a page or an act gets to see. SQL is known here and nowhere
//! else.
//!
//! ```
//! use logbook::fact::{Body, BookKind, Known, Stamp};
//! use logbook::{Book, BookError, Opening, verify};
//! use measure::{Id, Instant};
//!
//! # let folder = tempfile::tempdir()?;
//! # let folder = folder.path();
//! // Ids are random, and made where the tap happens; the clock is asked there too.
//! let stamp = |act: u8| Stamp {
//!     act: Id::from_bytes([act; 16]),
//!     happened: Instant::from_millis(1_748_851_200_000),
//!     written: Instant::from_millis(1_748_851_201_500),
//!     station: Id::from_bytes([7; 16]),
//!     sign: None,
//!     known: Known::Tapped,
//! };
//! let book = Book::create(folder, Opening {
//!     salon: Id::from_bytes([9; 16]),
//!     zone: "America/Chicago".to_owned(),
//!     book: BookKind::Practice,
//!     stamp: stamp(1),
//! })?;
//! let kind: load::SetKind = "manicure".parse()?;
//! let written = book.act::<BookError>(stamp(2), |view, draft| {
//!     assert!(view.kinds()?.is_empty());
//!     draft.fact(Body::Washed { kind: kind.clone(), count: 4 });
//!     Ok(())
//! })?;
//! assert_eq!(written.last_seq, 2);
//! let washed = book.read::<_, BookError>(|view| Ok(view.kinds()?[0].washed))?;
//! assert_eq!(washed, 4);
//! assert!(verify(folder)?.ok);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod book;
mod chain;
mod check;
pub mod drawer;
pub mod error;
pub mod fact;
mod facts;
mod fold;
mod store;
pub mod typical;
pub mod verify;
pub mod view;
mod wire;

pub use book::{Book, Draft, DrawerKind, Opening, Written};
pub use error::BookError;
pub use verify::verify;
pub use view::View;
