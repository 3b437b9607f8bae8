//! The bank, what charges it, what draws from it, and prices.

use super::installation::BuildPrices;
use super::measure_prices::MeasurePrices;
use serde::{Deserialize, Serialize};

/// What the cells are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CellChemistry {
    /// Lithium iron phosphate.
    LithiumIronPhosphate,
    /// Absorbent-glass-mat lead-acid.
    AbsorbentGlassMat,
    /// Flooded lead-acid.
    FloodedLead,
}

impl CellChemistry {
    /// Whether a large current uses up more charge than it draws (Peukert's law), as in lead.
    #[must_use]
    pub fn has_peukert(self) -> bool {
        match self {
            Self::LithiumIronPhosphate => false,
            Self::AbsorbentGlassMat | Self::FloodedLead => true,
        }
    }
}

/// Nominal voltage of the bank.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SystemVoltage {
    /// 12 V.
    V12,
    /// 24 V.
    V24,
    /// 48 V.
    V48,
}

impl SystemVoltage {
    /// Blocks of 12 V in series: 1, 2 or 4.
    #[must_use]
    pub fn blocks(self) -> f64 {
        match self {
            Self::V12 => 1.0,
            Self::V24 => 2.0,
            Self::V48 => 4.0,
        }
    }

    /// The voltage by which plates and plain division go: 12, 24 or 48 V.
    #[must_use]
    pub fn nominal_v(self) -> f64 {
        12.0 * self.blocks()
    }
}

/// The bank.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Battery {
    /// What the cells are.
    pub chemistry: CellChemistry,
    /// Nominal voltage.
    pub system_voltage: SystemVoltage,
    /// Rated capacity, Ah.
    pub capacity_ah: f64,
    /// Charge at the start, share.
    pub start_state_of_charge: f64,
    /// Lowest charge that the bank's protection allows, share.
    pub least_state_of_charge: f64,
    /// Highest charge that charging aims at, share.
    pub most_state_of_charge: f64,
    /// Resistance of the bank for each 12 V at 25 °C, Ω.
    pub resistance_ohm_per_12_v: f64,
    /// Charge got back over charge put in.
    pub coulombic_efficiency: f64,
    /// Highest continuous discharge current, A.
    pub highest_discharge_a: f64,
    /// Highest charging current, A.
    pub highest_charge_a: f64,
    /// Peukert's exponent, lead-acid only.
    pub peukert_exponent: f64,
    /// Capacity left over capacity when new.
    pub health_share: f64,
}

/// Panels, driving and shore.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Charging {
    /// Rated power of the panels, W.
    pub panel_power_w: f64,
    /// Losses of soiling, mismatch, wiring and ageing, share.
    pub panel_loss_share: f64,
    /// Share of the panels' sun taken by what stands on the roof.
    pub panel_shading_share: f64,
    /// Loss of power for each kelvin above 25 °C, share.
    pub panel_temperature_loss_per_k: f64,
    /// Efficiency of the controller.
    pub controller_efficiency: f64,
    /// Whether the vehicle is driven.
    pub drives: bool,
    /// Driving from this hour.
    pub drive_from_hour: f64,
    /// Driving until this hour.
    pub drive_until_hour: f64,
    /// Speed while driving, m/s.
    pub drive_speed_m_s: f64,
    /// Output of the DC-DC charger, A at the bank.
    pub dc_dc_current_a: f64,
    /// Shore charger's output into the bank, W; 0 is none.
    pub shore_power_w: f64,
    /// Plugged in from this hour.
    pub shore_from_hour: f64,
    /// Plugged in until this hour.
    pub shore_until_hour: f64,
}

/// A load on the bank.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Load {
    /// Power while on, W.
    pub power_w: f64,
    /// Share of its hours in which it is on.
    pub duty: f64,
    /// From this hour.
    pub from_hour: f64,
    /// Until this hour.
    pub until_hour: f64,
}

/// Loads other than cooler and fan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Loads {
    /// Refrigerator.
    pub fridge: Load,
    /// Lights.
    pub lights: Load,
    /// Laptop, telephone, router.
    pub electronics: Load,
    /// Anything else.
    pub other: Load,
}

/// What things cost, in one currency.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Prices {
    /// ISO 4217 code of the currency.
    pub currency: String,
    /// The cooler.
    pub cooler: f64,
    /// The bank, for each Wh.
    pub bank_per_wh: f64,
    /// Panels with mounting, for each W.
    pub panels_per_w: f64,
    /// Insulation, for each m² and each 25 mm.
    pub insulation_per_m2_25_mm: f64,
    /// Window covers, for each m².
    pub covers_per_m2: f64,
    /// Roof fan.
    pub fan: f64,
    /// DC-DC charger, for each A.
    pub dc_dc_per_a: f64,
    /// Work, h.
    pub labour_h: f64,
    /// An hour of work.
    pub labour_per_h: f64,
    /// Tax, share.
    pub tax_share: f64,
    /// What measures take beside the prices above.
    pub measures: MeasurePrices,
    /// Cable, fuses, small parts and markup.
    pub build: BuildPrices,
}
