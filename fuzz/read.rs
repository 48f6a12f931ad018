//! Any bytes.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| fuzz::read::run(bytes));
