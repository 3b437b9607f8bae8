//! Outdoor air through leaks and through opened windows.

use crate::quantity::{Bounded, GRAVITY_M_S2};

/// Stack coefficient of a one-storey enclosure, (L/s)²/(cm⁴ K): ASHRAE Fundamentals ch. 16 table 4.
const STACK_COEFFICIENT: f64 = 0.000_145;

/// Wind coefficient of an exposed one-storey enclosure (shelter class 1), (L/s)²/(cm⁴ (m/s)²): ASHRAE Fundamentals ch. 16.
const WIND_COEFFICIENT: f64 = 0.000_319;

/// Height of the one-storey enclosure for which the stack coefficient holds, m: ASHRAE Fundamentals ch. 16.
const STACK_REFERENCE_HEIGHT_M: f64 = 2.5;

const CM2_PER_M2: f64 = 1e4;
const M3_PER_LITRE: f64 = 1e-3;

/// Flow through leaks, m³/s: Q = A √(Cs ΔT + Cw U²), the basic model of ASHRAE Fundamentals ch. 16 eq. 48 (Sherman &
/// Grimsrud 1980).
///
/// `leakage_area_m2` effective area, zero or more; `height_m` of the cabin, by which the stack term scales;
/// `temperature_difference_k` of either sign; `wind_speed_m_s` at the station, zero or more.
#[must_use]
pub fn leakage_flow_m3_s(
    leakage_area_m2: f64,
    height_m: f64,
    temperature_difference_k: f64,
    wind_speed_m_s: f64,
) -> f64 {
    let stack =
        STACK_COEFFICIENT * height_m / STACK_REFERENCE_HEIGHT_M * temperature_difference_k.abs();
    let wind = WIND_COEFFICIENT * wind_speed_m_s * wind_speed_m_s;
    leakage_area_m2 * CM2_PER_M2 * (stack + wind).sqrt() * M3_PER_LITRE
}

/// Effectiveness of an opening to diagonal winds: ASHRAE Fundamentals ch. 16 eq. 37, 0.25 to 0.35.
const WIND_EFFECTIVENESS: f64 = 0.3;

/// Discharge coefficient of a two-way opening: ASHRAE Fundamentals ch. 16 eq. 38 and 39, 0.40 + 0.0045 ΔT, taken at ΔT 0.
const DISCHARGE_COEFFICIENT: f64 = 0.40;

/// Share of the cabin's height between the openings and the neutral level: half, for one level of openings.
const STACK_HEIGHT_SHARE: f64 = 0.5;

/// Flow through opened windows and hatches, m³/s: wind Cv A U and stack Cd A √(2 g Δh ΔT/T), added as squares, ASHRAE
/// Fundamentals ch. 16 eqs. 37, 38 and 49.
///
/// `opening_area_m2` free area, zero or more; `height_m` of the cabin; both temperatures in °C; `wind_speed_m_s` at the
/// opening, zero or more.
#[must_use]
pub fn opening_flow_m3_s(
    opening_area_m2: f64,
    height_m: f64,
    cabin_c: f64,
    outdoor_c: f64,
    wind_speed_m_s: f64,
) -> f64 {
    let wind = WIND_EFFECTIVENESS * opening_area_m2 * wind_speed_m_s;
    let warmer_k = crate::quantity::kelvin_from_celsius(cabin_c.at_least(outdoor_c));
    let head =
        2.0 * GRAVITY_M_S2 * STACK_HEIGHT_SHARE * height_m * (cabin_c - outdoor_c).abs() / warmer_k;
    let stack = DISCHARGE_COEFFICIENT * opening_area_m2 * head.sqrt();
    (wind * wind + stack * stack).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn forty_square_centimetres_by_hand() {
        // 40 · √(0.000145·(2.5/2.5)·10 + 0.000319·9) = 40 · √0.004321 = 2.629 L/s.
        let flow = leakage_flow_m3_s(0.004, 2.5, 10.0, 3.0);
        assert!((flow - 0.002_629).abs() < 1e-6);
    }

    #[test]
    fn no_difference_and_no_wind_move_no_air() {
        assert_eq!(leakage_flow_m3_s(0.004, 1.9, 0.0, 0.0), 0.0);
        assert_eq!(opening_flow_m3_s(0.2, 1.9, 30.0, 30.0, 0.0), 0.0);
    }

    #[test]
    fn an_open_side_door_moves_far_more_than_leaks() {
        let open = opening_flow_m3_s(0.5, 1.9, 32.0, 30.0, 2.0);
        assert!(open > 20.0 * leakage_flow_m3_s(0.004, 1.9, 2.0, 2.0));
    }
}
