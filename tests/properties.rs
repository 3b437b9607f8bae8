//! What must hold of every valid scenario, tried on thousands of random ones.

use noonday_engine::advice::judge;
use noonday_engine::scenario::{
    FanUse, Scenario, ScenarioDocument, SystemVoltage, example, from_link, to_link,
};
use noonday_engine::simulation::{HeatPath, Prepared, Results, Stop};
use noonday_tests::scenarios::{Drawn, config, documents, scenarios, scenarios_around};
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

/// Mean of a flow over every whole hour, from five-minute means.
fn hourly_peak(flow_w: impl Iterator<Item = f64>) -> f64 {
    const SAMPLES_PER_HOUR: usize = 12;
    let samples: Vec<f64> = flow_w.collect();
    samples
        .chunks(SAMPLES_PER_HOUR)
        .map(|hour| hour.iter().sum::<f64>() / hour.len() as f64)
        .fold(f64::NEG_INFINITY, f64::max)
}

fn peak(values: &[f64]) -> f64 {
    values.iter().copied().fold(f64::NEG_INFINITY, f64::max)
}

/// When the bank was first empty, clock hours; infinite if it never was.
fn emptied_h(results: &Results) -> f64 {
    match results.first_stop {
        Some((at_h, Stop::BankEmpty)) => at_h,
        _ => f64::INFINITY,
    }
}

/// The example changed, and validated.
fn changed(document: &ScenarioDocument, change: impl Fn(&mut ScenarioDocument)) -> Scenario {
    let mut document = document.clone();
    change(&mut document);
    Scenario::new(document).unwrap()
}

proptest! {
    #![proptest_config(config(400))]

    #[test]
    fn a_bigger_bank_never_empties_sooner(
        Drawn(scenario) in scenarios_around(example(), &[
            "vehicle.", "shell.", "glass.", "occupants.", "place.", "day.", "ventilation.", "loads.", "cooler.set_point_c",
            "charging.panel",
        ]),
        capacity_ah in 40.0_f64..400.0,
        factor in 1.05_f64..3.0,
    ) {
        let with = |capacity_ah: f64| changed(scenario.document(), |document| {
            document.battery.capacity_ah = capacity_ah;
            document.cooler.cut_out_v_per_12_v = 9.0;
            document.day.days = document.day.days.min(2.0);
        });
        let (small, large) = (with(capacity_ah), with(capacity_ah * factor));
        let (small_h, large_h) = (emptied_h(&run(&small)?), emptied_h(&run(&large)?));
        prop_assert!(large_h >= small_h - 1.0 / 360.0, "{large_h} h against {small_h} h");
    }

    #[test]
    fn darker_paint_never_lowers_the_peak_of_a_floating_cabin(
        Drawn(scenario) in scenarios(1.0),
        darker in 0.05_f64..0.5,
    ) {
        let light = changed(scenario.document(), |document| {
            document.cooler.installed = false;
            let loads = &mut document.loads;
            for load in [&mut loads.fridge, &mut loads.lights, &mut loads.electronics, &mut loads.other] {
                load.power_w = 0.0;
            }
            document.ventilation.fan_power_w = 0.0;
            if document.ventilation.fan_use == FanUse::WhenOutdoorsCooler {
                document.ventilation.fan_use = FanUse::InHours;
            }
        });
        let dark = changed(light.document(), |document| {
            let shell = &mut document.shell;
            shell.roof_sun_absorptance = (shell.roof_sun_absorptance + darker).min(0.98);
            shell.wall_sun_absorptance = (shell.wall_sun_absorptance + darker).min(0.98);
        });
        let (light_c, dark_c) = (peak(&run(&light)?.series.cabin_c), peak(&run(&dark)?.series.cabin_c));
        prop_assert!(dark_c >= light_c - 0.1, "{dark_c} °C against {light_c} °C");
    }

    #[test]
    fn more_insulation_never_raises_the_peak_load_of_a_hot_sunny_day(
        Drawn(scenario) in scenarios_around(held(), &["shell.", "vehicle.", "glass.left", "glass.right", "glass.nose", "glass.rear", "glass.roof", "glass.solar", "glass.trans", "day.wind", "place.ground", "place.terrain",  "day.linke"]),
        more_m in 0.005_f64..0.1,
        high_c in 30.0_f64..50.0,
    ) {
        let base = scenario.document();
        let thin = changed(base, |document| { document.day.high_c = high_c; document.day.low_c = 25.0; });
        let base = thin.document();
        let thick = changed(base, |document| {
            let shell = &mut document.shell;
            shell.roof_insulation_m = (shell.roof_insulation_m + more_m).min(0.15);
            shell.wall_insulation_m = (shell.wall_insulation_m + more_m).min(0.15);
            shell.floor_insulation_m = (shell.floor_insulation_m + more_m).min(0.15);
        });
        let load_w = |results: &Results| {
            let path = HeatPath::ALL.iter().position(|path| *path == HeatPath::Cooler).unwrap();
            let rest = results.series.heat_w.iter().skip(1 + 12 * 3);
            hourly_peak(rest.map(|paths| -paths[path]))
        };
        let (a, b) = (run(&thin)?, run(&thick)?);
        let (thin_w, thick_w) = (load_w(&a), load_w(&b));
        println!("{thin_w:.0} {thick_w:.0} {:.2} {:.2}", peak(&a.series.cabin_c[36..]), peak(&b.series.cabin_c[36..]));
        prop_assert!(thick_w <= thin_w * 1.01 + 5.0, "{thick_w} W against {thin_w} W");
    }
}

/// The example held at its set point day and night by a cooler that never lacks capacity, on a day that is never cooler than
/// the cabin.
fn held() -> ScenarioDocument {
    let mut document = example();
    document.occupants.people = 0.0;
    document.occupants.dogs = 0.0;
    document.occupants.cooking_heat_w = 0.0;
    document.cooler.capacity_rated_w = 8_000.0;
    document.cooler.electric_power_rated_w = 2_500.0;
    document.cooler.band_k = 0.3;
    document.cooler.set_point_c = 22.0;
    document.cooler.minimum_on_s = 0.0;
    document.cooler.minimum_off_s = 0.0;
    document.cooler.run_from_hour = 0.0;
    document.cooler.run_until_hour = 0.0;
    document.cooler.cable_resistance_ohm = 0.0;
    document.battery.capacity_ah = 2_000.0;
    document.battery.highest_discharge_a = 2_000.0;
    document.battery.resistance_ohm_per_12_v = 2e-4;
    document.battery.system_voltage = SystemVoltage::V48;
    document.ventilation.fan_use = FanUse::Off;
    document.day.low_c = 25.0;
    document.glass.cover_sun_share = 0.05;
    document
}
