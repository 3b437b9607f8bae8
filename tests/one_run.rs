//! Runs the example's day, or a week like it, as often as it is told, for `instructions.mjs` to count in, and prints the shortest time of a run, ms.

#![expect(
    clippy::unwrap_used,
    reason = "a measurement that cannot run its scenario has to fail"
)]

use noonday_engine::scenario::{Scenario, example};
use noonday_engine::simulation::Prepared;
use std::hint::black_box;
use std::time::Instant;

fn main() {
    let runs: usize = std::env::args().nth(1).unwrap().parse().unwrap();
    let kind = std::env::args().nth(2).unwrap();
    let mut document = example();
    if kind == "week" {
        document.day.days = 7.0;
    }
    let cooled = Prepared::new(&Scenario::new(document).unwrap()).unwrap();
    let prepared = if kind == "floating" {
        cooled.without_cooler()
    } else {
        cooled
    };
    let mut least_s = f64::INFINITY;
    for _ in 0..runs {
        let began = Instant::now();
        black_box(black_box(&prepared).run().unwrap());
        least_s = least_s.min(began.elapsed().as_secs_f64());
    }
    println!("{}", least_s * 1e3);
}
