//! Heat index of the National Weather Service (United States) and its categories.
//!
//! A regression for a walking adult in shade and light wind; full sun adds up to 8 K. It is the
//! full algorithm with both humidity adjustments. The chart that the service publishes leaves out
//! the adjustment above 85 % relative humidity, so up to 1.3 K stand between it and this.
//!
//! Source: Rothfusz, NWS Southern Region SR 90-23 (1990), with the algorithm of the Weather Prediction
//! Center. Of the two published sets of categories the more cautious is used.

use serde::{Deserialize, Serialize};

/// Degrees Fahrenheit at which the regression takes over from the simple form.
const REGRESSION_FROM_F: f64 = 80.0;

/// Coefficients of 1, T, R, TR, T², R², T²R, TR², T²R² (Rothfusz 1990).
const REGRESSION: [f64; 9] = [
    -42.379,
    2.049_015_23,
    10.143_331_27,
    -0.224_755_41,
    -0.006_837_83,
    -0.054_817_17,
    0.001_228_74,
    0.000_852_82,
    -0.000_001_99,
];

/// Categories of the heat index (National Weather Service; 80, 90, 103 and 125 °F).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum HeatIndexCategory {
    /// Below 80 °F (26.7 °C).
    None,
    /// From 80 °F (26.7 °C): fatigue with long exposure.
    Caution,
    /// From 90 °F (32.2 °C): heat cramps and exhaustion possible.
    ExtremeCaution,
    /// From 103 °F (39.4 °C): heat exhaustion likely, heat stroke possible.
    Danger,
    /// From 125 °F (51.7 °C): heat stroke highly likely.
    ExtremeDanger,
}

impl HeatIndexCategory {
    /// The category of a heat index in °C, any: from 80, 90, 103 and 125 °F on.
    #[must_use]
    pub fn of(heat_index_c: f64) -> Self {
        let heat_index_f = fahrenheit_from_celsius(heat_index_c);
        if heat_index_f >= 125.0 {
            Self::ExtremeDanger
        } else if heat_index_f >= 103.0 {
            Self::Danger
        } else if heat_index_f >= 90.0 {
            Self::ExtremeCaution
        } else if heat_index_f >= 80.0 {
            Self::Caution
        } else {
            Self::None
        }
    }

    /// The heat index at which the category begins, °C; none for [`Self::None`].
    #[must_use]
    pub fn from_c(self) -> Option<f64> {
        let from_f = match self {
            Self::None => return None,
            Self::Caution => 80.0,
            Self::ExtremeCaution => 90.0,
            Self::Danger => 103.0,
            Self::ExtremeDanger => 125.0,
        };
        Some(celsius_from_fahrenheit(from_f))
    }
}

/// Gives the heat index, °C.
///
/// The mean of T and 0.5 (T + 61 + 1.2 (T − 68) + 0.094 R); where that reaches 80 °F, the regression
/// of Rothfusz in T (°F) and R (%) instead, less ((13 − R)/4) √((17 − |T − 95|)/17) for R < 13 and
/// T in 80…112 °F, plus ((R − 85)/10) ((87 − T)/5) for R > 85 and T in 80…87 °F.
///
/// * `dry_bulb_c` — °C, −20…60; the regression was fitted up to about 45 °C
/// * `relative_humidity` — 0…1
///
/// Source: Rothfusz (1990), SR 90-23, and the algorithm of the Weather Prediction Center.
///
/// ```
/// let heat_index_c = noonday_engine::comfort::heat_index::heat_index_c(32.2222, 0.7);
/// assert!((heat_index_c - 41.07).abs() < 0.01);
/// ```
#[must_use]
pub fn heat_index_c(dry_bulb_c: f64, relative_humidity: f64) -> f64 {
    let temperature_f = fahrenheit_from_celsius(dry_bulb_c);
    let humidity_percent = 100.0 * relative_humidity;
    let simple_f =
        0.5 * (temperature_f + 61.0 + 1.2 * (temperature_f - 68.0) + 0.094 * humidity_percent);
    let mean_f = f64::midpoint(simple_f, temperature_f);
    if mean_f < REGRESSION_FROM_F {
        return celsius_from_fahrenheit(mean_f);
    }
    let heat_index_f = regression_f(temperature_f, humidity_percent)
        + adjustment_f(temperature_f, humidity_percent);
    celsius_from_fahrenheit(heat_index_f)
}

/// The regression without adjustments, °F.
fn regression_f(temperature_f: f64, humidity_percent: f64) -> f64 {
    let (t, r) = (temperature_f, humidity_percent);
    let terms = [
        1.0,
        t,
        r,
        t * r,
        t * t,
        r * r,
        t * t * r,
        t * r * r,
        t * t * r * r,
    ];
    REGRESSION
        .iter()
        .zip(terms)
        .map(|(coefficient, term)| coefficient * term)
        .sum()
}

/// What very dry and very humid air add to the regression, °F.
fn adjustment_f(temperature_f: f64, humidity_percent: f64) -> f64 {
    if humidity_percent < 13.0 && (80.0..=112.0).contains(&temperature_f) {
        let shape = ((17.0 - (temperature_f - 95.0).abs()) / 17.0).sqrt();
        return -(13.0 - humidity_percent) / 4.0 * shape;
    }
    if humidity_percent > 85.0 && (80.0..=87.0).contains(&temperature_f) {
        return (humidity_percent - 85.0) / 10.0 * (87.0 - temperature_f) / 5.0;
    }
    0.0
}

fn fahrenheit_from_celsius(temperature_c: f64) -> f64 {
    1.8 * temperature_c + 32.0
}

fn celsius_from_fahrenheit(temperature_f: f64) -> f64 {
    (temperature_f - 32.0) / 1.8
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dry_adjustment_vanishes_at_its_edges() {
        assert!(adjustment_f(112.0, 5.0).abs() < 1e-9);
        assert!(adjustment_f(112.1, 5.0).abs() < 1e-9);
        assert!((adjustment_f(95.0, 5.0) + 2.0).abs() < 1e-12);
        // By hand: (90 − 85)/10 · (87 − 80)/5 = 0.7.
        assert!((adjustment_f(80.0, 90.0) - 0.7).abs() < 1e-12);
    }

    #[test]
    fn categories_begin_where_they_say() {
        for category in [
            HeatIndexCategory::Caution,
            HeatIndexCategory::ExtremeCaution,
            HeatIndexCategory::Danger,
            HeatIndexCategory::ExtremeDanger,
        ] {
            let from_c = category.from_c().unwrap();
            assert_eq!(HeatIndexCategory::of(from_c + 1e-9), category);
            assert!(HeatIndexCategory::of(from_c - 1e-6) < category);
        }
    }

    #[test]
    fn finite_from_frost_to_furnace() {
        for temperature in -20..=60 {
            for humidity in 0..=100 {
                let value = heat_index_c(f64::from(temperature), f64::from(humidity) / 100.0);
                assert!(value.is_finite());
            }
        }
    }
}
