//! The cabin against an independent whole-building heat-balance program: every case of `reference/thermal`.
//!
//! Source and how the cases were made: `reference/thermal/README.md`.

use noonday_tests::Table;
use noonday_tests::thermal_box::{BoxCase, Minute, cases};

/// Root-mean-square error of cabin air allowed on every case, and in the median, K.
const RMSE_ALLOWED_K: f64 = 1.5;
const RMSE_MEDIAN_ALLOWED_K: f64 = 1.0;

/// Error of the peak allowed, K.
const PEAK_ALLOWED_K: f64 = 2.0;

/// Error of peak and daily load allowed, share.
const LOAD_ALLOWED: f64 = 0.10;

/// Error of pull-down times allowed, share, and the resolution of the reference, min.
const PULL_ALLOWED: f64 = 0.15;
const PULL_RESOLUTION_MIN: f64 = 1.0;

fn ten_minute_means(minutes: &[Minute], value: impl Fn(&Minute) -> f64) -> Vec<f64> {
    minutes
        .chunks(10)
        .map(|chunk| chunk.iter().map(&value).sum::<f64>() / chunk.len() as f64)
        .collect()
}

fn column(file: &str, name: &str) -> Vec<f64> {
    Table::read(file)
        .rows()
        .map(|row| row.number(name))
        .collect()
}

fn peak(values: &[f64]) -> f64 {
    values.iter().copied().fold(f64::NEG_INFINITY, f64::max)
}

fn rmse(one: &[f64], other: &[f64]) -> f64 {
    // The reference leaves out the very last mean, which ends on midnight.
    assert!(one.len() == other.len() + 1 && other.len() > 400);
    let sum: f64 = one.iter().zip(other).map(|(a, b)| (a - b) * (a - b)).sum();
    (sum / other.len() as f64).sqrt()
}

fn compare_air(case: &BoxCase, minutes: &[Minute]) -> (f64, f64) {
    let modelled = ten_minute_means(minutes, |minute| minute.air_c);
    let reference = column(&case.ten_minute_file(), "cabin_air_c");
    (
        rmse(&modelled, &reference),
        peak(&modelled) - peak(&reference),
    )
}

#[test]
fn cabin_air_follows_the_reference() {
    let mut errors = Vec::new();
    for case in cases() {
        let (rmse_k, peak_k) = compare_air(&case, &case.run());
        println!("{:24} rmse {rmse_k:.3} K, peak {peak_k:+.3} K", case.name);
        assert!(rmse_k <= RMSE_ALLOWED_K, "{}: rmse {rmse_k}", case.name);
        assert!(
            peak_k.abs() <= PEAK_ALLOWED_K,
            "{}: peak {peak_k}",
            case.name
        );
        errors.push(rmse_k);
    }
    errors.sort_by(f64::total_cmp);
    assert!(errors.len() >= 17);
    assert!(errors[errors.len() / 2] <= RMSE_MEDIAN_ALLOWED_K);
}

#[test]
fn cooling_loads_follow_the_reference() {
    let mut compared = 0;
    for case in cases()
        .iter()
        .filter(|case| !case.is_free() && !case.is_pull())
    {
        let minutes = case.run();
        let modelled = ten_minute_means(&minutes, |minute| minute.sensible_w);
        let reference = column(&case.ten_minute_file(), "sensible_cooling_w");
        let peak_share = peak(&modelled) / peak(&reference) - 1.0;
        println!("{:24} peak load {:+.1} %", case.name, 100.0 * peak_share);
        assert!(
            peak_share.abs() <= LOAD_ALLOWED,
            "{}: {peak_share}",
            case.name
        );
        for day in 0..3 {
            let span = day * 144..(day + 1) * 144;
            let ours: f64 = modelled[span.clone()].iter().sum();
            let theirs: f64 = reference[span.start..span.end.min(reference.len())]
                .iter()
                .sum();
            let share = ours / theirs - 1.0;
            println!(
                "{:24} day {} load {:+.1} %",
                case.name,
                day + 1,
                100.0 * share
            );
            assert!(
                share.abs() <= LOAD_ALLOWED,
                "{} day {day}: {share}",
                case.name
            );
            compared += 1;
        }
    }
    assert!(compared >= 12);
}

#[test]
fn pull_down_takes_as_long_as_the_reference() {
    let summary = Table::read("thermal/summary.csv");
    let mut compared = 0;
    for case in cases().iter().filter(|case| case.is_pull()) {
        let minutes = case.run();
        let row = summary
            .rows()
            .find(|row| row.text("case") == case.name)
            .unwrap();
        for target_c in [30.0, 28.0, 26.0, 24.0] {
            let expected_min = row.number(&format!("min_to_{target_c}c"));
            let start = minutes
                .iter()
                .position(|m| m.end_s > 86_400.0 + 14.0 * 3_600.0)
                .unwrap();
            let found_min = minutes[start..]
                .iter()
                .position(|minute| minute.air_c <= target_c)
                .unwrap() as f64
                + 1.0;
            println!(
                "{:14} to {target_c} °C: {found_min} min against {expected_min}",
                case.name
            );
            let allowed_min = (PULL_ALLOWED * expected_min).max(PULL_RESOLUTION_MIN);
            assert!(
                (found_min - expected_min).abs() <= allowed_min,
                "{}",
                case.name
            );
            compared += 1;
        }
    }
    assert!(compared == 8);
}
