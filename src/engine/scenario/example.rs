//! The ready example: a scenario of the project's own. Its vehicle, people and prices are invented.

mod roof;

use super::document::*;
use crate::solar::Date;

/// A panel van with two people and a dog on a hot summer day: invented, for demonstration.
#[must_use]
pub fn example() -> ScenarioDocument {
    ScenarioDocument {
        version: DOCUMENT_VERSION,
        name: "Example: two people and a dog".to_owned(),
        note: String::new(),
        recipient: String::new(),
        sender: String::new(),
        starting: by_hand(),
        vehicle: example_vehicle(),
        shell: example_shell(),
        glass: example_glass(),
        occupants: example_occupants(),
        need: example_need(),
        place: example_place(),
        day: example_day(),
        cooler: example_cooler(),
        ventilation: example_ventilation(),
        battery: example_battery(),
        charging: example_charging(),
        loads: example_loads(),
        installation: example_installation(),
        roof: roof::roof(),
        prices: example_prices(),
        readings: example_readings(),
    }
}

fn by_hand() -> Starting {
    Starting {
        vehicle: StartingPoint::None,
        shell: StartingPoint::None,
        occupants: StartingPoint::None,
        place: StartingPoint::None,
        cooler: StartingPoint::None,
        battery: StartingPoint::None,
    }
}

fn example_vehicle() -> Vehicle {
    Vehicle {
        length_m: 4.2,
        width_m: 1.75,
        height_m: 1.9,
        floor_above_ground_m: 0.5,
        heading_deg: 180.0,
        furnishing_heat_capacity_j_k: 250_000.0,
        furnishing_area_m2: 15.0,
        furnishing_moisture_factor: 8.0,
    }
}

fn example_shell() -> Shell {
    Shell {
        roof_sun_absorptance: 0.4,
        wall_sun_absorptance: 0.4,
        paint_emittance: 0.9,
        skin_thickness_m: 0.001,
        insulation_material: InsulationMaterial::SheepWool,
        other_conductivity_w_m_k: 0.035,
        roof_insulation_m: 0.04,
        wall_insulation_m: 0.04,
        floor_insulation_m: 0.02,
        filled_share: 0.9,
        rib_spacing_m: 0.6,
        thermal_break_m: 0.0,
        lining_thickness_m: 0.006,
        floor_board_m: 0.012,
        lining_sun_absorptance: 0.6,
        leakage_area_m2: 0.004,
    }
}

fn example_glass() -> Glass {
    Glass {
        nose_area_m2: 1.2,
        left_area_m2: 0.5,
        right_area_m2: 0.5,
        rear_area_m2: 0.4,
        roof_area_m2: 0.16,
        transmittance_w_m2_k: 5.8,
        solar_heat_gain_coefficient: 0.6,
        covers_fitted: true,
        covers_from_hour: 0.0,
        covers_until_hour: 0.0,
        cover_resistance_m2_k_w: 0.2,
        cover_sun_share: 0.4,
        sun_on_floor_share: 0.3,
        sun_on_furnishings_share: 0.3,
    }
}

fn example_occupants() -> Occupants {
    Occupants {
        people: 2.0,
        people_from_hour: 18.0,
        people_until_hour: 9.0,
        activity: Activity::Seated,
        asleep_from_hour: 22.0,
        asleep_until_hour: 7.0,
        dogs: 1.0,
        dog_mass_kg: 25.0,
        dogs_from_hour: 0.0,
        dogs_until_hour: 0.0,
        cooking_heat_w: 400.0,
        cooking_moisture_kg_s: 0.000_1,
        cooking_from_hour: 18.5,
        cooking_until_hour: 19.0,
    }
}

fn example_need() -> Need {
    Need {
        windows: [
            NeedWindow {
                needed_for: NeededFor::Animals,
                from_hour: 13.0,
                until_hour: 15.0,
                highest_felt_c: 28.0,
                highest_relative_humidity: 1.0,
                highest_heat_index_c: HEAT_INDEX_ASKS_NOTHING_C,
            },
            NeedWindow {
                needed_for: NeededFor::People,
                from_hour: 22.0,
                until_hour: 6.0,
                highest_felt_c: 26.0,
                highest_relative_humidity: 1.0,
                highest_heat_index_c: HEAT_INDEX_ASKS_NOTHING_C,
            },
            NeedWindow {
                needed_for: NeededFor::Nobody,
                from_hour: 18.0,
                until_hour: 22.0,
                highest_felt_c: 27.0,
                highest_relative_humidity: 1.0,
                highest_heat_index_c: HEAT_INDEX_ASKS_NOTHING_C,
            },
        ],
        reserve_state_of_charge: 0.2,
    }
}

fn example_place() -> Place {
    Place {
        latitude_deg: 38.0,
        longitude_deg: -98.0,
        altitude_m: 400.0,
        utc_offset_h: -6.0,
        summer_time: true,
        terrain: Terrain::Suburb,
        ground: Ground::Asphalt,
    }
}

fn example_day() -> Day {
    Day {
        date: Date::MIDSUMMER.plus_days(30),
        start_hour: 6.0,
        days: 1.0,
        high_c: 36.0,
        low_c: 23.0,
        humidity_given: HumidityGiven::DewPoint,
        dew_point_c: 17.0,
        relative_humidity_at_high: 0.33,
        cloud_fraction: 0.1,
        wind_speed_m_s: 3.0,
        wind_from_deg: 180.0,
        linke_turbidity: 3.7,
        warming_per_day_k: 0.0,
        shade_beam_share: 0.0,
        shade_sky_share: 0.0,
        shade_from_hour: 15.0,
        shade_until_hour: 21.0,
    }
}

fn example_cooler() -> Cooler {
    Cooler {
        installed: true,
        capacity_rated_w: 2_000.0,
        electric_power_rated_w: 800.0,
        plate_trust: PlateTrust::AsStated,
        airflow_m3_s_per_kw: 0.055,
        sensible_heat_ratio_rated: 0.75,
        blower_power_w: 40.0,
        condenser_air_rise_k: 3.0,
        control: CompressorControl::Variable,
        least_capacity_share: 0.15,
        part_speed_efficiency_gain: 1.2,
        set_point_c: 23.5,
        band_k: 2.5,
        minimum_on_s: 180.0,
        minimum_off_s: 180.0,
        run_from_hour: 11.0,
        run_until_hour: 1.0,
        supply: CoolerSupply::DirectCurrent,
        idle_power_w: 4.0,
        start_surge_factor: 1.5,
        cut_out_v_per_12_v: 11.0,
        recovery_v_per_12_v: 12.4,
        cable_resistance_ohm: 0.004,
        inverter_rated_w: 2_000.0,
        inverter_surge_w: 4_000.0,
        inverter_idle_w: 15.0,
    }
}

fn example_ventilation() -> Ventilation {
    Ventilation {
        fan_use: FanUse::WhenOutdoorsCooler,
        fan_flow_m3_s: 0.15,
        fan_power_w: 25.0,
        fan_from_hour: 0.0,
        fan_until_hour: 0.0,
        purge_before_cooling: true,
        opening_area_m2: 0.0,
        opening_from_hour: 18.0,
        opening_until_hour: 22.0,
    }
}

fn example_battery() -> Battery {
    Battery {
        chemistry: CellChemistry::LithiumIronPhosphate,
        system_voltage: SystemVoltage::V12,
        capacity_ah: 600.0,
        start_state_of_charge: 0.95,
        least_state_of_charge: 0.1,
        most_state_of_charge: 1.0,
        resistance_ohm_per_12_v: 0.002,
        coulombic_efficiency: 0.995,
        highest_discharge_a: 200.0,
        highest_charge_a: 150.0,
        peukert_exponent: 1.1,
        health_share: 1.0,
    }
}

fn example_charging() -> Charging {
    Charging {
        panel_power_w: 300.0,
        panel_loss_share: 0.11,
        panel_shading_share: 0.05,
        panel_temperature_loss_per_k: 0.0035,
        controller_efficiency: 0.96,
        drives: false,
        drive_from_hour: 9.0,
        drive_until_hour: 11.0,
        drive_speed_m_s: 22.0,
        dc_dc_current_a: 40.0,
        shore_power_w: 0.0,
        shore_from_hour: 20.0,
        shore_until_hour: 8.0,
    }
}

fn example_loads() -> Loads {
    Loads {
        fridge: Load {
            power_w: 45.0,
            duty: 0.4,
            from_hour: 0.0,
            until_hour: 0.0,
        },
        lights: Load {
            power_w: 15.0,
            duty: 1.0,
            from_hour: 20.0,
            until_hour: 23.0,
        },
        electronics: Load {
            power_w: 60.0,
            duty: 0.5,
            from_hour: 18.0,
            until_hour: 22.0,
        },
        other: Load {
            power_w: 0.0,
            duty: 1.0,
            from_hour: 0.0,
            until_hour: 0.0,
        },
    }
}

fn example_installation() -> Installation {
    // Bus and cooler, or bus and inverter, together 3 %.
    let way = |length_m, allowed_drop_share| CableWay {
        length_m,
        allowed_drop_share,
        bundled_conductors: 2.0,
        air_c: 50.0,
    };
    Installation {
        cooler: way(4.0, 0.025),
        dc_dc: way(6.0, 0.03),
        panels: way(5.0, 0.03),
        controller: way(1.5, 0.03),
        bus: way(0.5, 0.005),
        inverter: way(1.0, 0.025),
        insulation: CableInsulation::C105,
        panel_voltage_v: 20.0,
        parallel_packs: 2.0,
        bank_peak_a: 400.0,
    }
}

fn example_prices() -> Prices {
    Prices {
        currency: "USD".to_owned(),
        cooler: 1_600.0,
        bank_per_wh: 0.4,
        panels_per_w: 1.5,
        insulation_per_m2_25_mm: 18.0,
        covers_per_m2: 90.0,
        fan: 320.0,
        dc_dc_per_a: 9.0,
        labour_h: 14.0,
        labour_per_h: 110.0,
        tax_share: 0.08,
        measures: MeasurePrices {
            insulation_h_per_m2: 0.3,
            stuffing_h_per_m2: 0.4,
            covers_h_per_m2: 0.5,
            paint_h_per_m2: 0.8,
            fan_h: 4.0,
            bank_h: 1.0,
            panels_h_per_100_w: 1.0,
            dc_dc_h: 2.0,
            cooler_h: 6.0,
            cooler_price_exponent: 0.6,
        },
        build: BuildPrices {
            cable_per_m_mm2: 0.25,
            fuse: 35.0,
            inverter_per_w: 0.3,
            small_parts_share: 0.05,
            markup_share: 0.15,
        },
    }
}

fn example_readings() -> Readings {
    Readings {
        taken: false,
        outdoor_c: 35.0,
        return_c: 28.0,
        return_humidity_known: false,
        return_relative_humidity: 0.5,
        supply_c: 15.0,
        supply_humidity_known: false,
        supply_relative_humidity: 0.9,
        airflow_known: false,
        airflow_m3_s: 0.11,
        current_a: 65.0,
        bank_voltage_v: 13.0,
        unit_voltage_v: 12.7,
        running_s: 1_200.0,
        temperature_limit_k: 1.0,
        humidity_limit: 0.05,
        airflow_limit_share: 0.1,
        current_limit_share: 0.03,
        voltage_limit_share: 0.005,
    }
}
