//! The judge against records with known truth, and properties that hold for any record.

// tests may stop at once
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
// the records are files
#![allow(clippy::disallowed_methods)]

mod chambers;
mod contents;
mod corpus;
mod golden;
mod looks;
mod order;
mod properties;
mod readings;
mod recall;
mod records;
mod resolution;
mod single;
mod spoilt;
