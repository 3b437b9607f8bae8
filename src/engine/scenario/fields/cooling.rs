//! Cooler and ventilation: rows of the fields table.

use super::{choice, number, position, set_at, switch};
use crate::scenario::document::{CompressorControl, CoolerSupply, FanUse, PlateTrust};
use crate::scenario::field::{Basis, Dimension, Field, Group};

/// Options and their stable names.
const PLATE_TRUST_OPTIONS: ([PlateTrust; 2], [&str; 2]) = (
    [PlateTrust::AsStated, PlateTrust::Derated],
    ["as_stated", "derated"],
);

/// Options and their stable names.
const COMPRESSOR_CONTROL_OPTIONS: ([CompressorControl; 3], [&str; 3]) = (
    [
        CompressorControl::OnOff,
        CompressorControl::TwoLevel,
        CompressorControl::Variable,
    ],
    ["on_off", "two_level", "variable"],
);

/// Options and their stable names.
const COOLER_SUPPLY_OPTIONS: ([CoolerSupply; 2], [&str; 2]) = (
    [
        CoolerSupply::DirectCurrent,
        CoolerSupply::MainsThroughInverter,
    ],
    ["direct_current", "mains_through_inverter"],
);

/// Options and their stable names.
const FAN_USE_OPTIONS: ([FanUse; 3], [&str; 3]) = (
    [FanUse::Off, FanUse::InHours, FanUse::WhenOutdoorsCooler],
    ["off", "in_hours", "when_outdoors_cooler"],
);

/// Fields of [`Group::Cooler`].
pub(super) const COOLER: &[Field] = &[
    Field {
        id: 93,
        key: "cooler.installed",
        group: Group::Cooler,
        kind: switch(|d| d.cooler.installed, |d, v| d.cooler.installed = v),
        basis: Basis::Example,
    },
    Field {
        id: 94,
        key: "cooler.capacity_rated_w",
        group: Group::Cooler,
        kind: number(
            Dimension::HeatFlow,
            300.0,
            8_000.0,
            |d| d.cooler.capacity_rated_w,
            |d, v| d.cooler.capacity_rated_w = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 95,
        key: "cooler.electric_power_rated_w",
        group: Group::Cooler,
        kind: number(
            Dimension::ElectricPower,
            80.0,
            4_000.0,
            |d| d.cooler.electric_power_rated_w,
            |d, v| d.cooler.electric_power_rated_w = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 96,
        key: "cooler.plate_trust",
        group: Group::Cooler,
        kind: choice(
            &PLATE_TRUST_OPTIONS.1,
            |d| position(&PLATE_TRUST_OPTIONS.0, d.cooler.plate_trust),
            |d, i| set_at(&PLATE_TRUST_OPTIONS.0, i, &mut d.cooler.plate_trust),
        ),
        basis: Basis::Example,
    },
    Field {
        id: 97,
        key: "cooler.airflow_m3_s_per_kw",
        group: Group::Cooler,
        kind: number(
            Dimension::AirFlowPerKilowatt,
            0.035,
            0.1,
            |d| d.cooler.airflow_m3_s_per_kw,
            |d, v| d.cooler.airflow_m3_s_per_kw = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 98,
        key: "cooler.sensible_heat_ratio_rated",
        group: Group::Cooler,
        kind: number(
            Dimension::Share,
            0.5,
            1.0,
            |d| d.cooler.sensible_heat_ratio_rated,
            |d, v| d.cooler.sensible_heat_ratio_rated = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 99,
        key: "cooler.blower_power_w",
        group: Group::Cooler,
        kind: number(
            Dimension::ElectricPower,
            0.0,
            400.0,
            |d| d.cooler.blower_power_w,
            |d, v| d.cooler.blower_power_w = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 100,
        key: "cooler.condenser_air_rise_k",
        group: Group::Cooler,
        kind: number(
            Dimension::TemperatureDifference,
            0.0,
            20.0,
            |d| d.cooler.condenser_air_rise_k,
            |d, v| d.cooler.condenser_air_rise_k = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 101,
        key: "cooler.control",
        group: Group::Cooler,
        kind: choice(
            &COMPRESSOR_CONTROL_OPTIONS.1,
            |d| position(&COMPRESSOR_CONTROL_OPTIONS.0, d.cooler.control),
            |d, i| set_at(&COMPRESSOR_CONTROL_OPTIONS.0, i, &mut d.cooler.control),
        ),
        basis: Basis::Example,
    },
    Field {
        id: 102,
        key: "cooler.least_capacity_share",
        group: Group::Cooler,
        kind: number(
            Dimension::Share,
            0.15,
            0.95,
            |d| d.cooler.least_capacity_share,
            |d, v| d.cooler.least_capacity_share = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 103,
        key: "cooler.part_speed_efficiency_gain",
        group: Group::Cooler,
        kind: number(
            Dimension::Factor,
            1.0,
            1.6,
            |d| d.cooler.part_speed_efficiency_gain,
            |d, v| d.cooler.part_speed_efficiency_gain = v,
        ),
        basis: Basis::FromMemory("efficiency gains 10 to 40 % at low speed"),
    },
    Field {
        id: 104,
        key: "cooler.set_point_c",
        group: Group::Cooler,
        kind: number(
            Dimension::Temperature,
            15.0,
            32.0,
            |d| d.cooler.set_point_c,
            |d, v| d.cooler.set_point_c = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 105,
        key: "cooler.band_k",
        group: Group::Cooler,
        kind: number(
            Dimension::TemperatureDifference,
            0.3,
            4.0,
            |d| d.cooler.band_k,
            |d, v| d.cooler.band_k = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 106,
        key: "cooler.minimum_on_s",
        group: Group::Cooler,
        kind: number(
            Dimension::TimeSpan,
            0.0,
            900.0,
            |d| d.cooler.minimum_on_s,
            |d, v| d.cooler.minimum_on_s = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 107,
        key: "cooler.minimum_off_s",
        group: Group::Cooler,
        kind: number(
            Dimension::TimeSpan,
            0.0,
            900.0,
            |d| d.cooler.minimum_off_s,
            |d, v| d.cooler.minimum_off_s = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 108,
        key: "cooler.run_from_hour",
        group: Group::Cooler,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.cooler.run_from_hour,
            |d, v| d.cooler.run_from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 109,
        key: "cooler.run_until_hour",
        group: Group::Cooler,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.cooler.run_until_hour,
            |d, v| d.cooler.run_until_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 110,
        key: "cooler.supply",
        group: Group::Cooler,
        kind: choice(
            &COOLER_SUPPLY_OPTIONS.1,
            |d| position(&COOLER_SUPPLY_OPTIONS.0, d.cooler.supply),
            |d, i| set_at(&COOLER_SUPPLY_OPTIONS.0, i, &mut d.cooler.supply),
        ),
        basis: Basis::Example,
    },
    Field {
        id: 111,
        key: "cooler.idle_power_w",
        group: Group::Cooler,
        kind: number(
            Dimension::ElectricPower,
            0.0,
            60.0,
            |d| d.cooler.idle_power_w,
            |d, v| d.cooler.idle_power_w = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 112,
        key: "cooler.start_surge_factor",
        group: Group::Cooler,
        kind: number(
            Dimension::Factor,
            1.0,
            8.0,
            |d| d.cooler.start_surge_factor,
            |d, v| d.cooler.start_surge_factor = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 113,
        key: "cooler.cut_out_v_per_12_v",
        group: Group::Cooler,
        kind: number(
            Dimension::Voltage,
            9.0,
            12.6,
            |d| d.cooler.cut_out_v_per_12_v,
            |d, v| d.cooler.cut_out_v_per_12_v = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 114,
        key: "cooler.recovery_v_per_12_v",
        group: Group::Cooler,
        kind: number(
            Dimension::Voltage,
            9.5,
            13.6,
            |d| d.cooler.recovery_v_per_12_v,
            |d, v| d.cooler.recovery_v_per_12_v = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 115,
        key: "cooler.cable_resistance_ohm",
        group: Group::Cooler,
        kind: number(
            Dimension::Resistance,
            0.0,
            0.1,
            |d| d.cooler.cable_resistance_ohm,
            |d, v| d.cooler.cable_resistance_ohm = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 116,
        key: "cooler.inverter_rated_w",
        group: Group::Cooler,
        kind: number(
            Dimension::ElectricPower,
            200.0,
            8_000.0,
            |d| d.cooler.inverter_rated_w,
            |d, v| d.cooler.inverter_rated_w = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 117,
        key: "cooler.inverter_surge_w",
        group: Group::Cooler,
        kind: number(
            Dimension::ElectricPower,
            200.0,
            16_000.0,
            |d| d.cooler.inverter_surge_w,
            |d, v| d.cooler.inverter_surge_w = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 118,
        key: "cooler.inverter_idle_w",
        group: Group::Cooler,
        kind: number(
            Dimension::ElectricPower,
            0.0,
            100.0,
            |d| d.cooler.inverter_idle_w,
            |d, v| d.cooler.inverter_idle_w = v,
        ),
        basis: Basis::CommonPractice,
    },
];

/// Fields of [`Group::Ventilation`].
pub(super) const VENTILATION: &[Field] = &[
    Field {
        id: 119,
        key: "ventilation.fan_use",
        group: Group::Ventilation,
        kind: choice(
            &FAN_USE_OPTIONS.1,
            |d| position(&FAN_USE_OPTIONS.0, d.ventilation.fan_use),
            |d, i| set_at(&FAN_USE_OPTIONS.0, i, &mut d.ventilation.fan_use),
        ),
        basis: Basis::Example,
    },
    Field {
        id: 120,
        key: "ventilation.fan_flow_m3_s",
        group: Group::Ventilation,
        kind: number(
            Dimension::AirFlow,
            0.0,
            0.6,
            |d| d.ventilation.fan_flow_m3_s,
            |d, v| d.ventilation.fan_flow_m3_s = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 121,
        key: "ventilation.fan_power_w",
        group: Group::Ventilation,
        kind: number(
            Dimension::ElectricPower,
            0.0,
            200.0,
            |d| d.ventilation.fan_power_w,
            |d, v| d.ventilation.fan_power_w = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 122,
        key: "ventilation.fan_from_hour",
        group: Group::Ventilation,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.ventilation.fan_from_hour,
            |d, v| d.ventilation.fan_from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 123,
        key: "ventilation.fan_until_hour",
        group: Group::Ventilation,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.ventilation.fan_until_hour,
            |d, v| d.ventilation.fan_until_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 124,
        key: "ventilation.purge_before_cooling",
        group: Group::Ventilation,
        kind: switch(
            |d| d.ventilation.purge_before_cooling,
            |d, v| d.ventilation.purge_before_cooling = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 125,
        key: "ventilation.opening_area_m2",
        group: Group::Ventilation,
        kind: number(
            Dimension::Area,
            0.0,
            2.0,
            |d| d.ventilation.opening_area_m2,
            |d, v| d.ventilation.opening_area_m2 = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 126,
        key: "ventilation.opening_from_hour",
        group: Group::Ventilation,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.ventilation.opening_from_hour,
            |d, v| d.ventilation.opening_from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 127,
        key: "ventilation.opening_until_hour",
        group: Group::Ventilation,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.ventilation.opening_until_hour,
            |d, v| d.ventilation.opening_until_hour = v,
        ),
        basis: Basis::Example,
    },
];
