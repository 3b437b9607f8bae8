//! Everything that is frozen in an interval: what surroundings and present state make of it, and the factored matrix.

use super::boundary::Boundary;
use super::chain::{BENEATH, INNER, OUTER};
use super::faces::Met;
use super::network::Cabin;
use super::strip::{Row, STRIPS, Strip, StripMatrix, lane_of, strip_of, sum_of};
use crate::air;
use crate::envelope::convection::moving_air_term;
use crate::quantity::Bounded;

/// How far below the coldest surface the limit is taken under which nothing condenses, K.
const DRY_MARGIN_K: f64 = 1.0;

/// Everything that is frozen in an interval.
#[derive(Clone, Debug, Default)]
pub(super) struct Coefficients {
    pub(super) step_s: f64,
    pub(super) theta: f64,
    /// 1/θ, and the share 1 − 1/θ of itself that a temperature keeps over a step.
    pub(super) per_theta: f64,
    pub(super) kept: f64,
    /// Temperature of each inner node for each watt from the cabin, K/W.
    pub(super) inverse_inner: Row,
    pub(super) to_air: Row,
    pub(super) to_star: Row,
    /// What each outer face exchanges, W/K, and what it would take in at 0 °C, sun included, W.
    pub(super) outer_conductance: Row,
    pub(super) outer_forcing: Row,
    pub(super) inner_sun: Row,
    pub(super) exchange_w_k: f64,
    pub(super) outdoor_c: f64,
    pub(super) flow_shares: [f64; 3],
    pub(super) air_capacity_j_k: f64,
    pub(super) air_carry: f64,
    pub(super) inverse: [[f64; 2]; 2],
    /// Heat that lowers the air by a kelvin within a step, W/K.
    pub(super) air_w_k: f64,
}

impl Cabin {
    pub(super) fn set_outer(&mut self, boundary: &Boundary<'_>) {
        let forced_w_m2_k = self.wind.under(boundary, &self.elements);
        let now = &mut self.now;
        for (strip, state) in self.chains[..self.used].iter().enumerate() {
            let met = Met {
                forced_w_m2_k: strip_of(forced_w_m2_k, strip),
                sun_w: strip_of(&boundary.sun.absorbed_outside_w, strip),
            };
            let surface_c = state.temperature[OUTER];
            (now.outer_conductance[strip], now.outer_forcing[strip]) =
                self.outer[strip].exchange(surface_c, boundary, &met);
        }
    }

    pub(super) fn set_inner(&mut self, boundary: &Boundary<'_>) {
        if boundary.stirred_m3_s != self.stirred_m3_s {
            self.stirred_m3_s = boundary.stirred_m3_s;
            self.moving_air = moving_air_term(self.stirred_m3_s, self.air_volume_m3);
        }
        let (air_c, star_c) = (Strip::splat(self.air_c), Strip::splat(self.star_c));
        let now = &mut self.now;
        for (strip, state) in self.chains[..self.used].iter().enumerate() {
            let (faces, surface_c) = (&self.inner[strip], state.temperature[INNER]);
            now.to_air[strip] = faces.to_air_w_k(surface_c, air_c, self.moving_air);
            now.to_star[strip] = faces.to_star_w_k(surface_c, star_c);
            let sun = boundary.sun;
            now.inner_sun[strip] =
                faces.sun_w(strip_of(&sun.absorbed_inside_w, strip), sun.transmitted_w);
        }
    }

    pub(super) fn set_exchange(&mut self, boundary: &Boundary<'_>) {
        let outdoor_kg_m3 = air::density_dry_air_kg_per_m3(
            boundary.outdoor_c,
            boundary.outdoor_humidity_ratio,
            self.pressure_pa,
        );
        let cabin_kg_m3 = air::density_dry_air_kg_per_m3(
            self.air_c,
            self.moisture.humidity_ratio,
            self.pressure_pa,
        );
        let heat_capacity = air::moist_air_heat_capacity_j_per_kg_k(self.moisture.humidity_ratio);
        let flows = boundary.air_exchange;
        let flow_m3_s = flows.leakage_m3_s + flows.fan_m3_s + flows.openings_m3_s;
        let air_kg = cabin_kg_m3 * self.air_volume_m3;
        let now = &mut self.now;
        now.exchange_w_k = outdoor_kg_m3 * flow_m3_s * heat_capacity;
        now.flow_shares = [flows.leakage_m3_s, flows.fan_m3_s, flows.openings_m3_s].map(|flow| {
            if flow_m3_s > 0.0 {
                flow / flow_m3_s
            } else {
                0.0
            }
        });
        now.outdoor_c = boundary.outdoor_c;
        now.air_capacity_j_k = air_kg * heat_capacity;
        self.moisture.capacity_kg = air_kg * (1.0 + self.moisture_factor);
        let (condensing_kg_s, towards_kg_s) = self.condensing(heat_capacity);
        self.moisture.set(
            outdoor_kg_m3 * flow_m3_s,
            boundary.outdoor_humidity_ratio,
            condensing_kg_s,
            towards_kg_s,
        );
        let condensed_kg_s = condensing_kg_s * self.moisture.humidity_ratio - towards_kg_s;
        self.condensation_w = condensed_kg_s * air::latent_heat_vaporisation_j_per_kg(self.air_c);
    }

    /// Mass-transfer conductance of inner faces below the dew point by the Lewis relation k = h A/cp, and the sum of k times
    /// the saturated humidity ratio at each face.
    fn condensing(&mut self, heat_capacity_j_kg_k: f64) -> (f64, f64) {
        let count = self.elements.len();
        let coldest_c = (0..count)
            .map(|lane| self.node_c(INNER, lane))
            .fold(f64::INFINITY, f64::at_most);
        let humidity_ratio = self.moisture.humidity_ratio;
        if self.dry.holds(coldest_c, humidity_ratio) {
            return (0.0, 0.0);
        }
        if humidity_ratio <= air::saturation_humidity_ratio(coldest_c, self.pressure_pa) {
            self.dry = DryLimit::below(coldest_c, self.pressure_pa);
            return (0.0, 0.0);
        }
        let mut sum_kg_s = 0.0;
        let mut towards_kg_s = 0.0;
        for lane in 0..count {
            let surface_c = self.node_c(INNER, lane);
            let saturated = air::saturation_humidity_ratio(surface_c, self.pressure_pa);
            if humidity_ratio > saturated {
                let conductance_kg_s = lane_of(&self.now.to_air, lane) / heat_capacity_j_kg_k;
                sum_kg_s += conductance_kg_s;
                towards_kg_s += conductance_kg_s * saturated;
            }
        }
        (sum_kg_s, towards_kg_s)
    }

    /// Eliminates each chain from its outer to its inner node, then inverts what is left: air and star.
    pub(super) fn factor(&mut self, per_s: f64) {
        for strip in 0..self.filled {
            self.factor_strip::<false>(strip, per_s);
        }
        for strip in self.filled..self.used {
            self.factor_strip::<true>(strip, per_s);
        }
        self.now.air_carry = self.now.air_capacity_j_k * per_s;
        self.now.inverse = self.now.core_inverse();
        self.now.air_w_k = 1.0 / self.now.inverse[0][0];
    }

    fn factor_strip<const HOLLOW: bool>(&mut self, strip: usize, per_s: f64) {
        let now = &mut self.now;
        let per_theta = now.per_theta;
        let (to_air, to_star) = (now.to_air[strip], now.to_star[strip]);
        let matrix = &mut self.chains[strip].matrix;
        let mut elimination = Elimination {
            inward: now.outer_conductance[strip],
            taken: Strip::default(),
            inverse: Strip::default(),
        };
        let mut eliminate = |node: usize, onward: Strip| {
            let carried = self.capacity[node][strip] * per_s;
            elimination.go_on(matrix, node, carried, onward);
            matrix.carry[node] *= per_theta;
            elimination.inverse
        };
        let between = |node: usize| self.conductance[node][strip];
        let outer_k_per_w = eliminate(OUTER, between(OUTER));
        if !HOLLOW {
            eliminate(1, between(1));
            eliminate(2, between(2));
        }
        eliminate(BENEATH, between(BENEATH));
        let inverse = eliminate(INNER, to_air + to_star);
        matrix.outer_source = outer_k_per_w * now.outer_forcing[strip] * per_theta;
        let moved_k_per_w = inverse * per_theta;
        matrix.inner_source = moved_k_per_w * now.inner_sun[strip];
        matrix.from_air = moved_k_per_w * to_air;
        matrix.from_star = moved_k_per_w * to_star;
        matrix.to_air = to_air * now.theta;
        matrix.to_star = to_star * now.theta;
        now.inverse_inner[strip] = inverse;
    }
}

/// A temperature with the humidity ratio of air that is saturated there: on surfaces that are warmer, air that holds less leaves
/// nothing. Asked first, since saturation is slow to work out.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct DryLimit {
    surface_c: f64,
    humidity_ratio: f64,
}

impl DryLimit {
    /// The limit a little below a temperature, so that it goes on holding.
    fn below(surface_c: f64, pressure_pa: f64) -> Self {
        let surface_c = surface_c - DRY_MARGIN_K;
        Self {
            surface_c,
            humidity_ratio: air::saturation_humidity_ratio(surface_c, pressure_pa),
        }
    }

    fn holds(&self, surface_c: f64, humidity_ratio: f64) -> bool {
        surface_c >= self.surface_c && humidity_ratio <= self.humidity_ratio
    }
}

/// An elimination on its way inwards.
struct Elimination {
    /// Conductance to the node before, and what of it has been eliminated.
    inward: Strip,
    taken: Strip,
    /// Temperature of the last node for each watt, K/W.
    inverse: Strip,
}

impl Elimination {
    /// Eliminates a node of a heat capacity over θΔt and a conductance to the next one, W/K.
    #[inline(always)]
    fn go_on(&mut self, matrix: &mut StripMatrix, node: usize, carried: Strip, onward: Strip) {
        self.inverse = Strip::splat(1.0) / (carried + onward + self.inward - self.taken);
        matrix.carry[node] = carried * self.inverse;
        matrix.feed[node] = self.inward * self.inverse;
        matrix.back[node] = onward * self.inverse;
        self.inward = onward;
        self.taken = onward * matrix.back[node];
    }
}

impl Coefficients {
    /// Inverse of what is left for air and star once the chains are eliminated: symmetric and diagonally dominant.
    fn core_inverse(&self) -> [[f64; 2]; 2] {
        let [mut air_w_k, mut star_w_k, mut cross_w_k] = [Strip::default(); 3];
        for strip in 0..STRIPS {
            let (a, s, inverse) = (
                self.to_air[strip],
                self.to_star[strip],
                self.inverse_inner[strip],
            );
            let (a_inverse, s_inverse) = (a * inverse, s * inverse);
            air_w_k += a - a * a_inverse;
            star_w_k += s - s * s_inverse;
            cross_w_k += a * s_inverse;
        }
        let air = self.air_carry + self.exchange_w_k + sum_of(air_w_k);
        let (star, cross) = (sum_of(star_w_k), sum_of(cross_w_k));
        let scale = 1.0 / (air * star - cross * cross);
        [[star * scale, cross * scale], [cross * scale, air * scale]]
    }
}
