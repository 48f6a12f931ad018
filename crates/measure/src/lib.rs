//! The words and units that every other room uses.
//!
//! A temperature is not a pressure and an id of a run is not an id of a pouch; here each has a
//! type of its own. The physical bounds stand in one table ([`bounds::TABLE`]), with a name, a
//! range and the reason, so that a number read from a file or typed by a person is checked in one
//! way. [`maths`] is the only place in the core that computes `exp`, `ln` and powers: a verdict
//! has to come out the same in ten years on another machine, so the platform's own mathematics
//! library is not used.
//!
//! Nothing here knows a clock, a disk, a network or a source of chance.
//!
//! ```
//! use measure::{Celsius, Kilopascal};
//! let set = Celsius::new(134.0)?;
//! assert!(Celsius::new(f64::NAN).is_err());
//! assert_eq!(Kilopascal::new(304.2)?.get(), 304.2);
//! assert_eq!(set.to_string(), "134.0 °C");
//! # Ok::<(), measure::OutOfBounds>(())
//! ```

pub mod bounds;
mod id;
mod instant;
pub mod maths;
mod money;
mod quantity;

pub use bounds::OutOfBounds;
pub use id::{
    ActId, DrawerId, Id, IdText, MachineId, PersonId, PouchId, RecordHash, RunId, SalonId,
    ServiceId, ShiftId, StationId, TestId, ThingId, VisitId,
};
pub use instant::{Instant, Span};
pub use money::Money;
pub use quantity::{Celsius, Gram, Kilopascal, Millimetre};
