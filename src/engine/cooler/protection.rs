//! Low-voltage cut-out: keeps a compressor from draining or stalling on a weak bank.
//!
//! The voltage has to stay below the threshold for the whole delay before the unit is cut out, so that
//! the dip of a start does not trip it. It comes back once the voltage has recovered. Usual values at
//! 12 V are 10.5…11.5 V, recovery 12…13 V (common practice, no source).

use crate::validity::{OutOfRange, require_within};

/// A low-voltage cut-out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LowVoltageCutOut {
    cut_out_voltage_v: f64,
    recovery_voltage_v: f64,
    delay_s: f64,
}

/// What a cut-out remembers.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CutOutState {
    /// Time spent below the threshold, s.
    pub below_s: f64,
    /// Whether the unit is cut out.
    pub cut_out: bool,
}

impl LowVoltageCutOut {
    /// Builds a cut-out.
    ///
    /// * `cut_out_voltage_v` — threshold, V, 5…100
    /// * `recovery_voltage_v` — voltage at which the unit may run again, V, from the threshold to 100
    /// * `delay_s` — time below the threshold before it trips, s, 0…3 600
    ///
    /// # Errors
    /// [`OutOfRange`] if an argument lies outside its range.
    pub fn new(
        cut_out_voltage_v: f64,
        recovery_voltage_v: f64,
        delay_s: f64,
    ) -> Result<Self, OutOfRange> {
        require_within("cut_out_voltage_v", cut_out_voltage_v, 5.0, 100.0)?;
        require_within(
            "recovery_voltage_v",
            recovery_voltage_v,
            cut_out_voltage_v,
            100.0,
        )?;
        require_within("delay_s", delay_s, 0.0, 3_600.0)?;
        Ok(Self {
            cut_out_voltage_v,
            recovery_voltage_v,
            delay_s,
        })
    }

    /// Whether a voltage, V at the terminals and however long, leaves a state as it is.
    #[must_use]
    pub fn rests_at(&self, state: &CutOutState, terminal_voltage_v: f64) -> bool {
        *state == CutOutState::default() && terminal_voltage_v >= self.cut_out_voltage_v
    }

    /// Takes in the voltage of a step and says whether the unit may run after it.
    ///
    /// * `state` — what the cut-out remembers
    /// * `step_s` — length of the step, s, above 0
    /// * `terminal_voltage_v` — mean terminal voltage over the step, V
    #[must_use]
    pub fn step(&self, state: &mut CutOutState, step_s: f64, terminal_voltage_v: f64) -> bool {
        if state.cut_out {
            state.cut_out = terminal_voltage_v < self.recovery_voltage_v;
            state.below_s = 0.0;
            return !state.cut_out;
        }
        if terminal_voltage_v >= self.cut_out_voltage_v {
            state.below_s = 0.0;
            return true;
        }
        state.below_s += step_s;
        state.cut_out = state.below_s >= self.delay_s;
        !state.cut_out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn trips_after_the_delay_and_comes_back_at_recovery() {
        let cut_out = LowVoltageCutOut::new(11.0, 12.4, 30.0).unwrap();
        let mut state = CutOutState::default();
        let mut step = |voltage_v: f64| cut_out.step(&mut state, 10.0, voltage_v);
        assert!(step(10.9) && step(10.9));
        // A moment above the threshold starts the delay afresh.
        assert!(step(11.0));
        assert!(step(10.9) && step(10.9));
        assert!(!step(10.9));
        assert!(!step(12.3));
        assert!(step(12.4));
    }

    #[test]
    fn rests_only_where_a_step_changes_nothing() {
        let cut_out = LowVoltageCutOut::new(11.0, 12.4, 30.0).unwrap();
        for (below_s, is_cut_out) in [(0.0, false), (10.0, false), (0.0, true)] {
            for voltage_v in [10.9, 11.0, 12.4] {
                let before = CutOutState {
                    below_s,
                    cut_out: is_cut_out,
                };
                let mut after = before;
                let may_run = cut_out.step(&mut after, 10.0, voltage_v);
                let rests = may_run && after == before;
                assert_eq!(cut_out.rests_at(&before, voltage_v), rests);
            }
        }
    }

    #[test]
    fn without_delay_trips_at_once() {
        let cut_out = LowVoltageCutOut::new(11.0, 12.4, 0.0).unwrap();
        assert!(!cut_out.step(&mut CutOutState::default(), 10.0, 10.9));
    }

    #[test]
    fn refuses_a_recovery_below_the_threshold() {
        assert!(LowVoltageCutOut::new(11.0, 10.9, 0.0).is_err());
    }
}
