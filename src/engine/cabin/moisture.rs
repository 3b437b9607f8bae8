//! Water in the cabin's air and furniture, as one node of effective capacitance.
//!
//! Steps as in the thermal network, but where outdoor air would replace the cabin's within a step the state at its end is
//! taken from later in the step, θ = 1 − 1/z with z = (ṁ + Σk) Δt/M: the least at which the node never swings past the
//! humidity that it is drawn to. An extrapolation that swings past could leave less water than none.

use crate::quantity::Bounded;

/// The moisture node.
///
/// Furniture's hygroscopic storage is taken as a multiple of the air's own (effective-capacitance form, as in whole-building
/// programs): M dW/dt = ṁ (Wo − W) + gains − coil − Σ k (W − Ws) over surfaces below the dew point.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Moisture {
    pub(super) capacity_kg: f64,
    pub(super) humidity_ratio: f64,
    exchange_kg_s: f64,
    outdoor_humidity_ratio: f64,
    condensing_kg_s: f64,
    condensing_towards_kg_s: f64,
    theta: f64,
    per_theta: f64,
    /// Mass over θΔt; the same with all that draws, and one over that; and what is given by all that draws.
    mass_over_step_kg_s: f64,
    mass_flow_kg_s: f64,
    per_mass_flow_s_kg: f64,
    given_kg_s: f64,
}

/// What a step did.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct MoistureStep {
    /// Humidity ratio at the instant at which its flows are taken, above that outdoors: where much air passes through, as a sum of
    /// small differences it loses less to rounding.
    pub(super) above_outdoors: f64,
    /// Water taken out by the coil, kg/s.
    pub(super) coil_kg_s: f64,
}

impl Moisture {
    /// Freezes the coefficients of an interval: dry air exchanged (kg/s), its humidity ratio, and the conductance (kg/s) of
    /// surfaces below the dew point with the sum of conductance times their saturated humidity ratio.
    pub(super) fn set(
        &mut self,
        exchange_kg_s: f64,
        outdoor_humidity_ratio: f64,
        condensing_kg_s: f64,
        condensing_towards_kg_s: f64,
    ) {
        self.exchange_kg_s = exchange_kg_s;
        self.outdoor_humidity_ratio = outdoor_humidity_ratio;
        self.condensing_kg_s = condensing_kg_s;
        self.condensing_towards_kg_s = condensing_towards_kg_s;
    }

    /// Length of the steps that follow, s, and the least weight of their end.
    pub(super) fn set_step(&mut self, step_s: f64, theta: f64) {
        let drawn_kg_s = self.exchange_kg_s + self.condensing_kg_s;
        let theta = theta.at_least(1.0 - self.capacity_kg / (drawn_kg_s * step_s));
        self.theta = theta;
        self.per_theta = 1.0 / theta;
        self.mass_over_step_kg_s = self.capacity_kg / (theta * step_s);
        self.mass_flow_kg_s = self.mass_over_step_kg_s + drawn_kg_s;
        self.per_mass_flow_s_kg = 1.0 / self.mass_flow_kg_s;
        self.given_kg_s =
            self.exchange_kg_s * self.outdoor_humidity_ratio + self.condensing_towards_kg_s;
    }

    /// One step with a gain (kg/s) and a coil that takes up to `coil_kg_s` but leaves the air no drier than
    /// `coil_humidity_ratio` at the step's end.
    pub(super) fn step(
        &mut self,
        gain_kg_s: f64,
        coil_kg_s: f64,
        coil_humidity_ratio: f64,
    ) -> MoistureStep {
        let before = self.humidity_ratio;
        let drawn_kg_s = self.mass_over_step_kg_s * before + (self.given_kg_s + gain_kg_s);
        let untouched = drawn_kg_s * self.per_mass_flow_s_kg;
        let taken_kg_s = if coil_kg_s == 0.0 {
            0.0
        } else {
            let least = before + self.theta * (coil_humidity_ratio - before);
            coil_kg_s.at_most(((untouched - least) * self.mass_flow_kg_s).at_least(0.0))
        };
        let implicit = untouched - taken_kg_s * self.per_mass_flow_s_kg;
        self.humidity_ratio = before + (implicit - before) * self.per_theta;
        MoistureStep {
            above_outdoors: implicit - self.outdoor_humidity_ratio,
            coil_kg_s: taken_kg_s,
        }
    }

    /// Water that outdoor air brought in, from the sum by time (s) of how far the humidity ratio was above that outdoors, kg.
    pub(super) fn exchanged_kg(&self, above_outdoors_s: f64) -> f64 {
        -self.exchange_kg_s * above_outdoors_s
    }

    /// Water that condensed on inner surfaces over a time (s), likewise, kg.
    pub(super) fn condensed_kg(&self, seconds: f64, above_outdoors_s: f64) -> f64 {
        let towards_kg_s =
            self.condensing_towards_kg_s - self.condensing_kg_s * self.outdoor_humidity_ratio;
        self.condensing_kg_s * above_outdoors_s - towards_kg_s * seconds
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_closed_box_keeps_its_water() {
        let mut node = Moisture {
            capacity_kg: 20.0,
            humidity_ratio: 0.01,
            ..Moisture::default()
        };
        node.set(0.0, 0.02, 0.0, 0.0);
        node.set_step(10.0, 0.55);
        for _ in 0..360 {
            node.step(0.0, 0.0, 0.0);
        }
        assert!((node.humidity_ratio - 0.01).abs() < 1e-12);
    }

    #[test]
    fn gain_and_exchange_reach_the_hand_computed_balance() {
        // Wo + gain/ṁ = 0.010 + 0.00005/0.01 = 0.015.
        let mut node = Moisture {
            capacity_kg: 20.0,
            humidity_ratio: 0.01,
            ..Moisture::default()
        };
        node.set(0.01, 0.010, 0.0, 0.0);
        node.set_step(60.0, 0.55);
        for _ in 0..2_000 {
            node.step(0.000_05, 0.0, 0.0);
        }
        assert!((node.humidity_ratio - 0.015).abs() < 1e-9);
    }

    #[test]
    fn a_huge_coil_never_dries_below_its_own_humidity() {
        let mut node = Moisture {
            capacity_kg: 2.0,
            humidity_ratio: 0.02,
            ..Moisture::default()
        };
        node.set(0.001, 0.02, 0.0, 0.0);
        node.set_step(300.0, 0.55);
        for _ in 0..50 {
            node.step(0.0, 1.0, 0.008);
        }
        assert!((node.humidity_ratio - 0.008).abs() < 1e-6);
    }

    #[test]
    fn a_gale_of_dry_air_never_leaves_less_than_no_water() {
        // One air change a second: an extrapolation over ten seconds would go below zero and lose count of the water.
        let mut node = Moisture {
            capacity_kg: 15.0,
            humidity_ratio: 0.02,
            ..Moisture::default()
        };
        node.set(15.0, 0.001, 0.0, 0.0);
        node.set_step(10.0, 0.55);
        let mut net_kg = 0.0;
        for _ in 0..6 {
            let before = node.humidity_ratio;
            let step = node.step(0.0, 0.0, 0.0);
            net_kg += node.exchanged_kg(10.0 * step.above_outdoors)
                - 15.0 * (node.humidity_ratio - before);
            assert!(node.humidity_ratio >= 0.001 - 1e-12);
        }
        assert!(net_kg.abs() < 1e-12);
    }
}
