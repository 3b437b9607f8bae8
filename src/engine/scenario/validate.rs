//! From an as-typed document to a scenario that can be run, or every reason why not.

use super::document::{DOCUMENT_VERSION, FanUse, HumidityGiven, NeededFor, ScenarioDocument};
use super::field::{Field, Kind};
use super::fields::{field, fields};
use super::rating::cooler_rating;
use crate::cooler::bypass::BypassError;
use crate::cooler::coil::{Coil, CoilError};
use crate::cooler::curves::WINDOW_UNIT_WINKLER_2013;
use crate::cooler::rating::PartSpeed;

/// A validated document: every value finite, in range and consistent with the others.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario(ScenarioDocument);

/// What is wrong with one field.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldError {
    /// Key of the field in the fields table.
    pub key: &'static str,
    /// What is wrong.
    pub problem: Problem,
}

/// Why a value cannot be run.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// Not a number.
    NotFinite,
    /// Outside its range.
    OutOfRange {
        /// The value.
        value: f64,
        /// Least allowed.
        minimum: f64,
        /// Greatest allowed.
        maximum: f64,
    },
    /// Has to be a whole number.
    NotWhole {
        /// The value.
        value: f64,
    },
    /// Longer than allowed.
    TooLong {
        /// Characters it has.
        characters: usize,
        /// Most allowed.
        longest: usize,
    },
    /// Has to be less than another field.
    NotBelow {
        /// The value.
        value: f64,
        /// Key of the field it must stay below.
        other_key: &'static str,
        /// That field's value, less the least gap where one is asked.
        other: f64,
    },
    /// Glass must leave a tenth of its face as wall.
    GlassLargerThanFace {
        /// Glass area, m².
        glass_area_m2: f64,
        /// Most that fits, m².
        largest_area_m2: f64,
    },
    /// No coil splits its capacity so: the air would leave wetter than it can be, or the surface would have to freeze.
    ImpossibleSensibleShare {
        /// The share asked.
        value: f64,
        /// The greatest share that this air flow allows, where that is the trouble.
        greatest: Option<f64>,
    },
    /// Shares of one whole that add to more than it.
    SharesAboveOne {
        /// Their sum.
        sum: f64,
    },
    /// A document of another version.
    UnknownVersion {
        /// Its version.
        version: u32,
    },
}

/// Share of a face that glass may take at most; the rest carries it.
const LARGEST_GLASS_SHARE: f64 = 0.9;

/// Least difference between the day's high and low, K: below it the daily range has no meaning.
const LEAST_DAILY_RANGE_K: f64 = 0.5;

/// Least usable share of the bank between its lowest and highest charge.
const LEAST_USABLE_SHARE: f64 = 0.05;

/// Most that an inverter gives at a start over its continuous rating: common practice, no source.
const GREATEST_SURGE_RATIO: f64 = 10.0;

impl Scenario {
    /// Validates a whole document.
    ///
    /// Each field is checked alone first; only when all of them hold are they checked against one another.
    ///
    /// # Errors
    /// A [`FieldError`] for every field that is out of range or at odds with another, with its value and the allowed range.
    pub fn new(document: ScenarioDocument) -> Result<Self, Vec<FieldError>> {
        let mut errors: Vec<FieldError> = fields()
            .filter_map(|field| check_alone(field, &document))
            .collect();
        if document.version != DOCUMENT_VERSION {
            errors.push(FieldError {
                key: "version",
                problem: Problem::UnknownVersion {
                    version: document.version,
                },
            });
        }
        if errors.is_empty() {
            check_together(&document, &mut errors);
        }
        if errors.is_empty() {
            Ok(Self(document))
        } else {
            Err(errors)
        }
    }

    /// The document inside.
    #[must_use]
    pub fn document(&self) -> &ScenarioDocument {
        &self.0
    }

    /// Gives the document back for editing.
    #[must_use]
    pub fn into_document(self) -> ScenarioDocument {
        self.0
    }

    /// The same consult without any cooler.
    #[must_use]
    pub fn without_cooler(&self) -> Self {
        let mut document = self.0.clone();
        document.cooler.installed = false;
        Self(document)
    }

    /// Whether the fan ever runs.
    #[must_use]
    pub fn has_fan(&self) -> bool {
        self.0.ventilation.fan_use != FanUse::Off && self.0.ventilation.fan_flow_m3_s > 0.0
    }

    /// Whether any window of the need is in use.
    #[must_use]
    pub fn has_need(&self) -> bool {
        self.0
            .need
            .windows
            .iter()
            .any(|window| window.needed_for != NeededFor::Nobody)
    }
}

fn check_alone(field: &Field, document: &ScenarioDocument) -> Option<FieldError> {
    let problem = match &field.kind {
        Kind::Number(number) => {
            let value = (number.read)(document);
            check_number(
                value,
                number.minimum,
                number.maximum,
                number.dimension.is_whole(),
            )
        }
        Kind::Text(text) => check_text((text.read)(document), text.longest),
        Kind::Choice(_) | Kind::Switch(_) | Kind::Date(_) => None,
    };
    problem.map(|problem| FieldError {
        key: field.key,
        problem,
    })
}

fn check_number(value: f64, minimum: f64, maximum: f64, whole: bool) -> Option<Problem> {
    if !value.is_finite() {
        return Some(Problem::NotFinite);
    }
    if value < minimum || value > maximum {
        return Some(Problem::OutOfRange {
            value,
            minimum,
            maximum,
        });
    }
    (whole && value.fract() != 0.0).then_some(Problem::NotWhole { value })
}

fn check_text(text: &str, longest: usize) -> Option<Problem> {
    let characters = text.chars().count();
    (characters > longest).then_some(Problem::TooLong {
        characters,
        longest,
    })
}

fn check_together(document: &ScenarioDocument, errors: &mut Vec<FieldError>) {
    let battery = &document.battery;
    let below = [
        (
            "day.low_c",
            document.day.low_c,
            "day.high_c",
            document.day.high_c - LEAST_DAILY_RANGE_K,
        ),
        (
            "battery.least_state_of_charge",
            battery.least_state_of_charge,
            "battery.most_state_of_charge",
            battery.most_state_of_charge - LEAST_USABLE_SHARE,
        ),
        (
            "cooler.cut_out_v_per_12_v",
            document.cooler.cut_out_v_per_12_v,
            "cooler.recovery_v_per_12_v",
            document.cooler.recovery_v_per_12_v,
        ),
        (
            "cooler.inverter_rated_w",
            document.cooler.inverter_rated_w,
            "cooler.inverter_surge_w",
            document.cooler.inverter_surge_w,
        ),
        (
            "cooler.inverter_surge_w",
            document.cooler.inverter_surge_w,
            "cooler.inverter_rated_w",
            GREATEST_SURGE_RATIO * document.cooler.inverter_rated_w,
        ),
    ];
    for (key, value, other_key, other) in below {
        if value > other {
            errors.push(FieldError {
                key,
                problem: Problem::NotBelow {
                    value,
                    other_key,
                    other,
                },
            });
        }
    }
    check_glass(document, errors);
    check_coil(document, errors);
    check_humidity(document, errors);
    let sum = document.glass.sun_on_floor_share + document.glass.sun_on_furnishings_share;
    if sum > 1.0 {
        errors.push(FieldError {
            key: "glass.sun_on_furnishings_share",
            problem: Problem::SharesAboveOne { sum },
        });
    }
}

/// A relative humidity at the high has to give a dew point in the range of that field.
fn check_humidity(document: &ScenarioDocument, errors: &mut Vec<FieldError>) {
    if document.day.humidity_given != HumidityGiven::RelativeHumidity {
        return;
    }
    let Some(dew_point) = field("day.dew_point_c").and_then(Field::number) else {
        return;
    };
    let least = document.relative_humidity_at_high(dew_point.minimum);
    let greatest = document
        .relative_humidity_at_high(dew_point.maximum)
        .min(1.0);
    let value = document.day.relative_humidity_at_high;
    if !(least..=greatest).contains(&value) {
        errors.push(FieldError {
            key: "day.relative_humidity_at_high",
            problem: Problem::OutOfRange {
                value,
                minimum: least,
                maximum: greatest,
            },
        });
    }
}

fn check_coil(document: &ScenarioDocument, errors: &mut Vec<FieldError>) {
    let built = Coil::new(
        cooler_rating(document),
        &WINDOW_UNIT_WINKLER_2013,
        PartSpeed::FIXED,
    );
    let Err(error) = built else {
        return;
    };
    let greatest = match error {
        CoilError::Bypass(BypassError::OutletSupersaturated { greatest, .. }) => Some(greatest),
        _ => None,
    };
    errors.push(FieldError {
        key: "cooler.sensible_heat_ratio_rated",
        problem: Problem::ImpossibleSensibleShare {
            value: document.cooler.sensible_heat_ratio_rated,
            greatest,
        },
    });
}

fn check_glass(document: &ScenarioDocument, errors: &mut Vec<FieldError>) {
    let (vehicle, glass) = (&document.vehicle, &document.glass);
    let end = vehicle.width_m * vehicle.height_m;
    let side = vehicle.length_m * vehicle.height_m;
    let roof = vehicle.length_m * vehicle.width_m;
    let faces = [
        ("glass.nose_area_m2", glass.nose_area_m2, end),
        ("glass.left_area_m2", glass.left_area_m2, side),
        ("glass.right_area_m2", glass.right_area_m2, side),
        ("glass.rear_area_m2", glass.rear_area_m2, end),
        ("glass.roof_area_m2", glass.roof_area_m2, roof),
    ];
    for (key, glass_area_m2, face_area_m2) in faces {
        let largest_area_m2 = LARGEST_GLASS_SHARE * face_area_m2;
        if glass_area_m2 > largest_area_m2 {
            errors.push(FieldError {
                key,
                problem: Problem::GlassLargerThanFace {
                    glass_area_m2,
                    largest_area_m2,
                },
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    fn problem_of(change: impl Fn(&mut ScenarioDocument)) -> Vec<FieldError> {
        let mut document = example();
        change(&mut document);
        Scenario::new(document).unwrap_err()
    }

    #[test]
    fn the_example_is_valid() {
        assert!(Scenario::new(example()).is_ok());
    }

    #[test]
    fn each_number_is_refused_just_outside_its_range() {
        for field in fields() {
            let Some(number) = field.number() else {
                continue;
            };
            for value in [
                number.minimum - 1.0,
                number.maximum + 1.0,
                f64::NAN,
                f64::INFINITY,
            ] {
                let errors = problem_of(|document| (number.write)(document, value));
                assert!(
                    errors.iter().any(|error| error.key == field.key),
                    "{} accepts {value}",
                    field.key
                );
            }
        }
    }

    #[test]
    fn values_at_odds_are_refused_together() {
        let errors = problem_of(|document| document.day.low_c = document.day.high_c);
        assert_eq!(errors[0].key, "day.low_c");
        let errors = problem_of(|document| document.glass.nose_area_m2 = 3.0);
        assert!(matches!(
            errors[0].problem,
            Problem::GlassLargerThanFace { .. }
        ));
        let errors = problem_of(|document| document.glass.sun_on_floor_share = 0.9);
        assert!(matches!(errors[0].problem, Problem::SharesAboveOne { .. }));
    }
}
