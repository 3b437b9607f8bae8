//! Longwave radiation of the sky.
//!
//! The clear sky radiates like a grey body at air temperature whose emissivity grows with the
//! vapour in the air, expressed by the dew point. Clouds fill the atmospheric window and raise it.
//!
//! Berdahl & Martin is the measured correlation of six stations of the United States (dew points of
//! −13…24 °C, standard error about 10 W/m²). The recalibration of Li, Jiang & Coimbra 2017 (0.758 +
//! 0.521x + 0.625x²) gives a sky 4 K warmer and is not to be confused with it.
//!
//! Sources: Berdahl & Martin 1984, Solar Energy 32:663; cloud factor of Walton 1983 (NBSSIR
//! 83-2655), as in the EnergyPlus Engineering Reference.

use crate::quantity::{
    Bounded, STEFAN_BOLTZMANN_W_M2_K4, celsius_from_kelvin, kelvin_from_celsius,
};

/// Dew point of the correlation's least emissivity, °C: drier air is taken to radiate no less.
///
/// It is the vertex of the parabola, −100·0.56/(2·0.73); below it the parabola would rise again.
const DEW_POINT_OF_LEAST_EMISSIVITY_C: f64 = -38.356_164_383_561_64;

/// Gives the emissivity of the clear sky over the mean of a day.
///
/// ε = 0.711 + 0.56(t_d/100) + 0.73(t_d/100)².
///
/// `dew_point_c`: measured for −13…24 °C, continued to 35 °C; below −38 °C the value of −38 °C.
/// Result without unit.
///
/// Source: Berdahl & Martin 1984, eq. for the mean of day and night.
#[must_use]
pub fn clear_sky_emissivity(dew_point_c: f64) -> f64 {
    let hundredth = dew_point_c.at_least(DEW_POINT_OF_LEAST_EMISSIVITY_C) / 100.0;
    0.711 + (0.56 + 0.73 * hundredth) * hundredth
}

/// Gives the emissivity of the clear sky at an hour and a pressure.
///
/// ε = ε(t_d) + 0.013 cos(2πh/24) + 0.00012(p − 1000), with h the hour since midnight and p in hPa:
/// nights radiate more than their air temperature says, because the air aloft stays warm; high
/// places less.
///
/// `dew_point_c` as for [`clear_sky_emissivity`]; `hour_h`: any number, hours since a midnight;
/// `pressure_pa`: 50 000…120 000 Pa.
///
/// Source: Berdahl & Martin 1984, diurnal and pressure corrections.
#[must_use]
pub fn clear_sky_emissivity_corrected(dew_point_c: f64, hour_h: f64, pressure_pa: f64) -> f64 {
    let angle = core::f64::consts::TAU * hour_h / 24.0;
    clear_sky_emissivity(dew_point_c)
        + 0.013 * libm::cos(angle)
        + 0.000_12 * (pressure_pa / 100.0 - 1_000.0)
}

/// Gives the factor by which cloud raises the emissivity of the sky.
///
/// 1 + 0.0224N − 0.0035N² + 0.00028N³, N in tenths of the sky. (Forms with +0.0035N² circulate and
/// are wrong.)
///
/// `cloud_fraction`: 0…1. Result 1…1.154.
///
/// Source: Walton 1983, as in the EnergyPlus Engineering Reference.
#[must_use]
pub fn cloud_factor(cloud_fraction: f64) -> f64 {
    let tenths = 10.0 * cloud_fraction;
    1.0 + (0.022_4 + (-0.003_5 + 0.000_28 * tenths) * tenths) * tenths
}

/// Gives the longwave radiation of the sky onto a horizontal plane.
///
/// L = min(1, ε F)σT⁴: no sky radiates more than a black body at air temperature, which the product
/// of the two correlations would pass under low cloud in humid air.
///
/// `emissivity`: of the clear sky, 0…1; `cloud_factor`: see [`cloud_factor`]; `dry_bulb_c`: −60…60
/// °C. Result in W/m².
///
/// Source: EnergyPlus Engineering Reference, sky radiation; the bound is this project's own.
#[must_use]
pub fn sky_longwave_w_m2(emissivity: f64, cloud_factor: f64, dry_bulb_c: f64) -> f64 {
    let square = kelvin_from_celsius(dry_bulb_c) * kelvin_from_celsius(dry_bulb_c);
    (emissivity * cloud_factor).at_most(1.0) * STEFAN_BOLTZMANN_W_M2_K4 * square * square
}

/// Gives the temperature of a black sky that radiates as much.
///
/// T = (L/σ)^¼.
///
/// `sky_longwave_w_m2`: at least 0, W/m². Result in °C.
#[must_use]
pub fn sky_temperature_c(sky_longwave_w_m2: f64) -> f64 {
    celsius_from_kelvin((sky_longwave_w_m2 / STEFAN_BOLTZMANN_W_M2_K4).sqrt().sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: at a dew point of 10 °C 0.711 + 0.056 + 0.0073; at midnight and 850 hPa 0.013 more
    /// and 0.018 less.
    #[test]
    fn emissivity_by_hand() {
        assert!((clear_sky_emissivity(10.0) - 0.774_3).abs() < 1e-12);
        assert!((clear_sky_emissivity_corrected(10.0, 24.0, 85_000.0) - 0.769_3).abs() < 1e-12);
    }

    /// Drier air never radiates more.
    #[test]
    fn emissivity_rises_with_the_dew_point() {
        for dew_point_c in -100..35 {
            let dew_point_c = f64::from(dew_point_c);
            assert!(clear_sky_emissivity(dew_point_c) <= clear_sky_emissivity(dew_point_c + 1.0));
        }
    }

    #[test]
    fn black_sky_at_air_temperature_is_the_bound() {
        let longwave_w_m2 = sky_longwave_w_m2(0.9, cloud_factor(1.0), 30.0);
        assert!((sky_temperature_c(longwave_w_m2) - 30.0).abs() < 1e-9);
    }
}
