//! Tests of the whole room: files in, records out.

// tests may stop at once
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
// the records are files
#![allow(clippy::disallowed_methods)]

mod air;
mod corpus;
mod counted;
mod hostile;
mod json;
mod layouts;
mod made;
mod odd;
mod records;
mod said;
mod style;
