//! Chargers: from the alternator while driving and from the mains while plugged in.
//!
//! Each says what it could give at the terminals of the bank and what that costs at its source. What
//! the bank accepts of it is the bank's affair; when a charger is connected is the schedule's.
//!
//! Usual converters between two batteries are set to 20…60 A at 12 V and pass on 90…95 % (common
//! practice, no source).

use crate::validity::{OutOfRange, require_within};

/// A direct-current charger fed by the alternator while driving.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriveCharger {
    current_a: f64,
    efficiency: f64,
}

impl DriveCharger {
    /// Builds a charger from its setting.
    ///
    /// * `current_a` — current at the bank, A, 0…1 000
    /// * `efficiency` — power at the bank over power drawn, 0.5…1
    ///
    /// # Errors
    /// [`OutOfRange`] if an argument lies outside its range.
    pub fn new(current_a: f64, efficiency: f64) -> Result<Self, OutOfRange> {
        require_within("current_a", current_a, 0.0, 1_000.0)?;
        require_within("efficiency", efficiency, 0.5, 1.0)?;
        Ok(Self {
            current_a,
            efficiency,
        })
    }

    /// Power that the charger can give at a voltage of the bank, W: P = V I.
    ///
    /// * `bank_voltage_v` — terminal voltage of the bank, V, at least 0
    #[must_use]
    pub fn available_power_w(&self, bank_voltage_v: f64) -> f64 {
        self.current_a * bank_voltage_v
    }

    /// Power drawn from the alternator for a power at the bank, W: P / η.
    ///
    /// * `bank_power_w` — power given to the bank, W, at least 0
    #[must_use]
    pub fn source_power_w(&self, bank_power_w: f64) -> f64 {
        bank_power_w / self.efficiency
    }
}

/// A charger fed by the mains.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShoreCharger {
    power_w: f64,
    efficiency: f64,
}

impl ShoreCharger {
    /// Builds a charger from its rating.
    ///
    /// * `power_w` — greatest power at the bank, W, 0…20 000
    /// * `efficiency` — power at the bank over power drawn, 0.5…1
    ///
    /// # Errors
    /// [`OutOfRange`] if an argument lies outside its range.
    pub fn new(power_w: f64, efficiency: f64) -> Result<Self, OutOfRange> {
        require_within("power_w", power_w, 0.0, 20_000.0)?;
        require_within("efficiency", efficiency, 0.5, 1.0)?;
        Ok(Self {
            power_w,
            efficiency,
        })
    }

    /// Power that the charger can give at the bank, W.
    #[must_use]
    pub fn available_power_w(&self) -> f64 {
        self.power_w
    }

    /// Power drawn from the mains for a power at the bank, W: P / η.
    ///
    /// * `bank_power_w` — power given to the bank, W, at least 0
    #[must_use]
    pub fn source_power_w(&self, bank_power_w: f64) -> f64 {
        bank_power_w / self.efficiency
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn drive_charger_gives_its_current_at_the_voltage_of_the_bank() {
        let charger = DriveCharger::new(40.0, 0.9).unwrap();
        assert!((charger.available_power_w(13.5) - 540.0).abs() < 1e-9);
        assert!((charger.source_power_w(540.0) - 600.0).abs() < 1e-9);
    }

    #[test]
    fn shore_charger_draws_more_than_it_gives() {
        let charger = ShoreCharger::new(900.0, 0.9).unwrap();
        assert_eq!(charger.available_power_w(), 900.0);
        assert!((charger.source_power_w(450.0) - 500.0).abs() < 1e-9);
    }

    #[test]
    fn refuses_what_is_out_of_range() {
        assert!(DriveCharger::new(-1.0, 0.9).is_err());
        assert!(DriveCharger::new(40.0, 0.0).is_err());
        assert!(ShoreCharger::new(f64::NAN, 0.9).is_err());
    }
}
