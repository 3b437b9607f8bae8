//! See `readers::link`.

#![no_main]

libfuzzer_sys::fuzz_target!(|text: &str| noonday_tests::readers::link(text));
