//! Everything that is frozen in an interval: what surroundings and present state make of it, and the factored matrix.

use super::boundary::{Boundary, Met, wind_side};
use super::chain::NODES;
use super::description::{LANES, Outside};
use super::network::Cabin;
use super::star::linear_radiation_w_m2_k;
use super::strip::{Strip, StripMatrix, WIDTH, lane_of};
use crate::air;
use crate::envelope::convection::{WindTerm, inside_w_m2_k, moving_air_term};
use crate::quantity::cube_roots;

/// A row of the lanes.
pub(super) type Lanes = [f64; LANES];

/// Strips of lanes.
pub(super) const STRIPS: usize = LANES / WIDTH;

/// Everything that is frozen in an interval.
#[derive(Clone, Debug, Default)]
pub(super) struct Coefficients {
    pub(super) step_s: f64,
    pub(super) theta: f64,
    /// 1/θ, and the share 1 − 1/θ of itself that a temperature keeps over a step.
    pub(super) per_theta: f64,
    pub(super) kept: f64,
    pub(super) matrix: [StripMatrix; STRIPS],
    /// Temperature of each inner node for each watt from the cabin, K/W.
    pub(super) inverse_inner: Lanes,
    pub(super) to_air: Lanes,
    pub(super) to_star: Lanes,
    pub(super) outer_conductance: Lanes,
    pub(super) outer_forcing: Lanes,
    pub(super) outer_sun: Lanes,
    pub(super) inner_sun: Lanes,
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
    pub(super) fn set_outer(&mut self, boundary: &Boundary) {
        self.set_wind(boundary);
        let mut met = Met {
            forced_w_m2_k: [0.0; LANES],
            ground_c: [boundary.ground_c; LANES],
        };
        for (lane, element) in self.elements.iter().enumerate() {
            met.forced_w_m2_k[lane] = self.wind[lane].on(self.wind_side[lane]);
            if element.outside != Outside::Open {
                met.ground_c[lane] = boundary.shaded_ground_c;
            }
        }
        let surface_c = self.nodes_c(0);
        let now = &mut self.now;
        (now.outer_conductance, now.outer_forcing) =
            self.faces.exchange(&surface_c, boundary, &met);
        for (outer_sun, sun) in now.outer_sun.iter_mut().zip(&boundary.sun) {
            *outer_sun = sun.absorbed_outside_w;
        }
    }

    /// The wind at each element, and its side.
    fn set_wind(&mut self, boundary: &Boundary) {
        let turned = boundary.wind_from_deg != self.wind_from_deg;
        self.wind_from_deg = boundary.wind_from_deg;
        for (lane, element) in self.elements.iter().enumerate() {
            if turned {
                self.wind_side[lane] = wind_side(
                    element.facing_up_cosine,
                    element.azimuth_deg,
                    boundary.wind_from_deg,
                );
            }
            let weather_m_s = boundary.wind_speed_m_s * self.wind_factor[lane];
            let road_m_s = if self.wind_factor[lane] > 0.0 {
                boundary.road_speed_m_s
            } else {
                0.0
            };
            let speed_m_s = (weather_m_s * weather_m_s + road_m_s * road_m_s).sqrt();
            if speed_m_s != self.wind_speed[lane] {
                self.wind_speed[lane] = speed_m_s;
                self.wind[lane] = match lane.checked_sub(1) {
                    Some(before) if self.wind_speed[before] == speed_m_s => self.wind[before],
                    _ => WindTerm::at(speed_m_s),
                };
            }
        }
    }

    pub(super) fn set_inner(&mut self, boundary: &Boundary) {
        let moving = moving_air_term(boundary.stirred_m3_s, self.air_volume_m3);
        let transmitted_w: f64 = boundary.sun.iter().map(|sun| sun.transmitted_w).sum();
        let surface_c = self.nodes_c(NODES - 1);
        let warmer_k = surface_c.map(|surface_c| surface_c - self.air_c);
        let mut natural = cube_roots(warmer_k.map(f64::abs));
        for lane in 0..LANES {
            natural[lane] = self.inner_buoyancy[lane].natural_w_m2_k(warmer_k[lane], natural[lane]);
        }
        let inside = inside_w_m2_k(&natural, moving, &self.moving_air_factor);
        let now = &mut self.now;
        for (lane, element) in self.elements.iter().enumerate() {
            now.to_air[lane] = element.area_m2 * inside[lane];
            now.to_star[lane] =
                linear_radiation_w_m2_k(surface_c[lane], self.star_c) / self.star_resistance[lane];
            now.inner_sun[lane] =
                boundary.sun[lane].absorbed_inside_w + transmitted_w * element.inside_sun_share;
        }
    }

    pub(super) fn set_exchange(&mut self, boundary: &Boundary) {
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
    fn condensing(&self, heat_capacity_j_kg_k: f64) -> (f64, f64) {
        let count = self.elements.len();
        let coldest_c = (0..count)
            .map(|lane| self.node_c(NODES - 1, lane))
            .fold(f64::INFINITY, f64::min);
        let humidity_ratio = self.moisture.humidity_ratio;
        if humidity_ratio <= air::saturation_humidity_ratio(coldest_c, self.pressure_pa) {
            return (0.0, 0.0);
        }
        let mut sum_kg_s = 0.0;
        let mut towards_kg_s = 0.0;
        for lane in 0..count {
            let surface_c = self.node_c(NODES - 1, lane);
            let saturated = air::saturation_humidity_ratio(surface_c, self.pressure_pa);
            if humidity_ratio > saturated {
                let conductance_kg_s = self.now.to_air[lane] / heat_capacity_j_kg_k;
                sum_kg_s += conductance_kg_s;
                towards_kg_s += conductance_kg_s * saturated;
            }
        }
        (sum_kg_s, towards_kg_s)
    }

    /// Eliminates each chain from its outer to its inner node, then inverts what is left: air and star.
    pub(super) fn factor(&mut self, per_s: f64) {
        for strip in 0..STRIPS {
            let lanes: [usize; WIDTH] = std::array::from_fn(|place| strip * WIDTH + place);
            self.factor_strip(strip, lanes, per_s);
        }
        self.now.air_carry = self.now.air_capacity_j_k * per_s;
        self.now.inverse = self.now.core_inverse();
        self.now.air_w_k = 1.0 / self.now.inverse[0][0];
    }

    fn factor_strip(&mut self, strip: usize, lanes: [usize; WIDTH], per_s: f64) {
        let now = &mut self.now;
        let per_theta = now.per_theta;
        let of_lanes = |row: &Lanes| Strip::new(lanes.map(|lane| row[lane]));
        let (to_air, to_star) = (of_lanes(&now.to_air), of_lanes(&now.to_star));
        let mut matrix = StripMatrix::default();
        let mut inward = of_lanes(&now.outer_conductance);
        let mut taken = Strip::default();
        let mut inverse = Strip::default();
        for node in 0..NODES {
            let carried = of_lanes(&self.capacity[node]) * per_s;
            let onward = match self.conductance.get(node) {
                Some(conductance) => of_lanes(conductance),
                None => to_air + to_star,
            };
            inverse = Strip::splat(1.0) / (carried + onward + inward - taken);
            matrix.carry[node] = carried * inverse * per_theta;
            matrix.feed[node] = inward * inverse;
            matrix.back[node] = onward * inverse;
            if node == 0 {
                let source_w = of_lanes(&now.outer_forcing) + of_lanes(&now.outer_sun);
                matrix.outer_source = inverse * source_w * per_theta;
            }
            inward = onward;
            taken = onward * matrix.back[node];
        }
        let moved_k_per_w = inverse * per_theta;
        matrix.inner_source = moved_k_per_w * of_lanes(&now.inner_sun);
        matrix.from_air = moved_k_per_w * to_air;
        matrix.from_star = moved_k_per_w * to_star;
        matrix.to_air = to_air * now.theta;
        matrix.to_star = to_star * now.theta;
        for (place, lane) in lanes.into_iter().enumerate() {
            now.inverse_inner[lane] = lane_of(&inverse, place);
        }
        now.matrix[strip] = matrix;
    }
}

impl Coefficients {
    /// Inverse of what is left for air and star once the chains are eliminated: symmetric and diagonally dominant.
    fn core_inverse(&self) -> [[f64; 2]; 2] {
        let (mut air, mut star, mut cross) = (self.air_carry + self.exchange_w_k, 0.0, 0.0);
        for lane in 0..LANES {
            let (a, s, inverse) = (
                self.to_air[lane],
                self.to_star[lane],
                self.inverse_inner[lane],
            );
            air += a - a * a * inverse;
            star += s - s * s * inverse;
            cross += a * s * inverse;
        }
        let scale = 1.0 / (air * star - cross * cross);
        [[star * scale, cross * scale], [cross * scale, air * scale]]
    }
}
