//! Predicted mean vote and predicted percentage dissatisfied.
//!
//! A whole body in balance with its surroundings at rest; external work is nil. ISO 7730 gives its
//! range as −2…2 on the scale of votes, 10…30 °C air, 10…40 °C mean radiant, up to 1 m/s, 0.8…4 met and
//! 0…2 clo. Beyond it the equations stay finite but say only that it is far from comfortable.
//!
//! Source: ISO 7730:2005, equations 1 to 5 and the program of annex D (from memory).

use super::ThermalState;
use crate::quantity::Bounded;

/// Heat of one met, W/m² (ISO 7730:2005; ASHRAE 55 rounds to 58.2).
const HEAT_PER_MET_W_M2: f64 = 58.15;

/// Thermal resistance of one clo, m² K/W (ISO 7730:2005).
const RESISTANCE_PER_CLO_M2_K_W: f64 = 0.155;

/// Radiation coefficient of a clothed body, W/(m² (100 K)⁴) (ISO 7730:2005, eq. 1).
const RADIATION_COEFFICIENT_W_M2_HUNDRED_K4: f64 = 3.96;

/// Change of clothing temperature at which the iteration stops, hundredths of K (annex D: 0.00015).
const CLOTHING_TOLERANCE_HUNDRED_K: f64 = 1.5e-4;

/// Kelvin at 0 °C as the standard's program rounds it; its 308.7 K (35.7 °C) holds the same rounding.
const ZERO_CELSIUS_ROUNDED_K: f64 = 273.0;

/// Greatest number of iterations (annex D).
const ITERATIONS_GREATEST: usize = 150;

/// How a group of people finds a climate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeanVote {
    /// Predicted mean vote, from −3 (cold) over 0 (neutral) to 3 (hot).
    pub predicted_mean_vote: f64,
    /// Share of people dissatisfied, 0.05…1.
    pub predicted_dissatisfied_fraction: f64,
}

/// Gives the predicted mean vote and the share of people dissatisfied.
///
/// PMV = (0.303 e^(−0.036 M) + 0.028) L, with M the metabolic rate (W/m²) and L what the body
/// would have to lose besides skin diffusion, sweat, breath, radiation and convection;
/// PPD = 1 − 0.95 exp(−0.03353 PMV⁴ − 0.2179 PMV²).
///
/// * `state` — climate and body, within the ranges stated at [`ThermalState`]
///
/// Source: ISO 7730:2005, eq. 1 to 5.
#[must_use]
pub fn mean_vote(state: &ThermalState) -> MeanVote {
    let metabolic_w_m2 = HEAT_PER_MET_W_M2 * state.metabolic_rate_met;
    let vapour_pa = state.relative_humidity * vapour_pressure_saturated_pa(state.dry_bulb_c);
    let surface = clothing_surface(state, metabolic_w_m2);
    let diffusion_w_m2 = 3.05e-3 * (5733.0 - 6.99 * metabolic_w_m2 - vapour_pa);
    let sweat_w_m2 = (0.42 * (metabolic_w_m2 - HEAT_PER_MET_W_M2)).at_least(0.0);
    let breath_latent_w_m2 = 1.7e-5 * metabolic_w_m2 * (5867.0 - vapour_pa);
    let breath_dry_w_m2 = 0.0014 * metabolic_w_m2 * (34.0 - state.dry_bulb_c);
    let load_w_m2 = metabolic_w_m2
        - diffusion_w_m2
        - sweat_w_m2
        - breath_latent_w_m2
        - breath_dry_w_m2
        - surface.radiation_w_m2
        - surface.convection_w_m2;
    let sensitivity = 0.303 * libm::exp(-0.036 * metabolic_w_m2) + 0.028;
    let vote = sensitivity * load_w_m2;
    let square = vote * vote;
    MeanVote {
        predicted_mean_vote: vote,
        predicted_dissatisfied_fraction: 1.0
            - 0.95 * libm::exp(-0.033_53 * square * square - 0.2179 * square),
    }
}

struct ClothingSurface {
    radiation_w_m2: f64,
    convection_w_m2: f64,
}

/// Solves the temperature of the clothing by the iteration of ISO 7730 annex D.
fn clothing_surface(state: &ThermalState, metabolic_w_m2: f64) -> ClothingSurface {
    let resistance_m2_k_w = RESISTANCE_PER_CLO_M2_K_W * state.clothing_clo;
    let area_factor = if resistance_m2_k_w <= 0.078 {
        1.0 + 1.29 * resistance_m2_k_w
    } else {
        1.05 + 0.645 * resistance_m2_k_w
    };
    let forced_w_m2_k = 12.1 * state.air_speed_m_s.at_least(0.0).sqrt();
    let air_k = state.dry_bulb_c + ZERO_CELSIUS_ROUNDED_K;
    let radiant_hundred_k = (state.mean_radiant_c + ZERO_CELSIUS_ROUNDED_K) / 100.0;
    let radiant_fourth = fourth_power(radiant_hundred_k);

    let insulation = resistance_m2_k_w * area_factor;
    let radiant_factor = insulation * RADIATION_COEFFICIENT_W_M2_HUNDRED_K4;
    let convective_factor = insulation * 100.0;
    let air_factor = insulation * air_k;
    let constant = 308.7 - 0.028 * metabolic_w_m2 + radiant_factor * radiant_fourth;

    let first_guess_k =
        air_k + (35.5 - state.dry_bulb_c) / (3.5 * (6.45 * resistance_m2_k_w + 0.1));
    let mut solved = first_guess_k / 100.0;
    let mut tried = first_guess_k / 50.0;
    let mut convection_w_m2_k = forced_w_m2_k;
    for _ in 0..ITERATIONS_GREATEST {
        if (solved - tried).abs() <= CLOTHING_TOLERANCE_HUNDRED_K {
            break;
        }
        tried = f64::midpoint(tried, solved);
        let natural_w_m2_k = 2.38 * (100.0 * tried - air_k).abs().sqrt().sqrt();
        convection_w_m2_k = forced_w_m2_k.at_least(natural_w_m2_k);
        solved = (constant + air_factor * convection_w_m2_k - radiant_factor * fourth_power(tried))
            / (100.0 + convective_factor * convection_w_m2_k);
    }
    let clothing_c = 100.0 * solved - ZERO_CELSIUS_ROUNDED_K;
    ClothingSurface {
        radiation_w_m2: RADIATION_COEFFICIENT_W_M2_HUNDRED_K4
            * area_factor
            * (fourth_power(solved) - radiant_fourth),
        convection_w_m2: area_factor * convection_w_m2_k * (clothing_c - state.dry_bulb_c),
    }
}

/// Saturation pressure as the standard's program has it, Pa (ISO 7730:2005, annex D).
///
/// The votes of the standard were computed with this form, so the engine's own is not used here.
fn vapour_pressure_saturated_pa(dry_bulb_c: f64) -> f64 {
    1000.0 * libm::exp(16.6536 - 4030.183 / (dry_bulb_c + 235.0))
}

fn fourth_power(value: f64) -> f64 {
    let square = value * value;
    square * square
}
