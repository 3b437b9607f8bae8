//! What must hold of every valid scenario, tried on thousands of random ones.

use noonday_engine::advice::judge;
use noonday_engine::scenario::{Scenario, ScenarioDocument, from_link, to_link};
use noonday_engine::simulation::{Prepared, Results};
use noonday_tests::scenarios::{Drawn, config, documents, scenarios};
use proptest::prelude::*;

/// Residual of a balance over its throughput: what is asked of it is 1e-6, and it closes to rounding.
const RESIDUAL_ALLOWED: f64 = 1e-9;

/// Every number of a run's series, with its name.
fn numbers(results: &Results) -> impl Iterator<Item = (&'static str, f64)> + '_ {
    let series = &results.series;
    [
        ("time_h", &series.time_h),
        ("outdoor_c", &series.outdoor_c),
        ("cabin_c", &series.cabin_c),
        ("felt_c", &series.felt_c),
        ("radiant_c", &series.radiant_c),
        ("relative_humidity", &series.relative_humidity),
        ("sun_w_m2", &series.sun_w_m2),
        ("state_of_charge", &series.state_of_charge),
        ("bank_voltage_v", &series.bank_voltage_v),
        ("bank_current_a", &series.bank_current_a),
        ("cooler_share", &series.cooler_share),
        ("cooler_w", &series.cooler_w),
        ("loads_w", &series.loads_w),
        ("panels_w", &series.panels_w),
        ("driving_w", &series.driving_w),
        ("shore_w", &series.shore_w),
    ]
    .into_iter()
    .flat_map(|(name, values)| values.iter().map(move |value| (name, *value)))
    .chain(
        series
            .heat_w
            .iter()
            .flatten()
            .map(|value| ("heat_w", *value)),
    )
}

fn check_run(results: &Results) -> Result<(), TestCaseError> {
    for (name, value) in numbers(results) {
        prop_assert!(value.is_finite(), "{name} is {value}");
    }
    let balance = &results.balance;
    prop_assert!(balance.heat_residual <= RESIDUAL_ALLOWED, "{balance:?}");
    prop_assert!(balance.moisture_residual <= RESIDUAL_ALLOWED, "{balance:?}");
    prop_assert!(balance.electric_residual <= RESIDUAL_ALLOWED, "{balance:?}");
    let heat_wh = &results.totals.heat_wh;
    let net_wh: f64 = heat_wh.iter().sum();
    let throughput_wh: f64 = heat_wh.iter().map(|path_wh| path_wh.abs()).sum();
    prop_assert!(
        net_wh.abs() <= RESIDUAL_ALLOWED * throughput_wh.max(1.0),
        "paths sum to {net_wh} of {throughput_wh} Wh"
    );
    for charge in &results.series.state_of_charge {
        prop_assert!((0.0..=1.0).contains(charge), "charge {charge}");
    }
    for humidity in &results.series.relative_humidity {
        prop_assert!(*humidity >= 0.0, "humidity {humidity}");
    }
    Ok(())
}

fn run(scenario: &Scenario) -> Result<Results, TestCaseError> {
    let prepared =
        Prepared::new(scenario).map_err(|error| TestCaseError::fail(format!("{error:?}")))?;
    prepared
        .run()
        .map_err(|error| TestCaseError::fail(format!("{error:?}")))
}

/// The generator has to draw what validation accepts: at most one document in a hundred is refused.
#[test]
fn the_generator_draws_valid_documents() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::new(config(1));
    let strategy = documents(7.0);
    let mut refused = 0;
    const DRAWN: u32 = 5_000;
    for _ in 0..DRAWN {
        let Drawn(document) = strategy.new_tree(&mut runner).unwrap().current();
        if let Err(errors) = Scenario::new(document) {
            println!("{errors:?}");
            refused += 1;
        }
    }
    println!("{refused} of {DRAWN} refused");
    assert!(refused * 100 <= DRAWN);
}

proptest! {
    #![proptest_config(config(1_000))]

    /// No error, no panic, nothing that is not a number; heat, water and electricity close; charge stays within the bank.
    #[test]
    fn every_valid_scenario_runs_and_closes(Drawn(scenario) in scenarios(2.0)) {
        let results = run(&scenario)?;
        check_run(&results)?;
        let verdict = judge(scenario.document(), &results, &results);
        for window in &verdict.windows {
            prop_assert!(window.worst_felt_c.is_finite(), "{window:?}");
            prop_assert!(window.missed_h >= 0.0 && window.degree_hours_k_h >= 0.0);
        }
    }
}

proptest! {
    #![proptest_config(config(2_000))]

    /// A link and the stored form give back the same document to the bit, valid or not.
    #[test]
    fn link_and_stored_form_give_the_document_back(Drawn(document) in documents(7.0)) {
        let link = to_link(&document);
        prop_assert_eq!(from_link(&link), Ok(document.clone()));
        let stored = serde_json::to_string(&document).unwrap();
        let back: ScenarioDocument = serde_json::from_str(&stored).unwrap();
        prop_assert_eq!(to_link(&back), link);
        prop_assert_eq!(back, document);
    }
}
