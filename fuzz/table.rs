//! A made cycle in some layout, and damage.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| fuzz::table::run(bytes));
