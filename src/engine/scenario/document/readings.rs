//! What was read off the finished unit, and how well it can be read.

use serde::{Deserialize, Serialize};

/// Readings of the running cooler, all of one moment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Readings {
    /// Whether there are any.
    pub taken: bool,
    /// Air outdoors, in the shade, °C.
    pub outdoor_c: f64,
    /// Air that enters the cooler from the cabin, °C.
    pub return_c: f64,
    /// Whether its humidity was read.
    pub return_humidity_known: bool,
    /// Relative humidity of the air that enters, share.
    pub return_relative_humidity: f64,
    /// Air that the cooler blows out, °C.
    pub supply_c: f64,
    /// Whether its humidity was read.
    pub supply_humidity_known: bool,
    /// Relative humidity of the air blown out, share.
    pub supply_relative_humidity: f64,
    /// Whether the air flow was measured.
    pub airflow_known: bool,
    /// Air through the cooler, as it enters, m³/s.
    pub airflow_m3_s: f64,
    /// Direct current drawn for the cooler, A.
    pub current_a: f64,
    /// Voltage at the bank's terminals, V.
    pub bank_voltage_v: f64,
    /// Voltage at the terminals of the cooler, or of the inverter that feeds it, V.
    pub unit_voltage_v: f64,
    /// Time since the compressor started, s.
    pub running_s: f64,
    /// Limits of error of a temperature, K.
    pub temperature_limit_k: f64,
    /// Limits of error of a relative humidity, share of saturation.
    pub humidity_limit: f64,
    /// Limits of error of the air flow, share of it.
    pub airflow_limit_share: f64,
    /// Limits of error of the current, share of it.
    pub current_limit_share: f64,
    /// Limits of error of a voltage, share of it.
    pub voltage_limit_share: f64,
}
