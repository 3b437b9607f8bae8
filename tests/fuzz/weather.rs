//! See `readers::weather`.

#![no_main]

libfuzzer_sys::fuzz_target!(|text: &str| noonday_tests::readers::weather(text));
