//! How long the very program that people get takes for a day; nothing but the benchmark asks.

use noonday_engine::scenario::{Scenario, example};
use noonday_engine::simulation::Prepared;
use std::hint::black_box;
use wasm_bindgen::prelude::wasm_bindgen;

/// Runs the example's day so many times, with its cooler or without; gives whether it could.
#[wasm_bindgen(js_name = runTheDay)]
pub fn run_the_day(times: u32, cooled: bool) -> bool {
    let Some(prepared) = Scenario::new(example())
        .ok()
        .and_then(|scenario| Prepared::new(&scenario).ok())
    else {
        return false;
    };
    let prepared = if cooled {
        prepared
    } else {
        prepared.without_cooler()
    };
    (0..times).all(|_| black_box(&prepared).run().is_ok())
}
