//! Whether the capacity and current on a data plate can both be true.
//!
//! Capacity over electric input is the coefficient of performance that the plate implies. A plate
//! can only be judged for the rating condition, 35 °C outdoors. Where it cannot hold, the electric
//! input is taken as the truth, since cables and fuses are sized by it, and the capacity is derived
//! from it.
//!
//! Small direct-current units reach 2.0…3.0 (common practice, no source); a vehicle unit on a test
//! bench reached up to 2.5 (Lee et al., Energies 5 (2012) 1371).

use super::curves::{CONDENSER_AIR_RATED_C, ENTERING_WET_BULB_RATED_C, PerformanceCurves};
use crate::validity::{OutOfRange, require_within};

/// Range that small units reach at the rating condition (common practice, no source).
pub const COP_RANGE_SMALL_UNIT: (f64, f64) = (2.0, 3.0);

/// The best that a vehicle unit reached on a test bench (Lee et al. 2012).
pub const COP_TESTED_VEHICLE_UNIT: f64 = 2.5;

/// Outdoor temperature of the milder rating condition, °C (AHRI 210/240 condition B, 82 °F, from memory).
const CONDENSER_AIR_MILD_C: f64 = 27.8;

/// What a data plate says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DataPlate {
    /// Cooling capacity, W.
    pub cooling_capacity_w: f64,
    /// Voltage of the supply, V.
    pub supply_voltage_v: f64,
    /// Current drawn at that capacity, A.
    pub supply_current_a: f64,
}

/// How a data plate compares with what small units reach.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PlateVerdict {
    /// Less than small units reach: a modest plate, or a current that is not the running one.
    Pessimistic,
    /// Within what small units reach.
    Plausible,
    /// More than small units reach; possible if the plate was rated at a milder condition.
    Optimistic,
    /// More than a milder condition could explain: capacity and current cannot both hold.
    Implausible,
}

/// A data plate judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateAssessment {
    /// Capacity over electric input that the plate implies.
    pub cop_implied: f64,
    /// The verdict.
    pub verdict: PlateVerdict,
    /// Greatest coefficient of performance that is still plausible.
    pub cop_plausible_greatest: f64,
    /// Greatest that rating at a milder condition could explain.
    pub cop_mild_greatest: f64,
    /// Capacity to reckon with, W: the plate's if it is plausible or less, else derived from the input.
    pub cooling_capacity_derated_w: f64,
}

impl DataPlate {
    /// Judges the plate.
    ///
    /// COP = Q / (U I). Up to 3.0 it is plausible; up to 3.0 times what the curves of a small packaged
    /// unit gain between 35 °C and 27.8 °C outdoors it is optimistic; beyond, implausible. The derated
    /// capacity is then 2.5 U I, never more than the plate says.
    ///
    /// # Errors
    /// [`OutOfRange`] if the capacity is not within 10…50 000 W, the voltage not within 5…500 V or the
    /// current not within 0.1…1 000 A.
    pub fn assess(&self) -> Result<PlateAssessment, OutOfRange> {
        require_within(
            "cooling_capacity_w",
            self.cooling_capacity_w,
            10.0,
            50_000.0,
        )?;
        require_within("supply_voltage_v", self.supply_voltage_v, 5.0, 500.0)?;
        require_within("supply_current_a", self.supply_current_a, 0.1, 1_000.0)?;
        let electric_power_w = self.supply_voltage_v * self.supply_current_a;
        let cop_implied = self.cooling_capacity_w / electric_power_w;
        let (least, greatest) = COP_RANGE_SMALL_UNIT;
        let cop_mild_greatest = greatest * cop_gain_at_mild_condition();
        let verdict = if cop_implied < least {
            PlateVerdict::Pessimistic
        } else if cop_implied <= greatest {
            PlateVerdict::Plausible
        } else if cop_implied <= cop_mild_greatest {
            PlateVerdict::Optimistic
        } else {
            PlateVerdict::Implausible
        };
        let cooling_capacity_derated_w = if cop_implied <= greatest {
            self.cooling_capacity_w
        } else {
            COP_TESTED_VEHICLE_UNIT * electric_power_w
        };
        Ok(PlateAssessment {
            cop_implied,
            verdict,
            cop_plausible_greatest: greatest,
            cop_mild_greatest,
            cooling_capacity_derated_w,
        })
    }
}

/// Gain of the coefficient of performance from 35 °C to the milder rating condition.
fn cop_gain_at_mild_condition() -> f64 {
    let curves = PerformanceCurves::default();
    let input_ratio = |condenser_c: f64| {
        curves
            .performance(ENTERING_WET_BULB_RATED_C, condenser_c, 1.0)
            .input_ratio
    };
    input_ratio(CONDENSER_AIR_RATED_C) / input_ratio(CONDENSER_AIR_MILD_C)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn assess(cooling_capacity_w: f64, supply_current_a: f64) -> PlateAssessment {
        let plate = DataPlate {
            cooling_capacity_w,
            supply_voltage_v: 12.0,
            supply_current_a,
        };
        plate.assess().unwrap()
    }

    #[test]
    fn verdicts_follow_the_implied_coefficient() {
        // By hand at 50 A and 12 V, 600 W: 1.5, 2.5, 3.2 and 5.0.
        assert_eq!(assess(900.0, 50.0).verdict, PlateVerdict::Pessimistic);
        assert_eq!(assess(1500.0, 50.0).verdict, PlateVerdict::Plausible);
        assert_eq!(assess(1920.0, 50.0).verdict, PlateVerdict::Optimistic);
        assert_eq!(assess(3000.0, 50.0).verdict, PlateVerdict::Implausible);
        assert!((assess(3000.0, 50.0).cop_implied - 5.0).abs() < 1e-12);
    }

    #[test]
    fn derated_capacity_follows_the_input_and_never_exceeds_the_plate() {
        assert!((assess(3000.0, 50.0).cooling_capacity_derated_w - 1500.0).abs() < 1e-9);
        assert_eq!(assess(1500.0, 50.0).cooling_capacity_derated_w, 1500.0);
        assert_eq!(assess(900.0, 50.0).cooling_capacity_derated_w, 900.0);
    }

    #[test]
    fn a_milder_condition_explains_less_than_a_fifth() {
        // By hand from the published curve at 19.44 °C: 1.18557 at 27.8 °C over 1.00081 at 35 °C.
        assert!((cop_gain_at_mild_condition() - 1.18557 / 1.00081).abs() < 1e-4);
    }

    #[test]
    fn refuses_a_plate_without_a_current() {
        let plate = DataPlate {
            cooling_capacity_w: 1000.0,
            supply_voltage_v: 12.0,
            supply_current_a: 0.0,
        };
        assert_eq!(plate.assess().unwrap_err().quantity, "supply_current_a");
    }
}
