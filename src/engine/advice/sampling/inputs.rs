//! What is uncertain, by how much, and what it changes in a scenario.

use super::distribution::Distribution;
use crate::advice::ladder::{scale, shift};
use crate::quantity::Bounded;
use crate::scenario::{Basis, ScenarioDocument};
use serde::{Deserialize, Serialize};

/// An uncertain input.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Uncertain {
    /// Leakage area of the closed cabin.
    Leakage,
    /// Share of roof and walls that is really stuffed.
    FilledShare,
    /// Share of the sun that the outside absorbs.
    Paint,
    /// High of the forecast.
    ForecastHigh,
    /// Dew point of the forecast.
    DewPoint,
    /// Cooling capacity against its plate.
    Capacity,
    /// Efficiency of the cooler against its plate.
    Efficiency,
    /// Capacity that the bank has lost.
    Ageing,
    /// Draw of everything but cooler and fan.
    OtherLoads,
}

/// Least difference between the day's high and low that a scenario allows, K.
const LEAST_DAILY_RANGE_K: f64 = 0.5;

impl Uncertain {
    /// Number of uncertain inputs.
    pub const COUNT: usize = 9;

    /// Every uncertain input.
    pub const ALL: [Uncertain; Self::COUNT] = [
        Uncertain::Leakage,
        Uncertain::FilledShare,
        Uncertain::Paint,
        Uncertain::ForecastHigh,
        Uncertain::DewPoint,
        Uncertain::Capacity,
        Uncertain::Efficiency,
        Uncertain::Ageing,
        Uncertain::OtherLoads,
    ];

    /// How it is spread, in the unit of its field or as a factor, and where that comes from.
    #[must_use]
    pub fn spread(self) -> (Distribution, Basis) {
        match self {
            Self::Leakage => (
                Distribution::LogNormalFactor { deviation: 0.4 },
                Basis::CommonPractice,
            ),
            Self::FilledShare => (
                Distribution::NormalShift { deviation: 0.06 },
                Basis::CommonPractice,
            ),
            Self::Paint => (
                Distribution::NormalShift { deviation: 0.05 },
                Basis::CommonPractice,
            ),
            Self::ForecastHigh => (
                Distribution::NormalShift { deviation: 1.7 },
                Basis::FromMemory(
                    "day-ahead highs of the National Weather Service are off by 1.4 K on average, which is 1.7 K of standard deviation",
                ),
            ),
            Self::DewPoint => (
                Distribution::NormalShift { deviation: 1.5 },
                Basis::CommonPractice,
            ),
            Self::Capacity | Self::Efficiency => (
                Distribution::TriangularFactor {
                    low: 0.8,
                    mode: 1.0,
                    high: 1.05,
                },
                Basis::CommonPractice,
            ),
            Self::Ageing => (
                Distribution::UniformFactor {
                    low: 0.8,
                    high: 1.0,
                },
                Basis::FromMemory(
                    "IEEE 450 and 1188: a battery is replaced when it holds 80 % of its rated capacity",
                ),
            ),
            Self::OtherLoads => (
                Distribution::LogNormalFactor { deviation: 0.25 },
                Basis::CommonPractice,
            ),
        }
    }

    /// Puts a drawn shift or factor into a document; what leaves the range of its field is held at the end of it.
    pub(super) fn apply(self, document: &mut ScenarioDocument, drawn: f64) {
        match self {
            Self::Leakage => scale(document, "shell.leakage_area_m2", drawn),
            Self::FilledShare => shift(document, "shell.filled_share", drawn),
            Self::Paint => {
                shift(document, "shell.roof_sun_absorptance", drawn);
                shift(document, "shell.wall_sun_absorptance", drawn);
            }
            Self::ForecastHigh => {
                // The water in the air is a question of its own.
                document.state_dew_point();
                shift(document, "day.high_c", drawn);
                let day = &mut document.day;
                day.high_c = day.high_c.at_least(day.low_c + LEAST_DAILY_RANGE_K);
            }
            Self::DewPoint => {
                document.state_dew_point();
                shift(document, "day.dew_point_c", drawn);
            }
            Self::Capacity => {
                let keys = ["cooler.capacity_rated_w", "cooler.electric_power_rated_w"];
                scale_each(document, &keys, drawn);
            }
            Self::Efficiency => scale(document, "cooler.electric_power_rated_w", 1.0 / drawn),
            Self::Ageing => scale(document, "battery.health_share", drawn),
            Self::OtherLoads => {
                let keys = [
                    "loads.fridge.power_w",
                    "loads.lights.power_w",
                    "loads.electronics.power_w",
                    "loads.other.power_w",
                ];
                scale_each(document, &keys, drawn);
            }
        }
    }
}

fn scale_each(document: &mut ScenarioDocument, keys: &[&str], factor: f64) {
    for key in keys {
        scale(document, key, factor);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::{Scenario, example};

    #[test]
    fn every_input_changes_the_example_and_keeps_it_valid_in_its_tails() {
        for input in Uncertain::ALL {
            let (distribution, _) = input.spread();
            for probability in [1e-6, 0.1, 0.9, 1.0 - 1e-6] {
                let mut document = example();
                input.apply(&mut document, distribution.quantile(probability));
                assert_ne!(document, example(), "{input:?}");
                assert!(Scenario::new(document).is_ok(), "{input:?} {probability}");
            }
        }
    }

    #[test]
    fn capacity_and_efficiency_do_not_mix() {
        let mut document = example();
        Uncertain::Capacity.apply(&mut document, 0.9);
        let cooler = &document.cooler;
        assert!((cooler.capacity_rated_w / cooler.electric_power_rated_w - 2.5).abs() < 1e-12);
        Uncertain::Efficiency.apply(&mut document, 0.8);
        let cooler = &document.cooler;
        assert_eq!(cooler.capacity_rated_w, 1_800.0);
        assert!((cooler.capacity_rated_w / cooler.electric_power_rated_w - 2.0).abs() < 1e-12);
    }
}
