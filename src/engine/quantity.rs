//! Physical constants and the few conversions between scales that every module shares.

/// Kelvin at 0 °C (exact, BIPM SI brochure).
pub const ZERO_CELSIUS_K: f64 = 273.15;

/// Stefan–Boltzmann constant, W/(m² K⁴) (CODATA 2018).
pub const STEFAN_BOLTZMANN_W_M2_K4: f64 = 5.670_374_419e-8;

/// Standard gravity, m/s² (ISO 80000-3).
pub const GRAVITY_M_S2: f64 = 9.806_65;

/// Seconds in an hour.
pub const SECONDS_PER_HOUR: f64 = 3_600.0;

/// Seconds in a day.
pub const SECONDS_PER_DAY: f64 = 86_400.0;

/// Absolute temperature of a Celsius temperature, K.
#[must_use]
pub fn kelvin_from_celsius(temperature_c: f64) -> f64 {
    temperature_c + ZERO_CELSIUS_K
}

/// Celsius temperature of an absolute temperature, °C.
#[must_use]
pub fn celsius_from_kelvin(temperature_k: f64) -> f64 {
    temperature_k - ZERO_CELSIUS_K
}
