//! Everything that reads what strangers send, each as one function that takes any input and must come back: with what it read,
//! which then has to read the same again, or with an error. Fuzzed by `fuzz/`, and tried on damaged texts by `damaged.rs`.

use base64::Engine;
use base64::prelude::BASE64_URL_SAFE_NO_PAD;
use crc::{CRC_16_IBM_3740, Crc};
use noonday_engine::advice::learning::{Unsaid, read_log};
use noonday_engine::scenario::file::from_file;
use noonday_engine::scenario::{
    Scenario, ScenarioDocument, from_any_link, from_link, to_link, to_share_link,
};
use noonday_engine::weather::{Epw, FileWeather};

/// What is valid has to read the same again; the rest is refused when it is validated, and must not break that.
fn reads_the_same_again(document: &ScenarioDocument) {
    if Scenario::new(document.clone()).is_err() {
        return;
    }
    assert_eq!(from_link(&to_link(document)).as_ref(), Ok(document));
    let shared = from_any_link(&to_share_link(document));
    assert_eq!(shared.as_ref(), Ok(document));
}

/// A link of any form.
///
/// # Panics
/// If what is read does not read the same again.
pub fn link(text: &str) {
    if let Ok(document) = from_any_link(text) {
        reads_the_same_again(&document);
    }
}

/// What a packed link holds, put behind the sum that it has to have.
///
/// # Panics
/// If what is read does not read the same again.
pub fn packed(bytes: &[u8]) {
    let sum = Crc::<u16>::new(&CRC_16_IBM_3740).checksum(bytes);
    let whole = [&sum.to_be_bytes(), bytes].concat();
    link(&format!("2{}", BASE64_URL_SAFE_NO_PAD.encode(whole)));
}

/// A file of scenarios.
///
/// # Panics
/// If what is read does not read the same again.
pub fn file(text: &str) {
    for entry in from_file(text).into_iter().flatten() {
        if let Ok(filed) = entry.read {
            reads_the_same_again(filed.scenario.document());
        }
    }
}

/// A weather file.
pub fn weather(text: &str) {
    if let Ok(epw) = Epw::parse(text) {
        let _ = FileWeather::new(&epw);
    }
}

/// A logged day.
pub fn log(text: &str) {
    let _ = read_log(text, &Unsaid::USUAL);
    let other = Unsaid {
        fahrenheit: true,
        hours: true,
        begins_hour: 23.5,
    };
    let _ = read_log(text, &other);
}
