//! The outer and the inner faces, strip by strip, and what they exchange at their temperatures.

use super::boundary::Boundary;
use super::description::{Element, Outside, Part};
use super::star::{linear_radiation_w_m2_k, star_resistances};
use super::strip::{STRIPS, Strip, WIDTH};
use crate::envelope::convection::{
    Buoyancy, ROUGHNESS_SMOOTH, ROUGHNESS_VERY_SMOOTH, inside_w_m2_k, outside_w_m2_k,
};
use crate::quantity::{Bounded, Number, STEFAN_BOLTZMANN_W_M2_K4, ZERO_CELSIUS_K};

/// The outer faces of a strip with what they radiate to.
#[derive(Clone, Debug)]
pub(super) struct OuterFaces {
    /// Area that meets the outdoors, m²: none where an element has no outer face.
    area_m2: Strip,
    emittance: Strip,
    sky_view: Strip,
    air_view: Strip,
    ground_view: Strip,
    /// 1 where the ground that is seen is that below the vehicle.
    is_shaded: Strip,
    roughness: Strip,
    buoyancy: Buoyancy<Strip>,
}

/// What outer faces meet beside the boundary: the wind term, W/(m² K), and sun, W.
pub(super) struct Met {
    pub(super) forced_w_m2_k: Strip,
    pub(super) sun_w: Strip,
}

/// A property of the elements of a strip, and another where there are none.
fn property_of(elements: &[Element], none: f64, of: impl Fn(&Element) -> f64) -> Strip {
    Strip::new(std::array::from_fn(|place| {
        elements.get(place).map_or(none, &of)
    }))
}

/// Factors of buoyant convection of faces whose normals, towards the air in question, have such cosines to straight up.
fn buoyancy_of(
    elements: &[Element],
    facing_up_cosine: impl Fn(&Element) -> f64,
) -> Buoyancy<Strip> {
    let at = |element: &Element| Buoyancy::at(facing_up_cosine(element));
    Buoyancy {
        warmer: property_of(elements, 0.0, |element| at(element).warmer),
        colder: property_of(elements, 0.0, |element| at(element).colder),
    }
}

/// The elements of a strip.
fn strip_of_elements(elements: &[Element], strip: usize) -> &[Element] {
    elements.chunks(WIDTH).nth(strip).unwrap_or_default()
}

/// The outer faces of elements.
pub(super) fn outer_faces(elements: &[Element]) -> [OuterFaces; STRIPS] {
    std::array::from_fn(|strip| OuterFaces::new(strip_of_elements(elements, strip)))
}

/// The inner faces of elements.
pub(super) fn inner_faces(elements: &[Element]) -> [InnerFaces; STRIPS] {
    let star_resistances = star_resistances(elements);
    std::array::from_fn(|strip| {
        let resistances = star_resistances
            .chunks(WIDTH)
            .nth(strip)
            .unwrap_or_default();
        InnerFaces::new(strip_of_elements(elements, strip), resistances)
    })
}

impl OuterFaces {
    /// Views of a tilted face: sky (1 + cos Σ)/2 split by β = √((1 + cos Σ)/2) between sky and air, ground the rest;
    /// Walton 1983.
    fn new(elements: &[Element]) -> Self {
        let of = |none: f64, of: fn(&Element) -> f64| property_of(elements, none, of);
        let dome = of(0.0, |element| 0.5 * (1.0 + element.facing_up_cosine));
        let split = dome.at_least(Strip::splat(0.0)).sqrt();
        Self {
            area_m2: of(0.0, |element| match element.outside {
                Outside::Open | Outside::Underside => element.area_m2,
                Outside::Nothing => 0.0,
            }),
            emittance: of(0.0, |element| element.outside_emittance),
            sky_view: dome * split,
            air_view: dome * (1.0 - split),
            ground_view: 1.0 - dome,
            is_shaded: of(0.0, |element| match element.outside {
                Outside::Open => 0.0,
                Outside::Underside | Outside::Nothing => 1.0,
            }),
            roughness: of(1.0, |element| match element.part {
                Part::Glass => ROUGHNESS_VERY_SMOOTH,
                _ => ROUGHNESS_SMOOTH,
            }),
            buoyancy: buoyancy_of(elements, |element| element.facing_up_cosine),
        }
    }

    /// Conductance of each face at its temperature, W/K, and its forcing, W: sun, and the conductance times what it leads to in °C.
    #[inline(always)]
    pub(super) fn exchange(
        &self,
        surface_c: Strip,
        boundary: &Boundary<'_>,
        met: &Met,
    ) -> (Strip, Strip) {
        let [outdoor_c, sky_c, open_c, shaded_c] = [
            boundary.outdoor_c,
            boundary.sky_c,
            boundary.ground_c,
            boundary.shaded_ground_c,
        ]
        .map(Strip::splat);
        let ground_c = self.is_shaded.where_positive(shaded_c, open_c);
        let natural = self.buoyancy.natural_w_m2_k(surface_c - outdoor_c);
        let convection = outside_w_m2_k(natural, met.forced_w_m2_k, self.roughness);
        let radiation = |other_c: Strip| self.emittance * radiation_w_m2_k(surface_c, other_c);
        let sky = radiation(sky_c) * self.sky_view;
        let air = radiation(outdoor_c) * self.air_view + convection;
        let ground = radiation(ground_c) * self.ground_view;
        let led_to = sky * sky_c + air * outdoor_c + ground * ground_c;
        (
            (sky + air + ground) * self.area_m2,
            met.sun_w + led_to * self.area_m2,
        )
    }
}

/// σ (T₁² + T₂²)(T₁ + T₂): exact between two black surfaces.
#[inline(always)]
fn radiation_w_m2_k(one_c: Strip, other_c: Strip) -> Strip {
    let (one_k, other_k) = (one_c + ZERO_CELSIUS_K, other_c + ZERO_CELSIUS_K);
    STEFAN_BOLTZMANN_W_M2_K4 * (one_k * one_k + other_k * other_k) * (one_k + other_k)
}

/// The inner faces of a strip.
#[derive(Clone, Debug)]
pub(super) struct InnerFaces {
    /// Area, m²: none where there is no element.
    area_m2: Strip,
    moving_air_factor: Strip,
    /// One over the resistance to the star without the 4σT³, m².
    star_m2: Strip,
    /// Share of the sun that came through glass.
    sun_share: Strip,
    buoyancy: Buoyancy<Strip>,
}

impl InnerFaces {
    /// Faces with their resistances to the star without the 4σT³, 1/m².
    fn new(elements: &[Element], star_resistances: &[f64]) -> Self {
        let of = |of: fn(&Element) -> f64| property_of(elements, 0.0, of);
        Self {
            area_m2: of(|element| element.area_m2),
            moving_air_factor: of(|element| element.inside_facing().moving_air_factor()),
            star_m2: Strip::new(std::array::from_fn(|place| {
                star_resistances
                    .get(place)
                    .map_or(0.0, |resistance| 1.0 / resistance)
            })),
            sun_share: of(|element| element.inside_sun_share),
            buoyancy: buoyancy_of(elements, |element| -element.facing_up_cosine),
        }
    }

    /// Conductance of each face to the air, W/K, at its temperature, with this moving-air term.
    #[inline(always)]
    pub(super) fn to_air_w_k(&self, surface_c: Strip, air_c: Strip, moving_air: f64) -> Strip {
        let natural = self.buoyancy.natural_w_m2_k(surface_c - air_c);
        self.area_m2 * inside_w_m2_k(natural, moving_air, self.moving_air_factor)
    }

    /// Conductance of each face to the star, W/K, likewise.
    #[inline(always)]
    pub(super) fn to_star_w_k(&self, surface_c: Strip, star_c: Strip) -> Strip {
        linear_radiation_w_m2_k(surface_c, star_c) * self.star_m2
    }

    /// Sun on each face, W: what it absorbs on the way in, and its share of what panes let pass.
    #[inline(always)]
    pub(super) fn sun_w(&self, absorbed_w: Strip, transmitted_w: f64) -> Strip {
        absorbed_w + transmitted_w * self.sun_share
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn views_add_to_one() {
        let elements = [-1.0, -0.3, 0.5, 1.0].map(|cosine| {
            let mut element = Element::furnishing(1.0e4, 1.0, 1.0);
            element.facing_up_cosine = cosine;
            element
        });
        let faces = OuterFaces::new(&elements);
        let views = (faces.sky_view + faces.air_view + faces.ground_view).to_array();
        assert!(
            views.iter().all(|view| (view - 1.0).abs() < 1e-12),
            "{views:?}"
        );
    }
}
