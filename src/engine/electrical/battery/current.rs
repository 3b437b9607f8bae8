//! The current that a power asks for, and the limit that binds.

use super::BankLimit;
use crate::quantity::Bounded;

/// The current I that carries the power P at the voltage U + I R: I = 2 P / (U + √(U² + 4 R P)).
///
/// This form of the quadratic's root stays exact as R goes to zero. Infinite if no current can.
pub(super) fn current_for_power_a(open_circuit_v: f64, resistance_ohm: f64, power_w: f64) -> f64 {
    let square = open_circuit_v * open_circuit_v + 4.0 * resistance_ohm * power_w;
    if square < 0.0 {
        return f64::INFINITY;
    }
    2.0 * power_w / (open_circuit_v + square.sqrt())
}

/// The least of a wanted current and its limits, and the limit that binds.
pub(super) fn least(wanted_a: f64, limits: &[(f64, BankLimit)]) -> (f64, Option<BankLimit>) {
    let mut result = (wanted_a, None);
    for &(current_a, limit) in limits {
        if current_a < result.0 {
            result = (current_a, Some(limit));
        }
    }
    result
}

/// What bounds the current of a step of charging.
pub(super) struct ChargeLimits {
    /// The greatest current, A.
    pub(super) current_a: f64,
    /// How far the voltage may rise above that of the open circuit, V, and the resistance across which it does, Ω.
    pub(super) rise_v: f64,
    pub(super) resistance_ohm: f64,
    /// Charge to full, Ah, and the time over which what diffuses would fill it, h. Diffusion makes the accepted current die away
    /// towards full more slowly than the resistance alone would.
    pub(super) to_full_ah: f64,
    pub(super) taper_h: f64,
    /// Charge to the ceiling, Ah, and the time that a current stores in this step, h.
    pub(super) room_ah: f64,
    pub(super) stored_h: f64,
}

impl ChargeLimits {
    /// Whether a current is below all of them: by products, which is faster than to divide for the limits themselves.
    #[inline(always)]
    pub(super) fn allow(&self, wanted_a: f64) -> bool {
        wanted_a <= self.current_a
            && wanted_a * self.resistance_ohm <= self.rise_v
            && wanted_a * self.taper_h <= self.to_full_ah
            && wanted_a * self.stored_h <= self.room_ah
    }

    /// The least of a wanted current and the limits, and the limit that binds.
    #[inline(always)]
    pub(super) fn least(&self, wanted_a: f64) -> (f64, Option<BankLimit>) {
        let held_a = (self.rise_v / self.resistance_ohm).at_most(self.to_full_ah / self.taper_h);
        least(
            wanted_a,
            &[
                (self.current_a, BankLimit::ChargeCurrent),
                (held_a, BankLimit::ChargeVoltage),
                (self.room_ah / self.stored_h, BankLimit::Full),
            ],
        )
    }
}
