//! The cooler's rating as the scenario states it, with its plate believed or derated.

use super::document::{PlateTrust, ScenarioDocument};
use crate::cooler::data_plate::{DataPlate, PlateAssessment};
use crate::cooler::rating::CoolerRating;

/// Rating point of ISO 5151 T1 and AHRI 210/240 A: entering 26.67/19.44 °C, condenser air 35 °C.
const ENTERING_DRY_BULB_C: f64 = 26.67;
const ENTERING_WET_BULB_C: f64 = 19.44;
const CONDENSER_AIR_C: f64 = 35.0;

const WATTS_PER_KILOWATT: f64 = 1_000.0;

/// What the plate's capacity and power imply at the bank's nominal voltage ([`DataPlate::assess`]); none when the plate's figures are
/// beyond any small unit's.
#[must_use]
pub fn plate_assessment(document: &ScenarioDocument) -> Option<PlateAssessment> {
    let supply_voltage_v = document.battery.system_voltage.nominal_v();
    DataPlate {
        cooling_capacity_w: document.cooler.capacity_rated_w,
        supply_voltage_v,
        supply_current_a: document.cooler.electric_power_rated_w / supply_voltage_v,
    }
    .assess()
    .ok()
}

/// The rating with which a run reckons: the plate's capacity as stated or derated as the scenario chooses, at the rating point of
/// ISO 5151 T1, with air through the coil in proportion to the capacity.
#[must_use]
pub fn cooler_rating(document: &ScenarioDocument) -> CoolerRating {
    let cooler = &document.cooler;
    let stated_w = cooler.capacity_rated_w;
    let cooling_capacity_rated_w = match cooler.plate_trust {
        PlateTrust::AsStated => stated_w,
        PlateTrust::Derated => plate_assessment(document)
            .map_or(stated_w, |assessment| assessment.cooling_capacity_derated_w),
    };
    CoolerRating {
        cooling_capacity_rated_w,
        electric_power_rated_w: cooler.electric_power_rated_w,
        airflow_rated_m3_s: cooler.airflow_m3_s_per_kw * cooling_capacity_rated_w
            / WATTS_PER_KILOWATT,
        sensible_heat_ratio_rated: cooler.sensible_heat_ratio_rated,
        fan_power_w: cooler.blower_power_w,
        entering_dry_bulb_rated_c: ENTERING_DRY_BULB_C,
        entering_wet_bulb_rated_c: ENTERING_WET_BULB_C,
        condenser_air_rated_c: CONDENSER_AIR_C,
    }
}
