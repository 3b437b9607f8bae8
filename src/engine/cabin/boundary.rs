//! What surrounds the cabin in an interval, and the coefficients that follow from it.

use super::coefficients::Lanes;
use super::description::{Element, LANES, Outside, Part};
use crate::envelope::convection::{
    Buoyancy, ROUGHNESS_SMOOTH, ROUGHNESS_VERY_SMOOTH, WindSide, outside_w_m2_k,
};
use crate::quantity::{STEFAN_BOLTZMANN_W_M2_K4, cube_roots, kelvin_from_celsius};

/// Sun on one element, W for the whole element.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LaneSun {
    /// Absorbed at the outer face, W.
    pub absorbed_outside_w: f64,
    /// Absorbed at the inner face on the way in, W (panes only).
    pub absorbed_inside_w: f64,
    /// Passed into the cabin, W (panes only).
    pub transmitted_w: f64,
}

impl LaneSun {
    /// No sun.
    pub const NONE: Self = Self {
        absorbed_outside_w: 0.0,
        absorbed_inside_w: 0.0,
        transmitted_w: 0.0,
    };
}

/// Outdoor air brought in, m³/s at outdoor density, by way.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct AirExchange {
    /// Leaks, m³/s.
    pub leakage_m3_s: f64,
    /// Fan, m³/s.
    pub fan_m3_s: f64,
    /// Opened windows, m³/s.
    pub openings_m3_s: f64,
}

/// The surroundings in an interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Boundary {
    /// Outdoor dry bulb, °C.
    pub outdoor_c: f64,
    /// Outdoor humidity ratio, kg/kg.
    pub outdoor_humidity_ratio: f64,
    /// Temperature of a black sky with the same longwave, °C.
    pub sky_c: f64,
    /// Surface of the open ground, °C.
    pub ground_c: f64,
    /// Surface of the ground below the vehicle, °C.
    pub shaded_ground_c: f64,
    /// Wind at the station's 10 m, m/s.
    pub wind_speed_m_s: f64,
    /// Where the wind comes from, degrees; none if not known.
    pub wind_from_deg: Option<f64>,
    /// Speed of the vehicle, m/s.
    pub road_speed_m_s: f64,
    /// Outdoor air brought in.
    pub air_exchange: AirExchange,
    /// Air stirred by blower and fan, m³/s.
    pub stirred_m3_s: f64,
    /// Sun on each element.
    pub sun: [LaneSun; LANES],
}

/// Half-angle within which a vertical face counts as windward, degrees: Walton 1983.
const WINDWARD_HALF_ANGLE_DEG: f64 = 90.0;

/// How the wind meets a face; roofs count as windward (Walton 1983).
pub(super) fn wind_side(
    facing_up_cosine: f64,
    azimuth_deg: f64,
    wind_from_deg: Option<f64>,
) -> WindSide {
    if facing_up_cosine > 0.15 {
        return WindSide::Windward;
    }
    let Some(from_deg) = wind_from_deg else {
        return WindSide::Unknown;
    };
    let turn = (from_deg - azimuth_deg).rem_euclid(360.0);
    if turn.min(360.0 - turn) <= WINDWARD_HALF_ANGLE_DEG {
        WindSide::Windward
    } else {
        WindSide::Leeward
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
    roughness: Lanes,
    buoyancy: [Buoyancy; LANES],
}

impl Default for OuterFaces {
    fn default() -> Self {
        Self {
            area_m2: [0.0; LANES],
            emittance: [0.0; LANES],
            sky_view: [0.0; LANES],
            air_view: [0.0; LANES],
            ground_view: [0.0; LANES],
            roughness: [1.0; LANES],
            buoyancy: [Buoyancy::default(); LANES],
        }
    }
}

/// What outer faces meet in an interval beside the boundary: the wind term of each, W/(m² K), and the ground that it sees, °C.
pub(super) struct Met {
    pub(super) forced_w_m2_k: Lanes,
    pub(super) ground_c: Lanes,
}

impl OuterFaces {
    /// Views of a tilted face: sky (1 + cos Σ)/2 split by β = √((1 + cos Σ)/2) between sky and air, ground the rest;
    /// Walton 1983.
    pub(super) fn place(&mut self, lane: usize, element: &Element) {
        let dome = 0.5 * (1.0 + element.facing_up_cosine);
        let split = dome.max(0.0).sqrt();
        let has_face = element.outside != Outside::Nothing;
        self.area_m2[lane] = if has_face { element.area_m2 } else { 0.0 };
        self.emittance[lane] = element.outside_emittance;
        self.sky_view[lane] = dome * split;
        self.air_view[lane] = dome * (1.0 - split);
        self.ground_view[lane] = 1.0 - dome;
        self.roughness[lane] = if element.part == Part::Glass {
            ROUGHNESS_VERY_SMOOTH
        } else {
            ROUGHNESS_SMOOTH
        };
        self.buoyancy[lane] = Buoyancy::at(element.facing_up_cosine);
    }

    /// Conductance (W/K) and forcing (W, the conductance times what it leads to in °C) of each face at its temperature.
    pub(super) fn exchange(
        &self,
        surface_c: &Lanes,
        boundary: &Boundary,
        met: &Met,
    ) -> (Lanes, Lanes) {
        let (outdoor_c, sky_c) = (boundary.outdoor_c, boundary.sky_c);
        let warmer_k = surface_c.map(|surface_c| surface_c - outdoor_c);
        let roots = cube_roots(warmer_k.map(f64::abs));
        let mut conductance_w_k = [0.0; LANES];
        let mut forcing_w = [0.0; LANES];
        for lane in 0..LANES {
            let natural = self.buoyancy[lane].natural_w_m2_k(warmer_k[lane], roots[lane]);
            let convection = outside_w_m2_k(natural, met.forced_w_m2_k[lane], self.roughness[lane]);
            let radiation =
                |other_c: f64| self.emittance[lane] * radiation_w_m2_k(surface_c[lane], other_c);
            let ground_c = met.ground_c[lane];
            let sky = radiation(sky_c) * self.sky_view[lane];
            let air = radiation(outdoor_c) * self.air_view[lane] + convection;
            let ground = radiation(ground_c) * self.ground_view[lane];
            conductance_w_k[lane] = (sky + air + ground) * self.area_m2[lane];
            forcing_w[lane] =
                (sky * sky_c + air * outdoor_c + ground * ground_c) * self.area_m2[lane];
        }
        (conductance_w_k, forcing_w)
    }
}

/// σ (T₁² + T₂²)(T₁ + T₂): exact between two black surfaces.
fn radiation_w_m2_k(one_c: f64, other_c: f64) -> f64 {
    let (one_k, other_k) = (kelvin_from_celsius(one_c), kelvin_from_celsius(other_c));
    STEFAN_BOLTZMANN_W_M2_K4 * (one_k * one_k + other_k * other_k) * (one_k + other_k)
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

    #[test]
    fn the_wind_from_the_south_is_on_the_south_face() {
        assert_eq!(wind_side(0.0, 180.0, Some(200.0)), WindSide::Windward);
        assert_eq!(wind_side(0.0, 0.0, Some(200.0)), WindSide::Leeward);
        assert_eq!(wind_side(0.0, 350.0, Some(10.0)), WindSide::Windward);
        assert_eq!(wind_side(0.0, 0.0, None), WindSide::Unknown);
    }
}
