//! Runs the example's day as often as it is told, for `instructions.mjs` to count in.

#![expect(
    clippy::unwrap_used,
    reason = "a measurement that cannot run its scenario has to fail"
)]

use noonday_engine::scenario::{Scenario, example};
use noonday_engine::simulation::Prepared;
use std::hint::black_box;

fn main() {
    let runs: usize = std::env::args().nth(1).unwrap().parse().unwrap();
    let cooled = Prepared::new(&Scenario::new(example()).unwrap()).unwrap();
    let floating = cooled.without_cooler();
    let prepared = match std::env::args().nth(2).unwrap().as_str() {
        "cooled" => cooled,
        _ => floating,
    };
    for _ in 0..runs {
        black_box(black_box(&prepared).run().unwrap());
    }
}
