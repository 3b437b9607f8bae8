//! How it is wired: ways of cable, what surrounds them, and how the bank is made up.

use crate::electrical::conductor::Insulation;
use serde::{Deserialize, Serialize};

/// The insulation of every cable, by the highest temperature that it bears.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CableInsulation {
    /// 60 °C.
    C60,
    /// 75 °C.
    C75,
    /// 80 °C.
    C80,
    /// 90 °C.
    C90,
    /// 105 °C.
    C105,
    /// 125 °C.
    C125,
    /// 200 °C.
    C200,
}

impl CableInsulation {
    /// The column of the table of allowable currents.
    #[must_use]
    pub fn class(self) -> Insulation {
        Insulation::ALL[self as usize]
    }
}

/// The way of a circuit's cable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CableWay {
    /// From source to load, one way, m.
    pub length_m: f64,
    /// Greatest drop of voltage at the running current, share.
    pub allowed_drop_share: f64,
    /// Conductors that carry current and lie together, the return included.
    pub bundled_conductors: f64,
    /// Hottest air along the way, °C.
    pub air_c: f64,
}

/// Ways of cable and the make-up of the bank.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Installation {
    /// From the bus to the cooler.
    pub cooler: CableWay,
    /// From the starter battery to the DC-DC charger.
    pub dc_dc: CableWay,
    /// From the panels to their controller.
    pub panels: CableWay,
    /// From the controller to the bank.
    pub controller: CableWay,
    /// From the bank to the bus.
    pub bus: CableWay,
    /// From the bus to the inverter.
    pub inverter: CableWay,
    /// Insulation of every cable.
    pub insulation: CableInsulation,
    /// Voltage of the panels at their best power, V.
    pub panel_voltage_v: f64,
    /// Packs in parallel that make up the bank.
    pub parallel_packs: f64,
    /// Current that the bank's protection bears for some seconds, A for the whole bank.
    pub bank_peak_a: f64,
}

/// What an installation costs beside its large parts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BuildPrices {
    /// A metre of single conductor, for each mm² of copper.
    pub cable_per_m_mm2: f64,
    /// A fuse or breaker with its holder.
    pub fuse: f64,
    /// An inverter, for each W of its rating.
    pub inverter_per_w: f64,
    /// Lugs, sealant, screws, conduit: share of all parts.
    pub small_parts_share: f64,
    /// Markup on parts, share.
    pub markup_share: f64,
}
