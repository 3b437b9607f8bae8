//! How numbers, units, clocks and money are shown and read: the only place that converts between SI and what is shown.

mod amount;
mod clock;
mod csv;
#[cfg(test)]
mod grain_tests;
mod language;
mod number;
mod unit;

pub use amount::{Amount, Measure};
pub use clock::{duration, parse_clock, parse_date, weekday, weekday_index};
pub use csv::csv_text;
pub use language::{CalendarNames, calendar_names, date, day_and_month, speak};
pub use number::{Typed, entry_text, parse_number};
pub use unit::{Unit, unit};

use noonday_engine::scenario::Dimension;

/// Which units are shown; the document holds SI always.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnitSystem {
    /// °F, BTU/h, feet and inches; clock with am and pm.
    Us,
    /// °C, W, metres and millimetres; clock of 24 hours.
    Metric,
}

impl UnitSystem {
    /// Stable name for storage.
    pub fn name(self) -> &'static str {
        match self {
            Self::Us => "us",
            Self::Metric => "metric",
        }
    }

    /// Reads a stable name back.
    pub fn from_name(name: &str) -> Option<Self> {
        match name {
            "us" => Some(Self::Us),
            "metric" => Some(Self::Metric),
            _ => None,
        }
    }

    /// First guess from a language tag: only a tag of the United States gives US units.
    pub fn from_language(tag: &str) -> Self {
        let region = tag.split('-').skip(1).find(|part| part.len() == 2);
        match region {
            Some(region) if region.eq_ignore_ascii_case("US") => Self::Us,
            _ => Self::Metric,
        }
    }

    /// A value in SI as text with its unit: `40 mm`.
    pub fn quantity(self, dimension: Dimension, value_si: f64) -> String {
        if dimension == Dimension::HourOfDay {
            return self.clock(value_si);
        }
        let unit = unit(dimension, self);
        let number = self.number(unit.shown(value_si), unit.decimals);
        join(&number, unit.symbol)
    }

    /// Step in which things are moved on a plan, m: a centimetre, or half an inch.
    pub fn plan_step_m(self) -> f64 {
        match self {
            Self::Metric => 0.01,
            Self::Us => 0.012_7,
        }
    }

    /// The nearest whole number of such steps, m, to the tenth of a millimetre, so that it is short to write.
    pub fn on_plan_grid(self, length_m: f64) -> f64 {
        let step_m = self.plan_step_m();
        ((length_m / step_m).round() * step_m * 10_000.0).round() / 10_000.0
    }

    /// A temperature with so many decimals.
    pub fn temperature(self, temperature_c: f64, decimals: usize) -> String {
        let unit = unit(Dimension::Temperature, self);
        join(
            &self.number(unit.shown(temperature_c), decimals),
            unit.symbol,
        )
    }

    /// A temperature and the limit that it is held against, with a decimal only where whole degrees would mislead.
    pub fn temperature_against(self, temperature_c: f64, limit_c: f64) -> (String, String) {
        let unit = unit(Dimension::Temperature, self);
        let (shown, limit) = (unit.shown(temperature_c), unit.shown(limit_c));
        let near = (shown - limit).abs() < 1.0;
        let limit_is_whole = (limit - limit.round()).abs() < 0.05;
        (
            self.temperature(temperature_c, usize::from(near)),
            self.temperature(limit_c, usize::from(!limit_is_whole)),
        )
    }

    /// A number with grouped thousands, a true minus sign and no needless zeros.
    pub fn number(self, value: f64, decimals: usize) -> String {
        number::prose(value, decimals, language::marks())
    }

    /// A share as a whole percentage.
    pub fn percent(self, share: f64) -> String {
        join(&self.number(share * 100.0, 0), "%")
    }

    /// Electric energy: Wh below 10 kWh, kWh above.
    pub fn energy(self, energy_wh: f64) -> String {
        if energy_wh.abs() < 10_000.0 {
            join(&self.number(energy_wh, 0), "Wh")
        } else {
            join(&self.number(energy_wh / 1_000.0, 1), "kWh")
        }
    }

    /// Heat summed over time, in Wh or BTU.
    pub fn heat(self, heat_wh: f64) -> String {
        match self {
            Self::Metric => self.energy(heat_wh),
            Self::Us => {
                let btu = unit(Dimension::HeatFlow, self).shown(heat_wh);
                join(&self.number(btu, 0), "BTU")
            }
        }
    }

    /// Sun on a square metre, or on a square foot.
    pub fn irradiance(self, sun_w_m2: f64) -> String {
        let shown = self.number(self.irradiance_number(sun_w_m2), 0);
        join(&shown, self.irradiance_symbol())
    }

    /// The same as a number alone.
    pub fn irradiance_number(self, sun_w_m2: f64) -> f64 {
        let (flow, area) = (unit(Dimension::HeatFlow, self), unit(Dimension::Area, self));
        flow.shown(sun_w_m2) / area.shown(1.0)
    }

    /// Sun of a whole day on a square metre, or on a square foot.
    pub fn day_sun(self, sun_wh_m2: f64) -> String {
        match self {
            Self::Us => join(
                &self.number(self.irradiance_number(sun_wh_m2), 0),
                "BTU/ft²",
            ),
            Self::Metric => join(&self.number(sun_wh_m2 / 1_000.0, 1), "kWh/m²"),
        }
    }

    /// The unit of it.
    pub fn irradiance_symbol(self) -> &'static str {
        match self {
            Self::Us => "BTU/(h·ft²)",
            Self::Metric => "W/m²",
        }
    }

    /// How well a part insulates: U where SI is shown, R in the United States.
    pub fn insulation(self, transmittance_w_m2_k: f64) -> String {
        match self {
            Self::Metric => self.quantity(Dimension::Transmittance, transmittance_w_m2_k),
            Self::Us => {
                let resistance = unit(Dimension::ThermalResistance, self);
                let shown = resistance.shown(1.0 / transmittance_w_m2_k);
                format!("R-{}", self.number(shown, 1))
            }
        }
    }

    /// Degrees above a limit, summed over hours.
    pub fn degree_hours(self, degree_hours_k_h: f64) -> String {
        let unit = unit(Dimension::TemperatureDifference, self);
        let number = self.number(unit.shown(degree_hours_k_h), 1);
        join(&number, &format!("{}·h", unit.symbol))
    }

    /// Power in watts.
    pub fn watts(self, power_w: f64) -> String {
        join(&self.number(power_w, 0), "W")
    }

    /// Money in a currency, whole units, as the browser's language writes it.
    pub fn money(self, amount: f64, currency: &str) -> String {
        let (before, behind) = language::around_amount(currency);
        let number = self.number(amount, 0);
        match number.strip_prefix('\u{2212}') {
            Some(size) => format!("\u{2212}{before}{size}{behind}"),
            None => format!("{before}{number}{behind}"),
        }
    }

    /// An hour on the clock; hours beyond 24 wrap.
    pub fn clock(self, hour: f64) -> String {
        clock::clock(hour, self)
    }

    /// An hour on the clock as short as an axis wants it: `6`, `noon`, `6 pm`.
    pub fn axis_hour(self, hour: f64) -> String {
        clock::axis_hour(hour, self)
    }
}

/// Joins a number and its unit so that they stay on one line.
fn join(number: &str, unit: &str) -> String {
    if unit.is_empty() {
        return number.to_owned();
    }
    if unit == "°" {
        return format!("{number}°");
    }
    format!("{number}\u{a0}{unit}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_united_states_get_us_units_at_first() {
        assert_eq!(UnitSystem::from_language("en-US"), UnitSystem::Us);
        assert_eq!(UnitSystem::from_language("es-US"), UnitSystem::Us);
        assert_eq!(UnitSystem::from_language("en-GB"), UnitSystem::Metric);
        assert_eq!(UnitSystem::from_language("en"), UnitSystem::Metric);
        assert_eq!(UnitSystem::from_language(""), UnitSystem::Metric);
    }

    #[test]
    fn a_limit_and_what_passes_it_never_look_the_same() {
        let (worst, limit) = UnitSystem::Metric.temperature_against(28.3, 28.0);
        assert_eq!(
            (worst.as_str(), limit.as_str()),
            ("28.3\u{a0}°C", "28\u{a0}°C")
        );
        let (worst, limit) = UnitSystem::Us.temperature_against(31.2, 28.0);
        assert_eq!(
            (worst.as_str(), limit.as_str()),
            ("88\u{a0}°F", "82.4\u{a0}°F")
        );
        let (worst, limit) = UnitSystem::Metric.temperature_against(31.2, 28.0);
        assert_eq!(
            (worst.as_str(), limit.as_str()),
            ("31\u{a0}°C", "28\u{a0}°C")
        );
    }

    /// NIST SP 811 (2008), B.8: one BTU (International Table) an hour and square foot is 3.154 591 W/m².
    #[test]
    fn sun_is_converted_as_nist_sp_811_says() {
        let shown = UnitSystem::Us.irradiance_number(3.154_591);
        assert!((shown - 1.0).abs() < 1e-6, "{shown}");
        assert_eq!(UnitSystem::Us.irradiance(1_000.0), "317\u{a0}BTU/(h·ft²)");
        assert_eq!(UnitSystem::Metric.irradiance(925.4), "925\u{a0}W/m²");
    }

    #[test]
    fn insulation_is_told_by_its_resistance_only_in_the_united_states() {
        // NIST SP 811: 1 h ft² °F/BTU is 0.176 110 2 m² K/W, so U = 0.5 W/(m² K) is R 11.36.
        assert_eq!(UnitSystem::Us.insulation(0.5), "R-11.4");
        assert_eq!(UnitSystem::Metric.insulation(0.5), "0.5\u{a0}W/(m²·K)");
        assert_eq!(UnitSystem::Us.degree_hours(10.0), "18\u{a0}°F·h");
    }

    #[test]
    fn places_on_a_plan_are_short_to_write() {
        for steps in 0..400 {
            for units in [UnitSystem::Us, UnitSystem::Metric] {
                let place_m = units.on_plan_grid(f64::from(steps) * units.plan_step_m());
                assert!(place_m.to_string().len() <= 6, "{place_m}");
                assert_eq!(units.on_plan_grid(place_m), place_m);
            }
        }
        assert_eq!(UnitSystem::Metric.on_plan_grid(0.304_8), 0.3);
        assert_eq!(UnitSystem::Us.on_plan_grid(0.3), 0.304_8);
    }

    #[test]
    fn quantities_carry_their_unit() {
        assert_eq!(
            UnitSystem::Metric.quantity(Dimension::Thickness, 0.04),
            "40\u{a0}mm"
        );
        assert_eq!(
            UnitSystem::Us.quantity(Dimension::HeatFlow, 2_000.0),
            "6,824\u{a0}BTU/h"
        );
        assert_eq!(UnitSystem::Metric.money(4_300.2, "EUR"), "EUR\u{a0}4,300");
    }
}
