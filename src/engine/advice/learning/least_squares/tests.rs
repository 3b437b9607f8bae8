//! The search against certified values.

use super::*;

fn run(search: &mut LeastSquares, model: impl Fn(&[f64]) -> Vec<f64>) -> usize {
    let mut runs = 0;
    while let Some(values) = search.wanted() {
        search.give(model(&values));
        runs += 1;
    }
    runs
}

/// NIST Statistical Reference Datasets, nonlinear regression, Misra1a: data, certified values, standard deviations and
/// residual sum of squares. Errors are held against the certified ones with what the autocorrelation adds taken out again; their
/// tolerance is that of differences over a twentieth of a logit.
#[test]
fn certified_values_of_misra1a() {
    const DATA: [(f64, f64); 14] = [
        (10.07, 77.6),
        (14.73, 114.9),
        (17.94, 141.1),
        (23.93, 190.8),
        (29.61, 239.9),
        (35.18, 289.0),
        (40.02, 332.8),
        (44.82, 378.4),
        (50.76, 434.8),
        (55.05, 477.3),
        (61.01, 536.8),
        (66.40, 593.1),
        (75.47, 689.1),
        (81.78, 760.0),
    ];
    let model = |values: &[f64]| -> Vec<f64> {
        let at = |(_, x): &(f64, f64)| values[0] * -libm::expm1(-values[1] * x);
        DATA.iter().map(at).collect()
    };
    let bounds = |least, greatest| Bounds {
        least,
        greatest,
        by_logarithm: true,
    };
    let mut search = LeastSquares::new(
        vec![bounds(50.0, 2_000.0), bounds(1e-5, 1e-2)],
        &[500.0, 1e-4],
        DATA.iter().map(|(y, _)| *y).collect(),
        0.0,
    );
    let runs = run(&mut search, model);
    let fitted = search.fitted();
    let sum = fitted.rms * fitted.rms * 14.0;
    assert!(
        (sum / 1.245_513_889_4e-1 - 1.0).abs() < 1e-3,
        "{sum}, {runs} runs"
    );
    let certified = [
        (2.389_421_291_8e2, 2.707_007_524_1),
        (5.501_564_318_1e-4, 7.266_868_843_6e-6),
    ];
    let widened = (14.0 / fitted.effective).sqrt();
    for (found, (value, deviation)) in fitted.quantities.iter().zip(certified) {
        assert!((found.value - value).abs() < 0.1 * deviation, "{found:?}");
        let error = (found.greatest - found.least) / (2.0 * fitted.coverage) / widened;
        assert!((error / deviation - 1.0).abs() < 0.1, "{error} {deviation}");
    }
    assert!(fitted.correlation[0][1] < -0.99);
}

#[test]
fn what_has_no_effect_is_not_known() {
    let bounds = Bounds {
        least: 0.0,
        greatest: 10.0,
        by_logarithm: false,
    };
    let measured: Vec<f64> = (0..50_u8)
        .map(|x| 3.0 * f64::from(x) + f64::from(x % 3))
        .collect();
    let mut search = LeastSquares::new(vec![bounds; 2], &[5.0, 5.0], measured, 0.0);
    run(&mut search, |values| {
        (0..50_u8).map(|x| values[0] * f64::from(x)).collect()
    });
    let fitted = search.fitted();
    assert!(fitted.quantities[0].range_share < 0.05, "{fitted:?}");
    assert!(fitted.quantities[1].range_share > 0.95);
    assert!(fitted.conditioning < 1e-3);
}

/// Table of Student's distribution (GUM, table G.2, 95 %): 3.18, 2.57, 2.23 and 2.01 for 3, 5, 10 and 50 degrees.
#[test]
fn few_degrees_of_freedom_widen_the_interval() {
    for (freedom, quantile) in [(3.0, 3.18), (5.0, 2.57), (10.0, 2.23), (50.0, 2.01)] {
        let found = coverage(freedom);
        assert!((found - quantile).abs() < 0.05, "{freedom}: {found}");
    }
}

/// By hand: residuals 1, 1, −1, −1 have ρ = (1 − 1 + 1)/4.
#[test]
fn neighbouring_residuals_that_agree_count_for_fewer() {
    assert!((autocorrelation(&[1.0, 1.0, -1.0, -1.0]) - 0.25).abs() < 1e-12);
    assert_eq!(autocorrelation(&[1.0, -1.0, 1.0]), 0.0);
}
