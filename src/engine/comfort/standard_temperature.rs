//! Standard effective temperature: the still, half-humid air that a body would find alike.
//!
//! The two-node model follows core and skin of a standing person of 70 kg for an hour, with sweat,
//! blood flow and shivering, then asks which standard room would take the same heat from that skin
//! at the same wetness. It takes moving air and humidity into account, which the mean vote hardly
//! does, so it is what to judge fans by. Sea-level pressure is taken: at 2 000 m the result shifts by a
//! few tenths of a kelvin.
//!
//! The computation takes some tens of microseconds; it is meant for summaries, not for every step.
//!
//! Source: Gagge, Fobelets & Berglund, ASHRAE Trans. 92 (1986) 709, with the coefficients of ASHRAE
//! 55-2020 normative appendix D (from memory; checked against values of an independent code).

use super::ThermalState;
use crate::quantity::{Bounded, STEFAN_BOLTZMANN_W_M2_K4, ZERO_CELSIUS_K};

/// Heat of one met, W/m² (ASHRAE 55).
const HEAT_PER_MET_W_M2: f64 = 58.2;

/// Thermal resistance of one clo, m² K/W (ASHRAE 55).
const RESISTANCE_PER_CLO_M2_K_W: f64 = 0.155;

/// Body mass, kg, and surface, m², of the model's person.
const BODY: (f64, f64) = (70.0, 1.8258);

/// Specific heat of the body, Wh/(kg K).
const BODY_HEAT_CAPACITY_WH_KG_K: f64 = 0.97;

/// Temperatures of skin and core at which no regulation acts, °C.
const NEUTRAL_SKIN_C: f64 = 33.7;
const NEUTRAL_CORE_C: f64 = 36.8;

/// Blood flow to the skin: at neutral, least and greatest, L/(m² h).
const BLOOD_FLOW_NEUTRAL: f64 = 6.3;
const BLOOD_FLOW_RANGE: (f64, f64) = (0.5, 90.0);

/// Drive of dilation, constriction (1/K) and sweating (g/(m² h K)).
const DRIVE_DILATION: f64 = 120.0;
const DRIVE_CONSTRICTION: f64 = 0.5;
const DRIVE_SWEATING: f64 = 170.0;

/// Greatest sweat rate, g/(m² h), and latent heat of sweat, Wh/g.
const SWEAT_GREATEST: f64 = 500.0;
const LATENT_HEAT_SWEAT_WH_G: f64 = 0.68;

/// Lewis ratio at sea level, K/mmHg.
const LEWIS_RATIO_K_MMHG: f64 = 2.2;

/// Emissivity of clothing and share of the surface of a standing body that radiates.
const EMISSIVITY: f64 = 0.95;
const RADIATING_SHARE: f64 = 0.73;

/// Efficiency with which clothing passes vapour.
const PERMEATION_CLOTHED: f64 = 0.45;

/// Minutes that the body is followed.
const MINUTES: usize = 60;

/// Greatest number of iterations of the clothing temperature and of the final search.
const ITERATIONS_GREATEST: usize = 150;

/// Surroundings as the body meets them, with convection and clothing settled.
struct Surroundings<'state> {
    state: &'state ThermalState,
    vapour_mmhg: f64,
    convection_w_m2_k: f64,
    clothing_resistance_m2_k_w: f64,
    clothing_area_factor: f64,
    permeation: f64,
    wettedness_greatest: f64,
}

/// Body after some minutes.
struct Body {
    skin_c: f64,
    core_c: f64,
    skin_mass_share: f64,
    blood_flow: f64,
    metabolic_w_m2: f64,
    evaporation_w_m2: f64,
    sensible_w_m2: f64,
    wettedness: f64,
    radiation_w_m2_k: f64,
}

/// Gives the standard effective temperature, °C.
///
/// Solves Q = h_S (t_sk − SET) + w h_Se (p_sk − 0.5 p(SET)) for SET, with Q the heat that leaves the
/// skin after an hour, w its wettedness, p_sk its vapour pressure and h_S, h_Se the coefficients of the
/// standard room.
///
/// * `state` — climate and body, within the ranges stated at [`ThermalState`]
///
/// Source: ASHRAE 55-2020, normative appendix D (from memory).
#[must_use]
pub fn standard_effective_temperature_c(state: &ThermalState) -> f64 {
    let surroundings = Surroundings::new(state);
    let mut body = Body::neutral(state);
    for _ in 0..MINUTES {
        body.advance_minute(&surroundings);
    }
    standard_room_c(state, &body)
}

impl<'state> Surroundings<'state> {
    fn new(state: &'state ThermalState) -> Self {
        let speed_m_s = state.air_speed_m_s.at_least(0.1);
        let clothed = state.clothing_clo > 0.0;
        let (wettedness_factor, wettedness_exponent) = if clothed {
            (0.59, -0.08)
        } else {
            (0.38, -0.29)
        };
        Self {
            state,
            vapour_mmhg: state.relative_humidity * saturation_mmhg(state.dry_bulb_c),
            convection_w_m2_k: still_convection_w_m2_k(state.metabolic_rate_met)
                .at_least(8.600_001 * libm::pow(speed_m_s, 0.53)),
            clothing_resistance_m2_k_w: RESISTANCE_PER_CLO_M2_K_W * state.clothing_clo,
            clothing_area_factor: 1.0 + 0.15 * state.clothing_clo,
            permeation: if clothed { PERMEATION_CLOTHED } else { 1.0 },
            wettedness_greatest: wettedness_factor * libm::pow(speed_m_s, wettedness_exponent),
        }
    }
}

impl Body {
    fn neutral(state: &ThermalState) -> Self {
        Self {
            skin_c: NEUTRAL_SKIN_C,
            core_c: NEUTRAL_CORE_C,
            skin_mass_share: 0.1,
            blood_flow: BLOOD_FLOW_NEUTRAL,
            metabolic_w_m2: state.metabolic_rate_met * HEAT_PER_MET_W_M2,
            evaporation_w_m2: 0.1 * state.metabolic_rate_met,
            sensible_w_m2: 0.0,
            wettedness: 0.0,
            radiation_w_m2_k: 4.7,
        }
    }

    /// Moves core and skin on by a minute and lets sweat, blood flow and shivering answer.
    fn advance_minute(&mut self, surroundings: &Surroundings) {
        let state = surroundings.state;
        let metabolic_rest_w_m2 = state.metabolic_rate_met * HEAT_PER_MET_W_M2;
        self.lose_sensible_heat(surroundings);
        let breath_w_m2 = 0.0023 * metabolic_rest_w_m2 * (44.0 - surroundings.vapour_mmhg)
            + 0.0014 * metabolic_rest_w_m2 * (34.0 - state.dry_bulb_c);
        let conductance_w_m2_k = 5.28 + 1.163 * self.blood_flow;
        let core_to_skin_w_m2 = (self.core_c - self.skin_c) * conductance_w_m2_k;
        let core_gain_w_m2 = self.metabolic_w_m2 - core_to_skin_w_m2 - breath_w_m2;
        let skin_gain_w_m2 = core_to_skin_w_m2 - self.sensible_w_m2 - self.evaporation_w_m2;
        let (mass_kg, surface_m2) = BODY;
        let minute_factor = surface_m2 / (60.0 * BODY_HEAT_CAPACITY_WH_KG_K * mass_kg);
        self.skin_c += skin_gain_w_m2 * minute_factor / self.skin_mass_share;
        self.core_c += core_gain_w_m2 * minute_factor / (1.0 - self.skin_mass_share);
        self.regulate(surroundings, metabolic_rest_w_m2);
    }

    /// Sensible heat from the skin through clothing whose temperature is iterated with its radiation.
    fn lose_sensible_heat(&mut self, surroundings: &Surroundings) {
        let state = surroundings.state;
        let clothing_m2_k_w = surroundings.clothing_resistance_m2_k_w;
        let layer = |radiation_w_m2_k: f64| {
            let total_w_m2_k = radiation_w_m2_k + surroundings.convection_w_m2_k;
            let operative_c = (radiation_w_m2_k * state.mean_radiant_c
                + surroundings.convection_w_m2_k * state.dry_bulb_c)
                / total_w_m2_k;
            let air_m2_k_w = 1.0 / (surroundings.clothing_area_factor * total_w_m2_k);
            (operative_c, air_m2_k_w)
        };
        let skin_c = self.skin_c;
        let surface_c = |(operative_c, air_m2_k_w): (f64, f64)| {
            (air_m2_k_w * skin_c + clothing_m2_k_w * operative_c) / (air_m2_k_w + clothing_m2_k_w)
        };
        let mut clothing_c = surface_c(layer(self.radiation_w_m2_k));
        for _ in 0..ITERATIONS_GREATEST {
            let mean_k = f64::midpoint(clothing_c, state.mean_radiant_c) + ZERO_CELSIUS_K;
            self.radiation_w_m2_k = 4.0
                * EMISSIVITY
                * STEFAN_BOLTZMANN_W_M2_K4
                * (mean_k * mean_k * mean_k)
                * RADIATING_SHARE;
            let next_c = surface_c(layer(self.radiation_w_m2_k));
            let change_k = (next_c - clothing_c).abs();
            clothing_c = next_c;
            if change_k <= 0.01 {
                break;
            }
        }
        let (operative_c, air_m2_k_w) = layer(self.radiation_w_m2_k);
        self.sensible_w_m2 = (self.skin_c - operative_c) / (air_m2_k_w + clothing_m2_k_w);
    }

    /// Blood flow, sweat and shivering by how far skin, core and body are from neutral.
    fn regulate(&mut self, surroundings: &Surroundings, metabolic_rest_w_m2: f64) {
        let body_c =
            self.skin_mass_share * self.skin_c + (1.0 - self.skin_mass_share) * self.core_c;
        let neutral_body_c = 0.1 * NEUTRAL_SKIN_C + 0.9 * NEUTRAL_CORE_C;
        let skin_warm_k = (self.skin_c - NEUTRAL_SKIN_C).at_least(0.0);
        let skin_cold_k = (NEUTRAL_SKIN_C - self.skin_c).at_least(0.0);
        let core_warm_k = (self.core_c - NEUTRAL_CORE_C).at_least(0.0);
        let core_cold_k = (NEUTRAL_CORE_C - self.core_c).at_least(0.0);
        let body_warm_k = (body_c - neutral_body_c).at_least(0.0);
        self.blood_flow = ((BLOOD_FLOW_NEUTRAL + DRIVE_DILATION * core_warm_k)
            / (1.0 + DRIVE_CONSTRICTION * skin_cold_k))
            .clamp(BLOOD_FLOW_RANGE.0, BLOOD_FLOW_RANGE.1);
        let sweat_g_m2_h =
            (DRIVE_SWEATING * body_warm_k * libm::exp(skin_warm_k / 10.7)).at_most(SWEAT_GREATEST);
        self.evaporate(surroundings, LATENT_HEAT_SWEAT_WH_G * sweat_g_m2_h);
        self.metabolic_w_m2 = metabolic_rest_w_m2 + 19.4 * skin_cold_k * core_cold_k;
        self.skin_mass_share = 0.041_773_7 + 0.745_183_3 / (self.blood_flow + 0.585_417);
    }

    /// Evaporation of sweat and through the skin, limited by what the air takes up.
    fn evaporate(&mut self, surroundings: &Surroundings, sweat_w_m2: f64) {
        let air = 1.0
            / (LEWIS_RATIO_K_MMHG
                * surroundings.clothing_area_factor
                * surroundings.convection_w_m2_k);
        let clothing = surroundings.clothing_resistance_m2_k_w
            / (LEWIS_RATIO_K_MMHG * surroundings.permeation);
        let greatest_w_m2 =
            (saturation_mmhg(self.skin_c) - surroundings.vapour_mmhg) / (air + clothing);
        if greatest_w_m2 <= 0.0 {
            self.wettedness = surroundings.wettedness_greatest;
            self.evaporation_w_m2 = 0.0;
            return;
        }
        let sweat_share = sweat_w_m2 / greatest_w_m2;
        self.wettedness = 0.06 + 0.94 * sweat_share;
        self.evaporation_w_m2 = self.wettedness * greatest_w_m2;
        if self.wettedness > surroundings.wettedness_greatest {
            self.wettedness = surroundings.wettedness_greatest;
            let share = surroundings.wettedness_greatest / 0.94;
            self.evaporation_w_m2 = (share + 0.06 * (1.0 - share)) * greatest_w_m2;
        }
    }
}

/// The standard room that takes the same heat from the same skin, °C (secant search).
fn standard_room_c(state: &ThermalState, body: &Body) -> f64 {
    let heat_w_m2 = body.sensible_w_m2 + body.evaporation_w_m2;
    let skin_mmhg = saturation_mmhg(body.skin_c);
    let (sensible_w_m2_k, latent_w_m2_mmhg) = standard_room_coefficients(state, body);
    let surplus_w_m2 = |room_c: f64| {
        heat_w_m2
            - sensible_w_m2_k * (body.skin_c - room_c)
            - body.wettedness * latent_w_m2_mmhg * (skin_mmhg - 0.5 * saturation_mmhg(room_c))
    };
    let mut room_c = body.skin_c - heat_w_m2 / sensible_w_m2_k;
    for _ in 0..ITERATIONS_GREATEST {
        let here = surplus_w_m2(room_c);
        let slope = (surplus_w_m2(room_c + 1e-4) - here) / 1e-4;
        let change_k = here / slope;
        room_c -= change_k;
        if change_k.abs() <= 1e-3 {
            break;
        }
    }
    room_c
}

/// Sensible, W/(m² K), and latent, W/(m² mmHg), coefficients of a body in the standard room.
fn standard_room_coefficients(state: &ThermalState, body: &Body) -> (f64, f64) {
    let convection_w_m2_k = still_convection_w_m2_k(state.metabolic_rate_met);
    let total_w_m2_k = convection_w_m2_k + body.radiation_w_m2_k;
    let clothing_clo = 1.52 / (state.metabolic_rate_met + 0.6944) - 0.1835;
    let clothing_m2_k_w = RESISTANCE_PER_CLO_M2_K_W * clothing_clo;
    let area_factor = 1.0 + 0.25 * clothing_clo;
    let efficiency =
        1.0 / (1.0 + RESISTANCE_PER_CLO_M2_K_W * area_factor * total_w_m2_k * clothing_clo);
    let convective_share = convection_w_m2_k / total_w_m2_k;
    let permeation = PERMEATION_CLOTHED * convective_share * (1.0 - efficiency)
        / (convective_share - efficiency * PERMEATION_CLOTHED);
    let sensible = 1.0 / (1.0 / (area_factor * total_w_m2_k) + clothing_m2_k_w);
    let latent = 1.0
        / (1.0 / (LEWIS_RATIO_K_MMHG * area_factor * convection_w_m2_k)
            + clothing_m2_k_w / (LEWIS_RATIO_K_MMHG * permeation));
    (sensible, latent)
}

/// Convection of a body in air that only it stirs, W/(m² K).
fn still_convection_w_m2_k(metabolic_rate_met: f64) -> f64 {
    if metabolic_rate_met <= 0.85 {
        return 3.0;
    }
    (5.66 * libm::pow(metabolic_rate_met - 0.85, 0.39)).at_least(3.0)
}

/// Saturation pressure in the form that the model is published with, mmHg.
fn saturation_mmhg(temperature_c: f64) -> f64 {
    libm::exp(18.6686 - 4030.183 / (temperature_c + 235.0))
}
