//! Fuses and breakers: standard ratings, and what they must be able to break.
//!
//! A device belongs at the source, within 7 in (0.18 m) of it along the conductor, or within 40 in (1.02 m) where the conductor is
//! sheathed over that length (33 CFR 183.455(b), read in the published text).

/// Standard ratings up to 600 A (NEC 240.6(A), read in a transcription), A.
pub const STANDARD_RATINGS_A: [f64; 30] = [
    1.0, 3.0, 6.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 70.0, 80.0, 90.0,
    100.0, 110.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0, 300.0, 350.0, 400.0, 450.0, 500.0,
    600.0,
];

/// By how much conductor and fuse have to exceed a current that flows for three hours or more (NEC 210.20 and 215.3, from memory).
pub const CONTINUOUS_FACTOR: f64 = 1.25;

/// Short-circuit currents that devices are commonly made to break, A: the first three from an older table of ABYC E-11, all
/// quoted second-hand.
const BREAKING_CLASSES_A: [f64; 5] = [1_500.0, 3_000.0, 5_000.0, 10_000.0, 20_000.0];

/// Capacity above which each battery in parallel wants a device of its own (ABYC E-11, July 2025, quoted second-hand), Ah.
pub const DEVICE_PER_BATTERY_ABOVE_AH: f64 = 500.0;

/// The least standard rating not below a current, A; none above 600 A.
///
/// * `current_a` — A
#[must_use]
pub fn rating_at_least_a(current_a: f64) -> Option<f64> {
    STANDARD_RATINGS_A
        .into_iter()
        .find(|rating_a| *rating_a >= current_a)
}

/// The current that a bank drives into a dead short at its terminals, A: I = U / R.
///
/// * `open_circuit_v` — U, V
/// * `resistance_ohm` — R of the whole bank, Ω, above 0
#[must_use]
pub fn short_circuit_a(open_circuit_v: f64, resistance_ohm: f64) -> f64 {
    open_circuit_v / resistance_ohm
}

/// The least common class of device that breaks a short-circuit current, A; none above 20 000 A.
///
/// * `short_circuit_a` — A
#[must_use]
pub fn breaking_class_a(short_circuit_a: f64) -> Option<f64> {
    BREAKING_CLASSES_A
        .into_iter()
        .find(|class_a| *class_a >= short_circuit_a)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_next_standard_rating_is_taken() {
        assert_eq!(rating_at_least_a(83.4), Some(90.0));
        assert_eq!(rating_at_least_a(100.0), Some(100.0));
        assert_eq!(rating_at_least_a(600.1), None);
    }

    #[test]
    fn a_lithium_bank_of_two_milliohms_needs_ten_kiloamperes() {
        // By hand: 13.4 V / 2 mΩ = 6 700 A.
        let short_a = short_circuit_a(13.4, 0.002);
        assert!((short_a - 6_700.0).abs() < 1e-9);
        assert_eq!(breaking_class_a(short_a), Some(10_000.0));
        assert_eq!(breaking_class_a(30_000.0), None);
    }
}
