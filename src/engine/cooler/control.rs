//! When and how fast the compressor runs.
//!
//! A thermostat with a band around its set point commands a speed for each step; the compressor keeps
//! minimum times on and off. The command of a step follows from the temperature at its start. Being
//! forbidden (by schedule or voltage) stops the compressor at once, even within its minimum time on.
//!
//! Minimum times of two to five minutes are usual (common practice, no source).

use crate::quantity::Bounded;
use crate::validity::{OutOfRange, require_within};

/// Share of the band at which a compressor of variable speed starts: its middle, so that it does not start as soon as it has
/// stopped (common practice, no source).
const START_SHARE_VARIABLE: f64 = 0.5;

/// How the speed follows the temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ControlMode {
    /// Full speed or off.
    OnOff,
    /// Off, a named economy level, or full.
    TwoLevel {
        /// Capacity at the economy level as share of the full capacity, 0.05…1.
        economy_fraction: f64,
    },
    /// From a least to full speed in proportion within the band.
    Variable {
        /// Least speed as share of the full capacity, 0.05…1.
        least_fraction: f64,
    },
}

/// What a thermostat is built from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThermostatInput {
    /// Temperature that the band lies around, °C.
    pub set_point_c: f64,
    /// Whole width of the band, K.
    pub band_k: f64,
    /// Least time that the compressor stays on, s.
    pub minimum_on_s: f64,
    /// Least time that it stays off, s.
    pub minimum_off_s: f64,
    /// How the speed follows the temperature.
    pub mode: ControlMode,
}

/// A thermostat, ready to step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thermostat {
    input: ThermostatInput,
    per_band_k: f64,
}

/// What the compressor is doing and for how long.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CompressorState {
    /// Speed commanded in the last step, 0…1; 0 is off.
    pub speed: f64,
    /// Time since the last start or stop, s.
    pub elapsed_s: f64,
}

impl Default for CompressorState {
    /// Off for so long that it may start at once.
    fn default() -> Self {
        Self {
            speed: 0.0,
            elapsed_s: f64::INFINITY,
        }
    }
}

/// The command for a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedCommand {
    /// Speed as share of the full capacity, 0…1; 0 is off.
    pub speed: f64,
    /// Whether the compressor starts with this step: the moment of the start surge.
    pub started: bool,
}

impl Thermostat {
    /// Builds a thermostat.
    ///
    /// # Errors
    /// [`OutOfRange`] if the set point is not within 5…40 °C, the band not within 0.1…10 K, a minimum
    /// time not within 0…3 600 s, or a share of the capacity not within 0.05…1.
    pub fn new(input: ThermostatInput) -> Result<Self, OutOfRange> {
        require_within("set_point_c", input.set_point_c, 5.0, 40.0)?;
        require_within("band_k", input.band_k, 0.1, 10.0)?;
        require_within("minimum_on_s", input.minimum_on_s, 0.0, 3_600.0)?;
        require_within("minimum_off_s", input.minimum_off_s, 0.0, 3_600.0)?;
        match input.mode {
            ControlMode::OnOff => {}
            ControlMode::TwoLevel { economy_fraction } => {
                require_within("economy_fraction", economy_fraction, 0.05, 1.0)?;
            }
            ControlMode::Variable { least_fraction } => {
                require_within("least_fraction", least_fraction, 0.05, 1.0)?;
            }
        }
        Ok(Self {
            input,
            per_band_k: 1.0 / input.band_k,
        })
    }

    /// Commands the speed of a step and moves the state to its end.
    ///
    /// The compressor starts at the upper edge of the band and stops at the lower one. Two levels: the
    /// economy level starts there; full speed takes over a band above the upper edge and gives way to
    /// economy at the upper edge. Variable: the speed is the share of the band that lies below the
    /// temperature, never less than the least speed while on; the compressor starts at the set point, or
    /// where the share reaches the least speed if that is higher.
    ///
    /// * `state` — what the compressor does
    /// * `step_s` — length of the step, s, above 0
    /// * `cabin_c` — temperature of the cabin air at the start of the step, °C
    /// * `allowed` — whether schedule and voltage let the compressor run
    #[inline(always)]
    pub fn step(
        &self,
        state: &mut CompressorState,
        step_s: f64,
        cabin_c: f64,
        allowed: bool,
    ) -> SpeedCommand {
        let was_on = state.speed > 0.0;
        let speed = if allowed {
            self.allowed_speed(state, cabin_c)
        } else {
            0.0
        };
        let is_on = speed > 0.0;
        if is_on != was_on {
            state.elapsed_s = 0.0;
        }
        state.speed = speed;
        state.elapsed_s += step_s;
        SpeedCommand {
            speed,
            started: is_on && !was_on,
        }
    }

    /// When within a span the compressor would start or stop, s from its beginning, with the temperature going straight from
    /// `now_c` to `end_c` (°C) and nothing forbidding it; none if not within the span.
    ///
    /// * `span_s` — length of the span, s, above 0
    #[must_use]
    pub fn switch_after_s(
        &self,
        state: &CompressorState,
        now_c: f64,
        end_c: f64,
        span_s: f64,
    ) -> Option<f64> {
        let off = state.speed <= 0.0;
        let (threshold_c, least_s) = if off {
            (self.start_c(), self.input.minimum_off_s)
        } else {
            (self.stop_c(), self.input.minimum_on_s)
        };
        // Turned over, stopping is a rise through its threshold like starting.
        let sign = if off { 1.0 } else { -1.0 };
        let (now_k, end_k) = (sign * (now_c - threshold_c), sign * (end_c - threshold_c));
        let crossing_s = if now_k >= 0.0 {
            0.0
        } else if end_k > 0.0 {
            span_s * now_k / (now_k - end_k)
        } else {
            return None;
        };
        let after_s = crossing_s.at_least(least_s - state.elapsed_s);
        (after_s < span_s).then_some(after_s)
    }

    /// Temperature at which the compressor starts, °C.
    #[must_use]
    pub fn start_c(&self) -> f64 {
        self.input.set_point_c + self.start_threshold_k()
    }

    /// Temperature at which it stops, °C.
    #[must_use]
    pub fn stop_c(&self) -> f64 {
        self.input.set_point_c - 0.5 * self.input.band_k
    }

    fn allowed_speed(&self, state: &CompressorState, cabin_c: f64) -> f64 {
        let half_band_k = 0.5 * self.input.band_k;
        let above_set_k = cabin_c - self.input.set_point_c;
        if state.speed <= 0.0 {
            let rested = state.elapsed_s >= self.input.minimum_off_s;
            let wanted = above_set_k >= self.start_threshold_k();
            if !(rested && wanted) {
                return 0.0;
            }
        } else {
            let may_stop = state.elapsed_s >= self.input.minimum_on_s;
            if may_stop && above_set_k <= -half_band_k {
                return 0.0;
            }
        }
        self.running_speed(state, above_set_k)
    }

    /// Speed of a compressor that runs.
    fn running_speed(&self, state: &CompressorState, above_set_k: f64) -> f64 {
        let band_k = self.input.band_k;
        match self.input.mode {
            ControlMode::OnOff => 1.0,
            ControlMode::TwoLevel { economy_fraction } => {
                let was_full = state.speed >= 1.0;
                let full_from_k = if was_full { 0.5 } else { 1.5 } * band_k;
                if above_set_k >= full_from_k {
                    1.0
                } else {
                    economy_fraction
                }
            }
            ControlMode::Variable { least_fraction } => {
                let share = 0.5 + above_set_k * self.per_band_k;
                share.clamp(least_fraction, 1.0)
            }
        }
    }

    /// Temperature above the set point at which the compressor starts, K.
    fn start_threshold_k(&self) -> f64 {
        let start_share = match self.input.mode {
            ControlMode::OnOff | ControlMode::TwoLevel { .. } => 1.0,
            ControlMode::Variable { least_fraction } => {
                least_fraction.at_least(START_SHARE_VARIABLE)
            }
        };
        (start_share - 0.5) * self.input.band_k
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn thermostat(mode: ControlMode) -> Thermostat {
        Thermostat::new(ThermostatInput {
            set_point_c: 24.0,
            band_k: 1.0,
            minimum_on_s: 120.0,
            minimum_off_s: 180.0,
            mode,
        })
        .unwrap()
    }

    #[test]
    fn on_off_keeps_its_band_and_minimum_times() {
        let thermostat = thermostat(ControlMode::OnOff);
        let mut state = CompressorState::default();
        let mut command = |cabin_c: f64| thermostat.step(&mut state, 60.0, cabin_c, true);
        assert_eq!(command(24.4).speed, 0.0);
        assert_eq!(
            command(24.5),
            SpeedCommand {
                speed: 1.0,
                started: true
            }
        );
        // One minute on: too soon to stop; two: it may.
        assert_eq!(
            command(23.0),
            SpeedCommand {
                speed: 1.0,
                started: false
            }
        );
        assert_eq!(command(23.5).speed, 0.0);
        // Off for one and two minutes: too soon; three: it may.
        assert_eq!(command(27.0).speed, 0.0);
        assert_eq!(command(27.0).speed, 0.0);
        assert!(command(27.0).started);
    }

    #[test]
    fn being_forbidden_stops_at_once_and_the_rest_is_kept() {
        let thermostat = thermostat(ControlMode::OnOff);
        let mut state = CompressorState::default();
        assert!(thermostat.step(&mut state, 10.0, 30.0, true).started);
        assert_eq!(thermostat.step(&mut state, 10.0, 30.0, false).speed, 0.0);
        let rested_after = (0..)
            .take_while(|_| !thermostat.step(&mut state, 10.0, 30.0, true).started)
            .count();
        assert_eq!(rested_after, 17);
    }

    #[test]
    fn two_levels_hand_over_with_their_own_hysteresis() {
        let thermostat = thermostat(ControlMode::TwoLevel {
            economy_fraction: 0.5,
        });
        let mut state = CompressorState::default();
        let speeds: Vec<f64> = [24.6, 25.4, 25.5, 24.9, 24.5, 24.4, 24.9, 23.6, 23.5]
            .into_iter()
            .map(|cabin_c| thermostat.step(&mut state, 60.0, cabin_c, true).speed)
            .collect();
        assert_eq!(speeds, [0.5, 0.5, 1.0, 1.0, 1.0, 0.5, 0.5, 0.5, 0.0]);
    }

    #[test]
    fn variable_speed_is_proportional_within_the_band() {
        let thermostat = thermostat(ControlMode::Variable {
            least_fraction: 0.3,
        });
        let mut state = CompressorState::default();
        let mut command = |cabin_c: f64| thermostat.step(&mut state, 60.0, cabin_c, true).speed;
        // By hand: the band begins at 23.5 °C; the compressor starts in its middle, at 24.0 °C, and then follows.
        assert_eq!(command(23.95), 0.0);
        assert!((command(24.0) - 0.5).abs() < 1e-9);
        assert!((command(23.85) - 0.35).abs() < 1e-9);
        assert!((command(24.2) - 0.7).abs() < 1e-9);
        assert_eq!(command(26.0), 1.0);
        assert!((command(23.6) - 0.3).abs() < 1e-12);
        assert_eq!(command(23.5), 0.0);
    }

    #[test]
    fn refuses_what_is_out_of_range() {
        let refused = Thermostat::new(ThermostatInput {
            set_point_c: 24.0,
            band_k: 0.0,
            minimum_on_s: 0.0,
            minimum_off_s: 0.0,
            mode: ControlMode::OnOff,
        });
        assert_eq!(refused.unwrap_err().quantity, "band_k");
    }
}
