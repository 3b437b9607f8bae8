//! Titles of the groups and which of their inputs are finer points.

use noonday_engine::scenario::Group;

/// Title of a group.
pub fn title(group: Group) -> &'static str {
    match group {
        Group::Title => "Name and note",
        Group::Vehicle => "The vehicle",
        Group::Shell => "Its shell",
        Group::Glass => "Its glass",
        Group::Occupants => "Who is in it",
        Group::Need => "When it must be cool",
        Group::Place => "Where it stands",
        Group::Day => "The day",
        Group::Cooler => "The cooler",
        Group::Ventilation => "Fan and windows",
        Group::Battery => "The bank",
        Group::Charging => "Charging",
        Group::Loads => "Other loads",
        Group::Cabling => "Cable and packs",
        Group::Roof => "The roof",
        Group::Prices => "Prices",
        Group::Readings => "What was read off the finished unit",
    }
}

/// Name of a group in an address: stable, for anchors.
pub fn anchor(group: Group) -> &'static str {
    match group {
        Group::Title => "title",
        Group::Vehicle => "vehicle",
        Group::Shell => "shell",
        Group::Glass => "glass",
        Group::Occupants => "occupants",
        Group::Need => "need",
        Group::Place => "place",
        Group::Day => "day",
        Group::Cooler => "cooler",
        Group::Ventilation => "ventilation",
        Group::Battery => "battery",
        Group::Charging => "charging",
        Group::Loads => "loads",
        Group::Cabling => "cabling",
        Group::Roof => "roof",
        Group::Prices => "prices",
        Group::Readings => "readings",
    }
}

/// Heading over the inputs that few consults touch.
pub const FINER_POINTS: &str = "Finer points";

/// Whether an input is a finer point of its group.
pub fn is_finer_point(key: &str) -> bool {
    const FINER: [&str; 76] = [
        "vehicle.floor_above_ground_m",
        "vehicle.furnishing_heat_capacity_j_k",
        "vehicle.furnishing_area_m2",
        "vehicle.furnishing_moisture_factor",
        "shell.paint_emittance",
        "shell.skin_thickness_m",
        "shell.rib_spacing_m",
        "shell.lining_thickness_m",
        "shell.floor_board_m",
        "shell.lining_sun_absorptance",
        "glass.transmittance_w_m2_k",
        "glass.solar_heat_gain_coefficient",
        "glass.cover_resistance_m2_k_w",
        "glass.sun_on_floor_share",
        "glass.sun_on_furnishings_share",
        "occupants.cooking_moisture_kg_s",
        "need.windows.0.highest_relative_humidity",
        "need.windows.1.highest_relative_humidity",
        "need.windows.2.highest_relative_humidity",
        "need.windows.0.highest_heat_index_c",
        "need.windows.1.highest_heat_index_c",
        "need.windows.2.highest_heat_index_c",
        "place.altitude_m",
        "place.utc_offset_h",
        "place.terrain",
        "day.start_hour",
        "day.wind_from_deg",
        "day.linke_turbidity",
        "day.warming_per_day_k",
        "day.shade_sky_share",
        "cooler.airflow_m3_s_per_kw",
        "cooler.sensible_heat_ratio_rated",
        "cooler.blower_power_w",
        "cooler.condenser_air_rise_k",
        "cooler.least_capacity_share",
        "cooler.part_speed_efficiency_gain",
        "cooler.band_k",
        "cooler.minimum_on_s",
        "cooler.minimum_off_s",
        "cooler.idle_power_w",
        "cooler.start_surge_factor",
        "cooler.cut_out_v_per_12_v",
        "cooler.recovery_v_per_12_v",
        "cooler.cable_resistance_ohm",
        "ventilation.fan_power_w",
        "battery.least_state_of_charge",
        "battery.most_state_of_charge",
        "battery.resistance_ohm_per_12_v",
        "battery.coulombic_efficiency",
        "battery.highest_discharge_a",
        "battery.highest_charge_a",
        "battery.peukert_exponent",
        "charging.panel_loss_share",
        "charging.panel_temperature_loss_per_k",
        "charging.controller_efficiency",
        "roof.highest_speed_m_s",
        "roof.fan_and_hatch_height_m",
        "prices.measures.insulation_h_per_m2",
        "prices.measures.stuffing_h_per_m2",
        "prices.measures.covers_h_per_m2",
        "prices.measures.paint_h_per_m2",
        "prices.measures.fan_h",
        "prices.measures.bank_h",
        "prices.measures.panels_h_per_100_w",
        "prices.measures.dc_dc_h",
        "prices.measures.cooler_h",
        "prices.measures.cooler_price_exponent",
        "prices.build.cable_per_m_mm2",
        "prices.build.fuse",
        "prices.build.inverter_per_w",
        "prices.build.small_parts_share",
        "readings.temperature_limit_k",
        "readings.humidity_limit",
        "readings.airflow_limit_share",
        "readings.current_limit_share",
        "readings.voltage_limit_share",
    ];
    FINER.contains(&key) || is_finer_point_of_a_way(key)
}

/// Of each way of cable, only its length is asked at once.
fn is_finer_point_of_a_way(key: &str) -> bool {
    let way = key.strip_prefix("installation.");
    way.is_some_and(|way| way.contains('.') && !way.ends_with(".length_m"))
}

/// Whether an input is the place of something on the roof, which is set on the plan and not among the inputs.
pub fn is_place_on_plan(key: &str) -> bool {
    key.starts_with("roof.") && (key.ends_with(".from_front_m") || key.ends_with(".from_left_m"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::{fields, fields_of};

    #[test]
    fn finer_points_are_inputs_and_every_group_keeps_some_that_are_not() {
        let finer = fields().filter(|field| is_finer_point(field.key)).count();
        assert_eq!(finer, 76 + 18);
        for group in Group::ALL {
            assert!(fields_of(group).any(|field| !is_finer_point(field.key)));
        }
    }

    #[test]
    fn titles_and_anchors_are_unique() {
        for texts in [Group::ALL.map(title), Group::ALL.map(anchor)] {
            let mut sorted = texts.to_vec();
            sorted.sort_unstable();
            sorted.dedup();
            assert_eq!(sorted.len(), texts.len());
        }
    }
}
