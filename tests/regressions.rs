//! Faults found and mended, each by what caused it.

#![expect(
    clippy::unwrap_used,
    reason = "a check that cannot run its scenario has to fail"
)]

use noonday_engine::scenario::{FanUse, Scenario, ScenarioDocument, example};
use noonday_engine::simulation::{Results, simulate};

fn run(document: ScenarioDocument) -> Results {
    simulate(&Scenario::new(document).unwrap()).unwrap()
}

/// The example without cooler or fan and with a strong stove lit off the samples' raster.
fn with_stove() -> ScenarioDocument {
    let mut document = example();
    document.cooler.installed = false;
    document.ventilation.fan_use = FanUse::Off;
    document.occupants.cooking_heat_w = 4_000.0;
    document.occupants.cooking_from_hour = 16.612;
    document.occupants.cooking_until_hour = 20.0;
    document
}

fn cabin_c_at(results: &Results, time_h: f64) -> f64 {
    let series = &results.series;
    let index = series.time_h.iter().position(|at_h| *at_h >= time_h - 1e-6);
    series.cabin_c[index.unwrap()]
}

/// An interval of five minutes that had begun in still air kept its weak convection while a stove was lit in it, and the air
/// overshot by ten kelvins.
#[test]
fn convection_follows_a_stove_within_the_interval() {
    let results = run(with_stove());
    let after_minutes = |minutes: f64| cabin_c_at(&results, 16.612 + minutes / 60.0);
    assert!(after_minutes(5.0) > after_minutes(-10.0) + 5.0);
    assert!(after_minutes(5.0) < after_minutes(15.0));
    assert!(after_minutes(15.0) < after_minutes(30.0));
}

/// The day before the run is passed in long steps, in which the air swung about its balance: a run that began while a stove
/// was lit began ten kelvins off.
#[test]
fn a_run_may_begin_while_a_stove_is_lit() {
    let begun_at = |start_hour: f64| {
        let mut document = with_stove();
        document.day.start_hour = start_hour;
        cabin_c_at(&run(document), 18.0)
    };
    // Half a kelvin: the day before is passed in steps of five minutes.
    let difference_k = begun_at(18.0) - begun_at(12.0);
    assert!(difference_k.abs() < 0.5, "{difference_k} K");
}

/// Peukert's law was applied to lithium cells, for which the exponent is no input.
#[test]
fn lithium_cells_know_no_peukert_exponent() {
    let with_exponent = |exponent: f64| {
        let mut document = example();
        document.battery.capacity_ah = 100.0;
        document.battery.peukert_exponent = exponent;
        run(document)
    };
    assert_eq!(with_exponent(1.6), with_exponent(1.0));
}
