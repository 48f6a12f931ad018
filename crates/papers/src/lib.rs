//! What is printed. Values go in, the bytes of a page come out.
//!
//! So far: labels for pouches, and pictures of pouches and trays, for the screen ([`drawing`]) and
//! as a page of A5 to hang at the machine ([`tray_sheet`]). Every text is handed in, in the reader's language; this room
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
//!
//! A picture is plain geometry; here it becomes ink. Paper and film are told apart by hatch and
//! word, never by colour, and everything is to scale.
//!
//! ```
//! use load::geometry::{Outline, Rect};
//! use load::picture::{Part, Picture, Role};
//! use papers::{Caption, DrawingNames, PictureWords, drawing};
//!
//! let tray = Outline::rectangle(1_800, 2_850)?;
//! let pouch = Outline::rectangle(900, 1_300)?.moved(120, 120);
//! let picture = Picture {
//!     frame: Rect { x: 0, y: 0, width: 1_800, height: 2_850 },
//!     parts: vec![
//!         Part { role: Role::Tray, outline: tray, names: None },
//!         Part { role: Role::Paper, outline: pouch, names: Some(0) },
//!     ],
//!     distances: Vec::new(),
//! };
//! let words = PictureWords {
//!     paper: "paper up",
//!     film: "film up",
//!     over: "lies over by 2.5 cm",
//!     fold: "kept free for the fold",
//!     near: Some("door"),
//!     caption: &|_, _| Some(Caption { main: "3K7P".into(), more: "manicure".into() }),
//!     distance: &|tenths| format!("{} mm", tenths / 10),
//! };
//! let (id, title) = ("tray-1", "Tray 1 from the top");
//! let svg = drawing(&picture, &DrawingNames { id, title, desc: "One pouch, paper up.", words })?;
//! assert!(svg.starts_with("<svg") && svg.contains(">3K7P<") && svg.contains(">paper up<"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod column;
mod drawing;
mod fit;
mod label;
mod lettering;
mod painter;
mod payload;
mod refuse;
mod sheet;
mod sheets;
mod spots;
mod square;
mod svg;
mod tray_sheet;

pub use drawing::{DrawingNames, drawing};
pub use label::{Label, Run};
pub use lettering::{Caption, PictureWords};
pub use payload::{NotOurCode, label_payload, read_payload};
pub use refuse::Unprintable;
pub use sheet::{DotsPerInch, NoDots, Sheet};
pub use sheets::{Words, label_sheets};
pub use square::square;
pub use tray_sheet::{TrayOfSheet, TrayWords, tray_sheet};
