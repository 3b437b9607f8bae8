//! From the positions of a slider to round values in the shown unit and back.
//!
//! Where the example's value sits near one end of a wide range, an even scale would leave no room to set it: such
//! ranges run with the square or the cube of the position, in steps of two significant digits.

use crate::format::{UnitSystem, unit};
use noonday_engine::quantity::parse_decimal;
use noonday_engine::scenario::{Dimension, NumberField, ScenarioDocument};

/// Positions of a slider that does not run evenly.
const CURVED_POSITIONS: u32 = 200;
/// An even slider has about this many positions.
const EVEN_POSITIONS: f64 = 160.0;
/// Step of hours of the day.
const HOUR_STEP: f64 = 0.25;

/// How the positions of a slider map to values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// Greatest position; the least is 0.
    pub positions: u32,
    least: f64,
    most: f64,
    shape: Shape,
    unit: crate::format::Unit,
    minimum_si: f64,
    maximum_si: f64,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Shape {
    Even { step: f64 },
    Curved { power: i32 },
}

impl Scale {
    /// The scale of a number field, shaped by where the example's value lies in its range.
    pub fn new(number: &NumberField, example: &ScenarioDocument, units: UnitSystem) -> Self {
        let unit = unit(number.dimension, units);
        let (least, most) = (unit.shown(number.minimum), unit.shown(number.maximum));
        let usual = unit.shown((number.read)(example));
        let shape = shape(number.dimension, least, most, usual);
        let positions = match shape {
            Shape::Even { step } => {
                let steps = (most / step).floor() - (least / step).ceil();
                // One position more at each end that is not itself a round value.
                let ends = [least, most]
                    .iter()
                    .filter(|end| !is_multiple(**end, step))
                    .count();
                steps as u32 + ends as u32
            }
            Shape::Curved { .. } => CURVED_POSITIONS,
        };
        Self {
            positions,
            least,
            most,
            shape,
            unit,
            minimum_si: number.minimum,
            maximum_si: number.maximum,
        }
    }

    /// The value at a position, SI; the ends are the ends of the range to the bit.
    pub fn value_si(&self, position: u32) -> f64 {
        if position == 0 {
            return self.minimum_si;
        }
        if position >= self.positions {
            return self.maximum_si;
        }
        let shown = match self.shape {
            Shape::Even { step } => self.even_value(position, step),
            Shape::Curved { power } => {
                let share = f64::from(position) / f64::from(self.positions);
                let along = (0..power).fold(1.0, |product, _| product * share);
                rounded(self.least + (self.most - self.least) * along)
            }
        };
        self.unit.si(shown).clamp(self.minimum_si, self.maximum_si)
    }

    /// The position nearest to a value.
    pub fn position(&self, value_si: f64) -> u32 {
        let shown = self.unit.shown(value_si).clamp(self.least, self.most);
        let share = (shown - self.least) / (self.most - self.least);
        let guess = match self.shape {
            Shape::Even { .. } => share,
            Shape::Curved { power: 2 } => share.sqrt(),
            Shape::Curved { .. } => cube_root(share),
        };
        let guess = (guess * f64::from(self.positions)).round() as u32;
        let near = guess.saturating_sub(2)..=(guess + 2).min(self.positions);
        near.min_by(|one, other| {
            let away = |position: u32| (self.value_si(position) - value_si).abs();
            away(*one).total_cmp(&away(*other))
        })
        .unwrap_or(guess)
    }

    fn even_value(&self, position: u32, step: f64) -> f64 {
        let first = (self.least / step).ceil();
        let starts_round = is_multiple(self.least, step);
        let index = f64::from(position) - if starts_round { 0.0 } else { 1.0 };
        clean((first + index) * step)
    }
}

fn shape(dimension: Dimension, least: f64, most: f64, usual: f64) -> Shape {
    match dimension {
        Dimension::HourOfDay => return Shape::Even { step: HOUR_STEP },
        Dimension::Count => return Shape::Even { step: 1.0 },
        _ => {}
    }
    let share = (usual - least) / (most - least);
    // A range that spans zero, or whose usual value is well inside it, is even.
    let wide = least >= 0.0 && most > 20.0 * least;
    match share {
        share if wide && share < 0.045 => Shape::Curved { power: 3 },
        share if wide && share < 0.13 => Shape::Curved { power: 2 },
        _ => Shape::Even {
            step: round_step((most - least) / EVEN_POSITIONS),
        },
    }
}

/// The nearest of 1, 2 and 5 times a power of ten.
fn round_step(step: f64) -> f64 {
    let mut decade = 1.0;
    while decade > step {
        decade /= 10.0;
    }
    while decade * 10.0 <= step {
        decade *= 10.0;
    }
    let factor = match step / decade {
        factor if factor < 1.5 => 1.0,
        factor if factor < 3.5 => 2.0,
        factor if factor < 7.5 => 5.0,
        _ => 10.0,
    };
    clean(factor * decade)
}

/// Two significant digits.
fn rounded(value: f64) -> f64 {
    if value == 0.0 {
        return 0.0;
    }
    let mut unit = 1.0;
    while value.abs() / unit < 10.0 {
        unit /= 10.0;
    }
    while value.abs() / unit >= 100.0 {
        unit *= 10.0;
    }
    clean((value / unit).round() * unit)
}

/// Removes the dust that products of decimal steps leave in binary.
fn clean(value: f64) -> f64 {
    parse_decimal(&format!("{value:.9}")).unwrap_or(value)
}

fn is_multiple(value: f64, step: f64) -> bool {
    let steps = value / step;
    (steps - steps.round()).abs() < 1e-9
}

/// Newton's iteration; the result only starts a search.
fn cube_root(value: f64) -> f64 {
    (0..40).fold(1.0, |root: f64, _| {
        (2.0 * root + value / (root * root).max(1e-12)) / 3.0
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::{example, field, fields};

    fn scale(key: &str, units: UnitSystem) -> Scale {
        Scale::new(field(key).unwrap().number().unwrap(), &example(), units)
    }

    #[test]
    fn steps_are_round_in_the_shown_unit() {
        let walls = scale("shell.wall_insulation_m", UnitSystem::Metric);
        assert_eq!(walls.positions, 150);
        assert_eq!(walls.value_si(55), 0.055);
        let walls = scale("shell.wall_insulation_m", UnitSystem::Us);
        let shown = walls.value_si(10) / 0.0254;
        assert!(
            (shown / 0.05 - (shown / 0.05).round()).abs() < 1e-9,
            "{shown}"
        );
        let hours = scale("cooler.run_from_hour", UnitSystem::Metric);
        assert_eq!((hours.positions, hours.value_si(90)), (96, 22.5));
    }

    #[test]
    fn every_slider_reaches_both_ends_and_rises_all_the_way() {
        for system in [UnitSystem::Us, UnitSystem::Metric] {
            for field in fields() {
                let Some(number) = field.number() else {
                    continue;
                };
                let scale = Scale::new(number, &example(), system);
                assert!((1..=400).contains(&scale.positions), "{}", field.key);
                assert_eq!(scale.value_si(0), number.minimum);
                assert_eq!(scale.value_si(scale.positions), number.maximum);
                for position in 1..=scale.positions {
                    assert!(
                        scale.value_si(position) >= scale.value_si(position - 1),
                        "{} {system:?} falls at {position}",
                        field.key
                    );
                }
            }
        }
    }

    #[test]
    fn the_example_sits_where_it_can_be_moved_both_ways() {
        for field in fields() {
            let Some(number) = field.number() else {
                continue;
            };
            let value = (number.read)(&example());
            let scale = Scale::new(number, &example(), UnitSystem::Metric);
            let share = f64::from(scale.position(value)) / f64::from(scale.positions);
            let at_an_end = value == number.minimum || value == number.maximum;
            assert!(
                at_an_end || (0.02..=0.99).contains(&share),
                "{} sits at {share}",
                field.key
            );
        }
    }

    #[test]
    fn position_and_value_agree() {
        for field in fields() {
            let Some(number) = field.number() else {
                continue;
            };
            let scale = Scale::new(number, &example(), UnitSystem::Us);
            for position in 0..=scale.positions {
                let value = scale.value_si(position);
                let back = scale.value_si(scale.position(value));
                assert_eq!(back, value, "{} at {position}", field.key);
            }
        }
    }
}
