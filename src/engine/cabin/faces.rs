//! The outer and the inner faces, lane by lane, and what they exchange at their temperatures.

use super::boundary::Boundary;
use super::coefficients::Lanes;
use super::description::{Element, LANES, Outside, Part};
use super::star::linear_radiation_w_m2_k;
use crate::envelope::convection::{
    Buoyancy, ROUGHNESS_SMOOTH, ROUGHNESS_VERY_SMOOTH, inside_w_m2_k, outside_w_m2_k,
};
use crate::quantity::{Bounded, STEFAN_BOLTZMANN_W_M2_K4, cube_roots, kelvin_from_celsius};

/// Factors of buoyant convection.
#[derive(Clone, Debug)]
struct BuoyantFaces {
    warmer: Lanes,
    colder: Lanes,
}

impl Default for BuoyantFaces {
    fn default() -> Self {
        Self {
            warmer: [0.0; LANES],
            colder: [0.0; LANES],
        }
    }
}

impl BuoyantFaces {
    /// A face with this cosine of its normal, towards the air in question, to straight up.
    fn place(&mut self, lane: usize, facing_up_cosine: f64) {
        let buoyancy = Buoyancy::at(facing_up_cosine);
        self.warmer[lane] = buoyancy.warmer;
        self.colder[lane] = buoyancy.colder;
    }

    /// Convection, W/(m² K), of faces so much warmer than the air, K.
    fn natural_w_m2_k(&self, warmer_k: &Lanes) -> Lanes {
        let roots = cube_roots(warmer_k.map(f64::abs));
        std::array::from_fn(|lane| {
            let factor = if warmer_k[lane] > 0.0 {
                self.warmer[lane]
            } else {
                self.colder[lane]
            };
            factor * roots[lane]
        })
    }
}

/// The outer faces with what they radiate to, lane by lane.
#[derive(Clone, Debug)]
pub(super) struct OuterFaces {
    /// Area that meets the outdoors, m²: none where an element has no outer face.
    area_m2: Lanes,
    emittance: Lanes,
    sky_view: Lanes,
    air_view: Lanes,
    ground_view: Lanes,
    /// 1 where the ground that is seen is that below the vehicle.
    is_shaded: Lanes,
    roughness: Lanes,
    buoyancy: BuoyantFaces,
}

impl Default for OuterFaces {
    fn default() -> Self {
        Self {
            area_m2: [0.0; LANES],
            emittance: [0.0; LANES],
            sky_view: [0.0; LANES],
            air_view: [0.0; LANES],
            ground_view: [0.0; LANES],
            is_shaded: [0.0; LANES],
            roughness: [1.0; LANES],
            buoyancy: BuoyantFaces::default(),
        }
    }
}

impl OuterFaces {
    /// Views of a tilted face: sky (1 + cos Σ)/2 split by β = √((1 + cos Σ)/2) between sky and air, ground the rest;
    /// Walton 1983.
    pub(super) fn place(&mut self, lane: usize, element: &Element) {
        let dome = 0.5 * (1.0 + element.facing_up_cosine);
        let split = dome.at_least(0.0).sqrt();
        let has_face = element.outside != Outside::Nothing;
        self.area_m2[lane] = if has_face { element.area_m2 } else { 0.0 };
        self.emittance[lane] = element.outside_emittance;
        self.sky_view[lane] = dome * split;
        self.air_view[lane] = dome * (1.0 - split);
        self.ground_view[lane] = 1.0 - dome;
        self.is_shaded[lane] = if element.outside == Outside::Open {
            0.0
        } else {
            1.0
        };
        self.roughness[lane] = if element.part == Part::Glass {
            ROUGHNESS_VERY_SMOOTH
        } else {
            ROUGHNESS_SMOOTH
        };
        self.buoyancy.place(lane, element.facing_up_cosine);
    }

    /// Works out the conductance of each face at its temperature, W/K, and its forcing, W: sun, and the conductance times what it
    /// leads to in °C. The wind makes such terms, W/(m² K).
    pub(super) fn exchange(
        &self,
        surface_c: &Lanes,
        boundary: &Boundary<'_>,
        forced_w_m2_k: &Lanes,
        (conductance_w_k, forcing_w): (&mut Lanes, &mut Lanes),
    ) {
        let (outdoor_c, sky_c) = (boundary.outdoor_c, boundary.sky_c);
        let warmer_k = surface_c.map(|surface_c| surface_c - outdoor_c);
        let natural = self.buoyancy.natural_w_m2_k(&warmer_k);
        for lane in 0..LANES {
            let convection =
                outside_w_m2_k(natural[lane], forced_w_m2_k[lane], self.roughness[lane]);
            let radiation =
                |other_c: f64| self.emittance[lane] * radiation_w_m2_k(surface_c[lane], other_c);
            let ground_c = if self.is_shaded[lane] > 0.0 {
                boundary.shaded_ground_c
            } else {
                boundary.ground_c
            };
            let sky = radiation(sky_c) * self.sky_view[lane];
            let air = radiation(outdoor_c) * self.air_view[lane] + convection;
            let ground = radiation(ground_c) * self.ground_view[lane];
            conductance_w_k[lane] = (sky + air + ground) * self.area_m2[lane];
            forcing_w[lane] = boundary.sun.absorbed_outside_w[lane]
                + (sky * sky_c + air * outdoor_c + ground * ground_c) * self.area_m2[lane];
        }
    }
}

/// σ (T₁² + T₂²)(T₁ + T₂): exact between two black surfaces.
fn radiation_w_m2_k(one_c: f64, other_c: f64) -> f64 {
    let (one_k, other_k) = (kelvin_from_celsius(one_c), kelvin_from_celsius(other_c));
    STEFAN_BOLTZMANN_W_M2_K4 * (one_k * one_k + other_k * other_k) * (one_k + other_k)
}

/// The inner faces.
#[derive(Clone, Debug)]
pub(super) struct InnerFaces {
    /// Area, m²: none where there is no element.
    area_m2: Lanes,
    moving_air_factor: Lanes,
    /// One over the resistance to the star without the 4σT³, m².
    star_m2: Lanes,
    /// Share of the sun that came through glass.
    sun_share: Lanes,
    buoyancy: BuoyantFaces,
}

impl Default for InnerFaces {
    fn default() -> Self {
        Self {
            area_m2: [0.0; LANES],
            moving_air_factor: [0.0; LANES],
            star_m2: [0.0; LANES],
            sun_share: [0.0; LANES],
            buoyancy: BuoyantFaces::default(),
        }
    }
}

impl InnerFaces {
    /// A face with its resistance to the star without the 4σT³, 1/m².
    pub(super) fn place(&mut self, lane: usize, element: &Element, star_resistance: f64) {
        self.area_m2[lane] = element.area_m2;
        self.moving_air_factor[lane] = element.inside_facing().moving_air_factor();
        self.star_m2[lane] = 1.0 / star_resistance;
        self.sun_share[lane] = element.inside_sun_share;
        self.buoyancy.place(lane, -element.facing_up_cosine);
    }

    /// Conductance of each face to the air, W/K, at its temperature, with this moving-air term.
    pub(super) fn to_air_w_k(&self, surface_c: &Lanes, air_c: f64, moving_air: f64) -> Lanes {
        let warmer_k = surface_c.map(|surface_c| surface_c - air_c);
        let natural = self.buoyancy.natural_w_m2_k(&warmer_k);
        let inside = inside_w_m2_k(&natural, moving_air, &self.moving_air_factor);
        std::array::from_fn(|lane| self.area_m2[lane] * inside[lane])
    }

    /// Conductance of each face to the star, W/K, likewise.
    pub(super) fn to_star_w_k(&self, surface_c: &Lanes, star_c: f64) -> Lanes {
        std::array::from_fn(|lane| {
            linear_radiation_w_m2_k(surface_c[lane], star_c) * self.star_m2[lane]
        })
    }

    /// Sun on each face, W.
    pub(super) fn sun_w(&self, boundary: &Boundary<'_>) -> Lanes {
        let sun = boundary.sun;
        std::array::from_fn(|lane| {
            sun.absorbed_inside_w[lane] + sun.transmitted_w * self.sun_share[lane]
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn views_add_to_one() {
        let mut faces = OuterFaces::default();
        for cosine in [-1.0, -0.3, 0.0, 0.5, 1.0] {
            let mut element = Element::furnishing(1.0e4, 1.0, 1.0);
            element.facing_up_cosine = cosine;
            faces.place(0, &element);
            let views = faces.sky_view[0] + faces.air_view[0] + faces.ground_view[0];
            assert!((views - 1.0).abs() < 1e-12);
        }
    }
}
