//! Wet bulb and saturated temperature: the two relations that have to be searched.

use super::saturation::saturation_humidity_ratio_and_slope;
use super::{
    DEW_POINT_LEAST_C, HEAT_CAPACITY_DRY_AIR_J_KG_K, HEAT_CAPACITY_VAPOUR_J_KG_K,
    HEAT_CAPACITY_WATER_J_KG_K, ITERATIONS_GREATEST, LATENT_HEAT_SLOPE_J_KG_K,
    PRESSURE_SEA_LEVEL_PA, TEMPERATURE_TOLERANCE_K, enthalpy_j_per_kg,
    latent_heat_vaporisation_j_per_kg, moist_air_heat_capacity_j_per_kg_k,
    saturation_humidity_ratio, vapour_enthalpy_j_per_kg,
};
use crate::quantity::{Bounded, ZERO_CELSIUS_K};

/// Value of a function and its derivative.
#[derive(Clone, Copy)]
struct Tangent {
    value: f64,
    slope: f64,
}

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
        bracketed_root(over_water, 0.0, highest_c, start_c)
    } else {
        bracketed_root(
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
        let (saturated, slope) = saturation_humidity_ratio_and_slope(temperature_c, pressure_pa);
        Tangent {
            value: enthalpy_j_per_kg(temperature_c, saturated) - enthalpy_j_per_kg_dry,
            slope: moist_air_heat_capacity_j_per_kg_k(saturated)
                + vapour_enthalpy_j_per_kg(temperature_c) * slope,
        }
    };
    bracketed_root(
        excess,
        DEW_POINT_LEAST_C,
        boiling_bound_c(pressure_pa),
        saturated_first_guess_c(enthalpy_j_per_kg_dry),
    )
}

impl Tangent {
    /// The function less a constant.
    fn less(self, constant: f64) -> Self {
        Self {
            value: self.value - constant,
            ..self
        }
    }

    /// The quotient of two functions.
    fn over(self, divisor: Self) -> Self {
        let value = self.value / divisor.value;
        Self {
            value,
            slope: (self.slope - value * divisor.slope) / divisor.value,
        }
    }
}

/// Humidity ratio by eq. 33, not limited to what is possible, by wet bulb.
fn wet_bulb_balance_over_water(dry_bulb_c: f64, wet_bulb_c: f64, pressure_pa: f64) -> Tangent {
    let (saturated, slope) = saturation_humidity_ratio_and_slope(wet_bulb_c, pressure_pa);
    let latent_heat_j_kg = latent_heat_vaporisation_j_per_kg(wet_bulb_c);
    let above = Tangent {
        value: latent_heat_j_kg * saturated
            - HEAT_CAPACITY_DRY_AIR_J_KG_K * (dry_bulb_c - wet_bulb_c),
        slope: latent_heat_j_kg * slope - LATENT_HEAT_SLOPE_J_KG_K * saturated
            + HEAT_CAPACITY_DRY_AIR_J_KG_K,
    };
    above.over(Tangent {
        value: vapour_enthalpy_j_per_kg(dry_bulb_c) - HEAT_CAPACITY_WATER_J_KG_K * wet_bulb_c,
        slope: -HEAT_CAPACITY_WATER_J_KG_K,
    })
}

/// Humidity ratio by eq. 35, not limited to what is possible, by wet bulb.
fn wet_bulb_balance_over_ice(dry_bulb_c: f64, wet_bulb_c: f64, pressure_pa: f64) -> Tangent {
    let (saturated, slope) = saturation_humidity_ratio_and_slope(wet_bulb_c, pressure_pa);
    let latent_heat_slope = HEAT_CAPACITY_VAPOUR_J_KG_K - HEAT_CAPACITY_ICE_J_KG_K;
    let latent_heat_j_kg = LATENT_HEAT_ICE_J_KG + latent_heat_slope * wet_bulb_c;
    let above = Tangent {
        value: latent_heat_j_kg * saturated
            - HEAT_CAPACITY_DRY_AIR_J_KG_K * (dry_bulb_c - wet_bulb_c),
        slope: latent_heat_j_kg * slope
            + latent_heat_slope * saturated
            + HEAT_CAPACITY_DRY_AIR_J_KG_K,
    };
    above.over(Tangent {
        value: LATENT_HEAT_ICE_J_KG + HEAT_CAPACITY_VAPOUR_J_KG_K * dry_bulb_c
            - HEAT_CAPACITY_ICE_J_KG_K * wet_bulb_c,
        slope: -HEAT_CAPACITY_ICE_J_KG_K,
    })
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

/// Root of a rising function between two bounds, or the nearer bound, by Newton's method; a step that
/// leaves the bracket is replaced by half of it.
fn bracketed_root(function: impl Fn(f64) -> Tangent, lower: f64, upper: f64, start: f64) -> f64 {
    let (mut low, mut high) = (lower, upper);
    let mut root = start.at_least(lower).at_most(upper);
    for _ in 0..ITERATIONS_GREATEST {
        let Tangent { value, slope } = function(root);
        if value > 0.0 {
            high = root;
        } else {
            low = root;
        }
        let newton = root - value / slope;
        let next = if newton > low && newton < high {
            newton
        } else {
            0.5 * (low + high)
        };
        let step = next - root;
        root = next;
        if step.abs() < TEMPERATURE_TOLERANCE_K {
            break;
        }
    }
    root
}
