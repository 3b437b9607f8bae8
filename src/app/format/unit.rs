//! The unit in which each dimension is shown, in either system.
//!
//! Conversions are built from the exact definitions of NIST Special Publication 811 (2008), appendix B, and checked against
//! the factors that it prints.

use super::UnitSystem;
use noonday_engine::scenario::Dimension;

/// One foot in metres (exact).
const FOOT_M: f64 = 0.304_8;
/// One inch in metres (exact).
const INCH_M: f64 = 0.025_4;
/// One avoirdupois pound in kilograms (exact).
const POUND_KG: f64 = 0.453_592_37;
/// One pound of force in newtons (exact): a pound at standard gravity, 9.806 65 m/s².
const POUND_FORCE_N: f64 = POUND_KG * 9.806_65;
/// One British thermal unit of the International Table in joules (exact).
const BTU_J: f64 = 1_055.055_852_62;
/// One mile an hour in metres a second (exact).
const MILE_PER_HOUR_M_S: f64 = 0.447_04;
/// One degree Fahrenheit in kelvins (exact).
const FAHRENHEIT_K: f64 = 5.0 / 9.0;
/// An hour in seconds.
const HOUR_S: f64 = 3_600.0;
/// One BTU an hour in watts.
const BTU_PER_HOUR_W: f64 = BTU_J / HOUR_S;
/// One cubic foot a minute in m³/s.
const CFM_M3_S: f64 = FOOT_M * FOOT_M * FOOT_M / 60.0;
/// A ton of refrigeration, 12 000 BTU an hour, in kW.
const TON_KW: f64 = 12_000.0 * BTU_PER_HOUR_W / 1_000.0;
/// One h ft² °F/BTU, the unit of the R-value, in m² K/W.
const R_VALUE_M2_K_W: f64 = FOOT_M * FOOT_M * FAHRENHEIT_K / BTU_PER_HOUR_W;

/// A unit: `si = (shown - offset) × numerator / denominator`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// What stands behind the number; `¤` stands for the currency.
    pub symbol: &'static str,
    /// SI units in one of this unit, times the denominator.
    numerator: f64,
    /// Keeps powers of ten exact: 150 mm is 150 / 1000 m to the last bit.
    denominator: f64,
    /// What is shown at SI zero.
    offset: f64,
    /// Most decimals shown.
    pub decimals: usize,
}

impl Unit {
    /// From SI to this unit.
    pub fn shown(&self, value_si: f64) -> f64 {
        value_si * self.denominator / self.numerator + self.offset
    }

    /// From this unit to SI.
    pub fn si(&self, shown: f64) -> f64 {
        (shown - self.offset) * self.numerator / self.denominator
    }

    /// The symbol with the currency filled in.
    pub fn label(&self, currency: &str) -> String {
        self.symbol.replace('¤', currency)
    }
}

const fn plain(symbol: &'static str, decimals: usize) -> Unit {
    scaled(symbol, 1.0, 1.0, decimals)
}

const fn scaled(symbol: &'static str, numerator: f64, denominator: f64, decimals: usize) -> Unit {
    Unit {
        symbol,
        numerator,
        denominator,
        offset: 0.0,
        decimals,
    }
}

/// The unit in which a dimension is shown.
pub fn unit(dimension: Dimension, system: UnitSystem) -> Unit {
    let us = match system {
        UnitSystem::Us => us_unit(dimension),
        UnitSystem::Metric => None,
    };
    us.unwrap_or_else(|| metric_unit(dimension))
}

/// Units that differ from the metric ones.
fn us_unit(dimension: Dimension) -> Option<Unit> {
    Some(match dimension {
        Dimension::Length => scaled("ft", FOOT_M, 1.0, 2),
        Dimension::TapeLength => scaled("in", INCH_M, 1.0, 1),
        Dimension::Thickness => scaled("in", INCH_M, 1.0, 3),
        Dimension::Altitude => scaled("ft", FOOT_M, 1.0, 0),
        Dimension::Area => scaled("ft²", FOOT_M * FOOT_M, 1.0, 2),
        Dimension::LeakArea => scaled("in²", INCH_M * INCH_M, 1.0, 2),
        Dimension::Temperature => Unit {
            symbol: "°F",
            numerator: 5.0,
            denominator: 9.0,
            offset: 32.0,
            decimals: 1,
        },
        Dimension::TemperatureDifference => scaled("°F", 5.0, 9.0, 1),
        Dimension::HeatFlow => scaled("BTU/h", BTU_PER_HOUR_W, 1.0, 0),
        Dimension::AirFlow => scaled("cfm", CFM_M3_S, 1.0, 0),
        Dimension::AirFlowPerKilowatt => scaled("cfm/ton", CFM_M3_S / TON_KW, 1.0, 0),
        Dimension::WindSpeed | Dimension::RoadSpeed => scaled("mph", MILE_PER_HOUR_M_S, 1.0, 1),
        Dimension::Conductivity => scaled("BTU·in/(h·ft²·°F)", INCH_M / R_VALUE_M2_K_W, 1.0, 3),
        Dimension::ThermalResistance => scaled("R (h·ft²·°F/BTU)", R_VALUE_M2_K_W, 1.0, 2),
        Dimension::Transmittance => scaled("BTU/(h·ft²·°F)", 1.0, R_VALUE_M2_K_W, 3),
        Dimension::HeatCapacity => scaled("BTU/°F", BTU_J / FAHRENHEIT_K, 1.0, 0),
        Dimension::Mass => scaled("lb", POUND_KG, 1.0, 1),
        Dimension::Force => scaled("lbf", POUND_FORCE_N, 1.0, 0),
        Dimension::MoistureFlow => scaled("lb/h", POUND_KG, HOUR_S, 3),
        Dimension::SharePerKelvin => scaled("%/°F", 0.01 / FAHRENHEIT_K, 1.0, 3),
        Dimension::MoneyPerArea => scaled("¤/ft²", 1.0, FOOT_M * FOOT_M, 2),
        Dimension::MoneyPerCable => scaled("¤/(ft·mm²)", 1.0, FOOT_M, 3),
        Dimension::WorkHoursPerArea => scaled("h/ft²", 1.0, FOOT_M * FOOT_M, 3),
        _ => return None,
    })
}

fn metric_unit(dimension: Dimension) -> Unit {
    match dimension {
        Dimension::Length => plain("m", 2),
        Dimension::TapeLength => plain("m", 3),
        Dimension::Thickness => scaled("mm", 1.0, 1_000.0, 1),
        Dimension::Altitude => plain("m", 0),
        Dimension::Area => plain("m²", 2),
        Dimension::LeakArea => scaled("cm²", 1.0, 10_000.0, 1),
        Dimension::Angle => plain("°", 2),
        Dimension::Temperature | Dimension::TemperatureDifference => plain("°C", 1),
        Dimension::ElectricPower | Dimension::HeatFlow => plain("W", 0),
        Dimension::AirFlow => scaled("m³/h", 1.0, HOUR_S, 0),
        Dimension::AirFlowPerKilowatt => scaled("m³/h per kW", 1.0, HOUR_S, 0),
        Dimension::WindSpeed => plain("m/s", 1),
        Dimension::RoadSpeed => scaled("km/h", 1_000.0, HOUR_S, 0),
        Dimension::Conductivity => plain("W/(m·K)", 4),
        Dimension::ThermalResistance => plain("m²·K/W", 3),
        Dimension::Transmittance => plain("W/(m²·K)", 2),
        Dimension::HeatCapacity => scaled("kJ/K", 1_000.0, 1.0, 0),
        Dimension::Mass => plain("kg", 1),
        Dimension::Force => plain("N", 0),
        Dimension::MoistureFlow => scaled("g/h", 1.0, 1_000.0 * HOUR_S, 0),
        Dimension::HourOfDay => plain("", 2),
        Dimension::ClockOffset | Dimension::WorkHours => plain("h", 2),
        Dimension::WorkHoursPerArea => plain("h/m²", 2),
        Dimension::TimeSpan => plain("s", 0),
        Dimension::RunningTime => scaled("min", 60.0, 1.0, 1),
        Dimension::Voltage => plain("V", 2),
        Dimension::Current => plain("A", 1),
        Dimension::Charge => plain("Ah", 1),
        Dimension::Resistance => scaled("mΩ", 1.0, 1_000.0, 2),
        Dimension::Share => scaled("%", 1.0, 100.0, 1),
        Dimension::SharePerKelvin => scaled("%/°C", 1.0, 100.0, 3),
        Dimension::Factor => plain("", 2),
        Dimension::Count => plain("", 0),
        Dimension::Money => plain("¤", 2),
        Dimension::MoneyPerWattHour => plain("¤/Wh", 3),
        Dimension::MoneyPerWatt => plain("¤/W", 2),
        Dimension::MoneyPerArea => plain("¤/m²", 2),
        Dimension::MoneyPerCable => plain("¤/(m·mm²)", 3),
        Dimension::MoneyPerAmpere => plain("¤/A", 2),
        Dimension::MoneyPerHour => plain("¤/h", 2),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::fields;

    fn us(dimension: Dimension) -> Unit {
        unit(dimension, UnitSystem::Us)
    }

    /// Factors as printed in NIST SP 811 (2008), appendix B.8 and B.9, to the digits printed there.
    #[test]
    fn conversions_agree_with_nist_sp_811() {
        let printed = [
            (Dimension::Length, 3.048e-1),
            (Dimension::Thickness, 2.54e-2),
            (Dimension::TapeLength, 2.54e-2),
            (Dimension::Force, 4.448_222),
            (Dimension::Area, 9.290_304e-2),
            (Dimension::LeakArea, 6.451_6e-4),
            (Dimension::HeatFlow, 2.930_711e-1),
            (Dimension::AirFlow, 4.719_474e-4),
            (Dimension::AirFlowPerKilowatt, 4.719_474e-4 / 3.516_853),
            (Dimension::WindSpeed, 4.470_4e-1),
            (Dimension::Conductivity, 1.442_279e-1),
            (Dimension::ThermalResistance, 1.761_102e-1),
            (Dimension::Transmittance, 5.678_263),
            (Dimension::HeatCapacity, 1.899_101e3),
            (Dimension::Mass, 4.535_924e-1),
            (Dimension::MoistureFlow, 1.259_979e-4),
        ];
        for (dimension, factor) in printed {
            let error = (us(dimension).si(1.0) - us(dimension).si(0.0)) / factor - 1.0;
            assert!(error.abs() < 5e-7, "{dimension:?} is off by {error}");
        }
    }

    /// Fixed points of the Fahrenheit scale, NIST SP 811 (2008), B.8: t/°C = (t/°F − 32)/1.8.
    #[test]
    fn fahrenheit_meets_celsius_at_its_fixed_points() {
        let fahrenheit = us(Dimension::Temperature);
        assert_eq!(fahrenheit.shown(0.0), 32.0);
        assert_eq!(fahrenheit.shown(100.0), 212.0);
        assert_eq!(fahrenheit.si(-40.0), -40.0);
        assert_eq!(us(Dimension::TemperatureDifference).shown(5.0), 9.0);
    }

    #[test]
    fn metric_entries_are_exact() {
        for (dimension, typed, si) in [
            (Dimension::Thickness, 35.0, 0.035),
            (Dimension::Share, 85.0, 0.85),
            (Dimension::LeakArea, 40.0, 0.004),
            (Dimension::Resistance, 2.0, 0.002),
        ] {
            assert_eq!(unit(dimension, UnitSystem::Metric).si(typed), si);
        }
    }

    #[test]
    fn every_range_survives_the_way_there_and_back() {
        for system in [UnitSystem::Us, UnitSystem::Metric] {
            for number in fields().filter_map(|field| field.number()) {
                let unit = unit(number.dimension, system);
                for value in [number.minimum, number.maximum] {
                    let back = unit.si(unit.shown(value));
                    assert!((back - value).abs() <= 1e-12 * value.abs().max(1.0));
                }
            }
        }
    }
}
