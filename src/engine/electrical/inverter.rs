//! An inverter between the bank and mains loads.
//!
//! The loss is a quadratic in the load: an idle part, a part that follows the current and a part
//! that follows its square. It is valid from no load to the continuous rating; beyond it the inverter
//! is overloaded, which is reported and left to the caller to act on.
//!
//! Sources: form of the loss after Schmidt & Sauer (1996), from memory. The efficiency of large grid
//! inverters by load (Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641, 2014) stands beside it for
//! comparison: it leaves out what an inverter draws at no load.

use crate::validity::{OutOfRange, require_within};

/// What an inverter is built from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InverterInput {
    /// Output that it holds for as long as wanted, W.
    pub continuous_power_w: f64,
    /// Output that it holds for a motor's start, W.
    pub surge_power_w: f64,
    /// Draw from the bank with no load, W.
    pub idle_power_w: f64,
    /// Loss that follows the load, as a share of the continuous rating at full load, 0…0.5.
    pub linear_loss_fraction: f64,
    /// Loss that follows the square of the load, likewise, 0…0.5.
    pub square_loss_fraction: f64,
}

/// How an inverter is overloaded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum InverterOverload {
    /// The running load is above the continuous rating.
    Continuous {
        /// Load, W.
        load_w: f64,
        /// Rating, W.
        limit_w: f64,
    },
    /// A load starts with more than the surge rating.
    Surge {
        /// Load while starting, W.
        load_w: f64,
        /// Rating, W.
        limit_w: f64,
    },
}

/// An inverter that is switched on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Inverter {
    input: InverterInput,
}

impl Inverter {
    /// Builds an inverter.
    ///
    /// # Errors
    /// [`OutOfRange`] if the continuous rating is not within 10…50 000 W, the surge rating is less
    /// than it or more than ten times it, the idle draw is more than half of it, or a loss is not
    /// within 0…0.5.
    pub fn new(input: InverterInput) -> Result<Self, OutOfRange> {
        let rated_w = input.continuous_power_w;
        require_within("continuous_power_w", rated_w, 10.0, 50_000.0)?;
        require_within(
            "surge_power_w",
            input.surge_power_w,
            rated_w,
            10.0 * rated_w,
        )?;
        require_within("idle_power_w", input.idle_power_w, 0.0, 0.5 * rated_w)?;
        require_within("linear_loss_fraction", input.linear_loss_fraction, 0.0, 0.5)?;
        require_within("square_loss_fraction", input.square_loss_fraction, 0.0, 0.5)?;
        Ok(Self { input })
    }

    /// Power drawn from the bank for a load, W: P + P₀ + P_r (k₁ l + k₂ l²), with l = P / P_r.
    ///
    /// P load, P_r continuous rating, P₀ idle draw, k₁ and k₂ the linear and square loss.
    ///
    /// * `load_w` — power at the output, W, at least 0; above the rating the form is continued
    #[must_use]
    pub fn input_power_w(&self, load_w: f64) -> f64 {
        let InverterInput {
            continuous_power_w,
            idle_power_w,
            linear_loss_fraction,
            square_loss_fraction,
            ..
        } = self.input;
        let load = load_w / continuous_power_w;
        let loss = load * (linear_loss_fraction + square_loss_fraction * load);
        load_w + idle_power_w + continuous_power_w * loss
    }

    /// Output over input, 0…1; 0 with no load.
    ///
    /// * `load_w` — power at the output, W, at least 0
    #[must_use]
    pub fn efficiency(&self, load_w: f64) -> f64 {
        if load_w <= 0.0 {
            return 0.0;
        }
        load_w / self.input_power_w(load_w)
    }

    /// How the inverter is overloaded, if it is, by what runs and what starts.
    ///
    /// * `running_w` — load that stays, W
    /// * `starting_w` — load at the height of a start, with what already runs, W
    #[must_use]
    pub fn overload(&self, running_w: f64, starting_w: f64) -> Option<InverterOverload> {
        if running_w > self.input.continuous_power_w {
            return Some(InverterOverload::Continuous {
                load_w: running_w,
                limit_w: self.input.continuous_power_w,
            });
        }
        if starting_w > self.input.surge_power_w {
            return Some(InverterOverload::Surge {
                load_w: starting_w,
                limit_w: self.input.surge_power_w,
            });
        }
        None
    }
}

/// Efficiency of a large grid inverter by its load, for comparison.
///
/// η = η₀ / 0.9637 (−0.0162 z − 0.0059 / z + 0.9858), with η₀ = 0.96 the rated efficiency.
///
/// * `load_fraction` — z, input power over rated input power, above 0.007, up to 1
///
/// Source: Dobos (2014), NREL/TP-6A20-62641, inverter model.
#[must_use]
pub fn grid_inverter_efficiency(load_fraction: f64) -> f64 {
    let shape = -0.0162 * load_fraction - 0.0059 / load_fraction + 0.9858;
    0.96 / 0.9637 * shape
}

#[cfg(test)]
mod tests {
    use super::*;

    fn input() -> InverterInput {
        InverterInput {
            continuous_power_w: 2000.0,
            surge_power_w: 4000.0,
            idle_power_w: 20.0,
            linear_loss_fraction: 0.02,
            square_loss_fraction: 0.04,
        }
    }

    #[test]
    fn draws_the_load_and_the_three_losses() {
        let inverter = Inverter::new(input()).unwrap();
        // By hand at half load: 1000 + 20 + 2000 (0.02 · 0.5 + 0.04 · 0.25) = 1060 W.
        assert!((inverter.input_power_w(1000.0) - 1060.0).abs() < 1e-9);
        assert!((inverter.input_power_w(0.0) - 20.0).abs() < 1e-12);
        assert_eq!(inverter.efficiency(0.0), 0.0);
    }

    #[test]
    fn says_which_rating_is_passed() {
        let inverter = Inverter::new(input()).unwrap();
        assert_eq!(inverter.overload(1500.0, 3900.0), None);
        assert!(matches!(
            inverter.overload(2001.0, 2001.0),
            Some(InverterOverload::Continuous { .. })
        ));
        assert!(matches!(
            inverter.overload(1500.0, 4500.0),
            Some(InverterOverload::Surge { .. })
        ));
    }

    #[test]
    fn refuses_a_surge_rating_below_the_continuous_one() {
        let refused = Inverter::new(InverterInput {
            surge_power_w: 1000.0,
            ..input()
        });
        assert_eq!(refused.unwrap_err().quantity, "surge_power_w");
    }
}
