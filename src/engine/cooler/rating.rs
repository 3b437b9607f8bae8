//! What a cooler is rated to do, and how it behaves below full speed.

use crate::quantity::Bounded;
use crate::validity::{OutOfRange, require_within};

/// What a cooler does at its rating condition.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolerRating {
    /// Sensible and latent capacity of the coil, W, 50…20 000. A plate that gives net capacity has the
    /// heat of the cabin fan already taken off.
    pub cooling_capacity_rated_w: f64,
    /// Electric input of compressor and condenser fan, W, 10…20 000.
    pub electric_power_rated_w: f64,
    /// Air flow over the coil, m³/s, 0.005…2.
    pub airflow_rated_m3_s: f64,
    /// Share of the capacity that is sensible, 0.3…1.
    pub sensible_heat_ratio_rated: f64,
    /// Electric input of the cabin fan at the rated flow, W, 0…2 000.
    pub fan_power_w: f64,
    /// Dry bulb of the entering air, °C, 15…40.
    pub entering_dry_bulb_rated_c: f64,
    /// Wet bulb of the entering air, °C, from 12.78 up to the lesser of 23.89 and the dry bulb.
    pub entering_wet_bulb_rated_c: f64,
    /// Air entering the condenser, °C, 23.89…46.11.
    pub condenser_air_rated_c: f64,
}

/// How a unit of variable speed behaves below full speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartSpeed {
    /// Least share of the full capacity, 0.05…1; 1 for a unit of one speed.
    pub least_capacity_fraction: f64,
    /// Coefficient of performance at that share over the one at full speed, 1.0…1.6.
    ///
    /// Gains of 10…40 % are quoted (from memory, no source checked); linear in between.
    pub part_speed_efficiency_gain: f64,
}

impl PartSpeed {
    /// A unit that only knows full speed.
    pub const FIXED: Self = Self {
        least_capacity_fraction: 1.0,
        part_speed_efficiency_gain: 1.0,
    };

    /// Coefficient of performance at a speed over the one at full speed.
    ///
    /// Linear from the gain at the least speed to 1 at full speed; held below the least speed, where
    /// the unit cycles.
    ///
    /// * `capacity_fraction` — share of the full capacity, 0…1
    #[must_use]
    pub fn efficiency_gain(&self, capacity_fraction: f64) -> f64 {
        let Self {
            least_capacity_fraction: least,
            part_speed_efficiency_gain: gain,
        } = *self;
        if least >= 1.0 {
            return 1.0;
        }
        let below_full = (1.0 - capacity_fraction.at_least(least)) / (1.0 - least);
        1.0 + (gain - 1.0) * below_full
    }

    /// Refuses a share outside 0.05…1 and a gain outside 1.0…1.6.
    pub(super) fn check(&self) -> Result<(), OutOfRange> {
        let Self {
            least_capacity_fraction: least,
            part_speed_efficiency_gain: gain,
        } = *self;
        require_within("least_capacity_fraction", least, 0.05, 1.0)?;
        require_within("part_speed_efficiency_gain", gain, 1.0, 1.6)?;
        Ok(())
    }
}

impl CoolerRating {
    /// Refuses what lies outside the range of small units and of the rating points of the curves.
    pub(super) fn check(&self) -> Result<(), OutOfRange> {
        let dry_bulb_c = self.entering_dry_bulb_rated_c;
        let checks = [
            (
                "cooling_capacity_rated_w",
                self.cooling_capacity_rated_w,
                50.0,
                20_000.0,
            ),
            (
                "electric_power_rated_w",
                self.electric_power_rated_w,
                10.0,
                20_000.0,
            ),
            ("airflow_rated_m3_s", self.airflow_rated_m3_s, 0.005, 2.0),
            (
                "sensible_heat_ratio_rated",
                self.sensible_heat_ratio_rated,
                0.3,
                1.0,
            ),
            ("fan_power_w", self.fan_power_w, 0.0, 2_000.0),
            ("entering_dry_bulb_rated_c", dry_bulb_c, 15.0, 40.0),
            (
                "entering_wet_bulb_rated_c",
                self.entering_wet_bulb_rated_c,
                12.78,
                dry_bulb_c.at_most(23.89),
            ),
            (
                "condenser_air_rated_c",
                self.condenser_air_rated_c,
                23.89,
                46.11,
            ),
        ];
        for (quantity, value, least, greatest) in checks {
            require_within(quantity, value, least, greatest)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gain_is_linear_between_least_and_full() {
        let part_speed = PartSpeed {
            least_capacity_fraction: 0.4,
            part_speed_efficiency_gain: 1.3,
        };
        // By hand: 1 + 0.3 · (1 − 0.7)/(1 − 0.4) = 1.15.
        assert!((part_speed.efficiency_gain(0.7) - 1.15).abs() < 1e-12);
        assert!((part_speed.efficiency_gain(0.2) - 1.3).abs() < 1e-12);
        assert!((part_speed.efficiency_gain(1.0) - 1.0).abs() < 1e-12);
        assert_eq!(PartSpeed::FIXED.efficiency_gain(0.5), 1.0);
    }
}
