//! A direct-expansion coil: heat extracted and electric input at an operating point.
//!
//! Steady operation of a unit described by its rating and a set of performance curves. Capacity is
//! the coil's own; the heat of the cabin fan is not taken off it. Total capacity follows the curves; its
//! split follows apparatus dew point and bypass factor. A coil whose surface is not below the dew
//! point of the air is dry: it works as if the air were just so moist that nothing condenses. The
//! leaving air is never supersaturated. A surface colder than freezing would ice up, so the capacity
//! is limited to what a surface at 0 °C extracts, and said to be.
//!
//! Sources: EnergyPlus Engineering Reference, direct-expansion cooling coils; curves as cited in
//! [`super::curves`]; flow that belongs to a part speed from the four-speed unit of NREL's residential
//! models.

use super::bypass::{Bypass, BypassError, CoilDuty, EnteringAir, SURFACE_COLDEST_C};
use super::curves::{CurveSet, PerformanceCurves};
use super::rating::{CoolerRating, PartSpeed};
use crate::air::{
    dry_bulb_c_from_enthalpy, enthalpy_j_per_kg, humidity_ratio_from_enthalpy,
    humidity_ratio_from_wet_bulb, moist_air_heat_capacity_j_per_kg_k,
    saturated_temperature_c_from_enthalpy, saturation_humidity_ratio,
    standard_atmosphere_pressure_pa, wet_bulb_c_from_humidity_ratio,
};
use crate::quantity::Bounded;
use crate::validity::OutOfRange;

/// Share of the full flow that belongs to a share of the full capacity (NREL four-speed unit).
const FLOW_BY_SPEED: [(f64, f64); 4] = [(0.36, 0.42), (0.51, 0.54), (0.67, 0.68), (1.0, 1.0)];

/// Beginning and rise of the straight lines between them.
const FLOW_LINES: [(f64, f64, f64); 3] = {
    const fn line((low, flow_low): (f64, f64), (high, flow_high): (f64, f64)) -> (f64, f64, f64) {
        (low, flow_low, (flow_high - flow_low) / (high - low))
    }
    let [slowest, slow, fast, fastest] = FLOW_BY_SPEED;
    [line(slowest, slow), line(slow, fast), line(fast, fastest)]
};

/// Wet-bulb tolerance of the search for a dry coil's state, K; worth 3e-5 of the capacity.
const DRY_COIL_TOLERANCE_K: f64 = 1.0e-3;

/// First step of that search, K: about what dry air lacks to condense on a coil.
const DRY_COIL_FIRST_STEP_K: f64 = 3.0;

/// Greatest number of steps of that search.
const DRY_COIL_STEPS_GREATEST: usize = 20;

/// Why a coil cannot be built.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CoilError {
    /// An input is out of range.
    OutOfRange(OutOfRange),
    /// The rating is not one that a coil can have.
    Bypass(BypassError),
}

impl From<OutOfRange> for CoilError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}

impl From<BypassError> for CoilError {
    fn from(error: BypassError) -> Self {
        Self::Bypass(error)
    }
}

/// What a coil does in steady operation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoilOutput {
    /// Heat extracted from the air, W.
    pub total_w: f64,
    /// Sensible part, W.
    pub sensible_w: f64,
    /// Latent part, W.
    pub latent_w: f64,
    /// Water taken out of the air, kg/s.
    pub condensate_kg_s: f64,
    /// Electric input of compressor and condenser fan, W.
    pub electric_power_w: f64,
    /// Dry bulb of the air leaving the coil, °C.
    pub supply_dry_bulb_c: f64,
    /// Humidity ratio of the air leaving the coil.
    pub supply_humidity_ratio: f64,
    /// Whether the curves were used outside the range they were fitted in.
    pub extrapolated: bool,
    /// Whether the capacity was limited to keep the surface from icing up.
    pub frost_limited: bool,
}

/// A direct-expansion coil, ready to operate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coil {
    rating: CoolerRating,
    part_speed: PartSpeed,
    curves: PerformanceCurves,
    transfer_kg_s: f64,
}

/// What stays the same while the operating point is searched.
struct Duty<'coil> {
    coil: &'coil Coil,
    air: EnteringAir,
    condenser_air_c: f64,
    capacity_fraction: f64,
    flow_ratio: f64,
    flow_kg_s: f64,
    /// Share of the air that meets the surface, times the flow, kg/s.
    contact_kg_s: f64,
}

impl Coil {
    /// Builds a coil from its rating at sea level, a set of curves and its part-speed behaviour.
    ///
    /// * `rating`, `part_speed` — within the ranges stated at their fields
    /// * `curves` — coefficients as published; they are divided by their value at the rating point
    ///
    /// # Errors
    /// [`CoilError`] if an input lies out of range or the rating is not one that a coil can have.
    pub fn new(
        rating: CoolerRating,
        curves: &CurveSet,
        part_speed: PartSpeed,
    ) -> Result<Self, CoilError> {
        rating.check()?;
        part_speed.check()?;
        let pressure_pa = standard_atmosphere_pressure_pa(0.0);
        let (dry_bulb_c, wet_bulb_c) = (
            rating.entering_dry_bulb_rated_c,
            rating.entering_wet_bulb_rated_c,
        );
        let air = EnteringAir {
            dry_bulb_c,
            humidity_ratio: humidity_ratio_from_wet_bulb(dry_bulb_c, wet_bulb_c, pressure_pa),
            pressure_pa,
        };
        let duty = CoilDuty {
            total_w: rating.cooling_capacity_rated_w,
            sensible_heat_ratio: rating.sensible_heat_ratio_rated,
            airflow_m3_s: rating.airflow_rated_m3_s,
        };
        let bypass = Bypass::solve(&air, &duty)?;
        Ok(Self {
            rating,
            part_speed,
            curves: PerformanceCurves::new(curves, wet_bulb_c, rating.condenser_air_rated_c),
            transfer_kg_s: bypass.transfer_kg_s,
        })
    }

    /// The rating that the coil was built from.
    #[must_use]
    pub fn rating(&self) -> &CoolerRating {
        &self.rating
    }

    /// Electric input of the cabin fan, W: P = P_r f³ (fan law, textbook).
    ///
    /// * `airflow_fraction` — f, share of the rated flow, 0…1.5
    #[must_use]
    pub fn fan_power_w(&self, airflow_fraction: f64) -> f64 {
        self.rating.fan_power_w * airflow_fraction * airflow_fraction * airflow_fraction
    }

    /// Gives what the coil extracts and draws in steady operation.
    ///
    /// Q = Q_r s f_T(wet bulb, condenser) f_F(flow); input = P_r/Q_r Q times its own curves over the gain
    /// at part speed. The surface is at h_ADP = h₁ − Q/(m (1 − BF)) with BF = exp(−A₀/m); the air leaves at
    /// h₂ = h₁ − Q/m and W₂ = W₁ − (1 − BF)(W₁ − W_ADP).
    ///
    /// * `air` — entering air, within the ranges stated at [`EnteringAir`]
    /// * `condenser_air_c` — air entering the condenser, °C, −10…70
    /// * `capacity_fraction` — s, speed as share of the full capacity, 0…1; 0 is off
    /// * `airflow_fraction` — share of the rated air flow, 0.2…1.5
    ///
    /// Source: EnergyPlus Engineering Reference, direct-expansion cooling coils.
    #[must_use]
    pub fn operate(
        &self,
        air: &EnteringAir,
        condenser_air_c: f64,
        capacity_fraction: f64,
        airflow_fraction: f64,
    ) -> CoilOutput {
        if capacity_fraction <= 0.0 || airflow_fraction <= 0.0 {
            return off(air);
        }
        let flow_kg_s = air.dry_air_flow_kg_s(self.rating.airflow_rated_m3_s * airflow_fraction);
        let duty = Duty {
            coil: self,
            air: *air,
            condenser_air_c,
            capacity_fraction,
            flow_ratio: airflow_fraction / flow_fraction_at_speed(capacity_fraction),
            flow_kg_s,
            contact_kg_s: -flow_kg_s * libm::expm1(-self.transfer_kg_s / flow_kg_s),
        };
        duty.output()
    }
}

impl Duty<'_> {
    fn output(&self) -> CoilOutput {
        let air = &self.air;
        let entering_wet_bulb_c =
            wet_bulb_c_from_humidity_ratio(air.dry_bulb_c, air.humidity_ratio, air.pressure_pa);
        let dry = self.dry_excess(entering_wet_bulb_c, air.humidity_ratio) >= 0.0;
        let wet_bulb_c = if dry {
            self.just_dry_wet_bulb_c(entering_wet_bulb_c)
        } else {
            entering_wet_bulb_c
        };
        let rating = &self.coil.rating;
        let performance =
            self.coil
                .curves
                .performance(wet_bulb_c, self.condenser_air_c, self.flow_ratio);
        let share = performance.capacity_ratio * self.capacity_fraction;
        let wanted_w = rating.cooling_capacity_rated_w * share;
        let greatest_w = self.frost_limit_w(dry);
        let total_w = wanted_w.at_most(greatest_w);
        let (supply_dry_bulb_c, supply_humidity_ratio) = self.leaving_air(total_w, dry);
        let dried = air.humidity_ratio - supply_humidity_ratio;
        let sensible_w = self.flow_kg_s
            * moist_air_heat_capacity_j_per_kg_k(supply_humidity_ratio)
            * (air.dry_bulb_c - supply_dry_bulb_c);
        CoilOutput {
            total_w,
            sensible_w,
            latent_w: total_w - sensible_w,
            condensate_kg_s: self.flow_kg_s * dried,
            electric_power_w: rating.electric_power_rated_w * share * performance.input_ratio
                / self.coil.part_speed.efficiency_gain(self.capacity_fraction),
            supply_dry_bulb_c,
            supply_humidity_ratio,
            extrapolated: performance.extrapolated,
            frost_limited: wanted_w > greatest_w,
        }
    }

    /// Capacity at a wet bulb, W, before the limit of icing.
    fn capacity_w(&self, wet_bulb_c: f64) -> f64 {
        let ratio =
            self.coil
                .curves
                .capacity_ratio(wet_bulb_c, self.condenser_air_c, self.flow_ratio);
        self.coil.rating.cooling_capacity_rated_w * self.capacity_fraction * ratio
    }

    /// Greatest capacity that leaves the surface at freezing, W; nothing once the air is as cold.
    fn frost_limit_w(&self, dry: bool) -> f64 {
        let air = &self.air;
        let drop_j_kg = if dry {
            let heat_capacity = moist_air_heat_capacity_j_per_kg_k(air.humidity_ratio);
            heat_capacity * (air.dry_bulb_c - SURFACE_COLDEST_C)
        } else {
            let surface_w = saturation_humidity_ratio(SURFACE_COLDEST_C, air.pressure_pa);
            air.enthalpy_j_per_kg() - enthalpy_j_per_kg(SURFACE_COLDEST_C, surface_w)
        };
        self.contact_kg_s * drop_j_kg.at_least(0.0)
    }

    /// How far a surface that only cools air is from condensing its vapour: positive if it stays dry.
    fn dry_excess(&self, wet_bulb_c: f64, humidity_ratio: f64) -> f64 {
        let heat_capacity = moist_air_heat_capacity_j_per_kg_k(humidity_ratio);
        let surface_drop_k = self.capacity_w(wet_bulb_c) / (self.contact_kg_s * heat_capacity);
        // Colder than any surface gets, and within the range of the saturation curve.
        let surface_c = (self.air.dry_bulb_c - surface_drop_k).at_least(SURFACE_COLDEST_C - 50.0);
        saturation_humidity_ratio(surface_c, self.air.pressure_pa) - humidity_ratio
    }

    /// The wet bulb at which this air, moistened, would just not condense, °C (secant search).
    ///
    /// A dry coil does not feel how dry the air is, so it works as at this wet bulb. The excess falls
    /// almost along a line from the entering wet bulb to the dry bulb, between which the root lies.
    fn just_dry_wet_bulb_c(&self, entering_wet_bulb_c: f64) -> f64 {
        let highest_c = self.air.dry_bulb_c.at_least(entering_wet_bulb_c);
        let excess = |wet_bulb_c: f64| {
            let humidity_ratio =
                humidity_ratio_from_wet_bulb(self.air.dry_bulb_c, wet_bulb_c, self.air.pressure_pa);
            self.dry_excess(wet_bulb_c, humidity_ratio)
        };
        let mut before_c = entering_wet_bulb_c;
        let mut excess_before = excess(before_c);
        let mut here_c = (before_c + DRY_COIL_FIRST_STEP_K).at_most(highest_c);
        for _ in 0..DRY_COIL_STEPS_GREATEST {
            if (here_c - before_c).abs() < DRY_COIL_TOLERANCE_K {
                break;
            }
            let excess_here = excess(here_c);
            let slope = (excess_here - excess_before) / (here_c - before_c);
            (before_c, excess_before) = (here_c, excess_here);
            if slope >= 0.0 {
                break;
            }
            here_c = (here_c - excess_here / slope).clamp(entering_wet_bulb_c, highest_c);
        }
        here_c
    }

    /// Dry bulb, °C, and humidity ratio of the leaving air.
    fn leaving_air(&self, total_w: f64, dry: bool) -> (f64, f64) {
        let air = &self.air;
        let entering_j_kg = air.enthalpy_j_per_kg();
        let leaving_j_kg = entering_j_kg - total_w / self.flow_kg_s;
        if dry {
            let dry_bulb_c = dry_bulb_c_from_enthalpy(leaving_j_kg, air.humidity_ratio);
            return (dry_bulb_c, air.humidity_ratio);
        }
        let surface_j_kg = entering_j_kg - total_w / self.contact_kg_s;
        let surface_c = saturated_temperature_c_from_enthalpy(surface_j_kg, air.pressure_pa);
        let surface_w = humidity_ratio_from_enthalpy(surface_j_kg, surface_c);
        let contact = self.contact_kg_s / self.flow_kg_s;
        let humidity_ratio = air.humidity_ratio - contact * (air.humidity_ratio - surface_w);
        let dry_bulb_c = dry_bulb_c_from_enthalpy(leaving_j_kg, humidity_ratio);
        if humidity_ratio <= saturation_humidity_ratio(dry_bulb_c, air.pressure_pa) {
            return (dry_bulb_c, humidity_ratio);
        }
        let saturated_c = saturated_temperature_c_from_enthalpy(leaving_j_kg, air.pressure_pa);
        let saturated_w = humidity_ratio_from_enthalpy(leaving_j_kg, saturated_c);
        (saturated_c, saturated_w)
    }
}

/// What a coil at rest does.
fn off(air: &EnteringAir) -> CoilOutput {
    CoilOutput {
        total_w: 0.0,
        sensible_w: 0.0,
        latent_w: 0.0,
        condensate_kg_s: 0.0,
        electric_power_w: 0.0,
        supply_dry_bulb_c: air.dry_bulb_c,
        supply_humidity_ratio: air.humidity_ratio,
        extrapolated: false,
        frost_limited: false,
    }
}

/// Share of the full flow that belongs to a speed (0…1, share of full capacity); its first segment is continued below it.
///
/// Source: four-speed unit of NREL's residential models, straight lines between its speeds.
#[must_use]
pub fn flow_fraction_at_speed(capacity_fraction: f64) -> f64 {
    // The lines rise more and more steeply, so that the one that holds is the greatest.
    let [first, second, third] =
        FLOW_LINES.map(|(low, flow_low, rise)| flow_low + rise * (capacity_fraction - low));
    first.at_least(second).at_least(third)
}

#[cfg(test)]
mod tests;
