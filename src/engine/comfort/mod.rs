//! Comfort and heat safety of people and animals, and the heat they give off.
//!
//! Operative temperature for what a body feels in still air, predicted mean vote and standard
//! effective temperature for comfort, heat index for danger.

pub mod heat_index;
pub mod mean_vote;
pub mod occupants;
pub mod standard_temperature;

/// Air, radiation and a body in it, as both comfort models take them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThermalState {
    /// Air temperature, °C, 0…50.
    pub dry_bulb_c: f64,
    /// Mean radiant temperature, °C, 0…60.
    pub mean_radiant_c: f64,
    /// Air speed relative to the body, m/s, 0…2.
    pub air_speed_m_s: f64,
    /// Relative humidity, 0…1.
    pub relative_humidity: f64,
    /// Metabolic rate, met, 0.7…4.
    pub metabolic_rate_met: f64,
    /// Insulation of the clothing, clo, 0…2.
    pub clothing_clo: f64,
}

/// Gives the operative temperature, °C: t_o = A t_a + (1 − A) t_r.
///
/// A is 0.5 below 0.2 m/s, 0.6 below 0.6 m/s and 0.7 from there on; t_a is the air temperature and
/// t_r the mean radiant temperature.
///
/// * `dry_bulb_c`, `mean_radiant_c` — °C
/// * `air_speed_m_s` — m/s, 0…1
///
/// Source: ASHRAE 55-2017, appendix A (from memory).
#[must_use]
pub fn operative_temperature_c(dry_bulb_c: f64, mean_radiant_c: f64, air_speed_m_s: f64) -> f64 {
    let air_share = if air_speed_m_s < 0.2 {
        0.5
    } else if air_speed_m_s < 0.6 {
        0.6
    } else {
        0.7
    };
    air_share * dry_bulb_c + (1.0 - air_share) * mean_radiant_c
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn operative_temperature_weighs_air_by_its_speed() {
        assert!((operative_temperature_c(24.0, 30.0, 0.1) - 27.0).abs() < 1e-12);
        assert!((operative_temperature_c(24.0, 30.0, 0.3) - 26.4).abs() < 1e-12);
        assert!((operative_temperature_c(24.0, 30.0, 0.6) - 25.8).abs() < 1e-12);
    }
}
