//! The cooler, the fan and opened windows.

use serde::{Deserialize, Serialize};

/// How the compressor's output is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CompressorControl {
    /// On or off.
    OnOff,
    /// A full and an economy level.
    TwoLevel,
    /// Continuously variable speed.
    Variable,
}

/// What the cooler is fed with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CoolerSupply {
    /// Direct current from the bank.
    DirectCurrent,
    /// Mains voltage through an inverter.
    MainsThroughInverter,
}

/// Which of the plate's figures the run believes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PlateTrust {
    /// Capacity as the plate says.
    AsStated,
    /// Capacity that the plate's power can carry at an efficiency small units reach.
    Derated,
}

/// The cooler, its control and its wiring.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cooler {
    /// Whether there is a cooler at all.
    pub installed: bool,
    /// Total cooling capacity at the rating point, W.
    pub capacity_rated_w: f64,
    /// Electric power at the rating point, W.
    pub electric_power_rated_w: f64,
    /// Which of the plate's figures to believe.
    pub plate_trust: PlateTrust,
    /// Air through the coil for each kilowatt of rated capacity, m³/s.
    pub airflow_m3_s_per_kw: f64,
    /// Sensible share of the capacity at the rating point.
    pub sensible_heat_ratio_rated: f64,
    /// Power of the inside blower, W.
    pub blower_power_w: f64,
    /// Warming of the condenser's air above the weather, K.
    pub condenser_air_rise_k: f64,
    /// How the output is set.
    pub control: CompressorControl,
    /// Least speed or economy level, share of full capacity.
    pub least_capacity_share: f64,
    /// Efficiency at least speed over efficiency at full speed.
    pub part_speed_efficiency_gain: f64,
    /// Cabin temperature asked of the thermostat, °C.
    pub set_point_c: f64,
    /// Width of the thermostat's band, K.
    pub band_k: f64,
    /// Least time on, s.
    pub minimum_on_s: f64,
    /// Least time off, s.
    pub minimum_off_s: f64,
    /// The cooler may run from this hour.
    pub run_from_hour: f64,
    /// The cooler may run until this hour.
    pub run_until_hour: f64,
    /// Direct current or mains through an inverter.
    pub supply: CoolerSupply,
    /// Draw while waiting, W.
    pub idle_power_w: f64,
    /// Current at start over running current.
    pub start_surge_factor: f64,
    /// Bank voltage at which the cooler stops, V for each 12 V of the bank.
    pub cut_out_v_per_12_v: f64,
    /// Bank voltage at which it may start again, V for each 12 V of the bank.
    pub recovery_v_per_12_v: f64,
    /// Resistance of the cable out and back, Ω.
    pub cable_resistance_ohm: f64,
    /// Continuous rating of the inverter, W.
    pub inverter_rated_w: f64,
    /// What the inverter can give at a start, W.
    pub inverter_surge_w: f64,
    /// Draw of the idle inverter, W.
    pub inverter_idle_w: f64,
}

/// When the fan runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FanUse {
    /// There is none, or it stays off.
    Off,
    /// In its hours, whatever the temperatures.
    InHours,
    /// In its hours, while it is cooler outdoors than in the cabin and the cabin is above the set point.
    WhenOutdoorsCooler,
}

/// Fan and opened windows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ventilation {
    /// When the fan runs.
    pub fan_use: FanUse,
    /// Outdoor air that the fan moves, m³/s.
    pub fan_flow_m3_s: f64,
    /// Power of the fan, W.
    pub fan_power_w: f64,
    /// Fan from this hour.
    pub fan_from_hour: f64,
    /// Fan until this hour.
    pub fan_until_hour: f64,
    /// Blow the hot air out before the cooler starts.
    pub purge_before_cooling: bool,
    /// Opened windows and hatches, free area, m².
    pub opening_area_m2: f64,
    /// Opened from this hour.
    pub opening_from_hour: f64,
    /// Opened until this hour.
    pub opening_until_hour: f64,
}
