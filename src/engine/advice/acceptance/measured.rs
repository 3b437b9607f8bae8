//! What a cooler does, from the air before and behind it.

use crate::air::moist_air_heat_capacity_j_per_kg_k;
use crate::cooler::bypass::EnteringAir;

/// Heat taken out of air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredCapacity {
    /// What a thermometer shows, W.
    pub sensible_w: f64,
    /// All of it, W; the heat that the drained water takes along is not taken off.
    pub total_w: f64,
}

/// Heat taken out of air between two places of its way.
///
/// Sensible Q_s = m (1006 + 1860 W₂)(t₁ − t₂), total Q = m (h₁ − h₂); m is the flow of dry air.
///
/// * `before`, `behind` — air entering and leaving, within the ranges stated at [`EnteringAir`]
/// * `airflow_m3_s` — volume flow at the state before, m³/s, at least 0
///
/// Source: ASHRAE Fundamentals (2017), ch. 1, moist air cooling and dehumidification, less its term for the condensate.
#[must_use]
pub fn measured_capacity(
    before: &EnteringAir,
    behind: &EnteringAir,
    airflow_m3_s: f64,
) -> MeasuredCapacity {
    let flow_kg_s = before.dry_air_flow_kg_s(airflow_m3_s);
    let heat_capacity = moist_air_heat_capacity_j_per_kg_k(behind.humidity_ratio);
    MeasuredCapacity {
        sensible_w: flow_kg_s * heat_capacity * (before.dry_bulb_c - behind.dry_bulb_c),
        total_w: flow_kg_s * (before.enthalpy_j_per_kg() - behind.enthalpy_j_per_kg()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::air::humidity_ratio_from_relative_humidity;

    /// ASHRAE Handbook of Fundamentals (SI, 2005 and later), ch. "Psychrometrics", example of moist air cooling, from memory: air
    /// of 30 °C and 50 % enters a coil at 5 m³/s and leaves saturated at 10 °C. Read off its chart: h₁ = 64.3, h₂ = 29.5 kJ/kg,
    /// W₁ = 13.3, W₂ = 7.66 g/kg, v₁ = 0.877 m³/kg, so m = 5.70 kg/s; water leaves with 42.11 kJ/kg; q = 197 kW. A chart is read
    /// to 0.1 kJ/kg at either end and the flow to three digits: 0.2/34.8 and 0.005/5.70 together are within 1 %.
    #[test]
    fn the_handbooks_example_of_a_cooling_coil() {
        let air = |dry_bulb_c, relative_humidity| EnteringAir {
            dry_bulb_c,
            humidity_ratio: humidity_ratio_from_relative_humidity(
                dry_bulb_c,
                relative_humidity,
                101_325.0,
            ),
            pressure_pa: 101_325.0,
        };
        let (before, behind) = (air(30.0, 0.5), air(10.0, 1.0));
        let found = measured_capacity(&before, &behind, 5.0);
        let water_w = 5.70 * (0.0133 - 0.00766) * 42_110.0;
        let refrigeration_w = found.total_w - water_w;
        assert!(
            (refrigeration_w / 197_000.0 - 1.0).abs() < 0.01,
            "{refrigeration_w}"
        );
        // By hand: 5.70 · (1.006 + 1.86 · 0.00766) · 20 = 116.3 kW.
        assert!((found.sensible_w / 116_300.0 - 1.0).abs() < 0.005);
    }
}
