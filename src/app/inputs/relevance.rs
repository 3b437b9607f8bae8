//! Which inputs say nothing in the present state, and what brings them back.

use noonday_engine::scenario::{
    CellChemistry, CompressorControl, CoolerSupply, FanUse, Group, HumidityGiven,
    InsulationMaterial, NeededFor, ScenarioDocument,
};

/// Whether an input has any effect in the present state.
pub fn is_relevant(key: &str, document: &ScenarioDocument) -> bool {
    if let Some(rest) = key.strip_prefix("need.windows.") {
        return window_is_relevant(rest, document);
    }
    if let Some(rest) = key.strip_prefix("loads.") {
        return load_is_relevant(rest, document);
    }
    if let Some(rest) = key.strip_prefix("readings.") {
        return reading_is_relevant(rest, document);
    }
    if key.starts_with("cooler.") && key != "cooler.installed" && !document.cooler.installed {
        return false;
    }
    shell_and_people(key, document)
        && cooling(key, document)
        && power(key, document)
        && roof(key, document)
}

/// How inputs that are not shown are brought back, for a group that may hide some.
pub fn how_to_get_more(group: Group) -> Option<&'static str> {
    Some(match group {
        Group::Shell => "Conductivity can be entered when the insulation is “Another”.",
        Group::Glass => "Hours and kind of covers appear when covers are fitted.",
        Group::Occupants => "Hours appear once there is somebody, or something on the stove.",
        Group::Need => "Hours and limits appear once a window is for people or animals.",
        Group::Day => {
            "Dew point or humidity, whichever the water in the air is given as. A day can be taken out of a weather file under “Weather and sun”. Hours of shade appear once there is shade; warming once there is more than one day."
        }
        Group::Cooler => {
            "More appears with a cooler: inverter inputs when it is fed through one, least output when it is not just on or off."
        }
        Group::Ventilation => "More appears once a fan runs or windows are opened.",
        Group::Battery => "Peukert’s exponent appears with lead-acid cells.",
        Group::Charging => {
            "More appears once there are panels, driving or a shore charger. Power and shade of the panels are those of the roof plan while “The plan’s panels count” is switched on under “The roof”."
        }
        Group::Loads => "Hours appear once a load draws power.",
        Group::Roof => {
            "More appears once unit, hatches or panels have a size. Where everything stands is set on the plan under “How to build it in”, to scale."
        }
        Group::Readings => "Humidity and air flow can be entered once they are said to be known.",
        Group::Place => {
            "Coordinates can be pasted from a map under “Weather and sun”, or the place of this device taken."
        }
        Group::Title | Group::Vehicle | Group::Cabling | Group::Prices => {
            return None;
        }
    })
}

fn window_is_relevant(rest: &str, document: &ScenarioDocument) -> bool {
    let Some((slot, quantity)) = rest.split_once('.') else {
        return true;
    };
    let window = slot
        .parse::<usize>()
        .ok()
        .and_then(|slot| document.need.windows.get(slot));
    quantity == "needed_for" || window.is_none_or(|window| window.needed_for != NeededFor::Nobody)
}

fn load_is_relevant(rest: &str, document: &ScenarioDocument) -> bool {
    let Some((name, quantity)) = rest.split_once('.') else {
        return true;
    };
    let loads = &document.loads;
    let load = match name {
        "fridge" => &loads.fridge,
        "lights" => &loads.lights,
        "electronics" => &loads.electronics,
        _ => &loads.other,
    };
    quantity == "power_w" || load.power_w > 0.0
}

fn reading_is_relevant(rest: &str, document: &ScenarioDocument) -> bool {
    let readings = &document.readings;
    if rest == "taken" {
        return true;
    }
    let known = match rest {
        "return_relative_humidity" => readings.return_humidity_known,
        "supply_relative_humidity" => readings.supply_humidity_known,
        "humidity_limit" => readings.return_humidity_known || readings.supply_humidity_known,
        "airflow_m3_s" | "airflow_limit_share" => readings.airflow_known,
        _ => true,
    };
    readings.taken && known
}

fn shell_and_people(key: &str, document: &ScenarioDocument) -> bool {
    let (who, day) = (&document.occupants, &document.day);
    match key {
        "shell.other_conductivity_w_m_k" => {
            document.shell.insulation_material == InsulationMaterial::Other
        }
        "glass.covers_from_hour"
        | "glass.covers_until_hour"
        | "glass.cover_resistance_m2_k_w"
        | "glass.cover_sun_share" => document.glass.covers_fitted,
        "occupants.people_from_hour"
        | "occupants.people_until_hour"
        | "occupants.activity"
        | "occupants.asleep_from_hour"
        | "occupants.asleep_until_hour" => who.people > 0.0,
        "occupants.dog_mass_kg" | "occupants.dogs_from_hour" | "occupants.dogs_until_hour" => {
            who.dogs > 0.0
        }
        "occupants.cooking_from_hour" | "occupants.cooking_until_hour" => {
            who.cooking_heat_w > 0.0 || who.cooking_moisture_kg_s > 0.0
        }
        "day.dew_point_c" => day.humidity_given == HumidityGiven::DewPoint,
        "day.relative_humidity_at_high" => day.humidity_given == HumidityGiven::RelativeHumidity,
        "day.warming_per_day_k" => day.days > 1.0,
        "day.shade_from_hour" | "day.shade_until_hour" => {
            day.shade_beam_share > 0.0 || day.shade_sky_share > 0.0
        }
        _ => true,
    }
}

fn cooling(key: &str, document: &ScenarioDocument) -> bool {
    let (cooler, air) = (&document.cooler, &document.ventilation);
    match key {
        "cooler.least_capacity_share" | "cooler.part_speed_efficiency_gain" => {
            cooler.control != CompressorControl::OnOff
        }
        "cooler.inverter_rated_w" | "cooler.inverter_surge_w" | "cooler.inverter_idle_w" => {
            cooler.supply == CoolerSupply::MainsThroughInverter
        }
        "ventilation.fan_flow_m3_s"
        | "ventilation.fan_power_w"
        | "ventilation.fan_from_hour"
        | "ventilation.fan_until_hour"
        | "ventilation.purge_before_cooling" => air.fan_use != FanUse::Off,
        "ventilation.opening_from_hour" | "ventilation.opening_until_hour" => {
            air.opening_area_m2 > 0.0
        }
        _ => true,
    }
}

fn power(key: &str, document: &ScenarioDocument) -> bool {
    let charging = &document.charging;
    match key {
        "battery.peukert_exponent" => {
            document.battery.chemistry != CellChemistry::LithiumIronPhosphate
        }
        "charging.panel_power_w" => !document.roof.panels_from_plan,
        "charging.panel_shading_share" => {
            !document.roof.panels_from_plan && charging.panel_power_w > 0.0
        }
        "charging.panel_loss_share"
        | "charging.panel_temperature_loss_per_k"
        | "charging.controller_efficiency" => document.panel_power_w() > 0.0,
        "charging.drive_from_hour"
        | "charging.drive_until_hour"
        | "charging.drive_speed_m_s"
        | "charging.dc_dc_current_a" => charging.drives,
        "charging.shore_from_hour" | "charging.shore_until_hour" => charging.shore_power_w > 0.0,
        _ => true,
    }
}

fn roof(key: &str, document: &ScenarioDocument) -> bool {
    let roof = &document.roof;
    match key {
        "roof.unit.length_m" => document.cooler.installed,
        "roof.hatches.0.width_m" => roof.hatches[0].length_m > 0.0,
        "roof.hatches.1.width_m" => roof.hatches[1].length_m > 0.0,
        "roof.panel.count" => true,
        _ if key.starts_with("roof.unit.") => document.cooler.installed && roof.unit.length_m > 0.0,
        _ if key.starts_with("roof.panel.") => roof.panel.count > 0.0,
        _ => true,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::{example, fields, fields_of};

    #[test]
    fn only_groups_that_say_how_to_get_more_hide_anything() {
        let mut document = example();
        document.cooler.installed = false;
        document.charging.panel_power_w = 0.0;
        document.occupants.people = 0.0;
        for group in Group::ALL {
            let hides = fields_of(group).any(|field| !is_relevant(field.key, &document));
            assert!(!hides || how_to_get_more(group).is_some(), "{group:?}");
        }
    }

    #[test]
    fn what_brings_inputs_back_is_never_hidden_itself() {
        let mut document = example();
        document.cooler.installed = false;
        document.occupants.people = 0.0;
        for key in [
            "cooler.installed",
            "occupants.people",
            "need.windows.2.needed_for",
            "loads.other.power_w",
            "charging.drives",
            "readings.taken",
        ] {
            assert!(is_relevant(key, &document), "{key}");
        }
        assert!(!is_relevant("need.windows.2.from_hour", &document));
        assert!(!is_relevant("loads.other.duty", &document));
    }

    #[test]
    fn what_the_plan_says_of_panels_is_not_asked_for_twice() {
        let mut document = example();
        assert!(is_relevant("charging.panel_power_w", &document));
        document.roof.panels_from_plan = true;
        assert!(!is_relevant("charging.panel_power_w", &document));
        assert!(!is_relevant("charging.panel_shading_share", &document));
        assert!(is_relevant("charging.panel_loss_share", &document));
        document.roof.panel.count = 0.0;
        assert!(!is_relevant("charging.panel_loss_share", &document));
        assert!(is_relevant("roof.panels_from_plan", &document));
    }

    #[test]
    fn an_inverter_shows_its_inputs() {
        let mut document = example();
        assert!(!is_relevant("cooler.inverter_rated_w", &document));
        document.cooler.supply = CoolerSupply::MainsThroughInverter;
        assert!(is_relevant("cooler.inverter_rated_w", &document));
        let hidden = fields()
            .filter(|field| field.group == Group::Cooler)
            .filter(|field| !is_relevant(field.key, &document))
            .count();
        assert_eq!(hidden, 0);
    }
}
