//! How finely entered numbers are kept: as finely as any common unit shows them, and no finer. So what is shown is what is run,
//! and a link to it is short: 12.34 ft is kept as 3.761 m, not with the seventeen digits that the conversion leaves.

use super::field::{Dimension, NumberField};
use crate::quantity::parse_decimal;

impl Dimension {
    /// Power of ten, in SI, to which an entry is kept. Packed links count numbers in it, so it never changes for a dimension; a
    /// number that is finer takes more room in a link and is as exact.
    #[must_use]
    pub fn grain_power(self) -> i32 {
        match self {
            Self::MoistureFlow => -7,
            Self::LeakArea => -6,
            Self::Resistance | Self::SharePerKelvin | Self::Thickness => -5,
            Self::AirFlow
            | Self::AirFlowPerKilowatt
            | Self::Area
            | Self::Conductivity
            | Self::TapeLength => -4,
            Self::HourOfDay
            | Self::Length
            | Self::MoneyPerCable
            | Self::MoneyPerWattHour
            | Self::Share
            | Self::ThermalResistance
            | Self::Transmittance => -3,
            Self::Altitude | Self::Charge | Self::Current | Self::HeatFlow => -1,
            Self::Count | Self::ElectricPower | Self::RunningTime | Self::TimeSpan => 0,
            Self::Force => 0,
            Self::HeatCapacity => 3,
            Self::Angle
            | Self::ClockOffset
            | Self::Factor
            | Self::Mass
            | Self::Money
            | Self::MoneyPerAmpere
            | Self::MoneyPerArea
            | Self::MoneyPerHour
            | Self::MoneyPerWatt
            | Self::RoadSpeed
            | Self::Temperature
            | Self::TemperatureDifference
            | Self::Voltage
            | Self::WindSpeed
            | Self::WorkHours
            | Self::WorkHoursPerArea => -2,
        }
    }
}

impl NumberField {
    /// An entered value, SI, as it is kept: rounded to [`Dimension::grain_power`]. One that would thereby leave its range stays as
    /// it is, and so does what is no number.
    #[must_use]
    pub fn settled(&self, value_si: f64) -> f64 {
        let range = self.minimum..=self.maximum;
        let settled = rounded(value_si, self.dimension.grain_power()).unwrap_or(value_si);
        if range.contains(&value_si) && !range.contains(&settled) {
            return value_si;
        }
        settled
    }
}

fn rounded(value: f64, power: i32) -> Option<f64> {
    if !value.is_finite() {
        return None;
    }
    if let Ok(decimals) = usize::try_from(-power) {
        return parse_decimal(&format!("{value:.decimals$}"));
    }
    let grain = (0..power).fold(1.0, |product, _| product * 10.0);
    Some((value / grain).round() * grain)
}

#[cfg(test)]
mod tests {
    use crate::scenario::{field, fields};

    fn settled(key: &str, value_si: f64) -> f64 {
        field(key).unwrap().number().unwrap().settled(value_si)
    }

    /// Feet by their exact definition, 0.3048 m.
    #[test]
    fn entries_are_kept_in_few_digits() {
        assert_eq!(settled("vehicle.length_m", 12.34 * 0.304_8), 3.761);
        assert_eq!(
            settled("vehicle.furnishing_heat_capacity_j_k", 123_456.0),
            123_000.0
        );
        assert!(settled("vehicle.length_m", f64::NAN).is_nan());
    }

    #[test]
    fn ends_of_ranges_stay_within_them() {
        for number in fields().filter_map(|field| field.number()) {
            for end in [number.minimum, number.maximum] {
                let kept = number.settled(end);
                assert!((number.minimum..=number.maximum).contains(&kept));
            }
        }
    }
}
