//! The fit of a logged day against series of an independent program: what it was given is to be found again.
//!
//! Source and how the series were made: `reference/thermal/README.md`. Cabin air of free-floating, lined boxes, ten-minute means over
//! three days. Fitted are the conductivity of the insulation, the air change and the heat capacity of the furniture, as multiples of
//! what the program was given. The engine differs from that program by two or three tenths of a kelvin, which hang together over
//! hours: it is this, and no noise, from which the fit has to tell its own errors.

use noonday_engine::advice::learning::{Bounds, LeastSquares, MODEL_RMS_K};
use noonday_tests::Table;
use noonday_tests::thermal_box::cases;

/// Minutes in a mean of the reference.
const MINUTES: usize = 10;

/// How far the multiples are searched either way.
const FARTHEST: f64 = 6.0;

/// A search begins far off: poor insulation, a leaky and an empty box.
const START: [f64; 3] = [2.5, 3.0, 0.4];

/// How far the fitted conductivity may be off, share: the accuracy asked of loads, which go with it.
const CONDUCTIVITY_ALLOWED: f64 = 0.10;

#[test]
fn boxes_of_another_program_are_found_again() {
    let mut compared = 0;
    for name in ["A_GOL_25_W", "A_GOL_50_W", "A_TAM_50_B"] {
        let case = cases().into_iter().find(|case| case.name == name).unwrap();
        let reference: Vec<f64> = Table::read(&case.ten_minute_file())
            .rows()
            .map(|row| row.number("cabin_air_c"))
            .collect();
        let bounds = Bounds {
            least: 1.0 / FARTHEST,
            greatest: FARTHEST,
            by_logarithm: true,
        };
        let count = reference.len();
        let mut search = LeastSquares::new(vec![bounds; 3], &START, reference, MODEL_RMS_K);
        while let Some(values) = search.wanted() {
            let run = case.clone().scaled([values[0], values[1], values[2]]).run();
            let means = run.chunks(MINUTES).map(|chunk| {
                chunk.iter().map(|minute| minute.air_c).sum::<f64>() / chunk.len() as f64
            });
            search.give(means.take(count).collect());
        }
        let fitted = search.fitted();
        println!(
            "{name}: {:.2} K left, {:.0} of {count} count",
            fitted.rms, fitted.effective
        );
        for (what, found) in ["conductivity", "air change", "furniture"]
            .iter()
            .zip(&fitted.quantities)
        {
            println!(
                "  {what}: {:.3} ({:.3} to {:.3})",
                found.value, found.least, found.greatest
            );
            assert!(
                (found.least..=found.greatest).contains(&1.0),
                "{name}, {what}: {found:?}"
            );
        }
        let conductivity = fitted.quantities[0].value;
        assert!(
            (conductivity - 1.0).abs() <= CONDUCTIVITY_ALLOWED,
            "{name}: {conductivity}"
        );
        compared += 1;
    }
    assert_eq!(compared, 3);
}
