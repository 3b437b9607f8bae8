//! No memory is asked for in a step: a run in twice as many steps asks exactly as often.
//!
//! Counted by `dhat`, whose allocator stands in for the usual one in this file alone.

#![expect(
    clippy::unwrap_used,
    reason = "a check that cannot run its scenario has to fail"
)]

use noonday_engine::scenario::{Scenario, ScenarioDocument, example};
use noonday_engine::simulation::Prepared;

#[global_allocator]
static COUNTING: dhat::Alloc = dhat::Alloc;

/// How often a run asks for memory: the least of a few, for whatever watches over tests asks now and then as well.
fn blocks_of_a_run(prepared: &Prepared, steps_per_minute: u32) -> Option<u64> {
    (0..5)
        .map(|_| {
            let before = dhat::HeapStats::get().total_blocks;
            let results = prepared.run_in_steps(steps_per_minute).unwrap();
            let blocks = dhat::HeapStats::get().total_blocks - before;
            assert!(results.series.cabin_c.len() > 1);
            blocks
        })
        .min()
}

fn of_days(days: f64) -> ScenarioDocument {
    let mut document = example();
    document.day.days = days;
    document
}

#[test]
fn no_memory_is_asked_for_in_a_step_or_an_interval() {
    let _counting = dhat::Profiler::builder().testing().build();
    let prepared = |days: f64| Prepared::new(&Scenario::new(of_days(days)).unwrap()).unwrap();
    let day = prepared(1.0);
    let of_a_day = blocks_of_a_run(&day, 6);
    println!("{of_a_day:?} blocks in a run of a day");
    assert!(of_a_day > Some(0), "nothing is counted");
    for steps_per_minute in [1, 12] {
        assert_eq!(
            blocks_of_a_run(&day, steps_per_minute),
            of_a_day,
            "{steps_per_minute} steps a minute"
        );
    }
    // Three times as many intervals; only the list of hours at which something switches is longer, and grows once more.
    let of_three_days = blocks_of_a_run(&prepared(3.0), 6);
    assert!(
        of_three_days <= of_a_day.map(|blocks| blocks + 1),
        "{of_three_days:?}"
    );
    let floating = day.without_cooler();
    assert_eq!(
        blocks_of_a_run(&floating, 12),
        blocks_of_a_run(&floating, 6)
    );
}
