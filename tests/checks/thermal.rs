//! The cabin against an independent whole-building heat-balance program: every case of `reference/thermal`.
//!
//! Source and how the cases were made: `reference/thermal/README.md`.

use crate::checks::Check;
use crate::thermal_box::{BoxCase, Minute, cases};
use crate::{Table, Worst};

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

const SOURCE: &str = "EnergyPlus 25.2.0, heat balance of the same boxes (thermal/)";

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

/// Cabin air of every case: root-mean-square error of ten-minute means on each, in the median case, and error of the peak.
#[must_use]
pub fn cabin_air_follows_the_reference() -> Vec<Check> {
    let mut errors = Vec::new();
    let (mut rmse, mut peaks) = (Worst::default(), Worst::default());
    for case in cases() {
        let (rmse_k, peak_k) = compare_air(&case, &case.run());
        rmse.note(rmse_k, &case.name);
        peaks.note(peak_k, &case.name);
        errors.push(rmse_k);
    }
    assert!(errors.len() >= 17);
    errors.sort_by(f64::total_cmp);
    let mut median = Worst::default();
    median.note(errors[errors.len() / 2], "median case");
    vec![
        rmse.check(
            "cabin air, root mean square of a case, K",
            RMSE_ALLOWED_K,
            SOURCE,
        ),
        median.check(
            "cabin air, root mean square of the median case, K",
            RMSE_MEDIAN_ALLOWED_K,
            SOURCE,
        ),
        peaks.check("cabin air, peak of a case, K", PEAK_ALLOWED_K, SOURCE),
    ]
}

/// Sensible load of the cooled cases: peak of ten-minute means, and sum of every day.
#[must_use]
pub fn cooling_loads_follow_the_reference() -> Vec<Check> {
    let (mut peaks, mut days) = (Worst::default(), Worst::default());
    for case in cases()
        .iter()
        .filter(|case| !case.is_free() && !case.is_pull())
    {
        let minutes = case.run();
        let modelled = ten_minute_means(&minutes, |minute| minute.sensible_w);
        let reference = column(&case.ten_minute_file(), "sensible_cooling_w");
        peaks.note(peak(&modelled) / peak(&reference) - 1.0, &case.name);
        for day in 0..3 {
            let span = day * 144..(day + 1) * 144;
            let ours: f64 = modelled[span.clone()].iter().sum();
            let theirs: f64 = reference[span.start..span.end.min(reference.len())]
                .iter()
                .sum();
            days.note(
                ours / theirs - 1.0,
                format!("{} day {}", case.name, day + 1),
            );
        }
    }
    vec![
        peaks.check("peak sensible load, relative", LOAD_ALLOWED, SOURCE),
        days.check("daily sensible load, relative", LOAD_ALLOWED, SOURCE),
    ]
}

/// Time until a hot box has been cooled to 30, 28, 26 and 24 °C, as a multiple of what is allowed: 15 % or a minute, which is
/// the reference's own resolution.
#[must_use]
pub fn pull_down_takes_as_long_as_the_reference() -> Vec<Check> {
    let summary = Table::read("thermal/summary.csv");
    let mut worst = Worst::default();
    for case in cases().iter().filter(|case| case.is_pull()) {
        let minutes = case.run();
        let row = summary
            .rows()
            .find(|row| row.text("case") == case.name)
            .unwrap();
        let start = minutes
            .iter()
            .position(|minute| minute.end_s > 86_400.0 + 14.0 * 3_600.0)
            .unwrap();
        for target_c in [30.0, 28.0, 26.0, 24.0] {
            let expected_min = row.number(&format!("min_to_{target_c}c"));
            let reached = minutes[start..]
                .iter()
                .position(|minute| minute.air_c <= target_c)
                .unwrap();
            let found_min = reached as f64 + 1.0;
            let allowed_min = (PULL_ALLOWED * expected_min).max(PULL_RESOLUTION_MIN);
            worst.note(
                (found_min - expected_min) / allowed_min,
                format!(
                    "{} to {target_c} °C: {found_min} min against {expected_min}",
                    case.name
                ),
            );
        }
    }
    vec![worst.check("time to pull down, in units of 15 % or 1 min", 1.0, SOURCE)]
}
