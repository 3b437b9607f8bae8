//! Psychrometrics: the properties of moist air at real pressure.
//!
//! Models moist air as a mixture of two ideal gases, dry air and water vapour, with the saturation
//! pressure of Hyland and Wexler over water above the triple point and over ice below it. The
//! enhancement factor of the real mixture is left out: it shifts dew point and wet bulb by less
//! than 0.1 K near sea level.
//!
//! Valid for dry bulbs of −60…120 °C and pressures of 50…120 kPa. Every function is pure and total:
//! within that range no input, however dry or supersaturated, gives a value that is not finite.
//! Where the handbook leaves an input undefined, the function says what it answers.
//!
//! Humidity ratios are kg of vapour per kg of dry air, enthalpies J per kg of dry air above dry air
//! and liquid water at 0 °C.
//!
//! Source: ASHRAE Handbook—Fundamentals (2017), chapter 1, cited below by equation number.

mod root;
mod saturation;
mod wet_bulb;

pub use saturation::{
    DEW_POINT_LEAST_C, dew_point_c_from_humidity_ratio, humidity_ratio_from_vapour_pressure,
    saturation_humidity_ratio, saturation_pressure_pa,
};
pub use wet_bulb::{
    humidity_ratio_from_wet_bulb, saturated_temperature_c_from_enthalpy,
    saturated_temperature_c_on_line, wet_bulb_c_from_humidity_ratio,
};

use crate::quantity::{Bounded, kelvin_from_celsius};

/// Ratio of the molar masses of water and dry air (ch. 1, eq. 20).
const MOLAR_MASS_RATIO: f64 = 0.621_945;

/// Gas constant of dry air, J/(kg K) (ch. 1, eq. 26).
const GAS_CONSTANT_DRY_AIR_J_KG_K: f64 = 287.042;

/// Reciprocal of the ratio of molar masses, as the handbook prints it (ch. 1, eq. 26).
const VAPOUR_VOLUME_RATIO: f64 = 1.607_858;

/// Specific heat of dry air, J/(kg K) (ch. 1, eq. 30).
const HEAT_CAPACITY_DRY_AIR_J_KG_K: f64 = 1_006.0;

/// Specific heat of water vapour, J/(kg K) (ch. 1, eq. 30).
const HEAT_CAPACITY_VAPOUR_J_KG_K: f64 = 1_860.0;

/// Enthalpy of saturated vapour at 0 °C, J/kg (ch. 1, eq. 30).
const ENTHALPY_VAPOUR_AT_ZERO_J_KG: f64 = 2_501_000.0;

/// Specific heat of liquid water, J/(kg K) (ch. 1, eq. 33).
const HEAT_CAPACITY_WATER_J_KG_K: f64 = 4_186.0;

/// Fall of the latent heat of vaporisation with temperature, J/(kg K): liquid less vapour (ch. 1,
/// eq. 33).
const LATENT_HEAT_SLOPE_J_KG_K: f64 = HEAT_CAPACITY_WATER_J_KG_K - HEAT_CAPACITY_VAPOUR_J_KG_K;

/// Standard pressure at sea level, Pa (ch. 1, eq. 3).
const PRESSURE_SEA_LEVEL_PA: f64 = 101_325.0;

/// Iterations after which a bracketed search stops; bisection alone needs 32 for 200 K to 1e-7 K.
const ITERATIONS_GREATEST: usize = 64;

/// Width to which temperatures are found, K.
const TEMPERATURE_TOLERANCE_K: f64 = 1e-7;

/// Gives the vapour pressure of air at a humidity ratio.
///
/// pᵥ = p W/(0.621945 + W). Negative humidity counts as none.
///
/// `humidity_ratio`: at least 0, kg per kg of dry air; `pressure_pa`: 50 000…120 000 Pa. Result in
/// Pa.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 36.
#[must_use]
pub fn vapour_pressure_from_humidity_ratio(humidity_ratio: f64, pressure_pa: f64) -> f64 {
    let humidity_ratio = humidity_ratio.at_least(0.0);
    pressure_pa * humidity_ratio / (MOLAR_MASS_RATIO + humidity_ratio)
}

/// Gives the humidity ratio from the relative humidity.
///
/// W = 0.621945 φpₛ/(p − φpₛ).
///
/// `dry_bulb_c`: −60…120 °C; `relative_humidity`: 0…1 as a fraction, more than 1 being
/// supersaturated air; `pressure_pa`: 50 000…120 000 Pa. Result in kg per kg of dry air.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 20 and 22.
#[must_use]
pub fn humidity_ratio_from_relative_humidity(
    dry_bulb_c: f64,
    relative_humidity: f64,
    pressure_pa: f64,
) -> f64 {
    let vapour_pressure_pa = relative_humidity * saturation_pressure_pa(dry_bulb_c);
    humidity_ratio_from_vapour_pressure(vapour_pressure_pa, pressure_pa)
}

/// Gives the humidity ratio from the dew point: that of air saturated at the dew point.
///
/// W = 0.621945 pₛ(t_d)/(p − pₛ(t_d)).
///
/// `dew_point_c`: −100…120 °C; `pressure_pa`: 50 000…120 000 Pa. Result in kg per kg of dry air.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 20 and 36.
#[must_use]
pub fn humidity_ratio_from_dew_point(dew_point_c: f64, pressure_pa: f64) -> f64 {
    saturation_humidity_ratio(dew_point_c, pressure_pa)
}

/// Gives the relative humidity from the humidity ratio.
///
/// φ = pᵥ/pₛ; more than 1 for supersaturated air, 0 for bone-dry air.
///
/// `dry_bulb_c`: −60…120 °C; `humidity_ratio`: at least 0, kg per kg of dry air; `pressure_pa`: 50
/// 000…120 000 Pa. Result as a fraction.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 22.
#[must_use]
pub fn relative_humidity_from_humidity_ratio(
    dry_bulb_c: f64,
    humidity_ratio: f64,
    pressure_pa: f64,
) -> f64 {
    vapour_pressure_from_humidity_ratio(humidity_ratio, pressure_pa)
        / saturation_pressure_pa(dry_bulb_c)
}

/// Gives the enthalpy of moist air.
///
/// h = 1006t + W(2 501 000 + 1860t).
///
/// `dry_bulb_c`: −60…120 °C; `humidity_ratio` in kg per kg of dry air. Result in J per kg of dry
/// air.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 30.
#[must_use]
pub fn enthalpy_j_per_kg(dry_bulb_c: f64, humidity_ratio: f64) -> f64 {
    HEAT_CAPACITY_DRY_AIR_J_KG_K * dry_bulb_c
        + humidity_ratio * vapour_enthalpy_j_per_kg(dry_bulb_c)
}

/// Gives the dry bulb of air of known enthalpy and humidity.
///
/// t = (h − 2 501 000W)/(1006 + 1860W).
///
/// `enthalpy_j_per_kg` in J per kg of dry air; `humidity_ratio`: at least 0, kg per kg of dry air.
/// Result in °C.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 30, solved for t.
#[must_use]
pub fn dry_bulb_c_from_enthalpy(enthalpy_j_per_kg: f64, humidity_ratio: f64) -> f64 {
    (enthalpy_j_per_kg - humidity_ratio * ENTHALPY_VAPOUR_AT_ZERO_J_KG)
        / moist_air_heat_capacity_j_per_kg_k(humidity_ratio)
}

/// Gives the humidity ratio of air of known enthalpy and dry bulb.
///
/// W = (h − 1006t)/(2 501 000 + 1860t).
///
/// `enthalpy_j_per_kg` in J per kg of dry air; `dry_bulb_c`: −60…120 °C. Result in kg per kg of dry air, below 0 where dry air
/// already holds more.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 30, solved for W.
#[must_use]
pub fn humidity_ratio_from_enthalpy(enthalpy_j_per_kg: f64, dry_bulb_c: f64) -> f64 {
    (enthalpy_j_per_kg - HEAT_CAPACITY_DRY_AIR_J_KG_K * dry_bulb_c)
        / vapour_enthalpy_j_per_kg(dry_bulb_c)
}

/// Gives the volume of moist air that holds a kilogram of dry air.
///
/// v = 287.042T(1 + 1.607858W)/p.
///
/// `dry_bulb_c`: −60…120 °C; `humidity_ratio` in kg per kg of dry air; `pressure_pa`: 50 000…120
/// 000 Pa. Result in m³ per kg of dry air.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 26.
#[must_use]
pub fn specific_volume_m3_per_kg(dry_bulb_c: f64, humidity_ratio: f64, pressure_pa: f64) -> f64 {
    GAS_CONSTANT_DRY_AIR_J_KG_K
        * kelvin_from_celsius(dry_bulb_c)
        * (1.0 + VAPOUR_VOLUME_RATIO * humidity_ratio)
        / pressure_pa
}

/// Gives the mass of dry air in a cubic metre of moist air.
///
/// ρ = 1/v. Arguments as for [`specific_volume_m3_per_kg`]. Result in kg of dry air per m³.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 26.
#[must_use]
pub fn density_dry_air_kg_per_m3(dry_bulb_c: f64, humidity_ratio: f64, pressure_pa: f64) -> f64 {
    1.0 / specific_volume_m3_per_kg(dry_bulb_c, humidity_ratio, pressure_pa)
}

/// Gives the heat capacity of moist air for each kilogram of dry air.
///
/// c = 1006 + 1860W.
///
/// `humidity_ratio` in kg per kg of dry air. Result in J/(kg K) of dry air.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 30, differentiated.
#[must_use]
pub fn moist_air_heat_capacity_j_per_kg_k(humidity_ratio: f64) -> f64 {
    HEAT_CAPACITY_DRY_AIR_J_KG_K + HEAT_CAPACITY_VAPOUR_J_KG_K * humidity_ratio
}

/// Gives the enthalpy of water vapour above liquid water at 0 °C.
///
/// h = 2 501 000 + 1860t: what a kilogram of vapour brings along into the air.
///
/// `dry_bulb_c`: −60…120 °C. Result in J/kg of vapour.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 30.
#[must_use]
pub fn vapour_enthalpy_j_per_kg(dry_bulb_c: f64) -> f64 {
    ENTHALPY_VAPOUR_AT_ZERO_J_KG + HEAT_CAPACITY_VAPOUR_J_KG_K * dry_bulb_c
}

/// Gives the latent heat of vaporisation of water.
///
/// r = 2 501 000 − 2326t: vapour less liquid at the same temperature.
///
/// `temperature_c`: 0…120 °C. Result in J/kg.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 33 (its first bracket).
#[must_use]
pub fn latent_heat_vaporisation_j_per_kg(temperature_c: f64) -> f64 {
    ENTHALPY_VAPOUR_AT_ZERO_J_KG - LATENT_HEAT_SLOPE_J_KG_K * temperature_c
}

/// Gives the pressure of the standard atmosphere at an altitude.
///
/// p = 101 325(1 − 2.25577·10⁻⁵ z)^5.2559.
///
/// `altitude_m`: −500…11 000 m. Result in Pa.
///
/// Source: ASHRAE Fundamentals (2017) ch. 1, eq. 3.
#[must_use]
pub fn standard_atmosphere_pressure_pa(altitude_m: f64) -> f64 {
    PRESSURE_SEA_LEVEL_PA * libm::pow(1.0 - 2.255_77e-5 * altitude_m, 5.255_9)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 1006·30 + 0.010(2 501 000 + 1860·30) = 30 180 + 25 568.
    #[test]
    fn enthalpy_by_hand() {
        assert!((enthalpy_j_per_kg(30.0, 0.010) - 55_748.0).abs() < 1e-6);
        assert!((dry_bulb_c_from_enthalpy(55_748.0, 0.010) - 30.0).abs() < 1e-9);
    }

    /// Steam tables (IAPWS, from memory): 1.0142 bar at 100 °C, 42.47 hPa at 30 °C, and 1.0326 hPa
    /// over ice at −20 °C, each to 0.1 %.
    #[test]
    fn saturation_by_steam_table() {
        for (temperature_c, pressure_pa) in [(100.0, 101_420.0), (30.0, 4_247.0), (-20.0, 103.26)] {
            let ratio = saturation_pressure_pa(temperature_c) / pressure_pa;
            assert!((ratio - 1.0).abs() < 1e-3, "{temperature_c} °C: {ratio}");
        }
    }

    /// Latent heat at 100 °C is 2257 kJ/kg by the steam tables; the handbook's linear form is
    /// within 1 %.
    #[test]
    fn latent_heat_by_steam_table() {
        assert!((latent_heat_vaporisation_j_per_kg(100.0) / 2_257_000.0 - 1.0).abs() < 0.01);
    }

    /// Bone-dry and foggy air have the dew points that the documentation promises.
    #[test]
    fn dew_point_at_the_ends() {
        assert_eq!(
            dew_point_c_from_humidity_ratio(0.0, 101_325.0),
            DEW_POINT_LEAST_C
        );
        let fog = 1.2 * saturation_humidity_ratio(10.0, 101_325.0);
        assert!(dew_point_c_from_humidity_ratio(fog, 101_325.0) > 12.0);
        assert_eq!(wet_bulb_c_from_humidity_ratio(10.0, fog, 101_325.0), 10.0);
    }
}
