//! Wet bulb and saturated temperatures: the relations that have to be searched.

use super::root::{Curve, rising_root};
use super::saturation::saturation_curve;
use super::{
    DEW_POINT_LEAST_C, HEAT_CAPACITY_DRY_AIR_J_KG_K, HEAT_CAPACITY_VAPOUR_J_KG_K,
    HEAT_CAPACITY_WATER_J_KG_K, ITERATIONS_GREATEST, LATENT_HEAT_SLOPE_J_KG_K,
    PRESSURE_SEA_LEVEL_PA, enthalpy_j_per_kg, latent_heat_vaporisation_j_per_kg,
    moist_air_heat_capacity_j_per_kg_k, saturation_humidity_ratio, vapour_enthalpy_j_per_kg,
};
use crate::quantity::{Bounded, ZERO_CELSIUS_K};

/// Step at which a line is taken to meet saturation, K.
const MEETING_TOLERANCE_K: f64 = 1e-9;

/// Latent heat of sublimation at 0 °C, J/kg (ch. 1, eq. 35).
const LATENT_HEAT_ICE_J_KG: f64 = 2_830_000.0;

/// Specific heat of ice, J/(kg K) (ch. 1, eq. 35).
const HEAT_CAPACITY_ICE_J_KG_K: f64 = 2_100.0;

/// Gives the humidity ratio from the thermodynamic wet bulb.
///
/// Over liquid water W = ((2501 − 2.326t*)Wₛ* − 1.006(t − t*))/(2501 + 1.86t − 4.186t*), over ice W
/// = ((2830 − 0.24t*)Wₛ* − 1.006(t − t*))/(2830 + 1.86t − 2.1t*), with Wₛ* at t*. A wet bulb lower
/// than dry air can reach gives 0.
///
/// `dry_bulb_c`: −60…120 °C; `wet_bulb_c`: at most the dry bulb; `pressure_pa`: 50 000…120 000 Pa.
/// Result in kg per kg of dry air.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 33 and 35.
#[must_use]
pub fn humidity_ratio_from_wet_bulb(dry_bulb_c: f64, wet_bulb_c: f64, pressure_pa: f64) -> f64 {
    let balance = if wet_bulb_c >= 0.0 {
        wet_bulb_balance_over_water(dry_bulb_c, wet_bulb_c, pressure_pa)
    } else {
        wet_bulb_balance_over_ice(dry_bulb_c, wet_bulb_c, pressure_pa)
    };
    balance.value.at_least(0.0)
}

/// Gives the thermodynamic wet bulb from the humidity ratio, to 1e-6 K.
///
/// Solves eq. 33 (liquid) where its wet bulb is 0 °C or more, else eq. 35 (ice); the two equations
/// leave a step of a few tenths of a kelvin at 0 °C, because freezing water gives off heat.
/// Saturated and supersaturated air gives the dry bulb.
///
/// `dry_bulb_c`: −60…120 °C; `humidity_ratio`: at least 0, kg per kg of dry air; `pressure_pa`: 50
/// 000…120 000 Pa. Result in °C.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 33 and 35.
///
/// ```
/// let wet_bulb_c = noonday_engine::air::wet_bulb_c_from_humidity_ratio(40.0, 0.0064008, 101_325.0);
/// assert!((wet_bulb_c - 20.0).abs() < 0.001);
/// ```
#[must_use]
pub fn wet_bulb_c_from_humidity_ratio(
    dry_bulb_c: f64,
    humidity_ratio: f64,
    pressure_pa: f64,
) -> f64 {
    let humidity_ratio = humidity_ratio.at_least(0.0);
    if humidity_ratio >= saturation_humidity_ratio(dry_bulb_c, pressure_pa) {
        return dry_bulb_c;
    }
    let start_c = saturated_first_guess_c(enthalpy_j_per_kg(dry_bulb_c, humidity_ratio));
    let over_water = |wet_bulb_c: f64| {
        wet_bulb_balance_over_water(dry_bulb_c, wet_bulb_c, pressure_pa).less(humidity_ratio)
    };
    let over_ice = |wet_bulb_c: f64| {
        wet_bulb_balance_over_ice(dry_bulb_c, wet_bulb_c, pressure_pa).less(humidity_ratio)
    };
    if dry_bulb_c >= 0.0 && over_water(0.0).value <= 0.0 {
        let highest_c = dry_bulb_c.at_most(boiling_bound_c(pressure_pa));
        rising_root(over_water, 0.0, highest_c, start_c)
    } else {
        rising_root(
            over_ice,
            DEW_POINT_LEAST_C,
            dry_bulb_c.at_most(0.0),
            start_c,
        )
    }
}

/// Gives the temperature of saturated air of known enthalpy, to 1e-6 K.
///
/// Solves h = 1006t + Wₛ(t, p)(2 501 000 + 1860t). An enthalpy outside −100 °C…boiling gives the
/// nearer end.
///
/// `enthalpy_j_per_kg` in J per kg of dry air; `pressure_pa`: 50 000…120 000 Pa. Result in °C.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 21 and 30.
#[must_use]
pub fn saturated_temperature_c_from_enthalpy(enthalpy_j_per_kg_dry: f64, pressure_pa: f64) -> f64 {
    let excess = |temperature_c: f64| {
        let saturated = saturation_curve(temperature_c, pressure_pa);
        let vapour_j_kg = vapour_enthalpy_j_per_kg(temperature_c);
        Curve {
            value: enthalpy_j_per_kg(temperature_c, saturated.value) - enthalpy_j_per_kg_dry,
            slope: moist_air_heat_capacity_j_per_kg_k(saturated.value)
                + vapour_j_kg * saturated.slope,
            bend: 2.0 * HEAT_CAPACITY_VAPOUR_J_KG_K * saturated.slope
                + vapour_j_kg * saturated.bend,
        }
    };
    rising_root(
        excess,
        DEW_POINT_LEAST_C,
        boiling_bound_c(pressure_pa),
        saturated_first_guess_c(enthalpy_j_per_kg_dry),
    )
}

/// Gives the first temperature below that of some air at which a straight line through its state in the psychrometric chart meets
/// saturation, to 1e-9 K; none if it does not at or above `coldest_c`.
///
/// The saturation curve bends away from every line, so that Newton's method comes down to the meeting without passing it.
///
/// `dry_bulb_c`, `humidity_ratio`: unsaturated air, °C and kg per kg of dry air; `slope_per_k`: rise of the line, 1/K; `coldest_c`:
/// at least 0 °C; `pressure_pa`: 50 000…120 000 Pa. Result in °C.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 6 and 21.
#[must_use]
pub fn saturated_temperature_c_on_line(
    dry_bulb_c: f64,
    humidity_ratio: f64,
    slope_per_k: f64,
    coldest_c: f64,
    pressure_pa: f64,
) -> Option<f64> {
    let mut met_c = dry_bulb_c;
    for _ in 0..ITERATIONS_GREATEST {
        let saturated = saturation_curve(met_c, pressure_pa);
        let above = saturated.value - humidity_ratio + slope_per_k * (dry_bulb_c - met_c);
        let rise_per_k = saturated.slope - slope_per_k;
        let step_k = above / rise_per_k;
        if rise_per_k <= 0.0 || met_c - step_k < coldest_c {
            return None;
        }
        met_c -= step_k;
        if step_k < MEETING_TOLERANCE_K {
            break;
        }
    }
    Some(met_c)
}

/// Humidity ratio by eq. 33, not limited to what is possible, by wet bulb.
fn wet_bulb_balance_over_water(dry_bulb_c: f64, wet_bulb_c: f64, pressure_pa: f64) -> Curve {
    let latent = Line {
        value: latent_heat_vaporisation_j_per_kg(wet_bulb_c),
        slope: -LATENT_HEAT_SLOPE_J_KG_K,
    };
    let divisor = Line {
        value: vapour_enthalpy_j_per_kg(dry_bulb_c) - HEAT_CAPACITY_WATER_J_KG_K * wet_bulb_c,
        slope: -HEAT_CAPACITY_WATER_J_KG_K,
    };
    wet_bulb_balance(dry_bulb_c, wet_bulb_c, pressure_pa, latent, divisor)
}

/// Humidity ratio by eq. 35, not limited to what is possible, by wet bulb.
fn wet_bulb_balance_over_ice(dry_bulb_c: f64, wet_bulb_c: f64, pressure_pa: f64) -> Curve {
    let latent_slope = HEAT_CAPACITY_VAPOUR_J_KG_K - HEAT_CAPACITY_ICE_J_KG_K;
    let latent = Line {
        value: LATENT_HEAT_ICE_J_KG + latent_slope * wet_bulb_c,
        slope: latent_slope,
    };
    let divisor = Line {
        value: LATENT_HEAT_ICE_J_KG + HEAT_CAPACITY_VAPOUR_J_KG_K * dry_bulb_c
            - HEAT_CAPACITY_ICE_J_KG_K * wet_bulb_c,
        slope: -HEAT_CAPACITY_ICE_J_KG_K,
    };
    wet_bulb_balance(dry_bulb_c, wet_bulb_c, pressure_pa, latent, divisor)
}

/// Value of a straight line and its slope.
#[derive(Clone, Copy)]
struct Line {
    value: f64,
    slope: f64,
}

/// (l Wₛ* − 1.006(t − t*))/d with latent heat and divisor, both straight lines, by wet bulb t*.
fn wet_bulb_balance(
    dry_bulb_c: f64,
    wet_bulb_c: f64,
    pressure_pa: f64,
    latent: Line,
    divisor: Line,
) -> Curve {
    let saturated = saturation_curve(wet_bulb_c, pressure_pa);
    let above =
        latent.value * saturated.value - HEAT_CAPACITY_DRY_AIR_J_KG_K * (dry_bulb_c - wet_bulb_c);
    let above_slope = latent.value * saturated.slope
        + latent.slope * saturated.value
        + HEAT_CAPACITY_DRY_AIR_J_KG_K;
    let above_bend = latent.value * saturated.bend + 2.0 * latent.slope * saturated.slope;
    let per_divisor = 1.0 / divisor.value;
    let value = above * per_divisor;
    let slope = (above_slope - value * divisor.slope) * per_divisor;
    Curve {
        value,
        slope,
        bend: (above_bend - 2.0 * slope * divisor.slope) * per_divisor,
    }
}

/// Temperature of saturated air of an enthalpy, within a few kelvin at ordinary pressures, °C: only
/// where Newton's method starts, so its accuracy does not matter.
fn saturated_first_guess_c(enthalpy_j_per_kg_dry: f64) -> f64 {
    if enthalpy_j_per_kg_dry > 0.0 {
        25.0 * libm::log(1.0 + enthalpy_j_per_kg_dry / 47_000.0)
    } else {
        enthalpy_j_per_kg_dry / HEAT_CAPACITY_DRY_AIR_J_KG_K
    }
}

/// Temperature just above which the vapour pressure would reach its bound, °C.
///
/// Boiling point by Clausius and Clapeyron from 100 °C; 2 K are added so that the bound itself is
/// inside every search.
fn boiling_bound_c(pressure_pa: f64) -> f64 {
    let log_ratio = libm::log(pressure_pa / PRESSURE_SEA_LEVEL_PA);
    1.0 / (1.0 / 373.15 - log_ratio / 4_890.0) - ZERO_CELSIUS_K + 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A line drawn to a saturated state from warmer air leads back to it, or to the saturated state above it that it meets first.
    #[test]
    fn a_line_to_saturation_is_followed_to_where_it_first_meets_it() {
        let mut met = 0;
        for surface in 1..24 {
            let surface_c = f64::from(surface);
            let saturated = saturation_humidity_ratio(surface_c, 90_000.0);
            for rise in 0..12 {
                let (dry_bulb_c, slope_per_k) = (surface_c + 12.0, f64::from(rise) * 1e-4);
                let humidity_ratio = saturated + 12.0 * slope_per_k;
                let found = saturated_temperature_c_on_line(
                    dry_bulb_c,
                    humidity_ratio,
                    slope_per_k,
                    0.0,
                    90_000.0,
                );
                if humidity_ratio > saturation_humidity_ratio(dry_bulb_c, 90_000.0) {
                    continue;
                }
                let found_c = found.unwrap();
                assert!(found_c > surface_c - 1e-9, "{surface_c}, {slope_per_k}");
                let on_line = humidity_ratio + slope_per_k * (found_c - dry_bulb_c);
                let off = saturation_humidity_ratio(found_c, 90_000.0) - on_line;
                assert!(off.abs() < 1e-12, "{surface_c}, {slope_per_k}: {off}");
                met += usize::from((found_c - surface_c).abs() < 1e-9);
            }
        }
        assert!(
            met > 100,
            "the line was followed to its own end {met} times only"
        );
    }

    #[test]
    fn a_line_that_passes_saturation_by_meets_nothing() {
        // Air at 20 °C and 5 g/kg: saturated at about 4 °C; along a slope of 1 g/kg per kelvin it is dry before it is cold.
        let found =
            |slope_per_k| saturated_temperature_c_on_line(20.0, 0.005, slope_per_k, 0.0, 101_325.0);
        assert!(found(0.0).is_some_and(|met_c| (3.0..5.0).contains(&met_c)));
        assert_eq!(found(1e-3), None);
        // Saturated below freezing only.
        assert_eq!(
            saturated_temperature_c_on_line(20.0, 0.003, 0.0, 0.0, 101_325.0),
            None
        );
    }
}
