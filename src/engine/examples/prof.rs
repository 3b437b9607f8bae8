//! x
use noonday_engine::{scenario, simulation};
fn main() {
    let s = scenario::Scenario::new(scenario::example()).unwrap();
    let p = simulation::Prepared::new(&s).unwrap();
    for _ in 0..3 { p.run().unwrap(); }
}
