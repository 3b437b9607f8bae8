//! See `readers::file`.

#![no_main]

libfuzzer_sys::fuzz_target!(|text: &str| noonday_tests::readers::file(text));
