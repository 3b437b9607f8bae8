//! What must hold of cable, fuse, limits and price of every valid scenario, tried on random ones.

use noonday_engine::advice::bank_limits::{Limit, bank_limits};
use noonday_engine::advice::circuits::{Choice, Circuit, Circuits, circuits};
use noonday_engine::advice::job::job;
use noonday_engine::advice::voltages::feeds;
use noonday_engine::electrical::circuit::{Remedies, thinnest};
use noonday_engine::electrical::conductor::SizeSeries;
use noonday_engine::scenario::{Scenario, ScenarioDocument};
use noonday_tests::scenarios::{Drawn, config, scenarios};
use proptest::prelude::*;

const SERIES: [SizeSeries; 2] = [SizeSeries::WireGauge, SizeSeries::Metric];

fn all_of(scenario: &Scenario) -> Result<Circuits, TestCaseError> {
    circuits(scenario.document()).map_err(|error| TestCaseError::fail(format!("{error:?}")))
}

/// 33 CFR 183.455(c) and the drop that is allowed.
fn check_choice(circuit: &Circuit, series: SizeSeries) -> Result<(), TestCaseError> {
    let need = &circuit.need;
    match circuit.choice(series) {
        Choice::Fits(fitted) => {
            prop_assert!(fitted.drop_share <= need.allowed_drop_share);
            prop_assert!(need.running_a < fitted.fuse_a && fitted.fuse_a <= fitted.allowable_a);
            // Where there is no surge both are the same product in another order.
            prop_assert!(fitted.surge_loss_w >= fitted.loss_w * (1.0 - 1e-12));
            prop_assert!(fitted.surge_loss_w.is_finite());
        }
        Choice::Nothing(remedies) => check_remedies(circuit, series, remedies)?,
    }
    Ok(())
}

/// What is said to do, does.
fn check_remedies(
    circuit: &Circuit,
    series: SizeSeries,
    remedies: &Remedies,
) -> Result<(), TestCaseError> {
    let mut need = circuit.need;
    if let Some(voltage_v) = remedies.voltage_v {
        prop_assert!(thinnest(series, &need.at_voltage(voltage_v)).is_some());
    }
    if let Some(longest_m) = remedies.longest_m {
        need.length_one_way_m = longest_m * (1.0 - 1e-9);
        prop_assert!(thinnest(series, &need).is_some());
        need.length_one_way_m = longest_m * (1.0 + 1e-9);
        prop_assert!(thinnest(series, &need).is_none());
    }
    Ok(())
}

fn check_document(document: &ScenarioDocument, all: &Circuits) -> Result<(), TestCaseError> {
    for series in SERIES {
        let limits = bank_limits(document, all, series)
            .map_err(|error| TestCaseError::fail(format!("{error:?}")))?;
        let loads: Vec<f64> = limits.limits.iter().map(Limit::load).collect();
        prop_assert!(loads.iter().all(|load| load.is_finite()));
        prop_assert!(loads.is_sorted_by(|one, other| one >= other), "{loads:?}");
        let job = job(document, all, series);
        let parts: f64 = job.parts.iter().map(|line| line.price).sum();
        let net = parts + job.markup + job.labour;
        let expected = net * (1.0 + document.prices.tax_share);
        prop_assert!((job.total - expected).abs() <= 1e-9 * expected.max(1.0));
    }
    Ok(())
}

proptest! {
    #![proptest_config(config(2_000))]

    /// The fuse stands between load and conductor, the drop is kept, and what is offered instead would do.
    #[test]
    fn every_circuit_is_protected_or_told_what_would_do(Drawn(scenario) in scenarios(1.0)) {
        let all = all_of(&scenario)?;
        for circuit in &all.circuits {
            for series in SERIES {
                check_choice(circuit, series)?;
            }
        }
        check_document(scenario.document(), &all)?;
    }

    /// Half the voltage is twice the current.
    #[test]
    fn current_goes_by_the_inverse_of_voltage(Drawn(scenario) in scenarios(1.0)) {
        let feeds = feeds(scenario.document())
            .map_err(|error| TestCaseError::fail(format!("{error:?}")))?;
        for three in feeds.chunks_exact(3) {
            prop_assert!((three[0].running_a - 4.0 * three[2].running_a).abs() <= 1e-9 * three[0].running_a);
            prop_assert!(three[0].start_a >= three[0].running_a && three[0].inverter_loss_w >= 0.0);
        }
    }
}
