//! See `readers::packed`.

#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| noonday_tests::readers::packed(bytes));
