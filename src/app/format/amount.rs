//! A number with what it measures, so that it can be shown, and so can its difference from another.

use super::{UnitSystem, duration, join};
use noonday_engine::scenario::Dimension;

/// What a number measures, and so in which unit it is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// A temperature, °C, in whole degrees.
    Temperature,
    /// A share, as a whole percentage.
    Percent,
    /// Electric energy, Wh.
    Energy,
    /// Heat summed over time, Wh.
    Heat,
    /// Electric power, W.
    Power,
    /// Sun on a level surface, W/m².
    Sun,
    /// A span of time, h.
    Duration,
    /// Money in the scenario's currency.
    Money,
    /// A mass, kg, in whole units: reckoned, not weighed.
    Weight,
    /// A plain number with two decimals.
    Ratio,
    /// Anything else, SI.
    Of(Dimension),
}

/// A number and what it measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amount {
    /// What it measures.
    pub measure: Measure,
    /// The number in the unit named there.
    pub value: f64,
}

impl Measure {
    /// So much of it.
    pub fn of(self, value: f64) -> Amount {
        Amount {
            measure: self,
            value,
        }
    }
}

impl UnitSystem {
    /// An amount as text.
    pub fn amount(self, amount: Amount, currency: &str) -> String {
        let value = amount.value;
        match amount.measure {
            Measure::Temperature => self.temperature(value, 0),
            Measure::Percent => self.percent(value),
            Measure::Energy => self.energy(value),
            Measure::Heat => self.heat(value),
            Measure::Power => self.watts(value),
            Measure::Sun => self.irradiance(value),
            Measure::Duration => duration(value),
            Measure::Money => self.money(value, currency),
            Measure::Weight => {
                let unit = super::unit(Dimension::Mass, self);
                join(&self.number(unit.shown(value), 0), unit.symbol)
            }
            Measure::Ratio => self.number(value, 2),
            Measure::Of(dimension) => self.quantity(dimension, value),
        }
    }

    /// How far an amount is above or below another, with its sign; nothing where no difference would show.
    pub fn difference(self, now: Amount, before: Amount, currency: &str) -> Option<String> {
        if now.measure != before.measure {
            return None;
        }
        let difference = now.value - before.value;
        let size = |value: f64| self.size(now.measure.of(value), currency);
        let text = size(difference.abs());
        if text == size(0.0) {
            return None;
        }
        let sign = if difference < 0.0 { '\u{2212}' } else { '+' };
        Some(format!("{sign}{text}"))
    }

    /// A difference has no zero of its own: degrees become differences of degrees, percentages percentage points.
    fn size(self, difference: Amount, currency: &str) -> String {
        match difference.measure {
            Measure::Temperature => {
                let degrees = super::unit(Dimension::TemperatureDifference, self);
                join(
                    &self.number(degrees.shown(difference.value), 0),
                    degrees.symbol,
                )
            }
            Measure::Percent => join(&self.number(difference.value * 100.0, 0), "points"),
            _ => self.amount(difference, currency),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn difference(measure: Measure, now: f64, before: f64) -> Option<String> {
        UnitSystem::Us.difference(measure.of(now), measure.of(before), "USD")
    }

    #[test]
    fn differences_carry_their_sign_and_the_unit_of_a_difference() {
        assert_eq!(
            difference(Measure::Temperature, 30.0, 25.0).as_deref(),
            Some("+9\u{a0}°F")
        );
        assert_eq!(
            difference(Measure::Percent, 0.34, 0.4).as_deref(),
            Some("\u{2212}6\u{a0}points")
        );
        assert_eq!(
            difference(Measure::Money, 4_300.0, 4_000.0).as_deref(),
            Some("+USD\u{a0}300")
        );
        assert_eq!(
            difference(Measure::Of(Dimension::Current), 40.0, 52.0).as_deref(),
            Some("\u{2212}12\u{a0}A")
        );
    }

    #[test]
    fn what_would_look_the_same_is_no_difference() {
        assert_eq!(difference(Measure::Temperature, 25.1, 25.0), None);
        assert_eq!(difference(Measure::Energy, 100.2, 100.0), None);
        assert_eq!(
            UnitSystem::Us.difference(Measure::Power.of(5.0), Measure::Energy.of(1.0), "USD"),
            None
        );
    }
}
