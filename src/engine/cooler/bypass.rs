//! Apparatus dew point and bypass factor: how a coil splits its capacity into sensible and latent.
//!
//! A share of the air (the bypass factor) is taken to pass the coil untouched while the rest leaves
//! saturated at the temperature of the coil's surface (the apparatus dew point). Both follow from one
//! known operating point; the number of transfer units of the surface is then taken as constant.
//!
//! Source: EnergyPlus Engineering Reference, single-speed direct-expansion cooling coil.

use crate::air::{
    density_dry_air_kg_per_m3, dry_bulb_c_from_enthalpy, enthalpy_j_per_kg,
    saturated_temperature_c_on_line, saturation_humidity_ratio, vapour_enthalpy_j_per_kg,
};

/// Coldest coil surface of the model, °C: below it the coil would ice up.
pub const SURFACE_COLDEST_C: f64 = 0.0;

/// Halvings of an interval that bring it to rounding.
const HALVINGS: usize = 50;

/// Air that enters the coil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EnteringAir {
    /// Dry bulb, °C, −10…70.
    pub dry_bulb_c: f64,
    /// Humidity ratio, kg per kg of dry air, 0…0.1.
    pub humidity_ratio: f64,
    /// Pressure, Pa, 60 000…105 000.
    pub pressure_pa: f64,
}

impl EnteringAir {
    /// Enthalpy, J per kg of dry air.
    #[must_use]
    pub fn enthalpy_j_per_kg(&self) -> f64 {
        enthalpy_j_per_kg(self.dry_bulb_c, self.humidity_ratio)
    }

    /// Mass flow of dry air in a volume flow of this air, kg/s.
    ///
    /// * `airflow_m3_s` — volume flow at this state, m³/s, at least 0
    #[must_use]
    pub fn dry_air_flow_kg_s(&self, airflow_m3_s: f64) -> f64 {
        let density =
            density_dry_air_kg_per_m3(self.dry_bulb_c, self.humidity_ratio, self.pressure_pa);
        airflow_m3_s * density
    }
}

/// An operating point of a coil, as a rating gives it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoilDuty {
    /// Sensible and latent capacity, W.
    pub total_w: f64,
    /// Share of it that is sensible, above 0, up to 1.
    pub sensible_heat_ratio: f64,
    /// Air flow at the entering state, m³/s.
    pub airflow_m3_s: f64,
}

/// Why a coil cannot work as its operating point says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BypassError {
    /// The leaving air would hold more vapour than it can: too much sensible heat, or too little air.
    OutletSupersaturated {
        /// Sensible heat ratio given.
        sensible_heat_ratio: f64,
        /// Greatest ratio that this capacity, flow and entering air allow.
        greatest: f64,
    },
    /// No surface at or above freezing can dry the air that much: too little sensible heat.
    NoApparatusDewPoint {
        /// Sensible heat ratio given.
        sensible_heat_ratio: f64,
        /// Coldest surface tried, °C.
        coldest_c: f64,
    },
}

/// A coil's operating point solved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bypass {
    /// Temperature of the saturated surface, °C.
    pub apparatus_dew_point_c: f64,
    /// Share of the air that passes untouched, 0…1.
    pub bypass_factor: f64,
    /// A₀ = −m ln BF, kg/s.
    pub transfer_kg_s: f64,
    /// Dry bulb of the leaving air, °C.
    pub supply_dry_bulb_c: f64,
    /// Humidity ratio of the leaving air.
    pub supply_humidity_ratio: f64,
}

impl Bypass {
    /// Solves apparatus dew point and bypass factor of an operating point.
    ///
    /// The leaving air follows from h₂ = h₁ − Q/m and h(T₁, W₂) = h₂ + SHR Q/m. The apparatus dew point
    /// is where the line from entering to leaving air meets saturation; BF = (h₂ − h_ADP)/(h₁ − h_ADP)
    /// and A₀ = −m ln BF, with m the flow of dry air.
    ///
    /// * `air` — entering air, within the ranges stated at [`EnteringAir`]
    /// * `duty` — capacity above 0, W; sensible heat ratio; flow above 0, m³/s
    ///
    /// # Errors
    /// [`BypassError`] if the leaving air would be supersaturated or no apparatus dew point exists.
    ///
    /// Source: EnergyPlus Engineering Reference, "rated bypass factor".
    pub fn solve(air: &EnteringAir, duty: &CoilDuty) -> Result<Self, BypassError> {
        let flow_kg_s = air.dry_air_flow_kg_s(duty.airflow_m3_s);
        let drop_j_kg = duty.total_w / flow_kg_s;
        let (supply_dry_bulb_c, supply_humidity_ratio) =
            leaving_air(air, drop_j_kg, duty.sensible_heat_ratio);
        if supersaturation(air, drop_j_kg, duty.sensible_heat_ratio) > 0.0 {
            return Err(BypassError::OutletSupersaturated {
                sensible_heat_ratio: duty.sensible_heat_ratio,
                greatest: greatest_sensible_heat_ratio(air, drop_j_kg),
            });
        }
        let slope =
            (air.humidity_ratio - supply_humidity_ratio) / (air.dry_bulb_c - supply_dry_bulb_c);
        let apparatus_dew_point_c = saturated_temperature_c_on_line(
            supply_dry_bulb_c,
            supply_humidity_ratio,
            slope,
            SURFACE_COLDEST_C,
            air.pressure_pa,
        )
        .ok_or(BypassError::NoApparatusDewPoint {
            sensible_heat_ratio: duty.sensible_heat_ratio,
            coldest_c: SURFACE_COLDEST_C,
        })?;
        let surface_w = saturation_humidity_ratio(apparatus_dew_point_c, air.pressure_pa);
        let surface_j_kg = enthalpy_j_per_kg(apparatus_dew_point_c, surface_w);
        let entering_j_kg = air.enthalpy_j_per_kg();
        let bypass_factor = 1.0 - drop_j_kg / (entering_j_kg - surface_j_kg);
        Ok(Self {
            apparatus_dew_point_c,
            bypass_factor,
            transfer_kg_s: -flow_kg_s * libm::log(bypass_factor),
            supply_dry_bulb_c,
            supply_humidity_ratio,
        })
    }
}

/// Dry bulb and humidity ratio of air that lost an enthalpy with a sensible share.
fn leaving_air(air: &EnteringAir, drop_j_kg: f64, sensible_heat_ratio: f64) -> (f64, f64) {
    let latent_j_kg = (1.0 - sensible_heat_ratio) * drop_j_kg;
    let humidity_ratio =
        air.humidity_ratio - latent_j_kg / vapour_enthalpy_j_per_kg(air.dry_bulb_c);
    let dry_bulb_c = dry_bulb_c_from_enthalpy(air.enthalpy_j_per_kg() - drop_j_kg, humidity_ratio);
    (dry_bulb_c, humidity_ratio)
}

/// Vapour of the leaving air above what it can hold, kg per kg of dry air.
fn supersaturation(air: &EnteringAir, drop_j_kg: f64, sensible_heat_ratio: f64) -> f64 {
    let (dry_bulb_c, humidity_ratio) = leaving_air(air, drop_j_kg, sensible_heat_ratio);
    humidity_ratio - saturation_humidity_ratio(dry_bulb_c, air.pressure_pa)
}

/// The sensible heat ratio at which the leaving air is just saturated.
fn greatest_sensible_heat_ratio(air: &EnteringAir, drop_j_kg: f64) -> f64 {
    let (mut feasible, mut infeasible) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(feasible, infeasible);
        if supersaturation(air, drop_j_kg, middle) > 0.0 {
            infeasible = middle;
        } else {
            feasible = middle;
        }
    }
    feasible
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::air::humidity_ratio_from_wet_bulb;

    fn rated_air() -> EnteringAir {
        EnteringAir {
            dry_bulb_c: 26.67,
            humidity_ratio: humidity_ratio_from_wet_bulb(26.67, 19.44, 101_325.0),
            pressure_pa: 101_325.0,
        }
    }

    fn duty(sensible_heat_ratio: f64) -> CoilDuty {
        CoilDuty {
            total_w: 2640.0,
            sensible_heat_ratio,
            airflow_m3_s: 0.13,
        }
    }

    #[test]
    fn greatest_ratio_in_the_error_is_just_feasible() {
        let error = Bypass::solve(&rated_air(), &duty(0.95)).unwrap_err();
        let BypassError::OutletSupersaturated { greatest, .. } = error else {
            panic!("{error:?}");
        };
        assert!(Bypass::solve(&rated_air(), &duty(greatest - 1e-6)).is_ok());
        assert!(Bypass::solve(&rated_air(), &duty(greatest + 1e-6)).is_err());
    }

    #[test]
    fn too_little_sensible_heat_has_no_surface() {
        assert!(matches!(
            Bypass::solve(&rated_air(), &duty(0.4)),
            Err(BypassError::NoApparatusDewPoint { .. })
        ));
    }
}
