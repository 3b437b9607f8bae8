//! The current that a power asks for, and the limit that binds.

use super::BankLimit;

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
