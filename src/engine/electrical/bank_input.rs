//! What a battery bank is built from.

use super::chemistry::Chemistry;
use crate::validity::{OutOfRange, require_within};

/// What a bank is built from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BankInput {
    /// Chemistry of the cells.
    pub chemistry: Chemistry,
    /// Name of the system voltage: 12, 24 or 48 V.
    pub nominal_voltage_v: f64,
    /// Rated capacity of the new bank at 25 °C, Ah, 1…100 000.
    pub capacity_ah: f64,
    /// State of charge at which discharge stops, 0…1.
    pub usable_min_soc: f64,
    /// State of charge at which charge stops, 0…1.
    pub usable_max_soc: f64,
    /// Resistance of the whole bank at 25 °C, Ω, 0…1.
    pub resistance_ohm: f64,
    /// Share of the charge put in that is stored, 0.5…1.
    pub coulombic_efficiency: f64,
    /// Greatest discharge current, A, 0…100 000.
    pub max_discharge_a: f64,
    /// Greatest charge current, A, 0…100 000.
    pub max_charge_a: f64,
    /// Peukert exponent, 1 (no effect) … 1.6.
    pub peukert_exponent: f64,
    /// Capacity left by ageing, as a share of the rated capacity, 0.3…1.
    pub health_fraction: f64,
}

/// Why a bank cannot be built.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BankError {
    /// An input is out of range.
    OutOfRange(OutOfRange),
    /// The name of the system voltage is not 12, 24 or 48 V.
    UnknownSystemVoltage {
        /// The voltage given, V.
        value_v: f64,
    },
    /// Discharge would stop at or above the state of charge at which charge stops.
    EmptyUsableWindow {
        /// Least usable state of charge given.
        usable_min_soc: f64,
        /// Greatest usable state of charge given.
        usable_max_soc: f64,
    },
}

impl From<OutOfRange> for BankError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}

impl BankInput {
    /// Refuses what lies outside the ranges stated at the fields.
    pub(super) fn check(&self) -> Result<(), BankError> {
        if ![12.0, 24.0, 48.0].contains(&self.nominal_voltage_v) {
            let value_v = self.nominal_voltage_v;
            return Err(BankError::UnknownSystemVoltage { value_v });
        }
        require_within("capacity_ah", self.capacity_ah, 1.0, 1.0e5)?;
        require_within("usable_min_soc", self.usable_min_soc, 0.0, 1.0)?;
        require_within("usable_max_soc", self.usable_max_soc, 0.0, 1.0)?;
        require_within("resistance_ohm", self.resistance_ohm, 0.0, 1.0)?;
        require_within("coulombic_efficiency", self.coulombic_efficiency, 0.5, 1.0)?;
        require_within("max_discharge_a", self.max_discharge_a, 0.0, 1.0e5)?;
        require_within("max_charge_a", self.max_charge_a, 0.0, 1.0e5)?;
        require_within("peukert_exponent", self.peukert_exponent, 1.0, 1.6)?;
        require_within("health_fraction", self.health_fraction, 0.3, 1.0)?;
        if self.usable_min_soc >= self.usable_max_soc {
            return Err(BankError::EmptyUsableWindow {
                usable_min_soc: self.usable_min_soc,
                usable_max_soc: self.usable_max_soc,
            });
        }
        Ok(())
    }
}
