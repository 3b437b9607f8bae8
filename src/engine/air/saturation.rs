//! Saturation of water vapour over ice and liquid water, and the dew point that inverts it.

use super::root::Curve;
use super::vapour_pressure_from_humidity_ratio;
use super::{ITERATIONS_GREATEST, MOLAR_MASS_RATIO, TEMPERATURE_TOLERANCE_K};
use crate::quantity::{Bounded, kelvin_from_celsius};

/// Triple point of water, °C: ice below, liquid above (ch. 1, section on saturation pressure).
pub(super) const TRIPLE_POINT_C: f64 = 0.01;

/// Saturation pressure at the triple point by the liquid equation, Pa (ch. 1, eq. 6).
const TRIPLE_POINT_PRESSURE_PA: f64 = 611.655;

/// Coefficients over ice, −100…0 °C: of 1/T, 1, T, T², T³, T⁴ and ln T (ch. 1, eq. 5).
const OVER_ICE: [f64; 7] = [
    -5.674_535_9e3,
    6.392_524_7,
    -9.677_843_0e-3,
    6.221_570_1e-7,
    2.074_782_5e-9,
    -9.484_024_0e-13,
    4.163_501_9,
];

/// Coefficients over liquid water, 0…200 °C: of 1/T, 1, T, T², T³, T⁴ and ln T (ch. 1, eq. 6).
const OVER_WATER: [f64; 7] = [
    -5.800_220_6e3,
    1.391_499_3,
    -4.864_023_9e-2,
    4.176_476_8e-5,
    -1.445_209_3e-8,
    0.0,
    6.545_967_3,
];

/// Lowest dew point that is told apart, °C: the lower end of the equation over ice (ch. 1, eq. 5).
pub const DEW_POINT_LEAST_C: f64 = -100.0;

/// Highest share of the total pressure that vapour may take.
///
/// Above the boiling point at the given pressure no saturated mixture exists, and its humidity
/// ratio would be infinite or negative; this bound keeps it finite, at about 62 kg/kg. It is out of
/// reach below 95 °C at 85 kPa.
const VAPOUR_SHARE_GREATEST: f64 = 0.99;

/// Gives the saturation pressure of water vapour over ice or liquid water.
///
/// ln p = C₁/T + C₂ + C₃T + C₄T² + C₅T³ + C₆T⁴ + C₇ ln T, with T in K.
///
/// `dry_bulb_c`: −100…200 °C. Result in Pa. Ice below the triple point (0.01 °C), liquid above.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 5 and 6.
///
/// ```
/// let pressure_pa = noonday_engine::air::saturation_pressure_pa(20.0);
/// assert!((pressure_pa - 2338.8).abs() < 0.1);
/// ```
#[must_use]
pub fn saturation_pressure_pa(dry_bulb_c: f64) -> f64 {
    libm::exp(log_saturation_pressure(branch(dry_bulb_c), dry_bulb_c))
}

/// Gives the humidity ratio of saturated air.
///
/// W = 0.621945 pₛ/(p − pₛ). Above the boiling point, where no saturated mixture exists, pₛ is held
/// at 99 % of p, so that the result stays finite.
///
/// `dry_bulb_c`: −60…120 °C; `pressure_pa`: 50 000…120 000 Pa. Result in kg per kg of dry air.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 21.
#[must_use]
pub fn saturation_humidity_ratio(dry_bulb_c: f64, pressure_pa: f64) -> f64 {
    humidity_ratio_from_vapour_pressure(saturation_pressure_pa(dry_bulb_c), pressure_pa)
}

/// Gives the humidity ratio of air at a vapour pressure.
///
/// W = 0.621945 pᵥ/(p − pᵥ), with pᵥ held between 0 and 99 % of p.
///
/// `vapour_pressure_pa` in Pa; `pressure_pa`: 50 000…120 000 Pa. Result in kg per kg of dry air.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 20.
#[must_use]
pub fn humidity_ratio_from_vapour_pressure(vapour_pressure_pa: f64, pressure_pa: f64) -> f64 {
    let vapour_pressure_pa = vapour_pressure_pa
        .at_least(0.0)
        .at_most(VAPOUR_SHARE_GREATEST * pressure_pa);
    MOLAR_MASS_RATIO * vapour_pressure_pa / (pressure_pa - vapour_pressure_pa)
}

/// Gives the dew point (below 0.01 °C the frost point) from the humidity ratio.
///
/// Solves pₛ(t_d) = pᵥ by Newton's method on ln p. The handbook's own fit (eq. 37, 38) is not used:
/// it is off by up to 0.1 K and does not invert eq. 5 and 6. Air drier than saturation at −100 °C,
/// bone-dry air included, gives −100 °C. Supersaturated air gives the temperature at which its
/// vapour would be saturated.
///
/// `humidity_ratio`: at least 0, kg per kg of dry air; `pressure_pa`: 50 000…120 000 Pa. Result in
/// °C.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 5, 6 and 36.
#[must_use]
pub fn dew_point_c_from_humidity_ratio(humidity_ratio: f64, pressure_pa: f64) -> f64 {
    let vapour_pressure_pa = vapour_pressure_from_humidity_ratio(humidity_ratio, pressure_pa);
    if vapour_pressure_pa <= saturation_pressure_pa(DEW_POINT_LEAST_C) {
        return DEW_POINT_LEAST_C;
    }
    let log_pressure = libm::log(vapour_pressure_pa);
    let coefficients = if vapour_pressure_pa < TRIPLE_POINT_PRESSURE_PA {
        &OVER_ICE
    } else {
        &OVER_WATER
    };
    let mut dew_point_c = dew_point_first_guess_c(log_pressure);
    for _ in 0..ITERATIONS_GREATEST {
        let excess = log_saturation_pressure(coefficients, dew_point_c) - log_pressure;
        let [slope, _] = log_saturation_pressure_derivatives(coefficients, dew_point_c);
        let step_k = excess / slope;
        dew_point_c -= step_k;
        if step_k.abs() < TEMPERATURE_TOLERANCE_K {
            break;
        }
    }
    dew_point_c
}

/// Humidity ratio W of saturated air by temperature.
///
/// With l = d(ln pₛ)/dt and r = p/(p − pₛ): dW/dt = W l r, and d²W/dt² = W r (dl/dt + l² (2r − 1)). Neither where the vapour
/// pressure is held at its bound.
pub(super) fn saturation_curve(temperature_c: f64, pressure_pa: f64) -> Curve {
    let coefficients = branch(temperature_c);
    let saturated_pa = libm::exp(log_saturation_pressure(coefficients, temperature_c));
    let value = humidity_ratio_from_vapour_pressure(saturated_pa, pressure_pa);
    if saturated_pa >= VAPOUR_SHARE_GREATEST * pressure_pa {
        return Curve {
            value,
            ..Curve::default()
        };
    }
    let [slope, bend] = log_saturation_pressure_derivatives(coefficients, temperature_c);
    let ratio = pressure_pa / (pressure_pa - saturated_pa);
    Curve {
        value,
        slope: value * ratio * slope,
        bend: value * ratio * (bend + slope * slope * (2.0 * ratio - 1.0)),
    }
}

/// Coefficients of the saturation equation that holds at a temperature.
fn branch(temperature_c: f64) -> &'static [f64; 7] {
    if temperature_c < TRIPLE_POINT_C {
        &OVER_ICE
    } else {
        &OVER_WATER
    }
}

/// Logarithm of the saturation pressure in Pa (eq. 5, 6).
fn log_saturation_pressure(coefficients: &[f64; 7], temperature_c: f64) -> f64 {
    let [inverse, constant, first, second, third, fourth, logarithm] = *coefficients;
    let temperature_k = kelvin_from_celsius(temperature_c);
    let polynomial =
        ((fourth * temperature_k + third) * temperature_k + second) * temperature_k + first;
    inverse / temperature_k
        + constant
        + polynomial * temperature_k
        + logarithm * libm::log(temperature_k)
}

/// First and second derivative of [`log_saturation_pressure`] by temperature, 1/K and 1/K².
fn log_saturation_pressure_derivatives(coefficients: &[f64; 7], temperature_c: f64) -> [f64; 2] {
    let [inverse, _, first, second, third, fourth, logarithm] = *coefficients;
    let temperature_k = kelvin_from_celsius(temperature_c);
    let per_k = 1.0 / temperature_k;
    let slope = ((4.0 * fourth * temperature_k + 3.0 * third) * temperature_k + 2.0 * second)
        * temperature_k
        + first
        + (logarithm - inverse * per_k) * per_k;
    let bend = (12.0 * fourth * temperature_k + 6.0 * third) * temperature_k
        + 2.0 * second
        + (2.0 * inverse * per_k - logarithm) * per_k * per_k;
    [slope, bend]
}

/// Dew point by the Magnus form ln p = ln 611.2 + 17.62t/(243.12 + t) (WMO Guide to Instruments,
/// annex 4.B, from memory); only where Newton's method starts, so its accuracy does not matter.
fn dew_point_first_guess_c(log_pressure: f64) -> f64 {
    let ratio = log_pressure - libm::log(611.2);
    (243.12 * ratio / (17.62 - ratio)).clamp(DEW_POINT_LEAST_C, 150.0)
}
