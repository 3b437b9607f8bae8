//! Known quantities found again in logs that the engine made itself, with noise.

use super::*;
use crate::scenario::{Scenario, ScenarioDocument, example};
use crate::simulation::simulate;
use std::fmt::Write;

const ASSUMED: Assumed = Assumed::USUAL;

/// What the logged vehicle really is.
const FILLED: f64 = 0.6;
const LEAK_M2: f64 = 0.012;
const CAPACITY_J_K: f64 = 450_000.0;

fn empty_example() -> ScenarioDocument {
    let mut document = example();
    document.occupants.people = 0.0;
    document.occupants.dogs = 0.0;
    document.occupants.cooking_heat_w = 0.0;
    document.occupants.cooking_moisture_kg_s = 0.0;
    document.charging.drives = false;
    document
}

fn vehicle() -> ScenarioDocument {
    let mut document = empty_example();
    document.cooler.installed = false;
    document.shell.filled_share = FILLED;
    document.shell.leakage_area_m2 = LEAK_M2;
    document.vehicle.furnishing_heat_capacity_j_k = CAPACITY_J_K;
    document
}

/// Noise of a deviation, from a fixed sequence (SplitMix64, Steele, Lea & Flood 2014): the sum of twelve uniform numbers less six.
fn noise(seed: &mut u64, deviation: f64) -> f64 {
    let mut sum = -6.0;
    for _ in 0..12 {
        *seed = seed.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut word = *seed;
        word = (word ^ (word >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        word = (word ^ (word >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        word ^= word >> 31;
        sum += (word >> 11) as f64 / (1_u64 << 53) as f64;
    }
    deviation * sum
}

/// A log of a scenario's run with noise on the cabin, °C.
fn log_of(document: &ScenarioDocument, deviation: f64, seed: u64) -> String {
    let run = simulate(&Scenario::new(document.clone()).unwrap()).unwrap();
    let mut seed = seed;
    let mut text = "time (h),cabin,outdoor\n".to_owned();
    let begins_h = document.day.start_hour;
    let series = &run.series;
    for ((time_h, cabin_c), outdoor_c) in series
        .time_h
        .iter()
        .zip(&series.cabin_c)
        .zip(&series.outdoor_c)
    {
        let read_c = cabin_c + noise(&mut seed, deviation);
        writeln!(text, "{:.5},{read_c:.2},{outdoor_c:.2}", time_h - begins_h).unwrap();
    }
    text
}

fn learn(text: &str, document: ScenarioDocument, assumed: &Assumed) -> Learned {
    let log = read_log(text, &assumed.unsaid).unwrap();
    let mut learning = Learning::new(&Scenario::new(document).unwrap(), &log, assumed).unwrap();
    let mut progress = 0.0;
    while !learning.step().unwrap() {
        assert!(learning.progress() >= progress);
        progress = learning.progress();
    }
    learning.result()
}

#[test]
fn what_a_fit_leaves_is_the_noise() {
    let assumed = Assumed {
        unsaid: Unsaid {
            begins_hour: example().day.start_hour,
            ..ASSUMED.unsaid
        },
        ..ASSUMED
    };
    for seed in [1, 2, 3] {
        let text = log_of(&vehicle(), 0.3, seed);
        let learned = learn(&text, example(), &assumed);
        assert!(learned.estimates[0].is_known, "{:?}", learned.estimates);
        // What is left is the noise, not less than a tenth under it for the four quantities taken out.
        assert!((0.27..0.33).contains(&learned.rms_k), "{}", learned.rms_k);
        assert!(learned.rms_entered_k > learned.rms_k);
        assert!(learned.started_warmer_k.abs() < 1.0);
    }
}

#[test]
fn values_are_taken_over_and_measures_are_named() {
    let assumed = Assumed {
        unsaid: Unsaid {
            begins_hour: example().day.start_hour,
            ..ASSUMED.unsaid
        },
        ..ASSUMED
    };
    let learned = learn(&log_of(&vehicle(), 0.1, 5), example(), &assumed);
    let mut document = example();
    learned.apply(&mut document);
    assert!((document.shell.filled_share - FILLED).abs() < 0.1);
    assert!(Scenario::new(document).is_ok());
    assert!(!learned.levers.is_empty());
    assert!(learned.estimates[0].is_refuted());
}

#[test]
fn an_hour_is_refused_and_a_night_tells_little() {
    let scenario = Scenario::new(example()).unwrap();
    let log = |text: &str| read_log(text, &ASSUMED.unsaid).unwrap();
    let refused = |text: &str| Learning::new(&scenario, &log(text), &ASSUMED).unwrap_err();
    assert!(matches!(refused("0 20\n60 21"), LearningError::Span { .. }));
    assert!(matches!(
        refused("0 20\n600 21"),
        LearningError::TooFew { points: 2, .. }
    ));
    // Four hours before dawn with half a kelvin of noise: the causes cannot be told apart.
    let mut night = vehicle();
    night.day.start_hour = 1.0;
    let text = log_of(&night, 0.5, 7);
    let cut: String = text
        .lines()
        .take(50)
        .map(|line| format!("{line}\n"))
        .collect();
    let assumed = Assumed {
        unsaid: Unsaid {
            begins_hour: 1.0,
            ..ASSUMED.unsaid
        },
        ..ASSUMED
    };
    let learned = learn(&cut, example(), &assumed);
    let known = learned.estimates.iter().filter(|one| one.is_known).count();
    assert!(
        known < 3 || !learned.confounded.is_empty(),
        "{:?}",
        learned.estimates
    );
}

/// A log with the current of the cooler: the run follows it instead of its thermostat, and finds the same vehicle.
#[test]
fn a_cooled_day_is_followed_by_its_current() {
    let mut document = vehicle();
    document.cooler.installed = true;
    let scenario = Scenario::new(document.clone()).unwrap();
    let run = simulate(&scenario).unwrap();
    let series = &run.series;
    let voltage_v = document.battery.system_voltage.nominal_v();
    let mut text = "time (h);Kabine innen;außen;Strom (A)\n".to_owned();
    for index in 0..series.time_h.len() {
        // Samples are means of the span before them; at its end stands the mean of both spans around it.
        let after_w = series.cooler_w.get(index + 1).unwrap_or(&0.0);
        let current_a = f64::midpoint(series.cooler_w[index], *after_w) / voltage_v;
        let hours = series.time_h[index] - document.day.start_hour;
        let (cabin_c, outdoor_c) = (series.cabin_c[index], series.outdoor_c[index]);
        writeln!(
            text,
            "{hours:.4};{cabin_c:.2};{outdoor_c:.2};{current_a:.1}"
        )
        .unwrap();
    }
    let assumed = Assumed {
        unsaid: Unsaid {
            begins_hour: document.day.start_hour,
            ..ASSUMED.unsaid
        },
        ..ASSUMED
    };
    let learned = learn(&text.replace('.', ","), example(), &assumed);
    assert!(
        (learned.estimates[0].value - FILLED).abs() < 0.1,
        "{:?}",
        learned.estimates
    );
    assert!(learned.rms_k < 1.0, "{}", learned.rms_k);
}

/// A range that holds the truth in 19 of 20 fits holds it in fewer than 20 of 24 with a chance below a hundredth (binomial).
#[test]
fn ranges_hold_the_truth_as_often_as_they_say() {
    let assumed = Assumed {
        unsaid: Unsaid {
            begins_hour: example().day.start_hour,
            ..ASSUMED.unsaid
        },
        ..ASSUMED
    };
    let mut held = [0; 3];
    for seed in 100..124 {
        let text = log_of(&vehicle(), 0.3, seed * 7_919);
        let learned = learn(&text, example(), &assumed);
        let truth = [FILLED, LEAK_M2, CAPACITY_J_K];
        for (held, (estimate, truth)) in held.iter_mut().zip(learned.estimates.iter().zip(truth)) {
            *held += u32::from((estimate.least..=estimate.greatest).contains(&truth));
        }
    }
    assert!(held.iter().all(|held| *held >= 20), "{held:?} of 24");
}
