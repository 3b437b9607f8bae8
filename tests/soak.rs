//! Random valid scenarios by the hundred thousand, each run to its end: `make soak`. The usual tests take a few of them.

#![expect(clippy::unwrap_used, reason = "a check that cannot count has to fail")]

use noonday_engine::scenario::{Scenario, to_share_link};
use noonday_engine::simulation::simulate;
use noonday_tests::scenarios::{Drawn, config, scenarios};
use noonday_tests::sound::check_run;
use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::{RngSeed, TestRunner};

/// Scenarios without being asked for more.
const FEW: u32 = 400;

/// Scenarios drawn with one seed, so that they can be shared out.
const BATCH: u32 = 250;

/// Most days of a run: two have all that a day has, and what the night leaves.
const MOST_DAYS: f64 = 2.0;

fn run(scenario: &Scenario) -> Result<(), String> {
    let results = simulate(scenario).map_err(|error| format!("{error:?}"))?;
    check_run(&results)
}

/// Runs a batch; gives the link and the trouble of each scenario that does not hold.
fn batch(number: u32) -> Vec<String> {
    let mut config = config(BATCH);
    config.rng_seed = RngSeed::Fixed(u64::from(number));
    let mut runner = TestRunner::new(config);
    let strategy = scenarios(MOST_DAYS);
    (0..BATCH)
        .filter_map(|_| {
            let Drawn(scenario) = strategy.new_tree(&mut runner).unwrap().current();
            let trouble = run(&scenario).err()?;
            Some(format!("{}: {trouble}", to_share_link(scenario.document())))
        })
        .collect()
}

#[test]
fn every_scenario_runs_to_its_end() {
    let asked = std::env::var("SOAK").ok().map(|text| text.parse().unwrap());
    let batches = asked.unwrap_or(FEW).div_ceil(BATCH);
    let workers = std::thread::available_parallelism().map_or(1, std::num::NonZero::get) as u32;
    let troubles: Vec<String> = std::thread::scope(|scope| {
        let threads: Vec<_> = (0..workers)
            .map(|worker| {
                let mine = (worker..batches).step_by(workers as usize);
                scope.spawn(move || mine.flat_map(batch).collect::<Vec<String>>())
            })
            .collect();
        threads
            .into_iter()
            .flat_map(|thread| thread.join().unwrap())
            .collect()
    });
    println!("{} scenarios, {} troubles", batches * BATCH, troubles.len());
    assert!(troubles.is_empty(), "{}", troubles.join("\n"));
}
