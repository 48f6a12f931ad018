//! What is printed. Values go in, the bytes of a page come out.
//!
//! So far: labels for pouches. Every text is handed in, in the reader's language; this room
//! knows where it goes and whether it fits, and it refuses to print what must never be printed
//! (see [`Unprintable`]). It asks no clock, so the printed date is handed in as well.
//!
//! A label goes on before the run (the pack is marked first, with ink and glue that stand the
//! steam), so it says nothing about how the run went: the four symbols large in the middle, the
//! code for a camera right, one sentence, and room to write machine and run where they are not
//! known yet. It carries nothing about a client.
//!
//! ```
//! use papers::{label_sheets, Label, Run, Sheet, Words};
//! use measure::PouchId;
//!
//! let label = Label {
//!     pouch: PouchId::from_bytes([7; 16]),
//!     code: "3K7P".parse()?,
//!     kind: "manicure".to_owned(),
//!     sentence: "Packed 28 NOV. Look: dry? whole?".to_owned(),
//!     run: Run::ToWriteIn,
//! };
//! let words = Words {
//!     printed: "Printed 28 NOV 2026",
//!     page: &|page, of| format!("page {page} of {of}"),
//!     scale: "50 mm. If it is not, print again at 100 %.",
//!     stock: "Office labels are not made for steam: try three of them first.",
//!     machine: "Machine",
//!     run: "Run",
//!     machine_short: "M",
//!     run_short: "R",
//! };
//! // The first four labels of the sheet are already gone.
//! let pages = label_sheets(&[label], &Sheet::A4_21, &words, 5)?;
//! assert_eq!(pages.len(), 1);
//! assert!(pages[0].contains(">3K7P<"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod fit;
mod label;
mod payload;
mod refuse;
mod sheet;
mod sheets;
mod svg;

pub use label::{Label, Run};
pub use payload::{NotOurCode, label_payload, read_payload};
pub use refuse::Unprintable;
pub use sheet::{DotsPerInch, NoDots, Sheet};
pub use sheets::{Words, label_sheets};
