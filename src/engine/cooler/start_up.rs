//! What a start costs: capacity that comes up slower than the electric input.
//!
//! After a start the coil's capacity approaches its steady value as a first-order lag while the
//! compressor draws its full input; at a stop the capacity is gone at once. Between speeds the
//! capacity follows with the same lag both ways, which loses nothing in the mean.
//!
//! Source: Henderson & Rengarajan, ASHRAE Trans. 102 (1996), for the relation of the time constant to
//! cyclic degradation (from memory). Winkler et al. (2013), NREL, measured 0.22 on a window unit.

use crate::quantity::{Bounded, SECONDS_PER_HOUR};
use crate::validity::{OutOfRange, require_within};

/// Cyclic degradation coefficient measured on a window unit (Winkler et al. 2013).
pub const CYCLIC_DEGRADATION_WINDOW_UNIT: f64 = 0.22;

/// Greatest cycling rate of a thermostat, at half load, 1/h (Henderson & Rengarajan, from memory).
pub const CYCLING_RATE_GREATEST_PER_H: f64 = 3.0;

/// Halvings that bring the search for the time constant to rounding.
const HALVINGS: usize = 60;

/// Distance from the command below which the lag is over, share of full.
const CAUGHT_UP: f64 = 1e-6;

/// Lag of the capacity behind the command.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StartUpLag {
    time_constant_s: f64,
    capacity_fraction: f64,
}

impl StartUpLag {
    /// Builds a lag, with the unit off, from its cyclic degradation.
    ///
    /// Solves C_d = 4 τ N (1 − exp(−1/(4 τ N))) for the time constant τ; N is the greatest cycling rate.
    ///
    /// * `cyclic_degradation` — C_d, 0…0.9; 0 means no lag
    /// * `cycling_rate_greatest_per_h` — N, 1/h, 0.1…60
    ///
    /// # Errors
    /// [`OutOfRange`] if an argument lies outside its range.
    ///
    /// Source: Henderson & Rengarajan (1996).
    pub fn new(
        cyclic_degradation: f64,
        cycling_rate_greatest_per_h: f64,
    ) -> Result<Self, OutOfRange> {
        require_within("cyclic_degradation", cyclic_degradation, 0.0, 0.9)?;
        require_within(
            "cycling_rate_greatest_per_h",
            cycling_rate_greatest_per_h,
            0.1,
            60.0,
        )?;
        let scale_s = SECONDS_PER_HOUR / (4.0 * cycling_rate_greatest_per_h);
        Ok(Self {
            time_constant_s: scale_s * relative_time_constant(cyclic_degradation),
            capacity_fraction: 0.0,
        })
    }

    /// The time constant, s.
    #[must_use]
    pub fn time_constant_s(&self) -> f64 {
        self.time_constant_s
    }

    /// Moves the lag on by a step and gives the mean share of the full capacity over it, 0…1.
    ///
    /// Mean = c + (x₀ − c) τ/Δt (1 − e^(−Δt/τ)), end x₁ = c + (x₀ − c) e^(−Δt/τ); c is the command and
    /// x₀ the share at the start. Off is 0 at once. What the coil extracts at the commanded speed is to
    /// be multiplied by this mean over the command.
    ///
    /// * `step_s` — Δt, s, above 0
    /// * `command` — speed as share of the full capacity over the step, 0…1
    pub fn advance(&mut self, step_s: f64, command: f64) -> f64 {
        if command <= 0.0 || self.time_constant_s <= 0.0 {
            self.capacity_fraction = command.at_least(0.0);
            return self.capacity_fraction;
        }
        let behind = self.capacity_fraction - command;
        if behind.abs() < CAUGHT_UP {
            self.capacity_fraction = command;
            return command;
        }
        let closed = -libm::expm1(-step_s / self.time_constant_s);
        self.capacity_fraction = command + behind * (1.0 - closed);
        command + behind * closed * self.time_constant_s / step_s
    }
}

/// The y that solves C = y (1 − e^(−1/y)), which rises with y from 0 towards 1.
fn relative_time_constant(cyclic_degradation: f64) -> f64 {
    if cyclic_degradation <= 0.0 {
        return 0.0;
    }
    let (mut low, mut high) = (0.0, 10.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if -middle * libm::expm1(-1.0 / middle) < cyclic_degradation {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lag() -> StartUpLag {
        StartUpLag::new(CYCLIC_DEGRADATION_WINDOW_UNIT, CYCLING_RATE_GREATEST_PER_H).unwrap()
    }

    #[test]
    fn time_constant_solves_its_relation() {
        let time_constant_h = lag().time_constant_s() / 3600.0;
        let product = 4.0 * time_constant_h * 3.0;
        let degradation = product * (1.0 - libm::exp(-1.0 / product));
        assert!((degradation - 0.22).abs() < 1e-12);
        assert!((lag().time_constant_s() - 66.7).abs() < 0.1);
    }

    #[test]
    fn mean_over_a_step_is_exact_however_it_is_cut() {
        let (mut whole, mut halves) = (lag(), lag());
        for command in [0.4, 1.0, 0.0, 0.7, 0.5] {
            let mean = whole.advance(60.0, command);
            let first = halves.advance(30.0, command);
            let second = halves.advance(30.0, command);
            assert!((mean - f64::midpoint(first, second)).abs() < 1e-12);
            assert!((whole.capacity_fraction - halves.capacity_fraction).abs() < 1e-12);
        }
    }

    #[test]
    fn short_cycles_lose_what_the_degradation_coefficient_says() {
        // Near no load each start runs for 1/(4 N) = 5 min; then the loss is C_d.
        let mut lag = lag();
        let mean = lag.advance(300.0, 1.0);
        assert!((1.0 - mean - 0.22).abs() < 1e-9);
        assert_eq!(lag.advance(60.0, 0.0), 0.0);
    }

    #[test]
    fn no_degradation_means_no_lag() {
        let mut lag = StartUpLag::new(0.0, 3.0).unwrap();
        assert_eq!(lag.advance(10.0, 0.8), 0.8);
    }
}
